//! Exact sums of money. One rule of rounding throughout: a product is rounded once, to the nearest hundredth, a half up.

use crate::{Percent, Price};

impl Price {
    /// So many of so many parts of it, rounded once; nothing over no parts, or where no figure is large enough.
    pub fn parts(self, taken: u64, of: u64) -> Option<Self> {
        let exact = u128::from(self.hundredths()) * u128::from(taken);
        let of = u128::from(of);
        let down = exact.checked_div(of)?;
        let rounded = down + u128::from((exact - down * of) * 2 >= of);
        Some(self.of_hundredths(u64::try_from(rounded).ok()?))
    }

    /// A share of it, rounded once.
    pub fn percent(self, share: Percent) -> Option<Self> {
        let whole = u64::from(Percent::WHOLE.thousandths());
        self.parts(u64::from(share.thousandths()), whole)
    }

    /// What is left when something is taken off; nothing where that is more, or in another currency.
    pub fn minus(self, other: Self) -> Option<Self> {
        let left = self.hundredths().checked_sub(other.hundredths())?;
        (self.currency() == other.currency()).then(|| self.of_hundredths(left))
    }

    /// It, shared out by weights so that the shares add up to it: each is rounded down, and the hundredths that are left go to
    /// the largest remainders, the first of equal ones first. Nothing where the weights are all zero.
    pub fn shared(self, weights: &[Percent]) -> Option<Vec<Self>> {
        let weights: Vec<u128> = weights
            .iter()
            .map(|it| u128::from(it.thousandths()))
            .collect();
        let all: u128 = weights.iter().sum();
        let exact = |weight: &u128| u128::from(self.hundredths()) * weight;
        let mut shares = Vec::with_capacity(weights.len());
        for weight in &weights {
            shares.push(u64::try_from(exact(weight).checked_div(all)?).ok()?);
        }
        let mut by_remainder: Vec<usize> = (0..weights.len()).collect();
        by_remainder.sort_by_key(|at| std::cmp::Reverse(exact(&weights[*at]) % all.max(1)));
        let left = self.hundredths().checked_sub(shares.iter().sum())?;
        for at in by_remainder.into_iter().take(usize::try_from(left).ok()?) {
            shares[at] += 1;
        }
        Some(
            shares
                .into_iter()
                .map(|share| self.of_hundredths(share))
                .collect(),
        )
    }
}

impl serde::Serialize for Price {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl serde::Serialize for Percent {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use proptest::prelude::*;

    fn price(text: &str) -> Price {
        Price::read(text).unwrap()
    }

    fn percents(texts: &[&str]) -> Vec<Percent> {
        texts
            .iter()
            .map(|text| Percent::read(text).unwrap())
            .collect()
    }

    #[test]
    fn a_half_goes_up_and_is_rounded_once() {
        assert_eq!(price("0.01 USD").parts(1, 2).unwrap(), price("0.01 USD"));
        assert_eq!(price("10.00 USD").parts(1, 3).unwrap(), price("3.33 USD"));
        assert_eq!(price("0.05 USD").parts(1, 10).unwrap(), price("0.01 USD"));
        assert_eq!(price("0.04 USD").parts(1, 10).unwrap(), price("0.00 USD"));
        // 1234.50 at 6.625 % is 81.785625.
        let tax = price("1234.50 USD").percent(Percent::read("6.625 %").unwrap());
        assert_eq!(tax.unwrap(), price("81.79 USD"));
        assert_eq!(price("1.00 USD").parts(1, 0), None);
        assert_eq!(price("5.00 USD").minus(price("5.01 USD")), None);
        assert_eq!(price("5.00 USD").minus(price("1.00 EUR")), None);
    }

    #[test]
    fn the_largest_remainder_gets_the_hundredth_that_is_left() {
        let thirds = price("100.00 EUR")
            .shared(&percents(&["1 %", "1 %", "1 %"]))
            .unwrap();
        assert_eq!(
            thirds,
            [price("33.34 EUR"), price("33.33 EUR"), price("33.33 EUR")]
        );
        // 0.10 over 45, 35 and 20: 4.5, 3.5 and 2 hundredths.
        let shares = price("0.10 EUR")
            .shared(&percents(&["45 %", "35 %", "20 %"]))
            .unwrap();
        assert_eq!(
            shares,
            [price("0.05 EUR"), price("0.03 EUR"), price("0.02 EUR")]
        );
        assert_eq!(price("1.00 EUR").shared(&percents(&["0 %"])), None);
    }

    proptest! {
        #[test]
        fn shares_add_up(hundredths in 0_u64..u64::MAX / 2, weights in prop::collection::vec(1_u32..99, 1..9)) {
            let all = price("0.00 USD").of_hundredths(hundredths);
            let weights: Vec<Percent> =
                weights.iter().map(|weight| Percent::read(&format!("{weight} %")).unwrap()).collect();
            let shares = all.shared(&weights).unwrap();
            prop_assert_eq!(shares.iter().map(|share| share.hundredths()).sum::<u64>(), hundredths);
        }

        #[test]
        fn parts_are_within_half_a_hundredth(hundredths in 0_u64..1_000_000_000, taken in 0_u64..10_000, of in 1_u64..10_000) {
            let got = price("0.00 USD").of_hundredths(hundredths).parts(taken, of).unwrap().hundredths();
            let (exact, got) = (i128::from(hundredths) * i128::from(taken), i128::from(got) * i128::from(of));
            prop_assert!((got - exact).abs() * 2 <= i128::from(of));
        }
    }
}
