//! How hard a bend presses on the cable.

use super::Arrangement;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, ForcePerLength, Length, Quantity as _, Ratio};

formula! {
    /// Side-wall load: how hard the wall of a bend presses on the worst-placed cable for each unit of length.
    ///
    /// Take the tension where the cable leaves the bend; it is the largest in it.
    pub struct SideLoad = "side-load" in Ways {
        /// Tension where the cables leave the bend.
        tension ("T"): Force,
        /// Radius of the bend to the center line.
        radius ("R"): Length,
        /// Weight correction factor.
        weight_correction ("w"): Ratio,
        /// How the cables lie.
        arrangement ("–"): Arrangement,
    }
    gives
    /// Side-wall load.
    pub struct SideWallLoad {
        /// Force on the worst-placed cable for each unit of length.
        load ("P"): ForcePerLength,
    }
    formula "one cable, or more than four: P = T / R\ntwo, or three triangular: P = w · T / (2 · R)\nthree cradled: P = (3 · w − 2) · T / (3 · R)\nfour: P = (w − 1) · T / R"
    valid "Like cables pulled together. For more than four no formula is printed; as if one cable took it all is on the safe side."
    source { work: "IEEE 1185, ICEA P-45-482", clause: "sidewall bearing pressure", evidence: Seen, seen: "a public page of cable-engineering documentation (address withheld: a product's name is in it)" }
    by side_load
}

fn side_load(bend: &SideLoad) -> Result<SideWallLoad, OutOfReach> {
    not_negative("tension", bend.tension, "25 lbf")?;
    positive("radius", bend.radius, "6 in")?;
    if bend.weight_correction.base() < 1.0 {
        return Err(OutOfReach::new(
            "weight_correction",
            "the factor is not below 1; work it out with weight-correction",
        ));
    }
    let w = bend.weight_correction.base();
    let share = Ratio::from_base(match bend.arrangement {
        Arrangement::Single | Arrangement::More => 1.0,
        Arrangement::Two | Arrangement::Triangular => w / 2.0,
        Arrangement::Cradled => (3.0 * w - 2.0) / 3.0,
        Arrangement::Diamond => w - 1.0,
    });
    let load: ForcePerLength = (bend.tension * share / bend.radius).into();
    Ok(SideWallLoad { load })
}
