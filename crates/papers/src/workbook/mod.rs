//! The schedules as a workbook: the same tables as on the page, with numbers that can be added up.

mod formats;
mod overview;
mod sheet;
mod sheet_name;

use crate::view::{DocumentView, Table};
use formats::Formats;
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Workbook, XlsxError};
use sheet_name::sheet_names;

/// A workbook that could not be written: a schedule has more rows or columns than a sheet can hold.
#[derive(Debug, thiserror::Error)]
#[error("the workbook could not be written: {0}")]
pub struct WorkbookError(#[from] XlsxError);

/// Writes the workbook: a first sheet that says what it belongs to, then one sheet a schedule.
///
/// Each schedule has its headings in row 1, frozen and repeated in print, with filters. The same view gives the same
/// bytes. Fails if a schedule has more rows or columns than a sheet can hold.
pub fn workbook(document: &DocumentView, tables: &[Table]) -> Result<Vec<u8>, WorkbookError> {
    let mut workbook = Workbook::new();
    workbook.set_properties(&properties(document)?);
    let formats = Formats::new();
    let names = sheet_names(tables);
    overview::write(workbook.add_worksheet(), document, tables, &names, &formats)?;
    for (table, name) in tables.iter().zip(&names) {
        sheet::write(workbook.add_worksheet(), document, table, name, &formats)?;
    }
    Ok(workbook.save_to_buffer()?)
}

fn properties(document: &DocumentView) -> Result<DocProperties, XlsxError> {
    let day = document.day;
    let created = ExcelDateTime::from_ymd(day.year(), day.month(), day.day())?;
    Ok(DocProperties::new()
        .set_title(format!("{} – {}", document.title, document.site_name))
        .set_author(&document.maker)
        .set_comment(&document.caution_line)
        .set_creation_datetime(&created))
}
