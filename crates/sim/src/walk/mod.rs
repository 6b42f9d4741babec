//! People who pass a moving leaf: whom it touches, how hard, and which device sees them first.
//!
//! The world is a plan with heights. x runs along the closed leaf from its latching side, y into the property, z up. A
//! person is a stack of upright cylinders that walks a straight line at one speed, stops on it, or stands there before the
//! leaf moves. A leaf is a prism on its plan of motion. What a device reports stops or turns the leaf after the delays
//! that are given. The first touch decides; what follows it is not followed.
//!
//! [`World::lower`] checks a world and makes it ready; [`Walk::evaluate`] works one [`Scenario`] exactly;
//! [`Walk::sweep`] works millions of them and counts; [`Walk::prove`] shows that none ends badly, or one that does;
//! [`World::margin`] says how far a value may go.

mod account;
mod any;
mod at_once;
mod batch;
mod body;
mod climb;
mod contact;
mod control;
mod course;
mod device;
mod evaluate;
mod field;
mod glance;
mod harm;
mod lane;
mod lean;
mod passed;
mod path;
mod people;
mod person;
mod profile;
mod prove;
mod reach;
mod report;
mod rising;
mod scenario;
mod sequence;
mod sieve;
mod standing;
mod stop;
mod sweep;
mod swing;
mod tally;
mod turning;
mod unproved;
mod watch;
mod wide;
mod world;

#[cfg(test)]
#[path = "../../tests/walk_world/mod.rs"]
mod demo;

pub use account::{Account, Frame, Pose, Sight};
pub use any::{AnyWalk, AnyWorld, Device};
pub use body::{Body, Cylinder, Speeds};
pub use control::{Answer, Controller, Limits};
pub use device::{Beam, ContactEdge, Direction, ForceSensing, Scanner, Spot};
pub use lane::Walk;
pub use lean::leaning;
pub use people::people;
pub use prove::{Margin, Proof, ReachProof, ReachVerdict, Verdict};
pub use reach::{Catch, Reach};
pub use rising::{LiftingLeaf, RisingLeaf, RisingPass, RisingWalk, RisingWorld, TurningLeaf};
pub use scenario::{Behavior, Class, Outcome, Scenario, Touch, Way};
pub use sequence::{Family, Habit, REPEATS};
pub use stop::Stop;
pub use sweep::{FamilyShares, Sweep, Worst};
pub use swing::{
    Face, Heft, LeafEdge, Measured, Opens, SwingLeaf, SwingPass, SwingWalk, SwingWorld, Toward,
    Turn,
};
pub use tally::Share;
pub use world::{Leaf, Pass, World};
