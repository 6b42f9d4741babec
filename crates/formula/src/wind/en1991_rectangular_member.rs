//! Wind force on a square or rectangular bar by EN 1991-1-4.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use crate::table::{Stored, Table, interpolated};
use quantity::{Force, ForcePerLength, Length, Pressure, Quantity as _, Ratio};
use std::sync::LazyLock;

formula! {
    /// Wind force on a square or rectangular member that stands alone: an arm, a rail, a post.
    ///
    /// Corners are taken as sharp and ends are not counted, both on the safe side. For a member in a frame use
    /// en1991-lattice-force.
    pub struct En1991RectangularMember = "en1991-rectangular-member" in Wind {
        /// Peak velocity pressure at the height of the member.
        peak_pressure ("qp"): Pressure,
        /// Side across the wind.
        width ("b"): Length,
        /// Side along the wind.
        depth ("d"): Length,
        /// Length.
        length ("l"): Length,
    }
    gives
    /// Wind force on a rectangular member.
    pub struct En1991Rectangular {
        /// Force coefficient.
        coefficient ("cf,0"): Ratio,
        /// Force on each unit of length.
        line_force ("w"): ForcePerLength,
        /// Force on the whole member, the structural factor taken as 1.
        force ("F"): Force,
    }
    formula "cf,0 by d / b from the table, straight between its points\nw = qp · cf,0 · b, F = w · l"
    valid "Wind square to a face; one member alone. Recommended values, before any national annex."
    source { work: "EN 1991-1-4:2005", clause: "7.6 (equation 7.9, figure 7.23)", evidence: Seen, seen: "the figure's points in the public library xcfem/xc; the standard itself was not at hand" }
    by rectangular_member
}

static COEFFICIENTS: Stored =
    LazyLock::new(|| Table::read(include_str!("en1991_rectangular_member.toml")));

fn rectangular_member(bar: &En1991RectangularMember) -> Result<En1991Rectangular, OutOfReach> {
    not_negative("peak_pressure", bar.peak_pressure, "900 Pa")?;
    positive("width", bar.width, "80 mm")?;
    positive("depth", bar.depth, "40 mm")?;
    not_negative("length", bar.length, "4 m")?;
    let table = Table::of(&COEFFICIENTS)?;
    let points = table.numbers("d/b").into_iter().zip(table.numbers("cf,0"));
    let coefficient = interpolated(bar.depth.base() / bar.width.base(), points);
    let line = bar.peak_pressure.base() * coefficient * bar.width.base();
    Ok(En1991Rectangular {
        coefficient: Ratio::from_base(coefficient),
        line_force: ForcePerLength::from_base(line),
        force: Force::from_base(line * bar.length.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bar(width: f64, depth: f64) -> Result<En1991Rectangular, OutOfReach> {
        En1991RectangularMember {
            peak_pressure: Pressure::from_base(900.0),
            width: Length::from_base(width),
            depth: Length::from_base(depth),
            length: Length::from_base(4.0),
        }
        .evaluate()
    }

    #[test]
    fn the_figure_has_one_peak() {
        let table = Table::read(include_str!("en1991_rectangular_member.toml")).unwrap();
        let (at, values) = (table.numbers("d/b"), table.numbers("cf,0"));
        assert!(at.windows(2).all(|pair| pair[0] < pair[1]));
        let peak = values.iter().position(|value| *value >= 2.4).unwrap();
        assert!(values[..=peak].windows(2).all(|pair| pair[0] <= pair[1]));
        assert!(values[peak..].windows(2).all(|pair| pair[0] >= pair[1]));
    }

    proptest! {
        #[test]
        fn a_wider_face_of_one_shape_takes_more(width in 0.01..0.5, shape in 0.05..60.0) {
            let narrow = bar(width, width * shape).unwrap();
            let wide = bar(width * 1.1, width * 1.1 * shape).unwrap();
            prop_assert!(narrow.force < wide.force);
            prop_assert!((0.9..=2.4).contains(&narrow.coefficient.base()));
        }
    }

    #[test]
    fn no_width_is_refused() {
        assert_eq!(bar(0.0, 0.1).unwrap_err().input, "width");
    }
}
