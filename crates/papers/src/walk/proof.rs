//! The walk test of each gate in words: what was proved, what it assumed, and how far each value may go.

use crate::compose::verdict;
use crate::view::{AssumedRow, MarginRow, OpenRow, ShareRow, WalkFinding, WalkView};
use design::Finding;
use design::walk::{
    Assumption, FamilyStanding, FamilyTold, GateWalk, Kept, KeptWalk, MarginTold, SweepTold,
    WalkRecord, grouped, told_together,
};
use site::{Gate, Site};
use std::sync::Arc;

/// The question whether anybody can be hit.
const ANYONE: &str = "walk-anyone-hit";
/// The question whether each device responds as fast as was taken.
const RESPONSE: &str = "walk-response-as-assumed";

/// Said beside every result.
const CAUTIONS: [&str; 2] = [
    "A simulation is no force test and no test on site: forces are measured with a meter and each device is tried, in both directions, before anyone walks here.",
    "Response, stopping and reversing figures that are measured at commissioning are entered in the site file. Where one of them is worse than was taken here, this result is void.",
];

/// The walk test of every gate that people can be walked past.
pub(crate) fn views(site: &Site, findings: &[Arc<Finding>], kept: &[KeptWalk]) -> Vec<WalkView> {
    let gates = site.gate.iter();
    gates
        .filter_map(|gate| {
            let walk = GateWalk::of(site, gate).ok()?;
            let known = kept.iter().find(|one| gate.id == *one.gate);
            Some(view(
                &walk,
                (site, gate),
                findings,
                known.map_or(&Kept::Never, |one| &one.kept),
            ))
        })
        .collect()
}

fn view(
    walk: &GateWalk<'_>,
    (site, gate): (&Site, &Gate),
    findings: &[Arc<Finding>],
    kept: &Kept,
) -> WalkView {
    let answer = findings
        .iter()
        .map(|finding| &**finding)
        .find(|finding| finding.question == ANYONE && finding.subject.path == gate.origin.path);
    let record = match kept {
        Kept::Valid(record) => Some(record.as_ref()),
        _ => None,
    };
    let (people, granted, of_the_site) = parted(walk.assumptions());
    WalkView {
        gate: gate.origin.path.replace('"', ""),
        answer: answer.map(found),
        standing: standing(kept),
        shares: record.map_or(Vec::new(), |record| shares(&record.sweep)),
        families: record.map_or(String::new(), |record| told_together(&record.families)),
        open: record.map_or(Vec::new(), |record| open(&record.families)),
        worst: record.map_or(String::new(), worst),
        margins: record.map_or(Vec::new(), |record| {
            record.margins.iter().map(margin).collect()
        }),
        responses: responses(site, gate, findings),
        people,
        granted,
        of_the_site,
        cautions: cautions(answer),
    }
}

/// What is said beside every result, and what the answer leaves open.
fn cautions(answer: Option<&Finding>) -> Vec<String> {
    let open = answer.map(|finding| format!("Left open: {}.", finding.leaves_open));
    let said = CAUTIONS.map(str::to_owned).into_iter();
    said.chain(open).collect()
}

fn found(finding: &Finding) -> WalkFinding {
    WalkFinding {
        verdict: verdict(finding.standing),
        sentence: finding.sentence.clone(),
    }
}

fn standing(kept: &Kept) -> String {
    match kept {
        Kept::Never => "Not proved. This is a first look at a few walks of each kind: it finds who is hit, and clears nobody. \
             Run gatewright walk with --keep on this site, and make the papers again."
            .to_owned(),
        Kept::OutOfDate => "Out of date: something that the proof rests on has changed since it was made, and nothing of it is \
             printed here. Run gatewright walk with --keep on this site, and make the papers again."
            .to_owned(),
        Kept::Valid(record) => format!(
            "Worked by gatewright walk for this very leaf, its motion, devices, controller and people: {} walks sampled, and each \
             of {} kinds of walk looked at as a whole.",
            grouped(record.sweep.walks),
            record.families.len()
        ),
    }
}

fn shares(sweep: &SweepTold) -> Vec<ShareRow> {
    let row = |share: &design::walk::ShareTold| ShareRow {
        ends: share.ends.clone(),
        share: format!("{:.4} %", share.share * 100.0),
        error: format!("± {:.4} %", share.error * 100.0),
    };
    sweep.shares.iter().map(row).collect()
}

fn open(families: &[FamilyTold]) -> Vec<OpenRow> {
    let open = families.iter().filter_map(|family| {
        let how = match family.standing {
            FamilyStanding::Proved => return None,
            FamilyStanding::Refuted => {
                let told = family.refuted_by.as_ref();
                let how = told.map_or("A walk ends badly.", |told| told.sentence.as_str());
                format!("Ends badly. {how}")
            }
            FamilyStanding::Undecided => "Left open.".to_owned(),
        };
        Some(OpenRow {
            family: family.family.clone(),
            how,
        })
    });
    open.collect()
}

fn worst(record: &WalkRecord) -> String {
    let worst = record.touches().reduce(|worst, told| {
        let is_worse = (told.bad, told.severity) > (worst.bad, worst.severity);
        if is_worse { told } else { worst }
    });
    worst.map_or(String::new(), |told| told.sentence.clone())
}

fn margin(margin: &MarginTold) -> MarginRow {
    let (holds, not_at) = (margin.holds_up_to.as_ref(), margin.not_at.as_ref());
    MarginRow {
        what: margin.what.clone(),
        written: margin.written.clone(),
        taken: margin.now.clone(),
        holds: match (holds, margin.proved) {
            (Some(holds), true) => format!("proved up to {holds}"),
            (Some(holds), false) => format!("nobody found hit up to {holds}"),
            (None, _) => "somebody is hit even now".to_owned(),
        },
        not_at: not_at.map_or_else(
            || "beyond what was tried".to_owned(),
            |not| format!("at {not}"),
        ),
    }
}

/// How the responses that were measured at this gate stand to those that were taken.
fn responses(site: &Site, gate: &Gate, findings: &[Arc<Finding>]) -> Vec<WalkFinding> {
    let only = site.gate.len() == 1;
    let here = |finding: &&Arc<Finding>| {
        let device = site
            .device
            .iter()
            .find(|device| device.origin.path == finding.subject.path);
        finding.question == RESPONSE
            && device.is_some_and(|device| match &device.gate {
                Some(name) => *name == gate.id,
                None => only,
            })
    };
    let here = findings.iter().filter(here);
    here.map(|finding| found(finding)).collect()
}

/// People, what this tool takes for granted besides, values of the site.
fn parted(all: &[Assumption]) -> (Vec<AssumedRow>, Vec<AssumedRow>, Vec<AssumedRow>) {
    let (mut people, mut granted, mut site) = (Vec::new(), Vec::new(), Vec::new());
    for one in all {
        let row = AssumedRow {
            what: one.what.clone(),
            value: one.value.clone(),
            known: format!("{}; {}", one.known, one.source),
        };
        if one.value.contains("upright cylinders") {
            people.push(row);
        } else if one.of_the_site {
            site.push(row);
        } else {
            granted.push(row);
        }
    }
    (people, granted, site)
}
