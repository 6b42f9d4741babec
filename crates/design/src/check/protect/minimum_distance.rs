//! Whether a beam is far enough out that the leaf stands before a walking person gets to it.
//!
//! Each side of a gate is asked once, of the beam farthest out: nearer ones watch whoever stands in the line already.
//! The allowance of the 2024 edition, 1200 mm whatever the height, is never the smaller one; both editions are worked.
//! The distance is from the beam to where the leaf can be: the gate line, or the tip of a leaf that swings to that side.

use crate::asking::{Asking, pick, read};
use crate::check::motion::stopping::stop;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{Iso138552010ParallelDistance, Iso138552024ParallelDistance};
use quantity::{Length, Quantity as _};
use site::{Device, DeviceKind, Gate, GateKind, Leaf, ProtectionType, Site, SwingSide};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-minimum-distance",
    codes: BOTH,
    leaves_open: "area scanners, people who run or ride, and reaching over, under or around the beam",
    concerns: "each side of a gate that has a photo-eye",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let beams: Vec<&Device> = site
        .device
        .iter()
        .filter(|device| is_beam(device))
        .collect();
    for (at, device) in beams.iter().enumerate() {
        let farther =
            |(other_at, other): (usize, &&Device)| is_farther((other_at, other), (at, device));
        if !beams.iter().enumerate().any(farther) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                distance(asking, site, device)
            });
        }
    }
}

/// A photo-eye that protects people and does not move with the leaf.
fn is_beam(device: &Device) -> bool {
    matches!(
        device.kind,
        DeviceKind::ThroughBeam | DeviceKind::Reflective
    ) && device.protection == Some(ProtectionType::B1)
        && device.carried_by.is_none()
}

/// The first beam guards the same side of the same gate from farther out; of two equally far, the earlier one.
fn is_farther((at, one): (usize, &Device), (other_at, other): (usize, &Device)) -> bool {
    let (Some(near), Some(far)) = (offset(other), offset(one)) else {
        return false;
    };
    let same = one.gate == other.gate && (near < 0.0) == (far < 0.0);
    same && (far.abs() > near.abs() || (far.abs() >= near.abs() && at < other_at))
}

/// How far into the property the nearer end of a beam is, as written; nothing while an end is not.
fn offset(device: &Device) -> Option<f64> {
    let (at, to) = (device.at?.y.nominal().base(), device.to?.y.nominal().base());
    Some(if at.abs() <= to.abs() { at } else { to })
}

fn distance<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let capability = read!(asking, device.detection_capability);
    let gate = gate_of(asking, site, device)?;
    let stop = stop(asking, site, gate, device);
    let ([_, at, height], [_, to, _]) = (at?, to?);
    let depth = depth(asking, gate, at.base() + to.base() > 0.0);
    let (capability, stop, depth) = (capability?, stop?, depth?);
    let nearer = at.base().abs().min(to.base().abs());
    let room = Length::from_base(nearer - depth.base());
    let older = asking.work(&Iso138552010ParallelDistance {
        stopping_time: stop.total_time,
        field_height: height,
        capability,
    })?;
    let newer = asking.work(&Iso138552024ParallelDistance {
        stopping_time: stop.total_time,
        supplement: Length::from_base(0.0),
    })?;
    let needed = if older.distance > newer.distance {
        older.distance
    } else {
        newer.distance
    };
    asking.say(|print| {
        format!(
            "{} is {} from where the leaf can be; the leaf stands {} after it reports, and a walker needs {} for that.",
            device.id,
            print.q(room),
            print.q(stop.total_time),
            print.q(needed)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("minimum distance", needed),
        Labeled::new("distance from beam to leaf", room),
    ))
}

/// How far from the gate line the leaf comes on one side.
fn depth<'s>(asking: &mut Asking<'s>, gate: &'s Gate, inside: bool) -> Result<Length, Halt> {
    let longest = |a: &&Leaf, b: &&Leaf| length(a).total_cmp(&length(b));
    let leaf = asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.iter().max_by(longest),
        "[{ id = \"leaf\" }]",
    )?;
    let half = asking
        .read_if_there(&leaf.origin, "thickness", leaf.thickness.as_ref())
        .map_or(Length::from_base(0.0), |thickness| thickness / 2.0);
    if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        return Ok(half);
    }
    let swings = pick!(asking, gate.swings)?;
    if (swings == SwingSide::IntoProperty) == inside {
        read!(asking, leaf.length)
    } else {
        Ok(half)
    }
}

fn length(leaf: &Leaf) -> f64 {
    leaf.length
        .map_or(f64::INFINITY, |length| length.nominal().base())
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        [gate.motion]
        cruise_speed = "1 ft/s"
        stopping_deceleration = "5 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
        response_time = "20 ms"
        detection_capability = "1 in"
        at = ["0 ft", "-6 ft", "27 in"]
        to = ["20 ft", "-6 ft", "27 in"]
    "#;

    #[test]
    fn holds_far_out() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 100 ms and 1 ft/s over 5 ft/s² are 0.3 s: 1600 mm/s · 0.3 s + 1200 mm.
        assert!((finding.demand.unwrap().value.unwrap() - 1.68).abs() < 1e-9);
    }

    #[test]
    fn fails_close_by() {
        assert_eq!(
            only(&CHECK, &SITE.replace("-6 ft", "-30 in")).verdict,
            Verdict::Fails
        );
    }

    #[test]
    fn only_the_farthest_beam_of_a_side_is_asked() {
        let near = SITE[SITE.find("[[device]]").unwrap()..]
            .replace("beam\"", "near\"")
            .replace("-6 ft", "-5 in");
        let both = format!("{SITE}{near}");
        let names: Vec<String> = all(&CHECK, &both)
            .into_iter()
            .map(|finding| finding.subject.name)
            .collect();
        assert_eq!(names, ["beam"]);
    }

    #[test]
    fn a_leaf_that_swings_to_the_beams_side_takes_room() {
        let swing = SITE
            .replace("track-slide", "single-swing")
            .replace("slope = \"0\"", "swings = \"toward the road\"")
            .replace(
                "cruise_speed = \"1 ft/s\"",
                "cruise_turning_speed = \"3 deg/s\"",
            );
        assert_eq!(only(&CHECK, &swing).verdict, Verdict::Fails);
        assert_eq!(
            only(
                &CHECK,
                &swing.replace("toward the road", "into the property")
            )
            .verdict,
            Verdict::Holds
        );
    }

    #[test]
    fn unknown_without_the_position() {
        let finding = only(
            &CHECK,
            &SITE.replace("at = [\"0 ft\", \"-6 ft\", \"27 in\"]", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("at = ["));
    }
}
