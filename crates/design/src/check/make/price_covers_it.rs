//! Whether the price of each way to do the job covers its cost and the profit wanted, in exact money.
//!
//! Cost is material, own and helpers' hours at the speed on record, the road, hire, fees, risk and overhead. What the finding
//! says can be read by the customer; the figures stand on the margin sheet of `gatewright offer` alone.

use super::{book, note};
use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::offer::{make_the_whole, way};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Offer, OfferOption, Percent, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "make-price-covers-it",
    codes: BOTH,
    leaves_open: "whether the hours are right for this job: write down what each task took",
    concerns: "a gate",
    ask,
};

static SUMS: Source = Source {
    work: "sums of money in whole hundredths, each product rounded once, a half up",
    clause: "",
    evidence: Evidence::Physics,
    seen: "arithmetic",
};

/// How an offer is written.
const OFFER: &str = "[offer]\nexcludes = [\"asphalt\"]\nterms = [\"work begins once the permit is there\"]\ndistance = \"14 mi\"\ndrive = \"25 min\"\ntrips = 9\npayment = [{ when = \"with the order\", share = \"40 %\" }, { when = \"at hand-over\", share = \"60 %\" }]\n\n[[offer.option]]\nid = \"as-drawn\"\nname = \"As drawn\"\nprice = \"18400.00 USD\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.gate.is_empty() {
        return;
    }
    let Some(offer) = site.offer.as_ref().filter(|offer| !offer.option.is_empty()) else {
        round.ask_in_full(About::site(&site.site.origin), |asking| {
            book(asking, site);
            asking.lack(&site.origin, "offer", Wants::Table(OFFER))
        });
        return;
    };
    for option in &offer.option {
        round.ask_in_full(About::new(&option.origin, &option.id), |asking| {
            covers(asking, site, offer, option)
        });
    }
}

fn covers<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    offer: &'s Offer,
    option: &'s OfferOption,
) -> Answer {
    asking.rest_on(&SUMS);
    let there = book(asking, site).is_some();
    let written = written(asking, offer);
    let price = asking.need(
        &option.origin,
        "price",
        option.price.as_ref(),
        "\"18400.00 USD\"",
    );
    let (way, gaps) = way(site, offer, option);
    if there {
        note(asking, &gaps);
    }
    price?;
    if !gaps.is_empty() {
        return Err(Halt);
    }
    let whole = shares_make_the_whole(offer)?;
    written?;
    let name = &option.name;
    asking.note(|_| "Added up: what is bought, own hours and a helper's at the speed on record, the road, hire, fees, risk, overhead, profit. The figures stand on the margin sheet that goes to no customer.".to_owned());
    let Some(least) = way.costs.as_ref().map(|costs| costs.least) else {
        return asking
            .refuse("prices in several currencies cannot be added up; write all of them in one");
    };
    asking.say(|_| match (&way.short, whole) {
        (Some(short), _) => format!("The price of “{name}” is {short} short of {least}, which covers its cost and the profit wanted."),
        (None, false) => format!("The payments of “{name}” do not add up to 100 % of its price."),
        (None, true) => format!("The price of “{name}” covers material, hours, road, fees, risk, overhead and the profit wanted; what is left out stands in the offer."),
    });
    Ok(Outcome::Rule(way.short.is_none() && whole))
}

/// What is left out, and the terms, are in writing.
fn written<'s>(asking: &mut Asking<'s>, offer: &'s Offer) -> Result<(), Halt> {
    let excludes = asking.need(
        &offer.origin,
        "excludes",
        offer.excludes.first(),
        "[\"asphalt\", \"trees\"]",
    );
    let terms = asking.need(
        &offer.origin,
        "terms",
        offer.terms.first(),
        "[\"work begins once the permit is there\"]",
    );
    let payment = asking.need(
        &offer.origin,
        "payment",
        offer.payment.first(),
        "[{ when = \"at hand-over\", share = \"100 %\" }]",
    );
    for part in &offer.payment {
        asking.need(&part.origin, "share", part.share.as_ref(), "\"40 %\"")?;
    }
    excludes.and(terms).map(|_| ()).and(payment.map(|_| ()))
}

fn shares_make_the_whole(offer: &Offer) -> Result<bool, Halt> {
    let shares: Option<Vec<Percent>> = offer.payment.iter().map(|part| part.share).collect();
    shares.map(|shares| make_the_whole(&shares)).ok_or(Halt)
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "eye"
        kind = "through-beam photo-eye"
        [[task]]
        id = "task-eye"
        what = "mount the eye"
        kind = "fix"
        hours = "2 h"
        [offer]
        excludes = ["asphalt"]
        terms = ["30 days"]
        distance = "10 mi"
        drive = "30 min"
        trips = 1
        payment = [{ when = "at the end", share = "100 %" }]
        fee = [{ what = "permit", price = "20.00 USD" }]
        [[offer.option]]
        id = "as-drawn"
        name = "As drawn"
        price = "428.03 USD"
    "#;

    const BOOK: &str = r#"
        [rates]
        hour = "50.00 USD"
        helper_hour = "25.00 USD"
        driving = "0.50 USD"
        driving_distance = "1 mi"
        overhead = "10 %"
        risk = "5 %"
        markup = "12.5 %"
        taxed = "nothing"
        [[item]]
        id = "eye-pair"
        what = "photo-eye, a pair"
        of = ["eye"]
        price = "120.00 USD"
        [[item]]
        id = "tag"
        what = "engraved tag"
        serves_as = "device label"
        price = "9.99 USD"
        pack = 10
        [[worked]]
        kind = "fix"
        planned = "4 h"
        took = "5 h"
    "#;

    // By hand: 120.00 + 1.00 (a tenth of 9.99) of material, 2 h × 5/4 × 50.00 = 125.00, 1 h on the road 50.00, 20 mi 10.00,
    // permit 20.00: 326.00. Risk 16.30, overhead 32.60: 374.90. Profit 46.8625: 46.86. Least price 421.76.
    #[test]
    fn holds_at_the_least_price_and_fails_a_hundredth_below() {
        let at = |price: &str| with_price_book(&CHECK, &SITE.replace("428.03", price), BOOK);
        assert_eq!(
            at("421.76").verdict,
            Verdict::Holds,
            "{}",
            at("421.76").sentence
        );
        let short = at("421.75");
        assert_eq!(short.verdict, Verdict::Fails);
        assert!(
            short.sentence.contains("0.01 USD short"),
            "{}",
            short.sentence
        );
    }

    #[test]
    fn what_holds_says_nothing_of_the_margin() {
        let finding = with_price_book(&CHECK, SITE, BOOK);
        assert_eq!(finding.verdict, Verdict::Holds);
        assert!(!format!("{finding:?}").contains("374.90"));
        assert!(!finding.sentence.contains("USD"), "{}", finding.sentence);
    }

    #[test]
    fn fails_with_payments_that_are_not_the_whole() {
        let part = SITE.replace("100 %", "90 %");
        assert_eq!(with_price_book(&CHECK, &part, BOOK).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_while_a_part_has_no_price() {
        let finding = with_price_book(&CHECK, SITE, &BOOK.replace("price = \"120.00 USD\"", ""));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let no_exclusions = SITE.replace("excludes = [\"asphalt\"]", "");
        assert_eq!(
            with_price_book(&CHECK, &no_exclusions, BOOK).verdict,
            Verdict::UnknownUntil
        );
        let no_offer = SITE.split("[offer]").next().unwrap_or_default();
        assert_eq!(
            with_price_book(&CHECK, no_offer, BOOK).verdict,
            Verdict::UnknownUntil
        );
    }
}
