//! How the job is done by one pair of hands: its order, its weather, its nights, the lane beside it.

pub(crate) mod lane;
pub(crate) mod order;
pub(crate) mod overnight;
pub(crate) mod weather;

#[cfg(test)]
pub(crate) mod example;
