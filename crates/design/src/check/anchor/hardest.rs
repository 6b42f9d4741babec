//! The case that asks most of a set of anchors.

use super::on_plate::Case;
use crate::outcome::{Comparison, Labeled};
use formula::OutOfReach;
use formula::standing::anchor_group::{AnchorMode, AnchorSet, Mode, PlateLoads};

/// The set under the loads of a case; what hangs on it all the time stays.
pub(crate) fn loaded(set: &AnchorSet, case: &Case) -> AnchorSet {
    AnchorSet {
        loads: PlateLoads {
            lasting_pull: set.loads.lasting_pull,
            ..case.loads
        },
        ..*set
    }
}

/// The case with the greatest share; one that a calculation refuses comes before all others.
pub(super) fn hardest(
    set: &AnchorSet,
    cases: &[Case],
    share: impl Fn(&AnchorSet) -> Result<f64, OutOfReach>,
) -> Option<(AnchorSet, &'static str)> {
    let tried = cases.iter().map(|case| {
        let loaded = loaded(set, case);
        let share = share(&loaded).unwrap_or(f64::INFINITY);
        (share, loaded, case.with)
    });
    tried
        .max_by(|(one, ..), (other, ..)| one.total_cmp(other))
        .map(|(_, loaded, with)| (loaded, with))
}

/// Greatest share of several ways to fail.
pub(super) fn greatest_share(modes: &[Mode]) -> f64 {
    modes.iter().map(Mode::share).fold(0.0, f64::max)
}

/// The way to fail that is used most.
pub(super) fn worst(modes: &[Mode]) -> Option<&Mode> {
    modes
        .iter()
        .max_by(|one, other| one.share().total_cmp(&other.share()))
}

/// A way to fail as demand against strength.
pub(super) fn compared(mode: &Mode) -> Comparison {
    Comparison::at_most(
        Labeled::new(asked(mode.way), mode.demand),
        Labeled::new(mode.way.words(), mode.strength),
    )
}

/// What is asked of the anchors in a way to fail.
fn asked(way: AnchorMode) -> &'static str {
    match way {
        AnchorMode::SteelTension | AnchorMode::PullOut => "factored pull on the worst anchor",
        AnchorMode::Breakout | AnchorMode::Bond => {
            "factored pull of the anchors that hold together"
        }
        AnchorMode::Blowout => "factored pull of the row at the edge",
        AnchorMode::LastingBond => "pull that hangs on the worst anchor all the time",
        AnchorMode::SteelShear | AnchorMode::StandOff => "factored shove on one anchor",
        AnchorMode::Toward(_) | AnchorMode::Along(_) => "factored shove on the row at the edge",
        AnchorMode::Pryout => "factored shove of the anchors that hold together",
    }
}
