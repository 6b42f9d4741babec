//! Rows of text in columns, each as wide as its widest entry; the last one breaks into lines of its own.

use super::wrapped;
use owo_colors::Style;
use unicode_width::UnicodeWidthStr as _;

/// Columns between two entries.
const GAP: usize = 2;

/// The rows below each other, indented, no line wider than `width`; the first column in a style, if one is given.
pub(crate) fn columns<const N: usize>(
    rows: &[[String; N]],
    indent: usize,
    width: usize,
    first: Option<Style>,
) -> Vec<String> {
    let widest = widths(rows);
    let before_last: usize = widest.iter().map(|wide| wide + GAP).sum();
    let room = indent + before_last;
    rows.iter()
        .map(|row| {
            let [entries @ .., last] = row.as_slice() else {
                return String::new();
            };
            let mut line = " ".repeat(indent);
            for (column, (entry, wide)) in entries.iter().zip(&widest).enumerate() {
                let gap = " ".repeat(wide + GAP - entry.width());
                match first.filter(|_| column == 0) {
                    Some(style) => line.push_str(&crate::tint::paint(entry, style)),
                    None => line.push_str(entry),
                }
                line.push_str(&gap);
            }
            let one_line = last.split_whitespace().collect::<Vec<_>>().join(" ");
            line.push_str(wrapped(&one_line, room, width).trim_start());
            line.trim_end().to_owned()
        })
        .collect()
}

/// Width of every column but the last.
fn widths<const N: usize>(rows: &[[String; N]]) -> Vec<usize> {
    (0..N.saturating_sub(1))
        .map(|column| {
            rows.iter()
                .filter_map(|row| row.get(column))
                .map(|entry| entry.width())
                .max()
                .unwrap_or(0)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::columns;

    #[test]
    fn the_widest_entry_sets_the_column() {
        let rows = [
            ["R′20".to_owned(), "ohms".to_owned()],
            ["a".to_owned(), "metal".to_owned()],
        ];
        assert_eq!(columns(&rows, 1, 80, None), [" R′20  ohms", " a     metal"]);
    }

    #[test]
    fn the_last_column_breaks_below_itself() {
        let rows = [[
            "key".to_owned(),
            "one two three four five six seven".to_owned(),
        ]];
        assert_eq!(
            columns(&rows, 0, 26, None),
            ["key  one two three four\n     five six seven"]
        );
    }
}
