//! Sine and cosine of an angle within half a turn, without branches, so that many are worked side by side.
//!
//! Both are the first terms of their series at a quarter of the angle, where the next term is below 1e-16, doubled twice.
//! Doubling takes an error of the sine four times into the cosine, so that each is right to 2e-15.

/// Coefficients of the series of the sine over x, in x²: from the highest.
const SINE: [f64; 8] = [
    -1.0 / 1_307_674_368_000.0,
    1.0 / 6_227_020_800.0,
    -1.0 / 39_916_800.0,
    1.0 / 362_880.0,
    -1.0 / 5_040.0,
    1.0 / 120.0,
    -1.0 / 6.0,
    1.0,
];

/// Coefficients of the series of the cosine, in x²: from the highest.
const COSINE: [f64; 9] = [
    1.0 / 20_922_789_888_000.0,
    -1.0 / 87_178_291_200.0,
    1.0 / 479_001_600.0,
    -1.0 / 3_628_800.0,
    1.0 / 40_320.0,
    -1.0 / 720.0,
    1.0 / 24.0,
    -0.5,
    1.0,
];

/// Sine and cosine of an angle between minus and plus half a turn.
#[allow(
    clippy::inline_always,
    reason = "measured: lanes stay lanes only where the call is gone"
)]
#[inline(always)]
pub(super) fn sin_cos(angle: f64) -> (f64, f64) {
    let quarter = 0.25 * angle;
    let square = quarter * quarter;
    let (mut sin, mut cos) = (SINE[0], COSINE[0]);
    for of in &SINE[1..] {
        sin = sin * square + of;
    }
    for of in &COSINE[1..] {
        cos = cos * square + of;
    }
    sin *= quarter;
    let (half_sin, half_cos) = (2.0 * sin * cos, 1.0 - 2.0 * sin * sin);
    (2.0 * half_sin * half_cos, 1.0 - 2.0 * half_sin * half_sin)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn they_are_those_of_the_mathematics_library() {
        for step in -32_000..=32_000 {
            let angle = f64::from(step) * 1e-4;
            let ((sin, cos), (sine, cosine)) = (sin_cos(angle), angle.sin_cos());
            assert!((sin - sine).abs() < 2e-15, "{angle}");
            assert!((cos - cosine).abs() < 2e-15, "{angle}");
        }
    }
}
