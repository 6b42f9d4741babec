//! The list of answers, worst first.

use super::{mark, width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{Answers, Covered, Finding, Standing, State};
use site::Site;

const ORDER: [Standing; 6] = [
    Standing::Fails,
    Standing::TurnsWithinTolerance,
    Standing::Unknown,
    Standing::Outside,
    Standing::Holds,
    Standing::Figure,
];

/// Every finding in groups by where it stands, and what the groups come to.
pub(crate) fn listed(site: &Site, answers: &Answers) -> String {
    let mut lines = vec![paint(&site.site.name, strong()), String::new()];
    for standing in ORDER {
        let of_it: Vec<&Finding> = answers
            .findings()
            .filter(|finding| finding.standing == standing)
            .collect();
        if of_it.is_empty() {
            continue;
        }
        lines.push(mark(standing));
        lines.extend(of_it.into_iter().map(line));
        lines.push(String::new());
    }
    lines.push(summary(answers));
    lines.push(paint(
        "Working of one: --explain NAME. Every question, asked or not: --questions.",
        quiet(),
    ));
    lines.push(paint("Results support a competent person; local codes and the authority having jurisdiction prevail.", quiet()));
    lines.join("\n")
}

/// A finding in a few lines: what is at stake, the answer, its name.
fn line(finding: &Finding) -> String {
    let answer = wrapped(&finding.sentence, 12, width());
    let stake = format!("  {:<9} ", quantity::Word::word(finding.severity));
    let mut lines = vec![format!("{stake}{}", answer.trim_start())];
    for missing in finding.missing.iter().take(3) {
        lines.push(wrapped(
            &format!(
                "write {}   in {}:{}",
                missing.write, missing.file, missing.line
            ),
            12,
            usize::MAX,
        ));
    }
    lines.push(format!(
        "{}{}",
        " ".repeat(12),
        paint(finding.name(), touchable())
    ));
    lines.join("\n")
}

/// The counts in one sentence.
fn summary(answers: &Answers) -> String {
    let count = |wanted: &[Standing]| {
        answers
            .findings()
            .filter(|finding| wanted.contains(&finding.standing))
            .count()
    };
    let waiting = answers
        .coverage
        .iter()
        .filter(|covered| covered.state == State::NotYetCovered)
        .count();
    format!(
        "{} fail, {} unknown or outside this tool, {} hold. Of {} questions that apply, {waiting} are not yet covered by this tool.",
        count(&[Standing::Fails, Standing::TurnsWithinTolerance]),
        count(&[Standing::Unknown, Standing::Outside]),
        count(&[Standing::Holds]),
        answers.coverage.len(),
    )
}

/// Every question that applies, and where it stands.
pub(crate) fn questions_listed(coverage: &[Covered]) -> String {
    let mut lines = vec![paint("Every question that applies", strong())];
    for covered in coverage {
        lines.push(String::new());
        lines.push(format!("  {}", paint(&covered.question, touchable())));
        lines.push(wrapped(&covered.ask, 4, width()));
        let note = format!("{}. {}", covered.state.words(), covered.note);
        lines.push(paint(wrapped(note.trim(), 4, width()), quiet()));
    }
    lines.join("\n")
}
