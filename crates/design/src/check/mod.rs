//! The checks: each answers one question for everything on the site that it concerns.

pub(crate) mod round;
#[cfg(test)]
mod testing;

mod survey;

pub(crate) use round::Round;

use site::Site;

/// A check: which question it answers, what it leaves open, and the function that asks.
pub(crate) struct Check {
    /// Id of the question.
    pub(crate) question: &'static str,
    /// What its answer leaves open; empty where it answers in full.
    pub(crate) leaves_open: &'static str,
    /// What the site must have for there to be anything to ask: `a cable in a conduit`.
    pub(crate) concerns: &'static str,
    /// Asks it of each thing concerned.
    pub(crate) ask: for<'s> fn(&'s Site, &mut Round<'s, '_>),
}

/// Every check that asks the site itself, in the order of the questions.
pub(crate) const CHECKS: &[Check] = &[survey::authority::CHECK];
