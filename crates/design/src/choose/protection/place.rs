//! Where protective devices may go at a sliding leaf: beams on either side, near the leaf and farther out, at several
//! heights; fields on either side; edges at both ends of the leaf.

use quantity::{Length, Quantity as _, UnitSystem};
use site::DeviceKind;

/// What bounds the places (m).
#[derive(Debug, Clone, Copy)]
pub(super) struct Bounds {
    /// Where the leaf's latching end is when it is closed and when it is open.
    pub(super) closed: f64,
    pub(super) open: f64,
    /// Where its tail is when it is closed and when it is open.
    pub(super) tail: (f64, f64),
    /// Half the thickness of the leaf.
    pub(super) half: f64,
    /// Height of its bottom and its top.
    pub(super) bottom: f64,
    pub(super) top: f64,
}

/// One place for one entry of the parts files.
#[derive(Debug, Clone)]
pub(super) struct Placed {
    /// Name of the device on the site.
    pub(super) id: String,
    /// What it is and where, in words.
    pub(super) words: String,
    /// Its table in the site file.
    pub(super) lines: Vec<String>,
}

/// Heights of beams above the ground (m): 6, 12, 21, 27 1/2 and 40 in, or 150, 300, 500, 700 and 1000 mm.
pub(super) fn heights(units: UnitSystem) -> [f64; 5] {
    match units {
        UnitSystem::UsCustomary => [0.1524, 0.3048, 0.5334, 0.6985, 1.016],
        UnitSystem::Si => [0.15, 0.3, 0.5, 0.7, 1.0],
    }
}

/// Distances of beams from the face of the leaf (m): within reach of the leaf, a step away, and where a walker is stopped for.
pub(super) fn distances(units: UnitSystem) -> [f64; 3] {
    match units {
        UnitSystem::UsCustomary => [0.0889, 0.9144, 1.9812],
        UnitSystem::Si => [0.09, 0.9, 2.0],
    }
}

/// Depth of a field (m): 5 ft, or 1.5 m.
pub(super) const FIELD: f64 = 1.5;

/// Height of a level field (m): 1 ft, or 300 mm.
pub(super) const FIELD_UP: f64 = 0.3;

/// The places for one entry of a kind, at a gate with its leaf.
pub(super) fn places(
    draft: &Draft<'_>,
    kind: DeviceKind,
    leaf: &str,
    bounds: &Bounds,
) -> Vec<Placed> {
    match kind {
        DeviceKind::ThroughBeam | DeviceKind::Reflective => beams(draft, bounds),
        DeviceKind::AreaScanner => fields(draft, bounds),
        DeviceKind::ContactEdge => edges(draft, leaf, bounds),
        _ => Vec::new(),
    }
}

/// What every place of an entry has in common.
pub(super) struct Draft<'a> {
    /// The entry of the parts files.
    pub(super) entry: &'a str,
    pub(super) gate: &'a str,
    pub(super) units: UnitSystem,
}

impl Draft<'_> {
    pub(super) fn placed(
        &self,
        id: String,
        words: String,
        guards: &[&str],
        more: Vec<String>,
    ) -> Placed {
        let guards: Vec<String> = guards.iter().map(|one| format!("\"{one}\"")).collect();
        let mut lines = vec![
            "[[device]]".to_owned(),
            format!("id = \"{id}\""),
            format!("part = \"{}\"", self.entry),
            format!("gate = \"{}\"", self.gate),
            format!("guards = [{}]", guards.join(", ")),
        ];
        lines.extend(more);
        Placed { id, words, lines }
    }

    /// A length as printed.
    pub(super) fn shown(&self, length: f64) -> String {
        quantity::print(Length::from_base(length), self.units)
    }

    pub(super) fn position(&self, key: &str, [x, y, z]: [f64; 3]) -> String {
        format!("{key} = {}", self.corner([x, y, z]))
    }

    pub(super) fn corner(&self, place: [f64; 3]) -> String {
        let [x, y, z] = place.map(|one| self.shown(one));
        format!("[\"{x}\", \"{y}\", \"{z}\"]")
    }
}

/// Both sides of the gate line: sign of y, and its name.
pub(super) const SIDES: [(f64, &str); 2] = [(-1.0, "road"), (1.0, "property")];

/// The two ways: what a device guards, the stretch that it watches.
fn ways(bounds: &Bounds) -> [(&'static str, f64, f64); 2] {
    [
        ("closing", bounds.closed, bounds.open),
        ("opening", bounds.tail.0, bounds.tail.1),
    ]
}

fn beams(draft: &Draft<'_>, bounds: &Bounds) -> Vec<Placed> {
    let mut placed = Vec::new();
    for (guards, from, to) in ways(bounds) {
        let watch = Watch {
            guards: &[guards],
            short: guards,
            when: &format!("while it is {guards}"),
        };
        beams_beside(draft, (bounds.half, from, to), &watch, &mut placed);
    }
    placed
}

/// When a device acts: the ways of the leaf, as they are written, as part of a name, in words.
pub(super) struct Watch<'w> {
    pub(super) guards: &'w [&'w str],
    pub(super) short: &'w str,
    pub(super) when: &'w str,
}

/// Beams along the gate line on either side of a leaf with half its thickness, from end to end.
pub(super) fn beams_beside(
    draft: &Draft<'_>,
    (half, from, to): (f64, f64, f64),
    watch: &Watch<'_>,
    placed: &mut Vec<Placed>,
) {
    for (sign, side) in SIDES {
        for distance in distances(draft.units) {
            for height in heights(draft.units) {
                let y = sign * (half + distance);
                let number = placed.len() + 1;
                let id = format!("{}-{}-{side}-{number}", draft.entry, watch.short);
                let words = format!(
                    "beam on the {side} side, {} from the leaf, {} above the ground, {}",
                    draft.shown(distance),
                    draft.shown(height),
                    watch.when
                );
                let more = vec![
                    draft.position("at", [to, y, height]),
                    draft.position("to", [from, y, height]),
                ];
                placed.push(draft.placed(id, words, watch.guards, more));
            }
        }
    }
}

fn fields(draft: &Draft<'_>, bounds: &Bounds) -> Vec<Placed> {
    let mut placed = Vec::new();
    for (guards, from, to) in ways(bounds) {
        for (sign, side) in SIDES {
            let (near, far) = (
                sign * (bounds.half + 0.05),
                sign * (bounds.half + 0.05 + FIELD),
            );
            let id = format!("{}-{guards}-{side}", draft.entry);
            let words =
                format!("field on the {side} side along the leaf's way, while it is {guards}");
            let corners = [[from, near], [to, near], [to, far], [from, far]]
                .map(|[x, y]| draft.corner([x, y, FIELD_UP]));
            let more = vec![
                draft.position("at", [to, near, FIELD_UP]),
                format!("field = [{}]", corners.join(", ")),
            ];
            placed.push(draft.placed(id, words, &[guards], more));
        }
    }
    placed
}

fn edges(draft: &Draft<'_>, leaf: &str, bounds: &Bounds) -> Vec<Placed> {
    let ends = [
        ("closing", "leading", bounds.closed),
        ("opening", "trailing", bounds.tail.0),
    ];
    ends.map(|(guards, end, x)| {
        let id = format!("{}-{end}", draft.entry);
        let words = format!("edge on the {end} end of the leaf, its full height");
        let more = vec![
            format!("carried_by = \"{}\"", leaf),
            draft.position("at", [x, 0.0, bounds.bottom]),
            draft.position("to", [x, 0.0, bounds.top]),
        ];
        draft.placed(id, words, &[guards], more)
    })
    .to_vec()
}
