//! Whether each hole was drilled, cleaned, filled, cured and tightened as the sheet of the anchor asks.
//!
//! Everything comes from the installation sheet of the product and from the day: hole, cleaning, temperature of the
//! concrete, time to harden, torque, and the day up to which the adhesive is good. Load on a rod whose adhesive is still
//! soft lets go without warning.

use super::concrete_known::day;
use super::fits::is_drilled;
use super::glue::{order, ordered};
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Temperature, Time};
use site::{Anchor, AnchorKind, Cure, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-hole-and-cure",
    codes: BOTH,
    leaves_open: "the certificate of whoever sets adhesive anchors level or overhead under a lasting pull",
    concerns: "each set of anchors in drilled holes",
    ask,
};

static DRILLED: Source = Source {
    work: "a masonry bit drills within 1/32 in of its size; a torque wrench is read within a tenth",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "held against the sheet of the anchor",
};

/// What a hole may differ from the sheet, in meters, and how far a torque may be passed.
const BIT: f64 = 0.000_794;
const WRENCH: f64 = 1.1;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for foundation in &site.foundation {
        for (index, anchor) in foundation.anchor.iter().enumerate() {
            if is_drilled(anchor) {
                let about = About::one_of(&anchor.origin, &foundation.id, index);
                round.ask(about, |asking| set_right(asking, foundation, anchor));
            }
        }
    }
}

fn set_right<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Answer {
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&DRILLED);
    let glued = anchor.kind == Some(AnchorKind::Adhesive);
    let hole = hole(asking, anchor);
    let cleaned = cleaned(asking, anchor, glued);
    let torque = torque(asking, anchor);
    let hardened = if glued {
        hardened(asking, anchor).map(Some)
    } else {
        Ok(None)
    };
    let in_date = if glued {
        in_date(asking, anchor)
    } else {
        Ok(true)
    };
    let order = if glued { order(asking, anchor)? } else { None };
    let (mut all, cleaned, in_date) = (hole?, cleaned?, in_date?);
    all.extend(torque?);
    all.extend(hardened?.into_iter().flatten());
    let wrong = all.iter().any(|one| !one.holds()) || !cleaned || !in_date;
    asking.say(|print| {
        let what = match (cleaned, in_date, wrong) {
            (false, ..) => "not every hole was cleaned as the sheet asks",
            (_, false, _) => "the adhesive was past its day when it was used",
            (_, _, true) => "something was not done as the sheet asks",
            _ => "hole, cleaning and torque are as the sheet asks, and nothing was loaded too soon",
        };
        format!(
            "{} ({}): {what}{}.",
            capitalized(foundation.id.as_str()),
            anchor.holds,
            ordered(print, order)
        )
    });
    if !cleaned || !in_date {
        return Ok(Outcome::Rule(false));
    }
    Outcome::worst(all).ok_or(Halt)
}

/// Diameter and depth of the hole against the sheet.
fn hole<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Vec<Comparison>, Halt> {
    let diameter = read!(asking, anchor.hole_diameter);
    let depth = read!(asking, anchor.hole_depth);
    let sheet_diameter = read!(asking, anchor.sheet_diameter);
    let sheet_depth = read!(asking, anchor.sheet_depth);
    let differs = (diameter? - sheet_diameter?).base().abs();
    Ok(vec![
        Comparison::at_most(
            Labeled::new(
                "what the hole differs from the sheet",
                Length::from_base(differs),
            ),
            Labeled::new("what a bit may differ", Length::from_base(BIT)),
        ),
        Comparison::at_most(
            Labeled::new("depth of hole that the sheet asks for", sheet_depth?),
            Labeled::new("depth of the hole", depth?),
        ),
    ])
}

/// Every step of the sheet was done on every hole.
fn cleaned<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor, glued: bool) -> Result<bool, Halt> {
    let steps = if glued && anchor.cleaning.is_empty() {
        let steps = Wants::Written("[\"blow out twice\", \"brush twice\", \"blow out twice\"]");
        asking.lack(&anchor.origin, "cleaning", steps)
    } else {
        Ok(())
    };
    let done = match anchor.cleaned {
        Some(done) => Ok(done),
        None => asking.lack(&anchor.origin, "cleaned", Wants::Written("true")),
    };
    steps?;
    done
}

/// The torque reached is that of the sheet, and not much more.
fn torque<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Vec<Comparison>, Halt> {
    let asked = read!(asking, anchor.torque);
    let reached = read!(asking, anchor.torque_reached);
    let (asked, reached) = (asked?, reached?);
    Ok(vec![
        Comparison::at_most(
            Labeled::new("torque that the sheet asks for", asked),
            Labeled::new("torque reached", reached),
        ),
        Comparison::at_most(
            Labeled::new("torque reached", reached),
            Labeled::new(
                "torque of the sheet with what a wrench may be off",
                asked * WRENCH,
            ),
        ),
    ])
}

