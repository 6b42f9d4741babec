//! The results of walks that are kept beside a site file, and whether they still hold.

use crate::folder::in_digits;
use crate::outcome::Complaint;
use design::Answers;
use design::walk::{GateWalk, Kept, KeptWalk, WalkRecord};
use sha2::{Digest as _, Sha256};
use site::Site;
use std::path::{Path, PathBuf};

/// The file beside the site file.
pub(crate) const WALK_FILE: &str = "walk.json";

/// Digest of everything that the walks past a gate rest on, and of the program that works them.
pub(crate) fn rests_on(walk: &GateWalk<'_>) -> String {
    let mut digest = Sha256::new();
    digest.update(env!("CARGO_PKG_VERSION"));
    digest.update([0]);
    digest.update(walk.rests_on());
    in_digits(&digest.finalize())
}

/// Keeps results in the place of those of the same gates; returns where.
pub(crate) fn keep(site_file: &Path, records: Vec<WalkRecord>) -> Result<PathBuf, Complaint> {
    let file = beside(site_file);
    let is_new = |known: &WalkRecord| records.iter().all(|record| record.gate != known.gate);
    let mut all: Vec<WalkRecord> = read(&file)?.into_iter().filter(is_new).collect();
    all.extend(records);
    all.sort_by(|one, other| one.gate.cmp(&other.gate));
    let text = format!("{:#}\n", serde_json::json!(all));
    std::fs::write(&file, text)
        .map_err(|error| Complaint::about(&file, format_args!("cannot be written ({error})")))?;
    Ok(file)
}

/// What was kept of each gate of a site, held against what the site is now.
pub(crate) fn kept(site: &Site, site_file: &Path) -> Result<Vec<KeptWalk>, Complaint> {
    read(&beside(site_file)).map(|known| held_against(site, known))
}

/// Results that were kept, held against what the site is now.
pub(crate) fn held_against(site: &Site, known: Vec<WalkRecord>) -> Vec<KeptWalk> {
    let of = |record: WalkRecord| {
        let gate = site.gate.iter().find(|gate| gate.id == *record.gate)?;
        let is_so = GateWalk::of(site, gate).is_ok_and(|walk| rests_on(&walk) == record.rests_on);
        Some(KeptWalk {
            gate: record.gate.clone(),
            kept: if is_so {
                Kept::Valid(Box::new(record))
            } else {
                Kept::OutOfDate
            },
        })
    };
    known.into_iter().filter_map(of).collect()
}

/// Puts the answers of walks that were kept, and still hold, in the place of the quick ones.
pub(crate) fn answer_by_walks(answers: &mut Answers, site: &Site, walks: &[KeptWalk]) {
    let worked = |one: &KeptWalk| {
        let Kept::Valid(record) = &one.kept else {
            return None;
        };
        let gate = site.gate.iter().find(|gate| gate.id == *one.gate)?;
        let walk = GateWalk::of(site, gate).ok()?;
        Some(walk.finding(&record.sweep, &record.families))
    };
    for finding in walks.iter().filter_map(worked) {
        answers.replace(finding);
    }
}

fn beside(site_file: &Path) -> PathBuf {
    site_file.with_file_name(WALK_FILE)
}

/// The records of a file; none where there is no such file.
fn read(file: &Path) -> Result<Vec<WalkRecord>, Complaint> {
    let text = match std::fs::read_to_string(file) {
        Ok(text) => text,
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => {
            return Err(Complaint::about(
                file,
                format_args!("cannot be read ({error})"),
            ));
        }
    };
    records_in(&text).map_err(|what| Complaint::about(file, what))
}

/// The records that a text of such a file holds, or what is to be done with it.
pub(crate) fn records_in(text: &str) -> Result<Vec<WalkRecord>, &'static str> {
    serde_json::from_str(text)
        .map_err(|_| "is not what gatewright walk --keep writes. Take it away, and run that again.")
}
