//! Loops over many scenarios with the widest registers of the processor at hand.
//!
//! A sum, a product, a root is the same number in a wide register as in a narrow one, and no product is fused with a sum: what
//! comes out is the same on every processor, to the last bit.

use fearless_simd::{Level, dispatch};

/// Works something; what it calls comes along where it is inlined.
#[inline]
pub(super) fn wide<R>(work: impl FnOnce() -> R) -> R {
    dispatch!(Level::new(), _ => work())
}
