//! Documents beside the pack: labels at full size, and tables and drawings that are too long for it.

use crate::engine::{Shelf, TypesetError, TypesetOptions, typeset};
use crate::pack::{Sheet, sheets};
use crate::view::{DocumentView, LabelView, LabelsView, TablesView};
use serde::Serialize;

const LABELS: &str = "labels.typ";
const TABLES: &str = "tables.typ";

/// A label, and where its code lies on the shelf.
#[derive(Serialize)]
struct Coded<'a> {
    path: String,
    #[serde(flatten)]
    label: &'a LabelView,
}

/// The labels with the paths of their codes.
#[derive(Serialize)]
struct LabelsData<'a> {
    document: &'a DocumentView,
    page_width: f64,
    page_height: f64,
    letters: f64,
    sheets: Vec<Vec<Coded<'a>>>,
}

/// Sets labels: every one at its exact size and place, and nothing else.
pub fn labels(view: &LabelsView) -> Result<Vec<u8>, TypesetError> {
    let mut shelf = Shelf::new()
        .with_template("theme.typ", include_str!("../templates/theme.typ"))
        .with_template(LABELS, include_str!("../templates/labels.typ"));
    let mut sheets = Vec::new();
    for (page, labels) in view.pages.iter().enumerate() {
        let mut sheet = Vec::new();
        for (place, label) in labels.iter().enumerate() {
            let path = format!("code-{page}-{place}.svg");
            if !label.code.is_empty() {
                shelf.add_drawing(&path, &label.code);
            }
            sheet.push(Coded { path, label });
        }
        sheets.push(sheet);
    }
    let data = LabelsData {
        document: &view.document,
        page_width: view.page_width,
        page_height: view.page_height,
        letters: view.letters,
        sheets,
    };
    shelf.add_data("view.json", &data)?;
    typeset(&shelf, &options(LABELS, &view.document))
}

/// The tables with the paths of the drawings.
#[derive(Serialize)]
struct TablesData<'a> {
    #[serde(flatten)]
    view: &'a TablesView,
    sheets: Vec<Sheet<'a>>,
}

/// Sets tables and the drawings that belong to them.
pub fn tables(view: &TablesView) -> Result<Vec<u8>, TypesetError> {
    let mut shelf = Shelf::new()
        .with_template("theme.typ", include_str!("../templates/theme.typ"))
        .with_template("marks.typ", include_str!("../templates/marks.typ"))
        .with_template("schedule.typ", include_str!("../templates/schedule.typ"))
        .with_template("drawing.typ", include_str!("../templates/drawing.typ"))
        .with_template(TABLES, include_str!("../templates/tables.typ"));
    let sheets = sheets(&mut shelf, &view.drawings);
    shelf.add_data("view.json", &TablesData { view, sheets })?;
    typeset(&shelf, &options(TABLES, &view.document))
}

/// What is said about a document beside its files.
pub(crate) fn options(main: &str, document: &DocumentView) -> TypesetOptions {
    TypesetOptions {
        main: main.to_owned(),
        identity: format!(
            "{} {} {} {}",
            document.title, document.site_name, document.revision, document.fingerprint
        ),
        maker: document.maker.clone(),
    }
}
