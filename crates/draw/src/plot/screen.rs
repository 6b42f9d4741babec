//! A chart for a page: SVG that is as wide as its place, whose lines and words keep their size.
//!
//! Places are shares of the room between the axes; numbers stand in a margin around it, which the page's style sheet gives.
//! Looks come from the style sheet by class; nothing is colored here.

use super::chart::{Chart, Curve, Mark, Span};
use super::room::{TAG, Words, placed};
use crate::xml::{escaped, number};
use std::fmt::Write as _;

/// Side of the square in which curves are drawn before they are stretched to their room.
const SIDE: f64 = 1000.0;
/// Width of a letter of a name over the chart, in screen units.
const LETTER: f64 = 7.0;
/// Width of the room on a narrow and on a wide page, in screen units.
const NARROW: f64 = 270.0;
const WIDE: f64 = 620.0;

impl Chart {
    /// The chart; curves carry letters in their order, from A on, where there is more than one.
    pub fn svg(&self) -> String {
        let mut out = format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart\" role=\"img\" aria-label=\"{}\"><desc>{}</desc>",
            escaped(&self.title),
            escaped(&self.description)
        );
        self.grid(&mut out);
        for span in &self.spans {
            self.span(&mut out, span);
        }
        let _ = write!(
            out,
            "<svg class=\"curves\" viewBox=\"0 0 {SIDE} {SIDE}\" preserveAspectRatio=\"none\" width=\"100%\" height=\"100%\">"
        );
        for curve in &self.curves {
            self.curve(&mut out, curve);
        }
        out.push_str("</svg>");
        let placed = placed(self);
        if self.curves.len() > 1 {
            for (at, spot) in placed.tags.iter().enumerate() {
                if let Some(spot) = spot {
                    self.tag(&mut out, letter(at), *spot);
                }
            }
        }
        for (mark, words) in self.marks.iter().zip(&placed.marks) {
            self.mark(&mut out, mark, *words);
        }
        out.push_str("</svg>");
        out
    }

    fn grid(&self, out: &mut String) {
        for (at, (share, words)) in self.across.ticks().into_iter().enumerate() {
            let x = percent(share);
            let odd = if at % 2 == 1 { " odd" } else { "" };
            let _ = write!(
                out,
                "<line class=\"grid\" x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"100%\"/>\
                 <text class=\"number{odd}\" x=\"{x}\" y=\"100%\" dy=\"1.5em\" text-anchor=\"middle\">{}</text>",
                escaped(&words)
            );
        }
        for (share, words) in self.up.ticks() {
            let y = percent(1.0 - share);
            let _ = write!(
                out,
                "<line class=\"grid\" x1=\"0\" x2=\"100%\" y1=\"{y}\" y2=\"{y}\"/>\
                 <text class=\"number\" x=\"-8\" y=\"{y}\" dy=\"0.35em\" text-anchor=\"end\">{}</text>",
                escaped(&words)
            );
        }
        if let Some(share) = self.up.zero() {
            let y = percent(1.0 - share);
            let _ = write!(
                out,
                "<line class=\"zero\" x1=\"0\" x2=\"100%\" y1=\"{y}\" y2=\"{y}\"/>"
            );
        }
        out.push_str("<rect class=\"frame\" x=\"0\" y=\"0\" width=\"100%\" height=\"100%\"/>");
    }

    /// A stretch of the axis below, named over the chart where there is room for the name.
    fn span(&self, out: &mut String, span: &Span) {
        let (from, to) = (self.across.share(span.from), self.across.share(span.to));
        for share in [from, to] {
            let x = percent(share);
            let _ = write!(
                out,
                "<line class=\"span\" x1=\"{x}\" x2=\"{x}\" y1=\"0\" y2=\"100%\"/>"
            );
        }
        #[allow(clippy::cast_precision_loss, reason = "names are short")]
        let long = span.name.chars().count() as f64 * LETTER;
        if span.name.is_empty() || long > (to - from) * WIDE {
            return;
        }
        let class = if long > (to - from) * NARROW {
            "named wide"
        } else {
            "named"
        };
        let _ = write!(
            out,
            "<text class=\"{class}\" x=\"{}\" y=\"-7\" text-anchor=\"middle\">{}</text>",
            percent(f64::midpoint(from, to)),
            escaped(&span.name)
        );
    }

    fn curve(&self, out: &mut String, curve: &Curve) {
        let points: Vec<String> = curve
            .points
            .iter()
            .map(|(x, y)| {
                let (x, y) = (self.across.share(*x), 1.0 - self.up.share(*y));
                format!("{},{}", number(x * SIDE), number(y * SIDE))
            })
            .collect();
        if points.len() > 1 {
            let _ = write!(
                out,
                "<polyline class=\"curve {}\" points=\"{}\"/>",
                curve.part.word(),
                points.join(" ")
            );
        }
    }

    /// The letter of a curve on it.
    fn tag(&self, out: &mut String, letter: char, at: (f64, f64)) {
        let (x, y) = self.place(at);
        let (corner, side) = (number(-TAG), number(2.0 * TAG));
        let _ = write!(
            out,
            "<svg class=\"tag\" x=\"{x}\" y=\"{y}\"><rect x=\"{corner}\" y=\"{corner}\" width=\"{side}\" height=\"{side}\"/>\
             <text dy=\"0.36em\" text-anchor=\"middle\">{letter}</text></svg>"
        );
    }

    fn mark(&self, out: &mut String, mark: &Mark, words: Words) {
        let (x, y) = self.place(mark.at);
        let (aside, anchor) = if words.ends {
            ("-11", "end")
        } else {
            ("11", "start")
        };
        let _ = write!(
            out,
            "<svg class=\"mark-at\" x=\"{x}\" y=\"{y}\"><circle r=\"5\"/><text text-anchor=\"{anchor}\">"
        );
        for (at, line) in mark.words.lines().enumerate() {
            let down = if at == 0 {
                number(words.down)
            } else {
                "16".to_owned()
            };
            let _ = write!(
                out,
                "<tspan x=\"{aside}\" dy=\"{down}\">{}</tspan>",
                escaped(line)
            );
        }
        out.push_str("</text></svg>");
    }

    fn place(&self, (x, y): (f64, f64)) -> (String, String) {
        (
            percent(self.across.share(x)),
            percent(1.0 - self.up.share(y)),
        )
    }
}

/// The letter of a curve by its place among them.
fn letter(at: usize) -> char {
    (b'A'..=b'Z').nth(at).map_or('·', char::from)
}

pub(super) fn percent(share: f64) -> String {
    format!("{}%", number(share * 100.0))
}
