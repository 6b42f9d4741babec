//! Area that round cables take up in a conduit.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Length, Quantity as _, Ratio};
use std::f64::consts::FRAC_PI_4;

formula! {
    /// Area that like round cables take up in a conduit.
    ///
    /// A cable that is not round counts as a circle of its largest width.
    pub struct CableArea = "cable-area" in Ways {
        /// Diameter over the sheath; the largest width of a flat cable.
        diameter ("d"): Length,
        /// How many like cables.
        count ("n"): u32,
    }
    gives
    /// Area of cables.
    pub struct CablesArea {
        /// Area of one.
        one ("A₁"): Area,
        /// Area of all.
        all ("A"): Area,
    }
    formula "A₁ = π/4 · d²\nA = n · A₁"
    valid "Round cables; flat ones by their largest width, as note 9 to the table has it (memory)."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9 tables 1 and 5", evidence: Seen, seen: "public reprint of table 5" }
    by cable_area
}

fn cable_area(cables: &CableArea) -> Result<CablesArea, OutOfReach> {
    positive("diameter", cables.diameter, "0.24 in")?;
    let one: Area = FRAC_PI_4 * cables.diameter * cables.diameter;
    let all = one * Ratio::from_base(f64::from(cables.count));
    Ok(CablesArea { one, all })
}
