//! What is wrong or doubtful in the files of a job, and what of them cannot be read.

use crate::serve::store::Seen;
use maud::{Markup, html};
use site::Problem;

/// What is wrong or doubtful in the files.
pub(super) fn problems(seen: &Seen) -> Markup {
    let unread = seen.files.walks_unread();
    let count = seen.to_be_put_right();
    html! {
        div id="problems" {
            @if count > 0 {
                details class="disclosed" open {
                    summary { (count) " to be put right in the file" @if unread.is_some() { "s" } }
                    ul class="rows" {
                        @for problem in seen.problems.iter() { li { (of_problem(problem)) } }
                        @if let Some(unread) = &unread { li { (of_unread(unread)) } }
                    }
                }
            }
        }
    }
}

/// That the results of walks beside the site cannot be read: what is wrong first, then what is to be done.
pub(super) fn of_unread(unread: &str) -> Markup {
    let (what, then) = unread.split_once(". ").unwrap_or((unread, ""));
    html! {
        p class="strong" { (what.trim_end_matches('.')) "." }
        @if !then.is_empty() { p { (then) } }
        p { "Until then answers and papers rest on no walk that was kept." }
    }
}

fn of_problem(problem: &Problem) -> Markup {
    html! {
        p class="strong" { (problem.what.replace('`', "")) "." }
        @if let Some(expected) = &problem.expected { p { "Expected: " (expected.replace('`', "")) "." } }
        @if let Some(write) = &problem.write { p { "Write " span class="typed" { (write) } } }
        p class="soft typed" { (problem.file) ":" (problem.line) }
    }
}
