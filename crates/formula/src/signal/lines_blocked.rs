//! Calls that find all lines busy.

use super::rate::{some, turned_away};
use crate::OutOfReach;
use crate::check::positive;
use quantity::{Quantity as _, Ratio};

formula! {
    /// Share of calls that find all lines busy and are lost: intercom calls over a few lines, visitors at stations.
    pub struct LinesBlocked = "lines-blocked" in Signal {
        /// Calls in the time that one lasts, on the mean (erlang).
        load ("a"): Ratio,
        /// Lines.
        servers ("c"): u32,
    }
    gives
    /// What is lost.
    pub struct CallsLost {
        /// Share of calls that are lost.
        blocked ("B"): Ratio,
        /// Lines busy on the mean.
        carried ("Y"): Ratio,
    }
    formula "B = (aᶜ / c!) / Σ aᵏ / k!, k from 0 to c\nY = a · (1 − B)"
    valid "Calls at random; who finds all busy goes away and does not call again at once; 1 to 1000 lines."
    source { work: "Erlang's loss formula", clause: "", evidence: Seen, seen: "tables and a worked example: www.globalspec.com/reference/55139/203279/appendix-a-table-of-erlang-b, erlang.com/calculatormanual/howmuchtrafficcanatrunkgrouphandle.htm" }
    by lines_blocked
}

fn lines_blocked(lines: &LinesBlocked) -> Result<CallsLost, OutOfReach> {
    positive("load", lines.load, "0.4")?;
    some(lines.servers)?;
    let blocked = turned_away(lines.load.base(), lines.servers);
    Ok(CallsLost {
        blocked: Ratio::from_base(blocked),
        carried: lines.load * (1.0 - blocked),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn blocked(load: f64, servers: u32) -> f64 {
        let lines = LinesBlocked {
            load: Ratio::from_base(load),
            servers,
        };
        lines.evaluate().unwrap().blocked.base()
    }

    proptest! {
        #[test]
        fn more_load_blocks_more_and_another_line_less(load in 0.01..200.0, servers in 1..200u32) {
            let (less, more) = (blocked(load, servers + 1), blocked(load * 1.01, servers));
            let now = blocked(load, servers);
            // Below the least number that keeps all its digits they are all none.
            prop_assume!(less > f64::MIN_POSITIVE);
            prop_assert!(more > now && less < now);
        }
    }

    #[test]
    fn no_line_is_refused() {
        let none = LinesBlocked {
            load: Ratio::from_base(1.0),
            servers: 0,
        };
        assert_eq!(none.evaluate().unwrap_err().input, "servers");
    }
}
