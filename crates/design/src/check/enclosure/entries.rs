//! Whether an enclosure is still as tight as its label after all its holes.
//!
//! Every cable that comes in is named by an entry, by itself or by its conduit. An entry is rated at least as the box: the
//! same words, or both digits of the code at least as high. Between types of NEMA 250 nothing is taken for better than the
//! same: that is recalled. A gland closes on each of its cables. Cables come from below, or hang in a loop from which water
//! drips. Unused holes have plugs, and a drain has a screen against ants and mice.

use super::coming_in::cables;
use super::rating::{Tight, at_least};
use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::{and, capitalized};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Cable, Drain, Enclosure, EnclosureEntry, EntrySide, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-entries",
    codes: BOTH,
    leaves_open: "the gasket of the door, glands that are not drawn tight, and sealing compound that shrinks",
    concerns: "each enclosure",
    ask,
};

static DIGITS: Source = Source {
    work: "IEC 60529",
    clause: "the first digit is for solids, the second for water",
    evidence: Evidence::Seen,
    seen: "public summaries of the code of protection by enclosures",
};

static TYPES: Source = Source {
    work: "NEMA 250",
    clause: "which type covers which other",
    evidence: Evidence::Memory,
    seen: "recalled",
};

/// How an entry is written.
const ENTRY: &str = "[[enclosure.entry]]\nwhat = \"hubs with sealing compound\"\nrating = \"NEMA 4X\"\nside = \"bottom\"\nconduits = [\"c-01\"]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            entries(asking, site, enclosure)
        });
    }
}

fn entries<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let mut rules = Rules::default();
    let wanted = asking.need(
        &enclosure.origin,
        "rating",
        enclosure.rating.as_ref(),
        "\"NEMA 4X\"",
    );
    let plugged = need!(asking, enclosure.tightness?.holes_plugged, "true");
    let drain = pick!(asking, enclosure.tightness?.drain);
    let mut whole = Ok(());
    for entry in &enclosure.entry {
        let found = one(asking, site, entry, &mut rules);
        let rating = asking.need(
            &entry.origin,
            "rating",
            entry.rating.as_ref(),
            "\"NEMA 4X\"",
        );
        if let (Ok(wanted), Ok(rating)) = (&wanted, &rating) {
            rated(
                asking,
                (entry, rating.as_ref()),
                wanted.as_ref(),
                &mut rules,
            );
        }
        whole = whole.and(found).and(rating.map(drop));
    }
    let named = every_cable(asking, site, enclosure);
    let (plugged, drain, named) = (plugged?, drain?, named?);
    let wanted = wanted?;
    whole?;
    rules.keep(*plugged, "Unused holes are open: plug them.");
    rules.keep(
        drain != Drain::Open,
        "Its drain is an open hole: fit a screen against ants and mice.",
    );
    asking.say(|_| {
        rules.says(|| {
            let name = capitalized(enclosure.id.as_str());
            match named {
                1 => format!("{name}: one cable comes in, through an entry as tight as {wanted}."),
                _ => format!(
                    "{name}: {named} cables come in, each through an entry as tight as {wanted}."
                ),
            }
        })
    });
    Ok(rules.outcome())
}

/// One sort of entry: its side, and the cables on which its glands close.
fn one<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    entry: &'s EnclosureEntry,
    rules: &mut Rules,
) -> Result<(), Halt> {
    let side = pick!(asking, entry.side);
    let looped = match side {
        Ok(EntrySide::Bottom) | Err(_) => Ok(true),
        Ok(_) => need!(asking, entry.drip_loop, "true").copied(),
    };
    let glands = if entry.cables.is_empty() {
        Ok(())
    } else {
        glands(asking, site, entry, rules)
    };
    side?;
    rules.keep(
        looped?,
        &format!(
            "Water runs in along the cables at {}: lead them from below, or hang a loop.",
            entry.what
        ),
    );
    glands
}

fn glands<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    entry: &'s EnclosureEntry,
    rules: &mut Rules,
) -> Result<(), Halt> {
    let smallest = read!(asking, entry.smallest);
    let largest = read!(asking, entry.largest);
    let (smallest, largest) = (smallest?, largest?);
    for name in &entry.cables {
        let Some(cable) = site
            .cable
            .iter()
            .find(|cable: &&'s Cable| cable.id == *name)
        else {
            continue;
        };
        let diameter = read!(asking, cable.diameter)?;
        rules.compare(Comparison::at_most(
            Labeled::new("thinnest cable of the gland", smallest),
            Labeled::new("diameter of the cable", diameter),
        ));
        rules.compare(Comparison::at_most(
            Labeled::new("diameter of the cable", diameter),
            Labeled::new("thickest cable of the gland", largest),
        ));
    }
    Ok(())
}

/// The entry is rated at least as the box.
fn rated(
    asking: &mut Asking<'_>,
    (entry, rating): (&EnclosureEntry, &str),
    wanted: &str,
    rules: &mut Rules,
) {
    match at_least(rating, wanted) {
        Tight::Same => {}
        Tight::ByDigits(kept) => {
            asking.rest_on(&DIGITS);
            rules.keep(
                kept,
                &format!(
                    "{} is rated {rating}, and the box {wanted}.",
                    capitalized(entry.what.as_ref())
                ),
            );
        }
        Tight::ByTypes => asking.rest_on(&TYPES),
    }
}

/// Every cable that comes in is named by an entry: how many they are.
fn every_cable<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<usize, Halt> {
    let named = |cable: &Cable| {
        enclosure.entry.iter().any(|entry| {
            entry.cables.contains(&cable.id)
                || cable
                    .route
                    .iter()
                    .any(|conduit| entry.conduits.contains(conduit))
        })
    };
    let coming: Vec<&Cable> = cables(site, enclosure).collect();
    let unnamed: Vec<String> = coming
        .iter()
        .filter(|cable| !named(cable))
        .map(|cable| cable.id.to_string())
        .collect();
    if unnamed.is_empty() {
        return Ok(coming.len());
    }
    asking.note(|_| format!("No entry is named for {}.", and(&unnamed)));
    asking.lack(&enclosure.origin, "entry", Wants::Table(ENTRY))
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
        [[enclosure]]
        id = "box"
        rating = "IP65"
        [enclosure.tightness]
        holes_plugged = true
        drain = "screened fitting"
        [[enclosure.entry]]
        what = "gland"
        rating = "IP66"
        side = "bottom"
        cables = ["w-01"]
        smallest = "0.2 in"
        largest = "0.4 in"
        [[device]]
        id = "reader"
        kind = "reader"
        [[cable]]
        id = "w-01"
        from = "box"
        to = "reader"
        diameter = "0.3 in"
    "#;

    #[test]
    fn holds_as_tight_as_the_box() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_for_each_way_in() {
        for (from, to) in [
            ("rating = \"IP66\"", "rating = \"IP54\""),
            ("side = \"bottom\"", "side = \"top\"\ndrip_loop = false"),
            ("diameter = \"0.3 in\"", "diameter = \"0.5 in\""),
            ("diameter = \"0.3 in\"", "diameter = \"0.1 in\""),
            ("holes_plugged = true", "holes_plugged = false"),
            ("screened fitting", "open hole"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_for_a_cable_that_no_entry_names_and_for_another_type() {
        let finding = only(&CHECK, &SITE.replace("cables = [\"w-01\"]", "cables = []"));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let types = SITE.replace("IP65", "NEMA 3R").replace("IP66", "NEMA 4X");
        assert_eq!(only(&CHECK, &types).verdict, Verdict::UnknownUntil);
    }
}
