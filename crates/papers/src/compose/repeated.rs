//! Steps of a working that stand on an earlier page already.
//!
//! The design wind is worked for a dozen findings; on paper it stands once, and the others say where.

use crate::view::{FindingView, Working};
use std::collections::BTreeMap;

/// Shortest step that is worth turning a page for: lines of values.
const SHORT: usize = 3;

/// Leaves out what stands under an earlier finding: the whole of a step but its result, or its formula where the values
/// differ.
pub(super) fn leave_out(findings: &mut [FindingView]) {
    let mut steps: BTreeMap<Working, usize> = BTreeMap::new();
    let mut formulas: BTreeMap<(String, String), usize> = BTreeMap::new();
    let printed = findings.iter_mut().enumerate();
    for (at, finding) in printed.filter(|(_, finding)| finding.same_as.is_none()) {
        for step in &mut finding.working {
            let name = (step.title.clone(), step.formula.clone());
            let stands_at = *steps.entry(step.clone()).or_insert(at);
            let formula_at = *formulas.entry(name).or_insert(at);
            if step.formula.is_empty() {
                continue;
            }
            if stands_at != at && step.given.len() > SHORT {
                step.stands_at = Some(stands_at);
                step.given.clear();
                step.formula.clear();
                step.source.clear();
                step.known.clear();
            } else if formula_at != at {
                step.formula_at = Some(formula_at);
                step.formula.clear();
            }
        }
    }
}
