//! Whether values that can be read can also be so.

use crate::model::Site;
use crate::problem::Problems;
use crate::source::Source;

/// Every value that cannot be so, or hardly is.
pub(crate) fn validate(_site: &Site, _sources: &[Source]) -> Problems {
    Problems::default()
}
