//! Whether an arm, a head or a whole child goes through the leaf, or through the fence that it passes.
//!
//! In the United States a ball of 2-1/4 in must not pass, from the bottom to the screened height; the later text, with
//! its 72 in, is taken. In Europe the distance to what moves behind the opening must be as long as an arm reaches through
//! it; where the public is near, a child's arm counts, and those distances are known from memory only.

use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    F2200Edition, F2200Opening, Iso13857Reach, OpeningRule, OpeningShape, reach_from_three_years,
};
use formula::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, FixedThing, Gate, GateKind, Leaf, Site, UsageClass, UseType};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "hazard-reach-through",
    codes: BOTH,
    leaves_open: "how mesh and bars are fixed, and fixed things for which no opening is written: those are taken as solid",
    concerns: "each leaf that slides or lifts, and each fence that it passes",
    ask,
};

static CHILDREN: Source = Source {
    work: "ISO 13857",
    clause: "table 5",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let along = |gate: &&Gate| matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    for gate in site.gate.iter().filter(along) {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                through_leaf(asking, site, gate, leaf)
            });
        }
        for thing in gate.nearby.iter().filter(|thing| thing.opening.is_some()) {
            round.ask(About::new(&thing.origin, &thing.id), |asking| {
                through_fence(asking, site, gate, thing)
            });
        }
    }
}

fn through_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Answer {
    let opening = read!(asking, leaf.opening);
    match site.site.code_basis {
        CodeBasis::Us => {
            let guarded = read!(asking, leaf.guarded_height);
            ball(asking, site, leaf, (opening?, guarded?))
        }
        CodeBasis::Eu => {
            let nearest = nearest_thing(asking, gate)?;
            let gap = read!(asking, nearest.gap);
            reach(asking, site, opening?, gap?)
        }
    }
}

fn through_fence<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    thing: &'s FixedThing,
) -> Answer {
    let opening = read!(asking, thing.opening);
    match site.site.code_basis {
        CodeBasis::Us => {
            let guarded = read!(asking, thing.opening_height);
            let leaf = asking.need(
                &gate.origin,
                "leaf",
                gate.leaf.first(),
                "[{ id = \"leaf\" }]",
            );
            ball(asking, site, leaf?, (opening?, guarded?))
        }
        CodeBasis::Eu => {
            let gap = read!(asking, thing.gap);
            reach(asking, site, opening?, gap?)
        }
    }
}

/// The fixed thing that the leaf passes most closely.
fn nearest_thing<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<&'s FixedThing, Halt> {
    let nominal = |thing: &&FixedThing| thing.gap.map_or(f64::INFINITY, |gap| gap.nominal().base());
    let by_gap = |a: &&FixedThing, b: &&FixedThing| nominal(a).total_cmp(&nominal(b));
    asking.need(
        &gate.origin,
        "nearby",
        gate.nearby.iter().min_by(by_gap),
        "[{ id = \"fence\", what = \"fence beside the leaf\", gap = \"2 in\" }]",
    )
}

/// The ball of ASTM F2200, and the height up to which it must be stopped.
fn ball<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    leaf: &'s Leaf,
    (opening, guarded): (Length, Length),
) -> Answer {
    let about = &site.site;
    let class = pick!(asking, about.usage_class);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let (class, clearance) = (class?, clearance?);
    if class == UsageClass::ClassIV {
        return asking.refuse(
            "a gate of usage class IV follows the security needs of its site, not this rule",
        );
    }
    let rule: OpeningRule = asking.work(&F2200Opening {
        edition: F2200Edition::Later,
        opening,
        opening_bottom: clearance,
        gate_top: clearance + height?,
    })?;
    asking.say(|print| {
        format!(
            "The widest opening is {}, and a ball of {} must not pass; it is closed up to {}, and has to be up to {}.",
            print.q(opening),
            print.q(rule.sphere),
            print.q(guarded),
            print.q(rule.screened_height)
        )
    });
    let narrow = Comparison::below(
        Labeled::new("widest opening", opening),
        Labeled::new("ball that must not pass", rule.sphere),
    );
    let high = Comparison::at_most(
        Labeled::new("height to be closed", rule.screened_height),
        Labeled::new("height up to which it is closed", guarded),
    );
    Outcome::worst([narrow, high]).ok_or(Halt)
}

