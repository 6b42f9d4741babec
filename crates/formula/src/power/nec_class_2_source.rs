//! How much a source of a class 2 circuit may give.

use crate::OutOfReach;
use quantity::{Current, Power, Quantity as _, Voltage};

formula! {
    /// Greatest rating of a direct-current source whose circuits are of class 2: its wiring then needs no fuse of its own
    /// for the sake of its conductors.
    ///
    /// The source must be listed and marked as class 2; a source that merely stays below these figures is not one. Below
    /// 20 V other rows of the table hold, and above 60 V there is next to nothing left.
    pub struct NecClass2Source = "nec-class-2-source" in Power {
        /// Highest voltage that it gives, whatever the load.
        highest ("Vmax"): Voltage,
    }
    gives
    /// Limits of a class 2 source.
    pub struct Class2Limits {
        /// Greatest current on its nameplate.
        current ("I"): Current,
        /// Greatest output on its nameplate.
        power ("VA"): Power,
    }
    formula "VA = 100 VA\nI = 100 VA / Vmax"
    valid "Direct current from 20 V to 60 V, dry places; where wet contact is likely, up to 30 V."
    source { work: "NFPA 70 (NEC)", clause: "chapter 9, table 11(B); 725.2", evidence: Seen, seen: "a trade magazine on chapter 9: ecmweb.com/national-electrical-code/article/21161655/chapter-9-of-the-nec-part-7; on article 725: ecmweb.com/code-basics/article-725-class-2-and-3-circuits; notes of the table: flylib.com/books/en/2.419.1" }
    by nec_class_2_source
}

/// Greatest output, in volt-amperes.
const GREATEST: f64 = 100.0;
/// Voltages between which this row of the table holds.
const ROW: std::ops::RangeInclusive<f64> = 20.0..=60.0;

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn nec_class_2_source(source: &NecClass2Source) -> Result<Class2Limits, OutOfReach> {
    let volts = source.highest.base();
    if !ROW.contains(&volts) {
        return Err(OutOfReach::new(
            "highest",
            "the limit is known here from 20 V to 60 V of direct current; look the other rows of table 11(B) up",
        ));
    }
    Ok(Class2Limits {
        current: Current::from_base(GREATEST / volts),
        power: Power::from_base(GREATEST),
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
        fn current_times_voltage_is_the_output(volts in 20.0..60.0f64) {
            let limits = NecClass2Source { highest: Voltage::from_base(volts) }.evaluate().unwrap();
            prop_assert!((limits.current.base() * volts - limits.power.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn other_rows_are_refused() {
        for volts in [0.0, 12.0, 61.0, f64::NAN] {
            let source = NecClass2Source {
                highest: Voltage::from_base(volts),
            };
            assert_eq!(source.evaluate().unwrap_err().input, "highest");
        }
    }
}
