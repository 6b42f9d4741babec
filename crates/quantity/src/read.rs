//! Reading quantities as the trade writes them.
use crate::{ConductorSize, Kind, Measured, Quantity};
use std::ops::Range;

/// Why a text is not the quantity that was wanted: where in it, what was expected there, and what to write.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{what}")]
pub struct ReadError {
    /// What is wrong, as a sentence.
    pub what: String,
    /// The bytes of the text that are at fault.
    pub place: Range<usize>,
    /// What to write instead, ready to paste.
    pub write: Option<String>,
}

/// Reads a quantity of one kind, such as `14 ft 3 1/2 in` for a length.
pub fn read<Q: Quantity>(text: &str) -> Result<Q, ReadError> {
    read_kind(Q::KIND, text).map(Q::from_base)
}

/// Reads a quantity whose kind is known only at run time; the result is in the coherent SI unit.
pub fn read_kind(kind: Kind, text: &str) -> Result<f64, ReadError> {
    let _ = kind;
    Err(ReadError { what: text.into(), place: 0..text.len(), write: None })
}

/// Reads a quantity with an optional tolerance and an optional word on how it is known: `640 lb ± 5 %, assumed`.
pub fn read_measured<Q: Quantity>(text: &str) -> Result<Measured<Q>, ReadError> {
    read(text).map(Measured::exact)
}

/// Reads a conductor size, `18 AWG` or `1.5 mm²`.
pub fn read_conductor(text: &str) -> Result<ConductorSize, ReadError> {
    Err(ReadError { what: text.into(), place: 0..text.len(), write: None })
}
