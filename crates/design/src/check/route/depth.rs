//! Whether each conduit lies deep enough for what is above it, is free to move where the ground heaves, and has a tape
//! above it where it carries mains.

use super::bore::cables_in;
use super::ends::rises;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::ways::{ConduitKind, CoverPlace, LeastCover};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{Carries, CodeBasis, Conduit, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-depth",
    codes: BOTH,
    leaves_open: "loads heavier than those of a road, ground that settles or washes out, growth of long conduits above ground in the sun, and what the local rule asks beyond the table",
    concerns: "each conduit",
    ask,
};

static LOCAL: Source = Source {
    work: "local rule on the depth of ducts",
    clause: "600 mm under open ground, 800 mm under lanes",
    evidence: Evidence::Memory,
    seen: "not seen; the operator of the local network and the building authority know theirs",
};

static HEAVE: Source = Source {
    work: "a slip fitting, or a rise that is free to move, where frost lifts the ground around a conduit; a tape above mains",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as careful installers do it",
};

/// Cover by the local rule in Europe: open ground, lane, in meters.
const EUROPE: (f64, f64) = (0.6, 0.8);

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in &site.conduit {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            deep(asking, site, conduit)
        });
    }
}

fn deep<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    let cover = read!(asking, conduit.burial_depth);
    let needed = needed(asking, site, conduit);
    let moves = free_to_move(asking, site, conduit, &cover);
    let taped = taped(asking, site, conduit);
    let (cover, needed, moves, taped) = (cover?, needed?, moves?, taped?);
    asking.say(|print| {
        let fault = match (moves, taped) {
            (false, _) => {
                " Frost reaches below it and nothing lets its rise move: give it a slip fitting."
            }
            (true, false) => " It carries mains and has no warning tape above it.",
            _ => "",
        };
        let above = match conduit.under_lane {
            Some(true) => "under the lane",
            Some(false) => "under open ground",
            None => "taken to lie under a lane, since nobody says that it does not,",
        };
        format!(
            "Conduit {} {above} has {} of cover; {} is asked for.{fault}",
            conduit.id,
            print.q(cover),
            print.q(needed)
        )
    });
    if !(moves && taped) {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new("least cover", needed),
        Labeled::new("cover of the conduit", cover),
    )))
}

/// Cover that the table or the local rule asks for; that of a lane where nobody says that there is none.
fn needed<'s>(asking: &mut Asking<'s>, site: &Site, conduit: &'s Conduit) -> Result<Length, Halt> {
    let under_lane = conduit.under_lane.unwrap_or(true);
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&LOCAL);
        let meters = if under_lane { EUROPE.1 } else { EUROPE.0 };
        return Ok(Length::from_base(meters));
    }
    let kind = pick!(asking, conduit.kind)?;
    let Some(kind) = ConduitKind::from_word(kind.word()) else {
        return asking.refuse("the table of cover does not know this kind of conduit");
    };
    let place = if under_lane {
        CoverPlace::Lane
    } else {
        CoverPlace::Open
    };
    Ok(asking.work(&LeastCover { kind, place })?.least)
}

/// Below frost, without a rise, or with a fitting that lets the rise move.
fn free_to_move<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
    cover: &Result<Length, Halt>,
) -> Result<bool, Halt> {
    if !rises(site, conduit) {
        return Ok(true);
    }
    asking.rest_on(&HEAVE);
    let frost = match &site.climate {
        Some(climate) => read!(asking, climate.frost_depth),
        None => asking.lack_of(&site.origin, "climate.frost_depth"),
    };
    let slips = conduit.laid.as_ref().and_then(|laid| laid.slip_fitting);
    if slips == Some(true) || (*cover)? >= frost? {
        return Ok(true);
    }
    yes_or_no(asking, conduit, "laid.slip_fitting", slips)
}

/// A tape lies above it where it carries mains.
fn taped<'s>(asking: &mut Asking<'s>, site: &Site, conduit: &'s Conduit) -> Result<bool, Halt> {
    if !cables_in(site, conduit).any(|cable| cable.carries == Some(Carries::Mains)) {
        return Ok(true);
    }
    asking.rest_on(&HEAVE);
    let tape = conduit.laid.as_ref().and_then(|laid| laid.warning_tape);
    yes_or_no(asking, conduit, "laid.warning_tape", tape)
}

fn yes_or_no<'s>(
    asking: &mut Asking<'s>,
    conduit: &'s Conduit,
    key: &'static str,
    value: Option<bool>,
) -> Result<bool, Halt> {
    asking
        .need(&conduit.origin, key, value.as_ref(), "true")
        .copied()
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        frost_depth = "12 in"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [[enclosure]]
        id = "box"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "box"
        route = ["c-01"]
        [[conduit]]
        id = "c-01"
        kind = "PVC-40"
        from = "office"
        to = "box"
        under_lane = false
        burial_depth = "20 in ± 1 in"
        laid = { warning_tape = true }
    "#;

    #[test]
    fn holds_below_frost_and_the_table() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_under_a_lane_also_where_nobody_says_there_is_none() {
        for lane in ["under_lane = true", ""] {
            let under = SITE.replace("under_lane = false", lane);
            let finding = only(&CHECK, &under);
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_where_frost_lifts_a_stiff_rise() {
        let cold = SITE.replace("\"12 in\"", "\"40 in\"");
        assert_eq!(only(&CHECK, &cold).verdict, Verdict::UnknownUntil);
        let stiff = cold.replace("tape = true", "tape = true, slip_fitting = false");
        assert_eq!(only(&CHECK, &stiff).verdict, Verdict::Fails);
        let slips = cold.replace("tape = true", "tape = true, slip_fitting = true");
        assert_eq!(only(&CHECK, &slips).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_without_a_tape_above_mains() {
        let bare = SITE.replace("tape = true", "tape = false");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_depth_and_in_europe_until_somebody_looked_it_up() {
        let bare = SITE.replace("burial_depth", "# burial_depth");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let eu = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("20 in ± 1 in", "700 mm");
        assert_eq!(only(&CHECK, &eu).verdict, Verdict::UnknownUntil);
        let shallow = eu.replace("700 mm", "400 mm");
        assert_eq!(only(&CHECK, &shallow).verdict, Verdict::Fails);
    }
}
