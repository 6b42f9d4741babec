//! What the drive's arm, its elbow, or a counterweight squeezes or shears as it moves.
//!
//! Covered arms catch nobody. Bare ones are held to the gap that was taped through the travel: 16 in in the United States;
//! in Europe it must not close on the largest part of the body that gets in at its widest. A counterweight runs enclosed, or
//! so high that nobody reaches it.

use super::open;
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Halt, Outcome};
use crate::subject::About;
use crate::zone::{arm, leaf};
use formula::{Evidence, Source};
use site::{BalanceKind, Gate, GateKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-arm-and-counterweight",
    codes: BOTH,
    leaves_open: "the tail of an arm beyond its pivot where nobody taped it, and whether every cover is still on: look at every visit",
    concerns: "each gate whose leaf swings or turns up, and each barrier arm",
    ask,
};

static ENCLOSED: Source = Source {
    work: "a counterweight that runs enclosed over its whole way reaches nobody",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as looked at on site",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let turns_up =
        |gate: &Gate| matches!(gate.kind, GateKind::BarrierArm | GateKind::VerticalPivot);
    let asked = |gate: &&Gate| leaf::swings(gate) || turns_up(gate);
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            let open_weight = open_weight(asking, gate);
            let zones = arm::drive_arms(asking, site, gate);
            let (open_weight, zones) = (open_weight?, zones?);
            asking.rest_on(&ENCLOSED);
            let arms = open::answer(
                asking,
                (site, gate),
                &zones,
                "The arm of the drive is covered where it moves, and no counterweight runs in the open.",
            )?;
            if open_weight {
                asking.say(|_| {
                    format!(
                        "The counterweight of {} runs in the open. Enclose its whole way, or guard it.",
                        gate.id
                    )
                });
                return Ok(Outcome::Rule(false));
            }
            Ok(arms)
        });
    }
}

/// A counterweight runs where somebody can be.
fn open_weight<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<bool, Halt> {
    let Some(balance) = &gate.balance else {
        return Ok(false);
    };
    if balance.kind != BalanceKind::Counterweight {
        return Ok(false);
    }
    let enclosed = asking.need(
        &balance.origin,
        "enclosed",
        balance.enclosed.as_ref(),
        "true",
    );
    enclosed.map(|enclosed| !enclosed)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        [[operator]]
        id = "drive"
        gate = "court"
        drive = "articulated"
        arm_covered = false
        at = ["3 m", "0.2 m", "0.6 m"]
        arm_gap = "510 mm"
        arm_gap_widest = "600 mm"
    "#;

    #[test]
    fn holds_covered_or_with_room() {
        let finding = only(&CHECK, SWING);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let covered = SWING
            .replace("arm_covered = false", "arm_covered = true")
            .replace("510 mm", "30 mm");
        assert_eq!(only(&CHECK, &covered).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_where_the_elbow_closes_on_an_arm() {
        let near = only(
            &CHECK,
            &SWING.replace("510 mm", "40 mm").replace("600 mm", "80 mm"),
        );
        assert_eq!(near.verdict, Verdict::Fails, "{}", near.sentence);
        assert!(
            near.sentence.contains("moving arm of drive"),
            "{}",
            near.sentence
        );
        let us = SWING.replace("\"eu\"", "\"us\"").replace("510 mm", "10 in");
        assert_eq!(only(&CHECK, &us).verdict, Verdict::Fails);
    }

    #[test]
    fn a_counterweight_runs_enclosed() {
        let arm = SWING.replace("single-swing", "barrier-arm").replace(
            "[[operator]]",
            "[gate.balance]\nkind = \"counterweight\"\nenclosed = true\n[[operator]]",
        );
        assert_eq!(only(&CHECK, &arm).verdict, Verdict::Holds);
        let bare = only(&CHECK, &arm.replace("enclosed = true", "enclosed = false"));
        assert_eq!(bare.verdict, Verdict::Fails, "{}", bare.sentence);
    }

    #[test]
    fn unknown_until_somebody_says_whether_it_is_covered() {
        let finding = only(&CHECK, &SWING.replace("arm_covered = false", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("arm_covered"));
    }
}
