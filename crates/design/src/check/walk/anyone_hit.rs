//! Whether anyone can be struck too hard or trapped by the moving leaf, and how it happens.
//!
//! Here a first look is taken: so many walks of each family, which refute and never prove. `gatewright walk` works millions
//! of them and proves or refutes each family; its answer replaces this one.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::subject::About;
use crate::walk::{FamilyStanding, FamilyTold, GateWalk, Judged, SweepTold, Told};
use formula::{Evidence, Source};
use site::{CodeBasis, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "walk-anyone-hit",
    codes: BOTH,
    leaves_open: "the faces and posts that the leaf passes by, but for arms through the leaf; whoever goes slower than the slowest of the list, several people at once, whoever stands behind the other end while the leaf goes back after a touch; a simulation is no force test and no test on site, and response times measured at commissioning must be entered to keep it valid",
    concerns: "each gate",
    ask,
};

/// Walks of each family in a first look.
const EACH: u64 = 384;

static WALKED: Source = Source {
    work: "bodies on straight paths past a leaf on its plan of motion",
    clause: "",
    evidence: Evidence::Physics,
    seen: "times of contact worked exactly; each walk can be worked again by its number",
};

static BODIES: Source = Source {
    work: "shapes and running speeds of children, wheelchair user, cyclist, and of whoever crawls or lies",
    clause: "",
    evidence: Evidence::Memory,
    seen: "sizes of adults and heights of children were seen in print; shapes of children, wheelchair user, cyclist and of whoever lies down are recalled in part",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask_in_full(About::new(&gate.origin, &gate.id), |asking| {
            first_look(asking, site, gate)
        });
    }
}

fn first_look<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let walk = GateWalk::read(asking, site, gate)?;
    let sweep = walk.glance(asking, EACH);
    asking.rest_on(&WALKED);
    if let Some(worst) = sweep.worst.first().filter(|worst| worst.bad) {
        return hit(asking, site.site.code_basis, worst, walk.judged());
    }
    asking.wait_for(format!(
        "Nobody is hit in a first look at {} walks; unknown until proved: run gatewright walk on this site.",
        sweep.walks
    ))
}

/// Somebody is hit: the walk is the answer. What a leaf that turns or rises does to a body is worked out no softer than it
/// may be; whether it is as hard is only known once it is measured there.
fn hit(asking: &mut Asking<'_>, basis: CodeBasis, worst: &Told, judged: Judged) -> Answer {
    let taken = match judged {
        Judged::Fully => None,
        Judged::ByWeight => Some("By its weight and its drive the leaf may do"),
        Judged::AsRigid => {
            Some("Taken as rigid, and without the drive's own sensing, the leaf does")
        }
    };
    if let Some(taken) = taken {
        return asking.wait_for(format!(
            "{} {taken} more than it may ({}). Unknown until the forces at such places are measured, or a device sees whoever is there.",
            worst.sentence, worst.ends
        ));
    }
    asking.say(|_| {
        let yardstick = if basis == CodeBasis::Us {
            " The limits are those of EN 12453, as a yardstick: no figure of force for the United States was found to read."
        } else {
            ""
        };
        let seed = worst
            .seed
            .map_or_else(String::new, |seed| format!(" Walk {seed}."));
        format!("{}: {}{yardstick}{seed}", crate::walk::capital(&worst.ends), worst.sentence)
    });
    Ok(Outcome::Rule(false))
}

