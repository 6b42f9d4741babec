//! Where protective devices may go at leaves that swing: edges on the free end and on both faces, beams before the leaves,
//! beyond their tips and beside an open leaf, fields on either side.

use super::place::{Draft, FIELD, FIELD_UP, Placed, distances, heights};
use quantity::Quantity as _;
use sim::walk::{Opens, SwingLeaf, SwingWorld, Toward};
use site::DeviceKind;

/// How far a beam goes on beyond the hinge lines (m).
const BESIDE: f64 = 0.5;
/// How far from an open leaf a beam goes along behind it (m).
const BEHIND: f64 = 0.15;
/// How far from the free end an upright edge sits on a face (m).
const FROM_TIP: f64 = 0.05;
/// How far an edge along a face keeps from the hinge line (m).
const FROM_HINGE: f64 = 0.1;
/// How far a field goes on beyond the tips (m).
const BEYOND: f64 = 1.0;

/// The places for one entry of a kind, at leaves with their names.
pub(super) fn places(
    draft: &Draft<'_>,
    kind: DeviceKind,
    world: &SwingWorld,
    names: &[&str],
) -> Vec<Placed> {
    let Some(ground) = Ground::of(world) else {
        return Vec::new();
    };
    let hung = || names.iter().copied().zip(&world.leaves);
    match kind {
        DeviceKind::ThroughBeam | DeviceKind::Reflective => {
            let mut placed = across(draft, &ground);
            placed.extend(hung().flat_map(|(name, leaf)| behind(draft, &ground, (name, leaf))));
            placed
        }
        DeviceKind::AreaScanner => fields(draft, &ground),
        DeviceKind::ContactEdge => hung()
            .flat_map(|(name, leaf)| edges(draft, &ground, (name, leaf)))
            .collect(),
        _ => Vec::new(),
    }
}

/// What the leaves have in common (m).
struct Ground {
    /// From one hinge line to the other, or to the free end.
    from: f64,
    to: f64,
    /// Sign of y of the side into which they open.
    opens: f64,
    /// How far a tip comes from the gate line.
    reach: f64,
    half: f64,
}

impl Ground {
    fn of(world: &SwingWorld) -> Option<Self> {
        let first = world.leaves.first()?;
        let ends = world.leaves.iter().flat_map(|leaf| {
            let pivot = leaf.pivot.x.base();
            [pivot, pivot + along(leaf) * leaf.length.base()]
        });
        let (from, to) = ends.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
            (low.min(at), high.max(at))
        });
        let reach = world.leaves.iter().map(|leaf| leaf.length.base());
        Some(Self {
            from,
            to,
            opens: match first.opens {
                Opens::Inward => 1.0,
                Opens::Outward => -1.0,
            },
            reach: reach.fold(0.0, f64::max),
            half: 0.5 * first.thickness.base(),
        })
    }
}

fn along(leaf: &SwingLeaf) -> f64 {
    match leaf.toward {
        Toward::Greater => 1.0,
        Toward::Smaller => -1.0,
    }
}

/// Both directions.
const BOTH: [&str; 2] = ["opening", "closing"];

/// Beams along the gate line: before the leaves, and beyond the tips of the open ones.
fn across(draft: &Draft<'_>, ground: &Ground) -> Vec<Placed> {
    let mut placed = Vec::new();
    for (sign, start, where_it_is) in [
        (-ground.opens, ground.half, "before the closed leaves"),
        (
            ground.opens,
            ground.reach,
            "beyond the tips of the open leaves",
        ),
    ] {
        for distance in distances(draft.units) {
            for height in heights(draft.units) {
                let y = sign * (start + distance);
                let id = format!("{}-across-{}", draft.entry, placed.len() + 1);
                let words = format!(
                    "beam along the gate line, {} {where_it_is}, {} above the ground, both ways",
                    draft.shown(distance),
                    draft.shown(height)
                );
                let more = vec![
                    draft.position("at", [ground.from - BESIDE, y, height]),
                    draft.position("to", [ground.to + BESIDE, y, height]),
                ];
                placed.push(draft.placed(id, words, &BOTH, more));
            }
        }
    }
    placed
}

