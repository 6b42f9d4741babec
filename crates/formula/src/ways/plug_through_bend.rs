//! The longest stiff plug that goes around a bend.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Quantity as _};

formula! {
    /// Length of the longest stiff plug of a width that goes around a bend of conduit.
    ///
    /// The plug lies as a chord: its long side touches the inner wall in the middle, its two outer corners the outer wall.
    /// Take the diagonal as width for a plug that may turn as it goes.
    pub struct PlugThroughBend = "plug-through-bend" in Ways {
        /// Radius of the bend to the center line.
        radius ("R"): Length,
        /// Clear width of the conduit, less the cables that lie in it.
        clear ("c"): Length,
        /// Width of the plug.
        width ("w"): Length,
    }
    gives
    /// What goes around a bend.
    pub struct LongestPlug {
        /// Length of the longest plug.
        longest ("l"): Length,
    }
    formula "l = 2 · √((R + c/2)² − (R − c/2 + w)²)"
    valid "A plug that is stiff over its length, a bend of one radius that is not crushed; plugs no wider than the clear width."
    source { work: "chord between two circles about one center", clause: "", evidence: Physics, seen: "geometry; held against polygons by shapely" }
    by plug_through_bend
}

fn plug_through_bend(plug: &PlugThroughBend) -> Result<LongestPlug, OutOfReach> {
    positive("radius", plug.radius, "6 in")?;
    positive("clear", plug.clear, "0.8 in")?;
    positive("width", plug.width, "0.55 in")?;
    let (radius, clear, width) = (plug.radius.base(), plug.clear.base(), plug.width.base());
    if clear >= 2.0 * radius {
        return Err(OutOfReach::new(
            "radius",
            "a bend is not tighter than half the width of its conduit",
        ));
    }
    if width > clear {
        return Err(OutOfReach::new(
            "width",
            "a plug that is wider than the clear width goes nowhere, however short it is",
        ));
    }
    let (outer, inner) = (radius + clear / 2.0, radius - clear / 2.0 + width);
    let longest = 2.0 * (outer * outer - inner * inner).max(0.0).sqrt();
    Ok(LongestPlug {
        longest: Length::from_base(longest),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn longest(radius: f64, clear: f64, width: f64) -> f64 {
        let plug = PlugThroughBend {
            radius: Length::from_base(radius),
            clear: Length::from_base(clear),
            width: Length::from_base(width),
        };
        plug.evaluate().unwrap().longest.base()
    }

    proptest! {
        #[test]
        fn a_wider_bend_and_a_thinner_plug_never_pass_less(
            radius in 0.1..1.0, clear in 0.01..0.1, share in 0.1..0.9
        ) {
            let base = longest(radius, clear, share * clear);
            prop_assert!(longest(radius * 1.1, clear, share * clear) >= base);
            prop_assert!(longest(radius, clear, share * clear * 0.9) >= base);
        }
    }

    #[test]
    fn refuses_what_is_wider_than_the_way() {
        let plug = PlugThroughBend {
            radius: Length::from_base(0.3),
            clear: Length::from_base(0.02),
            width: Length::from_base(0.021),
        };
        assert!(plug.evaluate().is_err());
        let crushed = PlugThroughBend {
            radius: Length::from_base(0.01),
            width: Length::from_base(0.01),
            ..plug
        };
        assert!(crushed.evaluate().is_err());
    }
}
