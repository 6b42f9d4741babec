//! Power at low voltage.

pub(crate) mod branches;
pub(crate) mod capacity;
mod carries;
pub(crate) mod coil;
pub(crate) mod conductor;
pub(crate) mod fuse;
pub(crate) mod gauge;
pub(crate) mod inrush;
pub(crate) mod overvoltage;
pub(crate) mod release;
pub(crate) mod shared_return;
mod supplied;
pub(crate) mod voltage;
