//! The units of each kind, as they are written.
use crate::Kind;

/// One way to write a kind of quantity.
#[derive(Debug, Clone, Copy)]
pub struct Unit {
    /// How it is printed, and further spellings that are read.
    pub symbols: &'static [&'static str],
    /// Coherent SI units in one of this.
    pub scale: f64,
    /// Added after scaling; only temperatures have one.
    pub offset: f64,
}

/// The units in which a kind may be written, the preferred SI and US customary ones first.
pub fn units_of(kind: Kind) -> &'static [Unit] {
    let _ = kind;
    &[]
}
