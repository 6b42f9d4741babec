//! Beam heights and minimum distance of single beams, by ISO 13855:2010.

use super::approach::{WALK, millimeters, stopping_seconds};
use crate::OutOfReach;
use quantity::{Length, Time};

formula! {
    /// Heights of one to four single beams that guard a way in, and their least distance to the danger, by ISO 13855:2010.
    ///
    /// Such beams see a whole body that walks through, not an arm and not somebody on the ground: above 300 mm one can
    /// crawl under the lowest, and where children come the limit is 200 mm. Heights count from the ground where people
    /// walk. Once past the beams a person is unseen, so nothing may start by itself then.
    pub struct Iso138552010BeamDistance = "iso13855-2010-beam-distance" in Protection {
        /// Whole time from actuation of a beam until the danger has ended.
        stopping_time ("T"): Time,
        /// Number of beams, from 1 to 4.
        beams ("n"): u32,
    }
    gives
    /// Heights and least distance of single beams.
    pub struct Iso138552010Beams {
        /// Height of the lowest beam.
        lowest ("H1"): Length,
        /// Height of the highest beam.
        highest ("Hn"): Length,
        /// Widest step from one beam to the next; 0 for a single beam.
        widest_step ("ΔH"): Length,
        /// Allowance for reaching in.
        intrusion ("C"): Length,
        /// Minimum distance.
        distance ("S"): Length,
    }
    formula "n = 1: H = 750 mm, C = 1200 mm\nn = 2: H = 400, 900 mm\nn = 3: H = 300, 700, 1100 mm\nn = 4: H = 300, 600, 900, 1200 mm\nn ≥ 2: C = 850 mm\nS = 1600 mm/s · T + C"
    valid "Ways in that are approached head-on; machinery in workplaces. A single beam only where the risk assessment allows it."
    source { work: "ISO 13855:2010", clause: "6.2.4 and table E.1, as cited", evidence: Seen, seen: "pages and manuals of three makers of light curtains that print the heights and both allowances (names and addresses withheld); the standard itself was not at hand" }
    by beam_distance
}

/// Heights of the beams in mm for a number of beams.
fn heights(beams: u32) -> Option<&'static [f64]> {
    match beams {
        1 => Some(&[750.0]),
        2 => Some(&[400.0, 900.0]),
        3 => Some(&[300.0, 700.0, 1100.0]),
        4 => Some(&[300.0, 600.0, 900.0, 1200.0]),
        _ => None,
    }
}

/// Heights above the ground of one to four single beams, lowest first, by ISO 13855:2010; none for another number.
///
/// Source: as [`Iso138552010BeamDistance`].
pub fn iso13855_2010_beam_heights(beams: u32) -> Option<Vec<Length>> {
    heights(beams).map(|heights| heights.iter().map(|height| millimeters(*height)).collect())
}

fn beam_distance(field: &Iso138552010BeamDistance) -> Result<Iso138552010Beams, OutOfReach> {
    let time = stopping_seconds(field.stopping_time)?;
    let (Some(heights), Some(lowest), Some(highest)) = (
        heights(field.beams),
        heights(field.beams).and_then(<[f64]>::first),
        heights(field.beams).and_then(<[f64]>::last),
    ) else {
        return Err(OutOfReach::new(
            "beams",
            "heights are printed for 1 to 4 beams; more beams are judged as a light curtain by their spacing",
        ));
    };
    let steps = heights.windows(2).map(|pair| pair[1] - pair[0]);
    let intrusion = if field.beams == 1 { 1200.0 } else { 850.0 };
    Ok(Iso138552010Beams {
        lowest: millimeters(*lowest),
        highest: millimeters(*highest),
        widest_step: millimeters(steps.fold(0.0, f64::max)),
        intrusion: millimeters(intrusion),
        distance: millimeters(WALK * time + intrusion),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn beams(time: f64, beams: u32) -> Iso138552010BeamDistance {
        Iso138552010BeamDistance {
            stopping_time: Time::from_base(time),
            beams,
        }
    }

    proptest! {
        #[test]
        fn more_beams_never_ask_for_more_room(time in 0.0..2.0, number in 1_u32..4) {
            let (few, many) = (beams(time, number), beams(time, number + 1));
            let (few, many) = (few.evaluate().unwrap(), many.evaluate().unwrap());
            prop_assert!(many.distance <= few.distance);
            prop_assert!(many.lowest <= few.lowest && many.highest >= few.highest);
        }
    }

    #[test]
    fn the_heights_rise() {
        for number in 1..=4 {
            let heights = iso13855_2010_beam_heights(number).unwrap();
            assert!(heights.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }

    #[test]
    fn five_beams_are_refused() {
        assert_eq!(beams(0.3, 5).evaluate().unwrap_err().input, "beams");
    }
}
