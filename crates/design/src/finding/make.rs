//! From what a check concluded to a finding in words.

use super::tolerance::{Search, searched};
use super::working::{SourceNote, Working, in_words, working};
use super::{Finding, Missing, Reading, Subject};
use crate::asking::{Asking, Fact, Lack, Record};
use crate::check::Check;
use crate::figure::{Figure, Print};
use crate::outcome::{Answer, Comparison, Outcome};
use crate::plain::{not_known, plain};
use crate::question::{Question, question};
use crate::subject::About;
use crate::{Severity, Standing, Verdict};
use formula::Source;
use quantity::{Known, Word as _};

/// A verdict with what it was drawn from.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Judged {
    pub(crate) verdict: Verdict,
    /// Missing where a fact is, or where a calculation is out of reach.
    pub(crate) outcome: Option<Outcome>,
}

impl Judged {
    /// How hard the answer is strained; outside the reach of a calculation is the worst.
    pub(crate) fn strain(&self) -> f64 {
        self.outcome
            .map_or(f64::INFINITY, |outcome| outcome.strain())
    }
}

/// Draws the verdict. What would hold on a figure from memory is unknown until that figure is looked up.
pub(crate) fn judged(asking: &Asking<'_>, answer: Answer) -> Judged {
    let Ok(outcome) = answer else {
        let verdict = if asking.lacks.is_empty() && asking.pending.is_none() {
            Verdict::OutsideThisTool
        } else {
            Verdict::UnknownUntil
        };
        return Judged {
            verdict,
            outcome: None,
        };
    };
    let verdict = match &outcome {
        Outcome::Compared(comparison) if !comparison.is_finite() => Verdict::OutsideThisTool,
        Outcome::Compared(comparison) => held(asking, comparison.holds()),
        Outcome::Rule(kept) => held(asking, *kept),
        Outcome::Figure(_) => Verdict::FigureOnly,
    };
    Judged {
        verdict,
        outcome: Some(outcome),
    }
}

fn held(asking: &Asking<'_>, holds: bool) -> Verdict {
    if !holds {
        Verdict::Fails
    } else if asking.remembered().next().is_some() {
        Verdict::UnknownUntil
    } else {
        Verdict::Holds
    }
}

/// Answers the question for one subject, in full.
pub(crate) fn made<'s>(
    check: &Check,
    about: About<'s>,
    asking: &mut Asking<'s>,
    answer: &dyn Fn(&mut Asking<'s>) -> Answer,
) -> Finding {
    let (mut finding, nominal) = answered(check, about, asking, answer);
    let search = searched(asking, answer, nominal);
    settle(&mut finding, search);
    finding
}

/// Answers a question that takes every value at the bad end of its tolerance by itself: no worse corner is looked for.
pub(crate) fn made_at_the_bad_ends<'s>(
    check: &Check,
    about: About<'s>,
    asking: &mut Asking<'s>,
    answer: &dyn Fn(&mut Asking<'s>) -> Answer,
) -> Finding {
    answered(check, about, asking, answer).0
}

/// The answer with the values as they are handed out.
fn answered<'s>(
    check: &Check,
    about: About<'s>,
    asking: &mut Asking<'s>,
    answer: &dyn Fn(&mut Asking<'s>) -> Answer,
) -> (Finding, Judged) {
    asking.clear();
    asking.record = Some(Record::default());
    let given = answer(asking);
    let nominal = judged(asking, given);
    let record = asking.record.take().unwrap_or_default();
    (begun(check, about, asking, nominal, &record), nominal)
}

