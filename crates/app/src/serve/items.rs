//! What a finding speaks of, by the paths that edits and the plan use.

use design::Finding;
use std::collections::BTreeSet;

/// Paths of the things that a finding is about and rests on, its subject first: `device.reader-in`, `gate.main.leaf.leaf`.
pub(super) fn items(finding: &Finding) -> Vec<String> {
    let subject = path(&finding.subject.path);
    let deciding = finding
        .deciding
        .iter()
        .map(|deciding| &deciding.reading.path);
    let missing = finding.missing.iter().map(|missing| &missing.path);
    let given = finding.working.iter().flat_map(|step| &step.given);
    let written = given
        .filter(|line| !line.written.is_empty())
        .map(|line| &line.from);
    let rest: BTreeSet<String> = deciding
        .chain(missing)
        .chain(written)
        .filter_map(|said| thing(said))
        .filter(|item| *item != subject)
        .collect();
    std::iter::once(subject).chain(rest).collect()
}

/// The thing that a value belongs to: `gate "slide" · leaf "panel" · mass` is of `gate.slide.leaf.panel`.
fn thing(said: &str) -> Option<String> {
    said.rsplit_once(" · ").map(|(thing, _)| path(thing))
}

/// A path as a person says it, as edits write it: `gate "slide" · stop 2` is `gate.slide.stop.1`.
pub(super) fn path(said: &str) -> String {
    let mut steps = Vec::new();
    for step in said.split(" · ") {
        let (kind, name) = match step.split_once(" \"") {
            Some((kind, name)) => (kind, Some(name.trim_end_matches('"').to_owned())),
            None => match step.rsplit_once(' ') {
                Some((kind, number)) if number.parse::<usize>().is_ok_and(|number| number > 0) => {
                    let number = number.parse::<usize>().unwrap_or(1) - 1;
                    (kind, Some(number.to_string()))
                }
                _ => (step, None),
            },
        };
        steps.push(kind.replace(' ', "_"));
        steps.extend(name);
    }
    steps.join(".")
}

#[cfg(test)]
mod tests {
    use super::path;

    #[test]
    fn what_is_said_becomes_what_is_written() {
        assert_eq!(path("device \"reader-in\""), "device.reader-in");
        assert_eq!(
            path("gate \"slide\" · leaf \"panel\" · fill width"),
            "gate.slide.leaf.panel.fill_width"
        );
        assert_eq!(path("gate \"slide\" · stop 2"), "gate.slide.stop.1");
        assert_eq!(path("site"), "site");
    }
}
