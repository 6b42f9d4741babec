//! How far shiny faces stay from the axis of a safety beam, by IEC 61496-2.

use super::limit::{LimitVerdict, is_at_least, verdict};
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// Type of a light curtain or beam by IEC 61496.
    pub enum EspeType {
        /// Type 2: half angle of 5°.
        Type2 = "2",
        /// Type 4: half angle of 2.5°.
        Type4 = "4",
    }
}

formula! {
    /// Least distance of shiny faces from the axis of a beam, so that no light goes around a person by reflection.
    ///
    /// Wet paving, car doors, window panes, stainless posts and water count as shiny. The distance holds on every side
    /// of the axis, the ground included. One manual prints a form with the tangent of 2° that is far too small and
    /// looks like a misprint. A beam without a declared type can spread wider: use its data sheet.
    pub struct ReflectiveSurfaceDistance = "reflective-surface-distance" in Protection {
        /// Type of the device.
        device ("–"): EspeType,
        /// Distance from emitter to receiver.
        range ("R"): Length,
        /// Distance of the shiny face from the axis.
        distance ("a"): Length,
    }
    gives
    /// How the distance of a shiny face stands to its limit.
    pub struct ReflectiveRule {
        /// Least distance.
        least ("amin"): Length,
        /// Distance to spare; below zero where the face is too near.
        spare ("a − amin"): Length,
        /// Whether it is far enough.
        verdict ("–"): LimitVerdict,
    }
    formula "amin = max(R, 3 m) · tan α\nα = 5° for type 2, 2.5° for type 4"
    valid "Devices of type 2 or type 4 within their printed range. The step at 3 m is printed for type 4 and used for both."
    source { work: "IEC 61496-2", clause: "as quoted", evidence: Seen, seen: "operating manuals of safety light grids and light curtains, one with a chart (addresses withheld); the standard itself was not at hand" }
    by reflective_rule
}

fn reflective_rule(beam: &ReflectiveSurfaceDistance) -> Result<ReflectiveRule, OutOfReach> {
    positive("range", beam.range, "5 m")?;
    not_negative("distance", beam.distance, "300 mm")?;
    let half_angle: f64 = match beam.device {
        EspeType::Type2 => 5.0,
        EspeType::Type4 => 2.5,
    };
    let least = Length::from_base(beam.range.base().max(3.0) * half_angle.to_radians().tan());
    Ok(ReflectiveRule {
        least,
        spare: beam.distance - least,
        verdict: verdict(is_at_least(beam.distance, least)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn least(device: EspeType, range: f64) -> f64 {
        let beam = ReflectiveSurfaceDistance {
            device,
            range: Length::from_base(range),
            distance: Length::from_base(0.0),
        };
        beam.evaluate().unwrap().least.base()
    }

    proptest! {
        #[test]
        fn type_2_and_longer_ranges_never_ask_less(range in 0.1..60.0, more in 0.0..20.0) {
            prop_assert!(least(EspeType::Type2, range) > least(EspeType::Type4, range));
            prop_assert!(least(EspeType::Type4, range + more) >= least(EspeType::Type4, range));
        }
    }

    #[test]
    fn no_range_is_refused() {
        let beam = ReflectiveSurfaceDistance {
            device: EspeType::Type4,
            range: Length::from_base(0.0),
            distance: Length::from_base(0.3),
        };
        assert_eq!(beam.evaluate().unwrap_err().input, "range");
    }
}
