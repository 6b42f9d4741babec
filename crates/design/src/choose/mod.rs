//! Better choices: which part suits, which anchors and which pad hold, which conductors suffice, which ways are
//! dug, and where the pins of a drive go.

mod anchors;
pub(crate) mod conductors;
mod mounting;
mod pads;
mod parts;
mod protection;
mod routes;
mod ruled_out;
mod tried;

pub use anchors::{AnchorChoice, AnchorWay, anchor_choices};
pub use conductors::{
    Change, ConductorChoice, ConductorLine, ConductorRun, ConductorVoltage, conductor_choice,
};
pub use mounting::{Mounted, Pin, mountings};
pub use pads::{PadChoice, PadSize, pad_choices};
pub use parts::{Choice, Choosable, choose};
pub use protection::{ProtectionChoice, ProtectionSet, protection_choices};
pub use routes::{RouteChoice, RouteWay, route_choice};
pub use ruled_out::RuledOut;
pub use tried::Candidate;
