//! Whether an electric lock still lets go when the wind or the drive leans on its bolt.
//!
//! The leaf leans on the bolt with what the operating wind leaves at its free end, or with the push at which the drive
//! gives up. A controller that eases the leaf off the bolt first answers the question by itself.

use crate::asking::{Asking, read};
use crate::check::wind::load::Wind;
use crate::check::wind::reaction::at_free_end;
use crate::check::{BOTH, Check, DATA_SHEET, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Force, Quantity as _};
use site::{Device, DeviceKind, Gate, GateKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-lock-preload",
    codes: BOTH,
    leaves_open: "a bolt that rusts, freezes or meets its keeper out of line; a release by hand while somebody leans on the leaf",
    concerns: "each powered lock of a gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site.device.iter().filter(|device| is_asked(site, device)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            lets_go(asking, site, device)
        });
    }
}

/// A lock, and not one of a leaf that is lifted straight up: that one hangs on its bolt instead of leaning on it.
fn is_asked(site: &Site, device: &Device) -> bool {
    let lifted = |gate: &Gate| {
        gate.kind == GateKind::VerticalLift
            && device
                .gate
                .as_ref()
                .map_or(site.gate.len() == 1, |name| *name == gate.id)
    };
    device.kind == DeviceKind::Lock && !site.gate.iter().any(lifted)
}

fn lets_go<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let gate = gate_of(asking, site, device)?;
    let eased = gate.motion.as_ref().and_then(|motion| motion.relieves_lock);
    if eased == Some(true) {
        asking.say(|_| {
            format!(
                "The drive eases the leaf off {} before the bolt moves.",
                device.id
            )
        });
        return Ok(Outcome::Rule(true));
    }
    let capacity = read!(asking, device.greatest_side_load);
    let wind = wind_on_bolt(asking, site, gate);
    let push = push_of_drive(asking, site, gate);
    let (capacity, wind) = (capacity?, wind?);
    asking.say(|print| {
        let drive = push.map_or_else(String::new, |push| {
            format!(", the drive with up to {}", print.q(push))
        });
        format!(
            "In the operating wind the leaf leans on {} with {}{drive}; it lets go under {}.",
            device.id,
            print.q(wind),
            print.q(capacity)
        )
    });
    let against = |label, force| {
        Comparison::at_most(
            Labeled::new(label, force),
            Labeled::new("side load at which the lock lets go", capacity),
        )
    };
    let comparisons = [
        Some(against("wind on the bolt", wind)),
        push.map(|push| against("push of the drive on the bolt", push)),
    ];
    Outcome::worst(comparisons.into_iter().flatten()).ok_or(Halt)
}

/// What the operating wind leaves at the free ends: one bolt holds both leaves of a double swing gate.
fn wind_on_bolt<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Force, Halt> {
    asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.first(),
        "[{ id = \"leaf\", length = \"20 ft\" }]",
    )?;
    let ends: Vec<Result<Force, Halt>> = gate
        .leaf
        .iter()
        .map(|leaf| at_free_end(asking, site, leaf, Wind::Operating).map(|(_, force)| force))
        .collect();
    let mut sum = Force::from_base(0.0);
    for end in ends {
        sum += end?;
    }
    Ok(sum)
}

/// The greatest push with which an operator of the gate may stand against the bolt, where it is written down.
fn push_of_drive<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &Gate) -> Option<Force> {
    let mut greatest = None;
    for operator in site.operators_of(gate) {
        let push = asking.read_if_there(
            &operator.origin,
            "obstruction_force",
            operator.obstruction_force.as_ref(),
        );
        if push > greatest {
            greatest = push;
        }
    }
    greatest
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        operating_wind_speed = "20 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "100 %"
        [gate.motion]
        relieves_lock = false
        [[operator]]
        id = "drive"
        gate = "main"
        obstruction_force = "40 lbf"
        [[device]]
        id = "bolt"
        kind = "lock"
        gate = "main"
        greatest_side_load = "90 lbf"
    "#;

    #[test]
    fn holds_with_a_strong_coil_or_a_relief() {
        let strong = only(&CHECK, SITE);
        assert_eq!(strong.verdict, Verdict::Holds, "{}", strong.sentence);
        let eased = SITE
            .replace("relieves_lock = false", "relieves_lock = true")
            .replace("greatest_side_load = \"90 lbf\"", "");
        assert_eq!(only(&CHECK, &eased).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_when_wind_or_drive_jams_the_bolt() {
        let weak = only(&CHECK, &SITE.replace("90 lbf", "44 lbf"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
        let pushed = only(&CHECK, &SITE.replace("40 lbf", "95 lbf"));
        assert_eq!(pushed.verdict, Verdict::Fails, "{}", pushed.sentence);
    }

    #[test]
    fn unknown_without_the_side_load() {
        let finding = only(&CHECK, &SITE.replace("greatest_side_load = \"90 lbf\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }

    #[test]
    fn a_lifted_leaf_hangs_on_its_bolt() {
        assert!(all(&CHECK, &SITE.replace("single-swing", "vertical-lift")).is_empty());
    }
}
