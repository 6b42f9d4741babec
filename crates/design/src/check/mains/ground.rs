//! The equipment grounding conductor that the breaker and the size of a circuit ask for in the United States.

use crate::asking::{Asking, pick};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::mains::{NecAmpacity, NecEquipmentGround, NecSmallConductor, RatedTemperature};
use formula::power::metal_area;
use quantity::{Awg, ConductorSize, Current, celsius};
use site::{Cable, Circuit};

/// The ground of a circuit.
pub(super) struct Ground {
    pub(super) asked: ConductorSize,
    pub(super) laid: ConductorSize,
    pub(super) compared: Comparison,
}

/// The ground as laid against the ground that is asked for, which has grown with the conductors.
pub(super) fn compared<'s>(
    asking: &mut Asking<'s>,
    circuit: &'s Circuit,
    cable: Result<&'s Cable, Halt>,
    breaker: Result<Current, Halt>,
) -> Result<Ground, Halt> {
    let protective = pick!(asking, circuit.protective);
    let laid = cable.and_then(|cable| pick!(asking, cable.size));
    let (protective, laid, breaker) = (protective?, laid?, breaker?);
    let Some(needed) = needed(breaker) else {
        return asking.refuse("so large a circuit is not a gate's; ask an engineer");
    };
    let ground = asking.work(&NecEquipmentGround {
        breaker,
        needed,
        laid,
    })?;
    let compared = Comparison::at_most(
        Labeled::new(
            "cross-section of the ground that is asked for",
            metal_area(ground.size),
        ),
        Labeled::new("cross-section of the ground", metal_area(protective)),
    );
    Ok(Ground {
        asked: ground.size,
        laid: protective,
        compared,
    })
}

/// Gauges from thin to thick.
const GAUGES: [i8; 9] = [14, 12, 10, 8, 6, 4, 3, 2, 1];

/// The thinnest copper that a breaker may protect.
pub(super) fn needed(breaker: Current) -> Option<ConductorSize> {
    GAUGES
        .into_iter()
        .filter_map(Awg::new)
        .map(ConductorSize::Gauge)
        .find(|size| carries(*size).is_some_and(|limit| limit >= breaker))
}

/// What a conductor may carry behind a breaker, warm terminals allowed.
fn carries(size: ConductorSize) -> Option<Current> {
    use formula::Formula as _;
    let small = NecSmallConductor { size }.evaluate().ok();
    let by_table = || {
        NecAmpacity {
            size,
            insulation: RatedTemperature::SeventyFive,
            terminals: RatedTemperature::SeventyFive,
            ambient: celsius(30.0),
            conductors: 2,
        }
        .evaluate()
        .ok()
        .map(|found| found.ampacity)
    };
    small.map(|found| found.largest).or_else(by_table)
}
