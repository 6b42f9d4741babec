//! Long work that somebody may stop: it ends soon, and what it found by then is nothing.

use std::cell::RefCell;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

thread_local! {
    /// What stops the work that goes on in this thread.
    static STOP: RefCell<Option<Stop>> = const { RefCell::new(None) };
}

/// Stops work on any number of threads.
#[derive(Debug, Clone, Default)]
pub struct Stop(Arc<AtomicBool>);

impl Stop {
    /// Asks the work to end.
    pub fn ask(&self) {
        self.0.store(true, Ordering::Relaxed);
    }

    /// Somebody has asked.
    pub fn is_asked(&self) -> bool {
        self.0.load(Ordering::Relaxed)
    }

    /// Does some work in this thread, and in those that it begins; nothing where it was stopped meanwhile.
    pub fn unless_asked<T>(&self, work: impl FnOnce() -> T) -> Option<T> {
        let found = under(Some(self.clone()), work);
        (!self.is_asked()).then_some(found)
    }
}

/// Somebody wants the work of this thread to end.
pub(super) fn is_asked() -> bool {
    STOP.with_borrow(|stop| stop.as_ref().is_some_and(Stop::is_asked))
}

/// What stops the work of this thread, for those that it begins.
pub(super) fn handed_on() -> Option<Stop> {
    STOP.with_borrow(Clone::clone)
}

/// Does some work that this stops.
pub(super) fn under<T>(stop: Option<Stop>, work: impl FnOnce() -> T) -> T {
    let around = STOP.replace(stop);
    let found = work();
    STOP.set(around);
    found
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::walk::prove::in_order;
    use std::num::NonZeroUsize;
    use std::sync::atomic::AtomicUsize;

    #[test]
    fn what_is_stopped_ends_on_all_threads_and_gives_nothing() {
        let (stop, worked) = (Stop::default(), AtomicUsize::new(0));
        let threads = NonZeroUsize::new(3).unwrap();
        let found = stop.unless_asked(|| {
            in_order(1000, threads, |at| {
                worked.fetch_add(1, Ordering::Relaxed);
                if at == 5 {
                    stop.ask();
                }
                while at > 5 && !is_asked() {
                    std::thread::yield_now();
                }
            })
        });
        assert!(found.is_none());
        assert!(worked.into_inner() < 10);
    }

    #[test]
    fn what_is_not_stopped_gives_what_it_found_and_leaves_nothing_behind() {
        let stop = Stop::default();
        assert_eq!(stop.unless_asked(|| 7), Some(7));
        stop.ask();
        assert!(!is_asked() && handed_on().is_none());
    }
}
