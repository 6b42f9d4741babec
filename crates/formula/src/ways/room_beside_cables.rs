//! The room above the cables that lie in a conduit.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Length, Quantity as _, Ratio};
use std::f64::consts::{FRAC_PI_4, TAU};

formula! {
    /// Clear height above the cables that lie loosely at the bottom of a conduit.
    ///
    /// They fill a segment of the circle; loosely laid cables take about 60 % of the room they lie in. They never lie lower
    /// than the thickest of them.
    pub struct RoomBesideCables = "room-beside-cables" in Ways {
        /// Inside diameter of the conduit.
        bore ("D"): Length,
        /// Area of all cables in it.
        cables ("A"): Area,
        /// Diameter of the thickest of them.
        thickest ("d"): Length,
        /// Share of its room that loosely laid cable fills.
        packing ("p"): Ratio,
    }
    gives
    /// Room in a conduit.
    pub struct RoomBeside {
        /// Height to which the cables lie.
        depth ("h"): Length,
        /// Height that is clear above them.
        clear ("c"): Length,
    }
    formula "A / p = D²/8 · (θ − sin θ)\nh = D/2 · (1 − cos(θ/2)), at least d\nc = D − h"
    valid "Cables that lie at the bottom and do not stand up in it."
    source { work: "segment of a circle", clause: "", evidence: Physics, seen: "geometry; held against polygons by shapely" }
    by room_beside_cables
}

fn room_beside_cables(lying: &RoomBesideCables) -> Result<RoomBeside, OutOfReach> {
    positive("bore", lying.bore, "1.05 in")?;
    not_negative("cables", lying.cables, "0.3 in²")?;
    not_negative("thickest", lying.thickest, "0.3 in")?;
    positive("packing", lying.packing, "0.6")?;
    let bore = lying.bore.base();
    let filled = lying.cables.base() / lying.packing.base();
    if filled >= FRAC_PI_4 * bore * bore || lying.thickest >= lying.bore {
        return Err(OutOfReach::new(
            "cables",
            "these cables leave no room in the conduit",
        ));
    }
    let half = angle(filled / (bore * bore / 8.0)) / 2.0;
    let depth = (bore / 2.0 * (1.0 - half.cos())).max(lying.thickest.base());
    Ok(RoomBeside {
        depth: Length::from_base(depth),
        clear: Length::from_base(bore - depth),
    })
}

/// The angle over which a segment stands, by halving: θ − sin θ rises all the way.
fn angle(wanted: f64) -> f64 {
    let (mut low, mut high) = (0.0_f64, TAU);
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if middle - middle.sin() < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn lying(bore: f64, share: f64) -> RoomBesideCables {
        RoomBesideCables {
            bore: Length::from_base(bore),
            cables: Area::from_base(share * FRAC_PI_4 * bore * bore),
            thickest: Length::from_base(0.0),
            packing: Ratio::from_base(0.6),
        }
    }

    proptest! {
        #[test]
        fn more_cable_never_leaves_more_room(bore in 0.01..0.2, share in 0.0..0.5) {
            let some = lying(bore, share).evaluate().unwrap().clear;
            let more = lying(bore, share + 0.05).evaluate().unwrap().clear;
            prop_assert!(more < some && more.base() > 0.0);
        }
    }

    #[test]
    fn a_half_full_circle_is_half_deep_and_a_full_one_is_refused() {
        let half = lying(0.1, 0.3).evaluate().unwrap();
        assert!((half.depth.base() - 0.05).abs() < 1e-9);
        assert!(lying(0.1, 0.6).evaluate().is_err());
    }
}
