//! Whether the contact forces keep the limits of the European standard, by measurement; foretold until then.
//!
//! Three readings at each point are judged by their mean; the force is down to 150 N by 0.75 s and to 25 N by 5 s. A leaf
//! that slides or swings is measured at three heights and three gaps on closing, a swinging one also on opening where less
//! than half a meter is left behind it. Without measurements the squeeze of each contact edge is foretold: one that is too
//! hard fails, one that is soft enough proves nothing until a force meter was there.

use super::edge_travel::squeezed;
use super::means::sensors;
use crate::asking::{Asking, Wants, read};
use crate::check::stop::impact::moving;
use crate::check::{Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    EdgeImpactForce, En12453ClosingTestPoints, En12453PeakForce, ForceMeasurementMean,
    GateKind as KindOfGate, PeakForceLimit,
};
use quantity::{Force, Length, Measured, Quantity as _, Word as _};
use site::{CodeBasis, Device, Direction, ForceTest, Gate, GateKind, Leaf, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-force-limits",
    codes: &[CodeBasis::Eu],
    leaves_open: "prominent places and the bottom edge toward the hinge, the cold, and what has changed on the gate since the day of the measurement",
    concerns: "each gate",
    ask,
};

/// How a measurement is written.
const TEST: &str = "[[gate.force_test]]\nleaf = \"leaf\"\ndirection = \"closing\"\ngap = \"300 mm\"\nheight = \"1 m\"\npeak = [\"310 N\", \"320 N\", \"305 N\"]\nsettled = \"120 N\"\nend = \"10 N\"\nmeter_tolerance = \"5 %\"";
/// How near a reading lies to the gap that is asked for, in meters.
const GAP: f64 = 0.02;
/// How near it lies to the height that is asked for, in meters.
const HEIGHT: f64 = 0.05;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            limits(asking, site, gate)
        });
    }
}

fn limits<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    if gate.force_test.is_empty() {
        return foretold(asking, site, gate);
    }
    let mut all = Vec::new();
    let mut whole = Ok(());
    for test in &gate.force_test {
        match measured(asking, gate, test) {
            Ok(comparisons) => all.extend(comparisons),
            Err(halt) => whole = Err(halt),
        }
    }
    let covered = covered(asking, gate);
    whole?;
    let worst = Outcome::worst(all).ok_or(Halt)?;
    let over = matches!(&worst, Outcome::Compared(comparison) if !comparison.holds());
    asking.say(|print| said(print, gate, &worst));
    if !over {
        covered?;
    }
    Ok(worst)
}

fn said(print: crate::figure::Print, gate: &Gate, worst: &Outcome) -> String {
    let points = gate.force_test.len();
    let tightest = match worst {
        Outcome::Compared(comparison) => format!(
            "; the tightest is {} at {}",
            comparison.demand.label,
            print.value(&comparison.demand.value)
        ),
        _ => String::new(),
    };
    format!("Measured at {points} points, three times each{tightest}.")
}

/// Peak, settled and end force of one point against their limits.
fn measured<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    test: &'s ForceTest,
) -> Result<Vec<Comparison>, Halt> {
    let gap = read!(asking, test.gap);
    let settled = read!(asking, test.settled);
    let end = read!(asking, test.end);
    let tolerance = read!(asking, test.meter_tolerance);
    let [first, second, third] = peaks(asking, test)?;
    let limit = limit(asking, gate, gap?)?;
    let mean = asking.work(&ForceMeasurementMean {
        first,
        second,
        third,
        tolerance: tolerance?,
        limit: limit.peak,
    })?;
    let at_most = |(label, force): (&'static str, Force), (bound, most): (&'static str, Force)| {
        Comparison::at_most(Labeled::new(label, force), Labeled::new(bound, most))
    };
    Ok(vec![
        at_most(
            ("mean of the peaks", mean.mean),
            ("greatest peak", limit.peak),
        ),
        at_most(
            ("force after 0.75 s", settled?),
            ("greatest force by then", limit.settled),
        ),
        at_most(
            ("force after 5 s", end?),
            ("greatest force by then", limit.end),
        ),
    ])
}

