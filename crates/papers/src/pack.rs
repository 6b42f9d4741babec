//! The design pack as PDF, and beside it the working of every finding and the templates of anchors.

use crate::documents::options;
use crate::engine::{Shelf, TypesetError, typeset};
use crate::view::{Attachment, DocumentView, DrawingView, FindingView, PackView, TemplatesView};
use serde::Serialize;

const MAIN: &str = "pack.typ";
const PATTERNS: &str = "templates.typ";
const WORKINGS: &str = "workings.typ";

/// The templates of the pack, by name.
const TEMPLATES: [(&str, &str); 14] = [
    (MAIN, include_str!("../templates/pack.typ")),
    ("theme.typ", include_str!("../templates/theme.typ")),
    ("marks.typ", include_str!("../templates/marks.typ")),
    ("cover.typ", include_str!("../templates/cover.typ")),
    ("findings.typ", include_str!("../templates/findings.typ")),
    ("working.typ", include_str!("../templates/working.typ")),
    ("link.typ", include_str!("../templates/link.typ")),
    ("questions.typ", include_str!("../templates/questions.typ")),
    ("walk.typ", include_str!("../templates/walk.typ")),
    ("structure.typ", include_str!("../templates/structure.typ")),
    ("day-sheet.typ", include_str!("../templates/day-sheet.typ")),
    ("schedule.typ", include_str!("../templates/schedule.typ")),
    ("drawing.typ", include_str!("../templates/drawing.typ")),
    ("cautions.typ", include_str!("../templates/cautions.typ")),
];

/// A drawing, and where it lies on the shelf.
#[derive(Serialize)]
pub(crate) struct Sheet<'a> {
    path: String,
    #[serde(flatten)]
    drawing: &'a DrawingView,
}

/// An attachment, where it lies on the shelf, and its name and media type as the standard allows them.
#[derive(Serialize)]
struct Enclosed<'a> {
    path: String,
    name: String,
    media_type: &'a str,
    description: &'a str,
}

/// The view with the paths of its files.
#[derive(Serialize)]
struct PackData<'a> {
    #[serde(flatten)]
    view: &'a PackView,
    sheets: Vec<Sheet<'a>>,
    enclosed: Vec<Enclosed<'a>>,
}

/// The templates with the paths of their pages.
#[derive(Serialize)]
struct TemplatesData<'a> {
    #[serde(flatten)]
    view: &'a TemplatesView,
    sheets: Vec<Sheet<'a>>,
}

/// The findings with the frame of their pages.
#[derive(Serialize)]
struct WorkingsData<'a> {
    document: DocumentView,
    findings: &'a [FindingView],
}

/// Sets the pack: cover, findings, questions, schedules, drawings, cautions. The same view gives the same bytes.
///
/// Fails only by a fault of a template or of a drawing; no text in the view can make it fail.
pub fn pack(view: &PackView) -> Result<Vec<u8>, TypesetError> {
    typeset(&shelf(view)?, &options(MAIN, &view.document))
}

/// Sets the working of every finding, as a document of its own.
pub fn workings(view: &PackView) -> Result<Vec<u8>, TypesetError> {
    let mut document = view.document.clone();
    "Working".clone_into(&mut document.title);
    let mut shelf = [
        ("theme.typ", include_str!("../templates/theme.typ")),
        ("marks.typ", include_str!("../templates/marks.typ")),
        ("link.typ", include_str!("../templates/link.typ")),
        ("working.typ", include_str!("../templates/working.typ")),
        ("findings.typ", include_str!("../templates/findings.typ")),
        (WORKINGS, include_str!("../templates/workings.typ")),
    ]
    .iter()
    .fold(Shelf::new(), |shelf, (name, text)| {
        shelf.with_template(name, text)
    });
    let options = options(WORKINGS, &document);
    shelf.add_data(
        "view.json",
        &WorkingsData {
            document,
            findings: &view.findings,
        },
    )?;
    typeset(&shelf, &options)
}

/// Sets the templates: every page at its exact size and nothing else.
pub fn templates(view: &TemplatesView) -> Result<Vec<u8>, TypesetError> {
    let mut shelf = [
        ("theme.typ", include_str!("../templates/theme.typ")),
        (PATTERNS, include_str!("../templates/templates.typ")),
    ]
    .iter()
    .fold(Shelf::new(), |shelf, (name, text)| {
        shelf.with_template(name, text)
    });
    let sheets = sheets(&mut shelf, &view.pages);
    shelf.add_data("view.json", &TemplatesData { view, sheets })?;
    typeset(&shelf, &options(PATTERNS, &view.document))
}

fn shelf(view: &PackView) -> Result<Shelf, TypesetError> {
    let mut shelf = TEMPLATES.iter().fold(Shelf::new(), |shelf, (name, text)| {
        shelf.with_template(name, text)
    });
    let sheets = sheets(&mut shelf, &view.drawings);
    let enclosed: Vec<Enclosed<'_>> = view.attachments.iter().enumerate().map(enclosed).collect();
    for (file, attachment) in enclosed.iter().zip(&view.attachments) {
        shelf.add_bytes(&file.path, attachment.bytes.clone());
    }
    shelf.add_data(
        "view.json",
        &PackData {
            view,
            sheets,
            enclosed,
        },
    )?;
    Ok(shelf)
}

/// Puts drawings on the shelf.
pub(crate) fn sheets<'a>(shelf: &mut Shelf, drawings: &'a [DrawingView]) -> Vec<Sheet<'a>> {
    let sheets: Vec<Sheet<'a>> = drawings.iter().enumerate().map(sheet).collect();
    for sheet in &sheets {
        shelf.add_drawing(&sheet.path, &sheet.drawing.svg);
    }
    sheets
}

fn sheet((index, drawing): (usize, &DrawingView)) -> Sheet<'_> {
    Sheet {
        path: format!("drawing-{index}.svg"),
        drawing,
    }
}

fn enclosed((index, attachment): (usize, &Attachment)) -> Enclosed<'_> {
    Enclosed {
        path: format!("attachment-{index}"),
        name: attached_name(index, &attachment.name),
        media_type: attached_type(&attachment.media_type),
        description: &attachment.description,
    }
}

/// A file name of plain characters, told apart by its number where another may have the same.
fn attached_name(index: usize, name: &str) -> String {
    let plain = |character: char| character.is_ascii_alphanumeric() || "-_.".contains(character);
    let kept: String = name
        .chars()
        .filter(|character| plain(*character))
        .take(80)
        .collect();
    let kept = kept.trim_matches('.');
    match (index, kept.is_empty()) {
        (_, true) => format!("attachment-{index}"),
        (0, false) => kept.to_owned(),
        (_, false) => format!("{index}-{kept}"),
    }
}

/// The media type, or the one of unspecified bytes where it is not written as one.
fn attached_type(media_type: &str) -> &str {
    let is_token = |part: &str| {
        !part.is_empty()
            && part
                .chars()
                .all(|character| character.is_ascii_alphanumeric() || "-+.".contains(character))
    };
    match media_type.split_once('/') {
        Some((kind, form)) if is_token(kind) && is_token(form) => media_type,
        _ => "application/octet-stream",
    }
}
