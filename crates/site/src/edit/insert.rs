//! Adds a line to a table, or a key to an inline table.

use std::ops::Range;
use toml::Spanned;
use toml::de::DeTable;
use toml::de::DeValue;

/// Where a key that is missing would stand.
pub(super) enum Spot {
    /// On a line of its own, after the line that ends behind this byte.
    AfterLine(usize),
    /// In an inline table, at this byte, behind another key or not.
    Inline(usize, Behind),
}

/// Whether another key stands before in the inline table.
#[derive(Clone, Copy)]
pub(super) enum Behind {
    /// Another key stands before.
    Key,
    /// It is the first.
    Nothing,
}

/// The spot for one more key of a table whose header, or whose braces, span `span`.
pub(super) fn spot(text: &str, table: &DeTable<'_>, span: &Range<usize>) -> Spot {
    let inline = text
        .get(span.clone())
        .is_some_and(|own| own.starts_with('{'));
    let direct = table
        .values()
        .filter(|value| is_direct(text, value))
        .map(|value| value.span().end)
        .max();
    match (inline, direct) {
        (true, Some(end)) => Spot::Inline(end, Behind::Key),
        (true, None) => Spot::Inline(span.start + 1, Behind::Nothing),
        (false, end) => Spot::AfterLine(end.unwrap_or(span.end)),
    }
}

/// The value stands behind its key, not below a header of its own.
fn is_direct(text: &str, value: &Spanned<DeValue<'_>>) -> bool {
    let own = text.get(value.span()).unwrap_or_default();
    match value.get_ref() {
        DeValue::Table(_) => own.starts_with('{'),
        DeValue::Array(array) => {
            own.starts_with('[') && (!own.starts_with("[[") || own_is_nested(array))
        }
        _ => true,
    }
}

/// A list that begins with a list, rather than the header of a table in double brackets.
fn own_is_nested(array: &[Spanned<DeValue<'_>>]) -> bool {
    array
        .first()
        .is_some_and(|first| matches!(first.get_ref(), DeValue::Array(_)))
}

/// The text with one key more.
pub(super) fn line(text: &str, spot: &Spot, key: &str, value: &str) -> String {
    let (at, new) = match *spot {
        Spot::AfterLine(byte) => {
            let ending = if text.contains("\r\n") { "\r\n" } else { "\n" };
            match text.get(byte..).and_then(|rest| rest.find('\n')) {
                Some(rest) => (byte + rest + 1, format!("{key} = {value}{ending}")),
                None => (text.len(), format!("{ending}{key} = {value}{ending}")),
            }
        }
        Spot::Inline(byte, Behind::Key) => (byte, format!(", {key} = {value}")),
        Spot::Inline(byte, Behind::Nothing) => (byte, format!(" {key} = {value}")),
    };
    let mut changed = text.to_owned();
    changed.insert_str(at, &new);
    changed
}
