//! Whether three like cables can wedge in a bend.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _, Ratio};

quantity::words! {
    /// Whether three like cables wedge.
    pub enum Jam {
        /// The ratio lies outside the band in which three cables line up and wedge.
        Unlikely = "unlikely",
        /// The ratio lies between 2.8 and 3.2.
        Likely = "likely",
    }
}

formula! {
    /// Jam ratio: conduit width over cable width. Near three, three like cables line up across a bend and wedge.
    ///
    /// A bent conduit is a little oval; where bends are made in the field its width is taken 5 % larger. Only like cables
    /// count: averaging a thin ground wire in hides the danger.
    pub struct ConduitJam = "conduit-jam" in Ways {
        /// Inside diameter of the conduit.
        bore ("D"): Length,
        /// Diameter of one of three like cables.
        cable ("d"): Length,
        /// How much wider a bend makes the conduit; 1 when straight, 1.05 for field bends.
        oval ("o"): Ratio,
    }
    gives
    /// Danger of wedging.
    pub struct JamDanger {
        /// Jam ratio.
        ratio ("o · D / d"): Ratio,
        /// Whether three like cables wedge.
        jam ("–"): Jam,
    }
    formula "ratio = o · D / d; likely between 2.8 and 3.2"
    valid "Three, or three among more, like round cables."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9 table 1, informational note 2", evidence: Seen, seen: "code discussion forum threads (addresses withheld: personal names are in them)" }
    by conduit_jam
}

fn conduit_jam(cables: &ConduitJam) -> Result<JamDanger, OutOfReach> {
    positive("bore", cables.bore, "1.063 in")?;
    positive("cable", cables.cable, "0.384 in")?;
    positive("oval", cables.oval, "1.05")?;
    let ratio: Ratio = cables.bore / cables.cable * cables.oval;
    let jam = if (2.8..=3.2).contains(&ratio.base()) {
        Jam::Likely
    } else {
        Jam::Unlikely
    };
    Ok(JamDanger { ratio, jam })
}
