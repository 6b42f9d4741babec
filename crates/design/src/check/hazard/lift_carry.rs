//! Whether somebody can hold on to a leaf that rises, or be hooked by it, and be carried up.
//!
//! A leaf that offers no hold to a hand or a foot carries nobody. One that does is tried with a mass hung on its bottom
//! edge: the drive stops or turns back. The piece of 20 kg is known from memory only: it may warn, and passes nothing.

use crate::asking::{Asking, Wants, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Mass, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-lift-carry",
    codes: BOTH,
    leaves_open: "whoever is under it when it comes down, which the question of the bottom edge asks, and an opening above it",
    concerns: "each leaf that lifts or turns up",
    ask,
};

static HOLDS: Source = Source {
    work: "a leaf without a hold for hand or foot carries nobody up",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as looked at on site",
};

static PIECE: Source = Source {
    work: "EN 12453, test of a leaf that lifts a piece of 20 kg",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

/// Mass of the test piece.
const PIECE_MASS: f64 = 20.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked =
        |gate: &&Gate| matches!(gate.kind, GateKind::VerticalLift | GateKind::VerticalPivot);
    for gate in site.gate.iter().filter(asked) {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                carried(asking, site, gate, leaf)
            });
        }
    }
}

fn carried<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let hold = match &leaf.outside {
        Some(outside) => asking
            .need(
                &outside.origin,
                "hand_hold",
                outside.hand_hold.as_ref(),
                "false",
            )
            .copied(),
        None => asking.lack(&leaf.origin, "outside.hand_hold", Wants::Written("false")),
    }?;
    if !hold {
        asking.rest_on(&HOLDS);
        asking.say(|_| format!("{} offers no hold to a hand or a foot.", leaf.id));
        return Ok(Outcome::Rule(true));
    }
    let operator = operator_of(asking, site, gate)?;
    let stops_at = read!(asking, operator.lifts_at_most)?;
    asking.rest_on(&PIECE);
    let piece = Mass::from_base(PIECE_MASS);
    asking.say(|print| {
        format!(
            "{} can be held on to; its drive stops or turns back with {} hung on it, and has to with {}. Take the hold away, \
             or set the drive so that it stops.",
            leaf.id,
            print.q(stops_at),
            print.q(piece)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("mass at which it stops", stops_at),
        Labeled::new("test piece", piece),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const LIFT: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "vertical-lift"
        [[gate.leaf]]
        id = "leaf"
        [gate.leaf.outside]
        hand_hold = false
        [[operator]]
        id = "drive"
        gate = "main"
        lifts_at_most = "15 kg"
    "#;

    #[test]
    fn holds_without_a_hold() {
        let finding = only(&CHECK, LIFT);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_hold_and_a_drive_that_lifts_a_person() {
        let strong = LIFT
            .replace("hand_hold = false", "hand_hold = true")
            .replace("15 kg", "60 kg");
        let finding = only(&CHECK, &strong);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_by_a_remembered_piece_and_until_somebody_looked() {
        let weak = only(
            &CHECK,
            &LIFT.replace("hand_hold = false", "hand_hold = true"),
        );
        assert_eq!(weak.verdict, Verdict::UnknownUntil, "{}", weak.sentence);
        let open = only(&CHECK, &LIFT.replace("hand_hold = false", ""));
        assert_eq!(open.verdict, Verdict::UnknownUntil);
    }
}
