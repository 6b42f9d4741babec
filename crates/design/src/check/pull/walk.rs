//! One pull of cables through a conduit, piece by piece, from one end to the other.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use formula::ways::{Arrangement, PullBend, PullStraight, SideLoad, WeightCorrection};
use quantity::{Angle, Force, ForcePerLength, Length, MassPerLength, Quantity as _, Ratio};
use site::{Conduit, Segment};

/// A piece of conduit as read: a straight piece with its rise, or a bend.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Piece {
    Straight { length: Length, rise: Ratio },
    Bend { angle: Angle, radius: Length },
}

/// The cables of one pull, taken together.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Bundle {
    pub(crate) mass_per_length: MassPerLength,
    /// Largest diameter among them.
    pub(crate) diameter: Length,
    pub(crate) count: usize,
}

/// The pull after a piece of the way.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Step {
    /// Way from the end at which the cables are fed.
    pub(crate) along: Length,
    pub(crate) tension: Force,
}

/// What a pull does to its cables.
#[derive(Debug, Clone)]
pub(crate) struct Pulled {
    /// Largest tension on all cables together.
    pub(crate) tension: Force,
    /// Largest side-wall load on the worst-placed cable.
    pub(crate) side_load: ForcePerLength,
    /// The pull after each piece, in their order; the first is that at the feeding end.
    pub(crate) steps: Vec<Step>,
}

impl Pulled {
    /// How far from the feeding end the pull first passes a force; nothing where it never does.
    pub(crate) fn passes(&self, force: Force) -> Option<Length> {
        let step = self.steps.windows(2).find(|pair| pair[1].tension > force)?;
        let [before, after] = step else { return None };
        let share: Ratio = (force - before.tension) / (after.tension - before.tension);
        Some(before.along + (after.along - before.along) * share.base().clamp(0.0, 1.0))
    }
}

/// The pieces of a conduit in order from its beginning.
pub(crate) fn pieces<'s>(
    asking: &mut Asking<'s>,
    conduit: &'s Conduit,
) -> Result<Vec<Piece>, Halt> {
    const EXAMPLE: &str =
        "[{ straight = \"20 ft\", bend = \"90°\", radius = \"6 in\" }, { straight = \"3 ft\" }]";
    asking.need(&conduit.origin, "segment", conduit.segment.first(), EXAMPLE)?;
    let mut pieces = Vec::with_capacity(2 * conduit.segment.len());
    let mut whole = Ok(());
    for segment in &conduit.segment {
        if let Err(halt) = add(asking, segment, &mut pieces) {
            whole = Err(halt);
        }
    }
    whole.map(|()| pieces)
}

fn add<'s>(
    asking: &mut Asking<'s>,
    segment: &'s Segment,
    pieces: &mut Vec<Piece>,
) -> Result<(), Halt> {
    if segment.straight.is_some() || segment.bend.is_none() {
        let length = read!(asking, segment.straight)?;
        let rise = asking
            .read_if_there(&segment.origin, "slope", segment.slope.as_ref())
            .unwrap_or(Ratio::from_base(0.0));
        pieces.push(Piece::Straight { length, rise });
    }
    if segment.bend.is_some() {
        let angle = read!(asking, segment.bend)?;
        let radius = read!(asking, segment.radius)?;
        pieces.push(Piece::Bend { angle, radius });
    }
    Ok(())
}

/// The pieces as met from the other end.
pub(crate) fn turned_round(pieces: &[Piece]) -> Vec<Piece> {
    let turned = |piece: &Piece| match *piece {
        Piece::Straight { length, rise } => Piece::Straight {
            length,
            rise: -rise,
        },
        bend @ Piece::Bend { .. } => bend,
    };
    pieces.iter().rev().map(turned).collect()
}

/// How like cables lie: three of them cradled unless the conduit is narrow.
fn arrangement(bundle: Bundle, bore: Length) -> Arrangement {
    match bundle.count {
        0 | 1 => Arrangement::Single,
        2 => Arrangement::Two,
        3 if bore.base() < 2.5 * bundle.diameter.base() => Arrangement::Triangular,
        3 => Arrangement::Cradled,
        4 => Arrangement::Diamond,
        _ => Arrangement::More,
    }
}

/// Pulls the bundle through the pieces in their order; `start` holds it back before the first.
pub(crate) fn pull(
    asking: &mut Asking<'_>,
    pieces: &[Piece],
    bundle: Bundle,
    (friction, bore): (Ratio, Length),
    start: Force,
) -> Result<Pulled, Halt> {
    let arrangement = arrangement(bundle, bore);
    let weight_correction = asking
        .work(&WeightCorrection {
            bore,
            cable: bundle.diameter,
            arrangement,
        })?
        .factor;
    let mut tension = start;
    let mut largest = tension;
    let mut along = Length::from_base(0.0);
    let mut steps = Vec::with_capacity(pieces.len() + 1);
    steps.push(Step { along, tension });
    let mut side_load = ForcePerLength::from_base(0.0);
    for piece in pieces {
        match *piece {
            Piece::Straight { length, rise } => {
                let straight = PullStraight {
                    tension,
                    length,
                    mass_per_length: bundle.mass_per_length,
                    friction,
                    weight_correction,
                    rise,
                };
                tension = asking.work(&straight)?.tension_after;
                along += length;
            }
            Piece::Bend { angle, radius } => {
                let bend = PullBend {
                    tension,
                    angle,
                    friction,
                    weight_correction,
                };
                tension = asking.work(&bend)?.tension_after;
                let side = SideLoad {
                    tension,
                    radius,
                    weight_correction,
                    arrangement,
                };
                let load = asking.work(&side)?.load;
                side_load = if load > side_load { load } else { side_load };
                along += radius * angle.base();
            }
        }
        largest = if tension > largest { tension } else { largest };
        steps.push(Step { along, tension });
    }
    Ok(Pulled {
        tension: largest,
        side_load,
        steps,
    })
}
