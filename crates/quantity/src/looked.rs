//! Which measured values some work looked at: as long as none of them is another, the work finds what it found.

use crate::{Measured, Quantity};
use std::cell::Cell;

/// Words of 64 marks: enough that two values of a site seldom share a mark.
const WORDS: usize = 64;
/// Digits of a scattered number that name one of all marks.
const SHIFT: u32 = 64 - (WORDS * 64).ilog2();
/// An odd number without a pattern: 2⁶⁴ over the golden ratio.
const SCATTER: u64 = 0x9E37_79B9_7F4A_7C15;

thread_local! {
    /// The marks of the work that goes on in this thread.
    static LOOKED: [Cell<u64>; WORDS] = const { [const { Cell::new(0) }; WORDS] };
}

/// A set of measured values by their digits. A value that was put in is in it; now and then another seems to be in it too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Looked([u64; WORDS]);

impl Looked {
    /// No values.
    pub const NONE: Self = Self([0; WORDS]);

    /// Puts a value in as it was, where it is another now, to the last digit of it, of its tolerance, or of how it is known.
    pub fn put_changed<Q: Quantity>(&mut self, was: &Measured<Q>, is: &Measured<Q>) {
        if !was.is_exactly(is) {
            let (word, mark) = mark(was.unlooked());
            self.0[word] |= mark;
        }
    }

    /// No value is in both sets: certain where it says so.
    pub fn is_apart_from(&self, other: &Self) -> bool {
        self.0.iter().zip(&other.0).all(|(one, two)| one & two == 0)
    }

    /// Counts all of them as looked at by the work that goes on: it takes over what somebody found who looked at them.
    pub fn look_again(&self) {
        LOOKED.with(|looked| {
            for (all, own) in looked.iter().zip(&self.0) {
                all.set(all.get() | own);
            }
        });
    }
}

/// Does some work in this thread, and tells which measured values it looked at. They are not counted as looked at by the
/// work around it: whoever uses what was found there looks at them again.
pub fn looking<T>(work: impl FnOnce() -> T) -> (T, Looked) {
    let around = taken();
    let found = work();
    let looked = taken();
    around.look_again();
    (found, looked)
}

/// The marks of the work that goes on, which is left without any.
fn taken() -> Looked {
    LOOKED.with(|looked| Looked(std::array::from_fn(|word| looked[word].take())))
}

/// The work that goes on looks at a value.
pub(crate) fn look<Q: Quantity>(value: Q) {
    let (word, mark) = mark(value);
    LOOKED.with(|looked| looked[word].set(looked[word].get() | mark));
}

/// The word of a value among all, and its mark in that.
fn mark<Q: Quantity>(value: Q) -> (usize, u64) {
    let digits = value.base().to_bits() ^ Q::KIND as u64;
    let scattered = digits.wrapping_mul(SCATTER) >> SHIFT;
    ((scattered / 64) as usize % WORDS, 1 << (scattered % 64))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Known, Length, Mass, Tolerance};

    fn long(meters: f64) -> Measured<Length> {
        Measured::exact(Length::from_base(meters))
    }

    fn changed<Q: Quantity>(was: &Measured<Q>, is: &Measured<Q>) -> Looked {
        let mut looked = Looked::NONE;
        looked.put_changed(was, is);
        looked
    }

    #[test]
    fn every_way_to_look_is_seen() {
        let (one, other) = (long(2.5), long(3.5));
        let ways: [&dyn Fn(Measured<Length>) -> String; 7] = [
            &|it| format!("{:?}", it.nominal()),
            &|it| format!("{:?}", it.low()),
            &|it| format!("{:?}", it.high()),
            &|it| format!("{:?}", it.tolerance()),
            &|it| format!("{:?}", it.known()),
            &|it| format!("{it:?}"),
            &|it| (it == long(7.0)).to_string(),
        ];
        for way in ways {
            let (_, looked) = looking(|| way(one));
            assert!(!looked.is_apart_from(&changed(&one, &other)));
            assert!(looked.is_apart_from(&changed(&other, &one)));
        }
    }

    #[test]
    fn work_inside_counts_only_where_it_is_taken_over() {
        let (one, other) = (long(2.5), long(3.5));
        let was = changed(&one, &other);
        let ((_, inside), outside) = looking(|| looking(|| one.nominal()));
        assert!(!inside.is_apart_from(&was) && outside.is_apart_from(&was));
        let ((), outside) = looking(|| inside.look_again());
        assert!(!outside.is_apart_from(&was));
        let ((), around) = looking(|| {
            let _ = one.nominal();
            let _ = looking(|| other.nominal());
        });
        assert!(!around.is_apart_from(&was));
    }

    #[test]
    fn a_value_is_another_by_its_digits_its_tolerance_and_how_it_is_known() {
        let heavy = |kg, tolerance, known| Measured::new(Mass::from_base(kg), tolerance, known);
        let was = heavy(0.0, Tolerance::Exact, Known::Stated);
        assert!(changed(&was, &was) == Looked::NONE);
        for is in [
            heavy(-0.0, Tolerance::Exact, Known::Stated),
            heavy(0.0, Tolerance::Exact, Known::Assumed),
            heavy(
                0.0,
                Tolerance::Relative {
                    below: 0.0,
                    above: 0.0,
                },
                Known::Stated,
            ),
            heavy(
                0.0,
                Tolerance::Absolute {
                    below: 0.0,
                    above: 0.0,
                },
                Known::Stated,
            ),
        ] {
            assert!(changed(&was, &is) != Looked::NONE, "{is:?}");
        }
    }
}
