//! Where the words of a dimension stand: over its line, past its end, or off it with a line back.

use super::dimensions::{Drawn, PAST, TICK};
use crate::flat::{Segment, Spot, cross};
use crate::lettering::Block;
use crate::patch::Patch;
use crate::room::{Room, Wish};

/// How far words beside the end of their line stand from it (mm).
const SHIFT: f64 = 2.0;
/// Between the dimension line and the room of its words (mm).
const LIFT: f64 = 0.2;

/// A place for words, and a line that comes with it.
#[derive(Debug, Clone)]
pub(super) struct Chosen {
    /// Center of the words.
    pub(super) center: Spot,
    /// A line from the dimension to the words.
    pub(super) extra: Option<Segment>,
}

impl Drawn {
    /// The best free place for the words of one stretch: early in the list, crossing and crossed by few lines.
    pub(super) fn choose(&self, index: usize, block: &Block, room: &Room) -> Option<Chosen> {
        let mut best: Option<(usize, Chosen)> = None;
        for (rank, chosen) in self.candidates(index, block).into_iter().enumerate() {
            let patch = block.patch(chosen.center);
            if room.is_free(&patch) {
                let cost = rank + crossings(&patch, chosen.extra, room);
                if best.as_ref().is_none_or(|(known, _)| cost < *known) {
                    best = Some((cost, chosen));
                }
            }
        }
        best.map(|(_, chosen)| chosen)
            .or_else(|| self.elsewhere(index, block, room))
    }

    /// A place anywhere near, with a line to the middle of the stretch.
    fn elsewhere(&self, index: usize, block: &Block, room: &Room) -> Option<Chosen> {
        let middle = self.feet.get(index)?.middle(*self.feet.get(index + 1)?);
        let place = room.near(middle, &block.patch(middle), &Wish::close())?;
        Some(Chosen {
            center: place.patch.center,
            extra: place.leader,
        })
    }

    /// Places to try, the best first.
    fn candidates(&self, index: usize, block: &Block) -> Vec<Chosen> {
        let (Some(start), Some(end)) = (self.feet.get(index), self.feet.get(index + 1)) else {
            return Vec::new();
        };
        let up = Spot::unit(self.reading).left();
        let patch = block.patch(*start);
        let (middle, lift) = (start.middle(*end), patch.half_height + LIFT);
        let mut list = Vec::new();
        if end.minus(*start).length() >= patch.half_width * 2.0 + 1.0 {
            list.push(Chosen {
                center: middle.plus(up, lift),
                extra: None,
            });
            list.push(Chosen {
                center: middle.plus(up, -lift),
                extra: None,
            });
        } else {
            list.extend(self.outside(index, patch.half_width, up, lift));
        }
        list.extend(self.stepped_off(index, middle, &patch, up));
        list
    }

    /// Places off the dimension line, straight or to a side, with a line to the middle of the stretch.
    fn stepped_off(&self, index: usize, middle: Spot, patch: &Patch, up: Spot) -> Vec<Chosen> {
        let (far, inward) = (self.far_side(index, up), self.inward(middle));
        let aside = Spot::unit(self.reading);
        let mut list = Vec::new();
        for shifts in [[0.0, inward], [-inward, -inward]] {
            for row in 0..3_u32 {
                for (side, shift) in [far, -far]
                    .into_iter()
                    .flat_map(|side| shifts.map(|shift| (side, shift)))
                {
                    let off = patch.half_height * (1.0 + 2.0 * f64::from(row)) + PAST + 1.0;
                    let center = middle
                        .plus(up, side * off)
                        .plus(aside, shift * (patch.half_width + SHIFT));
                    let foot = center
                        .plus(up, -side * patch.half_height)
                        .plus(aside, -shift * patch.half_width);
                    list.push(Chosen {
                        center,
                        extra: Some((middle, foot)),
                    });
                }
            }
        }
        list
    }

    /// In which direction of reading the middle of the whole dimension lies.
    fn inward(&self, from: Spot) -> f64 {
        let ends = self.feet.first().zip(self.feet.last());
        let middle = ends.map_or(from, |(first, last)| first.middle(*last));
        if middle.minus(from).along(Spot::unit(self.reading)) < 0.0 {
            -1.0
        } else {
            1.0
        }
    }

    /// On which side of the dimension line there are no extension lines: 1 above it, -1 below it.
    fn far_side(&self, index: usize, up: Spot) -> f64 {
        let (point, foot) = (self.points.get(index), self.feet.get(index));
        let below = point
            .zip(foot)
            .is_some_and(|(point, foot)| foot.minus(*point).along(up) < 0.0);
        if below { -1.0 } else { 1.0 }
    }

    /// Places past the free ends of the dimension.
    fn outside(&self, index: usize, half_width: f64, up: Spot, lift: f64) -> Vec<Chosen> {
        let ahead = match (self.feet.get(index), self.feet.get(index + 1)) {
            (Some(from), Some(to)) if to.minus(*from).along(self.along) < 0.0 => -1.0,
            _ => 1.0,
        };
        let mut list = Vec::new();
        let mut past = |foot: Option<&Spot>, way: f64| {
            if let Some(foot) = foot {
                let center = foot
                    .plus(self.along, way * (half_width + TICK + 0.8))
                    .plus(up, lift);
                let end = foot.plus(self.along, way * (half_width * 2.0 + TICK + 0.8));
                list.push(Chosen {
                    center,
                    extra: Some((*foot, end)),
                });
            }
        };
        if index + 1 == self.words.len() {
            past(self.feet.get(index + 1), ahead);
        }
        if index == 0 {
            past(self.feet.first(), -ahead);
        }
        list
    }
}

/// What it costs that drawn lines pass through words, or cross the line that comes with them, in ranks.
fn crossings(patch: &Patch, extra: Option<Segment>, room: &Room) -> usize {
    let lines = || room.lines.iter().chain(&room.leaders);
    let through = lines().filter(|line| patch.crossed_by(**line)).count();
    let across = extra.map_or(0, |extra| {
        lines().filter(|line| cross(extra, **line)).count()
    });
    6 * through + 2 * across
}
