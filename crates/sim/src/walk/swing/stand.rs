//! Whether one who stands where they are can be touched beyond a limit, in a box of places and directions.
//!
//! A box is its middle and how far any place in it is from that. A circle with its middle in the box lies within a larger
//! one about the middle and holds a smaller one: the leaf comes to it not before the larger and not after the smaller. The
//! same holds for the other cylinders of the body, for what a device sees of them, and for what stands around.

use super::super::path::{Case, Path};
use super::super::profile::EVER;
use super::super::watch::Walker;
use super::bound::{Meets, SLACK, kept, told};
use super::contact::Piece;
use super::lane::SwingLane;
use super::room::Disc;
use super::wing::Wing;
use crate::walk::evaluate::IN_POST;

/// A body that one leaf may touch with one of its cylinders.
pub(super) struct Standing<'a> {
    pub lane: &'a SwingLane,
    pub wing: usize,
    pub body: usize,
    pub way: usize,
    pub part: usize,
}

/// A cylinder as far as it is known: where it may be, how far it may be from there, its radius.
#[derive(Clone, Copy)]
struct About {
    spot: (f64, f64),
    off: f64,
    radius: f64,
}

impl Standing<'_> {
    /// Places of the touched cylinder along x and y that the leaf can come to, and all angles of the body.
    pub(super) fn whole(&self, lean: f64) -> [(f64, f64); 3] {
        let wing = &self.lane.wings[self.wing];
        let radius = self.lane.people[self.body].parts[self.part].radius;
        let (x, y) = wing.frame.shows((0.0, 0.0));
        let reach = wing.swung.reach + radius + SLACK;
        [
            (x - reach, x + reach),
            (y - reach, y + reach),
            (-lean, lean),
        ]
    }

    /// The case in the middle of a box.
    pub(super) fn case(&self, middle: [f64; 3]) -> Case {
        let [x, y, angle] = middle;
        let slant = angle.tan();
        let at = |x0: f64, depth: f64| Case {
            body: self.body,
            way: self.way,
            path: Path::Stand(depth),
            x0: x0 - depth * slant,
            slant,
            speed: 1.0,
            arrives: 0.0,
        };
        let plain = at(0.0, 0.0);
        let walker = Walker::new(&plain, &self.lane.people[self.body]);
        let (off, aside) = walker.place(self.part, 0.0);
        at(x - off, walker.side() * (y - aside))
    }

    /// Whether a touch of this cylinder by this leaf may be beyond a limit in a box.
    pub(super) fn bad(&self, of: &[(f64, f64); 3]) -> bool {
        let middle = of.map(|(low, high)| 0.5 * (low + high));
        let half = of.map(|(low, high)| 0.5 * (high - low));
        let case = self.case(middle);
        let walker = Walker::new(&case, &self.lane.people[self.body]);
        let parts = self.about(&walker, half);
        let wing = &self.lane.wings[self.wing];
        let Some(place) = meets(wing, &parts[self.part]) else {
            return false;
        };
        if self.is_seen(&parts) {
            return false;
        }
        self.worst(wing, &parts, place)
    }

    fn about(&self, walker: &Walker, half: [f64; 3]) -> Vec<About> {
        let shift = half[0].hypot(half[1]) + SLACK;
        let touched = walker.place(self.part, 0.0);
        let parts = walker.person.parts.iter().enumerate();
        parts
            .map(|(at, part)| {
                let spot = walker.place(at, 0.0);
                let arm = (spot.0 - touched.0).hypot(spot.1 - touched.1);
                About {
                    spot,
                    off: shift + arm * half[2],
                    radius: part.radius,
                }
            })
            .collect()
    }

    /// Whether a device surely sees the body, so that no leaf starts.
    fn is_seen(&self, parts: &[About]) -> bool {
        let person = &self.lane.people[self.body];
        let fields = self.lane.fields.iter().zip(&person.seen);
        fields.into_iter().any(|(field, seen)| {
            seen.iter().any(|&(at, radius)| {
                let of = &parts[at];
                let depth = if self.way == 0 { of.spot.1 } else { -of.spot.1 };
                field.apart(self.way, (of.spot.0, depth)) + of.off < radius - SLACK
            })
        })
    }

    fn worst(&self, wing: &Wing, parts: &[About], place: (f64, f64)) -> bool {
        let touched = &parts[self.part];
        let middle = 0.5 * (place.0 + place.1);
        let (x, y) = wing.frame.sees(touched.spot);
        let (sin, cos) = (wing.swung.start + middle * wing.swung.turn).sin_cos();
        let (u, v) = (x * cos + y * sin, y * cos - x * sin);
        let turned = 0.5 * (place.1 - place.0) * wing.swung.turn;
        let far = x.hypot(y);
        let off = touched.off + far * turned + SLACK;
        let slab = wing.swung.slab;
        let along = (
            (u - off).clamp(slab.from, slab.to),
            (u + off).clamp(slab.from, slab.to),
        );
        let across = (
            (v - off).clamp(slab.low, slab.high),
            (v + off).clamp(slab.low, slab.high),
        );
        let least = |(low, high): (f64, f64)| {
            if low <= 0.0 && high >= 0.0 {
                0.0
            } else {
                low.abs().min(high.abs())
            }
        };
        let most = |(low, high): (f64, f64)| low.abs().max(high.abs());
        let distance = (
            least(along).hypot(least(across)) - SLACK,
            most(along).hypot(most(across)) + SLACK,
        );
        let share = (wing.skin.share(distance.0), wing.skin.share(distance.1));
        let ahead = v - off >= slab.low;
        let within = wing
            .skin
            .within((self.body, self.part), along, share.0, ahead);
        let mut meets = Meets {
            place,
            share,
            gap: 0.0,
            room: 0.0,
        };
        let latest = told(wing.motion(), &meets, &within);
        let Some((own, all)) = self.room(wing, parts, distance.0, latest) else {
            return false;
        };
        (meets.gap, meets.room) = (own.max(0.0) + 2.0 * touched.radius, all);
        !kept(wing.motion(), &self.lane.bounds, &within, &meets)
    }

    /// Least room of the touched cylinder and of the whole body; nothing where the body surely is in something that stays.
    fn room(
        &self,
        wing: &Wing,
        parts: &[About],
        lever: f64,
        latest: Option<f64>,
    ) -> Option<(f64, f64)> {
        let (mut own, mut all) = (f64::INFINITY, f64::INFINITY);
        let lever = lever.max(0.0);
        for (at, part) in parts.iter().enumerate() {
            let spot = wing.frame.sees(part.spot);
            let disc = |radius: f64| Disc { at: spot, radius };
            let mut angle = f64::INFINITY;
            for side in &wing.sides {
                if side.apart(&disc(part.radius)) + part.off < -IN_POST - SLACK {
                    return None;
                }
                let wide = disc(part.radius + part.off);
                angle = angle.min((side.angle_to(&wide) - SLACK).max(0.0));
            }
            let mut left = if angle.is_finite() {
                angle * lever
            } else {
                angle
            };
            for (other, leaf) in self.lane.wings.iter().enumerate() {
                if other != self.wing && leaf.touchable[self.body].contains(&at) {
                    left = left.min(self.beside(leaf, part, spot, lever, latest));
                }
            }
            all = all.min(left);
            if at == self.part {
                own = left;
            }
        }
        Some((own, all))
    }

    /// Least room before the other leaf, wherever it may stand.
    fn beside(
        &self,
        leaf: &Wing,
        part: &About,
        spot: (f64, f64),
        lever: f64,
        latest: Option<f64>,
    ) -> f64 {
        // It may be told to stop at any time up to the latest.
        let stands = leaf.stands(latest.map(|told| told + self.lane.wings[self.wing].delay));
        let steps = 16;
        let piece = stands / f64::from(steps);
        let arc = 0.5 * piece * leaf.swung.turn * leaf.swung.reach;
        let nearest = (0..steps)
            .map(|step| leaf.apart(piece * (f64::from(step) + 0.5), part.spot))
            .fold(f64::INFINITY, f64::min);
        let apart = nearest - arc - part.off - part.radius - SLACK;
        if apart < 0.0 {
            apart
        } else {
            lever * apart / (spot.0.hypot(spot.1) + part.off)
        }
    }
}

/// First and last place at which the leaf may come to a cylinder; nothing where it never does, or only before it starts.
fn meets(wing: &Wing, of: &About) -> Option<(f64, f64)> {
    let stretches = wing.unhindered.stretches();
    let first = |radius: f64| {
        let piece = Piece {
            from: -1.0,
            until: EVER,
            when: 0.0,
            at: wing.frame.sees(of.spot),
            speed: (0.0, 0.0),
            radius,
        };
        wing.swung.first(stretches, &piece, -EVER)
    };
    let larger = first(of.radius + of.off + SLACK)?;
    let smaller = (of.radius > of.off + SLACK)
        .then(|| first(of.radius - of.off - SLACK))
        .flatten();
    if smaller.is_some_and(|hit| hit.time <= 0.0) {
        return None;
    }
    let place = |time: f64| wing.profile.place_at(time);
    let last = smaller.map_or(wing.profile.travel, |hit| place(hit.time) + SLACK);
    Some(((place(larger.time) - SLACK).max(0.0), last))
}
