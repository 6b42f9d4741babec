//! Body dimensions of adults.

use super::approach::millimeters;
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Dimension of the body.
    pub enum BodyDimension {
        /// Standing height.
        Stature = "stature",
        /// Breadth over the upper arms at the shoulders.
        ShoulderBreadth = "shoulder breadth",
        /// Breadth between the bony tips of the shoulders.
        AcromialBreadth = "breadth between shoulder points",
        /// Breadth over bent forearms held at the sides.
        ForearmBreadth = "breadth over the forearms",
        /// Depth of the chest: about how high somebody lies on the ground.
        ChestDepth = "chest depth",
        /// Depth of the belly.
        WaistDepth = "waist depth",
        /// Breadth of the head.
        HeadBreadth = "head breadth",
        /// Length of the head from front to back.
        HeadLength = "head length",
        /// Breadth of the hips.
        HipBreadth = "hip breadth",
        /// Length of the foot.
        FootLength = "foot length",
        /// Breadth of the foot.
        FootBreadth = "foot breadth",
        /// Breadth of the hand without the thumb.
        HandBreadth = "hand breadth",
        /// Height of the middle of the kneecap.
        KneecapHeight = "kneecap height",
        /// Height of the shoulder points.
        ShoulderHeight = "shoulder height",
        /// Height of the head above the seat.
        SittingHeight = "sitting height",
        /// Reach forward to the tip of the thumb.
        ThumbTipReach = "thumb-tip reach",
        /// Girth of the ankle.
        AnkleCircumference = "ankle circumference",
    }
}

quantity::words! {
    /// Sex of the people measured.
    pub enum MeasuredSex {
        /// Women.
        Female = "female",
        /// Men.
        Male = "male",
    }
}

quantity::words! {
    /// Where in the range of people a figure stands.
    pub enum Percentile {
        /// Only one in twenty is smaller.
        P5 = "5th percentile",
        /// Half are smaller.
        P50 = "50th percentile",
        /// Only one in twenty is larger.
        P95 = "95th percentile",
        /// The mean.
        Mean = "mean",
    }
}

formula! {
    /// A body dimension of adults, for placing beams, judging gaps and drawing people.
    ///
    /// Take the small people where something must see them or keep them out, the large ones where something must let
    /// them through. Soldiers are fitter and more alike than the public, there are no children among them, and nobody
    /// was measured lying, kneeling or crawling: a person on the ground is about as high as the chest is deep, which is
    /// an inference.
    pub struct AdultDimension = "adult-dimension" in Protection {
        /// Dimension.
        dimension ("–"): BodyDimension,
        /// Sex.
        sex ("–"): MeasuredSex,
        /// Where in the range of people.
        percentile ("–"): Percentile,
    }
    gives
    /// A body dimension.
    pub struct AdultMeasure {
        /// The dimension.
        measure ("x"): Length,
    }
    formula "x from the table"
    valid "Adults without heavy clothing or bags; men and women of the US Army in 2012."
    source { work: "ANSUR II, 2012 (NATICK/TR-15/007)", clause: "", evidence: Seen, seen: "public data set of 4082 men and 1986 women; percentiles computed from its rows" }
    by measure
}

static DIMENSIONS: Stored = LazyLock::new(|| Table::read(include_str!("adult_dimension.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn measure(body: &AdultDimension) -> Result<AdultMeasure, OutOfReach> {
    let table = Table::of(&DIMENSIONS)?;
    table
        .column("dimension")
        .zip(table.column("sex"))
        .zip(table.column(body.percentile.word()))
        .find(|((dimension, sex), _)| {
            dimension.words() == Some(body.dimension.word()) && sex.words() == Some(body.sex.word())
        })
        .and_then(|(_, measure)| measure.number())
        .map(|number| AdultMeasure {
            measure: millimeters(number),
        })
        .ok_or_else(|| OutOfReach::new("dimension", "the table has no row for this dimension"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn percentiles_rise_and_the_mean_lies_between() {
        for dimension in BodyDimension::ALL {
            for sex in MeasuredSex::ALL {
                let of = |percentile| {
                    let (dimension, sex) = (*dimension, *sex);
                    let body = AdultDimension {
                        dimension,
                        sex,
                        percentile,
                    };
                    body.evaluate().unwrap().measure
                };
                assert!(
                    of(Percentile::P5) < of(Percentile::P50),
                    "{dimension}, {sex}"
                );
                assert!(
                    of(Percentile::P50) < of(Percentile::P95),
                    "{dimension}, {sex}"
                );
                assert!(of(Percentile::P5) < of(Percentile::Mean));
                assert!(of(Percentile::Mean) < of(Percentile::P95));
            }
        }
    }
}
