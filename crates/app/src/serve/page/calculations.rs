//! The list of all calculations, by discipline.

use super::shell::{Place, Shell};
use formula::{Discipline, Sheet, registry};
use maud::{Markup, html};
use quantity::Word as _;

/// The page.
pub(crate) fn page() -> Markup {
    let shell = Shell {
        title: "Calculations",
        place: Place::Calculations,
        styles: &["calculations.css"],
        modules: &["calculations.js"],
        class: "calculations",
    };
    shell.around(&html! {
        div class="leaf-of-paper" {
            h1 { "Calculations" }
            p class="find" {
                label for="find" { "Find among " (registry().len()) }
                input id="find" type="search" data-finds="#disciplines" autocomplete="off" placeholder="voltage, wind, anchor …";
            }
            p class="soft" id="found" role="status" {}
            div class="disciplines" id="disciplines" {
                @for discipline in Discipline::ALL { (of_discipline(*discipline)) }
            }
        }
    })
}

fn of_discipline(discipline: Discipline) -> Markup {
    let sheets = registry().iter().map(|calculation| calculation.sheet);
    let sheets: Vec<&Sheet> = sheets
        .filter(|sheet| sheet.discipline == discipline)
        .collect();
    html! {
        section class="discipline" data-group {
            h2 { (capital(discipline.word())) }
            ul class="rows" {
                @for sheet in sheets {
                    li data-entry {
                        a href={ "/calculations/" (sheet.name) } {
                            span class="name" { (sheet.name) }
                            span class="says" { (sheet.title()) }
                        }
                    }
                }
            }
        }
    }
}

/// A word with a capital letter.
pub(in crate::serve) fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
