//! The walk test of each gate of a job: what was kept, a first look, and walking as a task.

use super::drawn::readable;
use super::refusal::Refusal;
use super::store::{Seen, disk};
use super::tasks::{Steps, Tasks, stopped};
use super::workbench::Workbench;
use crate::command::{Heard, WALK_FILE, keep, record, rests_on, walk_past};
use crate::outcome::Complaint;
use design::Finding;
use design::walk::{Assumption, GateWalk, Told, WalkRecord};
use papers::live::{TouchedMap, touched};
use serde_json::{Value, json};
use site::{Gate, Site};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::SystemTime;

/// The sort of task.
pub(crate) const WHAT: &str = "walk";
/// Walks, where nobody says how many.
pub(crate) const WALKS: u64 = 200_000;
/// The most walks of one task: some minutes.
pub(crate) const MOST: u64 = 10_000_000;
/// Worst cases that are shown of a first look.
const CASES: usize = 4;

/// A first look at the walks past a gate: a few of each kind, which finds who is hit and clears nobody.
pub(crate) struct FirstLook {
    /// The gate.
    pub(crate) gate: String,
    /// Why nobody can be walked past it.
    pub(crate) refused: Option<Box<Finding>>,
    /// The worst walks, each of another body or direction.
    pub(crate) worst: Vec<Told>,
    /// Where on the plan somebody is touched.
    pub(crate) maps: Vec<TouchedMap>,
    /// What all of it rests on.
    pub(crate) assumptions: Vec<Assumption>,
}

/// A first look at each gate.
pub(crate) fn first_looks(site: &Site) -> Vec<FirstLook> {
    let one = |gate: &Gate| {
        let mut look = FirstLook {
            gate: gate.id.to_string(),
            refused: None,
            worst: Vec::new(),
            maps: Vec::new(),
            assumptions: Vec::new(),
        };
        match GateWalk::of(site, gate) {
            Ok(walk) => {
                let cases = walk.worst_cases(CASES, None).into_iter();
                look.worst = cases.map(|case| case.told).collect();
                look.maps = touched(site, &walk);
                look.assumptions = walk.assumptions().to_vec();
            }
            Err(finding) => look.refused = Some(finding),
        }
        look
    };
    site.gate.iter().map(one).collect()
}

/// What was kept of a gate.
pub(crate) struct KeptTest {
    /// It.
    pub(crate) record: WalkRecord,
    /// When it was kept.
    pub(crate) at: SystemTime,
    /// It is kept beside the site file, and the papers print it.
    pub(crate) beside: bool,
    /// Nothing that it rests on has changed since.
    pub(crate) is_of_now: bool,
    /// The answer that follows from it, as long as that is so.
    pub(crate) finding: Option<Finding>,
}

impl KeptTest {
    /// The day and time of keeping, in words.
    pub(crate) fn when(&self) -> String {
        jiff::Timestamp::try_from(self.at).map_or_else(
            |_| "at an unknown time".to_owned(),
            |at| at.strftime("%-d %B %Y, %H:%M UTC").to_string(),
        )
    }
}

/// The walk test of a gate.
pub(crate) struct Test {
    /// What was kept of it last.
    pub(crate) kept: Option<KeptTest>,
    /// Which first look is of it.
    pub(crate) at: usize,
}

/// The walk tests of a job, and the first looks that they name.
pub(crate) struct Tests {
    /// First looks, one for each gate.
    pub(crate) looks: Arc<Vec<FirstLook>>,
    /// Tests in the same order.
    pub(crate) of_gates: Vec<Test>,
    /// What is wrong with the results beside the site file, where they cannot be read.
    pub(crate) unread: Option<String>,
    /// The task that walks people past the gates now.
    pub(crate) task: Option<u64>,
}

/// The walk tests of what the files of a job say.
pub(crate) fn tests(bench: &Workbench, job: &str, seen: &Seen) -> Result<Tests, Refusal> {
    let site = readable(seen)?;
    let looks = bench.looked(seen)?;
    let mut known = own(&place(bench, job));
    known.extend(beside(&bench.folder().join(job), seen));
    known.sort_by_key(|(_, at, _)| std::cmp::Reverse(*at));
    let tests = looks.iter().enumerate().map(|(at, look)| {
        let gate = site.gate.iter().find(|gate| gate.id == *look.gate);
        let found = known.iter().find(|(record, ..)| record.gate == look.gate);
        let kept = gate.zip(found).map(|(gate, (record, at, beside))| {
            let walk = GateWalk::of(site, gate).ok();
            let walk = walk.filter(|walk| rests_on(walk) == record.rests_on);
            KeptTest {
                at: *at,
                beside: *beside,
                is_of_now: walk.is_some(),
                finding: walk.map(|walk| walk.finding(&record.sweep, &record.families)),
                record: record.clone(),
            }
        });
        Test { kept, at }
    });
    Ok(Tests {
        of_gates: tests.collect(),
        unread: seen.files.walks_unread(),
        task: bench.tasks().running(job, WHAT),
        looks,
    })
}

