//! gatewright
fn main() {}
