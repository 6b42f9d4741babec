//! Who works the gates, who comes near them, and whether class and use type fit what was found.
//!
//! The list of people is never shorter than adults and children: they come to every gate. In the United States the usage
//! class follows the place and the homes that share the gate, and general access may always be taken in its stead; in
//! Europe the use type follows who works the gate and whether others come near.

use crate::asking::{Asking, Wants, pick};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::protection::{GatePlace, Ul325UsageClass};
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{CodeBasis, People, PersonKind, PlaceServed, Site, UsageClass, UseType};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-use-and-people",
    codes: BOTH,
    leaves_open: "what has changed since the day on which it was last asked: ask again at every visit",
    concerns: "the site",
    ask,
};

static USE_TYPES: Source = Source {
    work: "EN 12453",
    clause: "use types 1 to 3: who works the gate, and who may be near",
    evidence: Evidence::Seen,
    seen: "HSE safety bulletin FOD 7-2010 and a Swedish inspectors' ruling of 2017; the standard itself was not at hand",
};

static EVERYWHERE: Source = Source {
    work: "adults and children are expected at every gate",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as accident reports on gates teach",
};

/// How people are written.
const PEOPLE: &str = "[{ who = \"children\", how = \"on their way to the beach\", operates = false }, { who = \"adults\", operates = true }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.gate.is_empty() {
        return;
    }
    let about = About::site(&site.site.origin);
    round.ask(about, |asking| use_and_people(asking, site));
}

fn use_and_people<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    let of = &site.site;
    asking.rest_on(&EVERYWHERE);
    let property = of.property.as_ref();
    let property = asking.need(
        &of.origin,
        "property",
        property,
        "\"boatyard, public by day\"",
    );
    let around = of.surroundings.as_ref();
    let around = asking.need(
        &of.origin,
        "surroundings",
        around,
        "\"school 300 ft east; footpath along the fence\"",
    );
    let asked = asking.need(&of.origin, "use_asked", of.use_asked.as_ref(), "2026-06-01");
    let people = asking.need(&site.origin, "people", site.people.first(), PEOPLE);
    let working = working(asking, &site.people);
    let wrong = match of.code_basis {
        CodeBasis::Us => class(asking, site),
        CodeBasis::Eu => use_type(asking, site),
    };
    let (_, around, asked, _) = (property?, around?, asked?, people?);
    let (working, wrong) = (working?, wrong?);
    let absent = absent(&site.people);
    asking.say(|_| {
        let mut said = vec![format!(
            "Worked by {}; also expected: {}. Around it: {around}. Last asked {asked}.",
            none_or(&working),
            none_or(&others(&site.people))
        )];
        if !absent.is_empty() {
            said.push(format!("The list leaves out {}.", and(&absent)));
        }
        said.extend(wrong.clone());
        said.join(" ")
    });
    Ok(Outcome::Rule(absent.is_empty() && wrong.is_none()))
}

fn none_or(words: &[String]) -> String {
    if words.is_empty() {
        "nobody".to_owned()
    } else {
        and(words)
    }
}

/// Those who work a gate; each entry has to say whether they do.
fn working<'s>(asking: &mut Asking<'s>, people: &'s [People]) -> Result<Vec<String>, Halt> {
    let mut found = Ok(Vec::new());
    for entry in people {
        match entry.operates {
            None => found = asking.lack(&entry.origin, "operates", Wants::Written("false")),
            Some(true) => {
                if let Ok(list) = &mut found {
                    list.push(entry.who.word().to_owned());
                }
            }
            Some(false) => {}
        }
    }
    found
}

/// Those who only come near.
fn others(people: &[People]) -> Vec<String> {
    people
        .iter()
        .filter(|entry| entry.operates == Some(false))
        .map(|entry| entry.who.word().to_owned())
        .collect()
}

/// Those whom the list leaves out though they come to every gate.
fn absent(people: &[People]) -> Vec<String> {
    let has = |kinds: &[PersonKind]| people.iter().any(|entry| kinds.contains(&entry.who));
    let adults = has(&[PersonKind::Adults, PersonKind::TrainedAdults]);
    [
        ("adults", adults),
        ("children", has(&[PersonKind::Children])),
    ]
    .into_iter()
    .filter(|(_, there)| !there)
    .map(|(who, _)| who.to_owned())
    .collect()
}

