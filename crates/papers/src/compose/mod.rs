//! Puts a site and its answers into the words of the papers.

mod beside;
mod changes;
mod day_sheet;
mod finding;
mod question;
mod repeated;
mod schedule;
mod sheet;
mod structure;
mod template;

pub use beside::Beside;
pub(crate) use finding::verdict;
pub(crate) use sheet::view as sheet_view;

use crate::labels::{DoesNotFit, Labels, labels};
use crate::sheets::{Imprint, NamedDrawing, Template, beside_plans, clouded, laid_out, templates};
use crate::view::{
    Attachment, CAUTION_LINE, Day, DocumentView, Fact, PackView, Paper, Table, TemplatesView,
    VerdictCounts, standing_cautions,
};
use crate::walk;
use design::walk::KeptWalk;
use design::{Answers, State};
use quantity::{Measured, Quantity, UnitSystem, print_measured};
use site::{CodeBasis, Site};
use std::panic::resume_unwind;
use std::thread::{self, ScopedJoinHandle};

/// What the papers say of themselves, told by whoever has a clock and files.
#[derive(Debug, Clone)]
pub struct Issue {
    /// Day of issue.
    pub day: Day,
    /// The program that made it, with its version.
    pub maker: String,
    /// What tells this state of the site file from every other, shortened for print.
    pub fingerprint: String,
    /// Files that travel inside the PDF: the site file first.
    pub attachments: Vec<Attachment>,
    /// What was kept of the walks past each gate.
    pub walks: Vec<KeptWalk>,
    /// The site as it was when it was last issued, where changes since then are to be shown.
    pub since: Option<Box<Site>>,
}

/// Everything that a pack is made of.
#[derive(Debug, Clone)]
pub struct Pack {
    /// The document.
    pub view: PackView,
    /// The drawings, also for SVG and DXF files of their own.
    pub drawings: Vec<NamedDrawing>,
    /// The templates of anchors, to be printed alone; nothing where no anchors have a pattern.
    pub templates: Option<TemplatesView>,
    /// The same as drawings, also for SVG and DXF files of their own.
    pub template_drawings: Vec<Template>,
    /// Labels for cables, devices and fuses; why there are none where they do not fit.
    pub labels: Result<Labels, DoesNotFit>,
    /// What is too long for it: each a document of its own, the tables of all of them in the workbook.
    pub beside: Vec<Beside>,
}

/// Puts the pack of a site together. Fails only where the plan cannot be drawn.
pub fn compose(site: &Site, answers: &Answers, issue: Issue) -> Result<Pack, draw::DrawError> {
    let date = in_words(issue.day);
    let with_caution = |caution: &str| Imprint {
        date: date.clone(),
        caution: caution.to_owned(),
    };
    // In the document the foot of each sheet bears the caution; a drawing that travels alone bears its own.
    let since = issue.since.as_deref();
    let mut beside = beside_plans(site, &issue.walks);
    if let Some(before) = since {
        beside = clouded(site, before, beside, &beside_plans(before, &issue.walks));
    }
    let (sheets, drawings, beside) = thread::scope(|scope| {
        let sheets = scope.spawn(|| laid_out(site, &with_caution(""), &beside, since));
        let documents = scope.spawn(|| beside::all(site, since, &with_caution));
        let drawings = laid_out(site, &with_caution(CAUTION_LINE), &beside, since);
        (joined(sheets), drawings, joined(documents))
    });
    let (sheets, drawings, beside) = (sheets?, drawings?, beside?);
    let findings = finding::views(&answers.findings);
    let not_covered = answers
        .coverage
        .iter()
        .filter(|covered| covered.state == State::NotYetCovered)
        .count();
    let counts = VerdictCounts::of(findings.iter().map(|finding| finding.verdict), not_covered);
    let document = document(site, "Design pack", &issue);
    let view = PackView {
        facts: facts(site),
        counts,
        summary: summary(&counts),
        cautions: standing_cautions(),
        findings,
        questions: question::groups(&answers.coverage),
        walks: walk::views(site, &answers.findings, &issue.walks),
        structure: structure::view(site, &answers.findings),
        day_sheet: day_sheet::view(site, &answers.findings),
        schedules: with_changes(site, since, schedule::all),
        drawings: sheets
            .iter()
            .map(|sheet| sheet::view(&sheet.drawing))
            .collect(),
        document,
        attachments: issue.attachments,
    };
    let template_drawings = templates(site, &with_caution(CAUTION_LINE))?;
    Ok(Pack {
        labels: labels(site, &view.document),
        beside,
        templates: template::view(&view.document, &template_drawings),
        view,
        drawings,
        template_drawings,
    })
}

fn joined<T>(work: ScopedJoinHandle<'_, T>) -> T {
    work.join().unwrap_or_else(|why| resume_unwind(why))
}

