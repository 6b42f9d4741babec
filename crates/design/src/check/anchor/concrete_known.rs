//! What is really known about the concrete that is drilled into.
//!
//! A slab that was there before counts as cracked, at the least strength in common use until a core, a rebound hammer or
//! papers say more, and with a thickness that was measured. New concrete has the age that the anchor asks for before
//! adhesive goes in.

use super::fits::is_drilled;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Known, Pressure, Quantity as _, Time};
use site::{Anchor, AnchorKind, ConcreteState, Date, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-concrete-known",
    codes: BOTH,
    leaves_open: "hollow places and old repairs, which a hammer finds by ear",
    concerns: "each foundation with anchors",
    ask,
};

static LEAST: Source = Source {
    work: "2,500 psi (17 MPa): the least strength of structural concrete, taken for a slab that nobody has tested",
    clause: "ACI 318-19 table 19.2.1.1",
    evidence: Evidence::CommonPractice,
    seen: "an old slab may still be weaker: a core or a rebound hammer tells",
};

static AGE: Source = Source {
    work: "ACI 318-19",
    clause: "17.2.2: 21 days before an adhesive anchor is set",
    evidence: Evidence::Memory,
    seen: "recalled; the sheet of the adhesive may ask for another age",
};

static CRACKED: Source = Source {
    work: "ACI 318-19",
    clause: "17.6.2.5: concrete counts as cracked unless analysis shows that it stays uncracked",
    evidence: Evidence::Seen,
    seen: "the clause quoted in an anchor maker's guide to the code (name withheld)",
};

/// Least strength in common use, in pascals, and the age of concrete for adhesive, in days.
const LEAST_STRENGTH: f64 = 17.237e6;
const DAYS: f64 = 21.0;
/// Seconds of a day.
const DAY: f64 = 86_400.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for foundation in site.foundation.iter().filter(|one| !one.anchor.is_empty()) {
        round.ask(About::new(&foundation.origin, &foundation.id), |asking| {
            known(asking, foundation)
        });
    }
}

fn known<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Answer {
    let strength = read!(asking, foundation.strength);
    let state = pick!(asking, foundation.concrete);
    let depth = read!(asking, foundation.depth);
    let drilled = foundation.anchor.iter().any(is_drilled);
    let existing = match (foundation.existing, drilled) {
        (Some(existing), _) => Ok(existing),
        (None, false) => Ok(false),
        (None, true) => asking.lack(&foundation.origin, "existing", Wants::Written("false")),
    };
    let thickness = match existing {
        Ok(true) => measured_thickness(asking, foundation),
        _ => Ok(()),
    };
    let ages = match existing {
        Ok(false) => ages(asking, foundation),
        _ => Ok(Vec::new()),
    };
    depth?;
    thickness?;
    let (strength, state, existing, ages) = (strength?, state?, existing?, ages?);
    asking.rest_on(&CRACKED);
    let tested = foundation.strength_from.is_some();
    asking.say(|print| sentence(print, foundation, strength, existing, &ages));
    if existing && !tested {
        asking.rest_on(&LEAST);
        if state == ConcreteState::Uncracked {
            return Ok(Outcome::Rule(false));
        }
        return Ok(Outcome::at_most(
            Labeled::new("strength as stated, without a test", strength),
            Labeled::new(
                "strength that a slab nobody tested is taken for",
                Pressure::from_base(LEAST_STRENGTH),
            ),
        ));
    }
    Ok(Outcome::worst(ages).unwrap_or(Outcome::Rule(true)))
}

