//! Whether the open gate, and the turn into it, leave the fire engine the room that the fire service asks.
//!
//! Width: as measured with the gate open, and no more than the leaf in its open position leaves. Height: as measured over
//! opening and approach. What the fire service has written goes before the model codes; in Europe only what it has
//! written counts. In a turn the engine drives on a circle, as tight as it can or as wide as the inner kerb makes it.

use super::apparatus::{ENGINE, each_gate, engines};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::protection::{FireClearWay, FrontAxleTurningRadius, TurningRing};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Fire, FireApproach, Gate, GateKind, Leaf, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "fire-clear-way",
    codes: BOTH,
    leaves_open: "swinging in and out of the turn, the engine's tail, a trailer, gradients and dips before the gate, a road that parked cars narrow, and outriggers: let the crew drive it once",
    concerns: "each gate that fire engines pass",
    ask,
};

static LETTER: Source = Source {
    work: "what the fire service has written about this gate",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site gives it",
};

/// How it is written what the fire service asks.
pub(super) const FIRE: &str = "[fire]\nclear_width = \"20 ft\"\nclear_height = \"13 ft 6 in\"\nagreed_with = \"fire marshal\"\nagreed = 2026-02-03\napproach = \"straight\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    each_gate(site, round, |asking, gate| clear(asking, site, gate));
}

fn clear<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let width = width(asking, gate);
    let height = read!(asking, gate.clear_height);
    let engines = each_engine(asking, site);
    let Some(fire) = &site.fire else {
        return asking.lack(&site.origin, "fire", Wants::Table(FIRE));
    };
    let written = written(asking, site.site.code_basis, fire);
    let turn = turn(asking, site, fire);
    let (clear_width, clear_height, engines) = (width?, height?, engines?);
    let ((authority_width, authority_height), turn) = (written?, turn?);
    let way = asking.work(&FireClearWay {
        clear_width,
        clear_height,
        authority_width,
        authority_height,
    })?;
    asking.say(|print| {
        format!(
            "Open, the gate leaves {} of width and {} of height; the fire service asks {} and {}.{}",
            print.q(clear_width),
            print.q(clear_height),
            print.q(way.least_width),
            print.q(way.least_height),
            turn_words(print, turn.as_ref())
        )
    });
    let width = Labeled::new("clear width of the open gate", clear_width);
    let height = Labeled::new("clear height", clear_height);
    let mut comparisons = vec![
        Comparison::at_most(Labeled::new("width that is asked", way.least_width), width),
        Comparison::at_most(
            Labeled::new("height that is asked", way.least_height),
            height,
        ),
    ];
    for (wide, high) in engines {
        comparisons.push(Comparison::at_most(
            Labeled::new("width of the engine, mirrors included", wide),
            width,
        ));
        comparisons.push(Comparison::at_most(
            Labeled::new("height of the engine", high),
            height,
        ));
    }
    comparisons.extend(turn.iter().map(|turn| {
        Comparison::at_most(
            Labeled::new("radius that the engine's corner sweeps", turn.corner),
            Labeled::new("radius to which the turn is clear", turn.clear),
        )
    }));
    Outcome::worst(comparisons).ok_or(Halt)
}

fn turn_words(print: Print, turn: Option<&Turn>) -> String {
    turn.map_or_else(String::new, |turn| {
        format!(
            " In the turn its corner sweeps to {}, and {} is clear.",
            print.q(turn.corner),
            print.q(turn.clear)
        )
    })
}

/// The clear width: as measured, and no more than the open leaf leaves.
fn width<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let measured = read!(asking, gate.clear_opening);
    let left = match gate.kind {
        GateKind::SingleSwing | GateKind::DoubleSwing => beside_turned(asking, gate).map(Some),
        GateKind::TrackSlide | GateKind::CantileverSlide => beside_slid(asking, gate).map(Some),
        _ => Ok(None),
    };
    let (measured, left) = (measured?, left?);
    Ok(match left {
        Some(left) if left < measured => {
            asking.rest_on(&GEOMETRY);
            asking.note(|print| {
                format!(
                    "The leaf does not open all the way: by its travel it leaves {}.",
                    print.q(left)
                )
            });
            left
        }
        _ => measured,
    })
}

