//! Whether each heavy thing on the job may be lifted alone.
//!
//! The revised NIOSH lifting equation at the start of the lift and at its end; the smaller weight counts. Above an index of
//! one the load is split, or something or somebody helps, and the site says what.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::standing::{Coupling, LiftingDuration, LiftingLimit};
use quantity::{Frequency, Length, Mass, Quantity as _, Word as _};
use site::{Lift, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lifting-each-task",
    codes: BOTH,
    leaves_open: "carrying, pushing and pulling, slippery ground, tight places, and whether what helps is rated for the load",
    concerns: "each lift that the site lists",
    ask,
};

/// A lift now and then: one in five minutes.
const NOW_AND_THEN: f64 = 1.0 / 300.0;

/// How a lift is written.
const LIFT: &str = "[[lift]]\nid = \"lift-operator\"\nwhat = \"operator out of the van\"\nmass = \"44 lb\"\nreach = \"15 in\"\nstart_height = \"24 in\"\nend_height = \"30 in\"\nturn = \"30°\"\nduration = \"up to 1 hour\"\nhold = \"fair\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.lift.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "lift", Wants::Table(LIFT))
        });
    }
    for lift in &site.lift {
        round.ask(About::new(&lift.origin, &lift.id), |asking| {
            lifted(asking, lift)
        });
    }
}

fn lifted<'s>(asking: &mut Asking<'s>, lift: &'s Lift) -> Answer {
    let mass = read!(asking, lift.mass);
    let ends = ends(asking, lift, &mass);
    let (mass, [start, end]) = (mass?, ends?);
    let limit = smaller(asking.work(&start)?.limit, asking.work(&end)?.limit);
    let index = Comparison::at_most(
        Labeled::new("mass of the load", mass),
        Labeled::new("weight recommended for one person", limit),
    );
    let helped = lift.with.as_ref().filter(|_| !index.holds());
    asking.say(|print| {
        let how = match (index.holds(), helped) {
            (true, _) => "; one person may lift it".to_owned(),
            (false, Some(with)) => format!("; it is lifted with this: {with}"),
            (false, None) => "; split it, use gear, or get a second person".to_owned(),
        };
        format!(
            "{} weighs {}, and {} is recommended for one person{how}.",
            capitalized(lift.what.as_str()),
            print.q(mass),
            print.q(limit)
        )
    });
    Ok(if helped.is_some() {
        Outcome::Rule(true)
    } else {
        Outcome::Compared(index)
    })
}

fn smaller(one: Mass, other: Mass) -> Mass {
    if one < other { one } else { other }
}

/// The lift looked at where it begins and where it ends.
fn ends<'s>(
    asking: &mut Asking<'s>,
    lift: &'s Lift,
    mass: &Result<Mass, Halt>,
) -> Result<[LiftingLimit; 2], Halt> {
    let reach = read!(asking, lift.reach);
    let start_height = read!(asking, lift.start_height);
    let end_height = read!(asking, lift.end_height);
    let turn = read!(asking, lift.turn);
    let duration = pick!(asking, lift.duration);
    let hold = pick!(asking, lift.hold);
    let pace = asking.read_if_there(&lift.origin, "pace", lift.pace.as_ref());
    let (start_height, end_height) = (start_height?, end_height?);
    let words = (
        LiftingDuration::from_word(duration?.word()),
        Coupling::from_word(hold?.word()),
    );
    let (Some(duration), Some(coupling)) = words else {
        return asking.refuse("the lifting equation has no figures for this");
    };
    let start = LiftingLimit {
        load: (*mass)?,
        reach: reach?,
        hand_height: start_height,
        start_height,
        travel: Length::from_base((end_height - start_height).base().abs()),
        turn: turn?,
        frequency: pace.unwrap_or(Frequency::from_base(NOW_AND_THEN)),
        duration,
        coupling,
    };
    let end = LiftingLimit {
        hand_height: end_height,
        ..start
    };
    Ok([start, end])
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
        [[lift]]
        id = "lift-operator"
        what = "operator out of the van"
        mass = "30 lb ± 1 lb"
        reach = "10 in"
        start_height = "30 in"
        end_height = "30 in"
        turn = "0°"
        duration = "up to 1 hour"
        hold = "good"
    "#;

    #[test]
    fn holds_at_the_ideal_place() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The load constant itself: 51 lb.
        let limit = finding.capacity.unwrap().value.unwrap();
        assert!((limit - 51.0 * 0.45359237).abs() < 1e-6, "{limit}");
    }

    #[test]
    fn fails_far_from_the_body_unless_something_helps() {
        let far = SITE.replace("reach = \"10 in\"", "reach = \"20 in\"");
        let finding = only(&CHECK, &far);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let helped = far + "with = \"hoist on the van, 500 lb\"\n";
        let finding = only(&CHECK, &helped);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("hoist"), "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_reach_and_hold() {
        let bare = SITE
            .replace("reach = \"10 in\"", "")
            .replace("hold = \"good\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_while_nothing_is_listed() {
        let none = SITE.split("[[lift]]").next().unwrap().to_owned()
            + "[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n";
        assert_eq!(only(&CHECK, &none).verdict, Verdict::UnknownUntil);
    }
}
