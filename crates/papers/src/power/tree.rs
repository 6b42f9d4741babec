//! Draws the trees of a sheet: from the source at the left to the loads at the right, a row for each.

use super::node::{BOX, GAP, HALF, Kind, Node, Shown, left};
use super::pen::Pen;
use super::words::{self, NAME, SMALL};
use super::{ends, symbols};
use design::power::{ShownDisconnect, SourceKind};
use draw::LayerId;

/// From one row to the next (mm).
pub(super) const ROW: f64 = 9.0;
/// From a line up to the base line of the words over it (mm).
const OVER: f64 = 1.3;
/// From a line down to the first base line of the words under it, and from one to the next (mm).
const UNDER: (f64, f64) = (3.0, 3.3);

/// A sheet as it is drawn.
pub(super) struct Tree<'a, 'p> {
    pub(super) pen: Pen<'a>,
    pub(super) shown: Shown<'p>,
    /// Where the symbols of the loads begin (mm).
    pub(super) loads: f64,
}

/// Where a node is drawn.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    pub(super) x: f64,
    pub(super) row: usize,
    /// Width of the cable before it (mm).
    pub(super) before: f64,
    /// Mains flow here.
    pub(super) mains: bool,
}

/// Height of a row (mm).
pub(super) fn up(row: usize) -> f64 {
    -ROW * f64::from(u32::try_from(row).unwrap_or(u32::MAX))
}

impl Tree<'_, '_> {
    /// Draws a node and all that hangs on it.
    pub(super) fn node(&mut self, node: &Node, place: Place) {
        if node.next.is_empty() {
            ends::draw(self, &node.kind, place);
            return;
        }
        let width = node.width(self.shown, place.before);
        let far = place.x + width;
        let mains = self.own(node, place, far);
        let is_cable = matches!(node.kind, Kind::Cable(_));
        let mut child = Place {
            x: far,
            row: place.row,
            before: if is_cable { width } else { 0.0 },
            mains,
        };
        let layer = self.conductor(mains);
        let last = node.next.len() - 1;
        for (number, next) in node.next.iter().enumerate() {
            if number < last {
                self.dot(far, up(child.row));
            }
            if number > 0 {
                self.pen
                    .line(layer, (far, up(place.row)), (far, up(child.row)));
            }
            self.node(next, child);
            child.row += next.rows(self.shown);
        }
    }

    pub(super) fn conductor(&self, mains: bool) -> LayerId {
        if mains {
            self.pen.layers.mains
        } else {
            self.pen.layers.low
        }
    }

    fn dot(&mut self, x: f64, y: f64) {
        self.pen.symbol("joined", draw::symbols::junction(), x, y);
    }

    /// Draws a node itself up to where the next begin; says whether mains flow from there.
    fn own(&mut self, node: &Node, place: Place, far: f64) -> bool {
        let (x, y) = (place.x, up(place.row));
        if node.continued {
            let mains = self.is_mains(&node.kind);
            self.flag(&node.name(self.shown), (x, y), far, mains);
            return mains;
        }
        let layer = self.conductor(place.mains);
        match &node.kind {
            Kind::Source(at, load) => return self.source(*at, *load, place, far),
            Kind::From(name) => self.flag(&words::from(name), (x, y), far, place.mains),
            Kind::Fuse(at) => {
                let label = words::fuse(self.shown, *at);
                self.pen.begin(
                    self.pen.layers.words,
                    &label,
                    SMALL,
                    (x + GAP / 2.0, y + OVER + 0.8),
                );
                let middle = f64::midpoint(x, far);
                self.pen.line(layer, (x, y), (middle - HALF, y));
                self.pen
                    .symbol(&format!("fuse {label}"), draw::symbols::fuse(), middle, y);
                self.pen.line(layer, (middle + HALF, y), (far, y));
            }
            Kind::Cable(cable) => {
                let label = words::cable(cable, self.shown.units);
                self.labeled(layer, &label, (x, y), far);
            }
            Kind::NoCable => {
                let layer = self.pen.layers.unwritten;
                self.labeled(layer, words::NO_CABLE, (x, y), far);
            }
            Kind::Joint(name) => {
                self.dot(x, y);
                self.labeled(layer, &words::short(name), (x, y), far);
            }
            _ => self.pen.line(layer, (x, y), (far, y)),
        }
        place.mains
    }

    fn is_mains(&self, kind: &Kind) -> bool {
        match kind {
            Kind::Source(at, _) => self
                .shown
                .power
                .sources
                .get(*at)
                .is_some_and(|source| source.kind == SourceKind::Mains),
            _ => false,
        }
    }

    /// A line with words over it.
    fn labeled(&mut self, layer: LayerId, words: &str, (x, y): (f64, f64), far: f64) {
        self.pen.line(layer, (x, y), (far, y));
        self.pen
            .begin(self.pen.layers.words, words, SMALL, (x + GAP, y + OVER));
    }

