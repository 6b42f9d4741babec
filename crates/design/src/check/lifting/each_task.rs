//! Whether each heavy thing on the job may be lifted alone.
//!
//! The revised NIOSH lifting equation at the start of the lift and at its end; the smaller weight counts. Above an index of
//! one the load is split, or something or somebody helps, and the site says what and for which load it is good. What is
//! pushed or pulled is held against guide forces, a carried load against the way over which lifting figures count.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::motion::{PushPullGuide, Pusher};
use formula::standing::{Coupling, LiftingDuration, LiftingLimit};
use formula::{Evidence, Source};
use quantity::{Frequency, Length, Mass, Quantity as _, Word as _};
use site::{Lift, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lifting-each-task",
    codes: BOTH,
    leaves_open: "slippery ground, steps and tight places on the way, a ramp, and the health of the one who lifts",
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

/// Way over which the figures for lifting count for carrying as well, in meters.
const CARRIED: f64 = 10.0;

static CARRYING: Source = Source {
    work: "lifting figures count for a load carried against the body over up to 10 m without a rest",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as manual handling guidance has it",
};

/// What was found of a lift: comparisons, and what is said of them.
#[derive(Default)]
struct Found {
    compared: Vec<Comparison>,
    said: Vec<String>,
}

fn lifted<'s>(asking: &mut Asking<'s>, lift: &'s Lift) -> Answer {
    let mut found = Found::default();
    let moved = pushed(asking, lift, &mut found);
    let raised = if only_pushed(lift) {
        Ok(())
    } else {
        raised(asking, lift, &mut found)
    };
    carried(asking, lift, &mut found);
    moved.and(raised)?;
    asking.say(|_| format!("{}.", capitalized(&found.said.join("; "))));
    Outcome::worst(found.compared).ok_or(Halt)
}

/// The load is pushed or pulled and never lifted: no place of the hands is written down.
fn only_pushed(lift: &Lift) -> bool {
    let pushed = lift.start_push.is_some() || lift.keep_push.is_some();
    pushed && lift.reach.is_none() && lift.start_height.is_none() && lift.end_height.is_none()
}

/// The load against the weight recommended for one person, or against what helps.
fn raised<'s>(asking: &mut Asking<'s>, lift: &'s Lift, found: &mut Found) -> Result<(), Halt> {
    let mass = read!(asking, lift.mass);
    let ends = ends(asking, lift, &mass);
    let (mass, [start, end]) = (mass?, ends?);
    let limit = smaller(asking.work(&start)?.limit, asking.work(&end)?.limit);
    let load = Labeled::new("mass of the load", mass);
    let alone = Comparison::at_most(
        load,
        Labeled::new("weight recommended for one person", limit),
    );
    let print = asking.print();
    let what = format!(
        "{} weighs {}, and {} is recommended for one person",
        lift.what,
        print.q(mass),
        print.q(limit)
    );
    let Some(with) = lift.with.as_ref().filter(|_| !alone.holds()) else {
        found.said.push(if alone.holds() {
            format!("{what}; one person may lift it")
        } else {
            format!("{what}; split it, use gear, or get a second person")
        });
        found.compared.push(alone);
        return Ok(());
    };
    let rating = read!(asking, lift.gear_rating)?;
    found.said.push(format!(
        "{what}; it is lifted with this: {with}, good for {}",
        print.q(rating)
    ));
    found.compared.push(Comparison::at_most(
        load,
        Labeled::new("load that the gear is rated for", rating),
    ));
    Ok(())
}

/// The push against the guide forces for the weaker person.
fn pushed<'s>(asking: &mut Asking<'s>, lift: &'s Lift, found: &mut Found) -> Result<(), Halt> {
    if lift.start_push.is_none() && lift.keep_push.is_none() {
        return Ok(());
    }
    let start = read!(asking, lift.start_push);
    let keep = read!(asking, lift.keep_push);
    let (start, keep) = (start?, keep?);
    let guide = asking.work(&PushPullGuide { who: Pusher::Women })?;
    let print = asking.print();
    found.said.push(format!(
        "{} takes a push of {} to start and {} to keep going, against guide forces of {} and {} for the weaker person",
        lift.what,
        print.q(start),
        print.q(keep),
        print.q(guide.start),
        print.q(guide.keep)
    ));
    found.compared.push(Comparison::at_most(
        Labeled::new("push that starts it", start),
        Labeled::new("guide force to start", guide.start),
    ));
    found.compared.push(Comparison::at_most(
        Labeled::new("push that keeps it going", keep),
        Labeled::new("guide force to keep going", guide.keep),
    ));
    Ok(())
}

/// The way over which the load is carried.
fn carried<'s>(asking: &mut Asking<'s>, lift: &'s Lift, found: &mut Found) {
    let Some(way) = asking.read_if_there(&lift.origin, "carried", lift.carried.as_ref()) else {
        return;
    };
    asking.rest_on(&CARRYING);
    let longest = Length::from_base(CARRIED);
    let print = asking.print();
    found.said.push(format!(
        "it is carried over {}, and lifting figures count up to {} without a rest",
        print.q(way),
        print.q(longest)
    ));
    found.compared.push(Comparison::at_most(
        Labeled::new("way over which it is carried", way),
        Labeled::new("way over which lifting figures count", longest),
    ));
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
        let helped = far + "with = \"hoist on the van\"\n";
        let finding = only(&CHECK, &helped);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let finding = only(&CHECK, &(helped.clone() + "gear_rating = \"500 lb\"\n"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("hoist"), "{}", finding.sentence);
        let weak = helped + "gear_rating = \"25 lb\"\n";
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
    }

    #[test]
    fn what_is_pushed_is_held_against_guide_forces() {
        let pushed = SITE.split("reach").next().unwrap().to_owned()
            + "start_push = \"30 lbf\"\nkeep_push = \"14 lbf\"\n";
        let finding = only(&CHECK, &pushed);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 7 kgf is 15.4 lbf, 15 kgf 33.1 lbf.
        let hard = pushed.replace("14 lbf", "16 lbf");
        assert_eq!(only(&CHECK, &hard).verdict, Verdict::Fails);
        let half = pushed.replace("keep_push = \"14 lbf\"", "");
        assert_eq!(only(&CHECK, &half).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn fails_carried_a_long_way() {
        let near = SITE.to_owned() + "carried = \"20 ft\"\n";
        assert_eq!(only(&CHECK, &near).verdict, Verdict::Holds);
        let far = SITE.to_owned() + "carried = \"60 ft\"\n";
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Fails);
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
