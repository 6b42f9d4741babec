//! The model as a form: the records of a site, and the values of one, each with how it is understood.

use super::calculations::capital;
use super::{marked, problems};
use crate::serve::store::Seen;
use maud::{Markup, html};
use site::{FieldKind, Form, FormField, FormRecord};

/// What is to be put right in the files, and the record at a path with its values; the list of records where there is none.
/// The digits tell it from every other.
pub(super) fn drawer(job: &str, seen: &Seen, of: Option<&str>) -> (String, Markup) {
    let (main, beside) = (&seen.files.main, &seen.files.beside);
    let form = of.and_then(|path| site::form(main, beside, path, seen.units()));
    let inside = html! {
        (problems::problems(seen))
        div id="record" {
            @match &form {
                Some(form) => (record(job, form)),
                None => (list(job, &site::records(main, beside))),
            }
        }
    };
    marked("form", &inside)
}

fn link(job: &str, path: &str, words: &str) -> Markup {
    html! { a href={ "/jobs/" (job) "/edit?of=" (path) } data-record=(path) { (words) } }
}

fn named(record: &FormRecord) -> String {
    if record.path.is_empty() {
        "The site as a whole".to_owned()
    } else {
        capital(&record.label)
    }
}

fn list(job: &str, records: &[FormRecord]) -> Markup {
    html! {
        p class="find" {
            label for="find-record" { "What is to be changed" }
            input id="find-record" type="search" data-finds="#records" autocomplete="off" placeholder="leaf, reader, cable …";
        }
        ul class="rows" id="records" {
            @for record in records {
                li data-entry {
                    (link(job, &record.path, &named(record)))
                    span class="soft" { " " (record.keys.0) " of " (record.keys.1) " written" }
                }
            }
        }
    }
}

fn record(job: &str, form: &Form) -> Markup {
    let own = form.fields.iter().filter(|field| !is_records(field));
    let (written, free): (Vec<&FormField>, Vec<&FormField>) =
        own.partition(|field| field.written.is_some() || field.required);
    let below = form
        .fields
        .iter()
        .filter(|field| is_records(field) && !field.records.is_empty());
    let below: Vec<&FormField> = below.collect();
    let path = &form.record.path;
    html! {
        p { a class="button" href={ "/jobs/" (job) "/edit" } data-record="*" { "All parts" } }
        h3 tabindex="-1" id="record-name" { (named(&form.record)) }
        @for field in written { (of_field(field)) }
        @if !below.is_empty() {
            h4 { "Belonging to it" }
            ul class="rows" {
                @for field in below {
                    @for inner in &field.records { li { (link(job, inner, &said(path, inner))) } }
                }
            }
        }
        @if !free.is_empty() {
            details class="disclosed" {
                summary { "More that can be written (" (free.len()) ")" }
                @for field in free { (of_field(field)) }
            }
        }
        @if path.contains('.') {
            p { button type="button" data-remove=(path) { "Take it out" } }
        }
    }
}

/// A record in the words of its path below another: `post latch`.
fn said(above: &str, path: &str) -> String {
    let rest = path.strip_prefix(above).unwrap_or(path);
    capital(&rest.trim_start_matches('.').replace(['.', '_'], " "))
}

fn is_records(field: &FormField) -> bool {
    matches!(field.kind, FieldKind::Record | FieldKind::Records)
}

fn of_field(field: &FormField) -> Markup {
    let id = format!("f-{}", field.path.replace('.', "-"));
    let says = format!("{id}-says");
    let text = field.written.as_deref().unwrap_or_default();
    html! {
        div class="field" data-field=(field.path) {
            label for=(id) { (capital(&field.label)) @if field.required { span class="soft" { " (must be there)" } } }
            div class="line" {
                @match field.kind {
                    FieldKind::Word => (select(field, (&id, &says), field.words.iter().map(|(word, _)| word.as_str()))),
                    FieldKind::YesNo => (select(field, (&id, &says), ["true", "false"])),
                    _ => input id=(id) data-path=(field.path) value=(text) placeholder=(example(field)) autocomplete="off" autocapitalize="off"
                        spellcheck="false" aria-describedby=(says);,
                }
                button type="button" class="plain" data-try=(field.path) hidden { "Try" }
            }
            div class="says" id=(says) data-says { (meaning(field)) }
            @if field.label == "part" {
                details class="parts" data-parts=(super::finding::owner(&field.path)) { summary { "Choose from the parts file" } }
            }
        }
    }
}

fn select<'w>(
    field: &FormField,
    (id, says): (&str, &str),
    words: impl IntoIterator<Item = &'w str>,
) -> Markup {
    let text = field.written.as_deref().unwrap_or_default();
    html! {
        select id=(id) data-path=(field.path) aria-describedby=(says) {
            @if field.written.is_none() { option value="" selected { "not written" } }
            @for word in words {
                option value=(word) selected[word == text] {
                    @match (field.kind, word) {
                        (FieldKind::YesNo, "true") => "yes",
                        (FieldKind::YesNo, _) => "no",
                        _ => (word),
                    }
                }
            }
        }
    }
}

fn example(field: &FormField) -> String {
    match &field.example {
        Some(serde_json::Value::String(text)) => text.clone(),
        Some(other) => other.to_string(),
        None => String::new(),
    }
}

/// How the value is understood, and what the key means.
fn meaning(field: &FormField) -> Markup {
    let understood = field.understood.as_deref();
    let written = field.written.as_deref();
    html! {
        @if let Some(understood) = understood.filter(|it| Some(*it) != written) { p class="understood" { "Read as " (understood) "." } }
        @if let Some(known) = field.known.as_deref().filter(|it| *it != "stated") { p class="understood" { (capital(known)) "." } }
        @if field.from_part { p class="understood" { "From the parts file." } }
        p { (field.meaning) }
    }
}
