//! One calculation: what it takes as a form, what it gives at once, forward or backward, with its source.

use super::shell::{Place, Shell};
use formula::arguments::{ArgumentProblem, Asked, example, read};
use formula::handbook::{example_inputs, example_line};
use formula::solve::{Found, Place as Where, Solved, solve};
use formula::{Calculation, Sheet, Symbol};
use maud::{Markup, html};
use quantity::{Kind, Sort, UnitSystem, Value, print_kind, print_value, read_value};

/// The key of an address that says which units to print in.
const UNITS: &str = "units";

/// What somebody asks of a calculation.
#[derive(Debug, Clone)]
pub(crate) struct Question {
    pairs: Vec<(String, String)>,
    units: UnitSystem,
    /// Nobody has written anything: an example stands in the form.
    is_example: bool,
}

impl Question {
    /// Reads the pairs of an address; none at all gives the example of the calculation.
    pub(crate) fn of(calculation: &Calculation, pairs: Vec<(String, String)>) -> Self {
        let si = pairs
            .iter()
            .any(|(key, value)| key == UNITS && value == "si");
        let written = |(key, value): &(String, String)| key != UNITS && !value.trim().is_empty();
        let mut pairs: Vec<_> = pairs.into_iter().filter(written).collect();
        let is_example = pairs.is_empty();
        if is_example {
            pairs = example_inputs(calculation).into_iter().collect();
        }
        Self {
            pairs,
            units: if si {
                UnitSystem::Si
            } else {
                UnitSystem::UsCustomary
            },
            is_example,
        }
    }

    fn text(&self, name: &str) -> &str {
        let pair = self.pairs.iter().find(|(key, _)| key == name);
        pair.map_or("", |(_, text)| text)
    }

    /// The line that asks the same at the command line.
    fn line(&self, sheet: &Sheet) -> String {
        let pairs = self
            .pairs
            .iter()
            .map(|(key, text)| format!(" {key}=\"{text}\""));
        let units = if self.units == UnitSystem::Si {
            " --si"
        } else {
            ""
        };
        format!(
            "gatewright calc {}{}{units}",
            sheet.name,
            pairs.collect::<String>()
        )
    }
}

/// What comes of a question.
enum Answer {
    Gives(Vec<Value>),
    Found(Solved, Option<String>),
    OutOfReach(String),
    Refused(Vec<ArgumentProblem>),
}

impl Answer {
    fn to(calculation: &Calculation, question: &Question) -> Self {
        match read(calculation, &question.pairs) {
            Err(problems) => Self::Refused(problems),
            Ok(Asked::Forward(inputs)) => match calculation.evaluate(&inputs) {
                Ok(outputs) => Self::Gives(outputs),
                Err(refusal) => Self::OutOfReach(refusal.to_string()),
            },
            Ok(Asked::Backward(backward)) => match solve(calculation, &backward) {
                Ok(solved) => Self::Found(solved, backward.note),
                Err(refusal) => Self::OutOfReach(refusal.to_string()),
            },
        }
    }

    fn problems(&self) -> &[ArgumentProblem] {
        match self {
            Self::Refused(problems) => problems,
            _ => &[],
        }
    }
}

/// The page of a calculation with the answer to a question.
pub(crate) fn page(calculation: &Calculation, question: &Question) -> Markup {
    let sheet = calculation.sheet;
    let answer = Answer::to(calculation, question);
    let mut paragraphs = sheet.paragraphs();
    let title = if paragraphs.is_empty() {
        String::new()
    } else {
        paragraphs.remove(0)
    };
    let shell = Shell {
        title: sheet.name,
        place: Place::Calculations,
        styles: &["calculations.css"],
        modules: &["calculations.js"],
        class: "calculation",
    };
    shell.around(&html! {
        div class="leaf-of-paper" {
            h1 { (sheet.name) }
            p { (title) }
            pre class="formula" tabindex="0" aria-label="Formula" { (sheet.formula) }
            div class="sheet-of-work" {
                (form(sheet, question, answer.problems()))
                section class="gives" id="answer" aria-live="polite" aria-label="Answer" { (answered(sheet, question, &answer)) }
                section class="notes" { (notes(calculation, question, &paragraphs)) }
            }
        }
    })
}

