//! `gatewright walk`: people past each moving leaf of a site, millions of them, and what can be proved.

use super::kept::{keep, rests_on};
use super::threads;
use crate::arguments::WalkArguments;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{nearest_name, replayed, unread, walked};
use design::walk::{
    Effort, FamilyStanding, FamilyTold, GateWalk, MarginTold, Seed, SweepTold, WalkRecord,
};
use design::{Finding, Standing};
use indicatif::{ProgressBar, ProgressStyle};
use serde_json::{Value, json};
use site::{Gate, Loaded, Site};
use std::time::Duration;

/// Boxes that a proof looks at in each part of the space of touches.
const BOXES: u64 = 4096;
/// Boxes for each value that is tried for a margin.
const MARGIN_BOXES: u64 = 512;
/// How many values are moved to their margins.
const MARGINS: u64 = 4;

/// What was found of one gate.
pub(crate) struct Walked {
    pub(crate) sweep: SweepTold,
    pub(crate) families: Vec<FamilyTold>,
    pub(crate) margins: Vec<MarginTold>,
    pub(crate) finding: Finding,
}

/// Walks people past the gates of a site and prints what was asked for.
pub(crate) fn run(arguments: &WalkArguments) -> Result<Outcome, Complaint> {
    let folder = Folder::read(&arguments.site)?;
    let site_file = folder.site_file.clone();
    let Loaded { site, problems } = folder.load();
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    let Some(site) = &site else {
        return Ok(Outcome::BadInput);
    };
    let gates = gates(site, arguments.gate.as_deref())?;
    if let Some(seed) = arguments.seed {
        return one_walk(site, &gates, seed, arguments);
    }
    let mut outcome = Outcome::Holds;
    let (mut all, mut records) = (Vec::new(), Vec::new());
    for gate in gates {
        let finding = match GateWalk::of(site, gate) {
            Ok(walk) => {
                let walked_past = walk_past(&walk, arguments.walks, &mut shown_by_bars);
                if arguments.json {
                    all.push(as_json(&walk, &walked_past));
                } else {
                    say(&walked(site.site.name.as_str(), &walk, &walked_past));
                }
                if arguments.keep {
                    records.push(record(&walk, &walked_past));
                }
                walked_past.finding
            }
            Err(finding) => {
                if arguments.json {
                    all.push(json!({ "gate": gate.id.to_string(), "finding": finding }));
                } else {
                    say(&unread(
                        site.site.name.as_str(),
                        &format!("gate {}", gate.id),
                        &finding,
                    ));
                }
                *finding
            }
        };
        if finding.standing != Standing::Holds {
            outcome = Outcome::Open;
        }
    }
    if arguments.json {
        say(&format_args!("{:#}", Value::Array(all)));
    }
    if !records.is_empty() {
        let file = keep(&site_file, records)?;
        complain(&format_args!(
            "Kept in {}: check and pack answer by it as long as nothing changes that it rests on.",
            file.display()
        ));
    }
    Ok(if problems.any_wrong() {
        Outcome::BadInput
    } else {
        outcome
    })
}

/// What is kept of it.
pub(crate) fn record(walk: &GateWalk<'_>, found: &Walked) -> WalkRecord {
    WalkRecord {
        gate: walk.name().to_owned(),
        rests_on: rests_on(walk),
        sweep: found.sweep.clone(),
        families: found.families.clone(),
        margins: found.margins.clone(),
    }
}

/// The gate of that name, or all.
fn gates<'s>(site: &'s Site, name: Option<&str>) -> Result<Vec<&'s Gate>, Complaint> {
    if site.gate.is_empty() {
        return Err(Complaint("This site has no gate to walk past.".to_owned()));
    }
    let Some(name) = name else {
        return Ok(site.gate.iter().collect());
    };
    let found: Vec<&Gate> = site.gate.iter().filter(|gate| gate.id == *name).collect();
    if found.is_empty() {
        let names: Vec<String> = site.gate.iter().map(|gate| gate.id.to_string()).collect();
        let offer = nearest_name(name, &names)
            .map(|near| format!(" Nearest: {near}."))
            .unwrap_or_default();
        return Err(Complaint(format!("There is no gate named {name}.{offer}")));
    }
    Ok(found)
}

