//! Wind force on a round bar or pipe by EN 1991-1-4.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, ForcePerLength, Length, Pressure, Quantity as _, Ratio, Velocity};

formula! {
    /// Wind force on a round member that stands alone: an arm, a rail, a pole.
    ///
    /// A thin bar, or a slow wind, leaves a wide wake: 1.2. From a Reynolds number of half a million on the wake narrows
    /// and the roughness of the surface counts. Ends are not counted, which is the safe side. For a member in a frame use
    /// en1991-lattice-force.
    pub struct En1991RoundMember = "en1991-round-member" in Wind {
        /// Peak velocity pressure at the height of the member.
        peak_pressure ("qp"): Pressure,
        /// Diameter.
        diameter ("b"): Length,
        /// Length.
        length ("l"): Length,
        /// Equivalent roughness: 0.2 mm for galvanized steel, 0.02 mm for spray paint, 2 mm for rust.
        roughness ("k"): Length,
    }
    gives
    /// Wind force on a round member.
    pub struct En1991Round {
        /// Wind speed of the gust.
        gust ("v"): Velocity,
        /// Reynolds number.
        reynolds ("Re"): Ratio,
        /// Force coefficient.
        coefficient ("cf,0"): Ratio,
        /// Force on each unit of length.
        line_force ("w"): ForcePerLength,
        /// Force on the whole member, the structural factor taken as 1.
        force ("F"): Force,
    }
    formula "v = √(2 · qp / 1.25 kg/m³), Re = b · v / 15·10⁻⁶ m²/s\ncf,0 = 1.2 + 0.18 · log(10 · k / b) / (1 + 0.4 · log(Re / 10⁶)), not above 1.2; 1.2 below Re = 5·10⁵\nw = qp · cf,0 · b, F = w · l"
    valid "Round members up to Re = 10⁷. Departs: the figure's falling branch between Re = 2·10⁵ and 5·10⁵ is not used, the greater 1.2 is taken."
    source { work: "EN 1991-1-4:2005", clause: "7.9.2 (figure 7.28, table 7.13)", evidence: Seen, seen: "the expression in the public library xcfem/xc, with a test; the standard itself was not at hand" }
    by round_member
}

/// Density of air that the standard recommends, in kg/m³.
const AIR: f64 = 1.25;
/// Kinematic viscosity of air in the standard, in m²/s.
const VISCOSITY: f64 = 15e-6;
/// Coefficient of a wide wake.
const WIDE_WAKE: f64 = 1.2;
/// Reynolds number from which the wake is surely narrow.
const NARROW_FROM: f64 = 5e5;

fn round_member(bar: &En1991RoundMember) -> Result<En1991Round, OutOfReach> {
    not_negative("peak_pressure", bar.peak_pressure, "900 Pa")?;
    positive("diameter", bar.diameter, "80 mm")?;
    not_negative("length", bar.length, "4 m")?;
    positive("roughness", bar.roughness, "0.2 mm")?;
    let gust = (2.0 * bar.peak_pressure.base() / AIR).sqrt();
    let reynolds = bar.diameter.base() * gust / VISCOSITY;
    if reynolds > 1e7 {
        return Err(OutOfReach::new(
            "diameter",
            "the figure of the standard ends at a Reynolds number of ten million; no gate has such a bar",
        ));
    }
    let coefficient = coefficient(reynolds, bar.roughness.base() / bar.diameter.base());
    let line = bar.peak_pressure.base() * coefficient * bar.diameter.base();
    Ok(En1991Round {
        gust: Velocity::from_base(gust),
        reynolds: Ratio::from_base(reynolds),
        coefficient: Ratio::from_base(coefficient),
        line_force: ForcePerLength::from_base(line),
        force: Force::from_base(line * bar.length.base()),
    })
}

fn coefficient(reynolds: f64, roughness: f64) -> f64 {
    if reynolds < NARROW_FROM {
        return WIDE_WAKE;
    }
    let rough = 0.18 * (10.0 * roughness).log10();
    (WIDE_WAKE + rough / (1.0 + 0.4 * (reynolds / 1e6).log10())).clamp(0.0, WIDE_WAKE)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bar(pressure: f64, diameter: f64, roughness: f64) -> Result<En1991Round, OutOfReach> {
        En1991RoundMember {
            peak_pressure: Pressure::from_base(pressure),
            diameter: Length::from_base(diameter),
            length: Length::from_base(4.0),
            roughness: Length::from_base(roughness),
        }
        .evaluate()
    }

    proptest! {
        #[test]
        fn it_is_never_above_that_of_a_wide_wake(pressure in 1.0..3000.0, diameter in 0.01..1.0) {
            let coefficient = bar(pressure, diameter, 2e-4).unwrap().coefficient.base();
            prop_assert!((0.3..=1.2).contains(&coefficient));
        }

        #[test]
        fn a_rougher_bar_takes_no_less(pressure in 1.0..3000.0, diameter in 0.01..1.0) {
            let at = |roughness| bar(pressure, diameter, roughness).unwrap().force;
            prop_assert!(at(2e-5) <= at(2e-3));
        }
    }

    #[test]
    fn a_thin_arm_has_a_wide_wake_and_none_is_refused() {
        assert!((bar(900.0, 0.09, 2e-4).unwrap().coefficient.base() - 1.2).abs() < 1e-12);
        assert_eq!(bar(900.0, 0.0, 2e-4).unwrap_err().input, "diameter");
        assert_eq!(bar(1e6, 10.0, 2e-4).unwrap_err().input, "diameter");
    }
}
