//! How much harder several cables press on a conduit than their weight alone.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// How like cables lie in a conduit.
    pub enum Arrangement {
        /// One cable.
        Single = "single",
        /// Two cables side by side.
        Two = "two",
        /// Three cables, one riding on two.
        Triangular = "three triangular",
        /// Three cables side by side in the bottom.
        Cradled = "three cradled",
        /// Four cables as a diamond.
        Diamond = "four diamond",
        /// More than four.
        More = "more",
    }
}

formula! {
    /// Weight correction factor: how much harder cables press on a conduit than their weight, since they wedge.
    ///
    /// Three cables lie cradled when the conduit is more than three times as wide as one of them, and triangular below two and
    /// a half times; in between take cradled, which presses harder.
    pub struct WeightCorrection = "weight-correction" in Ways {
        /// Inside diameter of the conduit.
        bore ("D"): Length,
        /// Diameter of one cable.
        cable ("d"): Length,
        /// How the cables lie.
        arrangement ("–"): Arrangement,
    }
    gives
    /// How hard cables press.
    pub struct Correction {
        /// Weight correction factor, at least one.
        factor ("w"): Ratio,
    }
    formula "one cable: w = 1\ntwo, or three triangular: w = 1 / √(1 − (d/(D−d))²)\nthree cradled, or four: w = 1 + 4/3 · (d/(D−d))²\nmore: w = 1.4"
    valid "Like round cables that fit into the conduit. For four cables some works put 2 in place of 4/3."
    source { work: "IEEE 1185, ICEA P-45-482, AEIC CG5", clause: "weight correction factor", evidence: Seen, seen: "a public page of cable-engineering documentation (address withheld: a product's name is in it)" }
    by weight_correction
}

fn weight_correction(cables: &WeightCorrection) -> Result<Correction, OutOfReach> {
    positive("bore", cables.bore, "1.049 in")?;
    positive("cable", cables.cable, "0.3 in")?;
    if cables.bore <= cables.cable {
        return Err(OutOfReach::new(
            "cable",
            "the cable is not thinner than the conduit is wide; it does not go in",
        ));
    }
    let wedge: Ratio = cables.cable / (cables.bore - cables.cable);
    let square = wedge.base() * wedge.base();
    let factor = match cables.arrangement {
        Arrangement::Single => 1.0,
        Arrangement::More => 1.4,
        Arrangement::Cradled | Arrangement::Diamond => 1.0 + 4.0 / 3.0 * square,
        Arrangement::Two | Arrangement::Triangular if square < 1.0 => 1.0 / (1.0 - square).sqrt(),
        Arrangement::Two | Arrangement::Triangular => {
            return Err(OutOfReach::new(
                "cable",
                "two such cables do not lie side by side in this conduit; take a wider one",
            ));
        }
    };
    Ok(Correction {
        factor: Ratio::from_base(factor),
    })
}
