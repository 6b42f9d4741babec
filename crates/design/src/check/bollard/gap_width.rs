//! Whether a gap between bollards keeps a car out, and lets a wheelchair or a stretcher through where people pass.
//!
//! The gap is the one that was taped from face to face; else it follows from where the two bollards stand. Two bollards
//! belong together where they guard the same thing. Without a vehicle of a stated width, 48 in keep cars out.

use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::standing::BollardGap;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Bollard, CodeBasis, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bollard-gap-width",
    codes: BOTH,
    leaves_open: "motorcycles, and a second narrow place less than 48 in farther along the walk",
    concerns: "each bollard that has a gap to keep: taped, beside a walk, or to another bollard that guards the same thing",
    ask,
};

/// Gap that keeps cars out, in meters: 48 in.
const CARS: f64 = 1.2192;
/// Clear width of an accessible route in the United States, in meters: 36 in.
const ROUTE: f64 = 0.9144;
/// Clear width for a short length, in meters: 32 in.
const SHORT: f64 = 0.8128;
/// Clear width that European guidance is remembered to ask for, in meters.
const REMEMBERED: f64 = 0.9;

static KEEPS_CARS_OUT: Source = Source {
    work: "a clear gap of no more than 48 in against cars",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "site-security guidance and pages on spacing: 3 to 4 ft between faces",
};

static ACCESS: Source = Source {
    work: "2010 ADA Standards",
    clause: "403.5.1: 36 in, and 32 in for no more than 24 in of length",
    evidence: Evidence::Seen,
    seen: "https://corada.com/documents/aba-pg-v2/403-5-1",
};

static EUROPE: Source = Source {
    work: "ISO 21542 and EN 17210, clear width between bollards",
    clause: "900 mm",
    evidence: Evidence::Memory,
    seen: "not seen",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for bollard in &site.bollard {
        let next = next(site, bollard);
        let bounded = bollard.gap.is_some()
            || bollard.keeps_out.is_some()
            || bollard.beside_route == Some(true);
        if bounded || next.is_some() {
            round.ask(About::new(&bollard.origin, &bollard.id), |asking| {
                gap(asking, site, bollard, next)
            });
        }
    }
}

/// The nearest other bollard that guards the same thing.
fn next<'s>(site: &'s Site, bollard: &Bollard) -> Option<&'s Bollard> {
    let together = |other: &&Bollard| {
        other.id != bollard.id && other.guards.iter().any(|id| bollard.guards.contains(id))
    };
    let apart = |other: &Bollard| match (&bollard.at, &other.at) {
        (Some(here), Some(there)) => {
            let away = [(&here.x, &there.x), (&here.y, &there.y)]
                .map(|(one, two)| (one.nominal() - two.nominal()).base());
            away[0].hypot(away[1])
        }
        _ => f64::INFINITY,
    };
    site.bollard
        .iter()
        .filter(together)
        .min_by(|one, two| apart(one).total_cmp(&apart(two)))
}

fn gap<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bollard: &'s Bollard,
    next: Option<&'s Bollard>,
) -> Answer {
    let out = asking.read_if_there(&bollard.origin, "keeps_out", bollard.keeps_out.as_ref());
    let car = out.unwrap_or_else(|| {
        asking.rest_on(&KEEPS_CARS_OUT);
        Length::from_base(CARS)
    });
    let clear = clear(asking, bollard, (next, car));
    let route = asking.need(
        &bollard.origin,
        "beside_route",
        bollard.beside_route.as_ref(),
        "true",
    );
    let (clear, route) = (clear?, *route?);
    let walk = route.then(|| walk(asking, site));
    asking.say(|print| {
        let walk = walk.map_or_else(String::new, |walk| {
            let short = clear.base() < walk.base() && clear.base() >= SHORT;
            format!(
                " People pass there and need {}{}.",
                print.q(walk),
                if short && site.site.code_basis == CodeBasis::Us {
                    "; 32 in are enough for a short narrow place with 48 in on both sides of it"
                } else {
                    ""
                }
            )
        });
        format!(
            "{} leaves {} clear to the next; {} keep {} out.{walk}",
            capitalized(bollard.id.as_str()),
            print.q(clear),
            print.q(car),
            if out.is_some() { "the vehicle" } else { "cars" }
        )
    });
    let against_cars = Comparison::at_most(
        Labeled::new("clear gap", clear),
        Labeled::new("gap that keeps the vehicle out", car),
    );
    let for_people = walk.map(|walk| {
        Comparison::at_most(
            Labeled::new("width that people need", walk),
            Labeled::new("clear gap", clear),
        )
    });
    Outcome::worst([Some(against_cars), for_people].into_iter().flatten()).ok_or(Halt)
}

