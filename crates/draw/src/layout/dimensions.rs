//! Dimensions as marks: extension lines, ticks, and words that read from the bottom or from the right.

use super::view::View;
use crate::flat::{Segment, Spot};
use crate::lettering::Block;
use crate::mark::{Mark, Measured, Pen};
use crate::room::Room;
use crate::{
    Anchor, Dimension, DimensionLine, Ink, LinePattern, LineWeight, Measure, dimension_text,
};
use quantity::{Length, Quantity, UnitSystem};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

/// From the measured point to its extension line (mm).
const GAP: f64 = 1.2;
/// How far an extension line goes past the dimension line (mm).
pub(super) const PAST: f64 = 1.6;
/// Half the length of a tick (mm).
pub(super) const TICK: f64 = 1.3;
/// Width of a tick (mm).
const TICK_WIDTH: f64 = 0.4;
/// Height of capitals (mm).
const HEIGHT: f64 = 2.5;

/// A dimension on the paper, its words not yet placed.
#[derive(Debug, Clone)]
pub(crate) struct Drawn {
    pub(super) along: Spot,
    pub(super) reading: f64,
    pub(super) aligned: bool,
    pub(super) points: Vec<Spot>,
    pub(super) feet: Vec<Spot>,
    pub(super) words: Vec<String>,
    pub(super) pen: Pen,
}

impl Drawn {
    /// A dimension put on the paper; `None` with fewer than two points.
    pub(crate) fn new(
        dimension: &Dimension,
        view: &View,
        units: UnitSystem,
        ink: Ink,
    ) -> Option<Self> {
        let points: Vec<Spot> = dimension
            .points
            .iter()
            .map(|point| view.spot(*point))
            .collect();
        let (first, last) = (*points.first()?, *points.last()?);
        if points.len() < 2 {
            return None;
        }
        let (along, normal) = directions(dimension.measure, last.minus(first));
        let level = level(dimension.line, &points, normal, view);
        let feet = points
            .iter()
            .map(|point| point.plus(normal, level - point.along(normal)))
            .collect();
        let pen = Pen {
            width: LineWeight::Fine.millimeters(),
            pattern: LinePattern::Unbroken,
            ink,
        };
        let reading = reading(along.y.atan2(along.x));
        let aligned = dimension.measure == Measure::Aligned && points.len() == 2;
        let words = words(dimension, along, units);
        Some(Self {
            along,
            reading,
            aligned,
            points,
            feet,
            words,
            pen,
        })
    }

    /// The lines of every stretch, for keeping words off them.
    pub(crate) fn segments(&self) -> Vec<Segment> {
        let stretches = 0..self.words.len();
        stretches
            .flat_map(|index| self.lines(index))
            .flat_map(|mark| mark.segments())
            .collect()
    }

    /// The room that the drawn lines and the words over them are likely to take.
    pub(crate) fn outline(&self) -> Vec<Spot> {
        let up = Spot::unit(self.reading).left();
        let beyond = |spot: &Spot| [spot.plus(up, HEIGHT * 2.2), spot.plus(up, -PAST)];
        self.feet.iter().flat_map(beyond).collect()
    }

    /// The marks of all stretches with their words placed; also the words that found no room.
    pub(crate) fn place(&self, room: &mut Room, marks: &mut Vec<Mark>) -> Vec<String> {
        let mut homeless = Vec::new();
        for index in 0..self.words.len() {
            match self.stretch(index, room) {
                Some(mark) => marks.push(mark),
                None => homeless.extend(self.words.get(index).cloned()),
            }
        }
        homeless
    }

