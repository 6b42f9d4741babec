//! How far a radio reaches with the loss that it may have.

use super::wave::wavelength;
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Frequency, Gain, Length, Quantity as _};

formula! {
    /// The distance at which a radio has used up the loss that it may have on its way, over level ground.
    ///
    /// It is the shorter of the reach in free space and of the reach over ground that reflects, for the larger of two losses
    /// counts. A wave has at least the loss of one wavelength.
    pub struct RadioRange = "radio-range" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// Loss that is allowed on the way: power, antennas and receiver limit together, less what is kept in hand.
        allowed_loss ("L"): Gain,
        /// Height of the one antenna above the ground.
        first_height ("h1"): Length,
        /// Height of the other antenna above the ground.
        second_height ("h2"): Length,
    }
    gives
    /// How far it reaches.
    pub struct Reach {
        /// Reach in free space.
        free_range ("d0"): Length,
        /// Reach over level ground that reflects.
        ground_range ("d1"): Length,
        /// The shorter of both.
        range ("d"): Length,
    }
    formula "d0 = c / (4 · π · f) · 10^(L / 20)\nd1 = √(h1 · h2) · 10^(L / 40), lengths in meters\nd = the shorter of both"
    valid "Level ground, nothing in the way; antennas low against the distance."
    source { work: "free-space and plane-earth loss, solved for the distance", clause: "", evidence: Physics, seen: "algebra on ITU-R P.525 and the plane-earth model" }
    by radio_range
}

fn radio_range(radio: &RadioRange) -> Result<Reach, OutOfReach> {
    positive("first_height", radio.first_height, "5 ft")?;
    positive("second_height", radio.second_height, "5 ft")?;
    let wave = wavelength(radio.frequency)?.base();
    let loss = radio.allowed_loss.base();
    let least = 20.0 * (4.0 * std::f64::consts::PI).log10();
    if !(least..=400.0).contains(&loss) {
        return Err(OutOfReach::new(
            "allowed_loss",
            format!(
                "from {least:.0} dB, the loss of one wavelength, to 400 dB; with less it does not reach at all"
            ),
        ));
    }
    let heights = radio.first_height.base() * radio.second_height.base();
    let free = wave / (4.0 * std::f64::consts::PI) * 10f64.powf(loss / 20.0);
    let ground = heights.sqrt() * 10f64.powf(loss / 40.0);
    Ok(Reach {
        free_range: Length::from_base(free),
        ground_range: Length::from_base(ground),
        range: Length::from_base(free.min(ground)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::signal::PlaneEarthLoss;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn at_its_range_a_radio_has_lost_just_what_it_may(loss in 40.0..120.0, h in 0.5..5.0) {
            let frequency = Frequency::from_base(433.92e6);
            let (first_height, second_height) = (Length::from_base(1.0), Length::from_base(h));
            let radio = RadioRange { frequency, allowed_loss: Gain::from_base(loss), first_height, second_height };
            let distance = radio.evaluate().unwrap().range;
            let path = PlaneEarthLoss { frequency, distance, first_height, second_height };
            prop_assert!((path.evaluate().unwrap().loss.base() - loss).abs() < 1e-9);
        }
    }

    #[test]
    fn what_does_not_reach_at_all_is_refused() {
        let weak = RadioRange {
            frequency: Frequency::from_base(433.92e6),
            allowed_loss: Gain::from_base(10.0),
            first_height: Length::from_base(1.0),
            second_height: Length::from_base(1.0),
        };
        assert_eq!(weak.evaluate().unwrap_err().input, "allowed_loss");
    }
}
