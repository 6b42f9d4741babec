//! Units of length, area, volume, angle and ratio.

use super::{FOOT, INCH, MILE, Unit};
use std::f64::consts::PI;

/// Units of length, in meters.
pub(super) const LENGTH: &[Unit] = &[
    Unit::new(&["m", "meter", "meters", "metre", "metres"], 1.0),
    Unit::new(&["ft", "'", "′", "’", "foot", "feet"], FOOT),
    Unit::new(
        &["in", "\"", "″", "”", "''", "′′", "in.", "inch", "inches"],
        INCH,
    ),
    Unit::new(&["mm", "millimeter", "millimeters"], 1e-3),
    Unit::new(&["cm", "centimeter", "centimeters"], 1e-2),
    Unit::new(&["km", "kilometer", "kilometers"], 1e3),
    Unit::new(&["µm", "um"], 1e-6),
    Unit::new(&["mil", "mils"], INCH / 1000.0),
    Unit::new(&["yd", "yard", "yards"], 3.0 * FOOT),
    Unit::new(&["mi", "mile", "miles"], MILE),
];

/// Units of area, in square meters. A thousand circular mils is the area of a circle of √1000 mil.
pub(super) const AREA: &[Unit] = &[
    Unit::new(&["m²", "square meters"], 1.0),
    Unit::new(&["ft²", "sq ft", "square feet", "square foot"], FOOT * FOOT),
    Unit::new(
        &["in²", "sq in", "square inches", "square inch"],
        INCH * INCH,
    ),
    Unit::new(&["mm²", "sq mm", "square millimeters"], 1e-6),
    Unit::new(&["cm²", "sq cm"], 1e-4),
    Unit::new(&["yd²", "sq yd", "square yards"], 9.0 * FOOT * FOOT),
    Unit::new(&["kcmil", "MCM"], PI / 4.0 * INCH * INCH * 1e-3),
];

/// Units of volume, in cubic meters. The US gallon is 231 cubic inches.
pub(super) const VOLUME: &[Unit] = &[
    Unit::new(&["m³", "cubic meters"], 1.0),
    Unit::new(
        &["yd³", "cu yd", "cubic yards", "cubic yard"],
        27.0 * FOOT * FOOT * FOOT,
    ),
    Unit::new(
        &["ft³", "cu ft", "cubic feet", "cubic foot"],
        FOOT * FOOT * FOOT,
    ),
    Unit::new(
        &["in³", "cu in", "cubic inches", "cubic inch"],
        INCH * INCH * INCH,
    ),
    Unit::new(&["L", "l", "liter", "liters"], 1e-3),
    Unit::new(&["mL", "ml", "cm³"], 1e-6),
    Unit::new(&["gal", "gallon", "gallons"], 231.0 * INCH * INCH * INCH),
];

/// Units of second moment of area, in meters to the fourth.
pub(super) const SECOND_MOMENT_OF_AREA: &[Unit] = &[
    Unit::new(&["m⁴", "m^4"], 1.0),
    Unit::new(&["in⁴", "in^4"], INCH * INCH * INCH * INCH),
    Unit::new(&["cm⁴", "cm^4"], 1e-8),
    Unit::new(&["mm⁴", "mm^4"], 1e-12),
];

/// Units of angle, in radians.
pub(super) const ANGLE: &[Unit] = &[
    Unit::new(&["°", "deg", "degree", "degrees"], PI / 180.0),
    Unit::new(&["rad", "radian", "radians"], 1.0),
    Unit::new(&["mrad"], 1e-3),
];

/// Ways to write a number without unit.
pub(super) const RATIO: &[Unit] = &[
    Unit::new(&[""], 1.0),
    Unit::new(&["%", "percent", "per cent"], 1e-2),
    Unit::new(&["‰"], 1e-3),
];
