//! Whether people on foot have a way of their own, off everything that the vehicle gate passes over.
//!
//! Each walk gate, each line that people take and each place where they stop is held against the ground that the leaves
//! pass over, run-back included. Beside a walk gate and a person who stands there must be room for a body; a line must
//! not meet that ground over its whole width.

use super::envelope::{Envelope, envelope};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::plane::Point;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::protection::{BodyPart, Iso13854Gap};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{FootRoute, FootStop, Gate, Id, Site, WalkGate, WalkGatePlace, WalkHours};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "foot-way",
    codes: BOTH,
    leaves_open: "whether people keep to the way that was laid for them: watch a morning, and look again at every visit; ways at other gates, and what a rider cannot take through the walk gate",
    concerns: "each gate",
    ask,
};

static SEPARATE: Source = Source {
    work: "UL 325, installation instructions, and ASTM F2200, general requirements",
    clause: "people on foot have an opening of their own, outside the leaf, where they do not meet the moving gate",
    evidence: Evidence::Seen,
    seen: "gate-operator manuals that reprint both; addresses withheld, they carry company names",
};

static WELDED: Source = Source {
    work: "report of an expert on a crushed person",
    clause: "the walk gate had been welded shut",
    evidence: Evidence::Seen,
    seen: "an article of an expert witness; address withheld, it carries a company name",
};

/// How a walk gate is written.
pub(crate) const WALK_GATE: &str = "[[walk_gate]]\nid = \"walk\"\nkind = \"hinged gate\"\nat = [\"-12 ft\", \"0 ft\", \"0 in\"]\nclear_width = \"36 in\"\nplace = \"apart\"\nusable = \"always\"";
/// How a line of people on foot is written.
const ROUTE: &str = "[[foot_route]]\nid = \"to-the-office\"\nwho = \"adults\"\nwidth = \"4 ft\"\npath = [[\"-12 ft\", \"-20 ft\", \"0 in\"], [\"-12 ft\", \"20 ft\", \"0 in\"]]";
/// How a place where people stop is written.
const STOP: &str = "[[foot_stop]]\nid = \"bell\"\nwhat = \"bell\"\nat = [\"-14 ft\", \"-2 ft\", \"44 in\"]\nstand_at = [\"-14 ft\", \"-4 ft\", \"0 in\"]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            way(asking, site, gate)
        });
    }
}

/// It belongs to this gate, or to none in particular.
pub(crate) fn beside(named: Option<&Id>, gate: &Gate) -> bool {
    named.is_none_or(|name| *name == gate.id)
}

/// Something that has to stay off the ground that the leaves pass over.
struct Kept {
    what: String,
    needs: Length,
    has: Length,
}

fn way<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&SEPARATE);
    asking.rest_on(&WELDED);
    let body = asking.work(&Iso13854Gap {
        part: BodyPart::Body,
    });
    let swept = envelope(asking, gate);
    let gates = walk_gates(asking, site, gate);
    let routes = routes(asking, site, gate);
    let stops = stops(asking, site, gate);
    let (body, swept, gates) = (body?.gap, swept?, gates?);
    let (routes, stops) = (routes?, stops?);
    if let Some(fault) = gates.iter().find_map(Opening::fault) {
        asking.say(|_| fault.clone());
        return Ok(Outcome::Rule(false));
    }
    let mut kept: Vec<Kept> = gates.iter().map(|one| one.kept(&swept, body)).collect();
    kept.extend(routes.iter().map(|route| route.kept(&swept)));
    kept.extend(stops.iter().map(|(stop, at)| Kept {
        what: format!("who uses {}", stop.id),
        needs: body,
        has: Length::from_base(swept.to_point(*at)),
    }));
    let strain = |kept: &Kept| kept.needs.base() / kept.has.base();
    let tightest = kept.iter().max_by(|a, b| strain(a).total_cmp(&strain(b)));
    if let Some(tightest) = tightest {
        asking.say(|print| sentence(print, &gates, tightest));
    }
    let comparisons = kept.iter().map(|kept| {
        Comparison::at_most(
            Labeled::new("room that is needed", kept.needs),
            Labeled::new("room beside the leaf's travel", kept.has),
        )
    });
    Outcome::worst(comparisons).ok_or(Halt)
}

fn sentence(print: Print, gates: &[Opening<'_>], tightest: &Kept) -> String {
    let names: Vec<&str> = gates.iter().map(|one| one.gate.id.as_str()).collect();
    let place = if tightest.has.base() > 0.0 {
        format!(
            "{} keeps {} off the ground that the leaf passes over and needs {}",
            capitalized(&tightest.what),
            print.q(tightest.has),
            print.q(tightest.needs)
        )
    } else {
        format!(
            "{} is on the ground that the leaf passes over: lead it round, with a railing or a fence that leaves no choice",
            capitalized(&tightest.what)
        )
    };
    format!("Ways on foot: {}. {place}.", names.join(", "))
}

/// A walk gate with what was read of it.
struct Opening<'s> {
    gate: &'s WalkGate,
    at: Point,
    width: Length,
    place: WalkGatePlace,
    usable: WalkHours,
}

