//! How near anchors may be to an edge and to each other.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// How an anchor is set, for the distances that keep the concrete from splitting.
    pub enum AnchorSetting {
        /// Cast in and not tightened.
        CastIn = "cast-in, not tightened",
        /// Cast in and tightened.
        CastInTightened = "cast-in, tightened",
        /// Expansion or undercut anchor.
        Expansion = "expansion or undercut",
        /// Screw anchor.
        Screw = "screw",
        /// Adhesive anchor.
        Adhesive = "adhesive",
    }
}

formula! {
    /// Least spacing and edge distance of anchors, by ACI 318-19, with the product's own edge distance.
    ///
    /// The concrete splits while drilling or tightening where anchors are nearer. A product report that allows less
    /// spacing, tested, prevails. The cover that protects bars from weather is asked for at the edge, too: 2 in where
    /// the concrete sees weather and bars up to No. 5, and local codes prevail. Where bars or conduits lie in the way
    /// the hole moves, not the bar.
    pub struct AnchorLeastDistances = "anchor-least-distances" in Standing {
        /// How the anchors are set.
        setting ("–"): AnchorSetting,
        /// Diameter of the anchors.
        diameter ("da"): Length,
        /// Effective embedment.
        embedment ("hef"): Length,
        /// Cover that bars must have here.
        cover ("cc"): Length,
        /// Largest stone of the concrete: 3/4 in is usual.
        aggregate ("dagg"): Length,
        /// Least edge distance of the product's report; 0 for cast-in anchors.
        product_edge ("cmin"): Length,
        /// Edge distance of the nearest anchor.
        edge ("ca"): Length,
        /// Spacing of the nearest two anchors.
        spacing ("s"): Length,
    }
    gives
    /// Least distances, beside those that are there.
    pub struct LeastDistances {
        /// Least spacing.
        least_spacing ("smin"): Length,
        /// Least edge distance.
        least_edge ("ca,min"): Length,
        /// What the spacing has beyond the least one, below zero where it is too small.
        spacing_margin ("s − smin"): Length,
        /// What the edge distance has beyond the least one, below zero where it is too small.
        edge_margin ("ca − ca,min"): Length,
    }
    formula "smin: 4 · da cast-in not tightened; 6 · da tightened, expansion, undercut, adhesive; max(0.6 · hef, 6 · da) screw\nca,min: cover cast-in not tightened; 6 · da tightened; max(cover, 2 · dagg, cmin) post-installed"
    valid "The product's report has a least edge distance; without one see `anchor-least-edge-recalled`."
    source { work: "ACI 318-19", clause: "17.9.2, table 17.9.2(a)", evidence: Seen, seen: "the table quoted in an anchor maker's guide to the code (name withheld); that cover counts beside 6 · da for tightened cast-in anchors is left to the check of cover" }
    by distances
}

fn distances(anchors: &AnchorLeastDistances) -> Result<LeastDistances, OutOfReach> {
    positive("diameter", anchors.diameter, "5/8 in")?;
    positive("embedment", anchors.embedment, "4 in")?;
    for (name, length) in [
        ("cover", anchors.cover),
        ("aggregate", anchors.aggregate),
        ("product_edge", anchors.product_edge),
        ("edge", anchors.edge),
        ("spacing", anchors.spacing),
    ] {
        not_negative(name, length, "2 in")?;
    }
    let post_installed = !matches!(
        anchors.setting,
        AnchorSetting::CastIn | AnchorSetting::CastInTightened
    );
    if post_installed && anchors.product_edge.base() <= 0.0 {
        return Err(OutOfReach::new(
            "product_edge",
            "give the least edge distance of the product's report, such as 2 1/8 in",
        ));
    }
    let six = 6.0 * anchors.diameter.base();
    let least_spacing = match anchors.setting {
        AnchorSetting::CastIn => 4.0 * anchors.diameter.base(),
        AnchorSetting::Screw => six.max(0.6 * anchors.embedment.base()),
        _ => six,
    };
    let least_edge = match anchors.setting {
        AnchorSetting::CastIn => anchors.cover.base(),
        AnchorSetting::CastInTightened => six,
        _ => anchors
            .cover
            .base()
            .max(2.0 * anchors.aggregate.base())
            .max(anchors.product_edge.base()),
    };
    Ok(LeastDistances {
        least_spacing: Length::from_base(least_spacing),
        least_edge: Length::from_base(least_edge),
        spacing_margin: Length::from_base(anchors.spacing.base() - least_spacing),
        edge_margin: Length::from_base(anchors.edge.base() - least_edge),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn anchors(setting: AnchorSetting, diameter: f64) -> AnchorLeastDistances {
        AnchorLeastDistances {
            setting,
            diameter: Length::from_base(diameter),
            embedment: Length::from_base(0.1),
            cover: Length::from_base(0.05),
            aggregate: Length::from_base(0.019),
            product_edge: Length::from_base(0.06),
            edge: Length::from_base(0.1),
            spacing: Length::from_base(0.1),
        }
    }

    proptest! {
        #[test]
        fn thicker_anchors_never_come_nearer(diameter in 0.006..0.05) {
            for setting in AnchorSetting::ALL {
                let thin = anchors(*setting, diameter).evaluate().unwrap();
                let thick = anchors(*setting, diameter + 0.002).evaluate().unwrap();
                prop_assert!(thick.least_spacing >= thin.least_spacing);
                prop_assert!(thick.least_edge >= thin.least_edge);
            }
        }
    }

    #[test]
    fn a_post_installed_anchor_without_its_report_is_refused() {
        let mut unknown = anchors(AnchorSetting::Screw, 0.012);
        unknown.product_edge = Length::from_base(0.0);
        assert_eq!(unknown.evaluate().unwrap_err().input, "product_edge");
    }
}
