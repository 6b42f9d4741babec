//! What a roller chain holds.

use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Force, Length, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Number of a roller chain; its first digits are the pitch in eighths of an inch.
    pub enum ChainNumber {
        /// Pitch of 1/4 in.
        No25 = "25",
        /// Pitch of 3/8 in.
        No35 = "35",
        /// Pitch of 1/2 in, light.
        No41 = "41",
        /// Pitch of 1/2 in.
        No40 = "40",
        /// Pitch of 5/8 in.
        No50 = "50",
        /// Pitch of 3/4 in.
        No60 = "60",
        /// Pitch of 1 in.
        No80 = "80",
    }
}

formula! {
    /// Strength of a roller chain, and what it may carry day after day.
    ///
    /// A chain breaks at its tensile strength once; pulled again and again it wears and tires. A sixth of the tensile
    /// strength is the rule with press-fit connecting links, a ninth with slip-fit ones, which is what comes with a
    /// chain that is joined on site.
    pub struct ChainStrength = "chain-strength" in Life {
        /// Number of the chain.
        chain ("–"): ChainNumber,
    }
    gives
    /// Strength of a roller chain.
    pub struct Chain {
        /// Pitch.
        pitch ("p"): Length,
        /// Diameter of the rollers.
        roller ("dr"): Length,
        /// Least tensile strength.
        tensile ("T"): Force,
        /// Working load as tabulated.
        working ("Tw"): Force,
        /// A sixth of the tensile strength: press-fit connecting links.
        press_fit ("T/6"): Force,
        /// A ninth of the tensile strength: slip-fit connecting links.
        slip_fit ("T/9"): Force,
    }
    formula "p, dr, T, Tw from the table"
    valid "New single-strand chain, lubricated, without rust; a chain stretched by 3 % is at its end."
    source { work: "ANSI B29.1 as tabulated", clause: "", evidence: Seen, seen: "https://www.liquisearch.com/roller_chain/chain_standards and https://liquisearch.com/roller_chain/chain_strength" }
    by chain_strength
}

static CHAINS: Stored = LazyLock::new(|| Table::read(include_str!("chain_strength.toml")));

/// One inch in meters.
const INCH: f64 = 0.0254;
/// One pound-force in newtons.
const POUND_FORCE: f64 = 4.448_221_615_260_5;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn chain_strength(asked: &ChainStrength) -> Result<Chain, OutOfReach> {
    let table = Table::of(&CHAINS)?;
    let number = asked.chain.word();
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(number));
    let cell = |place: usize| row.and_then(|row| row.get(place)).and_then(Cell::number);
    let length = |place| Some(Length::from_base(cell(place)? * INCH));
    let force = |place| Some(Force::from_base(cell(place)? * POUND_FORCE));
    let found = || {
        let tensile = force(3)?;
        Some(Chain {
            pitch: length(1)?,
            roller: length(2)?,
            tensile,
            working: force(4)?,
            press_fit: tensile / 6.0,
            slip_fit: tensile / 9.0,
        })
    };
    found().ok_or_else(|| OutOfReach::new("chain", "the table has no such chain"))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_chain_is_there_and_its_strength_goes_with_the_pitch_squared() {
        for number in ChainNumber::ALL {
            let chain = ChainStrength { chain: *number }.evaluate().unwrap();
            let pounds = chain.tensile.base() / POUND_FORCE;
            let law = 12_500.0 * (chain.pitch.base() / INCH).powi(2);
            if *number == ChainNumber::No41 {
                assert!(pounds < law / 2.0, "the light chain");
            } else {
                assert!((pounds / law - 1.0).abs() < 0.001, "{number}");
            }
            assert!(chain.roller < chain.pitch);
            assert!(chain.slip_fit < chain.press_fit && chain.working < chain.tensile);
        }
    }
}
