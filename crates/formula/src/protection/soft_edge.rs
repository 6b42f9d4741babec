//! The spring of a contact edge: soft up to its soft travel, hard beyond it.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{ForcePerLength, Length, Quantity as _};

/// A spring that turns hard once its soft travel is used up. Numbers in N and m.
#[derive(Clone, Copy)]
pub(super) struct SoftEdge {
    soft: f64,
    travel: f64,
    hard: f64,
}

impl SoftEdge {
    /// The edge of a calculation, whose inputs are called `soft_stiffness`, `soft_travel` and `hard_stiffness`.
    pub(super) fn of(
        soft: ForcePerLength,
        travel: Length,
        hard: ForcePerLength,
    ) -> Result<Self, OutOfReach> {
        positive("soft_stiffness", soft, "8 N/mm")?;
        not_negative("soft_travel", travel, "60 mm")?;
        positive("hard_stiffness", hard, "75 N/mm")?;
        if hard < soft {
            return Err(OutOfReach::new(
                "hard_stiffness",
                "an edge gets stiffer when it is squeezed flat; give at least the soft stiffness",
            ));
        }
        Ok(Self {
            soft: soft.base(),
            travel: travel.base(),
            hard: hard.base(),
        })
    }

    /// Force at a compression.
    pub(super) fn force(self, compression: f64) -> f64 {
        let soft = compression.min(self.travel);
        self.soft * soft + self.hard * (compression - soft)
    }

    /// Compression at which the spring has taken up an energy that was brought along, and what a steady push adds.
    pub(super) fn compression(self, energy: f64, push: f64) -> f64 {
        let within = taken_up(self.soft, push, energy);
        if within <= self.travel {
            return within;
        }
        let left = energy + push * self.travel - 0.5 * self.soft * self.travel.powi(2);
        self.travel + taken_up(self.hard, push - self.soft * self.travel, left)
    }
}

/// The positive root of ½ k x² = E + P x, where P may be below zero.
fn taken_up(stiffness: f64, push: f64, energy: f64) -> f64 {
    let root = push.hypot((2.0 * stiffness * energy.max(0.0)).sqrt());
    if push >= 0.0 {
        return (push + root) / stiffness;
    }
    let sum = root - push;
    if sum > 0.0 {
        2.0 * energy.max(0.0) / sum
    } else {
        0.0
    }
}
