//! The fewest protective devices with which nobody is hit, by themselves and beside those that are there.

use super::{width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{ProtectionChoice, ProtectionSet};

/// Sets and lines of assumptions are wrapped under their heads.
const INDENT: usize = 7;

/// The devices for one gate.
pub(crate) fn guarded(choice: &ProtectionChoice) -> String {
    let mut lines = vec![paint(&choice.gate, strong()), String::new()];
    if choice.write.is_empty() {
        let tried = format!(
            "{} places tried, {} sets walked in full.",
            choice.candidates, choice.walked
        );
        lines.extend([wrapped(&tried, 2, width()), String::new()]);
        if choice.nothing_there {
            lines.extend(set("nothing is there yet", choice.added.as_ref()));
        } else {
            lines.extend(set("beside what is there", choice.added.as_ref()));
            lines.extend(set("by themselves", choice.from_nothing.as_ref()));
        }
        if !choice.assumed.is_empty() {
            lines.push("  Assumed".to_owned());
            let assumed = choice.assumed.iter();
            lines.extend(assumed.map(|line| wrapped(line, INDENT, width())));
            lines.push(String::new());
        }
    } else {
        lines.push("  Missing, or out of reach".to_owned());
        let missing = choice.write.iter();
        lines.extend(missing.map(|line| wrapped(line, INDENT, width())));
        lines.push(String::new());
    }
    lines.push(paint(wrapped(FOOTER, 0, width()), quiet()));
    lines.join("\n")
}

const FOOTER: &str = "Walks are samples, not a proof: write the devices into the site, then run gatewright walk. A simulation is no force test \
and no test on site. Device kinds and counts follow the code in force here; it and the authority having jurisdiction prevail.";

fn set(how: &str, found: Option<&ProtectionSet>) -> Vec<String> {
    let Some(found) = found else {
        let none = "the walks cannot be worked.";
        return vec![
            format!("  {}: {none}", paint(how, touchable())),
            String::new(),
        ];
    };
    let head = match found.devices.len() {
        0 => "nothing more is needed".to_owned(),
        1 => "one device".to_owned(),
        count => format!("{count} devices"),
    };
    let mut lines = vec![format!("  {}: {head}", paint(how, touchable()))];
    let devices = found.devices.iter();
    lines.extend(devices.map(|words| wrapped(words, INDENT, width())));
    lines.push(wrapped(&outcome(found), INDENT, width()));
    let failing = found.failing.iter();
    lines.extend(failing.map(|finding| {
        let words = format!("fails: {} {}", finding.sentence, finding.question);
        wrapped(&words, INDENT, width())
    }));
    if found.open > 0 {
        let more = format!(
            "{} findings wait for their feed, wiring, monitoring and data sheets.",
            found.open
        );
        lines.push(wrapped(&more, INDENT, width()));
    }
    for table in &found.write {
        lines.push(String::new());
        lines.extend(table.lines().map(|line| format!("       write  {line}")));
    }
    lines.push(String::new());
    lines
}

fn outcome(found: &ProtectionSet) -> String {
    if found.left == 0 {
        return format!("None of {} walks ends badly.", found.walks);
    }
    let worst = found.left_worst.as_deref().unwrap_or_default();
    format!(
        "{} walks end badly with any device at the places that were tried, of {} that were sampled and those that a search \
         uphill came upon. Hit are: {}. One of them: {worst} A device elsewhere, a slower leaf, a drive that feels sooner, or \
         forces measured at such places may close it.",
        found.left,
        found.walks,
        found.left_for.join("; ")
    )
}
