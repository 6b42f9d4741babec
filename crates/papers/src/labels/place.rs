//! Where each label stands on its sheet or strip.

use super::code::code;
use super::content::{Wording, all};
use crate::view::{DocumentView, LabelView, LabelsView, Paper};
use quantity::units::length::millimeter;
use quantity::{Length, Measured};
use site::{LabelSheet, LabelStrip, Site};

/// Clear room inside the edge of a label, in millimeters.
const EDGE: f64 = 1.5;
/// Largest share of the width of a label that its code takes.
const CODE_SHARE: f64 = 0.36;
/// Height of capital letters where the site does not say, in millimeters.
const LETTERS: f64 = 3.0;
/// How far labels may reach beyond their sheet by rounding, in millimeters.
const SLACK: f64 = 0.6;

/// Labels on sheets and, where the site has a strip, on that as well.
#[derive(Debug, Clone, PartialEq)]
pub struct Labels {
    /// On sheets of labels.
    pub sheets: LabelsView,
    /// One after the other on a strip.
    pub strip: Option<LabelsView>,
}

/// Labels that cannot be printed as the site wants them.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct DoesNotFit(String);

/// A sheet of labels in millimeters.
struct Grid {
    page: [f64; 2],
    label: [f64; 2],
    first: [f64; 2],
    gap: [f64; 2],
    count: [u32; 2],
    used: u32,
}

/// Every label of a site.
///
/// Fails where the labels as described do not fit their sheet, or are too low for their letters.
pub fn labels(site: &Site, document: &DocumentView) -> Result<Labels, DoesNotFit> {
    let own = site.labels.as_ref();
    let letters = own
        .and_then(|labels| labels.letter_height.as_ref())
        .map_or(LETTERS, |height| height.nominal().get::<millimeter>());
    let words = all(site, document);
    let grid = grid(own.and_then(|labels| labels.sheet.as_ref()), document.paper)?;
    high_enough(grid.label[1], letters, "The labels on the sheet")?;
    let sheets = LabelsView {
        document: titled(document, "Labels"),
        page_width: grid.page[0],
        page_height: grid.page[1],
        letters,
        pages: grid.pages(&words, letters),
    };
    let strip = own.and_then(|labels| labels.strip.as_ref());
    let strip = strip
        .map(|strip| on_strip(strip, document, &words, letters))
        .transpose()?;
    Ok(Labels { sheets, strip })
}

fn titled(document: &DocumentView, title: &str) -> DocumentView {
    DocumentView {
        title: title.to_owned(),
        ..document.clone()
    }
}

fn of(length: Option<&Measured<Length>>, otherwise: f64) -> f64 {
    length.map_or(otherwise, |length| length.nominal().get::<millimeter>())
}

/// The sheet as the site describes it; what it leaves open is as on a common sheet of its paper.
fn grid(sheet: Option<&LabelSheet>, paper: Paper) -> Result<Grid, DoesNotFit> {
    let common = match paper {
        Paper::Letter => Grid {
            page: [215.9, 279.4],
            label: [66.675, 25.4],
            first: [4.7625, 12.7],
            gap: [3.175, 0.0],
            count: [3, 10],
            used: 0,
        },
        Paper::A4 => Grid {
            page: [210.0, 297.0],
            label: [70.0, 36.0],
            first: [0.0, 4.5],
            gap: [0.0, 0.0],
            count: [3, 8],
            used: 0,
        },
    };
    let Some(sheet) = sheet else {
        return Ok(common);
    };
    let grid = Grid {
        page: [
            of(sheet.width.as_ref(), common.page[0]),
            of(sheet.height.as_ref(), common.page[1]),
        ],
        label: [
            of(sheet.label_width.as_ref(), common.label[0]),
            of(sheet.label_height.as_ref(), common.label[1]),
        ],
        first: [
            of(sheet.from_left.as_ref(), common.first[0]),
            of(sheet.from_top.as_ref(), common.first[1]),
        ],
        gap: [
            of(sheet.gap_across.as_ref(), common.gap[0]),
            of(sheet.gap_down.as_ref(), common.gap[1]),
        ],
        count: [
            sheet.across.unwrap_or(common.count[0]),
            sheet.down.unwrap_or(common.count[1]),
        ],
        used: sheet.used.unwrap_or(0),
    };
    is_paper(grid.page, "A sheet")?;
    is_paper(grid.label, "A label")?;
    for (axis, way) in ["across", "down"].into_iter().enumerate() {
        let count = f64::from(grid.count[axis]);
        let reach = grid.first[axis] + count * grid.label[axis] + (count - 1.0) * grid.gap[axis];
        if count < 1.0 || reach > grid.page[axis] + SLACK {
            return Err(DoesNotFit(format!(
                "{} labels {way} reach {reach:.1} mm, and the sheet has {:.1} mm: correct [labels.sheet].",
                grid.count[axis], grid.page[axis]
            )));
        }
    }
    Ok(grid)
}

