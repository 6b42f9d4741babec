//! Eight questions at the gate, and the first site that their answers give: whole enough to be asked everything, with every
//! value that nobody has given marked as assumed.

mod draft;
mod words;

use super::refusal::Refusal;
use quantity::{Length, Measured, Quantity as _, Word as _};
use serde::Deserialize;
use serde_json::{Value, json};
use site::{CodeBasis, GateKind, Severity, SourceFile};
use words::{Infill, Power};

/// The eight answers.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Survey {
    /// What the site is called.
    title: String,
    /// Whose rules: `us` or `eu`.
    basis: String,
    /// What kind of gate.
    kind: String,
    /// Clear opening, with its unit.
    opening: String,
    /// Height of the leaf, with its unit.
    height: String,
    /// What fills the leaf.
    infill: String,
    /// How often it opens each day.
    cycles: u32,
    /// Where its power comes from.
    power: String,
}

/// Kinds of gate that a survey can begin; the others begin with a text of their own.
const KINDS: [GateKind; 4] = [
    GateKind::TrackSlide,
    GateKind::CantileverSlide,
    GateKind::SingleSwing,
    GateKind::DoubleSwing,
];

/// The answers, read.
struct Given {
    title: String,
    basis: CodeBasis,
    kind: GateKind,
    /// Clear opening, as it was written and as it is understood.
    opening: (String, Measured<Length>),
    /// Height of the leaf, likewise.
    height: (String, Measured<Length>),
    infill: Infill,
    cycles: u32,
    power: Power,
}

impl Survey {
    /// The questions, for whoever asks them.
    pub(crate) fn questions() -> Value {
        let kinds: Vec<&str> = KINDS.iter().map(|kind| kind.word()).collect();
        json!([
            { "key": "title", "ask": "What is the site called?", "kind": "text", "example": "North yard, main gate" },
            { "key": "basis", "ask": "Whose rules does it stand under?", "kind": "word", "words": CodeBasis::WORDS },
            { "key": "kind", "ask": "How does the gate move?", "kind": "word", "words": kinds },
            { "key": "opening", "ask": "How wide is the clear opening?", "kind": "quantity", "example": "16 ft" },
            { "key": "height", "ask": "How high is the leaf?", "kind": "quantity", "example": "6 ft" },
            { "key": "infill", "ask": "What fills the leaf?", "kind": "word", "words": Infill::WORDS },
            { "key": "cycles", "ask": "How often does it open on a full day?", "kind": "count", "example": 60 },
            { "key": "power", "ask": "Where does its power come from?", "kind": "word", "words": Power::WORDS },
        ])
    }

    /// The text of the first site.
    pub(crate) fn site(&self) -> Result<String, Refusal> {
        let text = draft::text(&self.read()?);
        let file = SourceFile {
            name: "site.toml".to_owned(),
            text: text.clone(),
        };
        let problems = site::load(file, Vec::new()).problems;
        let wrong = problems
            .iter()
            .find(|problem| problem.severity == Severity::Wrong);
        match wrong {
            Some(problem) => Err(Refusal::problem(problem)),
            None => Ok(text),
        }
    }

    fn read(&self) -> Result<Given, Refusal> {
        let title = self.title.trim();
        if title.is_empty() || title.chars().any(char::is_control) || title.chars().count() > 200 {
            return Err(answer(
                "title",
                "The site needs a name of one line.",
                "such as North yard, main gate",
            ));
        }
        let kind = word::<GateKind>("kind", &self.kind)?;
        if !KINDS.contains(&kind) {
            let kinds: Vec<&str> = KINDS.iter().map(|kind| kind.word()).collect();
            return Err(answer(
                "kind",
                "A gate that moves so cannot be begun by these questions yet.",
                &format!("one of {}", kinds.join(", ")),
            ));
        }
        if !(1..=5000).contains(&self.cycles) {
            return Err(answer(
                "cycles",
                "This is not how often a gate opens each day.",
                "1 to 5000",
            ));
        }
        Ok(Given {
            title: title.to_owned(),
            basis: word("basis", &self.basis)?,
            kind,
            opening: length("opening", &self.opening, 1.0, 12.0)?,
            height: length("height", &self.height, 0.6, 3.0)?,
            infill: word("infill", &self.infill)?,
            cycles: self.cycles,
            power: word("power", &self.power)?,
        })
    }
}

fn word<W: quantity::Word>(key: &str, text: &str) -> Result<W, Refusal> {
    W::from_word(text.trim()).ok_or_else(|| {
        answer(
            key,
            "This is not one of the words for it.",
            &format!("one of {}", W::WORDS.join(", ")),
        )
    })
}

/// A length between two others, in meters.
fn length(
    key: &str,
    text: &str,
    least: f64,
    most: f64,
) -> Result<(String, Measured<Length>), Refusal> {
    let expected =
        format!("a length from {least} m to {most} m with its unit, such as 12 ft or 3.6 m");
    let read = quantity::read_measured::<Length>(text.trim()).map_err(|error| {
        answer(
            key,
            &format!("This is not a length: {}.", error.what),
            &expected,
        )
    })?;
    if (least..=most).contains(&read.nominal().base()) {
        Ok((text.trim().to_owned(), read))
    } else {
        Err(answer(
            key,
            "This is out of the range of a first site.",
            &expected,
        ))
    }
}

fn answer(key: &str, what: &str, expected: &str) -> Refusal {
    Refusal::unusable(what, "Answer the question again.")
        .at(key)
        .expected(expected)
}
