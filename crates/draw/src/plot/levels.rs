//! Values of several things on one axis, a row for each thing: what each gets in each case, and the least that it needs.

use super::axis::Axis;
use super::screen::percent;
use crate::xml::escaped;
use quantity::{Quantity, UnitSystem};
use std::fmt::Write as _;

/// Rows over one axis.
#[derive(Debug, Clone)]
pub struct Levels {
    /// What is shown.
    pub title: String,
    /// What is to be seen, for those who can't see it.
    pub description: String,
    /// What runs along the axis.
    pub axis: Axis,
    /// What the values of each row belong to, in order.
    pub cases: Vec<String>,
    /// The rows.
    pub rows: Vec<Level>,
    /// Whole sentences under it.
    pub remarks: Vec<String>,
}

/// A row before its values are in the unit of the axis: its name, the value of each case, the least that it needs.
pub type LevelOf<Q> = (String, Vec<Option<Q>>, Option<Q>);

/// A row.
#[derive(Debug, Clone, PartialEq)]
pub struct Level {
    /// What it is.
    pub name: String,
    /// What it gets, in words.
    pub words: String,
    /// The value of each case in the unit of the axis; none where there is none.
    pub values: Vec<Option<f64>>,
    /// The least that it needs.
    pub least: Option<f64>,
    /// It does not get it.
    pub fails: bool,
}

impl Levels {
    /// Rows without their words, each with its name, its values, and its least.
    pub fn of<Q: Quantity>(
        (title, along): (String, &str),
        cases: Vec<String>,
        rows: &[LevelOf<Q>],
        units: UnitSystem,
    ) -> Self {
        let all = rows
            .iter()
            .flat_map(|(_, values, least)| values.iter().chain([least]))
            .filter_map(|value| value.map(Quantity::base));
        let axis = Axis::over((along, Q::KIND), all, units);
        let in_units = |value: &Option<Q>| value.map(|value| axis.in_units(value.base()));
        let rows = rows.iter().map(|(name, values, least)| Level {
            name: name.clone(),
            words: String::new(),
            values: values.iter().map(in_units).collect(),
            least: in_units(least),
            fails: false,
        });
        Self {
            title,
            description: String::new(),
            rows: rows.collect(),
            axis,
            cases,
            remarks: Vec::new(),
        }
    }

    /// A row as SVG: a line over the whole axis, a ring for each case, a bar at the least, the lowest filled.
    pub fn svg(&self, row: &Level) -> String {
        let mut out = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"level{}\" role=\"img\" aria-label=\"{}\">",
            if row.fails { " fails" } else { "" },
            escaped(&format!("{}: {}", row.name, row.words))
        );
        for (share, _) in self.axis.ticks() {
            let x = percent(share);
            let _ = write!(
                out,
                "<line class=\"grid\" x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"100%\"/>"
            );
        }
        out.push_str("<line class=\"zero\" x1=\"0\" x2=\"100%\" y1=\"50%\" y2=\"50%\"/>");
        if let Some(least) = row.least {
            let x = percent(self.axis.share(least));
            let _ = write!(
                out,
                "<line class=\"least\" x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"100%\"/>"
            );
        }
        let known = || row.values.iter().flatten().copied();
        let lowest = known().fold(f64::INFINITY, f64::min);
        let highest = known().fold(f64::NEG_INFINITY, f64::max);
        if lowest.is_finite() {
            let (from, to) = (
                percent(self.axis.share(lowest)),
                percent(self.axis.share(highest)),
            );
            let _ = write!(
                out,
                "<line class=\"reach\" x1=\"{from}\" x2=\"{to}\" y1=\"50%\" y2=\"50%\"/>"
            );
            for value in known() {
                let x = percent(self.axis.share(value));
                let _ = write!(
                    out,
                    "<circle class=\"case\" cx=\"{x}\" cy=\"50%\" r=\"4\"/>"
                );
            }
            let _ = write!(
                out,
                "<circle class=\"lowest\" cx=\"{from}\" cy=\"50%\" r=\"6\"/>"
            );
        }
        out.push_str("</svg>");
        out
    }

    /// The numbers of the axis, to stand under the rows.
    pub fn foot(&self) -> String {
        let mut out = String::from(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"level foot\" aria-hidden=\"true\">",
        );
        for (at, (share, words)) in self.axis.ticks().into_iter().enumerate() {
            let odd = if at % 2 == 1 { " odd" } else { "" };
            let _ = write!(
                out,
                "<text class=\"number{odd}\" x=\"{}\" y=\"1.2em\" text-anchor=\"middle\">{}</text>",
                percent(share),
                escaped(&words)
            );
        }
        out.push_str("</svg>");
        out
    }
}
