//! How fast the edge of each gate moves, and whether a rule sets a limit to it.
//!
//! In the United States slides and lifts of usage classes I and II go no faster than 1 ft/s where the operator pulls 75 lbf
//! or more. Elsewhere the speed is a figure: the distances to sensors and the energy of a blow rest on it. Under the
//! European rules a gate that closes by itself gets a figure; the speed of any other is held against the limit for gates
//! that run while a control is held, which is from memory.

use super::cruise_of;
use crate::asking::{Asking, pick};
use crate::check::drive::operator_of;
use crate::check::force::operator_curve::force_at;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _, Velocity};
use site::{CodeBasis, Gate, GateKind, Site, UsageClass};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-edge-speed",
    codes: BOTH,
    leaves_open: "the place of a swing leaf's travel at which a pushing or folding drive turns it fastest; a video frame by frame shows it",
    concerns: "each gate",
    ask,
};

/// One foot a second.
const US_LIMIT: f64 = 0.3048;
/// Seventy-five pounds of force.
const US_PULL: f64 = 75.0 * 4.4482216152605;
/// Half a meter a second.
const EU_LIMIT: f64 = 0.5;

static US: Source = Source {
    work: "UL 325",
    clause: "speed of slide and vertical-lift operators, classes I and II",
    evidence: Evidence::Seen,
    seen: "an installer's page that quotes a data sheet of the trade association, 2018; address withheld, it carries a company's name",
};

static EU: Source = Source {
    work: "EN 12453",
    clause: "speed of gates that run while a control is held",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            edge_speed(asking, site, gate)
        });
    }
}

fn edge_speed<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    match site.site.code_basis {
        CodeBasis::Us => in_the_states(asking, site, gate),
        CodeBasis::Eu => in_europe(asking, gate),
    }
}

fn in_europe<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Answer {
    let speed = cruise_of(asking, gate)?;
    if gate.hold_time.is_some() {
        return Ok(figure(
            asking,
            gate,
            speed,
            "it closes by itself, so its forces are what the European rules limit",
        ));
    }
    asking.rest_on(&EU);
    asking.say(|print| {
        format!(
            "The edge of gate {} moves at {}; one that runs only while a control is held may go {} (from memory). \
             One that runs by itself is held to its forces instead.",
            gate.id,
            print.q(speed),
            print.q(Velocity::from_base(EU_LIMIT))
        )
    });
    Ok(compared(speed, EU_LIMIT))
}

fn in_the_states<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let about = &site.site;
    let straight = matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    let class = pick!(asking, about.usage_class);
    let speed = cruise_of(asking, gate);
    let (class, speed) = (class?, speed?);
    if !straight || matches!(class, UsageClass::ClassIII | UsageClass::ClassIV) {
        return Ok(figure(
            asking,
            gate,
            speed,
            "no limit is written for this kind of gate in this class",
        ));
    }
    asking.rest_on(&US);
    let operator = operator_of(asking, site, gate)?;
    let pull = force_at(asking, operator, speed)?;
    if pull.base() < US_PULL {
        return Ok(figure(
            asking,
            gate,
            speed,
            "the operator pulls less than 75 lbf there, so no limit is set",
        ));
    }
    asking.say(|print| {
        format!(
            "The edge of gate {} moves at {} with {} of pull behind it; in classes I and II, with {} or more, it may go {}.",
            gate.id,
            print.q(speed),
            print.q(pull),
            print.q(Force::from_base(US_PULL)),
            print.q(Velocity::from_base(US_LIMIT))
        )
    });
    Ok(compared(speed, US_LIMIT))
}

fn compared(speed: Velocity, limit: f64) -> Outcome {
    Outcome::at_most(
        Labeled::new("speed of the edge", speed),
        Labeled::new("greatest speed", Velocity::from_base(limit)),
    )
}

fn figure<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    speed: Velocity,
    why: &'static str,
) -> Outcome {
    asking.say(|print| {
        format!(
            "The edge of gate {} moves at {}; {why}.",
            gate.id,
            print.q(speed)
        )
    });
    Outcome::Figure(Labeled::new("speed of the edge", speed))
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
        usage_class = "II"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [gate.motion]
        cruise_speed = "0.9 ft/s ± 3 %"
        [[operator]]
        id = "drive"
        gate = "main"
        rated_force = "120 lbf"
    "#;

    #[test]
    fn holds_below_a_foot_a_second() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_when_it_is_faster() {
        let fast = SITE.replace("0.9 ft/s", "1.1 ft/s");
        assert_eq!(only(&CHECK, &fast).verdict, Verdict::Fails);
    }

    #[test]
    fn a_weak_operator_or_an_industrial_site_has_no_limit() {
        for other in [
            SITE.replace("120 lbf", "60 lbf"),
            SITE.replace("\"II\"", "\"III\""),
        ] {
            assert_eq!(only(&CHECK, &other).verdict, Verdict::FigureOnly);
        }
    }

    #[test]
    fn unknown_without_a_speed_and_in_europe_from_memory() {
        let bare = SITE.replace("cruise_speed = \"0.9 ft/s ± 3 %\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let europe = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("usage_class = \"II\"", "");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::UnknownUntil);
        let by_itself = europe.replace("kind =", "hold_time = \"30 s\"\n kind =");
        assert_eq!(only(&CHECK, &by_itself).verdict, Verdict::FigureOnly);
    }
}