/// What leaves that turn less than square leave between their free ends, from leaf lengths and angle.
fn beside_turned<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let angle = read!(asking, gate.travel_angle);
    let lengths: Vec<Result<Length, Halt>> = gate
        .leaf
        .iter()
        .map(|leaf| read!(asking, leaf.length))
        .collect();
    let lengths = lengths.into_iter().collect::<Result<Vec<_>, _>>()?;
    let short = angle?.base().cos();
    if lengths.is_empty() || short <= 0.0 {
        return Ok(Length::from_base(f64::INFINITY));
    }
    let whole: f64 = lengths.iter().map(|length| length.base()).sum();
    Ok(Length::from_base(whole * (1.0 - short)))
}

/// Where the leading end of a slid leaf stands when it is open.
fn beside_slid<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let travel = read!(asking, gate.travel);
    let end = |leaf: &'s Leaf, asking: &mut Asking<'s>| {
        asking.read_if_there(&leaf.origin, "closed_end", leaf.closed_end.as_ref())
    };
    let first = gate.leaf.first().and_then(|leaf| end(leaf, asking));
    Ok(travel? + first.unwrap_or_default())
}

/// Width and height of each fire engine that comes.
fn each_engine<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Vec<(Length, Length)>, Halt> {
    let each: Vec<Result<(Length, Length), Halt>> = engines(site)
        .map(|vehicle| {
            let width = read!(asking, vehicle.width);
            let height = read!(asking, vehicle.height);
            Ok((width?, height?))
        })
        .collect();
    each.into_iter().collect()
}

/// Width and height that the fire service has written; zero in the United States where it has written none.
fn written<'s>(
    asking: &mut Asking<'s>,
    basis: CodeBasis,
    fire: &'s Fire,
) -> Result<(Length, Length), Halt> {
    if basis == CodeBasis::Us && fire.clear_width.is_none() && fire.clear_height.is_none() {
        return Ok((Length::default(), Length::default()));
    }
    let us = |value: Option<Length>| value.unwrap_or_default();
    let by = asking.need(
        &fire.origin,
        "agreed_with",
        fire.agreed_with.as_ref(),
        "\"fire marshal\"",
    );
    let day = asking.need(&fire.origin, "agreed", fire.agreed.as_ref(), "2026-02-03");
    let (width, height) = if basis == CodeBasis::Us {
        let width = asking.read_if_there(&fire.origin, "clear_width", fire.clear_width.as_ref());
        let height = asking.read_if_there(&fire.origin, "clear_height", fire.clear_height.as_ref());
        (Ok(us(width)), Ok(us(height)))
    } else {
        (
            read!(asking, fire.clear_width),
            read!(asking, fire.clear_height),
        )
    };
    let (width, height, _, _) = (width?, height?, by?, day?);
    asking.rest_on(&LETTER);
    Ok((width, height))
}

/// A turn into the gate: what an engine sweeps, and what is clear.
struct Turn {
    corner: Length,
    clear: Length,
}

/// The turn of the engine that sweeps the most; nothing where it comes straight.
fn turn<'s>(asking: &mut Asking<'s>, site: &'s Site, fire: &'s Fire) -> Result<Option<Turn>, Halt> {
    if pick!(asking, fire.approach)? == FireApproach::Straight {
        return Ok(None);
    }
    let inside = read!(asking, fire.turn_inside);
    let clear = read!(asking, fire.turn_outside);
    if engines(site).next().is_none() {
        return asking.lack(&site.origin, "vehicle", Wants::Table(ENGINE));
    }
    let vehicles: Vec<Result<TurningRing, Halt>> = engines(site)
        .map(|vehicle| circle(asking, vehicle))
        .collect();
    let (kerb_radius, clear) = (inside?, clear?);
    let mut widest: Option<Length> = None;
    for vehicle in vehicles {
        let ring = TurningRing {
            kerb_radius,
            ..vehicle?
        };
        let corner = asking.work(&ring)?.corner_radius;
        if widest.is_none_or(|most| corner > most) {
            widest = Some(corner);
        }
    }
    Ok(widest.map(|corner| Turn { corner, clear }))
}

