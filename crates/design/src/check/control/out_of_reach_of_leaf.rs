//! How far each control stands from the moving leaf, wherever that is in its travel, and whether an arm from the other side
//! reaches it through a fence.

use super::envelope::envelopes;
use super::fixed_controls;
use crate::asking::{Asking, Wants, read};
use crate::check::drive::operator_of;
use crate::check::plane::{Point, from};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::protection::{ControlDistance, Iso13857Reach, OpeningShape};
use quantity::{Length, Quantity as _};
use site::{Device, FixedThing, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-out-of-reach-of-leaf",
    codes: BOTH,
    leaves_open: "moving arms and rams of the drive, reaching with a stick, and people who lean over a fence",
    concerns: "each control that is worked where it hangs",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for device in fixed_controls(site, gate) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                out_of_reach(asking, site, gate, device)
            });
        }
    }
}

fn out_of_reach<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Answer {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let leaves = envelopes(asking, gate);
    let operator = operator_of(asking, site, gate)
        .and_then(|operator| read!(asking, operator.control_distance));
    let ([x, y, _], leaves, manual_distance) = (at?, leaves?, operator?);
    let point = (x.base(), y.base());
    let nearest = leaves
        .iter()
        .map(|leaf| leaf.distance(&[point, point]))
        .fold(f64::INFINITY, f64::min);
    let distance = Length::from_base(nearest);
    let rule = asking.work(&ControlDistance {
        distance,
        manual_distance,
    })?;
    let far = Comparison::at_most(
        Labeled::new("least distance of a control", rule.least),
        Labeled::new("distance to the travel of the leaf", distance),
    );
    let through = through_fences(asking, gate, point)?;
    asking.say(|print| {
        let reached = through
            .iter()
            .find(|(_, reach)| !reach.holds())
            .map_or_else(String::new, |(thing, _)| {
                format!(" An arm through {} reaches it.", thing.id)
            });
        format!(
            "{} stands {} from the nearest place that the leaf comes to in its travel; at least {} is asked for.{reached}",
            capitalized(device.id.as_str()),
            print.q(distance),
            print.q(rule.least)
        )
    });
    Outcome::worst(std::iter::once(far).chain(through.into_iter().map(|(_, reach)| reach)))
        .ok_or(Halt)
}

/// Fences with openings, and how far an arm through them reaches toward a control on the property.
fn through_fences<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    control: Point,
) -> Result<Vec<(&'s FixedThing, Comparison)>, Halt> {
    let mut found = Vec::new();
    let open = |thing: &&FixedThing| thing.opening.is_some();
    for thing in gate.nearby.iter().filter(open) {
        if control.1 <= 0.0 {
            continue;
        }
        let ends = [
            asking.position(&thing.origin, "from", thing.from.as_ref()),
            asking.position(&thing.origin, "to", thing.to.as_ref()),
        ];
        let opening = read!(asking, thing.opening)?;
        let [start, end] = ends;
        let flat = |[x, y, _]: [Length; 3]| (x.base(), y.base());
        let away = Length::from_base(from(control, &[flat(start?), flat(end?)]));
        let guard = Iso13857Reach {
            shape: OpeningShape::Slot,
            opening,
        };
        if opening.base() <= 0.0 {
            continue;
        }
        let Some(reach) = asking.work_if_in_reach(&guard) else {
            return asking.lack(&thing.origin, "opening", Wants::Written("\"2 in\""));
        };
        found.push((
            thing,
            Comparison::at_most(
                Labeled::new("reach of an arm through the fence", reach.distance),
                Labeled::new("distance of the control behind it", away),
            ),
        ));
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = "0 ft"
        thickness = "2 in"
        height = "6 ft"
        ground_clearance = "2 in"
        [[operator]]
        id = "drive"
        gate = "main"
        control_distance = "0 ft"
        [[device]]
        id = "button"
        kind = "control"
        at = ["31 ft", "8 ft ± 2 in", "48 in"]
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "single-swing"
        clear_opening = "4 m"
        travel_angle = "90°"
        swings = "into the property"
        [[gate.leaf]]
        id = "leaf"
        length = "4 m"
        thickness = "0.1 m"
        height = "1.8 m"
        ground_clearance = "50 mm"
        [[operator]]
        id = "drive"
        gate = "main"
        control_distance = "0 m"
        [[device]]
        id = "button"
        kind = "control"
        at = ["0 m", "4 m", "1.1 m"]
    "#;

    #[test]
    fn holds_eight_feet_from_the_run_back() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // 8 ft less half of 2 in.
        let away = finding.capacity.unwrap().value.unwrap();
        assert!((away / 0.3048 - (8.0 - 1.0 / 12.0)).abs() < 1e-9, "{away}");
    }

    #[test]
    fn fails_near_the_run_back_though_the_opening_is_far() {
        let near = SITE.replace("8 ft ± 2 in", "3 ft");
        assert_eq!(only(&CHECK, &near).verdict, Verdict::Fails);
        let manual = SITE.replace("control_distance = \"0 ft\"", "control_distance = \"8 ft\"");
        assert_eq!(only(&CHECK, &manual).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_in_the_arc_of_a_leaf() {
        let finding = only(&CHECK, SWING);
        // From the hinge at 4 m the point (0, 4) is √32 m away, the tip sweeps at 4 m: √32 − 4 − 0.05 = 1.607 m.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let away = finding.capacity.unwrap().value.unwrap();
        assert!((away - (32.0_f64.sqrt() - 4.05)).abs() < 1e-9, "{away}");
        let inside = only(
            &CHECK,
            &SWING.replace("[\"0 m\", \"4 m\"", "[\"2 m\", \"2 m\""),
        );
        assert!(inside.capacity.unwrap().value.unwrap().abs() < 1e-12);
        let outside = only(
            &CHECK,
            &SWING.replace("[\"0 m\", \"4 m\"", "[\"0 m\", \"-2 m\""),
        );
        assert_eq!(outside.verdict, Verdict::Holds, "{}", outside.sentence);
    }

    #[test]
    fn fails_within_an_arm_of_a_fence() {
        let fence = "[[gate.nearby]]\nid = \"fence\"\nwhat = \"mesh\"\nopening = \"2 in\"\nfrom = [\"30 ft\", \"7 ft\", \"0 ft\"]\nto = [\"40 ft\", \"7 ft\", \"0 ft\"]\n[[operator]]";
        let text = SITE.replace("[[operator]]", fence);
        let finding = only(&CHECK, &text);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("through fence"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_place_and_manual() {
        let bare = SITE
            .replace("at = [\"31 ft\", \"8 ft ± 2 in\", \"48 in\"]", "")
            .replace("control_distance = \"0 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
