//! Reaching through an opening, by ISO 13857.

use super::approach::{in_millimeters, millimeters};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Shape of an opening in a guard, a fence or a leaf.
    pub enum OpeningShape {
        /// Longer than wide; its width counts.
        Slot = "slot",
        /// Square; its side counts.
        Square = "square",
        /// Round; its diameter counts.
        Round = "round",
    }
}

formula! {
    /// Least distance from an opening to the danger behind it, for people of 14 years and over.
    ///
    /// An opening between two rows counts as the larger one. A slot from 20 mm to 30 mm wide and not longer than 65 mm
    /// stops the thumb and may use 200 mm. Gates on public ways have to count with children from 3 years on, whose
    /// distances are longer: that table is known from memory only and is not used here.
    pub struct Iso13857Reach = "iso13857-reach" in Protection {
        /// Shape of the opening.
        shape ("–"): OpeningShape,
        /// Smallest dimension of the opening: width, side or diameter.
        opening ("e"): Length,
    }
    gives
    /// How far away the danger has to be.
    pub struct ReachDistance {
        /// Least distance from the opening to the danger.
        distance ("sr"): Length,
    }
    formula "sr from the table"
    valid "Openings up to 120 mm, people of 14 years and over, upper limbs. A slot above 180 mm, or a square or round opening above 240 mm, lets a whole body through."
    source { work: "ISO 13857", clause: "table 4", evidence: Seen, seen: "an engineering consultant's page that tabulates it (address withheld); the standard itself was not at hand" }
    by reach
}

static FROM_FOURTEEN: Stored = LazyLock::new(|| Table::read(include_str!("iso13857_reach.toml")));
static FROM_THREE: Stored =
    LazyLock::new(|| Table::read(include_str!("iso13857_reach_from_three.toml")));

fn reach(guard: &Iso13857Reach) -> Result<ReachDistance, OutOfReach> {
    looked_up(&FROM_FOURTEEN, guard)
}

/// Least distance from an opening to the danger behind it, for people of 3 years and over. Recalled and not verified:
/// it may warn, and never passes a gate.
///
/// Source: ISO 13857, table 5, from memory. Valid for openings up to 100 mm.
pub fn reach_from_three_years(guard: &Iso13857Reach) -> Result<ReachDistance, OutOfReach> {
    looked_up(&FROM_THREE, guard)
}

fn looked_up(stored: &'static Stored, guard: &Iso13857Reach) -> Result<ReachDistance, OutOfReach> {
    let table = Table::of(stored)?;
    let opening = in_millimeters(guard.opening);
    if opening <= 0.0 {
        return Err(OutOfReach::new(
            "opening",
            "give the smallest dimension of the opening, such as 20 mm",
        ));
    }
    let widest = table.numbers("to").last().copied().unwrap_or(0.0);
    let rows = table
        .numbers("to")
        .into_iter()
        .zip(table.numbers(guard.shape.word()));
    rows.into_iter()
        .find(|(to, _)| opening <= to + 1e-9)
        .map(|(_, distance)| ReachDistance { distance: millimeters(distance) })
        .ok_or_else(|| {
            OutOfReach::new(
                "opening",
                format!("above {widest} mm the opening counts as none: take the distances for reaching over or around"),
            )
        })
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::float_cmp,
        reason = "a test may stop at the first surprise; printed digits are compared as such"
    )]
    use super::*;

    fn obeys_its_laws(text: &str) {
        let table = Table::read(text).unwrap();
        let (over, to) = (table.numbers("over"), table.numbers("to"));
        assert!(over[1..].iter().eq(to[..to.len() - 1].iter()));
        let [slot, square, round] = ["slot", "square", "round"].map(|shape| table.numbers(shape));
        for column in [&slot, &square, &round] {
            assert_eq!(column.len(), to.len());
            assert!(column.windows(2).all(|pair| pair[0] <= pair[1]));
        }
        assert!(
            slot.iter()
                .zip(&square)
                .all(|(slot, square)| slot >= square)
        );
        assert!(
            square
                .iter()
                .zip(&round)
                .all(|(square, round)| square >= round)
        );
    }

    #[test]
    fn both_tables_obey_their_laws() {
        obeys_its_laws(include_str!("iso13857_reach.toml"));
        obeys_its_laws(include_str!("iso13857_reach_from_three.toml"));
    }

    #[test]
    fn children_never_need_less() {
        for shape in OpeningShape::ALL {
            for opening in 1..=100 {
                let guard = Iso13857Reach {
                    shape: *shape,
                    opening: millimeters(f64::from(opening)),
                };
                let (adults, children) = (
                    reach(&guard).unwrap(),
                    reach_from_three_years(&guard).unwrap(),
                );
                assert!(children.distance >= adults.distance, "{shape} {opening} mm");
            }
        }
    }

    #[test]
    fn an_opening_for_a_body_is_refused() {
        let guard = Iso13857Reach {
            shape: OpeningShape::Slot,
            opening: millimeters(200.0),
        };
        assert_eq!(reach(&guard).unwrap_err().input, "opening");
    }
}
