//! The answers of a site: how many of each verdict, and the findings by the questions of the trade, worst first.

use super::marks::Mark;
use crate::serve::answering::Answered;
use crate::serve::items::items;
use design::{Covered, Finding, Question, State, question, topic_title};
use maud::{Markup, html};
use std::collections::BTreeMap;

/// A topic of the trade with what was found and what stays open.
struct Topic<'a> {
    name: &'a str,
    findings: Vec<&'a Finding>,
    open: Vec<&'a Covered>,
}

/// The answers, or that they are being worked.
pub(super) fn list(job: &str, answered: Option<&Answered>) -> Markup {
    html! {
        div id="answers-list" data-revision=(answered.map_or("", |it| it.revision.as_str())) {
            @match answered {
                None => p class="waiting" role="status" { "The answers are being worked." },
                Some(Answered { refused: Some(why), .. }) => div class="trouble" { p class="strong" { "No answers." } p { (why) } },
                Some(answered) => (told(job, answered)),
            }
        }
    }
}

fn told(job: &str, answered: &Answered) -> Markup {
    let topics = topics(answered);
    let turned = answered.turned.len();
    html! {
        (counted(&answered.answers.findings))
        @if turned > 0 {
            p class="turned-count" { (turned) " turned since the last change." }
        }
        div class="topics" {
            @for topic in &topics { (of_topic(job, topic, answered)) }
        }
        p id="none-left" class="soft" hidden { "Nothing of that." }
    }
}

/// How many findings have each verdict, to be shown or left out.
fn counted(findings: &[Finding]) -> Markup {
    let counts = counts(findings);
    html! {
        div class="verdicts" role="group" aria-label="Show or leave out" {
            @for mark in Mark::OF_FINDINGS {
                @if let Some(count) = counts.get(&mark) {
                    button type="button" class="chip" aria-pressed="true" data-verdict=(mark.class()) title=(mark.meaning()) {
                        (mark.drawn()) span { (mark.word()) } span class="number" { (count) }
                    }
                }
            }
        }
    }
}

/// How many findings stand how.
fn counts<'f>(findings: impl IntoIterator<Item = &'f Finding>) -> BTreeMap<Mark, usize> {
    let mut counts = BTreeMap::new();
    for finding in findings {
        *counts.entry(Mark::from(finding.standing)).or_default() += 1;
    }
    counts
}

/// The topics in the order of their worst findings; those without any come last.
fn topics(answered: &Answered) -> Vec<Topic<'_>> {
    let mut topics: Vec<Topic<'_>> = Vec::new();
    let mut of = |name| -> usize {
        let known = topics.iter().position(|topic| topic.name == name);
        known.unwrap_or_else(|| {
            topics.push(Topic {
                name,
                findings: Vec::new(),
                open: Vec::new(),
            });
            topics.len() - 1
        })
    };
    let topic = |id: &str| question(id).map_or("", Question::topic);
    let places: Vec<usize> = answered
        .answers
        .findings
        .iter()
        .map(|it| of(topic(&it.question)))
        .collect();
    let open = answered
        .answers
        .coverage
        .iter()
        .filter(|it| it.findings.is_empty());
    let open: Vec<(usize, &Covered)> = open.map(|it| (of(topic(&it.question)), it)).collect();
    for (place, finding) in places.into_iter().zip(&answered.answers.findings) {
        topics[place].findings.push(finding);
    }
    for (place, covered) in open {
        topics[place].open.push(covered);
    }
    topics
}

fn of_topic(job: &str, topic: &Topic<'_>, answered: &Answered) -> Markup {
    let counts = counts(topic.findings.iter().copied());
    let unsettled = counts
        .keys()
        .any(|mark| !matches!(mark, Mark::Holds | Mark::Figure));
    let title = topic_title(topic.name).unwrap_or("The site");
    html! {
        details class="topic" data-topic=(topic.name) open[unsettled] {
            summary {
                h3 { (title) }
                span class="counts" {
                    @for (mark, count) in &counts {
                        span class="count" { (mark.drawn()) span class="unseen" { (mark.word()) " " } (count) }
                    }
                    @if !topic.open.is_empty() {
                        span class="count soft" { (Mark::NotCovered.drawn()) span class="unseen" { "Without an answer " } (topic.open.len()) }
                    }
                }
            }
            @for finding in &topic.findings { (row(job, finding, answered)) }
            @if !topic.open.is_empty() { (without_answer(&topic.open)) }
        }
    }
}

fn row(job: &str, finding: &Finding, answered: &Answered) -> Markup {
    let (mark, name) = (Mark::from(finding.standing), finding.name());
    let at = format!("/jobs/{job}/answers/{name}");
    html! {
        details class="finding" data-finding=(name) data-verdict=(mark.class()) data-items=(items(finding).join(" ")) data-at=(at) {
            summary {
                span class="verdict" { (mark.drawn()) (mark.word()) }
                @if let Some(was) = answered.turned.get(&name) {
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

/// Questions that apply and have no finding.
fn without_answer(open: &[&Covered]) -> Markup {
    html! {
        details class="open-questions" {
            summary { (Mark::NotCovered.drawn()) (open.len()) " without an answer here" }
            ul class="rows" {
                @for covered in open {
                    li {
                        p { (covered.ask) }
                        p class="soft" {
                            (said(covered.state))
                            @if !covered.note.is_empty() { " " (covered.note) }
                        }
                    }
                }
            }
        }
    }
}

fn said(state: State) -> &'static str {
    match state {
        State::NothingToAsk => "The site describes nothing that it could be asked of.",
        State::NotYetCovered => "Not covered by this tool: somebody competent answers it.",
        State::Unknown => "Waits for something to be measured or looked up.",
        State::Answered | State::AnsweredInPart => "",
    }
}
