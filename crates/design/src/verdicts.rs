//! Verdicts at the values as written, without working: fast enough to follow every keystroke.

use crate::Verdict;
use crate::check::{CHECKS, Check, round};
use site::Site;
use std::borrow::Cow;

/// One verdict at the values as written.
#[derive(Debug, Clone, PartialEq)]
pub struct QuickVerdict<'s> {
    /// Id of the question.
    pub question: &'static str,
    /// Name of the thing that it is about.
    pub subject: Cow<'s, str>,
    /// The verdict.
    pub verdict: Verdict,
    /// Demand over capacity; infinite where there is no answer, 0 or 2 for a rule without figures.
    pub strain: f64,
}

/// The verdicts of every check at the values as written, in the order of the checks.
pub fn verdicts(site: &Site) -> Vec<QuickVerdict<'_>> {
    round::verdicts(site, CHECKS.iter())
}

/// The verdicts on some topics only: the first words of the ids of their questions, such as `wind`.
pub fn verdicts_about<'s>(site: &'s Site, topics: &[&str]) -> Vec<QuickVerdict<'s>> {
    let about = |check: &&Check| {
        let topic = check.question.split_once('-').map(|(topic, _)| topic);
        topic.is_some_and(|topic| topics.contains(&topic))
    };
    round::verdicts(site, CHECKS.iter().filter(about))
}
