//! Mass of the bars and tubes of a leaf.

use crate::OutOfReach;
use crate::check::positive;
use quantity::{Length, Mass, MassPerLength, Quantity as _, Ratio};

formula! {
    /// Mass of several equal bars, tubes, slats or racks.
    pub struct MemberMass = "member-mass" in Leaf {
        /// Mass of each unit of length.
        mass_per_length ("w"): MassPerLength,
        /// Length of one.
        length ("l"): Length,
        /// How many.
        count ("n"): u32,
    }
    gives
    /// Mass of members.
    pub struct MemberMasses {
        /// Mass of one.
        each ("m1"): Mass,
        /// Mass of all.
        mass ("m"): Mass,
    }
    formula "m1 = w · l\nm = n · m1"
    valid "Members of one section from end to end; welds, zinc and paint are not in it, see the working."
    source { work: "definition of mass per length", clause: "", evidence: Physics, seen: "weights of rails worked by hand from printed pounds per foot" }
    by mass
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn mass(member: &MemberMass) -> Result<MemberMasses, OutOfReach> {
    positive("mass_per_length", member.mass_per_length, "3.05 lb/ft")?;
    positive("length", member.length, "20 ft")?;
    positive("count", Ratio::from_base(f64::from(member.count)), "2")?;
    let each: Mass = member.mass_per_length * member.length;
    Ok(MemberMasses {
        each,
        mass: each * f64::from(member.count),
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
        fn cutting_a_member_in_two_changes_nothing(weight in 0.1..50.0, length in 0.1..12.0) {
            let member = |length, count| MemberMass {
                mass_per_length: MassPerLength::from_base(weight),
                length: Length::from_base(length),
                count,
            };
            let whole = member(length, 1).evaluate().unwrap().mass;
            let halves = member(length / 2.0, 2).evaluate().unwrap().mass;
            prop_assert!((whole - halves).base().abs() < 1e-9);
        }
    }

    #[test]
    fn none_at_all_is_refused() {
        let none = MemberMass {
            mass_per_length: MassPerLength::from_base(4.5),
            length: Length::from_base(6.0),
            count: 0,
        };
        assert_eq!(none.evaluate().unwrap_err().input, "count");
    }
}
