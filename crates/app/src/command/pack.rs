//! `gatewright pack`: the papers of a site.

use super::kept::kept;
use crate::folder::Folder;
use crate::making::{Paper, STEPS, make};
use crate::outcome::{Complaint, Outcome, complain, say};
use indicatif::{ProgressBar, ProgressStyle};
use papers::compose::Issue;
use papers::view::{Attachment, Day};
use site::{Loaded, Site};
use std::path::Path;
use std::time::Duration;

/// Makes the papers and writes them to a folder.
pub(crate) fn run(
    site: &Path,
    output: &Path,
    date: Option<&str>,
    since: Option<&Path>,
) -> Result<Outcome, Complaint> {
    let day = issue_day(date)?;
    let since = since.map(issued).transpose()?;
    let folder = Folder::read(site)?;
    let attachment = Attachment {
        name: "site.toml".to_owned(),
        media_type: "application/toml".to_owned(),
        description: "The site file that everything here was made from".to_owned(),
        bytes: folder.text().as_bytes().to_vec(),
    };
    let fingerprint = folder.fingerprint();
    let site_file = folder.site_file.clone();
    let Loaded { site, problems } = folder.load();
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    let Some(site) = site else {
        return Ok(Outcome::BadInput);
    };
    let walks = kept(&site, &site_file).unwrap_or_else(|complaint| {
        complain(&complaint);
        Vec::new()
    });
    let issue = Issue {
        day,
        maker: format!("gatewright {}", env!("CARGO_PKG_VERSION")),
        fingerprint,
        attachments: vec![attachment],
        walks,
        since,
    };
    let all_hold = write(&site, issue, output)?;
    Ok(match (problems.any_wrong(), all_hold) {
        (true, _) => Outcome::BadInput,
        (false, true) => Outcome::Holds,
        (false, false) => Outcome::Open,
    })
}

/// The site as it was issued before.
fn issued(file: &Path) -> Result<Box<Site>, Complaint> {
    let Loaded { site, problems } = Folder::read(file)?.load();
    site.map(Box::new).ok_or_else(|| {
        let first = problems.iter().next().map(|problem| problem.what.clone());
        Complaint::about(
            file,
            format_args!("cannot be compared with: {}", first.unwrap_or_default()),
        )
    })
}

/// Writes every paper; says whether all findings hold.
fn write(site: &Site, issue: Issue, output: &Path) -> Result<bool, Complaint> {
    let progress = progress();
    let made = make(site, issue, &mut |begins| {
        progress.set_message(begins);
        progress.inc(1);
        Ok(())
    })?;
    std::fs::create_dir_all(output)
        .map_err(|error| Complaint::about(output, format_args!("cannot be made ({error})")))?;
    for paper in &made.papers {
        put(output, &paper.name, &paper.bytes)?;
    }
    progress.finish_and_clear();
    for why in &made.left_out {
        complain(&format_args!("{why}\n"));
    }
    say(&made.summary);
    say_written(output, &made.papers);
    Ok(made.all_hold)
}

/// Lists what was written.
fn say_written(output: &Path, papers: &[Paper]) {
    let names = papers.iter().map(|paper| paper.name.len());
    let widest = names.max().unwrap_or(0);
    for Paper { name, what, .. } in papers {
        let gap = " ".repeat(widest - name.len());
        say(&format_args!(
            "  {}{gap}   {what}",
            output.join(name).display()
        ));
    }
}

/// A bar that shows itself only when the work takes longer than a second.
fn progress() -> ProgressBar {
    let bar = ProgressBar::new(STEPS);
    if let Ok(style) = ProgressStyle::with_template("{bar:24} {msg} {elapsed}") {
        bar.set_style(style);
    }
    bar.enable_steady_tick(Duration::from_secs(1));
    bar
}

/// Writes a file.
pub(super) fn put(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), Complaint> {
    let path = folder.join(name);
    std::fs::write(&path, bytes)
        .map_err(|error| Complaint::about(&path, format_args!("cannot be written ({error})")))
}

/// The day that the papers carry: the one that was asked for, or today.
pub(crate) fn issue_day(date: Option<&str>) -> Result<Day, Complaint> {
    let date = match date {
        None => jiff::ZonedDateTime::now().date(),
        Some(text) => text
            .parse()
            .map_err(|_| Complaint(format!("`{text}` is not a date; write it like 2026-05-04.")))?,
    };
    day(date).ok_or_else(|| {
        Complaint(format!(
            "{date} is not a day that a document can carry; take one from 1900 to 9999."
        ))
    })
}

fn day(date: jiff::civil::Date) -> Option<Day> {
    Day::new(
        u16::try_from(date.year()).ok()?,
        u8::try_from(date.month()).ok()?,
        u8::try_from(date.day()).ok()?,
    )
}
