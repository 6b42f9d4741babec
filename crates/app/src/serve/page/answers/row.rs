//! A finding on one line of the list.

use super::{Row, Turned};
use crate::serve::answering::Answered;
use crate::serve::items::items;
use crate::serve::page::marks::Mark;
use design::Finding;
use maud::{Markup, html};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Rows that were listed before, each with what it lists.
pub(super) type Known<'a> = BTreeMap<&'a str, (&'a Row, &'a Answered)>;

/// The rows of earlier answers.
pub(super) fn known(before: &Answered) -> Known<'_> {
    let rows = before.listed.topics.iter().flat_map(|topic| &topic.rows);
    rows.map(|row| (row.name.as_str(), (row, before))).collect()
}

/// The row of a finding; that of before where nothing about it is different.
pub(super) fn listed(
    job: &str,
    (at, finding): (usize, &Arc<Finding>),
    turned: &Turned,
    known: &Known<'_>,
) -> Row {
    let name = finding.name();
    let same = known.get(name.as_str()).filter(|(row, before)| {
        let was = before.answers.findings.get(row.at);
        was.is_some_and(|was| Arc::ptr_eq(was, finding) || was == finding)
            && before.turned.get(&name) == turned.get(&name)
    });
    let markup = match same {
        Some((row, _)) => row.markup.clone(),
        None => of_finding(job, (&name, finding), turned)
            .into_string()
            .into(),
    };
    Row { name, markup, at }
}

fn of_finding(job: &str, (name, finding): (&str, &Finding), turned: &Turned) -> Markup {
    let mark = Mark::from(finding.standing);
    let at = format!("/jobs/{job}/answers/{name}");
    html! {
        details class="finding" data-finding=(name) data-verdict=(mark.class()) data-items=(items(finding).join(" ")) data-at=(at) {
            summary {
                span class="verdict" { (mark.drawn()) (mark.word()) }
                @if let Some(was) = turned.get(name) {
                    span class="turned" {
                        @match was {
                            Some(was) => { "was " (Mark::from(*was).word()) },
                            None => "new",
                        }
                    }
                }
                span class="subject" { (finding.subject.name) }
                span class="sentence" { (finding.sentence) }
            }
            div class="opened" { a href=(at) { "Working and source" } }
        }
    }
}
