//! Whether a leaf that is hung or taken down has two holds at each step, either of which keeps it from falling.
//!
//! A hold counts when it alone carries the whole leaf, or when it alone keeps the standing leaf from tipping: against the
//! wind at which the work stops, square to the leaf, and against a lean of one in fifty. Both tip the leaf about its
//! bottom edge. A leaf that one person may lift needs no such list.

use crate::asking::{Asking, Wants, read};
use crate::check::leaf::{center_up, mass};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::wind::WindPressureOfSpeed;
use formula::{Evidence, Source};
use quantity::{Force, Mass, MassDensity, Quantity as _, Torque};
use site::{Hanging, HangingStep, Hold, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lifting-propped",
    codes: BOTH,
    leaves_open: "what the props stand on, hooks and slings at an angle, a leaf that swings on its hoist, and whether somebody reads the wind",
    concerns: "each hanging of a leaf, and each leaf too heavy for one person",
    ask,
};

/// Load constant of the lifting equation, in kilograms: what one person may lift at best.
const ONE_PERSON: f64 = 23.0;
/// Lean of a leaf that stands, as a share of its weight that pushes sideways.
const LEAN: f64 = 0.02;
/// Force on a flat leaf over the pressure of the wind on its solid area.
const FLAT: f64 = 2.0;
/// Density of cold air in kg/m³.
const AIR: f64 = 1.25;
/// Standard gravity in m/s².
const GRAVITY: f64 = 9.806_65;

static LIFTING: Source = Source {
    work: "NIOSH applications manual for the lifting equation, 94-110",
    clause: "load constant 51 lb (23 kg)",
    evidence: Evidence::Seen,
    seen: "text of the manual as transcribed in a public repository of methods",
};

static HOLDS: Source = Source {
    work: "two holds at each step, either of which keeps the leaf; a lean of 2 %; twice the wind's pressure on the solid area of the leaf",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; gates that fall while they are moved by hand are the most common cause of death: http://www.dhfonline.org.uk/gsm/the-7-deadly-sins-of-automated-gates/150.htm",
};

/// How a hanging is written.
const HANGING: &str = "[[hanging]]\nid = \"hang-leaf\"\nleaf = \"leaf\"\nstops_at_wind = \"15 mph\"\n[[hanging.step]]\nwhat = \"leaf stood up on the track\"\nhold = [{ what = \"hoist\", rated_load = \"1000 lbf\" }, { what = \"two props\", side_load = \"300 lbf\", height = \"5 ft\" }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for hanging in &site.hanging {
        round.ask(About::new(&hanging.origin, &hanging.id), |asking| {
            hung(asking, site, hanging)
        });
    }
    for leaf in site.gate.iter().flat_map(|gate| &gate.leaf) {
        let listed =
            |hanging: &Hanging| leaf_of(site, hanging).is_some_and(|one| one.id == leaf.id);
        if !site.hanging.iter().any(listed) {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                unlisted(asking, site, leaf)
            });
        }
    }
}

/// The leaf of a hanging: the one that it names, or the only one of the site.
fn leaf_of<'s>(site: &'s Site, hanging: &Hanging) -> Option<&'s Leaf> {
    let mut leaves = site.gate.iter().flat_map(|gate| &gate.leaf);
    match &hanging.leaf {
        Some(name) => leaves.find(|leaf| leaf.id == *name),
        None => leaves.next().filter(|_| leaves.next().is_none()),
    }
}

