//! What a supervised input reads in each state of its loop.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Quantity as _, Ratio, Resistance};

formula! {
    /// Bands of resistance that a supervised input reads: short, closed contact, open contact, cut.
    ///
    /// One resistor sits in line with the contact, one across it. Each band is taken at its own bad ends: resistors at
    /// the ends of their tolerance, the wire as hot as it gets or not there at all, the contact with its greatest
    /// resistance or none, the two wires joined by damp or dry.
    pub struct SupervisedLoop = "supervised-loop" in Signal {
        /// Least resistance of the resistor in line.
        series_least ("Rs−"): Resistance,
        /// Greatest resistance of the resistor in line.
        series_greatest ("Rs+"): Resistance,
        /// Least resistance of the resistor across the contact.
        parallel_least ("Rp−"): Resistance,
        /// Greatest resistance of the resistor across the contact.
        parallel_greatest ("Rp+"): Resistance,
        /// Resistance of the wire, out and back, at its hottest and longest.
        wire ("Rw"): Resistance,
        /// Greatest resistance of the closed contact.
        contact ("Rc"): Resistance,
        /// Least resistance between the two wires when damp.
        insulation ("Ri"): Resistance,
    }
    gives
    /// The bands.
    pub struct LoopBands {
        /// Greatest that a short anywhere on the loop reads.
        short_greatest ("A+"): Resistance,
        /// Least that the closed contact reads.
        closed_least ("B−"): Resistance,
        /// Greatest that the closed contact reads.
        closed_greatest ("B+"): Resistance,
        /// Least that the open contact reads.
        open_least ("C−"): Resistance,
        /// Greatest that the open contact reads.
        open_greatest ("C+"): Resistance,
        /// Least that a cut reads.
        cut_least ("D−"): Resistance,
        /// Open contact at its least over closed contact at its greatest: bands touch at 1.
        apart ("C−/B+"): Ratio,
    }
    formula "A+ = Rw\nB− = Rs− ∥ Ri\nB+ = Rs+ + Rw + Rc ∥ Rp+\nC− = (Rs− + Rp−) ∥ Ri\nC+ = Rs+ + Rp+ + Rw\nD− = Ri"
    valid "Resistors at the device; steady resistance, no voltage fed in from elsewhere. ∥ is two resistors side by side."
    source { work: "Ohm's law, resistors in line and side by side", clause: "", evidence: Physics, seen: "definitions of resistance, SI brochure" }
    by supervised_loop
}

fn supervised_loop(wired: &SupervisedLoop) -> Result<LoopBands, OutOfReach> {
    check(wired)?;
    let closed_least = beside(wired.series_least, wired.insulation);
    let closed_greatest =
        wired.series_greatest + wired.wire + beside(wired.contact, wired.parallel_greatest);
    let open_least = beside(wired.series_least + wired.parallel_least, wired.insulation);
    Ok(LoopBands {
        short_greatest: wired.wire,
        closed_least,
        closed_greatest,
        open_least,
        open_greatest: wired.series_greatest + wired.parallel_greatest + wired.wire,
        cut_least: wired.insulation,
        apart: open_least / closed_greatest,
    })
}

/// Two resistors side by side, one of which is above zero.
fn beside(one: Resistance, other: Resistance) -> Resistance {
    let (one, other) = (one.base(), other.base());
    Resistance::from_base(one * other / (one + other))
}

fn check(wired: &SupervisedLoop) -> Result<(), OutOfReach> {
    positive("series_least", wired.series_least, "990 Ω")?;
    positive("parallel_least", wired.parallel_least, "990 Ω")?;
    positive("insulation", wired.insulation, "200 kΩ")?;
    not_negative("wire", wired.wire, "2 Ω")?;
    not_negative("contact", wired.contact, "1 Ω")?;
    let ends = [
        ("series_greatest", wired.series_least, wired.series_greatest),
        (
            "parallel_greatest",
            wired.parallel_least,
            wired.parallel_greatest,
        ),
    ];
    match ends.iter().find(|(_, least, greatest)| greatest < least) {
        Some((input, ..)) => Err(OutOfReach::new(input, "this is not below the least")),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn wired(series: f64, tolerance: f64, wire: f64, insulation: f64) -> SupervisedLoop {
        let ohms = Resistance::from_base;
        SupervisedLoop {
            series_least: ohms(series * (1.0 - tolerance)),
            series_greatest: ohms(series * (1.0 + tolerance)),
            parallel_least: ohms(series * (1.0 - tolerance)),
            parallel_greatest: ohms(series * (1.0 + tolerance)),
            wire: ohms(wire),
            contact: ohms(5.0),
            insulation: ohms(insulation),
        }
    }

    proptest! {
        #[test]
        fn damp_wire_and_tolerance_bring_the_bands_together(
            tolerance in 0.0..0.1, wire in 0.0..100.0, insulation in 2e3..1e7,
        ) {
            let at = |tolerance, wire, insulation| {
                wired(1000.0, tolerance, wire, insulation).evaluate().unwrap()
            };
            let known = at(tolerance, wire, insulation);
            prop_assert!(at(tolerance + 0.01, wire, insulation).apart < known.apart);
            prop_assert!(at(tolerance, wire + 10.0, insulation).apart < known.apart);
            prop_assert!(at(tolerance, wire, insulation / 2.0).apart < known.apart);
            prop_assert!(known.closed_least <= known.closed_greatest);
            prop_assert!(known.open_least <= known.open_greatest);
        }
    }

    #[test]
    fn refusals_name_the_input() {
        let backward = SupervisedLoop {
            series_greatest: Resistance::from_base(10.0),
            ..wired(1000.0, 0.01, 1.0, 1e6)
        };
        assert_eq!(backward.evaluate().unwrap_err().input, "series_greatest");
        assert_eq!(
            wired(1000.0, 0.01, 1.0, 0.0).evaluate().unwrap_err().input,
            "insulation"
        );
    }
}
