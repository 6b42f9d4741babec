//! What comes out of a travel.

use formula::OutOfReach;
use quantity::{Force, Length, Ratio, Time, Velocity};

/// The leaf at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Time since the start.
    pub time: Time,
    /// Distance from where it started.
    pub position: Length,
    /// Speed, below zero on the way back.
    pub speed: Velocity,
    /// Force of the drive on the leaf, below zero while it holds back or pulls back.
    pub force: Force,
    /// Force as a share of the strongest point of the drive's curve; the motor's current goes about with it.
    pub share: Ratio,
}

/// A travel in figures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Summary {
    /// Time until the leaf stands.
    pub total_time: Time,
    /// Highest speed on the way out.
    pub peak_speed: Velocity,
    /// Greatest force of the drive, either way.
    pub peak_force: Force,
    /// Steady force that would heat the motor as much.
    pub rms_force: Force,
    /// Where the leaf stands at the end.
    pub position: Length,
    /// How far it went beyond where it should stand.
    pub overshoot: Length,
    /// Speed with which it passed where it should stand; zero where it did not.
    pub arrival_speed: Velocity,
    /// What happened at the obstacle, if it met one.
    pub contact: Option<Contact>,
}

/// What happened at an obstacle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Contact {
    /// Greatest force on the obstacle.
    pub peak_force: Force,
    /// How far the leaf went on after the contact.
    pub overtravel: Length,
    /// Time from the contact to the start back.
    pub start_back_time: Time,
}

/// A travel that does not end as it should.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum Trouble {
    /// An input that makes no sense.
    #[error("{}: {}", .0.input, .0.why)]
    OutOfReach(#[from] OutOfReach),
    /// The drive is too weak to move the leaf on.
    #[error("the leaf stalls: the drive cannot move it on from where it stands")]
    Stalls {
        /// Where it stands.
        at: Length,
    },
    /// The drive is too weak for the speed.
    #[error("the leaf never reaches its speed: the drive has no more force there")]
    NeverReachesItsSpeed {
        /// Highest speed that it reached.
        reached: Velocity,
        /// Speed that was wanted.
        wanted: Velocity,
    },
    /// The load drives the leaf faster than the drive can hold it.
    #[error("the leaf runs away: its load drives it on harder than the drive holds it back")]
    RunsAway {
        /// Where it had run well past its speed.
        at: Length,
        /// Its speed there.
        speed: Velocity,
    },
    /// It is still under way after ten minutes.
    #[error("the leaf is still under way after ten minutes")]
    NeverArrives,
}
