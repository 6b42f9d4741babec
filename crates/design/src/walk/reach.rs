//! What holds an arm that reaches through a sliding leaf: posts and ends of fences beside its path, and the strips on them.
//!
//! Which openings let an arm through is ISO 13857's to say, with the children's distances known from memory; which gaps
//! catch is that of the hazard zones. A fence on the side of whoever would reach through keeps them off.

use super::assumption::Assumption;
use super::devices::strip_of;
use crate::asking::{Asking, End};
use crate::outcome::Halt;
use crate::zone::thing::{Thing, things};
use crate::zone::{CLOSING, Extent, OPENING, Zone, draw_in, means};
use formula::Formula as _;
use formula::protection::{Iso13857Reach, OpeningShape, reach_from_three_years};
use quantity::{Length, Quantity as _};
use sim::walk::{Catch, Direction, Pass};
use site::{Device, DeviceKind, Gate, Leaf, Site};

/// An arm through an opening for which no distance is tabled reaches so far: that of the widest one, for children.
const WHOLE_ARM: f64 = 0.9;
/// How far an arm may be squeezed where no strip gives.
const SQUEEZE: f64 = 0.01;
/// A fence that begins so near to a post leaves nobody room to reach through beside it.
const BESIDE: f64 = 0.15;
/// So far from a post somebody may stand who reaches through.
const ALONG: f64 = 0.5;
/// A fence farther than this from the leaf keeps nobody off.
const FAR: f64 = 1.0;

/// What was found.
struct Found {
    catches: Vec<Catch>,
    /// Places that a fence keeps out of reach.
    screened: Vec<String>,
    reach: Length,
    opening: Length,
}

/// The things that hold an arm, and what is assumed of them. What is missing for it is left to the questions of its own.
pub(super) fn catches<'s>(
    asking: &Asking<'_>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    passes: &[Pass],
    defaults: &mut Vec<Assumption>,
) -> Vec<Catch> {
    let print = asking.print();
    let mut apart = Asking::new(site.site.unit_system());
    let what = "reaching through the leaf";
    let Ok(found) = found(&mut apart, site, gate, leaf, passes) else {
        defaults.push(Assumption::default(
            what,
            "not looked at",
            "openings of the leaf, or places, widths and heights of what it passes, are not all on the site",
        ));
        return Vec::new();
    };
    let names: Vec<String> = found.catches.iter().map(named).collect();
    let value = if names.is_empty() {
        format!(
            "through an opening of {} an arm reaches {}: nothing holds it",
            print.q(found.opening),
            print.q(found.reach)
        )
    } else {
        format!(
            "through an opening of {} an arm reaches {} and is carried to {}; it comes in at any moment and stays, and no beam is counted; what it meets on the way back is not followed",
            print.q(found.opening),
            print.q(found.reach),
            names.join(", ")
        )
    };
    defaults.push(Assumption::default(
        what,
        value,
        "ISO 13857, table 4, and table 5 for children, which is from memory; gaps as in the question of drawing in",
    ));
    if !found.screened.is_empty() {
        defaults.push(Assumption::default(
            "what nobody reaches through to",
            found.screened.join(", "),
            "a fence stands along the leaf on the side of whoever would reach; nobody reaches through fence and leaf",
        ));
    }
    found.catches
}

fn named(catch: &Catch) -> String {
    format!("{} while {}", catch.name, word(catch.direction))
}

pub(super) fn word(direction: Direction) -> &'static str {
    match direction {
        Direction::Opening => "opening",
        Direction::Closing => "closing",
    }
}

fn found<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    passes: &[Pass],
) -> Result<Found, Halt> {
    let zones = draw_in(asking, site, gate)?;
    let things = things(asking, site, gate)?;
    let mut found = Found {
        catches: Vec::new(),
        screened: Vec::new(),
        reach: Length::from_base(0.0),
        opening: Length::from_base(0.0),
    };
    let key = (&leaf.origin, "opening");
    found.opening = asking.read_at(key, leaf.opening.as_ref(), End::High)?;
    let length = asking.read_at((&leaf.origin, "length"), leaf.length.as_ref(), End::Nominal)?;
    found.reach = Length::from_base(reach(found.opening));
    for zone in zones.iter().filter(|zone| zone.catches) {
        if zone.least_gap >= found.reach {
            continue;
        }
        for pass in passes {
            let met = met(zone, pass.direction);
            let Some((from, to)) = travels(pass, length.base(), met.least_at.0) else {
                continue;
            };
            let edge = edge(asking, site, gate, &met, pass.direction)?;
            let soft = edge
                .as_ref()
                .map_or(SQUEEZE, |edge: &sim::walk::ContactEdge| {
                    (edge.actuation_travel + edge.soft_travel).base()
                });
            let catch = Catch {
                name: zone.against.clone(),
                direction: pass.direction,
                from: Length::from_base(from),
                to: Length::from_base(to),
                edge,
                squeeze: Length::from_base(soft),
            };
            if is_screened(&met, pass.direction, &things) {
                found.screened.push(named(&catch));
            } else {
                found.catches.push(catch);
            }
        }
    }
    Ok(found)
}

/// How far an arm reaches through an opening: an adult's or a child's, whichever is farther.
fn reach(opening: Length) -> f64 {
    if opening.base() <= 0.0 {
        return 0.0;
    }
    let guard = Iso13857Reach {
        shape: OpeningShape::Slot,
        opening,
    };
    let adult = guard.evaluate().map(|reach| reach.distance.base());
    let child = reach_from_three_years(&guard).map(|reach| reach.distance.base());
    adult.unwrap_or(WHOLE_ARM).max(child.unwrap_or(WHOLE_ARM))
}

