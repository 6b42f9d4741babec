//! The values that have margins, as the site gives them: with their tolerance, and how they are known.

use super::GateWalk;
use super::devices::of_gate;
use quantity::{Measured, Quantity, print_measured};

impl GateWalk<'_> {
    /// All of them.
    pub(super) fn written(&self) -> [String; 3] {
        [
            self.written_reaction(),
            self.written_speed(),
            self.written_soft_travel(),
        ]
    }

    pub(super) fn written_reaction(&self) -> String {
        let operator = self.site.operators_of(self.gate).next();
        self.as_written(operator.and_then(|operator| operator.reaction_time.as_ref()))
    }

    /// Speed of a leaf that slides or is lifted; of one that turns, how fast it turns.
    pub(super) fn written_speed(&self) -> String {
        let Some(motion) = &self.gate.motion else {
            return String::new();
        };
        match &motion.cruise_turning_speed {
            Some(turning) => self.as_written(Some(turning)),
            None => self.as_written(motion.cruise_speed.as_ref()),
        }
    }

    /// That of the edge with the least of it.
    pub(super) fn written_soft_travel(&self) -> String {
        let all = of_gate(self.site, self.gate).filter(|device| !device.guards.is_empty());
        let least = all
            .filter_map(|device| device.soft_travel.as_ref())
            .min_by(|one, other| one.low().base().total_cmp(&other.low().base()));
        self.as_written(least)
    }

    fn as_written<Q: Quantity>(&self, measured: Option<&Measured<Q>>) -> String {
        measured.map_or_else(String::new, |measured| {
            print_measured(measured, self.print.units())
        })
    }
}
