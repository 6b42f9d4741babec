//! Kinds of hazard zones, what they are called, and which kinds of device answer them.

/// What kind of place it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ZoneKind {
    /// Ahead of the edge that comes first on closing.
    LeadingEdge,
    /// Behind the edge that comes first on opening.
    TrailingEdge,
    /// Beside a leaf that slides past something.
    DrawIn,
    /// Between the heel of a swing leaf and what carries it.
    HingeSide,
    /// Between a swing leaf and what stands behind it when it is open.
    BehindOpen,
    /// Between a bottom edge and the ground.
    UnderEdge,
    /// Beside the moving arm of a drive, or the tail of a barrier arm.
    DriveArm,
    /// Under an arm that comes down.
    UnderArm,
}

impl ZoneKind {
    /// What it is called: `draw-in`.
    pub fn name(self) -> &'static str {
        match self {
            Self::LeadingEdge => "leading edge",
            Self::TrailingEdge => "trailing edge",
            Self::DrawIn => "draw-in",
            Self::HingeSide => "hinge side",
            Self::BehindOpen => "behind the open leaf",
            Self::UnderEdge => "under the edge",
            Self::DriveArm => "drive arm",
            Self::UnderArm => "under the arm",
        }
    }

    /// The zone in words.
    pub(crate) fn between(self, leaf: &str, against: &str) -> String {
        match self {
            Self::LeadingEdge => format!("between the closing edge of {leaf} and {against}"),
            Self::TrailingEdge => format!("between the trailing edge of {leaf} and {against}"),
            Self::DrawIn => format!("where {leaf} passes {against}"),
            Self::HingeSide => format!("at the hinge side of {leaf}"),
            Self::BehindOpen => format!("between the open {leaf} and {against}"),
            Self::UnderEdge => format!("between the bottom edge of {leaf} and {against}"),
            Self::DriveArm => format!("beside the moving arm of {against}"),
            Self::UnderArm => format!("under {leaf}"),
        }
    }

    /// The kinds of device, or the change to the gate, that would answer it.
    pub fn answers(self) -> &'static str {
        match self {
            Self::LeadingEdge => {
                "a contact edge along the closing edge or on what it closes on, photo-eyes close beside the line of the leaf, or an area scanner over it"
            }
            Self::TrailingEdge => {
                "a contact edge along the trailing edge, photo-eyes or a scanner behind it, or more room at the open stop"
            }
            Self::DrawIn => {
                "a gap of 2-1/4 in or less, a fixed guard, or a contact edge on the post or fence where somebody is drawn in"
            }
            Self::HingeSide => {
                "a flexible cover over the whole gap, a contact edge at the hinge side, or hinges set nearer the end of the post"
            }
            Self::BehindOpen => {
                "a contact edge on the face toward it, a photo-eye or a scanner that watches the space, or more room behind the open leaf"
            }
            Self::UnderEdge => {
                "a contact edge along the bottom, ground graded to the sweep, or a gap that does not change"
            }
            Self::DriveArm => {
                "a cover over the arm and its joints, more room for them, or a contact edge where they close"
            }
            Self::UnderArm => {
                "a contact edge under the arm, photo-eyes along it near the ground, or an area scanner below it"
            }
        }
    }

    /// Whoever is caught there holds up the leaf itself, so that a drive which senses obstructions feels it.
    pub(crate) fn is_felt_by_the_drive(self) -> bool {
        self != Self::DriveArm
    }
}
