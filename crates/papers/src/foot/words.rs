//! What the plan for people on foot tells in words: each way, walk gate, control, release and sign.

use super::spots::moves_the_gate;
use quantity::{Length, Measured, UnitSystem};
use site::{Device, FootRoute, GateSide, HandRelease, KeyNeeded, Sign, SignSide, Site, WalkGate};

/// The sentences under the drawing.
pub(super) fn sentences(site: &Site) -> Vec<String> {
    let units = site.site.unit_system();
    let mut said: Vec<String> = Vec::new();
    if !site.walk_gate.is_empty() || !site.foot_route.is_empty() {
        said.push(
            "The gate is for vehicles; people on foot take the ways drawn here and keep out of the path of the leaf."
                .to_owned(),
        );
    }
    said.extend(site.foot_route.iter().map(|route| way(route, units)));
    said.extend(site.walk_gate.iter().map(|gate| walk_gate(gate, units)));
    let working = site.device.iter().filter(|device| moves_the_gate(device));
    let controls: Vec<String> = working.map(control).collect();
    if !controls.is_empty() {
        said.push(format!("Controls: {}.", controls.join("; ")));
    }
    let releases = site.gate.iter().flat_map(|gate| {
        gate.release
            .iter()
            .map(move |one| release(gate.id.as_str(), one))
    });
    said.extend(releases);
    let signs: Vec<String> = site.sign.iter().map(sign).collect();
    if !signs.is_empty() {
        said.push(format!("Signs: {}.", signs.join("; ")));
    }
    let unplaced = unplaced(site);
    if !unplaced.is_empty() {
        said.push(format!(
            "Not drawn, since no position is given: {}.",
            unplaced.join(", ")
        ));
    }
    said
}

fn way(route: &FootRoute, units: UnitSystem) -> String {
    let parts = [
        route.what.as_ref().map(ToString::to_string),
        route.who.map(|who| format!("used by {who}")),
        route.width.as_ref().map(|width| wide(width, "wide", units)),
    ];
    sentence(&format!("Way {}", route.id), parts)
}

fn walk_gate(gate: &WalkGate, units: UnitSystem) -> String {
    let lock = gate.lock.filter(|lock| *lock != site::WalkLock::Unlocked);
    let parts = [
        gate.kind.map(|kind| kind.to_string()),
        gate.clear_width
            .as_ref()
            .map(|width| wide(width, "clear", units)),
        gate.usable.map(|hours| format!("usable {hours}")),
        lock.map(|lock| format!("kept shut by {}", with_article(&lock.to_string()))),
        gate.exit_by
            .map(|by| format!("left by {}", with_article(&by.to_string()))),
    ];
    sentence(&format!("Walk gate {}", gate.id), parts)
}

fn with_article(words: &str) -> String {
    let article = if words.starts_with(['a', 'e', 'i', 'o', 'u']) {
        "an"
    } else {
        "a"
    };
    format!("{article} {words}")
}

fn wide(width: &Measured<Length>, word: &str, units: UnitSystem) -> String {
    format!("{} {word}", quantity::print(width.nominal(), units))
}

/// What a device makes the gate do: `button-yard (open, stop, close while held)`.
fn control(device: &Device) -> String {
    let does = device.does.iter().map(|command| match command.held {
        Some(true) => format!("{} while held", command.what),
        _ => command.what.to_string(),
    });
    let does: Vec<String> = does.collect();
    format!("{} ({})", device.id, does.join(", "))
}

fn release(gate: &str, release: &HandRelease) -> String {
    let lets_go = release
        .operator
        .as_ref()
        .map_or_else(|| format!("gate {gate}"), ToString::to_string);
    let sides: Vec<&str> = release
        .reached_from
        .iter()
        .map(|side| match side {
            GateSide::Inside => "inside",
            GateSide::Outside => "outside",
        })
        .collect();
    let held: Vec<String> = release.held_by.iter().map(ToString::to_string).collect();
    let key = release.key.map(|key| match key {
        KeyNeeded::NoKey => "no key needed".to_owned(),
        KeyNeeded::BesideIt => "its key beside it".to_owned(),
        KeyNeeded::Carried | KeyNeeded::Elsewhere if held.is_empty() => key.to_string(),
        KeyNeeded::Carried => format!("key carried by {}", held.join(", ")),
        KeyNeeded::Elsewhere => format!("key fetched from {}", held.join(", ")),
    });
    let from = (!sides.is_empty()).then(|| format!("reached from {}", sides.join(" and ")));
    sentence(&format!("Release of {lets_go}"), [from, key])
}

fn sign(sign: &Sign) -> String {
    let side = match sign.side {
        Some(SignSide::Outside) => ", read from the road",
        Some(SignSide::Inside) => ", read from the property",
        None => "",
    };
    format!("{} ({}{side})", sign.id, sign.what)
}

/// Names of what has no place.
fn unplaced(site: &Site) -> Vec<String> {
    let gates = site.walk_gate.iter().filter(|gate| gate.at.is_none());
    let signs = site.sign.iter().filter(|sign| sign.at.is_none());
    let releases = site.gate.iter().flat_map(|gate| {
        let missing = gate.release.iter().filter(|release| release.at.is_none());
        missing.map(move |release| {
            let lets_go = release.operator.as_ref().unwrap_or(&gate.id);
            format!("release of {lets_go}")
        })
    });
    let mut names: Vec<String> = gates.map(|gate| gate.id.to_string()).collect();
    names.extend(signs.map(|sign| sign.id.to_string()));
    names.extend(releases);
    names
}

/// A name and what is known of it: `Way path: from the road to the yard, 4 ft wide.`
fn sentence(name: &str, parts: impl IntoIterator<Item = Option<String>>) -> String {
    let known: Vec<String> = parts.into_iter().flatten().collect();
    if known.is_empty() {
        format!("{name}.")
    } else {
        format!("{name}: {}.", known.join(", "))
    }
}
