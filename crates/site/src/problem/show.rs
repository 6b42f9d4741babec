//! Problems as a person reads them.

use super::{Excerpt, Problem, Problems};
use quantity::Word;
use std::fmt::{Display, Formatter, Result};
use unicode_width::UnicodeWidthStr;

/// Column at which the rule's name ends, where the sentence leaves room for it.
const MARGIN: usize = 100;

/// Column at which the text of each line begins.
const INDENT: usize = 11;

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
            for (index, line) in wrapped(expected).iter().enumerate() {
                writeln!(f, "{:<10} {line}", if index == 0 { "expected" } else { "" })?;
            }
        }
        if let Some(write) = &self.write {
            writeln!(f, "{:<10} {write}", "write")?;
        }
        Ok(())
    }
}

/// The text in lines that end at the margin, broken at spaces outside back quotes.
fn wrapped(text: &str) -> Vec<String> {
    let mut lines = vec![String::new()];
    let mut quoted = false;
    let mut word = String::new();
    for character in text.chars().chain([' ']) {
        quoted ^= character == '`';
        if character != ' ' || quoted {
            word.push(character);
            continue;
        }
        let line = lines.last().map_or(0, |line| line.width());
        match lines.last_mut() {
            Some(last) if line == 0 => last.push_str(&word),
            Some(last) if line + 1 + word.width() <= MARGIN - INDENT => {
                last.push(' ');
                last.push_str(&word);
            }
            _ => lines.push(word.clone()),
        }
        word.clear();
    }
    lines
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
