//! The cheapest ways that reach everything, and the proof.

use super::{width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{RouteChoice, RouteWay};

const FOOTER: &str = "Have buried lines marked before you dig, and open the ground by hand beside a mark. A way that nobody drew may be \
cheaper still. Results support a competent person; local codes and the authority having jurisdiction prevail.";

/// The ways, what they cost, and what bars others.
pub(crate) fn routed(choice: &RouteChoice) -> String {
    let mut lines = vec![paint("ways in the ground", strong()), String::new()];
    if let Some(cost) = &choice.cost {
        lines.extend([wrapped(&summary(choice, cost), 2, width()), String::new()]);
        lines.extend(choice.ways.iter().map(one));
        lines.push(String::new());
    }
    if !choice.barred.is_empty() {
        lines.push("  Barred".to_owned());
        let told = choice.barred.iter();
        lines.extend(told.map(|[way, ground]| wrapped(&format!("{way}: {ground}"), 7, width())));
        lines.push(String::new());
    }
    if !choice.missing.is_empty() {
        lines.push("  Missing, or out of reach".to_owned());
        let told = choice.missing.iter().flat_map(|text| text.lines());
        lines.extend(told.map(|line| wrapped(line, 7, width())));
        lines.push(String::new());
    }
    lines.push(paint(wrapped(FOOTER, 0, width()), quiet()));
    lines.join("\n")
}

fn summary(choice: &RouteChoice, cost: &str) -> String {
    let proof = match &choice.gap {
        None if choice.looked == 1 => "None is cheaper: proved at once.".to_owned(),
        None => format!("None is cheaper: proved over {} cases.", choice.looked),
        Some(gap) => format!(
            "At most {gap} may still be saved; the search gave up after {} cases.",
            choice.looked
        ),
    };
    let now = match &choice.taken {
        Some(taken) if taken != cost => format!(" The ways that conduits lie in now cost {taken}."),
        Some(_) => " The ways that conduits lie in now cost as much.".to_owned(),
        None => String::new(),
    };
    format!(
        "{} points are reached over {} ways, {} long, for {cost}. {proof}{now}",
        choice.reached,
        choice.ways.len(),
        choice.length
    )
}

fn one(way: &RouteWay) -> String {
    let new = if way.taken { "" } else { "  not taken yet" };
    format!(
        "  {}  {} to {}  {}  {}  {}{new}",
        paint(&way.id, touchable()),
        way.ends[0],
        way.ends[1],
        way.by,
        way.length,
        way.cost
    )
}
