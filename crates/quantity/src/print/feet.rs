//! Lengths in feet, inches and sixteenths.

/// Meters in an inch.
const INCH: f64 = 0.0254;
/// Meters in a sixteenth of an inch.
const SIXTEENTH: f64 = INCH / 16.0;
/// The most that rounding to a sixteenth may lose, in meters.
pub(super) const ROUNDING: f64 = SIXTEENTH / 2.0;
/// Sixteenths of an inch in a foot.
const PER_FOOT: u64 = 192;
/// Longest length in feet and inches, in meters: 100,000 ft.
const LONGEST: f64 = 30_480.0;

/// Whether a length is written in feet and inches: from an inch upward, and below it where it is a whole sixteenth.
pub(super) fn is_apt(meters: f64) -> bool {
    let size = meters.abs();
    let sixteenths = size / SIXTEENTH;
    size < LONGEST && (size >= INCH || (sixteenths - sixteenths.round()).abs() < 1e-6)
}

/// A length to the nearest sixteenth of an inch: `14 ft 3 1/2 in`.
pub(super) fn sixteenths(meters: f64) -> String {
    // Below `LONGEST` there are fewer than twenty million sixteenths.
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small number, not negative"
    )]
    let total = (meters.abs() / SIXTEENTH).round() as u64;
    let (feet, rest) = (total / PER_FOOT, total % PER_FOOT);
    let sign = if meters < 0.0 && total > 0 { "-" } else { "" };
    match (feet, rest) {
        (0, rest) => format!("{sign}{}", inches(rest)),
        (feet, 0) => format!("{sign}{feet} ft"),
        (feet, rest) => format!("{sign}{feet} ft {}", inches(rest)),
    }
}

/// Sixteenths as inches: `3 1/2 in`.
fn inches(sixteenths: u64) -> String {
    let (whole, part) = (sixteenths / 16, sixteenths % 16);
    let shared = 1 << part.trailing_zeros().min(4);
    let fraction = format!("{}/{}", part / shared, 16 / shared);
    match (whole, part) {
        (whole, 0) => format!("{whole} in"),
        (0, _) => format!("{fraction} in"),
        (whole, _) => format!("{whole} {fraction} in"),
    }
}
