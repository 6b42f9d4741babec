//! How much room words take: estimated widths of the sheet's typeface, and blocks of one or more lines.

use crate::flat::Spot;
use crate::mark::{Letter, Mark, Slant};
use crate::patch::Patch;
use crate::{Anchor, Ink};
use quantity::{Length, Quantity as _};

/// Height of capitals as a share of the type size. Source: metrics of the open typeface Inter 4, measured.
pub(crate) const CAPITAL: f64 = 0.727;
/// From one base line to the next, in heights of capitals.
const LINE: f64 = 1.7;
/// How far letters such as g reach below the base line, in heights of capitals.
const BELOW: f64 = 0.3;
/// How far accents and brackets reach above capitals, in heights of capitals.
const ABOVE: f64 = 0.12;
/// Clear paper around words (mm).
const CLEAR: f64 = 0.4;

/// Widths of the characters from space to tilde, in thousandths of the type size. Source: as for [`CAPITAL`].
const WIDTHS: [u16; 95] = [
    281, 278, 403, 631, 638, 812, 639, 222, 362, 362, 500, 659, 280, 460, 276, 357, 625, 464, 605,
    636, 642, 608, 624, 571, 616, 624, 276, 280, 659, 659, 659, 507, 936, 676, 651, 727, 719, 598,
    587, 743, 740, 264, 543, 652, 562, 889, 753, 761, 635, 761, 639, 638, 642, 741, 676, 949, 642,
    665, 625, 362, 357, 362, 469, 452, 497, 564, 621, 558, 621, 582, 361, 609, 591, 237, 237, 544,
    237, 869, 585, 597, 609, 609, 372, 523, 364, 581, 557, 812, 540, 557, 541, 362, 327, 362, 659,
];

/// Estimated width of one line of words with capitals of this height (mm). It errs to the wide side, since another
/// typeface may stand in for the intended one.
pub(crate) fn width(words: &str, height: f64) -> f64 {
    let thousandths: f64 = words.chars().map(character).sum();
    thousandths / 1000.0 * height / CAPITAL * 1.05
}

/// Estimated width of one line of words with capitals of this height, as they are set on a sheet.
pub fn text_width(words: &str, height: Length) -> Length {
    Length::from_base(width(words, height.base() * 1000.0) / 1000.0)
}

/// Width of a character in thousandths of the type size.
fn character(character: char) -> f64 {
    let code = u32::from(character);
    let listed = code
        .checked_sub(32)
        .and_then(|index| WIDTHS.get(usize::try_from(index).ok()?));
    match listed {
        Some(width) => f64::from(*width),
        None if code < 0x1100 => 760.0,
        None => 1080.0,
    }
}

/// Breaks words into lines no wider than this (mm), at spaces where there are any.
pub(crate) fn wrapped(words: &str, height: f64, widest: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split_whitespace() {
        let joined = lines.last().map(|line| format!("{line} {word}"));
        match joined {
            Some(joined) if width(&joined, height) <= widest => {
                lines.pop();
                lines.push(joined);
            }
            _ => lines.extend(broken(word, height, widest)),
        }
    }
    lines
}

/// One word in as many pieces as it takes.
fn broken(word: &str, height: f64, widest: f64) -> Vec<String> {
    let mut pieces = vec![String::new()];
    for character in word.chars() {
        let longer = pieces
            .last()
            .map(|piece| format!("{piece}{character}"))
            .unwrap_or_default();
        if width(&longer, height) > widest && longer.chars().count() > 1 {
            pieces.push(character.to_string());
        } else {
            pieces.pop();
            pieces.push(longer);
        }
    }
    pieces
}

/// Lines of words set as one piece.
#[derive(Debug, Clone)]
pub(crate) struct Block {
    lines: Vec<String>,
    /// Height of capitals (mm).
    pub(crate) height: f64,
    /// Direction of reading (rad).
    pub(crate) angle: f64,
    align: Anchor,
    ink: Ink,
}

impl Block {
    /// A block of the lines of these words; `None` when they leave nothing to print.
    pub(crate) fn new(words: &str, height: f64, angle: f64, align: Anchor) -> Option<Self> {
        let lines: Vec<String> = words.lines().map(|line| line.trim().to_owned()).collect();
        let printed = lines.iter().any(|line| !line.is_empty());
        printed.then_some(Self {
            lines,
            height,
            angle,
            align,
            ink: Ink::Black,
        })
    }

    /// The same block in another ink.
    pub(crate) fn ink(mut self, ink: Ink) -> Self {
        self.ink = ink;
        self
    }

    /// The same block aligned otherwise.
    pub(crate) fn aligned(mut self, align: Anchor) -> Self {
        self.align = align;
        self
    }

    /// The words on one line.
    pub(crate) fn words(&self) -> String {
        self.lines.join(" ")
    }

    /// Width of the widest line (mm).
    pub(crate) fn width(&self) -> f64 {
        self.lines
            .iter()
            .map(|line| width(line, self.height))
            .fold(0.0, f64::max)
    }

    /// Base line of the last line below that of the first (mm).
    fn depth(&self) -> f64 {
        let mut depth = 0.0;
        for _ in self.lines.iter().skip(1) {
            depth += LINE * self.height;
        }
        depth
    }

    /// Height of all lines together (mm).
    fn tall(&self) -> f64 {
        self.depth() + self.height * (1.0 + ABOVE + BELOW)
    }

    /// The room that it takes when its center is on a spot.
    pub(crate) fn patch(&self, center: Spot) -> Patch {
        let (half_width, half_height) = (self.width() / 2.0 + CLEAR, self.tall() / 2.0 + CLEAR);
        Patch {
            center,
            half_width,
            half_height,
            angle: self.angle,
        }
    }

    /// The center when the base line of the first line is anchored at a spot.
    pub(crate) fn center_from(&self, at: Spot) -> Spot {
        let across = Spot::unit(self.angle);
        let along = match self.align {
            Anchor::Start => self.width() / 2.0,
            Anchor::Middle => 0.0,
            Anchor::End => -self.width() / 2.0,
        };
        at.plus(across, along)
            .plus(across.left(), self.height - self.top())
    }

    /// From the center to the top of the capitals of the first line (mm).
    fn top(&self) -> f64 {
        self.tall() / 2.0 - ABOVE * self.height
    }

    /// The marks that print it with its center on a spot, on a clear ground.
    pub(crate) fn marks(&self, center: Spot) -> Vec<Mark> {
        let across = Spot::unit(self.angle);
        let along = match self.align {
            Anchor::Start => -self.width() / 2.0,
            Anchor::Middle => 0.0,
            Anchor::End => self.width() / 2.0,
        };
        let mut base = center
            .plus(across, along)
            .plus(across.left(), self.top() - self.height);
        let mut marks = vec![Mark::Ground(self.patch(center))];
        for line in &self.lines {
            if !line.is_empty() {
                marks.push(Mark::Letters(Letter {
                    at: base,
                    words: line.clone(),
                    height: self.height,
                    anchor: self.align,
                    angle: self.angle,
                    ink: self.ink,
                    slant: Slant::Plain,
                }));
            }
            base = base.plus(across.left(), -LINE * self.height);
        }
        marks
    }
}
