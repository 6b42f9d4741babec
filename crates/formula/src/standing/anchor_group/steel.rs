//! The steel of the worst anchor, pulled, shoved, and bent where it stands free.

use super::factors::{is_european, reduction};
use super::mode::{AnchorMode, Mode};
use super::pulls::Pulls;
use super::set::{AnchorMake, AnchorSet, Pattern, Seat};
use super::works::Works;
use crate::standing::{
    AnchorFailure, AnchorStandOff, AnchorSteel, AnchorSteelShear, AnchorSteelTension, En1992Steel,
    FastenerSteel, FreeEnd, ShearAnchor, UnderPlate,
};
use quantity::{Quantity as _, Ratio};

/// Strength reduction of steel that begins to yield in bending.
const BENDING: f64 = 0.9;

/// The steel of one anchor in tension, and the area of its thread.
pub(super) fn steel<W: Works>(set: &AnchorSet, works: &mut W) -> Result<AnchorSteel, W::Stop> {
    let reduction = reduction(set, AnchorFailure::SteelTension, works)?;
    works.work(&AnchorSteelTension {
        diameter: set.rod.diameter,
        pitch: set.rod.pitch,
        tensile_strength: set.rod.tensile_strength,
        yield_strength: set.rod.yield_strength,
        reduction,
    })
}

pub(super) fn in_tension<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
    modes: &mut Vec<Mode>,
) -> Result<(), W::Stop> {
    let strength = if is_european(set) {
        european(set, pulls, works)?.tension
    } else {
        pulls.steel.design
    };
    modes.push(Mode {
        way: AnchorMode::SteelTension,
        demand: pulls.greatest,
        strength,
    });
    Ok(())
}

pub(super) fn in_shear<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
) -> Result<Mode, W::Stop> {
    if let Seat::Nuts { stand_off } = set.seat {
        let pull = if pulls.press > pulls.greatest {
            pulls.press
        } else {
            pulls.greatest
        };
        let bent = works.work(&AnchorStandOff {
            diameter: set.rod.diameter,
            pitch: set.rod.pitch,
            yield_strength: set.rod.yield_strength,
            stand_off,
            end: free_end(set),
            pull,
            reduction: Ratio::from_base(BENDING),
        })?;
        return Ok(Mode {
            way: AnchorMode::StandOff,
            demand: pulls.shove_each,
            strength: bent.shove,
        });
    }
    let strength = if is_european(set) {
        european(set, pulls, works)?.shear
    } else {
        let reduction = reduction(set, AnchorFailure::SteelShear, works)?;
        let sheared = works.work(&AnchorSteelShear {
            anchor: if set.rod.make == AnchorMake::HeadedStud {
                ShearAnchor::WeldedStud
            } else {
                ShearAnchor::Bolt
            },
            under_plate: if set.seat == Seat::Bare {
                UnderPlate::Bare
            } else {
                UnderPlate::Grout
            },
            diameter: set.rod.diameter,
            pitch: set.rod.pitch,
            tensile_strength: set.rod.tensile_strength,
            yield_strength: set.rod.yield_strength,
            reduction,
        })?;
        sheared.design
    };
    Ok(Mode {
        way: AnchorMode::SteelShear,
        demand: pulls.shove_each,
        strength,
    })
}

/// Nuts below and above a plate on several rows, or on a circle, keep it level.
fn free_end(set: &AnchorSet) -> FreeEnd {
    match set.pattern {
        Pattern::Rows { in_row, rows, .. } if in_row < 2 || rows < 2 => FreeEnd::Turns,
        _ => FreeEnd::Held,
    }
}

fn european<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
) -> Result<FastenerSteel, W::Stop> {
    works.work(&En1992Steel {
        area: pulls.steel.area,
        ultimate_strength: set.rod.tensile_strength,
        yield_strength: set.rod.yield_strength,
        thread_factor: Ratio::from_base(1.0),
    })
}
