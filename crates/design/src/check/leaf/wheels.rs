//! The hardest-worked wheel and guide of a leaf on a track.

use super::{center_along, mass};
use crate::asking::{Asking, read};
use crate::check::wind::guides::slide_wind;
use crate::outcome::{Comparison, Halt, Labeled};
use formula::leaf::{CantileverGateRollers, Metal, MetalProperties, WheelContactPressure};
use quantity::{Force, Length, Quantity as _, Ratio};
use site::{Gate, Leaf, RollingPair, Site};

/// Poisson's ratio of steel.
const POISSON: f64 = 0.3;

/// All that one end of the leaf presses on its wheels, on one of them.
pub(super) fn hardest<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Comparison, Halt> {
    let mass = mass(asking, leaf);
    let center = center_along(asking, leaf);
    let length = read!(asking, leaf.length);
    let spacing = read!(asking, gate.wheels?.spacing);
    let rated = read!(asking, gate.wheels?.rated_load);
    let climber = asking.read_if_there(&gate.origin, "climbing_load", gate.climbing_load.as_ref());
    let (mass, center, length, spacing) = (mass?, center?, length?, spacing?);
    let off_middle = Length::from_base((center - length / 2.0).base().abs());
    let beyond = Length::from_base((length - spacing).base().max(0.0)) / 2.0;
    let loads = asking.work(&CantileverGateRollers {
        mass,
        center_ahead: off_middle - spacing / 2.0,
        spacing,
        tip_load: climber.unwrap_or(Force::from_base(0.0)),
        tip_ahead: beyond,
    })?;
    contact(asking, gate, loads.push);
    Ok(Comparison::at_most(
        Labeled::new("load on one wheel", loads.push),
        Labeled::new("rated load of a wheel", rated?),
    ))
}

/// How hard a steel wheel presses on its track, as a figure in the working where its tread is known.
fn contact<'s>(asking: &mut Asking<'s>, gate: &'s Gate, load: Force) {
    let Some(wheels) = &gate.wheels else { return };
    if wheels.rolling != Some(RollingPair::SteelOnSteel) {
        return;
    }
    let diameter = asking.read_if_there(&wheels.origin, "diameter", wheels.diameter.as_ref());
    let tread = asking.read_if_there(&wheels.origin, "tread_width", wheels.tread_width.as_ref());
    let (Some(diameter), Some(tread_width)) = (diameter, tread) else {
        return;
    };
    let steel = MetalProperties {
        metal: Metal::Steel,
    };
    let Some(steel) = asking.work_if_in_reach(&steel) else {
        return;
    };
    asking.work_if_in_reach(&WheelContactPressure {
        load,
        diameter,
        tread_width,
        wheel_elasticity: steel.elasticity,
        wheel_poisson: Ratio::from_base(POISSON),
        rail_elasticity: steel.elasticity,
        rail_poisson: Ratio::from_base(POISSON),
    });
}

/// The design wind on the hardest-pressed guide, at the worst place of the travel.
pub(super) fn hardest_guide<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Comparison, Halt> {
    let wind = slide_wind(asking, site, gate, leaf);
    let rated = read!(asking, gate.guide?.rated_load);
    let (place, force) = wind?.hardest_guide();
    asking.note(|_| {
        format!(
            "A guide is pressed hardest with the leaf {}.",
            place.words()
        )
    });
    Ok(Comparison::at_most(
        Labeled::new("design wind on one guide", force),
        Labeled::new("rated load of a guide", rated?),
    ))
}
