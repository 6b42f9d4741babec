//! Short ways to read the site: a value by its path.

use quantity::{Measured, Quantity};
use site::Signed;

/// A value of the site with a tolerance.
pub(crate) trait Readable {
    /// The quantity that it is a value of.
    type Gives: Quantity;
    /// The value with its tolerance.
    fn measured_value(&self) -> &Measured<Self::Gives>;
}

impl<Q: Quantity> Readable for Measured<Q> {
    type Gives = Q;
    fn measured_value(&self) -> &Measured<Q> {
        self
    }
}

impl<Q: Quantity> Readable for Signed<Q> {
    type Gives = Q;
    fn measured_value(&self) -> &Measured<Q> {
        self.measured()
    }
}

/// Reads a measured value by its path: `read!(asking, leaf.mass)`, or `read!(asking, gate.motion?.cruise_speed)` where
/// the record between may be missing.
macro_rules! read {
    ($asking:expr, $record:ident.$key:ident) => {
        $asking.read(&$record.origin, stringify!($key), $record.$key.as_ref())
    };
    ($asking:expr, $parent:ident.$record:ident?.$key:ident) => {
        match &$parent.$record {
            Some(record) => $asking.read(&record.origin, stringify!($key), record.$key.as_ref()),
            None => $asking.lack_of(
                &$parent.origin,
                concat!(stringify!($record), ".", stringify!($key)),
            ),
        }
    };
}

/// Picks a word, a count or a conductor size by its path, as [`read!`] does.
macro_rules! pick {
    ($asking:expr, $record:ident.$key:ident) => {
        $asking.pick(&$record.origin, stringify!($key), $record.$key)
    };
    ($asking:expr, $parent:ident.$record:ident?.$key:ident) => {
        match &$parent.$record {
            Some(record) => $asking.pick(&record.origin, stringify!($key), record.$key),
            None => $asking.pick(
                &$parent.origin,
                concat!(stringify!($record), ".", stringify!($key)),
                None,
            ),
        }
    };
}

/// Fetches something that is neither a quantity nor a word by its path, as [`read!`] does: a flag, a text, a day.
macro_rules! need {
    ($asking:expr, $record:ident.$key:ident, $write:literal) => {
        $asking.need(
            &$record.origin,
            stringify!($key),
            $record.$key.as_ref(),
            $write,
        )
    };
    ($asking:expr, $parent:ident.$record:ident?.$key:ident, $write:literal) => {
        match &$parent.$record {
            Some(record) => $asking.need(
                &record.origin,
                stringify!($key),
                record.$key.as_ref(),
                $write,
            ),
            None => $asking.lack(
                &$parent.origin,
                concat!(stringify!($record), ".", stringify!($key)),
                $crate::asking::Wants::Written($write),
            ),
        }
    };
}

pub(crate) use {need, pick, read};
