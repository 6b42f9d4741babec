//! Draws a bus along its line: what holds for all of it above, then the pair with its resistors, the devices on their stubs below.

use super::along::{Along, Offsets, Stop};
use super::symbols;
use super::trees::Pen;
use super::view::{BOX, GAP, NAME, SMALL, Said};
use crate::power::words::{short, width};
use draw::LayerId;

/// From the first base line down to what holds for the line, to the two wires of the pair, and to the devices (mm).
const DOWN: (f64, [f64; 2], f64) = (5.0, [22.0, 28.0], 46.0);
/// From one line of words to the next (mm).
const NEXT: f64 = 4.4;
/// From a wire of the pair to the middle and to the end of a bias resistor (mm).
const BIAS: (f64, f64) = (4.5, 9.0);

impl Pen<'_> {
    /// A bus whose words begin at this height.
    pub(super) fn along(&mut self, bus: &Along, top: f64, widest: f64) {
        let words = self.layers.words;
        self.words(words, (short(&bus.name).as_str(), NAME), (0.0, top));
        self.flow(&bus.said, top - DOWN.0, widest);
        let wires = DOWN.1.map(|down| top - down);
        let step = bus.step();
        let mut x = 0.0;
        let mut ends = (0.0, 0.0);
        for (at, stop) in bus.stops.iter().enumerate() {
            let offsets = stop.offsets(bus.begins(at));
            if bus.begins(at) {
                ends.0 = x + offsets.across.unwrap_or(offsets.drop);
            }
            let taps = [Some(offsets.drop), offsets.across, offsets.bias];
            ends.1 = taps
                .into_iter()
                .flatten()
                .fold(x, |far, tap| far.max(x + tap));
            self.stop(stop, &offsets, x, (wires, top - DOWN.2));
            if let Some(before) = &stop.before {
                let long = width(&before.words, SMALL);
                self.said(
                    before,
                    (x + offsets.drop.min(BOX) - GAP / 2.0 - long, wires[0] + 1.5),
                );
            }
            x += step;
        }
        if bus.goes_on {
            ends.1 = x;
        }
        for wire in wires {
            self.line(self.layers.bus, (ends.0, wire), (ends.1, wire));
        }
        let middle = f64::midpoint(wires[0], wires[1]);
        for (open, x) in [(bus.continued, ends.0), (bus.goes_on, ends.1)] {
            if open {
                self.symbol(
                    "goes on elsewhere in the diagram",
                    symbols::onward(),
                    (x, middle),
                );
            }
        }
    }

    /// What holds for the line: beside each other, and under each other where the paper ends.
    fn flow(&mut self, said: &[Said], top: f64, widest: f64) {
        let (mut x, mut y) = (0.0, top);
        for one in said {
            let long = width(&one.words, SMALL);
            if x > 0.0 && x + long > widest {
                (x, y) = (0.0, y - NEXT);
            }
            self.said(one, (x, y));
            x += long + 3.0 * GAP;
        }
    }

    /// A place: its stub with the device, and its resistors.
    fn stop(&mut self, stop: &Stop, offsets: &Offsets, x: f64, (wires, y): ([f64; 2], f64)) {
        let drop = x + offsets.drop;
        for (wire, aside) in wires.into_iter().zip([-0.8, 0.8]) {
            self.line(self.layers.stub, (drop + aside, wire), (drop + aside, y));
            self.symbol("joined", symbols::joined(), (drop + aside, wire));
        }
        self.said(&stop.stub, (drop + GAP, wires[1] - 4.5));
        self.symbol(&stop.name, stop.symbol.clone(), (drop, y));
        let words = self.layers.words;
        let beside = drop + BOX + GAP / 2.0;
        self.words(words, (short(&stop.name).as_str(), NAME), (beside, y + 1.5));
        for (row, said) in (0_u8..).zip(&stop.said) {
            self.said(said, (beside, y - 3.7 - NEXT * f64::from(row)));
        }
        if let Some((at, resistor)) = offsets.across.zip(stop.across.as_ref()) {
            let middle = f64::midpoint(wires[0], wires[1]);
            self.symbol(
                "resistor across the pair",
                symbols::across(),
                (x + at, middle),
            );
            self.words(
                words,
                (resistor.as_str(), SMALL),
                (x + at + GAP / 2.0, middle - 0.8),
            );
        }
        if let Some((at, resistor)) = offsets.bias.zip(stop.bias.as_ref()) {
            for (wire, side, sign) in [(wires[0], 1.0, "+"), (wires[1], -1.0, "−")] {
                let (from, middle, to) = (x + at, wire + side * BIAS.0, wire + side * BIAS.1);
                self.line(self.layers.stub, (from, wire), (from, to));
                self.symbol("joined", symbols::joined(), (from, wire));
                self.symbol("bias resistor", symbols::bias(), (from, middle));
                self.words(
                    words,
                    (resistor.as_str(), SMALL),
                    (from + GAP / 2.0, middle - 0.8),
                );
                self.words(
                    words,
                    (sign, SMALL),
                    (from + GAP / 2.0, to - 0.8 - side * 0.8),
                );
            }
        }
    }

    fn said(&mut self, said: &Said, place: (f64, f64)) {
        let layer: LayerId = if said.fails {
            self.layers.fails
        } else {
            self.layers.words
        };
        self.words(layer, (said.words.as_str(), SMALL), place);
    }
}
