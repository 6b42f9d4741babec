//! The inside between two switchings, exactly.

/// The course of the inside while what it strives for runs in a straight line: `a + b·t + c·e^(−t/τ)`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Course {
    a: f64,
    b: f64,
    c: f64,
    tau: f64,
}

impl Course {
    /// From a temperature, toward `p + q·t`, with a time constant.
    pub(super) fn new(start: f64, (p, q): (f64, f64), tau: f64) -> Self {
        let a = p - q * tau;
        Self {
            a,
            b: q,
            c: start - a,
            tau,
        }
    }

    pub(super) fn at(&self, time: f64) -> f64 {
        self.a + self.b * time + self.c * (-time / self.tau).exp()
    }

    /// Integral from the beginning.
    pub(super) fn sum(&self, time: f64) -> f64 {
        let decayed = -(-time / self.tau).exp_m1();
        self.a * time + self.b * time * time / 2.0 + self.c * self.tau * decayed
    }

    /// When it turns, where it does within a span.
    pub(super) fn turns(&self, span: f64) -> Option<f64> {
        let ratio = self.c / (self.b * self.tau);
        let time = self.tau * ratio.ln();
        (ratio > 0.0 && time > 0.0 && time < span).then_some(time)
    }

    /// When it first comes to a level within a span, rising or falling; at once where it is beyond.
    pub(super) fn reaches(&self, level: f64, rising: bool, span: f64) -> Option<f64> {
        let beyond = |time: f64| {
            let over = self.at(time) - level;
            if rising { over >= 0.0 } else { over <= 0.0 }
        };
        if beyond(0.0) {
            return Some(0.0);
        }
        let ends = [self.turns(span), Some(span)];
        let mut low = 0.0;
        for high in ends.into_iter().flatten() {
            if beyond(high) {
                return Some(halved(&beyond, low, high));
            }
            low = high;
        }
        None
    }
}

/// The first time beyond, between one before and one beyond, to less than a millionth of a second.
fn halved(beyond: &impl Fn(f64) -> bool, mut low: f64, mut high: f64) -> f64 {
    for _ in 0..40 {
        let middle = f64::midpoint(low, high);
        if beyond(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn it_obeys_its_equation() {
        let course = Course::new(290.0, (300.0, -0.002), 5000.0);
        for time in [0.0, 10.0, 900.0, 3600.0] {
            let slope = (course.at(time + 0.5) - course.at(time - 0.5)) / 1.0;
            let strives = 300.0 - 0.002 * time;
            assert!((slope - (strives - course.at(time)) / 5000.0).abs() < 1e-6);
        }
        assert!((course.at(0.0) - 290.0).abs() < 1e-9);
        let halves: f64 = (0..3600)
            .map(|second| course.at(f64::from(second) + 0.5))
            .sum();
        assert!((course.sum(3600.0) - halves).abs() < 0.1);
    }

    #[test]
    fn it_turns_once_and_meets_a_level_on_either_side() {
        let course = Course::new(290.0, (300.0, -0.002), 5000.0);
        let top = course.turns(20_000.0).unwrap();
        assert!(course.at(top) > course.at(top - 100.0) && course.at(top) > course.at(top + 100.0));
        let up = course.reaches(292.0, true, 20_000.0).unwrap();
        assert!((course.at(up) - 292.0).abs() < 1e-6 && up < top);
        assert_eq!(course.reaches(289.0, true, 20_000.0), Some(0.0));
        assert_eq!(course.reaches(299.0, true, 20_000.0), None);
    }
}
