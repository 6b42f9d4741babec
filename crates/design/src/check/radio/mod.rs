//! Radio: links between gate and house, and hand remotes.

pub(crate) mod ends;
pub(crate) mod in_path;
pub(crate) mod leaf_in_path;
pub(crate) mod legal;
pub(crate) mod link;
pub(crate) mod remote_range;
