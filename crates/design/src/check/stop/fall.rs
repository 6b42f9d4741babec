//! Whether a leaf stays up when one hinge, wheel, bracket, rope or weld lets go.
//!
//! No arithmetic answers this: somebody has looked at each part that carries the leaf and found a second path for its
//! load, and the site says by what. A lean that the leaf can still take is held against the 45 degrees of ASTM F2200.

use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Angle, Quantity as _};
use site::{CodeBasis, FallProtection, Gate, GateKind, Site};
use std::f64::consts::FRAC_PI_4;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "stop-fall-single-fault",
    codes: BOTH,
    leaves_open: "how strong the second path is, and whether it is still there: touch and photograph each catch and tether at every visit",
    concerns: "each gate",
    ask,
};

static NO_FALL: Source = Source {
    work: "EN 12453:2017+A1:2021 and EN 12604: no derailing or falling over because of a single fault",
    clause: "",
    evidence: Evidence::Seen,
    seen: "news of a door and gate trade federation on both standards: https://www.dhfonline.org.uk/news/",
};

static LEAN: Source = Source {
    work: "ASTM F2200, reprints of 2005 to 2018",
    clause: "general requirements: loose from its hardware, a gate falls no more than 45 degrees from vertical",
    evidence: Evidence::Seen,
    seen: "installation manuals of gate operators that reprint it; addresses withheld, they carry company names",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            fall(asking, site, gate)
        });
    }
}

fn fall<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let protection = asking.need(&gate.origin, "fall", gate.fall.as_ref(), WRITE)?;
    let holds = asking.need(
        &protection.origin,
        "holds_after_one_failure",
        protection.holds_after_one_failure.as_ref(),
        "true",
    );
    let how = asking.need(
        &protection.origin,
        "how",
        protection.how.as_ref(),
        "\"tethers of 1/4 in wire rope at both top corners\"",
    );
    let lean = lean(asking, site, gate, protection);
    let holds = *holds?;
    asking.rest_on(&NO_FALL);
    if !holds {
        asking.say(|_| {
            format!(
                "One part that lets go brings gate {} down. Keep people away and do not move it, by hand or by drive, until a \
                 second part carries it: safety catches, tethers or a second guide.",
                gate.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let (how, lean) = (how?, lean?);
    asking.say(|print| {
        let leans = lean.map_or_else(String::new, |lean| {
            format!(
                " Loose from its hardware it leans {} at most.",
                print.q(lean)
            )
        });
        format!(
            "When one part that carries gate {} lets go, this holds it: {how}.{leans}",
            gate.id
        )
    });
    let Some(lean) = lean else {
        return Ok(Outcome::Rule(true));
    };
    asking.rest_on(&LEAN);
    Ok(Outcome::at_most(
        Labeled::new("lean when loose from its hardware", lean),
        Labeled::new("lean that is allowed", Angle::from_base(FRAC_PI_4)),
    ))
}

/// How it is written.
const WRITE: &str = "{ holds_after_one_failure = true, how = \"tethers at both top corners\", greatest_lean = \"10°\" }";

/// How far the leaf can lean: asked where ASTM F2200 holds and the leaf stands upright; else taken where it is known.
fn lean<'s>(
    asking: &mut Asking<'s>,
    site: &Site,
    gate: &Gate,
    protection: &'s FallProtection,
) -> Result<Option<Angle>, crate::outcome::Halt> {
    let asked = site.site.code_basis == CodeBasis::Us && gate.kind != GateKind::BarrierArm;
    if asked || protection.greatest_lean.is_some() {
        return read!(asking, protection.greatest_lean).map(Some);
    }
    Ok(None)
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
        [gate.fall]
        holds_after_one_failure = true
        how = "a second pair of guides and a hook under the rail at each end"
        greatest_lean = "12° ± 3°"
    "#;

    #[test]
    fn holds_with_a_second_path() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("a hook under the rail"),
            "{}",
            finding.sentence
        );
        assert!((finding.capacity.unwrap().value.unwrap().to_degrees() - 45.0).abs() < 1e-9);
    }

    #[test]
    fn fails_without_a_second_path_or_with_too_much_lean() {
        let falls = only(&CHECK, &SITE.replace("= true", "= false"));
        assert_eq!(falls.verdict, Verdict::Fails);
        assert!(
            falls.sentence.contains("do not move it"),
            "{}",
            falls.sentence
        );
        let leans = only(&CHECK, &SITE.replace("12°", "50°"));
        assert_eq!(leans.verdict, Verdict::Fails, "{}", leans.sentence);
    }

    #[test]
    fn unknown_until_somebody_has_looked() {
        let bare = SITE.split("[gate.fall]").next().unwrap();
        assert_eq!(only(&CHECK, bare).verdict, Verdict::UnknownUntil);
        let no_lean = SITE.replace("greatest_lean = \"12° ± 3°\"", "");
        let finding = only(&CHECK, &no_lean);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }

    #[test]
    fn an_arm_has_no_lean_to_ask_for() {
        let arm = SITE
            .replace("track-slide", "barrier-arm")
            .replace("greatest_lean = \"12° ± 3°\"", "");
        assert_eq!(only(&CHECK, &arm).verdict, Verdict::Holds);
    }
}
