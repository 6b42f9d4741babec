//! Whether an old gate that gets a drive, or a new one, meets the rules for new gates: item by item.
//!
//! Asked of each gate that was there before the job. The list goes through what ASTM F2200 says of construction as far as
//! it can be read off the site: openings, bottom edge, barbed wire, rollers, stops at both ends, what holds a loose leaf,
//! and the latch that was worked by hand. In Europe stops, fall and latch are gone through, on a memory of the standard.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::protection::{
    F2200Construction, F2200Edition, F2200Fall, F2200Opening, GateItem, LimitVerdict,
};
use formula::{Evidence, Source};
use quantity::Length;
use site::{CodeBasis, Gate, GateKind, Leaf, ManualLatch, Site, TravelEnd, UsageClass};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-old-gate-brought-up",
    codes: BOTH,
    leaves_open: "gaps beside the travel, sharp edges and things fixed to the leaf, which have questions of their own, and the state of welds and rust",
    concerns: "each gate that was there before this job",
    ask,
};

static RETROFIT: Source = Source {
    work: "ASTM F2200",
    clause: "a gate that is automated, or gets a new operator, is upgraded to the specification",
    evidence: Evidence::Seen,
    seen: "gate-operator manuals from 2005 to 2018 that reprint the provision (addresses withheld)",
};

static EUROPE: Source = Source {
    work: "EN 13241 and machinery law",
    clause: "whoever adds a drive answers for the whole powered gate",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site.gate.iter().filter(|gate| gate.existing != Some(false)) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            brought_up(asking, site, gate)
        });
    }
}

/// One item of the list: what it is, and whether it is as it has to be.
type Item = (&'static str, bool);

fn brought_up<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    if gate.existing.is_none() {
        return asking.lack(&gate.origin, "existing", Wants::Written("true"));
    }
    let american = site.site.code_basis == CodeBasis::Us;
    asking.rest_on(if american { &RETROFIT } else { &EUROPE });
    let built = asking.need(&gate.origin, "built", gate.built.as_ref(), "2011-05-01");
    let to = gate.built_to.as_ref();
    let built_to = asking.need(&gate.origin, "built_to", to, "\"none known\"");
    let mut items = vec![Ok(stops(gate)), fall(asking, gate, american)];
    for leaf in &gate.leaf {
        items.push(latch(asking, leaf));
        if american {
            items.extend([opening(asking, site, leaf), bottom(asking, leaf)]);
            items.extend(barbs(asking, leaf));
        }
    }
    if american {
        items.push(rollers(asking, gate));
    }
    let items: Result<Vec<Item>, Halt> = items.into_iter().collect();
    let (built, built_to, items) = (built?, built_to?, items?);
    let failing: Vec<&str> = items
        .iter()
        .filter(|(_, kept)| !kept)
        .map(|(what, _)| *what)
        .collect();
    for (what, kept) in &items {
        asking.note(|_| {
            format!(
                "{}: {}.",
                capitalized(what),
                if *kept {
                    "as for a new gate"
                } else {
                    "not as for a new gate"
                }
            )
        });
    }
    asking.say(|_| {
        let age = format!("Built {built} to this: {built_to}");
        if failing.is_empty() {
            format!(
                "{age}. {} items of construction were gone through, and all are as for a new gate.",
                items.len()
            )
        } else {
            format!(
                "{age}. To be put right before it gets a drive: {}.",
                failing.join("; ")
            )
        }
    });
    Ok(Outcome::Rule(failing.is_empty()))
}

fn stops(gate: &Gate) -> Item {
    let at = |end: TravelEnd| gate.stop.iter().any(|stop| stop.end == end);
    let needed = gate.kind != GateKind::BarrierArm;
    (
        "solid stops at both ends",
        !needed || (at(TravelEnd::Open) && at(TravelEnd::Closed)),
    )
}

fn fall<'s>(asking: &mut Asking<'s>, gate: &'s Gate, american: bool) -> Result<Item, Halt> {
    const WHAT: &str = "what holds a leaf that comes loose";
    if american {
        let angle = read!(asking, gate.fall?.greatest_lean)?;
        let rule = asking.work(&F2200Fall { angle })?;
        return Ok((WHAT, rule.verdict == LimitVerdict::Kept));
    }
    let Some(fall) = &gate.fall else {
        return asking.lack(
            &gate.origin,
            "fall.holds_after_one_failure",
            Wants::Written("true"),
        );
    };
    let holds = fall.holds_after_one_failure.as_ref();
    asking
        .need(&fall.origin, "holds_after_one_failure", holds, "true")
        .map(|holds| (WHAT, *holds))
}

fn latch<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Item, Halt> {
    let latch = pick!(asking, leaf.outside?.manual_latch)?;
    Ok((
        "latch that was worked by hand",
        latch != ManualLatch::Working,
    ))
}

