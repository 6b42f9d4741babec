//! What stands in or beside the straight line between two antennas: ground, leaf in each position, posts, walls, trucks.

use crate::asking::{Asking, read};
use crate::check::control::envelope::{Envelope, Ground, envelopes};
use crate::check::plane::{Piece, Point};
use crate::outcome::Halt;
use formula::Formula as _;
use formula::signal::FresnelRadius;
use quantity::{Frequency, Length, Quantity as _};
use site::{Gate, GateKind, RadioLink, Site};

/// Places at which a thing is looked at along its length.
const LOOKS: u32 = 64;
/// Nearer to an antenna than this nothing is looked at, in meters: its own bracket and post.
const OWN: f64 = 0.5;
/// How deep a thing is taken to reach below the finished surface, in meters.
const ROOTED: f64 = 10.0;
/// Share of the first Fresnel zone that is kept free.
pub(crate) const FREE: f64 = 0.6;

/// Something upright that may stand in the way.
pub(crate) struct Stands {
    name: String,
    piece: Piece,
    bottom: f64,
    top: f64,
    /// It reaches across the way however far beside it was taped.
    across: bool,
}

/// The place at which least room is left.
pub(crate) struct Tightest {
    pub(crate) name: String,
    /// Room from the straight line, below zero where the line is cut.
    pub(crate) room: f64,
    /// Room that is wanted there.
    pub(super) wanted: f64,
    /// Distance from the antenna at the gate.
    pub(crate) along: f64,
    /// By how much that antenna has to go up to clear it.
    raise: f64,
    /// Distance of the place beside the line, seen from above.
    pub(crate) beside: f64,
    /// Height of what stands there.
    pub(crate) top: f64,
}

impl Stands {
    /// It is the ground itself, or what stands all along on it.
    pub(crate) fn is_ground(&self) -> bool {
        self.across
    }
}

/// The straight line from antenna to antenna.
pub(crate) struct Line {
    pub(crate) from: [f64; 3],
    pub(crate) to: [f64; 3],
    pub(crate) frequency: Frequency,
}

impl Line {
    /// Length of the way, seen from above.
    pub(crate) fn level(&self) -> f64 {
        (self.to[0] - self.from[0]).hypot(self.to[1] - self.from[1])
    }

    /// Share of the way at the foot of a point, and its distance beside the line.
    fn foot(&self, point: Point) -> (f64, f64) {
        let (along_x, along_y) = (self.to[0] - self.from[0], self.to[1] - self.from[1]);
        let (off_x, off_y) = (point.0 - self.from[0], point.1 - self.from[1]);
        let length = self.level();
        let share = (off_x * along_x + off_y * along_y) / (length * length);
        (share, (along_x * off_y - along_y * off_x).abs() / length)
    }

    /// Share of a piece at which the line crosses it, seen from above.
    fn crossing(&self, piece: &Piece) -> Option<f64> {
        let side = |point: Point| {
            (self.to[0] - self.from[0]) * (point.1 - self.from[1])
                - (self.to[1] - self.from[1]) * (point.0 - self.from[0])
        };
        let (one, other) = (side(piece[0]), side(piece[1]));
        (one * other < 0.0).then(|| one / (one - other))
    }

    /// Where a thing leaves least room; nothing where it stands behind an antenna.
    pub(crate) fn tightest(&self, thing: &Stands) -> Option<Tightest> {
        let looks = (0..=LOOKS).map(|look| f64::from(look) / f64::from(LOOKS));
        let shares = looks.chain(self.crossing(&thing.piece));
        let at = |share: f64| {
            let [from, to] = thing.piece;
            (
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            )
        };
        shares
            .filter_map(|share| self.at_point(thing, at(share)))
            .min_by(|one, other| (one.room - one.wanted).total_cmp(&(other.room - other.wanted)))
    }

