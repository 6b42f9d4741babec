//! Names of sheets: what a workbook allows, and no two alike.

use super::overview;
use crate::view::Table;
use std::collections::BTreeSet;

/// Longest name of a sheet, in characters. A workbook allows 31; what is left makes names differ.
const LONGEST: usize = 27;

/// A name for the sheet of each table, in order.
pub(super) fn sheet_names(tables: &[Table]) -> Vec<String> {
    let mut taken = BTreeSet::from([overview::NAME.to_lowercase(), "history".to_owned()]);
    tables
        .iter()
        .map(|table| free_name(&allowed(&table.title), &mut taken))
        .collect()
}

/// The title with what a name must not hold left out.
fn allowed(title: &str) -> String {
    let kept: String = title
        .chars()
        .map(|character| {
            if "[]:*?/\\'".contains(character) || character.is_control() {
                ' '
            } else {
                character
            }
        })
        .filter(|character| character.len_utf16() == 1)
        .take(LONGEST)
        .collect();
    let kept = kept.trim();
    if kept.is_empty() {
        "Schedule".to_owned()
    } else {
        kept.to_owned()
    }
}

/// The name itself, or the name with the first number that makes it new. Case does not tell names apart.
fn free_name(name: &str, taken: &mut BTreeSet<String>) -> String {
    let numbered = (2..).map(|number| format!("{name} {number}"));
    let mut candidates = std::iter::once(name.to_owned()).chain(numbered);
    let free = candidates.find(|candidate| taken.insert(candidate.to_lowercase()));
    free.unwrap_or_else(|| name.to_owned())
}

#[cfg(test)]
mod tests {
    use super::sheet_names;
    use crate::view::Table;

    fn titled(title: &str) -> Table {
        Table {
            title: title.to_owned(),
            note: String::new(),
            columns: Vec::new(),
            rows: Vec::new(),
        }
    }

    #[test]
    fn names_are_allowed_and_differ() {
        let tables = ["Cables", "cables", "a/b:c", "", &"x".repeat(60), "Site"].map(titled);
        let names = sheet_names(&tables);
        assert_eq!(
            names,
            [
                "Cables",
                "cables 2",
                "a b c",
                "Schedule",
                &"x".repeat(27),
                "Site 2"
            ]
        );
    }
}
