//! What was drawn of the last few states of the jobs, so that looking again costs nothing.

use super::lock;
use super::refusal::Refusal;
use super::store::Seen;
use site::Site;
use std::collections::VecDeque;
use std::sync::{Arc, Mutex, OnceLock};

/// States of which something is kept.
const KEPT: usize = 6;

/// What was drawn last, each under the state that it is of.
pub(crate) struct Drawn<T> {
    kept: Mutex<VecDeque<(String, Cell<T>)>>,
}

/// A drawing, or that somebody is about to draw it.
type Cell<T> = Arc<OnceLock<Arc<T>>>;

impl<T> Default for Drawn<T> {
    fn default() -> Self {
        Self {
            kept: Mutex::default(),
        }
    }
}

impl<T> Drawn<T> {
    /// What is drawn of a state: as it is kept, or drawn now.
    pub(crate) fn of(&self, seen: &Seen, draw: impl FnOnce(&Site) -> T) -> Result<Arc<T>, Refusal> {
        let site = readable(seen)?;
        Ok(self.under(&seen.revision, || draw(site)))
    }

    /// What is drawn under a name: as it is kept, or drawn now. Where somebody is drawing it already, that is waited for.
    pub(crate) fn under(&self, name: &str, draw: impl FnOnce() -> T) -> Arc<T> {
        let cell = {
            let mut kept = lock(&self.kept);
            let known = kept.iter().find(|(known, _)| known == name);
            let cell = known.map_or_else(Cell::default, |(_, cell)| cell.clone());
            kept.retain(|(known, _)| known != name);
            kept.push_front((name.to_owned(), cell.clone()));
            kept.truncate(KEPT);
            cell
        };
        cell.get_or_init(|| Arc::new(draw())).clone()
    }
}

/// Why there is no site.
pub(crate) const UNREADABLE: &str = "The site file has no name or no code basis that can be read.";

/// The site of a state, or why there is none.
pub(crate) fn readable(seen: &Seen) -> Result<&Site, Refusal> {
    seen.site
        .as_deref()
        .ok_or_else(|| Refusal::unusable(UNREADABLE, "Mend the problems that the job shows."))
}