fn opening<'s>(asking: &mut Asking<'s>, site: &'s Site, leaf: &'s Leaf) -> Result<Item, Halt> {
    let about = &site.site;
    let class = pick!(asking, about.usage_class);
    let opening = read!(asking, leaf.opening);
    let guarded = read!(asking, leaf.guarded_height);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let (class, opening, guarded) = (class?, opening?, guarded?);
    let (height, clearance) = (height?, clearance?);
    if class == UsageClass::ClassIV {
        return Ok(("openings, by the needs of the site", true));
    }
    let rule = asking.work(&F2200Opening {
        edition: F2200Edition::Later,
        opening,
        opening_bottom: clearance,
        gate_top: clearance + height,
    })?;
    let kept = opening < rule.sphere && guarded >= rule.screened_height;
    Ok(("openings through the leaf", kept))
}

fn bottom<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Item, Halt> {
    let sticks = read!(asking, leaf.outside?.bottom_protrusion)?;
    limit(asking, GateItem::BottomProtrusion, sticks).map(|kept| ("bottom edge", kept))
}

/// Barbed wire and tape, where there is any.
fn barbs<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Vec<Result<Item, Halt>> {
    let Some(outside) = &leaf.outside else {
        return Vec::new();
    };
    let wire = asking.read_if_there(&outside.origin, "barbed_wire", outside.barbed_wire.as_ref());
    let tape = asking.read_if_there(&outside.origin, "barbed_tape", outside.barbed_tape.as_ref());
    let wire = wire.map(|height| (GateItem::BarbedWire, "barbed wire", height));
    let tape = tape.map(|height| (GateItem::BarbedTape, "barbed tape", height));
    wire.into_iter()
        .chain(tape)
        .map(|(item, what, height)| limit(asking, item, height).map(|kept| (what, kept)))
        .collect()
}

fn rollers<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Item, Halt> {
    const WHAT: &str = "rollers that carry weight";
    if !matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide) {
        return Ok((WHAT, true));
    }
    let Some(covers) = &gate.covers else {
        return asking.lack(
            &gate.origin,
            "covers.rollers_covered",
            Wants::Written("true"),
        );
    };
    let covered = covers.rollers_covered.as_ref();
    let covered = *asking.need(&covers.origin, "rollers_covered", covered, "true")?;
    if covered {
        return Ok((WHAT, true));
    }
    let height = read!(asking, covers.roller_height)?;
    limit(asking, GateItem::OpenRoller, height).map(|kept| (WHAT, kept))
}

fn limit(asking: &mut Asking<'_>, item: GateItem, measured: Length) -> Result<bool, Halt> {
    let rule = asking.work(&F2200Construction { item, measured })?;
    Ok(rule.verdict == LimitVerdict::Kept)
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
        usage_class = "II"
        [[gate]]
        id = "main"
        kind = "track-slide"
        existing = true
        built = 2009-04-01
        built_to = "none known"
        [[gate.leaf]]
        id = "leaf"
        opening = "2 in"
        guarded_height = "74 in"
        height = "6 ft"
        ground_clearance = "2 in"
        [gate.leaf.outside]
        manual_latch = "disabled"
        bottom_protrusion = "1/4 in"
        [gate.covers]
        rollers_covered = true
        [gate.fall]
        greatest_lean = "10°"
        holds_after_one_failure = true
        [[gate.stop]]
        end = "open"
        [[gate.stop]]
        end = "closed"
    "#;

    #[test]
    fn holds_with_every_item_as_for_a_new_gate() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_item_by_item() {
        for (one, other, said) in [
            ("disabled", "working", "latch"),
            ("opening = \"2 in\"", "opening = \"4 in\"", "openings"),
            ("1/4 in", "3/4 in", "bottom edge"),
            ("10°", "60°", "comes loose"),
            ("end = \"open\"", "end = \"closed\"", "stops"),
            (
                "rollers_covered = true",
                "rollers_covered = false\nroller_height = \"3 ft\"",
                "rollers",
            ),
            (
                "bottom_protrusion",
                "barbed_wire = \"5 ft\"\nbottom_protrusion",
                "barbed wire",
            ),
        ] {
            let finding = only(&CHECK, &SITE.replace(one, other));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{other}: {}",
                finding.sentence
            );
            assert!(finding.sentence.contains(said), "{}", finding.sentence);
        }
    }

    #[test]
    fn a_new_gate_is_not_asked() {
        assert!(all(&CHECK, &SITE.replace("existing = true", "existing = false")).is_empty());
    }

    #[test]
    fn unknown_until_it_is_said_whether_the_gate_is_old_and_in_europe_until_looked_up() {
        let bare = only(&CHECK, &SITE.replace("existing = true", ""));
        assert_eq!(bare.verdict, Verdict::UnknownUntil);
        let unread = SITE
            .replace("built_to = \"none known\"", "")
            .replace("manual_latch = \"disabled\"", "");
        assert_eq!(only(&CHECK, &unread).missing.len(), 2);
        assert_eq!(
            only(&CHECK, &SITE.replace("\"us\"", "\"eu\"")).verdict,
            Verdict::UnknownUntil
        );
    }
}
