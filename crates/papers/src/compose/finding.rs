//! Findings in the words of the papers.

use super::{repeated, structure};
use crate::view::{FindingView, Measure, Verdict, Working, WorkingLine};
use design::{Finding, Line, SourceNote, Standing};
use quantity::Word as _;
use std::sync::Arc;

/// The findings as they are printed, in their order.
///
/// Everything that does not hold is set out in full; of what holds, or would hold once a figure is looked up, the first of
/// each question is, and the others stand under it with their figures, since their working is the same with other values.
pub(super) fn views(findings: &[Arc<Finding>]) -> Vec<FindingView> {
    let first_of_its_question = |at: usize| {
        findings
            .iter()
            .position(|other| other.question == findings[at].question && is_worked(other))
            .filter(|first| *first != at)
    };
    // Word for word, of other things: said once, with the others under it.
    let said_before = |at: usize| {
        findings[..at].iter().position(|other| {
            other.question == findings[at].question && other.sentence == findings[at].sentence
        })
    };
    let mut views: Vec<FindingView> = (0..findings.len())
        .map(|at| {
            let finding = &findings[at];
            let alike = match finding.standing {
                Standing::Holds | Standing::Figure => true,
                Standing::Unknown => is_worked(finding),
                _ => false,
            };
            let same_as = if alike {
                first_of_its_question(at)
            } else {
                said_before(at)
            };
            view(finding, same_as)
        })
        .collect();
    repeated::leave_out(&mut views);
    views
}

/// Its working is whole: nothing of the site is missing.
fn is_worked(finding: &Finding) -> bool {
    finding.missing.is_empty() && !finding.working.is_empty()
}

fn view(finding: &Finding, same_as: Option<usize>) -> FindingView {
    FindingView {
        id: finding.name(),
        subject: finding.subject.path.clone(),
        question: finding.ask.clone(),
        sentence: finding.sentence.clone(),
        verdict: verdict(finding.standing),
        because: finding.because.clone(),
        severity: finding.severity.word().to_owned(),
        demand: figure(finding.demand.as_ref()),
        capacity: figure(finding.capacity.as_ref()),
        ratio: finding
            .ratio
            .map(|ratio| format!("{ratio:.2}"))
            .unwrap_or_default(),
        nominal: finding.verdict.words().to_owned(),
        worst: finding.worst.as_ref().map(worst).unwrap_or_default(),
        deciding: finding.deciding.as_ref().map(deciding).unwrap_or_default(),
        working: finding.working.iter().map(working).collect(),
        source: joined(finding.sources.iter().map(work)),
        known: joined(finding.sources.iter().map(|source| source.evidence.clone())),
        measures: finding
            .missing
            .iter()
            .map(|missing| Measure {
                what: missing.measure.clone(),
                write: missing.write.clone(),
            })
            .collect(),
        confirm: with_what_is_open(finding),
        same_as,
    }
}

/// A standing as the papers mark it.
pub(crate) fn verdict(standing: Standing) -> Verdict {
    match standing {
        Standing::Fails => Verdict::Fails,
        Standing::TurnsWithinTolerance => Verdict::NotSure,
        Standing::Unknown => Verdict::Unknown,
        Standing::Outside => Verdict::Outside,
        Standing::Holds => Verdict::Holds,
        Standing::Figure => Verdict::Figure,
    }
}

fn figure(figure: Option<&design::Figure>) -> String {
    figure
        .map(|figure| format!("{} ({})", figure.text, figure.label))
        .unwrap_or_default()
}

fn worst(corner: &design::Corner) -> String {
    match (&corner.demand, &corner.capacity) {
        (Some(demand), Some(capacity)) => format!(
            "{}: {} against {}",
            corner.verdict.words(),
            demand.text,
            capacity.text
        ),
        _ => corner.verdict.words().to_owned(),
    }
}

fn deciding(deciding: &design::Deciding) -> String {
    let turns = if deciding.turns {
        "; its tolerance alone turns the verdict"
    } else {
        ""
    };
    format!(
        "{} = {}{turns}",
        deciding.reading.path, deciding.reading.text
    )
}

fn working(step: &design::Working) -> Working {
    Working {
        title: step.title.clone(),
        formula: step.formula.clone(),
        given: step.given.iter().map(line).collect(),
        gives: step.gives.iter().map(line).collect(),
        source: step.source.as_ref().map(work).unwrap_or_default(),
        known: step
            .source
            .as_ref()
            .map(|source| source.evidence.clone())
            .unwrap_or_default(),
        stands_at: None,
        formula_at: None,
    }
}

fn line(line: &Line) -> WorkingLine {
    WorkingLine::new(
        &line.letter,
        &plain(&line.meaning),
        &line.value.text,
        &line.known,
    )
}

/// Work and clause.
pub(super) fn work(source: &SourceNote) -> String {
    if source.clause.is_empty() {
        source.work.clone()
    } else {
        format!("{}, {}", source.work, source.clause)
    }
}

/// The distinct texts in their order.
fn joined(texts: impl Iterator<Item = String>) -> String {
    let mut kept: Vec<String> = Vec::new();
    for text in texts {
        if !text.is_empty() && !kept.contains(&text) {
            kept.push(text);
        }
    }
    kept.join("; ")
}

fn with_what_is_open(finding: &Finding) -> String {
    let mut parts = vec![finding.confirm.trim_end_matches('.').to_owned()];
    if !finding.leaves_open.is_empty() {
        parts.push(format!("Left open by this answer: {}", finding.leaves_open));
    }
    if structure::is_structural(&finding.question) {
        parts.push(structure::DEFERS.to_owned());
    }
    match parts.as_slice() {
        [_] => finding.confirm.clone(),
        parts => parts.join(". "),
    }
}

/// A meaning as it stands on paper: without its full stop and without the marks around names.
fn plain(meaning: &str) -> String {
    meaning.trim_end_matches('.').replace('`', "")
}
