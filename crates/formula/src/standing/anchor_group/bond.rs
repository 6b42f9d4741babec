//! The bond of adhesive anchors, for a passing pull on all and a lasting one on the worst.

use super::concrete::{Strength, critical_edge};
use super::factors::reduction;
use super::layout::{Rectangle, outermost};
use super::mode::{AnchorMode, Mode, worst};
use super::pulls::Pulls;
use super::set::{AnchorMake, AnchorSet};
use super::works::Works;
use crate::standing::{
    AnchorBond, AnchorBondTension, AnchorFailure, AnchorMinimumBond, BondEnvironment, Cracking,
    PullDuration,
};
use quantity::{Force, Length, Pressure, Ratio};

pub(super) fn bond<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
    modes: &mut Vec<Mode>,
) -> Result<(), W::Stop> {
    let (pull, lasting) = (pulls.greatest, set.loads.lasting_pull);
    let nothing = Force::default();
    if set.rod.make != AnchorMake::Adhesive || (pull <= nothing && lasting <= nothing) {
        return Ok(());
    }
    let glue = Glue::of(set, works)?;
    let one = glue.one(set, pull, works)?;
    if lasting > nothing {
        modes.push(Mode {
            way: AnchorMode::LastingBond,
            demand: lasting,
            strength: one.sustained,
        });
    }
    let mut found = Vec::with_capacity(4);
    for rectangle in &pulls.pulled {
        let part = rectangle.together_within(one.reach * 2.0, pull);
        let strength = if part.count() == 1 {
            one.design
        } else {
            glue.bond(set, &part, works)?.design
        };
        found.push(Mode {
            way: AnchorMode::Bond,
            demand: part.pull,
            strength,
        });
    }
    modes.extend(worst(&found).copied());
    Ok(())
}

/// Bond of the anchors of a rectangle without eccentricity, or of so many of them as act together.
pub(super) fn of_all<W: Works>(
    set: &AnchorSet,
    rectangle: &Rectangle,
    works: &mut W,
) -> Result<(Rectangle, Strength), W::Stop> {
    let glue = Glue::of(set, works)?;
    let one = glue.one(set, rectangle.pull, works)?;
    let part = rectangle.together_within(one.reach * 2.0, rectangle.pull);
    let bond = glue.bond(set, &part, works)?;
    Ok((
        part,
        Strength {
            nominal: bond.nominal,
            design: bond.design,
        },
    ))
}

/// Bond stresses in cracked and in uncracked concrete: the product's, otherwise the least of the code.
pub(super) fn stresses<W: Works>(set: &AnchorSet, works: &mut W) -> Result<[Pressure; 2], W::Stop> {
    if let Some(known) = set.product.bond {
        return Ok(known);
    }
    let duration = if set.loads.lasting_pull > Force::default() {
        PullDuration::Sustained
    } else {
        PullDuration::Passing
    };
    let least = works.work(&AnchorMinimumBond {
        environment: BondEnvironment::Outdoor,
        duration,
        loading: set.loading,
    })?;
    Ok([least.cracked, least.uncracked])
}

/// What the bonds of a set share.
struct Glue {
    stresses: [Pressure; 2],
    critical_edge: Length,
    reduction: Ratio,
}

impl Glue {
    fn of<W: Works>(set: &AnchorSet, works: &mut W) -> Result<Self, W::Stop> {
        Ok(Self {
            stresses: stresses(set, works)?,
            critical_edge: critical_edge(set, works)?,
            reduction: reduction(set, AnchorFailure::ConcreteTension, works)?,
        })
    }

    /// Bond of one anchor, that nearest to the edges.
    fn one<W: Works>(
        &self,
        set: &AnchorSet,
        pull: Force,
        works: &mut W,
    ) -> Result<AnchorBond, W::Stop> {
        let middle = [Length::default(); 2];
        let mut alone = outermost(set, 0, 1, pull, middle);
        alone.lines[1] = outermost(set, 1, 1, pull, middle).lines[1];
        self.bond(set, &alone, works)
    }

    fn bond<W: Works>(
        &self,
        set: &AnchorSet,
        rectangle: &Rectangle,
        works: &mut W,
    ) -> Result<AnchorBond, W::Stop> {
        let [along, across] = rectangle.lines;
        let [cracked, uncracked] = self.stresses;
        let [eccentricity_across, eccentricity_along] = rectangle.eccentricity;
        works.work(&AnchorBondTension {
            diameter: set.rod.diameter,
            embedment: set.rod.embedment,
            bond_stress: match set.concrete.cracking {
                Cracking::Cracked => cracked,
                Cracking::Uncracked => uncracked,
            },
            uncracked_stress: uncracked,
            lightweight_factor: set.concrete.lightweight_factor,
            count_across: along.count,
            spacing_across: along.spacing,
            count_along: across.count,
            spacing_along: across.spacing,
            edge_left: along.edges[0],
            edge_right: along.edges[1],
            edge_front: across.edges[0],
            edge_back: across.edges[1],
            eccentricity_across,
            eccentricity_along,
            critical_edge: self.critical_edge,
            reduction: self.reduction,
        })
    }
}
