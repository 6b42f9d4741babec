//! Whether an electric fence, an overhead line or a railway near the gate puts voltage onto it.
//!
//! Somebody has looked around, and says how far and when; what is not listed was not there. Overhead lines keep their
//! distance from leaf, lifting gear and people; live wires stay off the gate and out of reach from it, and the energizer's
//! earth stays away from other earths. Long metal along a line is measured.

use crate::asking::{Asking, Wants, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Voltage};
use site::{CodeBasis, LinesNear, LiveFence, Overhead, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "earth-fences-and-lines",
    codes: BOTH,
    leaves_open: "noise on loops and cables, which shows only in use, and lines that come later; before lifting near a line ask its owner, and treat every line as live",
    concerns: "each site with a gate",
    ask,
};

static LOOKED: Source = Source {
    work: "what was found when somebody looked around the gate",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site gives it, with day and distance",
};

static OVERHEAD: Source = Source {
    work: "29 CFR 1926.1408",
    clause: "table A: 10 ft up to 50 kV, 15 ft up to 200 kV, 20 ft up to 350 kV; 1926.1409: 50 ft above",
    evidence: Evidence::Seen,
    seen: "a safety manual that repeats the table: safetymanual.teamwrkx.com",
};

static OVERHEAD_EUROPE: Source = Source {
    work: "EN 50110-1 and the line owner's word",
    clause: "distances for work near a line",
    evidence: Evidence::Memory,
    seen: "",
};

static ENERGIZER: Source = Source {
    work: "IEC 60335-2-76",
    clause: "annex BB.1: 10 m between the energizer's earth and any other; 2.5 m between the wires of two fences, so that nobody touches both",
    evidence: Evidence::Seen,
    seen: "an energizer's manual (address withheld: a maker's name is in it); again www.starlogixs.com.au/blog/ensuring-safe-and-compliant-rural-electric-fences-key-standards-and-guidelines/",
};

static TOUCH: Source = Source {
    work: "IEC 60364-4-41",
    clause: "table 41.1 begins above 50 V",
    evidence: Evidence::Seen,
    seen: "a retelling of the table: www.ericmark.talktalk.net/41-1.html",
};

/// How it is written that somebody looked.
const LINES: &str = "[lines_near]\nlooked = 2026-05-20\nwithin = \"150 ft\"";

/// Distance between the earth of an energizer and any other, in meters.
const EARTHS: f64 = 10.0;
/// Distance at which nobody touches a live wire and the gate at once, in meters.
const WIRE: f64 = 2.5;
/// Voltage that may stand on metal, in volts.
const LASTING: f64 = 50.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| around(asking, site));
    }
}

fn around<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&LOOKED);
    let Some(near) = &site.lines_near else {
        return asking.lack(&site.origin, "lines_near", Wants::Table(LINES));
    };
    let looked = asking.need(&near.origin, "looked", near.looked.as_ref(), "2026-05-20");
    let within = read!(asking, near.within);
    let us = site.site.code_basis == CodeBasis::Us;
    let mut compared = Vec::new();
    let mut whole = Ok(());
    for line in &near.overhead {
        match overhead(asking, line, us) {
            Ok(comparison) => compared.push(comparison),
            Err(halt) => whole = Err(halt),
        }
    }
    let mut on_gate = None;
    for fence in &near.live_fence {
        match live_fence(asking, fence) {
            Ok(Some(comparisons)) => compared.extend(comparisons),
            Ok(None) => on_gate = Some(fence),
            Err(halt) => whole = Err(halt),
        }
    }
    if let Some(fence) = on_gate {
        asking.say(|_| {
            format!(
                "A live wire is on the gate ({}): take it off; a powered gate and a live wire do not go together.",
                fence.what
            )
        });
        return Ok(Outcome::Rule(false));
    }
    if near
        .parallel
        .is_some_and(|length| length.high().base() > 0.0)
    {
        match induced(asking, near) {
            Ok(comparison) => compared.push(comparison),
            Err(halt) => whole = Err(halt),
        }
    }
    let (looked, within) = (looked?, within?);
    whole?;
    asking.say(|print| {
        format!(
            "Looked over {} around the gate on {looked}: {}, {}.",
            print.q(within),
            counted(near.overhead.len(), "overhead line"),
            counted(near.live_fence.len(), "electric fence")
        )
    });
    Ok(Outcome::worst(compared).unwrap_or(Outcome::Rule(true)))
}

