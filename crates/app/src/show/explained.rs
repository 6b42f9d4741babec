//! One finding with its working.

use super::{columns, mark, width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{Finding, Line, Reading, SourceNote, Working};

/// A finding the way a good handbook would set it.
pub(crate) fn explained(finding: &Finding) -> String {
    let mut lines = vec![
        paint(finding.name(), touchable()),
        wrapped(&finding.ask, 0, width()),
        String::new(),
        format!(
            "{}   {}",
            mark(finding.standing),
            quantity::Word::word(finding.severity)
        ),
        wrapped(&finding.sentence, 2, width()),
    ];
    lines.extend(figures(finding));
    lines.extend(tolerances(finding));
    if !finding.missing.is_empty() {
        lines.extend(heading("To be measured"));
        for missing in &finding.missing {
            lines.push(wrapped(&missing.measure, 2, width()));
            lines.push(format!(
                "    write  {}   in {}:{}",
                missing.write, missing.file, missing.line
            ));
        }
    }
    if !finding.look_up.is_empty() {
        lines.extend(heading("To be looked up"));
        lines.extend(finding.look_up.iter().map(|source| to_look_up(source)));
    }
    if !finding.assumed.is_empty() {
        lines.extend(heading("Assumed, never measured"));
        lines.extend(finding.assumed.iter().map(reading));
    }
    if !finding.working.is_empty() {
        lines.extend(heading("Working"));
        for (number, step) in finding.working.iter().enumerate() {
            lines.extend(working(number + 1, step));
        }
    }
    lines.extend(heading("Sources"));
    lines.extend(finding.sources.iter().map(source));
    lines.extend(heading("On site"));
    lines.push(wrapped(&finding.confirm, 2, width()));
    if !finding.leaves_open.is_empty() {
        lines.extend(heading("Left open by this answer"));
        lines.push(wrapped(&finding.leaves_open, 2, width()));
    }
    lines.push(String::new());
    lines.join("\n")
}

fn heading(words: &str) -> [String; 2] {
    [String::new(), paint(words, strong())]
}

/// Demand, capacity and their ratio.
fn figures(finding: &Finding) -> Vec<String> {
    let mut rows: Vec<(&str, String)> = Vec::new();
    if let Some(demand) = &finding.demand {
        rows.push(("demand", format!("{}   {}", demand.text, demand.label)));
    }
    if let Some(capacity) = &finding.capacity {
        rows.push((
            "capacity",
            format!("{}   {}", capacity.text, capacity.label),
        ));
    }
    if let Some(ratio) = finding.ratio {
        rows.push(("ratio", format!("{ratio:.2}")));
    }
    rows.into_iter()
        .map(|(name, value)| format!("  {name:<9} {value}"))
        .collect()
}

/// The worst corner of all tolerances and the measurement that decides.
fn tolerances(finding: &Finding) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(worst) = &finding.worst {
        lines.extend(heading("At the bad end of every tolerance"));
        let figure = |figure: &Option<design::Figure>| {
            figure
                .as_ref()
                .map_or_else(|| "–".to_owned(), |figure| figure.text.clone())
        };
        lines.push(format!(
            "  {}: demand {}, capacity {}",
            worst.verdict.words(),
            figure(&worst.demand),
            figure(&worst.capacity)
        ));
        lines.extend(
            worst
                .at
                .iter()
                .map(|value| format!("    {} = {}", value.path, value.text)),
        );
    }
    if let Some(deciding) = &finding.deciding {
        let turns = if deciding.turns {
            "turns the verdict by itself"
        } else {
            "moves the answer most"
        };
        lines.push(wrapped(
            &format!(
                "Deciding measurement ({turns}): {} = {}",
                deciding.reading.path, deciding.reading.text
            ),
            2,
            width(),
        ));
    }
    lines
}

fn reading(reading: &Reading) -> String {
    format!(
        "  {} = {}   {}:{}",
        reading.path, reading.text, reading.file, reading.line
    )
}

fn working(number: usize, step: &Working) -> Vec<String> {
    let title = [format!("{number}."), step.title.clone()];
    let mut lines = columns(&[title], 2, width(), None);
    if !step.formula.is_empty() {
        lines.extend(
            step.formula
                .lines()
                .map(|line| paint(format!("       {line}"), strong())),
        );
        lines.extend(symbol_lines(&step.given, "given"));
        lines.extend(symbol_lines(&step.gives, "gives"));
        lines.push(paint(
            format!("       gatewright calc {}", step.calculation),
            quiet(),
        ));
    }
    lines
}

/// Symbols with their values in columns.
fn symbol_lines(lines: &[Line], role: &str) -> Vec<String> {
    let row = |line: &Line| {
        let meaning = line.meaning.trim_end_matches('.');
        let from = if line.from.is_empty() {
            String::new()
        } else {
            format!("  ← {}", line.from)
        };
        [
            role.to_owned(),
            line.letter.clone(),
            format!("= {}", line.value.text),
            format!("{meaning}{from}"),
        ]
    };
    let rows: Vec<_> = lines.iter().map(row).collect();
    columns(&rows, 5, width(), None)
}

/// What is written into the site file once a work has been looked up.
fn to_look_up(source: &str) -> String {
    let known = wrapped(
        &format!("{source}: known from memory only. Where it says what the working uses, write"),
        2,
        width(),
    );
    format!(
        "{known}\n    [[looked_up]]\n    source = \"{source}\"\n    edition = \"…\"\n    says = \"…\"\n    by = \"…\"\n    on = …"
    )
}

fn source(source: &SourceNote) -> String {
    let clause = if source.clause.is_empty() {
        String::new()
    } else {
        format!(", {}", source.clause)
    };
    let seen = if source.seen.is_empty() {
        String::new()
    } else {
        format!(": {}", source.seen)
    };
    wrapped(
        &format!("{}{clause} ({}{seen})", source.work, source.evidence),
        2,
        width(),
    )
}
