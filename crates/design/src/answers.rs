//! Everything that a site is asked, answered: the findings, worst first, and where each question stands.

use crate::check::{CHECKS, round, survey};
use crate::coverage::{Covered, coverage};
use crate::{Finding, Remembered, Standing};
use serde::{Serialize, Serializer};
use site::{LookedUp, Site};
use std::num::NonZeroUsize;
use std::sync::Arc;

/// Everything that a site is asked, answered.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answers {
    /// The findings, worst first; those that stay as they were are shared with the answers before.
    #[serde(serialize_with = "each")]
    pub findings: Vec<Arc<Finding>>,
    /// Every question that applies, and where it stands, topic by topic.
    pub coverage: Vec<Covered>,
    /// What somebody looked up for nothing: works that no answer rests on, or that are known better than from memory.
    pub looked_up_in_vain: Vec<LookedUpInVain>,
}

/// An entry of what was looked up that no answer rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct LookedUpInVain {
    /// The work as it is named there.
    pub source: String,
    /// File that it is written in.
    pub file: String,
    /// Line at which it begins.
    pub line: usize,
}

impl Answers {
    /// The findings, worst first.
    pub fn findings(&self) -> impl Iterator<Item = &Finding> {
        self.findings.iter().map(AsRef::as_ref)
    }

    /// Every finding holds with tolerances counted, or is a figure for others.
    pub fn all_hold(&self) -> bool {
        self.findings()
            .all(|finding| matches!(finding.standing, Standing::Holds | Standing::Figure))
    }

    /// Puts an answer that was worked at length in the place of the quick one to the same question of the same thing.
    pub fn replace(&mut self, finding: Finding) {
        let same = |known: &&mut Arc<Finding>| {
            known.question == finding.question && known.subject.path == finding.subject.path
        };
        if let Some(known) = self.findings.iter_mut().find(same) {
            *known = Arc::new(finding);
        }
        in_order(&mut self.findings);
    }
}

/// The findings of every check, worst first: what fails, by what is at stake; then what turns within its tolerances,
/// what is unknown, what is outside this tool, what holds, and bare figures.
pub fn findings(site: &Site) -> Vec<Finding> {
    let shared = findings_on(site, NonZeroUsize::MIN, &mut Remembered::new());
    shared.into_iter().map(Arc::unwrap_or_clone).collect()
}

fn findings_on(
    site: &Site,
    threads: NonZeroUsize,
    remembered: &mut Remembered,
) -> Vec<Arc<Finding>> {
    let mut findings = round::findings_remembering((site, remembered), CHECKS, threads);
    findings.push(Arc::new(survey::deciding::finding(site, &findings)));
    in_order(&mut findings);
    findings
}

fn in_order(findings: &mut [Arc<Finding>]) {
    findings.sort_by(|a, b| {
        order(a)
            .cmp(&order(b))
            .then_with(|| b.ratio.unwrap_or(0.0).total_cmp(&a.ratio.unwrap_or(0.0)))
    });
}

fn order(finding: &Finding) -> (Standing, crate::Severity) {
    (finding.standing, finding.severity)
}

fn each<S: Serializer>(findings: &[Arc<Finding>], serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_seq(findings.iter().map(AsRef::as_ref))
}

/// Every answer, and where each question stands.
pub fn answers(site: &Site) -> Answers {
    answers_on(site, NonZeroUsize::MIN)
}

/// Every answer, worked on so many threads; any number of them gives the same answers.
pub fn answers_on(site: &Site, threads: NonZeroUsize) -> Answers {
    answers_remembering(site, threads, &mut Remembered::new())
}

/// Every answer, where questions are asked and simulations worked only that rest on something else than in an earlier round
/// with the same memory: the answers are those of [`answers_on`] to the last bit.
pub fn answers_remembering(
    site: &Site,
    threads: NonZeroUsize,
    remembered: &mut Remembered,
) -> Answers {
    remembered.begin();
    let findings = findings_on(site, threads, remembered);
    let coverage = coverage(site, CHECKS, &findings);
    let looked_up_in_vain = looked_up_in_vain(site, &findings);
    Answers {
        findings,
        coverage,
        looked_up_in_vain,
    }
}

fn looked_up_in_vain(site: &Site, findings: &[Arc<Finding>]) -> Vec<LookedUpInVain> {
    let counts = |entry: &&LookedUp| {
        let mut sources = findings.iter().flat_map(|finding| &finding.sources);
        !sources.any(|source| source.is_looked_up() && entry.names(&source.name()))
    };
    site.looked_up
        .iter()
        .filter(counts)
        .map(|entry| LookedUpInVain {
            source: entry.source.to_string(),
            file: entry.origin.file.to_string(),
            line: entry.origin.line,
        })
        .collect()
}
