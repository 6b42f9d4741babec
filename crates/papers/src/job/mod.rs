//! The plan of a job as a document of its own: the tasks in their order, the bar chart, and a sheet for each day.

mod chart;
mod day;

use crate::compose::{Issue, document};
use crate::engine::{Shelf, TypesetError, TypesetOptions, typeset};
use crate::sheets::{Imprint, NamedDrawing, on_a_sheet};
use crate::view::{CAUTION_LINE, DocumentView, DrawingView};
use design::plan::{PlanShown, WorkPlan};
use serde::Serialize;
use site::Site;

/// The plan of a job, ready to be set.
#[derive(Debug, Clone)]
pub struct PlanPapers {
    view: PlanView,
    /// The bar chart, also for SVG and DXF files of its own.
    pub chart: NamedDrawing,
}

/// What the document shows.
#[derive(Debug, Clone, Serialize)]
struct PlanView {
    document: DocumentView,
    summary: String,
    tasks: Vec<Row>,
    days: Vec<day::DayView>,
    #[serde(skip)]
    sheet: DrawingView,
}

/// A task in the list of the order.
#[derive(Debug, Clone, Serialize)]
struct Row {
    id: String,
    what: String,
    from: String,
    to: String,
    slack: String,
    because: String,
    decides: bool,
}

const MAIN: &str = "plan.typ";

/// Puts the plan into the words of its papers. Fails only where the bar chart cannot be drawn.
pub fn papers(
    site: &Site,
    plan: &WorkPlan<'_>,
    issue: &Issue,
) -> Result<PlanPapers, draw::DrawError> {
    let shown = plan.shown();
    let document = document(site, "Work plan", issue);
    let imprint = |caution: &str| Imprint {
        date: document.date.clone(),
        caution: caution.to_owned(),
    };
    let chart = chart::planned(site, &shown);
    let sheet = on_a_sheet(site, &imprint(""), &chart)?;
    let view = PlanView {
        summary: summary(&shown),
        tasks: rows(&shown),
        days: day::days(site, &shown),
        sheet: crate::compose::sheet_view(&sheet.drawing),
        document: document.clone(),
    };
    Ok(PlanPapers {
        view,
        chart: on_a_sheet(site, &imprint(CAUTION_LINE), &chart)?,
    })
}

/// Sets the document. The same plan gives the same bytes.
pub fn pdf(papers: &PlanPapers) -> Result<Vec<u8>, TypesetError> {
    let view = &papers.view;
    let mut shelf = [
        ("theme.typ", include_str!("../../templates/theme.typ")),
        ("drawing.typ", include_str!("../../templates/drawing.typ")),
        (MAIN, include_str!("../../templates/plan.typ")),
    ]
    .iter()
    .fold(Shelf::new(), |shelf, (name, text)| {
        shelf.with_template(name, text)
    });
    shelf.add_drawing("drawing-0.svg", &view.sheet.svg);
    shelf.add_data(
        "view.json",
        &Data {
            view,
            sheets: vec![Placed {
                path: "drawing-0.svg",
                drawing: &view.sheet,
            }],
        },
    )?;
    let document = &view.document;
    typeset(
        &shelf,
        &TypesetOptions {
            main: MAIN.to_owned(),
            identity: format!(
                "{} {} {} {}",
                document.title, document.site_name, document.revision, document.fingerprint
            ),
            maker: document.maker.clone(),
        },
    )
}

/// The view with the path of its drawing.
#[derive(Serialize)]
struct Data<'a> {
    #[serde(flatten)]
    view: &'a PlanView,
    sheets: Vec<Placed<'a>>,
}

#[derive(Serialize)]
struct Placed<'a> {
    path: &'static str,
    #[serde(flatten)]
    drawing: &'a DrawingView,
}

fn summary(shown: &PlanShown) -> String {
    let proof = if shown.proved {
        "No order of these tasks ends sooner."
    } else {
        "Another order might end a little sooner; not every one was looked at."
    };
    let idle = match shown.idle_days {
        0 => "No working day between is without work.".to_owned(),
        1 => "One working day between is without work: everything waits.".to_owned(),
        days => format!(
            "{days} working days between are without work: everything waits for a cure or a delivery."
        ),
    };
    format!(
        "{} tasks on {} days, from {} to {}. {idle} {proof}",
        shown.tasks.len(),
        shown.days.len(),
        shown.begins,
        shown.ends
    )
}

fn rows(shown: &PlanShown) -> Vec<Row> {
    let row = |task: &design::plan::TaskShown| Row {
        id: task.id.clone(),
        what: task.what.clone(),
        from: task.from.clone(),
        to: task.to.clone(),
        slack: match task.slack_days {
            0 => "none".to_owned(),
            1 => "1 day".to_owned(),
            days => format!("{days} days"),
        },
        because: task.because.clone(),
        decides: task.decides,
    };
    shown.tasks.iter().map(row).collect()
}
