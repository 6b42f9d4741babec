//! Draws what stands on a sheet: trees from the switch at the left to the devices at the right, a row for each, and buses
//! under them.

use super::layers::Layers;
use super::split::Piece;
use super::view::{BOX, GAP, Line, NAME, SMALL, Thing};
use crate::power::pen::{at, write};
use crate::power::words::short;
use draw::{Anchor, Figure, LayerId, Placement, Scene, Symbol};

/// From one row to the next (mm).
const ROW: f64 = 14.0;
/// From a line up to the base line of the words over it, and down to that of the words under it (mm).
const OVER: (f64, f64) = (1.5, 3.7);
/// From the line of a thing up to its name, down to what is said of it, and from one to the next (mm).
const BESIDE: (f64, f64, f64) = (1.5, 3.7, 4.4);

/// Draws the pieces under each other.
pub(super) fn draw(scene: &mut Scene, pieces: &[Piece], widest: f64) {
    let layers = Layers::add_to(scene);
    let mut pen = Pen { scene, layers };
    let mut row = 0;
    for piece in pieces {
        match piece {
            Piece::Tree(thing) => pen.thing(thing, 0.0, row),
            Piece::Line(bus) => pen.along(bus, up(row), widest),
        }
        row += piece.rows();
    }
}

/// Height of a row (mm).
fn up(row: usize) -> f64 {
    -ROW * f64::from(u32::try_from(row).unwrap_or(u32::MAX))
}

/// What draws, in millimeters of paper.
pub(super) struct Pen<'a> {
    scene: &'a mut Scene,
    pub(super) layers: Layers,
}

impl Pen<'_> {
    /// A thing whose symbol begins at x, and all that hangs on it.
    fn thing(&mut self, thing: &Thing, x: f64, row: usize) {
        let y = up(row);
        self.symbol(&thing.name, thing.symbol.clone(), (x + BOX, y));
        self.beside(thing, (x + 2.0 * BOX + GAP / 2.0, y));
        if thing.next.is_empty() {
            return;
        }
        let far = x + thing.width();
        let trunk = self.layers.trunk;
        self.line(trunk, (x + 2.0 * BOX, y), (far, y));
        let mut below = row;
        for next in &thing.next {
            self.line(trunk, (far, y), (far, up(below)));
            self.reach(next, (far, up(below)), thing.lines());
            self.thing(next, far + thing.lines(), below);
            below += next.rows();
        }
    }

    /// The line to a thing, with its words.
    fn reach(&mut self, thing: &Thing, (x, y): (f64, f64), long: f64) {
        let Some(Line {
            carrier,
            over,
            under,
        }) = &thing.line
        else {
            return;
        };
        let layer = self.layers.of(*carrier);
        self.line(layer, (x, y), (x + long, y));
        let words = self.layers.words;
        self.words(words, (over.as_str(), SMALL), (x + GAP, y + OVER.0));
        self.words(words, (under.as_str(), SMALL), (x + GAP, y - OVER.1));
    }

    /// The words beside a thing: its name over the line, the rest under it.
    fn beside(&mut self, thing: &Thing, (x, y): (f64, f64)) {
        let words = self.layers.words;
        self.words(
            words,
            (short(&thing.name).as_str(), NAME),
            (x, y + BESIDE.0),
        );
        let mut down = BESIDE.1;
        for said in &thing.said {
            let layer = if said.fails { self.layers.fails } else { words };
            self.words(layer, (said.words.as_str(), SMALL), (x, y - down));
            down += BESIDE.2;
        }
    }

    pub(super) fn line(&mut self, layer: LayerId, from: (f64, f64), to: (f64, f64)) {
        let line = Figure::line(at(from.0, from.1), at(to.0, to.1));
        self.scene.add(layer, line);
    }

    pub(super) fn symbol(&mut self, title: &str, symbol: Symbol, (x, y): (f64, f64)) {
        let placement = Placement::new(symbol, at(x, y));
        self.scene.add_titled(self.layers.symbols, title, placement);
    }

    /// Words of a height that begin at a point.
    pub(super) fn words(&mut self, layer: LayerId, words: (&str, f64), place: (f64, f64)) {
        write(self.scene, layer, words, place, Anchor::Start);
    }
}
