//! Concrete pads and post foundations, with their anchors.

use crate::{Id, Position, Text};
use quantity::{Force, Length, Measured, Pressure};

site_words! {
    /// Whether concrete cracks where the anchor sits.
    pub enum ConcreteState {
        /// Cracks are to be expected.
        Cracked = "cracked",
        /// Stays uncracked under service loads.
        Uncracked = "uncracked",
    }
}

site_words! {
    /// How the anchor came into the concrete.
    pub enum AnchorKind {
        /// Placed before the concrete.
        CastIn = "cast-in",
        /// Set in a drilled hole.
        PostInstalled = "post-installed",
    }
}

record! {
    /// A foundation.
    pub struct Foundation {
        /// Name, unique on the site.
        id: Id,
        /// Center of its top.
        at: Option<Position>,
        /// Length along the gate line.
        length: Option<Measured<Length>>,
        /// Width across the gate line.
        width: Option<Measured<Length>>,
        /// Diameter, where it is round.
        diameter: Option<Measured<Length>>,
        /// Depth.
        depth: Option<Measured<Length>>,
        /// Compressive strength of the concrete.
        strength: Option<Measured<Pressure>>,
        /// Whether the concrete cracks where the anchors sit.
        concrete: Option<ConcreteState>,
        /// Anchors in it.
        anchor: Vec<Anchor>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// Like anchors in a foundation.
    pub struct Anchor {
        /// What they hold, in words.
        holds: Text,
        /// How many share the pull evenly.
        count: Option<u32>,
        /// How they came into the concrete.
        kind: Option<AnchorKind>,
        /// Diameter.
        diameter: Option<Measured<Length>>,
        /// Effective embedment.
        embedment: Option<Measured<Length>>,
        /// Distance from the outermost one to the nearest edge.
        edge_distance: Option<Measured<Length>>,
        /// Distance between them.
        spacing: Option<Measured<Length>>,
        /// Factored pull on one of them.
        pull: Option<Measured<Force>>,
    }
}
