//! What is under the bottom edge: a foot, a child who lies there, a slope that closes the gap as the leaf swings.
//!
//! Under a swing leaf the gap is taken at every level of the ground that was measured within its sweep, at the closed leaf,
//! and at its tip by the fall across the gate line. United States: a gap between 4 and 16 in is a zone, and more than 6 in
//! wants a contact edge along the bottom. Europe: the gap must not close on the largest part of the body that gets in. A
//! leaf that lifts closes on the ground over its whole width. Nothing may stick down more than 1/2 in.

use super::open;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::zone::means::covering;
use crate::zone::{self, Zone, leaf, swing, under};
use formula::protection::{
    ContactSensorPlace, F2200Construction, GateItem, GateKind as Kind, SensorDemand, SensorPlace,
};
use quantity::Word as _;
use site::{CodeBasis, DeviceKind, Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-under-edge",
    codes: BOTH,
    leaves_open: "ground between the levels that were taken, and what rolls or grows under the leaf later",
    concerns: "each gate whose leaf slides, swings, turns up or lifts",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked = |gate: &&Gate| gate.kind != GateKind::BarrierArm;
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            let smooth = smooth(asking, gate);
            let zones = match gate.kind {
                _ if leaf::swings(gate) => under::under(asking, site, gate),
                GateKind::VerticalLift | GateKind::VerticalPivot => ground(asking, site, gate),
                _ => Ok(Vec::new()),
            };
            let (smooth, zones) = (smooth?, zones?);
            let along = bottom_edges(asking, site, gate, &zones)?;
            let below = open::answer(asking, (site, gate), &zones, NOTHING)?;
            worst(asking, gate, (smooth, along), below)
        });
    }
}

const NOTHING: &str =
    "The bottom edge of a leaf that slides does not come down on anything; it has to be smooth.";

/// The ground under a leaf that rises.
fn ground<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Vec<Zone>, Halt> {
    let zones = zone::leading(asking, site, gate)?;
    let below = |zone: &Zone| zone.against == "the ground";
    Ok(zones.into_iter().filter(below).collect())
}

/// What sticks down most from any leaf, against what may.
fn smooth<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Comparison>, Halt> {
    let each: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| sticks_down(asking, leaf))
        .collect();
    each.into_iter().collect()
}

fn sticks_down<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Comparison, Halt> {
    let Some(outside) = &leaf.outside else {
        return asking.lack(
            &leaf.origin,
            "outside.bottom_protrusion",
            Wants::Written("\"1/4 in\""),
        );
    };
    let measured = read!(asking, outside.bottom_protrusion)?;
    let rule = asking.work(&F2200Construction {
        item: GateItem::BottomProtrusion,
        measured,
    })?;
    Ok(Comparison::at_most(
        Labeled::new("lowest thing below the bottom edge", measured),
        Labeled::new("what may stick down", rule.limit),
    ))
}

/// Leaves that need a contact edge along the bottom, and how many of them have one; United States, swing leaves.
fn bottom_edges<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    zones: &[Zone],
) -> Result<Option<Comparison>, Halt> {
    if site.site.code_basis != CodeBasis::Us || !leaf::swings(gate) {
        return Ok(None);
    }
    let Some(kind) = Kind::from_word(gate.kind.word()) else {
        return Ok(None);
    };
    let (mut needed, mut there) = (0_u32, 0_u32);
    for (turn, zone) in swing::turns(asking, site, gate)?.iter().zip(zones) {
        let bottom_gap = under::below(asking, gate, turn)?.widest;
        let place = asking.work(&ContactSensorPlace {
            gate: kind,
            place: SensorPlace::BottomEdge,
            bottom_gap,
        })?;
        if place.demand == SensorDemand::Needed {
            needed += 1;
            let devices = covering(asking, site, gate, (zone, site::Direction::Opening))?;
            let edge = |device: &&&site::Device| device.kind == DeviceKind::ContactEdge;
            there += u32::from(devices.iter().find(edge).is_some());
        }
    }
    Ok((needed > 0).then(|| {
        Comparison::at_most(
            Labeled::new("leaves more than 6 in above ground", needed),
            Labeled::new("of these with a contact edge along the bottom", there),
        )
    }))
}

