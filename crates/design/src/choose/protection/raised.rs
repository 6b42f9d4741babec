//! Where protective devices may go at a leaf that rises: fields on either side of it, beams along it, an edge below it.

use super::place::{Draft, FIELD_UP, Placed, SIDES, Watch, beams_beside};
use quantity::Quantity as _;
use sim::walk::{RisingLeaf, RisingWorld, Toward};
use site::DeviceKind;

/// How far a field goes on beyond the free end and behind the pivot line, and a beam beyond either (m).
const BEYOND: f64 = 0.75;
const BEHIND: f64 = 0.4;
/// Depths of a field (m): a step, and where a walker is stopped for.
const DEEP: [f64; 2] = [1.5, 3.0];
/// How far an edge keeps from the pivot line (m).
const FROM_PIVOT: f64 = 0.1;
/// A field keeps so far from a closed leaf that comes down to it (m).
const CLEAR: f64 = 0.05;

/// What a device may guard: mostly a leaf that comes down; one that goes up may lift who is above it.
const WATCHES: [Watch<'static>; 2] = [
    Watch {
        guards: &["closing"],
        short: "closing",
        when: "while it is closing",
    },
    Watch {
        guards: &["opening", "closing"],
        short: "both",
        when: "both ways",
    },
];

/// The places for one entry of a kind, at a leaf with its name.
pub(super) fn places(
    draft: &Draft<'_>,
    kind: DeviceKind,
    world: &RisingWorld,
    name: &str,
) -> Vec<Placed> {
    let ground = Ground::of(&world.leaf);
    match kind {
        DeviceKind::ThroughBeam | DeviceKind::Reflective => beams(draft, &ground),
        DeviceKind::AreaScanner => fields(draft, &ground),
        DeviceKind::ContactEdge => vec![edge(draft, &ground, name)],
        _ => Vec::new(),
    }
}

/// The closed leaf (m).
struct Ground {
    /// Its pivot line, or the end at the greater x where it is lifted.
    pivot: f64,
    /// Its free end, or the end at the smaller x.
    tip: f64,
    /// Where it begins.
    heel: f64,
    /// Height of its underside.
    low: f64,
    half: f64,
}

impl Ground {
    fn of(leaf: &RisingLeaf) -> Self {
        match leaf {
            RisingLeaf::Turning(leaf) => {
                let sign = match leaf.toward {
                    Toward::Greater => 1.0,
                    Toward::Smaller => -1.0,
                };
                let pivot = leaf.pivot.base();
                Self {
                    pivot,
                    tip: pivot + sign * leaf.length.base(),
                    heel: pivot + sign * (leaf.heel.base().max(0.0) + FROM_PIVOT),
                    low: (leaf.height - leaf.below).base(),
                    half: 0.5 * leaf.thickness.base(),
                }
            }
            RisingLeaf::Lifting(leaf) => Self {
                pivot: leaf.to.base(),
                tip: leaf.from.base(),
                heel: leaf.to.base(),
                low: leaf.closed.base(),
                half: 0.5 * leaf.thickness.base(),
            },
        }
    }

    /// From beyond the free end to so far behind the pivot line.
    fn along(&self, beyond: f64, behind: f64) -> (f64, f64) {
        let sign = (self.pivot - self.tip).signum();
        (self.tip - sign * beyond, self.pivot + sign * behind)
    }
}

/// Level fields: below an arm they begin at the gate line, so that whoever is under it is seen.
fn fields(draft: &Draft<'_>, ground: &Ground) -> Vec<Placed> {
    let (from, to) = ground.along(BEYOND, BEHIND);
    let near = if ground.low > FIELD_UP + CLEAR {
        0.0
    } else {
        ground.half + CLEAR
    };
    let mut placed = Vec::new();
    for (sign, side) in SIDES {
        for deep in DEEP {
            for watch in &WATCHES {
                let (near, far) = (sign * near, sign * (near + deep));
                let corners = [[from, near], [to, near], [to, far], [from, far]]
                    .map(|[x, y]| draft.corner([x, y, FIELD_UP]));
                let more = vec![
                    draft.position("at", [to, sign * (ground.half + CLEAR), FIELD_UP]),
                    format!("field = [{}]", corners.join(", ")),
                ];
                let id = format!(
                    "{}-{}-{side}-{}",
                    draft.entry,
                    watch.short,
                    placed.len() + 1
                );
                let words = format!(
                    "level field on the {side} side, {} deep, from beyond the free end to behind the pivot, {}",
                    draft.shown(deep),
                    watch.when
                );
                placed.push(draft.placed(id, words, watch.guards, more));
            }
        }
    }
    placed
}

/// Beams along the gate line, on either side.
fn beams(draft: &Draft<'_>, ground: &Ground) -> Vec<Placed> {
    let (from, to) = ground.along(BEYOND, BEHIND);
    let mut placed = Vec::new();
    for watch in &WATCHES {
        beams_beside(draft, (ground.half, from, to), watch, &mut placed);
    }
    placed
}

/// An edge along the whole underside.
fn edge(draft: &Draft<'_>, ground: &Ground, name: &str) -> Placed {
    let more = vec![
        format!("carried_by = \"{name}\""),
        draft.position("at", [ground.heel, 0.0, ground.low]),
        draft.position("to", [ground.tip, 0.0, ground.low]),
    ];
    draft.placed(
        format!("{}-{name}-under", draft.entry),
        format!("edge along the underside of {name}, while it is closing"),
        &["closing"],
        more,
    )
}
