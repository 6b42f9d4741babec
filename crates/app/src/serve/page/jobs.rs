//! The list of jobs, and ways to begin one.

use super::marks::Mark;
use super::shell::{Place, Shell};
use crate::serve::workbench::JobLine;
use maud::{Markup, html};

/// The page.
pub(super) fn page(jobs: &[JobLine]) -> Markup {
    let shell = Shell {
        title: "Jobs",
        place: Place::Jobs,
        styles: &["jobs.css"],
        modules: &["jobs.js"],
        class: "jobs",
    };
    shell.around(&html! {
        div class="leaf-of-paper" {
            div class="title-line" {
                h1 { "Jobs" }
                div class="pressing" {
                    button type="button" class="first" data-open="survey" { "New job" }
                    button type="button" data-open="import" { "Bring in a file" }
                }
            }
            (survey())
            (import())
            @if jobs.len() > 4 {
                p class="find" {
                    label for="find" { "Find" }
                    input id="find" type="search" data-finds="#jobs" autocomplete="off";
                }
            }
            (list(jobs))
        }
    })
}

fn list(jobs: &[JobLine]) -> Markup {
    html! {
        ul class="job-list" id="jobs" {
            @for job in jobs { li data-entry { (line(job)) } }
            @if jobs.is_empty() { li class="waiting" { "There is no job in this folder yet." } }
        }
    }
}

fn line(job: &JobLine) -> Markup {
    let refused = job.refused.as_ref().and_then(|told| told["what"].as_str());
    html! {
        a class="job" href={ "/jobs/" (job.name) } {
            span class="job-title" { (job.title) }
            @if let Some(why) = refused {
                span class="worst" { "It cannot be opened: " (why) }
            } @else if job.ready {
                span class="counts" {
                    (count(Mark::Fails, job.fails, "fail")) (count(Mark::Unknown, job.unknown, "unknown")) (count(Mark::Holds, job.holds, "hold"))
                }
                @match &job.worst {
                    Some(worst) => span class="worst" { (worst) },
                    None => span class="worst" { "Everything that is asked here holds." },
                }
            } @else {
                span class="worst soft" { "The answers are being worked." }
            }
            @if job.problems > 0 { span class="worst" { (job.problems) " to be put right in the file." } }
        }
        p class="job-foot" {
            span class="soft" { "In " span class="typed" { (job.name) } }
            span class="soft" { "Touched " time datetime=(job.touched) { (job.touched.replace(['T', 'Z'], " ").trim()) } }
            a href={ "/jobs/" (job.name) "/papers" } { "Papers" span class="unseen" { " of " (job.title) } }
            a href={ "/api/jobs/" (job.name) "/site.toml" } download { "Site file" span class="unseen" { " of " (job.title) } }
            button type="button" class="plain" data-copy=(job.name) { "Copy" span class="unseen" { " " (job.title) } }
        }
    }
}

fn count(mark: Mark, count: usize, word: &str) -> Markup {
    html! { @if count > 0 { span class="count" { (mark.drawn()) (count) " " (word) } } }
}

/// The questions of the survey, filled in by the module.
fn survey() -> Markup {
    html! {
        form class="begin" id="survey" hidden {
            h2 { "A first site from a few answers" }
            p class="soft" { "Whatever is not asked here is taken as usual and marked as assumed. Measure it, and write what is so." }
            div id="questions" {}
            p class="pressing" {
                button type="submit" class="first" { "Make it" }
                button type="button" data-close { "Leave it" }
            }
            div role="alert" data-trouble {}
        }
    }
}

fn import() -> Markup {
    html! {
        form class="begin" id="import" hidden {
            h2 { "Bring in a site file" }
            div class="field" {
                label for="import-name" { "Name of its folder" }
                input id="import-name" name="name" required autocomplete="off" placeholder="north-yard";
            }
            div class="field" {
                label for="import-file" { "Site file, and the files beside it: parts, prices, weather" }
                input id="import-file" name="file" type="file" multiple required;
            }
            div id="import-asked" role="status" {}
            p class="pressing" {
                button type="submit" class="first" { "Bring it in" }
                button type="button" data-close { "Leave it" }
            }
            div role="alert" data-trouble {}
        }
    }
}
