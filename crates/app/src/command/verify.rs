//! `gatewright verify`: the calculations, held against figures that others printed.

use crate::outcome::{Complaint, Outcome, complain, say};
use crate::tint::{fails, paint, quiet};
use formula::case::{Report, Tried, embedded, verify};
use std::path::PathBuf;

/// Tries the cases of these files, or those that come with the tool.
pub(crate) fn run(files: &[PathBuf], list_all: bool) -> Result<Outcome, Complaint> {
    let reports = if files.is_empty() {
        embedded().map(|(name, text)| verify(name, text)).collect()
    } else {
        files.iter().map(report).collect::<Result<Vec<_>, _>>()?
    };
    for report in &reports {
        show(report, list_all);
    }
    let tried = reports
        .iter()
        .map(|report| report.tried.len())
        .sum::<usize>();
    let held = reports
        .iter()
        .flat_map(|report| &report.tried)
        .filter(|tried| tried.holds())
        .count();
    say(&format_args!("{held} passed, {} failed", tried - held));
    let problems = reports.iter().any(|report| !report.problems.is_empty());
    Ok(match (problems, held == tried) {
        (true, _) => Outcome::BadInput,
        (false, true) => Outcome::Holds,
        (false, false) => Outcome::Open,
    })
}

fn report(file: &PathBuf) -> Result<Report, Complaint> {
    let text = std::fs::read_to_string(file)
        .map_err(|error| Complaint::about(file, format_args!("cannot be read ({error})")))?;
    Ok(verify(&file.display().to_string(), &text))
}

fn show(report: &Report, list_all: bool) {
    for problem in &report.problems {
        complain(problem);
    }
    for tried in report
        .tried
        .iter()
        .filter(|tried| list_all || !tried.holds())
    {
        say(&line(report, tried));
    }
}

fn line(report: &Report, tried: &Tried) -> String {
    let mark = if tried.holds() {
        paint("✓ holds", quiet())
    } else {
        paint("✗ fails", fails())
    };
    let mut lines = vec![format!(
        "{mark}  {}  {}  ({}: {})",
        tried.case.id, tried.case.calculation, tried.case.kind, tried.case.source.work
    )];
    for compared in &tried.compared {
        lines.push(format!(
            "           {} printed {}, computed {}",
            compared.name, compared.expected, compared.ours
        ));
    }
    if !tried.holds() {
        lines.push(format!("           in {}", report.file));
    }
    lines.join("\n")
}
