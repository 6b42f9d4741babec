//! Where a driver goes who is refused, without backing into the road; and where a fire engine turns round.
//!
//! A circle has to be as wide as each vehicle needs at full lock; an arm of a hammerhead as long as the longest, an escape
//! lane as wide as the widest. Fire engines that come by a dead end of more than 150 ft turn round at its end.

use crate::asking::{Asking, need, pick, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::TurningCircle;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Lane, Site, TurnBack, TurnBackWay, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-turn-back",
    codes: BOTH,
    leaves_open: "trailers that jackknife in an arm, drivers who do not know the place, snow banks, and cars that wait behind; the longest vehicle turned round on site shows it",
    concerns: "each lane",
    ask,
};

static DEAD_END: Source = Source {
    work: "NFPA 1 and the International Fire Code",
    clause: "NFPA 1 18.2.3, IFC 503.2.5: a dead end of more than 150 ft has a turning place",
    evidence: Evidence::Seen,
    seen: "NFPA blog on NFPA 1 (2015) 18.2.3; a county's adopted appendix D, table D103.4",
};

static ROOM: Source = Source {
    work: "an arm as long as the vehicle, an escape lane as wide as it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "habit of the trade",
};

/// Longest dead end that needs no turning place for fire engines: 150 ft.
const SHORT: f64 = 150.0 * 0.3048;
/// How it is written.
const TURN_BACK: &str = "{ way = \"let through and back\", let_through_by = \"office, day and night\", dead_end = \"0 ft\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        round.ask(About::new(&lane.origin, &lane.id), |asking| {
            turn_back(asking, site, lane)
        });
    }
}

fn turn_back<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    let back = asking.need(
        &lane.origin,
        "turn_back",
        lane.turn_back.as_ref(),
        TURN_BACK,
    )?;
    let engines = engines_turn(asking, site, (lane, back));
    let way = pick!(asking, back.way)?;
    let refused = match way {
        TurnBackWay::Circle => circle(asking, site, back),
        TurnBackWay::Hammerhead => arm(asking, site, back),
        TurnBackWay::EscapeLane => escape(asking, site, back),
        TurnBackWay::LetThrough => let_through(asking, back),
        TurnBackWay::BacksOut => backs_out(asking, back),
    };
    let (engines, (refused, said)) = (engines?, refused?);
    asking.say(|_| {
        let fire = match engines {
            Some(false) => " A fire engine has no place to turn round at the end of its dead end.",
            Some(true) => " Fire engines turn round at the end.",
            None => "",
        };
        format!("{said}{fire}")
    });
    Ok(if engines == Some(false) {
        Outcome::Rule(false)
    } else {
        refused
    })
}

/// Whether fire engines that come by a long dead end can turn round there; nothing where none come.
fn engines_turn<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (lane, back): (&'s Lane, &'s TurnBack),
) -> Result<Option<bool>, Halt> {
    if lane.fire_lane != Some(true) || site.site.code_basis != CodeBasis::Us {
        return Ok(None);
    }
    asking.rest_on(&DEAD_END);
    let dead_end = read!(asking, back.dead_end)?;
    if dead_end.base() <= SHORT {
        return Ok(None);
    }
    let place = need!(
        asking,
        back.fire_turning,
        "\"loop of 100 ft, fire marshal 2026-04-28\", or \"none\""
    )?;
    Ok(Some(place.as_str() != "none"))
}

type Said = Result<(Outcome, String), Halt>;

/// The vehicles that may be refused: all but fire engines.
fn refused(site: &Site) -> impl Iterator<Item = &Vehicle> {
    site.vehicle
        .iter()
        .filter(|vehicle| vehicle.fire_apparatus != Some(true))
}

fn circle<'s>(asking: &mut Asking<'s>, site: &'s Site, back: &'s TurnBack) -> Said {
    let there = read!(asking, back.diameter);
    let needed: Vec<_> = refused(site)
        .map(|vehicle| {
            let wheel_radius = read!(asking, vehicle.turning_radius);
            let wheelbase = read!(asking, vehicle.wheelbase);
            let front_overhang = read!(asking, vehicle.front_overhang);
            let (wheel_radius, wheelbase, front_overhang) =
                (wheel_radius?, wheelbase?, front_overhang?);
            let circle = asking.work(&TurningCircle {
                wheel_radius,
                wheelbase,
                front_overhang,
            })?;
            Ok((circle.diameter, vehicle))
        })
        .collect();
    let needed: Result<Vec<_>, Halt> = needed.into_iter().collect();
    most(
        asking,
        needed?,
        there?,
        ("circle that it needs", "circle that is there"),
    )
}

