//! Sun on panels.

pub(crate) mod carried;
pub(crate) mod cold_voltage;
pub(crate) mod year;