/// What is wrong with the usage class; nothing where it fits.
fn class<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Option<String>, Halt> {
    let of = &site.site;
    let stated = pick!(asking, of.usage_class);
    let serves = pick!(asking, of.serves);
    let dwellings = if of.serves == Some(PlaceServed::Homes) {
        pick!(asking, of.dwellings)
    } else {
        Ok(of.dwellings.unwrap_or(0))
    };
    let (stated, serves, dwellings) = (stated?, serves?, dwellings?);
    let place = match serves {
        PlaceServed::Homes => GatePlace::Homes,
        PlaceServed::Public => GatePlace::Public,
        PlaceServed::Industrial => GatePlace::Industrial,
        PlaceServed::Guarded => GatePlace::Guarded,
    };
    let found = asking.work(&Ul325UsageClass { place, dwellings })?.class;
    let fits = found.word() == stated.word() || stated == UsageClass::ClassII;
    Ok((!fits).then(|| {
        format!(
            "Usage class {} is written, and a gate that serves {} is of class {}.",
            stated.word(),
            serves.word(),
            found.word()
        )
    }))
}

/// What is wrong with the use type; nothing where it fits.
fn use_type<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Option<String>, Halt> {
    asking.rest_on(&USE_TYPES);
    let of = &site.site;
    let stated = pick!(asking, of.use_type)?;
    let strangers = |entry: &&People| entry.who != PersonKind::TrainedAdults;
    let untrained = site
        .people
        .iter()
        .filter(strangers)
        .any(|entry| entry.operates == Some(true));
    let near = site.people.iter().filter(strangers).count() > 0;
    let (least, why) = match (untrained, near) {
        (true, _) => (UseType::Untrained, "people who are not trained work it"),
        (false, true) => (
            UseType::TrainedInPublic,
            "people who are not trained come near it",
        ),
        (false, false) => (UseType::Trained, "only trained people come near it"),
    };
    Ok((stated < least).then(|| {
        format!(
            "Use type {} is written, and {why}: type {}.",
            stated.word(),
            least.word()
        )
    }))
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
        usage_class = "III"
        use_type = "2"
        property = "boatyard"
        serves = "industrial, not serving the public"
        surroundings = "path along the fence"
        use_asked = 2026-05-01
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[people]]
        who = "trained adults"
        operates = true
        [[people]]
        who = "children"
        operates = false
    "#;

    #[test]
    fn holds_with_everybody_on_the_list() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let european = only(&CHECK, &SITE.replace("\"us\"", "\"eu\""));
        assert_eq!(european.verdict, Verdict::Holds, "{}", european.sentence);
        let general = only(&CHECK, &SITE.replace("\"III\"", "\"II\""));
        assert_eq!(general.verdict, Verdict::Holds, "{}", general.sentence);
    }

    #[test]
    fn fails_without_children() {
        let finding = only(&CHECK, &SITE.replace("\"children\"", "\"cyclists\""));
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("leaves out children"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_a_class_or_type_for_fewer_people() {
        let public = SITE.replace("industrial, not serving the public", "serving the public");
        assert_eq!(only(&CHECK, &public).verdict, Verdict::Fails);
        let homes = SITE.replace(
            "\"industrial, not serving the public\"",
            "\"homes\"\n        dwellings = 6",
        );
        assert_eq!(
            only(&CHECK, &homes.replace("\"III\"", "\"I\"")).verdict,
            Verdict::Fails
        );
        assert_eq!(
            only(&CHECK, &homes.replace("\"III\"", "\"II\"")).verdict,
            Verdict::Holds
        );
        let european = SITE.replace("\"us\"", "\"eu\"");
        let alone = european.replace("use_type = \"2\"", "use_type = \"1\"");
        assert_eq!(only(&CHECK, &alone).verdict, Verdict::Fails);
        let strangers = european.replace("\"trained adults\"", "\"adults\"");
        assert_eq!(only(&CHECK, &strangers).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_date_surroundings_and_who_works_it() {
        let bare = SITE
            .replace("surroundings = \"path along the fence\"", "")
            .replace("use_asked = 2026-05-01", "")
            .replace("operates = true", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }
}
