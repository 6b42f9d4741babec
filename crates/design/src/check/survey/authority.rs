//! Which codes count here, in which editions, and who may approve or must do which part of the work.
//!
//! A clause counts only in the edition in force for this gate. Rules of protection follow the day on which the operator
//! was made, and the day of installation; which of the two is for the authority to say, so an edition older than both
//! is what this check refuses. An edition of the other code basis is refused too.

use crate::asking::{Asking, Wants, pick};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{CodeBasis, Date, ProtectionCode, Site, WindCode};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-authority",
    codes: BOTH,
    leaves_open: "whether the authority has adopted these editions, and what a permit here costs and takes",
    concerns: "the site",
    ask,
};

/// Dates of effect of UL 325.
static DATES: Source = Source {
    work: "UL 325",
    clause: "dates of effect, January 2016 and August 2018",
    evidence: Evidence::Seen,
    seen: "trade summaries of the revisions; the standard itself was not at hand",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let about = About::site(&site.site.origin);
    round.ask(about, |asking| authority(asking, site));
}

fn authority<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    let of = &site.site;
    let authority = asking.need(&of.origin, "authority", of.authority.as_ref(), AUTHORITY);
    let property = asking.need(
        &of.origin,
        "property",
        of.property.as_ref(),
        "\"boatyard, public by day\"",
    );
    let permits = of.permits.first();
    let permits = asking.need(
        &of.origin,
        "permits",
        permits,
        "[\"electrical permit, licensed electrician\"]",
    );
    let wind = pick!(asking, of.wind_code);
    let protection = pick!(asking, of.protection_code);
    let installed = asking.need(&of.origin, "installed", of.installed.as_ref(), "2026-11-25");
    let made = made(asking, site);
    let (authority, _, _, wind, protection, installed) = (
        authority?,
        property?,
        permits?,
        wind?,
        protection?,
        installed?,
    );
    let made = made?;
    asking.rest_on(&DATES);
    let earlier = made.map_or(*installed, |made| made.min(*installed));
    let fault = fault(of.code_basis, wind, protection, earlier);
    asking.say(|_| match fault {
        None => format!(
            "Who decides here: {authority}. Held to {wind} and {protection}, for a gate installed {installed}. \
             Permits and licensed work: {}.",
            listed(&of.permits)
        ),
        Some(fault) => fault.to_owned(),
    });
    Ok(Outcome::Rule(fault.is_none()))
}

const AUTHORITY: &str = "\"county building department\"";

/// The youngest day on which an operator was made; nothing where the site has no operator.
fn made<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Option<Date>, crate::outcome::Halt> {
    let mut youngest = None;
    let mut whole = true;
    for operator in &site.operator {
        if let Some(made) = operator.made {
            youngest = youngest.max(Some(made));
        } else {
            whole = false;
            let _ = asking.lack::<()>(&operator.origin, "made", Wants::Written("2026-06-01"));
        }
    }
    if whole {
        Ok(youngest)
    } else {
        Err(crate::outcome::Halt)
    }
}

/// What is wrong with the editions.
fn fault(
    basis: CodeBasis,
    wind: WindCode,
    protection: ProtectionCode,
    earlier: Date,
) -> Option<&'static str> {
    let european_wind = wind == WindCode::En1991;
    let european_protection = protection == ProtectionCode::En12453;
    match basis {
        CodeBasis::Us if european_wind => {
            Some("The wind code is European, and the code basis is that of the United States.")
        }
        CodeBasis::Us if european_protection => Some(
            "The protection code is European, and the code basis is that of the United States.",
        ),
        CodeBasis::Eu if !european_wind => {
            Some("The wind code is that of the United States, and the code basis is European.")
        }
        CodeBasis::Eu if !european_protection => Some(
            "The protection code is that of the United States, and the code basis is European.",
        ),
        _ if replaced_before(protection, earlier) => Some(
            "The edition of UL 325 named was replaced before the operator was made and before it was installed: take the one in force.",
        ),
        _ => None,
    }
}

/// The edition was no longer in force on that day.
fn replaced_before(code: ProtectionCode, day: Date) -> bool {
    let replaced = match code {
        ProtectionCode::Ul325Before2016 => Date::new(2016, 1, 1),
        ProtectionCode::Ul325From2016 => Date::new(2018, 8, 1),
        ProtectionCode::Ul325From2018 | ProtectionCode::En12453 => None,
    };
    replaced.is_some_and(|replaced| day >= replaced)
}

fn listed(texts: &[site::Text]) -> String {
    let texts: Vec<&str> = texts.iter().map(site::Text::as_str).collect();
    texts.join("; ")
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
        authority = "county building department"
        property = "boatyard"
        permits = ["electrical permit"]
        wind_code = "ASCE 7-22"
        protection_code = "UL 325 from 2018"
        installed = 2026-05-04
    "#;

    #[test]
    fn holds_with_editions_in_force() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding
                .sentence
                .starts_with("Who decides here: county building department.")
        );
    }

    #[test]
    fn fails_with_an_edition_replaced_before() {
        let old = SITE.replace("UL 325 from 2018", "UL 325 from 2016");
        assert_eq!(only(&CHECK, &old).verdict, Verdict::Fails);
        let european = SITE.replace("ASCE 7-22", "EN 1991-1-4");
        assert_eq!(only(&CHECK, &european).verdict, Verdict::Fails);
        let in_its_time = old.replace("2026-05-04", "2017-05-04");
        let made_in_its_time = format!(
            "{old}\n[[gate]]\nid = \"g\"\nkind = \"track-slide\"\n[[operator]]\nid = \"d\"\ngate = \"g\"\nmade = 2017-05-04\n"
        );
        assert_eq!(only(&CHECK, &made_in_its_time).verdict, Verdict::Holds);
        assert_eq!(only(&CHECK, &in_its_time).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_lists_every_missing_fact() {
        let bare = "[site]\nname = \"Test yard\"\ncode_basis = \"us\"";
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let written: Vec<&str> = finding
            .missing
            .iter()
            .map(|missing| missing.write.as_str())
            .collect();
        assert!(
            written.contains(&"wind_code = \"ASCE 7-16\""),
            "{written:?}"
        );
        assert_eq!(finding.missing.len(), 6);
    }
}
