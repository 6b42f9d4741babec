//! A measured length as a shop drawing writes it.

use quantity::{Length, Quantity, UnitSystem};

/// Parts of an inch that a dimension is rounded to.
const PARTS: f64 = 16.0;

/// A length as a dimension: `14'-3 1/2"` to the nearest sixteenth of an inch, or whole millimeters without a unit.
///
/// A length below one foot is in inches alone: `9 1/2"`. The caller says on the sheet that plain numbers are
/// millimeters; the sheet of this crate does.
pub fn dimension_text(length: Length, system: UnitSystem) -> String {
    match system {
        UnitSystem::Si => format!("{:.0}", (length.base().abs() * 1000.0).round()),
        UnitSystem::UsCustomary => feet_and_inches(length.base().abs() / 0.0254),
    }
}

/// Feet, inches and sixteenths.
fn feet_and_inches(inches: f64) -> String {
    let sixteenths = (inches * PARTS).round();
    let feet = (sixteenths / (12.0 * PARTS)).floor();
    let rest = sixteenths - feet * 12.0 * PARTS;
    let whole = (rest / PARTS).floor();
    let part = fraction(rest - whole * PARTS);
    let inches = match (
        whole > 0.0 || feet > 0.0 || part.is_empty(),
        part.is_empty(),
    ) {
        (true, true) => format!("{whole:.0}\""),
        (true, false) => format!("{whole:.0} {part}\""),
        (false, _) => format!("{part}\""),
    };
    if feet > 0.0 {
        format!("{feet:.0}'-{inches}")
    } else {
        inches
    }
}

/// So many sixteenths as a fraction in lowest terms; empty for none.
fn fraction(sixteenths: f64) -> String {
    let (mut above, mut below) = (sixteenths, PARTS);
    if above < 0.5 {
        return String::new();
    }
    while above % 2.0 == 0.0 {
        above /= 2.0;
        below /= 2.0;
    }
    format!("{above:.0}/{below:.0}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::units::length::{foot, inch, millimeter};

    /// The dimension text of a number of inches.
    fn us(inches: f64) -> String {
        dimension_text(Length::new::<inch>(inches), UnitSystem::UsCustomary)
    }

    #[test]
    fn feet_and_inches_as_on_a_drawing() {
        assert_eq!(us(240.0), "20'-0\"");
        assert_eq!(us(171.5), "14'-3 1/2\"");
        assert_eq!(us(9.0625), "9 1/16\"");
        assert_eq!(us(0.5), "1/2\"");
        assert_eq!(us(0.0), "0\"");
        assert_eq!(us(12.25), "1'-0 1/4\"");
    }

    #[test]
    fn rounding_carries_into_the_next_foot() {
        assert_eq!(us(11.99), "1'-0\"");
        assert_eq!(us(23.97), "2'-0\"");
    }

    #[test]
    fn millimeters_are_whole() {
        assert_eq!(
            dimension_text(Length::new::<millimeter>(6095.6), UnitSystem::Si),
            "6096"
        );
        assert_eq!(
            dimension_text(Length::new::<foot>(-20.0), UnitSystem::Si),
            "6096"
        );
    }
}
