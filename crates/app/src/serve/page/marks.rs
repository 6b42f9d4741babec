//! The mark and the word of a verdict: each mark reads without color.

use design::Standing;
use maud::{Markup, html};

/// A verdict as pages show it, in the order in which they do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Mark {
    Fails,
    NotSure,
    Unknown,
    Outside,
    Holds,
    Figure,
    NotCovered,
}

impl Mark {
    /// All that a finding can have.
    pub(crate) const OF_FINDINGS: [Self; 6] = [
        Self::Fails,
        Self::NotSure,
        Self::Unknown,
        Self::Outside,
        Self::Holds,
        Self::Figure,
    ];

    /// Its class and its name in data: `fails`.
    pub(crate) const fn class(self) -> &'static str {
        match self {
            Self::Fails => "fails",
            Self::NotSure => "not-sure",
            Self::Unknown => "unknown",
            Self::Outside => "outside",
            Self::Holds => "holds",
            Self::Figure => "figure",
            Self::NotCovered => "not-covered",
        }
    }

    /// The word beside it.
    pub(crate) const fn word(self) -> &'static str {
        match self {
            Self::Fails => "Fails",
            Self::NotSure => "Not sure",
            Self::Unknown => "Unknown",
            Self::Outside => "Outside",
            Self::Holds => "Holds",
            Self::Figure => "Figure",
            Self::NotCovered => "Not covered",
        }
    }

    /// What the word means.
    pub(crate) const fn meaning(self) -> &'static str {
        match self {
            Self::Fails => {
                "Fails at the values as written. To be put right before the gate goes into service."
            }
            Self::NotSure => "Holds as written, but not at the bad end of the tolerances.",
            Self::Unknown => {
                "Unknown until something is measured or looked up. The finding says what."
            }
            Self::Outside => "Outside what this tool can answer. Somebody competent answers it.",
            Self::Holds => "Holds, tolerances included.",
            Self::Figure => "A figure that other findings rest on.",
            Self::NotCovered => {
                "A question that this tool does not ask yet. Somebody competent answers it."
            }
        }
    }

    /// The mark alone, hidden from those who hear the word.
    pub(crate) fn drawn(self) -> Markup {
        html! {
            svg class={ "mark mark-" (self.class()) } viewBox="0 0 12 12" aria-hidden="true" focusable="false" {
                rect class="box" x="1" y="1" width="10" height="10" {}
                @match self {
                    Self::Fails => path class="pen" d="M3.4 3.4L8.6 8.6M8.6 3.4L3.4 8.6" {},
                    Self::Unknown => path class="thin" d="M1 4L4 1M1 7.5L7.5 1M1 11L11 1M4.5 11L11 4.5M8 11L11 8" {},
                    Self::NotSure => path class="solid" d="M1 11H11V1Z" {},
                    Self::Holds => path class="pen" d="M3.2 6.4L5.2 8.5L8.8 3.7" {},
                    Self::Figure => path class="pen" d="M3.6 4.8H8.4M3.6 7.4H8.4" {},
                    Self::Outside | Self::NotCovered => {},
                }
            }
        }
    }

    /// Mark and word.
    pub(crate) fn said(self) -> Markup {
        html! { span class="verdict" { (self.drawn()) (self.word()) } }
    }
}

impl From<Standing> for Mark {
    fn from(standing: Standing) -> Self {
        match standing {
            Standing::Fails => Self::Fails,
            Standing::TurnsWithinTolerance => Self::NotSure,
            Standing::Unknown => Self::Unknown,
            Standing::Outside => Self::Outside,
            Standing::Holds => Self::Holds,
            Standing::Figure => Self::Figure,
        }
    }
}
