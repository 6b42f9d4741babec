//! The signs of a site as they are listed: where each hangs, and how tall its letters have to be.

use formula::Formula as _;
use formula::protection::SignLetterHeight;
use quantity::Length;
use site::{Sign, Site};

/// A sign, and the least height of its letters.
#[derive(Debug, Clone, Copy)]
pub struct ShownSign<'s> {
    /// As the site has it.
    pub sign: &'s Sign,
    /// Least height of the capital letters of its smallest line that matters, for the distance from which it is read;
    /// nothing where that is not known.
    pub least_letters: Option<Length>,
}

/// Every sign, in the order of the site file.
pub fn shown(site: &Site) -> Vec<ShownSign<'_>> {
    let one = |sign| {
        let sign: &Sign = sign;
        ShownSign {
            sign,
            least_letters: least_letters(sign),
        }
    };
    site.sign.iter().map(one).collect()
}

fn least_letters(sign: &Sign) -> Option<Length> {
    let distance = sign.read_from.as_ref()?.nominal();
    let rule = SignLetterHeight {
        distance,
        letter_height: sign
            .letter_height
            .as_ref()
            .map_or(distance, quantity::Measured::nominal),
    };
    rule.evaluate().ok().map(|rule| rule.least)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::shown;
    use crate::check::testing::site;
    use quantity::Quantity as _;

    #[test]
    fn an_inch_of_letter_for_each_thirty_feet() {
        let text = "[site]\nname = \"Test yard\"\ncode_basis = \"us\"\n[[sign]]\nid = \"road\"\nwhat = \"warning placard\"\nread_from = \"30 ft\"\n[[sign]]\nid = \"yard\"\nwhat = \"other\"\n";
        let site = site(text);
        let signs = shown(&site);
        assert!((signs[0].least_letters.unwrap().base() - 0.0254).abs() < 1e-9);
        assert!(signs[1].least_letters.is_none());
    }
}
