//! The cheapest set of ways that reaches everything, over the ways that the site draws.

use crate::asking::{Asking, Lack};
use crate::figure::Print;
use crate::routes::{Cheapest, Ground, Net, cheapest};
use quantity::{Length, Word as _};
use serde::Serialize;
use site::{Site, SourceFile, load};

/// Cases that are looked at before the search gives up with a gap.
const MOST: usize = 20_000;

/// The cheapest ways of a site, with the proof.
#[derive(Debug, Clone, Serialize)]
pub struct RouteChoice {
    /// How many points must be reached.
    pub reached: usize,
    /// How many ways are drawn and allowed.
    pub allowed: usize,
    /// What the cheapest set costs; nothing where none was found.
    pub cost: Option<String>,
    /// The same in hundredths.
    pub hundredths: u64,
    /// No set costs less than this, in hundredths.
    pub at_least: u64,
    /// Nothing cheaper exists.
    pub proved: bool,
    /// What may still be saved at most, where that is not proved.
    pub gap: Option<String>,
    /// Cases that were looked at.
    pub looked: usize,
    /// Its ways.
    pub ways: Vec<RouteWay>,
    /// Length of all of them.
    pub length: String,
    /// What the ways that conduits lie in cost now; nothing where none does.
    pub taken: Option<String>,
    /// Ways that ground bars: the way, and the ground.
    pub barred: Vec<[String; 2]>,
    /// Lines that the site lacks, or why there is no answer.
    pub missing: Vec<String>,
}

/// A way of the cheapest set.
#[derive(Debug, Clone, Serialize)]
pub struct RouteWay {
    /// Its name.
    pub id: String,
    /// The points at its ends.
    pub ends: [String; 2],
    /// How it is made, and through what.
    pub by: String,
    /// Its length.
    pub length: String,
    /// What it costs.
    pub cost: String,
    /// Conduits lie in it already.
    pub taken: bool,
}

/// The cheapest ways; nothing when the site cannot be read.
pub fn route_choice(main: &SourceFile, parts: &[SourceFile]) -> Option<RouteChoice> {
    let site = load(main.clone(), parts.to_vec()).site?;
    Some(choice(&site))
}

fn choice(site: &Site) -> RouteChoice {
    let units = site.site.unit_system();
    let mut asking = Asking::new(units);
    let ground = Ground::read(&mut asking, site);
    let Ok(ground) = ground else {
        return without(missing(&asking));
    };
    let (net, places) = ground.net();
    let found = cheapest(&net, MOST);
    let print = Print::new(units);
    let mut choice = without(Vec::new());
    choice.reached = ground.goals();
    choice.allowed = places.len();
    choice.barred = barred(&ground);
    choice.taken = taken(&ground);
    match found {
        Some(found) => fill(&mut choice, (&ground, &net, &places), &found, print),
        None => choice.missing.push(
            "The ways that are drawn and allowed do not join every point that serves something. Draw another way, or let one be bored."
                .to_owned(),
        ),
    }
    choice
}

fn without(missing: Vec<String>) -> RouteChoice {
    RouteChoice {
        reached: 0,
        allowed: 0,
        cost: None,
        hundredths: 0,
        at_least: 0,
        proved: false,
        gap: None,
        looked: 0,
        ways: Vec::new(),
        length: String::new(),
        taken: None,
        barred: Vec::new(),
        missing,
    }
}

fn missing(asking: &Asking<'_>) -> Vec<String> {
    let mut lines: Vec<String> = asking.lacks.iter().map(Lack::line).collect();
    lines.dedup();
    let beyond = asking.beyond.as_ref();
    lines.extend(beyond.map(|beyond| beyond.reach.why.clone()));
    lines
}

fn fill(
    choice: &mut RouteChoice,
    (ground, net, places): (&Ground<'_>, &Net, &[usize]),
    found: &Cheapest,
    print: Print,
) {
    let chosen = found.edges.iter().map(|edge| &ground.ways[places[*edge]]);
    let length = chosen
        .clone()
        .fold(Length::default(), |sum, one| sum + one.length);
    choice.cost = Some(ground.money(found.cost));
    choice.hundredths = found.cost;
    choice.at_least = found.at_least;
    choice.proved = found.is_proved();
    choice.gap = (!found.is_proved()).then(|| ground.money(found.cost - found.at_least));
    choice.looked = found.looked;
    choice.length = print.q(length);
    let costs = found.edges.iter().map(|edge| net.edges[*edge].cost);
    choice.ways = chosen
        .zip(costs)
        .map(|(one, cost)| RouteWay {
            id: one.way.id.to_string(),
            ends: [one.way.from.to_string(), one.way.to.to_string()],
            by: made(one.way),
            length: print.q(one.length),
            cost: ground.money(cost),
            taken: !one.way.conduits.is_empty(),
        })
        .collect();
}

fn made(way: &site::Way) -> String {
    let by = way.by.map_or("", |by| by.word());
    match way.surface {
        Some(surface) => format!("{by}, {}", surface.word()),
        None => by.to_owned(),
    }
}

fn barred(ground: &Ground<'_>) -> Vec<[String; 2]> {
    let barred = ground
        .ways
        .iter()
        .filter_map(|one| Some((one.way, one.barred?)));
    let told = barred.map(|(way, off)| {
        let what = off
            .what
            .as_ref()
            .map_or(off.id.as_str(), |what| what.as_str());
        [way.id.to_string(), what.to_owned()]
    });
    told.collect()
}

fn taken(ground: &Ground<'_>) -> Option<String> {
    let mut taken = ground
        .ways
        .iter()
        .filter(|one| !one.way.conduits.is_empty())
        .peekable();
    taken.peek()?;
    Some(ground.money(taken.map(|one| one.cost).sum()))
}
