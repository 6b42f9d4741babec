//! A drawing for the screen: SVG in site coordinates, meters with y downward, that a page can zoom and restyle.
//!
//! Lines, hatches, symbols and words keep their size however near one looks: they are drawn in screen units inside groups
//! of class `fixed`, which the page scales. Looks come from the page's style sheet by class; nothing is colored here.

mod classes;
mod hatches;

use crate::xml::{escaped, number};
use crate::{Figure, Fill, Placement, Point};
use classes::{fill_class, layer_classes};
use hatches::Hatches;
use quantity::{Length, Quantity as _};
use std::fmt::Write as _;

/// Screen units to a millimeter of a symbol as it is drawn on paper.
const PER_MILLIMETER: f64 = 4.0;

/// A drawing for the screen as it grows.
#[derive(Debug)]
pub struct Screen {
    out: String,
    open: usize,
    hatches: Hatches,
    /// Meters to a screen unit as long as the page has not said otherwise.
    unit: f64,
}

/// What a group of the drawing is.
#[derive(Debug, Clone, Default)]
pub struct Group {
    class: String,
    title: String,
    transform: String,
    data: Vec<(&'static str, String)>,
}

impl Group {
    /// A group of a class.
    pub fn new(class: impl Into<String>) -> Self {
        Self {
            class: class.into(),
            ..Self::default()
        }
    }

    /// The same group with what it is in plain words.
    #[must_use]
    pub fn title(mut self, title: impl Into<String>) -> Self {
        self.title = title.into();
        self
    }

    /// The same group with a `data-…` attribute for the page's script.
    #[must_use]
    pub fn data(mut self, name: &'static str, value: impl Into<String>) -> Self {
        self.data.push((name, value.into()));
        self
    }

    /// The same group moved by an SVG transform, in the drawing's own coordinates (y downward).
    #[must_use]
    pub fn moved(mut self, transform: impl Into<String>) -> Self {
        self.transform = transform.into();
        self
    }
}

impl Screen {
    /// An empty drawing of which a screen unit is first taken to be so long on the site.
    pub fn new(unit: Length) -> Self {
        Self {
            out: String::new(),
            open: 0,
            hatches: Hatches::default(),
            unit: unit.base(),
        }
    }

    /// Begins a group.
    pub fn open(&mut self, group: &Group) {
        let _ = write!(self.out, "<g class=\"{}\"", escaped(&group.class));
        if !group.transform.is_empty() {
            let _ = write!(self.out, " transform=\"{}\"", escaped(&group.transform));
        }
        for (name, value) in &group.data {
            let _ = write!(self.out, " data-{name}=\"{}\"", escaped(value));
        }
        self.out.push('>');
        if !group.title.is_empty() {
            let _ = write!(self.out, "<title>{}</title>", escaped(&group.title));
        }
        self.open += 1;
    }

    /// Ends the group that was begun last.
    pub fn close(&mut self) {
        if self.open > 0 {
            self.out.push_str("</g>\n");
            self.open -= 1;
        }
    }

    /// Draws the figures and symbols of a scene that are kept, in the order of its layers, each by the looks of its layer.
    /// Words and dimensions are left out.
    pub fn scene(&mut self, scene: &crate::Scene, keep: impl Fn(&crate::Shape) -> bool) {
        for (index, layer) in scene.layers().iter().enumerate() {
            let of_it = |shape: &&crate::Shape| shape.layer.0 == index && keep(shape);
            let shapes: Vec<_> = scene.shapes().iter().filter(of_it).collect();
            if shapes.is_empty() {
                continue;
            }
            self.open(&Group::new(layer_classes(layer)));
            for shape in shapes {
                self.shape(shape);
            }
            self.close();
        }
    }

    fn shape(&mut self, shape: &crate::Shape) {
        let titled = shape.title.as_deref().filter(|title| !title.is_empty());
        if let Some(title) = titled {
            self.open(&Group::new("thing").title(title));
        }
        match &shape.content {
            crate::Content::Figure(figure) => self.figure(figure),
            crate::Content::Symbol(placement) => self.symbol(placement, 0.0),
            _ => {}
        }
        if titled.is_some() {
            self.close();
        }
    }

    /// A figure in site coordinates.
    pub fn figure(&mut self, figure: &Figure) {
        self.drawn(figure, 1.0);
    }

    /// A symbol on its point, in screen units, so many of them to the right.
    pub fn symbol(&mut self, placement: &Placement, aside: f64) {
        let (turn, aside) = (
            number(-placement.rotation.base().to_degrees()),
            number(aside),
        );
        self.fixed(placement.at);
        let _ = write!(
            self.out,
            "<g transform=\"translate({aside})\"><g transform=\"rotate({turn})\">"
        );
        for figure in &placement.symbol.figures {
            self.drawn(figure, 1000.0 * PER_MILLIMETER);
        }
        self.out.push_str("</g>");
        for letters in &placement.symbol.letters {
            let (x, y) = spot(
                letters.at.turned(Point::origin(), placement.rotation),
                1000.0 * PER_MILLIMETER,
            );
            let size = letters.height.base() * 1000.0 * PER_MILLIMETER / crate::lettering::CAPITAL;
            let (middle, size) = (number(y + 0.36 * size), number(size));
            let _ = write!(
                self.out,
                "<text class=\"letter\" x=\"{}\" y=\"{middle}\" font-size=\"{size}\" text-anchor=\"middle\">{}</text>",
                number(x),
                escaped(&letters.words)
            );
        }
        self.out.push_str("</g></g></g>");
    }

