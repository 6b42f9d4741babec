//! The papers of a site: made with a word on how far they are, listed, and handed out.

use super::problems::of_unread;
use super::shell::{Place, Shell};
use maud::{Markup, html};

/// The page; the list is filled in by the module. `unread` is what is wrong with the walks that were kept.
pub(super) fn page(job: &str, title: &str, unread: Option<&str>) -> Markup {
    let shell = Shell {
        title: &format!("Papers of {title}"),
        place: Place::Papers(job, title),
        styles: &["jobs.css"],
        modules: &["papers.js"],
        class: "papers",
    };
    shell.around(&html! {
        div class="leaf-of-paper" id="papers" data-job=(job) {
            div class="title-line" {
                h1 { "Papers" }
                div class="pressing" {
                    button type="button" class="first" id="make" { "Make the papers" }
                    button type="button" id="stop" hidden { "Stop" }
                }
            }
            div id="making" hidden {
                label for="progress" id="says" { "Making" }
                progress id="progress" max="1" value="0" {}
            }
            div id="unread" role="status" {
                @if let Some(unread) = unread { div class="trouble" { (of_unread(unread)) } }
            }
            div id="trouble" role="alert" {}
            p id="state" role="status" class="soft" {}
            ul class="rows paper-list" id="list" {}
        }
    })
}