/// Beams along an open leaf, on the side to which it opens.
fn behind(draft: &Draft<'_>, ground: &Ground, (name, leaf): (&str, &SwingLeaf)) -> Vec<Placed> {
    let x = leaf.pivot.x.base() - along(leaf) * (ground.half + BEHIND);
    let each = heights(draft.units).into_iter().enumerate();
    each.map(|(at, height)| {
        let id = format!("{}-behind-{name}-{}", draft.entry, at + 1);
        let words = format!(
            "beam behind the open {name}, {} above the ground, while it is opening",
            draft.shown(height)
        );
        let more = vec![
            draft.position("at", [x, ground.opens * BEHIND, height]),
            draft.position("to", [x, ground.opens * (ground.reach + BESIDE), height]),
        ];
        draft.placed(id, words, &["opening"], more)
    })
    .collect()
}

/// Fields on both sides of the gate line; over the way of the leaves the leaf itself has to be left out.
fn fields(draft: &Draft<'_>, ground: &Ground) -> Vec<Placed> {
    let (from, to) = (ground.from - BESIDE, ground.to + BESIDE);
    let sides = [
        (-ground.opens, FIELD, "before", "before the closed leaves"),
        (
            ground.opens,
            ground.reach + BEYOND,
            "swing",
            "over the way of the leaves and beyond it; the scanner has to tell the leaf from people",
        ),
    ];
    sides
        .map(|(sign, deep, short, where_it_is)| {
            let near = sign * (ground.half + 0.05);
            let far = sign * (ground.half + 0.05 + deep);
            let corners = [[from, near], [to, near], [to, far], [from, far]]
                .map(|[x, y]| draft.corner([x, y, FIELD_UP]));
            let more = vec![
                draft.position("at", [to, near, FIELD_UP]),
                format!("field = [{}]", corners.join(", ")),
            ];
            let id = format!("{}-{short}", draft.entry);
            draft.placed(id, format!("field {where_it_is}, both ways"), &BOTH, more)
        })
        .to_vec()
}

/// Edges on one leaf: around its free end, upright beside it on either face, and along either face.
fn edges(draft: &Draft<'_>, ground: &Ground, (name, leaf): (&str, &SwingLeaf)) -> Vec<Placed> {
    let sign = along(leaf);
    let x = |from_hinge: f64| leaf.pivot.x.base() + sign * from_hinge;
    let (tip, length) = (x(leaf.length.base()), leaf.length.base());
    let (bottom, top) = (leaf.bottom.base(), leaf.top.base());
    let on = |short: &str, words: String, guards: &[&str], ends: [[f64; 3]; 2]| {
        let more = vec![
            format!("carried_by = \"{name}\""),
            draft.position("at", ends[0]),
            draft.position("to", ends[1]),
        ];
        draft.placed(
            format!("{}-{name}-{short}", draft.entry),
            words,
            guards,
            more,
        )
    };
    let mut placed = vec![on(
        "end",
        format!("edge around the free end of {name}, its full height"),
        &BOTH,
        [[tip, 0.0, bottom], [tip, 0.0, top]],
    )];
    for (side, guards) in [(ground.opens, "opening"), (-ground.opens, "closing")] {
        let y = side * ground.half;
        let beside = x(length - FROM_TIP);
        placed.push(on(
            &format!("{guards}-upright"),
            format!("upright edge by the free end of {name}, on the face that goes ahead while it is {guards}"),
            &[guards],
            [[beside, y, bottom], [beside, y, top]],
        ));
        for height in heights(draft.units) {
            if height > bottom + 0.06 && height < top {
                let at = placed.len();
                placed.push(on(
                    &format!("{guards}-{at}"),
                    format!(
                        "edge along {name}, {} above the ground, on the face that goes ahead while it is {guards}",
                        draft.shown(height)
                    ),
                    &[guards],
                    [[x(FROM_HINGE), y, height], [tip, y, height]],
                ));
            }
        }
    }
    placed
}
