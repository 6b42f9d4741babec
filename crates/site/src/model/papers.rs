//! The papers of the site: what was issued, what is kept there, and what was marked on them.

use crate::{Date, Text};

record! {
    /// The papers and where they stand.
    pub struct Papers {
        /// Every revision that was issued, in order.
        issued: Vec<Revision>,
        /// Revision read off the papers that are kept at the gate.
        revision_there: Option<Text>,
        /// Day on which it was read there.
        seen: Option<Date>,
        /// Last day on which somebody walked the site with the papers in hand and marked every difference.
        walked: Option<Date>,
        /// What was marked by hand: where the site differs from the papers.
        redline: Vec<Redline>,
    }
}

record! {
    /// A revision of the papers.
    pub struct Revision {
        /// Its mark.
        revision: Text,
        /// Day on which it was issued.
        on: Option<Date>,
        /// What it is for, or what is new in it.
        what: Option<Text>,
    }
}

record! {
    /// A difference between site and papers that somebody marked by hand.
    pub struct Redline {
        /// What is different.
        what: Text,
        /// Day on which it was marked.
        on: Option<Date>,
        /// Revision in which it has come back into this file; missing while it has not.
        revision: Option<Text>,
    }
}