/// The answer after a sweep and a proof of every family.
pub(crate) fn decided(
    asking: &mut Asking<'_>,
    sweep: &SweepTold,
    families: &[FamilyTold],
    (basis, judged): (CodeBasis, Judged),
) -> Answer {
    asking.rest_on(&WALKED);
    let refuted = families
        .iter()
        .find_map(|family| family.refuted_by.as_ref());
    let sampled = sweep.worst.first().filter(|worst| worst.bad);
    if let Some(worst) = sampled.or(refuted) {
        return hit(asking, basis, worst, judged);
    }
    let open = |family: &&FamilyTold| family.standing != FamilyStanding::Proved;
    let open: Vec<&FamilyTold> = families.iter().filter(open).collect();
    if let Some(first) = open.first() {
        return asking.wait_for(format!(
            "Nobody is hit in {} walks; {} of {} kinds of walk are proved safe, {} are left open: {}. Unknown until these are proved as well, or a device keeps the leaf off them.",
            sweep.walks,
            families.len() - open.len(),
            families.len(),
            open.len(),
            first.family
        ));
    }
    asking.rest_on(&BODIES);
    asking.say(|_| {
        format!(
            "Nobody is hit beyond the limits: each of {} kinds of walk is proved safe, and none of {} walks ends badly.",
            families.len(),
            sweep.walks
        )
    });
    Ok(Outcome::Rule(true))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::asking::Asking;
    use crate::check::testing::{only, site};
    use crate::check::walk::court::{COURT, LANE};
    use crate::check::walk::yard::YARD;
    use crate::walk::GateWalk;
    use crate::{Standing, Verdict};
    use std::num::NonZeroUsize;

    #[test]
    fn holds_only_once_the_sizes_of_the_bodies_are_looked_up() {
        let site = site(YARD);
        let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
        let sweep = walk.sweep(100_000, NonZeroUsize::MIN, &|_| {});
        let mut families = walk.prove(0, NonZeroUsize::MIN, &|| {});
        for family in &mut families {
            family.standing = crate::walk::FamilyStanding::Proved;
        }
        let finding = walk.finding(&sweep, &families);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(
            finding.because.starts_with("Would hold"),
            "{}",
            finding.because
        );
    }

    #[test]
    fn fails_without_an_edge_and_tells_how_it_happens() {
        let bare = YARD.replace("guards = [\"opening\"]", "guards = [\"closing\"]");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("Walk "), "{}", finding.sentence);
        assert!(
            finding.sentence.contains("as a yardstick"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_proved_and_until_the_response_is_measured() {
        let finding = only(&CHECK, YARD);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(
            finding.sentence.contains("run gatewright walk"),
            "{}",
            finding.sentence
        );
        let bare = YARD.replace("response_time = \"20 ms\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.standing, Standing::Unknown);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn the_same_number_is_the_same_walk_and_its_frames_meet() {
        let site = site(&YARD.replace("guards = [\"opening\"]", "guards = [\"closing\"]"));
        let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
        let asking = Asking::new(quantity::UnitSystem::UsCustomary);
        let worst = walk.glance(&asking, 64).worst.remove(0);
        let seed = worst.seed.unwrap();
        assert_eq!(walk.told(seed), worst);
        let trace = walk.trace(seed).unwrap();
        assert!(trace.frames.len() > 100, "{}", trace.frames.len());
        assert!((trace.frames[1].time - trace.frames[0].time - 0.01).abs() < 1e-9);
    }

    #[test]
    fn unknown_until_proved_where_a_field_keeps_the_leaf_off() {
        for good in [COURT, LANE] {
            let finding = only(&CHECK, good);
            assert_eq!(
                finding.verdict,
                Verdict::UnknownUntil,
                "{}",
                finding.sentence
            );
            assert!(
                finding.sentence.contains("run gatewright walk"),
                "{}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_with_words_where_nothing_sees_who_is_there_and_the_leaf_turns() {
        for good in [COURT, LANE] {
            let finding = only(&CHECK, &good.replace("\"closing\"]", "\"opening\"]"));
            assert_eq!(
                finding.verdict,
                Verdict::UnknownUntil,
                "{}",
                finding.sentence
            );
            for words in [
                "touches them",
                "No beam or field acts",
                "until the forces at such places are measured",
            ] {
                assert!(finding.sentence.contains(words), "{}", finding.sentence);
            }
        }
    }

    #[test]
    fn unknown_where_a_fact_of_the_turning_leaf_is_missing() {
        for (good, fact, missing) in [
            (COURT, "travel_angle = \"90°\"", 1),
            (COURT, "swings = \"into the property\"", 1),
            (COURT, "cruise_turning_speed = \"5 deg/s\"", 1),
            (LANE, "travel_angle = \"88°\"", 1),
            (LANE, "closed_end = \"-0.1 m\"", 1),
        ] {
            let finding = only(&CHECK, &good.replace(fact, ""));
            assert_eq!(finding.standing, Standing::Unknown, "{}", finding.sentence);
            assert_eq!(finding.missing.len(), missing, "{:?}", finding.missing);
        }
    }

    #[test]
    fn unknown_until_somebody_says_which_of_two_leaves_goes_first() {
        let two = COURT
            .replace("single-swing", "double-swing")
            .replace("clear_opening = \"2 m\"", "clear_opening = \"4 m\"")
            .replace(
                "[gate.motion]",
                "[[gate.leaf]]\nid = \"other\"\nlength = \"1.95 m\"\nheight = \"1.5 m\"\nthickness = \"40 mm\"\nground_clearance = \"50 mm\"\n[gate.motion]",
            )
            .replace("\"2.1 m\", \"0 m\"", "\"4.1 m\", \"0 m\"")
            .replace("3.2 m", "5.2 m");
        let finding = only(&CHECK, &two);
        assert_eq!(finding.standing, Standing::Unknown, "{}", finding.sentence);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let order = "[gate.leaf_order]\ncovering = \"other\"\nopening_delay = \"3 s\"\nclosing_delay = \"3 s\"\nstops_both = true\n[gate.motion]";
        let ordered = two.replace("[gate.motion]", order);
        let finding = only(&CHECK, &ordered);
        assert!(
            finding.sentence.contains("run gatewright walk"),
            "{}",
            finding.sentence
        );
    }
}
