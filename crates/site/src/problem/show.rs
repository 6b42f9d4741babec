//! Problems as a person reads them.

use super::{Excerpt, Problem, Problems};
use quantity::Word;
use std::fmt::{Display, Formatter, Result};
use unicode_width::UnicodeWidthStr;

/// Column at which the rule's name ends, where the sentence leaves room for it.
const MARGIN: usize = 100;

impl Display for Problem {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        let head = format!("{:<10} {}", self.severity.word(), self.what);
        let gap = MARGIN
            .saturating_sub(head.width() + self.code.word().len())
            .max(3);
        writeln!(f, "{head}{:gap$}{}", "", self.code)?;
        write_place(f, &self.file, self.line, self.column, &self.path)?;
        write_excerpt(f, self.line, &self.excerpt)?;
        if let Some(also) = &self.also {
            write_place(f, &also.file, also.line, also.column, &also.what)?;
            write_excerpt(f, also.line, &also.excerpt)?;
        }
        if let Some(expected) = &self.expected {
            writeln!(f, "{:<10} {expected}", "expected")?;
        }
        if let Some(write) = &self.write {
            writeln!(f, "{:<10} {write}", "write")?;
        }
        Ok(())
    }
}

/// The line that says where.
fn write_place(
    f: &mut Formatter<'_>,
    file: &str,
    line: usize,
    column: usize,
    about: &str,
) -> Result {
    writeln!(
        f,
        "{:<10} {}",
        "",
        format!("{file}:{line}:{column}   {about}").trim_end()
    )
}

/// The line of the file with carets under the fault.
fn write_excerpt(f: &mut Formatter<'_>, line: usize, excerpt: &Excerpt) -> Result {
    writeln!(f, "{line:>10} │ {}", excerpt.text)?;
    writeln!(
        f,
        "{:>10} │ {:before$}{}",
        "",
        "",
        "^".repeat(excerpt.wide),
        before = excerpt.before
    )
}

impl Display for Problems {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        for (index, problem) in self.iter().enumerate() {
            if index > 0 {
                writeln!(f)?;
            }
            write!(f, "{problem}")?;
        }
        Ok(())
    }
}
