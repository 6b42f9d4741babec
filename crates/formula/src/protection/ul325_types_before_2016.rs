//! Types of entrapment protection that UL 325 allowed before 2016.

use super::{GateKind, MeansType, UsageClass};
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::Word as _;
use std::sync::LazyLock;

quantity::words! {
    /// Whether a type of protection was allowed in a role.
    pub enum TypeVerdict {
        /// It was.
        Allowed = "allowed",
        /// It was not.
        NotAllowed = "not allowed",
    }
}

formula! {
    /// Whether a type of entrapment protection was allowed as primary and as secondary means before 12 January 2016.
    ///
    /// For judging a gate that was built then. One primary and one secondary means of different types were needed; a
    /// single device could serve both directions, and a beam in one direction with an edge in the other counted as one
    /// means. When the operator is replaced the rules now in force hold.
    pub struct Ul325TypesBefore2016 = "ul325-types-before-2016" in Protection {
        /// Usage class of the gate.
        class ("–"): UsageClass,
        /// Kind of gate.
        gate ("–"): GateKind,
        /// Type of the means.
        means ("–"): MeansType,
    }
    gives
    /// Roles in which a type was allowed.
    pub struct TypeRoles {
        /// As primary means.
        primary ("–"): TypeVerdict,
        /// As secondary means.
        secondary ("–"): TypeVerdict,
    }
    formula "from the table by class; sliding, lifting and pivoting gates in one pair of columns, swinging gates and barrier arms in the other"
    valid "Operators made from 1 March 2000 to 11 January 2016, United States."
    source { work: "UL 325, 4th and 5th edition", clause: "table 30A.1", evidence: Seen, seen: "operator manuals before 2016 that reprint the table (addresses withheld); the standard itself was not at hand" }
    by roles
}

static TYPES: Stored = LazyLock::new(|| Table::read(include_str!("ul325_types_before_2016.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn roles(device: &Ul325TypesBefore2016) -> Result<TypeRoles, OutOfReach> {
    let group = match device.gate {
        GateKind::SingleSwing | GateKind::DoubleSwing | GateKind::BarrierArm => "swing",
        GateKind::TrackSlide
        | GateKind::CantileverSlide
        | GateKind::VerticalPivot
        | GateKind::VerticalLift => "slide",
    };
    Ok(TypeRoles {
        primary: verdict(*device, &format!("{group} primary"))?,
        secondary: verdict(*device, &format!("{group} secondary"))?,
    })
}

fn verdict(device: Ul325TypesBefore2016, column: &str) -> Result<TypeVerdict, OutOfReach> {
    let table = Table::of(&TYPES)?;
    let mut cells = table.column("class").zip(table.column(column));
    let types = cells
        .find(|(class, _)| class.words() == Some(device.class.word()))
        .and_then(|(_, types)| Cell::words(types))
        .ok_or_else(|| OutOfReach::new("class", "the table has no row for this usage class"))?;
    let listed = types.split(' ').any(|letter| letter == device.means.word());
    Ok(if listed {
        TypeVerdict::Allowed
    } else {
        TypeVerdict::NotAllowed
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn a_higher_class_never_allows_fewer_types() {
        for gate in GateKind::ALL {
            for means in MeansType::ALL {
                let of = |class| {
                    let (gate, means) = (*gate, *means);
                    let device = Ul325TypesBefore2016 { class, gate, means };
                    let roles = device.evaluate().unwrap();
                    [roles.primary, roles.secondary].map(|role| role == TypeVerdict::Allowed)
                };
                for (lower, higher) in UsageClass::ALL.iter().zip(&UsageClass::ALL[1..]) {
                    let (lower, higher) = (of(*lower), of(*higher));
                    assert!(
                        lower[0] <= higher[0] && lower[1] <= higher[1],
                        "{gate} {means}"
                    );
                }
            }
        }
    }
}
