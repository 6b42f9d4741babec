//! The offer: a paper for the customer without any figure of the business, and the margin sheet for its owner.

mod margin;
mod money;
mod proposal;

pub(crate) use margin::stands;
pub use margin::tables;
pub use proposal::proposal;
