//! Tables in Markdown.

/// A row of a table; a stroke in a cell is kept from ending it.
pub(super) fn row(cells: &[&str]) -> String {
    let cells: Vec<String> = cells
        .iter()
        .map(|cell| cell.replace('|', "\\|").replace('\n', " "))
        .collect();
    format!("| {} |", cells.join(" | "))
}

/// A table of rows under its head.
pub(super) fn table(head: &[&str], rows: &[String]) -> String {
    let rule = format!("|{}", "---|".repeat(head.len()));
    format!("{}\n{rule}\n{}", row(head), rows.join("\n"))
}
