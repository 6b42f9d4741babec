//! Chance from a counter: every draw of a day can be made again from the seed, the day and its place.
//!
//! Words are splitmix64 (Steele, Lea and Flood, 2014; memory); the logarithm is a series of our own, so that a day is the
//! same to the last bit on every machine.

/// Draws that are made at a time.
pub(super) const SIDE: usize = 64;

/// A step that visits every word.
const STEP: u64 = 0x9e37_79b9_7f4a_7c15;
const ONE: u64 = 0x3ff0_0000_0000_0000;
const FRACTION: u64 = 0x000f_ffff_ffff_ffff;

/// What the next vehicles of a day are made from.
pub(super) struct Draws {
    key: u64,
    next: u64,
    /// Distances between arrivals, exponential with mean one.
    pub gaps: [f64; SIDE],
    /// Time at the reader beyond the least, exponential with mean one.
    pub beyond: [f64; SIDE],
    /// Words for choices.
    pub choices: [u64; SIDE],
}

impl Draws {
    /// The draws of a day.
    pub(super) fn of(seed: u64, day: u64) -> Self {
        Self {
            key: mixed(mixed(seed).wrapping_add(day.wrapping_mul(STEP))),
            next: 0,
            gaps: [0.0; SIDE],
            beyond: [0.0; SIDE],
            choices: [0; SIDE],
        }
    }

    /// Makes the next ones.
    pub(super) fn fill(&mut self) {
        let mut words = [0; SIDE];
        self.words(&mut words);
        for (gap, word) in self.gaps.iter_mut().zip(words) {
            *gap = exponential(word);
        }
        self.words(&mut words);
        for (beyond, word) in self.beyond.iter_mut().zip(words) {
            *beyond = exponential(word);
        }
        self.words(&mut words);
        self.choices = words;
    }

    fn words(&mut self, words: &mut [u64; SIDE]) {
        let mut at = self.key.wrapping_add(self.next.wrapping_mul(STEP));
        for word in words {
            at = at.wrapping_add(STEP);
            *word = mixed(at);
        }
        self.next += SIDE as u64;
    }
}

fn mixed(word: u64) -> u64 {
    let word = (word ^ (word >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    let word = (word ^ (word >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    word ^ (word >> 31)
}

/// Three shares between zero and one from one word.
#[allow(clippy::cast_precision_loss, reason = "24 bits are few")]
pub(super) fn shares(word: u64) -> [f64; 3] {
    const PART: f64 = 1.0 / 16_777_216.0;
    const REST: f64 = 1.0 / 65_536.0;
    [
        (word >> 40) as f64 * PART,
        ((word >> 16) & 0x00ff_ffff) as f64 * PART,
        (word & 0xffff) as f64 * REST,
    ]
}

/// −ln of a share above zero and up to one, made of 53 bits.
#[allow(
    clippy::cast_precision_loss,
    reason = "53 bits are what a number holds, and an exponent is small"
)]
fn exponential(word: u64) -> f64 {
    let bits = (((word >> 11) + 1) as f64).to_bits();
    // A number from 1 to 2⁵³ is mantissa · 2^exponent; above 1.41 the mantissa is halved, so that the series is short.
    let high = bits & FRACTION > 0x0006_a09e_667f_3bcd;
    let exponent = (bits >> 52) - 1023 + u64::from(high);
    let mantissa = f64::from_bits((bits & FRACTION) | ONE) * if high { 0.5 } else { 1.0 };
    let ratio = (mantissa - 1.0) / (mantissa + 1.0);
    let square = ratio * ratio;
    let fourth = square * square;
    let even =
        1.0 + fourth * (1.0 / 5.0 + fourth * (1.0 / 9.0 + fourth * (1.0 / 13.0 + fourth / 17.0)));
    let odd = 1.0 / 3.0 + fourth * (1.0 / 7.0 + fourth * (1.0 / 11.0 + fourth * (1.0 / 15.0)));
    let of_mantissa = 2.0 * ratio * (even + square * odd);
    (53.0 - exponent as f64) * std::f64::consts::LN_2 - of_mantissa
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_logarithm_is_that_of_the_library() {
        for word in [
            0,
            1 << 11,
            5 << 30,
            1 << 40,
            77 << 52,
            u64::MAX / 3,
            u64::MAX / 2,
            u64::MAX,
        ] {
            #[allow(clippy::cast_precision_loss, reason = "53 bits")]
            let share = ((word >> 11) + 1) as f64 / 9_007_199_254_740_992.0;
            assert!((exponential(word) + share.ln()).abs() < 4e-15, "{word}");
            assert!(exponential(word) >= 0.0);
        }
    }

    #[test]
    fn gaps_have_mean_and_spread_of_one() {
        let mut draws = Draws::of(7, 3);
        let (mut sum, mut squares) = (0.0, 0.0);
        for _ in 0..4000 {
            draws.fill();
            sum += draws.gaps.iter().sum::<f64>();
            squares += draws
                .beyond
                .iter()
                .map(|beyond| beyond * beyond)
                .sum::<f64>();
        }
        // 256,000 draws: the error of the mean is 0.002, that of the square, whose spread is √20, 0.009.
        assert!((sum / 256_000.0 - 1.0).abs() < 0.008, "{sum}");
        assert!((squares / 256_000.0 - 2.0).abs() < 0.036, "{squares}");
    }

    #[test]
    fn days_differ_and_come_again() {
        let filled = |day| {
            let mut draws = Draws::of(1, day);
            draws.fill();
            draws.gaps
        };
        assert!(
            filled(4)
                .iter()
                .zip(&filled(4))
                .all(|(a, b)| a.to_bits() == b.to_bits())
        );
        assert!(
            filled(4)
                .iter()
                .zip(&filled(5))
                .any(|(a, b)| a.to_bits() != b.to_bits())
        );
    }
}
