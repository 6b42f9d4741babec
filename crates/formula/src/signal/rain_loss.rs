//! Loss of a radio wave in rain.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Frequency, Gain, Length, Quantity as _, Velocity};

quantity::words! {
    /// How the electric field of a wave stands.
    pub enum Polarization {
        /// Level.
        Horizontal = "horizontal",
        /// Upright.
        Vertical = "vertical",
    }
}

formula! {
    /// What rain takes from a radio wave on its way.
    ///
    /// Below 10 GHz rain is hardly felt on the ways of a gate; at 24 GHz and at 60 GHz it decides. The same rate is taken
    /// for the whole way, which is fair up to a kilometer.
    pub struct RainLoss = "rain-loss" in Signal {
        /// Frequency of the wave.
        frequency ("f"): Frequency,
        /// How its electric field stands.
        polarization ("–"): Polarization,
        /// How hard it rains.
        rain_rate ("R"): Velocity,
        /// Length of the way in the rain.
        distance ("d"): Length,
    }
    gives
    /// What the rain takes.
    pub struct RainTakes {
        /// Loss that comes on top of the loss of the way.
        loss ("A"): Gain,
    }
    formula "A = k · R^α · d, R in mm/h, d in km\nlog₁₀ k = Σ a · e^(−((log₁₀ f − b) / c)²) + m · log₁₀ f + n,  α likewise, f in GHz"
    valid "1 GHz to 1000 GHz, level way, rain up to 250 mm/h. Editions before P.838-3 have other figures and are not mixed in."
    source { work: "ITU-R P.838-3", clause: "formulas (1) to (3), tables 1 to 4", evidence: Seen, seen: "www.mydoc123.com/d-792291.html for the constants; table 5 in public code, every cell recomputed" }
    by rain_loss
}

/// Humps of a curve over the logarithm of the frequency, then its slope and its height.
struct Curve {
    humps: &'static [(f64, f64, f64)],
    slope: f64,
    height: f64,
}

const K_HORIZONTAL: Curve = Curve {
    humps: &[
        (-5.33980, -0.10008, 1.13098),
        (-0.35351, 1.26970, 0.45400),
        (-0.23789, 0.86036, 0.15354),
        (-0.94158, 0.64552, 0.16817),
    ],
    slope: -0.18961,
    height: 0.71147,
};

const K_VERTICAL: Curve = Curve {
    humps: &[
        (-3.80595, 0.56934, 0.81061),
        (-3.44965, -0.22911, 0.51059),
        (-0.39902, 0.73042, 0.11899),
        (0.50167, 1.07319, 0.27195),
    ],
    slope: -0.16398,
    height: 0.63297,
};

const ALPHA_HORIZONTAL: Curve = Curve {
    humps: &[
        (-0.14318, 1.82442, -0.55187),
        (0.29591, 0.77564, 0.19822),
        (0.32177, 0.63773, 0.13164),
        (-5.37610, -0.96230, 1.47828),
        (16.1721, -3.29980, 3.43990),
    ],
    slope: 0.67849,
    height: -1.95537,
};

const ALPHA_VERTICAL: Curve = Curve {
    humps: &[
        (-0.07771, 2.33840, -0.76284),
        (0.56727, 0.95545, 0.54039),
        (-0.20238, 1.14520, 0.26809),
        (-48.2991, 0.791_669, 0.116_226),
        (48.5833, 0.791_459, 0.116_479),
    ],
    slope: -0.053_739,
    height: 0.83433,
};

impl Curve {
    fn at(&self, log_frequency: f64) -> f64 {
        let humps = self.humps.iter().map(|(a, b, c)| {
            let off = (log_frequency - b) / c;
            a * (-off * off).exp()
        });
        humps.sum::<f64>() + self.slope * log_frequency + self.height
    }
}

fn rain_loss(way: &RainLoss) -> Result<RainTakes, OutOfReach> {
    let gigahertz = way.frequency.base() / 1e9;
    if !(1.0..=1000.0).contains(&gigahertz) {
        return Err(OutOfReach::new(
            "frequency",
            "the figures reach from 1 GHz to 1000 GHz; below 1 GHz rain takes nothing",
        ));
    }
    let rate = way.rain_rate.base() * 3.6e6;
    if !(0.0..=250.0).contains(&rate) {
        return Err(OutOfReach::new(
            "rain_rate",
            "rain from 0 to 250 mm/h; a cloudburst has 50 to 150 mm/h",
        ));
    }
    not_negative("distance", way.distance, "200 m")?;
    let log = gigahertz.log10();
    let (k, alpha) = match way.polarization {
        Polarization::Horizontal => (K_HORIZONTAL.at(log), ALPHA_HORIZONTAL.at(log)),
        Polarization::Vertical => (K_VERTICAL.at(log), ALPHA_VERTICAL.at(log)),
    };
    let each = if rate > 0.0 {
        10f64.powf(k) * rate.powf(alpha)
    } else {
        0.0
    };
    Ok(RainTakes {
        loss: Gain::from_base(each * way.distance.base() / 1000.0),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn way(gigahertz: f64, rate: f64, polarization: Polarization) -> RainLoss {
        RainLoss {
            frequency: Frequency::from_base(gigahertz * 1e9),
            polarization,
            rain_rate: Velocity::from_base(rate / 3.6e6),
            distance: Length::from_base(1000.0),
        }
    }

    proptest! {
        #[test]
        fn harder_rain_takes_more_and_drops_lie_flat(f in 10.0..90.0, rate in 5.0..150.0) {
            use Polarization::{Horizontal, Vertical};
            let takes = |rate, stands| way(f, rate, stands).evaluate().unwrap().loss;
            prop_assert!(takes(rate + 5.0, Horizontal) > takes(rate, Horizontal));
            prop_assert!(takes(rate, Horizontal).base() >= 0.9 * takes(rate, Vertical).base());
        }
    }

    #[test]
    fn no_rain_takes_nothing_and_long_waves_are_refused() {
        let dry = way(60.0, 0.0, Polarization::Vertical).evaluate().unwrap();
        assert!(dry.loss.base().abs() < 1e-12);
        let long = way(0.4, 10.0, Polarization::Vertical);
        assert_eq!(long.evaluate().unwrap_err().input, "frequency");
        let flood = way(60.0, 900.0, Polarization::Vertical);
        assert_eq!(flood.evaluate().unwrap_err().input, "rain_rate");
    }
}
