//! The entries of the parts files that a thing could be bought as, to find one in and take.

use super::calculations::capital;
use crate::serve::store::Seen;
use maud::{Markup, html};
use site::{Brought, PartChoice};

/// Figures that are shown of an entry before it is opened.
const SHOWN: usize = 3;

/// The entries for the record at a path.
pub(super) fn list(seen: &Seen, path: &str) -> Markup {
    let files = &seen.files;
    let choices = site::parts_for(&files.main, &files.beside, path, seen.units());
    let form = site::form(&files.main, &files.beside, path, seen.units());
    let fields = form.map(|form| form.fields).unwrap_or_default();
    let field = |label: &str| fields.iter().find(|field| field.label == label);
    let taken = field("part").and_then(|field| field.written.clone());
    // What the thing says itself in the same words is no other value.
    let said = |one: &&Brought| {
        let own = field(&one.label).and_then(|field| field.understood.as_ref());
        one.overruled && own.is_some_and(|own| *own != one.text)
    };
    html! {
        div class="choices" {
            @if choices.is_empty() {
                p { "The parts files have none of this kind." }
            } @else {
                p class="find" {
                    label for="find-part" { "Name, kind or figure" }
                    input id="find-part" type="search" data-finds="#part-choices" autocomplete="off" placeholder="24 V, 12 AWG …";
                }
                ul id="part-choices" { @for choice in &choices { (entry(path, choice, taken.as_deref() == Some(choice.id.as_str()), &choice.brings.iter().filter(said).map(|one| one.label.as_str()).collect::<Vec<_>>())) } }
            }
        }
    }
}

fn entry(path: &str, choice: &PartChoice, is_taken: bool, overruled: &[&str]) -> Markup {
    let lines = |from: usize, many: usize| {
        let some = choice.brings.iter().skip(from).take(many);
        let words = some.map(|one| format!("{} {}", one.label, one.text));
        words.collect::<Vec<_>>().join(" · ")
    };
    html! {
        li data-entry class=[is_taken.then_some("is-chosen")] {
            button type="button" data-part=(choice.id) data-path={ (path) ".part" } disabled[is_taken] {
                (choice.id) @if is_taken { ", taken" }
            }
            p { (lines(0, SHOWN)) }
            @if choice.brings.len() > SHOWN {
                details {
                    summary class="button" { "Brings " (choice.brings.len()) " values" span class="unseen" { " (" (choice.id) ")" } }
                    p class="soft" { (lines(SHOWN, usize::MAX)) }
                }
            }
            @if !overruled.is_empty() {
                p class="soft" { (capital(&overruled.join(", "))) ": the site says something else, and that counts." }
            }
        }
    }
}