/// What a document of this site says of itself.
pub fn document(site: &Site, title: &str, issue: &Issue) -> DocumentView {
    let property = site.site.property.as_ref();
    DocumentView {
        title: title.to_owned(),
        site_name: site.site.name.to_string(),
        place: property.map(ToString::to_string).unwrap_or_default(),
        installation: installation(site),
        designer: String::new(),
        paper: match site.site.code_basis {
            CodeBasis::Us => Paper::Letter,
            CodeBasis::Eu => Paper::A4,
        },
        day: issue.day,
        date: in_words(issue.day),
        revision: revision(site),
        maker: issue.maker.clone(),
        fingerprint: issue.fingerprint.clone(),
        caution_line: CAUTION_LINE.to_owned(),
    }
}

/// The schedules of a site, for the workbook.
pub fn schedules(site: &Site) -> Vec<Table> {
    let mut tables = schedule::all(site);
    tables.extend(beside::tables(site, None));
    tables
}

/// The tables of a site; where an earlier issue is given, what has changed comes first and is marked.
fn with_changes(site: &Site, since: Option<&Site>, tables: fn(&Site) -> Vec<Table>) -> Vec<Table> {
    let Some(before) = since else {
        return tables(site);
    };
    let revision = revision(before);
    let mut all = vec![changes::table(site, before, &revision)];
    all.extend(changes::marked(tables(site), &tables(before), &revision));
    all
}

/// The revision as the papers show it.
pub(crate) fn revision(site: &Site) -> String {
    let revision = site.site.revision.as_ref();
    revision.map_or_else(|| "draft".to_owned(), ToString::to_string)
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

fn in_words(day: Day) -> String {
    let month = MONTHS
        .get(usize::from(day.month()).saturating_sub(1))
        .copied()
        .unwrap_or_default();
    format!("{} {month} {}", day.day(), day.year())
}

fn installation(site: &Site) -> String {
    let gates: Vec<String> = site
        .gate
        .iter()
        .map(|gate| match &gate.clear_opening {
            Some(opening) => format!(
                "{} gate, {} clear opening",
                gate.kind,
                quantity::print(opening.nominal(), site.site.unit_system())
            ),
            None => format!("{} gate", gate.kind),
        })
        .collect();
    gates.join("; ")
}

/// The facts of the site that the cover shows.
fn facts(site: &Site) -> Vec<Fact> {
    let about = &site.site;
    let units = about.unit_system();
    let climate = site.climate.as_ref();
    let rows: [(&str, Option<String>); 11] = [
        (
            "Code basis",
            Some(about.code_basis.to_string().to_uppercase()),
        ),
        (
            "Usage class",
            about.usage_class.map(|class| class.to_string()),
        ),
        (
            "Use type",
            about.use_type.map(|use_type| use_type.to_string()),
        ),
        (
            "Protection code",
            about.protection_code.map(|code| code.to_string()),
        ),
        ("Wind code", about.wind_code.map(|code| code.to_string())),
        (
            "Authority",
            about.authority.as_ref().map(ToString::to_string),
        ),
        (
            "Permits",
            (!about.permits.is_empty()).then(|| {
                about
                    .permits
                    .iter()
                    .map(ToString::to_string)
                    .collect::<Vec<_>>()
                    .join("; ")
            }),
        ),
        (
            "Basic wind speed",
            climate.and_then(|climate| shown(climate.basic_wind_speed.as_ref(), units)),
        ),
        (
            "Hottest air",
            climate.and_then(|climate| shown(climate.hottest.as_ref(), units)),
        ),
        (
            "Coldest air",
            climate.and_then(|climate| shown(climate.coldest.as_ref(), units)),
        ),
        (
            "Installed",
            about.installed.as_ref().map(ToString::to_string),
        ),
    ];
    rows.into_iter()
        .filter_map(|(label, value)| value.map(|value| Fact::new(label, &value)))
        .collect()
}

fn shown<Q: Quantity>(measured: Option<&Measured<Q>>, units: UnitSystem) -> Option<String> {
    measured.map(|measured| print_measured(measured, units))
}

/// What the counts come to.
fn summary(counts: &VerdictCounts) -> String {
    let open = counts.unknown + counts.not_sure + counts.outside;
    match (counts.fails, open) {
        (0, 0) => "Every finding holds, tolerances included.".to_owned(),
        (0, 1) => "Nothing fails; 1 finding is open. The gate is not to go into service before it is closed.".to_owned(),
        (0, open) => format!(
            "Nothing fails; {} open. The gate is not to go into service before they are closed.",
            are(open, "finding")
        ),
        (1, 0) => "1 finding fails. The gate is not to go into service.".to_owned(),
        (fails, 0) => format!(
            "{} fail. The gate is not to go into service.",
            count(fails, "finding")
        ),
        (1, open) => format!(
            "1 finding fails and {} open. The gate is not to go into service.",
            are(open, "more")
        ),
        (fails, open) => format!(
            "{} fail and {} open. The gate is not to go into service.",
            count(fails, "finding"),
            are(open, "more")
        ),
    }
}

fn count(number: usize, noun: &str) -> String {
    if number == 1 {
        format!("1 {noun}")
    } else {
        format!("{number} {noun}s")
    }
}

fn are(number: usize, noun: &str) -> String {
    let noun = if noun == "finding" && number != 1 {
        "findings"
    } else {
        noun
    };
    if number == 1 {
        format!("1 {noun} is")
    } else {
        format!("{number} {noun} are")
    }
}
