//! Writes a drawing as SVG in paper millimeters, for a browser and for the typesetter alike.

use crate::flat::Spot;
use crate::mark::{Letter, Mark, Measured, Pen, Slant};
use crate::patch::Patch;
use crate::xml::{escaped, id, number};
use crate::{Anchor, Drawing, Ink};
use std::fmt::Write;

/// The sheet's typeface, with what stands in for it.
const FAMILY: &str = "Inter, sans-serif";

impl Drawing {
    /// The whole sheet as SVG. The same drawing gives the same bytes.
    pub fn svg(&self) -> String {
        let mut svg = Svg {
            out: String::new(),
            height: self.size.1,
            depth: 0,
        };
        svg.open_sheet(self);
        for (kind, layers) in [("geometry", &self.geometry), ("words", &self.words)] {
            for (index, (layer, marks)) in self.layers.iter().zip(layers).enumerate() {
                if !marks.is_empty() {
                    let name = format!("{}-{}-{}-{kind}", self.prefix, index + 1, id(&layer.name));
                    svg.open(&format!(
                        "<g id=\"{}\" class=\"layer {kind}\">",
                        escaped(&name)
                    ));
                    svg.title(&layer.name, &layer.description);
                    for mark in marks {
                        svg.mark(mark);
                    }
                    svg.close("</g>");
                }
            }
        }
        svg.open(&format!(
            "<g id=\"{}-furniture\" class=\"furniture\">",
            escaped(&self.prefix)
        ));
        for mark in &self.furniture {
            svg.mark(mark);
        }
        svg.close("</g>");
        svg.close("</svg>");
        svg.out
    }
}

/// A growing SVG text.
struct Svg {
    out: String,
    /// Height of the paper (mm), to turn y downward.
    height: f64,
    depth: usize,
}

impl Svg {
    /// One line of text.
    fn line(&mut self, text: &str) {
        let _ = writeln!(self.out, "{:indent$}{text}", "", indent = self.depth);
    }

    /// An element that holds the next lines.
    fn open(&mut self, text: &str) {
        self.line(text);
        self.depth += 1;
    }

    /// The end of an element.
    fn close(&mut self, text: &str) {
        self.depth = self.depth.saturating_sub(1);
        self.line(text);
    }

