//! A bus as a line: the pair from end to end, and in order along it what hangs on it, each on its stub.

use super::view::{BOX, GAP, NAME, SMALL, Said};
use crate::power::words::{short, width};
use draw::Symbol;

/// Rows of the diagram that a piece of a bus takes.
pub(super) const ROWS: usize = 5;
/// Narrowest place (mm).
const NARROWEST: f64 = 34.0;

/// A bus, or a piece of one that is longer than a sheet is wide.
#[derive(Debug, Clone)]
pub(super) struct Along {
    pub(super) name: String,
    /// What holds for the whole line.
    pub(super) said: Vec<Said>,
    pub(super) stops: Vec<Stop>,
    /// The line comes from a piece before.
    pub(super) continued: bool,
    /// The line goes on in a piece after this one.
    pub(super) goes_on: bool,
}

/// A place on the line.
#[derive(Debug, Clone)]
pub(super) struct Stop {
    pub(super) symbol: Symbol,
    pub(super) name: String,
    /// What stands beside the device.
    pub(super) said: Vec<Said>,
    /// Line between the place before and this one.
    pub(super) before: Option<Said>,
    pub(super) stub: Said,
    /// Resistor across the pair.
    pub(super) across: Option<String>,
    /// Each of the resistors that hold the pair apart while nobody speaks.
    pub(super) bias: Option<String>,
}

/// Where on its place everything stands, from the left (mm).
pub(super) struct Offsets {
    /// The stub.
    pub(super) drop: f64,
    /// The resistor across the pair.
    pub(super) across: Option<f64>,
    /// The resistors of the bias.
    pub(super) bias: Option<f64>,
    /// Clear paper begins here beside the pair.
    pub(super) clear: f64,
}

impl Along {
    /// From one place to the next (mm): all alike.
    pub(super) fn step(&self) -> f64 {
        let places = self.stops.iter().enumerate();
        let wide = places.map(|(at, stop)| stop.width(self.begins(at), self.stops.get(at + 1)));
        wide.fold(NARROWEST, f64::max)
    }

    /// The line begins at this place.
    pub(super) fn begins(&self, at: usize) -> bool {
        at == 0 && !self.continued
    }

    /// Pieces that are no wider (mm), wherever a place is not wider by itself.
    pub(super) fn cut(self, widest: f64) -> Vec<Self> {
        let most = (widest / self.step()).floor().max(1.0);
        let mut pieces: Vec<Self> = Vec::new();
        let mut room = 0.0;
        for stop in self.stops {
            if let Some(piece) = pieces.last_mut().filter(|_| room >= 1.0) {
                piece.stops.push(stop);
            } else {
                let continued = !pieces.is_empty();
                if let Some(before) = pieces.last_mut() {
                    before.goes_on = true;
                }
                let said = if continued {
                    vec![Said::plain("continued")]
                } else {
                    self.said.clone()
                };
                pieces.push(Self {
                    name: self.name.clone(),
                    said,
                    stops: vec![stop],
                    continued,
                    goes_on: false,
                });
                room = most;
            }
            room -= 1.0;
        }
        pieces
    }
}

impl Stop {
    /// Where everything of it stands. A resistor at the beginning of a line stands before all else, as it is wired.
    pub(super) fn offsets(&self, begins: bool) -> Offsets {
        let words = |words: &str| width(words, SMALL) + 2.0 * GAP;
        let mut x = BOX;
        let mut across = None;
        let mut place_across = |x: &mut f64| {
            across = self.across.as_ref().map(|resistor| {
                let at = *x;
                *x += words(resistor);
                at
            });
        };
        if begins {
            place_across(&mut x);
        }
        let drop = x;
        x += GAP;
        if !begins {
            x += GAP;
            place_across(&mut x);
        }
        let beside_stub = drop + words(&self.stub.words);
        let bias = self.bias.as_ref().map(|resistor| {
            let at = x.max(beside_stub);
            x = at + words(resistor);
            at
        });
        Offsets {
            drop,
            across,
            bias,
            clear: x.max(beside_stub),
        }
    }

    /// From its left to where the next one may stand (mm).
    fn width(&self, begins: bool, next: Option<&Self>) -> f64 {
        let offsets = self.offsets(begins);
        let said = self.said.iter().map(|said| width(&said.words, SMALL));
        let beside = said.fold(width(&short(&self.name), NAME), f64::max);
        let until = next.and_then(|next| next.before.as_ref());
        let until = until.map_or(0.0, |until| width(&until.words, SMALL));
        (offsets.drop + BOX + GAP / 2.0 + beside + GAP).max(offsets.clear + until + GAP)
    }
}
