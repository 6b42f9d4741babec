//! Whether the slow-down of each gate begins early enough for it to creep into its stop, whatever the weather.
//!
//! All ways are along the line of travel; of a leaf that turns, along the arc of its free end. A leaf that slides grows
//! with the heat: the whole range from the coldest to the hottest air counts, since nobody knows on which day it was set.

use super::cruise_of;
use super::profile::turns;
use crate::asking::{Asking, pick, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{SlowDownSetpoint, StoppingDistance};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio, TemperatureDifference, ThermalExpansion, Time};
use site::{Gate, GateKind, Material, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-slowdown-setpoint",
    codes: BOTH,
    leaves_open: "a belt or clutch that slips, wind that pushes the leaf on while it slows, and marks that have moved; ten cycles show the gap at the stop",
    concerns: "each gate",
    ask,
};

static STEEL: Source = Source {
    work: "linear expansion of carbon steel, 11.7 µm/(m·K)",
    clause: "",
    evidence: Evidence::Seen,
    seen: "http://mathhelpforum.com/advanced-applied-math/4592-steel-beam.html",
};
static ALUMINUM: Source = Source {
    work: "linear expansion of aluminum, 23.4 µm/(m·K)",
    clause: "",
    evidence: Evidence::Memory,
    seen: "handbooks, from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            set_point(asking, site, gate)
        });
    }
}

fn set_point<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let set = read!(asking, gate.motion?.slow_down_distance);
    let cruise_speed = cruise_of(asking, gate);
    let creep_speed = read!(asking, gate.motion?.creep_speed);
    let deceleration = read!(asking, gate.motion?.deceleration);
    let repeatability = read!(asking, gate.motion?.limit_repeatability);
    let reaction_time = match operator_of(asking, site, gate) {
        Ok(operator) => read!(asking, operator.reaction_time),
        Err(halt) => Err(halt),
    };
    let growing = growing(asking, site, gate);
    let (creep_speed, deceleration, growing) = (creep_speed?, deceleration?, growing?);
    let last_stop = asking.work(&StoppingDistance {
        speed: creep_speed,
        device_time: Time::from_base(0.0),
        controller_time: Time::from_base(0.0),
        deceleration,
        slope: Ratio::from_base(0.0),
    })?;
    let needed = asking.work(&SlowDownSetpoint {
        cruise_speed: cruise_speed?,
        creep_speed,
        deceleration,
        reaction_time: reaction_time?,
        creep_distance: last_stop.total_distance,
        repeatability: repeatability?,
        moving_length: growing.length,
        expansion: growing.expansion,
        temperature_change: growing.change,
    })?;
    let set = set?;
    asking.say(|print| {
        format!(
            "Gate {} begins to slow down {} before its stop; it needs {}: {} to brake, the last stop, what the limit strays, and {} of growth.",
            gate.id,
            print.q(set),
            print.q(needed.set_point),
            print.q(needed.braking_distance),
            print.q(needed.growth)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("distance that it needs", needed.set_point),
        Labeled::new("distance before the stop that is set", set),
    ))
}

/// What grows between the mark of the limit and the stop.
struct Growing {
    length: Length,
    expansion: ThermalExpansion,
    change: TemperatureDifference,
}

impl Growing {
    const NONE: (f64, f64, f64) = (0.0, 0.0, 0.0);

    fn of((length, expansion, change): (f64, f64, f64)) -> Self {
        Self {
            length: Length::from_base(length),
            expansion: ThermalExpansion::from_base(expansion),
            change: TemperatureDifference::from_base(change),
        }
    }
}

/// The leaf of a slide, over the range of the air's temperature; a leaf that turns or lifts does not grow along its way.
fn growing<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Growing, Halt> {
    if turns(gate) || gate.kind == GateKind::VerticalLift {
        return Ok(Growing::of(Growing::NONE));
    }
    let leaf = asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.first(),
        "[{ id = \"leaf\", length = \"20 ft\", material = \"steel\" }]",
    )?;
    let length = read!(asking, leaf.length);
    let material = pick!(asking, leaf.material);
    let coldest = read!(asking, site.climate?.coldest);
    let hottest = read!(asking, site.climate?.hottest);
    let expansion = match material? {
        Material::Steel | Material::StainlessSteel => {
            asking.rest_on(&STEEL);
            11.7e-6
        }
        Material::Aluminum => {
            asking.rest_on(&ALUMINUM);
            23.4e-6
        }
        Material::Timber | Material::Plastic => {
            return asking.refuse("no growth with heat is in print here for timber or plastic; set the slow-down on a hot and on a cold day");
        }
    };
    let change = (hottest?.base() - coldest?.base()).max(0.0);
    Ok(Growing::of((length?.base(), expansion, change)))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        coldest = "10 °F"
        hottest = "100 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        leaf = [{ id = "leaf", length = "20 ft", material = "steel" }]
        [gate.motion]
        cruise_speed = "1 ft/s"
        creep_speed = "0.3 ft/s"
        deceleration = "0.8 ft/s²"
        limit_repeatability = "1/4 in"
        slow_down_distance = "14 in ± 1/2 in"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "100 ms"
    "#;

    #[test]
    fn holds_with_an_early_set_point() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand, in feet: 1 · 0.1 + 1² / 1.6 (slow-down and last stop) + 1/48 + 20 · 11.7e-6 · 50.
        let feet = 0.1 + 1.0 / 1.6 + 1.0 / 48.0 + 20.0 * 11.7e-6 * 50.0;
        let demand = finding.demand.and_then(|demand| demand.value);
        assert!(demand.is_some_and(|meters| (meters / 0.3048 - feet).abs() < 1e-6));
    }

    #[test]
    fn fails_when_it_would_hit_its_stop() {
        let late = SITE.replace("14 in ± 1/2 in", "6 in");
        assert_eq!(only(&CHECK, &late).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_set_point_and_repeatability() {
        let bare = SITE
            .replace("slow_down_distance = \"14 in ± 1/2 in\"", "")
            .replace("limit_repeatability = \"1/4 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_for_aluminum_whose_growth_is_from_memory() {
        let light = SITE.replace("\"steel\"", "\"aluminum\"");
        assert_eq!(only(&CHECK, &light).verdict, Verdict::UnknownUntil);
    }
}