    /// The head of the sheet.
    fn open_sheet(&mut self, drawing: &Drawing) {
        let (width, height) = (number(drawing.size.0), number(drawing.size.1));
        self.open(&format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\" font-family=\"{FAMILY}\" fill=\"none\" \
             stroke-linecap=\"butt\" stroke-linejoin=\"miter\">"
        ));
        self.title(&drawing.title, &drawing.description);
        let paper = color(Ink::Paper);
        self.line(&format!(
            "<rect width=\"{width}\" height=\"{height}\" fill=\"{paper}\"/>"
        ));
    }

    /// What a group is, in plain words.
    fn title(&mut self, title: &str, description: &str) {
        if !title.is_empty() {
            self.line(&format!("<title>{}</title>", escaped(title)));
        }
        if !description.is_empty() {
            self.line(&format!("<desc>{}</desc>", escaped(description)));
        }
    }

    /// A spot as two numbers, y downward.
    fn spot(&self, spot: Spot) -> String {
        format!("{} {}", number(spot.x), number(self.height - spot.y))
    }

    /// One mark.
    fn mark(&mut self, mark: &Mark) {
        match mark {
            Mark::Path {
                spots,
                closed,
                pen,
                fill,
            } => self.path(spots, *closed, *pen, *fill),
            Mark::Circle {
                center,
                radius,
                pen,
                fill,
            } => {
                let (x, y) = (number(center.x), number(self.height - center.y));
                let look = look(*pen, *fill);
                self.line(&format!(
                    "<circle cx=\"{x}\" cy=\"{y}\" r=\"{}\"{look}/>",
                    number(*radius)
                ));
            }
            Mark::Arc {
                center,
                radius,
                start,
                sweep,
                pen,
            } => {
                self.arc(*center, *radius, (*start, *sweep), *pen);
            }
            Mark::Letters(letter) => self.letters(letter),
            Mark::Ground(patch) => self.ground(patch),
            Mark::Group {
                class,
                title,
                marks,
            } => self.group(class, title.as_deref(), marks),
            Mark::Measured(Measured { marks, .. }) => marks.iter().for_each(|mark| self.mark(mark)),
        }
    }

    /// Marks that belong together.
    fn group(&mut self, class: &str, title: Option<&str>, marks: &[Mark]) {
        self.open(&format!("<g class=\"{class}\">"));
        self.title(title.unwrap_or_default(), "");
        for mark in marks {
            self.mark(mark);
        }
        self.close("</g>");
    }

    /// Straight lines.
    fn path(&mut self, spots: &[Spot], closed: bool, pen: Option<Pen>, fill: Option<Ink>) {
        if spots.is_empty() {
            return;
        }
        let corners: Vec<String> = spots.iter().map(|spot| self.spot(*spot)).collect();
        let end = if closed { "Z" } else { "" };
        let look = look(pen, fill);
        self.line(&format!("<path d=\"M{}{end}\"{look}/>", corners.join("L")));
    }

    /// A part of a circle, in one piece or two so that the way round is never in doubt.
    fn arc(&mut self, center: Spot, radius: f64, (start, sweep): (f64, f64), pen: Pen) {
        let at = |share: f64| center.plus(Spot::unit(start + sweep * share), radius);
        let (from, middle, to) = (self.spot(at(0.0)), self.spot(at(0.5)), self.spot(at(1.0)));
        let curve = format!("A{r} {r} 0 0 0 ", r = number(radius));
        let look = look(Some(pen), None);
        self.line(&format!(
            "<path d=\"M{from}{curve}{middle}{curve}{to}\"{look}/>"
        ));
    }

    /// Clear paper under words.
    fn ground(&mut self, patch: &Patch) {
        let corners: Vec<String> = patch
            .corners()
            .iter()
            .map(|corner| self.spot(*corner))
            .collect();
        let paper = color(Ink::Paper);
        self.line(&format!(
            "<path class=\"ground\" d=\"M{}Z\" fill=\"{paper}\"/>",
            corners.join("L")
        ));
    }

    /// One line of words.
    fn letters(&mut self, letter: &Letter) {
        let (x, y) = (number(letter.at.x), number(self.height - letter.at.y));
        let size = number(letter.height / crate::lettering::CAPITAL);
        let anchor = match letter.anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        };
        let weight = match letter.slant {
            Slant::Plain => "",
            Slant::Strong => " font-weight=\"600\"",
        };
        let degrees = number(-letter.angle.to_degrees());
        let turn = if degrees == "0" {
            String::new()
        } else {
            format!(" transform=\"rotate({degrees} {x} {y})\"")
        };
        let ink = color(letter.ink);
        let words = escaped(&letter.words);
        self.line(&format!(
            "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\"{weight}{anchor}{turn} fill=\"{ink}\">{words}</text>"
        ));
    }
}

/// A color as SVG writes it.
fn color(ink: Ink) -> String {
    let [red, green, blue] = ink.color();
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// Stroke and fill as attributes.
fn look(pen: Option<Pen>, fill: Option<Ink>) -> String {
    let mut look = String::new();
    if let Some(ink) = fill {
        let _ = write!(look, " fill=\"{}\"", color(ink));
    }
    if let Some(pen) = pen {
        let _ = write!(
            look,
            " stroke=\"{}\" stroke-width=\"{}\"",
            color(pen.ink),
            number(pen.width)
        );
        let dashes: Vec<String> = pen
            .pattern
            .dashes()
            .iter()
            .map(|dash| number(*dash))
            .collect();
        if !dashes.is_empty() {
            let _ = write!(look, " stroke-dasharray=\"{}\"", dashes.join(" "));
        }
    }
    look
}
