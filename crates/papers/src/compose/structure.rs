//! What stands for structure: its results, and all inputs and factors so that they can be worked again.

use crate::view::{Input, InputGroup, StructureResult, StructureView};
use design::{Finding, Line, Working};
use quantity::{UnitSystem, Word as _};
use site::{Site, Stated};
use std::sync::Arc;

/// Who decides.
const STATEMENT: &str = "These results stand for structure. A licensed engineer decides on them where the law or the authority having jurisdiction wants one. \
     Here is every input as the site file states it, with how it is known, and every factor that was used, so that they can be worked again without this program.";

/// Said under each finding that stands for structure.
pub(super) const DEFERS: &str = "A licensed engineer decides where the law or the authority wants one; all inputs stand under Structure.";

/// Beginnings of the questions that stand for structure.
const QUESTIONS: [&str; 8] = [
    "structure-",
    "anchor-",
    "bollard-energy",
    "wind-stands-everywhere",
    "leaf-strength",
    "leaf-cantilever-rollers",
    "leaf-wheels-and-hinges",
    "fire-lane-carries",
];

/// Keys of the ground and the weather that no foundation needs.
const NOT_STRUCTURE: [&str; 4] = ["hottest", "coldest", "sunshine", "corrosivity"];

/// Keys that differ between things that are alike otherwise.
const OWN: [&str; 6] = ["id", "at", "foundation", "carries", "holds", "guards"];

/// Those of them that are told for each.
const TOLD: [&str; 5] = ["at", "foundation", "carries", "holds", "guards"];

/// The question stands for structure.
pub(super) fn is_structural(question: &str) -> bool {
    QUESTIONS.iter().any(|head| question.starts_with(head))
}

/// The structure part; nothing where the site has neither inputs nor results.
pub(super) fn view(site: &Site, findings: &[Arc<Finding>]) -> Option<StructureView> {
    let results = results(findings);
    let groups = groups(site);
    (!results.is_empty() || !groups.is_empty()).then(|| StructureView {
        statement: STATEMENT.to_owned(),
        results,
        groups,
        factors: factors(findings),
    })
}

/// The questions in the order of their worst finding.
fn results(findings: &[Arc<Finding>]) -> Vec<StructureResult> {
    let mut results: Vec<(&str, f64, StructureResult)> = Vec::new();
    for (place, finding) in findings.iter().enumerate() {
        if !is_structural(&finding.question) {
            continue;
        }
        let ratio = finding.ratio.unwrap_or(f64::NEG_INFINITY);
        match results
            .iter_mut()
            .find(|(id, _, _)| *id == finding.question)
        {
            Some((_, largest, result)) => {
                *largest = largest.max(ratio);
                result.findings.push(place);
            }
            None => results.push((
                &finding.question,
                ratio,
                StructureResult {
                    ask: finding.ask.clone(),
                    verdict: super::finding::verdict(finding.standing),
                    ratio: String::new(),
                    findings: vec![place],
                },
            )),
        }
    }
    results
        .into_iter()
        .map(|(_, ratio, mut result)| {
            if ratio.is_finite() {
                result.ratio = format!("{ratio:.2}");
            }
            result
        })
        .collect()
}

/// A thing of the site with what it states.
struct Thing {
    kind: &'static str,
    name: String,
    stated: Vec<Stated>,
}

