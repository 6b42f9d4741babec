//! Which of two leaves goes first, by how much, and what the other does when one is stopped.
//!
//! The leaf whose edge covers the other has to open first and to close last. Two drives of one kind do not run alike: the
//! wait has to be longer than what the tolerance of their turning speed may make of the travel, and at least a second,
//! which is common practice. An event on one leaf stops both, and neither closes onto a leaf that stands ajar.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Time};
use site::{Gate, GateKind, LeafOrder, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-two-leaves",
    codes: BOTH,
    leaves_open: "how deep the edges overlap, a leaf held up by wind, and the order after power comes back",
    concerns: "each gate of two swing leaves",
    ask,
};

/// The least wait, in seconds.
const LEAST_WAIT: f64 = 1.0;

static WAIT: Source = Source {
    work: "a leaf that covers the other waits at least a second, and longer than the two may differ",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

/// How the order of leaves is written.
const ORDER: &str = "[gate.leaf_order]\ncovering = \"leaf-right\"\nopening_delay = \"3 s\"\nclosing_delay = \"3 s\"\nstops_both = true\nwaits_for_ajar = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let double = |gate: &&Gate| gate.kind == GateKind::DoubleSwing;
    for gate in site.gate.iter().filter(double) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            order(asking, gate)
        });
    }
}

fn order<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Answer {
    let Some(order) = &gate.leaf_order else {
        return asking.lack(&gate.origin, "leaf_order", Wants::Table(ORDER));
    };
    let least = least_wait(asking, gate);
    let opening = read!(asking, order.opening_delay);
    let closing = read!(asking, order.closing_delay);
    let rules = rules(asking, order);
    let (least, opening, closing, rules) = (least?, opening?, closing?, rules?);
    asking.rest_on(&WAIT);
    asking.say(|print| {
        let kept = match rules {
            Rules { stops_both: false, .. } => "an event on one leaf lets the other run on",
            Rules { waits_for_ajar: false, .. } => "it closes onto a leaf that stands ajar",
            _ => "an event on one stops both, and none closes onto a leaf ajar",
        };
        format!(
            "{} opens first and closes last; the other waits {} while opening and it waits {} while closing, and the two may differ \
             by {} over the travel (at least a second is kept, common practice); {kept}.",
            rules.covering,
            print.q(opening),
            print.q(closing),
            print.q(least)
        )
    });
    if !(rules.stops_both && rules.waits_for_ajar) {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("wait needed while opening", least),
            Labeled::new("wait of the covered leaf while opening", opening),
        ),
        Comparison::at_most(
            Labeled::new("wait needed while closing", least),
            Labeled::new("wait of the covering leaf while closing", closing),
        ),
    ])
    .ok_or(Halt)
}

/// What is written of the order, as far as it is no figure.
#[derive(Debug, Clone, Copy)]
struct Rules<'s> {
    covering: &'s str,
    stops_both: bool,
    waits_for_ajar: bool,
}

fn rules<'s>(asking: &mut Asking<'s>, order: &'s LeafOrder) -> Result<Rules<'s>, Halt> {
    let origin = &order.origin;
    let covering = asking.need(
        origin,
        "covering",
        order.covering.as_ref(),
        "\"leaf-right\"",
    );
    let stops_both = asking.need(origin, "stops_both", order.stops_both.as_ref(), "true");
    let ajar = asking.need(
        origin,
        "waits_for_ajar",
        order.waits_for_ajar.as_ref(),
        "true",
    );
    let covering = covering?;
    Ok(Rules {
        covering: covering.as_str(),
        stops_both: *stops_both?,
        waits_for_ajar: *ajar?,
    })
}

/// By how much two leaves of one travel may differ at the tolerance of their turning speed.
fn least_wait<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Time, Halt> {
    let travel = read!(asking, gate.travel_angle);
    let speed = read!(asking, gate.motion?.cruise_turning_speed);
    let (travel, _) = (travel?, speed?);
    let speeds = gate
        .motion
        .as_ref()
        .and_then(|motion| motion.cruise_turning_speed.as_ref());
    let spread = speeds.map_or(0.0, |speed| {
        let (slow, fast) = (speed.low().base(), speed.high().base());
        if slow > 0.0 {
            travel.base() / slow - travel.base() / fast
        } else {
            f64::INFINITY
        }
    });
    if !spread.is_finite() {
        return asking.refuse("a turning speed that may be zero says nothing of the time");
    }
    Ok(Time::from_base(spread.max(LEAST_WAIT)))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "double-swing"
        travel_angle = "90° ± 1°"
        [[gate.leaf]]
        id = "leaf-left"
        [[gate.leaf]]
        id = "leaf-right"
        [gate.motion]
        cruise_turning_speed = "5.5 deg/s ± 5 %"
        [gate.leaf_order]
        covering = "leaf-right"
        opening_delay = "3 s"
        closing_delay = "3 s"
        stops_both = true
        waits_for_ajar = true
    "#;

    #[test]
    fn holds_with_three_seconds() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 90° at 5.225 and at 5.775 degrees a second: 17.22 s and 15.58 s.
        let wait = finding
            .demand
            .and_then(|demand| demand.value)
            .unwrap_or_default();
        assert!((wait - 1.64).abs() < 0.01, "{wait}");
    }

    #[test]
    fn fails_with_a_short_wait_or_a_leaf_that_runs_on() {
        let short = SITE.replace("closing_delay = \"3 s\"", "closing_delay = \"1 s\"");
        assert_eq!(only(&CHECK, &short).verdict, Verdict::Fails);
        let on = SITE.replace("stops_both = true", "stops_both = false");
        assert_eq!(only(&CHECK, &on).verdict, Verdict::Fails);
        let ajar = SITE.replace("waits_for_ajar = true", "waits_for_ajar = false");
        assert_eq!(only(&CHECK, &ajar).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_order() {
        let bare = SITE
            .replace("opening_delay", "#")
            .replace("waits_for_ajar", "#");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
