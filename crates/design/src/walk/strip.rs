//! Where on a leaf a contact edge acts, and in which direction.

use super::devices::guards;
use quantity::{Length, Quantity as _};
use sim::walk::{Direction, Opens, RisingLeaf, SwingLeaf, Toward};
use site::{Device, Leaf};

/// Both ends of an edge, on the closed leaf.
pub(super) struct Ends {
    pub(super) at: [Length; 3],
    pub(super) to: [Length; 3],
}

/// A stretch of a leaf that an edge covers.
pub(super) struct Strip {
    pub(super) leaf: usize,
    pub(super) from: Length,
    pub(super) to: Length,
    pub(super) guards: Direction,
    pub(super) bottom: Length,
    pub(super) top: Length,
}

/// Finds where an edge acts, or says why it is no part of the walk.
pub(super) type Places<'a> = dyn Fn(&Device, &Ends) -> Result<Vec<Strip>, &'static str> + 'a;

/// Half the width of an edge on the face of a leaf.
const HALF: f64 = 0.02;
/// An upright edge so near to the free end goes around it.
const AROUND: f64 = 0.1;
/// An edge so little above the underside is under the leaf.
const UNDER: f64 = 0.05;

impl Ends {
    fn heights(&self) -> (Length, Length) {
        let (one, other) = (self.at[2], self.to[2]);
        if one < other {
            (one, other)
        } else {
            (other, one)
        }
    }

    fn is_level(&self) -> bool {
        let (low, high) = self.heights();
        (high - low).base() < 2.0 * HALF
    }
}

/// On a sliding leaf it acts where it goes ahead in a direction that it guards.
pub(super) fn on_sliding(
    leaf: &Leaf,
    device: &Device,
    ends: &Ends,
) -> Result<Vec<Strip>, &'static str> {
    let ahead = if leads(leaf, ends.at[0]) {
        Direction::Closing
    } else {
        Direction::Opening
    };
    if !guards(device).contains(&ahead) {
        return Err("it goes ahead in a direction that it does not guard");
    }
    let (bottom, top) = ends.heights();
    Ok(vec![Strip {
        leaf: 0,
        from: Length::from_base(0.0),
        to: Length::from_base(HALF),
        guards: ahead,
        bottom,
        top,
    }])
}

/// It sits at the latching end of the leaf rather than at its tail.
fn leads(leaf: &Leaf, x: Length) -> bool {
    let closed = leaf
        .closed_end
        .as_ref()
        .map_or(0.0, |end| end.nominal().base());
    let length = leaf
        .length
        .as_ref()
        .map_or(0.0, |length| length.nominal().base());
    x.base() < closed + 0.5 * length
}

/// On a leaf that swings it acts on the side on which it sits, or both ways where it sits in the middle of the free end.
pub(super) fn on_swinging(
    (leaves, names): (&[SwingLeaf], &[&str]),
    device: &Device,
    ends: &Ends,
) -> Result<Vec<Strip>, &'static str> {
    let carrier = device.carried_by.as_ref().map(site::Id::as_str);
    let found = names.iter().position(|name| Some(*name) == carrier);
    let Some((at, leaf)) = found.and_then(|at| Some((at, leaves.get(at)?))) else {
        return Err("it is carried by no leaf of this gate");
    };
    let y = 0.5 * (ends.at[1] + ends.to[1]).base();
    let (mut bottom, mut top) = ends.heights();
    let on_a_face = y.abs() > 0.25 * leaf.thickness.base();
    if ends.is_level() {
        if !on_a_face || (bottom - leaf.bottom).base() < UNDER {
            return Err("an edge under the leaf feels what is below it, not who is before it");
        }
        (bottom, top) = (
            bottom - Length::from_base(HALF),
            top + Length::from_base(HALF),
        );
    }
    let (from, to) = stretch(leaf, ends);
    let opening = (y > 0.0) == (leaf.opens == Opens::Inward);
    let side = if opening {
        Direction::Opening
    } else {
        Direction::Closing
    };
    let acting = guards(device).into_iter();
    let acting = acting.filter(|direction| !on_a_face || *direction == side);
    let strips: Vec<Strip> = acting
        .map(|guards| Strip {
            leaf: at,
            from: Length::from_base(from),
            to: Length::from_base(to),
            guards,
            bottom,
            top,
        })
        .collect();
    if strips.is_empty() {
        return Err("it is on the side that goes behind in the direction that it guards");
    }
    Ok(strips)
}

/// From where to where an edge goes along a leaf, from its hinge line.
fn stretch(leaf: &SwingLeaf, ends: &Ends) -> (f64, f64) {
    let sign = if leaf.toward == Toward::Greater {
        1.0
    } else {
        -1.0
    };
    let along = |end: &[Length; 3]| sign * (end[0] - leaf.pivot.x).base();
    let (one, other) = (along(&ends.at), along(&ends.to));
    let (from, to) = (one.min(other) - HALF, one.max(other) + HALF);
    let length = leaf.length.base();
    (
        from,
        if to > length - AROUND {
            length + HALF
        } else {
            to
        },
    )
}

/// On a leaf that rises it acts along the underside, while the leaf comes down.
pub(super) fn on_rising(
    leaf: &RisingLeaf,
    device: &Device,
    ends: &Ends,
) -> Result<Vec<Strip>, &'static str> {
    if !ends.is_level() {
        return Err("an edge that is not along the underside feels nobody below the leaf");
    }
    if !guards(device).contains(&Direction::Closing) {
        return Err("it goes ahead in a direction that it does not guard");
    }
    let along = |end: &[Length; 3]| match leaf {
        RisingLeaf::Turning(leaf) => (leaf.pivot - end[0]).base(),
        RisingLeaf::Lifting(leaf) => (end[0] - leaf.from).base(),
    };
    let (one, other) = (along(&ends.at), along(&ends.to));
    let (bottom, top) = ends.heights();
    Ok(vec![Strip {
        leaf: 0,
        from: Length::from_base(one.min(other) - HALF),
        to: Length::from_base(one.max(other) + HALF),
        guards: Direction::Closing,
        bottom,
        top: top + Length::from_base(HALF),
    }])
}
