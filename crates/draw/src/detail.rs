//! A part of one scene inside another: cut off at its edges, and moved.

use crate::flat::{Bounds, SLACK, Segment, Spot};
use crate::{Content, Figure, Fill, Label, LayerId, Placement, Point, Scene};
use quantity::{Angle, Quantity as _};
use std::f64::consts::TAU;

impl Scene {
    /// Takes over what another scene shows inside an upright rectangle, whose lower left corner comes to stand on a point
    /// of this one: figures cut off at its edges, the symbols and names whose points are inside. Texts, notes and
    /// dimensions stay where they are.
    pub fn take_part(&mut self, other: &Scene, (low, high): (Point, Point), to: Point) {
        let window = Bounds::new(site(low), site(high));
        let moved = |spot: Spot| point(spot).moved(to.x - low.x, to.y - low.y);
        let layers: Vec<LayerId> = other
            .layers()
            .iter()
            .map(|layer| self.layer(layer.clone()))
            .collect();
        for shape in other.shapes() {
            let Some(layer) = layers.get(shape.layer.0) else {
                continue;
            };
            for content in part(&shape.content, &window, moved) {
                match &shape.title {
                    Some(title) => self.add_titled(*layer, title.as_str(), content),
                    None => self.add(*layer, content),
                }
            }
        }
    }
}

/// What is left of a content inside a window, moved.
fn part(content: &Content, window: &Bounds, moved: impl Fn(Spot) -> Point) -> Vec<Content> {
    let kept = |at: Point| window.contains(site(at)).then(|| moved(site(at)));
    match content {
        Content::Figure(figure) => cut(figure, window, moved)
            .into_iter()
            .map(Content::Figure)
            .collect(),
        Content::Symbol(symbol) => kept(symbol.at)
            .map(|at| Placement {
                at,
                ..symbol.clone()
            })
            .map(Content::Symbol)
            .into_iter()
            .collect(),
        Content::Label(label) => kept(label.at)
            .map(|at| Label {
                at,
                ..label.clone()
            })
            .map(Content::Label)
            .into_iter()
            .collect(),
        Content::Text(_) | Content::Note(_) | Content::Dimension(_) => Vec::new(),
    }
}

/// What is left of a figure: an area that is filled stays an area, an open outline becomes the lines of it.
fn cut(figure: &Figure, window: &Bounds, moved: impl Fn(Spot) -> Point) -> Vec<Figure> {
    let (outline, fill) = outline(figure);
    match fill {
        Some(fill) if fill != Fill::Open => {
            let inside = within(outline, window);
            if inside.len() < 3 {
                return Vec::new();
            }
            let corners: Vec<Point> = inside.into_iter().map(moved).collect();
            vec![Figure::area(corners, fill)]
        }
        _ => {
            let closing = fill.and(outline.first().copied());
            let next = outline.iter().skip(1).copied().chain(closing);
            let pieces = outline.iter().copied().zip(next);
            runs(pieces.filter_map(|piece| window.cut(piece)))
                .into_iter()
                .map(|run| run.into_iter().map(&moved).collect::<Vec<Point>>())
                .map(|run| match run.as_slice() {
                    [from, to] => Figure::line(*from, *to),
                    _ => Figure::path(run),
                })
                .collect()
        }
    }
}

/// Lines that follow one another, end to end, as one run each: a broken line stays one.
fn runs(pieces: impl Iterator<Item = Segment>) -> Vec<Vec<Spot>> {
    let mut runs: Vec<Vec<Spot>> = Vec::new();
    for (from, to) in pieces {
        let follows = |run: &&mut Vec<Spot>| {
            let end = run.last();
            end.is_some_and(|end| end.minus(from).length() < SLACK)
        };
        match runs.last_mut().filter(follows) {
            Some(run) => run.push(to),
            None => runs.push(vec![from, to]),
        }
    }
    runs
}

/// The corners of a figure, and what fills it where it is closed.
fn outline(figure: &Figure) -> (Vec<Spot>, Option<Fill>) {
    let spots = |points: &[Point]| points.iter().copied().map(site).collect();
    let around = |center: &Point, radius, start, sweep| {
        spots(&Point::along_arc(*center, radius, start, sweep))
    };
    match figure {
        Figure::Line { from, to } => (vec![site(*from), site(*to)], None),
        Figure::Path { points } => (spots(points), None),
        Figure::Area { points, fill } => (spots(points), Some(*fill)),
        Figure::Circle {
            center,
            radius,
            fill,
        } => {
            let turn = Angle::from_base(TAU);
            (
                around(center, *radius, Angle::from_base(0.0), turn),
                Some(*fill),
            )
        }
        Figure::Arc {
            center,
            radius,
            start,
            sweep,
        } => (around(center, *radius, *start, *sweep), None),
    }
}

