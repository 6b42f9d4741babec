//! Which part suits: every entry of the parts files tried in place of what is there, and every answer asked again.

use super::tried::{Candidate, Tried};
use crate::answers::findings;
use serde::Serialize;
use site::{Exchange, Id, Origin, Price, Site, SourceFile, load, load_exchanged, part_names};

quantity::words! {
    /// What can be chosen among the entries of the parts files.
    pub enum Choosable {
        /// The drive with its controller.
        Operator = "operator",
        /// Wheels or trolleys, in sets.
        Wheels = "wheels",
        /// Hinges, in sets.
        Hinges = "hinges",
        /// The posts of a gate; not the old pillars.
        Post = "post",
    }
}

/// The parts for one thing, in order: those that hold every finding first, the cheapest of them first.
#[derive(Debug, Clone, Serialize)]
pub struct Choice {
    /// The thing: `operator "drive"`.
    pub thing: String,
    /// The part that it is bought as now.
    pub now: Option<String>,
    /// The parts in order.
    pub candidates: Vec<Candidate>,
    /// How many findings hang on the choice.
    pub findings: usize,
    /// How many others fail or are open whatever is chosen.
    pub open_anyway: usize,
}

/// Tries every part of a kind for each thing of the site that is one; nothing when the site cannot be read.
pub fn choose(main: &SourceFile, parts: &[SourceFile], what: Choosable) -> Option<Vec<Choice>> {
    let site = load(main.clone(), parts.to_vec()).site?;
    let names = part_names(parts, &what.to_string());
    let things = things(&site, what);
    Some(
        things
            .into_iter()
            .map(|thing| choice(main, parts, what, thing, &names))
            .collect(),
    )
}

/// A thing of the site that a part can be chosen for.
struct Thing {
    path: String,
    now: Option<String>,
    price: Option<Price>,
}

fn things(site: &Site, what: Choosable) -> Vec<Thing> {
    let mut things = Vec::new();
    let mut add = |origin: &Origin, part: Option<&Id>, price: Option<Price>| {
        things.push(Thing {
            path: origin.path.clone(),
            now: part.map(ToString::to_string),
            price,
        });
    };
    let gates = site.gate.iter();
    match what {
        Choosable::Operator => site
            .operator
            .iter()
            .for_each(|one| add(&one.origin, one.part.as_ref(), one.price)),
        Choosable::Wheels => gates
            .filter_map(|gate| gate.wheels.as_ref())
            .for_each(|one| add(&one.origin, one.part.as_ref(), one.price)),
        Choosable::Hinges => gates
            .flat_map(|gate| &gate.leaf)
            .filter_map(|leaf| leaf.hinges.as_ref())
            .for_each(|one| add(&one.origin, one.part.as_ref(), one.price)),
        Choosable::Post => gates
            .flat_map(|gate| &gate.post)
            .filter(|post| post.pillar.is_none())
            .for_each(|one| add(&one.origin, one.part.as_ref(), one.price)),
    }
    things
}

/// What the thing with this path costs.
fn price(site: &Site, what: Choosable, path: &str) -> Option<Price> {
    let mut things = things(site, what).into_iter();
    things.find(|thing| thing.path == path)?.price
}

fn choice(
    main: &SourceFile,
    parts: &[SourceFile],
    what: Choosable,
    thing: Thing,
    names: &[String],
) -> Choice {
    // What is there now stays as it is, with what was measured of it on site.
    let read = |part: Option<&String>| {
        if part.is_some() && part == thing.now.as_ref() {
            return load(main.clone(), parts.to_vec()).site;
        }
        let exchange = Exchange {
            path: thing.path.clone(),
            part: part.cloned(),
        };
        load_exchanged(main.clone(), parts.to_vec(), &exchange).site
    };
    let bare = read(None).map(|site| findings(&site)).unwrap_or_default();
    let mut tried: Vec<Tried> = names
        .iter()
        .filter_map(|name| {
            let site = read(Some(name))?;
            let price = price(&site, what, &thing.path);
            Some(Tried::new(name, price, findings(&site), &bare))
        })
        .collect();
    tried.sort_by(Tried::in_order);
    let first = tried.first();
    Choice {
        findings: first.map_or(0, |first| first.hanging),
        open_anyway: first.map_or(0, |first| first.open_anyway),
        thing: thing.path,
        now: thing.now,
        candidates: tried.into_iter().map(|tried| tried.candidate).collect(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        parts = ["parts.toml"]
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        run_timer = "45 s"
        wanted_opening_time = "30 s"
        hold_time = "20 s"
        [gate.motion]
        cruise_speed = "1 ft/s"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "6 in"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        mass = "700 lb"
        [[operator]]
        id = "drive"
        part = "weak"
        gate = "main"
        rated_mass = "2000 lb"
        supply = "psu"
        [[supply]]
        id = "psu"
        kind = "power supply"
        [[battery]]
        id = "battery"
        supply = "psu"
    "#;

    const PARTS: &str = r#"
        [[operator]]
        id = "weak"
        rated_mass = "600 lb"
        rated_length = "26 ft"
        battery_speed = "85 %"
        price = "900.00 USD"
        [[operator]]
        id = "costly"
        rated_mass = "1500 lb"
        rated_length = "30 ft"
        battery_speed = "85 %"
        price = "1900.00 USD"
        [[operator]]
        id = "slow"
        rated_mass = "1500 lb"
        rated_length = "30 ft"
        battery_speed = "20 %"
        price = "700.00 USD"
        [[operator]]
        id = "right"
        rated_mass = "1500 lb"
        rated_length = "30 ft"
        battery_speed = "85 %"
        price = "1400.00 USD"
    "#;

    fn chosen() -> Choice {
        let file = |name: &str, text: &str| SourceFile {
            name: name.to_owned(),
            text: text.to_owned(),
        };
        let parts = [file("parts.toml", PARTS)];
        choose(&file("site.toml", SITE), &parts, Choosable::Operator)
            .unwrap()
            .remove(0)
    }

    #[test]
    fn what_fails_least_comes_first_and_the_cheapest_of_those() {
        let choice = chosen();
        assert_eq!(choice.thing, "operator \"drive\"");
        assert_eq!(choice.now.as_deref(), Some("weak"));
        let order: Vec<&str> = choice
            .candidates
            .iter()
            .map(|one| one.part.as_str())
            .collect();
        let place = |name: &str| order.iter().position(|one| *one == name).unwrap();
        assert!(place("right") < place("costly"), "{order:?}");
        assert!(place("costly") < place("slow"), "{order:?}");
    }

    #[test]
    fn what_fails_says_why() {
        let choice = chosen();
        let slow = choice
            .candidates
            .iter()
            .find(|one| one.part == "slow")
            .unwrap();
        assert!(
            slow.failing
                .iter()
                .any(|finding| finding.question == "motion-travel-time")
        );
    }
}
