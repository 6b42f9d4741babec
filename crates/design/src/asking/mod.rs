//! The way by which a check reads a site: it hands out values, notes them, and keeps the working when asked to.

mod example;
mod fact;
mod lack;
mod place;
mod readable;
mod record;
mod works;

pub(crate) use fact::{End, Fact, Pick};
pub(crate) use lack::{Lack, Wants};
pub(crate) use readable::{Readable, need, pick, read};
pub(crate) use record::{Record, Step};

use crate::figure::Print;
use crate::outcome::Halt;
use crate::remembered::{Remembered, Table};
use formula::{Evidence, Formula, OutOfReach, Source};
use quantity::{Argument, Length, Quantity, UnitSystem};
use site::{LookedUp, Origin, Position};
use std::fmt::Debug;

/// A calculation that refused its inputs.
#[derive(Debug, Clone)]
pub(crate) struct Beyond {
    /// Name of the calculation; empty where the check itself refused.
    pub(crate) calculation: &'static str,
    pub(crate) reach: OutOfReach,
}

/// What a check reads the site through.
pub(crate) struct Asking<'s> {
    print: Print,
    /// What somebody looked up in a work that is known here from memory only.
    looked_up: &'s [LookedUp],
    /// What simulations found for whoever asked the same before.
    remembered: Option<&'s Remembered>,
    /// Facts in the order of first reading.
    pub(crate) facts: Vec<Fact<'s>>,
    /// Words, counts and sizes that were picked while the working was kept.
    pub(crate) picks: Vec<Pick<'s>>,
    /// Places of the facts in the order in which the last run read them, and how many of them this one has read.
    read: Vec<usize>,
    next: usize,
    /// End of each fact; missing ones are nominal.
    pub(crate) ends: Vec<End>,
    pub(crate) lacks: Vec<Lack<'s>>,
    pub(crate) beyond: Option<Beyond>,
    /// What has to be done before there is an answer, where no fact is missing.
    pub(crate) pending: Option<String>,
    /// Sources of the calculations and figures used, as they were asked for.
    grounds: Vec<&'static Source>,
    pub(crate) record: Option<Record>,
}

impl<'s> Asking<'s> {
    pub(crate) fn new(units: UnitSystem) -> Self {
        Self {
            print: Print::new(units),
            looked_up: &[],
            remembered: None,
            facts: Vec::with_capacity(32),
            picks: Vec::new(),
            read: Vec::with_capacity(64),
            next: 0,
            ends: Vec::new(),
            lacks: Vec::new(),
            beyond: None,
            pending: None,
            grounds: Vec::with_capacity(8),
            record: None,
        }
    }

    /// Takes what somebody looked up for known.
    pub(crate) fn with_looked_up(self, looked_up: &'s [LookedUp]) -> Self {
        Self { looked_up, ..self }
    }

    /// Asks what simulations found before it has them work.
    pub(crate) fn with_remembered(self, remembered: &'s Remembered) -> Self {
        Self {
            remembered: Some(remembered),
            ..self
        }
    }

    /// What a simulation finds, which is worked only where nobody asked the same before. What is simulated is all that the
    /// result rests on.
    pub(crate) fn simulate<T: Clone>(
        &self,
        table: impl FnOnce(&Remembered) -> &Table<T>,
        simulated: &dyn Debug,
        find: impl FnOnce() -> T,
    ) -> T {
        match self.remembered {
            Some(remembered) => table(remembered).of(simulated, find),
            None => find(),
        }
    }

    /// The same for what is found quicker by whoever knows the last result of its kind.
    pub(crate) fn simulate_again<T: Clone>(
        &self,
        table: impl FnOnce(&Remembered) -> &Table<T>,
        of: (&dyn Debug, &dyn Debug),
        find: impl FnOnce(Option<T>) -> T,
    ) -> T {
        match self.remembered {
            Some(remembered) => table(remembered).of_kind(of, find),
            None => find(None),
        }
    }

    pub(crate) fn print(&self) -> Print {
        self.print
    }

