//! How loud speech still is at a distance, over the noise.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _};

formula! {
    /// Level of a sound at a distance from its source in the open, in whole decibels.
    ///
    /// Each doubling of the distance takes six decibels. Levels are weighted A, as a meter shows them.
    pub struct SoundLevel = "sound-level" in Signal {
        /// Level at 1 m from the source, in decibels.
        at_one_meter ("L1"): u32,
        /// Distance from the source.
        distance ("d"): Length,
    }
    gives
    /// Level there.
    pub struct SoundLevels {
        /// Level at the distance, in decibels.
        level ("L"): u32,
    }
    formula "L = L1 − 20 · lg(d / 1 m), to the nearest whole decibel, not below zero"
    valid "A small source in the open, from 0.1 m to 100 m; a wall behind the station adds up to 3 dB, a half-open window takes 5 dB to 15 dB."
    source { work: "inverse-square law of a point source", clause: "", evidence: Physics, seen: "public tables of level against distance, see the cases" }
    by sound_level
}

fn sound_level(sound: &SoundLevel) -> Result<SoundLevels, OutOfReach> {
    positive("distance", sound.distance, "3 ft")?;
    let meters = sound.distance.base();
    if !(0.1..=100.0).contains(&meters) {
        return Err(OutOfReach::new(
            "distance",
            "the law is good from 0.1 m to 100 m",
        ));
    }
    if sound.at_one_meter > 140 {
        return Err(OutOfReach::new(
            "at_one_meter",
            "no station is louder than 140 dB",
        ));
    }
    let level = f64::from(sound.at_one_meter) - 20.0 * meters.log10();
    Ok(SoundLevels {
        level: whole(level),
    })
}

/// The nearest whole decibel, none below zero.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "between 0 and 160"
)]
fn whole(level: f64) -> u32 {
    level.round().clamp(0.0, 1000.0) as u32
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn level(at_one_meter: u32, meters: f64) -> Result<u32, OutOfReach> {
        let sound = SoundLevel {
            at_one_meter,
            distance: Length::from_base(meters),
        };
        sound.evaluate().map(|gives| gives.level)
    }

    proptest! {
        #[test]
        fn farther_is_never_louder(from in 0u32..140, meters in 0.1..50.0) {
            prop_assert!(level(from, 2.0 * meters).unwrap() <= level(from, meters).unwrap());
        }
    }

    #[test]
    fn refusals_name_the_input() {
        assert_eq!(level(90, 0.0).unwrap_err().input, "distance");
        assert_eq!(level(200, 1.0).unwrap_err().input, "at_one_meter");
    }
}
