//! Room for words on a chart as a screen shows it: every mark beside its point, every letter on its curve, none on another.
//!
//! A chart is as wide as the page lets it be, and its words keep their size: they are placed as on the narrowest page, where
//! they have the least room.

use super::chart::{Chart, Mark};

/// Width and height of the room between the axes on the narrowest page, in screen units.
const ROOM: (f64, f64) = (280.0, 240.0);
/// Width of a letter and height of a line, in screen units.
const LETTER: f64 = 7.4;
const LINE: f64 = 16.0;
/// From a marked point to its words.
const ASIDE: f64 = 11.0;
/// Half the side of the box around the letter of a curve.
pub(super) const TAG: f64 = 9.0;

/// Where the words of a mark stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Words {
    /// They end at the point, and do not begin there.
    pub(super) ends: bool,
    /// From the point down to the base of the first line, in screen units.
    pub(super) down: f64,
}

/// A part of the room: left, top, right, bottom.
type Patch = [f64; 4];

/// What stands where.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Placed {
    /// For each mark.
    pub(super) marks: Vec<Words>,
    /// For each curve the point, in units of the axes, that its letter stands on; none where it has no points.
    pub(super) tags: Vec<Option<(f64, f64)>>,
}

/// Finds room for all of them.
pub(super) fn placed(chart: &Chart) -> Placed {
    let lines: Vec<Vec<(f64, f64)>> = chart
        .curves
        .iter()
        .map(|curve| dense(&spots(chart, &curve.points)))
        .collect();
    let mut taken: Vec<Patch> = chart
        .marks
        .iter()
        .map(|mark| around(spot(chart, mark.at), 7.0))
        .collect();
    let marks = chart
        .marks
        .iter()
        .map(|mark| words(chart, mark, &lines, &mut taken))
        .collect();
    let tags = lines.iter().enumerate();
    let tags = tags
        .map(|(at, line)| tag(chart, (at, line), &lines, &mut taken))
        .collect();
    Placed { marks, tags }
}

fn words(chart: &Chart, mark: &Mark, lines: &[Vec<(f64, f64)>], taken: &mut Vec<Patch>) -> Words {
    let (x, y) = spot(chart, mark.at);
    let longest = mark.words.lines().map(|line| line.chars().count()).max();
    let (wide, tall) = (
        count(longest.unwrap_or(0)) * LETTER,
        count(mark.words.lines().count()) * LINE,
    );
    let sides = [x > ROOM.0 / 2.0, x <= ROOM.0 / 2.0];
    let heights = [-ASIDE - tall, ASIDE, -tall / 2.0];
    let mut best: Option<(f64, Words, Patch)> = None;
    for ends in sides {
        for top in heights {
            let left = if ends { x - ASIDE - wide } else { x + ASIDE };
            let place = [left, y + top, left + wide, y + top + tall];
            let cost = cost(place, taken, lines.iter());
            if best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                let down = top + LINE - 4.0;
                best = Some((cost, Words { ends, down }, place));
            }
        }
    }
    let Some((_, words, place)) = best else {
        return Words {
            ends: false,
            down: 0.0,
        };
    };
    taken.push(place);
    words
}

/// The point of a curve on which its letter is farthest from everything else.
fn tag(
    chart: &Chart,
    (at, line): (usize, &[(f64, f64)]),
    lines: &[Vec<(f64, f64)>],
    taken: &mut Vec<Patch>,
) -> Option<(f64, f64)> {
    let others = || lines.iter().enumerate().filter(|(other, _)| *other != at);
    let places = (1..20).map(|step| step * line.len() / 20);
    let places = places.filter_map(|place| line.get(place));
    let best = places.min_by(|one, other| {
        let cost = |spot: &&(f64, f64)| {
            cost(
                around(**spot, TAG + 3.0),
                taken,
                others().map(|(_, line)| line),
            )
        };
        cost(one).total_cmp(&cost(other))
    })?;
    taken.push(around(*best, TAG + 3.0));
    let ((left, right), (low, high)) = (chart.across.ends(), chart.up.ends());
    Some((
        left + best.0 / ROOM.0 * (right - left),
        low + (1.0 - best.1 / ROOM.1) * (high - low),
    ))
}

/// What a place costs: words on words most, words out of the room, words on curves least.
fn cost<'l>(
    place: Patch,
    taken: &[Patch],
    lines: impl Iterator<Item = &'l Vec<(f64, f64)>>,
) -> f64 {
    let over = taken.iter().filter(|other| meet(place, **other)).count();
    let out = [
        place[0] + 4.0,
        place[1],
        ROOM.0 + 4.0 - place[2],
        ROOM.1 - place[3],
    ];
    let out: f64 = out.iter().map(|room| (-room).max(0.0)).sum();
    let within =
        |(x, y): &&(f64, f64)| (place[0]..place[2]).contains(x) && (place[1]..place[3]).contains(y);
    let crossed: usize = lines.map(|line| line.iter().filter(within).count()).sum();
    1000.0 * count(over) + 20.0 * out + count(crossed)
}

fn meet(one: Patch, other: Patch) -> bool {
    one[0] < other[2] && one[2] > other[0] && one[1] < other[3] && one[3] > other[1]
}

fn around((x, y): (f64, f64), half: f64) -> Patch {
    [x - half, y - half, x + half, y + half]
}

fn spots(chart: &Chart, points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    points.iter().map(|point| spot(chart, *point)).collect()
}

/// A point of the chart in the room, downward.
fn spot(chart: &Chart, (x, y): (f64, f64)) -> (f64, f64) {
    (
        chart.across.share(x) * ROOM.0,
        (1.0 - chart.up.share(y)) * ROOM.1,
    )
}

/// A line with points every few units.
fn dense(line: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut points = Vec::new();
    for pair in line.windows(2) {
        let ((x, y), (to_x, to_y)) = (pair[0], pair[1]);
        let far = (to_x - x).hypot(to_y - y);
        let mut along = 0.0;
        while along < far {
            let share = along / far;
            points.push((x + share * (to_x - x), y + share * (to_y - y)));
            along += 4.0;
        }
    }
    points
}

#[allow(clippy::cast_precision_loss, reason = "words and points are few")]
fn count(number: usize) -> f64 {
    number as f64
}
