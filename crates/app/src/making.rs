//! Makes every paper of a site, one after the other, so that whoever waits can see how far it is and may stop it.

use crate::command::threads;
use crate::outcome::Complaint;
use design::Finding;
use design::walk::{GateWalk, Kept, KeptWalk};
use draw::DxfUnit;
use papers::compose::{Issue, Pack, compose};
use papers::sheets::NamedDrawing;
use papers::view::{Attachment, DocumentView, TablesView};
use site::Site;
use std::panic::resume_unwind;

/// Steps that are told.
pub(crate) const STEPS: u64 = 3;

/// A paper, made.
pub(crate) struct Paper {
    /// Name of its file.
    pub(crate) name: String,
    /// What it is, in a few words.
    pub(crate) what: &'static str,
    /// Its bytes.
    pub(crate) bytes: Vec<u8>,
}

/// Everything that was made.
pub(crate) struct Made {
    /// The papers, the pack first.
    pub(crate) papers: Vec<Paper>,
    /// What the pack says first.
    pub(crate) summary: String,
    /// Every finding holds.
    pub(crate) all_hold: bool,
    /// What could not be made, and why.
    pub(crate) left_out: Vec<String>,
}

/// Makes every paper. `step` is told what begins; where it refuses, nothing more is made.
pub(crate) fn make(
    site: &Site,
    mut issue: Issue,
    step: &mut dyn FnMut(&'static str) -> Result<(), Complaint>,
) -> Result<Made, Complaint> {
    step("asking every question")?;
    let mut answers = design::answers_on(site, threads());
    for finding in issue.walks.iter().filter_map(|one| worked(site, one)) {
        answers.replace(finding);
    }
    let findings = format!("{:#}\n", serde_json::json!(answers.findings)).into_bytes();
    issue.attachments.push(Attachment {
        name: "findings.json".to_owned(),
        media_type: "application/json".to_owned(),
        description: "Every finding with its working".to_owned(),
        bytes: findings.clone(),
    });
    step("making the drawings")?;
    let pack = compose(site, &answers, issue)
        .map_err(|error| Complaint(format!("A drawing cannot be made: {error}")))?;
    let unit = match site.site.unit_system() {
        quantity::UnitSystem::UsCustomary => DxfUnit::Inches,
        quantity::UnitSystem::Si => DxfUnit::Millimeters,
    };
    step("setting the documents")?;
    // The pack takes about as long as all others together.
    let (pages, others) = std::thread::scope(|scope| {
        let others = scope.spawn(|| others(&pack, unit, findings));
        let pages = papers::pack::pack(&pack.view);
        (
            pages,
            others.join().unwrap_or_else(|why| resume_unwind(why)),
        )
    });
    let mut made = Made {
        papers: Vec::new(),
        summary: pack.view.summary.clone(),
        all_hold: answers.all_hold(),
        left_out: Vec::new(),
    };
    let others = others?;
    made.papers.push(Paper {
        name: "pack.pdf".to_owned(),
        what: "findings, questions, structure, schedules, drawings, cautions",
        bytes: set("The pages", pages)?,
    });
    made.papers.extend(others.papers);
    made.left_out = others.left_out;
    Ok(made)
}

/// Everything but the pack.
fn others(pack: &Pack, unit: DxfUnit, findings: Vec<u8>) -> Result<Others, Complaint> {
    let mut others = Others::default();
    others.add(
        "working.pdf",
        "every finding with its working and sources",
        set("The working", papers::pack::workings(&pack.view))?,
    );
    others.add(
        "findings.json",
        "every finding with its working, for machines",
        findings,
    );
    others.add(
        "schedules.xlsx",
        "the schedules as a workbook",
        schedules(pack)?,
    );
    others.add_drawings(&pack.drawings, unit);
    others.add_labels(pack)?;
    others.add_beside(pack, unit)?;
    others.add_templates(pack, unit)?;
    Ok(others)
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

fn schedules(pack: &Pack) -> Result<Vec<u8>, Complaint> {
    let mut tables = pack.view.schedules.clone();
    tables.extend(pack.beside.iter().flat_map(|beside| beside.tables.clone()));
    papers::workbook::workbook(&pack.view.document, &tables)
        .map_err(|error| Complaint(format!("The schedules cannot be written: {error}")))
}

fn set(
    what: &str,
    result: Result<Vec<u8>, papers::engine::TypesetError>,
) -> Result<Vec<u8>, Complaint> {
    result.map_err(|error| Complaint(format!("{what} cannot be set: {error}")))
}

/// Papers beside the pack, and what could not be made.
#[derive(Default)]
struct Others {
    papers: Vec<Paper>,
    left_out: Vec<String>,
}

impl Others {
    fn add(&mut self, name: &str, what: &'static str, bytes: Vec<u8>) {
        self.papers.push(Paper {
            name: name.to_owned(),
            what,
            bytes,
        });
    }

    fn add_labels(&mut self, pack: &Pack) -> Result<(), Complaint> {
        let labels = match &pack.labels {
            Ok(labels) => labels,
            Err(why) => {
                self.left_out.push(why.to_string());
                return Ok(());
            }
        };
        let sheets = set("The labels", papers::documents::labels(&labels.sheets))?;
        self.add(
            "labels.pdf",
            "labels on sheets, to be printed at 100 %",
            sheets,
        );
        if let Some(strip) = &labels.strip {
            let strip = set("The labels", papers::documents::labels(strip))?;
            self.add("labels-strip.pdf", "the same labels on a strip", strip);
        }
        Ok(())
    }

    /// Each drawing for the screen and for CAD.
    fn add_drawings(&mut self, drawings: &[NamedDrawing], unit: DxfUnit) {
        for sheet in drawings {
            let (svg, dxf) = (sheet.drawing.svg(), sheet.drawing.dxf(unit));
            self.add(
                &format!("{}.svg", sheet.name),
                "a drawing for the screen",
                svg.into(),
            );
            self.add(
                &format!("{}.dxf", sheet.name),
                "the same for CAD, at full size",
                dxf.into(),
            );
        }
    }

    /// What is too long for the pack, each set a document, with its drawings.
    fn add_beside(&mut self, pack: &Pack, unit: DxfUnit) -> Result<(), Complaint> {
        for beside in &pack.beside {
            let view = TablesView {
                document: DocumentView {
                    title: beside.title.to_owned(),
                    ..pack.view.document.clone()
                },
                schedules: beside.tables.clone(),
                drawings: beside.sheets.clone(),
            };
            let pdf = set(beside.title, papers::documents::tables(&view))?;
            self.add(&format!("{}.pdf", beside.name), beside.what, pdf);
            self.add_drawings(&beside.drawings, unit);
        }
        Ok(())
    }

    /// Templates of anchors, each page for the screen and each pattern for CAD.
    fn add_templates(&mut self, pack: &Pack, unit: DxfUnit) -> Result<(), Complaint> {
        let Some(view) = &pack.templates else {
            return Ok(());
        };
        let pdf = set("The templates", papers::pack::templates(view))?;
        self.add(
            "templates.pdf",
            "anchor templates at full size, to be printed at 100 %",
            pdf,
        );
        for template in &pack.template_drawings {
            self.add(
                &format!("{}.dxf", template.name),
                "a template for CAD, at full size",
                template.whole.dxf(unit).into(),
            );
        }
        Ok(())
    }
}
