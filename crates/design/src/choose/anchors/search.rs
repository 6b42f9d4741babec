//! Every pattern and depth of one anchor under one plate, each by every way to fail.

use super::cost::cost;
use super::depth::embedments;
use super::loaded::{Loaded, Unknown, too_near};
use super::pattern::{Arrangement, Room, patterns};
use crate::asking::Asking;
use crate::check::structure::at_foot::post_named;
use crate::check::structure::on_post::outer;
use crate::choose::ruled_out::Tally;
use quantity::{Length, Measured, Quantity as _, Torque, UnitSystem};
use site::{Anchor, AnchorKind, Foundation, Price, Site};
use std::borrow::Cow;

/// Where a set of anchors stands in the site.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub(super) foundation: usize,
    pub(super) anchor: usize,
}

impl Place {
    pub(super) fn of(self, site: &Site) -> Option<(&Foundation, &Anchor)> {
        let foundation = site.foundation.get(self.foundation)?;
        Some((foundation, foundation.anchor.get(self.anchor)?))
    }

    fn change(self, site: &mut Site, change: impl FnOnce(&mut Anchor)) {
        let foundation = site.foundation.get_mut(self.foundation);
        if let Some(anchor) = foundation.and_then(|one| one.anchor.get_mut(self.anchor)) {
            change(anchor);
        }
    }
}

/// One way to hold the plate.
#[derive(Debug, Clone, Copy)]
pub(super) struct Way {
    /// Number of its part.
    pub(super) part: usize,
    /// How the anchors stand; nothing where the pattern stays as the site has it.
    pub(super) pattern: Option<Arrangement>,
    /// How many there are.
    pub(super) count: u32,
    /// Effective embedment.
    pub(super) embedment: Length,
    /// What it costs.
    pub(super) price: Option<Price>,
    /// Greatest share of a strength that is used.
    pub(super) share: f64,
    /// Of which strength.
    pub(super) mode: &'static str,
}

impl Way {
    /// The cheapest first, then the fewest holes, the least drilling, the most in hand.
    pub(super) fn in_order(a: &Self, b: &Self) -> std::cmp::Ordering {
        let price = |way: &Self| way.price.map_or(u64::MAX, Price::hundredths);
        price(a)
            .cmp(&price(b))
            .then(a.count.cmp(&b.count))
            .then(a.embedment.base().total_cmp(&b.embedment.base()))
            .then(a.share.total_cmp(&b.share))
    }

    /// Puts it into the site.
    pub(super) fn put(&self, site: &mut Site, place: Place) {
        place.change(site, |anchor| {
            sink(anchor, self.embedment);
            if let Some(pattern) = &self.pattern {
                arrange(anchor, pattern);
                drill(anchor);
            }
        });
    }
}

/// What the search found.
#[derive(Debug, Default)]
pub(super) struct Search {
    /// Ways that were tried.
    pub(super) tried: usize,
    /// Those that hold.
    pub(super) holding: Vec<Way>,
    /// What ruled out how many of the others.
    pub(super) ruled_out: Tally,
    /// Lines that the site or the entry lacks.
    pub(super) write: Vec<String>,
    /// The pattern stays as the site has it.
    pub(super) pattern_stays: bool,
}

impl Search {
    /// Tries every way of one anchor, whose data sheet is in the site already.
    pub(super) fn part(
        &mut self,
        site: &mut Site,
        place: Place,
        (part, depth_from_part): (usize, bool),
    ) {
        let Some((_, anchor)) = place.of(site) else {
            return;
        };
        let depths = embedments(anchor, depth_from_part, site.site.unit_system());
        if let Some(first) = depths.first() {
            place.change(site, |anchor| sink(anchor, *first));
        }
        let arrangements = arrangements(site, place);
        self.pattern_stays = arrangements == [None];
        for pattern in arrangements {
            if let Some(pattern) = &pattern {
                place.change(site, |anchor| arrange(anchor, pattern));
            }
            let tried = self.depths(site, place, (part, pattern, &depths));
            match tried {
                Ok(()) => {}
                Err(Unknown::Refused(why)) => self.rule_out(why, depths.len().max(1)),
                Err(Unknown::Missing(lines)) => return self.lacks(lines),
            }
        }
    }

    /// Tries every depth of one pattern.
    fn depths(
        &mut self,
        site: &mut Site,
        place: Place,
        (part, pattern, depths): (usize, Option<Arrangement>, &[Length]),
    ) -> Result<(), Unknown> {
        let Some((foundation, anchor)) = place.of(site) else {
            return Ok(());
        };
        let loaded = Loaded::of(site, foundation, anchor)?;
        if foundation.existing == Some(true) && anchor.kind.is_some_and(AnchorKind::is_cast_in) {
            return Err(Unknown::Refused(CAST.into()));
        }
        for embedment in depths {
            place.change(site, |anchor| sink(anchor, *embedment));
            let Some((foundation, anchor)) = place.of(site) else {
                continue;
            };
            let used = match too_near(site, foundation, anchor)? {
                Some(distance) => Err(distance),
                None => loaded.used(site, anchor),
            };
            match used {
                Ok((share, mode)) => self.hold(Way {
                    part,
                    pattern,
                    count: anchor.count.unwrap_or_default(),
                    embedment: *embedment,
                    price: cost(anchor),
                    share,
                    mode,
                }),
                Err(why) => self.rule_out(why.into(), 1),
            }
        }
        Ok(())
    }

