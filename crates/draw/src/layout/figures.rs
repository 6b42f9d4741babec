//! Figures and symbols as marks.

use super::hatch::hatch_lines;
use super::view::View;
use crate::flat::{Bounds, Spot};
use crate::lettering::Block;
use crate::mark::{Mark, Pen};
use crate::patch::Patch;
use crate::{Anchor, Figure, Fill, Ink, LinePattern, LineWeight, Placement, Point, Symbol};
use quantity::{Length, Quantity};

/// How the points and lengths of a figure come to the paper.
pub(crate) trait Onto {
    /// The spot of a point.
    fn spot(&self, point: Point) -> Spot;
    /// A length (mm).
    fn length(&self, length: Length) -> f64;
    /// A direction (rad).
    fn angle(&self, angle: f64) -> f64;
}

impl Onto for View {
    fn spot(&self, point: Point) -> Spot {
        View::spot(self, point)
    }
    fn length(&self, length: Length) -> f64 {
        View::length(self, length)
    }
    fn angle(&self, angle: f64) -> f64 {
        angle
    }
}

/// Where a symbol stands on the paper, how far it is turned and how many times enlarged.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Stand {
    /// Its origin.
    pub(crate) at: Spot,
    /// How far it is turned (rad).
    pub(crate) turn: f64,
    /// How many times enlarged.
    pub(crate) times: f64,
}

impl Onto for Stand {
    fn spot(&self, point: Point) -> Spot {
        self.at
            .plus(Spot::of_paper(point).turned(self.turn), self.times)
    }
    fn length(&self, length: Length) -> f64 {
        length.base() * 1000.0 * self.times
    }
    fn angle(&self, angle: f64) -> f64 {
        angle + self.turn
    }
}

/// The marks of a figure drawn with a pen.
pub(crate) fn figure_marks(figure: &Figure, onto: &impl Onto, pen: Pen) -> Vec<Mark> {
    let spots = |points: &[Point]| {
        points
            .iter()
            .map(|point| onto.spot(*point))
            .collect::<Vec<_>>()
    };
    match figure {
        Figure::Line { from, to } => vec![Mark::line(onto.spot(*from), onto.spot(*to), pen)],
        Figure::Path { points } => {
            vec![Mark::Path {
                spots: spots(points),
                closed: false,
                pen: Some(pen),
                fill: None,
            }]
        }
        Figure::Area { points, fill } => {
            let spots = spots(points);
            let mut marks = hatching(&spots, *fill, onto, pen);
            marks.push(Mark::Path {
                spots,
                closed: true,
                pen: Some(pen),
                fill: solid(*fill),
            });
            marks
        }
        Figure::Circle {
            center,
            radius,
            fill,
        } => {
            let (center, radius) = (onto.spot(*center), onto.length(*radius).abs());
            let rim: Vec<Spot> = (0..96_u32)
                .map(|step| {
                    center.plus(
                        Spot::unit(f64::from(step) / 96.0 * std::f64::consts::TAU),
                        radius,
                    )
                })
                .collect();
            let mut marks = hatching(&rim, *fill, onto, pen);
            marks.push(Mark::Circle {
                center,
                radius,
                pen: Some(pen),
                fill: solid(*fill),
            });
            marks
        }
        Figure::Arc {
            center,
            radius,
            start,
            sweep,
        } => vec![arc(
            onto.spot(*center),
            onto.length(*radius).abs(),
            onto.angle(start.base()),
            sweep.base(),
            pen,
        )],
    }
}

/// An arc drawn counter-clockwise; a full turn or more is a circle.
fn arc(center: Spot, radius: f64, start: f64, sweep: f64, pen: Pen) -> Mark {
    let full = std::f64::consts::TAU;
    if sweep.abs() >= full - 1e-9 {
        return Mark::Circle {
            center,
            radius,
            pen: Some(pen),
            fill: None,
        };
    }
    let start = if sweep < 0.0 { start + sweep } else { start };
    Mark::Arc {
        center,
        radius,
        start: start.rem_euclid(full),
        sweep: sweep.abs(),
        pen,
    }
}

/// The even tone of a fill.
fn solid(fill: Fill) -> Option<Ink> {
    match fill {
        Fill::Solid(ink) => Some(ink),
        Fill::Open | Fill::Hatched(_) => None,
    }
}

/// The hatch lines inside an outline.
fn hatching(outline: &[Spot], fill: Fill, onto: &impl Onto, pen: Pen) -> Vec<Mark> {
    let Fill::Hatched(hatch) = fill else {
        return Vec::new();
    };
    let fine = Pen {
        width: LineWeight::Fine.millimeters(),
        pattern: LinePattern::Unbroken,
        ..pen
    };
    let angle = onto.angle(hatch.angle.base());
    let spacing = hatch.spacing.base() * 1000.0;
    let mut lines = hatch_lines(outline, angle, spacing);
    if hatch.crossed {
        lines.extend(hatch_lines(
            outline,
            angle + std::f64::consts::FRAC_PI_2,
            spacing,
        ));
    }
    lines
        .into_iter()
        .map(|(from, to)| Mark::line(from, to, fine))
        .collect()
}

/// The marks of a symbol: figures first, then letters upright.
pub(crate) fn symbol_marks(symbol: &Symbol, stand: Stand, pen: Pen) -> Vec<Mark> {
    let mut marks: Vec<Mark> = symbol
        .figures
        .iter()
        .flat_map(|figure| figure_marks(figure, &stand, pen))
        .collect();
    for letters in &symbol.letters {
        let height = (stand.length(letters.height)).max(0.5);
        if let Some(block) = Block::new(
            &letters.words.replace('\n', " "),
            height,
            0.0,
            Anchor::Middle,
        ) {
            let center = Onto::spot(&stand, letters.at);
            let printed = block.marks(center);
            marks.extend(
                printed
                    .into_iter()
                    .filter(|mark| !matches!(mark, Mark::Ground(_))),
            );
        }
    }
    marks
}

/// Where a placement stands at full size.
pub(crate) fn stand_of(placement: &Placement, view: &View) -> Stand {
    Stand {
        at: view.spot(placement.at),
        turn: placement.rotation.base(),
        times: 1.0,
    }
}

/// The upright rectangle that marks take.
pub(crate) fn patch_around(marks: &[Mark]) -> Option<Patch> {
    let mut bounds = Bounds::EMPTY;
    for mark in marks {
        mark.bound(&mut bounds);
    }
    (!bounds.is_empty()).then(|| Patch {
        center: bounds.center(),
        half_width: bounds.width() / 2.0,
        half_height: bounds.height() / 2.0,
        angle: 0.0,
    })
}
