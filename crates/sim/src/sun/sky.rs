//! How much of the sun a sky lets through.

use quantity::{Angle, HeatFlux, Quantity as _};

/// Sunshine under a sky.
#[derive(Debug, Clone, Copy)]
pub struct Sky {
    /// On the level, sun and sky together.
    pub global: HeatFlux,
    /// From the sky alone, on the level.
    pub diffuse: HeatFlux,
    /// From the sun alone, on a face that looks at it.
    pub beam: HeatFlux,
}

/// Sunshine on the level under a clear sky (Haurwitz 1945): `1098 W/m² · cos z · e^(−0.059 / cos z)`.
///
/// Some texts print 0.057; public libraries use 0.059, and so does this.
pub fn clear_sky(elevation: Angle) -> HeatFlux {
    let up = elevation.base().sin();
    if up <= 0.0 {
        return HeatFlux::from_base(0.0);
    }
    HeatFlux::from_base(1098.0 * up * (-0.059 / up).exp())
}

/// Sunshine outside the air on a face that looks at the sun, mean of the year, in W/m².
const OUTSIDE: f64 = 1366.1;

/// Lowest sine of the sun's height at which the sun alone is told from the sky.
const LOW: f64 = 0.065;

/// Sunshine on the level told apart into sun and sky by how clear it is (Erbs, Klein and Duffie 1982).
pub fn split(global: HeatFlux, elevation: Angle) -> Sky {
    let up = elevation.base().sin();
    let all = global.base().max(0.0);
    let clearness = if up <= 0.0 {
        0.0
    } else {
        (all / (OUTSIDE * up.max(LOW))).clamp(0.0, 1.0)
    };
    let diffuse = if up > LOW {
        all * share(clearness)
    } else {
        all
    };
    let beam = if up > LOW { (all - diffuse) / up } else { 0.0 };
    Sky {
        global: HeatFlux::from_base(all),
        diffuse: HeatFlux::from_base(diffuse),
        beam: HeatFlux::from_base(beam),
    }
}

/// Share of the sky in the sunshine on the level.
fn share(kt: f64) -> f64 {
    if kt <= 0.22 {
        1.0 - 0.09 * kt
    } else if kt <= 0.8 {
        0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + kt * 12.336)))
    } else {
        0.165
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Computed with pvlib 0.16.1 (Haurwitz): 888.271 at 30° from the zenith, 487.894 at 60°, 135.742 at 80°.
    #[test]
    fn clear_skies_as_another_library_has_them() {
        for (zenith, wanted) in [(30.0_f64, 888.271), (60.0, 487.894), (80.0, 135.742)] {
            let found = clear_sky(Angle::from_base((90.0 - zenith).to_radians()));
            assert!((found.base() - wanted).abs() < 0.001, "{zenith} {found:?}");
        }
        assert!(clear_sky(Angle::from_base(-0.1)).base().abs() < 1e-12);
    }

    #[test]
    fn sun_and_sky_make_up_the_whole() {
        for degrees in 1..90_u32 {
            let elevation = Angle::from_base(f64::from(degrees).to_radians());
            for part in [0.1, 0.4, 0.7, 1.0] {
                let sky = split(clear_sky(elevation) * part, elevation);
                let whole = sky.diffuse.base() + sky.beam.base() * elevation.base().sin();
                assert!((whole - sky.global.base()).abs() < 1e-9);
                assert!(sky.beam.base() >= 0.0 && sky.diffuse.base() >= 0.0);
            }
        }
    }
}
