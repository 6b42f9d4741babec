//! A place in the text being read.

use super::error::{ReadError, quoted};
use crate::{Kind, Known, Word as _};
use std::ops::Range;
use winnow::Parser;
use winnow::combinator::opt;
use winnow::error::ContextError;

/// The text being read and how far it has been read.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cursor<'t> {
    text: &'t str,
    at: usize,
}

impl<'t> Cursor<'t> {
    /// At the start of a text.
    pub(super) fn new(text: &'t str) -> Self {
        Self { text, at: 0 }
    }

    /// How many bytes have been read.
    pub(super) fn at(&self) -> usize {
        self.at
    }

    /// What has not been read yet.
    pub(super) fn rest(&self) -> &'t str {
        self.text.get(self.at..).unwrap_or_default()
    }

    /// The text at some place.
    pub(super) fn piece(&self, place: Range<usize>) -> &'t str {
        self.text.get(place).unwrap_or_default()
    }

    /// Passes over blank space.
    pub(super) fn skip_spaces(&mut self) {
        self.at = self.text.len() - self.rest().trim_start().len();
    }

    /// Takes a given number of bytes, which must end between letters.
    pub(super) fn take(&mut self, bytes: usize) -> Range<usize> {
        let start = self.at;
        self.at = (start + bytes).min(self.text.len());
        start..self.at
    }

    /// Takes one of these letters if it comes next.
    pub(super) fn eat(&mut self, letters: &[char]) -> bool {
        let next = self
            .rest()
            .chars()
            .next()
            .filter(|next| letters.contains(next));
        next.is_some_and(|next| {
            self.at += next.len_utf8();
            true
        })
    }

    /// Applies a parser; where it fails nothing is taken.
    pub(super) fn run<T>(
        &mut self,
        parser: impl Parser<&'t str, T, winnow::error::ErrMode<ContextError>>,
    ) -> Option<T> {
        let mut rest = self.rest();
        let found = opt(parser).parse_next(&mut rest).ok().flatten()?;
        self.at = self.text.len() - rest.len();
        Some(found)
    }

    /// An error at a place, without a suggestion.
    #[allow(
        clippy::unused_self,
        reason = "reads as a sentence beside `error_writing`"
    )]
    pub(super) fn error(&self, place: Range<usize>, what: String) -> ReadError {
        ReadError {
            what,
            place,
            write: None,
        }
    }

    /// An error at a place, with the whole text as it should be: this in the place of what is there.
    pub(super) fn error_writing(
        &self,
        place: Range<usize>,
        what: String,
        instead: &str,
    ) -> ReadError {
        let before = self.text.get(..place.start).unwrap_or_default();
        let after = self.text.get(place.end..).unwrap_or_default();
        ReadError {
            what,
            write: Some(format!("{before}{instead}{after}").trim().to_owned()),
            place,
        }
    }

    /// Nothing but blank space may be left.
    pub(super) fn finish(mut self, kind: Kind) -> Result<(), ReadError> {
        self.skip_spaces();
        if self.rest().is_empty() {
            return Ok(());
        }
        let rest = self.rest().trim_end();
        let place = self.at..self.at + rest.len();
        if Known::from_word(rest).is_some() {
            let what = format!("{} stands after a comma", quoted(rest));
            return Err(self.error_writing(
                self.text[..self.at].trim_end().len()..place.end,
                what,
                &format!(", {rest}"),
            ));
        }
        let written = format!(
            "{} is written like `{}`",
            kind.with_article(),
            kind.example()
        );
        let what = if rest.starts_with(['±', '+', '-', '−', '–']) {
            format!("{} cannot be added here; {written}", quoted(rest))
        } else {
            format!("{} is left over; {written}", quoted(rest))
        };
        Err(self.error(place, what))
    }
}
