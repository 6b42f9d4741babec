//! How cells look: paper and ink, an unknown hatched.

use crate::view::Align;
use rust_xlsxwriter::{Format, FormatAlign, FormatBorder, FormatPattern};

const FACE: &str = "Arial";
const HAIR: u32 = 0x00A3_A9B0;
const HATCH: u32 = 0x00A3_A9B0;

/// The formats of a workbook, made once.
pub(super) struct Formats {
    /// Titles on the first sheet.
    pub(super) title: Format,
    /// Labels on the first sheet.
    pub(super) label: Format,
    /// Running text.
    pub(super) words: Format,
    /// A value that is not known.
    pub(super) unknown: Format,
}

impl Formats {
    pub(super) fn new() -> Self {
        let words = Format::new()
            .set_font_name(FACE)
            .set_font_size(10)
            .set_align(FormatAlign::Top)
            .set_text_wrap()
            .set_border_bottom(FormatBorder::Hair)
            .set_border_bottom_color(HAIR);
        Self {
            title: Format::new()
                .set_font_name(FACE)
                .set_font_size(14)
                .set_bold(),
            label: words.clone().set_bold(),
            unknown: words
                .clone()
                .set_italic()
                .set_pattern(FormatPattern::LightUp)
                .set_foreground_color(HATCH),
            words,
        }
    }

    /// Words in a column of this alignment.
    pub(super) fn text(&self, align: Align) -> Format {
        self.words.clone().set_align(horizontal(align))
    }

    /// The heading of a column of this alignment.
    pub(super) fn heading(&self, align: Align) -> Format {
        self.label
            .clone()
            .set_align(horizontal(align))
            .set_align(FormatAlign::Bottom)
            .set_border_bottom(FormatBorder::Medium)
            .set_border_bottom_color(0x0015_181C)
    }

    /// A number with so many digits after the point.
    pub(super) fn number(&self, decimals: u8) -> Format {
        let decimals = usize::from(decimals);
        let pattern = if decimals == 0 {
            "0".to_owned()
        } else {
            format!("0.{}", "0".repeat(decimals))
        };
        self.words
            .clone()
            .set_align(FormatAlign::Right)
            .set_num_format(pattern)
    }
}

fn horizontal(align: Align) -> FormatAlign {
    match align {
        Align::Start => FormatAlign::Left,
        Align::Center => FormatAlign::Center,
        Align::End => FormatAlign::Right,
    }
}