/// The three readings of a point.
fn peaks<'s>(asking: &mut Asking<'s>, test: &'s ForceTest) -> Result<[Force; 3], Halt> {
    match test.peak.as_slice() {
        [first, second, third] => Ok([first, second, third].map(Measured::nominal)),
        _ => asking.lack(
            &test.origin,
            "peak",
            Wants::Written("[\"310 N\", \"320 N\", \"305 N\"]"),
        ),
    }
}

fn limit(asking: &mut Asking<'_>, gate: &Gate, gap: Length) -> Result<PeakForceLimit, Halt> {
    let Some(kind) = KindOfGate::from_word(gate.kind.word()) else {
        return asking.refuse("this kind of gate has no limit of force");
    };
    asking.work(&En12453PeakForce { gate: kind, gap })
}

/// Every point that the standard asks for was measured.
fn covered<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<(), Halt> {
    let mut whole = Ok(());
    for leaf in &gate.leaf {
        if !on_closing(asking, gate, leaf)? {
            whole = asking.lack(&gate.origin, "force_test", Wants::Table(TEST));
        }
    }
    let close_behind = gate
        .nearby
        .iter()
        .any(|thing| thing.gap.is_some_and(|gap| gap.nominal().base() <= 0.5));
    let swings = matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing);
    let opening = |test: &ForceTest| test.direction == Some(Direction::Opening);
    if swings && close_behind && !gate.force_test.iter().any(opening) {
        whole = asking.lack(&gate.origin, "force_test", Wants::Table(TEST));
    }
    whole
}

/// A leaf was measured at each height and gap on closing; one that is low, or rises, at one place at least.
fn on_closing<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<bool, Halt> {
    let mine: Vec<&ForceTest> = gate
        .force_test
        .iter()
        .filter(|test| test.direction == Some(Direction::Closing))
        .filter(|test| test.leaf.as_ref().is_none_or(|name| *name == leaf.id))
        .collect();
    let clearance = read!(asking, leaf.ground_clearance);
    let height = read!(asking, leaf.height);
    let (bottom, height) = (clearance?, height?);
    let upright = !matches!(
        gate.kind,
        GateKind::BarrierArm | GateKind::VerticalPivot | GateKind::VerticalLift
    );
    let points = asking.work_if_in_reach(&En12453ClosingTestPoints {
        leaf_bottom: bottom,
        leaf_top: bottom + height,
    });
    let Some(points) = points.filter(|_| upright) else {
        return Ok(!mine.is_empty());
    };
    let near = |value: Option<Measured<Length>>, wanted: Length, within: f64| {
        value.is_some_and(|value| (value.nominal() - wanted).base().abs() <= within + 1e-9)
    };
    let gaps = [points.smallest_gap, points.middle_gap, points.widest_gap];
    let heights = [points.low, points.middle, points.high];
    Ok(gaps.iter().all(|gap| {
        heights.iter().all(|height| {
            mine.iter()
                .any(|test| near(test.gap, *gap, GAP) && near(test.height, *height, HEIGHT))
        })
    }))
}

/// The squeeze of the contact edges, foretold.
fn foretold<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let limit = limit(asking, gate, Length::from_base(0.0))?;
    let mut hardest: Option<(&Device, Force)> = None;
    let edges = sensors(site, gate).filter(|device| device.protection == Some(ProtectionType::B2));
    for device in edges {
        let Ok(force) = by_either(asking, site, gate, device) else {
            continue;
        };
        if hardest.is_none_or(|(_, most)| force > most) {
            hardest = Some((device, force));
        }
    }
    let Some((device, force)) = hardest else {
        return asking.lack(&gate.origin, "force_test", Wants::Table(TEST));
    };
    asking.say(|print| {
        format!(
            "Foretold from edge and leaf, the hardest squeeze is {} at {}, where {} is the limit; that is no force test.",
            print.q(force),
            device.id,
            print.q(limit.peak)
        )
    });
    let squeeze = Comparison::at_most(
        Labeled::new("hardest squeeze, foretold", force),
        Labeled::new("greatest peak", limit.peak),
    );
    if squeeze.holds() {
        return asking.lack(&gate.origin, "force_test", Wants::Table(TEST));
    }
    Ok(Outcome::Compared(squeeze))
}

