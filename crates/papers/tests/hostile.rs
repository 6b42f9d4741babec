//! No text can make a document fail: it is data, never markup.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test that cannot go on says so"
)]

use crate::invented;
use crate::invented::keep;
use papers::pack::pack;
use papers::view::{Cell, Column, DaySheetView, Input, PackView, StructureView, Table, WalkView};
use papers::workbook::workbook;
use serde_json::Value;

/// Texts that a careless program would trip over.
const HOSTILE: [&str; 12] = [
    "#[]$*_<>@`~\\/=-+ #let x = 1 #panic() $1/0$ <label> @reference",
    "// not a comment /* nor this */ \"quotes\" 'and' \\u{0}",
    "= Not a heading\n- not a list\n+ nor this",
    "supercalifragilisticexpialidociousgateoperatorcontrollerenclosurewithoutanyspaceatallinit0123456789",
    "----------------------------------------------------------------------------------------------------",
    "שער הזזה 12 V ימין",
    "بوابة منزلقة ١٢٣",
    "🔒 門 ☃ \u{10FFFD} \u{E000} \u{FFFE}",
    "a\u{0}b\u{7}c\u{1B}[31m\u{202E}reversed\u{200D}",
    "e\u{301}\u{301}\u{301} Z̴̡̛͓a̸l̷g̵o̶",
    "",
    "   \t\n  ",
];

/// The invented pack with every text replaced.
fn filled_with(text: &str) -> PackView {
    let mut view = invented::pack();
    for word in texts_of(&mut view) {
        text.clone_into(word);
    }
    view
}

fn texts_of_a_walk(walk: &mut WalkView) -> Vec<&mut String> {
    let mut texts = vec![
        &mut walk.gate,
        &mut walk.standing,
        &mut walk.families,
        &mut walk.worst,
    ];
    texts.extend(&mut walk.cautions);
    for row in &mut walk.open {
        texts.extend([&mut row.family, &mut row.how]);
    }
    for row in &mut walk.margins {
        texts.extend([
            &mut row.what,
            &mut row.written,
            &mut row.taken,
            &mut row.holds,
            &mut row.not_at,
        ]);
    }
    for row in &mut walk.shares {
        texts.extend([&mut row.ends, &mut row.share, &mut row.error]);
    }
    let found = walk.answer.iter_mut().chain(&mut walk.responses);
    texts.extend(found.map(|found| &mut found.sentence));
    let rows = walk.people.iter_mut().chain(&mut walk.granted);
    for row in rows.chain(&mut walk.of_the_site) {
        texts.extend([&mut row.what, &mut row.value, &mut row.known]);
    }
    texts
}

/// Every text of a view that a site can reach.
fn texts_of(view: &mut PackView) -> Vec<&mut String> {
    let document = &mut view.document;
    let mut texts = vec![
        &mut document.title,
        &mut document.site_name,
        &mut document.place,
        &mut document.installation,
        &mut document.designer,
        &mut document.date,
        &mut document.revision,
        &mut document.maker,
        &mut document.fingerprint,
        &mut document.caution_line,
        &mut view.summary,
    ];
    for fact in &mut view.facts {
        texts.extend([&mut fact.label, &mut fact.value]);
    }
    for caution in &mut view.cautions {
        texts.extend([&mut caution.title, &mut caution.text]);
    }
    for walk in &mut view.walks {
        texts.extend(texts_of_a_walk(walk));
    }
    for finding in &mut view.findings {
        texts.extend([
            &mut finding.id,
            &mut finding.subject,
            &mut finding.question,
            &mut finding.sentence,
            &mut finding.because,
            &mut finding.severity,
            &mut finding.demand,
            &mut finding.capacity,
            &mut finding.ratio,
            &mut finding.nominal,
            &mut finding.worst,
            &mut finding.deciding,
            &mut finding.source,
            &mut finding.known,
            &mut finding.confirm,
        ]);
        for measure in &mut finding.measures {
            texts.extend([&mut measure.what, &mut measure.write]);
        }
        for step in &mut finding.working {
            texts.extend([
                &mut step.title,
                &mut step.formula,
                &mut step.source,
                &mut step.known,
            ]);
            for line in step.given.iter_mut().chain(&mut step.gives) {
                texts.extend([
                    &mut line.symbol,
                    &mut line.meaning,
                    &mut line.value,
                    &mut line.known,
                ]);
            }
        }
    }
    for group in &mut view.questions {
        texts.push(&mut group.title);
        for row in &mut group.rows {
            texts.extend([&mut row.id, &mut row.ask, &mut row.note, &mut row.severity]);
        }
    }
    texts.extend(texts_of_structure(view.structure.as_mut()));
    texts.extend(texts_of_day_sheet(view.day_sheet.as_mut()));
    for table in &mut view.schedules {
        texts.extend([&mut table.title, &mut table.note]);
        for column in &mut table.columns {
            texts.extend([&mut column.heading, &mut column.unit]);
        }
        for cell in table.rows.iter_mut().flatten() {
            if let Cell::Text(text) | Cell::Unknown(text) = cell {
                texts.push(text);
            }
        }
    }
    for drawing in &mut view.drawings {
        texts.extend([
            &mut drawing.title,
            &mut drawing.scale,
            &mut drawing.alternative,
        ]);
    }
    for attachment in &mut view.attachments {
        texts.extend([
            &mut attachment.name,
            &mut attachment.media_type,
            &mut attachment.description,
        ]);
    }
    texts
}

