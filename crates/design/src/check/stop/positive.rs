//! Whether a solid stop at each end of the travel holds a leaf whose limit has failed, or that a strong person shoved.
//!
//! Each stop is asked with the leaf at full speed and the drive still pushing at its hardest, and after a hard shove of
//! the released leaf. A leaf that turns is taken to meet its stop at its free end. The stop springs and does not yield.

use super::impact::moving;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, ForcePerLength};
use site::{Gate, GateKind, Site, Stop, TravelEnd};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "stop-positive",
    codes: BOTH,
    leaves_open: "what the stop's fixing stands on, a stop nearer the hinge than the free end, a hinge line out of plumb, several people or a vehicle that pushes, and whether the stops are still tight: look at every visit",
    concerns: "each gate whose leaf slides, swings, turns up or lifts",
    ask,
};

static STOPS: Source = Source {
    work: "ASTM F2200, reprint of 2013",
    clause: "slide gates: positive stops at the designed open and closed ends",
    evidence: Evidence::Seen,
    seen: "a slide-gate operator manual that reprints it; address withheld, it carries a company name",
};

/// How stops are written.
const WRITE: &str = "[{ end = \"open\", how = \"angle with rubber buffer, welded to the track\", rated_force = \"4000 lbf\", stiffness = \"3000 lbf/in\" }, { end = \"closed\", ... }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked = |gate: &&Gate| gate.kind != GateKind::BarrierArm;
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            positive(asking, site, gate)
        });
    }
}

fn positive<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&STOPS);
    let stops = stops(asking, gate);
    let mut leaves = Ok(Vec::new());
    for leaf in &gate.leaf {
        let driven = moving(asking, site, gate, leaf);
        leaves = leaves.and_then(|mut leaves| {
            leaves.push(driven?);
            Ok(leaves)
        });
    }
    if gate.leaf.is_empty() {
        leaves = asking.lack(
            &gate.origin,
            "leaf",
            Wants::Written("[{ id = \"leaf\", mass = \"640 lb\" }]"),
        );
    }
    let (stops, leaves) = (stops?, leaves?);
    let mut hits = Vec::new();
    for leaf in &leaves {
        for stop in &stops {
            let driven = leaf.at_full_speed(asking, stop.end, stop.stiffness)?;
            let shoved = leaf.after_a_shove(asking, stop.end, stop.stiffness)?;
            hits.push((*stop, driven.force, shoved.force));
        }
    }
    let worst = |(stop, driven, shoved): &(Held, Force, Force)| {
        let harder = if driven > shoved { driven } else { shoved };
        harder.value / stop.rated_force.value
    };
    let hardest = hits
        .iter()
        .max_by(|one, other| worst(one).total_cmp(&worst(other)))
        .copied();
    if let Some((stop, driven, shoved)) = hardest {
        asking.say(|print| {
            format!(
                "At its {} stop the leaf hits with {} at full speed, its limit failed and the drive still pushing, and with {} \
                 after a hard shove with the drive released; the stop takes {}.{}",
                stop.end,
                print.q(driven),
                print.q(shoved),
                print.q(stop.rated_force),
                if driven > stop.rated_force || shoved > stop.rated_force {
                    " Give it a softer buffer or a stronger stop before anyone moves the leaf."
                } else {
                    ""
                }
            )
        });
    }
    Outcome::worst(hits.into_iter().flat_map(|(stop, driven, shoved)| {
        let takes = Labeled::new("force that the stop takes", stop.rated_force);
        [
            Comparison::at_most(
                Labeled::new("force on the stop at full speed", driven),
                takes,
            ),
            Comparison::at_most(
                Labeled::new("force on the stop after a hard shove", shoved),
                takes,
            ),
        ]
    }))
    .ok_or(Halt)
}

/// A stop with what it takes.
#[derive(Debug, Clone, Copy)]
struct Held {
    end: TravelEnd,
    rated_force: Force,
    stiffness: ForcePerLength,
}

