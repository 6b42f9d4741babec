//! Hatch lines: slanted lines cut off at an outline.

use crate::flat::{Segment, Spot};

/// The closest that hatch lines are drawn (mm).
const CLOSEST: f64 = 0.6;
/// The most lines drawn in one outline, far above what fits on a sheet.
const MOST: f64 = 4000.0;

/// Evenly spaced lines inside an outline, which may be hollow or cross itself (even-odd rule).
///
/// The lines lie on one grid of the whole sheet, so that neighboring areas hatch alike.
pub(crate) fn hatch_lines(outline: &[Spot], angle: f64, spacing: f64) -> Vec<Segment> {
    let spacing = if spacing.is_finite() {
        spacing.max(CLOSEST)
    } else {
        CLOSEST
    };
    let level: Vec<Spot> = outline.iter().map(|spot| spot.turned(-angle)).collect();
    let low = level
        .iter()
        .map(|spot| spot.y)
        .fold(f64::INFINITY, f64::min);
    let high = level
        .iter()
        .map(|spot| spot.y)
        .fold(f64::NEG_INFINITY, f64::max);
    if level.len() < 3 || (high - low) / spacing > MOST {
        return Vec::new();
    }
    let mut lines = Vec::new();
    let mut y = (low / spacing).ceil() * spacing;
    while y < high {
        let crossings = crossings(&level, y);
        for two in crossings.chunks_exact(2) {
            if let [from, to] = two {
                lines.push((
                    Spot::new(*from, y).turned(angle),
                    Spot::new(*to, y).turned(angle),
                ));
            }
        }
        y += spacing;
    }
    lines
}

/// Where a level line crosses an outline, from left to right.
fn crossings(outline: &[Spot], y: f64) -> Vec<f64> {
    let next = outline.iter().cycle().skip(1);
    let mut crossings: Vec<f64> = outline
        .iter()
        .zip(next)
        .filter(|(from, to)| (from.y <= y) != (to.y <= y))
        .map(|(from, to)| from.x + (y - from.y) / (to.y - from.y) * (to.x - from.x))
        .collect();
    crossings.sort_by(f64::total_cmp);
    crossings
}

#[cfg(test)]
mod tests {
    #![allow(clippy::float_cmp, reason = "whole numbers are exact")]
    use super::*;

    #[test]
    fn a_square_is_crossed_from_side_to_side() {
        let square =
            [(0.5, 0.5), (10.5, 0.5), (10.5, 10.5), (0.5, 10.5)].map(|(x, y)| Spot::new(x, y));
        let lines = hatch_lines(&square, 0.0, 2.0);
        assert_eq!(lines.len(), 5);
        assert!(
            lines
                .iter()
                .all(|(from, to)| from.x == 0.5 && to.x == 10.5 && from.y == to.y)
        );
    }

    #[test]
    fn a_notch_stays_clear() {
        let notched = [
            (0.0, 0.0),
            (9.0, 0.0),
            (9.0, 9.0),
            (6.0, 9.0),
            (6.0, 3.0),
            (3.0, 3.0),
            (3.0, 9.0),
            (0.0, 9.0),
        ]
        .map(|(x, y)| Spot::new(x, y));
        let through: Vec<_> = hatch_lines(&notched, 0.0, 4.0)
            .into_iter()
            .filter(|line| line.0.y > 3.5)
            .collect();
        assert_eq!(through.len(), 4);
        assert!(
            through
                .iter()
                .all(|(from, to)| to.x <= 3.0 || from.x >= 6.0)
        );
    }
}