fn texts_of_structure(part: Option<&mut StructureView>) -> Vec<&mut String> {
    let Some(part) = part else { return Vec::new() };
    let mut texts = vec![&mut part.statement];
    for result in &mut part.results {
        texts.extend([&mut result.ask, &mut result.ratio]);
    }
    let mut inputs: Vec<&mut Input> = Vec::new();
    for group in part.groups.iter_mut().chain(&mut part.factors) {
        texts.push(&mut group.title);
        inputs.extend(&mut group.inputs);
    }
    for input in inputs {
        texts.extend([&mut input.what, &mut input.value, &mut input.known]);
    }
    texts
}

fn texts_of_day_sheet(part: Option<&mut DaySheetView>) -> Vec<&mut String> {
    let Some(part) = part else { return Vec::new() };
    let mut texts = Vec::new();
    for lift in &mut part.lifts {
        texts.extend([
            &mut lift.what,
            &mut lift.mass,
            &mut lift.limit,
            &mut lift.index,
            &mut lift.how,
        ]);
    }
    for hanging in &mut part.hangings {
        texts.extend([&mut hanging.title, &mut hanging.wind]);
        texts.extend(&mut hanging.found);
        for step in &mut hanging.steps {
            texts.push(&mut step.what);
            texts.extend(&mut step.holds);
        }
    }
    texts
}

#[test]
fn the_list_of_texts_misses_none() {
    let marker = "marker-of-this-test";
    let value = serde_json::to_value(filled_with(marker)).expect("a view is data");
    let mut left = Vec::new();
    collect_other_texts(&value, marker, &mut left);
    left.retain(|text| !is_word_of_the_view(text));
    assert_eq!(left, Vec::<String>::new());
}

fn collect_other_texts(value: &Value, marker: &str, left: &mut Vec<String>) {
    match value {
        Value::String(text) if text != marker => left.push(text.clone()),
        Value::Array(items) => items
            .iter()
            .for_each(|item| collect_other_texts(item, marker, left)),
        Value::Object(fields) => fields
            .values()
            .for_each(|item| collect_other_texts(item, marker, left)),
        _ => {}
    }
}

/// Words that the view's own types write, and printed numbers.
fn is_word_of_the_view(text: &str) -> bool {
    let fixed = [
        "letter",
        "a4",
        "fails",
        "unknown",
        "not-sure",
        "holds",
        "outside",
        "answered",
        "not-covered",
        "start",
        "center",
        "end",
        "text",
        "number",
    ];
    fixed.contains(&text) || text.parse::<f64>().is_ok()
}

#[test]
fn hostile_text_never_fails_a_pack() {
    for (number, text) in HOSTILE.iter().enumerate() {
        match pack(&filled_with(text)) {
            Ok(pdf) => keep(&pdf, &format!("hostile-{number}.pdf")),
            Err(fault) => panic!("{text:?}: {fault}"),
        }
    }
}

#[test]
fn hostile_text_never_fails_a_workbook() {
    for text in HOSTILE {
        let view = filled_with(text);
        let written = workbook(&view.document, &view.schedules);
        assert!(
            written.is_ok(),
            "{text:?}: {}",
            written
                .err()
                .map(|fault| fault.to_string())
                .unwrap_or_default()
        );
    }
}

#[test]
fn an_empty_view_is_a_document_too() {
    let mut view = filled_with("");
    view.facts.clear();
    view.cautions.clear();
    view.findings.clear();
    view.questions.clear();
    view.schedules.clear();
    view.drawings.clear();
    view.attachments.clear();
    let set = pack(&view);
    assert!(
        set.is_ok(),
        "{}",
        set.err().map(|fault| fault.to_string()).unwrap_or_default()
    );
    assert!(workbook(&view.document, &view.schedules).is_ok());
}

#[test]
fn uneven_tables_are_set() {
    let mut view = invented::pack();
    view.schedules = vec![
        Table {
            title: "No columns".to_owned(),
            note: String::new(),
            columns: Vec::new(),
            rows: vec![vec![Cell::text("lost")]],
        },
        Table {
            title: "Uneven".to_owned(),
            note: String::new(),
            columns: vec![
                Column::words("One", 0),
                Column::numbers("Two", "V", u16::MAX),
            ],
            rows: vec![
                vec![],
                vec![Cell::number(f64::INFINITY, 2)],
                vec![Cell::text("a"), Cell::text("b"), Cell::text("c")],
            ],
        },
    ];
    let set = pack(&view);
    assert!(
        set.is_ok(),
        "{}",
        set.err().map(|fault| fault.to_string()).unwrap_or_default()
    );
    assert!(workbook(&view.document, &view.schedules).is_ok());
}
