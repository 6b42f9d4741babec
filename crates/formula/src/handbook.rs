//! The handbook: a page for each calculation and an index, as Markdown made from sheets and cases.
//!
//! The index belongs beside one folder for each discipline, with the pages in them: `power/voltage-drop.md`.

mod example;
mod markdown;
mod outside;

pub use example::{example_inputs, example_line};

use crate::registry::{Calculation, registry};
use crate::sheet::{Discipline, Sheet, Source, Symbol};
use markdown::{row, table};
use quantity::{Kind, Sort};

/// The page of a calculation.
pub fn page(calculation: &Calculation) -> String {
    let sheet = calculation.sheet;
    let sections = [
        format!("# {}", sheet.name),
        sheet.paragraphs().join("\n\n"),
        format!("## Formula\n\n```text\n{}\n```", sheet.formula),
        format!("## What it takes\n\n{}", symbols(sheet.inputs)),
        format!("## What it gives\n\n{}", symbols(sheet.outputs)),
        format!("## Where it holds\n\n{}", sheet.validity),
        format!("## Where it comes from\n\n{}", source(&sheet.source)),
        format!("## Outside cases\n\n{}", outside::section(sheet)),
        example::section(calculation)
            .map_or_else(String::new, |example| format!("## Example\n\n{example}")),
        format!("[All calculations](../README.md) · {}", sheet.discipline),
    ];
    let full: Vec<String> = sections
        .into_iter()
        .filter(|section| !section.is_empty())
        .collect();
    format!("{}\n", full.join("\n\n"))
}

/// The index of all pages, by discipline.
pub fn index() -> String {
    let mut sections = vec![
        "# Handbook".to_owned(),
        "Every calculation of this tool: what it takes and gives, where it holds, where it comes from, and the figures of \
         others that it was held against. These pages are written by the tool from its own declarations; they support a \
         competent person and replace neither the codes nor whoever is licensed for the work."
            .to_owned(),
    ];
    for discipline in Discipline::ALL {
        let of_it = registry()
            .iter()
            .filter(|known| known.sheet.discipline == *discipline);
        let rows: Vec<String> = of_it.map(|known| index_row(known.sheet)).collect();
        if !rows.is_empty() {
            let head = ["calculation", "what it computes", "source", "outside cases"];
            sections.push(format!(
                "## {}\n\n{}",
                capital(&discipline.to_string()),
                table(&head, &rows)
            ));
        }
    }
    format!("{}\n", sections.join("\n\n"))
}

fn index_row(sheet: &Sheet) -> String {
    let link = format!("[{0}]({1}/{0}.md)", sheet.name, sheet.discipline);
    let first = sheet.title();
    let source = format!("{} ({})", sheet.source.work, sheet.source.evidence);
    row(&[&link, &first, &source, &outside::count(sheet).to_string()])
}

fn symbols(symbols: &[Symbol]) -> String {
    let rows: Vec<String> = symbols
        .iter()
        .map(|symbol| {
            let name = format!("`{}`", symbol.name);
            row(&[symbol.letter, &name, symbol.meaning, &written(symbol.sort)])
        })
        .collect();
    table(&["symbol", "name", "meaning", "written"], &rows)
}

/// How a value of a sort is written.
fn written(sort: Sort) -> String {
    match sort {
        Sort::Quantity(Kind::Ratio) => "a ratio, such as `0.8` or `2.5 %`".to_owned(),
        Sort::Quantity(kind) => format!("{}, such as `{}`", kind.with_article(), kind.example()),
        Sort::Count => "a whole number".to_owned(),
        Sort::Conductor => "a conductor size, such as `18 AWG` or `1.5 mm²`".to_owned(),
        Sort::Words(words) => {
            let all: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
            all.join(" or ")
        }
    }
}

fn source(source: &Source) -> String {
    let clause = if source.clause.is_empty() {
        String::new()
    } else {
        format!(", {}", source.clause)
    };
    let weight = if source.evidence.may_pass_a_gate() {
        ""
    } else {
        " A figure known in this way may warn; it never makes a finding hold."
    };
    format!(
        "{}{clause}.\n\nHow it is known: {} ({}).{weight}",
        source.work, source.evidence, source.seen
    )
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
