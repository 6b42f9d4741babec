//! The concrete around pulled anchors: its cone, the head or wedge that pulls through it, and its side.

use super::factors::{coefficients, is_european, partial_in_tension, reduction};
use super::layout::{Rectangle, lines};
use super::mode::{AnchorMode, Edge, Mode, worst};
use super::pulls::Pulls;
use super::set::{AnchorMake, AnchorSet};
use super::works::Works;
use crate::standing::{
    AnchorAdhesiveCriticalEdge, AnchorBreakoutTension, AnchorCriticalEdge, AnchorFailure,
    AnchorGroupBreakoutTension, AnchorKind, AnchorPulloutHeaded, AnchorPulloutHooked,
    AnchorPulloutProduct, AnchorSideFaceBlowout, BarSpacing, Cracking, En1992Cone,
    MechanicalAnchor, breakout_coefficient, cracking_factor,
};
use quantity::{Force, Length, Quantity as _, Ratio};

/// Coefficient of breakout in uncracked concrete in the formula of product reports.
const UNCRACKED_COEFFICIENT: f64 = 24.0;
/// Longest hook that counts, in diameters.
const LONGEST_HOOK: f64 = 4.5;

/// Nominal and design strength.
#[derive(Debug, Clone, Copy)]
pub(super) struct Strength {
    pub(super) nominal: Force,
    pub(super) design: Force,
}

/// The cone around the anchors that are pulled, the worst of the rectangles.
pub(super) fn breakout<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
    modes: &mut Vec<Mode>,
) -> Result<(), W::Stop> {
    let cone = Cone::of(set, works)?;
    let farthest = set.rod.embedment * 3.0;
    let mut found = Vec::with_capacity(3);
    let mut alone = false;
    for rectangle in &pulls.pulled {
        let part = rectangle.together_within(farthest, pulls.greatest);
        if part.count() == 1 && std::mem::replace(&mut alone, true) {
            continue;
        }
        found.push(Mode {
            way: AnchorMode::Breakout,
            demand: part.pull,
            strength: cone.strength(set, &part, works)?.design,
        });
    }
    modes.extend(worst(&found).copied());
    Ok(())
}

/// What the cones of a set share.
pub(super) struct Cone {
    critical_edge: Length,
    reduction: Ratio,
}

impl Cone {
    pub(super) fn of<W: Works>(set: &AnchorSet, works: &mut W) -> Result<Self, W::Stop> {
        if is_european(set) {
            return Ok(Self {
                critical_edge: Length::default(),
                reduction: partial_in_tension(set),
            });
        }
        Ok(Self {
            critical_edge: critical_edge(set, works)?,
            reduction: reduction(set, AnchorFailure::ConcreteTension, works)?,
        })
    }

    /// Strength of a rectangle.
    pub(super) fn strength<W: Works>(
        &self,
        set: &AnchorSet,
        rectangle: &Rectangle,
        works: &mut W,
    ) -> Result<Strength, W::Stop> {
        if is_european(set) {
            return self.european(set, rectangle, works);
        }
        if rectangle.count() == 1 {
            return self.single(set, rectangle, works);
        }
        let [along, across] = rectangle.lines;
        let [eccentricity_across, eccentricity_along] = rectangle.eccentricity;
        let found = works.work(&AnchorGroupBreakoutTension {
            anchor: set.rod.make.kind(),
            embedment: set.rod.embedment,
            concrete_strength: set.concrete.strength,
            coefficient: coefficient(set),
            cracking_factor: cracking(set),
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
        })?;
        Ok(Strength {
            nominal: found.nominal,
            design: found.design,
        })
    }

    fn single<W: Works>(
        &self,
        set: &AnchorSet,
        rectangle: &Rectangle,
        works: &mut W,
    ) -> Result<Strength, W::Stop> {
        let [along, across] = rectangle.lines;
        let found = works.work(&AnchorBreakoutTension {
            anchor: set.rod.make.kind(),
            embedment: set.rod.embedment,
            concrete_strength: set.concrete.strength,
            coefficient: coefficient(set),
            cracking_factor: cracking(set),
            lightweight_factor: set.concrete.lightweight_factor,
            edge_left: along.edges[0],
            edge_right: along.edges[1],
            edge_front: across.edges[0],
            edge_back: across.edges[1],
            critical_edge: self.critical_edge,
            reduction: self.reduction,
        })?;
        Ok(Strength {
            nominal: found.nominal,
            design: found.design,
        })
    }

    fn european<W: Works>(
        &self,
        set: &AnchorSet,
        rectangle: &Rectangle,
        works: &mut W,
    ) -> Result<Strength, W::Stop> {
        let [along, across] = rectangle.lines;
        let [eccentricity_across, eccentricity_along] = rectangle.eccentricity;
        let found = works.work(&En1992Cone {
            coefficient: coefficients(set).0,
            concrete_strength: set.concrete.strength,
            embedment: set.rod.embedment,
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
            bars: BarSpacing::Close,
            partial: self.reduction,
        })?;
        Ok(Strength {
            nominal: found.characteristic,
            design: found.design,
        })
    }
}

/// Coefficient of breakout: the product's, otherwise the code's.
fn coefficient(set: &AnchorSet) -> Ratio {
    set.product
        .breakout_coefficient
        .unwrap_or_else(|| breakout_coefficient(set.rod.make.kind()))
}