/// The zone with its least place where the leaf carries an arm to in a direction.
fn met(zone: &Zone, direction: Direction) -> Zone {
    let Extent { low, high } = zone.extent;
    let x = match direction {
        Direction::Opening => low[0],
        Direction::Closing => high[0],
    };
    Zone {
        least_at: (x, zone.least_at.1),
        live: match direction {
            Direction::Opening => OPENING,
            Direction::Closing => CLOSING,
        },
        ..zone.clone()
    }
}

/// Travel of a leaf at which it passes a place, from its first edge there to its last.
fn travels(pass: &Pass, length: f64, x: f64) -> Option<(f64, f64)> {
    let (edge, travel) = (pass.edge.base(), pass.plan.travel.base());
    let first = match pass.direction {
        Direction::Opening => x - edge,
        Direction::Closing => edge - x,
    };
    let (from, to) = (first.max(0.0), (first + length).min(travel));
    (from < to).then_some((from, to))
}

/// The strip on the thing that acts in a direction.
fn edge<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    zone: &Zone,
    direction: Direction,
) -> Result<Option<sim::walk::ContactEdge>, Halt> {
    let acts = match direction {
        Direction::Opening => site::Direction::Opening,
        Direction::Closing => site::Direction::Closing,
    };
    let covering = means::covering(asking, site, gate, (zone, acts))?;
    let fixed =
        |device: &&&Device| device.kind == DeviceKind::ContactEdge && device.carried_by.is_none();
    let Some(device) = covering.iter().find(fixed) else {
        return Ok(None);
    };
    let (mut strip, _) = strip_of(asking, device)?;
    strip.guards = direction;
    Ok(Some(strip))
}

/// A fence stands where somebody would reach through, on the side away from the thing.
fn is_screened(zone: &Zone, direction: Direction, things: &[Thing]) -> bool {
    let (x, y) = zone.least_at;
    let away = match direction {
        Direction::Opening => -1.0,
        Direction::Closing => 1.0,
    };
    let (one, other) = (x + away * BESIDE, x + away * ALONG);
    let screens = |thing: &&Thing| {
        let ((from, near), (to, far)) = thing.bounds();
        let on_the_other_side = near * y < 0.0 && far * y < 0.0;
        let near_by = near.abs().min(far.abs()) <= FAR;
        let past = from <= one.min(other) && to >= one.max(other);
        thing.is_long && on_the_other_side && near_by && past && thing.height >= zone.extent.high[2]
    };
    things.iter().any(|thing| screens(&thing))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use crate::check::testing::site;
    use crate::check::walk::yard::YARD;
    use crate::walk::{FamilyStanding, FamilyTold, GateWalk};

    /// The yard with two guide posts, 80 mm beside the leaf.
    const POSTS: &str = r#"[[gate.post]]
    id = "guide-out"
    role = "guide"
    at = ["4.3 m", "-0.16 m", "0 m"]
    width = "100 mm"
    height = "2 m"
    [[gate.post]]
    id = "guide-in"
    role = "guide"
    at = ["4.3 m", "0.16 m", "0 m"]
    width = "100 mm"
    height = "2 m"
    [[operator]]"#;

    fn yard(opening: &str) -> String {
        YARD.replace("[[operator]]", POSTS)
            .replace(
                "width = \"100 mm\"\n    [[gate.post]]",
                "width = \"100 mm\"\n    height = \"2 m\"\n    [[gate.post]]",
            )
            .replace(
                "thickness = ",
                &format!("opening = \"{opening}\"\n    thickness = "),
            )
    }

    fn arms(text: &str) -> Vec<FamilyTold> {
        let site = site(text);
        let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
        walk.prove_arms(1_000)
    }

    fn assumed(text: &str) -> String {
        let site = site(text);
        let walk = GateWalk::of(&site, &site.gate[0]).unwrap();
        let found = walk.assumptions().iter();
        let found = found.filter(|one| one.what.contains("through the leaf"));
        found.map(|one| one.value.clone()).collect()
    }

    #[test]
    fn fails_where_an_arm_is_carried_to_a_bare_post() {
        let arms = arms(&yard("40 mm"));
        assert_eq!(arms.len(), 4, "{arms:?}");
        for arm in &arms {
            assert_eq!(arm.standing, FamilyStanding::Refuted);
            let told = arm.refuted_by.as_ref().unwrap();
            assert!(
                told.sentence.contains("no strip on it feels the arm"),
                "{}",
                told.sentence
            );
        }
    }

    #[test]
    fn holds_where_no_arm_goes_through() {
        let narrow = yard("5 mm");
        assert!(arms(&narrow).is_empty());
        assert!(
            assumed(&narrow).contains("nothing holds it"),
            "{}",
            assumed(&narrow)
        );
    }

    #[test]
    fn unknown_facts_are_told() {
        assert_eq!(assumed(YARD), "not looked at");
    }

    #[test]
    fn a_fence_keeps_people_from_reaching_through() {
        let fence = "[[gate.nearby]]\n    id = \"fence\"\n    what = \"mesh\"\n    from = [\"4.4 m\", \"0.4 m\", \"0 m\"]\n    to = [\"9 m\", \"0.4 m\", \"0 m\"]\n    height = \"2 m\"\n    [[operator]]";
        let fenced = yard("40 mm").replace("[[operator]]", fence);
        let names: Vec<String> = arms(&fenced).into_iter().map(|one| one.family).collect();
        // Whoever would reach from inside to the outer post while the leaf closes stands behind the fence.
        assert!(
            !names
                .iter()
                .any(|name| name.contains("guide-out, leaf closing")),
            "{names:?}"
        );
        assert!(
            names
                .iter()
                .any(|name| name.contains("guide-in, leaf closing")),
            "{names:?}"
        );
    }
}
