//! Which part suits: every entry of the parts files tried in place of what is there, and every answer asked again.

use crate::answers::findings;
use crate::check::survey::deciding;
use crate::{Finding, Standing};
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

/// How one part would do.
#[derive(Debug, Clone, Serialize)]
pub struct Candidate {
    /// Its entry in the parts files.
    pub part: String,
    /// What it costs; missing where the entry has no price.
    pub price: Option<String>,
    /// Findings that hang on the choice and fail with it, the worst first.
    pub failing: Vec<Finding>,
    /// Findings that hang on the choice and stay unknown or out of reach with it.
    pub open: Vec<Finding>,
    /// The finding that holds with the least in hand.
    pub tightest: Option<Finding>,
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

/// One part tried.
struct Tried {
    candidate: Candidate,
    /// How many findings hang on the choice.
    hanging: usize,
    /// How many others are open.
    open_anyway: usize,
    hundredths: Option<u64>,
    /// Greatest demand over capacity among the findings that hang on the choice.
    strain: f64,
}

impl Tried {
    fn new(name: &str, price: Option<Price>, all: Vec<Finding>, bare: &[Finding]) -> Self {
        let (hanging, others): (Vec<Finding>, Vec<Finding>) =
            all.into_iter().partition(|finding| hangs(finding, bare));
        let count = hanging.len();
        let greatest = hanging.iter().map(strain).fold(0.0, f64::max);
        let (failing, rest): (Vec<Finding>, Vec<Finding>) = hanging.into_iter().partition(fails);
        let (open, holding): (Vec<Finding>, Vec<Finding>) = rest.into_iter().partition(is_open);
        Self {
            hanging: count,
            open_anyway: others.iter().filter(|finding| is_open(finding)).count(),
            hundredths: price.map(Price::hundredths),
            strain: greatest,
            candidate: Candidate {
                part: name.to_owned(),
                price: price.map(|price| price.to_string()),
                failing,
                open,
                tightest: holding
                    .into_iter()
                    .filter(is_of_figures)
                    .max_by(|a, b| strain(a).total_cmp(&strain(b))),
            },
        }
    }

    /// Those that fail least first, then those that leave least open, then the cheapest, then the least strained.
    fn in_order(a: &Self, b: &Self) -> std::cmp::Ordering {
        let price = |tried: &Self| tried.hundredths.unwrap_or(u64::MAX);
        a.candidate
            .failing
            .len()
            .cmp(&b.candidate.failing.len())
            .then(a.candidate.open.len().cmp(&b.candidate.open.len()))
            .then_with(|| {
                if a.candidate.failing.is_empty() {
                    price(a).cmp(&price(b))
                } else {
                    std::cmp::Ordering::Equal
                }
            })
            .then(a.strain.total_cmp(&b.strain))
    }
}

/// A finding hangs on the choice when taking the data sheet away changes it.
fn hangs(finding: &Finding, bare: &[Finding]) -> bool {
    let same = |other: &&Finding| {
        other.question == finding.question && other.subject.name == finding.subject.name
    };
    finding.question != deciding::QUESTION
        && bare.iter().find(same).is_none_or(|bare| {
            bare.standing != finding.standing
                || bare.sentence != finding.sentence
                || bare.missing != finding.missing
        })
}

/// It compares quantities, not counts of things.
fn is_of_figures(finding: &Finding) -> bool {
    let unit = |figure: &crate::Figure| !figure.unit.is_empty();
    finding.demand.as_ref().is_some_and(unit)
}

/// Demand over capacity with tolerances counted.
fn strain(finding: &Finding) -> f64 {
    let worst = finding.worst.as_ref().and_then(|corner| corner.ratio);
    worst.or(finding.ratio).unwrap_or(0.0)
}

fn fails(finding: &Finding) -> bool {
    matches!(
        finding.standing,
        Standing::Fails | Standing::TurnsWithinTolerance
    )
}

fn is_open(finding: &Finding) -> bool {
    !matches!(finding.standing, Standing::Holds | Standing::Figure)
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
