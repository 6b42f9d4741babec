//! The things on a drawing that a person may point at, with their places.

use draw::Point;
use quantity::print_measured;
use site::{Device, Gate, Id, Position, PostRole, Site};

/// A thing on the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// The path of its record, as an edit names it: `device.reader-in`, `gate.main.post.latch`.
    pub path: String,
    /// Its name on the site.
    pub name: String,
    /// What it is, in words: `through-beam photo-eye`.
    pub kind: String,
    /// The key that holds its place: `at`, or `to` for the other end of a beam, a loop or an edge.
    pub key: &'static str,
    /// Where it is on the drawing, while the gate is closed.
    pub at: Point,
    /// Its place as it is written: along the gate, into the property, up.
    pub place: [String; 3],
    /// It may be moved by hand.
    pub movable: bool,
    /// The leaf that carries it, by its place among the gate's leaves.
    pub carried_by: Option<usize>,
    /// So many things stand at the same place before it in the list.
    pub beside: usize,
}

/// From where a gate is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Seen {
    FromAbove,
    FromRoad,
}

impl Seen {
    pub(super) fn point(self, at: &Position) -> Point {
        match self {
            Self::FromAbove => Point::new(at.x.nominal(), at.y.nominal()),
            Self::FromRoad => Point::new(at.x.nominal(), at.z.nominal()),
        }
    }
}

/// A thing, and the words by which the scenes of papers name it.
#[derive(Debug, Clone)]
pub(super) struct Thing {
    pub(super) item: Item,
    pub(super) title: String,
}

/// Gathers things.
struct Gathering<'s> {
    site: &'s Site,
    seen: Seen,
    things: Vec<Thing>,
}

/// Things nearer to each other than this stand at one place (m).
const SAME_PLACE: f64 = 0.15;

impl Gathering<'_> {
    fn add(&mut self, (path, kind, id): (&str, &str, &Id), at: Option<&Position>, movable: bool) {
        self.add_end((path, kind, id), ("at", at), movable, None);
    }

    fn add_end(
        &mut self,
        (path, kind, id): (&str, &str, &Id),
        (key, at): (&'static str, Option<&Position>),
        movable: bool,
        carried_by: Option<usize>,
    ) {
        let Some(position) = at else { return };
        let units = self.site.site.unit_system();
        let at = self.seen.point(position);
        let near = |thing: &&Thing| {
            use quantity::Quantity as _;
            thing.item.key == "at" && thing.item.at.distance(at).base() < SAME_PLACE
        };
        let beside = self.things.iter().filter(near).count();
        self.things.push(Thing {
            title: format!("{kind} {id}"),
            item: Item {
                path: format!("{path}.{id}"),
                name: id.to_string(),
                kind: kind.to_owned(),
                key,
                at,
                place: [&position.x, &position.y, &position.z].map(|it| print_measured(it, units)),
                movable,
                carried_by,
                beside: if key == "at" { beside } else { 0 },
            },
        });
    }

    fn device(&mut self, device: &Device, gate: &Gate) {
        if device.enclosure.is_some() {
            return;
        }
        let kind = device.kind.to_string();
        let carrier = device.carried_by.as_ref();
        let carried_by = carrier.and_then(|id| gate.leaf.iter().position(|leaf| leaf.id == *id));
        let named = ("device", kind.as_str(), &device.id);
        self.add_end(named, ("at", device.at.as_ref()), true, carried_by);
        self.add_end(named, ("to", device.to.as_ref()), true, carried_by);
    }
}

/// Everything that has a place of its own, seen from above; of the gate's own parts those of one gate.
pub(super) fn things(site: &Site, gate: &Gate, seen: Seen) -> Vec<Thing> {
    let mut all = Gathering {
        site,
        seen,
        things: Vec::new(),
    };
    for it in &site.foundation {
        all.add(("foundation", "foundation", &it.id), it.at.as_ref(), true);
    }
    let posts = format!("gate.{}.post", gate.id);
    for post in &gate.post {
        let kind = format!("{} post", post.role);
        let shown = seen == Seen::FromAbove || post.role != PostRole::Device;
        all.add(
            (&posts, &kind, &post.id),
            post.at.as_ref().filter(|_| shown),
            true,
        );
    }
    for it in &site.bollard {
        all.add(("bollard", "bollard", &it.id), it.at.as_ref(), true);
    }
    for it in &site.cover {
        all.add(("cover", "cover", &it.id), it.at.as_ref(), true);
    }
    for it in &site.enclosure {
        all.add(("enclosure", "enclosure", &it.id), it.at.as_ref(), true);
    }
    for it in &site.operator {
        all.add(("operator", "operator", &it.id), it.at.as_ref(), true);
    }
    for it in site.supply.iter().filter(|it| it.enclosure.is_none()) {
        all.add(("supply", "supply", &it.id), it.at.as_ref(), true);
    }
    for it in &site.solar_panel {
        all.add(("solar_panel", "solar panel", &it.id), it.at.as_ref(), true);
    }
    for device in &site.device {
        all.device(device, gate);
    }
    all.things
}

/// Names of what has neither a place nor an enclosure.
pub(super) fn without_place(site: &Site) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    let enclosures = site.enclosure.iter().map(|it| (&it.id, it.at.is_none()));
    let operators = site.operator.iter().map(|it| (&it.id, it.at.is_none()));
    let devices = site
        .device
        .iter()
        .map(|it| (&it.id, it.at.is_none() && it.enclosure.is_none()));
    let all = enclosures.chain(operators).chain(devices);
    names.extend(
        all.filter(|(_, lacks)| *lacks)
            .map(|(id, _)| id.to_string()),
    );
    names
}