fn overhead<'s>(asking: &mut Asking<'s>, line: &'s Overhead, us: bool) -> Result<Comparison, Halt> {
    asking.rest_on(if us { &OVERHEAD } else { &OVERHEAD_EUROPE });
    let voltage = read!(asking, line.voltage);
    let clearance = read!(asking, line.clearance);
    let feet = match voltage?.base() {
        volts if volts <= 50e3 => 10.0,
        volts if volts <= 200e3 => 15.0,
        volts if volts <= 350e3 => 20.0,
        _ => 50.0,
    };
    Ok(Comparison::at_most(
        Labeled::new(
            "distance that a line asks for",
            Length::from_base(feet * 0.3048),
        ),
        Labeled::new("least distance to the line", clearance?),
    ))
}

/// Distances of a live fence; nothing where a live wire is on the gate itself.
fn live_fence<'s>(
    asking: &mut Asking<'s>,
    fence: &'s LiveFence,
) -> Result<Option<[Comparison; 2]>, Halt> {
    asking.rest_on(&ENERGIZER);
    let on_gate = told(asking, &fence.origin, "on_gate", fence.on_gate);
    if matches!(on_gate, Ok(true)) {
        return Ok(None);
    }
    let wire = read!(asking, fence.wire_distance);
    let earth = read!(asking, fence.earth_distance);
    on_gate?;
    Ok(Some([
        Comparison::at_most(
            Labeled::new(
                "distance from which nobody touches wire and gate at once",
                Length::from_base(WIRE),
            ),
            Labeled::new("distance from a live wire to the leaf", wire?),
        ),
        Comparison::at_most(
            Labeled::new(
                "distance that an energizer's earth keeps from others",
                Length::from_base(EARTHS),
            ),
            Labeled::new("distance from its earth to any other", earth?),
        ),
    ]))
}

fn induced<'s>(asking: &mut Asking<'s>, near: &'s LinesNear) -> Result<Comparison, Halt> {
    asking.rest_on(&TOUCH);
    let induced = read!(asking, near.induced)?;
    Ok(Comparison::at_most(
        Labeled::new("voltage on long metal along a line", induced),
        Labeled::new("voltage that may stand on it", Voltage::from_base(LASTING)),
    ))
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [lines_near]
        looked = 2026-05-20
        within = "150 ft"
        [[lines_near.overhead]]
        what = "service drop"
        voltage = "240 V"
        clearance = "14 ft"
        [[lines_near.live_fence]]
        what = "pasture fence"
        on_gate = false
        wire_distance = "40 ft"
        earth_distance = "60 ft"
    "#;

    #[test]
    fn holds_with_everything_far_off() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let none = &SITE[..SITE.find("[[lines_near").unwrap_or(0)];
        let finding = only(&CHECK, none);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("no electric fence"));
    }

    #[test]
    fn fails_under_a_line_and_with_a_wire_on_the_gate() {
        for (from, to) in [
            ("\"14 ft\"", "\"8 ft\""),
            ("\"240 V\"", "\"138 kV\""),
            ("on_gate = false", "on_gate = true"),
            ("\"60 ft\"", "\"20 ft\""),
            ("\"40 ft\"", "\"5 ft\""),
            (
                "\"150 ft\"",
                "\"150 ft\"\nparallel = \"300 ft\"\ninduced = \"80 V\"",
            ),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{from}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_until_somebody_looked_and_by_a_line_in_europe() {
        let bare = &SITE[..SITE.find("[lines_near]").unwrap_or(0)];
        assert_eq!(only(&CHECK, bare).verdict, Verdict::UnknownUntil);
        let clear = SITE.replace("clearance = \"14 ft\"", "");
        assert_eq!(only(&CHECK, &clear).verdict, Verdict::UnknownUntil);
        let europe = SITE.replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::UnknownUntil);
    }
}