fn sentence(
    print: Print,
    foundation: &Foundation,
    strength: Pressure,
    existing: bool,
    ages: &[Comparison],
) -> String {
    let name = capitalized(foundation.id.as_str());
    let how = match (existing, &foundation.strength_from) {
        (true, Some(from)) => format!("its {} are known from this: {from}", print.q(strength)),
        (true, None) => format!(
            "nobody has tested it, and {} are written down",
            print.q(strength)
        ),
        (false, _) if ages.is_empty() => {
            format!(
                "it is poured for this job with {}, and no adhesive waits for its age",
                print.q(strength)
            )
        }
        (false, _) if ages.iter().all(Comparison::holds) => format!(
            "it is poured for this job with {}, and old enough when the anchors are set",
            print.q(strength)
        ),
        (false, _) => format!(
            "it is poured for this job with {}, and too young when the anchors are set",
            print.q(strength)
        ),
    };
    format!("{name}: {how}.")
}

/// Its thickness was measured, not read off a drawing.
fn measured_thickness<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<(), Halt> {
    match foundation.depth {
        Some(depth) if depth.known() == Known::Measured => Ok(()),
        _ => asking.lack(
            &foundation.origin,
            "depth",
            Wants::Written("\"6 in, measured\""),
        ),
    }
}

/// Age of the concrete when each set of adhesive anchors goes in, against the age asked for.
fn ages<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Result<Vec<Comparison>, Halt> {
    let glued = |anchor: &&Anchor| {
        anchor.kind == Some(AnchorKind::Adhesive)
            || (is_drilled(anchor) && anchor.least_age.is_some())
    };
    let all: Vec<Result<Comparison, Halt>> = foundation
        .anchor
        .iter()
        .filter(glued)
        .map(|anchor| age(asking, foundation, anchor))
        .collect();
    all.into_iter().collect()
}

fn age<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Comparison, Halt> {
    let poured = day(
        asking,
        &foundation.origin,
        "poured",
        foundation.poured.as_ref(),
    );
    let set = day(asking, &anchor.origin, "set", anchor.set.as_ref());
    let least = asking.read_if_there(&anchor.origin, "least_age", anchor.least_age.as_ref());
    if least.is_none() {
        asking.rest_on(&AGE);
    }
    let days = set?.days_after(poured?);
    Ok(Comparison::at_most(
        Labeled::new(
            "age that the anchor asks of the concrete",
            least.unwrap_or(Time::from_base(DAYS * DAY)),
        ),
        Labeled::new(
            "age of the concrete when it is set",
            Time::from_base(f64::from(days) * DAY),
        ),
    ))
}

/// A day that must be there.
pub(super) fn day<'s>(
    asking: &mut Asking<'s>,
    origin: &'s site::Origin,
    key: &'static str,
    day: Option<&Date>,
) -> Result<Date, Halt> {
    asking.need(origin, key, day, "2026-11-25").copied()
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SLAB: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[foundation]]
        id = "slab"
        depth = "6 in, measured"
        strength = "3000 psi"
        concrete = "cracked"
        existing = true
        strength_from = "rebound hammer, ten readings"
        [[foundation.anchor]]
        holds = "operator"
        kind = "adhesive anchor"
    "#;

    const NEW: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[foundation]]
        id = "pad"
        depth = "36 in"
        strength = "4000 psi"
        concrete = "cracked"
        existing = false
        poured = 2026-03-02
        [[foundation.anchor]]
        holds = "operator"
        kind = "adhesive anchor"
        set = 2026-04-01
        least_age = "21 d"
    "#;

    #[test]
    fn holds_where_it_was_tested_and_measured() {
        let finding = only(&CHECK, SLAB);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_at_thirty_days() {
        let finding = only(&CHECK, NEW);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_young() {
        let young = NEW.replace("2026-04-01", "2026-03-12");
        assert_eq!(only(&CHECK, &young).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_more_is_claimed_than_was_tested() {
        let claimed = SLAB.replace("strength_from = \"rebound hammer, ten readings\"", "");
        assert_eq!(only(&CHECK, &claimed).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_probe_of_its_thickness() {
        let drawn = SLAB.replace(", measured", "");
        assert_eq!(only(&CHECK, &drawn).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn unknown_where_the_age_is_only_recalled() {
        let recalled = NEW.replace("least_age = \"21 d\"", "");
        assert_eq!(only(&CHECK, &recalled).verdict, Verdict::UnknownUntil);
    }
}