    /// A flag from which a line goes on.
    fn flag(&mut self, words: &str, (x, y): (f64, f64), far: f64, mains: bool) {
        self.pen.symbol(words, symbols::flag(), x + HALF, y);
        let layer = self.conductor(mains);
        self.labeled(layer, words, (x + 2.0 * HALF, y), far);
    }

    /// A source with what stands under it; says whether mains flow from it.
    fn source(&mut self, at: usize, load: Option<usize>, place: Place, far: f64) -> bool {
        let Some(source) = self.shown.power.sources.get(at) else {
            return false;
        };
        let y = up(place.row);
        let mains = source.kind == SourceKind::Mains;
        if mains && load.is_none() {
            self.mains(at, (place.x, y), far);
            return true;
        }
        let middle = place.x + left(self.shown, at, place.before) + BOX;
        if load.is_some() {
            let layer = self.conductor(place.mains);
            self.pen.line(layer, (place.x, y), (middle - BOX, y));
        }
        self.inputs(at, middle, place.row);
        let symbol = ends::supply(self.shown, source);
        self.pen.symbol(&source.id, symbol, middle, y);
        let layer = self.conductor(mains);
        self.pen.line(layer, (middle + BOX, y), (far, y));
        self.under(at, load, (middle + BOX + GAP / 2.0, y));
        mains
    }

    /// A mains circuit with its breaker and its disconnect.
    fn mains(&mut self, at: usize, (x, y): (f64, f64), far: f64) {
        let layer = self.pen.layers.mains;
        let name = self.shown.power.sources.get(at).map_or("", |it| &it.id);
        let cuts = |it: &&ShownDisconnect| it.of.iter().any(|of| of == name);
        let known = self.shown.power.disconnects.iter().find(cuts);
        self.pen.symbol(name, symbols::mains(), x + BOX, y);
        let breaker = x + 2.0 * BOX + HALF;
        self.pen.symbol(
            "breaker of the mains circuit",
            symbols::breaker(),
            breaker,
            y,
        );
        let disconnect = breaker + 2.0 * HALF;
        self.pen
            .symbol("disconnect", symbols::disconnect(), disconnect, y);
        match known {
            Some(known) => self.pen.end(&known.id, SMALL, (disconnect + HALF, y + 2.6)),
            None => self.pen.begin(
                self.pen.layers.not_known,
                "?",
                SMALL,
                (disconnect - 0.5, y + 2.6),
            ),
        }
        self.pen.line(layer, (disconnect + HALF, y), (far, y));
        self.under(at, None, (x + 2.0 * BOX + GAP / 2.0, y));
    }

    /// Words under a source.
    fn under(&mut self, at: usize, load: Option<usize>, (x, y): (f64, f64)) {
        let mut down = UNDER.0;
        for line in words::source(self.shown, at, load) {
            let layers = self.pen.layers;
            let layer = if line.fails {
                layers.fails
            } else {
                layers.words
            };
            self.pen.begin(layer, &line.words, SMALL, (x, y - down));
            down += UNDER.1;
        }
    }

    /// Panels to the left of a supply, batteries from below.
    fn inputs(&mut self, at: usize, middle: f64, first: usize) {
        let Some(source) = self.shown.power.sources.get(at) else {
            return;
        };
        let labels = words::inputs(self.shown, at);
        let layer = self.pen.layers.low;
        let (panels, edge) = (source.panels.len(), middle - BOX);
        let before = panels.max(1);
        for (number, label) in labels.iter().enumerate() {
            let is_panel = number < panels;
            let row = first
                + if is_panel {
                    number
                } else {
                    before + number - panels
                };
            let y = up(row);
            let to = if is_panel { edge - GAP } else { middle };
            let begin = to - words::width(label, SMALL) - GAP - 2.0 * HALF;
            let symbol = if is_panel {
                symbols::panel()
            } else {
                symbols::battery()
            };
            self.pen.symbol(label, symbol, begin + HALF, y);
            self.pen.line(layer, (begin + 2.0 * HALF, y), (to, y));
            let words = (begin + 2.0 * HALF + GAP / 2.0, y + OVER);
            self.pen.begin(self.pen.layers.words, label, SMALL, words);
            if is_panel {
                self.pen.line(layer, (to, y), (to, up(first)));
                self.pen.line(layer, (to, up(first)), (edge, up(first)));
                if number + 1 < panels && panels > 1 {
                    self.dot(to, y);
                }
            } else {
                self.pen.line(layer, (to, y), (to, up(first) - BOX));
            }
        }
    }

    /// The name of a load and whatever stands in its row.
    pub(super) fn row_words(&mut self, words: &str, (x, y): (f64, f64)) {
        self.pen.begin(self.pen.layers.words, words, NAME, (x, y));
    }
}
