//! A schedule: one table for the page and for the workbook.

use serde::ser::{Serialize, SerializeStruct, Serializer};

/// Where the text of a column stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Align {
    /// At the left, for words.
    Start,
    /// In the middle, for short codes.
    Center,
    /// At the right, for numbers.
    End,
}

/// One column.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Column {
    /// What it holds: `Length`.
    pub heading: String,
    /// Unit of its numbers, printed under the heading; empty for words.
    pub unit: String,
    /// Width wanted, in millimeters of paper, at least 1; the table as a whole is stretched or squeezed to its sheet.
    pub width: u16,
    /// Where its text stands.
    pub align: Align,
}

impl Column {
    /// A column of words.
    pub fn words(heading: &str, width: u16) -> Self {
        Self {
            heading: heading.to_owned(),
            unit: String::new(),
            width,
            align: Align::Start,
        }
    }

    /// A column of numbers in this unit.
    pub fn numbers(heading: &str, unit: &str, width: u16) -> Self {
        Self {
            heading: heading.to_owned(),
            unit: unit.to_owned(),
            width,
            align: Align::End,
        }
    }
}

/// One cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Words.
    Text(String),
    /// A number in the unit of its column.
    Number {
        /// The number, in the unit of its column.
        value: f64,
        /// Digits after the point, on the page and in the workbook.
        decimals: u8,
    },
    /// Not known: printed hatched, with what to measure in a few words.
    Unknown(String),
}

impl Cell {
    /// A cell of words.
    pub fn text(text: impl Into<String>) -> Self {
        Self::Text(text.into())
    }

    /// A cell with a number; one that is not finite is shown as unknown.
    pub fn number(value: f64, decimals: u8) -> Self {
        if value.is_finite() {
            Self::Number { value, decimals }
        } else {
            Self::Unknown("unknown".to_owned())
        }
    }

    /// A cell whose value is not known.
    pub fn unknown(measure: impl Into<String>) -> Self {
        Self::Unknown(measure.into())
    }

    /// The cell as printed.
    pub fn printed(&self) -> String {
        match self {
            Self::Text(text) | Self::Unknown(text) => text.clone(),
            Self::Number { value, decimals } => printed_number(*value, usize::from(*decimals)),
        }
    }
}

/// A number with a true minus sign and no negative zero.
fn printed_number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let is_zero = text
        .chars()
        .all(|character| matches!(character, '-' | '0' | '.'));
    match text.strip_prefix('-') {
        Some(rest) if is_zero => rest.to_owned(),
        Some(rest) => format!("−{rest}"),
        None => text,
    }
}

impl Serialize for Cell {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let kind = match self {
            Self::Text(_) => "text",
            Self::Number { .. } => "number",
            Self::Unknown(_) => "unknown",
        };
        let mut fields = serializer.serialize_struct("Cell", 2)?;
        fields.serialize_field("kind", kind)?;
        fields.serialize_field("text", &self.printed())?;
        fields.end()
    }
}

/// A schedule. A row shorter than the columns is filled with empty cells; what is longer is not shown.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct Table {
    /// Its title: `Cable schedule`. The workbook names the sheet after it.
    pub title: String,
    /// What the reader has to know first, in one or two sentences; may be empty.
    pub note: String,
    /// The columns, in order.
    pub columns: Vec<Column>,
    /// The rows, in order.
    pub rows: Vec<Vec<Cell>>,
}

#[cfg(test)]
mod tests {
    use super::Cell;

    #[test]
    fn numbers_print_with_their_digits_and_a_true_minus() {
        assert_eq!(Cell::number(12.345, 1).printed(), "12.3");
        assert_eq!(Cell::number(-3.0, 2).printed(), "−3.00");
        assert_eq!(Cell::number(-0.001, 2).printed(), "0.00");
    }

    #[test]
    fn a_number_that_is_none_is_unknown() {
        assert_eq!(Cell::number(f64::NAN, 1), Cell::unknown("unknown"));
    }
}
