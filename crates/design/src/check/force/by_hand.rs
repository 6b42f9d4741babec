//! Whether the weakest person who may have to can move the leaf by hand, its drive released.
//!
//! Slides are pushed along their track, both ways; swing leaves at their free end, at every angle; leaves and arms that
//! rise at their free end as well. There is no wind. Where a leaf runs by itself, the same force holds it back.
//!
//! The weaker person of the guide forces of HSE L23 governs. On the clear part of the travel the leaf is held against the
//! force to keep a load moving; where seals or a catch are met for a moment, and at the release, against the force to
//! start or stop one. Debris is taken to be cleared away first. A crank or a hand chain on the drive divides the push.

use super::rising::{Rising, RisingAt, hardest, rises, rising};
use super::sliding::{Conditions, on_the_level};
use super::swing_drive::swings;
use super::turning::{At, torque_at, way};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::Formula as _;
use formula::motion::{PushPullGuide, Pusher, SlideGateForce, SwingGateTorque};
use quantity::{Angle, Force, Quantity as _, Ratio};
use site::{Direction, Gate, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-by-hand",
    codes: BOTH,
    leaves_open: "breaking away after standing long, debris, snow and ice that are not cleared first, a child or an ill person, and what fire access asks",
    concerns: "each leaf of a gate",
    ask,
};

/// Parts into which the travel of a swing leaf is cut.
const STEPS: u32 = 36;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                by_hand(asking, site, gate, leaf)
            });
        }
    }
}

fn by_hand<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let pushes = pushes(asking, site, gate, leaf);
    let efforts = efforts(asking, site, gate, leaf);
    let (pushes, efforts) = (pushes?, efforts?);
    let Pushes { met, clear } = pushes;
    let guide = asking.work(&PushPullGuide { who: Pusher::Women })?;
    let effort = efforts
        .into_iter()
        .fold(None, |most: Option<Force>, effort| match most {
            Some(most) if most > effort => Some(most),
            _ => Some(effort),
        });
    asking.say(|print| {
        let release = effort.map_or_else(String::new, |effort| {
            format!(" The release takes {}.", print.q(effort))
        });
        format!(
            "By hand the leaf takes {} to keep moving at its hardest place, and {} where seals or a catch are met; the weaker \
             figures of the guide are {} to keep moving and {} to start or stop.{release}",
            print.q(clear),
            print.q(met),
            print.q(guide.keep),
            print.q(guide.start)
        )
    });
    let moving = Comparison::at_most(
        Labeled::new("push to keep moving", clear),
        Labeled::new("guide force to keep moving", guide.keep),
    );
    let starting = Comparison::at_most(
        Labeled::new("push against seals and catch", met),
        Labeled::new("guide force to start", guide.start),
    );
    let releasing = effort.map(|effort| {
        Comparison::at_most(
            Labeled::new("effort of the release", effort),
            Labeled::new("guide force to start", guide.start),
        )
    });
    Outcome::worst(
        [Some(moving), Some(starting), releasing]
            .into_iter()
            .flatten(),
    )
    .ok_or(Halt)
}

/// The hardest pushes that move a released leaf by hand.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Pushes {
    /// Where seals or a catch are met.
    pub(crate) met: Force,
    /// On the clear part of the travel.
    pub(crate) clear: Force,
}

/// The hardest pushes at a released leaf, by hand or by its crank, on a calm day.
pub(crate) fn pushes<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Pushes, Halt> {
    let met = push(asking, site, (gate, leaf), true);
    let clear = push(asking, site, (gate, leaf), false);
    let gear = hand_gear(asking, site, gate, leaf);
    Ok(Pushes {
        met: met? / gear,
        clear: clear? / gear,
    })
}

/// What a crank or a hand chain makes of a push; one where there is none.
fn hand_gear<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &Gate, leaf: &Leaf) -> Ratio {
    let gear = site
        .operators_of_leaf(gate, leaf)
        .next()
        .and_then(|operator| {
            asking.read_if_there(&operator.origin, "hand_gear", operator.hand_gear.as_ref())
        });
    gear.unwrap_or(Ratio::from_base(1.0))
}

/// The effort at the release of each operator of the leaf.
fn efforts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &Gate,
    leaf: &Leaf,
) -> Result<Vec<Force>, Halt> {
    let efforts: Vec<Result<Force, Halt>> = site
        .operators_of_leaf(gate, leaf)
        .map(|operator| read!(asking, operator.release_effort))
        .collect();
    efforts.into_iter().collect()
}

