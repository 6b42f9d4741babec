//! What a turning leaf sweeps, and when it meets a box there.

/// A turning leaf seen from its pivot: along the closed leaf, and away from it as it opens.
pub(super) struct Arc {
    /// From the pivot to the free end.
    pub length: f64,
    /// How far it is turned when open.
    pub open: f64,
}

impl Arc {
    /// How far from the closed leaf it comes over a stretch along the closed leaf; none where it does not come at all.
    pub(super) fn reach(&self, (near, far): (f64, f64)) -> Option<f64> {
        if far < 0.0 || near > self.length {
            return None;
        }
        let (near, far) = (near.max(0.0), far.min(self.length));
        let over = |u: f64| (self.length * self.length - u * u).max(0.0).sqrt();
        if self.open >= std::f64::consts::FRAC_PI_2 {
            return Some(over(near));
        }
        let (sine, cosine) = self.open.sin_cos();
        let highest = (self.length * cosine).clamp(near, far);
        Some(over(highest).min(highest * sine / cosine))
    }

    /// Way of the free end of the closing leaf until it meets a box; the box must be in its way.
    pub(super) fn closing_way(&self, (near, _): (f64, f64), depth: f64) -> f64 {
        let near = near.max(0.0);
        let over = (self.length * self.length - near * near).max(0.0).sqrt();
        let met = depth.min(over).max(0.0).atan2(near);
        (self.open - met).max(0.0) * self.length
    }

    /// Way of the free end of the opening leaf until it meets a box; the box must be in its way.
    pub(super) fn opening_way(&self, (_, far): (f64, f64), depth: f64) -> f64 {
        let depth = depth.max(0.0);
        let over = (self.length * self.length - depth * depth).max(0.0).sqrt();
        depth.atan2(far.min(over)).min(self.open) * self.length
    }
}
