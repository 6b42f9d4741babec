//! The typesetter: named files in memory in, one archival and tagged PDF out.
//!
//! The documents are PDF/A-3b (archival, may carry the site file) and PDF/UA-1 (readable by assistive technology).
//! Whatever breaks either level stops the document, so that a fault in a template is seen when it is made.

mod fonts;
mod legible;
mod shelf;
mod typeset;
mod typeset_error;
mod world;

pub use fonts::INTER;
pub use legible::{Legible, PLACEHOLDER};
pub use shelf::Shelf;
pub use typeset::{TypesetOptions, typeset};
pub use typeset_error::{Complaint, TypesetError};
