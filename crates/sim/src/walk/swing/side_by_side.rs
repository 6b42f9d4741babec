//! Scenarios of one family side by side: the first touches of leaves that nothing stops are searched for many at once.

use super::super::path::Case;
use super::super::profile::EVER;
use super::super::sequence::{Block, Family};
use super::super::sweep::Bin;
use super::super::watch::Walker;
use super::contact::{NEAR, Piece, TOUCH};
use super::evaluate::{First, pieces};
use super::lane::{SwingLane, SwingWalk};
use super::many::Sought;
use super::wing::Wing;

/// Scenarios that are worked side by side.
const TOGETHER: usize = 64;

/// What is known of a body on its path.
struct One {
    near: [Option<f64>; 2],
    first: Option<First>,
    /// From when on one leaf may touch it.
    after: Option<f64>,
    /// The cylinder that is looked at was found on an earlier piece of its path.
    met: bool,
}

impl SwingWalk {
    /// Works a block.
    pub(super) fn work(&self, family: &Family, block: &Block, bin: &mut Bin) {
        let lane = &self.lanes[family.pass];
        let mut draws = block.draws().peekable();
        let mut drawn = Vec::with_capacity(TOGETHER);
        let mut cases: Vec<Case> = Vec::with_capacity(TOGETHER);
        while draws.peek().is_some() {
            drawn.clear();
            cases.clear();
            for (seed, draw) in draws.by_ref().take(TOGETHER) {
                cases.push(lane.drawn(family, &draw, self.lean));
                drawn.push((seed, draw.repeat));
            }
            let walkers: Vec<Walker> = cases.iter().map(|case| lane.walker(case)).collect();
            let all = lane.side_by_side(family.body, &walkers);
            for ((one, walker), (seed, repeat)) in all.iter().zip(&walkers).zip(&drawn) {
                let found = lane.met(walker, one.near, one.first);
                let severity = found.touch.map(|(_, harm)| harm.severity);
                bin.count(*seed, *repeat, found.class, severity);
            }
        }
    }
}

impl SwingLane {
    /// The first touches of leaves that nothing stops, each of one body on its path.
    fn side_by_side(&self, body: usize, walkers: &[Walker]) -> Vec<One> {
        let one = |walker| One {
            near: self.near(walker),
            first: None,
            after: None,
            met: false,
        };
        let mut all: Vec<One> = walkers.iter().map(one).collect();
        let mut sought = Vec::with_capacity(walkers.len());
        for (at, wing) in self.wings.iter().enumerate() {
            let parts = &wing.touchable[body];
            for one in &mut all {
                one.after = one.near[at].map(|_| -EVER);
            }
            if parts.len() > 1 {
                come_near((&mut all, walkers), wing, &mut sought);
            }
            for &part in parts {
                touch((&mut all, walkers), (at, wing), part, &mut sought);
            }
        }
        all
    }
}

/// Finds from when on a leaf may touch each, by a circle around all of it.
fn come_near((all, walkers): (&mut [One], &[Walker]), wing: &Wing, sought: &mut Vec<Sought>) {
    let stretches = wing.unhindered.stretches();
    for one in &mut *all {
        one.met = one.after.is_none();
        one.after = None;
    }
    for which in 0..2 {
        sought.clear();
        for (whose, _) in all.iter().enumerate().filter(|(_, one)| !one.met) {
            let piece = pieces(&walkers[whose], wing, None)[which].map(|piece| Piece {
                radius: walkers[whose].person.reach,
                ..piece
            });
            let piece = piece.and_then(|piece| wing.swung.reaches(&piece, -EVER));
            sought.extend(piece.map(|piece| Sought { whose, piece }));
        }
        wing.swung.seize(stretches, sought, NEAR, |found| {
            let one = &mut all[found.sought.whose];
            (one.met, one.after) = (true, Some(found.time));
        });
    }
}

/// Finds the first touch of one cylinder of each by a leaf, where it comes before what is known.
fn touch(
    (all, walkers): (&mut [One], &[Walker]),
    (at, wing): (usize, &Wing),
    part: usize,
    sought: &mut Vec<Sought>,
) {
    let stretches = wing.unhindered.stretches();
    for one in &mut *all {
        one.met = one.after.is_none();
    }
    for which in 0..2 {
        sought.clear();
        for (whose, one) in all.iter().enumerate().filter(|(_, one)| !one.met) {
            let (Some(piece), Some(after)) =
                (pieces(&walkers[whose], wing, Some(part))[which], one.after)
            else {
                continue;
            };
            let known = one.first.map_or(EVER, |known| known.time - wing.delay);
            let piece = Piece {
                until: piece.until.min(known),
                ..piece
            };
            if piece.from.max(after) < piece.until {
                let piece = wing.swung.reaches(&piece, after);
                sought.extend(piece.map(|piece| Sought { whose, piece }));
            }
        }
        wing.swung.seize(stretches, sought, TOUCH, |found| {
            let one = &mut all[found.sought.whose];
            let piece = &found.sought.piece;
            one.met = true;
            one.first = Some(First {
                time: found.time + wing.delay,
                wing: at,
                part,
                hit: wing.swung.hit(&found.stretch, piece, found.time),
            });
        });
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
mod tests {
    use super::super::super::control::Answer;
    use super::super::super::demo::turning::{double, single};
    use super::super::super::sweep::each;
    use super::*;

    #[test]
    fn many_side_by_side_end_as_each_by_itself() {
        let mut stops = double();
        stops.controller.answer = Answer::Stop;
        for (world, rows) in [(single(0.08), 8), (double(), 1), (stops, 1)] {
            let walk = world.lower().unwrap();
            let families = walk.families();
            for (at, family) in families.iter().enumerate() {
                let (mut many, mut one) = (Bin::EMPTY, Bin::EMPTY);
                for row in 0..rows {
                    let block = (row * families.len() + at) as u64;
                    let block = Block::new(block, 1024 - row as u64, families.len());
                    walk.work(family, &block, &mut many);
                    each(&block, &mut one, |draw| walk.ends(family, draw));
                }
                assert_eq!(many, one, "{family:?}");
            }
        }
    }
}