/// The worst of what sticks down, of missing edges and of what the zones said; the words follow it.
fn worst(
    asking: &mut Asking<'_>,
    gate: &Gate,
    (smooth, along): (Vec<Comparison>, Option<Comparison>),
    below: Outcome,
) -> Answer {
    if let Some(rough) = smooth.iter().find(|one| !one.holds()) {
        let (down, may) = (rough.demand.value, rough.capacity.value);
        asking.say(|print| {
            format!(
                "Something sticks {} down from the bottom edge at {}; at most {} may: it hooks clothes and feet.",
                print.value(&down),
                gate.id,
                print.value(&may)
            )
        });
        return Ok(Outcome::Compared(*rough));
    }
    if let Some(along) = along.filter(|along| !along.holds()) {
        asking.say(|_| {
            format!(
                "At {} the bottom edge stands more than 6 in above the ground somewhere in its sweep, and has no contact edge along it.",
                gate.id
            )
        });
        return Ok(Outcome::Compared(along));
    }
    match below {
        Outcome::Rule(true) => Outcome::worst(smooth).ok_or(Halt),
        told => Ok(told),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    // The hinge line is at x = 10 ft; open, the leaf lies along y.
    const SWING: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "single-swing"
        clear_opening = "10 ft"
        travel_angle = "90°"
        swings = "into the property"
        ground = [["5 ft", "0 ft", "0 in"], ["10 ft", "9 ft", "1 in"]]
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "5 ft"
        thickness = "2 in"
        ground_clearance = "3 in"
        [gate.leaf.outside]
        bottom_protrusion = "1/4 in"
    "#;

    #[test]
    fn holds_close_to_the_ground_all_the_way() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_ground_falls_away_under_the_sweep() {
        let falls = only(
            &CHECK,
            &SWING.replace("\"9 ft\", \"1 in\"", "\"9 ft\", \"-2 in\""),
        );
        assert_eq!(falls.verdict, Verdict::Fails, "{}", falls.sentence);
        let rough = only(&CHECK, &SWING.replace("\"1/4 in\"", "\"1 in\""));
        assert_eq!(rough.verdict, Verdict::Fails);
        assert!(rough.sentence.contains("hooks"), "{}", rough.sentence);
    }

    #[test]
    fn more_than_six_inches_want_an_edge_along_the_bottom() {
        let high = SWING.replace("\"9 ft\", \"1 in\"", "\"9 ft\", \"-5 in\"");
        let beam = format!(
            "{high}\n[[device]]\nid = \"edge\"\nkind = \"contact edge\"\nprotection = \"B2\"\ncarried_by = \"leaf\"\nguards = [\"opening\", \"closing\"]\nat = [\"0 ft\", \"0 ft\", \"3 in\"]\nto = [\"9 ft\", \"0 ft\", \"3 in\"]\n"
        );
        let finding = only(&CHECK, &beam);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let short = only(
            &CHECK,
            &beam.replace(
                "[\"9 ft\", \"0 ft\", \"3 in\"]",
                "[\"4 ft\", \"0 ft\", \"3 in\"]",
            ),
        );
        assert_eq!(short.verdict, Verdict::Fails, "{}", short.sentence);
    }

    #[test]
    fn in_europe_a_gap_that_closes_on_a_hand_fails() {
        let eu = SWING
            .replace("\"us\"", "\"eu\"")
            .replace(
                "ground_clearance = \"3 in\"",
                "ground_clearance = \"80 mm\"",
            )
            .replace("\"9 ft\", \"1 in\"", "\"9 ft\", \"40 mm\"");
        let finding = only(&CHECK, &eu);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let level = only(
            &CHECK,
            &eu.replace("\"9 ft\", \"40 mm\"", "\"9 ft\", \"1 mm\""),
        );
        assert_eq!(level.verdict, Verdict::Holds, "{}", level.sentence);
    }

    #[test]
    fn a_leaf_that_lifts_closes_on_the_ground() {
        let lift = SWING.replace("single-swing", "vertical-lift");
        let finding = only(&CHECK, &lift);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let slide = only(&CHECK, &SWING.replace("single-swing", "track-slide"));
        assert_eq!(slide.verdict, Verdict::Holds, "{}", slide.sentence);
    }

    #[test]
    fn unknown_without_a_level_inside() {
        let finding = only(
            &CHECK,
            &SWING.replace(", [\"10 ft\", \"9 ft\", \"1 in\"]", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("ground = "));
    }
}