    fn at_point(&self, thing: &Stands, point: Point) -> Option<Tightest> {
        let (share, beside) = self.foot(point);
        let length = self.level();
        let along = share * length;
        if !(OWN..=length - OWN).contains(&along) {
            return None;
        }
        let beside = if thing.across { 0.0 } else { beside };
        let height = self.from[2] + share * (self.to[2] - self.from[2]);
        let over = (height - thing.top).max(thing.bottom - height);
        let room = if over > 0.0 {
            beside.hypot(over)
        } else if beside > 1e-6 {
            beside
        } else {
            over
        };
        let (_, wanted) = self.at(along);
        Some(Tightest {
            name: thing.name.clone(),
            room,
            wanted,
            along,
            raise: (wanted - (height - thing.top)).max(0.0) / (1.0 - share),
            beside,
            top: thing.top,
        })
    }

    /// Height of the line at a distance from the antenna at the gate, and the room that is kept free around it there.
    pub(crate) fn at(&self, along: f64) -> (f64, f64) {
        let length = self.level();
        let height = self.from[2] + along / length * (self.to[2] - self.from[2]);
        let zone = FresnelRadius {
            frequency: self.frequency,
            near: Length::from_base(along),
            far: Length::from_base(length - along),
        };
        let radius = zone.evaluate().map_or(0.0, |zone| zone.radius.base());
        (height, FREE * radius)
    }

    /// By how much the antenna at the gate has to go up to clear everything.
    pub(super) fn raise(&self, things: &[Stands]) -> f64 {
        let places = things.iter().filter_map(|thing| self.tightest(thing));
        places
            .filter(|place| place.room < place.wanted)
            .map(|place| place.raise)
            .fold(0.0, f64::max)
    }

    /// The tightest place of all.
    pub(super) fn worst(&self, things: &[Stands]) -> Option<Tightest> {
        things
            .iter()
            .filter_map(|thing| self.tightest(thing))
            .min_by(|one, other| (one.room - one.wanted).total_cmp(&(other.room - other.wanted)))
    }
}

/// Everything of a site that may stand in the way of a link.
pub(crate) fn things<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    link: &'s RadioLink,
) -> Result<Vec<Stands>, Halt> {
    let mut all = Vec::new();
    let mut whole = Ok(());
    for found in [ground(asking, link), parked(asking, site, link)] {
        keep(&mut all, &mut whole, found);
    }
    for gate in &site.gate {
        for found in [
            leaves(asking, gate),
            posts(asking, gate),
            fixed(asking, gate),
        ] {
            keep(&mut all, &mut whole, found);
        }
    }
    whole.map(|()| all)
}

fn keep(all: &mut Vec<Stands>, whole: &mut Result<(), Halt>, found: Result<Vec<Stands>, Halt>) {
    match found {
        Ok(found) => all.extend(found),
        Err(halt) => *whole = Err(halt),
    }
}

fn upright(name: String, piece: Piece, bottom: f64, top: f64) -> Stands {
    Stands {
        name,
        piece,
        bottom,
        top,
        across: false,
    }
}

fn ground<'s>(asking: &mut Asking<'s>, link: &'s RadioLink) -> Result<Vec<Stands>, Halt> {
    if link.ground.is_empty() {
        return asking.lack(
            &link.origin,
            "ground",
            crate::asking::Wants::Written("[[\"0 ft\", \"200 ft\", \"4 ft\"]]"),
        );
    }
    let tops = link.ground.iter().map(|point| {
        let at = asking.position_as_written((&link.origin, "ground"), Some(point))?;
        let [x, y, z] = at.map(Length::base);
        Ok(Stands {
            across: true,
            ..upright("the ground".to_owned(), [(x, y); 2], z - ROOTED, z)
        })
    });
    tops.collect()
}