/// All stops of a gate, of which each end must have one.
fn stops<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Held>, Halt> {
    let mut whole = Ok(());
    let mut stops = Vec::new();
    for stop in &gate.stop {
        match held(asking, stop) {
            Ok(held) => stops.push(held),
            Err(halt) => whole = Err(halt),
        }
    }
    // Two leaves may share the stop at which they meet; open, each needs its own.
    let at = |end: TravelEnd| gate.stop.iter().filter(|stop| stop.end == end).count();
    if at(TravelEnd::Closed) == 0 || at(TravelEnd::Open) < gate.leaf.len().max(1) {
        return asking.lack(&gate.origin, "stop", Wants::Written(WRITE));
    }
    whole.map(|()| stops)
}

fn held<'s>(asking: &mut Asking<'s>, stop: &'s Stop) -> Result<Held, Halt> {
    let rated_force = read!(asking, stop.rated_force);
    let stiffness = read!(asking, stop.stiffness);
    Ok(Held {
        end: stop.end,
        rated_force: rated_force?,
        stiffness: stiffness?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        [[gate.leaf]]
        id = "leaf"
        mass = "300 kg"
        [gate.motion]
        cruise_speed = "0.3 m/s"
        [[gate.stop]]
        end = "open"
        rated_force = "15 kN"
        stiffness = "200 N/mm ± 20 %"
        [[gate.stop]]
        end = "closed"
        rated_force = "15 kN"
        stiffness = "200 N/mm"
        [[operator]]
        id = "drive"
        gate = "main"
        starting_force = "1200 N"
        rotating_mass = "60 kg"
    "#;

    #[test]
    fn holds_with_a_buffer() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 400 N over 1 m is 400 J, √(2 · 400 · 200 000) is 12 649 N; at full speed 1200 + √(1200² + 200 000 ·
        // 360 · 0.09) is 4015 N.
        assert!((finding.demand.unwrap().value.unwrap() - 12_649.1).abs() < 0.1);
    }

    #[test]
    fn fails_on_a_hard_stop() {
        let hard = SITE.replace("\"200 N/mm\"", "\"2000 N/mm\"");
        let finding = only(&CHECK, &hard);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("closed stop"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_sooner_down_a_slope() {
        let level = only(&CHECK, SITE).demand.unwrap().value.unwrap();
        let steep = only(&CHECK, &SITE.replace("slope = \"0\"", "slope = \"0.05\""));
        assert!(steep.demand.unwrap().value.unwrap() > level);
    }

    #[test]
    fn unknown_without_a_stop_at_each_end() {
        let one = SITE.replace("end = \"open\"", "end = \"closed\"");
        let finding = only(&CHECK, &one);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let soft = SITE
            .replace("stiffness = \"200 N/mm\"", "")
            .replace("mass = \"300 kg\"", "");
        assert_eq!(only(&CHECK, &soft).missing.len(), 2);
    }

    #[test]
    fn a_swing_leaf_and_a_lift_are_asked_and_an_arm_is_not() {
        let swing = SITE
            .replace("track-slide", "single-swing")
            .replace(
                "cruise_speed = \"0.3 m/s\"",
                "cruise_turning_speed = \"6 deg/s\"",
            )
            .replace(
                "mass = \"300 kg\"",
                "mass = \"300 kg\"\nlength = \"4 m\"\ncenter_along = \"2 m\"",
            )
            .replace(
                "starting_force = \"1200 N\"",
                "starting_torque = \"600 N·m\"",
            );
        let finding = only(&CHECK, &swing);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let lift = SITE
            .replace("track-slide", "vertical-lift\"\ntravel = \"2 m")
            .replace(
                "[gate.motion]",
                "[gate.balance]\nkind = \"counterweight\"\nmass = \"280 kg\"\n[gate.motion]",
            );
        let finding = only(&CHECK, &lift);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(all(&CHECK, &SITE.replace("track-slide", "barrier-arm")).is_empty());
    }
}
