//! Whether a leaf stays in its guides and on its rollers at both ends of its travel, with the drive taken off.
//!
//! At either positive stop guides or trolleys must still hold the leaf at two places, and nothing of the drive may be one of them.
//! The way left between the limit and the stop is counted, because the leaf can be pushed that far.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Length;
use site::{Gate, GateKind, Leaf, Site, TravelEnd};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "stop-leaf-stays-in-guides",
    codes: BOTH,
    leaves_open: "worn or broken guide rollers, a bent guide post, and a leaf lifted by a vehicle; walk the leaf to both ends with the drive off and tape its overlap",
    concerns: "each slide gate and each gate that lifts",
    ask,
};

static NO_DERAILING: Source = Source {
    work: "EN 12453:2017+A1:2021 and EN 12604: no derailing; safety alerts on leaves that were pushed past their guides",
    clause: "",
    evidence: Evidence::Seen,
    seen: "news of a door and gate trade federation on both standards; https://www.commerce.wa.gov.au/publications/safety-alert-082018-worker-crushed-falling-gate",
};

/// Guides or trolleys that hold a leaf upright and in line.
const NEEDED: u32 = 2;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked = |gate: &&Gate| {
        matches!(
            gate.kind,
            GateKind::TrackSlide | GateKind::CantileverSlide | GateKind::VerticalLift
        )
    };
    for gate in site.gate.iter().filter(asked) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            stays(asking, gate)
        });
    }
}

