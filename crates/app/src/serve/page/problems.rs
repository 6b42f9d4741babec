//! What is wrong or doubtful in the files of a job.

use crate::serve::store::Seen;
use maud::{Markup, html};
use site::Problem;

/// What is wrong or doubtful in the files.
pub(super) fn problems(seen: &Seen) -> Markup {
    html! {
        div id="problems" {
            @if !seen.problems.is_empty() {
                details class="disclosed" open {
                    summary { (seen.problems.len()) " to be put right in the file" }
                    ul class="rows" { @for problem in seen.problems.iter() { li { (of_problem(problem)) } } }
                }
            }
        }
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
