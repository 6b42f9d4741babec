//! Which keys refer to which sorts of things, and whether what they name is there.

use crate::nearest::{listed, nearest};
use crate::origin::join;
use crate::problem::{Code, Problem, Problems};
use crate::reader::{Named, Reader, Reference};
use crate::source::Source;

/// A key that names another thing: table, key, and the tables in which that thing may stand.
type Rule = (&'static str, &'static str, &'static [&'static str]);

/// Every key that names another thing.
pub(crate) const REFERENCES: &[Rule] = &[
    ("post", "foundation", &["foundation"]),
    ("post", "leaf", &["leaf"]),
    ("stop", "post", &["post"]),
    ("track", "foundation", &["foundation"]),
    ("anchor", "carries", STANDING),
    ("stub_up", "conduit", &["conduit"]),
    ("way_point", "serves", CABLE_ENDS),
    ("way", "from", &["way_point"]),
    ("way", "to", &["way_point"]),
    ("way", "conduits", &["conduit"]),
    ("water_line", "built_for", CABLE_ENDS),
    ("locate", "by_hand", &["foundation"]),
    ("bollard", "foundation", &["foundation"]),
    ("bollard", "guards", GUARDED),
    ("hanging", "leaf", &["leaf"]),
    ("leaf_order", "covering", &["leaf"]),
    ("operator", "gate", &["gate"]),
    ("operator", "leaf", &["leaf"]),
    ("operator", "foundation", &["foundation"]),
    ("operator", "supply", FEEDERS),
    ("behavior", "reset_by", &["device"]),
    ("force_test", "leaf", &["leaf"]),
    ("device", "gate", &["gate"]),
    ("device", "carried_by", &["leaf"]),
    ("device", "enclosure", &["enclosure"]),
    ("device", "supply", FEEDERS),
    ("supply", "enclosure", &["enclosure"]),
    ("supply", "fed_by", FEEDERS),
    ("battery", "supply", &["supply"]),
    ("battery", "enclosure", &["enclosure"]),
    ("solar_panel", "supply", &["supply"]),
    ("cable", "from", CABLE_ENDS),
    ("cable", "to", CABLE_ENDS),
    ("cable", "route", &["conduit"]),
    ("cable", "fuse", &["fuse"]),
    ("device", "fuse", &["fuse"]),
    ("fuse", "enclosure", &["enclosure"]),
    ("fuse", "behind", &["fuse"]),
    ("joint", "enclosure", &["enclosure"]),
    ("climate_control", "heater_supply", FEEDERS),
    ("entry", "conduits", &["conduit"]),
    ("entry", "cables", &["cable"]),
    ("far_end", "device", &["device"]),
    ("network", "segment", &["network_segment"]),
    ("network", "plugged_into", &["device"]),
    ("stream", "to", &["device"]),
    ("network", "time_from", &["device"]),
    ("decision", "by", &["device"]),
    ("crossing", "from", &["network_segment"]),
    ("crossing", "to", &["network_segment"]),
    ("time_keeping", "source", &["device"]),
    ("near", "device", &["device"]),
    ("far", "device", &["device"]),
    ("parked", "vehicle", &["vehicle"]),
    ("head", "device", &["device"]),
    ("disconnect", "of", &["supply", "battery", "solar_panel"]),
    ("electrode", "enclosure", &["enclosure"]),
    ("bond", "joins", BONDED),
    ("surge", "cables", &["cable"]),
    ("surge", "after", &["device"]),
    ("release", "operator", &["operator"]),
    ("walk_gate", "gate", &["gate"]),
    ("foot_route", "gate", &["gate"]),
    ("foot_stop", "gate", &["gate"]),
    ("foot_stop", "device", &["device"]),
    ("opener", "gate", &["gate"]),
    ("opener", "device", &["device"]),
    ("lane", "gate", &["gate"]),
    ("driver", "vehicle", &["vehicle"]),
    ("people", "gate", &["gate"]),
    ("interlock", "with", &["gate", "walk_gate"]),
    ("remote", "gate", &["gate"]),
    ("remote", "through", &["device"]),
    ("offer", "there", LEFT_OUT),
    ("option", "without", LEFT_OUT),
    ("bus", "cable", &["cable"]),
    ("node", "device", &["device"]),
    ("answering", "opens_by", &["remote"]),
    ("sign", "gate", &["gate"]),
    ("sign", "beside", &["device"]),
    ("loop_setup", "tried", &["vehicle"]),
    ("recording", "masked", &["boundary"]),
    ("recording", "notice", &["sign"]),
    ("task", "after", &["task"]),
    ("task", "loads", &["task"]),
    ("task", "covers", &["task"]),
    ("task", "zone", &["work_zone"]),
    ("leaves", "until", &["task"]),
    ("work_zone", "lane", &["lane"]),
    ("terminals", "on", WIRED),
    ("wiring", "cable", &["cable"]),
    ("joined", "gate", &["gate"]),
    ("joined", "bar_stock", &["bar_stock"]),
];

