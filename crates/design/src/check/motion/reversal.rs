//! Whether each gate starts back soon enough after a contact, and gets clear of what it has met.
//!
//! The way on after the contact is worked from the controller's reaction and the braking; what is measured of the way back
//! is held against it. In the United States the way back begins within 2 s and is at least 2 in.

use super::cruise_of;
use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{Stop, StoppingDistance};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio, Time};
use site::{CodeBasis, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-reversal",
    codes: BOTH,
    leaves_open: "what it does at a second contact on the way back, who may stand on that side, and how far a trapped body needs; a solid object in each direction shows it",
    concerns: "each gate",
    ask,
};

/// Longest time until the way back begins, in seconds.
const START_BACK: f64 = 2.0;
/// Shortest way back: two inches.
const BACK: f64 = 0.0508;

static RULE: Source = Source {
    work: "UL 325",
    clause: "reversal within 2 s and by at least 2 in",
    evidence: Evidence::Seen,
    seen: "an installer's page that quotes a data sheet of the trade association, 2018; address withheld, it carries a company's name",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            reversal(asking, site, gate)
        });
    }
}

fn reversal<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let delay = read!(asking, gate.motion?.reversal_delay);
    let back = read!(asking, gate.motion?.reversal_distance);
    let stop = overtravel(asking, site, gate);
    let (delay, back, stop) = (delay?, back?, stop?);
    let on = stop.total_distance;
    // It cannot start back before it stands.
    let delay = if delay < stop.total_time {
        stop.total_time
    } else {
        delay
    };
    asking.say(|print| {
        format!(
            "After a contact gate {} goes on for {}, starts back {} after it, and runs back {}: {}.",
            gate.id,
            print.q(on),
            print.q(delay),
            print.q(back),
            if back >= on {
                format!("{} clear of the place of contact", print.q(back - on))
            } else {
                format!("{} short of the place of contact", print.q(on - back))
            }
        )
    });
    let clear = compared(("way on after the contact", on), ("way back", back));
    if site.site.code_basis != CodeBasis::Us {
        return Ok(Outcome::Compared(clear));
    }
    asking.rest_on(&RULE);
    let soon = Comparison::at_most(
        Labeled::new("time until it starts back", delay),
        Labeled::new("longest time", Time::from_base(START_BACK)),
    );
    let far = compared(
        ("least way back", Length::from_base(BACK)),
        ("way back", back),
    );
    Outcome::worst([soon, far, clear]).ok_or(Halt)
}

/// Way and time on after a contact at the running speed.
fn overtravel<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Stop, Halt> {
    let speed = cruise_of(asking, gate);
    let deceleration = read!(asking, gate.motion?.stopping_deceleration);
    let controller_time = match operator_of(asking, site, gate) {
        Ok(operator) => read!(asking, operator.reaction_time),
        Err(halt) => Err(halt),
    };
    asking.work(&StoppingDistance {
        speed: speed?,
        device_time: Time::from_base(0.0),
        controller_time: controller_time?,
        deceleration: deceleration?,
        slope: Ratio::from_base(0.0),
    })
}

fn compared(demand: (&'static str, Length), capacity: (&'static str, Length)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
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
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [gate.motion]
        cruise_speed = "1 ft/s"
        stopping_deceleration = "6 ft/s²"
        reversal_delay = "0.6 s ± 0.1 s"
        reversal_distance = "6 in ± 1/2 in"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
    "#;

    #[test]
    fn holds_when_it_gets_clear() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_late_short_or_still_on_the_person() {
        for (was, is) in [
            ("0.6 s", "2.4 s"),
            ("6 in", "1.7 in"),
            ("6 ft/s²", "0.8 ft/s²"),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_delay_and_distance() {
        let bare = SITE
            .replace("reversal_delay = \"0.6 s ± 0.1 s\"", "")
            .replace("reversal_distance = \"6 in ± 1/2 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
