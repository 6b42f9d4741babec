//! Least level of protection at the main closing edge by use and control, by EN 12453.

use crate::table::{Cell, Stored, Table};
use crate::{Evidence, OutOfReach, Source};
use quantity::Word as _;
use std::sync::LazyLock;

quantity::words! {
    /// Who uses the gate.
    pub enum UseType {
        /// Only trained people, and no public there.
        Trained = "trained users, no public",
        /// Only trained people, but the public can touch the gate.
        TrainedInPublic = "trained users, public can touch it",
        /// Anybody may use it.
        Public = "anybody",
    }
}

quantity::words! {
    /// How a movement is commanded.
    pub enum GateControl {
        /// It moves only while a control is held, in view of the whole gate.
        HoldToRun = "hold-to-run",
        /// One touch starts it, with the gate in view.
        ImpulseInView = "impulse, gate in view",
        /// One touch starts it, without the gate in view.
        ImpulseOutOfView = "impulse, gate not in view",
        /// It starts by itself: timer, detector, schedule.
        Automatic = "automatic",
    }
}

quantity::words! {
    /// Least level of protection.
    pub enum ProtectionLevel {
        /// A held control suffices (letter A).
        Held = "held control",
        /// A held control by key, or out of reach of the public (letter B).
        HeldByKey = "held control by key or out of public reach",
        /// Limited force, or detection that prevents any contact (letter C or E).
        One = "limited force, or detection that prevents contact",
        /// Limited force together with detection of presence, or detection that prevents any contact (letters C and D, or E).
        Two = "limited force and presence detection, or detection that prevents contact",
        /// Not allowed at all.
        NotAllowed = "not allowed",
    }
}

formula! {
    /// Least level of protection at the closing edge for a kind of use and a way of control, by EN 12453.
    ///
    /// Only the cells whose text could be read are given: a cell known from memory alone is refused, and the level is
    /// looked up in the standard before anything rests on it. A movement that can be started in more than one way takes
    /// the strictest. Beams beside limited force are an addition to it, not a substitute.
    pub struct En12453MinimumLevel = "en12453-minimum-level" in Protection {
        /// Who uses the gate.
        users ("–"): UseType,
        /// How the movement is commanded.
        control ("–"): GateControl,
    }
    gives
    /// Least level of protection.
    pub struct MinimumLevel {
        /// The level.
        level ("–"): ProtectionLevel,
    }
    formula "level from the table"
    valid "Powered gates and barriers with people near them, European Union and United Kingdom; hold-to-run for trained people only."
    source { work: "EN 12453, minimum levels of protection", clause: "", evidence: Seen, seen: "HSE safety bulletin FOD 7-2010, a Swedish inspectors' ruling of 2017 and a UK trade federation's safety warning notice on hold-to-run; the standard itself was not at hand" }
    by minimum_level
}

/// The whole table of levels, recalled from the edition of 2000.
pub static EN12453_MINIMUM_LEVEL_RECALLED: Source = Source {
    work: "EN 12453:2000",
    clause: "table 1 (recalled)",
    evidence: Evidence::Memory,
    seen: "not seen; its cells for automatic control with the public agree with HSE FOD 7-2010",
};

static LEVELS: Stored = LazyLock::new(|| Table::read(include_str!("en12453_minimum_level.toml")));
static RECALLED: Stored =
    LazyLock::new(|| Table::read(include_str!("en12453_minimum_level_recalled.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn minimum_level(place: &En12453MinimumLevel) -> Result<MinimumLevel, OutOfReach> {
    looked_up(&LEVELS, *place)?.ok_or_else(|| {
        OutOfReach::new(
            "control",
            "this cell of the table is known from memory only; look the level up in the standard",
        )
    })
}

/// Least level of protection by the whole recalled table. It may warn, and never passes a gate.
///
/// Source: [`EN12453_MINIMUM_LEVEL_RECALLED`].
pub fn en12453_minimum_level_recalled(
    users: UseType,
    control: GateControl,
) -> Result<MinimumLevel, OutOfReach> {
    let place = En12453MinimumLevel { users, control };
    looked_up(&RECALLED, place)?
        .ok_or_else(|| OutOfReach::new("control", "the recalled table has no such cell"))
}

/// The level of a cell; none where the table has no entry.
fn looked_up(
    stored: &'static Stored,
    place: En12453MinimumLevel,
) -> Result<Option<MinimumLevel>, OutOfReach> {
    let table = Table::of(stored)?;
    let mut cells = table
        .column("control")
        .zip(table.column(place.users.word()));
    let level = cells
        .find(|(control, _)| control.words() == Some(place.control.word()))
        .and_then(|(_, level)| Cell::words(level))
        .and_then(ProtectionLevel::from_word);
    Ok(level.map(|level| MinimumLevel { level }))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn what_was_read_and_what_is_recalled_agree_and_nothing_recalled_is_missing() {
        for users in UseType::ALL {
            for control in GateControl::ALL {
                let (users, control) = (*users, *control);
                let recalled = en12453_minimum_level_recalled(users, control).unwrap();
                if let Ok(seen) = (En12453MinimumLevel { users, control }).evaluate() {
                    assert_eq!(seen.level, recalled.level, "{users}, {control}");
                }
            }
        }
    }

    #[test]
    fn the_public_never_needs_less() {
        for control in GateControl::ALL {
            let level = |users| {
                en12453_minimum_level_recalled(users, *control)
                    .unwrap()
                    .level
            };
            assert!(level(UseType::Trained) <= level(UseType::TrainedInPublic));
            assert!(level(UseType::TrainedInPublic) <= level(UseType::Public));
        }
    }

    #[test]
    fn a_cell_from_memory_is_refused() {
        let place = En12453MinimumLevel {
            users: UseType::Trained,
            control: GateControl::Automatic,
        };
        assert_eq!(place.evaluate().unwrap_err().input, "control");
    }
}
