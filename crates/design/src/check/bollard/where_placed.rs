//! What a vehicle could hit beside each lane, and whether a bollard stands in front of it; and whether the bollards
//! themselves stand out of the way.
//!
//! Vehicles are taken to keep to their lane, or to their own width where that is more, and need a margin beside it.
//! Whatever stands within the margin needs a bollard that names it among what it guards, or one that stands between.
//! Whatever stands in the way itself no bollard can guard.

use super::corridor::{Corridor, corridor};
use super::parts::{Part, parts, place, swept};
use crate::asking::{Asking, Wants, read};
use crate::check::plane::{Piece, between, from};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, capitalized};
use crate::subject::About;
use quantity::{Length, Quantity as _};
use site::{Bollard, Lane, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bollard-where",
    codes: BOTH,
    leaves_open: "the swept path of vehicles that turn, whose rear wheels cut the corner: drive the longest one through; and the walking route, whose width is asked with the gaps",
    concerns: "each lane, and all that stands near it",
    ask,
};

/// How a lane is written.
const LANE: &str = "[[lane]]\nid = \"lane-in\"\ngate = \"main\"\nwidth = \"12 ft\"\npath = [[\"10 ft\", \"-60 ft\", \"0 ft\"], [\"10 ft\", \"40 ft\", \"0 ft\"]]";
/// A bollard stands before a thing when it is this near to the straight line from there to the way, in meters: 24 in.
const BESIDE: f64 = 0.6096;
/// Names that a sentence lists.
const LISTED: usize = 6;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.lane.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "lane", Wants::Table(LANE))
        });
    }
    for lane in &site.lane {
        round.ask(About::new(&lane.origin, &lane.id), |asking| {
            beside(asking, site, lane)
        });
    }
}

/// A bollard with its place and half its width.
struct Guard<'s> {
    bollard: &'s Bollard,
    place: Piece,
    radius: Length,
}

fn beside<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    let way = corridor(asking, site, lane);
    let parts = parts(asking, site);
    let guards = guards(asking, site);
    let sweeps: Vec<_> = site.gate.iter().map(|gate| swept(asking, gate)).collect();
    let sweeps: Result<Vec<_>, Halt> = sweeps.into_iter().collect();
    let (way, parts, guards, sweeps) = (way?, parts?, guards?, sweeps?);
    let near = |part: &&Part<'_>| way.distance(&part.piece) < way.reach();
    let (held, bare): (Vec<_>, Vec<_>) = parts
        .iter()
        .filter(near)
        .partition(|part| is_guarded(part, &way, &guards));
    let astray: Vec<&Guard<'_>> = guards
        .iter()
        .filter(|guard| {
            way.distance(&guard.place) - guard.radius < way.half || in_a_sweep(guard, &sweeps)
        })
        .collect();
    let names = |parts: &[&Part<'_>]| named(parts.iter().map(|part| part.name.clone()));
    asking.say(|print| {
        let mut said = vec![format!(
            "Along {} vehicles need {} to each side of the middle of the way, {} of it as a margin.",
            lane.id,
            print.q(way.reach()),
            print.q(way.margin)
        )];
        if !bare.is_empty() {
            said.push(format!("With nothing in front: {}.", names(&bare)));
        }
        if !held.is_empty() {
            said.push(format!("Guarded: {}.", names(&held)));
        }
        if bare.is_empty() && held.is_empty() {
            said.push("Nothing stands there.".to_owned());
        }
        if !astray.is_empty() {
            let names = named(astray.iter().map(|guard| guard.bollard.id.to_string()));
            let names = capitalized(&names);
            said.push(format!("{names} stands in the lane or in the leaf's travel."));
        }
        said.join(" ")
    });
    let outside = parts
        .iter()
        .filter(|part| !held.iter().any(|one| std::ptr::eq(*one, *part)));
    let unguarded = outside.map(|part| {
        Comparison::at_most(
            Labeled::new(
                "room that vehicles need from the middle of the way",
                way.reach(),
            ),
            Labeled::new(
                "distance of the nearest thing without a guard",
                way.distance(&part.piece),
            ),
        )
    });
    let clear = guards
        .iter()
        .flat_map(|guard| out_of_the_way(guard, &way, &sweeps));
    let all: Vec<Comparison> = unguarded.chain(clear).collect();
    Ok(Outcome::worst(all).unwrap_or(Outcome::Rule(true)))
}

fn named(names: impl Iterator<Item = String>) -> String {
    let all: Vec<String> = names.collect();
    match all.len().checked_sub(LISTED) {
        Some(more) if more > 0 => format!(
            "{} and {more} more",
            all.get(..LISTED).unwrap_or(&all).join(", ")
        ),
        _ => and(&all),
    }
}

fn guards<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Vec<Guard<'s>>, Halt> {
    let mut whole = Ok(Vec::new());
    for bollard in &site.bollard {
        let place = place(asking, bollard);
        let diameter = read!(asking, bollard.diameter);
        whole = whole.and_then(|mut whole| {
            whole.push(Guard {
                bollard,
                place: place?,
                radius: diameter? / 2.0,
            });
            Ok(whole)
        });
    }
    whole
}