/// The hardest push at the leaf over its travel, both ways, on a calm day.
fn push<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    hindered: bool,
) -> Result<Force, Halt> {
    if swings(gate) {
        return swung(asking, site, (gate, leaf), hindered);
    }
    if rises(gate) {
        return raised(asking, site, gate, leaf);
    }
    let calm = Conditions {
        wind: None,
        hindered: false,
        speeding_up: false,
    };
    let level = on_the_level(asking, site, gate, leaf, calm);
    let slope = read!(asking, gate.slope);
    let seals = if hindered {
        read!(asking, gate.seal_force)
    } else {
        Ok(Force::from_base(0.0))
    };
    let (level, slope) = (level?, slope?);
    let seal_force = seals?;
    let level = SlideGateForce {
        seal_force,
        ..level
    };
    let ways = [slope, -slope].map(|slope| asking.work(&SlideGateForce { slope, ..level }));
    let [opening, closing] = ways;
    Ok(larger(opening?.steady.abs(), closing?.steady.abs()))
}

fn larger(one: Force, other: Force) -> Force {
    if one > other { one } else { other }
}

/// The hardest push at the free end of a swing leaf.
fn swung<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    hindered: bool,
) -> Result<Force, Halt> {
    let at = At {
        angle: Angle::from_base(0.0),
        wind: None,
        direction: Direction::Opening,
        speeding_up: false,
        hindered,
    };
    let closed = torque_at(asking, site, gate, leaf, at)?;
    let mut hardest = (0.0, closed);
    for step in 0..=STEPS {
        let angle = closed.travel_angle * (f64::from(step) / f64::from(STEPS));
        for direction in [Direction::Opening, Direction::Closing] {
            let way = way(direction);
            let here = SwingGateTorque {
                angle,
                way,
                ..closed
            };
            let steady = here
                .evaluate()
                .map_or(f64::INFINITY, |gives| gives.steady.base().abs());
            if steady > hardest.0 {
                hardest = (steady, here);
            }
        }
    }
    let gives = asking.work(&hardest.1)?;
    Ok(Force::from_base(
        gives.steady.base().abs() / closed.width.base(),
    ))
}

/// The hardest push at the free end of a leaf or an arm that rises.
fn raised<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    let worst = hardest(
        asking,
        RisingAt::free,
        |asking, at| rising(asking, site, gate, leaf, at),
        Rising::demand,
    );
    let reach = read!(asking, leaf.length);
    let (worst, reach) = (worst?, reach?);
    Ok(Force::from_base(match worst {
        Rising::Turning(..) => worst.demand() / reach.base(),
        Rising::Lifting(..) => worst.demand(),
    }))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SLIDE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0 ± 0.001"
        seal_force = "0 lbf"
        debris_force = "0 lbf"
        [[gate.leaf]]
        id = "leaf"
        mass = "640 lb ± 5 %"
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [[operator]]
        id = "drive"
        gate = "main"
        release_effort = "15 lbf"
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "single-swing"
        travel_angle = "90°"
        seal_force = "0 N"
        [[gate.leaf]]
        id = "leaf"
        length = "2 m"
        mass = "100 kg"
        center_along = "1 m"
        [gate.leaf.hinges]
        spacing = "1 m"
        pin_diameter = "20 mm"
        friction = "0.2"
        lean_along = "0"
        lean_across = "0.1"
    "#;

    #[test]
    fn holds_on_a_level_track() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_uphill_and_on_a_leaning_post() {
        let steep = SLIDE.replace("0 ± 0.001", "0.04");
        assert_eq!(only(&CHECK, &steep).verdict, Verdict::Fails);
        // By hand: 981 N on an arm of 1 m at a lean of 0.1 is 98 N·m, and 2 m out that is 49 N beside hinge friction of 3 N.
        let leaning = only(&CHECK, SWING);
        let newtons = leaning
            .demand
            .as_ref()
            .and_then(|demand| demand.value)
            .unwrap_or_default();
        assert!(
            (newtons - 51.6).abs() < 0.5,
            "{newtons} {}",
            leaning.sentence
        );
        let heavy = SWING.replace("100 kg", "160 kg");
        assert_eq!(only(&CHECK, &heavy).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_with_a_stiff_release() {
        let stiff = SLIDE.replace("15 lbf", "60 lbf");
        assert_eq!(only(&CHECK, &stiff).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_release_and_the_slope() {
        let bare = SLIDE.replace("slope =", "#").replace("release_effort", "#");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
