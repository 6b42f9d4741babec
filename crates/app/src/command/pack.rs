//! `gatewright pack`: the papers of a site.

use super::kept::kept;
use super::threads;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use design::Finding;
use design::walk::{GateWalk, Kept, KeptWalk};
use indicatif::{ProgressBar, ProgressStyle};
use papers::compose::{Issue, Pack, compose};
use papers::sheets::NamedDrawing;
use papers::view::{Attachment, Day};
use site::{Loaded, Site};
use std::panic::resume_unwind;
use std::path::Path;
use std::time::Duration;

/// Steps that the progress bar counts.
const STEPS: u64 = 5;

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
fn write(site: &Site, mut issue: Issue, output: &Path) -> Result<bool, Complaint> {
    let progress = progress();
    progress.set_message("asking every question");
    let mut answers = design::answers_on(site, threads());
    for finding in issue.walks.iter().filter_map(|one| worked(site, one)) {
        answers.replace(finding);
    }
    progress.inc(1);
    let findings = format!("{:#}\n", serde_json::json!(answers.findings));
    issue.attachments.push(Attachment {
        name: "findings.json".to_owned(),
        media_type: "application/json".to_owned(),
        description: "Every finding with its working".to_owned(),
        bytes: findings.clone().into_bytes(),
    });
    progress.set_message("making the drawings");
    let pack = compose(site, &answers, issue)
        .map_err(|error| Complaint(format!("A drawing cannot be made: {error}")))?;
    progress.inc(1);
    std::fs::create_dir_all(output)
        .map_err(|error| Complaint::about(output, format_args!("cannot be made ({error})")))?;
    let unit = match site.site.unit_system() {
        quantity::UnitSystem::UsCustomary => draw::DxfUnit::Inches,
        quantity::UnitSystem::Si => draw::DxfUnit::Millimeters,
    };
    let drawn = write_drawings(&pack.drawings, output, unit)?;
    progress.inc(1);
    progress.set_message("filling the schedules");
    let mut tables = pack.view.schedules.clone();
    tables.extend(pack.beside.iter().flat_map(|beside| beside.tables.clone()));
    let workbook = papers::workbook::workbook(&pack.view.document, &tables)
        .map_err(|error| Complaint(format!("The schedules cannot be written: {error}")))?;
    put(output, "schedules.xlsx", &workbook)?;
    progress.inc(1);
    progress.set_message("setting the pages");
    let (pages, working) = std::thread::scope(|scope| {
        let working = scope.spawn(|| papers::pack::workings(&pack.view));
        let pages = papers::pack::pack(&pack.view);
        (
            pages,
            working.join().unwrap_or_else(|why| resume_unwind(why)),
        )
    });
    let pdf = pages.map_err(|error| Complaint(format!("The pages cannot be set: {error}")))?;
    put(output, "pack.pdf", &pdf)?;
    let pdf = working.map_err(|error| Complaint(format!("The working cannot be set: {error}")))?;
    put(output, "working.pdf", &pdf)?;
    put(output, "findings.json", findings.as_bytes())?;
    let mut beside = write_labels(&pack, output)?;
    beside.extend(write_beside(&pack, output, unit)?);
    beside.extend(write_templates(&pack, output, unit)?);
    progress.finish_and_clear();
    say(&pack.view.summary);
    say_written(output, &drawn, &beside);
    Ok(answers.all_hold())
}

/// The answer of walks that were kept and still hold.
fn worked(site: &Site, one: &KeptWalk) -> Option<Finding> {
    let Kept::Valid(record) = &one.kept else {
        return None;
    };
    let gate = site.gate.iter().find(|gate| gate.id == *one.gate)?;
    let walk = GateWalk::of(site, gate).ok()?;
    Some(walk.finding(&record.sweep, &record.families))
}

