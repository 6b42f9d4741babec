//! Whether no joint of track, rail or rack lies where wheels or the pinion rest, or over a joint of the ground.
//!
//! A track lies still and its wheels move: they rest where they stand closed, and a travel farther. A rack and the rail in a
//! cantilever leaf move over pinion and trolleys that stand still: the place that bears open is a travel back. At both ends
//! the drive starts with its full force, so that these are the places of the full load, too.

use crate::asking::{Asking, Wants, need, read};
use crate::check::{BOTH, Check, DATA_SHEET, GEOMETRY, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Length, Quantity as _};
use site::{DriveKind, Gate, GateKind, Joined, JoinedKind, Signed, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "make-joint-places",
    codes: BOTH,
    leaves_open: "places where the leaf stops halfway, height and side of the joints themselves, and whether the gaps are wide enough: see the growth of leaf and track",
    concerns: "each gate whose leaf runs on a track or a rail, or is driven by a rack",
    ask,
};

/// How a track or a rack is written.
const JOINED: &str = "[[joined]]\nid = \"track-main\"\ngate = \"main\"\nkind = \"track\"\nbegins = \"-6 in\"\nends = \"42 ft\"\njoint_at = [\"14 ft\", \"28 ft\"]\nloaded_at = [\"1 ft\", \"19 ft 6 in\"]\nleast_distance = \"6 in\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        let has = |kind: JoinedKind| {
            site.joined
                .iter()
                .any(|joined| joined.gate == gate.id && joined.kind == kind)
        };
        let wanted = wanted(site, gate);
        if wanted.iter().any(|kind| !has(*kind)) {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(&site.origin, "joined", Wants::Table(JOINED))
            });
        }
    }
    for joined in &site.joined {
        let gate = site.gate.iter().find(|gate| gate.id == joined.gate);
        if let Some(gate) = gate {
            round.ask(About::new(&joined.origin, &joined.id), |asking| {
                placed(asking, gate, joined)
            });
        }
    }
}

/// What a gate runs on and is driven by that may have joints.
fn wanted(site: &Site, gate: &Gate) -> Vec<JoinedKind> {
    let runs_on = match gate.kind {
        GateKind::TrackSlide => Some(JoinedKind::Track),
        GateKind::CantileverSlide | GateKind::VerticalLift => Some(JoinedKind::Rail),
        _ => None,
    };
    let racked = runs_on.is_some()
        && site
            .operators_of(gate)
            .any(|operator| operator.drive == Some(DriveKind::Rack));
    runs_on
        .into_iter()
        .chain(racked.then_some(JoinedKind::Rack))
        .collect()
}

fn placed<'s>(asking: &mut Asking<'s>, gate: &'s Gate, joined: &'s Joined) -> Answer {
    asking.rest_on(&GEOMETRY);
    asking.rest_on(&DATA_SHEET);
    let begins = read!(asking, joined.begins);
    let ends = read!(asking, joined.ends);
    let travel = read!(asking, gate.travel);
    let asked = read!(asking, joined.least_distance);
    let bears = bears(asking, joined);
    let gauged = gauged(asking, joined);
    let (begins, ends, travel) = (begins?.base(), ends?.base(), travel?.base());
    let (asked, bears, gauged) = (asked?, bears?, gauged?);
    let joints = places(asking, joined, "joint_at", &joined.joint_at);
    if joints.iter().any(|at| *at <= begins || *at >= ends) {
        return asking.refuse("a joint lies beyond its ends; mend the places");
    }
    let back = if moves(gate, joined) { -travel } else { travel };
    let rests: Vec<f64> = bears.iter().flat_map(|at| [*at, *at + back]).collect();
    if let Some(off) = rests.iter().find(|at| **at < begins || **at > ends) {
        let (off, kind) = (Length::from_base(*off), joined.kind);
        asking.say(|print| format!("At one end of the travel something bears at {}, and the {kind} does not reach there.", print.q(off)));
        return Ok(Outcome::Rule(false));
    }
    let ground = places(asking, joined, "ground_joint_at", &joined.ground_joint_at);
    let Some((joint, gap, over)) = nearest(&joints, &rests, &ground) else {
        asking.say(|_| format!("The {} is one length and has no joint.", joined.kind));
        return Ok(Outcome::Rule(true));
    };
    let compared = Comparison::at_most(
        Labeled::new("distance asked of a joint", asked),
        Labeled::new("distance of the nearest joint", Length::from_base(gap)),
    );
    asking.say(|print| {
        let gauge = match (gauged, joined.kind) {
            (false, JoinedKind::Rack) => " Set its joints with a piece of rack laid across them, or the pinion climbs over them.",
            _ => "",
        };
        let mend = if compared.holds() { "" } else { " Move the joint." };
        format!(
            "The joint of the {} at {} is {} from {over}; {} is asked.{mend}{gauge}",
            joined.kind,
            print.q(Length::from_base(joint)),
            print.q(Length::from_base(gap)),
            print.q(asked)
        )
    });
    if !gauged {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst([compared]).ok_or(Halt)
}

/// It moves with the leaf over what stands still.
fn moves(gate: &Gate, joined: &Joined) -> bool {
    match joined.kind {
        JoinedKind::Track => false,
        JoinedKind::Rack => true,
        JoinedKind::Rail => gate.kind != GateKind::VerticalLift,
    }
}

/// Where something bears on it with the gate closed.
fn bears<'s>(asking: &mut Asking<'s>, joined: &'s Joined) -> Result<Vec<f64>, Halt> {
    if joined.loaded_at.is_empty() {
        return asking.lack(
            &joined.origin,
            "loaded_at",
            Wants::Written("[\"1 ft\", \"19 ft 6 in\"]"),
        );
    }
    Ok(places(asking, joined, "loaded_at", &joined.loaded_at))
}

