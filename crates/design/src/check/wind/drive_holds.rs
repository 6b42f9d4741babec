//! What a standing drive holds, engaged and without power.

use crate::asking::{Asking, pick, read};
use crate::check::drive::operator_of_leaf;
use crate::check::force::swing_drive::{Hold, hold};
use crate::outcome::Halt;
use formula::motion::LinearActuatorGeometry;
use quantity::{Force, Quantity as _};
use site::{DriveKind, Gate, Leaf, Site};

/// What the drive of a leaf holds.
pub(super) fn standing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    let operator = operator_of_leaf(asking, site, (gate, leaf))?;
    read!(asking, operator.holding_force)
}

/// What the drive of a swing leaf holds at its free end, wherever it has stopped: of a linear drive its ram with the
/// least leverage it has, which is at one of the ends.
pub(super) fn at_free_end<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    let held = standing(asking, site, gate, leaf);
    let width = read!(asking, leaf.length);
    let operator = operator_of_leaf(asking, site, (gate, leaf))?;
    let kind = pick!(asking, operator.drive);
    let (width, held) = (width?, held?);
    if kind? != DriveKind::Linear {
        return Ok(held);
    }
    let travel = read!(asking, gate.travel_angle);
    let Hold::Ram(ram) = hold(asking, operator, width)? else {
        return Err(Halt);
    };
    let closed = asking.work(&ram)?.lever_arm;
    let open = asking.work(&LinearActuatorGeometry {
        angle: travel?,
        ..ram
    })?;
    let least = if closed < open.lever_arm {
        closed
    } else {
        open.lever_arm
    };
    Ok(Force::from_base(held.base() * least.base() / width.base()))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::at_free_end;
    use crate::asking::Asking;
    use crate::check::testing::site;
    use quantity::UnitSystem;

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "single-swing"
        travel_angle = "90°"
        [[gate.leaf]]
        id = "leaf"
        length = "3 m"
        [[operator]]
        id = "drive"
        gate = "court"
        drive = "linear"
        holding_force = "30 kN"
        [operator.mounting]
        rear_behind = "200 mm"
        rear_across = "200 mm"
        front_along = "800 mm"
        front_across = "0 mm"
    "#;

    fn held(text: &str) -> f64 {
        let site = site(text);
        let mut asking = Asking::new(UnitSystem::Si);
        let (gate, leaf) = (&site.gate[0], &site.gate[0].leaf[0]);
        at_free_end(&mut asking, &site, gate, leaf).unwrap().value
    }

    #[test]
    fn a_ram_holds_with_its_least_leverage() {
        // By hand: closed, the pins stand 1 m along and 0.2 m across apart, twice the triangle is 0.16 m²; open, 0.2 m and
        // 0.6 m apart with the same triangle. The least leverage is the closed one.
        let least = 0.16 / 1.0_f64.hypot(0.2);
        let expected = 30_000.0 * least / 3.0;
        assert!((held(SITE) / expected - 1.0).abs() < 1e-9, "{}", held(SITE));
    }

    #[test]
    fn a_shaft_holds_what_is_stated_at_the_free_end() {
        assert!((held(&SITE.replace("linear", "underground")) - 30_000.0).abs() < 1e-9);
    }
}
