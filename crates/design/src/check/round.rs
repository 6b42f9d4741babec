//! One round of questions: carries each check's answer to where it is wanted, as a bare verdict or as a full finding.

use super::Check;
use super::found::{CheckFound, Finds, PartFound, Taken};
use crate::asking::Asking;
use crate::finding::{Finding, judged, made, made_at_the_bad_ends};
use crate::outcome::Answer;
use crate::remembered::Remembered;
use crate::subject::About;
use crate::verdicts::QuickVerdict;
use site::{Anchor, Foundation, Site};
use std::num::NonZeroUsize;
use std::panic::resume_unwind;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};

/// What a round is for.
enum Purpose<'s, 'r> {
    /// Verdicts at the values as written.
    Verdicts(&'r mut Vec<QuickVerdict<'s>>),
    /// Findings with their working and tolerances.
    Findings(&'r mut dyn FnMut(&mut dyn FnMut() -> Finding)),
}

/// One round of questions over a site.
pub(crate) struct Round<'s, 'r> {
    asking: Asking<'s>,
    check: &'r Check,
    purpose: Purpose<'s, 'r>,
}

impl<'s> Round<'s, '_> {
    /// Asks a question that takes longer than a verdict on every keystroke may, and that takes every value at the bad end of
    /// its tolerance by itself: only findings answer it.
    pub(crate) fn ask_in_full(
        &mut self,
        about: About<'s>,
        answer: impl Fn(&mut Asking<'s>) -> Answer,
    ) {
        if let Purpose::Findings(findings) = &mut self.purpose {
            let (check, asking) = (self.check, &mut self.asking);
            findings(&mut move || made_at_the_bad_ends(check, about.clone(), asking, &answer));
        }
    }

    /// Asks the question of one thing.
    pub(crate) fn ask(&mut self, about: About<'s>, answer: impl Fn(&mut Asking<'s>) -> Answer) {
        match &mut self.purpose {
            Purpose::Verdicts(verdicts) => {
                self.asking.clear();
                let given = answer(&mut self.asking);
                let judged = judged(&self.asking, given);
                verdicts.push(QuickVerdict {
                    question: self.check.question,
                    subject: about.name.clone(),
                    verdict: judged.verdict,
                    strain: judged.strain(),
                });
            }
            Purpose::Findings(findings) => {
                let (check, asking) = (self.check, &mut self.asking);
                findings(&mut move || made(check, about.clone(), asking, &answer));
            }
        }
    }
}

impl<'s> Round<'s, '_> {
    /// Asks the question of each set of anchors of the site.
    pub(crate) fn ask_anchors(
        &mut self,
        site: &'s Site,
        answer: impl Fn(&mut Asking<'s>, &'s Foundation, &'s Anchor) -> Answer,
    ) {
        for foundation in &site.foundation {
            for (index, anchor) in foundation.anchor.iter().enumerate() {
                let about = About::one_of(&anchor.origin, &foundation.id, index);
                self.ask(about, |asking| answer(asking, foundation, anchor));
            }
        }
    }
}

/// Asks every check for its verdicts at the values as written.
pub(crate) fn verdicts<'s, 'r>(
    site: &'s Site,
    checks: impl Iterator<Item = &'r Check>,
) -> Vec<QuickVerdict<'s>> {
    let mut verdicts = Vec::with_capacity(64);
    each((site, None), checks, Purpose::Verdicts(&mut verdicts));
    verdicts
}

/// Questions that take long: they are asked first, of different things on all threads at once, so that no thread is left with
/// one of them at the end.
const LONG: &[&str] = &[
    "walk-anyone-hit",
    "lane-swept-path",
    "sun-in-the-picture",
    "walk-one-device-lost",
    "walk-vehicle-hit",
    "work-order-and-cure",
];