/// The reach of an arm through an opening, against the distance to what moves behind it.
fn reach<'s>(asking: &mut Asking<'s>, site: &'s Site, opening: Length, gap: Length) -> Answer {
    let about = &site.site;
    let use_type = pick!(asking, about.use_type)?;
    if opening.base() <= 0.0 {
        asking.say(|_| "There is no opening to reach through.".to_owned());
        return Ok(Outcome::Rule(true));
    }
    let guard = Iso13857Reach {
        shape: OpeningShape::Slot,
        opening,
    };
    let (who, distance) = if use_type == UseType::Trained {
        ("an arm", asking.work(&guard)?.distance)
    } else {
        asking.rest_on(&CHILDREN);
        match reach_from_three_years(&guard) {
            Ok(reach) => ("a child's arm", reach.distance),
            Err(OutOfReach { .. }) => {
                return asking.refuse(
                    "the opening is wider than the recalled distances for children's arms go",
                );
            }
        }
    };
    asking.say(|print| {
        format!(
            "Through an opening of {}, {who} reaches {}; what moves behind it is {} away.",
            print.q(opening),
            print.q(distance),
            print.q(gap)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("reach of an arm", distance),
        Labeled::new("distance to what moves", gap),
    ))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::{all, only};
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        usage_class = "II"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        height = "6 ft"
        ground_clearance = "2 in"
        opening = "2 in ± 1/8 in"
        guarded_height = "74 in"
    "#;

    #[test]
    fn holds_with_narrow_slats() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_the_ball_just_passes_and_where_it_stops_short() {
        let ball = only(&CHECK, &SITE.replace("2 in ± 1/8 in", "2 1/4 in"));
        assert_eq!(ball.verdict, Verdict::Fails, "{}", ball.sentence);
        let low = only(&CHECK, &SITE.replace("74 in", "48 in"));
        assert_eq!(low.verdict, Verdict::Fails, "{}", low.sentence);
        assert_eq!(
            low.capacity.unwrap().label,
            "height up to which it is closed"
        );
    }

    #[test]
    fn turns_within_the_tolerance_of_the_opening() {
        let finding = only(&CHECK, &SITE.replace("± 1/8 in", "± 1/2 in"));
        assert_eq!(
            finding.standing,
            Standing::TurnsWithinTolerance,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn the_fence_that_it_passes_is_asked_too() {
        let fence = format!(
            "{SITE}\n[[gate.nearby]]\nid = \"fence\"\nwhat = \"pickets\"\nopening = \"4 in\"\nopening_height = \"6 ft\"\n"
        );
        let verdicts: Vec<Verdict> = all(&CHECK, &fence)
            .iter()
            .map(|finding| finding.verdict)
            .collect();
        assert_eq!(verdicts, [Verdict::Holds, Verdict::Fails]);
    }

    #[test]
    fn unknown_without_the_opening() {
        let finding = only(&CHECK, &SITE.replace("opening = \"2 in ± 1/8 in\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("opening = "));
    }

    #[test]
    fn what_would_hold_by_a_remembered_distance_is_unknown() {
        let eu = r#"
            [site]
            name = "Test court"
            code_basis = "eu"
            use_type = "3"
            [[gate]]
            id = "main"
            kind = "track-slide"
            [[gate.nearby]]
            id = "fence"
            what = "bars"
            opening = "30 mm"
            gap = "2 m"
        "#;
        let finding = only(&CHECK, eu);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("looked up in ISO 13857 table 5"),
            "{}",
            finding.sentence
        );
        let near = only(&CHECK, &eu.replace("2 m", "0.1 m"));
        assert_eq!(near.verdict, Verdict::Fails);
        assert!(
            near.sentence.contains("memory"),
            "a warning says on what it rests: {}",
            near.sentence
        );
        let trained = only(&CHECK, &eu.replace("use_type = \"3\"", "use_type = \"1\""));
        assert_eq!(trained.verdict, Verdict::Holds, "{}", trained.sentence);
    }
}
