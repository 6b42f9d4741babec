//! Whether the tools for every task are there, reach far enough, measure truly, and get in.
//!
//! Tools that tasks name are entries of the price book. Holes of anchors need a bit of their diameter that reaches their
//! depth; a torque that a sheet asks for lies inside the span of a torque tool. Test gear is in calibration on the day of
//! installation. Machines that a task names fit the way in and do not sink on it.

use super::book;
use super::way_in::machines;
use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Measured, Quantity as _};
use site::{Anchor, AnchorKind, PriceBook, Site, Task, Tool};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "make-tools-and-machines",
    codes: BOTH,
    leaves_open: "tools of tasks that name none, whether a tool works on the day, and ground that is wetter than when it was tried",
    concerns: "a gate",
    ask,
};

static IN_THE_VAN: Source = Source {
    work: "each task's tools on its day sheet; a bit of the hole's size as long as the hole, a torque tool whose span holds the torque, test gear in calibration, a machine that fits the way in",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as installers pack a van",
};

/// A bit of the hole's size: nearer than this, in meters.
const SAME_SIZE: f64 = 0.000_4;

/// How a tool is written.
const TOOL: &str = "[[tool]] in the price book with this what, such as\n[[tool]]\nid = \"hammer-drill\"\nwhat = \"hammer drill\"";
/// How a bit is written.
const BIT: &str = "[[tool]] in the price book with diameter and reach of this hole's bit";
/// How a torque tool is written.
const WRENCH: &str =
    "[[tool]] in the price book with least_torque and greatest_torque around this torque";
fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        round.ask_in_full(About::site(&site.site.origin), |asking| {
            packed(asking, site)
        });
    }
}

/// What was found: comparisons, and what breaks the rule.
#[derive(Default)]
pub(super) struct Found {
    pub(super) compared: Vec<Comparison>,
    pub(super) wrong: Vec<String>,
    tools: usize,
}

fn packed<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&IN_THE_VAN);
    let book = book(asking, site);
    if site.task.is_empty() {
        let _: Result<(), _> = asking.lack(
            &site.origin,
            "task",
            Wants::Table("[[task]] with id, what, kind, hours and tools"),
        );
    }
    let book = book.ok_or(Halt)?;
    let mut found = Found::default();
    let mut complete = !site.task.is_empty();
    for task in &site.task {
        complete &= named(asking, book, task, &mut found);
    }
    let new = |foundation: &&site::Foundation| foundation.existing != Some(true);
    for foundation in site.foundation.iter().filter(new) {
        for anchor in &foundation.anchor {
            complete &= drilled(asking, book, anchor, &mut found);
            complete &= tightened(asking, book, anchor, &mut found);
        }
    }
    complete &= machines(asking, site, book, &mut found).is_ok();
    in_calibration(site, book, &mut found);
    if found.wrong.is_empty() && !complete {
        return Err(Halt);
    }
    asking.say(|_| sentence(&found));
    if !found.wrong.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::worst(found.compared).unwrap_or(Outcome::Rule(true)))
}

fn sentence(found: &Found) -> String {
    if found.wrong.is_empty() {
        let tools = counted(found.tools, "tool");
        format!(
            "{tools} that the tasks name are on the list, bits reach their holes, torque tools span what the sheets ask, test gear is in calibration, and machines fit the way in."
        )
    } else {
        format!("{}.", crate::plain::capitalized(&found.wrong.join("; ")))
    }
}

/// A tool goes by this name.
pub(super) fn is(tool: &Tool, name: &str) -> bool {
    tool.id == *name || tool.what.as_str().eq_ignore_ascii_case(name)
}

/// Every tool that a task names is an entry of the price book.
fn named<'s>(asking: &mut Asking<'s>, book: &PriceBook, task: &'s Task, found: &mut Found) -> bool {
    let mut all = true;
    for name in &task.tools {
        if book.tool.iter().any(|tool| is(tool, name.as_str())) {
            found.tools += 1;
        } else {
            all = false;
            asking.note(|_| format!("Task {}: {name} is no tool of the price book.", task.id));
            let _: Result<(), _> = asking.lack(&task.origin, "tools", Wants::Table(TOOL));
        }
    }
    all
}

/// A bit for the holes of an anchor.
fn drilled<'s>(
    asking: &mut Asking<'s>,
    book: &PriceBook,
    anchor: &'s Anchor,
    found: &mut Found,
) -> bool {
    if anchor.kind.is_none_or(AnchorKind::is_cast_in) {
        return true;
    }
    let diameter = larger(anchor.hole_diameter, anchor.sheet_diameter);
    let depth = larger(anchor.hole_depth, anchor.sheet_depth);
    let (Some(diameter), Some(depth)) = (diameter, depth) else {
        let _: Result<Length, _> = asking.lack_of(&anchor.origin, "hole_diameter");
        return false;
    };
    let fits = |tool: &&Tool| {
        tool.diameter
            .is_some_and(|it| (it.nominal().base() - diameter.base()).abs() < SAME_SIZE)
    };
    let reach = |tool: &Tool| tool.reach.map(|reach| reach.nominal());
    let longest = book.tool.iter().filter(fits).filter_map(reach);
    let longest = longest.max_by(|a, b| a.base().total_cmp(&b.base()));
    let Some(longest) = longest else {
        let print = asking.print();
        asking.note(|_| {
            format!(
                "Anchors of {}: no bit of {}.",
                anchor.holds,
                print.q(diameter)
            )
        });
        let _: Result<(), _> = asking.lack(&anchor.origin, "hole_diameter", Wants::Table(BIT));
        return false;
    };
    let comparison = Comparison::at_most(
        Labeled::new("depth of the hole", depth),
        Labeled::new("reach of the bit", longest),
    );
    if !comparison.holds() {
        let print = asking.print();
        found.wrong.push(format!(
            "the bit for the anchors of {} reaches {}, and the hole is {} deep",
            anchor.holds,
            print.q(longest),
            print.q(depth)
        ));
    }
    found.compared.push(comparison);
    true
}