/// Clear width that a walk must have.
fn walk(asking: &mut Asking<'_>, site: &Site) -> Length {
    match site.site.code_basis {
        CodeBasis::Us => {
            asking.rest_on(&ACCESS);
            Length::from_base(ROUTE)
        }
        CodeBasis::Eu => {
            asking.rest_on(&EUROPE);
            Length::from_base(REMEMBERED)
        }
    }
}

/// The clear gap: taped, else from the places of the two bollards.
fn clear<'s>(
    asking: &mut Asking<'s>,
    bollard: &'s Bollard,
    (next, car): (Option<&'s Bollard>, Length),
) -> Result<Length, Halt> {
    let Some(next) = next.filter(|_| bollard.gap.is_none()) else {
        return read!(asking, bollard.gap);
    };
    let here = asking.position(&bollard.origin, "at", bollard.at.as_ref());
    let there = asking.position(&next.origin, "at", next.at.as_ref());
    let diameter = read!(asking, bollard.diameter);
    let other = read!(asking, next.diameter);
    let (here, there, mean) = (here?, there?, (diameter? + other?) / 2.0);
    let [along, across, _] = [0, 1, 2].map(|axis| (here[axis] - there[axis]).base());
    let gives = asking.work(&BollardGap {
        spacing: Length::from_base(along.hypot(across)),
        diameter: mean,
        vehicle_gap: car,
    })?;
    Ok(gives.clear)
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
        [[operator]]
        id = "drive"
        gate = "main"
        [[bollard]]
        id = "bollard-1"
        at = ["0 ft", "0 ft", "0 ft"]
        diameter = "7 in"
        guards = ["drive"]
        beside_route = true
        gap = "40 in ± 1/2 in"
    "#;

    fn two(apart: &str) -> String {
        SITE.replace("gap = \"40 in ± 1/2 in\"", "")
            + &format!(
                "[[bollard]]\nid = \"bollard-2\"\nat = [\"{apart}\", \"0 ft\", \"0 ft\"]\ndiameter = \"9 in\"\nguards = [\"drive\"]\nbeside_route = true\n"
            )
    }

    #[test]
    fn holds_between_wheelchair_and_car() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_wide_for_a_car_and_too_narrow_for_a_wheelchair() {
        let wide = only(&CHECK, &SITE.replace("40 in ±", "50 in ±"));
        assert_eq!(wide.verdict, Verdict::Fails, "{}", wide.sentence);
        let narrow = only(&CHECK, &SITE.replace("40 in ±", "34 in ±"));
        assert_eq!(narrow.verdict, Verdict::Fails, "{}", narrow.sentence);
        assert!(narrow.sentence.contains("32 in"), "{}", narrow.sentence);
    }

    #[test]
    fn holds_from_the_places_of_two() {
        let findings = all(&CHECK, &two("48 in"));
        assert_eq!(findings.len(), 2);
        // By hand: 48 − (7 + 9) / 2 is 40 in.
        assert!(findings.iter().all(|one| one.verdict == Verdict::Holds));
        assert!(
            findings[0].sentence.contains("3 ft 4 in clear"),
            "{}",
            findings[0].sentence
        );
    }

    #[test]
    fn a_narrower_vehicle_to_keep_out_counts_instead() {
        let quad = SITE.to_owned() + "keeps_out = \"38 in\"\n";
        assert_eq!(only(&CHECK, &quad).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_route_and_in_europe_from_memory() {
        let open = SITE.replace("beside_route = true", "");
        assert_eq!(only(&CHECK, &open).missing.len(), 1);
        let europe = only(&CHECK, &SITE.replace("\"us\"", "\"eu\""));
        assert_eq!(europe.verdict, Verdict::UnknownUntil, "{}", europe.sentence);
    }

    #[test]
    fn a_lone_bollard_off_every_walk_is_not_asked() {
        let lone = SITE
            .replace("beside_route = true", "beside_route = false")
            .replace("gap = \"40 in ± 1/2 in\"", "");
        assert!(all(&CHECK, &lone).is_empty());
    }
}
