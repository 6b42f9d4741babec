//! How fast grown people walk across.

use crate::OutOfReach;
use quantity::{Quantity as _, Velocity};

quantity::words! {
    /// Who walks.
    pub enum AdultWalker {
        /// Everybody watched.
        Everybody = "everybody",
        /// Men.
        Men = "men",
        /// Women.
        Women = "women",
        /// People with a telephone in use.
        OnPhone = "on the phone",
    }
}

formula! {
    /// Mean walking speed of grown people who cross a road and do not know that they are watched, and the range that
    /// studies span.
    ///
    /// Slow people decide how long a gate holds open, fast ones how soon somebody is at a moving leaf. For distances of
    /// devices the standards take 1600 mm/s, which is faster than the mean and slower than a run.
    pub struct AdultWalkingSpeed = "adult-walking-speed" in Protection {
        /// Who walks.
        walker ("–"): AdultWalker,
    }
    gives
    /// Walking speed of grown people.
    pub struct AdultSpeed {
        /// Mean.
        mean ("v"): Velocity,
        /// Slow end of the studies.
        slow ("vmin"): Velocity,
        /// Fast end of the studies.
        fast ("vmax"): Velocity,
    }
    formula "v = 4.3 ft/s; men 4.6, women 4.1, on the phone 4.2 ft/s\nvmin = 0.6 m/s,  vmax = 2.4 m/s"
    valid "Level crossings; nobody runs."
    source { work: "crosswalk study of 2024 with about 1300 people; ITE and others as quoted", clause: "", evidence: Seen, seen: "an accident-reconstruction newsletter of January 2025 (address withheld) and a general article that quotes the range" }
    by walking_speed
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    clippy::unnecessary_wraps,
    reason = "every calculation takes its inputs by reference and may refuse"
)]
fn walking_speed(walk: &AdultWalkingSpeed) -> Result<AdultSpeed, OutOfReach> {
    let feet_per_second = match walk.walker {
        AdultWalker::Everybody => 4.3,
        AdultWalker::Men => 4.6,
        AdultWalker::Women => 4.1,
        AdultWalker::OnPhone => 4.2,
    };
    Ok(AdultSpeed {
        mean: Velocity::from_base(feet_per_second * 0.3048),
        slow: Velocity::from_base(0.6),
        fast: Velocity::from_base(2.4),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn every_mean_lies_in_the_range() {
        for walker in AdultWalker::ALL {
            let speed = AdultWalkingSpeed { walker: *walker }.evaluate().unwrap();
            assert!(speed.slow < speed.mean && speed.mean < speed.fast);
        }
    }
}
