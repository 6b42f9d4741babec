//! How far a circle is from a leaf that turns, how that goes on, and how soon they may touch: written without branches, so
//! that many are worked side by side.

use super::super::batch::{greater, smaller};
use super::contact::{Hit, Slab};

/// A place and a speed as the leaf sees them.
#[derive(Clone, Copy)]
pub(super) struct Seen {
    pub at: (f64, f64),
    pub speed: (f64, f64),
}

/// Distance, its rate, and the rate of that along the way out of the leaf.
pub(super) struct Gap {
    pub apart: f64,
    rate: f64,
    bent: f64,
    /// Nearest place of the leaf, along it and across.
    nearest: (f64, f64),
    /// Way out of the leaf there.
    out: (f64, f64),
}

impl Gap {
    pub(super) fn hit(&self, time: f64) -> Hit {
        let ((along, across), (ahead, out)) = (self.nearest, self.out);
        Hit {
            time,
            along,
            across,
            ahead,
            out,
            lever: out * along - ahead * across,
        }
    }

    /// Time ahead before which there is surely no touch, no more than what is left.
    #[allow(
        clippy::inline_always,
        reason = "measured: lanes stay lanes only where the call is gone"
    )]
    #[inline(always)]
    pub(super) fn step(&self, jerk: f64, left: f64) -> f64 {
        let (apart, rate) = (self.apart, self.rate);
        let twice = 2.0 * apart;
        let within = if twice < -rate * left {
            -twice / rate
        } else {
            left
        };
        let bend = jerk * within * (1.0 / 3.0) - self.bent;
        let square = rate * rate + 2.0 * bend * apart;
        let root = greater(square, 0.0).sqrt();
        let falls = rate <= 0.0;
        let over = if falls { twice } else { rate + root };
        let under = if falls { root - rate } else { bend };
        let step = over / under;
        let step = if smaller(square, under) > 0.0 {
            step
        } else {
            within
        };
        smaller(step, within)
    }
}

impl Seen {
    /// Distance of a circle from the leaf, which turns at a speed and an acceleration.
    #[allow(
        clippy::inline_always,
        reason = "measured: lanes stay lanes only where the call is gone"
    )]
    #[inline(always)]
    pub(super) fn gap(&self, slab: &Slab, (omega, alpha): (f64, f64), radius: f64) -> Gap {
        let ((u, v), (wu, wv)) = (self.at, self.speed);
        let along = smaller(greater(u, slab.from), slab.to);
        let across = smaller(greater(v, slab.low), slab.high);
        let (off, aside) = (u - along, v - across);
        let distance = (off * off + aside * aside).sqrt();
        let over = if distance > 0.0 { 1.0 / distance } else { 0.0 };
        let (nu, nv) = (off * over, aside * over);
        let (level, turned) = (nu * u + nv * v, nu * v - nv * u);
        Gap {
            apart: distance - radius,
            rate: omega * turned + (nu * wu + nv * wv),
            bent: alpha * turned - omega * omega * level + 2.0 * omega * (nu * wv - nv * wu),
            nearest: (along, across),
            out: (nu, nv),
        }
    }
}
