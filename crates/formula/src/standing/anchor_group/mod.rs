//! One set of anchors under one plate: its forces, and every way in which it may fail, by the calculations of this
//! discipline.
//!
//! Nothing is computed here that a calculation gives: the module says which one is asked, of which anchors, and what is
//! held against it. A caller that keeps a working gives its own [`Works`]; [`Quietly`] keeps none.

mod bond;
mod concrete;
mod factors;
mod layout;
mod mode;
mod pulls;
mod set;
mod shear;
mod steel;
#[cfg(test)]
mod tests;
mod together;
mod works;

pub use layout::{Line, Rectangle};
pub use mode::{AnchorMode, Edge, Mode};
pub use pulls::{Pulls, pulls};
pub use set::{
    AnchorCode, AnchorMake, AnchorSet, ConcreteAround, Pattern, PlateLoads, ProductValues, Rod,
    Seat,
};
pub use shear::shear;
pub use together::{Together, together};
pub use works::{Quietly, Works};

/// Everything about a set of anchors.
#[derive(Debug, Clone)]
pub struct AnchorAnswer {
    /// Forces on the anchors.
    pub pulls: Pulls,
    /// Every way to fail in tension for which there is a demand.
    pub tension: Vec<Mode>,
    /// Every way to fail in shear for which there is a demand.
    pub shear: Vec<Mode>,
    /// Pull and shove together, where there are both.
    pub together: Option<Together>,
}

impl AnchorAnswer {
    /// The greatest share of a strength that is used; at most 1 where the anchors hold.
    pub fn share(&self) -> f64 {
        let modes = self.tension.iter().chain(&self.shear).map(Mode::share);
        let together = self.together.map(|together| together.used);
        modes.chain(together).fold(0.0, f64::max)
    }
}

/// Forces, every way to fail, and pull and shove together.
pub fn answer<W: Works>(set: &AnchorSet, works: &mut W) -> Result<AnchorAnswer, W::Stop> {
    let pulls = pulls(set, works)?;
    let tension = tension(set, &pulls, works)?;
    let shear = shear(set, &pulls, works)?;
    let together = together(set, &tension, &shear, works)?;
    Ok(AnchorAnswer {
        pulls,
        tension,
        shear,
        together,
    })
}

/// Every way to fail in tension for which there is a demand.
pub fn tension<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
) -> Result<Vec<Mode>, W::Stop> {
    let mut modes = Vec::with_capacity(8);
    if pulls.greatest > quantity::Force::default() {
        steel::in_tension(set, pulls, works, &mut modes)?;
        concrete::breakout(set, pulls, works, &mut modes)?;
        concrete::pull_out(set, pulls, works, &mut modes)?;
        concrete::blowout(set, pulls, works, &mut modes)?;
    }
    bond::bond(set, pulls, works, &mut modes)?;
    Ok(modes)
}
