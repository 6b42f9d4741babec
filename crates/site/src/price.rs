//! What a part costs, exact to the hundredth.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::{Known, Quantity as _, Ratio};

/// A price, written `"1240.00 USD"`: exact hundredths and the three letters of its currency (ISO 4217).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Price {
    hundredths: u64,
    currency: [u8; 3],
}

impl Price {
    /// Reads a price; nothing when it is not one.
    pub fn read(text: &str) -> Option<Self> {
        let (amount, currency) = text.trim().rsplit_once(' ')?;
        let currency: [u8; 3] = currency.as_bytes().try_into().ok()?;
        if !currency.iter().all(u8::is_ascii_uppercase) {
            return None;
        }
        let amount = amount.trim().replace(',', "");
        let (whole, part) = amount.split_once('.').unwrap_or((&amount, "00"));
        let digits =
            |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
        if !digits(whole) || !digits(part) || part.len() != 2 {
            return None;
        }
        let hundredths = whole.parse::<u64>().ok()?.checked_mul(100)?;
        Some(Self {
            hundredths: hundredths.checked_add(part.parse().ok()?)?,
            currency,
        })
    }

    /// Hundredths of the currency's unit.
    pub fn hundredths(self) -> u64 {
        self.hundredths
    }

    /// So many hundredths in the same currency.
    #[must_use]
    pub fn of_hundredths(self, hundredths: u64) -> Self {
        Self { hundredths, ..self }
    }

    /// What so many of it cost; nothing where no figure is large enough.
    pub fn times(self, count: u32) -> Option<Self> {
        let hundredths = self.hundredths.checked_mul(u64::from(count))?;
        Some(Self { hundredths, ..self })
    }

    /// What both cost together; nothing where their currencies differ.
    pub fn plus(self, other: Self) -> Option<Self> {
        let hundredths = self.hundredths.checked_add(other.hundredths)?;
        (self.currency == other.currency).then_some(Self { hundredths, ..self })
    }

    /// What so large a share of it costs, to the nearest hundredth; nothing where no figure is large enough.
    #[allow(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "the product is not below zero and is refused where a double does not hold it exactly"
    )]
    pub fn share(self, share: Ratio) -> Option<Self> {
        // A half goes up, also where converted units have left it a hair below.
        let hundredths = (self.hundredths as f64 * share.base() + 1e-7).round();
        let exact = (0.0..9e15).contains(&hundredths);
        exact.then_some(Self {
            hundredths: hundredths as u64,
            ..self
        })
    }

    /// The three letters of the currency.
    pub fn currency(&self) -> &str {
        std::str::from_utf8(&self.currency).unwrap_or_default()
    }
}

impl std::fmt::Display for Price {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (whole, part) = (self.hundredths / 100, self.hundredths % 100);
        write!(f, "{whole}.{part:02} {}", self.currency())
    }
}

impl Field for Price {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let expected =
            "a price with two decimals and the letters of its currency, such as `\"1240.00 USD\"`";
        let Some(text) = node.text() else {
            reader.refuse_type(node, expected, "\"1240.00 USD\"");
            return None;
        };
        let read = Self::read(text);
        if read.is_none() {
            let what = format!("{} is not a price", node.key_in_words());
            let problem = reader
                .problem(node, Code::NotAPrice, what)
                .expected(expected);
            reader.report(problem);
        }
        read
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        definitions.shared("Price", || {
            serde_json::json!({
                "description": "A price: two decimals and the letters of its currency.",
                "type": "string",
                "pattern": r"^[0-9,]+(\.[0-9]{2})? [A-Z]{3}$",
                "examples": ["1240.00 USD"],
            })
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn prices_are_exact_and_written_as_they_are_read() {
        let price = Price::read("1,240.05 USD").unwrap();
        assert_eq!(price.hundredths(), 124_005);
        assert_eq!(price.to_string(), "1240.05 USD");
        assert_eq!(Price::read("990 EUR").unwrap().to_string(), "990.00 EUR");
    }

    #[test]
    fn prices_add_up_in_one_currency() {
        let one = Price::read("12.35 USD").unwrap();
        assert_eq!(one.times(4).unwrap().to_string(), "49.40 USD");
        let sum = one.plus(Price::read("0.65 USD").unwrap());
        assert_eq!(sum.unwrap().to_string(), "13.00 USD");
        assert_eq!(one.plus(Price::read("1.00 EUR").unwrap()), None);
        let most = Price {
            hundredths: u64::MAX,
            ..one
        };
        assert_eq!(most.times(2), None);
        let of = |share: f64| one.share(Ratio::from_base(share));
        assert_eq!(of(1.26).unwrap().to_string(), "15.56 USD");
        assert_eq!(of(-1.0), None);
        assert_eq!(of(f64::NAN), None);
    }

    #[test]
    fn anything_else_is_refused() {
        for text in [
            "",
            "12",
            "12.5 USD",
            "USD 12",
            "-3.00 USD",
            "12.00 usd",
            "99999999999999999999 USD",
        ] {
            assert!(Price::read(text).is_none(), "{text}");
        }
    }
}