/// The tables of the things that a key can name.
pub(crate) fn targets(owner: &str, key: &str) -> Vec<String> {
    let rule = REFERENCES
        .iter()
        .find(|(table, name, _)| *table == owner && *name == key);
    let tables = rule.map_or(&[][..], |(_, _, tables)| tables);
    tables.iter().map(|table| (*table).to_owned()).collect()
}

/// What an offer can leave out, or find there.
const LEFT_OUT: &[&str] = &[
    "device",
    "operator",
    "enclosure",
    "supply",
    "battery",
    "solar_panel",
    "cable",
    "conduit",
    "bollard",
    "sign",
    "foundation",
    "post",
    "leaf",
    "fuse",
    "cover",
    "disconnect",
    "electrode",
];

/// What can stand on a plate.
const STANDING: &[&str] = &["post", "operator", "bollard", "device", "enclosure"];

/// Metal that a hand can touch.
const BONDED: &[&str] = &[
    "operator",
    "leaf",
    "post",
    "enclosure",
    "device",
    "nearby",
    "bollard",
];

/// What a bollard can guard.
const GUARDED: &[&str] = &[
    "post",
    "operator",
    "device",
    "enclosure",
    "supply",
    "leaf",
    "nearby",
];

/// What can feed something: an injector or a switch is a device, an operator has terminals for accessories.
const FEEDERS: &[&str] = &["supply", "battery", "device", "operator"];

/// What has terminals.
const WIRED: &[&str] = &[
    "enclosure",
    "device",
    "operator",
    "supply",
    "battery",
    "solar_panel",
    "joint",
];

/// What a cable can end at.
const CABLE_ENDS: &[&str] = &[
    "device",
    "operator",
    "supply",
    "battery",
    "enclosure",
    "solar_panel",
    "joint",
];

/// Reports names that are used twice and names that nothing has.
pub(crate) fn check(reader: &mut Reader<'_>) {
    let mut problems = Problems::default();
    doubled(reader.sources, &reader.named, &mut problems);
    for reference in &reader.references {
        resolve(reader.sources, &reader.named, reference, &mut problems);
    }
    reader.problems.append(problems);
}

/// Reports each name that an earlier thing has already.
fn doubled(sources: &[Source], named: &[Named], problems: &mut Problems) {
    for (index, later) in named.iter().enumerate() {
        let Some(first) = named[..index].iter().find(|first| first.id == later.id) else {
            continue;
        };
        let Some(source) = sources
            .iter()
            .find(|source| source.name == later.place.file)
        else {
            continue;
        };
        let what = format!("two things are called `{}`", later.id);
        let problem = Problem::wrong(source, &later.place.span, Code::DoubledId, what)
            .path(later.path.clone())
            .also(source, &first.place, &first.path)
            .expected("a name that nothing else on the site has")
            .write(format!("id = \"{}\"", free_name(named, later.id.as_str())));
        problems.push(problem);
    }
}

/// The name with the first number behind it that nothing has.
fn free_name(named: &[Named], name: &str) -> String {
    let free = |candidate: &String| named.iter().all(|other| other.id != candidate.as_str());
    (2..named.len() + 3)
        .map(|number| format!("{name}-{number}"))
        .find(free)
        .unwrap_or_default()
}

