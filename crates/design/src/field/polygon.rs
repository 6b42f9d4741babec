//! Convex polygons on the ground.

/// A place on the ground, in meters along the gate and into the property.
pub(crate) type Spot = (f64, f64);

/// Polygons that overlap by less than this only touch (m).
const TOUCH: f64 = 0.01;

/// An upright rectangle between two corners.
pub(crate) fn strip(one: Spot, other: Spot) -> Vec<Spot> {
    vec![one, (other.0, one.1), other, (one.0, other.1)]
}

/// Two convex polygons overlap by more than a touch: no line along a side of either parts them.
pub(crate) fn overlap(one: &[Spot], other: &[Spot]) -> bool {
    !parted(one, other) && !parted(other, one)
}

fn parted(one: &[Spot], other: &[Spot]) -> bool {
    let sides = one.iter().zip(one.iter().cycle().skip(1));
    sides.into_iter().any(|(from, to)| {
        let (x, y) = (to.0 - from.0, to.1 - from.1);
        let long = x.hypot(y);
        if long <= 0.0 {
            return false;
        }
        let along = |spot: &Spot| (spot.0 * y - spot.1 * x) / long;
        let ends = |all: &[Spot]| {
            let each = all.iter().map(along);
            each.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
                (low.min(at), high.max(at))
            })
        };
        let (a, b) = (ends(one), ends(other));
        a.1 - b.0 < TOUCH || b.1 - a.0 < TOUCH
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_touches_does_not_overlap_and_what_lies_askew_may() {
        let one = strip((0.0, 0.0), (2.0, 1.0));
        assert!(!overlap(&one, &strip((2.0, 0.0), (3.0, 1.0))));
        assert!(overlap(&one, &strip((1.9, 0.9), (3.0, 2.0))));
        let askew = [(2.5, 0.5), (3.0, 1.0), (2.5, 1.5), (2.0, 1.0)];
        assert!(!overlap(&one, &askew));
        let nearer: Vec<Spot> = askew.iter().map(|(x, y)| (x - 0.4, y - 0.3)).collect();
        assert!(overlap(&one, &nearer));
    }
}
