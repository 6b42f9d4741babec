//! The answers of a site: how many of each verdict, and the findings by the questions of the trade, worst first.
//!
//! They are listed once for each state; a page that shows an earlier one is told what is different.

mod changes;
mod row;

pub(super) use changes::changes;

use super::marks::Mark;
use super::problems::of_unread;
use crate::serve::answering::Answered;
use design::{Answers, Covered, Finding, Question, Standing, State, question, topic_title};
use maud::{Markup, PreEscaped, html};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Findings that stood otherwise before, and how.
type Turned = BTreeMap<String, Option<Standing>>;

/// The answers as the page lists them, piece by piece.
#[derive(Debug, Default)]
pub(crate) struct Listed {
    /// Counts over everything.
    head: String,
    /// The topics in the order of their worst findings; those without any come last.
    topics: Vec<Topic>,
}

/// A topic of the trade as it is listed.
#[derive(Debug)]
struct Topic {
    name: String,
    /// Title and counts.
    summary: String,
    /// What has no answer here.
    left: String,
    /// Something of it is not settled.
    is_open: bool,
    rows: Vec<Row>,
}

/// A finding as it is listed.
#[derive(Debug, Clone)]
struct Row {
    name: String,
    markup: Arc<str>,
    /// Its place among the findings.
    at: usize,
}

impl Listed {
    /// Lists answers; what was listed the same before is taken from there.
    pub(crate) fn of(
        job: &str,
        (answers, turned): (&Answers, &Turned),
        unread: Option<&str>,
        before: Option<&Answered>,
    ) -> Self {
        let known = before.map(row::known).unwrap_or_default();
        let row =
            |at: usize, finding: &Arc<Finding>| row::listed(job, (at, finding), turned, &known);
        let topics = topics(answers).into_iter().map(|topic| Topic {
            name: topic.name.to_owned(),
            summary: summary(&topic).into_string(),
            left: without_answer(&topic.open).into_string(),
            is_open: topic.is_unsettled(),
            rows: topic.findings.iter().map(|(at, it)| row(*at, it)).collect(),
        });
        Self {
            topics: topics.collect(),
            head: head(answers, turned, unread).into_string(),
        }
    }
}

/// A topic with what was found and what stays open.
struct Gathered<'a> {
    name: &'a str,
    findings: Vec<(usize, &'a Arc<Finding>)>,
    open: Vec<&'a Covered>,
}

impl Gathered<'_> {
    fn counts(&self) -> BTreeMap<Mark, usize> {
        counts(self.findings.iter().map(|(_, finding)| finding.as_ref()))
    }

    fn is_unsettled(&self) -> bool {
        let settled = |mark: &Mark| matches!(mark, Mark::Holds | Mark::Figure);
        !self.counts().keys().all(settled)
    }
}

/// The answers, or that they are being worked.
pub(super) fn list(answered: Option<&Answered>) -> Markup {
    html! {
        div id="answers-list" data-revision=(answered.map_or("", |it| it.revision.as_str())) {
            @match answered {
                None => p class="waiting" role="status" { "The answers are being worked." },
                Some(Answered { refused: Some(why), .. }) => div class="trouble" { p class="strong" { "No answers." } p { (why) } },
                Some(answered) => (told(&answered.listed)),
            }
        }
    }
}

fn told(listed: &Listed) -> Markup {
    html! {
        div class="counted" { (PreEscaped(&listed.head)) }
        div class="topics" { @for topic in &listed.topics { (of_topic(topic)) } }
        p id="none-left" class="soft" hidden { "Nothing of that." }
    }
}

fn of_topic(topic: &Topic) -> Markup {
    html! {
        details class="topic" data-topic=(topic.name) open[topic.is_open] {
            (PreEscaped(&topic.summary))
            @for row in &topic.rows { (PreEscaped(&*row.markup)) }
            (PreEscaped(&topic.left))
        }
    }
}

/// How many of each verdict there are, and how many turned; before them which file beside the site counts for nothing.
fn head(answers: &Answers, turned: &Turned, unread: Option<&str>) -> Markup {
    html! {
        @if let Some(unread) = unread { div class="trouble" { (of_unread(unread)) } }
        (counted(answers))
        p class="turned-count" role="status" {
            @if !turned.is_empty() { (turned.len()) " turned since the last change." }
        }
    }
}

/// How many findings have each verdict, to be shown or left out.
fn counted(answers: &Answers) -> Markup {
    let counts = counts(answers.findings());
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
fn topics(answers: &Answers) -> Vec<Gathered<'_>> {
    let mut topics: Vec<Gathered<'_>> = Vec::new();
    let mut of = |name| -> usize {
        let known = topics.iter().position(|topic| topic.name == name);
        known.unwrap_or_else(|| {
            topics.push(Gathered {
                name,
                findings: Vec::new(),
                open: Vec::new(),
            });
            topics.len() - 1
        })
    };
    let topic = |id: &str| question(id).map_or("", Question::topic);
    let findings = answers.findings.iter();
    let places: Vec<usize> = findings.map(|it| of(topic(&it.question))).collect();
    let open = answers.coverage.iter();
    let open = open.filter(|it| it.findings.is_empty());
    let open: Vec<(usize, &Covered)> = open.map(|it| (of(topic(&it.question)), it)).collect();
    for (place, finding) in places.into_iter().zip(answers.findings.iter().enumerate()) {
        topics[place].findings.push(finding);
    }
    for (place, covered) in open {
        topics[place].open.push(covered);
    }
    topics
}

fn summary(topic: &Gathered<'_>) -> Markup {
    let title = topic_title(topic.name).unwrap_or("The site");
    html! {
        summary {
            h3 { (title) }
            span class="counts" {
                @for (mark, count) in topic.counts() {
                    span class="count" { (mark.drawn()) span class="unseen" { (mark.word()) " " } (count) }
                }
                @if !topic.open.is_empty() {
                    span class="count soft" { (Mark::NotCovered.drawn()) span class="unseen" { "Without an answer " } (topic.open.len()) }
                }
            }
        }
    }
}

/// Questions that apply and have no finding.
fn without_answer(open: &[&Covered]) -> Markup {
    html! {
        @if !open.is_empty() { details class="open-questions" {
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
        } }
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
