//! Plane areas: rectangle with rounded corners, and circle.

use std::f64::consts::PI;

/// Area and second moments of a plane area, in meters.
#[derive(Debug, Clone, Copy)]
pub(super) struct Shape {
    pub(super) area: f64,
    pub(super) inertia: f64,
    pub(super) inertia_across: f64,
}

/// A rectangle whose corners are rounded.
pub(super) fn rounded(depth: f64, width: f64, radius: f64) -> Shape {
    Shape {
        area: depth * width - (4.0 - PI) * radius.powi(2),
        inertia: width * depth.powi(3) / 12.0 - corners(depth, radius),
        inertia_across: depth * width.powi(3) / 12.0 - corners(width, radius),
    }
}

/// Second moment of the four corners that rounding takes away: squares of the radius less quarter circles.
fn corners(depth: f64, radius: f64) -> f64 {
    let square = radius.powi(4) / 12.0 + radius.powi(2) * ((depth - radius) / 2.0).powi(2);
    let center = depth / 2.0 - radius + 4.0 * radius / (3.0 * PI);
    let own = (PI / 16.0 - 4.0 / (9.0 * PI)) * radius.powi(4);
    let quarter = own + PI / 4.0 * radius.powi(2) * center.powi(2);
    4.0 * (square - quarter)
}
