//! The text form of DXF: pairs of a group code and a value, each on its own line.

use crate::flat::Spot;
use std::fmt::Write;

/// A growing DXF text and its next free handle.
pub(super) struct Pairs {
    text: String,
    handle: u32,
}

impl Pairs {
    /// Nothing written; handles from 1.
    pub(super) fn new() -> Self {
        Self {
            text: String::new(),
            handle: 0,
        }
    }

    /// A value of words.
    pub(super) fn words(&mut self, code: u16, words: &str) {
        let _ = writeln!(self.text, "{code}\n{words}");
    }

    /// A whole number.
    pub(super) fn whole(&mut self, code: u16, number: i32) {
        let _ = writeln!(self.text, "{code}\n{number}");
    }

    /// A number with decimals.
    pub(super) fn number(&mut self, code: u16, number: f64) {
        let _ = writeln!(self.text, "{code}\n{}", decimal(number));
    }

    /// A point: x, y and z under codes ten apart.
    pub(super) fn point(&mut self, code: u16, point: Spot) {
        self.flat(code, point);
        self.number(code + 20, 0.0);
    }

    /// A point without z.
    pub(super) fn flat(&mut self, code: u16, point: Spot) {
        self.number(code, point.x);
        self.number(code + 10, point.y);
    }

    /// A handle that refers to another thing.
    pub(super) fn refers(&mut self, code: u16, handle: u32) {
        let _ = writeln!(self.text, "{code}\n{handle:X}");
    }

    /// A new handle.
    pub(super) fn fresh(&mut self) -> u32 {
        self.handle += 1;
        self.handle
    }

    /// The handle that would be next.
    pub(super) fn next_handle(&self) -> u32 {
        self.handle + 1
    }

    /// Begins a thing with a handle of its own and an owner.
    pub(super) fn begin(&mut self, kind: &str, owner: u32) -> u32 {
        let handle = self.fresh();
        self.begin_as(kind, handle, owner);
        handle
    }

    /// Begins a thing whose handle was taken before.
    pub(super) fn begin_as(&mut self, kind: &str, handle: u32, owner: u32) {
        self.words(0, kind);
        self.refers(if kind == "DIMSTYLE" { 105 } else { 5 }, handle);
        self.refers(330, owner);
    }

    /// Marks of which classes a thing is.
    pub(super) fn classes(&mut self, classes: &[&str]) {
        for class in classes {
            self.words(100, class);
        }
    }

    /// Begins a section.
    pub(super) fn section(&mut self, name: &str) {
        self.words(0, "SECTION");
        self.words(2, name);
    }

    /// Ends a section.
    pub(super) fn end_section(&mut self) {
        self.words(0, "ENDSEC");
    }

    /// This text followed by another and the end of the file.
    pub(super) fn finish(mut self, rest: &Pairs) -> String {
        self.text.push_str(&rest.text);
        self.words(0, "EOF");
        self.text
    }
}

/// A number with one to eight decimals, never `-0.0`.
fn decimal(number: f64) -> String {
    let fixed = format!("{number:.8}");
    let short = fixed.trim_end_matches('0');
    let short = if short.ends_with('.') {
        format!("{short}0")
    } else {
        short.to_owned()
    };
    if short == "-0.0" {
        "0.0".to_owned()
    } else {
        short
    }
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn numbers_have_one_spelling() {
        assert_eq!(
            [0.0, -0.0, -1e-12, 6.096, 20.0].map(decimal),
            ["0.0", "0.0", "0.0", "6.096", "20.0"]
        );
    }
}