/// Writes labels; returns what was written.
fn write_labels(pack: &Pack, output: &Path) -> Result<Vec<(String, &'static str)>, Complaint> {
    let cannot = |error: papers::engine::TypesetError| {
        Complaint(format!("The labels cannot be set: {error}"))
    };
    let mut written = Vec::new();
    match &pack.labels {
        Err(why) => complain(&format_args!("{why}\n")),
        Ok(labels) => {
            let pdf = papers::documents::labels(&labels.sheets).map_err(cannot)?;
            put(output, "labels.pdf", &pdf)?;
            written.push((
                "labels.pdf".to_owned(),
                "labels on sheets, to be printed at 100 %",
            ));
            if let Some(strip) = &labels.strip {
                put(
                    output,
                    "labels-strip.pdf",
                    &papers::documents::labels(strip).map_err(cannot)?,
                )?;
                written.push(("labels-strip.pdf".to_owned(), "the same labels on a strip"));
            }
        }
    }
    Ok(written)
}

/// Writes what is too long for the pack, each set a document; returns what was written.
fn write_beside(
    pack: &Pack,
    output: &Path,
    unit: draw::DxfUnit,
) -> Result<Vec<(String, &'static str)>, Complaint> {
    let mut written = Vec::new();
    for beside in &pack.beside {
        let view = papers::view::TablesView {
            document: papers::view::DocumentView {
                title: beside.title.to_owned(),
                ..pack.view.document.clone()
            },
            schedules: beside.tables.clone(),
            drawings: beside.sheets.clone(),
        };
        let pdf = papers::documents::tables(&view)
            .map_err(|error| Complaint(format!("{} cannot be set: {error}", beside.title)))?;
        let name = format!("{}.pdf", beside.name);
        put(output, &name, &pdf)?;
        written.push((name, beside.what));
        written.extend(write_drawings(&beside.drawings, output, unit)?);
    }
    Ok(written)
}

/// Writes each drawing for the screen and for CAD; returns what was written.
fn write_drawings(
    drawings: &[NamedDrawing],
    output: &Path,
    unit: draw::DxfUnit,
) -> Result<Vec<(String, &'static str)>, Complaint> {
    let mut written = Vec::new();
    for sheet in drawings {
        let (svg, dxf) = (format!("{}.svg", sheet.name), format!("{}.dxf", sheet.name));
        put(output, &svg, sheet.drawing.svg().as_bytes())?;
        put(output, &dxf, sheet.drawing.dxf(unit).as_bytes())?;
        written.push((svg, "a drawing for the screen"));
        written.push((dxf, "the same for CAD, at full size"));
    }
    Ok(written)
}

/// Writes the templates of anchors, each page for the screen and each pattern for CAD; returns what was written.
fn write_templates(
    pack: &Pack,
    output: &Path,
    unit: draw::DxfUnit,
) -> Result<Vec<(String, &'static str)>, Complaint> {
    let Some(view) = &pack.templates else {
        return Ok(Vec::new());
    };
    let pdf = papers::pack::templates(view)
        .map_err(|error| Complaint(format!("The templates cannot be set: {error}")))?;
    put(output, "templates.pdf", &pdf)?;
    let mut written = vec![(
        "templates.pdf".to_owned(),
        "anchor templates at full size, to be printed at 100 %",
    )];
    for template in &pack.template_drawings {
        let name = format!("{}.dxf", template.name);
        put(output, &name, template.whole.dxf(unit).as_bytes())?;
        written.push((name, "a template for CAD, at full size"));
    }
    Ok(written)
}

/// Lists what was written.
fn say_written(output: &Path, drawn: &[(String, &'static str)], beside: &[(String, &'static str)]) {
    let mut written = vec![
        (
            "pack.pdf".to_owned(),
            "findings, questions, structure, schedules, drawings, cautions",
        ),
        (
            "working.pdf".to_owned(),
            "every finding with its working and sources",
        ),
        (
            "findings.json".to_owned(),
            "every finding with its working, for machines",
        ),
        ("schedules.xlsx".to_owned(), "the schedules as a workbook"),
    ];
    written.extend(drawn.iter().chain(beside).cloned());
    let widest = written
        .iter()
        .map(|(name, _)| name.len())
        .max()
        .unwrap_or(0);
    for (name, what) in written {
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
pub(super) fn issue_day(date: Option<&str>) -> Result<Day, Complaint> {
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