/// Everything but the tolerances.
fn begun(
    check: &Check,
    about: About<'_>,
    asking: &Asking<'_>,
    nominal: Judged,
    record: &Record,
) -> Finding {
    let print = asking.print();
    let because = because(asking, nominal, print);
    let asked = question(check.question);
    let (demand, capacity, ratio) = figures(nominal.outcome, print);
    let mut working = working(asking, record);
    working.extend(held_against(demand.as_ref(), capacity.as_ref()));
    if working.is_empty() && matches!(nominal.verdict, Verdict::Holds | Verdict::Fails) {
        // A rule without figures: the rule itself is the working.
        working.extend(asked.map(|question| in_words(&format!("The rule: {}.", question.rule))));
    }
    Finding {
        question: check.question.to_owned(),
        ask: asked.map_or_else(String::new, |question| question.ask.clone()),
        subject: subject(about),
        severity: asked.map_or(Severity::Life, |question| question.severity),
        standing: Standing::of(nominal.verdict, None),
        verdict: nominal.verdict,
        sentence: sentence(&record.said, &because),
        because,
        demand,
        capacity,
        ratio,
        worst: None,
        deciding: None,
        turned_by: Vec::new(),
        working,
        sources: asking
            .grounds()
            .map(|source| SourceNote::of(source, asking.looked_up(source)))
            .collect(),
        missing: asking.lacks.iter().map(missing).collect(),
        look_up: asking.remembered().map(Source::name).collect(),
        assumed: assumed(asking),
        confirm: asked.map_or_else(String::new, confirm),
        leaves_open: check.leaves_open.to_owned(),
    }
}

/// The last line of the working: demand beside capacity.
fn held_against(demand: Option<&Figure>, capacity: Option<&Figure>) -> Option<Working> {
    let (demand, capacity) = (demand?, capacity?);
    Some(in_words(&format!(
        "Demand against capacity: {}, {}; {}, {}.",
        demand.label, demand.text, capacity.label, capacity.text
    )))
}

fn confirm(question: &Question) -> String {
    question.confirm.clone()
}

/// Adds what the tolerances do.
fn settle(finding: &mut Finding, search: Search) {
    let Search {
        corner,
        deciding,
        turned_by,
    } = search;
    finding.standing = Standing::of(
        finding.verdict,
        corner.as_ref().map(|corner| corner.verdict),
    );
    if finding.standing == Standing::TurnsWithinTolerance {
        finding.because = turned(&finding.because, &turned_by);
        finding.sentence = format!("{} {}", finding.sentence, turn_words(&turned_by));
    }
    finding.worst = corner;
    finding.deciding = deciding;
    finding.turned_by = turned_by;
}

fn turned(because: &str, by: &[Reading]) -> String {
    format!("{because} {}", turn_words(by))
}

fn turn_words(by: &[Reading]) -> String {
    let names: Vec<String> = by.iter().map(|reading| plain(&reading.path)).collect();
    format!(
        "Fails at the bad end of the tolerances: measure {} more closely.",
        names.join(", and ")
    )
}

fn sentence(said: &str, because: &str) -> String {
    if said.is_empty() {
        because.to_owned()
    } else {
        format!("{said} {because}")
    }
}

/// Why the verdict is that one, in a few words.
fn because(asking: &Asking<'_>, judged: Judged, print: Print) -> String {
    match judged.verdict {
        Verdict::Holds => margin("Holds", judged.outcome, print),
        Verdict::Fails => {
            let fails = margin("Fails", judged.outcome, print);
            match looked_up(asking) {
                Some(works) => format!(
                    "{fails} Part of this is known from memory only: look it up in {works} before acting on it."
                ),
                None => fails,
            }
        }
        Verdict::FigureOnly => {
            "A figure for other answers; nothing here to hold it against.".to_owned()
        }
        Verdict::UnknownUntil => unknown(asking, judged, print),
        Verdict::OutsideThisTool => outside(asking),
    }
}

fn margin(word: &str, outcome: Option<Outcome>, print: Print) -> String {
    let by = match outcome {
        Some(Outcome::Compared(Comparison {
            demand, capacity, ..
        })) => print.distance(&demand.value, &capacity.value),
        _ => None,
    };
    by.map_or_else(|| format!("{word}."), |by| format!("{word} by {by}."))
}

