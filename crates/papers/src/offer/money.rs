//! Sums of money as they are printed.

use crate::view::Cell;
use site::Price;

/// A sum with its thousands apart: `18,400.00 USD`.
pub(super) fn printed(price: Price) -> String {
    let whole = (price.hundredths() / 100).to_string();
    let mut grouped = String::new();
    for (at, digit) in whole.chars().enumerate() {
        if at > 0 && (whole.len() - at).is_multiple_of(3) {
            grouped.push(',');
        }
        grouped.push(digit);
    }
    format!(
        "{grouped}.{:02} {}",
        price.hundredths() % 100,
        price.currency()
    )
}

/// A sum as a number of its currency, for a workbook.
#[allow(
    clippy::cast_precision_loss,
    reason = "a double holds every sum below 90,000,000,000,000.00 to the hundredth"
)]
pub(super) fn cell(price: Option<Price>) -> Cell {
    price.map_or_else(
        || Cell::unknown("no price"),
        |price| Cell::number(price.hundredths() as f64 / 100.0, 2),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn thousands_stand_apart() {
        for (written, read) in [
            ("0.05 USD", "0.05 USD"),
            ("999.90 EUR", "999.90 EUR"),
            ("18,400.00 USD", "18400 USD"),
            ("1,234,567.89 USD", "1234567.89 USD"),
        ] {
            assert_eq!(printed(Price::read(read).unwrap()), written);
        }
    }
}
