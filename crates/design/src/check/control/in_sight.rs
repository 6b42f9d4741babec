//! How much of a gate's travel is seen from where each control is worked.
//!
//! Whoever works it stands half a meter before it. Looked at is the lower edge of each leaf wherever it stands in its
//! travel, where feet and small children are; fixed things, boxes and the open leaf of a swing gate stand between. What one sees through hides
//! nothing. A reset and a held control must show the whole gate; another may show less where the gate is protected as one
//! that runs by itself.

use super::automatic::protected;
use super::envelope::{Envelope, Ground, envelopes};
use super::obstacles::{Hides, in_the_way, open_leaves, solid};
use super::view::{Eye, Target, covered, hidden};
use super::{does, fixed_controls};
use crate::asking::{Asking, read};
use crate::check::plane::Piece;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Ratio};
use site::{CommandKind, Device, Gate, GateView, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-in-sight",
    codes: BOTH,
    leaves_open: "vehicles that stop in the line of sight, what hangs above the line to the lower edge, planting that has grown since, glare, darkness, and people hidden behind the leaf itself",
    concerns: "each control that is worked where it hangs",
    ask,
};

static RESET: Source = Source {
    work: "UL 325, installation instructions",
    clause: "reset control and held control in sight of the gate",
    evidence: Evidence::Seen,
    seen: "gate-operator manuals from 2008 to 2018 that reprint the instructions (addresses withheld)",
};

static SIGHT: Source = Source {
    work: "straight lines of sight over and past what stands between",
    clause: "",
    evidence: Evidence::Physics,
    seen: "similar triangles",
};

/// Distance from a control at which whoever works it stands, in meters.
const ARM: f64 = 0.5;
/// Chords in which the arc of a tip is looked at.
const CHORDS: u32 = 16;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for device in fixed_controls(site, gate) {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                in_sight(asking, site, gate, device)
            });
        }
    }
}

fn in_sight<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Answer {
    asking.rest_on(&SIGHT);
    asking.rest_on(&RESET);
    let commands = does(asking, device);
    let eye = eye(asking, device);
    let leaves = envelopes(asking, gate);
    let things = in_the_way(asking, site, gate);
    let (commands, eye, leaves, mut things) = (commands?, eye?, leaves?, things?);
    if commands
        .iter()
        .all(|command| command.what == CommandKind::Nothing)
    {
        asking.say(|_| format!("{} moves nothing.", capitalized(device.id.as_str())));
        return Ok(Outcome::Rule(true));
    }
    let watched = commands
        .iter()
        .any(|command| command.what == CommandKind::Reset || command.held == Some(true));
    if answered_elsewhere(site, device) {
        let outcome = if watched {
            Ok(Outcome::Rule(false))
        } else {
            protected(asking, site, gate)
        };
        asking.say(|_| {
            format!(
                "Whoever answers {} does not see the gate with their own eyes; that will do only where it is protected as one that runs by itself.",
                device.id
            )
        });
        return outcome;
    }
    things.extend(open_leaves(asking, gate, &leaves)?);
    let targets: Vec<_> = leaves.iter().enumerate().flat_map(targets).collect();
    solid(asking, eye, &targets, &mut things)?;
    let (share, behind) = seen(eye, &targets, &things);
    let share = Ratio::from_base(share);
    let whole = Comparison::at_most(
        Labeled::new(
            "share of the gate that has to be seen",
            Ratio::from_base(1.0),
        ),
        Labeled::new("share of the gate that is seen", share),
    );
    let outcome = if watched || whole.holds() {
        Ok(Outcome::Compared(whole))
    } else {
        protected(asking, site, gate)
    };
    asking.say(|print| {
        let hiding = behind.map_or_else(String::new, |name| format!("; {name} hides most of the rest"));
        let why = match (watched, whole.holds()) {
            (true, _) => " It resets or is held, so the whole gate has to be in view.",
            (false, true) => "",
            (false, false) => " Less than the whole gate will do only where it is protected as one that runs by itself.",
        };
        format!(
            "From {} {} of the gate's travel is seen{hiding}.{why}",
            device.id,
            print.percent(share)
        )
    });
    outcome
}

/// Somebody else moves the gate through it, and does not see the gate.
fn answered_elsewhere(site: &Site, device: &Device) -> bool {
    site.remote.iter().any(|remote| {
        let through = remote.through.as_ref() == Some(&device.id);
        through && remote.view.is_some_and(|view| view != GateView::Whole)
    })
}

/// Where the eyes of whoever works a control are.
fn eye<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Eye, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let height = read!(asking, device.eye_height);
    let facing = asking.read_if_there(&device.origin, "facing", device.facing.as_ref());
    let [x, y, _] = at?;
    let before = facing.map_or((0.0, 0.0), |angle| {
        (ARM * angle.base().cos(), ARM * angle.base().sin())
    });
    Ok(Eye {
        at: (x.base() + before.0, y.base() + before.1),
        height: height?.base(),
    })
}

