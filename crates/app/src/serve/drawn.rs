//! What was drawn of the last few states of the jobs, so that looking again costs nothing.

use super::lock;
use super::refusal::Refusal;
use super::store::Seen;
use site::Site;
use std::collections::VecDeque;
use std::sync::{Arc, Mutex};

/// States of which something is kept.
const KEPT: usize = 6;

/// What was drawn last, each under the state that it is of.
pub(crate) struct Drawn<T> {
    kept: Mutex<VecDeque<(String, Arc<T>)>>,
}

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
        let known = |kept: &VecDeque<(String, Arc<T>)>| {
            let one = kept.iter().find(|(revision, _)| *revision == seen.revision);
            one.map(|(_, drawn)| drawn.clone())
        };
        if let Some(known) = known(&lock(&self.kept)) {
            return Ok(known);
        }
        let drawn = Arc::new(draw(site));
        let mut kept = lock(&self.kept);
        kept.push_front((seen.revision.clone(), drawn.clone()));
        kept.truncate(KEPT);
        Ok(drawn)
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
