//! What the two trolleys of a cantilever slide carry, down and up, with and without a person on the tip.
//!
//! Fully closed and fully open, each with the climbing load at the latching end. The worst push is held against the rated
//! load of one trolley, the worst pull upward against what its rail holds down, and the tail against a third of the
//! opening, which is a rule of thumb.

use super::trolleys::{Ends, ends, loads};
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::leaf::RollerLoads;
use formula::{Evidence, Source};
use quantity::{Force, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-cantilever-rollers",
    codes: BOTH,
    leaves_open: "the twist that wind puts into rail and trolleys, the fixing of the trolleys to their posts, and the bow of the rail",
    concerns: "each cantilever slide gate",
    ask,
};

/// Share of the opening that the tail should have at least.
const LEAST_TAIL: f64 = 1.0 / 3.0;

static TAIL: Source = Source {
    work: "tail of a cantilever leaf a third to a half of the opening",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "rule of thumb of the trade",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let cantilevers = |gate: &&Gate| gate.kind == GateKind::CantileverSlide;
    for gate in site.gate.iter().filter(cantilevers) {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                rollers(asking, gate, leaf)
            });
        }
        if gate.leaf.is_empty() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(&gate.origin, "leaf", Wants::Written("[{ id = \"leaf\" }]"))
            });
        }
    }
}

fn rollers<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let ends = ends(asking, gate, leaf);
    let climber = read!(asking, gate.climbing_load);
    let rated = read!(asking, gate.wheels?.rated_load);
    let uplift = read!(asking, gate.wheels?.rated_uplift);
    let tail = tail(asking, gate, leaf);
    let (ends, climber) = (ends?, climber?);
    let worst = worst(asking, ends, climber)?;
    let (rated, uplift, tail) = (rated?, uplift?, tail?);
    asking.say(|print| {
        format!(
            "The trolleys carry up to {} down and {} up, with {} on the tip at the worse end of the travel; one is rated {} down and {} up. The tail is {} long, and {} is asked.",
            print.q(worst.push),
            print.q(worst.uplift),
            print.q(climber),
            print.q(rated),
            print.q(uplift),
            print.value(&tail.capacity.value),
            print.value(&tail.demand.value)
        )
    });
    let push = Comparison::at_most(
        Labeled::new("push on a trolley", worst.push),
        Labeled::new("rated load of a trolley", rated),
    );
    let pull = Comparison::at_most(
        Labeled::new("pull upward on a trolley", worst.uplift),
        Labeled::new("rated pull upward of a trolley", uplift),
    );
    Outcome::worst([push, pull, tail]).ok_or(Halt)
}

/// Greatest push and greatest pull upward.
struct Worst {
    push: Force,
    uplift: Force,
}

fn worst(asking: &mut Asking<'_>, ends: Ends, climber: Force) -> Result<Worst, Halt> {
    let bare = loads(asking, ends)?;
    let climbed = loads(asking, ends.with(climber))?;
    let greatest = |of: fn(&RollerLoads) -> Force| {
        let all = bare.iter().chain(&climbed).map(of);
        all.fold(Force::from_base(0.0), |most, force| {
            if force > most { force } else { most }
        })
    };
    Ok(Worst {
        push: greatest(|loads| loads.push),
        uplift: greatest(|loads| loads.uplift),
    })
}

/// The tail against its rule of thumb.
fn tail<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Comparison, Halt> {
    let tail = read!(asking, leaf.tail);
    let opening = read!(asking, gate.clear_opening);
    asking.rest_on(&TAIL);
    Ok(Comparison::at_most(
        Labeled::new("a third of the opening", opening? * LEAST_TAIL),
        Labeled::new("tail of the leaf", tail?),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "cantilever-slide"
        clear_opening = "20 ft"
        travel = "21 ft"
        climbing_load = "200 lbf"
        [[gate.leaf]]
        id = "leaf"
        length = "31 ft"
        tail = "10 ft"
        closed_end = "-1 ft"
        mass = "800 lb ± 5 %"
        center_along = "16 ft"
        [gate.wheels]
        front_at = "21 ft"
        spacing = "8 ft"
        rated_load = "3000 lbf"
        rated_uplift = "2000 lbf"
    "#;

    /// By hand, closed with a climber: center 6 ft and tip 22 ft ahead of the front trolley, 8 ft between the two.
    #[test]
    fn holds_with_stout_trolleys() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // Push 800·14/8 + 200·30/8 = 2150 lbf; pull 800·15/8 − 800 when open, 6 − 21 = −15 ft: 1500 − 800 = 700 and
        // closed 800·6/8 + 200·22/8 = 1150 lbf, the worse one.
        assert!(finding.sentence.contains("2150"), "{}", finding.sentence);
        assert!(finding.sentence.contains("1150"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_rail_lets_the_rear_trolley_rise() {
        let weak = SITE.replace("2000 lbf", "1000 lbf");
        let finding = only(&CHECK, &weak);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.ratio.unwrap() - 1.15).abs() < 1e-6);
    }

    #[test]
    fn fails_with_a_stump_of_a_tail() {
        let stump = SITE.replace("tail = \"10 ft\"", "tail = \"5 ft\"");
        assert_eq!(only(&CHECK, &stump).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_climber_and_a_center() {
        let bare = SITE
            .replace("climbing_load = \"200 lbf\"", "")
            .replace("center_along = \"16 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
