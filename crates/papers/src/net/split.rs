//! The diagram taken apart where it is wider or longer than a sheet: each piece goes on from where the one before ended.

use super::along::{Along, ROWS};
use super::symbols;
use super::view::Thing;

/// What stands on a sheet.
#[derive(Debug, Clone)]
pub(super) enum Piece {
    /// Switches and what is plugged into them.
    Tree(Thing),
    /// A bus along its line.
    Line(Along),
}

impl Piece {
    /// How many rows it takes.
    pub(super) fn rows(&self) -> usize {
        match self {
            Self::Tree(thing) => thing.rows(),
            Self::Line(_) => ROWS,
        }
    }
}

/// Sheets of trees and buses, each sheet of no more rows than asked, each piece no wider (mm).
pub(super) fn sheets(
    roots: Vec<Thing>,
    buses: Vec<Along>,
    (rows, widest): (usize, f64),
) -> Vec<Vec<Piece>> {
    let mut pieces = Vec::new();
    for root in roots {
        let mut narrow = Vec::new();
        let first = cut(root, 0.0, widest, &mut narrow);
        narrow.insert(0, first);
        for tree in narrow {
            pieces.extend(split(tree, rows).into_iter().map(Piece::Tree));
        }
    }
    let lines = buses.into_iter().flat_map(|bus| bus.cut(widest));
    pieces.extend(lines.map(Piece::Line));
    let mut sheets: Vec<Vec<Piece>> = Vec::new();
    let mut left = 0;
    for piece in pieces {
        let needs = piece.rows();
        match sheets.last_mut() {
            Some(sheet) if needs <= left => sheet.push(piece),
            _ => {
                sheets.push(vec![piece]);
                left = rows;
            }
        }
        left = left.saturating_sub(needs);
    }
    sheets
}

/// A tree no wider than asked: what would reach farther goes on as a tree of its own.
fn cut(mut thing: Thing, used: f64, widest: f64, out: &mut Vec<Thing>) -> Thing {
    let far = used + thing.width() + thing.lines();
    thing.next = std::mem::take(&mut thing.next)
        .into_iter()
        .map(|mut child| {
            if child.next.is_empty()
                || far + child.width() + child.lines() + widest_below(&child) <= widest
            {
                return cut(child, far, widest, out);
            }
            let mut onward = Thing {
                symbol: symbols::onward(),
                name: child.name.clone(),
                said: Vec::new(),
                line: child.line.take(),
                next: Vec::new(),
            };
            onward.said.push(super::view::Said::plain(
                "goes on below or on another sheet",
            ));
            let place = out.len();
            let tree = cut(child, 0.0, widest, out);
            out.insert(place, tree);
            onward
        })
        .collect();
    thing
}

/// Widest thing that hangs on another one (mm).
fn widest_below(thing: &Thing) -> f64 {
    thing.next.iter().map(Thing::width).fold(0.0, f64::max)
}

/// Trees of no more rows than asked, each but the first going on from a thing that stands elsewhere already.
fn split(mut thing: Thing, rows: usize) -> Vec<Thing> {
    if thing.rows() <= rows {
        return vec![thing];
    }
    let children = std::mem::take(&mut thing.next);
    let again = Thing {
        symbol: symbols::onward(),
        said: vec![super::view::Said::plain("continued")],
        line: None,
        ..thing.clone()
    };
    let (mut trees, mut later) = (vec![thing], Vec::new());
    for child in children {
        let mut parts = split(child, rows).into_iter();
        let Some(first) = parts.next() else { continue };
        let taken: usize = trees
            .last()
            .map_or(0, |tree| tree.next.iter().map(Thing::rows).sum());
        if taken > 0 && taken + first.rows() > rows {
            trees.push(again.clone());
        }
        if let Some(tree) = trees.last_mut() {
            tree.next.push(first);
        }
        later.extend(parts);
    }
    trees.extend(later);
    trees
}
