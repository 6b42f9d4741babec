//! Whether anything on the leaf sticks out, hooks or cuts.
//!
//! A fixed thing of less than 9 in² that reaches past the leaf's face is a protrusion and is not permitted. Barbed wire
//! begins at 6 ft, barbed tape at 8 ft. A gloved hand runs over every edge up to 6 ft. The definition and the heights are
//! those of the American specification; in Europe they serve as the yardstick.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    F2200Construction, F2200Protrusion, GateItem, LimitVerdict, ProtrusionVerdict,
};
use formula::{Evidence, Source};
use quantity::{Length, Measured, Quantity as _};
use site::{FixedOnLeaf, Leaf, LeafOutside, ManualLatch, Origin, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-protrusions",
    codes: BOTH,
    leaves_open: "the exceptions that the specification lists, and what is hung on the leaf later",
    concerns: "each leaf",
    ask,
};

/// What may not stick out, hook or catch.
static GENERAL: Source = Source {
    work: "ASTM F2200",
    clause: "general requirements: protrusions, barbed wire and tape, latches of gates that were worked by hand",
    evidence: Evidence::Seen,
    seen: "in public reprints",
};

/// How the outside of a leaf is written.
const WRITE: &str = "[gate.leaf.outside]\nedges_smooth = true\nmanual_latch = \"none\"\nbottom_protrusion = \"1/4 in\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                outside(asking, leaf)
            });
        }
    }
}

/// What is wrong with a leaf: words, and a comparison where there are figures.
type Fault = (String, Option<Comparison>);

fn outside<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Answer {
    let bars = read!(asking, leaf.protrusion);
    let Some(outside) = &leaf.outside else {
        return asking.lack(&leaf.origin, "outside", Wants::Table(WRITE));
    };
    let smooth = asking.need(
        &outside.origin,
        "edges_smooth",
        outside.edges_smooth.as_ref(),
        "true",
    );
    let smooth = smooth.copied();
    let latch = pick!(asking, outside.manual_latch);
    let things: Vec<_> = outside
        .fixed
        .iter()
        .map(|thing| sticks_out(asking, thing))
        .collect();
    let (bars, smooth, latch) = (bars?, smooth?, latch?);
    let mut faults: Vec<Fault> = Vec::new();
    if bars.base() > 0.0 {
        faults.push((
            "bars or frame stick out of its face".to_owned(),
            Some(Comparison::at_most(
                Labeled::new("how far bars stick out", bars),
                Labeled::new("how far they may", Length::from_base(0.0)),
            )),
        ));
    }
    for thing in things {
        faults.extend(thing?.map(|words| (words, None)));
    }
    faults.extend(barbs(asking, outside)?);
    if !smooth {
        faults.push((
            "an edge below 6 ft cuts or catches a glove".to_owned(),
            None,
        ));
    }
    if latch == ManualLatch::Working {
        faults.push((
            "the old latch worked by hand still catches".to_owned(),
            None,
        ));
    }
    asking.rest_on(&GENERAL);
    let words: Vec<String> = faults.iter().map(|(words, _)| words.clone()).collect();
    asking.say(|_| match words.as_slice() {
        [] => format!(
            "Nothing on {} reaches past its faces, hooks or cuts.",
            leaf.id
        ),
        _ => format!(
            "On {}: {}. Take it off, cover it, or grind it flush.",
            leaf.id,
            words.join("; ")
        ),
    });
    let worst = Outcome::worst(faults.iter().filter_map(|(_, figures)| *figures));
    Ok(worst.unwrap_or(Outcome::Rule(faults.is_empty())))
}

fn sticks_out<'s>(asking: &mut Asking<'s>, thing: &'s FixedOnLeaf) -> Result<Option<String>, Halt> {
    let reach = read!(asking, thing.reach);
    let cross_section = read!(asking, thing.cross_section);
    let (reach, cross_section) = (reach?, cross_section?);
    let found = asking.work(&F2200Protrusion {
        reach,
        cross_section,
    })?;
    let print = asking.print();
    Ok((found.verdict == ProtrusionVerdict::Protrusion)
        .then(|| format!("{} reaches {} past its face", thing.what, print.q(reach))))
}

/// Barbed wire and barbed tape that begin too low.
fn barbs<'s>(asking: &mut Asking<'s>, outside: &'s LeafOutside) -> Result<Vec<Fault>, Halt> {
    let wire = ("barbed wire", "barbed_wire", outside.barbed_wire.as_ref());
    let tape = ("barbed tape", "barbed_tape", outside.barbed_tape.as_ref());
    let mut faults = Vec::new();
    for (what, key, height) in [wire, tape] {
        let item = if key == "barbed_wire" {
            GateItem::BarbedWire
        } else {
            GateItem::BarbedTape
        };
        faults.extend(too_low(asking, &outside.origin, (what, key, height), item)?);
    }
    Ok(faults)
}

fn too_low<'s>(
    asking: &mut Asking<'s>,
    origin: &'s Origin,
    (what, key, height): (&'static str, &'static str, Option<&'s Measured<Length>>),
    item: GateItem,
) -> Result<Option<Fault>, Halt> {
    let Some(measured) = asking.read_if_there(origin, key, height) else {
        return Ok(None);
    };
    let rule = asking.work(&F2200Construction { item, measured })?;
    let compared = Comparison::at_most(
        Labeled::new("height at which it may begin", rule.limit),
        Labeled::new("height of the lowest strand", measured),
    );
    Ok((rule.verdict != LimitVerdict::Kept)
        .then(|| (format!("{what} begins too low"), Some(compared))))
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
        [[gate.leaf]]
        id = "leaf"
        protrusion = "0 in"
        [gate.leaf.outside]
        edges_smooth = true
        manual_latch = "disabled"
        barbed_wire = "6 ft 6 in"
        [[gate.leaf.outside.fixed]]
        what = "sign"
        reach = "1/4 in"
        cross_section = "12 in²"
    "#;

    #[test]
    fn holds_flush_and_smooth() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_by_each_single_fault() {
        for (before, after, word) in [
            ("protrusion = \"0 in\"", "protrusion = \"1/2 in\"", "bars"),
            ("edges_smooth = true", "edges_smooth = false", "glove"),
            ("\"6 ft 6 in\"", "\"5 ft\"", "barbed wire"),
            ("12 in²", "4 in²", "sign reaches"),
            ("\"disabled\"", "\"working\"", "latch"),
        ] {
            let finding = only(&CHECK, &SITE.replace(before, after));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
            assert!(finding.sentence.contains(word), "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_until_a_glove_was_run_over_the_edges() {
        let finding = only(&CHECK, &SITE.replace("edges_smooth = true", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("edges_smooth"));
    }
}
