//! What a leaf takes along its way.

use formula::motion::{SlideGateForce, SwingGateTorque, SwingWay};
use formula::{Formula as _, OutOfReach};
use quantity::{Angle, Force, Length, Quantity as _};

/// How many equal pieces the way of a turning leaf is cut into.
const PIECES: u32 = 180;

/// What a leaf takes at each place of its way, straight between places that lie evenly.
#[derive(Debug, Clone)]
pub struct Load {
    /// Force that always works against the motion, and force that works against the way out, at each place.
    places: Vec<(f64, f64)>,
    spacing: f64,
}

impl Load {
    /// The same load all along the way: `opposing` against any motion, `uphill` against the way out and with the way back.
    pub fn even(opposing: Force, uphill: Force) -> Self {
        Self {
            places: vec![(opposing.base(), uphill.base()); 2],
            spacing: 1.0,
        }
    }

    /// The load of a sliding leaf.
    pub fn sliding(leaf: &SlideGateForce) -> Result<Self, OutOfReach> {
        let force = leaf.evaluate()?;
        Ok(Self::even(
            force.steady - force.slope_force,
            force.slope_force,
        ))
    }

    /// The load of a turning leaf along the arc of its free end, in the way of turning that it is given with. Friction,
    /// seals and wind work against the motion; weight works against the way out and helps on the way back, or the reverse.
    pub fn turning(leaf: &SwingGateTorque) -> Result<Self, OutOfReach> {
        let width = leaf.width.base();
        let whole = leaf.travel_angle.base();
        let mut places = Vec::with_capacity(PIECES as usize + 1);
        for piece in 0..=PIECES {
            let gone = whole * f64::from(piece) / f64::from(PIECES);
            let angle = match leaf.way {
                SwingWay::Opening => gone,
                SwingWay::Closing => whole - gone,
            };
            let torque = SwingGateTorque {
                angle: Angle::from_base(angle.clamp(0.0, whole)),
                ..*leaf
            }
            .evaluate()?;
            let opposing = torque.friction + torque.seals + torque.wind;
            let uphill = torque.lean + torque.rising;
            places.push((opposing.base() / width, uphill.base() / width));
        }
        Ok(Self {
            places,
            spacing: whole * width / f64::from(PIECES),
        })
    }

    /// A load given at places that lie evenly along a way: forces against any motion, and against the way out.
    pub fn along(way: Length, places: &[(Force, Force)]) -> Result<Self, OutOfReach> {
        let pieces = u32::try_from(places.len().saturating_sub(1)).unwrap_or(0);
        if pieces == 0 || way.base() <= 0.0 {
            return Err(OutOfReach::new(
                "load",
                "give the load at both ends of a way, and between them where it changes",
            ));
        }
        Ok(Self {
            places: places.iter().map(|(o, u)| (o.base(), u.base())).collect(),
            spacing: way.base() / f64::from(pieces),
        })
    }

    /// Load at a place: against any motion, and against the way out.
    pub(crate) fn at(&self, place: f64) -> (f64, f64) {
        let last = self.places.len() - 1;
        let along = (place / self.spacing).max(0.0);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "not below zero, and cut to the last place"
        )]
        let piece = (along as usize).min(last.saturating_sub(1));
        #[allow(clippy::cast_precision_loss, reason = "a few hundred places at most")]
        let share = (along - piece as f64).clamp(0.0, 1.0);
        let (from, to) = (self.places[piece], self.places[(piece + 1).min(last)]);
        (
            from.0 + (to.0 - from.0) * share,
            from.1 + (to.1 - from.1) * share,
        )
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn straight_between_the_places_and_even_beyond_them() {
        let places = [(10.0, 0.0), (20.0, -4.0), (0.0, 4.0)]
            .map(|(o, u)| (Force::from_base(o), Force::from_base(u)));
        let load = Load::along(Length::from_base(2.0), &places).unwrap();
        for (place, opposing, uphill) in [
            (-1.0, 10.0, 0.0),
            (0.5, 15.0, -2.0),
            (1.5, 10.0, 0.0),
            (2.0, 0.0, 4.0),
            (7.0, 0.0, 4.0),
        ] {
            let (o, u) = load.at(place);
            assert!(
                (o - opposing).abs() < 1e-12 && (u - uphill).abs() < 1e-12,
                "{place}"
            );
        }
    }

    #[test]
    fn one_place_is_no_way() {
        assert!(Load::along(Length::from_base(2.0), &[]).is_err());
    }
}
