//! A part of the circuits with every value at its bad end, solved in each case.

use super::{Worked, asking, missing, place};
use crate::circuit::lower::Lowered;
use crate::circuit::state::{at_battery_end, in_each_case, lowered};
use crate::circuit::{CASES, Circuits, How, Part, PowerCase, State};
use quantity::Voltage;
use site::Id;

/// A part at its worst.
pub(super) struct Worst<'c, 's> {
    circuits: &'c Circuits<'s>,
    pub(super) part: &'c Part<'s>,
    lowered: Option<Lowered>,
    ended: Worked<Voltage>,
    /// What keeps it from being worked.
    pub(super) missing: Vec<String>,
}

impl<'c, 's> Worst<'c, 's> {
    pub(super) fn of(circuits: &'c Circuits<'s>, part: &'c Part<'s>) -> Self {
        let mut asking = asking(circuits);
        let lowered = lowered(circuits, &mut asking, part, How::BadEnd).ok();
        let ended = match at_battery_end(circuits, &mut asking, part) {
            Ok(Some(volts)) => Worked::Known(volts),
            Ok(None) => Worked::Apart,
            Err(_) => Worked::Unknown,
        };
        let refused = lowered
            .as_ref()
            .is_some_and(|lowered| in_each_case(&mut asking, (part, None), lowered, None).is_err());
        Self {
            missing: missing(&asking),
            lowered: lowered.filter(|_| !refused),
            circuits,
            part,
            ended,
        }
    }

    /// Its states in each case, something drawing its own greatest current; nothing where it cannot be worked.
    pub(super) fn states(&self, own: Option<&Id>) -> Option<Vec<Worked<State<'s>>>> {
        let mut asking = asking(self.circuits);
        let ended = match self.ended {
            Worked::Known(volts) => Some(volts),
            Worked::Unknown | Worked::Apart => None,
        };
        let lowered = self.lowered.as_ref()?;
        let states = in_each_case(&mut asking, (self.part, own), lowered, ended).ok()?;
        let mut all = vec![Worked::Unknown; CASES.len()];
        if self.ended == Worked::Apart {
            all[place(PowerCase::BatteryEnd)] = Worked::Apart;
        }
        for state in states {
            let at = place(state.case());
            all[at] = Worked::Known(state);
        }
        Some(all)
    }
}