/// Narrowest and widest side of paper for labels, in millimeters.
const SIDES: std::ops::RangeInclusive<f64> = 8.0..=2000.0;

/// Paper that a printer may take.
fn is_paper(size: [f64; 2], which: &str) -> Result<(), DoesNotFit> {
    if size.iter().all(|side| SIDES.contains(side)) {
        return Ok(());
    }
    let [wide, high] = size;
    Err(DoesNotFit(format!(
        "{which} of {wide:.1} mm by {high:.1} mm is nothing to print labels on: correct its size."
    )))
}

/// The head and one line have to fit.
fn high_enough(height: f64, letters: f64, which: &str) -> Result<(), DoesNotFit> {
    let needed = 2.0 * EDGE + 3.6 * letters;
    if height < needed {
        return Err(DoesNotFit(format!(
            "{which} are {height:.1} mm high; with capital letters of {letters:.1} mm they have to be {needed:.1} mm: take larger labels."
        )));
    }
    Ok(())
}

impl Grid {
    fn pages(&self, words: &[Wording], letters: f64) -> Vec<Vec<LabelView>> {
        let on_page = self.count[0].saturating_mul(self.count[1]).max(1);
        let used = self.used % on_page;
        let mut pages: Vec<Vec<LabelView>> = Vec::new();
        for (place, words) in (used..).zip(words) {
            if place.is_multiple_of(on_page) || pages.is_empty() {
                pages.push(Vec::new());
            }
            let spot = place % on_page;
            let (column, row) = (spot % self.count[0], spot / self.count[0]);
            let at = |axis: usize, number: u32| {
                self.first[axis] + f64::from(number) * (self.label[axis] + self.gap[axis])
            };
            if let Some(page) = pages.last_mut() {
                page.push(label(
                    words,
                    [at(0, column), at(1, row)],
                    self.label,
                    letters,
                ));
            }
        }
        pages
    }
}

/// One label a page, each as wide as a label is long.
fn on_strip(
    strip: &LabelStrip,
    document: &DocumentView,
    words: &[Wording],
    letters: f64,
) -> Result<LabelsView, DoesNotFit> {
    let size = [
        of(strip.label_length.as_ref(), 75.0),
        of(strip.width.as_ref(), 24.0),
    ];
    is_paper(size, "A strip")?;
    high_enough(size[1], letters, "The labels on the strip")?;
    let page = |words: &Wording| vec![label(words, [0.0, 0.0], size, letters)];
    Ok(LabelsView {
        document: titled(document, "Labels on a strip"),
        page_width: size[0],
        page_height: size[1],
        letters,
        pages: words.iter().map(page).collect(),
    })
}

fn label(words: &Wording, at: [f64; 2], size: [f64; 2], letters: f64) -> LabelView {
    let side = (size[1] - 2.0 * EDGE).min(CODE_SHARE * size[0]);
    let found = code(&[&words.code, &words.head], side);
    LabelView {
        left: at[0],
        top: at[1],
        width: size[0],
        height: size[1],
        head: words.head.clone(),
        lines: lines(words, size[1], letters),
        code_side: if found.is_some() { side } else { 0.0 },
        code_text: found
            .as_ref()
            .map(|code| code.text.clone())
            .unwrap_or_default(),
        code: found.map(|code| code.svg).unwrap_or_default(),
    }
}

/// As many lines as there is room for; what does not fit goes on the last of them.
fn lines(words: &Wording, height: f64, letters: f64) -> Vec<String> {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between one and nine"
    )]
    let room = ((height - 2.0 * EDGE - 2.0 * letters) / (1.6 * letters))
        .floor()
        .clamp(1.0, 9.0) as usize;
    let kept = words.lines.iter().take(room - 1).cloned();
    let rest: Vec<&str> = words
        .lines
        .iter()
        .skip(room - 1)
        .map(String::as_str)
        .collect();
    let rest = (!rest.is_empty()).then(|| rest.join(", "));
    kept.chain(rest).collect()
}
