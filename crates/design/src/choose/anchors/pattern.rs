//! The patterns of anchors that a plate has room for.

use quantity::{Length, Quantity as _};

/// Anchors in even rows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Arrangement {
    /// Anchors in a row along the gate line.
    pub(super) in_row: u32,
    /// Their spacing.
    pub(super) spacing: Length,
    /// Arrangement across the gate line.
    pub(super) rows: u32,
    /// Spacing of the rows.
    pub(super) row_spacing: Length,
}

impl Arrangement {
    /// How many anchors there are.
    pub(super) fn count(&self) -> u32 {
        self.in_row * self.rows
    }
}

/// What a pattern has to fit.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    /// Length of the plate along the gate line and its width across.
    pub(super) plate: [Length; 2],
    /// Diameter of the anchors.
    pub(super) diameter: Length,
    /// Size of the post in the middle of the plate, along the gate line and across, where one stands there.
    pub(super) post: Option<[Length; 2]>,
    /// Fewest anchors in a row, and fewest rows: two where a moment tips the plate that way.
    pub(super) least: [u32; 2],
    /// Spacings are tried in steps of this.
    pub(super) step: Length,
}

/// Most anchors in a row, and most rows.
const MOST: u32 = 4;
/// Least spacing that is tried, in diameters: no anchor may stand nearer.
const LEAST_SPACING: f64 = 4.0;
/// Distance from the middle of an anchor to the edge of the plate, and to a post on it, in diameters.
const BESIDE: f64 = 1.5;

/// Every pattern that fits, no anchor hidden in the middle of others.
pub(super) fn patterns(room: &Room) -> Vec<Arrangement> {
    let mut found = Vec::new();
    for in_row in room.least[0]..=MOST {
        for rows in room.least[1]..=MOST {
            if in_row.min(rows) > 2 {
                continue;
            }
            for spacing in spacings(room, room.plate[0], in_row) {
                let fits = spacings(room, room.plate[1], rows)
                    .map(|row_spacing| Arrangement {
                        in_row,
                        spacing,
                        rows,
                        row_spacing,
                    })
                    .filter(|rows| clears(room, rows));
                found.extend(fits);
            }
        }
    }
    found
}

/// The spacings of so many anchors on so much plate, widest first.
fn spacings(room: &Room, plate: Length, count: u32) -> impl Iterator<Item = Length> + use<> {
    let room_for = (plate - room.diameter * (2.0 * BESIDE)).base();
    let (least, step) = (LEAST_SPACING * room.diameter.base(), room.step.base());
    let widest = match count {
        1 if room_for >= 0.0 => Some(0.0),
        1 => None,
        _ => Some((room_for / f64::from(count - 1) / step + 1e-9).floor() * step),
    };
    let next = move |spacing: &f64| Some(spacing - step);
    std::iter::successors(widest, next)
        .take_while(move |spacing| count == 1 && *spacing >= 0.0 || *spacing >= least - 1e-9)
        .take(if count == 1 { 1 } else { usize::MAX })
        .map(Length::from_base)
}

/// No anchor stands under the post or where a wrench cannot turn.
fn clears(room: &Room, rows: &Arrangement) -> bool {
    let Some(post) = room.post else { return true };
    let [near_x, near_y] = post.map(|side| {
        let free = side.base() / 2.0 + BESIDE * room.diameter.base();
        free - 1e-9
    });
    let places = |count: u32, spacing: Length| {
        let middle = f64::from(count - 1) / 2.0;
        (0..count).map(move |at| ((f64::from(at) - middle) * spacing.base()).abs())
    };
    places(rows.in_row, rows.spacing)
        .all(|x| x >= near_x || places(rows.rows, rows.row_spacing).all(|y| y >= near_y))
}

#[cfg(test)]
mod tests {
    use super::*;

    const INCH: f64 = 0.0254;

    fn room(length: f64, width: f64, post: Option<f64>) -> Room {
        Room {
            plate: [
                Length::from_base(length * INCH),
                Length::from_base(width * INCH),
            ],
            diameter: Length::from_base(0.5 * INCH),
            least: [1, 1],
            post: post.map(|width| [Length::from_base(width * INCH); 2]),
            step: Length::from_base(INCH),
        }
    }

    #[test]
    fn every_pattern_stays_on_the_plate_and_none_is_there_twice() {
        let found = patterns(&room(12.0, 8.0, None));
        assert!(found.len() > 50, "{}", found.len());
        for (at, one) in found.iter().enumerate() {
            let length = f64::from(one.in_row - 1) * one.spacing.base() / INCH + 1.5;
            let width = f64::from(one.rows - 1) * one.row_spacing.base() / INCH + 1.5;
            assert!(length <= 12.0 + 1e-9 && width <= 8.0 + 1e-9, "{one:?}");
            assert!(!found[..at].contains(one), "{one:?}");
        }
    }

    #[test]
    fn a_post_keeps_the_middle_free() {
        let found = patterns(&room(10.0, 10.0, Some(4.0)));
        let widest = |count| {
            found
                .iter()
                .find(|one| (one.in_row, one.rows) == count)
                .copied()
        };
        assert!(widest((2, 2)).is_some());
        assert_eq!(widest((1, 1)), None);
        assert!(
            found
                .iter()
                .all(|one| clears(&room(10.0, 10.0, Some(4.0)), one))
        );
        let narrow = found
            .iter()
            .filter(|one| (one.in_row, one.rows) == (2, 2))
            .map(|one| one.spacing.base().max(one.row_spacing.base()) / INCH);
        assert!(narrow.fold(100.0, f64::min) >= 5.5);
    }

    #[test]
    fn a_plate_that_is_tipped_both_ways_gets_two_lines_each_way() {
        let tipped = Room {
            least: [2, 2],
            ..room(12.0, 12.0, None)
        };
        let found = patterns(&tipped);
        assert!(!found.is_empty());
        assert!(found.iter().all(|one| one.in_row > 1 && one.rows > 1));
    }

    #[test]
    fn a_small_plate_has_room_for_none() {
        assert!(patterns(&room(1.0, 1.0, None)).is_empty());
    }
}