fn larger(one: Option<Measured<Length>>, other: Option<Measured<Length>>) -> Option<Length> {
    let one = one.or(other)?.nominal();
    let other = other.map_or(one, |other| other.nominal());
    Some(if one.base() > other.base() {
        one
    } else {
        other
    })
}

/// A tool for the torque of an anchor.
fn tightened<'s>(
    asking: &mut Asking<'s>,
    book: &PriceBook,
    anchor: &'s Anchor,
    found: &mut Found,
) -> bool {
    let Some(torque) = anchor.torque.map(|torque| torque.nominal()) else {
        return true;
    };
    let ends = |tool: &Tool| {
        let greatest = tool.greatest_torque?.nominal().base();
        Some((
            tool.least_torque
                .map_or(0.0, |least| least.nominal().base()),
            greatest,
        ))
    };
    let spans: Vec<(f64, f64)> = book.tool.iter().filter_map(ends).collect();
    if spans.is_empty() {
        let _: Result<(), _> = asking.lack(&anchor.origin, "torque", Wants::Table(WRENCH));
        return false;
    }
    let slack = 1e-6 * torque.base();
    let holds = |(least, greatest): &(f64, f64)| {
        torque.base() >= least - slack && torque.base() <= greatest + slack
    };
    if !spans.iter().any(holds) {
        let print = asking.print();
        found.wrong.push(format!(
            "no torque tool spans {} for the anchors of {}",
            print.q(torque),
            anchor.holds
        ));
    }
    true
}

/// Test gear whose calibration has run out on the day of installation.
fn in_calibration(site: &Site, book: &PriceBook, found: &mut Found) {
    let Some(day) = site.site.installed else {
        return;
    };
    for tool in &book.tool {
        if let Some(until) = tool.calibrated_until.filter(|until| *until < day) {
            found.wrong.push(format!(
                "the calibration of the {} ran out on {until}",
                tool.what
            ));
        }
    }
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
        [access]
        width = "9 ft"
        height = "12 ft"
        bearing = "1500 psf"
        [[task]]
        id = "task-dig"
        what = "dig the trench"
        tools = ["Mini excavator"]
        [[task]]
        id = "task-anchors"
        what = "set the anchors"
        tools = ["hammer-drill", "torque wrench"]
        [[foundation]]
        id = "pad"
        [[foundation.anchor]]
        holds = "operator"
        kind = "adhesive anchor"
        hole_diameter = "9/16 in"
        hole_depth = "4 1/4 in"
        torque = "30 lbf·ft"
    "#;

    const BOOK: &str = r#"
        [[tool]]
        id = "mini-excavator"
        what = "mini excavator"
        width = "39 in"
        height = "8 ft"
        ground_pressure = "600 psf"
        hire = "240.00 USD"
        [[tool]]
        id = "hammer-drill"
        what = "hammer drill"
        diameter = "9/16 in"
        reach = "6 in"
        [[tool]]
        id = "torque-wrench"
        what = "torque wrench"
        least_torque = "10 lbf·ft"
        greatest_torque = "100 lbf·ft"
        calibrated_until = 2027-01-31
    "#;

    #[test]
    fn holds_with_everything_on_the_list() {
        let finding = with_price_book(&CHECK, SITE, BOOK);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_tool_does_not_do() {
        for (from, to, said) in [
            ("reach = \"6 in\"", "reach = \"4 in\"", "reaches 4 in"),
            (
                "greatest_torque = \"100",
                "greatest_torque = \"25",
                "torque tool spans",
            ),
            ("2027-01-31", "2026-05-31", "ran out"),
            (
                "width = \"39 in\"",
                "width = \"10 ft\"",
                "width of the machine",
            ),
            ("600 psf", "1600 psf", "pressure"),
        ] {
            let finding = with_price_book(&CHECK, SITE, &BOOK.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
            assert!(finding.sentence.contains(said), "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_while_a_tool_is_on_no_list() {
        for (from, to) in [
            ("what = \"mini excavator\"", "what = \"digger\""),
            ("diameter = \"9/16 in\"", "diameter = \"1/2 in\""),
        ] {
            let book = BOOK
                .replace("id = \"mini-excavator\"", "id = \"digger\"")
                .replace(from, to);
            let finding = with_price_book(&CHECK, SITE, &book);
            assert_eq!(
                finding.verdict,
                Verdict::UnknownUntil,
                "{to}: {}",
                finding.sentence
            );
        }
        let no_way = SITE.replace("bearing = \"1500 psf\"", "");
        assert_eq!(
            with_price_book(&CHECK, &no_way, BOOK).verdict,
            Verdict::UnknownUntil
        );
    }
}
