//! Whether a driver sees the closed leaf, the lowered arm or a leaf half open in time to stop at night.
//!
//! A driver whom nobody has warned takes 2.5 s to brake and then brakes as most do; the slope of the way counts. What was
//! tried at night comes first; without it a reflector is taken to be seen from where dipped headlamps reach. A bend or a crest
//! may show the gate later than that.

use crate::asking::{Asking, Wants, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{DriverStop, StoppingSightDistance};
use formula::{Evidence, Source};
use quantity::{Acceleration, Length, Quantity as _, Time, Word as _};
use site::{Gate, NightApproach, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-seen-at-night",
    codes: BOTH,
    leaves_open: "low sun along the way, fog, rain on the windshield, dirt on reflectors, headlamps out of adjustment, and roads slick with ice or mud",
    concerns: "each gate, from each side from which somebody drives up",
    ask,
};

static DIPPED: Source = Source {
    work: "reach of dipped headlamps on a dark road",
    clause: "160 ft",
    evidence: Evidence::Seen,
    seen: "driver training pages: lowestpricetrafficschool.com gives 160 ft, a police driving article 180 ft",
};

static REFLECTORS: Source = Source {
    work: "reflectors on both faces of a leaf and on the end of an open one",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "habit of the trade",
};

/// How far dipped headlamps show a reflector: 160 ft.
const REACH: f64 = 160.0 * 0.3048;
/// How the way to a gate is written.
const APPROACH: &str = "[[gate.night_approach]]\nfrom = \"road\"\nspeed = \"10 mph\"\ngrade = \"0.02\"\nin_view_from = \"95 ft\"\nreflectors = true\nedge_marked = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            seen(asking, gate)
        });
    }
}

/// One way up to a gate, and how it comes out.
struct Side {
    said: String,
    marked: bool,
    comparison: Comparison,
}

fn seen<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Answer {
    asking.rest_on(&REFLECTORS);
    if gate.night_approach.is_empty() {
        return asking.lack(&gate.origin, "night_approach", Wants::Table(APPROACH));
    }
    let sides: Vec<_> = gate
        .night_approach
        .iter()
        .map(|approach| side(asking, approach))
        .collect();
    let sides: Result<Vec<Side>, Halt> = sides.into_iter().collect();
    let sides = sides?;
    asking.say(|_| {
        let said: Vec<&str> = sides.iter().map(|side| side.said.as_str()).collect();
        said.join(" ")
    });
    if sides.iter().any(|side| !side.marked) {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst(sides.into_iter().map(|side| side.comparison)).ok_or(Halt)
}

fn side<'s>(asking: &mut Asking<'s>, approach: &'s NightApproach) -> Result<Side, Halt> {
    let stop = stop(asking, approach);
    let view = read!(asking, approach.in_view_from);
    let face = told(asking, &approach.origin, "reflectors", approach.reflectors);
    let edge = told(
        asking,
        &approach.origin,
        "edge_marked",
        approach.edge_marked,
    );
    let tried = asking.read_if_there(&approach.origin, "seen_from", approach.seen_from.as_ref());
    let (stop, view, face, edge) = (stop?, view?, face?, edge?);
    let lit = tried.unwrap_or_else(|| {
        asking.rest_on(&DIPPED);
        Length::from_base(REACH)
    });
    let seen = if lit < view { lit } else { view };
    let print = asking.print();
    let bare = match (face, edge) {
        (true, true) => "",
        (false, _) => " No reflector marks its face.",
        (true, false) => " No reflector marks the end of an open leaf.",
    };
    let said = format!(
        "From the {} a driver stops within {} and sees the gate at night from {}.{bare}",
        approach.from.word(),
        print.q(stop.total_distance),
        print.q(seen)
    );
    Ok(Side {
        said,
        marked: face && edge,
        comparison: Comparison::at_most(
            Labeled::new("distance to stop", stop.total_distance),
            Labeled::new("distance from which it is seen", seen),
        ),
    })
}

fn stop<'s>(asking: &mut Asking<'s>, approach: &'s NightApproach) -> Result<DriverStop, Halt> {
    let speed = read!(asking, approach.speed);
    let grade = read!(asking, approach.grade);
    let (speed, grade) = (speed?, grade?);
    asking.work(&StoppingSightDistance {
        speed,
        grade,
        ..unwarned()
    })
}

/// A driver whom nobody has warned, on level ground and standing still.
pub(super) fn unwarned() -> StoppingSightDistance {
    StoppingSightDistance {
        speed: quantity::Velocity::default(),
        reaction_time: Time::from_base(2.5),
        deceleration: Acceleration::from_base(11.2 * 0.3048),
        grade: quantity::Ratio::default(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
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
        night_approach = [{ from = "road", speed = "15 mph", grade = "0", in_view_from = "200 ft", reflectors = true, edge_marked = true }]
    "#;

    #[test]
    fn holds_at_a_slow_approach() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 22 ft/s for 2.5 s, and 22² / 22.4.
        let feet = finding.demand.unwrap().value.unwrap() / 0.3048;
        assert!((feet - (55.0 + 484.0 / 22.4)).abs() < 1e-6, "{feet}");
    }

    #[test]
    fn fails_fast_around_a_bend_and_without_reflectors() {
        for (from, to) in [
            ("15 mph", "40 mph"),
            ("200 ft", "60 ft"),
            ("reflectors = true", "reflectors = false"),
            ("edge_marked = true", "edge_marked = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_speed_and_reflectors() {
        let bare = SITE
            .replace("speed = \"15 mph\", ", "")
            .replace("reflectors = true, ", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }
}
