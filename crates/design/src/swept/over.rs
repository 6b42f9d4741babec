//! Undersides over the grade of a way, and the roof beneath what hangs over the gate.

use super::course::Way;
use super::rig::Rolling;
use crate::asking::Asking;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::swept::{Lowest, OverGround, Under};

/// Before and behind the gate line, so far heights are looked at: ten steps (m).
const LOOKED: f64 = 7.5;

/// What a way leaves under a vehicle and over it.
pub(crate) struct Over {
    pub(crate) found: OverGround,
    /// The underside that comes nearest to the ground, above level ground.
    pub(crate) underside: Length,
}

impl Over {
    /// By how much the ground comes nearer to it than level ground is.
    pub(crate) fn rise(&self) -> Length {
        self.underside - self.found.room
    }

    /// The part, as one says it.
    pub(crate) fn part(&self) -> &'static str {
        match (self.found.part, self.found.unit) {
            (Lowest::Ahead, _) => "its front",
            (Lowest::Between, 0) => "its belly",
            (Lowest::Between, _) => "the trailer's belly",
            (Lowest::Behind, 0) => "its tail",
            (Lowest::Behind, _) => "the trailer's tail",
        }
    }
}

/// Drives a vehicle over the ground of a way.
pub(crate) fn over(
    asking: &mut Asking<'_>,
    rolling: &Rolling,
    under: &[Under],
    way: &Way,
) -> Result<Over, Halt> {
    let looked = Length::from_base(LOOKED);
    let stretch = (way.gate - looked, way.gate + looked);
    let found = asking.in_reach(rolling.rig.over(&way.ground, under, stretch))?;
    let of = under.get(found.unit).copied();
    let underside = of.map_or(Length::default(), |under| match found.part {
        Lowest::Ahead => under.ahead.unwrap_or(under.between),
        Lowest::Between => under.between,
        Lowest::Behind => under.behind.unwrap_or(under.between),
    });
    Ok(Over { found, underside })
}
