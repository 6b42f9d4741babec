//! `gatewright handbook`: the generated pages, written afresh.

use crate::outcome::{Complaint, Outcome, say};
use std::path::Path;

/// Writes handbook and schemas below a folder; files that no longer belong there are removed from the handbook.
pub(crate) fn run(output: &Path) -> Result<Outcome, Complaint> {
    let pages = pages();
    let handbook = output.join("handbook");
    if handbook.is_dir() {
        std::fs::remove_dir_all(&handbook).map_err(|error| {
            Complaint::about(&handbook, format_args!("cannot be cleared ({error})"))
        })?;
    }
    for (name, text) in &pages {
        let path = output.join(name);
        if let Some(folder) = path.parent() {
            std::fs::create_dir_all(folder).map_err(|error| {
                Complaint::about(folder, format_args!("cannot be made ({error})"))
            })?;
        }
        std::fs::write(&path, text).map_err(|error| {
            Complaint::about(&path, format_args!("cannot be written ({error})"))
        })?;
    }
    say(&format_args!(
        "{} files written below {}",
        pages.len(),
        output.display()
    ));
    Ok(Outcome::Holds)
}

/// Every generated file: its path below the folder, and its text.
fn pages() -> Vec<(String, String)> {
    let mut pages = vec![
        (
            "site.schema.json".to_owned(),
            format!("{:#}\n", site::schema()),
        ),
        (
            "parts.schema.json".to_owned(),
            format!("{:#}\n", site::parts_schema()),
        ),
        (
            "price-book.schema.json".to_owned(),
            format!("{:#}\n", site::price_book_schema()),
        ),
        ("handbook/README.md".to_owned(), index()),
        ("handbook/questions.md".to_owned(), questions()),
    ];
    for calculation in formula::registry() {
        let sheet = calculation.sheet;
        pages.push((
            format!("handbook/{}/{}.md", sheet.discipline, sheet.name),
            formula::handbook::page(calculation),
        ));
    }
    pages
}

/// The index of the calculations, with the way to the questions.
fn index() -> String {
    format!(
        "{}\n[Every question of the trade, and which of them the tool answers](questions.md)\n",
        formula::handbook::index()
    )
}

/// Every question of the trade by topic, and whether the tool has a check for it.
fn questions() -> String {
    let mut page = String::from(
        "# Questions\n\nEvery question that the trade, the codes and physics ask of a gate site. A tick marks those that the tool answers, in full or in part; \
         for the others the last column says how the answer is found on site. Generated from `crates/design/questions`.\n",
    );
    let mut topic = "";
    for question in design::questions() {
        if question.topic() != topic {
            topic = question.topic();
            page += &heading(design::topic_title(topic).unwrap_or(topic));
        }
        page += &row(question);
    }
    page
}

fn heading(title: &str) -> String {
    format!(
        "\n## {title}\n\n| | question | asked because | at stake | confirmed on site by |\n|---|---|---|---|---|\n"
    )
}

fn row(question: &design::Question) -> String {
    let tick = if design::is_answered(&question.id) {
        "✓"
    } else {
        ""
    };
    format!(
        "| {tick} | **{}** <br> `{}` | {} | {} | {} |\n",
        cell(&question.ask),
        question.id,
        cell(&question.basis),
        question.severity,
        cell(&question.confirm)
    )
}

/// Text that does not break out of a cell of the table.
fn cell(text: &str) -> String {
    text.replace('|', "\\|").replace('\n', " ")
}
