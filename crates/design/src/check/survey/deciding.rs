//! Which measurements decide the answers, and whether they are known closely enough: asked of the other findings.
//!
//! Where a verdict turns within the tolerances, the answer is unknown until the measurements that turn it are taken again
//! with a finer instrument. Where none turns, the tightest answer and the measurement that decides it are named.

use crate::finding::{Finding, Missing, Reading, Subject};
use crate::plain::{and, plain};
use crate::question::question;
use crate::subject::WHOLE_SITE;
use crate::{Severity, Standing, Verdict};
use site::Site;
use std::sync::Arc;

/// Id of the question.
pub(crate) const QUESTION: &str = "survey-deciding-measurement";

/// What the answer leaves open.
const LEAVES_OPEN: &str = "the instruments, and questions without a finding";

/// The finding about the other findings of a site.
pub(crate) fn finding(site: &Site, findings: &[Arc<Finding>]) -> Finding {
    let asked = question(QUESTION);
    let all = findings.iter().map(AsRef::as_ref);
    let turning: Vec<&Finding> = all.filter(|finding| turns(finding)).collect();
    let toleranced = findings.iter().any(|finding| finding.worst.is_some());
    let verdict = if turning.is_empty() && toleranced {
        Verdict::Holds
    } else {
        Verdict::UnknownUntil
    };
    let (sentence, because) = words(findings, &turning, toleranced);
    Finding {
        question: QUESTION.to_owned(),
        ask: asked.map_or_else(String::new, |question| question.ask.clone()),
        subject: subject(site),
        severity: asked.map_or(Severity::Cost, |question| question.severity),
        standing: Standing::of(verdict, None),
        verdict,
        sentence: format!("{sentence} {because}"),
        because,
        demand: None,
        capacity: None,
        ratio: None,
        worst: None,
        deciding: tightest(findings).and_then(|finding| finding.deciding.clone()),
        turned_by: Vec::new(),
        working: Vec::new(),
        sources: Vec::new(),
        missing: missing(&turning),
        look_up: Vec::new(),
        assumed: Vec::new(),
        confirm: asked.map_or_else(String::new, |question| question.confirm.clone()),
        leaves_open: LEAVES_OPEN.to_owned(),
    }
}

/// Its verdict at the worst corner is another one than at the values as written.
fn turns(finding: &Finding) -> bool {
    finding
        .worst
        .as_ref()
        .is_some_and(|worst| worst.verdict != finding.verdict)
}

fn words(findings: &[Arc<Finding>], turning: &[&Finding], toleranced: bool) -> (String, String) {
    if !toleranced {
        return (
            "No value behind an answer has a tolerance.".to_owned(),
            "Unknown until the tolerance of each measurement is written beside it, such as `± 2 in`.".to_owned(),
        );
    }
    if turning.is_empty() {
        return (
            tightest(findings).map_or_else(String::new, tightest_words),
            "Holds.".to_owned(),
        );
    }
    let named: Vec<String> = turning
        .iter()
        .map(|finding| turned_words(finding))
        .collect();
    (
        format!(
            "{} within the tolerances: {}.",
            turn_or_turns(turning.len()),
            named.join("; ")
        ),
        "Unknown until these are measured more closely.".to_owned(),
    )
}

fn turn_or_turns(count: usize) -> String {
    if count == 1 {
        "One answer turns".to_owned()
    } else {
        format!("{count} answers turn")
    }
}

fn turned_words(finding: &Finding) -> String {
    let by: Vec<String> = finding
        .turned_by
        .iter()
        .map(|reading| plain(&reading.path))
        .collect();
    format!("{} by {}", finding.name(), and(&by))
}

/// The answer with the least in hand at its worst corner.
fn tightest(findings: &[Arc<Finding>]) -> Option<&Finding> {
    let at_worst = |finding: &Finding| {
        finding
            .worst
            .as_ref()
            .and_then(|worst| worst.ratio)
            .unwrap_or(0.0)
    };
    findings
        .iter()
        .map(|finding| &**finding)
        .filter(|finding| finding.verdict == Verdict::Holds && finding.deciding.is_some())
        .max_by(|a, b| at_worst(a).total_cmp(&at_worst(b)))
}

fn tightest_words(finding: &Finding) -> String {
    let decides = finding
        .deciding
        .as_ref()
        .map_or_else(String::new, |deciding| plain(&deciding.reading.path));
    format!(
        "No answer turns within the tolerances; the tightest is {}, and {decides} decides it.",
        finding.name()
    )
}

fn subject(site: &Site) -> Subject {
    let origin = &site.site.origin;
    Subject {
        name: WHOLE_SITE.to_owned(),
        path: origin.path.clone(),
        file: origin.file.to_string(),
        line: origin.line,
    }
}

/// The measurements to take again, each once.
fn missing(turning: &[&Finding]) -> Vec<Missing> {
    let mut again: Vec<Missing> = Vec::new();
    for reading in turning.iter().flat_map(|finding| &finding.turned_by) {
        if !again.iter().any(|known| known.path == reading.path) {
            again.push(measure_again(reading));
        }
    }
    again
}

fn measure_again(reading: &Reading) -> Missing {
    Missing {
        path: reading.path.clone(),
        measure: format!(
            "measure more closely: {}, now {}",
            plain(&reading.path),
            reading.text
        ),
        write: String::new(),
        file: reading.file.clone(),
        line: reading.line,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::QUESTION;
    use crate::check::testing::site;
    use crate::{Finding, Verdict, findings};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft ± 1 in"
        run_timer = "30 s"
        [gate.motion]
        cruise_speed = "1 ft/s ± 3 %"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[operator]]
        id = "drive"
        gate = "main"
    "#;

    fn of(text: &str) -> Finding {
        let findings = findings(&site(text));
        findings
            .into_iter()
            .find(|finding| finding.question == QUESTION)
            .unwrap()
    }

    #[test]
    fn holds_and_names_the_tightest() {
        let finding = of(SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("motion-travel-time/main"),
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("cruise speed decides"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_where_a_verdict_turns() {
        let finding = of(&SITE.replace("30 s", "21.2 s"));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        assert!(finding.missing[0].measure.contains("± 3 %"));
    }

    #[test]
    fn unknown_where_nothing_has_a_tolerance() {
        let finding = of(&SITE.replace(" ± 1 in", "").replace(" ± 3 %", ""));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn a_verdict_that_fails_does_not_turn() {
        assert_eq!(of(&SITE.replace("30 s", "10 s")).verdict, Verdict::Holds);
    }
}