fn parked<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    link: &'s RadioLink,
) -> Result<Vec<Stands>, Halt> {
    let stand = link.parked.iter().map(|parked| {
        let vehicle = site
            .vehicle
            .iter()
            .find(|vehicle| vehicle.id == parked.vehicle);
        let at = asking.position(&parked.origin, "at", parked.at.as_ref());
        let Some(vehicle) = vehicle else {
            return Err(Halt);
        };
        let length = read!(asking, vehicle.length);
        let width = read!(asking, vehicle.width);
        let height = read!(asking, vehicle.height);
        let [x, y, z] = at?.map(Length::base);
        let (half, side) = (length?.base() / 2.0, width?.base() / 2.0);
        let top = z + height?.base();
        let name = format!("{}, parked,", vehicle.id);
        let flank = |x: f64| upright(name.clone(), [(x, y - half), (x, y + half)], z - 1.0, top);
        let end = |y: f64| upright(name.clone(), [(x - side, y), (x + side, y)], z - 1.0, top);
        Ok([
            flank(x - side),
            flank(x + side),
            end(y - half),
            end(y + half),
        ])
    });
    let stand: Result<Vec<_>, Halt> = stand.collect();
    Ok(stand?.into_iter().flatten().collect())
}

fn posts<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Stands>, Halt> {
    let stand = gate.post.iter().map(|post| {
        let at = asking.position(&post.origin, "at", post.at.as_ref());
        let height = read!(asking, post.height);
        let [x, y, z] = at?.map(Length::base);
        let top = z + height?.base();
        Ok(upright(post.id.to_string(), [(x, y); 2], z - ROOTED, top))
    });
    stand.collect()
}

fn fixed<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Stands>, Halt> {
    let solid = gate
        .nearby
        .iter()
        .filter(|thing| thing.see_through != Some(true));
    let stand = solid.map(|thing| {
        let from = asking.position(&thing.origin, "from", thing.from.as_ref());
        let to = asking.position(&thing.origin, "to", thing.to.as_ref());
        let height = read!(asking, thing.height);
        let [x, y, z] = from?.map(Length::base);
        let [x2, y2, z2] = to?.map(Length::base);
        let top = z.max(z2) + height?.base();
        Ok(upright(
            thing.id.to_string(),
            [(x, y), (x2, y2)],
            z - ROOTED,
            top,
        ))
    });
    stand.collect()
}

/// Each leaf closed, half way and open.
fn leaves<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Stands>, Halt> {
    let all = envelopes(asking, gate)?;
    let mut stand = Vec::new();
    for (leaf, envelope) in gate.leaf.iter().zip(&all) {
        let length = read!(asking, leaf.length)?.base();
        for (share, when) in [(0.0, "closed"), (0.5, "half way"), (1.0, "open")] {
            let (piece, bottom, top) = position(gate, envelope, length, share);
            stand.push(upright(format!("{}, {when},", leaf.id), piece, bottom, top));
        }
    }
    Ok(stand)
}

/// Where a leaf stands at a share of its travel: seen from above, and its heights.
fn position(gate: &Gate, envelope: &Envelope, length: f64, share: f64) -> (Piece, f64, f64) {
    let (bottom, top) = (envelope.bottom, envelope.top);
    let strip = match &envelope.ground {
        Ground::Sector(sweep) => return (sweep.at(sweep.travel * share), bottom, top),
        Ground::Strip(strip) => strip,
    };
    let (start, end) = (strip[0].0, strip[1].0);
    let travel = end - start - length;
    match gate.kind {
        GateKind::BarrierArm | GateKind::VerticalPivot => {
            let angle = share * std::f64::consts::FRAC_PI_2;
            let free = end - length * angle.cos();
            let piece = [(free, 0.0), (end, 0.0)];
            (piece, bottom, top + length * angle.sin())
        }
        GateKind::VerticalLift => {
            let up = share * (top - bottom);
            (*strip, bottom + up, top + up)
        }
        _ => {
            let from = start + share * travel;
            ([(from, 0.0), (from + length, 0.0)], bottom, top)
        }
    }
}
