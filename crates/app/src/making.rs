//! Makes every paper of a site, step by step, so that whoever waits can see how far it is and may stop it.

use crate::command::{answer_by_walks, threads};
use crate::outcome::Complaint;
use draw::DxfUnit;
use papers::compose::{Beside, Issue, Pack, compose};
use papers::engine::TypesetError;
use papers::view::{Attachment, DocumentView, TablesView};
use site::Site;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};

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
    answer_by_walks(&mut answers, site, &issue.walks);
    let findings = format!(
        "{:#}\n",
        serde_json::json!(answers.findings().collect::<Vec<_>>())
    )
    .into_bytes();
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
    let documents = documents(&pack);
    let mut papers = Vec::new();
    for (document, set) in documents.iter().zip(all_set(&documents)) {
        let bytes =
            set.map_err(|error| Complaint(format!("{} cannot be set: {error}", document.title)))?;
        papers.push(paper(
            &format!("{}.pdf", document.name),
            document.what,
            bytes,
        ));
    }
    papers.push(paper(
        "findings.json",
        "every finding with its working, for machines",
        findings,
    ));
    papers.push(paper(
        "schedules.xlsx",
        "the schedules as a workbook",
        schedules(&pack)?,
    ));
    papers.extend(drawn(&pack, unit));
    Ok(Made {
        papers,
        summary: pack.view.summary.clone(),
        all_hold: answers.all_hold(),
        left_out: pack
            .labels
            .as_ref()
            .err()
            .map(ToString::to_string)
            .into_iter()
            .collect(),
    })
}

fn paper(name: &str, what: &'static str, bytes: Vec<u8>) -> Paper {
    Paper {
        name: name.to_owned(),
        what,
        bytes,
    }
}

/// A document that can be set.
struct Document<'p> {
    /// Name of its file, without the ending.
    name: &'static str,
    /// Its title, for whoever is told that it cannot be set.
    title: &'static str,
    what: &'static str,
    set: Box<dyn Fn() -> Result<Vec<u8>, TypesetError> + Sync + 'p>,
}

/// Every document, those that take longest first.
fn documents(pack: &Pack) -> Vec<Document<'_>> {
    let mut all = vec![
        Document {
            name: "pack",
            title: "The pack",
            what: "findings, questions, structure, schedules, drawings, cautions",
            set: Box::new(|| papers::pack::pack(&pack.view)),
        },
        Document {
            name: "working",
            title: "The working",
            what: "every finding with its working and sources",
            set: Box::new(|| papers::pack::workings(&pack.view)),
        },
    ];
    all.extend(pack.beside.iter().map(|beside| Document {
        name: beside.name,
        title: beside.title,
        what: beside.what,
        set: Box::new(|| papers::documents::tables(&tables(pack, beside))),
    }));
    all.extend(pack.templates.as_ref().map(|view| Document {
        name: "templates",
        title: "The templates",
        what: "anchor templates at full size, to be printed at 100 %",
        set: Box::new(|| papers::pack::templates(view)),
    }));
    let labels = pack.labels.as_ref().ok();
    all.extend(labels.map(|labels| Document {
        name: "labels",
        title: "The labels",
        what: "labels on sheets, to be printed at 100 %",
        set: Box::new(|| papers::documents::labels(&labels.sheets)),
    }));
    let strip = labels.and_then(|labels| labels.strip.as_ref());
    all.extend(strip.map(|strip| Document {
        name: "labels-strip",
        title: "The strip of labels",
        what: "the same labels on a strip",
        set: Box::new(|| papers::documents::labels(strip)),
    }));
    all
}

/// The tables of a document beside the pack, with its drawings.
fn tables(pack: &Pack, beside: &Beside) -> TablesView {
    TablesView {
        document: DocumentView {
            title: beside.title.to_owned(),
            ..pack.view.document.clone()
        },
        schedules: beside.tables.clone(),
        drawings: beside.sheets.clone(),
    }
}

/// Sets documents on all cores: whoever is free takes the next one.
fn all_set(documents: &[Document<'_>]) -> Vec<Result<Vec<u8>, TypesetError>> {
    let next = AtomicUsize::new(0);
    let lane = || {
        let mut set = Vec::new();
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            let Some(document) = documents.get(at) else {
                return set;
            };
            set.push((at, (document.set)()));
        }
    };
    let mut set: Vec<_> = std::thread::scope(|scope| {
        let lanes: Vec<_> = (0..threads().get()).map(|_| scope.spawn(lane)).collect();
        let joined = lanes
            .into_iter()
            .map(|lane| lane.join().unwrap_or_else(|why| resume_unwind(why)));
        joined.flatten().collect()
    });
    set.sort_by_key(|(at, _)| *at);
    set.into_iter().map(|(_, set)| set).collect()
}

/// Each drawing for the screen and for CAD, and the templates for CAD.
fn drawn(pack: &Pack, unit: DxfUnit) -> Vec<Paper> {
    let beside = pack.beside.iter().flat_map(|beside| &beside.drawings);
    let sheets = pack.drawings.iter().chain(beside).flat_map(|sheet| {
        let (svg, dxf) = (sheet.drawing.svg(), sheet.drawing.dxf(unit));
        [
            paper(
                &format!("{}.svg", sheet.name),
                "a drawing for the screen",
                svg.into(),
            ),
            paper(
                &format!("{}.dxf", sheet.name),
                "the same for CAD, at full size",
                dxf.into(),
            ),
        ]
    });
    let templates = pack.template_drawings.iter().map(|template| {
        paper(
            &format!("{}.dxf", template.name),
            "a template for CAD, at full size",
            template.whole.dxf(unit).into(),
        )
    });
    sheets.chain(templates).collect()
}

fn schedules(pack: &Pack) -> Result<Vec<u8>, Complaint> {
    let mut tables = pack.view.schedules.clone();
    tables.extend(pack.beside.iter().flat_map(|beside| beside.tables.clone()));
    papers::workbook::workbook(&pack.view.document, &tables)
        .map_err(|error| Complaint(format!("The schedules cannot be written: {error}")))
}
