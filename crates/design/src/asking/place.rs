//! Where the facts of a run stand, and the values that are handed out for them.

use super::{Asking, End, Fact};
use quantity::{Measured, Quantity};
use site::Origin;

impl<'s> Asking<'s> {
    pub(super) fn taken<Q: Quantity>(
        &mut self,
        origin: &'s Origin,
        (key, part): (&'static str, &'static str),
        measured: &Measured<Q>,
        end: End,
    ) -> Q {
        let (fact, value) = Fact::new(origin, key, part, measured).taken(measured, end);
        if self.place_of(origin, key, part).is_none() {
            self.facts.push(fact);
            self.reads(self.facts.len() - 1);
        }
        value
    }

    pub(super) fn measured<Q: Quantity>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        part: &'static str,
        measured: &Measured<Q>,
    ) -> Q {
        let Some(at) = self.place_of(origin, key, part) else {
            self.facts.push(Fact::new(origin, key, part, measured));
            self.reads(self.facts.len() - 1);
            return measured.nominal();
        };
        match self.ends.get(at).copied().unwrap_or(End::Nominal) {
            End::Nominal => measured.nominal(),
            End::Low => measured.low(),
            End::High => measured.high(),
        }
    }

    /// Where a fact stands that was read before. Each run reads the same facts in nearly the same order, so that the one
    /// that the last run read then is looked at first.
    fn place_of(&mut self, origin: &Origin, key: &str, part: &str) -> Option<usize> {
        let is = |fact: &Fact<'_>| fact.is(origin, key, part);
        let expected = self.read.get(self.next).copied();
        let here = expected.filter(|at| self.facts.get(*at).is_some_and(is));
        let at = match here {
            Some(at) => at,
            None => self.facts.iter().position(is)?,
        };
        self.reads(at);
        Some(at)
    }

    /// Keeps which fact is read now, for the next run.
    fn reads(&mut self, at: usize) {
        match self.read.get_mut(self.next) {
            Some(known) => *known = at,
            None => self.read.push(at),
        }
        self.next += 1;
    }
}
