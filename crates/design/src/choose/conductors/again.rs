//! Every question that hangs on cables, asked again with what was chosen.

use super::plan::Plan;
use crate::check::{CHECKS, Check, round};
use crate::{Finding, Standing, question};
use site::Site;
use std::num::NonZeroUsize;

/// The question that this choice itself answers.
const OWN: &str = "power-gauge-least-cost";

/// What fails at the site, of what hangs on its cables.
pub(super) fn failing(site: &Site) -> Vec<Finding> {
    let hangs = |check: &&Check| {
        check.question != OWN
            && question(check.question).is_some_and(|question| {
                question
                    .fields
                    .iter()
                    .any(|field| field.starts_with("cable."))
            })
    };
    CHECKS
        .iter()
        .filter(hangs)
        .flat_map(|check| round::findings(site, std::slice::from_ref(check), NonZeroUsize::MIN))
        .filter(|finding| {
            matches!(
                finding.standing,
                Standing::Fails | Standing::TurnsWithinTolerance
            )
        })
        .collect()
}

/// What fails now and did not before.
pub(super) fn newly(before: &[Finding], site: &Site) -> Vec<Finding> {
    let known = |finding: &Finding| {
        before.iter().any(|other| {
            other.question == finding.question && other.subject.path == finding.subject.path
        })
    };
    let mut all = failing(site);
    all.retain(|finding| !known(finding));
    all
}

/// The changed cables that fail something else now: spot, offer, finding.
pub(super) fn blamed(
    plan: &Plan<'_>,
    chosen: &[usize],
    newly: &[Finding],
) -> Vec<(usize, usize, Finding)> {
    let of = |finding: &Finding| {
        let is = |(at, offer): &(usize, &usize)| {
            let cable = &plan.site.cable[plan.spots[*at].cable];
            let changed = plan.spots[*at].offers[**offer].part != cable.part;
            changed && cable.origin.path == finding.subject.path
        };
        let (at, offer) = chosen.iter().enumerate().find(is)?;
        let others = plan.spots[at].offers.len()
            - plan.banned.iter().filter(|(spot, _)| *spot == at).count();
        (others > 1).then(|| (at, *offer, finding.clone()))
    };
    newly.iter().filter_map(of).collect()
}

/// Why an entry was left out, in a sentence.
pub(super) fn told(plan: &Plan<'_>, (spot, offer): (usize, usize), finding: &Finding) -> String {
    let cable = &plan.spots[spot].offers[offer];
    let name = cable.part.as_ref().map_or("", |part| part.as_str());
    format!(
        "{name} for {}: {} ({})",
        cable.id, finding.sentence, finding.question
    )
}
