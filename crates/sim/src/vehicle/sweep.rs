//! Very many drives, each made from its number alone: the number replays it.

use super::drive::{Drive, Ending};
use super::leaf::Leaf;
use super::outline::Facing;
use super::world::World;
use formula::OutOfReach;
use quantity::{Length, Quantity as _, Time, Velocity};

/// How many drives ended how.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Tally {
    /// The leaf did not come upon the vehicle.
    pub untouched: u64,
    /// The leaf came upon it.
    pub touched: u64,
    /// It drove into a leaf across its way.
    pub driven_into: u64,
    /// The first that was touched.
    pub first_touched: Option<u64>,
}

/// Steps that spread numbers evenly over six values at once: powers of the root of x⁷ = x + 1, as fractions of 2⁶⁴.
const STEPS: [u64; 6] = [
    0xE60E_2B72_2B53_AEEB,
    0xCEBD_76D9_EDB6_A8EF,
    0xB9C9_AA3A_51D0_0B65,
    0xA6F5_777F_6F88_983F,
    0x9609_C71E_B7D0_3F7A,
    0x86D5_16E5_0B04_AB1B,
];

impl World {
    /// The drive of a number: any stopping place around the leaf, any moment to close, any speed up to the greatest.
    pub fn drive_of(&self, number: u64, greatest: Velocity) -> Drive {
        let part = |at: usize| {
            let spread = STEPS[at].wrapping_mul(number.wrapping_add(1));
            // The highest 53 bits, which a number holds exactly.
            #[allow(clippy::cast_precision_loss, reason = "53 bits fit")]
            let share = (spread >> 11) as f64 / (1_u64 << 53) as f64;
            share
        };
        let length = self.outline.length().base();
        let facing = if number.is_multiple_of(2) {
            Facing::In
        } else {
            Facing::Out
        };
        let ends = match facing {
            Facing::In => (-2.0, length + 2.0),
            Facing::Out => (-length - 2.0, 2.0),
        };
        let speed = greatest.base() * (0.05 + 0.95 * part(1));
        let (left, right) = self.middles();
        Drive {
            facing,
            middle: Length::from_base(left + (right - left) * part(2)),
            speed: Velocity::from_base(speed),
            stop: Length::from_base(ends.0 + (ends.1 - ends.0) * part(0)),
            stops_at: Time::from_base(0.0),
            stands: Time::from_base(if number.is_multiple_of(3) {
                0.0
            } else {
                60.0 * part(3)
            }),
            backs: number % 4 >= 2,
            wanted_at: Time::from_base(-20.0 + 80.0 * part(4)),
        }
    }

    /// Works the drives of so many numbers.
    ///
    /// # Errors
    ///
    /// Where the world cannot be as given, and for leaves that swing.
    pub fn sweep(&self, from: u64, count: u64, greatest: Velocity) -> Result<Tally, OutOfReach> {
        self.check()?;
        crate::plan::above_zero("greatest", greatest)?;
        if matches!(self.leaf, Leaf::Swing { .. }) {
            return Err(OutOfReach::new(
                "leaf",
                "drives past a leaf that swings are proved, not worked one by one",
            ));
        }
        let mut tally = Tally::default();
        for number in from..from.saturating_add(count) {
            match self.ending(&self.drive_of(number, greatest)) {
                Ending::Untouched => tally.untouched += 1,
                Ending::DrivenInto { .. } => tally.driven_into += 1,
                Ending::Touched { .. } => {
                    tally.touched += 1;
                    tally.first_touched = tally.first_touched.or(Some(number));
                }
            }
        }
        Ok(tally)
    }
}
