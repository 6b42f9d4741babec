//! The ways of a site as it describes them: where each runs, how long it is, what it costs, and which ground bars it.

use super::{Edge, Net};
use crate::asking::{Asking, End, Wants, pick};
use crate::check::plane::{Piece, Point, between, is_inside};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Ratio};
use site::{Digging, Id, KeepOff, MadeBy, Price, Site, Way, WayPoint};

/// A way that may be taken.
pub(crate) struct Allowed<'s> {
    /// The way.
    pub(crate) way: &'s Way,
    /// Places of its ends among the points.
    pub(crate) ends: [usize; 2],
    /// Its length, corners and rise counted.
    pub(crate) length: Length,
    /// What it costs, in hundredths.
    pub(crate) cost: u64,
    /// Ground that bars it.
    pub(crate) barred: Option<&'s KeepOff>,
}

/// All points and ways of a site.
pub(crate) struct Ground<'s> {
    pub(crate) points: &'s [WayPoint],
    pub(crate) ways: Vec<Allowed<'s>>,
    /// A price in the currency of the site.
    pub(crate) currency: Option<Price>,
}

/// How points, ways and prices are written.
const WAYS: &str = "[[way_point]]\nid = \"wp-box\"\nat = [\"25 ft\", \"6 ft\", \"0 ft\"]\nserves = [\"box\"]\n[[way]]\nid = \"way-1\"\nfrom = \"wp-box\"\nto = \"wp-h1\"\nby = \"trench\"\nsurface = \"lawn\"\nconduits = [\"c-01\"]";
const DIGGING: &str = "[[digging]]\nby = \"trench\"\nsurface = \"lawn\"\nprice = \"9.50 USD\"\nprice_length = \"1 ft\"";

/// Hundredths that no way costs: a hundred million.
const DEAREST: u64 = 10_000_000_000;

impl<'s> Ground<'s> {
    /// Reads all ways; notes every fact that is missing before it gives up.
    pub(crate) fn read(asking: &mut Asking<'s>, site: &'s Site) -> Result<Self, Halt> {
        if site.way.is_empty() || site.way_point.is_empty() {
            return asking.lack(&site.origin, "way", Wants::Table(WAYS));
        }
        let mut whole = Ok(());
        let mut ways = Vec::new();
        let mut currency = None;
        for way in &site.way {
            match allowed(asking, site, way, &mut currency) {
                Ok(way) => ways.push(way),
                Err(halt) => whole = Err(halt),
            }
        }
        whole.map(|()| Self {
            points: &site.way_point,
            ways,
            currency,
        })
    }

    /// The ways that no ground bars, as a net; with the place of each among all ways.
    pub(crate) fn net(&self) -> (Net, Vec<usize>) {
        let open = (0..self.ways.len()).filter(|at| self.ways[*at].barred.is_none());
        let places: Vec<usize> = open.collect();
        let edge = |at: &usize| Edge {
            ends: self.ways[*at].ends,
            cost: self.ways[*at].cost,
        };
        (
            Net::new(places.iter().map(edge).collect(), self.wanted()),
            places,
        )
    }

    fn wanted(&self) -> Vec<bool> {
        let serves = |point: &WayPoint| !point.serves.is_empty();
        self.points.iter().map(serves).collect()
    }

    /// How many points must be reached.
    pub(crate) fn goals(&self) -> usize {
        self.wanted().into_iter().filter(|wanted| *wanted).count()
    }

    /// What a cost is in the money of the site.
    pub(crate) fn money(&self, hundredths: u64) -> String {
        self.currency.map_or_else(
            || format!("{}.{:02}", hundredths / 100, hundredths % 100),
            |price| price.of_hundredths(hundredths).to_string(),
        )
    }
}

fn allowed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    way: &'s Way,
    currency: &mut Option<Price>,
) -> Result<Allowed<'s>, Halt> {
    let corners = course(asking, site, way);
    let by = pick!(asking, way.by);
    let barred = barred(asking, site, way);
    let (corners, by, barred) = (corners?, by?, barred?);
    let length = Length::from_base(length(&corners));
    let cost = cost(asking, site, (way, by, length), currency)?;
    let place = |id: &Id| site.way_point.iter().position(|point| point.id == *id);
    let (Some(from), Some(to)) = (place(&way.from), place(&way.to)) else {
        return Err(Halt);
    };
    if from == to {
        return asking.refuse("a way leads from a point to the same point; it goes nowhere");
    }
    Ok(Allowed {
        way,
        ends: [from, to],
        length,
        cost,
        barred,
    })
}