/// The squeeze behind an edge: by the way on after it has switched, or by the energy of the leaf, whichever is less.
fn by_either<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<Force, Halt> {
    let by_way = squeezed(asking, site, gate, device)?.force;
    let carries = |leaf: &&Leaf| {
        device
            .carried_by
            .as_ref()
            .is_none_or(|name| *name == leaf.id)
    };
    let leaf = gate.leaf.iter().find(carries).ok_or(Halt)?;
    let moving = moving(asking, site, gate, leaf)?;
    let actuation = read!(asking, device.actuation_travel);
    let left = read!(asking, device.soft_travel);
    let soft_stiffness = read!(asking, device.stiffness);
    let hard_stiffness = read!(asking, device.hard_stiffness);
    let by_energy = asking.work(&EdgeImpactForce {
        mass: moving.whole_mass(),
        speed: moving.speed(),
        push: Force::from_base(0.0),
        soft_stiffness: soft_stiffness?,
        soft_travel: actuation? + left?,
        hard_stiffness: hard_stiffness?,
    })?;
    Ok(if by_energy.force < by_way {
        by_energy.force
    } else {
        by_way
    })
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use std::fmt::Write as _;

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        units = "si"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        [[gate.leaf]]
        id = "leaf"
        length = "4 m"
        height = "1.8 m"
        ground_clearance = "50 mm"
        mass = "300 kg"
        [gate.motion]
        cruise_speed = "0.3 m/s"
        stopping_deceleration = "2 m/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
        rated_force = "600 N"
        starting_force = "900 N"
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        carried_by = "leaf"
        response_time = "20 ms"
        actuation_travel = "10 mm"
        soft_travel = "60 mm"
        stiffness = "4 N/mm"
        hard_stiffness = "75 N/mm"
    "#;

    /// The nine points: heights 100 mm, 950 mm and 1550 mm.
    fn measured() -> String {
        let mut tests = String::new();
        for gap in ["50 mm", "300 mm", "500 mm"] {
            for height in ["100 mm", "950 mm", "1550 mm"] {
                let _ = write!(
                    tests,
                    "[[gate.force_test]]\ndirection = \"closing\"\ngap = \"{gap}\"\nheight = \"{height}\"\npeak = [\"300 N\", \"310 N\", \"320 N\"]\nsettled = \"110 N\"\nend = \"5 N\"\nmeter_tolerance = \"5 %\"\n"
                );
            }
        }
        SITE.replace("[[operator]]", &format!("{tests}[[operator]]"))
    }

    #[test]
    fn holds_when_measured_at_every_point() {
        let finding = only(&CHECK, &measured());
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("9 points"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_on_a_peak_a_slow_fall_and_a_squeeze_foretold_too_hard() {
        for (was, is) in [
            ("310 N", "610 N"),
            ("110 N", "160 N"),
            ("\"5 N\"", "\"30 N\""),
        ] {
            let finding = only(&CHECK, &measured().replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
        let thin = SITE.replace("\"60 mm\"", "\"30 mm\"");
        let finding = only(&CHECK, &thin);
        // By hand: 4 · 40 + 75 · 22.5 = 1848 N by the way on; by energy ½ · 360 · 0.09 = 16.2 J:
        // 3.2 J soft, 0.0126 m hard with 160 N before it: 993 N.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_until_measured_at_every_point() {
        let foretold = only(&CHECK, SITE);
        assert_eq!(
            foretold.verdict,
            Verdict::UnknownUntil,
            "{}",
            foretold.sentence
        );
        assert!(
            foretold.sentence.contains("no force test"),
            "{}",
            foretold.sentence
        );
        let partly = measured().replace("gap = \"500 mm\"", "gap = \"400 mm\"");
        let finding = only(&CHECK, &partly);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }
}
