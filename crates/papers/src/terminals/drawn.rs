//! Puts the columns of terminals on their sheet.

use super::blocks::{Block, Column, HEAD, REACH, ROW, Strip, WIDE, WORDS};
use crate::power::pen::{at, write};
use draw::{Anchor, Figure, Fill, Ink, Layer, LayerId, LineWeight, Scene};
use quantity::UnitSystem;

/// Height of a strip's name and of a terminal's mark (mm).
const NAME: f64 = 2.6;
const MARK: f64 = 2.0;

struct Layers {
    blocks: LayerId,
    wires: LayerId,
    words: LayerId,
    free: LayerId,
    fails: LayerId,
}

pub(super) fn scene(
    columns: &[(f64, Column)],
    units: UnitSystem,
    (number, count): (usize, usize),
) -> Scene {
    let title = if count == 1 {
        "Terminal plan".to_owned()
    } else {
        format!("Terminal plan, {number} of {count}")
    };
    let mut scene = Scene::new(title, units).describe(describe(columns));
    let layers = layers(&mut scene);
    let mut pen = Pen {
        scene: &mut scene,
        layers,
    };
    for (left, column) in columns {
        pen.column(*left, column);
    }
    scene.remark("At the left of a terminal what comes from outside, at its right what stays in the enclosure. From the terminal outward: wire number, color, cable, what it carries, where its other end is.");
    scene.remark("Not to scale and not as mounted: the enclosure's layout shows where each strip sits. Prove dead before any terminal is touched.");
    scene
}

fn describe(columns: &[(f64, Column)]) -> String {
    let strips = columns.iter().flat_map(|(_, column)| &column.strips);
    let names: Vec<&str> = strips.map(|strip| strip.title.as_str()).collect();
    format!(
        "Terminal by terminal what lies under it: {}. The table of the terminal plan tells the same in words.",
        names.join(", ")
    )
}

fn layers(scene: &mut Scene) -> Layers {
    use LineWeight::{Fine, Medium};
    let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
    Layers {
        wires: layer(Layer::new("wires", Fine), "A core that lands here."),
        free: layer(
            Layer::new("free terminals", Fine).ink(Ink::Gray),
            "Nothing lies under these.",
        ),
        blocks: layer(Layer::new("terminals", Medium), "Terminals in their order."),
        words: layer(Layer::new("words", Fine), "Marks, cores and cables."),
        fails: layer(
            Layer::new("fails", Fine).ink(Ink::Fails),
            "More wires than the terminal is made for.",
        ),
    }
}

struct Pen<'a> {
    scene: &'a mut Scene,
    layers: Layers,
}

impl Pen<'_> {
    fn column(&mut self, left: f64, column: &Column) {
        let from = left + column.sides()[0];
        let mut top = 0.0;
        for strip in &column.strips {
            self.strip(strip, (left, from), top);
            top -= strip.height();
        }
    }

    fn strip(&mut self, strip: &Strip, (left, from): (f64, f64), top: f64) {
        let name = (left, top - HEAD + 2.0);
        self.words(self.layers.words, (&strip.title, NAME), name, Anchor::Start);
        let mut y = top - HEAD;
        for block in &strip.blocks {
            self.block(block, from, y);
            y -= block.height();
        }
    }

    fn block(&mut self, block: &Block, from: f64, top: f64) {
        let free = block.is_free();
        let layer = if free {
            self.layers.free
        } else {
            self.layers.blocks
        };
        let corners = (at(from, top), at(from + WIDE, top - block.height()));
        self.scene
            .add(layer, Figure::rectangle(corners.0, corners.1, Fill::Open));
        let middle = (from + WIDE / 2.0, base_line(top));
        let words = if free {
            self.layers.free
        } else {
            self.layers.words
        };
        self.words(words, (&block.mark, MARK), middle, Anchor::Middle);
        let edges = [(from, -1.0, Anchor::End), (from + WIDE, 1.0, Anchor::Start)];
        for (side, (edge, outward, anchor)) in block.sides.iter().zip(edges) {
            let mut y = top;
            for core in side {
                let (near, far) = (edge, edge + outward * (REACH - 1.0));
                let wire = Figure::line(at(near, y - ROW / 2.0), at(far, y - ROW / 2.0));
                self.scene.add(self.layers.wires, wire);
                let place = (edge + outward * REACH, base_line(y));
                self.words(self.layers.words, (core, WORDS), place, anchor);
                y -= ROW;
            }
        }
        if let Some(too_many) = &block.too_many {
            let place = (from + WIDE + REACH, base_line(top - block.height() + ROW));
            self.words(self.layers.fails, (too_many, WORDS), place, Anchor::Start);
        }
    }

    fn words(&mut self, layer: LayerId, words: (&str, f64), place: (f64, f64), anchor: Anchor) {
        write(self.scene, layer, words, place, anchor);
    }
}

/// Where the words of a row stand whose upper edge is here.
fn base_line(top: f64) -> f64 {
    top - ROW / 2.0 - WORDS * 0.36
}
