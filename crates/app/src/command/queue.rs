//! `gatewright queue`: days of vehicles that come to each gate, and how far back they stand.

use super::threads;
use crate::arguments::QueueArguments;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{nearest_name, queued, unread};
use design::Standing;
use design::queue::{Days, LaneQueue};
use serde_json::{Value, json};
use site::{Lane, Loaded, Site};

/// Works days of each lane and prints what came of them.
pub(crate) fn run(arguments: &QueueArguments) -> Result<Outcome, Complaint> {
    let folder = Folder::read(&arguments.site)?;
    let Loaded { site, problems } = folder.load();
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    let Some(site) = &site else {
        return Ok(Outcome::BadInput);
    };
    let mut outcome = Outcome::Holds;
    let mut all = Vec::new();
    for lane in lanes(site, arguments.lane.as_deref())? {
        let (found, standing) = worked(site, lane, arguments);
        all.extend(found);
        if standing != Standing::Holds {
            outcome = Outcome::Open;
        }
    }
    if arguments.json {
        say(&format_args!("{:#}", Value::Array(all)));
    }
    Ok(if problems.any_wrong() {
        Outcome::BadInput
    } else {
        outcome
    })
}

/// One lane: what is written as JSON, where that was asked for, and how it stands.
fn worked(site: &Site, lane: &Lane, arguments: &QueueArguments) -> (Option<Value>, Standing) {
    let queue = match LaneQueue::of(site, lane) {
        Ok(queue) => queue,
        Err(finding) => {
            let standing = finding.standing;
            if arguments.json {
                return (
                    Some(json!({ "lane": lane.id.to_string(), "finding": finding })),
                    standing,
                );
            }
            say(&unread(site.site.name.as_str(), &lane.called(), &finding));
            return (None, standing);
        }
    };
    let days = Days {
        days: arguments.days,
        seed: arguments.seed,
        threads: threads(),
    };
    let report = queue.run(days, &|_| ());
    let (finding, told) = (queue.finding(&report), queue.told(&report));
    if arguments.json {
        return (
            Some(json!({ "finding": finding, "queue": told })),
            finding.standing,
        );
    }
    say(&queued(site.site.name.as_str(), &queue, &told, &finding));
    (None, finding.standing)
}

/// The lane of that name, or all.
fn lanes<'s>(site: &'s Site, name: Option<&str>) -> Result<Vec<&'s Lane>, Complaint> {
    if site.lane.is_empty() {
        return Err(Complaint("This site has no lane to wait in.".to_owned()));
    }
    let Some(name) = name else {
        return Ok(site.lane.iter().collect());
    };
    let found: Vec<&Lane> = site.lane.iter().filter(|lane| lane.id == *name).collect();
    if found.is_empty() {
        let names: Vec<String> = site.lane.iter().map(|lane| lane.id.to_string()).collect();
        let offer = nearest_name(name, &names)
            .map(|near| format!(" Nearest: {near}."))
            .unwrap_or_default();
        return Err(Complaint(format!("There is no lane named {name}.{offer}")));
    }
    Ok(found)
}
