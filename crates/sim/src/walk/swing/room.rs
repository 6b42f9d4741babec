//! How far a circle may be carried about the hinge line before it is against something that stays.

use std::f64::consts::TAU;

/// An upright face in plan, as a leaf sees it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Side {
    pub from: (f64, f64),
    pub to: (f64, f64),
}

/// A circle about a place.
#[derive(Debug, Clone, Copy)]
pub(super) struct Disc {
    pub at: (f64, f64),
    pub radius: f64,
}

impl Side {
    pub(super) fn new(from: (f64, f64), to: (f64, f64)) -> Self {
        Self { from, to }
    }

    /// How far a circle is from it; below zero where it is in it.
    pub(super) fn apart(&self, disc: &Disc) -> f64 {
        let (ex, ey) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let (dx, dy) = (disc.at.0 - self.from.0, disc.at.1 - self.from.1);
        let share = ((dx * ex + dy * ey) / (ex * ex + ey * ey)).clamp(0.0, 1.0);
        (dx - share * ex).hypot(dy - share * ey) - disc.radius
    }

    /// Angle by which a circle turns about zero, counterclockwise, until it touches the side; without end where it never
    /// does. One that touches it already has none.
    pub(super) fn angle_to(&self, disc: &Disc) -> f64 {
        if self.apart(disc) <= 0.0 {
            return 0.0;
        }
        let (x, y) = disc.at;
        let far = x.hypot(y);
        let bearing = y.atan2(x);
        let mut least = f64::INFINITY;
        let mut note = |angle: f64| {
            let turned = (angle - bearing).rem_euclid(TAU);
            // What is a hair behind is where it is.
            least = least.min(if turned > TAU - 1e-9 { 0.0 } else { turned });
        };
        for (a, b) in [self.from, self.to] {
            let off = a.hypot(b);
            let cos = (far * far + off * off - disc.radius * disc.radius) / (2.0 * far * off);
            if cos.abs() <= 1.0 {
                note(b.atan2(a) - cos.acos());
                note(b.atan2(a) + cos.acos());
            }
        }
        let (ex, ey) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let length = ex.hypot(ey);
        for way in [1.0, -1.0] {
            let (nx, ny) = (way * ey / length, -way * ex / length);
            let cos = (nx * self.from.0 + ny * self.from.1 + disc.radius) / far;
            if cos.abs() > 1.0 {
                continue;
            }
            for turn in [cos.acos(), -cos.acos()] {
                let angle = ny.atan2(nx) + turn;
                let (px, py) = (far * angle.cos(), far * angle.sin());
                let share = ((px - self.from.0) * ex + (py - self.from.1) * ey) / (length * length);
                if (0.0..=1.0).contains(&share) {
                    note(angle);
                }
            }
        }
        least
    }
}
