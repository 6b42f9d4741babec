//! Finding room for words: each text takes the best free place near its point, so that no two ever overlap.

use crate::flat::{Bounds, Segment, Spot, cross};
use crate::patch::Patch;
use quantity::{Angle, Quantity};

/// How far from its point a text is tried, in turn (mm of clear paper).
const RINGS: [f64; 14] = [
    0.6, 1.6, 3.0, 5.0, 7.5, 10.5, 14.0, 18.0, 23.0, 29.0, 36.0, 45.0, 56.0, 70.0,
];
/// Directions tried on each ring.
const DIRECTIONS: u32 = 24;
/// A text farther than this from its point has a line to it (mm).
const LEADER_FROM: f64 = 2.6;
/// What crossing a drawn line costs, in millimeters of distance.
const CROSSING: f64 = 6.0;
/// What standing on a dimension or on another text's leader costs, in millimeters of distance.
const ON_LEADER: f64 = 24.0;
/// What a leader costs that crosses a dimension or another leader, in millimeters of distance.
const LEADERS_CROSS: f64 = 5.0;
/// What a leader over a drawn line costs, in millimeters of distance.
const LEADER_OVER: f64 = 1.5;
/// What a leader through other words costs, in millimeters of distance.
const THROUGH_WORDS: f64 = 60.0;

/// Where a text would like to stand.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wish {
    /// The least clear paper between the point and the text (mm).
    least: f64,
    /// The preferred direction (rad).
    toward: f64,
    /// What a half turn from that direction costs (mm).
    turn: f64,
    /// Whether a line to the point is always drawn.
    always_leader: bool,
}

impl Wish {
    /// Close by, best to the upper right.
    pub(crate) fn close() -> Self {
        Self {
            least: 0.0,
            toward: 0.7,
            turn: 1.0,
            always_leader: false,
        }
    }

    /// At the end of a note's arrow, in a direction.
    pub(crate) fn note(toward: Angle) -> Self {
        Self {
            least: 7.0,
            toward: toward.base(),
            turn: 20.0,
            always_leader: true,
        }
    }

    /// Where a text may stand in a direction, at a distance, and where a line to it begins: a note on either side of
    /// its line's end, other words around their point or around the symbol on it.
    fn patches(
        &self,
        at: Spot,
        own: Option<&Patch>,
        shape: &Patch,
        (direction, distance): (f64, f64),
    ) -> (Spot, Vec<Patch>) {
        let unit = Spot::unit(direction);
        let from = own.map_or(at, |solid| solid.edge(at, unit));
        if self.always_leader {
            let (end, across) = (from.plus(unit, distance), Spot::unit(shape.angle));
            let ways = [1.0, -1.0]
                .into_iter()
                .filter(|way| way * unit.along(across) > -0.3);
            let beside = |way: f64| shape.at(end.plus(across, way * shape.half_width));
            return (from, ways.map(beside).collect());
        }
        let (middle, around) =
            own.map_or((at, *shape), |solid| (solid.center, shape.around(solid)));
        (
            from,
            vec![shape.at(middle.plus(unit, around.clear(unit, distance)))],
        )
    }

    /// What standing in a direction costs (mm).
    fn turning(&self, direction: f64) -> f64 {
        let away = (direction - self.toward).cos();
        self.turn * (1.0 - away) / 2.0
    }
}

/// A place found for a text.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Place {
    /// The room that it takes.
    pub(crate) patch: Patch,
    /// From the point to the text, when it stands away.
    pub(crate) leader: Option<Segment>,
}

/// The paper and what is on it already.
#[derive(Debug, Clone)]
pub(crate) struct Room {
    area: Bounds,
    /// Texts; nothing may overlap them.
    pub(crate) texts: Vec<Patch>,
    /// Symbols; labels and notes keep off them.
    pub(crate) solids: Vec<Patch>,
    /// Drawn lines; crossing them costs.
    pub(crate) lines: Vec<Segment>,
    /// Dimensions and leaders; crossing them costs more, since they would point to the wrong words.
    pub(crate) leaders: Vec<Segment>,
}

impl Room {
    /// Empty paper.
    pub(crate) fn new(area: Bounds) -> Self {
        Self {
            area,
            texts: Vec::new(),
            solids: Vec::new(),
            lines: Vec::new(),
            leaders: Vec::new(),
        }
    }

    /// Whether a text may stand here without touching another.
    pub(crate) fn is_free(&self, patch: &Patch) -> bool {
        self.area.holds(patch) && !self.texts.iter().any(|text| text.overlaps(patch))
    }