/// Asks every check for its findings, on so many threads; any number of them gives the same findings in the same order.
pub(crate) fn findings(site: &Site, checks: &[Check], threads: NonZeroUsize) -> Vec<Finding> {
    let shared = findings_remembering((site, &mut Remembered::new()), checks, threads);
    shared.into_iter().map(Arc::unwrap_or_clone).collect()
}

/// The same, where a question is asked and a simulation worked only where an earlier round does not tell what comes out. A
/// memory is for one list of checks.
pub(crate) fn findings_remembering(
    (site, remembered): (&Site, &mut Remembered),
    checks: &[Check],
    threads: NonZeroUsize,
) -> Vec<Arc<Finding>> {
    let found = found((site, remembered), checks, threads);
    let all = found.iter().flat_map(CheckFound::findings);
    let findings = all.cloned().collect();
    remembered.rounds.keep(site, found);
    findings
}

/// What each check finds, in the order of the checks.
fn found(
    (site, remembered): (&Site, &Remembered),
    checks: &[Check],
    threads: NonZeroUsize,
) -> Vec<CheckFound> {
    let earlier = remembered.rounds.like(site);
    let taken: Vec<Taken> = checks.iter().map(|_| Taken::default()).collect();
    let find = |at: usize, (check, taken): (&Check, &Taken)| {
        let sooner = earlier.as_ref().and_then(|earlier| earlier.of(at));
        if let Some(whole) = sooner.and_then(|sooner| sooner.whole()) {
            return PartFound::of_whole(whole);
        }
        Finds::while_asking((sooner, taken), |finds| {
            each(
                (site, Some(remembered)),
                std::iter::once(check),
                Purpose::Findings(&mut |make| finds.next(make)),
            );
        })
    };
    let rank = |at: &usize| {
        let question = checks.get(*at).map(|check| check.question);
        let long = LONG.iter().position(|long| Some(*long) == question);
        long.unwrap_or(LONG.len())
    };
    let mut order: Vec<usize> = (0..checks.len())
        .flat_map(|at| {
            let hands = if rank(&at) < LONG.len() {
                threads.get()
            } else {
                1
            };
            std::iter::repeat_n(at, hands)
        })
        .collect();
    order.sort_by_key(rank);
    let next = AtomicUsize::new(0);
    let work = || {
        let mut found = Vec::new();
        while let Some(at) = order.get(next.fetch_add(1, Ordering::Relaxed)).copied()
            && let Some(check) = checks.get(at).zip(taken.get(at))
        {
            found.push((at, find(at, check)));
        }
        found
    };
    let mut found = std::thread::scope(|scope| {
        let others: Vec<_> = (1..threads.get()).map(|_| scope.spawn(work)).collect();
        let mut found = work();
        for other in others {
            found.extend(other.join().unwrap_or_else(|why| resume_unwind(why)));
        }
        found
    });
    found.sort_by_key(|(at, _)| *at);
    let mut whole: Vec<(usize, PartFound)> = Vec::with_capacity(checks.len());
    for (at, part) in found {
        match whole.last_mut().filter(|(known, _)| *known == at) {
            Some((_, known)) => known.join(part),
            None => whole.push((at, part)),
        }
    }
    whole.into_iter().map(|(_, found)| found.whole()).collect()
}

fn each<'s, 'c: 'r, 'r>(
    (site, remembered): (&'s Site, Option<&'s Remembered>),
    checks: impl Iterator<Item = &'c Check>,
    purpose: Purpose<'s, 'r>,
) {
    let mut checks = checks
        .filter(|check| check.codes.contains(&site.site.code_basis))
        .peekable();
    let Some(first) = checks.peek() else { return };
    let asking = Asking::new(site.site.unit_system()).with_looked_up(&site.looked_up);
    let mut round = Round {
        asking: match remembered {
            Some(remembered) => asking.with_remembered(remembered),
            None => asking,
        },
        check: first,
        purpose,
    };
    for check in checks {
        round.check = check;
        (check.ask)(site, &mut round);
    }
}
