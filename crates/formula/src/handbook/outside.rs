//! The outside cases of a calculation, with what trying them shows.

use super::markdown::{row, table};
use crate::case::{Report, Tried, embedded, verify};
use crate::sheet::Sheet;
use std::sync::LazyLock;

/// Every case file of the crate, tried once.
static REPORTS: LazyLock<Vec<Report>> =
    LazyLock::new(|| embedded().map(|(file, text)| verify(file, text)).collect());

/// The cases of a calculation that were tried, in the order of the files.
pub(super) fn tried(sheet: &Sheet) -> impl Iterator<Item = &'static Tried> {
    let name = sheet.name;
    REPORTS
        .iter()
        .flat_map(|report| &report.tried)
        .filter(move |tried| tried.case.calculation == name)
}

/// How many cases of a calculation are evidence.
pub(super) fn count(sheet: &Sheet) -> usize {
    tried(sheet)
        .filter(|tried| tried.case.kind.is_evidence() && tried.case.refuses.is_none())
        .count()
}

/// The section on outside cases.
pub(super) fn section(sheet: &Sheet) -> String {
    let head = ["case", "known", "value", "printed", "ours", "result"];
    let rows: Vec<String> = tried(sheet).flat_map(rows).collect();
    if rows.is_empty() {
        return "None yet.".to_owned();
    }
    let sources: Vec<String> = tried(sheet).map(|tried| told(sheet, tried)).collect();
    format!("{}\n\n{}", table(&head, &rows), sources.join("\n"))
}

fn rows(tried: &Tried) -> Vec<String> {
    tried
        .compared
        .iter()
        .map(|compared| {
            let verdict = if compared.holds { "agrees" } else { "differs" };
            let name = format!("`{}`", compared.name);
            let kind = tried.case.kind.to_string();
            row(&[
                &tried.case.id,
                &kind,
                &name,
                &compared.expected,
                &compared.ours,
                verdict,
            ])
        })
        .collect()
}

/// Where a case stands, what it gives the calculation, and why its tolerance is wider than the print.
fn told(sheet: &Sheet, tried: &Tried) -> String {
    let case = &tried.case;
    let given: Vec<String> = sheet
        .inputs
        .iter()
        .filter_map(|input| Some(format!("{} {}", input.name, case.given.get(input.name)?)))
        .collect();
    let wider = case
        .tolerance
        .as_ref()
        .map_or_else(String::new, |(tolerance, because)| {
            format!(" Within {tolerance}: {because}.")
        });
    format!(
        "- {}: {}. Seen: {}. Given {}.{wider}",
        case.id,
        case.source.work,
        case.source.seen,
        given.join(", ")
    )
}