impl Opening<'_> {
    fn fault(&self) -> Option<String> {
        let name = capitalized(self.gate.id.as_str());
        if self.place == WalkGatePlace::InLeaf {
            return Some(format!(
                "{name} is a door in the vehicle leaf: whoever passes stands where the leaf moves."
            ));
        }
        (self.usable == WalkHours::PartOfTheTime).then(|| {
            format!(
                "{name} is shut while the vehicle gate works: people then walk through behind the cars."
            )
        })
    }

    fn kept(&self, swept: &Envelope, body: Length) -> Kept {
        Kept {
            what: format!("the middle of {}", self.gate.id),
            needs: self.width / 2.0 + body,
            has: Length::from_base(swept.to_point(self.at)),
        }
    }
}

/// A place in the plane.
pub(crate) fn above([x, y, _]: [Length; 3]) -> Point {
    (x.base(), y.base())
}

fn walk_gates<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Opening<'s>>, Halt> {
    let of_gate = |one: &&WalkGate| beside(one.gate.as_ref(), gate);
    each(
        asking,
        site,
        ("walk_gate", WALK_GATE),
        site.walk_gate.iter().filter(of_gate),
        |asking, one| {
            let at = asking.position(&one.origin, "at", one.at.as_ref());
            let width = read!(asking, one.clear_width);
            let place = pick!(asking, one.place);
            let usable = pick!(asking, one.usable);
            Ok(Opening {
                gate: one,
                at: above(at?),
                width: width?,
                place: place?,
                usable: usable?,
            })
        },
    )
}

/// A line that people take, with its width.
struct Line<'s> {
    route: &'s FootRoute,
    points: Vec<Point>,
    width: Length,
}

impl Line<'_> {
    fn kept(&self, swept: &Envelope) -> Kept {
        let legs = self.points.windows(2).filter_map(|leg| match leg {
            [from, to] => Some(swept.to_piece(&[*from, *to])),
            _ => None,
        });
        Kept {
            what: format!("the middle of {}", self.route.id),
            needs: self.width / 2.0,
            has: Length::from_base(legs.fold(f64::INFINITY, f64::min)),
        }
    }
}

fn routes<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Line<'s>>, Halt> {
    let of_gate = |one: &&FootRoute| beside(one.gate.as_ref(), gate);
    each(
        asking,
        site,
        ("foot_route", ROUTE),
        site.foot_route.iter().filter(of_gate),
        |asking, route| {
            let width = read!(asking, route.width);
            if route.path.len() < 2 {
                return asking.lack(
                    &route.origin,
                    "path",
                    Wants::Written(
                        "[[\"-12 ft\", \"-20 ft\", \"0 in\"], [\"-12 ft\", \"20 ft\", \"0 in\"]]",
                    ),
                );
            }
            let corner = |at: &site::Position| (at.x.nominal().base(), at.y.nominal().base());
            Ok(Line {
                route,
                points: route.path.iter().map(corner).collect(),
                width: width?,
            })
        },
    )
}

fn stops<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<(&'s FootStop, Point)>, Halt> {
    let of_gate = |one: &&FootStop| beside(one.gate.as_ref(), gate);
    each(
        asking,
        site,
        ("foot_stop", STOP),
        site.foot_stop.iter().filter(of_gate),
        |asking, stop| {
            let at = asking.position(&stop.origin, "stand_at", stop.stand_at.as_ref())?;
            Ok((stop, above(at)))
        },
    )
}

/// Reads each of several records, of which the site must have one at least.
fn each<'s, T: 's, R>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (key, write): (&'static str, &'static str),
    records: impl Iterator<Item = &'s T>,
    mut read: impl FnMut(&mut Asking<'s>, &'s T) -> Result<R, Halt>,
) -> Result<Vec<R>, Halt> {
    let each: Vec<Result<R, Halt>> = records.map(|record| read(asking, record)).collect();
    if each.is_empty() {
        return asking.lack(&site.origin, key, Wants::Table(write));
    }
    each.into_iter().collect()
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
        travel = "20 ft 8 in ± 1/2 in"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft 6 in"
        closed_end = "-3 in"
        thickness = "2 in"
        [[walk_gate]]
        id = "walk"
        at = ["-12 ft", "0 ft", "0 in"]
        clear_width = "36 in"
        place = "apart"
        usable = "always"
        [[foot_route]]
        id = "to-the-office"
        width = "4 ft"
        path = [["-12 ft", "-20 ft", "0 in"], ["-12 ft", "4 ft", "0 in"], ["30 ft", "12 ft", "0 in"]]
        [[foot_stop]]
        id = "bell"
        what = "bell"
        stand_at = ["-14 ft", "-3 ft", "0 in"]
    "#;

    #[test]
    fn holds_with_a_way_apart() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_beside_the_run_back_and_across_it() {
        let behind = SITE.replace(
            "\"-12 ft\", \"0 ft\", \"0 in\"",
            "\"32 ft\", \"0 ft\", \"0 in\"",
        );
        let finding = only(&CHECK, &behind);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let across = SITE.replace("[\"30 ft\", \"12 ft\"", "[\"30 ft\", \"-12 ft\"");
        let finding = only(&CHECK, &across);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("to-the-office"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_the_leaf_shut_by_day_and_at_a_bell_in_the_way() {
        for (from, to) in [
            ("\"apart\"", "\"in the vehicle leaf\""),
            ("\"always\"", "\"part of the time\""),
            ("\"-14 ft\", \"-3 ft\"", "\"10 ft\", \"-1 ft\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_walk_gate_routes_and_stops() {
        let bare = SITE.split("[[walk_gate]]").next().unwrap_or_default();
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }
}
