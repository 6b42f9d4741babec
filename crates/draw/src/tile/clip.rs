//! Marks cut off at the edges of a window.

use crate::flat::{Bounds, Segment, Spot};
use crate::mark::{Mark, Pen};

/// What is left of marks inside a window.
pub(super) fn clipped(marks: &[Mark], window: &Bounds) -> Vec<Mark> {
    marks.iter().flat_map(|mark| clip(mark, window)).collect()
}

fn clip(mark: &Mark, window: &Bounds) -> Vec<Mark> {
    if let Mark::Group {
        class,
        title,
        marks,
    } = mark
    {
        let marks = clipped(marks, window);
        return if marks.is_empty() {
            Vec::new()
        } else {
            vec![Mark::Group {
                class,
                title: title.clone(),
                marks,
            }]
        };
    }
    let mut around = Bounds::EMPTY;
    mark.bound(&mut around);
    if around.is_empty() || (window.contains(around.low) && window.contains(around.high)) {
        return vec![mark.clone()];
    }
    let Some(pen) = pen(mark) else {
        return Vec::new();
    };
    let lines = lines(mark);
    let kept = lines.into_iter().filter_map(|line| window.cut(line));
    kept.map(|(from, to)| Mark::line(from, to, pen)).collect()
}

/// The pen that outlines a mark.
fn pen(mark: &Mark) -> Option<Pen> {
    match mark {
        Mark::Path { pen, .. } | Mark::Circle { pen, .. } => *pen,
        Mark::Arc { pen, .. } => Some(*pen),
        _ => None,
    }
}

/// The outline as straight lines; a circle in so many that none leaves it by a twentieth of a millimeter.
fn lines(mark: &Mark) -> Vec<Segment> {
    let Mark::Circle { center, radius, .. } = mark else {
        return mark.segments();
    };
    let mut pieces = 96_u32;
    while pieces < 1536 && radius * (1.0 - (std::f64::consts::PI / f64::from(pieces)).cos()) > 0.02
    {
        pieces *= 2;
    }
    let rim = |step: u32| {
        let share = f64::from(step) / f64::from(pieces);
        center.plus(Spot::unit(share * std::f64::consts::TAU), *radius)
    };
    (0..pieces).map(|step| (rim(step), rim(step + 1))).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    fn window() -> Bounds {
        Bounds::new(Spot::new(0.0, 0.0), Spot::new(10.0, 10.0))
    }

    #[test]
    fn a_line_is_cut_where_it_leaves_the_window() {
        let line = (Spot::new(-5.0, 5.0), Spot::new(5.0, 5.0));
        let (from, to) = window().cut(line).unwrap();
        assert!((from.x, to.x) == (0.0, 5.0));
        assert!(
            window()
                .cut((Spot::new(-5.0, 11.0), Spot::new(5.0, 11.0)))
                .is_none()
        );
    }

    #[test]
    fn a_circle_inside_stays_a_circle_and_one_across_the_edge_does_not() {
        let circle = |x: f64| Mark::Circle {
            center: Spot::new(x, 5.0),
            radius: 2.0,
            pen: Some(Pen::black(0.1)),
            fill: None,
        };
        let whole = clipped(&[circle(5.0)], &window());
        assert!(matches!(whole[..], [Mark::Circle { .. }]));
        let part = clipped(&[circle(10.0)], &window());
        assert!(part.len() > 20 && part.iter().all(|mark| matches!(mark, Mark::Path { .. })));
        assert!(clipped(&[circle(20.0)], &window()).is_empty());
    }
}
