//! Parts in the order in which they suit: what holds, at what price, and what fails with the others.

use super::{width, wrapped};
use crate::tint::{fails, paint, quiet, strong, touchable};
use design::{Candidate, Choice, Finding, Mounted, RuledOut};

/// The candidates for one thing.
pub(crate) fn ranked(choice: &Choice) -> String {
    let now = choice
        .now
        .as_ref()
        .map(|part| format!(", now {part}"))
        .unwrap_or_default();
    let mut lines = vec![
        paint(format!("{}{now}", choice.thing), strong()),
        String::new(),
    ];
    for (place, candidate) in choice.candidates.iter().enumerate() {
        lines.extend(one(place + 1, candidate, place == 0));
        lines.push(String::new());
    }
    lines.push(paint(wrapped(&footer(choice), 0, width()), quiet()));
    lines.join("\n")
}

fn footer(choice: &Choice) -> String {
    let anyway = match choice.open_anyway {
        0 => String::new(),
        1 => " One other finding is open whatever is chosen.".to_owned(),
        more => format!(" {more} others are open whatever is chosen."),
    };
    format!(
        "{} findings hang on this choice.{anyway} Results support a competent person; local codes and the authority having jurisdiction prevail.",
        choice.findings
    )
}

fn one(place: usize, candidate: &Candidate, in_full: bool) -> Vec<String> {
    let price = candidate.price.as_deref().unwrap_or("no price");
    let mut lines = vec![format!(
        "{place:>3}  {}  {price}  {}",
        paint(&candidate.part, touchable()),
        standing(candidate)
    )];
    lines.extend(details(candidate, in_full));
    lines
}

/// What holds with the least in hand, what fails, and what is open.
pub(super) fn details(candidate: &Candidate, in_full: bool) -> Vec<String> {
    let sound = candidate.failing.is_empty();
    let tightest = candidate.tightest.iter().filter(|_| sound);
    let failing = candidate.failing.iter();
    let open = candidate.open.iter();
    let (most_failing, most_open) = if in_full {
        (usize::MAX, usize::MAX)
    } else {
        (2, 0)
    };
    tightest
        .map(|finding| detail("least in hand", finding))
        .chain(
            failing
                .take(most_failing)
                .map(|finding| detail("fails", finding)),
        )
        .chain(open.take(most_open).map(|finding| detail("open", finding)))
        .collect()
}

/// How a candidate does, in a mark and words.
pub(super) fn standing(candidate: &Candidate) -> String {
    match (candidate.failing.len(), candidate.open.len()) {
        (0, 0) => paint("✓ holds every finding", quiet()),
        (0, open) => paint(format!("▒ nothing fails, {open} open"), strong()),
        (failing, open) => paint(format!("✗ {failing} fail, {open} open"), fails()),
    }
}

/// What a finding says.
fn detail(what: &str, finding: &Finding) -> String {
    let text = format!("{what}: {}", finding.sentence);
    let name = paint(finding.name(), touchable());
    format!("{}\n       {name}", wrapped(text.trim(), 7, width()))
}

/// What ruled how many out.
pub(super) fn ruled_out(one: &RuledOut) -> String {
    format!("{:>8}  {}", one.candidates, one.what)
}

/// Where the pins of a drive go, as lines to write.
pub(crate) fn pinned(mounted: &Mounted) -> String {
    let mut lines = vec![paint(&mounted.drive, strong()), String::new()];
    lines.extend(
        mounted
            .pins
            .iter()
            .map(|pin| format!("  {:<14}{}", pin.key, pin.distance)),
    );
    lines.push(wrapped(&format!("  {}", mounted.says), 2, width()));
    lines.extend(mounted.write.iter().map(|line| format!("  write {line}")));
    lines.push(String::new());
    lines.push(paint(
        "  Measured from the hinge line, leaf closed. Try it with a clamp before you drill: brackets and leaf must carry the pins.",
        quiet(),
    ));
    lines.join("\n")
}