fn form(sheet: &Sheet, question: &Question, problems: &[ArgumentProblem]) -> Markup {
    let outputs: Vec<&Symbol> = sheet
        .outputs
        .iter()
        .filter(|output| matches!(output.sort, Sort::Quantity(_)))
        .filter(|output| !sheet.inputs.iter().any(|input| input.name == output.name))
        .collect();
    let asked = outputs
        .iter()
        .any(|output| !question.text(output.name).is_empty());
    html! {
        form class="takes" data-live-form method="get" action={ "/calculations/" (sheet.name) } {
            h2 { "It takes" }
            @if question.is_example { p class="soft" { "Filled in as an example; write your own values." } }
            @for input in sheet.inputs { (field((input, true), question, problems)) }
            @if !outputs.is_empty() {
                details class="disclosed" id="backward" open[asked] {
                    summary { "Backward: say what shall come out" }
                    div class="wanted" {
                        p class="soft" { "Write " span class="typed" { "?" } " for the one value above that is looked for, and here what one result shall be." }
                        @for output in &outputs { (field((output, false), question, problems)) }
                    }
                }
            }
            (units(question))
            p class="pressing" {
                button type="submit" class="first" { "Work it out" }
                a class="button" href={ "/calculations/" (sheet.name) } { "Example" }
            }
        }
    }
}

fn units(question: &Question) -> Markup {
    let si = question.units == UnitSystem::Si;
    html! {
        div class="field" {
            label for="units" { "Answer in" }
            div class="line" {
                select id="units" name=(UNITS) {
                    option value="us" selected[!si] { "feet, pounds, °F" }
                    option value="si" selected[si] { "meters, kilograms, °C" }
                }
            }
        }
    }
}

fn field(
    (symbol, is_input): (&Symbol, bool),
    question: &Question,
    problems: &[ArgumentProblem],
) -> Markup {
    let text = question.text(symbol.name);
    let mine: Vec<&ArgumentProblem> = problems
        .iter()
        .filter(|it| it.name == symbol.name)
        .collect();
    let (id, says) = (format!("v-{}", symbol.name), format!("s-{}", symbol.name));
    let quantity = matches!(symbol.sort, Sort::Quantity(_));
    html! {
        div class="field" {
            label for=(id) { (symbol.meaning.trim_end_matches('.')) " " i class="letter" { (symbol.letter) } }
            div class="line" {
                @if let Sort::Words(words) = symbol.sort {
                    select id=(id) name=(symbol.name) aria-describedby=(says) {
                        @for word in words { option value=(word) selected[*word == text] { (word) } }
                    }
                } @else {
                    input id=(id) name=(symbol.name) value=(text) placeholder=(example(symbol.sort)) autocomplete="off"
                        autocapitalize="off" spellcheck="false" aria-describedby=(says) aria-invalid[!mine.is_empty()];
                }
                @if quantity && is_input {
                    button type="button" data-look=(id) hidden { "Look for it" }
                }
            }
            div id=(says) class="says" data-says=(symbol.name) { (understood(symbol, text, question.units, &mine)) }
        }
    }
}

/// How a value was understood, or what is wrong with it.
fn understood(
    symbol: &Symbol,
    text: &str,
    units: UnitSystem,
    problems: &[&ArgumentProblem],
) -> Markup {
    let read = read_value(symbol.sort, text)
        .ok()
        .map(|value| print_value(&value, units));
    html! {
        @if problems.is_empty() {
            @if text == "?" { "Looked for." }
            @else if let Some(read) = read.filter(|read| read != text) { "Read as " (read) "." }
            @else { (kind(symbol.sort)) }
        }
        @for problem in problems {
            div class="wrong" {
                (super::calculations::capital(&problem.what)) "."
                @if let Some(write) = &problem.write { " Write, for example, " span class="typed" { (write) } "." }
            }
        }
    }
}

