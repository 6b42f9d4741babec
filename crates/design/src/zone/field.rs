//! The field of an area scanner, seen from above.

use crate::asking::{Asking, read};
use crate::check::plane::{Point, is_inside};
use crate::outcome::Halt;
use crate::zone::Extent;
use crate::zone::means::BESIDE_BEAM;
use quantity::Quantity as _;
use site::Device;

/// The whole of a box, seen from above, lies in the scanner's field or no farther beside it than a body is wide, and the scanner looks no higher than the box reaches.
///
/// The corners chalked on the ground count where they are written; otherwise its range and the angle of its field.
pub(crate) fn sees<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    extent: &Extent,
) -> Result<bool, Halt> {
    let [x, y, z] = asking.position(&device.origin, "at", device.at.as_ref())?;
    if z.base() > extent.high[2] {
        return Ok(false);
    }
    if device.field.len() >= 3 {
        let mut corners = Vec::with_capacity(device.field.len());
        for corner in &device.field {
            let [x, y, _] = asking.position(&device.origin, "field", Some(corner))?;
            corners.push((x.base(), y.base()));
        }
        let seen = |at: &Point| is_inside(*at, &corners) || off(*at, &corners) <= BESIDE_BEAM;
        return Ok(extent.corners().iter().all(seen));
    }
    let range = read!(asking, device.range);
    let angle = read!(asking, device.field_angle);
    let facing = read!(asking, device.facing);
    let (range, angle, facing) = (range?, angle?, facing?);
    let in_field = |(to_x, to_y): &Point| {
        let (dx, dy) = (to_x - x.base(), to_y - y.base());
        let off = (dy.atan2(dx) - facing.base()).rem_euclid(std::f64::consts::TAU);
        let off = off.min(std::f64::consts::TAU - off);
        dx.hypot(dy) <= range.base() && off <= angle.base() / 2.0
    };
    Ok(extent.corners().iter().all(in_field))
}

/// How far a point is from the border of a field.
fn off(at: Point, corners: &[Point]) -> f64 {
    let pairs = corners.iter().zip(corners.iter().cycle().skip(1));
    pairs
        .map(|(one, other)| crate::check::plane::from(at, &[*one, *other]))
        .fold(f64::INFINITY, f64::min)
}

#[cfg(test)]
mod tests {
    use super::is_inside;

    #[test]
    fn inside_on_the_line_and_outside() {
        let field = [(0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (0.0, 3.0)];
        assert!(is_inside((1.0, 1.0), &field));
        assert!(is_inside((4.0, 2.0), &field));
        assert!(!is_inside((4.5, 2.0), &field));
        assert!(!is_inside((-1.0, 1.0), &field));
    }
}
