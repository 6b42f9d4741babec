//! Warning placards at a gate, by UL 325.

use crate::OutOfReach;

quantity::words! {
    /// How the placards stand to the rule.
    pub enum PlacardVerdict {
        /// As the text asks.
        Kept = "kept",
        /// A side has none.
        SideMissing = "one side has none",
        /// A held control has none beside it.
        ControlMissing = "a held control has none beside it",
    }
}

formula! {
    /// Whether enough warning placards hang at a gate, and by its held controls.
    ///
    /// One on each side at least, readable from that side whether the gate stands open or shut. Those beside held
    /// controls come on top. Look at every visit whether they are still there.
    pub struct WarningPlacards = "warning-placards" in Protection {
        /// Placards that are read from outside.
        outside ("no"): u32,
        /// Placards that are read from inside.
        inside ("ni"): u32,
        /// Controls that must be held for the gate to move.
        held_controls ("nh"): u32,
        /// Placards beside such controls.
        beside_controls ("nc"): u32,
    }
    gives
    /// How the placards stand to the rule.
    pub struct PlacardRule {
        /// Placards still to be hung.
        missing ("n"): u32,
        /// The verdict, or the first part that is not kept.
        verdict ("–"): PlacardVerdict,
    }
    formula "no ≥ 1, ni ≥ 1\nnc ≥ nh"
    valid "Powered vehicle gates, United States; the text and size that came with the operator."
    source { work: "UL 325, installation instructions", clause: "", evidence: Seen, seen: "gate-operator manuals from 2008 to 2018 that reprint the instructions (addresses withheld); the standard itself was not at hand" }
    by placards
}

fn placards(gate: &WarningPlacards) -> Result<PlacardRule, OutOfReach> {
    let counts = [
        gate.outside,
        gate.inside,
        gate.held_controls,
        gate.beside_controls,
    ];
    if counts.iter().any(|count| *count > 1000) {
        return Err(OutOfReach::new(
            "outside",
            "no gate has a thousand placards or controls; count again",
        ));
    }
    let sides = u32::from(gate.outside == 0) + u32::from(gate.inside == 0);
    let controls = gate.held_controls.saturating_sub(gate.beside_controls);
    let verdict = match (sides, controls) {
        (0, 0) => PlacardVerdict::Kept,
        (0, _) => PlacardVerdict::ControlMissing,
        _ => PlacardVerdict::SideMissing,
    };
    Ok(PlacardRule {
        missing: sides + controls,
        verdict,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn kept_just_where_none_is_missing(
            outside in 0_u32..4, inside in 0_u32..4, held_controls in 0_u32..4, beside_controls in 0_u32..4
        ) {
            let gate = WarningPlacards { outside, inside, held_controls, beside_controls };
            let rule = gate.evaluate().unwrap();
            prop_assert_eq!(rule.verdict == PlacardVerdict::Kept, rule.missing == 0);
        }
    }

    #[test]
    fn a_thousand_placards_are_refused() {
        let gate = WarningPlacards {
            outside: 5000,
            inside: 1,
            held_controls: 0,
            beside_controls: 0,
        };
        assert_eq!(gate.evaluate().unwrap_err().input, "outside");
    }
}
