//! Whether the conduits come up inside the opening of the base that stands on them, high enough, bushed and capped.

use super::wet::water_at;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Foundation, Site, StubUp};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-stub-up",
    codes: BOTH,
    leaves_open: "room to the anchors, which has a question of its own, and whether the template stood still while the concrete was poured",
    concerns: "each foundation with conduits in it, and each pad of an operator",
    ask,
};

static BASE: Source = Source {
    work: "every stub whole inside the opening of the base, bushed, and capped until its cables are drawn",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the opening by the base's drawing",
};

static SPLASH: Source = Source {
    work: "stubs end 2 in above the pad, so that splash and hose stay out",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as careful installers do it",
};

/// Height of splash, in meters: 2 in.
const SPLASH_HEIGHT: f64 = 0.0508;

/// How stubs are written.
const STUB: &str = "[[foundation.stub_up]]\nconduit = \"c-01\"\nat = [\"22 ft\", \"14 in\", \"2 in\"]\ndiameter = \"1.3 in\"\nend = { height = \"3 in\", bushing = true, capped = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let wired = |id: &site::Id| {
        let mut routed = site.cable.iter().filter(|cable| !cable.route.is_empty());
        routed.any(|cable| cable.to == *id || cable.from == *id)
    };
    let under_drive = |foundation: &Foundation| {
        let on_it = |one: &&site::Operator| one.foundation.as_ref() == Some(&foundation.id);
        site.operator.iter().filter(on_it).any(|one| wired(&one.id))
    };
    for foundation in &site.foundation {
        if !foundation.stub_up.is_empty() || under_drive(foundation) {
            round.ask(About::new(&foundation.origin, &foundation.id), |asking| {
                stubs(asking, site, foundation)
            });
        }
    }
}

/// What was found of one stub.
struct Found {
    compared: Vec<Comparison>,
    finished: bool,
}

fn stubs<'s>(asking: &mut Asking<'s>, site: &'s Site, foundation: &'s Foundation) -> Answer {
    asking.rest_on(&BASE);
    asking.rest_on(&SPLASH);
    let opening = opening(asking, foundation);
    if foundation.stub_up.is_empty() {
        return asking.lack(&foundation.origin, "stub_up", Wants::Table(STUB));
    }
    let top = asking.position(&foundation.origin, "at", foundation.at.as_ref());
    let mut all: Result<Vec<Found>, Halt> = Ok(Vec::new());
    for stub in &foundation.stub_up {
        let found = one(asking, site, stub, (&opening, &top));
        all = all.and_then(|mut all| {
            all.push(found?);
            Ok(all)
        });
    }
    let all = all?;
    let finished = all.iter().all(|one| one.finished);
    let compared: Vec<Comparison> = all.into_iter().flat_map(|one| one.compared).collect();
    let outside = compared.iter().any(|one| !one.holds());
    let count = foundation.stub_up.len();
    asking.say(|_| {
        let what = if count == 1 {
            "The conduit comes".to_owned()
        } else {
            format!("The {count} conduits come")
        };
        let how = match (outside, finished) {
            (true, _) => "where the base does not take it, or too low",
            (false, false) => {
                "inside the opening of the base and high enough, but a bushing or a cap is missing"
            }
            (false, true) => "inside the opening of the base, high enough, bushed and capped",
        };
        format!("{what} up through {} {how}.", foundation.id)
    });
    if !finished {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst(compared).ok_or(Halt)
}

/// Least and greatest place of the opening along the gate and across it.
type Opening = [[Length; 2]; 2];

fn opening<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<Opening, Halt> {
    let Some(opening) = &foundation.opening else {
        return asking.lack(
            &foundation.origin,
            "opening",
            Wants::Written(
                "{ from = [\"22 ft\", \"8 in\", \"2 in\"], to = [\"23 ft\", \"20 in\", \"2 in\"] }",
            ),
        );
    };
    let from = asking.position(&opening.origin, "from", opening.from.as_ref());
    let to = asking.position(&opening.origin, "to", opening.to.as_ref());
    let (from, to) = (from?, to?);
    let ordered = |one: Length, other: Length| {
        if one < other {
            [one, other]
        } else {
            [other, one]
        }
    };
    Ok([ordered(from[0], to[0]), ordered(from[1], to[1])])
}

fn one<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    stub: &'s StubUp,
    (opening, top): (&Result<Opening, Halt>, &Result<[Length; 3], Halt>),
) -> Result<Found, Halt> {
    let at = asking.position(&stub.origin, "at", stub.at.as_ref());
    let diameter = read!(asking, stub.diameter);
    let Some(end) = &stub.end else {
        return asking.lack(
            &stub.origin,
            "end",
            Wants::Written("{ height = \"3 in\", bushing = true, capped = true }"),
        );
    };
    let height = read!(asking, end.height);
    let bushing = asking.need(&end.origin, "bushing", end.bushing.as_ref(), "true");
    let capped = asking.need(&end.origin, "capped", end.capped.as_ref(), "true");
    let (at, diameter, height, opening, top) = (at?, diameter?, height?, (*opening)?, (*top)?);
    let finished = *bushing? && *capped?;
    let room = [
        at[0] - opening[0][0],
        opening[0][1] - at[0],
        at[1] - opening[1][0],
        opening[1][1] - at[1],
    ];
    let room = room
        .into_iter()
        .reduce(|one, other| if one < other { one } else { other });
    let inside = Comparison::at_most(
        Labeled::new("half the conduit's diameter", diameter / 2.0),
        Labeled::new(
            "distance from its middle to the edge of the opening",
            room.unwrap_or(diameter),
        ),
    );
    let splash = Comparison::at_most(
        Labeled::new(
            "height of splash above the pad",
            Length::from_base(SPLASH_HEIGHT),
        ),
        Labeled::new("height of the stub above the pad", height),
    );
    let mut compared = vec![inside, splash];
    if let Some(water) = water_at(asking, site, (at[0].base(), at[1].base()))? {
        compared.push(Comparison::below(
            Labeled::new("level of standing or running water", water),
            Labeled::new("level at which the stub ends", top[2] + height),
        ));
    }
    Ok(Found { compared, finished })
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
        [[water_line]]
        id = "flood"
        what = "standing water"
        level = "1 in"
        [[conduit]]
        id = "c-01"
        [[foundation]]
        id = "pad"
        at = ["22 ft", "14 in", "2 in"]
        opening = { from = ["21 ft 8 in", "10 in", "2 in"], to = ["22 ft 4 in", "18 in", "2 in"] }
        [[foundation.stub_up]]
        conduit = "c-01"
        at = ["22 ft", "14 in ± 1/2 in", "2 in"]
        diameter = "1.66 in"
        end = { height = "3 in", bushing = true, capped = true }
    "#;

    #[test]
    fn holds_inside_and_high_enough() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_beside_the_opening_too_low_under_water_or_open() {
        for (good, bad) in [
            (
                "at = [\"22 ft\", \"14 in ± 1/2 in\"",
                "at = [\"23 ft\", \"14 in\"",
            ),
            ("height = \"3 in\"", "height = \"1 in\""),
            ("level = \"1 in\"", "level = \"6 in\""),
            ("capped = true", "capped = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(good, bad));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{bad}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_opening_and_end() {
        let bare = SITE
            .replace("opening = ", "# opening = ")
            .replace("end = ", "# end = ");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
