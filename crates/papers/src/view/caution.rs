//! The cautions that go with every document.

use serde::Serialize;

/// The line at the foot of every sheet.
pub const CAUTION_LINE: &str = "Results support a competent person. Local codes and the authority having jurisdiction prevail. \
     Structural, mains and life-safety work is for whoever is licensed for it there.";

/// One caution: what it is about, and what it says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Caution {
    /// Two or three words: `Mains kills`.
    pub title: String,
    /// One or two sentences.
    pub text: String,
}

impl Caution {
    /// A caution of these words.
    pub fn new(title: &str, text: &str) -> Self {
        Self {
            title: title.to_owned(),
            text: text.to_owned(),
        }
    }
}

/// The cautions that hold for every gate, whatever its site.
pub fn standing_cautions() -> Vec<Caution> {
    vec![
        Caution::new(
            "A competent person decides",
            "These papers support the judgment of a person who is competent for the work and has seen the site. \
             They do not replace it.",
        ),
        Caution::new(
            "Local codes prevail",
            "Where a local code, or the authority having jurisdiction, asks for something else, that is what counts.",
        ),
        Caution::new(
            "Gates crush",
            "No gate goes into service on these papers alone. Each protection of people is tested at the gate, in both \
             directions of travel, before the gate runs without a person at its control.",
        ),
        Caution::new(
            "Mains kills",
            "Work on mains, on its protection and on the earth (ground) connection is for whoever is licensed for it there. \
             Disconnect, lock off, and prove dead before opening an enclosure.",
        ),
        Caution::new(
            "Posts and anchors fail",
            "Footings, posts, anchors and welds that carry a leaf are for whoever is licensed for structural work there.",
        ),
        Caution::new(
            "What is not known",
            "A question marked unknown or not covered has no answer here. It is not a question that the gate has passed.",
        ),
    ]
}
