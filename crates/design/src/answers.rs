//! Everything that a site is asked, answered: the findings, worst first, and where each question stands.

use crate::check::{CHECKS, round, survey};
use crate::coverage::{Covered, coverage};
use crate::{Finding, Standing};
use serde::Serialize;
use site::Site;

/// Everything that a site is asked, answered.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answers {
    /// The findings, worst first.
    pub findings: Vec<Finding>,
    /// Every question that applies, and where it stands, topic by topic.
    pub coverage: Vec<Covered>,
}

impl Answers {
    /// Every finding holds with tolerances counted, or is a figure for others.
    pub fn all_hold(&self) -> bool {
        self.findings
            .iter()
            .all(|finding| matches!(finding.standing, Standing::Holds | Standing::Figure))
    }
}

/// The findings of every check, worst first: what fails, by what is at stake; then what turns within its tolerances,
/// what is unknown, what is outside this tool, what holds, and bare figures.
pub fn findings(site: &Site) -> Vec<Finding> {
    let mut findings = round::findings(site, CHECKS);
    findings.push(survey::deciding::finding(site, &findings));
    findings.sort_by(|a, b| {
        order(a)
            .cmp(&order(b))
            .then_with(|| b.ratio.unwrap_or(0.0).total_cmp(&a.ratio.unwrap_or(0.0)))
    });
    findings
}

fn order(finding: &Finding) -> (Standing, crate::Severity) {
    (finding.standing, finding.severity)
}

/// Every answer, and where each question stands.
pub fn answers(site: &Site) -> Answers {
    let findings = findings(site);
    let coverage = coverage(site, CHECKS, &findings);
    Answers { findings, coverage }
}