fn arm<'s>(asking: &mut Asking<'s>, site: &'s Site, back: &'s TurnBack) -> Said {
    asking.rest_on(&ROOM);
    let there = read!(asking, back.arm);
    let lengths = refused(site).map(|vehicle| Ok((read!(asking, vehicle.length)?, vehicle)));
    let lengths: Result<Vec<_>, Halt> = lengths.collect();
    most(
        asking,
        lengths?,
        there?,
        ("length of the longest vehicle", "length of the arm"),
    )
}

fn escape<'s>(asking: &mut Asking<'s>, site: &'s Site, back: &'s TurnBack) -> Said {
    asking.rest_on(&ROOM);
    let there = read!(asking, back.arm);
    let widths = refused(site).map(|vehicle| Ok((read!(asking, vehicle.width)?, vehicle)));
    let widths: Result<Vec<_>, Halt> = widths.collect();
    most(
        asking,
        widths?,
        there?,
        ("width of the widest vehicle", "width of the escape lane"),
    )
}

/// The vehicle that needs most against what is there.
fn most<'s>(
    asking: &mut Asking<'s>,
    needed: Vec<(Length, &'s Vehicle)>,
    there: Length,
    (demand, capacity): (&'static str, &'static str),
) -> Said {
    let most = needed
        .into_iter()
        .max_by(|one, other| one.0.base().total_cmp(&other.0.base()));
    let Some((needs, vehicle)) = most else {
        return asking.refuse("no vehicle that may be refused is written down");
    };
    let print = asking.print();
    let said = format!(
        "Who is refused turns back before the gate: {} needs {}, and {} are there.",
        vehicle.id,
        print.q(needs),
        print.q(there)
    );
    let outcome = Outcome::Compared(Comparison::at_most(
        Labeled::new(demand, needs),
        Labeled::new(capacity, there),
    ));
    Ok((outcome, said))
}

fn let_through<'s>(asking: &mut Asking<'s>, back: &'s TurnBack) -> Said {
    asking.rest_on(&ROOM);
    let who = need!(asking, back.let_through_by, "\"office, day and night\"")?;
    let said = format!("Who is refused is let in, turns round inside and is let out, by: {who}.");
    Ok((Outcome::Rule(true), said))
}

fn backs_out<'s>(asking: &mut Asking<'s>, back: &'s TurnBack) -> Said {
    asking.rest_on(&ROOM);
    let clear = told(asking, &back.origin, "clear_of_road", back.clear_of_road)?;
    let said = if clear {
        "Who is refused backs out, and stays clear of road and footpath."
    } else {
        "Who is refused has to back out into the road or over the footpath; an escape lane, a turning place or somebody who lets them through and back would mend it."
    };
    Ok((Outcome::Rule(clear), said.to_owned()))
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
        [[lane]]
        id = "drive"
        fire_lane = true
        turn_back = { way = "turning circle", diameter = "90 ft", dead_end = "400 ft", fire_turning = "hammerhead of 120 ft" }
        [[vehicle]]
        id = "truck"
        what = "truck"
        length = "30 ft"
        width = "8 ft"
        wheelbase = "20 ft"
        front_overhang = "4 ft"
        turning_radius = "41.8 ft"
    "#;

    #[test]
    fn holds_on_a_wide_circle() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: √(41.8² − 20² + 24²) · 2 = 87.7 ft.
        let feet = finding.demand.unwrap().value.unwrap() / 0.3048;
        assert!((feet - 87.7).abs() < 0.1, "{feet}");
    }

    #[test]
    fn fails_on_a_small_circle_a_short_arm_backing_into_the_road_and_without_a_place_for_engines() {
        for (from, to) in [
            ("\"90 ft\"", "\"80 ft\""),
            (
                "way = \"turning circle\", diameter = \"90 ft\"",
                "way = \"hammerhead\", arm = \"25 ft\"",
            ),
            (
                "way = \"turning circle\", diameter = \"90 ft\"",
                "way = \"backs out\", clear_of_road = false",
            ),
            ("hammerhead of 120 ft", "none"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_circle_and_dead_end() {
        let bare = SITE.replace("diameter = \"90 ft\", dead_end = \"400 ft\", ", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }

    #[test]
    fn holds_where_somebody_lets_them_through() {
        let staffed = SITE.replace(
            "way = \"turning circle\"",
            "way = \"let through and back\", let_through_by = \"guard\"",
        );
        assert_eq!(only(&CHECK, &staffed).verdict, Verdict::Holds);
    }
}