/// An engine on its tightest circle.
fn circle<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<TurningRing, Halt> {
    let wheelbase = read!(asking, vehicle.wheelbase);
    let width = read!(asking, vehicle.width);
    let front_overhang = read!(asking, vehicle.front_overhang);
    let wheel_radius = read!(asking, vehicle.turning_radius);
    let (wheelbase, width, front_overhang) = (wheelbase?, width?, front_overhang?);
    let axle = asking.work(&FrontAxleTurningRadius {
        wheel_radius: wheel_radius?,
        wheelbase,
        width,
    })?;
    Ok(TurningRing {
        center_radius: axle.center_radius,
        wheelbase,
        width,
        front_overhang,
        kerb_radius: Length::default(),
    })
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
        clear_opening = "20 ft"
        clear_height = "18 ft"
        travel = "20 ft 8 in"
        [[gate.leaf]]
        id = "leaf"
        closed_end = "-3 in"
        [[lane]]
        id = "lane"
        gate = "main"
        fire_lane = true
        [[vehicle]]
        id = "engine"
        what = "engine"
        fire_apparatus = true
        width = "8 ft 6 in"
        height = "10 ft 6 in"
        wheelbase = "16 ft 9 in"
        front_overhang = "7 ft 6 in"
        turning_radius = "35 ft 10 in"
        [fire]
        approach = "straight"
    "#;

    fn turning(outside: &str) -> String {
        SITE.replace(
            "\"straight\"",
            &format!("\"turn\"\nturn_inside = \"25 ft\"\nturn_outside = \"{outside}\""),
        )
    }

    #[test]
    fn holds_at_twenty_feet_and_in_a_wide_turn() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: the rear axle runs on 25 ft + 4.25 ft, its corner on √(33.5² + 24.25²) ft = 41.36 ft.
        let finding = only(&CHECK, &turning("41.4 ft"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert_eq!(only(&CHECK, &turning("41.3 ft")).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_too_narrow_too_low_and_where_the_leaf_stays_in_the_way() {
        for (from, to) in [
            ("clear_opening = \"20 ft\"", "clear_opening = \"16 ft\""),
            ("\"18 ft\"", "\"13 ft\""),
            ("\"20 ft 8 in\"", "\"19 ft\""),
            ("width = \"8 ft 6 in\"", "width = \"21 ft\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
        let swing = SITE
            .replace("track-slide", "double-swing")
            .replace(
                "closed_end = \"-3 in\"",
                "length = \"10 ft 2 in\"\n[[gate.leaf]]\nid = \"two\"\nlength = \"10 ft 2 in\"",
            )
            .replace("travel = \"20 ft 8 in\"", "travel_angle = \"80°\"");
        let finding = only(&CHECK, &swing);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let square = only(&CHECK, &swing.replace("80°", "90°"));
        assert_eq!(square.verdict, Verdict::Holds, "{}", square.sentence);
    }

    #[test]
    fn what_the_fire_service_has_written_goes_before() {
        let own = SITE.replace(
            "[fire]",
            "[fire]\nclear_width = \"22 ft\"\nagreed_with = \"fire marshal\"\nagreed = 2026-02-03",
        );
        assert_eq!(only(&CHECK, &own).verdict, Verdict::Fails);
        assert_eq!(
            only(&CHECK, &own.replace("22 ft", "14 ft")).verdict,
            Verdict::Holds
        );
    }

    #[test]
    fn unknown_without_height_letter_and_lane() {
        let bare = SITE
            .replace("clear_height = \"18 ft\"", "")
            .replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &bare).missing.len(), 5);
        let silent = SITE.split("[fire]").next().unwrap();
        assert_eq!(only(&CHECK, silent).missing.len(), 1);
        let asked = SITE
            .replace("fire_lane = true", "")
            .replace("fire_apparatus = true", "");
        assert_eq!(only(&CHECK, &asked).verdict, Verdict::UnknownUntil);
        assert!(
            all(
                &CHECK,
                &SITE.replace("fire_lane = true", "fire_lane = false")
            )
            .is_empty()
        );
    }
}