fn unknown(asking: &Asking<'_>, judged: Judged, print: Print) -> String {
    if let Some(works) = looked_up(asking).filter(|_| judged.outcome.is_some()) {
        let would = margin("Would hold", judged.outcome, print);
        return format!("{would} Unknown until looked up in {works}: known from memory only.");
    }
    match &asking.pending {
        Some(pending) if asking.lacks.is_empty() => pending.clone(),
        _ => not_known(&asking.lacks),
    }
}

fn outside(asking: &Asking<'_>) -> String {
    match &asking.beyond {
        Some(beyond) if beyond.calculation.is_empty() => {
            format!(
                "Outside this tool: {}.",
                beyond.reach.why.trim_end_matches('.')
            )
        }
        Some(beyond) => format!(
            "Outside this tool: {} ({}): {}.",
            beyond.calculation,
            beyond.reach.input.replace('_', " "),
            beyond.reach.why.trim_end_matches('.')
        ),
        None => "Outside this tool: these values lead to no finite figure.".to_owned(),
    }
}

/// The works in which remembered figures must be looked up.
fn looked_up(asking: &Asking<'_>) -> Option<String> {
    let works: Vec<String> = asking.remembered().map(Source::name).collect();
    (!works.is_empty()).then(|| works.join("; "))
}

/// Demand, capacity and ratio as shown.
pub(super) fn figures(
    outcome: Option<Outcome>,
    print: Print,
) -> (Option<Figure>, Option<Figure>, Option<f64>) {
    match outcome {
        Some(Outcome::Compared(comparison)) => (
            Some(Figure::new(
                comparison.demand.label,
                &comparison.demand.value,
                print,
            )),
            Some(Figure::new(
                comparison.capacity.label,
                &comparison.capacity.value,
                print,
            )),
            comparison.ratio(),
        ),
        Some(Outcome::Figure(figure)) => (
            Some(Figure::new(figure.label, &figure.value, print)),
            None,
            None,
        ),
        Some(Outcome::Rule(_)) | None => (None, None, None),
    }
}

fn subject(about: About<'_>) -> Subject {
    Subject {
        name: about.name.into_owned(),
        path: about.origin.path.clone(),
        file: about.origin.file.to_string(),
        line: about.origin.line,
    }
}

fn path(lack: &Lack<'_>) -> String {
    lack.origin.path_of(lack.key)
}

fn missing(lack: &Lack<'_>) -> Missing {
    let whose = if lack.origin.path.is_empty() {
        String::new()
    } else {
        format!(" of {}", plain(&lack.origin.path))
    };
    let choice = lack
        .choice()
        .map_or_else(String::new, |choice| format!(", {choice}"));
    Missing {
        path: path(lack),
        measure: format!("{} {}{whose}{choice}", lack.verb(), lack.words()),
        write: lack.line(),
        file: lack.origin.file.to_string(),
        line: lack.origin.line,
    }
}

fn assumed(asking: &Asking<'_>) -> Vec<Reading> {
    let assumed = |fact: &&Fact<'_>| fact.known == Known::Assumed;
    asking
        .facts
        .iter()
        .filter(assumed)
        .map(|fact| reading(fact, asking.print()))
        .collect()
}

/// A fact as shown.
pub(crate) fn reading(fact: &Fact<'_>, print: Print) -> Reading {
    let place = fact.origin.field(fact.key);
    let part = if fact.part.is_empty() {
        String::new()
    } else {
        format!(" {}", fact.part)
    };
    Reading {
        path: format!("{}{part}", fact.origin.path_of(fact.key)),
        text: fact.text(print),
        known: fact.known.word().to_owned(),
        from_part: fact.origin.from_part(fact.key),
        file: place.map_or_else(
            || fact.origin.file.to_string(),
            |place| place.file.to_string(),
        ),
        line: place.map_or(fact.origin.line, |place| place.line),
    }
}
