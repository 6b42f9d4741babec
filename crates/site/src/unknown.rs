//! Keys and tables that there are not, with what was probably meant.

use crate::nearest::{listed, nearest};
use crate::origin::join;
use crate::overlay::{Layers, PART_KINDS};
use crate::problem::{Code, Problem};
use crate::reader::Reader;
use crate::record::Key;
use crate::source::Source;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

impl Reader<'_> {
    /// Reports keys that the record does not have.
    pub(crate) fn refuse_unknown_keys(&mut self, layers: &Layers<'_>, keys: &'static [Key]) {
        let known: Vec<&'static Key> = keys
            .iter()
            .filter(|key| !(layers.may_lack_keys && key.name == "part"))
            .collect();
        for (key, value) in layers.own.table {
            let wrong = key.get_ref().as_ref();
            if known.iter().any(|known| known.name == wrong) {
                continue;
            }
            let source = &self.sources[layers.own.file];
            let owner = if layers.path.is_empty() {
                "the site".to_owned()
            } else {
                layers.path.to_string()
            };
            let what = format!("`{wrong}` is not a key of {owner}");
            let problem = Problem::wrong(source, &key.span(), Code::UnknownKey, what)
                .path(join(&layers.path, wrong));
            let problem = if wrong == "part" && layers.may_lack_keys {
                problem.expected("an entry of a parts file stands by itself")
            } else {
                advise(
                    source,
                    problem,
                    &known,
                    &key.span(),
                    wrong,
                    value,
                    layers.owner,
                )
            };
            self.report(problem);
        }
    }

    /// Reports tables of a parts file that are not parts.
    pub(crate) fn refuse_unknown_part_kinds(&mut self, file: usize, table: &DeTable<'_>) {
        for (key, _) in table {
            let wrong = key.get_ref().as_ref();
            if PART_KINDS.contains(&wrong) {
                continue;
            }
            let what = format!("a parts file has no table `{wrong}`");
            let problem = Problem::wrong(&self.sources[file], &key.span(), Code::UnknownKey, what)
                .expected(format!("one of {}", listed(PART_KINDS)));
            let problem = match nearest(wrong, PART_KINDS) {
                Some(near) => problem.write(format!("[[{near}]]")),
                None => problem,
            };
            self.report(problem);
        }
    }
}

/// The problem with what was probably meant: a key spelled much the same, or one of a table below.
fn advise(
    source: &Source,
    problem: Problem,
    known: &[&'static Key],
    span: &Range<usize>,
    wrong: &str,
    value: &Spanned<DeValue<'_>>,
    owner: &str,
) -> Problem {
    let is_table = |key: &Key| (key.keys)().is_some();
    let fits = |key: &Key| is_table(key) == holds_tables(value);
    let names: Vec<&str> = known
        .iter()
        .filter(|key| fits(key))
        .map(|key| key.name)
        .collect();
    if let Some(near) = nearest(wrong, &names) {
        return problem
            .expected(format!("perhaps `{near}`"))
            .write(corrected(source, span, near));
    }
    let below = known
        .iter()
        .find(|key| (key.keys)().is_some_and(|keys| keys.iter().any(|key| key.name == wrong)));
    match below {
        Some(table) if owner.is_empty() => {
            problem.expected(format!("`{wrong}` in the table `{}`", table.name))
        }
        Some(table) => problem.expected(format!("`{wrong}` in the table `{owner}.{}`", table.name)),
        None => problem.expected(format!(
            "one of {}",
            listed(&known.iter().map(|key| key.name).collect::<Vec<_>>())
        )),
    }
}

/// The value is a table or a list of tables.
fn holds_tables(value: &Spanned<DeValue<'_>>) -> bool {
    match value.get_ref() {
        DeValue::Table(_) => true,
        DeValue::Array(array) => array
            .first()
            .is_some_and(|first| first.get_ref().is_table()),
        _ => false,
    }
}

/// The line with the right key in place of the wrong one.
fn corrected(source: &Source, span: &Range<usize>, right: &str) -> String {
    let line = source.line_span(source.line_of(span.start));
    let before = source.text.get(line.start..span.start).unwrap_or_default();
    let after = source.text.get(span.end..line.end).unwrap_or_default();
    format!("{before}{right}{after}").trim().to_owned()
}
