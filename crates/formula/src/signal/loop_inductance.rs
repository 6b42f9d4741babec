//! Inductance of a rectangular loop from its wire and its turns.

use super::rectangle::{Rectangle, of_round_wire};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Inductance, Length, Quantity as _};

formula! {
    /// Inductance of a rectangular loop, each turn with itself and with every other, one above the other in the slot.
    ///
    /// Every pair of parallel sides is worked by Neumann's integral, which has a closed form for straight pieces; a turn with
    /// itself is the same at the mean distance of a round wire from itself. Corners cut off across, as in a saw slot, take
    /// a percent or two; the frequency of a detector takes some of the field inside the wire, a percent at most; damp ground
    /// between the turns adds a little. Steel under the loop takes more: `loop-over-steel`.
    pub struct LoopInductance = "loop-inductance" in Signal {
        /// One side of the loop.
        length ("A"): Length,
        /// The other side.
        width ("B"): Length,
        /// Number of turns.
        turns ("N"): u32,
        /// Diameter of the bare conductor.
        wire ("d"): Length,
        /// Distance between the middles of neighboring turns: the diameter over the insulation where they lie on each other.
        spacing ("s"): Length,
    }
    gives
    /// Inductance of the loop, without its lead-in.
    pub struct InductanceOfLoop {
        /// Inductance of a single turn.
        one_turn ("L₁"): Inductance,
        /// Inductance of the loop.
        inductance ("L"): Inductance,
    }
    formula "M(z) = μ₀ / (4π) · Σ ± ∫∫ dx · dx′ / √((x − x′)² + y² + z²)\nL₁ = M(d / 2 · e^(−1/4))\nL = N · L₁ + 2 · Σ (N − k) · M(k · s), k = 1 … N − 1"
    valid "Up to twenty turns of thin round wire in air or dry ground, the stack of turns much lower than the loop is wide, at frequencies where the loop is far from its own resonance."
    source { work: "Neumann's integral for straight filaments; Grover, Inductance Calculations, for rectangles and mean distances", clause: "", evidence: Physics, seen: "worked again by numerical integration in another library, see the cases" }
    by inductance
}

/// Most turns that are worked.
const MOST_TURNS: u32 = 20;

fn inductance(at: &LoopInductance) -> Result<InductanceOfLoop, OutOfReach> {
    check(at)?;
    let ring = Rectangle::centered(at.length.base(), at.width.base());
    let one_turn = ring.own(of_round_wire(at.wire.base()));
    let turns = f64::from(at.turns);
    let between = (1..at.turns).map(|k| {
        let apart = f64::from(k);
        2.0 * (turns - apart) * ring.mutual(&ring, apart * at.spacing.base())
    });
    Ok(InductanceOfLoop {
        one_turn: Inductance::from_base(one_turn),
        inductance: Inductance::from_base(turns * one_turn + between.sum::<f64>()),
    })
}

fn check(at: &LoopInductance) -> Result<(), OutOfReach> {
    positive("length", at.length, "8 ft")?;
    positive("width", at.width, "4 ft")?;
    positive("wire", at.wire, "1.6 mm")?;
    positive("spacing", at.spacing, "4 mm")?;
    if at.turns == 0 || at.turns > MOST_TURNS {
        return Err(OutOfReach::new(
            "turns",
            "a loop has one to twenty turns; give a number such as 4",
        ));
    }
    if at.spacing < at.wire {
        return Err(OutOfReach::new(
            "spacing",
            "turns lie at least a wire's diameter apart",
        ));
    }
    let short = at.length.base().min(at.width.base());
    let stack = at.spacing.base() * f64::from(at.turns);
    if short < 5.0 * stack {
        return Err(OutOfReach::new(
            "width",
            "the loop is wound so high that it is a coil; its shorter side is at least five times its stack of turns",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn at(length: f64, width: f64, turns: u32) -> LoopInductance {
        LoopInductance {
            length: Length::from_base(length),
            width: Length::from_base(width),
            turns,
            wire: Length::from_base(1.628e-3),
            spacing: Length::from_base(3.9e-3),
        }
    }

    fn of(length: f64, width: f64, turns: u32) -> f64 {
        at(length, width, turns)
            .evaluate()
            .unwrap()
            .inductance
            .base()
    }

    proptest! {
        #[test]
        fn a_loop_may_be_turned_around_and_grows(length in 0.5..20.0, width in 0.5..20.0, turns in 1_u32..8) {
            let one = of(length, width, turns);
            prop_assert!((one - of(width, length, turns)).abs() < 1e-9 * one);
            prop_assert!(one < of(length * 1.1, width, turns) && one < of(length, width, turns + 1));
            // Turns that were wholly coupled would give the square of their number; those wholly apart, the number.
            let (single, count) = (of(length, width, 1), f64::from(turns));
            prop_assert!(one <= single * count * count * (1.0 + 1e-9) && one >= single * count * (1.0 - 1e-9));
        }
    }

    #[test]
    fn what_cannot_be_wound_is_refused() {
        assert_eq!(at(2.0, 1.0, 0).evaluate().unwrap_err().input, "turns");
        assert_eq!(at(2.0, 0.05, 4).evaluate().unwrap_err().input, "width");
        let touching = LoopInductance {
            spacing: Length::from_base(1e-3),
            ..at(2.0, 1.0, 4)
        };
        assert_eq!(touching.evaluate().unwrap_err().input, "spacing");
    }
}