/// The joints of a rack are set with a gauge; nothing else needs one.
fn gauged<'s>(asking: &mut Asking<'s>, joined: &'s Joined) -> Result<bool, Halt> {
    if joined.kind != JoinedKind::Rack || joined.joint_at.is_empty() {
        return Ok(true);
    }
    need!(asking, joined.set_with_gauge, "true").copied()
}

fn places<'s>(
    asking: &mut Asking<'s>,
    joined: &'s Joined,
    key: &'static str,
    at: &'s [Signed<Length>],
) -> Vec<f64> {
    let each = at.iter();
    each.map(|at| asking.given(&joined.origin, key, at).base())
        .collect()
}

/// The joint nearest to what it must keep away from: where, how far, and from what.
fn nearest(joints: &[f64], rests: &[f64], ground: &[f64]) -> Option<(f64, f64, &'static str)> {
    let from = |joint: f64, places: &[f64], what: &'static str| {
        let gaps = places.iter().map(|place| (place - joint).abs());
        gaps.min_by(f64::total_cmp).map(|gap| (joint, gap, what))
    };
    let each = joints.iter().flat_map(|joint| {
        [
            from(*joint, rests, "a place where the leaf rests on it"),
            from(*joint, ground, "a joint of the ground"),
        ]
    });
    each.flatten()
        .min_by(|one, other| one.1.total_cmp(&other.1))
}

#[cfg(test)]
mod tests {
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
        travel = "20 ft"
        [[joined]]
        id = "track"
        gate = "main"
        kind = "track"
        begins = "-1 ft"
        ends = "41 ft"
        joint_at = ["14 ft", "28 ft"]
        loaded_at = ["1 ft", "19 ft"]
        least_distance = "12 in"
        ground_joint_at = ["10 ft"]
    "#;

    #[test]
    fn holds_with_joints_away_from_wheels() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: wheels at 1, 19, 21 and 39 ft, the ground's joint at 10 ft; nearest to a joint is 4 ft.
        assert!(
            (finding
                .capacity
                .and_then(|figure| figure.value)
                .unwrap_or(0.0)
                - 1.2192)
                .abs()
                < 1e-9
        );
    }

    #[test]
    fn fails_with_a_joint_under_a_wheel_or_over_a_joint_of_the_ground() {
        let wheel = only(&CHECK, &SITE.replace("\"28 ft\"", "\"21 ft 3 in\""));
        assert_eq!(wheel.verdict, Verdict::Fails, "{}", wheel.sentence);
        let ground = only(&CHECK, &SITE.replace("\"10 ft\"", "\"13 ft 6 in\""));
        assert_eq!(ground.verdict, Verdict::Fails, "{}", ground.sentence);
        assert!(ground.sentence.contains("joint of the ground"));
        let short = only(&CHECK, &SITE.replace("\"41 ft\"", "\"38 ft\""));
        assert_eq!(short.verdict, Verdict::Fails, "{}", short.sentence);
    }

    #[test]
    fn fails_with_a_rack_whose_joint_stands_over_the_pinion_of_the_open_gate_or_was_set_by_eye() {
        let rack = SITE
            .replace("kind = \"track\"", "kind = \"rack\"\nset_with_gauge = true")
            .replace("[\"1 ft\", \"19 ft\"]", "[\"34 ft 3 in\"]");
        let findings = all(&CHECK, &rack);
        let finding = findings
            .iter()
            .find(|finding| finding.subject.name == "track");
        // By hand: closed the pinion is at 34 ft 3 in, open at 14 ft 3 in of the rack: 3 in from a joint.
        assert!(
            finding.is_some_and(|finding| finding.verdict == Verdict::Fails),
            "{findings:#?}"
        );
        let eye = rack
            .replace("34 ft 3 in", "31 ft")
            .replace("= true", "= false");
        assert!(
            all(&CHECK, &eye)
                .iter()
                .any(|finding| finding.verdict == Verdict::Fails)
        );
    }

    #[test]
    fn unknown_without_the_places_where_wheels_rest() {
        let finding = only(
            &CHECK,
            &SITE.replace("loaded_at = [\"1 ft\", \"19 ft\"]", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let bare = SITE.split("[[joined]]").next().unwrap_or_default();
        assert_eq!(only(&CHECK, bare).verdict, Verdict::UnknownUntil);
    }
}