/// A record, when it was kept, and whether beside the site file.
type Known = (WalkRecord, SystemTime, bool);

/// What this program keeps of walks that were begun on a page.
fn own(place: &Path) -> Vec<Known> {
    let at = std::fs::metadata(place).and_then(|data| data.modified());
    let text = std::fs::read(place).unwrap_or_default();
    let records: Vec<WalkRecord> = serde_json::from_slice(&text).unwrap_or_default();
    let at = at.unwrap_or(SystemTime::UNIX_EPOCH);
    records
        .into_iter()
        .map(|record| (record, at, false))
        .collect()
}

/// What somebody keeps beside the site file.
fn beside(folder: &Path, seen: &Seen) -> Vec<Known> {
    let at = disk::written(&folder.join(WALK_FILE));
    let at = at.map_or(SystemTime::UNIX_EPOCH, |(at, ..)| at);
    let records = seen.files.kept_walks().into_iter();
    records.map(|record| (record, at, true)).collect()
}

fn place(bench: &Workbench, job: &str) -> PathBuf {
    bench.own(&format!("{job}.walks.json"))
}

/// What is to be walked.
pub(crate) struct Wanted {
    /// Walks past each gate.
    pub(crate) walks: u64,
    /// Only this gate.
    pub(crate) gate: Option<String>,
    /// It is to be kept beside the site file, for the papers.
    pub(crate) keep: bool,
}

/// Begins to walk people past the gates of what the files say now; where somebody does already, tells by which task.
pub(crate) fn begin(
    workbench: &Arc<Workbench>,
    job: &str,
    seen: Arc<Seen>,
    wanted: Wanted,
) -> Result<u64, Refusal> {
    readable(&seen)?;
    let site_file = workbench.folder().join(job).join(disk::SITE_FILE);
    let place = place(workbench, job);
    Tasks::begin(workbench, job, (WHAT, 100), move |steps| {
        walked(&seen, (&site_file, &place), &wanted, steps)
    })
}

/// Share of the progress that each stage of a gate takes, in hundredths, in order.
const STAGES: [u64; 3] = [25, 50, 25];

fn walked(
    seen: &Seen,
    (site_file, place): (&Path, &Path),
    wanted: &Wanted,
    steps: &mut Steps<'_>,
) -> Result<Value, Complaint> {
    let site = seen.site.as_ref();
    let gates = site.into_iter().flat_map(|site| &site.gate);
    let chosen = |gate: &&Gate| wanted.gate.as_ref().is_none_or(|name| gate.id == **name);
    let gates: Vec<&Gate> = gates.filter(chosen).collect();
    let walks: Vec<GateWalk<'_>> = site
        .into_iter()
        .flat_map(|site| {
            gates
                .iter()
                .filter_map(|gate| GateWalk::of(site, gate).ok())
        })
        .collect();
    if walks.is_empty() {
        return Err(Complaint(
            "Nobody can be walked past a gate of this site: facts are missing, which the answers name.".to_owned(),
        ));
    }
    let all = 100 * walks.len() as u64;
    let mut found = Vec::new();
    for (walk, first) in walks.iter().zip((0..).step_by(100)) {
        let steps = &*steps;
        let mut stage = 0;
        let mut begin = |of: u64, what: &'static str| -> Heard<'_> {
            let from = first + STAGES.iter().take(stage).sum::<u64>();
            let share = STAGES.get(stage).copied().unwrap_or(0);
            stage += 1;
            let says = format!("Gate {}: {what}", walk.name());
            steps.come((from, all), &says);
            let (done, told) = (AtomicU64::new(0), AtomicU64::new(from));
            Box::new(move |more| {
                let done = done.fetch_add(more, Ordering::Relaxed) + more;
                let now = from + share * done.min(of) / of.max(1);
                if told.fetch_max(now, Ordering::Relaxed) < now {
                    steps.come((now, all), &says);
                }
            })
        };
        let walk_past = || walk_past(walk, wanted.walks, &mut begin);
        let walked = steps.stop().unless_asked(walk_past);
        let walked = walked.ok_or_else(stopped)?;
        found.push(record(walk, &walked));
    }
    let names: Vec<String> = found.iter().map(|record| record.gate.clone()).collect();
    let mut records: Vec<WalkRecord> = own(place).into_iter().map(|(record, ..)| record).collect();
    records.retain(|known| !names.contains(&known.gate));
    records.extend(found.iter().cloned());
    let unfinished = place.with_extension("unfinished");
    let failed = |error: std::io::Error| {
        Complaint::about(place, format_args!("cannot be written ({error})"))
    };
    std::fs::write(&unfinished, json!(records).to_string()).map_err(failed)?;
    std::fs::rename(&unfinished, place).map_err(failed)?;
    if wanted.keep {
        keep(site_file, found)?;
    }
    Ok(json!({ "gates": names, "revision": seen.revision }))
}
