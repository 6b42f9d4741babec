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
        length(self.off(disc.at)) - disc.radius
    }

    /// From its place nearest to a point, to that point.
    fn off(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (ex, ey) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let (dx, dy) = (x - self.from.0, y - self.from.1);
        let share = ((dx * ex + dy * ey) / (ex * ex + ey * ey)).clamp(0.0, 1.0);
        (dx - share * ex, dy - share * ey)
    }

    /// The circle's ring about zero does not come to it.
    fn is_off_the_ring(&self, far: f64, radius: f64) -> bool {
        let farthest = length(self.from).max(length(self.to));
        farthest < far - radius - HAIR || length(self.off((0.0, 0.0))) > far + radius + HAIR
    }

    /// Angle by which a circle turns about zero, counterclockwise, until it touches the side; without end where it never
    /// does. One that touches it already has none.
    pub(super) fn angle_to(&self, disc: &Disc) -> f64 {
        self.angle_within(disc, self.apart(disc), f64::INFINITY)
    }

    /// The same, where the circle is so far apart from the side; any angle that is no less than another will do.
    pub(super) fn angle_within(&self, disc: &Disc, apart: f64, other: f64) -> f64 {
        if apart <= 0.0 {
            return 0.0;
        }
        let far = length(disc.at);
        // By an angle the circle comes no nearer than by its arc; what is rounded off is less than the grain.
        if apart > far * (other + GRAIN) {
            return f64::INFINITY;
        }
        if self.is_off_the_ring(far, disc.radius) {
            return f64::INFINITY;
        }
        let mut least = f64::INFINITY;
        let mut note = |angle: f64| {
            let turned = angle.rem_euclid(TAU);
            // What is a hair behind is where it is.
            least = least.min(if turned > TAU - HAIR { 0.0 } else { turned });
        };
        for end in [self.from, self.to] {
            let off = length(end);
            let cos = (far * far + off * off - disc.radius * disc.radius) / (2.0 * far * off);
            if cos.abs() <= 1.0 {
                let (bearing, turn) = (between(disc.at, end), cos.acos());
                note(bearing - turn);
                note(bearing + turn);
            }
        }
        let (ex, ey) = (self.to.0 - self.from.0, self.to.1 - self.from.1);
        let long = length((ex, ey));
        for way in [1.0, -1.0] {
            let (nx, ny) = (way * ey / long, -way * ex / long);
            let cos = (nx * self.from.0 + ny * self.from.1 + disc.radius) / far;
            if cos.abs() > 1.0 {
                continue;
            }
            let sin = (1.0 - cos * cos).sqrt();
            for side in [1.0, -1.0] {
                // The middle of the circle when it touches the whole straight line that the side lies on.
                let px = far * (nx * cos - ny * side * sin);
                let py = far * (ny * cos + nx * side * sin);
                let share = ((px - self.from.0) * ex + (py - self.from.1) * ey) / (long * long);
                if (0.0..=1.0).contains(&share) {
                    note(between(disc.at, (nx, ny)) + side * cos.acos());
                }
            }
        }
        least
    }
}

/// More than what rounding does to an angle (rad).
const GRAIN: f64 = 1e-5;

/// Angles and lengths below this are none.
const HAIR: f64 = 1e-9;

fn length((x, y): (f64, f64)) -> f64 {
    (x * x + y * y).sqrt()
}

/// The angle from one direction to another, counterclockwise.
fn between(from: (f64, f64), to: (f64, f64)) -> f64 {
    (from.0 * to.1 - from.1 * to.0).atan2(from.0 * to.0 + from.1 * to.1)
}