/// Factor for cracking; a product's coefficient has it inside.
fn cracking(set: &AnchorSet) -> Ratio {
    if set.product.breakout_coefficient.is_some() {
        return Ratio::from_base(1.0);
    }
    cracking_factor(set.rod.make.kind(), set.concrete.cracking)
}

/// Edge distance below which drilled anchors in uncracked concrete may split it; 0 where that does not count.
pub(super) fn critical_edge<W: Works>(set: &AnchorSet, works: &mut W) -> Result<Length, W::Stop> {
    if set.rod.make.kind() == AnchorKind::CastIn || set.concrete.cracking == Cracking::Cracked {
        return Ok(Length::default());
    }
    if let Some(known) = set.product.critical_edge {
        return Ok(known);
    }
    let anchor = match set.rod.make {
        AnchorMake::Undercut => MechanicalAnchor::Undercut,
        AnchorMake::Screw => MechanicalAnchor::Screw,
        AnchorMake::Adhesive => return adhesive_critical_edge(set, works),
        _ => MechanicalAnchor::Displacement,
    };
    let found = works.work(&AnchorCriticalEdge {
        anchor,
        embedment: set.rod.embedment,
    })?;
    Ok(found.critical_edge)
}

fn adhesive_critical_edge<W: Works>(set: &AnchorSet, works: &mut W) -> Result<Length, W::Stop> {
    let [_, uncracked_stress] = super::bond::stresses(set, works)?;
    let found = works.work(&AnchorAdhesiveCriticalEdge {
        diameter: set.rod.diameter,
        embedment: set.rod.embedment,
        uncracked_stress,
        coefficient: Ratio::from_base(UNCRACKED_COEFFICIENT),
        concrete_strength: set.concrete.strength,
        thickness: set.concrete.thickness,
    })?;
    Ok(found.critical_edge)
}

/// The worst anchor pulls through the concrete: head, hook or wedge.
pub(super) fn pull_out<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
    modes: &mut Vec<Mode>,
) -> Result<(), W::Stop> {
    let strength = match (set.rod.make, &set.product) {
        (AnchorMake::HeadedBolt | AnchorMake::HeadedStud, product) => {
            let Some(bearing_area) = product.bearing_area else {
                return Ok(());
            };
            let reduction = reduction(set, AnchorFailure::Pullout, works)?;
            let found = works.work(&AnchorPulloutHeaded {
                bearing_area,
                concrete_strength: set.concrete.strength,
                cracking: set.concrete.cracking,
                reduction,
            })?;
            found.design
        }
        (AnchorMake::HookedBolt, product) => {
            let Some(hook) = product.hook_length else {
                return Ok(());
            };
            let reduction = reduction(set, AnchorFailure::Pullout, works)?;
            let longest = set.rod.diameter * LONGEST_HOOK;
            let found = works.work(&AnchorPulloutHooked {
                hook_length: if hook > longest { longest } else { hook },
                diameter: set.rod.diameter,
                concrete_strength: set.concrete.strength,
                cracking: set.concrete.cracking,
                reduction,
            })?;
            found.design
        }
        (AnchorMake::Adhesive, _) => return Ok(()),
        (_, product) => {
            let Some(reported) = product.pull_out else {
                return Ok(());
            };
            let reduction = reduction(set, AnchorFailure::Pullout, works)?;
            let found = works.work(&AnchorPulloutProduct {
                reported,
                exponent: product.pull_out_exponent,
                concrete_strength: set.concrete.strength,
                reduction,
            })?;
            found.design
        }
    };
    modes.push(Mode {
        way: AnchorMode::PullOut,
        demand: pulls.greatest,
        strength,
    });
    Ok(())
}

/// The side of the concrete bursts beside deep heads near an edge; the row along it is taken to be pulled evenly.
pub(super) fn blowout<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
    modes: &mut Vec<Mode>,
) -> Result<(), W::Stop> {
    let headed = matches!(
        set.rod.make,
        AnchorMake::HeadedBolt | AnchorMake::HeadedStud
    );
    let (Some(bearing_area), true) = (set.product.bearing_area, headed) else {
        return Ok(());
    };
    let mut found = Vec::new();
    let lines = lines(set);
    for (edge_at, distance) in Edge::ALL.into_iter().zip(set.concrete.edges) {
        if set.rod.embedment <= distance * 2.5 {
            continue;
        }
        let row = lines[usize::from(edge_at.is_along())];
        let count = if row.spacing < distance * 6.0 {
            row.count
        } else {
            1
        };
        let [a, b] = row.edges;
        let reduction = reduction(set, AnchorFailure::ConcreteTension, works)?;
        let side = works.work(&AnchorSideFaceBlowout {
            embedment: set.rod.embedment,
            edge: distance,
            corner: if a < b { a } else { b },
            bearing_area,
            concrete_strength: set.concrete.strength,
            lightweight_factor: set.concrete.lightweight_factor,
            count,
            spacing: row.spacing,
            reduction,
        })?;
        found.push(Mode {
            way: AnchorMode::Blowout,
            demand: pulls.greatest * f64::from(count),
            strength: side.design,
        });
    }
    modes.extend(worst(&found).copied());
    Ok(())
}