    /// A circle of so many screen units about a point, so many of them to the right: something to touch.
    pub fn target(&mut self, at: Point, radius: f64, aside: f64) {
        self.fixed(at);
        let _ = write!(
            self.out,
            "<circle class=\"target\" cx=\"{}\" r=\"{}\"/></g></g>",
            number(aside),
            number(radius)
        );
    }

    /// Words on a point, moved by so many screen units to the right and down; level, however the drawing is turned.
    pub fn words(
        &mut self,
        at: Point,
        (right, down): (f64, f64),
        anchor: crate::Anchor,
        words: &str,
    ) {
        let anchor = match anchor {
            crate::Anchor::Start => "start",
            crate::Anchor::Middle => "middle",
            crate::Anchor::End => "end",
        };
        self.fixed(at);
        let _ = write!(
            self.out,
            "<text x=\"{}\" y=\"{}\" text-anchor=\"{anchor}\">{}</text></g></g>",
            number(right),
            number(down),
            escaped(words)
        );
    }

    /// The drawing with its frame: the part of the site between two opposite corners, with a name and a description for
    /// those who can't see it.
    pub fn finish(
        mut self,
        (low, high): (Point, Point),
        class: &str,
        title: &str,
        description: &str,
    ) -> String {
        while self.open > 0 {
            self.close();
        }
        let (width, height) = ((high.x - low.x).base(), (high.y - low.y).base());
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"{}\" viewBox=\"{} {} {} {}\" role=\"group\" aria-label=\"{}\" \
             preserveAspectRatio=\"xMidYMid meet\" data-unit=\"{}\"><desc>{}</desc>\n{}{}</svg>",
            escaped(class),
            number(low.x.base()),
            number(-high.y.base()),
            number(width),
            number(height),
            escaped(title),
            self.unit,
            escaped(description),
            self.hatches.defined(self.unit),
            self.out
        )
    }

    /// Begins what keeps its size about a point; two groups are to be closed.
    fn fixed(&mut self, at: Point) {
        let (x, y) = spot(at, 1.0);
        let _ = write!(
            self.out,
            "<g transform=\"translate({} {})\"><g class=\"fixed\" transform=\"scale({:.6})\">",
            number(x),
            number(y),
            self.unit
        );
    }

    /// A figure, so many units to the meter.
    fn drawn(&mut self, figure: &Figure, scale: f64) {
        match figure {
            Figure::Line { from, to } => self.path(&[*from, *to], false, None, scale),
            Figure::Path { points } => self.path(points, false, None, scale),
            Figure::Area { points, fill } => self.path(points, true, Some(fill), scale),
            Figure::Circle {
                center,
                radius,
                fill,
            } => {
                let (x, y) = spot(*center, scale);
                let look = self.look(Some(fill));
                let _ = write!(
                    self.out,
                    "<circle cx=\"{}\" cy=\"{}\" r=\"{}\"{look}/>",
                    number(x),
                    number(y),
                    number(radius.base() * scale)
                );
            }
            Figure::Arc {
                center,
                radius,
                start,
                sweep,
            } => {
                let at = |share: f64| center.toward(*start + *sweep * share, *radius);
                let [from, middle, to] = [0.0, 0.5, 1.0].map(|share| words(at(share), scale));
                let way = i32::from(sweep.base() < 0.0);
                let r = number(radius.base() * scale);
                let _ = write!(
                    self.out,
                    "<path d=\"M{from}A{r} {r} 0 0 {way} {middle}A{r} {r} 0 0 {way} {to}\" class=\"f-open\"/>"
                );
            }
        }
    }

    fn path(&mut self, points: &[Point], closed: bool, fill: Option<&Fill>, scale: f64) {
        if points.is_empty() {
            return;
        }
        let corners: Vec<String> = points.iter().map(|point| words(*point, scale)).collect();
        let end = if closed { "Z" } else { "" };
        let look = self.look(fill);
        let _ = write!(self.out, "<path d=\"M{}{end}\"{look}/>", corners.join("L"));
    }

    fn look(&mut self, fill: Option<&Fill>) -> String {
        match fill {
            Some(Fill::Hatched(hatch)) => format!(" fill=\"url(#{})\"", self.hatches.name(*hatch)),
            other => format!(" class=\"{}\"", fill_class(other)),
        }
    }
}

/// A point, y downward.
fn spot(point: Point, scale: f64) -> (f64, f64) {
    (point.x.base() * scale, -point.y.base() * scale)
}

/// A point as two numbers.
fn words(point: Point, scale: f64) -> String {
    let (x, y) = spot(point, scale);
    format!("{} {}", number(x), number(y))
}
