//! The right end of a row: a load with its greatest current and lowest voltage, or where the line goes on.

use super::node::{HALF, Kind, Shown};
use super::symbols::{self, Flow};
use super::tree::{Place, Tree, up};
use super::words::{self, NAME, SMALL};
use design::power::{LoadKind, LoadStanding, ShownLoad, ShownSource, SourceKind};
use draw::Symbol;
use quantity::{Quantity, print};
use site::CurrentKind;

/// From the beginning of a load's symbol to its name (mm).
const NAMES: f64 = 8.0;
/// From there to the ends of its figures (mm).
const FIGURES: [f64; 3] = [66.0, 88.0, 108.0];
/// From there to the mark and word of how it stands (mm).
const STANDING: f64 = 112.0;
/// From a row's line to the base line of figures beside it (mm).
const BASE: f64 = -0.7;

/// Heads of the columns.
pub(super) fn heads(tree: &mut Tree<'_, '_>, y: f64) {
    let x = tree.loads;
    let layer = tree.pen.layers.words;
    tree.pen.begin(layer, "load", SMALL, (x + NAMES, y));
    let heads = ["greatest current", "lowest voltage", "it needs"];
    for (head, end) in heads.into_iter().zip(FIGURES) {
        tree.pen.end(head, SMALL, (x + end, y));
    }
}

/// Draws the end of a row.
pub(super) fn draw(tree: &mut Tree<'_, '_>, kind: &Kind, place: Place) {
    let y = up(place.row);
    let x = tree.loads;
    let load = match kind {
        Kind::Load(at) => tree.shown.power.loads.get(*at),
        _ => None,
    };
    let layer = if load.is_some_and(|load| load.without_cable) {
        tree.pen.layers.unwritten
    } else {
        tree.conductor(place.mains)
    };
    let reach = load.map_or(0.0, |load| HALF - half(load.kind));
    tree.pen.line(layer, (place.x, y), (x + reach, y));
    match (kind, load) {
        (_, Some(load)) => of_load(tree, load, (x, y)),
        (Kind::Onward(name), _) => {
            tree.pen.symbol(name, symbols::flag(), x + HALF, y);
            let words = format!("{name} goes on elsewhere");
            tree.row_words(&words, (x + NAMES + HALF, y + BASE));
        }
        (Kind::Back(name), _) => {
            tree.pen.symbol(name, symbols::flag(), x + HALF, y);
            let words = format!("to {}", words::short(name));
            tree.row_words(&words, (x + NAMES + HALF, y + BASE));
        }
        _ => {
            tree.pen.symbol("open end", draw::symbols::terminal(), x, y);
            tree.row_words("nothing is fed here", (x + NAMES, y + BASE));
        }
    }
}

/// Half the width of a load's symbol (mm).
fn half(kind: LoadKind) -> f64 {
    match kind {
        LoadKind::Motor => 3.0,
        LoadKind::Coil | LoadKind::Heater => 2.2,
        LoadKind::Lamp => 2.5,
        LoadKind::Electronics | LoadKind::Supply => 2.8,
    }
}

fn of_load(tree: &mut Tree<'_, '_>, load: &ShownLoad, (x, y): (f64, f64)) {
    let symbol = match load.kind {
        LoadKind::Motor => symbols::motor(),
        LoadKind::Coil => symbols::coil(),
        LoadKind::Lamp => symbols::lamp(),
        LoadKind::Heater => symbols::heater(),
        LoadKind::Electronics | LoadKind::Supply => symbols::electronics(),
    };
    let title = format!("{}, {}", load.id, load.what);
    tree.pen.symbol(&title, symbol, x + HALF, y);
    let layer = tree.pen.layers.words;
    let name = words::short(&load.id);
    tree.pen
        .begin(layer, &name, NAME, (x + NAMES + 1.5, y + 0.6));
    tree.pen
        .begin(layer, &load.what, SMALL, (x + NAMES + 1.5, y - 3.1));
    figure(tree, load.greatest, (x + FIGURES[0], y));
    figure(tree, load.lowest, (x + FIGURES[1], y));
    if load.standing != LoadStanding::NoLeast {
        figure(tree, load.least, (x + FIGURES[2], y));
    }
    standing(tree, load.standing, (x + STANDING, y));
}

/// A value, or a hatch and a question mark where it is not known.
fn figure<Q: Quantity>(tree: &mut Tree<'_, '_>, value: Option<Q>, (x, y): (f64, f64)) {
    if let Some(value) = value {
        let words = print(value, tree.shown.units);
        tree.pen.end(&words, NAME, (x, y + BASE));
    } else {
        tree.pen.end("?", NAME, (x - 7.4, y + BASE));
        let layer = tree.pen.layers.not_known;
        tree.pen.mark(layer, symbols::unknown(), x - 3.2, y);
    }
}

fn standing(tree: &mut Tree<'_, '_>, standing: LoadStanding, (x, y): (f64, f64)) {
    let layers = tree.pen.layers;
    let (mark, layer, word) = match standing {
        LoadStanding::Holds => (None, layers.words, "holds"),
        LoadStanding::NoLeast => (None, layers.words, "–"),
        LoadStanding::Unknown => (None, layers.words, "unknown"),
        LoadStanding::NotSure => (Some(symbols::not_sure()), layers.symbols, "not sure"),
        LoadStanding::TooLow => (Some(symbols::fails()), layers.fails, "too low"),
    };
    if let Some(mark) = mark {
        tree.pen.mark(layer, mark, x + 1.4, y);
    }
    tree.pen.begin(layer, word, NAME, (x + 4.0, y + BASE));
}

/// The symbol of a supply, by what comes in and what goes out.
pub(super) fn supply(shown: Shown<'_>, source: &ShownSource) -> Symbol {
    let feeding = source
        .fed_by
        .as_ref()
        .and_then(|name| shown.power.sources.iter().find(|other| other.id == *name));
    let input = match feeding {
        Some(feeding) if feeding.kind == SourceKind::Mains => Flow::Alternating,
        Some(feeding) if feeding.gives == Some(CurrentKind::Alternating) => Flow::Alternating,
        Some(_) | None => Flow::Direct,
    };
    let output = match source.gives {
        Some(CurrentKind::Alternating) => Flow::Alternating,
        _ => Flow::Direct,
    };
    match (source.kind, input, output) {
        (SourceKind::Charger, _, _) => {
            symbols::converter("charge controller", Flow::Direct, Flow::Direct)
        }
        (SourceKind::Battery, _, _) => symbols::battery(),
        (SourceKind::Mains, _, _) => symbols::mains(),
        (_, Flow::Alternating, Flow::Direct) => {
            symbols::converter("power supply, alternating to direct", input, output)
        }
        (_, Flow::Direct, Flow::Direct) => {
            symbols::converter("converter, direct to direct", input, output)
        }
        (_, _, Flow::Alternating) => {
            symbols::converter("supply that gives alternating current", input, output)
        }
    }
}