    fn hold(&mut self, way: Way) {
        self.tried += 1;
        self.holding.push(way);
    }

    fn rule_out(&mut self, why: Cow<'static, str>, ways: usize) {
        self.tried += ways;
        self.ruled_out.add(why, ways);
    }

    fn lacks(&mut self, lines: Vec<String>) {
        for line in lines {
            if !self.write.contains(&line) {
                self.write.push(line);
            }
        }
    }
}

/// What rules out anchors that are cast in where the concrete is there.
const CAST: &str = "cast in before the concrete, which is there already";

/// The patterns to try; only the one that is there where plate, outline or loads leave no choice.
fn arrangements(site: &Site, place: Place) -> Vec<Option<Arrangement>> {
    let room = place
        .of(site)
        .filter(|(foundation, anchor)| is_free(site, foundation, anchor))
        .and_then(|(_, anchor)| room(site, anchor));
    match room {
        Some(room) => patterns(&room).into_iter().map(Some).collect(),
        None => vec![None],
    }
}

/// No plate is in hand yet, the outline of the concrete is known and agrees with the edge that was taped, and the loads
/// are those of the plate, not of one anchor.
fn is_free(site: &Site, foundation: &Foundation, anchor: &Anchor) -> bool {
    let outline = foundation.diameter.is_some()
        || (foundation.length.is_some() && foundation.width.is_some());
    let in_hand = anchor.plate_spacing.is_some() || anchor.plate_row_spacing.is_some();
    let by_plate = anchor.bolt_circle.is_none() && anchor.pull.is_none();
    outline && !in_hand && by_plate && edges_agree(site, foundation, anchor)
}

fn edges_agree(site: &Site, foundation: &Foundation, anchor: &Anchor) -> bool {
    let Some(taped) = anchor.edge_distance else {
        return true;
    };
    let untaped = Anchor {
        edge_distance: None,
        ..anchor.clone()
    };
    let loaded = Loaded::of(site, foundation, &untaped);
    loaded.is_ok_and(|loaded| loaded.nearest_edge().base() <= taped.nominal().base() + 1e-3)
}

fn room(site: &Site, anchor: &Anchor) -> Option<Room> {
    let mut asking = Asking::new(site.site.unit_system());
    let named = anchor.carries.as_ref();
    let post = named.and_then(|name| post_named(site, name));
    let outer = post.and_then(|(_, post)| outer(&mut asking, post).ok());
    let moved = |moment: Option<Measured<Torque>>| {
        moment.is_none_or(|moment| moment.nominal().base() > 0.0)
    };
    Some(Room {
        least: [moved(anchor.moment_along), moved(anchor.moment_across)]
            .map(|moved| if moved { 2 } else { 1 }),
        plate: [
            anchor.plate_length?.nominal(),
            anchor.plate_width?.nominal(),
        ],
        diameter: anchor.diameter?.nominal(),
        post: outer.map(|outer| [outer.along, outer.across]),
        step: Length::from_base(match site.site.unit_system() {
            UnitSystem::Si => 0.025,
            UnitSystem::UsCustomary => 0.0254,
        }),
    })
}

/// Room in the holes of a plate that is drilled for its anchors, in meters: 1/16 in.
const PLAY: f64 = 0.001_587_5;

/// A plate drilled for the anchors as they stand.
fn drill(anchor: &mut Anchor) {
    anchor.plate_spacing = anchor.spacing;
    anchor.plate_row_spacing = anchor.row_spacing;
    anchor.plate_hole = anchor
        .diameter
        .map(|rod| Measured::exact(rod.nominal() + Length::from_base(PLAY)));
}

/// Lets the anchors go so deep; what is glued in fills a hole as deep as itself.
fn sink(anchor: &mut Anchor, embedment: Length) {
    anchor.embedment = Some(Measured::exact(embedment));
    if anchor.kind == Some(AnchorKind::Adhesive) {
        anchor.hole_depth = anchor.embedment;
    }
}

/// Lets the anchors stand so. The outline of the concrete tells the edges from then on.
fn arrange(anchor: &mut Anchor, pattern: &Arrangement) {
    let spacing = |count: u32, spacing: Length| (count > 1).then(|| Measured::exact(spacing));
    anchor.count = Some(pattern.count());
    anchor.rows = Some(pattern.rows);
    anchor.spacing = spacing(pattern.in_row, pattern.spacing);
    anchor.row_spacing = spacing(pattern.rows, pattern.row_spacing);
    anchor.edge_distance = None;
}
