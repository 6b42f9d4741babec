//! Reading a value whose sort is known only at run time.

use super::error::{ReadError, nearest, quoted};
use super::{read_conductor, read_kind};
use crate::{Sort, Value};

/// Reads a value of some sort: a quantity, a whole number, a conductor size or one of the words that the sort allows.
pub fn read_value(sort: Sort, text: &str) -> Result<Value, ReadError> {
    match sort {
        Sort::Quantity(kind) => read_kind(kind, text).map(|base| Value::Quantity(kind, base)),
        Sort::Count => count(text).map(Value::Count),
        Sort::Conductor => read_conductor(text).map(Value::Conductor),
        Sort::Words(words) => word(words, text).map(Value::Word),
    }
}

/// A whole number of things.
fn count(text: &str) -> Result<u32, ReadError> {
    let trimmed = text.trim();
    let digits = !trimmed.is_empty() && trimmed.bytes().all(|byte| byte.is_ascii_digit());
    let parsed = digits.then(|| trimmed.parse().ok()).flatten();
    parsed.ok_or_else(|| {
        let what = match (trimmed.is_empty(), digits) {
            (true, _) => {
                "nothing is written here; a whole number is wanted, such as `3`".to_owned()
            }
            (_, true) => format!(
                "{} is more than {}, the most that can be counted",
                quoted(trimmed),
                u32::MAX
            ),
            _ => format!(
                "{} is not a whole number; write digits only, such as `3`",
                quoted(trimmed)
            ),
        };
        ReadError {
            what,
            place: whole(text),
            write: None,
        }
    })
}

/// One of the words.
fn word(words: &'static [&'static str], text: &str) -> Result<&'static str, ReadError> {
    let trimmed = text.trim();
    words
        .iter()
        .copied()
        .find(|word| *word == trimmed)
        .ok_or_else(|| {
            let allowed: Vec<String> = words.iter().map(|word| format!("`{word}`")).collect();
            let what = format!(
                "{} is not one of the words {}",
                quoted(trimmed),
                allowed.join(", ")
            );
            let write = nearest(trimmed, words.iter().copied()).map(str::to_owned);
            ReadError {
                what,
                place: whole(text),
                write,
            }
        })
}

/// The bytes of the text without the blank space around it.
fn whole(text: &str) -> std::ops::Range<usize> {
    let start = text.len() - text.trim_start().len();
    start..start + text.trim().len()
}