    /// Forgets everything but the room it took.
    pub(crate) fn clear(&mut self) {
        self.facts.clear();
        self.picks.clear();
        self.read.clear();
        self.ends.clear();
        self.record = None;
        self.forget_run();
    }

    /// Forgets what the last run found, and keeps the facts and their ends for the next one.
    pub(crate) fn forget_run(&mut self) {
        self.next = 0;
        self.lacks.clear();
        self.grounds.clear();
        self.beyond = None;
        self.pending = None;
    }

    /// A measured value.
    pub(crate) fn read<R: Readable>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: Option<&R>,
    ) -> Result<R::Gives, Halt> {
        match value {
            Some(value) => Ok(self.measured(origin, key, "", value.measured_value())),
            None => self.lack_of(origin, key),
        }
    }

    /// A measured value that need not be there.
    pub(crate) fn read_if_there<R: Readable>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: Option<&R>,
    ) -> Option<R::Gives> {
        value.map(|value| self.measured(origin, key, "", value.measured_value()))
    }

    /// A measured value that is always there.
    pub(crate) fn given<R: Readable>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: &R,
    ) -> R::Gives {
        self.measured(origin, key, "", value.measured_value())
    }

    /// A word of a closed list, a count, a conductor size.
    pub(crate) fn pick<A: Argument + Copy>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: Option<A>,
    ) -> Result<A, Halt> {
        match value {
            Some(value) => {
                if self.record.is_some() {
                    self.picks.push(Pick {
                        origin,
                        key,
                        value: value.to_value(),
                    });
                }
                Ok(value)
            }
            None => self.lack(origin, key, Wants::Sort(A::SORT)),
        }
    }

    /// A position: along the gate, into the property, up.
    pub(crate) fn position(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: Option<&Position>,
    ) -> Result<[Length; 3], Halt> {
        match value {
            Some(position) => Ok([
                self.measured(origin, key, "x", &position.x),
                self.measured(origin, key, "y", &position.y),
                self.measured(origin, key, "z", &position.z),
            ]),
            None => self.lack(origin, key, Wants::Position),
        }
    }

    /// Something that must be there and is neither a quantity nor a word: a name, a text, a table.
    pub(crate) fn need<'v, T>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        value: Option<&'v T>,
        write: &'static str,
    ) -> Result<&'v T, Halt> {
        match value {
            Some(value) => Ok(value),
            None => self.lack(origin, key, Wants::Written(write)),
        }
    }

    /// Notes that a fact is missing.
    pub(crate) fn lack<T>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
        wants: Wants,
    ) -> Result<T, Halt> {
        let known = |lack: &Lack<'_>| std::ptr::eq(lack.origin, origin) && lack.key == key;
        if !self.lacks.iter().any(known) {
            self.lacks.push(Lack { origin, key, wants });
        }
        Err(Halt)
    }

    /// Notes that a quantity is missing.
    pub(crate) fn lack_of<Q: Quantity>(
        &mut self,
        origin: &'s Origin,
        key: &'static str,
    ) -> Result<Q, Halt> {
        self.lack(origin, key, Wants::Sort(Q::SORT))
    }

    /// One end of the tolerance of a measured value, where the check knows which end is the bad one: the search for the
    /// worst corner leaves it alone.
    pub(crate) fn read_at<R: Readable>(
        &mut self,
        (origin, key): (&'s Origin, &'static str),
        value: Option<&R>,
        end: End,
    ) -> Result<R::Gives, Halt> {
        match value {
            Some(value) => Ok(self.taken(origin, (key, ""), value.measured_value(), end)),
            None => self.lack_of(origin, key),
        }
    }

    /// A position as written, its tolerances left alone.
    pub(crate) fn position_as_written(
        &mut self,
        (origin, key): (&'s Origin, &'static str),
        value: Option<&Position>,
    ) -> Result<[Length; 3], Halt> {
        match value {
            Some(position) => Ok([
                self.taken(origin, (key, "x"), &position.x, End::Nominal),
                self.taken(origin, (key, "y"), &position.y, End::Nominal),
                self.taken(origin, (key, "z"), &position.z, End::Nominal),
            ]),
            None => self.lack(origin, key, Wants::Position),
        }
    }

    /// Leaves the answer unknown until something is done that no fact of the site stands for.
    pub(crate) fn wait_for<T>(&mut self, what: String) -> Result<T, Halt> {
        self.pending = Some(what);
        Err(Halt)
    }

    /// Notes that a calculation that is no formula of its own refused what the site gave it.
    pub(crate) fn beyond_reach<T>(
        &mut self,
        calculation: &'static str,
        reach: OutOfReach,
    ) -> Result<T, Halt> {
        self.beyond = Some(Beyond { calculation, reach });
        Err(Halt)
    }

    /// Notes that this tool has no answer for these values, and why.
    pub(crate) fn refuse<T>(&mut self, why: &'static str) -> Result<T, Halt> {
        self.beyond = Some(Beyond {
            calculation: "",
            reach: OutOfReach::new("", why),
        });
        Err(Halt)
    }

    /// What a simulation gives; where it refused, why is noted.
    pub(crate) fn in_reach<T>(&mut self, found: Result<T, OutOfReach>) -> Result<T, Halt> {
        found.map_err(|reach| {
            self.beyond = Some(Beyond {
                calculation: "",
                reach,
            });
            Halt
        })
    }

    /// Evaluates a calculation, and keeps it as a step of the working.
    pub(crate) fn work<F: Formula>(&mut self, formula: &F) -> Result<F::Gives, Halt> {
        self.rest_on(&F::SHEET.source);
        match formula.evaluate() {
            Ok(gives) => {
                if let Some(record) = &mut self.record {
                    record.keep(F::SHEET, formula.inputs(), || F::outputs(&gives));
                }
                Ok(gives)
            }
            Err(reach) => {
                self.beyond = Some(Beyond {
                    calculation: F::SHEET.name,
                    reach,
                });
                Err(Halt)
            }
        }
    }

    /// Evaluates a calculation that may be out of reach without harm: nothing then, and nothing noted.
    pub(crate) fn work_if_in_reach<F: Formula>(&mut self, formula: &F) -> Option<F::Gives> {
        formula.evaluate().ok()?;
        self.work(formula).ok()
    }

    /// Notes the source of a figure or rule that the answer rests on.
    pub(crate) fn rest_on(&mut self, source: &'static Source) {
        if !self
            .grounds
            .iter()
            .any(|known| std::ptr::eq(*known, source))
        {
            self.grounds.push(source);
        }
    }

    /// A line of the working in words, made only when the working is kept.
    pub(crate) fn note<L: Into<Option<String>>>(&mut self, line: impl FnOnce(Print) -> L) {
        let print = self.print;
        if let Some(record) = &mut self.record {
            record.steps.extend(line(print).into().map(Step::Line));
        }
    }

    /// The answer as a tradesperson would say it, without the verdict; made only when the working is kept.
    pub(crate) fn say(&mut self, sentence: impl FnOnce(Print) -> String) {
        let print = self.print;
        if let Some(record) = &mut self.record {
            record.said = sentence(print);
        }
    }

    /// The sources of the answer, each once.
    pub(crate) fn grounds(&self) -> impl Iterator<Item = &'static Source> {
        self.grounds_that(|_| true)
    }

    /// The sources that are known from memory only, and that nobody looked up for this site, each once.
    pub(crate) fn remembered(&self) -> impl Iterator<Item = &'static Source> {
        self.grounds_that(|source| source.evidence == Evidence::Memory)
            .filter(|source| self.looked_up(source).is_none())
    }

    /// What somebody found in a work that is known here from memory only.
    pub(crate) fn looked_up(&self, source: &Source) -> Option<&'s LookedUp> {
        let name = source.name();
        self.looked_up
            .iter()
            .filter(|_| source.evidence == Evidence::Memory)
            .find(|looked_up| looked_up.names(&name))
    }

    fn grounds_that(&self, wanted: fn(&Source) -> bool) -> impl Iterator<Item = &'static Source> {
        let all = &self.grounds;
        all.iter()
            .enumerate()
            .filter(move |(at, source)| wanted(source) && !all[..*at].contains(source))
            .map(|(_, source)| *source)
    }
}