fn stays<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Answer {
    let independent = independent(asking, gate);
    let retained = retained(asking, gate);
    let stops = stops(asking, gate);
    let held = if gate.kind == GateKind::VerticalLift {
        Ok(None)
    } else {
        held(asking, gate).map(Some)
    };
    asking.rest_on(&NO_DERAILING);
    if let Ok(false) = independent {
        return Ok(broken(
            asking,
            "Its guides hang on the drive: with the drive taken off nothing keeps the leaf upright. Chain and pin it, and give the guides posts of their own.",
        ));
    }
    if let Ok(false) = retained {
        return Ok(broken(
            asking,
            "Its wheels can lift off or leave their rail. Do not push it by hand; fit what keeps them on.",
        ));
    }
    let (held, ..) = (held?, independent?, retained?, stops?);
    let Some((closed, open)) = held else {
        asking.say(|_| "Its rails keep the rollers in, and positive stops hold it at both ends without the drive.".to_owned());
        return Ok(Outcome::Rule(true));
    };
    asking.say(|_| {
        format!(
            "With the drive off, {closed} places with a guide or a trolley still hold gate {} at its closed stop and {open} at its open one; \
             it takes two at either end.",
            gate.id
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("places that must hold it", NEEDED),
        Labeled::new("places that hold it at the worse end", closed.min(open)),
    ))
}

/// The rule is broken, and why.
fn broken(asking: &mut Asking<'_>, why: &'static str) -> Outcome {
    asking.say(|_| why.to_owned());
    Outcome::Rule(false)
}

/// The guides stay when the drive goes.
fn independent<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<bool, Halt> {
    match &gate.guide {
        Some(guide) => asking
            .need(
                &guide.origin,
                "independent_of_drive",
                guide.independent_of_drive.as_ref(),
                "true",
            )
            .copied(),
        None => asking.lack(
            &gate.origin,
            "guide",
            Wants::Written("{ at = [\"20 ft\", \"22 ft\"], independent_of_drive = true }"),
        ),
    }
}

/// The wheels or trolleys cannot leave their rail.
fn retained<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<bool, Halt> {
    match &gate.wheels {
        Some(wheels) => asking
            .need(&wheels.origin, "retained", wheels.retained.as_ref(), "true")
            .copied(),
        None => asking.lack(
            &gate.origin,
            "wheels",
            Wants::Written("{ retained = true }"),
        ),
    }
}

/// A positive stop at both ends.
fn stops<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<(), Halt> {
    let both = [TravelEnd::Open, TravelEnd::Closed]
        .iter()
        .all(|end| gate.stop.iter().any(|stop| stop.end == *end));
    if both {
        return Ok(());
    }
    asking.lack(
        &gate.origin,
        "stop",
        Wants::Written("[{ end = \"open\", how = \"...\" }, { end = \"closed\", how = \"...\" }]"),
    )
}

/// How many guides and trolleys hold the leaf at its closed stop, and at its open one.
fn held<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<(u32, u32), Halt> {
    let leaf = asking.need(
        &gate.origin,
        "leaf",
        gate.leaf.first(),
        "[{ id = \"leaf\", length = \"30 ft\", closed_end = \"-4 in\" }]",
    )?;
    let span = span(asking, leaf);
    let travel = read!(asking, gate.travel);
    let gap = read!(asking, gate.motion?.stop_gap);
    let places = places(asking, gate);
    let ((from, to), travel, gap, places) = (span?, travel?, gap?, places?);
    let within = |moved: Length| {
        let inside = |at: &&Length| from + moved <= **at && **at <= to + moved;
        u32::try_from(places.iter().filter(inside).count()).unwrap_or(u32::MAX)
    };
    Ok((within(-gap), within(travel + gap)))
}

/// Both ends of the closed leaf along x.
fn span<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<(Length, Length), Halt> {
    let from = read!(asking, leaf.closed_end);
    let length = read!(asking, leaf.length);
    let (from, length) = (from?, length?);
    Ok((from, from + length))
}

/// Where guides and trolleys stand along x.
fn places<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Length>, Halt> {
    let mut places = Vec::new();
    if let Some(guide) = &gate.guide {
        for at in &guide.at {
            places.push(asking.given(&guide.origin, "at", at));
        }
    }
    if gate.kind == GateKind::CantileverSlide {
        let front = read!(asking, gate.wheels?.front_at);
        let spacing = read!(asking, gate.wheels?.spacing);
        let (front, spacing) = (front?, spacing?);
        places.extend([front, front + spacing]);
    } else if places.is_empty() {
        let origin = gate
            .guide
            .as_ref()
            .map_or(&gate.origin, |guide| &guide.origin);
        return asking.lack(origin, "at", Wants::Written("[\"20 ft\", \"22 ft\"]"));
    }
    Ok(apart(places))
}

/// Places nearer to each other than this hold a leaf at one place only.
const TOGETHER: f64 = 0.1;

/// The places that stand apart: a guide above a trolley is one with it.
fn apart(mut places: Vec<Length>) -> Vec<Length> {
    places.sort_by(|one, other| one.value.total_cmp(&other.value));
    places.dedup_by(|next, kept| (next.value - kept.value) < TOGETHER);
    places
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft 6 in"
        [[gate.leaf]]
        id = "leaf"
        length = "24 ft"
        closed_end = "-4 in"
        [gate.motion]
        stop_gap = "2 in ± 1/2 in"
        [gate.wheels]
        retained = true
        [gate.guide]
        at = ["20 ft 8 in", "22 ft 8 in"]
        independent_of_drive = true
        [[gate.stop]]
        end = "open"
        [[gate.stop]]
        end = "closed"
    "#;

    #[test]
    fn holds_in_two_guides_at_both_ends() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_leaf_leaves_a_guide_or_the_guides_leave_with_the_drive() {
        let far = only(&CHECK, &SITE.replace("20 ft 6 in", "21 ft 2 in"));
        assert_eq!(far.verdict, Verdict::Fails, "{}", far.sentence);
        let hung = only(
            &CHECK,
            &SITE.replace(
                "independent_of_drive = true",
                "independent_of_drive = false",
            ),
        );
        assert_eq!(hung.verdict, Verdict::Fails);
        assert!(
            hung.sentence.contains("Chain and pin it"),
            "{}",
            hung.sentence
        );
        let off = only(&CHECK, &SITE.replace("retained = true", "retained = false"));
        assert_eq!(off.verdict, Verdict::Fails);
    }

    #[test]
    fn holds_on_the_trolleys_of_a_cantilever() {
        let text = SITE
            .replace("track-slide", "cantilever-slide")
            .replace("24 ft", "36 ft")
            .replace(
                "retained = true",
                "retained = true\nfront_at = \"21 ft\"\nspacing = \"9 ft\"",
            )
            .replace("at = [\"20 ft 8 in\", \"22 ft 8 in\"]", "");
        let finding = only(&CHECK, &text);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_for_a_lift_in_its_rails() {
        let finding = only(&CHECK, &SITE.replace("track-slide", "vertical-lift"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_stops_and_guides() {
        let bare = SITE
            .split("[gate.guide]")
            .next()
            .unwrap()
            .replace("retained = true", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let paths: Vec<&str> = finding
            .missing
            .iter()
            .map(|missing| missing.path.as_str())
            .collect();
        assert_eq!(paths.len(), 4, "{paths:?}");
    }
}