/// A leaf whose hanging nobody has thought through: all is well where one person may lift it.
fn unlisted<'s>(asking: &mut Asking<'s>, site: &'s Site, leaf: &'s Leaf) -> Answer {
    let mass = mass(asking, leaf)?;
    let most = Mass::from_base(ONE_PERSON);
    asking.rest_on(&LIFTING);
    if mass > most {
        return asking.lack(&site.origin, "hanging", Wants::Table(HANGING));
    }
    asking.say(|print| {
        format!(
            "{} weighs {}; one person may lift up to {} held close.",
            capitalized(leaf.id.as_str()),
            print.q(mass),
            print.q(most)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("mass of the leaf", mass),
        Labeled::new("mass that one person may lift at best", most),
    ))
}

/// What would bring the leaf down.
#[derive(Clone, Copy)]
struct Demand {
    weight: Force,
    tipping: Torque,
}

fn hung<'s>(asking: &mut Asking<'s>, site: &'s Site, hanging: &'s Hanging) -> Answer {
    let demand = match leaf_of(site, hanging) {
        Some(leaf) => demand(asking, hanging, leaf),
        None => asking.lack(&hanging.origin, "leaf", Wants::Written("\"leaf\"")),
    };
    let mut steps = Ok(Vec::new());
    for step in &hanging.step {
        let holds = holds(asking, step);
        steps = steps.and_then(|mut steps: Vec<_>| {
            steps.push((step, holds?));
            Ok(steps)
        });
    }
    if hanging.step.is_empty() {
        steps = asking.lack(
            &hanging.origin,
            "step",
            Wants::Written("[{ what = \"leaf stood up on the track\", hold = [{ what = \"hoist\", rated_load = \"1000 lbf\" }] }]"),
        );
    }
    let (demand, steps) = (demand?, steps?);
    asking.rest_on(&HOLDS);
    let weakest = steps
        .iter()
        .map(|(step, holds)| (*step, second(holds, demand)))
        .max_by(|one, two| one.1.total_cmp(&two.1));
    let Some((step, used)) = weakest else {
        return Err(Halt);
    };
    asking.say(|print| {
        format!(
            "The leaf weighs {} and tips with {} in the wind at which the work stops; each step wants two holds, either of which \
             is enough. {}: \"{}\".{}",
            print.q(demand.weight),
            print.q(demand.tipping),
            if used.is_finite() { "The least is in hand at this step" } else { "Fewer than two holds at this step" },
            step.what,
            if used > 1.0 { " Add a hold before the first bolt is undone." } else { "" }
        )
    });
    Ok(compared(&steps, demand))
}

/// The second-best hold of the worst step, as weight or as tipping.
fn compared(steps: &[(&HangingStep, Vec<Strength>)], demand: Demand) -> Outcome {
    let worst = steps.iter().map(|(_, holds)| second_hold(holds, demand));
    let mut all = Vec::new();
    for hold in worst {
        all.push(match hold {
            Some(Strength {
                moment: Some(moment),
                load,
            }) if load.is_none_or(|load| demand.weight / load > demand.tipping / moment) => {
                Comparison::at_most(
                    Labeled::new("moment that tips the leaf", demand.tipping),
                    Labeled::new("moment of the second hold", moment),
                )
            }
            Some(Strength {
                load: Some(load), ..
            }) => Comparison::at_most(
                Labeled::new("weight of the leaf", demand.weight),
                Labeled::new("load of the second hold", load),
            ),
            _ => Comparison::at_most(
                Labeled::new("holds that a step needs", 2),
                Labeled::new("holds that it has", 1),
            ),
        });
    }
    Outcome::worst(all).unwrap_or(Outcome::Rule(false))
}

/// What a hold is good for.
#[derive(Debug, Clone, Copy)]
struct Strength {
    load: Option<Force>,
    moment: Option<Torque>,
}

impl Strength {
    /// Share of it that is used, by whichever way it holds better; one and less is enough.
    fn used(&self, demand: Demand) -> f64 {
        let carries = self.load.map_or(f64::INFINITY, |load| {
            share(demand.weight.base(), load.base())
        });
        let steadies = self.moment.map_or(f64::INFINITY, |moment| {
            share(demand.tipping.base(), moment.base())
        });
        carries.min(steadies)
    }
}

fn share(asked: f64, given: f64) -> f64 {
    if given > 0.0 {
        asked / given
    } else {
        f64::INFINITY
    }
}

fn second_hold(holds: &[Strength], demand: Demand) -> Option<Strength> {
    let mut sorted = holds.to_vec();
    sorted.sort_by(|one, two| one.used(demand).total_cmp(&two.used(demand)));
    sorted.get(1).copied()
}

/// Share used of the second-best hold; infinite where there is none.
fn second(holds: &[Strength], demand: Demand) -> f64 {
    second_hold(holds, demand).map_or(f64::INFINITY, |hold| hold.used(demand))
}

