//! What is unbalanced on an arm or a leaf that rises, over its whole travel, against what its drive may carry.
//!
//! Asked at thirteen places of the travel: steadily in the operating wind, against the torque or force that the drive may
//! give without end; and while speeding up in that wind with a quarter in hand, which is common practice, against what it
//! gives at the start, or without end where the start is not on its data sheet.

use super::rising::{Rising, RisingAt, hardest, rises, rising};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::{Evidence, Source};
use quantity::{Mass, Quantity as _};
use site::{BalanceKind, Gate, GateKind, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-balance",
    codes: BOTH,
    leaves_open: "whether it stays where it is let go, which is a question of its own; friction, ice or a hanging skirt on the arm, and a spring that has tired",
    concerns: "each gate whose arm or leaf rises, with its operator",
    ask,
};

/// Share of the hardest torque or force that is kept in hand.
const IN_HAND: f64 = 0.25;

static MARGIN: Source = Source {
    work: "a quarter of the hardest torque or force kept in hand",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(site, rises, |asking, gate, operator| {
        balance(asking, site, gate, operator)
    });
}

fn balance<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let leaf = leaf_of(asking, gate, operator)?;
    let capacity = capacity(asking, gate, operator);
    let at = |asking: &mut Asking<'s>, at| rising(asking, site, gate, leaf, at);
    let starting = hardest(asking, RisingAt::starting, at, Rising::demand);
    let (starting, capacity) = (starting?, capacity?);
    let steady = hardest(asking, RisingAt::steady, at, Rising::demand)?;
    let shut = at(asking, RisingAt::free(0.0))?;
    let open = at(asking, RisingAt::free(1.0))?;
    asking.rest_on(&MARGIN);
    let with_margin = starting.demand() * (1.0 + IN_HAND);
    let right = right_mass(asking, gate, &shut);
    asking.say(|print| {
        format!(
            "Hardest at {}: {} while speeding up in the operating wind, {} with a quarter in hand (common practice); the \
             drive gives {} at the start. Running steadily it asks {} at most, of {} without end. Let go on a calm day {} shut and {} open.{}",
            print.value(&starting.place()),
            print.value(&starting.value(starting.demand())),
            print.value(&starting.value(with_margin)),
            print.value(&starting.value(capacity.starting)),
            print.value(&steady.value(steady.demand())),
            print.value(&steady.value(capacity.without_end)),
            drift(print, &shut),
            drift(print, &open),
            right.map_or_else(String::new, |mass| format!(
                " {} at the same radius would balance it shut.",
                print.q(mass)
            ))
        )
    });
    Outcome::worst([
        compared(
            ("hardest while speeding up, a quarter in hand", with_margin),
            ("what the drive gives at the start", capacity.starting),
            &starting,
        ),
        compared(
            ("hardest at a steady run", steady.demand()),
            ("what the drive gives without end", capacity.without_end),
            &steady,
        ),
    ])
    .ok_or(Halt)
}

/// What the drive may carry, as torque or force.
struct Capacity {
    without_end: f64,
    starting: f64,
}

fn capacity<'s>(
    asking: &mut Asking<'s>,
    gate: &Gate,
    operator: &'s Operator,
) -> Result<Capacity, Halt> {
    let (without_end, starting) = if gate.kind == GateKind::VerticalLift {
        let rated = read!(asking, operator.rated_force)?.base();
        let start = asking.read_if_there(
            &operator.origin,
            "starting_force",
            operator.starting_force.as_ref(),
        );
        (rated, start.map(quantity::Quantity::base))
    } else {
        let rated = read!(asking, operator.rated_torque)?.base();
        let start = asking.read_if_there(
            &operator.origin,
            "starting_torque",
            operator.starting_torque.as_ref(),
        );
        (rated, start.map(quantity::Quantity::base))
    };
    Ok(Capacity {
        without_end,
        starting: starting.unwrap_or(without_end),
    })
}

/// What the leaf does when it is let go.
fn drift(print: Print, here: &Rising) -> String {
    let unbalanced = here.unbalanced();
    let size = print.value(&here.value(unbalanced.abs()));
    if unbalanced < 0.0 {
        format!("it rises by itself with {size}")
    } else {
        format!("it falls closed with {size}")
    }
}

