//! Whether a level beam sees the test box of EN 12453.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// How the test box of 700 mm by 300 mm by 200 mm is set on the ground.
    pub enum BoxPosture {
        /// On end: 700 mm high.
        Upright = "upright",
        /// On its long narrow side: 300 mm high.
        OnSide = "on its side",
        /// Flat: 200 mm high.
        Flat = "flat",
    }
}

quantity::words! {
    /// Whether a device notices a thing.
    pub enum Sight {
        /// It does.
        Seen = "seen",
        /// It does not.
        Missed = "missed",
    }
}

formula! {
    /// Whether a level beam is broken by the test box with which detection of presence is proved, by EN 12453.
    ///
    /// The box stands on the ground on the side that is watched, with the leaf where it is hardest to see. A beam that
    /// misses the box lying flat can miss a child or somebody who has fallen. Heights count from the ground under the
    /// box, which is not the ground under the post where the surface falls.
    pub struct En12453TestBody = "en12453-test-body" in Protection {
        /// Height of the beam's axis above the ground under the box.
        beam_height ("z"): Length,
        /// Diameter of the beam, which is the lens of an opposed pair.
        beam_diameter ("D"): Length,
        /// How the box is set on the ground.
        posture ("–"): BoxPosture,
    }
    gives
    /// Whether the test box is seen.
    pub struct TestBodySight {
        /// Height of the box.
        body_height ("h"): Length,
        /// By how much the box covers the whole beam; below zero where part of it goes over.
        cover ("h − z − D/2"): Length,
        /// Whether the beam is broken wholly.
        sight ("–"): Sight,
    }
    formula "h = 700 mm, 300 mm or 200 mm\nseen where h ≥ z + D / 2"
    valid "Level beams over level ground; a device that wants only part of its beam covered sees more. The 700 mm by 300 mm were read, the 200 mm is recalled and makes the demand stricter."
    source { work: "EN 12445:2000 / EN 12453, testing of presence detection, test piece A", clause: "", evidence: Seen, seen: "a trade federation's text that prints 700 by 300; the final draft of July 2000; the standard itself was not at hand" }
    by test_body
}

fn test_body(beam: &En12453TestBody) -> Result<TestBodySight, OutOfReach> {
    positive("beam_height", beam.beam_height, "200 mm")?;
    not_negative("beam_diameter", beam.beam_diameter, "20 mm")?;
    let body_height = Length::from_base(match beam.posture {
        BoxPosture::Upright => 0.7,
        BoxPosture::OnSide => 0.3,
        BoxPosture::Flat => 0.2,
    });
    let cover = body_height - beam.beam_height - beam.beam_diameter / 2.0;
    Ok(TestBodySight {
        body_height,
        cover,
        sight: if cover.base() >= -1e-9 {
            Sight::Seen
        } else {
            Sight::Missed
        },
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn sight(height: f64, diameter: f64, posture: BoxPosture) -> Sight {
        let beam = En12453TestBody {
            beam_height: Length::from_base(height),
            beam_diameter: Length::from_base(diameter),
            posture,
        };
        beam.evaluate().unwrap().sight
    }

    proptest! {
        #[test]
        fn what_sees_it_flat_sees_it_in_every_posture(height in 0.01..1.0, diameter in 0.0..0.1) {
            if sight(height, diameter, BoxPosture::Flat) == Sight::Seen {
                prop_assert_eq!(sight(height, diameter, BoxPosture::OnSide), Sight::Seen);
                prop_assert_eq!(sight(height, diameter, BoxPosture::Upright), Sight::Seen);
            }
        }
    }

    #[test]
    fn a_beam_in_the_ground_is_refused() {
        let beam = En12453TestBody {
            beam_height: Length::from_base(0.0),
            beam_diameter: Length::from_base(0.02),
            posture: BoxPosture::Flat,
        };
        assert_eq!(beam.evaluate().unwrap_err().input, "beam_height");
    }
}