/// A bollard that is no farther from the way names the thing, or stands between it and the way.
fn is_guarded(part: &Part<'_>, way: &Corridor, guards: &[Guard<'_>]) -> bool {
    let away = way.distance(&part.piece);
    if away < way.half {
        return false;
    }
    // Only a bollard that names it guards a thing as long as a leaf.
    let line = (part.piece[0] == part.piece[1]).then(|| way.line_from(part.piece[0]));
    guards.iter().any(|guard| {
        let before = way.distance(&guard.place) <= away;
        let names = guard.bollard.guards.iter().any(|id| part.ids.contains(&id));
        let between = line.is_some_and(|line| from(guard.place[0], &line) <= BESIDE);
        before && (names || between)
    })
}

fn in_a_sweep(guard: &Guard<'_>, sweeps: &[Vec<Piece>]) -> bool {
    nearest_sweep(guard, sweeps) < guard.radius.base()
}

fn nearest_sweep(guard: &Guard<'_>, sweeps: &[Vec<Piece>]) -> f64 {
    sweeps
        .iter()
        .flatten()
        .map(|piece| between(piece, &guard.place))
        .fold(f64::INFINITY, f64::min)
}

/// The bollard stands out of the lane and out of the travel of every leaf.
fn out_of_the_way(guard: &Guard<'_>, way: &Corridor, sweeps: &[Vec<Piece>]) -> Vec<Comparison> {
    let free = way.distance(&guard.place) - guard.radius;
    let mut all = vec![Comparison::at_most(
        Labeled::new("half the width of the lane", way.half),
        Labeled::new("distance of a bollard's face from its middle", free),
    )];
    let nearest = nearest_sweep(guard, sweeps);
    if nearest.is_finite() {
        all.push(Comparison::at_most(
            Labeled::new("half the width of a bollard", guard.radius),
            Labeled::new(
                "distance of its middle from the leaf's travel",
                Length::from_base(nearest),
            ),
        ));
    }
    all
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = "0 ft"
        [[operator]]
        id = "drive"
        gate = "main"
        at = ["18 ft", "2 ft", "1 ft"]
        [[lane]]
        id = "lane-in"
        width = "12 ft"
        path = [["10 ft", "-60 ft", "0 ft"], ["10 ft", "40 ft", "0 ft"]]
        [[vehicle]]
        id = "van"
        what = "van"
        width = "8 ft"
        margin = "3 ft ± 2 in"
    "#;
    const GUARD: &str = "[[bollard]]\nid = \"bollard-1\"\nat = [\"17 ft\", \"4 ft\", \"0 ft\"]\ndiameter = \"8 in\"\nguards = [\"drive\"]\n";

    #[test]
    fn holds_with_a_bollard_in_front() {
        let finding = only(&CHECK, &(SITE.to_owned() + GUARD));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_with_an_unnamed_bollard_between_and_fails_with_one_beside() {
        let unnamed = GUARD.replace("guards = [\"drive\"]", "");
        let between = SITE.to_owned() + &unnamed.replace("\"4 ft\"", "\"3 ft\"");
        let finding = only(&CHECK, &between);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let beside = SITE.to_owned() + &unnamed.replace("\"4 ft\"", "\"5 ft\"");
        assert_eq!(only(&CHECK, &beside).verdict, Verdict::Fails);
    }

    #[test]
    fn holds_where_nothing_stands_near() {
        let finding = only(&CHECK, &SITE.replace("\"18 ft\"", "\"24 ft\""));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("Nothing stands there"));
    }

    #[test]
    fn fails_with_the_operator_bare_or_its_guard_behind_it() {
        let bare = only(&CHECK, SITE);
        assert_eq!(bare.verdict, Verdict::Fails, "{}", bare.sentence);
        assert!(bare.sentence.contains("With nothing in front: drive"));
        let behind = SITE.to_owned() + &GUARD.replace("17 ft", "20 ft");
        assert_eq!(only(&CHECK, &behind).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_with_a_bollard_in_the_lane_or_in_the_travel() {
        let lane = SITE.to_owned() + &GUARD.replace("17 ft", "14 ft");
        assert_eq!(only(&CHECK, &lane).verdict, Verdict::Fails);
        let travel = SITE.to_owned() + &GUARD.replace("\"4 ft\"", "\"0 ft\"");
        let finding = only(&CHECK, &travel);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_in_the_lane_whatever_guards_it() {
        let inside = SITE.replace("\"18 ft\"", "\"15 ft\"") + &GUARD.replace("17 ft", "16 ft 6 in");
        assert_eq!(only(&CHECK, &inside).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_places_and_path() {
        let bare = SITE
            .replace("at = [\"18 ft\", \"2 ft\", \"1 ft\"]", "")
            .replace("path = [", "queue_length = \"20 ft\"\n# [");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let none = SITE.split("[[lane]]").next().unwrap_or_default();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn a_swing_leaf_stands_open_beside_the_lane() {
        let swing = SITE
            .replace("track-slide", "single-swing")
            .replace(
                "travel = \"20 ft\"",
                "clear_opening = \"16 ft\"\ntravel_angle = \"90°\"\nswings = \"into the property\"",
            )
            .replace("\"18 ft\", \"2 ft\"", "\"24 ft\", \"2 ft\"")
            .replace("length = \"21 ft\"", "length = \"15 ft 6 in\"");
        let finding = only(&CHECK, &swing);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("leaf where it stands open"),
            "{}",
            finding.sentence
        );
    }
}
