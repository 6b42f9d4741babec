//! Where outline, anchors, plates and conduits of a foundation lie, measured from the middle of its top.

use crate::plan::gate::nominal;
use draw::Point;
use quantity::{Angle, Length, Quantity as _};
use site::{Anchor, Foundation, Position, StubUp};
use std::f64::consts::{PI, TAU};

/// The outline of a foundation seen from above.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Outline {
    /// A block of this length along the gate line and width across it.
    Block {
        /// Along the gate line.
        length: Length,
        /// Across it.
        width: Length,
    },
    /// A round one.
    Round {
        /// Its diameter.
        diameter: Length,
    },
}

impl Outline {
    /// The outline of a foundation that has sizes.
    pub(crate) fn of(foundation: &Foundation) -> Option<Self> {
        let sizes = (
            nominal(foundation.length.as_ref()),
            nominal(foundation.width.as_ref()),
            nominal(foundation.diameter.as_ref()),
        );
        match sizes {
            (Some(length), Some(width), _) => Some(Self::Block { length, width }),
            (_, _, Some(diameter)) => Some(Self::Round { diameter }),
            _ => None,
        }
    }

    /// Half its size along the gate line and across it.
    pub(crate) fn halves(self) -> (Length, Length) {
        match self {
            Self::Block { length, width } => (length / 2.0, width / 2.0),
            Self::Round { diameter } => (diameter / 2.0, diameter / 2.0),
        }
    }
}

/// The anchors under one plate.
#[derive(Debug, Clone)]
pub(crate) struct Pattern<'a> {
    pub(crate) anchor: &'a Anchor,
    /// The middle of the anchors.
    pub(crate) middle: Point,
    /// Every anchor; none where the site does not say how they stand.
    pub(crate) places: Vec<Point>,
    /// Half the plate along the gate line and across it.
    pub(crate) plate: Option<(Length, Length)>,
}

/// A conduit that comes up through a foundation.
#[derive(Debug, Clone)]
pub(crate) struct Stub {
    pub(crate) name: String,
    pub(crate) at: Point,
    pub(crate) radius: Option<Length>,
}

/// The anchors of a foundation, set by set.
pub(crate) fn patterns(foundation: &Foundation) -> Vec<Pattern<'_>> {
    let anchors = foundation.anchor.iter();
    anchors.map(|anchor| pattern(foundation, anchor)).collect()
}

fn pattern<'a>(foundation: &Foundation, anchor: &'a Anchor) -> Pattern<'a> {
    let middle = from_middle(foundation, anchor.at.as_ref()).unwrap_or(Point::origin());
    let plate = nominal(anchor.plate_length.as_ref()).zip(nominal(anchor.plate_width.as_ref()));
    Pattern {
        anchor,
        middle,
        places: places(anchor, middle),
        plate: plate.map(|(length, width)| (length / 2.0, width / 2.0)),
    }
}

/// The conduits that come up and have a place.
pub(crate) fn stubs(foundation: &Foundation) -> Vec<Stub> {
    let each = |stub: &StubUp| {
        Some(Stub {
            name: name(stub),
            at: from_middle(foundation, stub.at.as_ref())?,
            radius: nominal(stub.diameter.as_ref()).map(|diameter| diameter / 2.0),
        })
    };
    foundation.stub_up.iter().filter_map(each).collect()
}

/// Names of the conduits that come up and have no place.
pub(crate) fn unplaced(foundation: &Foundation) -> Vec<String> {
    let lost = |stub: &&StubUp| from_middle(foundation, stub.at.as_ref()).is_none();
    foundation.stub_up.iter().filter(lost).map(name).collect()
}

fn name(stub: &StubUp) -> String {
    stub.conduit
        .as_ref()
        .map_or_else(|| "conduit".to_owned(), ToString::to_string)
}

/// A place on the site, from the middle of the foundation's top.
pub(crate) fn from_middle(foundation: &Foundation, at: Option<&Position>) -> Option<Point> {
    let (at, middle) = (at?, foundation.at.as_ref()?);
    Some(Point::new(
        at.x.nominal() - middle.x.nominal(),
        at.y.nominal() - middle.y.nominal(),
    ))
}

/// Where the anchors of a set stand; none where count, spacing or circle leave it open.
fn places(anchor: &Anchor, middle: Point) -> Vec<Point> {
    let Some(count) = anchor.count.filter(|count| (1..=40).contains(count)) else {
        return Vec::new();
    };
    if let Some(circle) = nominal(anchor.bolt_circle.as_ref()) {
        return on_circle(count, circle / 2.0, middle);
    }
    let rows = anchor.rows.unwrap_or(1).max(1);
    if !count.is_multiple_of(rows) {
        return Vec::new();
    }
    let in_row = count / rows;
    let along = steps(in_row, nominal(anchor.spacing.as_ref()));
    let across = steps(rows, nominal(anchor.row_spacing.as_ref()));
    let (Some(along), Some(across)) = (along, across) else {
        return Vec::new();
    };
    let row = |y: Length| {
        along
            .clone()
            .into_iter()
            .map(move |x| middle.moved(x, y))
            .collect::<Vec<_>>()
    };
    across.into_iter().flat_map(row).collect()
}

/// Anchors on a circle, so turned that two stand on the side toward the road.
fn on_circle(count: u32, radius: Length, middle: Point) -> Vec<Point> {
    let each = TAU / f64::from(count);
    let first = -PI / 2.0 + each / 2.0;
    (0..count)
        .map(|index| middle.toward(Angle::from_base(first + each * f64::from(index)), radius))
        .collect()
}

/// So many steps of this length about zero; a single one needs no length.
fn steps(count: u32, each: Option<Length>) -> Option<Vec<Length>> {
    if count == 1 {
        return Some(vec![Length::from_base(0.0)]);
    }
    let each = each?;
    let first = -f64::from(count - 1) / 2.0;
    Some(
        (0..count)
            .map(|index| each * (first + f64::from(index)))
            .collect(),
    )
}

/// The distinct places along one axis, in order; those nearer than 1 mm count as one.
pub(crate) fn distinct(values: impl Iterator<Item = Length>) -> Vec<Length> {
    let mut all: Vec<f64> = values.map(quantity::Quantity::base).collect();
    all.sort_by(f64::total_cmp);
    all.dedup_by(|a, b| (*a - *b).abs() < 0.001);
    all.into_iter().map(Length::from_base).collect()
}