/// The corners of a way from end to end, as written.
pub(crate) fn course<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    way: &'s Way,
) -> Result<Vec<[f64; 3]>, Halt> {
    let end = |id: &Id| site.way_point.iter().find(|point| point.id == *id);
    let (Some(from), Some(to)) = (end(&way.from), end(&way.to)) else {
        return Err(Halt);
    };
    let first = asking.position_as_written((&from.origin, "at"), from.at.as_ref());
    let last = asking.position_as_written((&to.origin, "at"), to.at.as_ref());
    let mut corners = vec![first?];
    for corner in &way.via {
        corners.push([corner.x.nominal(), corner.y.nominal(), corner.z.nominal()]);
    }
    corners.push(last?);
    Ok(corners.iter().map(|at| at.map(Length::base)).collect())
}

fn length(corners: &[[f64; 3]]) -> f64 {
    let pieces = corners.iter().zip(corners.iter().skip(1));
    let long = |(from, to): (&[f64; 3], &[f64; 3])| {
        (to[0] - from[0])
            .hypot(to[1] - from[1])
            .hypot(to[2] - from[2])
    };
    pieces.map(long).sum()
}

/// Pieces of a course, seen from above.
pub(crate) fn pieces(corners: &[[f64; 3]]) -> Vec<Piece> {
    let flat = |at: &[f64; 3]| (at[0], at[1]);
    let pairs = corners.iter().zip(corners.iter().skip(1));
    pairs.map(|(from, to)| [flat(from), flat(to)]).collect()
}

/// What the whole length of a way costs.
fn cost<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (way, by, length): (&'s Way, MadeBy, Length),
    currency: &mut Option<Price>,
) -> Result<u64, Halt> {
    let suits =
        |row: &&Digging| row.by == by && (row.surface.is_none() || row.surface == way.surface);
    let Some(row) = site.digging.iter().find(suits) else {
        if by == MadeBy::Existing {
            return Ok(0);
        }
        return asking.lack(&way.origin, "digging", Wants::Table(DIGGING));
    };
    let price = asking.need(&row.origin, "price", row.price.as_ref(), "\"9.50 USD\"");
    let sold = asking.read_at(
        (&row.origin, "price_length"),
        row.price_length.as_ref(),
        End::Nominal,
    );
    let (price, sold) = (*price?, sold?);
    let known = *currency.get_or_insert(price);
    if known.currency() != price.currency() {
        return asking.refuse("ways are priced in two currencies, which do not add up");
    }
    let share = Ratio::from_base(length.base() / sold.base());
    match price.share(share).map(Price::hundredths) {
        Some(cost) if cost < DEAREST => Ok(cost),
        _ => asking.refuse("a way costs more than any way does; look at its price and its length"),
    }
}

/// The first ground that a way crosses and that does not let it.
fn barred<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    way: &'s Way,
) -> Result<Option<&'s KeepOff>, Halt> {
    let corners = course(asking, site, way)?;
    let pieces = pieces(&corners);
    for ground in &site.keep_off {
        if ground.outline.len() < 3 {
            return asking.lack(
                &ground.origin,
                "outline",
                Wants::Written("[[\"30 ft\", \"-20 ft\", \"0 ft\"], [\"36 ft\", \"-20 ft\", \"0 ft\"], [\"36 ft\", \"-14 ft\", \"0 ft\"]]"),
            );
        }
        let let_through = way.by.is_some_and(|by| ground.lets.contains(&by));
        if !let_through && crosses(&pieces, &outline(&ground.outline)) {
            return Ok(Some(ground));
        }
    }
    Ok(None)
}

/// Corners of an outline, seen from above.
pub(crate) fn outline(corners: &[site::Position]) -> Vec<Point> {
    let flat = |at: &site::Position| (at.x.nominal().base(), at.y.nominal().base());
    corners.iter().map(flat).collect()
}

/// A course runs through an outline, or touches it.
fn crosses(pieces: &[Piece], outline: &[Point]) -> bool {
    let sides = outline.iter().zip(outline.iter().cycle().skip(1));
    let sides: Vec<Piece> = sides.map(|(from, to)| [*from, *to]).collect();
    pieces.iter().any(|piece| {
        is_inside(piece[0], outline) || sides.iter().any(|side| between(piece, side) <= 1e-6)
    })
}