/// Counterweight that would balance an arm where it is shut, for an arm that has one.
fn right_mass<'s>(asking: &mut Asking<'s>, gate: &'s Gate, shut: &Rising) -> Option<Mass> {
    let balance = gate.balance.as_ref()?;
    let Rising::Turning(_, torques) = shut else {
        return None;
    };
    if balance.kind != BalanceKind::Counterweight || torques.weight.base() <= 0.0 {
        return None;
    }
    let mass = asking.read_if_there(&balance.origin, "mass", balance.mass.as_ref())?;
    let lifts = torques.counterweight.base();
    (lifts > 0.0).then(|| mass * (torques.weight.base() / lifts))
}

fn compared(
    demand: (&'static str, f64),
    capacity: (&'static str, f64),
    here: &Rising,
) -> Comparison {
    let labeled = |(label, base): (&'static str, f64)| Labeled {
        label,
        value: here.value(base),
    };
    Comparison::at_most(labeled(demand), labeled(capacity))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const ARM: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "si"
        wind_code = "ASCE 7-16"
        [climate]
        operating_wind_speed = "30 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        travel_angle = "90°"
        [gate.motion]
        acceleration = "1 m/s²"
        [gate.balance]
        kind = "counterweight"
        mass = "52 kg ± 1 kg"
        radius = "0.45 m"
        [[gate.leaf]]
        id = "boom"
        length = "4.1 m"
        height = "100 mm"
        thickness = "60 mm"
        ground_clearance = "0.9 m"
        solidity = "100 %"
        mass = "14 kg"
        center_along = "2.2 m"
        [[operator]]
        id = "drive"
        gate = "arm"
        rated_torque = "200 N·m"
        starting_torque = "350 N·m"
    "#;

    const LIFT: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "lift"
        kind = "vertical-lift"
        travel = "2.1 m"
        [gate.motion]
        acceleration = "0.2 m/s²"
        [gate.balance]
        kind = "torsion spring"
        torque_per_turn = "8 N·m"
        turns_closed = "8"
        count = 2
        drum_radius = "60 mm"
        [[gate.leaf]]
        id = "panel"
        mass = "200 kg"
        [[operator]]
        id = "hoist"
        gate = "lift"
        rated_force = "1600 N"
        starting_force = "2200 N"
    "#;

    #[test]
    fn holds_with_a_strong_drive() {
        let finding = only(&CHECK, ARM);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // Statics by hand, shut: 14 · 9.80665 · 1.9 less 52 · 9.80665 · 0.45 is 31.4 N·m; 59.1 kg would balance it.
        assert!(
            finding.sentence.contains("falls closed with 31.4 N·m"),
            "{}",
            finding.sentence
        );
        assert!(finding.sentence.contains("59.1 kg"), "{}", finding.sentence);
    }

    #[test]
    fn fails_with_half_the_counterweight() {
        let light = ARM.replace("52 kg", "16 kg");
        let finding = only(&CHECK, &light);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_spring_goes_slack_on_the_way() {
        let finding = only(&CHECK, LIFT);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let tired = LIFT.replace("turns_closed = \"8\"", "turns_closed = \"5\"");
        let finding = only(&CHECK, &tired);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        // At the top 5 − 2.1 / (2π · 0.06) turns are below zero: the springs are slack and the leaf hangs with all it
        // weighs, 1961 N against 1600 N; the start is strained less, 1.25 · (1961 N + 200 kg · 0.2 m/s²) against 2200 N.
        let demand = finding.demand.unwrap().value.unwrap();
        assert!((demand - 200.0 * 9.80665).abs() < 0.01, "{demand}");
    }

    #[test]
    fn unknown_without_balance_and_mass() {
        let bare = ARM
            .replace("mass = \"14 kg\"", "")
            .replace("mass = \"52 kg ± 1 kg\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let nothing = LIFT
            .replace("turns_closed = \"8\"", "")
            .replace("drum_radius = \"60 mm\"", "");
        assert_eq!(only(&CHECK, &nothing).missing.len(), 2);
    }

    #[test]
    fn a_leaf_that_turns_up_needs_to_know_where_its_pivot_is() {
        let leaf = ARM.replace("barrier-arm", "vertical-pivot");
        let finding = only(&CHECK, &leaf);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