/// Every thing that structure rests on, those alike together.
fn groups(site: &Site) -> Vec<InputGroup> {
    let mut groups: Vec<(String, InputGroup)> = Vec::new();
    for thing in things(site) {
        let shared: Vec<&Stated> = thing
            .stated
            .iter()
            .filter(|one| !OWN.contains(&one.key.as_str()))
            .collect();
        if shared.is_empty() {
            continue;
        }
        let look = format!("{} {shared:?}", thing.kind);
        let own = thing
            .stated
            .iter()
            .filter(|one| TOLD.contains(&one.key.as_str()));
        let own: Vec<Input> = own
            .map(|one| input(&format!("{} of {}", one.key, thing.name), one))
            .collect();
        match groups.iter_mut().find(|(known, _)| *known == look) {
            Some((_, group)) => {
                group.title = format!("{}, {}", group.title, thing.name);
                group.inputs.extend(own);
            }
            None => groups.push((
                look,
                InputGroup {
                    title: format!("{} {}", thing.kind, thing.name).trim().to_owned(),
                    inputs: inputs(&shared).into_iter().chain(own).collect(),
                },
            )),
        }
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

/// Values one a line; those of a table inside together on the line of the table.
fn inputs(stated: &[&Stated]) -> Vec<Input> {
    let mut inputs: Vec<Input> = Vec::new();
    for one in stated {
        let Some((table, key)) = one.key.split_once(" · ") else {
            inputs.push(input(&one.key, one));
            continue;
        };
        let words = match key {
            "what" => one.text.clone(),
            key => format!("{key} {}", one.text),
        };
        match inputs.last_mut().filter(|last| last.what == table) {
            Some(last) => {
                last.value = format!("{}; {words}", last.value);
                if last.known != one.known.word() {
                    "as told".clone_into(&mut last.known);
                }
            }
            None => inputs.push(Input {
                what: table.to_owned(),
                value: words,
                known: one.known.word().to_owned(),
            }),
        }
    }
    inputs
}

fn input(what: &str, stated: &Stated) -> Input {
    let known = stated.known.word();
    let value = stated.text.strip_suffix(&format!(", {known}"));
    Input {
        what: what.to_owned(),
        value: value.unwrap_or(&stated.text).to_owned(),
        known: known.to_owned(),
    }
}

fn things(site: &Site) -> Vec<Thing> {
    let units = site.site.unit_system();
    let thing = |kind, name: String, stated| Thing { kind, name, stated };
    let mut things = Vec::new();
    if let Some(climate) = &site.climate {
        let stated = without(climate.stated(units), &NOT_STRUCTURE);
        things.push(thing("Ground and weather", String::new(), stated));
    }
    for foundation in &site.foundation {
        let mut own = without(foundation.stated(units), &["anchor", "opening"]);
        // How the end of a pipe is kept is a matter of wet feet, not of strength.
        own.retain(|one| !one.key.contains(" · end · "));
        things.push(thing("Foundation", foundation.id.to_string(), own));
        for (index, anchor) in foundation.anchor.iter().enumerate() {
            let name = anchor.id.as_ref().map_or_else(
                || format!("{} on {}", index + 1, foundation.id),
                |id| format!("{id} on {}", foundation.id),
            );
            let own = without(anchor.stated(units), &BOUGHT);
            things.push(thing("Anchors", name, own));
        }
    }
    for gate in &site.gate {
        things.extend(of_gate(gate, units));
    }
    for bollard in &site.bollard {
        things.push(thing(
            "Bollard",
            bollard.id.to_string(),
            bollard.stated(units),
        ));
    }
    let loads = site.vehicle.iter().flat_map(|vehicle| {
        let stated = only(vehicle.stated(units), &LOADS);
        stated.into_iter().map(|one| Stated {
            key: format!("{} · {}", vehicle.id, one.key),
            ..one
        })
    });
    things.push(thing("Vehicles", String::new(), loads.collect()));
    things
}

/// Leaves with their members, and posts.
fn of_gate(gate: &site::Gate, units: UnitSystem) -> Vec<Thing> {
    let leaves = gate.leaf.iter().map(|leaf| Thing {
        kind: "Leaf",
        name: leaf.id.to_string(),
        stated: without(leaf.stated(units), &["owner warned", "finish", "outside"]),
    });
    let posts = gate.post.iter().map(|post| Thing {
        kind: "Post",
        name: post.id.to_string(),
        stated: without(post.stated(units), &["price", "finish"]),
    });
    leaves.chain(posts).collect()
}

/// What of a vehicle anything that stands rests on: its loads and blows, and the room that it takes.
const LOADS: [&str; 8] = [
    "what",
    "mass",
    "speed",
    "axle load",
    "wheel load",
    "fire apparatus",
    "width",
    "margin",
];

/// What of anchors is asked when they are bought, not when they hold.
const BOUGHT: [&str; 4] = ["price", "cartridge", "nozzle loss", "cartridge price"];

/// What is stated under some keys.
fn only(stated: Vec<Stated>, keys: &[&str]) -> Vec<Stated> {
    let wanted = |one: &Stated| keys.contains(&one.key.as_str());
    stated.into_iter().filter(wanted).collect()
}

/// What is stated apart from some keys and the tables under them.
fn without(stated: Vec<Stated>, keys: &[&str]) -> Vec<Stated> {
    stated
        .into_iter()
        .filter(|one| {
            !keys.iter().any(|key| {
                one.key.strip_prefix(key).is_some_and(|rest| {
                    rest.is_empty() || rest.starts_with(' ') && rest.contains('·')
                })
            })
        })
        .collect()
}

/// Every factor that a finding of structure was worked with, once, by the step that it stands in.
fn factors(findings: &[Arc<Finding>]) -> Vec<InputGroup> {
    let mut groups: Vec<InputGroup> = Vec::new();
    let structural = findings
        .iter()
        .filter(|finding| is_structural(&finding.question));
    for step in structural.flat_map(|finding| &finding.working) {
        let lines = step.given.iter().chain(&step.gives);
        for factor in lines.filter_map(factor) {
            let title = title(step);
            match groups.iter_mut().find(|group| group.title == title) {
                Some(group) => group.take(factor),
                None => groups.push(InputGroup {
                    title,
                    inputs: vec![factor],
                }),
            }
        }
    }
    groups
}

impl InputGroup {
    /// Takes a factor in: its values stand beside each other, each once.
    fn take(&mut self, factor: Input) {
        let known = |one: &&mut Input| one.what == factor.what && one.known == factor.known;
        match self.inputs.iter_mut().find(known) {
            Some(one) if one.value.split(", ").any(|value| value == factor.value) => {}
            Some(one) => one.value = format!("{}, {}", one.value, factor.value),
            None => self.inputs.push(factor),
        }
    }
}

/// A step of the working with its source.
fn title(step: &Working) -> String {
    let words = step.title.trim_end_matches('.');
    match step.source.as_ref().map(super::finding::work) {
        Some(source) if !source.is_empty() => format!("{words} ({source})"),
        _ => words.to_owned(),
    }
}

/// A line of the working that is a factor: a bare number that is called one.
fn factor(line: &Line) -> Option<Input> {
    let is_factor = line.meaning.to_lowercase().contains("factor") && line.value.unit.is_empty();
    is_factor.then(|| Input {
        what: line.meaning.trim_end_matches('.').replace('`', ""),
        value: line.value.text.clone(),
        known: line.known.clone(),
    })
}
