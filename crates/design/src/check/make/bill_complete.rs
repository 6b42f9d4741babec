//! Whether everything that a site is built of is on the van or on its way, and there before it is needed.
//!
//! The bill counts the things of the site and what fixes, ends, seals and labels them: concrete by volume, anchors with
//! their adhesive, conduit with bends, couplings, ends, seals, cord and tape, two ends of each cable with ferrules, glands or
//! plugs and labels. Each line needs an entry in the price book with a supplier and a lead time.

use super::{book, note};
use crate::asking::Asking;
use crate::bill::{Line, LineState, billed};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::{Evidence, Source};
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "make-bill-complete",
    codes: BOTH,
    leaves_open: "guards and fences, bonding conductors, remote controls, and small stuff that no thing of the site stands for: list them as [[material]]",
    concerns: "a gate",
    ask,
};

/// What each end of a cable, each conduit and each foundation takes.
static COUNTING: Source = Source {
    work: "counting for a bill: two labels and two glands or plugs a cable, a ferrule for each end of a stranded core, two ends and two seals a conduit, a coupling more than it has bends, a quarter more adhesive than the gap takes",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as estimators count",
};

/// Names in a sentence.
const SHOWN: usize = 4;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        round.ask_in_full(About::site(&site.site.origin), |asking| {
            complete(asking, site)
        });
    }
}

fn complete<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&COUNTING);
    book(asking, site).ok_or(Halt)?;
    let found = billed(site, &[], &[]);
    let lines = &found.bill.lines;
    for line in lines {
        asking.note(|_| in_words(line));
    }
    note(asking, &found.to_buy);
    let late = names(lines, &[LineState::Late, LineState::Short]);
    let open = names(lines, &[LineState::ToOrder, LineState::Unknown]);
    let covered = lines.len() - late.len() - open.len();
    let all = lines.len();
    asking.say(|_| {
        let lines = counted(all, "line");
        let mut said = vec![format!(
            "{covered} of {lines} of the bill are on the van or ordered to be there in time"
        )];
        if !late.is_empty() {
            said.push(format!("too late or too few: {}", listed(&late)));
        }
        if !open.is_empty() {
            said.push(format!("not yet bought: {}", listed(&open)));
        }
        said.join("; ") + "."
    });
    if late.is_empty() && !found.to_buy.is_empty() {
        return Err(Halt);
    }
    if late.is_empty() && !open.is_empty() {
        return asking.wait_for(format!(
            "order these and write [[ordered]]: {}",
            listed(&open)
        ));
    }
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    Ok(Outcome::at_most(
        Labeled::new("lines of the bill", count(all)),
        Labeled::new("lines on the van or on their way in time", count(covered)),
    ))
}

fn names<'l>(lines: &'l [Line], states: &[LineState]) -> Vec<&'l str> {
    let of = |line: &&Line| states.contains(&line.state);
    lines
        .iter()
        .filter(of)
        .map(|line| line.what.as_str())
        .collect()
}

fn listed(names: &[&str]) -> String {
    let shown = names.get(..SHOWN).unwrap_or(names).join(", ");
    match names.len().saturating_sub(SHOWN) {
        0 => shown,
        more => format!("{shown} and {more} more"),
    }
}

/// A line of the bill, as a line of the working.
fn in_words(line: &Line) -> String {
    let pieces = line.pieces.map_or_else(
        || "how many is not known".to_owned(),
        |pieces| pieces.to_string(),
    );
    let stands = match line.state {
        LineState::OnVan => "on the van".to_owned(),
        LineState::Ordered => format!(
            "ordered, comes {}",
            line.due.as_deref().unwrap_or("in time")
        ),
        LineState::ToOrder => "still to be ordered".to_owned(),
        LineState::Late => format!(
            "comes {}, needed {}",
            line.due.as_deref().unwrap_or("later"),
            line.needed.as_deref().unwrap_or("before")
        ),
        LineState::Short => "less is ordered than is needed".to_owned(),
        LineState::Unknown => "not known where from or when".to_owned(),
    };
    format!("{}: {pieces}; {stands}.", line.what)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Verdict;
    use crate::check::testing::with_price_book;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        price_book = "price-book.toml"
        installed = 2026-06-15
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "eye"
        kind = "through-beam photo-eye"
        [[foundation]]
        id = "pad"
        length = "3 ft"
        width = "2 ft"
        depth = "2 ft"
        poured = 2026-06-01
        [[ordered]]
        items = ["eye-pair", "concrete-80"]
        due = 2026-05-28
    "#;

    const BOOK: &str = r#"
        [[item]]
        id = "eye-pair"
        what = "photo-eye, a pair"
        of = ["eye"]
        supplier = "gate parts dealer"
        lead_time = "6 days"
        [[item]]
        id = "concrete-80"
        what = "concrete mix, 80 lb"
        serves_as = "concrete"
        volume = "0.6 ft³"
        waste = "10 %"
        supplier = "builders' merchant"
        lead_time = "1 day"
        [[item]]
        id = "tag"
        what = "engraved tag"
        serves_as = "device label"
        supplier = "label printer"
        lead_time = "4 days"
        on_van = 20
    "#;

    #[test]
    fn holds_with_all_of_it_on_the_van_or_ordered_in_time() {
        let finding = with_price_book(&CHECK, SITE, BOOK);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 12 ft³ and a tenth more is 13.2 ft³: 22 bags of 0.6 ft³.
        let working = format!("{:?}", finding.working);
        assert!(working.contains("concrete mix, 80 lb: 22;"), "{working}");
    }

    #[test]
    fn fails_where_concrete_comes_after_the_pour() {
        let late = SITE.replace("due = 2026-05-28", "due = 2026-06-03");
        let finding = with_price_book(&CHECK, &late, BOOK);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("concrete mix, 80 lb"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_fewer_are_ordered() {
        let few = SITE.replace("due =", "count = 9\n        due =");
        assert_eq!(with_price_book(&CHECK, &few, BOOK).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_an_entry_or_an_order() {
        let finding = with_price_book(&CHECK, SITE, &BOOK.replace("of = [\"eye\"]", ""));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let none = SITE.replace("\"eye-pair\", ", "");
        assert_eq!(
            with_price_book(&CHECK, &none, BOOK).verdict,
            Verdict::UnknownUntil
        );
        let bare = SITE.replace("price_book = \"price-book.toml\"", "");
        assert_eq!(
            with_price_book(&CHECK, &bare, BOOK).verdict,
            Verdict::UnknownUntil
        );
    }
}
