//! What somebody looked up in a work that is known here from memory only.

use crate::{Date, Text};

record! {
    /// A figure or rule that somebody looked up in their own copy of a standard or handbook, and found as it is used here.
    pub struct LookedUp {
        /// The work as the finding names it, with its clause: `"IEEE 485 table 1"`.
        source: Text,
        /// Edition that was looked up.
        edition: Text,
        /// What stands there, in your own words and figures.
        says: Text,
        /// Who looked.
        by: Text,
        /// Day on which it was looked up.
        on: Date,
    }
}

impl LookedUp {
    /// Whether it names a work so: capital letters, spaces and stops do not count.
    pub fn names(&self, source: &str) -> bool {
        letters(self.source.as_str()).eq(letters(source))
    }
}

/// What is compared of the name of a work.
fn letters(text: &str) -> impl Iterator<Item = char> {
    text.chars()
        .filter(|letter| letter.is_alphanumeric())
        .flat_map(char::to_lowercase)
}
