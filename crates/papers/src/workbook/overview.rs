//! The first sheet: what the workbook belongs to, what it holds, and the caution.

use super::formats::Formats;
use crate::view::{DocumentView, Table};
use rust_xlsxwriter::{Worksheet, XlsxError};

/// The name of the first sheet.
pub(super) const NAME: &str = "Site";

pub(super) fn write(
    sheet: &mut Worksheet,
    document: &DocumentView,
    tables: &[Table],
    names: &[String],
    formats: &Formats,
) -> Result<(), XlsxError> {
    sheet.set_name(NAME)?;
    sheet.set_column_width(0, 26)?.set_column_width(1, 90)?;
    sheet.set_print_fit_to_pages(1, 0);
    super::sheet::set_paper(sheet, document.paper);
    sheet.write_string_with_format(0, 0, &document.site_name, &formats.title)?;
    for (row, (label, value)) in (2..).zip(lines(document, tables, names)) {
        sheet.write_string_with_format(row, 0, label, &formats.label)?;
        sheet.write_string_with_format(row, 1, super::sheet::fitting(&value), &formats.words)?;
    }
    Ok(())
}

/// Label and value of each line that has something to say.
fn lines(document: &DocumentView, tables: &[Table], names: &[String]) -> Vec<(String, String)> {
    let about = [
        ("Document", &document.title),
        ("Installation", &document.installation),
        ("Place", &document.place),
        ("Designed by", &document.designer),
        ("Issued", &document.date),
        ("Revision", &document.revision),
        ("State of the site file", &document.fingerprint),
        ("Set by", &document.maker),
        ("Caution", &document.caution_line),
    ];
    let about = about.map(|(label, value)| (label.to_owned(), value.clone()));
    let sheets = names
        .iter()
        .zip(tables)
        .map(|(name, table)| (format!("Sheet “{name}”"), held(table)));
    about
        .into_iter()
        .filter(|(_, value)| !value.is_empty())
        .chain(sheets)
        .collect()
}

fn held(table: &Table) -> String {
    let rows = match table.rows.len() {
        1 => "1 row".to_owned(),
        count => format!("{count} rows"),
    };
    if table.note.is_empty() {
        rows
    } else {
        format!("{rows}. {}", table.note)
    }
}
