//! How hard conductors may be pulled by their metal.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Area, Force, Quantity as _};

/// Largest stress that copper conductors are pulled with: 0.008 lbf for each circular mil.
const POUNDS_PER_CIRCULAR_MIL: f64 = 0.008;
/// One circular mil in square meters: the area of a circle of 0.001 in.
const CIRCULAR_MIL: f64 = std::f64::consts::FRAC_PI_4 * 0.0000254 * 0.0000254;
/// One pound-force in newtons (0.45359237 kg at standard gravity).
const POUND_FORCE: f64 = 0.45359237 * 9.80665;

formula! {
    /// Largest pull on copper conductors that are held by their metal, as with a pulling eye.
    ///
    /// A basket grip on the sheath, and data cables, have their own and lower limits.
    pub struct ConductorPullLimit = "conductor-pull-limit" in Ways {
        /// Cross-section of one conductor.
        conductor ("A"): Area,
        /// How many conductors share the pull.
        count ("n"): u32,
    }
    gives
    /// Pull limit of conductors.
    pub struct PullLimit {
        /// Largest pull.
        limit ("Tm"): Force,
    }
    formula "Tm = 0.008 lbf/cmil · n · A"
    valid "Annealed copper conductors of 8 AWG and thicker in the print; applied to thinner ones it is common practice."
    source { work: "ICEA, IEEE 1185; UFC 3-535-01", clause: "table 12-4", evidence: Seen, seen: "UFC 3-535-01 (2005): buildingcriteria2.tpub.com/ufc_3_535_01/ufc_3_535_010190.htm" }
    by conductor_pull_limit
}

fn conductor_pull_limit(pull: &ConductorPullLimit) -> Result<PullLimit, OutOfReach> {
    positive("conductor", pull.conductor, "26.24 kcmil")?;
    let circular_mils = pull.conductor.base() / CIRCULAR_MIL;
    let pounds = POUNDS_PER_CIRCULAR_MIL * circular_mils * f64::from(pull.count);
    Ok(PullLimit {
        limit: Force::from_base(pounds * POUND_FORCE),
    })
}
