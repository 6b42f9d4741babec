//! One scenario: who goes where, when; and what comes of it.

use super::device::Spot;
use quantity::{Force, Length, Ratio, Time, Velocity};

/// Which way a body goes through the gate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Way {
    /// From outside into the property: toward greater y.
    In,
    /// From the property out: toward smaller y.
    Out,
}

/// What a body does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Behavior {
    /// It goes on at its speed.
    Cross,
    /// It goes, and stays where its middle is this far past the gate line (before it, below zero), in its own direction.
    Stop(Length),
    /// It stands there before the leaf starts, its middle this far past the gate line in the direction that it faces.
    Stand(Length),
}

/// One scenario. The leaf starts at time zero.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scenario {
    /// Which of the leaf's ways, by its place in the list.
    pub pass: usize,
    /// Which body, by its place in the list.
    pub body: usize,
    /// Which way it goes or faces.
    pub way: Way,
    /// What it does.
    pub behavior: Behavior,
    /// Where its path crosses the gate line.
    pub crosses_at: Length,
    /// Change of x along its path for each unit of length through the gate.
    pub slant: Ratio,
    /// Its speed along its path.
    pub speed: Velocity,
    /// When its middle is on the gate line, if nothing hinders it.
    pub arrives: Time,
}

/// What comes of a scenario, from harmless to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Class {
    /// Nothing is touched, or the leaf does not start.
    Untouched,
    /// The body walks into the side of the leaf, or into a leaf that stands or goes away from it.
    MetTheSide,
    /// The leaf touches the body, and no limit is passed.
    Within,
    /// The leaf touches the body harder or longer than it may.
    Beyond,
    /// The body is squeezed against something fixed by more than it may be.
    Trapped,
}

impl Class {
    /// Every class, from harmless to worst.
    pub const ALL: [Self; 5] = [
        Self::Untouched,
        Self::MetTheSide,
        Self::Within,
        Self::Beyond,
        Self::Trapped,
    ];

    /// The class in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Untouched => "untouched",
            Self::MetTheSide => "met the side",
            Self::Within => "touched within limits",
            Self::Beyond => "touched beyond limits",
            Self::Trapped => "trapped",
        }
    }

    /// Whether nobody may end like this.
    pub fn is_bad(self) -> bool {
        self >= Self::Beyond
    }
}

/// What comes of a scenario.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// Its class.
    pub class: Class,
    /// The touch, where the leaf touches the body.
    pub touch: Option<Touch>,
}

/// A touch of the leaf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Touch {
    /// When.
    pub time: Time,
    /// Which cylinder of the body is touched, by its place in the list.
    pub part: usize,
    /// Where the middle of that cylinder is.
    pub at: Spot,
    /// How fast the edge moves.
    pub speed: Velocity,
    /// Gap before the edge; without end where nothing stands opposite.
    pub gap: Length,
    /// Room behind the cylinder.
    pub room: Length,
    /// How far the edge goes on.
    pub travel: Length,
    /// Greatest force.
    pub force: Force,
    /// Greatest force that is allowed in this gap.
    pub limit: Force,
    /// Time until the force is down to what may last; none if it never is.
    pub lasts: Option<Time>,
    /// Time until the force is down to what may remain; none if it never is.
    pub rests: Option<Time>,
}
