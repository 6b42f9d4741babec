//! How full a conduit is, and how full it may be.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Quantity as _, Ratio};

quantity::words! {
    /// How long a conduit is, for the fill that it may have.
    pub enum ConduitRun {
        /// Longer than 24 in.
        Run = "run",
        /// A nipple of 24 in or less between enclosures.
        Nipple = "nipple",
    }
}

formula! {
    /// Share of a conduit's inside area that its cables take up, against the largest share allowed.
    ///
    /// A cable with several cores counts as one. Two cables lie side by side and jam, so they get less than three.
    pub struct ConduitFill = "conduit-fill" in Ways {
        /// Inside area of the conduit, 100 %.
        bore ("A"): Area,
        /// Area of all cables together.
        cables ("a"): Area,
        /// Number of cables; one with several cores counts once.
        count ("n"): u32,
        /// A run, or a nipple of 24 in or less.
        run ("–"): ConduitRun,
    }
    gives
    /// Fill of a conduit.
    pub struct Fill {
        /// Share of the area that is taken.
        fill ("a/A"): Ratio,
        /// Largest share allowed.
        allowed ("k"): Ratio,
        /// Area that may be taken.
        allowed_area ("k · A"): Area,
        /// Area still free under the limit; below zero when it is overfilled.
        room ("k · A − a"): Area,
    }
    formula "k = 53 % for one cable, 31 % for two, 40 % for three and more, 60 % in a nipple\nfill = a / A"
    valid "Complete conduit systems under the NEC; not sleeves that only protect a short length."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9 table 1 and note 4", evidence: Seen, seen: "practice questions on conduit fill, and a page of a steel tube institute" }
    by conduit_fill
}

fn conduit_fill(conduit: &ConduitFill) -> Result<Fill, OutOfReach> {
    positive("bore", conduit.bore, "0.864 in²")?;
    not_negative("cables", conduit.cables, "0.2 in²")?;
    let allowed = Ratio::from_base(match (conduit.run, conduit.count) {
        (_, 0) => {
            return Err(OutOfReach::new(
                "count",
                "a conduit without cable has no fill; count its cables",
            ));
        }
        (ConduitRun::Nipple, _) => 0.60,
        (ConduitRun::Run, 1) => 0.53,
        (ConduitRun::Run, 2) => 0.31,
        (ConduitRun::Run, _) => 0.40,
    });
    let allowed_area: Area = conduit.bore * allowed;
    Ok(Fill {
        fill: conduit.cables / conduit.bore,
        allowed,
        allowed_area,
        room: allowed_area - conduit.cables,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn room_runs_out_exactly_where_the_fill_reaches_what_is_allowed(
            bore in 1e-5..1e-2_f64, share in 0.0..1.2_f64, count in 1_u32..40
        ) {
            let given = ConduitFill {
                bore: Area::from_base(bore), cables: Area::from_base(bore * share), count, run: ConduitRun::Run,
            };
            let fill = given.evaluate().unwrap();
            prop_assert_eq!(fill.room.base() >= 0.0, fill.allowed_area >= given.cables);
            prop_assert!((fill.fill.base() - share).abs() < 1e-9);
        }
    }
}
