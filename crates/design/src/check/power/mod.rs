//! Power at low voltage.

pub(crate) mod branches;
pub(crate) mod capacity;
mod carries;
pub(crate) mod coil;
pub(crate) mod fuse;
pub(crate) mod gauge;
mod heat_of_short;
pub(crate) mod inrush;
pub(crate) mod overvoltage;
pub(crate) mod release;
pub(crate) mod shared_return;
mod supplied;
mod unfused;
pub(crate) mod voltage;

pub(crate) use voltage::lowest_at;
