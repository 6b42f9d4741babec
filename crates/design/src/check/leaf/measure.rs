//! Mass and center of a leaf: weighed or measured, else summed from its members.

use super::member::{self, Placed};
use crate::asking::{Asking, read};
use crate::outcome::Halt;
use quantity::{Length, Mass, Quantity as _};
use site::Leaf;

/// Mass of the finished leaf: weighed, else the sum of its members.
pub(crate) fn mass<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Mass, Halt> {
    if leaf.mass.is_some() || leaf.member.is_empty() {
        return read!(asking, leaf.mass);
    }
    let members = member::placed(asking, leaf)?;
    let mass = total(&members);
    asking.note(|print| {
        format!(
            "Its {} kinds of members weigh {} together; welds, paint and zinc are in it only where a member says so.",
            members.len(),
            print.q(mass)
        )
    });
    Ok(mass)
}

/// Distance of the center of gravity from the latching end: measured, else from the places of the members.
pub(crate) fn center_along<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    if leaf.center_along.is_some() || !leaf.member.iter().any(|member| member.along.is_some()) {
        return read!(asking, leaf.center_along);
    }
    let members = member::placed(asking, leaf);
    let middle = read!(asking, leaf.length).map(|length| length / 2.0);
    let (members, middle) = (members?, middle?);
    Ok(center(asking, &members, middle, |member| member.along))
}

/// Distance of the center of gravity from the hinge line of a leaf that turns about its end.
pub(crate) fn center_from_hinge<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
) -> Result<Length, Halt> {
    let along = center_along(asking, leaf);
    let length = read!(asking, leaf.length);
    let (along, length) = (along?, length?);
    if along >= length {
        return asking.refuse(
            "the center of gravity lies beyond the hinge line: it is counted from the latching end and less than the leaf is long",
        );
    }
    Ok(length - along)
}

/// Height of the center of gravity above the bottom edge: measured, else from the places of the members.
#[allow(
    dead_code,
    reason = "checks of swing leaves and of leaves that rise use it"
)]
pub(crate) fn center_up<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    if leaf.center_up.is_some() || !leaf.member.iter().any(|member| member.up.is_some()) {
        return read!(asking, leaf.center_up);
    }
    let members = member::placed(asking, leaf);
    let middle = read!(asking, leaf.height).map(|height| height / 2.0);
    let (members, middle) = (members?, middle?);
    Ok(center(asking, &members, middle, |member| member.up))
}

fn total(members: &[Placed]) -> Mass {
    members
        .iter()
        .fold(Mass::from_base(0.0), |sum, member| sum + member.mass)
}

/// The middle of all masses, those without a place taken in the middle of the leaf.
fn center(
    asking: &mut Asking<'_>,
    members: &[Placed],
    middle: Length,
    place: impl Fn(&Placed) -> Option<Length>,
) -> Length {
    let mass = total(members);
    let moment: f64 = members
        .iter()
        .map(|member| member.mass.base() * place(member).unwrap_or(middle).base())
        .sum();
    let center = Length::from_base(moment / mass.base());
    let unplaced = members.iter().filter(|member| place(member).is_none());
    let unplaced = unplaced.fold(Mass::from_base(0.0), |sum, member| sum + member.mass);
    asking.note(|print| {
        format!(
            "The members' center lies at {}; {} of {} without a written place is taken in the middle of the leaf.",
            print.q(center),
            print.q(unplaced),
            print.q(mass)
        )
    });
    center
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::check::testing::site;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "6 ft"
        material = "steel"
        [[gate.leaf.member]]
        what = "rails"
        count = 2
        length = "10 ft"
        section = "HSS 2x2x1/8"
        [[gate.leaf.member]]
        what = "latch"
        count = 1
        length = "1 ft"
        mass_per_length = "10 lb/ft"
        along = "6 in"
        up = "3 ft"
    "#;

    /// By hand: two rails of 10 ft at 3.05 lb/ft and a latch of 10 lb, 6 in from the end.
    #[test]
    fn the_sum_and_the_center_of_the_members() {
        let site = site(SITE);
        let leaf = &site.gate[0].leaf[0];
        let mut asking = Asking::new(site.site.unit_system());
        let mass = super::mass(&mut asking, leaf).unwrap();
        assert!((mass.base() / 0.453_592_37 - 71.0).abs() < 1e-6);
        let along = center_along(&mut asking, leaf).unwrap();
        let feet = (61.0 * 5.0 + 10.0 * 0.5) / 71.0;
        assert!((along.base() / 0.3048 - feet).abs() < 1e-6);
        let from_hinge = center_from_hinge(&mut asking, leaf).unwrap();
        assert!((from_hinge.base() / 0.3048 - (10.0 - feet)).abs() < 1e-6);
        assert!((center_up(&mut asking, leaf).unwrap().base() / 0.3048 - 3.0).abs() < 1e-6);
    }

    #[test]
    fn a_weighed_leaf_is_not_summed() {
        let weighed = SITE.replace("height = \"6 ft\"", "height = \"6 ft\"\nmass = \"90 lb\"");
        let site = site(&weighed);
        let mut asking = Asking::new(site.site.unit_system());
        let mass = super::mass(&mut asking, &site.gate[0].leaf[0]).unwrap();
        assert!((mass.base() / 0.453_592_37 - 90.0).abs() < 1e-6);
    }

    #[test]
    fn a_member_without_a_count_or_a_place_is_asked_for() {
        let site = site(
            &SITE
                .replace("count = 2", "")
                .replace("along = \"6 in\"", ""),
        );
        let leaf = &site.gate[0].leaf[0];
        let mut asking = Asking::new(site.site.unit_system());
        assert!(super::mass(&mut asking, leaf).is_err());
        assert!(center_along(&mut asking, leaf).is_err());
        let keys: Vec<&str> = asking.lacks.iter().map(|lack| lack.key).collect();
        assert_eq!(keys, ["count", "center_along"]);
    }
}
