//! How values of a circuit are read: each end tried, or the bad end at once.

use crate::asking::{Asking, End, Readable};
use crate::outcome::Halt;
use site::Origin;

/// How values are read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum How {
    /// As written, for a search that tries their ends.
    Searched,
    /// At the end that lowers voltages, where so many loads hang together that trying each would take long.
    BadEnd,
}

impl How {
    pub(super) fn read<'s, R: Readable>(
        self,
        asking: &mut Asking<'s>,
        (origin, key): (&'s Origin, &'static str),
        value: Option<&R>,
        bad: End,
    ) -> Result<R::Gives, Halt> {
        match self {
            Self::Searched => asking.read(origin, key, value),
            Self::BadEnd => asking.read_at((origin, key), value, bad),
        }
    }

    pub(super) fn read_if_there<'s, R: Readable>(
        self,
        asking: &mut Asking<'s>,
        place: (&'s Origin, &'static str),
        value: Option<&R>,
        bad: End,
    ) -> Option<R::Gives> {
        value.and_then(|value| self.read(asking, place, Some(value), bad).ok())
    }
}