/// What is looked at: the lower edge of a leaf, with its index and whether it is the open leaf itself.
fn targets((index, envelope): (usize, &Envelope)) -> Vec<(Target, Option<usize>)> {
    let mut pieces: Vec<(Piece, Option<usize>)> = Vec::new();
    match &envelope.ground {
        Ground::Strip(line) => pieces.push((*line, Some(index))),
        Ground::Sector(sweep) => {
            pieces.push((envelope.closed(), None));
            pieces.push((envelope.open(), Some(index)));
            let at = |step: u32| sweep.at(sweep.travel * f64::from(step) / f64::from(CHORDS))[1];
            pieces.extend((0..CHORDS).map(|step| ([at(step), at(step + 1)], None)));
        }
    }
    let height = envelope.bottom;
    pieces
        .into_iter()
        .map(|(piece, leaf)| (Target { piece, height }, leaf))
        .collect()
}

/// The share of all targets that is seen, and what hides most of the rest.
fn seen<'s>(
    eye: Eye,
    targets: &[(Target, Option<usize>)],
    things: &[Hides<'s>],
) -> (f64, Option<&'s str>) {
    let whole: f64 = targets.iter().map(|(target, _)| target.length()).sum();
    let mut lost = 0.0;
    let mut each = vec![0.0; things.len()];
    for (target, leaf) in targets {
        let mut shadows = Vec::new();
        for (hides, own) in things.iter().zip(&mut each) {
            if hides.leaf.is_some() && hides.leaf == *leaf {
                continue;
            }
            let cast: Vec<_> = hides
                .walls
                .iter()
                .filter_map(|wall| hidden(eye, target, wall))
                .collect();
            *own += covered(&cast) * target.length();
            shadows.extend(cast);
        }
        lost += covered(&shadows) * target.length();
    }
    let most = each
        .iter()
        .zip(things)
        .filter(|(own, _)| **own > 1e-6)
        .max_by(|one, other| one.0.total_cmp(other.0))
        .map(|(_, hides)| hides.name);
    let share = if whole > 0.0 { 1.0 - lost / whole } else { 1.0 };
    (if share > 1.0 - 1e-6 { 1.0 } else { share }, most)
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
        protection_code = "UL 325 from 2018"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "5 m"
        [[gate.leaf]]
        id = "leaf"
        length = "5 m"
        closed_end = "0 m"
        thickness = "50 mm"
        height = "1.8 m"
        ground_clearance = "50 mm"
        [[gate.nearby]]
        id = "wall"
        what = "wall"
        from = ["2 m", "4 m", "0 m"]
        to = ["4 m", "4 m", "0 m"]
        height = "2 m"
        see_through = true
        [[device]]
        id = "button"
        kind = "control"
        at = ["3 m", "7.5 m", "1.1 m"]
        facing = "90°"
        eye_height = "1.5 m"
        does = [{ what = "reset" }, { what = "open" }]
    "#;

    #[test]
    fn holds_through_a_mesh() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_a_wall_and_names_it() {
        let finding = only(
            &CHECK,
            &SITE.replace("see_through = true", "see_through = false"),
        );
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("wall hides"),
            "{}",
            finding.sentence
        );
        // Eye 8 m off, wall 4 m off: 2 m of wall hide 4 m of the 10 m of travel.
        let seen = finding.capacity.unwrap().value.unwrap();
        assert!((seen - 0.6).abs() < 1e-6, "{seen}");
    }

    #[test]
    fn holds_over_a_low_wall() {
        let low = SITE
            .replace("see_through = true", "see_through = false")
            .replace("height = \"2 m\"", "height = \"0.7 m\"");
        let finding = only(&CHECK, &low);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_eyes_and_until_the_wall_is_looked_at() {
        let bare = SITE
            .replace("see_through = true", "")
            .replace("eye_height = \"1.5 m\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let looked = only(&CHECK, &SITE.replace("see_through = true", ""));
        assert_eq!(looked.missing.len(), 1, "{:?}", looked.missing);
    }

    #[test]
    fn a_plain_button_behind_a_wall_leans_on_the_protection() {
        let plain = SITE
            .replace("see_through = true", "see_through = false")
            .replace("{ what = \"reset\" }, ", "");
        let finding = only(&CHECK, &plain);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn an_open_leaf_hides_what_is_behind_it() {
        let swing = r#"
            [site]
            name = "Test court"
            code_basis = "us"
            [[gate]]
            id = "main"
            kind = "single-swing"
            clear_opening = "4 m"
            travel_angle = "90°"
            swings = "into the property"
            [[gate.leaf]]
            id = "leaf"
            length = "4 m"
            thickness = "50 mm"
            height = "1.8 m"
            ground_clearance = "50 mm"
            solidity = "0.9"
            [[device]]
            id = "button"
            kind = "control"
            at = ["7 m", "2 m", "1.1 m"]
            eye_height = "1.5 m"
            does = [{ what = "open", held = true }]
        "#;
        let behind = only(&CHECK, swing);
        assert_eq!(behind.verdict, Verdict::Fails, "{}", behind.sentence);
        let before = only(
            &CHECK,
            &swing.replace("\"7 m\", \"2 m\"", "\"-1 m\", \"6 m\""),
        );
        assert_eq!(before.verdict, Verdict::Holds, "{}", before.sentence);
        let open = only(&CHECK, &swing.replace("0.9", "0.3"));
        assert_eq!(open.verdict, Verdict::Holds, "{}", open.sentence);
    }
}
