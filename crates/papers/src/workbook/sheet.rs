//! One schedule on one sheet.

use super::formats::Formats;
use crate::view::{Cell, Column, DocumentView, Paper, Table};
use rust_xlsxwriter::{ColNum, RowNum, Worksheet, XlsxError};

/// Millimeters of paper to one unit of column width, which is about one digit.
const MILLIMETERS_A_DIGIT: f64 = 2.0;

/// Widest and narrowest column, in digits.
const WIDTHS: (f64, f64) = (6.0, 80.0);

/// Longest text in a cell, in UTF-16 units.
const LONGEST_TEXT: usize = 32_000;

/// Longest texts in the head and foot of a printed sheet, in bytes; a head or foot may have 255 characters in all.
const LONGEST_HEAD: usize = 110;
const LONGEST_FOOT: usize = 225;

pub(super) fn write(
    sheet: &mut Worksheet,
    document: &DocumentView,
    table: &Table,
    name: &str,
    formats: &Formats,
) -> Result<(), XlsxError> {
    sheet.set_name(name)?;
    write_headings(sheet, &table.columns, formats)?;
    for (row, cells) in (1..).zip(&table.rows) {
        write_row(sheet, row, cells, &table.columns, formats)?;
    }
    set_view(sheet, table)?;
    set_print(sheet, document, table)
}

fn write_headings(
    sheet: &mut Worksheet,
    columns: &[Column],
    formats: &Formats,
) -> Result<(), XlsxError> {
    for (index, column) in (0..).zip(columns) {
        let index: ColNum = index;
        sheet.set_column_width(index, width(column))?;
        sheet.write_string_with_format(
            0,
            index,
            heading(column),
            &formats.heading(column.align),
        )?;
    }
    Ok(())
}

fn heading(column: &Column) -> String {
    let text = if column.unit.is_empty() {
        column.heading.clone()
    } else {
        format!("{} ({})", column.heading, column.unit)
    };
    fitting(&text)
}

fn width(column: &Column) -> f64 {
    let (narrowest, widest) = WIDTHS;
    (f64::from(column.width) / MILLIMETERS_A_DIGIT).clamp(narrowest, widest)
}

fn write_row(
    sheet: &mut Worksheet,
    row: RowNum,
    cells: &[Cell],
    columns: &[Column],
    formats: &Formats,
) -> Result<(), XlsxError> {
    for ((index, column), cell) in (0..).zip(columns).zip(cells) {
        let index: ColNum = index;
        match cell {
            Cell::Text(text) => {
                sheet.write_string_with_format(
                    row,
                    index,
                    fitting(text),
                    &formats.text(column.align),
                )?;
            }
            Cell::Number { value, decimals } => {
                sheet.write_number_with_format(row, index, *value, &formats.number(*decimals))?;
            }
            Cell::Unknown(text) => {
                sheet.write_string_with_format(row, index, fitting(text), &formats.unknown)?;
            }
        }
    }
    Ok(())
}

/// The headings stay in sight, and each has a filter.
fn set_view(sheet: &mut Worksheet, table: &Table) -> Result<(), XlsxError> {
    let Some(last_column) = last(table.columns.len()) else {
        return Ok(());
    };
    sheet.set_freeze_panes(1, 0)?;
    sheet.autofilter(0, 0, last_row(table), last_column)?;
    Ok(())
}

/// In print: on its side, as wide as the paper, with headings on every sheet.
fn set_print(
    sheet: &mut Worksheet,
    document: &DocumentView,
    table: &Table,
) -> Result<(), XlsxError> {
    set_paper(sheet, document.paper);
    sheet.set_landscape();
    sheet.set_print_fit_to_pages(1, 0);
    sheet.set_repeat_rows(0, 0)?;
    sheet.set_margins(0.5, 0.5, 0.8, 0.9, 0.35, 0.35);
    sheet.set_header(format!(
        "&L&9{}&R&9{}",
        running(&document.site_name, LONGEST_HEAD),
        running(
            &format!("{} · {}", table.title, document.revision),
            LONGEST_HEAD
        )
    ));
    sheet.set_footer(format!(
        "&L&7{}&R&8 &P / &N",
        running(&document.caution_line, LONGEST_FOOT)
    ));
    Ok(())
}

/// Sets the size of the paper.
pub(super) fn set_paper(sheet: &mut Worksheet, paper: Paper) {
    let number = match paper {
        Paper::Letter => 1,
        Paper::A4 => 9,
    };
    sheet.set_paper_size(number);
}

fn last(count: usize) -> Option<ColNum> {
    ColNum::try_from(count.checked_sub(1)?).ok()
}

fn last_row(table: &Table) -> RowNum {
    RowNum::try_from(table.rows.len()).unwrap_or(RowNum::MAX)
}

/// Text no longer than a cell can hold.
pub(super) fn fitting(text: &str) -> String {
    let mut room = LONGEST_TEXT;
    text.chars()
        .take_while(|character| {
            let taken = character.len_utf16();
            let fits = taken <= room;
            room = room.saturating_sub(taken);
            fits
        })
        .collect()
}

/// Text for the head or foot in print, where `&` begins an instruction and a digit would join the size before it.
fn running(text: &str, longest: usize) -> String {
    let mut room = longest;
    let escaped = text.chars().map(|character| match character {
        '&' => "&&".to_owned(),
        other => other.to_string(),
    });
    let kept: String = escaped
        .take_while(|piece| {
            let fits = piece.len() <= room;
            room = room.saturating_sub(piece.len());
            fits
        })
        .collect();
    format!(" {kept}")
}