    /// One stretch with its words.
    fn stretch(&self, index: usize, room: &mut Room) -> Option<Mark> {
        let (from, to) = (*self.points.get(index)?, *self.points.get(index + 1)?);
        let (start, end) = (*self.feet.get(index)?, *self.feet.get(index + 1)?);
        let words = self.words.get(index)?.clone();
        let block = Block::new(&words, HEIGHT, self.reading, Anchor::Middle)?.ink(self.pen.ink);
        let mut marks = self.lines(index);
        let spot = self.choose(index, &block, room);
        let middle = spot
            .as_ref()
            .map_or(start.middle(end), |chosen| chosen.center);
        if let Some(chosen) = &spot {
            marks.extend(
                chosen
                    .extra
                    .map(|(from, to)| Mark::line(from, to, self.pen)),
            );
            marks.extend(block.marks(chosen.center));
            room.texts.push(block.patch(chosen.center));
            room.leaders.extend(chosen.extra);
        }
        let angle = self.along.y.atan2(self.along.x);
        let measured = Measured {
            from,
            to,
            line: end,
            angle,
            aligned: self.aligned,
            middle,
            words,
            marks,
        };
        spot.map(|_| Mark::Measured(measured))
    }

    /// Extension lines, dimension line and ticks of one stretch.
    fn lines(&self, index: usize) -> Vec<Mark> {
        let ends = [index, index + 1];
        let mut marks: Vec<Mark> = ends.iter().filter_map(|end| self.extension(*end)).collect();
        if let (Some(start), Some(end)) = (self.feet.get(index), self.feet.get(index + 1)) {
            marks.push(Mark::line(*start, *end, self.pen));
            let slant = Spot::unit(self.reading + FRAC_PI_4);
            let tick = Pen {
                width: TICK_WIDTH,
                ..self.pen
            };
            for foot in [start, end] {
                marks.push(Mark::line(
                    foot.plus(slant, -TICK),
                    foot.plus(slant, TICK),
                    tick,
                ));
            }
        }
        marks
    }

    /// The extension line of one measured point, if it is far enough from the dimension line.
    fn extension(&self, index: usize) -> Option<Mark> {
        let (point, foot) = (*self.points.get(index)?, *self.feet.get(index)?);
        let step = foot.minus(point);
        let far = step.length();
        if far < GAP {
            return None;
        }
        let unit = Spot::new(step.x / far, step.y / far);
        Some(Mark::line(
            point.plus(unit, GAP),
            foot.plus(unit, PAST),
            self.pen,
        ))
    }
}

/// The direction of measuring, and the one in which the dimension line stands off.
fn directions(measure: Measure, span: Spot) -> (Spot, Spot) {
    let right = Spot::new(1.0, 0.0);
    match measure {
        Measure::Horizontal => (right, right.left()),
        Measure::Vertical => (right.left(), right),
        Measure::Aligned => {
            let length = span.length();
            let along = if length > 0.0 {
                Spot::new(span.x / length, span.y / length)
            } else {
                right
            };
            (along, along.left())
        }
    }
}

/// How far along the normal the dimension line stands.
fn level(line: DimensionLine, points: &[Spot], normal: Spot, view: &View) -> f64 {
    let reaches = points.iter().map(|point| point.along(normal));
    match line {
        DimensionLine::Through(point) => view.spot(point).along(normal),
        DimensionLine::Beyond(point, off) => view.spot(point).along(normal) + off.base() * 1000.0,
        DimensionLine::Away(off) if off.base() < 0.0 => {
            reaches.fold(f64::INFINITY, f64::min) + off.base() * 1000.0
        }
        DimensionLine::Away(off) => reaches.fold(f64::NEG_INFINITY, f64::max) + off.base() * 1000.0,
    }
}

/// The direction in which words along a line read from the bottom or from the right.
pub(crate) fn reading(angle: f64) -> f64 {
    if angle > FRAC_PI_2 + 1e-6 {
        angle - PI
    } else if angle <= -FRAC_PI_2 + 1e-6 {
        angle + PI
    } else {
        angle
    }
}

/// The words of every stretch: those given, or the measured length.
fn words(dimension: &Dimension, along: Spot, units: UnitSystem) -> Vec<String> {
    let lengths = dimension.points.windows(2).map(|two| match two {
        [from, to] => {
            let step = Spot::new((to.x - from.x).base(), (to.y - from.y).base());
            Length::from_base(step.along(along).abs())
        }
        _ => Length::from_base(0.0),
    });
    lengths
        .enumerate()
        .map(|(index, length)| match dimension.words.get(index) {
            Some(given) if !given.trim().is_empty() => given.replace('\n', " "),
            _ => dimension_text(length, units),
        })
        .collect()
}