/// Takes how many steps of a stage are done.
pub(crate) type Heard<'h> = Box<dyn Fn(u64) + Sync + 'h>;

/// Sweep, proof and margins of one gate; each stage is begun with how many steps it has, and what they are.
pub(crate) fn walk_past<'h>(
    walk: &GateWalk<'_>,
    walks: u64,
    begin: &mut dyn FnMut(u64, &'static str) -> Heard<'h>,
) -> Walked {
    let threads = threads();
    let heard = begin(walks, "walks");
    let sweep = walk.sweep(walks, threads, heard.as_ref());
    drop(heard);
    let heard = begin(walk.families() as u64, "kinds of walk proved");
    let families = walk.prove(BOXES, threads, &|| heard(1));
    drop(heard);
    let finding = walk.finding(&sweep, &families);
    let is_hit = |family: &FamilyTold| family.standing == FamilyStanding::Refuted;
    // Where somebody is hit even now, nothing may go any farther.
    let margins = if finding.standing == Standing::Fails || families.iter().any(is_hit) {
        Vec::new()
    } else {
        let heard = begin(MARGINS, "margins");
        let proved = families
            .iter()
            .all(|family| family.standing == FamilyStanding::Proved);
        let most = proved.then_some(MARGIN_BOXES);
        walk.margins(Effort { most, threads }, &|| heard(1))
    };
    Walked {
        sweep,
        families,
        margins,
        finding,
    }
}

/// Each stage with a bar that shows how far it is.
fn shown_by_bars(steps: u64, what: &'static str) -> Heard<'static> {
    let bar = Bar(progress(steps, what));
    Box::new(move |done| bar.inc(done))
}

/// A bar that goes away when its stage is over.
struct Bar(ProgressBar);

impl Bar {
    fn inc(&self, done: u64) {
        self.0.inc(done);
    }
}

impl Drop for Bar {
    fn drop(&mut self) {
        self.0.finish_and_clear();
    }
}

/// One walk by its number, in words or as a trace.
fn one_walk(
    site: &Site,
    gates: &[&Gate],
    seed: Seed,
    arguments: &WalkArguments,
) -> Result<Outcome, Complaint> {
    let [gate] = gates else {
        return Err(Complaint(
            "A walk is one of one gate: name it with --gate.".to_owned(),
        ));
    };
    let walk = match GateWalk::of(site, gate) {
        Ok(walk) => walk,
        Err(finding) => {
            say(&unread(
                site.site.name.as_str(),
                &format!("gate {}", gate.id),
                &finding,
            ));
            return Ok(Outcome::Open);
        }
    };
    walk.scenario(seed)
        .map_err(|out| Complaint(format!("This walk cannot be worked here: {}.", out.why)))?;
    let told = walk.told(seed);
    if arguments.trace {
        say(&format_args!("{:#}", json!(walk.trace(seed))));
    } else if arguments.json {
        say(&format_args!("{:#}", json!(told)));
    } else {
        say(&replayed(site.site.name.as_str(), walk.name(), &told));
    }
    Ok(if told.bad {
        Outcome::Open
    } else {
        Outcome::Holds
    })
}

fn as_json(walk: &GateWalk<'_>, found: &Walked) -> Value {
    json!({
        "gate": walk.name(),
        "finding": found.finding,
        "sweep": found.sweep,
        "families": found.families,
        "margins": found.margins,
        "assumptions": walk.assumptions(),
    })
}

/// A bar that shows itself only when the work takes longer than a second.
fn progress(steps: u64, what: &'static str) -> ProgressBar {
    let bar = ProgressBar::new(steps);
    if let Ok(style) = ProgressStyle::with_template("{bar:24} {msg} {elapsed}") {
        bar.set_style(style);
    }
    bar.set_message(what);
    bar.enable_steady_tick(Duration::from_secs(1));
    bar
}
