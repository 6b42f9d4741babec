//! Trying a range from end to end and narrowing down what is found.

use super::curve::{Curve, Point};
use super::{Closest, Found, Place};

/// Halvings after which two numbers of any size are next to each other.
const HALVINGS: usize = 1100;
/// Steps of the search for a point where the curve only touches.
const TOUCH_STEPS: usize = 200;
/// A curve that still differs by this share of its first difference between neighboring numbers jumps there.
const JUMP: f64 = 1e-6;
/// A miss up to this share at the bottom of a valley is a touch.
const TOUCH: f64 = 1e-9;
/// A range narrower than this share of its size is one value.
const NARROW: f64 = 1e-5;

/// Everything that the tried values show.
pub(super) fn scan(curve: &Curve, tried: &[f64]) -> Found {
    let runs = runs(curve, tried);
    let all = || runs.iter().flatten().copied();
    if all().next().is_none() {
        let refused = tried.iter().find_map(|input| curve.at(*input).err());
        return Found::None {
            closest: None,
            refused,
        };
    }
    if all().count() > 1 && all().all(|point| curve.hits(point)) {
        return Found::Any;
    }
    let mut best = None;
    let mut spans = Vec::new();
    for run in &runs {
        for point in run {
            keep_nearest(&mut best, *point);
        }
        spans.extend(hits(curve, run));
        spans.extend(
            run.windows(2)
                .filter_map(|pair| crossing(curve, pair[0], pair[1])),
        );
        for triple in run.windows(3) {
            let valley = valley(curve, [triple[0], triple[1], triple[2]]);
            keep_nearest(&mut best, valley.lowest);
            spans.extend(valley.spans);
        }
    }
    found(curve, spans, best)
}

fn keep_nearest(best: &mut Option<Point>, point: Point) {
    if best.is_none_or(|best| point.miss.abs() < best.miss.abs()) {
        *best = Some(point);
    }
}

/// The points that have an output, in unbroken runs, with the ends of each run narrowed down.
fn runs(curve: &Curve, tried: &[f64]) -> Vec<Vec<Point>> {
    let inside = |input: f64| curve.at(input).ok();
    let mut runs: Vec<Vec<Point>> = Vec::new();
    let mut run: Vec<Point> = Vec::new();
    let mut refused: Option<f64> = None;
    for input in tried {
        if let Some(point) = inside(*input) {
            run.extend(refused.take().map(|outside| edge(outside, point, inside)));
            run.push(point);
            continue;
        }
        if let Some(last) = run.last().copied() {
            run.push(edge(*input, last, inside));
            runs.push(std::mem::take(&mut run));
        }
        refused = Some(*input);
    }
    runs.push(run);
    for run in &mut runs {
        run.dedup_by(|next, before| next.input <= before.input);
    }
    runs
}

/// The last point toward `outside` that still is inside, by halving.
fn edge(outside: f64, inside: Point, at: impl Fn(f64) -> Option<Point>) -> Point {
    let (mut outside, mut inside) = (outside, inside);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(outside, inside.input);
        if middle <= outside.min(inside.input) || middle >= outside.max(inside.input) {
            break;
        }
        match at(middle) {
            Some(point) => inside = point,
            None => outside = middle,
        }
    }
    inside
}

/// From where to where the wanted value holds.
type Span = (f64, f64);

/// The spans around the points that hit.
fn hits(curve: &Curve, run: &[Point]) -> Vec<Span> {
    let inside = |input: f64| curve.at(input).ok().filter(|point| curve.hits(*point));
    let reach = |from: Point, to: Option<&Point>| match to {
        None => from.input,
        Some(to) => edge(to.input, from, inside).input,
    };
    run.iter()
        .enumerate()
        .filter(|(_, point)| curve.hits(**point))
        .map(|(place, point)| {
            let before = place.checked_sub(1).and_then(|before| run.get(before));
            (reach(*point, before), reach(*point, run.get(place + 1)))
        })
        .collect()
}