/// How a value of a sort is written.
fn kind(sort: Sort) -> String {
    match sort {
        Sort::Quantity(Kind::Ratio) => "A ratio, such as 0.8 or 2.5 %.".to_owned(),
        Sort::Quantity(kind) => {
            let article = super::calculations::capital(kind.with_article());
            format!("{article}, such as {}.", kind.example())
        }
        Sort::Count => "A whole number.".to_owned(),
        Sort::Conductor => "A conductor size, such as 18 AWG or 1.5 mm².".to_owned(),
        Sort::Words(_) => String::new(),
    }
}

fn answered(sheet: &Sheet, question: &Question, answer: &Answer) -> Markup {
    html! {
        h2 { "It gives" }
        @match answer {
            Answer::Gives(outputs) => dl {
                @for (symbol, value) in sheet.outputs.iter().zip(outputs) {
                    div {
                        dt { (symbol.meaning.trim_end_matches('.')) }
                        dd { small { (symbol.letter) " = " } (print_value(value, question.units)) }
                    }
                }
            },
            Answer::Found(solved, note) => { (found(solved, note.as_deref(), question.units)) },
            Answer::OutOfReach(why) => {
                p class="strong" { "Out of reach." }
                p { (why) "." }
                p class="soft" { "It holds for: " (sheet.validity) }
            },
            Answer::Refused(problems) => {
                p class="strong" { "Nothing yet." }
                p { "To be put right: " (problems.iter().map(|it| it.name.as_str()).collect::<Vec<_>>().join(", ")) "." }
                @let elsewhere = problems.iter().filter(|it| !is_symbol(sheet, &it.name));
                @for problem in elsewhere { p { (problem.to_string()) } }
            },
        }
        p class="soft" { (sheet.source.name()) " (" (sheet.source.evidence.to_string()) ")" }
    }
}

fn is_symbol(sheet: &Sheet, name: &str) -> bool {
    sheet
        .inputs
        .iter()
        .chain(sheet.outputs)
        .any(|symbol| symbol.name == name)
}

/// What was found in the backward direction.
fn found(solved: &Solved, note: Option<&str>, units: UnitSystem) -> Markup {
    let print = |number: f64| print_kind(solved.kind, number, units);
    let shown = |place: &Where| match place {
        Where::At(number) => print(*number),
        Where::Between { from, to } => format!("{} to {}", print(*from), print(*to)),
    };
    let places: Vec<String> = match &solved.found {
        Found::One(place) => vec![shown(place)],
        Found::Several(places) => places.iter().map(shown).collect(),
        Found::None { .. } | Found::Any => Vec::new(),
    };
    let input = solved.input;
    html! {
        dl {
            div {
                dt { (input.meaning.trim_end_matches('.')) }
                @match &solved.found {
                    Found::Any => dd { "Any value: the result does not depend on it" },
                    Found::None { .. } => dd { "No value gives that" },
                    Found::One(_) | Found::Several(_) => {
                        @for place in &places { dd { small { (input.letter) " = " } (place) } }
                    },
                }
            }
        }
        @if let Found::None { closest, refused } = &solved.found {
            @if let Some(closest) = closest { p { "Nearest: " (print(closest.input)) "." } }
            @if let Some(refused) = refused { p { (refused.to_string()) "." } }
        }
        @if let Some(note) = note { p { (note.replace('`', "").trim_end_matches('.')) "." } }
        p class="soft" { "Looked for from " (print(solved.lowest)) " to " (print(solved.highest)) "." }
    }
}

fn notes(calculation: &Calculation, question: &Question, paragraphs: &[String]) -> Markup {
    let sheet = calculation.sheet;
    let source = sheet.source;
    html! {
        @for paragraph in paragraphs { p { (paragraph) } }
        h2 { "Where it holds" }
        p { (sheet.validity) }
        h2 { "Where it comes from" }
        p {
            (source.name()) ". How it is known: " (source.evidence.to_string()) " (" (source.seen) ")."
            @if !source.evidence.may_pass_a_gate() { " A figure known in this way may warn; it never makes a finding hold." }
        }
        h2 { "The same at the command line" }
        pre class="typed" data-line {
            @if question.is_example { (example_line(calculation).unwrap_or_default()) } @else { (question.line(sheet)) }
        }
    }
}
