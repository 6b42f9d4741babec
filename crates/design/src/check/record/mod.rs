//! Records and papers.

pub(crate) mod revision_on_site;
