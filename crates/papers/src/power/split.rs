//! The diagram taken apart where it is wider or longer than a sheet: each piece goes on from where the one before ended.

use super::node::{Kind, Node, Shown};

/// Sheets of trees, each sheet of no more rows than asked, each tree no wider (mm).
pub(super) fn sheets(
    shown: Shown<'_>,
    roots: Vec<Node>,
    (rows, width): (usize, f64),
) -> Vec<Vec<Node>> {
    let mut pieces = Vec::new();
    for root in roots {
        let mut narrow = Vec::new();
        let first = cut(root, shown, (0.0, 0.0), width, &mut narrow);
        narrow.insert(0, first);
        for tree in narrow {
            pieces.extend(split(tree, shown, rows));
        }
    }
    let mut sheets: Vec<Vec<Node>> = Vec::new();
    let mut left = 0;
    for piece in pieces {
        let needs = piece.rows(shown) + 1;
        match sheets.last_mut() {
            Some(sheet) if needs <= left => sheet.push(piece),
            _ => {
                sheets.push(vec![piece]);
                left = rows + 1;
            }
        }
        left = left.saturating_sub(needs);
    }
    sheets
}

/// A tree no wider than asked: what would reach farther goes on as a tree of its own.
fn cut(
    mut node: Node,
    shown: Shown<'_>,
    (used, before): (f64, f64),
    width: f64,
    out: &mut Vec<Node>,
) -> Node {
    let own = node.width(shown, before);
    let is_cable = matches!(node.kind, Kind::Cable(_));
    let after = if is_cable { own } else { 0.0 };
    let used = used + own;
    node.next = std::mem::take(&mut node.next)
        .into_iter()
        .map(|child| {
            let far = used + stretch(&child, shown, after) > width;
            let may = child.kind.is_named() && !matches!(node.kind, Kind::From(_));
            if !(may && far) {
                return cut(child, shown, (used, after), width, out);
            }
            let name = child.name(shown);
            let mut from = Node::leaf(Kind::From(name.clone()));
            from.next.push(child);
            let place = out.len();
            let tree = cut(from, shown, (0.0, 0.0), width, out);
            out.insert(place, tree);
            Node::leaf(Kind::Onward(name))
        })
        .collect();
    node
}

/// How far a node reaches up to the next that could go on elsewhere (mm).
fn stretch(node: &Node, shown: Shown<'_>, before: f64) -> f64 {
    let own = node.width(shown, before);
    let after = if matches!(node.kind, Kind::Cable(_)) {
        own
    } else {
        0.0
    };
    let next = node.next.iter().map(|child| {
        if child.kind.is_named() {
            0.0
        } else {
            stretch(child, shown, after)
        }
    });
    own + next.fold(0.0, f64::max)
}

/// Trees of no more rows than asked, each but the first going on from a name.
fn split(mut node: Node, shown: Shown<'_>, rows: usize) -> Vec<Node> {
    if node.rows(shown) <= rows {
        return vec![node];
    }
    let children = std::mem::take(&mut node.next);
    let empty = Node {
        continued: true,
        ..node.clone()
    };
    let (mut trees, mut later) = (vec![node], Vec::new());
    for child in children {
        let mut parts = split(child, shown, rows).into_iter();
        let Some(first) = parts.next() else { continue };
        let taken: usize = trees.last().map_or(0, |tree| {
            tree.next.iter().map(|node| node.rows(shown)).sum()
        });
        if taken > 0 && taken + first.rows(shown) > rows {
            trees.push(empty.clone());
        }
        if let Some(tree) = trees.last_mut() {
            tree.next.push(first);
        }
        later.extend(parts);
    }
    trees.extend(later);
    trees
}