/// Temperature and time against the table of the sheet.
fn hardened<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Vec<Comparison>, Halt> {
    let temperature = read!(asking, anchor.concrete_temperature);
    let loaded = read!(asking, anchor.loaded_after);
    let table = table(asking, anchor);
    let (temperature, loaded, table) = (temperature?, loaded?, table?);
    let coldest = table
        .iter()
        .map(|line| line.0.base())
        .fold(f64::INFINITY, f64::min);
    let line = table
        .iter()
        .filter(|line| line.0 <= temperature)
        .max_by(|one, other| one.0.base().total_cmp(&other.0.base()));
    let Some((_, cure)) = line else {
        return Ok(vec![Comparison::at_most(
            Labeled::new(
                "coldest concrete that the sheet allows",
                Temperature::from_base(coldest),
            ),
            Labeled::new("temperature of the concrete", temperature),
        )]);
    };
    Ok(vec![Comparison::at_most(
        Labeled::new("time to harden at that temperature", *cure),
        Labeled::new("time to the first load", loaded),
    )])
}

/// Lines of the sheet's table: from which temperature, how long.
fn table<'s>(
    asking: &mut Asking<'s>,
    anchor: &'s Anchor,
) -> Result<Vec<(Temperature, Time)>, Halt> {
    if anchor.cure.is_empty() {
        return asking.lack(
            &anchor.origin,
            "cure",
            Wants::Written("[{ from = \"50 °F\", cure_time = \"24 h\" }, { from = \"70 °F\", cure_time = \"8 h\" }]"),
        );
    }
    let lines: Vec<Result<_, Halt>> = anchor.cure.iter().map(|line| cure(asking, line)).collect();
    lines.into_iter().collect()
}

fn cure<'s>(asking: &mut Asking<'s>, line: &'s Cure) -> Result<(Temperature, Time), Halt> {
    let from = read!(asking, line.from);
    let time = read!(asking, line.cure_time);
    Ok((from?, time?))
}

/// The adhesive was good on the day.
fn in_date<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<bool, Halt> {
    let set = day(asking, &anchor.origin, "set", anchor.set.as_ref());
    let use_by = day(asking, &anchor.origin, "use_by", anchor.use_by.as_ref());
    Ok(use_by?.days_after(set?) >= 0)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[foundation]]
        id = "pad"
        [[foundation.anchor]]
        holds = "operator"
        count = 4
        kind = "adhesive anchor"
        diameter = "5/8 in"
        hole_diameter = "3/4 in"
        hole_depth = "6 1/8 in"
        sheet_diameter = "3/4 in"
        sheet_depth = "6 in"
        cleaning = ["blow out twice", "brush twice", "blow out twice"]
        cleaned = true
        torque = "40 lbf·ft"
        torque_reached = "41 lbf·ft"
        cure = [{ from = "50 °F", cure_time = "24 h" }, { from = "70 °F", cure_time = "8 h" }]
        concrete_temperature = "62 °F"
        loaded_after = "26 h"
        set = 2026-04-01
        use_by = 2026-12-01
        cartridge = "20 in³"
    "#;

    #[test]
    fn holds_as_the_sheet_asks() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // A ring of 3/4 in by 5/8 in, 6 1/8 in deep, four times and a quarter: 4.1 in³.
        assert!(
            finding.sentence.contains("1 cartridge"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_loaded_too_soon() {
        let soon = SITE.replace("26 h", "10 h");
        assert_eq!(only(&CHECK, &soon).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_in_concrete_that_is_too_cold() {
        let cold = SITE.replace("62 °F", "41 °F");
        assert_eq!(only(&CHECK, &cold).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_dirty_or_out_of_date() {
        for wrong in [
            SITE.replace("cleaned = true", "cleaned = false"),
            SITE.replace("use_by = 2026-12-01", "use_by = 2026-03-31"),
            SITE.replace("torque_reached = \"41", "torque_reached = \"31"),
        ] {
            assert_eq!(only(&CHECK, &wrong).verdict, Verdict::Fails);
        }
    }

    #[test]
    fn unknown_without_temperature_and_torque() {
        let bare = SITE
            .replace("concrete_temperature = \"62 °F\"", "")
            .replace("torque_reached = \"41 lbf·ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn what_is_cast_in_has_no_hole() {
        assert!(all(&CHECK, &SITE.replace("adhesive anchor", "headed bolt")).is_empty());
    }
}
