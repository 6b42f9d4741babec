//! Whether somebody can crawl under a field or a lowest beam, by ISO 13855.

use super::approach::in_millimeters;
use crate::OutOfReach;
use crate::check::not_negative;
use quantity::Length;

quantity::words! {
    /// Edition of ISO 13855.
    pub enum Iso13855Edition {
        /// Edition of 2010.
        Of2010 = "2010",
        /// Edition of 2024.
        Of2024 = "2024",
    }
}

quantity::words! {
    /// Who may come near.
    pub enum PeopleNear {
        /// Adults at work only.
        Workers = "adults at work",
        /// Children as well.
        Children = "children too",
    }
}

quantity::words! {
    /// Whether crawling under has to be counted with.
    pub enum CrawlVerdict {
        /// It has: other means cover the space below.
        Counted = "crawling under counts",
        /// It has not.
        NotCounted = "low enough",
    }
}

formula! {
    /// Whether crawling under a field or its lowest beam has to be counted with, by ISO 13855.
    ///
    /// A gate on a way that the public uses always counts children in.
    pub struct Iso13855CrawlUnder = "iso13855-crawl-under" in Protection {
        /// Edition that the gate is held to.
        edition ("–"): Iso13855Edition,
        /// Who may come near.
        people ("–"): PeopleNear,
        /// Height of the field or of its lowest beam above the ground.
        height ("H"): Length,
    }
    gives
    /// Whether somebody can crawl under.
    pub struct CrawlUnder {
        /// Greatest height at which crawling under is not counted.
        limit ("Hmax"): Length,
        /// What the rule says.
        verdict ("–"): CrawlVerdict,
    }
    formula "2010: Hmax = 300 mm for adults at work, 200 mm where children come\n2024: Hmax = 200 mm"
    valid "Level fields and lowest beams over level ground."
    source { work: "ISO 13855:2010, 6.3; ISO 13855:2024 as reported", clause: "", evidence: Seen, seen: "manuals of light curtains and scanners, and a machine-safety firm's article on the 2024 edition (addresses withheld); the standard itself was not at hand" }
    by crawl_under
}

fn crawl_under(field: &Iso13855CrawlUnder) -> Result<CrawlUnder, OutOfReach> {
    not_negative("height", field.height, "200 mm")?;
    let limit = match (field.edition, field.people) {
        (Iso13855Edition::Of2010, PeopleNear::Workers) => 300.0,
        _ => 200.0,
    };
    let low = in_millimeters(field.height) <= limit + 1e-6;
    Ok(CrawlUnder {
        limit: super::approach::millimeters(limit),
        verdict: if low {
            CrawlVerdict::NotCounted
        } else {
            CrawlVerdict::Counted
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn verdict(edition: Iso13855Edition, people: PeopleNear, height: f64) -> CrawlVerdict {
        let height = Length::from_base(height);
        Iso13855CrawlUnder {
            edition,
            people,
            height,
        }
        .evaluate()
        .unwrap()
        .verdict
    }

    proptest! {
        #[test]
        fn children_and_the_later_edition_never_ask_less(height in 0.0..1.0) {
            let old = verdict(Iso13855Edition::Of2010, PeopleNear::Workers, height);
            if old == CrawlVerdict::Counted {
                for (edition, people) in [
                    (Iso13855Edition::Of2010, PeopleNear::Children),
                    (Iso13855Edition::Of2024, PeopleNear::Workers),
                    (Iso13855Edition::Of2024, PeopleNear::Children),
                ] {
                    prop_assert_eq!(verdict(edition, people, height), CrawlVerdict::Counted);
                }
            }
        }
    }
}
