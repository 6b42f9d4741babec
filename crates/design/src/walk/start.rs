//! What starts the leaf, and what keeps it from starting: nobody is asked whether the gate is clear when a timer closes it.

use super::assumption::Assumption;
use super::devices::{of_gate, senses_people};
use crate::asking::Asking;
use site::{Device, DeviceKind, Direction, Gate, Site};

/// Notes what starts each way, and which devices keep it from starting.
pub(super) fn start<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) {
    let hold = asking.read_if_there(&gate.origin, "hold_time", gate.hold_time.as_ref());
    let starts = hold.map_or_else(
        || "on a command, whoever is in the opening or steps into it at that moment".to_owned(),
        |hold| {
            format!(
                "by itself {} after it stands open, or on a command, whoever lingers in the opening or steps into it at that moment",
                asking.print().q(hold)
            )
        },
    );
    defaults.push(Assumption::default(
        "what starts the closing leaf",
        starts,
        "rule of this test: the moment of the start is any moment for those who walk",
    ));
    for (direction, moves) in [
        (Direction::Closing, "closing"),
        (Direction::Opening, "opening"),
    ] {
        let (tried, taken) = keepers(site, gate, direction);
        let names = |these: &[&Device]| {
            let names: Vec<String> = these.iter().map(|device| device.id.to_string()).collect();
            if names.is_empty() {
                "none".to_owned()
            } else {
                names.join(", ")
            }
        };
        let source = if taken.is_empty() && tried.is_empty() {
            "no beam and no field acts while it moves that way".to_owned()
        } else if taken.is_empty() {
            "each was tried".to_owned()
        } else {
            format!(
                "taken for granted of {}: block each and give the command; a timer starts again only once it is clear",
                names(&taken)
            )
        };
        let all: Vec<&Device> = tried.into_iter().chain(taken).collect();
        defaults.push(Assumption::default(
            format!("what keeps a leaf from {moves} while it is blocked"),
            names(&all),
            source,
        ));
    }
}

/// The devices that see whoever stands there when the leaf would start: those of which that was tried, and the others.
fn keepers<'s>(
    site: &'s Site,
    gate: &'s Gate,
    direction: Direction,
) -> (Vec<&'s Device>, Vec<&'s Device>) {
    let sees = |device: &&Device| {
        senses_people(device)
            && device.kind != DeviceKind::ContactEdge
            && device.guards.contains(&direction)
    };
    of_gate(site, gate)
        .filter(sees)
        .partition(|device| device.keeps_from_starting == Some(true))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use crate::Verdict;
    use crate::check::testing::{only, site};
    use crate::check::walk::anyone_hit::CHECK;
    use crate::check::walk::yard::YARD;
    use crate::walk::GateWalk;

    fn printed(text: &str) -> Vec<String> {
        let site = site(text);
        let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
        let all = walk.assumptions().iter();
        all.filter(|one| one.what.starts_with("what "))
            .map(|one| format!("{}: {} ({})", one.what, one.value, one.source))
            .collect()
    }

    #[test]
    fn holds_a_timer_and_the_devices_that_hold_it_off_in_words() {
        let timed = YARD.replace(
            "kind = \"track-slide\"",
            "kind = \"track-slide\"\nhold_time = \"30 s\"",
        );
        let printed = printed(&timed).join("\n");
        assert!(
            printed.contains("by itself 30 s after it stands open"),
            "{printed}"
        );
        assert!(printed.contains("taken for granted of"), "{printed}");
        let tried = timed.replace("guards = ", "keeps_from_starting = true\nguards = ");
        let printed = self::printed(&tried).join("\n");
        assert!(printed.contains("each was tried"), "{printed}");
        assert!(!printed.contains("taken for granted of"), "{printed}");
    }

    #[test]
    fn not_walked_where_a_blocked_device_lets_the_leaf_start() {
        let starts = YARD.replace("guards = ", "keeps_from_starting = false\nguards = ");
        let finding = only(&CHECK, &starts);
        assert_eq!(
            finding.verdict,
            Verdict::OutsideThisTool,
            "{}",
            finding.sentence
        );
        assert!(
            finding
                .sentence
                .contains("keeps the leaf from starting, and try it"),
            "{}",
            finding.sentence
        );
    }
}
