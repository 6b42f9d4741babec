//! The way of vehicles along a lane, seen from above: its middle line, half its width, and the margin beside it.

use crate::asking::{Asking, Wants, read};
use crate::check::plane::{Piece, Point, between, nearest};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Lane, Position, Site};

/// Room beside the way where no vehicle states its own: 2 ft, or 0.6 m in Europe.
const MARGIN: (f64, f64) = (0.6096, 0.6);

static USUAL_MARGIN: Source = Source {
    work: "2 ft or 0.6 m kept clear beside the way of vehicles",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "shown because no vehicle of the site states its margin",
};

/// The way of vehicles.
pub(super) struct Corridor {
    path: Vec<Piece>,
    /// Half of the lane's width, or of the widest vehicle's.
    pub(super) half: Length,
    /// Room beside it.
    pub(super) margin: Length,
}

impl Corridor {
    /// Distance of a piece from the middle of the way.
    pub(super) fn distance(&self, piece: &Piece) -> Length {
        let nearest = self.path.iter().map(|step| between(step, piece));
        Length::from_base(nearest.fold(f64::INFINITY, f64::min))
    }

    /// The straight line from a point to the nearest place of the middle of the way.
    pub(super) fn line_from(&self, point: Point) -> Piece {
        let foot = |step: &Piece| nearest(point, step);
        let feet = self.path.iter().map(foot);
        let away = |foot: &Point| (foot.0 - point.0).hypot(foot.1 - point.1);
        let nearest = feet.min_by(|one, two| away(one).total_cmp(&away(two)));
        [point, nearest.unwrap_or(point)]
    }

    /// Distance from the middle of the way that a thing must keep where nothing guards it.
    pub(super) fn reach(&self) -> Length {
        self.half + self.margin
    }
}

/// A position seen from above.
pub(crate) fn flat(at: &Position) -> Point {
    (at.x.nominal().base(), at.y.nominal().base())
}

/// The way of vehicles along a lane.
pub(super) fn corridor<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    lane: &'s Lane,
) -> Result<Corridor, Halt> {
    let width = read!(asking, lane.width);
    let path = path(asking, lane);
    let mut widest = None;
    let mut margin = None;
    for vehicle in &site.vehicle {
        let wide = asking.read_if_there(&vehicle.origin, "width", vehicle.width.as_ref());
        let room = asking.read_if_there(&vehicle.origin, "margin", vehicle.margin.as_ref());
        widest = larger(widest, wide);
        margin = larger(margin, room);
    }
    let (width, path) = (width?, path?);
    let width = larger(Some(width), widest).unwrap_or(width);
    Ok(Corridor {
        path,
        half: width / 2.0,
        margin: margin.unwrap_or_else(|| usual(asking, site)),
    })
}

/// Room beside the way where no vehicle states its own.
pub(crate) fn usual(asking: &mut Asking<'_>, site: &Site) -> Length {
    asking.rest_on(&USUAL_MARGIN);
    Length::from_base(match site.site.code_basis {
        CodeBasis::Us => MARGIN.0,
        CodeBasis::Eu => MARGIN.1,
    })
}

fn larger(one: Option<Length>, other: Option<Length>) -> Option<Length> {
    match (one, other) {
        (Some(one), Some(other)) => Some(if one > other { one } else { other }),
        (one, other) => one.or(other),
    }
}

fn path<'s>(asking: &mut Asking<'s>, lane: &'s Lane) -> Result<Vec<Piece>, Halt> {
    let points: Vec<_> = lane.path.iter().map(flat).collect();
    if points.len() < 2 {
        return asking.lack(
            &lane.origin,
            "path",
            Wants::Written("[[\"10 ft\", \"-60 ft\", \"0 ft\"], [\"10 ft\", \"40 ft\", \"0 ft\"]]"),
        );
    }
    Ok(points
        .windows(2)
        .filter_map(|pair| match pair {
            [from, to] => Some([*from, *to]),
            _ => None,
        })
        .collect())
}