/// Reports a reference to nothing, or to a thing of the wrong sort.
fn resolve(sources: &[Source], named: &[Named], reference: &Reference, problems: &mut Problems) {
    let Some((_, key, sorts)) = REFERENCES
        .iter()
        .find(|(owner, key, _)| *owner == reference.owner && *key == reference.key)
    else {
        return;
    };
    let found: Vec<&Named> = named
        .iter()
        .filter(|named| named.id == reference.id)
        .collect();
    if found.iter().any(|named| sorts.contains(&named.owner)) {
        return;
    }
    let Some(source) = sources
        .iter()
        .find(|source| source.name == reference.place.file)
    else {
        return;
    };
    let wanted = alternatives(sorts);
    let (code, what) = match found.first() {
        Some(other) => (
            Code::WrongSort,
            format!(
                "`{}` is {}, where `{key}` wants {wanted}",
                reference.id,
                with_article(other.owner)
            ),
        ),
        None => (
            Code::UnknownId,
            format!("nothing here is called `{}`", reference.id),
        ),
    };
    let names: Vec<&str> = named
        .iter()
        .filter(|n| sorts.contains(&n.owner))
        .map(|n| n.id.as_str())
        .collect();
    let mut problem =
        Problem::wrong(source, &reference.place.span, code, what).path(join(&reference.path, key));
    problem = if names.is_empty() {
        problem.expected(format!("the name of {wanted}; the site has none yet"))
    } else {
        problem.expected(format!("the name of {wanted}: {}", listed(&names)))
    };
    if let Some(near) = nearest(reference.id.as_str(), &names) {
        let write = if *key == "route" {
            format!("\"{near}\"")
        } else {
            format!("{key} = \"{near}\"")
        };
        problem = problem.write(write);
    }
    problems.push(problem);
}

/// Sorts of things in a row: a device or an operator.
fn alternatives(sorts: &[&str]) -> String {
    let words: Vec<String> = sorts.iter().map(|sort| with_article(sort)).collect();
    match words.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} or {last}", rest.join(", ")),
        None => String::new(),
    }
}

/// The sort of a thing with its article: an enclosure.
pub(crate) fn with_article(sort: &str) -> String {
    let words = match sort {
        "nearby" => "fixed thing".to_owned(),
        other => other.replace('_', " "),
    };
    let article = if words.starts_with(['a', 'e', 'i', 'o', 'u']) {
        "an"
    } else {
        "a"
    };
    format!("{article} {words}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{PartsFile, Site};
    use crate::overlay::PART_KINDS;
    use crate::record::{Key, Record};
    use crate::schema::Definitions;

    /// The value of a key is a name, or a list of names.
    fn is_name(key: &Key) -> bool {
        let schema = (key.schema)(&mut Definitions::default());
        [&schema["$ref"], &schema["items"]["$ref"]]
            .iter()
            .any(|name| **name == "#/$defs/Id")
    }

    /// Every key that refers to something, with the table that it stands in.
    fn referring(
        owner: &'static str,
        keys: &'static [Key],
        found: &mut Vec<(&'static str, &'static str)>,
    ) {
        for key in keys {
            if is_name(key) && !["id", "part"].contains(&key.name) {
                found.push((owner, key.name));
            }
            if let Some(below) = (key.keys)() {
                referring(key.name, below, found);
            }
        }
    }

    /// Every table that a site can have.
    fn tables(keys: &'static [Key], found: &mut Vec<&'static str>) {
        for key in keys {
            if let Some(below) = (key.keys)() {
                found.push(key.name);
                tables(below, found);
            }
        }
    }

    #[test]
    fn every_name_that_refers_to_something_is_looked_up() {
        let mut found = Vec::new();
        referring("", Site::KEYS, &mut found);
        let mut listed: Vec<_> = REFERENCES
            .iter()
            .map(|(owner, key, _)| (*owner, *key))
            .collect();
        found.sort_unstable();
        listed.sort_unstable();
        assert_eq!(listed, found);
    }

    #[test]
    fn the_sorts_that_are_named_are_tables() {
        let mut found = Vec::new();
        tables(Site::KEYS, &mut found);
        let sorts = REFERENCES.iter().flat_map(|(_, _, sorts)| sorts.iter());
        for sort in sorts.chain(PART_KINDS) {
            assert!(found.contains(sort), "{sort}");
        }
    }

    #[test]
    fn a_key_with_a_part_is_a_kind_of_part() {
        let takes_part =
            |key: &&Key| (key.keys)().is_some_and(|keys| keys.iter().any(|key| key.name == "part"));
        let kinds: Vec<&str> = PartsFile::KEYS
            .iter()
            .filter(takes_part)
            .map(|key| key.name)
            .collect();
        assert_eq!(kinds, PART_KINDS);
        let mut of_site = Site::KEYS.iter().filter(takes_part);
        assert!(of_site.all(|key| PART_KINDS.contains(&key.name)));
    }
}