/// The part of an area inside a window, cut at one edge after the other (Sutherland and Hodgman's way).
fn within(mut corners: Vec<Spot>, window: &Bounds) -> Vec<Spot> {
    let (right, up) = (Spot::new(1.0, 0.0), Spot::new(0.0, 1.0));
    for (inward, most) in [
        (right, -window.low.x),
        (Spot::new(-1.0, 0.0), window.high.x),
        (up, -window.low.y),
        (Spot::new(0.0, -1.0), window.high.y),
    ] {
        let depth = |spot: Spot| spot.along(inward) + most;
        let mut kept = Vec::with_capacity(corners.len() + 2);
        let before = corners.iter().cycle().skip(corners.len().saturating_sub(1));
        for (corner, before) in corners.iter().zip(before) {
            let (here, there) = (depth(*corner), depth(*before));
            if (here < 0.0) != (there < 0.0) {
                kept.push(before.plus(corner.minus(*before), there / (there - here)));
            }
            if here >= 0.0 {
                kept.push(*corner);
            }
        }
        corners = kept;
    }
    corners
}

/// A point of the site, in meters.
fn site(point: Point) -> Spot {
    Spot::new(point.x.base(), point.y.base())
}

fn point(spot: Spot) -> Point {
    Point::from_base(spot.x, spot.y)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use crate::{
        Content, Figure, Fill, Ink, Label, Layer, LineWeight, Placement, Point, Scene, Symbol,
    };
    use quantity::{Quantity as _, UnitSystem};

    fn at(x: f64, y: f64) -> Point {
        Point::from_base(x, y)
    }

    /// What a part from (1, 1) to (3, 3) of a scene with one content becomes, its corner moved to (10, 10).
    fn part(content: impl Into<Content>) -> Vec<Content> {
        let mut whole = Scene::new("whole", UnitSystem::Si);
        let layer = whole.layer(Layer::new("posts", LineWeight::Heavy));
        whole.add_titled(layer, "a post", content);
        let mut detail = Scene::new("detail", UnitSystem::Si);
        detail.layer(Layer::new("frame", LineWeight::Fine));
        detail.take_part(&whole, (at(1.0, 1.0), at(3.0, 3.0)), at(10.0, 10.0));
        assert_eq!(detail.layers().len(), 2);
        assert!(
            detail
                .shapes()
                .iter()
                .all(|shape| shape.layer.0 == 1 && shape.title.as_deref() == Some("a post"))
        );
        let shapes = detail.shapes().iter();
        shapes.map(|shape| shape.content.clone()).collect()
    }

    #[test]
    fn a_line_is_cut_at_the_edge_and_moved() {
        let cut = part(Figure::line(at(0.0, 2.0), at(2.0, 2.0)));
        let whole = Content::Figure(Figure::line(at(10.0, 11.0), at(11.0, 11.0)));
        assert_eq!(cut, [whole]);
        assert!(part(Figure::line(at(0.0, 5.0), at(5.0, 5.0))).is_empty());
    }

    #[test]
    fn a_filled_area_stays_one_and_an_open_outline_does_not_run_along_the_edge() {
        let filled = part(Figure::rectangle(
            at(0.0, 0.0),
            at(2.0, 2.0),
            Fill::Solid(Ink::Tint),
        ));
        let [Content::Figure(Figure::Area { points, .. })] = filled.as_slice() else {
            unreachable!("{filled:?}");
        };
        let area: f64 = points
            .iter()
            .zip(points.iter().cycle().skip(1))
            .map(|(one, next)| {
                (one.x.base() - 10.0) * (next.y.base() - 10.0)
                    - (next.x.base() - 10.0) * (one.y.base() - 10.0)
            })
            .sum();
        assert!((area / 2.0 - 1.0).abs() < 1e-12, "{area}");
        let open = part(Figure::rectangle(at(0.0, 0.0), at(2.0, 2.0), Fill::Open));
        let [Content::Figure(Figure::Path { points })] = open.as_slice() else {
            unreachable!("{open:?}");
        };
        assert_eq!(
            points.as_slice(),
            [at(11.0, 10.0), at(11.0, 11.0), at(10.0, 11.0)]
        );
    }

    #[test]
    fn a_circle_that_surrounds_the_window_fills_it_whole() {
        let radius = quantity::Length::from_base(9.0);
        let disc = part(Figure::circle(at(2.0, 2.0), radius, Fill::Solid(Ink::Tint)));
        let [Content::Figure(Figure::Area { points, .. })] = disc.as_slice() else {
            unreachable!("{disc:?}");
        };
        assert!(points.iter().all(|corner| {
            let on = |value: f64| (value - 10.0).abs() < 1e-9 || (value - 12.0).abs() < 1e-9;
            on(corner.x.base()) && on(corner.y.base())
        }));
        assert!(part(Figure::circle(at(2.0, 2.0), radius, Fill::Open)).is_empty());
    }

    #[test]
    fn symbols_and_names_are_kept_by_their_points() {
        let symbol = |x| Placement::new(Symbol::new("eye", []), at(x, 2.0));
        assert_eq!(part(symbol(2.0)).len(), 1);
        assert!(part(symbol(4.0)).is_empty());
        let kept = part(Label::new(at(2.0, 2.0), "eye"));
        let [Content::Label(label)] = kept.as_slice() else {
            unreachable!("{kept:?}");
        };
        assert_eq!(label.at, at(11.0, 11.0));
    }
}
