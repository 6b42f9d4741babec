//! A share written in percent, exact to the thousandth of a percent.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::Known;

/// A share such as `"6.625 %"`: whole thousandths of a percent, so that money that is shared out stays exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Percent(u32);

impl Percent {
    /// The whole.
    pub const WHOLE: Self = Self(100_000);

    /// Reads a share; nothing when it is not one, has more than three decimals, or is above 1000 %.
    pub fn read(text: &str) -> Option<Self> {
        let number = text.trim().strip_suffix('%')?.trim_end();
        let (whole, part) = number.split_once('.').unwrap_or((number, "0"));
        let digits = |text: &str, most: usize| {
            (1..=most).contains(&text.len()) && text.bytes().all(|byte| byte.is_ascii_digit())
        };
        if !digits(whole, 4) || !digits(part, 3) {
            return None;
        }
        let thousandths =
            whole.parse::<u32>().ok()? * 1000 + format!("{part:0<3}").parse::<u32>().ok()?;
        (thousandths <= 1_000_000).then_some(Self(thousandths))
    }

    /// Thousandths of a percent: 100,000 are the whole.
    pub fn thousandths(self) -> u32 {
        self.0
    }
}

impl std::fmt::Display for Percent {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (whole, part) = (self.0 / 1000, self.0 % 1000);
        let digits = format!("{part:03}");
        let digits = digits.trim_end_matches('0');
        if digits.is_empty() {
            write!(f, "{whole} %")
        } else {
            write!(f, "{whole}.{digits} %")
        }
    }
}

impl Field for Percent {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let expected = "a share in percent with at most three decimals, such as `\"6.25 %\"`";
        let Some(text) = node.text() else {
            reader.refuse_type(node, expected, "\"6.25 %\"");
            return None;
        };
        let read = Self::read(text);
        if read.is_none() {
            let what = format!("{} is not a share in percent", node.key_in_words());
            let problem = reader
                .problem(node, Code::UnreadableQuantity, what)
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
        definitions.shared("Percent", || {
            serde_json::json!({
                "description": "A share in percent, with at most three decimals.",
                "type": "string",
                "pattern": r"^[0-9]{1,4}(\.[0-9]{1,3})? ?%$",
                "examples": ["6.25 %"],
            })
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn shares_are_exact_and_written_as_they_are_read() {
        for (text, thousandths, written) in [
            ("6.625 %", 6_625, "6.625 %"),
            ("12%", 12_000, "12 %"),
            ("0.5 %", 500, "0.5 %"),
            ("100.00 %", 100_000, "100 %"),
        ] {
            let share = Percent::read(text).unwrap();
            assert_eq!(share.thousandths(), thousandths);
            assert_eq!(share.to_string(), written);
        }
    }

    #[test]
    fn anything_else_is_refused() {
        for text in [
            "", "12", "%", "-3 %", "1.2345 %", ".5 %", "5. %", "1001 %", "99999 %", "a %",
        ] {
            assert!(Percent::read(text).is_none(), "{text}");
        }
    }
}
