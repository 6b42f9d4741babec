//! The workbench of one site: the drawing, the answers beside it, and the form to change it.

use super::shell::{Place, Shell};
use super::{answers, form};
use crate::serve::answering::Answered;
use crate::serve::store::Seen;
use maud::{Markup, html};
use site::Site;

/// What the page shows.
pub(super) struct Bench<'a> {
    /// Name of the job in addresses.
    pub(super) job: &'a str,
    /// What its files say.
    pub(super) seen: &'a Seen,
    /// The answers, where they are at hand.
    pub(super) answered: Option<&'a Answered>,
    /// What is drawn.
    pub(super) plan: &'a Markup,
    /// Path of the record that is to be changed; the list of them when missing.
    pub(super) of: Option<&'a str>,
    /// Which of the panels is open on a small screen.
    pub(super) panel: &'a str,
}

impl Bench<'_> {
    /// What the site is called.
    pub(super) fn title(&self) -> String {
        title(self.job, self.seen.site.as_deref())
    }

    /// The page.
    pub(super) fn page(&self) -> Markup {
        let title = self.title();
        let shell = Shell {
            title: &title,
            place: Place::Job(self.job, &title),
            styles: &[
                "workbench.css",
                "plan.css",
                "drawing.css",
                "answers.css",
                "form.css",
            ],
            modules: &["workbench.js"],
            class: "workbench",
        };
        shell.around(&html! {
            h1 class="unseen" { (title) }
            div class="bench" id="bench" data-job=(self.job) data-revision=(self.seen.revision) data-panel=(self.panel) {
                section class="panel" id="plan" aria-label="Plan" { (self.plan) }
                section class="panel" id="answers" aria-label="Answers" {
                    div class="panel-head" {
                        h2 { "Answers" }
                        p class="find-answer" {
                            label class="unseen" for="find-answer" { "Find among the answers" }
                            input id="find-answer" type="search" autocomplete="off" placeholder="Find …";
                        }
                    }
                    (answers::list(self.answered))
                }
                section class="panel drawer" id="edit" aria-label="Edit" {
                    div class="panel-head" {
                        h2 { "Edit" }
                        div class="steps-back" {
                            (step("undo", "Take back", self.seen.undo))
                            (step("redo", "Again", self.seen.redo))
                            button type="button" class="close" data-panel-to="answers" { "Close" }
                        }
                    }
                    div id="trouble" role="alert" {}
                    div id="trial" role="status" {}
                    (form::drawer(self.job, self.seen, self.of).1)
                }
            }
            nav class="bar" aria-label="Parts of the workbench" {
                a href="#plan" data-panel-to="plan" { "Plan" }
                a href="#answers" data-panel-to="answers" { "Answers" }
                a href={ "/jobs/" (self.job) "/edit" } data-panel-to="edit" { "Edit" }
                a href={ "/jobs/" (self.job) "/pictures" } { "Pictures" }
                a href={ "/jobs/" (self.job) "/papers" } { "Papers" }
            }
            div class="word" id="word" role="status" {}
        })
    }
}

/// What a site is called, or else its folder.
pub(super) fn title(job: &str, site: Option<&Site>) -> String {
    site.map_or_else(|| job.to_owned(), |site| site.site.name.to_string())
}

fn step(what: &str, words: &str, left: usize) -> Markup {
    html! { button type="button" id=(what) disabled[left == 0] { (words) } }
}
