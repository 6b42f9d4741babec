//! One finding the way a good handbook would set it: figures, tolerances, what is missing, working, sources.

use super::marks::Mark;
use crate::serve::items::path;
use design::{Finding, Line, Reading, Working};
use maud::{Markup, html};
use quantity::Word as _;

/// Everything under a finding's sentence.
pub(super) fn in_full(job: &str, finding: &Finding) -> Markup {
    html! {
        div class="in-full" id="in-full" {
            p class="ask" { (finding.ask) }
            (seen(job, finding))
            (figures(finding))
            (tolerances(finding))
            (missing(job, finding))
            (to_look_up(finding))
            (assumed(finding))
            (working(finding))
            (sources(finding))
            @if !finding.confirm.is_empty() { section { h4 { "On site" } p { (finding.confirm) } } }
            @if !finding.leaves_open.is_empty() { section { h4 { "Left open by this answer" } p { (finding.leaves_open) } } }
            p class="soft" { "Written at " span class="typed" { (finding.subject.file) ":" (finding.subject.line) } "." }
        }
    }
}

/// Where it can be looked at.
fn seen(job: &str, finding: &Finding) -> Markup {
    html! {
        @if let Some(group) = papers::pictures::of_finding(finding) {
            p { a class="button" href={ "/jobs/" (job) "/pictures#" (group) } { "See it drawn" } }
        }
        @if finding.question.starts_with("walk-") {
            p { a class="button" href={ "/jobs/" (job) "/walk" } { "Watch it" } }
        }
    }
}

/// Mark, word and sentence.
pub(super) fn said(finding: &Finding) -> Markup {
    html! {
        p { (Mark::from(finding.standing).said()) " " span class="soft" { "at stake: " (finding.severity.word()) } }
        p class="strong" { (finding.sentence) }
    }
}

fn figures(finding: &Finding) -> Markup {
    html! {
        dl class="figures" {
            @if let Some(demand) = &finding.demand {
                div { dt { "Demand" } dd { (demand.text) } dd class="soft" { (demand.label) } }
            }
            @if let Some(capacity) = &finding.capacity {
                div { dt { "Capacity" } dd { (capacity.text) } dd class="soft" { (capacity.label) } }
            }
            @if let Some(ratio) = finding.ratio {
                div { dt { "Ratio" } dd { (format!("{ratio:.2}")) } dd class="soft" { "demand to capacity" } }
            }
        }
    }
}

fn tolerances(finding: &Finding) -> Markup {
    let text = |figure: &Option<design::Figure>| {
        figure
            .as_ref()
            .map_or("–", |figure| figure.text.as_str())
            .to_owned()
    };
    html! {
        @if finding.worst.is_some() || finding.deciding.is_some() {
            section {
                h4 { "At the bad end of every tolerance" }
                @if let Some(worst) = &finding.worst {
                    p { (super::calculations::capital(worst.verdict.words())) ": demand " (text(&worst.demand)) ", capacity " (text(&worst.capacity)) "." }
                }
                @if let Some(deciding) = &finding.deciding {
                    p {
                        "The deciding measurement "
                        @if deciding.turns { "turns the verdict by itself: " } @else { "moves the answer most: " }
                        (reading(&deciding.reading)) "."
                    }
                }
            }
        }
    }
}

fn reading(reading: &Reading) -> Markup {
    html! { button type="button" class="thing" data-edit=(path(&reading.path)) { (reading.path) } " = " (reading.text) }
}

fn missing(job: &str, finding: &Finding) -> Markup {
    html! {
        @if !finding.missing.is_empty() {
            section {
                h4 { "To be measured" }
                ul class="missing" {
                    @for missing in &finding.missing {
                        li {
                            p { (missing.measure) }
                            p { "Write " span class="typed" { (missing.write) } }
                            a class="button" href={ "/jobs/" (job) "/edit?of=" (owner(&path(&missing.path))) } data-edit=(path(&missing.path)) { "Write it" }
                        }
                    }
                }
            }
        }
    }
}

/// The record that a value belongs to.
pub(super) fn owner(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(owner, _)| owner)
}

fn to_look_up(finding: &Finding) -> Markup {
    html! {
        @if !finding.look_up.is_empty() {
            section {
                h4 { "To be looked up" }
                @for source in &finding.look_up {
                    p { (source) ": known from memory only. Where it says what the working uses, write" }
                    pre class="typed" { "[[looked_up]]\nsource = \"" (source) "\"\nedition = \"…\"\nsays = \"…\"\nby = \"…\"\non = …" }
                }
            }
        }
    }
}

fn assumed(finding: &Finding) -> Markup {
    html! {
        @if !finding.assumed.is_empty() {
            section {
                h4 { "Assumed, never measured" }
                ul { @for one in &finding.assumed { li { (reading(one)) } } }
            }
        }
    }
}

fn working(finding: &Finding) -> Markup {
    html! {
        @if !finding.working.is_empty() {
            section {
                h4 { "Working" }
                ol class="steps" { @for step in &finding.working { li { (of_step(step)) } } }
            }
        }
    }
}

fn of_step(step: &Working) -> Markup {
    html! {
        p { (step.title) }
        @if !step.formula.is_empty() {
            pre class="formula" { (step.formula) }
            table class="symbols" {
                tbody {
                    @for line in &step.given { (symbol("given", line)) }
                    @for line in &step.gives { (symbol("gives", line)) }
                }
            }
            @if !step.calculation.is_empty() {
                p { a href={ "/calculations/" (step.calculation) (inputs(step)) } { "Work it with other values" } }
            }
        }
    }
}

fn symbol(role: &str, line: &Line) -> Markup {
    html! {
        tr class=(role) {
            th scope="row" { (line.letter) }
            td class="value" { "= " (line.value.text) }
            td {
                (line.meaning.trim_end_matches('.'))
                @if !line.from.is_empty() { span class="soft" { " ← " (line.from) } }
            }
        }
    }
}

/// The inputs of a step as an address carries them.
fn inputs(step: &Working) -> String {
    let pairs = step
        .given
        .iter()
        .map(|line| format!("{}={}", coded(&line.name), coded(&line.value.text)));
    format!("?{}", pairs.collect::<Vec<_>>().join("&"))
}

/// Text as it stands in a query.
fn coded(text: &str) -> String {
    let plain = |byte: u8| byte.is_ascii_alphanumeric() || b"-_.~".contains(&byte);
    text.bytes()
        .map(|byte| {
            if plain(byte) {
                char::from(byte).to_string()
            } else {
                format!("%{byte:02X}")
            }
        })
        .collect()
}

fn sources(finding: &Finding) -> Markup {
    html! {
        @if !finding.sources.is_empty() {
            section {
                h4 { "Sources" }
                ul {
                    @for source in &finding.sources {
                        li {
                            (source.name()) " (" (source.evidence)
                            @if !source.seen.is_empty() { ": " (source.seen) }
                            ")"
                        }
                    }
                }
            }
        }
    }
}
