//! Reading quantities as the trade writes them.

mod amount;
mod conductor;
mod cursor;
mod error;
mod measured;
mod number;
mod unit;
mod value;

pub use error::ReadError;
pub use value::read_value;

use crate::{ConductorSize, Kind, Measured, Quantity};
use amount::Reach;
use cursor::Cursor;

/// Reads a quantity of one kind, such as `14 ft 3 1/2 in` for a length.
pub fn read<Q: Quantity>(text: &str) -> Result<Q, ReadError> {
    read_kind(Q::KIND, text).map(Q::from_base)
}

/// Reads a quantity whose kind is known only at run time; the result is in the coherent SI unit.
pub fn read_kind(kind: Kind, text: &str) -> Result<f64, ReadError> {
    let mut cursor = Cursor::new(text);
    let amount = amount::amount(&mut cursor, kind, Reach::Scale)?;
    cursor.finish(kind)?;
    Ok(amount.base)
}

/// Reads a quantity with an optional tolerance and an optional word on how it is known: `640 lb ± 5 %, assumed`.
///
/// The tolerance is `± 2 in`, `+/- 2 in`, `± 5 %` or `+5/-0 mm`. A share (`%`) is a share of the value, except after
/// a ratio that is itself written in percent: `20 % ± 5 %` is 15 % to 25 %. The word is one of [`crate::Known`].
pub fn read_measured<Q: Quantity>(text: &str) -> Result<Measured<Q>, ReadError> {
    let mut cursor = Cursor::new(text);
    let amount = amount::amount(&mut cursor, Q::KIND, Reach::Scale)?;
    let tolerance = measured::tolerance(&mut cursor, Q::KIND, &amount)?;
    let known = measured::known(&mut cursor)?;
    cursor.finish(Q::KIND)?;
    let measured = Measured::new(Q::from_base(amount.base), tolerance, known);
    if measured.low().base().is_finite() && measured.high().base().is_finite() {
        Ok(measured)
    } else {
        Err(cursor.error(
            0..text.len(),
            "the tolerance makes the value larger than any number".to_owned(),
        ))
    }
}

/// Reads a conductor size, `18 AWG` or `1.5 mm²`.
pub fn read_conductor(text: &str) -> Result<ConductorSize, ReadError> {
    conductor::size(text)
}
