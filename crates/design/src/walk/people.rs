//! Who walks past: always everybody of the default list; what the site says of people only makes them faster.

use super::assumption::Assumption;
use crate::asking::{Asking, End};
use crate::figure::Print;
use crate::outcome::Halt;
use quantity::Velocity;
use sim::walk::{Body, leaning, people};
use site::{Gate, PersonKind, Site};

/// Bodies of the default list that a kind of people stands for.
fn stands_for(kind: PersonKind) -> &'static [&'static str] {
    match kind {
        PersonKind::TrainedAdults | PersonKind::Adults => &["adult", "small adult"],
        PersonKind::Children => &["child of about 7", "child of about 3"],
        PersonKind::WheeledOrSlow => &["wheelchair user"],
        PersonKind::Cyclists => &["cyclist"],
    }
}

/// The bodies, and what is assumed of them.
pub(super) fn bodies<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<Vec<Body>, Halt> {
    let mut bodies = people();
    let near = |name: &Option<site::Id>| name.as_ref().is_none_or(|name| *name == gate.id);
    for people in site.people.iter().filter(|people| near(&people.gate)) {
        let key = (&people.origin, "speed");
        if people.speed.is_some() {
            let speed = asking.read_at(key, people.speed.as_ref(), End::High)?;
            widen(&mut bodies, stands_for(people.who), speed);
        }
    }
    let print = asking.print();
    defaults.extend(bodies.iter().map(|body| assumed(body, print)));
    Ok(bodies)
}

/// Those who lean in, and what is assumed of them.
pub(super) fn leaners(asking: &Asking<'_>, defaults: &mut Vec<Assumption>) -> Vec<Body> {
    let bodies = leaning();
    let print = asking.print();
    defaults.extend(bodies.iter().map(|body| {
        let heights = body.parts.first().map_or_else(String::new, |hand| {
            format!("{} to {}", print.q(hand.bottom), print.q(hand.top))
        });
        Assumption::default(
            body.name.clone(),
            format!(
                "there before the leaf starts, an arm in the gap at a height of {heights}, the rest beside the leaf's path"
            ),
            body.source.clone(),
        )
    }));
    bodies
}

fn widen(bodies: &mut [Body], names: &[&str], speed: Velocity) {
    let these = |body: &&mut Body| names.contains(&body.name.as_str());
    for body in bodies.iter_mut().filter(these) {
        if let Some(speeds) = &mut body.speeds
            && speed > speeds.to
        {
            speeds.to = speed;
        }
    }
}

fn assumed(body: &Body, print: Print) -> Assumption {
    let speeds = body.speeds.map_or_else(
        || "stays where it is".to_owned(),
        |speeds| format!("{} to {}", print.q(speeds.from), print.q(speeds.to)),
    );
    Assumption::default(
        body.name.clone(),
        format!("{} upright cylinders, {speeds}", body.parts.len()),
        body.source.clone(),
    )
}
