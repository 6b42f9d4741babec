//! One round of questions: carries each check's answer to where it is wanted, as a bare verdict or as a full finding.

use super::Check;
use crate::asking::{Asking, Wants};
use crate::check::motion::OPERATOR;
use crate::finding::{Finding, judged, made};
use crate::outcome::Answer;
use crate::subject::About;
use crate::verdicts::QuickVerdict;
use site::{Anchor, Foundation, Gate, Operator, Site};

/// What a round is for.
enum Purpose<'s, 'r> {
    /// Verdicts at the values as written.
    Verdicts(&'r mut Vec<QuickVerdict<'s>>),
    /// Findings with their working and tolerances.
    Findings(&'r mut Vec<Finding>),
}

/// One round of questions over a site.
pub(crate) struct Round<'s, 'r> {
    asking: Asking<'s>,
    check: &'r Check,
    purpose: Purpose<'s, 'r>,
}

impl<'s> Round<'s, '_> {
    /// Asks a question that takes longer than a verdict on every keystroke may: only findings answer it.
    pub(crate) fn ask_in_full(
        &mut self,
        about: About<'s>,
        answer: impl Fn(&mut Asking<'s>) -> Answer,
    ) {
        if matches!(self.purpose, Purpose::Findings(_)) {
            self.ask(about, answer);
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
                findings.push(made(self.check, about, &mut self.asking, &answer));
            }
        }
    }
}

impl<'s> Round<'s, '_> {
    /// Asks the question of each operator of a gate; where the gate has none, an operator is what is missing.
    pub(crate) fn ask_operators(
        &mut self,
        site: &'s Site,
        gate: &'s Gate,
        answer: impl Fn(&mut Asking<'s>, &'s Operator) -> Answer,
    ) {
        let mut operators = site.operators_of(gate).peekable();
        if operators.peek().is_none() {
            self.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(&gate.origin, "operator", Wants::Table(OPERATOR))
            });
        }
        for operator in operators {
            self.ask(About::new(&operator.origin, &operator.id), |asking| {
                answer(asking, operator)
            });
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
    each(site, checks, Purpose::Verdicts(&mut verdicts));
    verdicts
}

/// Asks every check for its findings.
pub(crate) fn findings(site: &Site, checks: &[Check]) -> Vec<Finding> {
    let mut findings = Vec::new();
    each(site, checks.iter(), Purpose::Findings(&mut findings));
    findings
}

fn each<'s, 'c: 'r, 'r>(
    site: &'s Site,
    checks: impl Iterator<Item = &'c Check>,
    purpose: Purpose<'s, 'r>,
) {
    let mut checks = checks
        .filter(|check| check.codes.contains(&site.site.code_basis))
        .peekable();
    let Some(first) = checks.peek() else { return };
    let mut round = Round {
        asking: Asking::new(site.site.unit_system()),
        check: first,
        purpose,
    };
    for check in checks {
        round.check = check;
        (check.ask)(site, &mut round);
    }
}
