//! What a way for everybody keeps to: the 2010 ADA Standards in the United States, what is remembered in Europe.

use crate::asking::Asking;
use crate::outcome::{Comparison, Halt, Labeled};
use formula::protection::{
    AdaClosingTime, AdaGateDimension, AdaOperatingForce, AdaReach, HandWorked, ReachApproach,
    WalkGateItem,
};
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _, Ratio, Time};
use site::CodeBasis;

static ROUTE_US: Source = Source {
    work: "2010 ADA Standards",
    clause: "302.3, 303, 403.3 to 403.5: 36 in wide, openings to 1/2 in, lips to 1/4 in, 1:20 along and 1:48 across",
    evidence: Evidence::Memory,
    seen: "not seen",
};

static EUROPE: Source = Source {
    work: "EN 17210 with CEN/TR 17621",
    clause: "widths, thresholds, slopes, handles and forces",
    evidence: Evidence::Memory,
    seen: "not seen; local law goes before it",
};

/// A length that a way for everybody keeps to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Item {
    Width,
    Threshold,
    Step,
    LowHandle,
    HighHandle,
    GroundWidth,
    GroundLength,
    RouteWidth,
    Groove,
    Lip,
}

impl Item {
    /// What it is called, what its limit is called, whether it must be at least that, and the limit in meters as it is
    /// remembered in Europe.
    fn words(self) -> (&'static str, &'static str, bool, f64) {
        match self {
            Self::Width => ("clear width", "least clear width", true, 0.9),
            Self::Threshold => ("threshold", "highest threshold", false, 0.02),
            Self::Step => (
                "upright part of the threshold",
                "most of it upright",
                false,
                0.01,
            ),
            Self::LowHandle => ("height of the handle", "lowest handle", true, 0.8),
            Self::HighHandle => ("height of the handle", "highest handle", false, 1.1),
            Self::GroundWidth => (
                "width of the clear ground",
                "least width of clear ground",
                true,
                0.9,
            ),
            Self::GroundLength => (
                "length of the clear ground",
                "least length of clear ground",
                true,
                1.5,
            ),
            Self::RouteWidth => ("width of the way", "least width of the way", true, 1.2),
            Self::Groove => ("groove across the way", "widest groove", false, 0.01),
            Self::Lip => ("lip across the way", "highest lip", false, 0.02),
        }
    }

    /// The same in the calculation of the United States; nothing where that is remembered only.
    fn in_ada(self) -> Option<WalkGateItem> {
        match self {
            Self::Width => Some(WalkGateItem::ClearWidth),
            Self::Threshold => Some(WalkGateItem::Threshold),
            Self::Step => Some(WalkGateItem::ThresholdStep),
            Self::LowHandle => Some(WalkGateItem::LowHardware),
            Self::HighHandle => Some(WalkGateItem::HighHardware),
            Self::GroundWidth => Some(WalkGateItem::GroundWidth),
            Self::GroundLength => Some(WalkGateItem::GroundLength),
            Self::RouteWidth | Self::Groove | Self::Lip => None,
        }
    }

    /// The limit in meters as it is remembered in the United States.
    fn remembered(self) -> f64 {
        match self {
            Self::RouteWidth => 0.9144,
            Self::Groove => 0.0127,
            _ => 0.006_35,
        }
    }
}

/// A length against its limit.
pub(super) fn held_to(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    item: Item,
    measured: Length,
) -> Result<Comparison, Halt> {
    let (name, limit_name, at_least, europe) = item.words();
    let limit = match (basis, item.in_ada()) {
        (CodeBasis::Us, Some(item)) => asking.work(&AdaGateDimension { item, measured })?.limit,
        (CodeBasis::Us, None) => {
            asking.rest_on(&ROUTE_US);
            Length::from_base(item.remembered())
        }
        (CodeBasis::Eu, _) => {
            asking.rest_on(&EUROPE);
            Length::from_base(europe)
        }
    };
    let (is, limit) = (
        Labeled::new(name, measured),
        Labeled::new(limit_name, limit),
    );
    Ok(if at_least {
        Comparison::at_most(limit, is)
    } else {
        Comparison::at_most(is, limit)
    })
}

/// In which direction a slope is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Way {
    Along,
    Across,
}

/// A slope along or across a way against the steepest.
pub(super) fn slope(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    slope: Ratio,
    way: Way,
) -> Comparison {
    let (source, along, cross) = match basis {
        CodeBasis::Us => (&ROUTE_US, 0.05, 1.0 / 48.0),
        CodeBasis::Eu => (&EUROPE, 0.06, 0.025),
    };
    asking.rest_on(source);
    let (name, steepest, limit) = match way {
        Way::Along => ("slope along the way", "steepest along", along),
        Way::Across => ("slope across the way", "steepest across", cross),
    };
    Comparison::at_most(
        Labeled::new(name, slope),
        Labeled::new(steepest, Ratio::from_base(limit)),
    )
}

/// Greatest force that is remembered in Europe, in newtons.
const FORCE_EUROPE: f64 = 25.0;

fn force(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    (thing, name): (HandWorked, &'static str),
    force: Force,
) -> Result<Comparison, Halt> {
    let limit = match basis {
        CodeBasis::Us => asking.work(&AdaOperatingForce { thing, force })?.limit,
        CodeBasis::Eu => {
            asking.rest_on(&EUROPE);
            Force::from_base(FORCE_EUROPE)
        }
    };
    Ok(Comparison::at_most(
        Labeled::new(name, force),
        Labeled::new("greatest force", limit),
    ))
}

/// The force of a handle, latch, button or slot.
pub(super) fn latch(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    of: Force,
) -> Result<Comparison, Halt> {
    force(asking, basis, (HandWorked::Part, "force to work it"), of)
}

/// The force that keeps a sliding walk gate moving.
pub(super) fn slides(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    of: Force,
) -> Result<Comparison, Halt> {
    force(
        asking,
        basis,
        (HandWorked::SlidingGate, "force to slide it"),
        of,
    )
}

/// The time of a closer; no figure for Europe is known here.
pub(super) fn slow_enough(asking: &mut Asking<'_>, time: Time) -> Result<Comparison, Halt> {
    let least = asking.work(&AdaClosingTime { time })?.least;
    Ok(Comparison::at_most(
        Labeled::new("least closing time", least),
        Labeled::new("closing time", time),
    ))
}

/// A height against the reach from a wheelchair, from below and from above.
pub(super) fn reached(
    asking: &mut Asking<'_>,
    basis: CodeBasis,
    (approach, obstruction_depth): (ReachApproach, Length),
    control_height: Length,
) -> Result<Vec<Comparison>, Halt> {
    let (low, high) = match basis {
        CodeBasis::Us => {
            let range = asking.work(&AdaReach {
                approach,
                obstruction_depth,
                control_height,
            })?;
            (range.low, range.high)
        }
        CodeBasis::Eu => {
            asking.rest_on(&EUROPE);
            (Length::from_base(0.8), Length::from_base(1.1))
        }
    };
    let height = Labeled::new("height above where one stands", control_height);
    Ok(vec![
        Comparison::at_most(Labeled::new("lowest reach", low), height),
        Comparison::at_most(height, Labeled::new("highest reach", high)),
    ])
}
