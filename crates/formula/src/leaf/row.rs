//! Finding a size in a table of sections.

use crate::table::{Cell, Table};
use quantity::{Area, Length, MassPerLength, Quantity, SecondMomentOfArea, Volume};

const INCH: f64 = 0.0254;
const POUND_PER_FOOT: f64 = 0.453_592_37 / 0.3048;
/// Sizes nearer than this are the same size: a thousandth of an inch.
const SAME: f64 = 0.001 * INCH;

/// The row whose columns from this place on are these sizes in inches.
pub(super) fn row_of<'t>(table: &'t Table, from: usize, sizes: &[Length]) -> Option<&'t [Cell]> {
    table.rows.iter().map(Vec::as_slice).find(|row| {
        let cells = row.iter().skip(from);
        sizes.iter().zip(cells).all(|(size, cell)| is(*size, cell))
    })
}

/// The row that begins with this word.
pub(super) fn row_named<'t>(table: &'t Table, word: &str) -> Option<&'t [Cell]> {
    table
        .rows
        .iter()
        .map(Vec::as_slice)
        .find(|row| row.first().and_then(Cell::words) == Some(word))
}

fn is(size: Length, cell: &Cell) -> bool {
    cell.number()
        .is_some_and(|inches| (inches * INCH - size.base()).abs() < SAME)
}

/// A cell in the units of the United States.
pub(super) fn cell<Q: InInches>(row: &[Cell], place: usize) -> Q {
    Q::from_base(row.get(place).and_then(Cell::number).unwrap_or(f64::NAN) * Q::SCALE)
}

/// A quantity that the tables print in inches or in pounds for each foot.
pub(super) trait InInches: Quantity {
    /// Size of the printed unit.
    const SCALE: f64;
}

impl InInches for Length {
    const SCALE: f64 = INCH;
}
impl InInches for Area {
    const SCALE: f64 = INCH * INCH;
}
impl InInches for Volume {
    const SCALE: f64 = INCH * INCH * INCH;
}
impl InInches for SecondMomentOfArea {
    const SCALE: f64 = INCH * INCH * INCH * INCH;
}
impl InInches for MassPerLength {
    const SCALE: f64 = POUND_PER_FOOT;
}
