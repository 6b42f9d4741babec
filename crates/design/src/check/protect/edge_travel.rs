//! Whether a contact edge has soft travel left when the leaf stands, from end to end of what it covers.
//!
//! After the edge has switched the leaf still goes the way of its reaction and its braking; that much travel has to be left
//! in it. The squeeze that follows is foretold from the edge's stiffness, for the force gauge to confirm. Where a force is
//! measured at the lowest and the highest place of a leaf the edge must be live: at most 50 mm dead at the bottom and 300 mm
//! at the top.

use super::means::is_sensor;
use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::motion::cruise_of;
use crate::check::motion::stopping::stop;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{EdgeForce, EdgePeakForce, En12453ClosingTestPoints};
use quantity::Quantity as _;
use site::{Device, Gate, Leaf, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-edge-travel",
    codes: BOTH,
    leaves_open: "corners and joints between two edges, an edge in the cold, which is stiffer, and a body that meets it at a slant; a force gauge at three heights at full speed shows it",
    concerns: "each contact edge that protects people",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site.device.iter().filter(|device| is_edge(device)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            travel(asking, site, device)
        });
    }
}

/// A contact edge that protects people.
fn is_edge(device: &Device) -> bool {
    is_sensor(device) && device.protection == Some(ProtectionType::B2)
}

fn travel<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let gate = gate_of(asking, site, device)?;
    let left = read!(asking, device.soft_travel);
    let squeeze = squeezed(asking, site, gate, device);
    let stop = stop(asking, site, gate, device);
    let ends = dead_ends(asking, gate, device);
    let (left, squeeze, stop, ends) = (left?, squeeze?, stop?, ends?);
    asking.say(|print| {
        format!(
            "After {} has switched the leaf still goes {}, with {} of soft travel left in it; the squeeze is then {}, which is no force test.",
            device.id,
            print.q(stop.total_distance),
            print.q(left),
            print.q(squeeze.force)
        )
    });
    let soft = Comparison::at_most(
        Labeled::new("way on after the edge has switched", stop.total_distance),
        Labeled::new("soft travel left in the edge", left),
    );
    // A dead end decides only where there is one.
    let dead = ends.into_iter().filter(|end| !end.holds());
    Outcome::worst([soft].into_iter().chain(dead)).ok_or(Halt)
}

/// The squeeze behind an edge when the leaf stands.
pub(super) fn squeezed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<EdgeForce, Halt> {
    let speed = cruise_of(asking, gate);
    let device_time = read!(asking, device.response_time);
    let controller_time = match operator_of(asking, site, gate) {
        Ok(operator) => read!(asking, operator.reaction_time),
        Err(halt) => Err(halt),
    };
    let deceleration = read!(asking, gate.motion?.stopping_deceleration);
    let actuation = read!(asking, device.actuation_travel);
    let left = read!(asking, device.soft_travel);
    let soft_stiffness = read!(asking, device.stiffness);
    let hard_stiffness = read!(asking, device.hard_stiffness);
    let actuation_travel = actuation?;
    asking.work(&EdgePeakForce {
        speed: speed?,
        response: device_time? + controller_time?,
        deceleration: deceleration?,
        actuation_travel,
        soft_stiffness: soft_stiffness?,
        soft_travel: actuation_travel + left?,
        hard_stiffness: hard_stiffness?,
    })
}

/// What is dead below and above an upright edge, against the places where forces are measured. Nothing for an edge that
/// lies level.
fn dead_ends<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<Vec<Comparison>, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let leaf = of_edge(asking, gate, device)?;
    let clearance = read!(asking, leaf.ground_clearance);
    let height = read!(asking, leaf.height);
    let ([x, y, from], [far_x, far_y, to]) = (at?, to?);
    let (bottom, height) = (clearance?, height?);
    let along = (far_x - x).base().hypot((far_y - y).base());
    let tall = (to - from).base().abs();
    if along > tall {
        return Ok(Vec::new());
    }
    let leaf_top = bottom + height;
    let Some(points) = asking.work_if_in_reach(&En12453ClosingTestPoints {
        leaf_bottom: bottom,
        leaf_top,
    }) else {
        return Ok(Vec::new());
    };
    let (low, high) = if from < to { (from, to) } else { (to, from) };
    Ok(vec![
        Comparison::at_most(
            Labeled::new("lower end of the edge", low),
            Labeled::new("lowest place at which a force is measured", points.low),
        ),
        Comparison::at_most(
            Labeled::new("highest place at which a force is measured", points.high),
            Labeled::new("upper end of the edge", high),
        ),
    ])
}

/// The leaf that carries the edge; the first of the gate for one that is fixed.
fn of_edge<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<&'s Leaf, Halt> {
    let carries = |leaf: &&Leaf| {
        device
            .carried_by
            .as_ref()
            .is_none_or(|name| *name == leaf.id)
    };
    asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.iter().find(carries),
        "[{ id = \"leaf\" }]",
    )
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        [[gate.leaf]]
        id = "leaf"
        height = "1.8 m"
        ground_clearance = "50 mm"
        [gate.motion]
        cruise_speed = "0.3 m/s"
        stopping_deceleration = "2 m/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        carried_by = "leaf"
        at = ["0 m", "0 m", "60 mm"]
        to = ["0 m", "0 m", "1.80 m"]
        response_time = "20 ms"
        actuation_travel = "10 mm"
        soft_travel = "60 mm"
        stiffness = "4 N/mm"
        hard_stiffness = "75 N/mm"
    "#;

    #[test]
    fn holds_with_soft_travel_left() {
        let finding = only(&CHECK, SITE);
        // By hand: 0.3 · 0.1 + 0.09 / 4 = 52.5 mm; 4 N/mm · 62.5 mm = 250 N.
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("250 N"), "{}", finding.sentence);
    }

    #[test]
    fn fails_when_squeezed_flat_and_with_a_dead_end() {
        for (was, is) in [
            (
                "\"60 mm\"\n        stiffness",
                "\"50 mm\"\n        stiffness",
            ),
            ("\"60 mm\"]", "\"150 mm\"]"),
            ("\"1.80 m\"]", "\"1.40 m\"]"),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_its_stiffness_and_travel() {
        let bare = SITE
            .replace("        stiffness = \"4 N/mm\"", "")
            .replace("soft_travel = \"60 mm\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
