//! Published tables: read from their own files, looked up and interpolated.

use crate::sheet::OutOfReach;
use serde::Deserialize;
use std::sync::LazyLock;

/// One cell of a table: a number as printed, or words.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(untagged)]
pub(crate) enum Cell {
    /// A number in the unit of its column.
    Number(f64),
    /// Words, or `-` where the print has no entry.
    Words(String),
}

impl Cell {
    /// The number, where the cell holds one.
    pub(crate) fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            Self::Words(_) => None,
        }
    }

    /// The words, where the cell holds some.
    pub(crate) fn words(&self) -> Option<&str> {
        match self {
            Self::Number(_) => None,
            Self::Words(words) => Some(words),
        }
    }
}

/// A published table with its digits as printed.
#[derive(Debug, Clone, Deserialize)]
pub(crate) struct Table {
    /// Names of the columns.
    pub(crate) columns: Vec<String>,
    /// The rows, each as long as the columns.
    pub(crate) rows: Vec<Vec<Cell>>,
}

/// A table that is read once, when first asked for.
pub(crate) type Stored = LazyLock<Result<Table, String>>;

impl Table {
    /// Reads a table from the text of its file.
    pub(crate) fn read(text: &str) -> Result<Self, String> {
        let table: Self = toml::from_str(text).map_err(|error| error.to_string())?;
        let width = table.columns.len();
        if table.rows.iter().any(|row| row.len() != width) {
            return Err("a row is not as long as the columns".to_owned());
        }
        Ok(table)
    }

    /// The table of a stored file. Tests read every file, so a damaged one is seen long before it is used.
    pub(crate) fn of(stored: &'static Stored) -> Result<&'static Self, OutOfReach> {
        stored
            .as_ref()
            .map_err(|why| OutOfReach::new("table", format!("the table cannot be read: {why}")))
    }

    /// The cells of a column, from the first row to the last; none if there is no such column.
    pub(crate) fn column(&self, name: &str) -> impl Iterator<Item = &Cell> {
        let place = self.columns.iter().position(|column| column == name);
        self.rows.iter().filter_map(move |row| row.get(place?))
    }

    /// The numbers of a column.
    pub(crate) fn numbers(&self, name: &str) -> Vec<f64> {
        self.column(name).filter_map(Cell::number).collect()
    }
}

/// Linear interpolation through rising points, holding the end values outside them.
pub(crate) fn interpolated(x: f64, points: impl IntoIterator<Item = (f64, f64)>) -> f64 {
    let mut before: Option<(f64, f64)> = None;
    for (right, value) in points {
        match before {
            _ if x > right => before = Some((right, value)),
            Some((left, start)) => return start + (value - start) * (x - left) / (right - left),
            None => return value,
        }
    }
    before.map_or(f64::NAN, |(_, value)| value)
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::float_cmp,
        reason = "tests state exact values"
    )]
    use super::*;

    #[test]
    fn interpolates_and_holds_the_ends() {
        let points = [(1.0, 10.0), (2.0, 20.0), (4.0, 10.0)];
        for (x, expected) in [
            (0.0, 10.0),
            (1.0, 10.0),
            (1.5, 15.0),
            (2.0, 20.0),
            (3.0, 15.0),
            (9.0, 10.0),
        ] {
            assert_eq!(interpolated(x, points), expected);
        }
    }

    #[test]
    fn a_short_row_is_refused() {
        assert!(Table::read("columns = [\"a\", \"b\"]\nrows = [[1, 2], [3]]").is_err());
        let table = Table::read("columns = [\"a\", \"b\"]\nrows = [[1, \"-\"], [3, 4.5]]").unwrap();
        assert_eq!(table.numbers("b"), [4.5]);
        assert_eq!(table.numbers("c"), [0.0; 0]);
    }
}