    /// The best free place near a point; `None` when the area is full.
    pub(crate) fn near(&self, at: Spot, shape: &Patch, wish: &Wish) -> Option<Place> {
        let own = self.solids.iter().find(|solid| solid.covers(at));
        let mut best: Option<(f64, Place)> = None;
        for ring in RINGS {
            let distance = wish.least + ring;
            if best.is_some_and(|(cost, _)| cost <= distance) {
                break;
            }
            for step in 0..DIRECTIONS {
                let direction = f64::from(step) / f64::from(DIRECTIONS) * std::f64::consts::TAU;
                let cost = distance + wish.turning(direction);
                let (from, patches) = wish.patches(at, own, shape, (direction, distance));
                for patch in patches {
                    self.consider(from, patch, cost, wish, &mut best);
                }
            }
        }
        best.map(|(_, place)| place)
            .or_else(|| self.anywhere(at, shape, wish))
    }

    /// Keeps a place if it is free and better than the best so far.
    fn consider(
        &self,
        at: Spot,
        patch: Patch,
        cost: f64,
        wish: &Wish,
        best: &mut Option<(f64, Place)>,
    ) {
        let known = best.map_or(f64::INFINITY, |(cost, _)| cost);
        let blocked = || self.solids.iter().any(|solid| solid.overlaps(&patch));
        if cost >= known || patch.gap(at) < 0.5 || !self.is_free(&patch) || blocked() {
            return;
        }
        let leader = leader(at, &patch, wish);
        let struck = leader.map_or(0.0, |line| self.struck(line));
        let cost = cost + struck + self.crossings(&patch, known - cost - struck);
        if cost < known {
            *best = Some((cost, Place { patch, leader }));
        }
    }

    /// What a leader costs by passing through words and over other lines.
    fn struck(&self, line: Segment) -> f64 {
        let through = self.texts.iter().any(|text| text.crossed_by(line));
        let words = if through { THROUGH_WORDS } else { 0.0 };
        let crossed = self.leaders.iter().filter(|leader| cross(line, **leader));
        let over = self.lines.iter().filter(|drawn| cross(line, **drawn));
        words + crossed.map(|_| LEADERS_CROSS).sum::<f64>() + over.map(|_| LEADER_OVER).sum::<f64>()
    }

    /// What the lines under a text cost, counted only until it is too dear.
    fn crossings(&self, patch: &Patch, limit: f64) -> f64 {
        let mut cost = 0.0;
        let leaders = self.leaders.iter().map(|line| (line, ON_LEADER));
        for (line, price) in leaders.chain(self.lines.iter().map(|line| (line, CROSSING))) {
            if cost >= limit {
                break;
            }
            if patch.crossed_by(*line) {
                cost += price;
            }
        }
        cost
    }

    /// The free place nearest to a point in the whole area, whatever lies beneath.
    fn anywhere(&self, at: Spot, shape: &Patch, wish: &Wish) -> Option<Place> {
        let step = (shape.half_height / 2.0).max(0.5);
        let mut best: Option<(f64, Patch)> = None;
        let (wide, high) = (
            shape.reach(Spot::new(1.0, 0.0)),
            shape.reach(Spot::new(0.0, 1.0)),
        );
        let mut y = self.area.low.y + high;
        while y <= self.area.high.y - high + 1e-9 {
            let mut x = self.area.low.x + wide;
            while x <= self.area.high.x - wide + 1e-9 {
                let patch = shape.at(Spot::new(x, y));
                let away = patch.center.minus(at).length();
                if best.is_none_or(|(known, _)| away < known) && self.is_free(&patch) {
                    best = Some((away, patch));
                }
                x += step;
            }
            y += step;
        }
        best.map(|(_, patch)| {
            let own = self.solids.iter().find(|solid| solid.covers(at));
            let away = patch.center.minus(at);
            let unit = Spot::unit(away.y.atan2(away.x));
            let from = own.map_or(at, |solid| solid.edge(at, unit));
            Place {
                patch,
                leader: leader(from, &patch, wish),
            }
        })
    }
}

/// The line from a point to the nearer end of a text, when one is drawn.
fn leader(at: Spot, patch: &Patch, wish: &Wish) -> Option<Segment> {
    let across = Spot::unit(patch.angle);
    let (left, right) = (
        patch.center.plus(across, -patch.half_width),
        patch.center.plus(across, patch.half_width),
    );
    let up = across.left();
    let sideways = at.minus(patch.center).along(across);
    let end = if sideways.abs() > patch.half_width - 1e-6 || wish.always_leader {
        if sideways < 0.0 { left } else { right }
    } else {
        let above = at.minus(patch.center).along(up);
        patch
            .center
            .plus(across, sideways)
            .plus(up, patch.half_height.copysign(above))
    };
    let wanted = wish.always_leader || patch.gap(at) > LEADER_FROM;
    wanted.then_some((at, end))
}