fn holds<'s>(asking: &mut Asking<'s>, step: &'s HangingStep) -> Result<Vec<Strength>, Halt> {
    let all: Vec<_> = step
        .hold
        .iter()
        .map(|hold| strength(asking, hold))
        .collect();
    all.into_iter().collect()
}

fn strength<'s>(asking: &mut Asking<'s>, hold: &'s Hold) -> Result<Strength, Halt> {
    if hold.side_load.is_none() {
        let load = read!(asking, hold.rated_load)?;
        return Ok(Strength {
            load: Some(load),
            moment: None,
        });
    }
    let load = asking.read_if_there(&hold.origin, "rated_load", hold.rated_load.as_ref());
    let side = read!(asking, hold.side_load);
    let height = read!(asking, hold.height);
    let moment = side?.base() * height?.base();
    Ok(Strength {
        load,
        moment: Some(Torque::from_base(moment)),
    })
}

fn demand<'s>(
    asking: &mut Asking<'s>,
    hanging: &'s Hanging,
    leaf: &'s Leaf,
) -> Result<Demand, Halt> {
    let mass = mass(asking, leaf);
    let speed = read!(asking, hanging.stops_at_wind);
    let length = read!(asking, leaf.length);
    let height = read!(asking, leaf.height);
    let solidity = read!(asking, leaf.solidity);
    let center = if leaf.center_up.is_some() {
        center_up(asking, leaf)
    } else {
        height.map(|height| height / 2.0)
    };
    let (mass, speed, length, height) = (mass?, speed?, length?, height?);
    let wind = asking.work(&WindPressureOfSpeed {
        speed,
        density: MassDensity::from_base(AIR),
        area: length * height * solidity?,
    })?;
    let weight = mass.base() * GRAVITY;
    let by_wind = FLAT * wind.force.base() * height.base() / 2.0;
    let by_lean = LEAN * weight * center?.base();
    Ok(Demand {
        weight: Force::from_base(weight),
        tipping: Torque::from_base(by_wind + by_lean),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        length = "6 m"
        height = "2 m"
        solidity = "50 %"
        mass = "300 kg ± 10 kg"
        [[hanging]]
        id = "hang"
        stops_at_wind = "6 m/s"
        [[hanging.step]]
        what = "stood up on the track"
        hold = [{ what = "hoist", rated_load = "8 kN" }, { what = "prop", side_load = "400 N", height = "1.5 m" }]
        [[hanging.step]]
        what = "guides closed"
        hold = [{ what = "guide", side_load = "900 N", height = "1.9 m" }, { what = "prop", side_load = "400 N", height = "1.5 m" }]
    "#;

    #[test]
    fn holds_with_two_at_each_step() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 2 · ½ · 1.25 · 36 · 6 m² · 1 m is 270 N·m, and 2 % of 2942 N at 1 m is 58.8 N·m; the prop holds 600.
        assert!((finding.demand.unwrap().value.unwrap() - 328.84).abs() < 0.01);
        assert!((finding.capacity.unwrap().value.unwrap() - 600.0).abs() < 1e-9);
    }

    #[test]
    fn fails_with_one_hold_a_weak_one_or_more_wind() {
        let one = SITE.replace(
            ", { what = \"prop\", side_load = \"400 N\", height = \"1.5 m\" }]\n        [[",
            "]\n        [[",
        );
        let finding = only(&CHECK, &one);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("Fewer than two"),
            "{}",
            finding.sentence
        );
        let weak = only(&CHECK, &SITE.replace("400 N", "200 N"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
        assert_eq!(
            only(&CHECK, &SITE.replace("6 m/s", "10 m/s")).verdict,
            Verdict::Fails
        );
    }

    #[test]
    fn unknown_while_nobody_has_listed_the_hanging_of_a_heavy_leaf() {
        let bare = SITE.split("[[hanging]]").next().unwrap().to_owned();
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let light = only(&CHECK, &bare.replace("300 kg ± 10 kg", "15 kg"));
        assert_eq!(light.verdict, Verdict::Holds, "{}", light.sentence);
        let calm = SITE.replace("stops_at_wind = \"6 m/s\"", "");
        assert_eq!(all(&CHECK, &calm)[0].missing.len(), 1);
    }
}
