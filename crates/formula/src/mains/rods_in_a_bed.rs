//! Resistance of electrodes in a row at any spacing, with a paralleling factor.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Ratio, Resistance, Resistivity};

formula! {
    /// Resistance of equal electrodes in a row: what they would have far apart, and what they cost each other.
    ///
    /// The paralleling factor comes from the table of the source for that count; it has no unit once resistivity and
    /// spacing are in the same units.
    pub struct RodsInABed = "rods-in-a-bed" in Power {
        /// Resistance of one electrode by itself.
        one ("RA"): Resistance,
        /// How many there are.
        rods ("N"): u32,
        /// Resistivity of the soil.
        resistivity ("ρ"): Resistivity,
        /// Paralleling factor.
        paralleling ("P"): Ratio,
        /// Distance from one to the next.
        spacing ("s"): Length,
    }
    gives
    /// Resistance of a bed.
    pub struct Bed {
        /// Resistance of all together.
        resistance ("RN"): Resistance,
    }
    formula "RN = RA / N + ρ · P / s"
    valid "Equal electrodes in a row, in soil of one kind. Tables in feet and ohm centimeters print P / 30.48."
    source { work: "USACE ETL 1110-9-10", clause: "equation 1-11", evidence: Seen, seen: "usacetechnicalletters.tpub.com/ETL-1110-9-10(FR)/ETL-1110-9-10(FR)0029.htm" }
    by rods_in_a_bed
}

fn rods_in_a_bed(bed: &RodsInABed) -> Result<Bed, OutOfReach> {
    positive("one", bed.one, "40 Ω")?;
    positive("resistivity", bed.resistivity, "100 Ω·m")?;
    not_negative("paralleling", bed.paralleling, "0.08")?;
    positive("spacing", bed.spacing, "20 ft")?;
    if bed.rods == 0 {
        return Err(OutOfReach::new("rods", "a bed has at least one electrode"));
    }
    let mutual: Resistance = bed.resistivity * bed.paralleling / bed.spacing;
    Ok(Bed {
        resistance: bed.one / f64::from(bed.rods) + mutual,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;
    use quantity::Quantity as _;

    fn bed(rods: u32, spacing: f64) -> Result<f64, OutOfReach> {
        RodsInABed {
            one: Resistance::from_base(8.53),
            rods,
            resistivity: Resistivity::from_base(20.0),
            paralleling: Ratio::from_base(0.08),
            spacing: Length::from_base(spacing),
        }
        .evaluate()
        .map(|found| found.resistance.base())
    }

    proptest! {
        #[test]
        fn farther_apart_is_never_worse(rods in 1u32..20, spacing in 1.0..50.0) {
            let (near, far) = (bed(rods, spacing).unwrap(), bed(rods, spacing + 1.0).unwrap());
            prop_assert!(far < near && far > 8.53 / f64::from(rods));
        }
    }

    #[test]
    fn nothing_is_refused() {
        assert_eq!(bed(0, 6.0).unwrap_err().input, "rods");
        assert_eq!(bed(5, 0.0).unwrap_err().input, "spacing");
    }
}
