//! Anchors that are shoved: their steel, each edge of the concrete, and the concrete behind them.

use super::concrete::Cone;
use super::factors::{coefficients, edge_cracking, is_european, partial_in_shear, reduction};
use super::layout::{Line, Rectangle, lines, share_of, whole};
use super::mode::{AnchorMode, Edge, Mode};
use super::pulls::Pulls;
use super::set::{AnchorMake, AnchorSet};
use super::steel;
use super::works::Works;
use crate::standing::{
    AnchorBreakoutShear, AnchorFailure, AnchorPryout, En1992Edge, En1992Pryout, ShearDirection,
};
use quantity::{Angle, Force, Length, Quantity as _, Ratio};

/// Every way to fail in shear for which there is a demand.
///
/// The row nearest to an edge takes the whole shove, as in holes with play; the steel of all anchors shares it alike.
pub fn shear<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    works: &mut W,
) -> Result<Vec<Mode>, W::Stop> {
    let mut modes = Vec::with_capacity(12);
    if pulls.shove <= Force::default() {
        return Ok(modes);
    }
    modes.push(steel::in_shear(set, pulls, works)?);
    let shoved = Shoved::of(set, works)?;
    for edge in Edge::ALL {
        shoved.at(edge, works, &mut modes)?;
    }
    modes.push(pry_out(set, pulls, works)?);
    Ok(modes)
}

/// A set that is shoved at its edges.
struct Shoved<'a> {
    set: &'a AnchorSet,
    lines: [Line; 2],
    shoves: [Force; 2],
    reduction: Ratio,
}

/// The row nearest to an edge, or one anchor of it where they act alone.
struct AtEdge {
    distance: Length,
    row: Line,
    /// Part of the row's shove that it takes.
    part: f64,
}

impl<'a> Shoved<'a> {
    fn of<W: Works>(set: &'a AnchorSet, works: &mut W) -> Result<Self, W::Stop> {
        let reduction = if is_european(set) {
            partial_in_shear()
        } else {
            reduction(set, AnchorFailure::ConcreteShear, works)?
        };
        Ok(Self {
            set,
            lines: lines(set),
            shoves: [set.loads.shear_along, set.loads.shear_across],
            reduction,
        })
    }

    fn row(&self, edge: Edge) -> AtEdge {
        let way = usize::from(!edge.is_along());
        let second = matches!(edge, Edge::Far | Edge::Inside);
        let distance = self.lines[way].edges[usize::from(second)];
        let row = self.lines[1 - way];
        if row.is_apart(distance * 3.0) {
            return AtEdge {
                distance,
                row: row.near_first().outermost(1),
                part: 1.0 / f64::from(row.count),
            };
        }
        AtEdge {
            distance,
            row,
            part: 1.0,
        }
    }

    fn at<W: Works>(
        &self,
        edge: Edge,
        works: &mut W,
        modes: &mut Vec<Mode>,
    ) -> Result<(), W::Stop> {
        let way = usize::from(!edge.is_along());
        let (toward, along) = (self.shoves[way], self.shoves[1 - way]);
        let row = self.row(edge);
        if is_european(self.set) {
            modes.push(self.european(edge, &row, toward, along, works)?);
            return Ok(());
        }
        for (shove, direction, way) in [
            (toward, ShearDirection::Toward, AnchorMode::Toward(edge)),
            (along, ShearDirection::Parallel, AnchorMode::Along(edge)),
        ] {
            if shove > Force::default() {
                modes.push(Mode {
                    way,
                    demand: shove * row.part,
                    strength: self.american(&row, direction, works)?,
                });
            }
        }
        Ok(())
    }

    fn american<W: Works>(
        &self,
        at: &AtEdge,
        direction: ShearDirection,
        works: &mut W,
    ) -> Result<Force, W::Stop> {
        let set = self.set;
        let found = works.work(&AnchorBreakoutShear {
            anchor: set.rod.make.kind(),
            direction,
            diameter: set.rod.diameter,
            bearing_length: bearing_length(set),
            edge: at.distance,
            corner_left: at.row.edges[0],
            corner_right: at.row.edges[1],
            thickness: set.concrete.thickness,
            count: at.row.count,
            spacing: at.row.spacing,
            eccentricity: Length::default(),
            concrete_strength: set.concrete.strength,
            cracking_factor: edge_cracking(set),
            lightweight_factor: set.concrete.lightweight_factor,
            reduction: self.reduction,
        })?;
        Ok(found.design)
    }

    fn european<W: Works>(
        &self,
        edge: Edge,
        at: &AtEdge,
        toward: Force,
        along: Force,
        works: &mut W,
    ) -> Result<Mode, W::Stop> {
        let set = self.set;
        let found = works.work(&En1992Edge {
            coefficient: coefficients(set).1,
            concrete_strength: set.concrete.strength,
            diameter: set.rod.diameter,
            bearing_length: bearing_length(set),
            edge: at.distance,
            corner_left: at.row.edges[0],
            corner_right: at.row.edges[1],
            thickness: set.concrete.thickness,
            count: at.row.count,
            spacing: at.row.spacing,
            eccentricity: Length::default(),
            direction: Angle::from_base(along.base().atan2(toward.base())),
            reinforcement_factor: Ratio::from_base(1.0),
            partial: self.reduction,
        })?;
        let way = if toward > Force::default() {
            AnchorMode::Toward(edge)
        } else {
            AnchorMode::Along(edge)
        };
        Ok(Mode {
            way,
            demand: Force::from_base(toward.base().hypot(along.base())) * at.part,
            strength: found.design,
        })
    }
}

/// Length that bears on the concrete: of an expansion anchor, whose sleeve may be apart, two diameters.
fn bearing_length(set: &AnchorSet) -> Length {
    let short = set.rod.diameter * 2.0;
    if set.rod.make == AnchorMake::Expansion && short < set.rod.embedment {
        short
    } else {
        set.rod.embedment
    }
}

/// The concrete behind the anchors is pried out: as if all were pulled together.
fn pry_out<W: Works>(set: &AnchorSet, pulls: &Pulls, works: &mut W) -> Result<Mode, W::Stop> {
    let all = whole(set, pulls.shove, [Length::default(); 2]);
    let part = all.together_within(set.rod.embedment * 3.0, pulls.shove);
    let cone = Cone::of(set, works)?.strength(set, &part, works)?.nominal;
    let mut found = pried(set, pulls, &part, cone, works)?;
    if set.rod.make == AnchorMake::Adhesive {
        let (part, bond) = super::bond::of_all(set, &all, works)?;
        let by_bond = pried(set, pulls, &part, bond.nominal, works)?;
        if by_bond.share() > found.share() {
            found = by_bond;
        }
    }
    Ok(found)
}

fn pried<W: Works>(
    set: &AnchorSet,
    pulls: &Pulls,
    part: &Rectangle,
    tension: Force,
    works: &mut W,
) -> Result<Mode, W::Stop> {
    let strength = if is_european(set) {
        let found = works.work(&En1992Pryout {
            factor: Ratio::from_base(1.0),
            cone: tension,
            partial: partial_in_shear(),
        })?;
        found.design
    } else {
        let reduction = reduction(set, AnchorFailure::Pryout, works)?;
        let found = works.work(&AnchorPryout {
            embedment: set.rod.embedment,
            tension,
            reduction,
        })?;
        found.design
    };
    Ok(Mode {
        way: AnchorMode::Pryout,
        demand: pulls.shove * share_of(set, part.count()),
        strength,
    })
}
