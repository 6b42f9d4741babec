//! The texts that a site is read from, with lines and columns.

use crate::origin::Place;
use std::ops::Range;
use std::sync::Arc;

/// A file that somebody has read already.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SourceFile {
    /// Its name as a person would look for it.
    pub name: String,
    /// Its text.
    pub text: String,
}

/// A text with the beginnings of its lines.
pub(crate) struct Source {
    pub(crate) name: Arc<str>,
    pub(crate) text: String,
    line_starts: Vec<usize>,
}

impl Source {
    /// Finds the lines of a file.
    pub(crate) fn new(file: SourceFile) -> Self {
        let ends = file
            .text
            .bytes()
            .enumerate()
            .filter(|(_, byte)| *byte == b'\n')
            .map(|(at, _)| at + 1);
        let line_starts = std::iter::once(0).chain(ends).collect();
        Self {
            name: file.name.into(),
            text: file.text,
            line_starts,
        }
    }

    /// The same bytes, moved inside the text and onto borders of characters.
    pub(crate) fn inside(&self, span: &Range<usize>) -> Range<usize> {
        let start = self.text.floor_char_boundary(span.start);
        let end = self.text.ceil_char_boundary(span.end.max(start));
        start..end
    }

    /// Line of a byte, counted from one.
    pub(crate) fn line_of(&self, byte: usize) -> usize {
        self.line_starts
            .partition_point(|start| *start <= byte)
            .max(1)
    }

    /// Bytes of a line, without its end.
    pub(crate) fn line_span(&self, line: usize) -> Range<usize> {
        let start = self
            .line_starts
            .get(line - 1)
            .copied()
            .unwrap_or(self.text.len());
        let end = self
            .line_starts
            .get(line)
            .copied()
            .unwrap_or(self.text.len());
        let text = self.text.get(start..end).unwrap_or_default();
        start..start + text.trim_end_matches(['\n', '\r']).len()
    }

    /// The place of some bytes.
    pub(crate) fn place(&self, span: &Range<usize>, from_part: bool) -> Place {
        let span = self.inside(span);
        let line = self.line_of(span.start);
        let start = self.line_span(line).start.min(span.start);
        let column = self
            .text
            .get(start..span.start)
            .unwrap_or_default()
            .chars()
            .count()
            + 1;
        Place {
            file: self.name.clone(),
            span,
            line,
            column,
            from_part,
        }
    }
}