/// Where the curve crosses between two points, unless it jumps.
fn crossing(curve: &Curve, left: Point, right: Point) -> Option<Span> {
    if curve.hits(left) || curve.hits(right) || (left.miss < 0.0) == (right.miss < 0.0) {
        return None;
    }
    let first = left.miss.abs() + right.miss.abs();
    let (mut low, mut high) = (left, right);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low.input, high.input);
        if middle <= low.input || middle >= high.input {
            break;
        }
        let point = curve.at(middle).ok()?;
        if (point.miss < 0.0) == (low.miss < 0.0) {
            low = point;
        } else {
            high = point;
        }
    }
    let nearest = if low.miss.abs() < high.miss.abs() {
        low
    } else {
        high
    };
    let continuous = curve.hits(nearest) || (low.miss - high.miss).abs() <= JUMP * first;
    continuous.then_some((nearest.input, nearest.input))
}

/// What lies between three points of which the middle one is nearest.
struct Valley {
    lowest: Point,
    spans: Vec<Span>,
}

/// Looks in a valley for a touch, or for two crossings that the tried values stepped over.
fn valley(curve: &Curve, [left, middle, right]: [Point; 3]) -> Valley {
    let mut valley = Valley {
        lowest: middle,
        spans: Vec::new(),
    };
    let side = middle.miss < 0.0;
    let deeper = |other: Point| middle.miss.abs() <= other.miss.abs();
    let same = [left, right]
        .iter()
        .all(|other| (other.miss < 0.0) == side && deeper(*other));
    let any_hit = [left, middle, right].iter().any(|point| curve.hits(*point));
    if !same || any_hit {
        return valley;
    }
    let scale = curve
        .wanted()
        .abs()
        .max(left.miss.abs().min(right.miss.abs()));
    let lowest = lowest(curve, left.input, right.input, middle, side);
    if lowest.miss != 0.0 && (lowest.miss < 0.0) != side {
        valley.spans.extend(crossing(curve, left, lowest));
        valley.spans.extend(crossing(curve, lowest, right));
    } else if lowest.miss.abs() <= TOUCH * scale {
        valley.spans.push((lowest.input, lowest.input));
    }
    valley.lowest = lowest;
    valley
}

/// The point of least miss between two inputs by golden section, or the first one found beyond the wanted value.
fn lowest(curve: &Curve, left: f64, right: f64, middle: Point, side: bool) -> Point {
    const GOLDEN: f64 = 0.381_966_011_250_105;
    let (mut left, mut right, mut best) = (left, right, middle);
    for _ in 0..TOUCH_STEPS {
        let wider = if right - best.input > best.input - left {
            right
        } else {
            left
        };
        let input = best.input + GOLDEN * (wider - best.input);
        if input <= left || input >= right || input.to_bits() == best.input.to_bits() {
            break;
        }
        let Ok(point) = curve.at(input) else { break };
        if (point.miss < 0.0) != side {
            return point;
        }
        let (inner, outer) = if point.miss.abs() < best.miss.abs() {
            (point, best)
        } else {
            (best, point)
        };
        if outer.input < inner.input {
            left = outer.input;
        } else {
            right = outer.input;
        }
        best = inner;
    }
    best
}

/// The spans as places, those that meet as one.
fn found(curve: &Curve, mut spans: Vec<Span>, best: Option<Point>) -> Found {
    spans.sort_by(|one, other| one.0.total_cmp(&other.0));
    let mut merged: Vec<Span> = Vec::new();
    for span in spans {
        match merged.last_mut() {
            Some(last) if span.0 - last.1 <= TOUCH * span.0.abs() => last.1 = last.1.max(span.1),
            _ => merged.push(span),
        }
    }
    let mut places: Vec<Place> = merged.into_iter().map(place).collect();
    match places.len() {
        0 => Found::None {
            closest: best.map(|point| Closest {
                input: point.input,
                output: point.miss + curve.wanted(),
            }),
            refused: None,
        },
        1 => Found::One(places.remove(0)),
        _ => Found::Several(places),
    }
}

fn place((from, to): Span) -> Place {
    if to - from > NARROW * from.abs().max(to.abs()) {
        Place::Between { from, to }
    } else {
        Place::At(f64::midpoint(from, to))
    }
}
