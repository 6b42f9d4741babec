//! What the leaf weighs, against what its drive, its wheels and its hinges are rated for.
//!
//! Weighed where it was weighed, else the sum of its members. The drive is held against the mass and the length on its
//! data sheet; the wheels of a track slide share the weight; one hinge of a swing leaf is taken to carry all of it. The
//! trolleys of a cantilever slide carry more than the weight, which is a question of its own.

use super::mass;
use crate::asking::{Asking, pick, read};
use crate::check::drive::operators_of_leaf;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Acceleration, Force, Mass, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-mass",
    codes: BOTH,
    leaves_open: "water, snow and ice on the leaf, and whatever is hung on it later",
    concerns: "each leaf",
    ask,
};

/// Standard gravity in meters per second squared.
pub(crate) const GRAVITY: f64 = 9.806_65;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                against_ratings(asking, site, gate, leaf)
            });
        }
    }
}

fn against_ratings<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let mass = mass(asking, leaf);
    let drive = drive(asking, site, gate, leaf, &mass);
    let carried = carried(asking, gate, leaf, &mass);
    let (mass, mut all, carried) = (mass?, drive?, carried?);
    all.extend(carried);
    let least = Outcome::worst(all).ok_or(Halt)?;
    asking.say(|print| {
        let rated = match &least {
            Outcome::Compared(least) => {
                format!(
                    "; of its limits the nearest is {}: {} of {}",
                    least.capacity.label,
                    print.value(&least.demand.value),
                    print.value(&least.capacity.value)
                )
            }
            _ => String::new(),
        };
        format!("The leaf weighs {}{rated}.", print.q(mass))
    });
    Ok(least)
}

fn drive<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
    mass: &Result<Mass, Halt>,
) -> Result<Vec<Comparison>, Halt> {
    let length = read!(asking, leaf.length);
    let mut ratings = Vec::new();
    for operator in operators_of_leaf(asking, site, (gate, leaf))? {
        let rated_mass = read!(asking, operator.rated_mass);
        let rated_length = read!(asking, operator.rated_length);
        ratings.push((rated_mass, rated_length));
    }
    let mut all = Vec::new();
    for (rated_mass, rated_length) in ratings {
        all.push(Comparison::at_most(
            Labeled::new("mass of the leaf", (*mass)?),
            Labeled::new("rated mass of the drive", rated_mass?),
        ));
        all.push(Comparison::at_most(
            Labeled::new("length of the leaf", length?),
            Labeled::new("rated length of the drive", rated_length?),
        ));
    }
    Ok(all)
}

/// Weight on wheels or hinges, where the leaf has some.
fn carried<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    mass: &Result<Mass, Halt>,
) -> Result<Option<Comparison>, Halt> {
    let weight = |mass: Mass| -> Force { mass * Acceleration::from_base(GRAVITY) };
    match gate.kind {
        GateKind::TrackSlide => {
            let count = pick!(asking, gate.wheels?.count);
            let rated = read!(asking, gate.wheels?.rated_load);
            Ok(Some(Comparison::at_most(
                Labeled::new("weight of the leaf", weight((*mass)?)),
                Labeled::new("rated load of all wheels", rated? * f64::from(count?)),
            )))
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let rated = read!(asking, leaf.hinges?.rated_load)?;
            Ok(Some(Comparison::at_most(
                Labeled::new("weight of the leaf", weight((*mass)?)),
                Labeled::new("rated load of one hinge", rated),
            )))
        }
        GateKind::CantileverSlide
        | GateKind::VerticalPivot
        | GateKind::VerticalLift
        | GateKind::BarrierArm => Ok(None),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        material = "steel"
        [[gate.leaf.member]]
        what = "rails"
        count = 2
        length = "20 ft"
        section = "HSS 2x2x1/8"
        [[gate.leaf.member]]
        what = "mesh"
        length = "20 ft"
        width = "5 ft 6 in"
        mass_per_area = "1.1 lb/ft² ± 5 %"
        [gate.wheels]
        count = 2
        rated_load = "200 lbf"
        [[operator]]
        id = "drive"
        gate = "main"
        rated_mass = "500 lb"
        rated_length = "24 ft"
    "#;

    #[test]
    fn holds_and_the_members_are_summed() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // By hand: 2 · 20 · 3.05 lb and 20 · 5.5 · 1.1 lb.
        assert!(finding.sentence.contains("243"), "{}", finding.sentence);
        // The length comes nearest to its limit: 20 of 24 ft.
        assert!((finding.ratio.unwrap() - 20.0 / 24.0).abs() < 1e-9);
    }

    #[test]
    fn fails_on_wheels_that_are_too_weak() {
        let finding = only(&CHECK, &SITE.replace("200 lbf", "100 lbf"));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!((finding.ratio.unwrap() - 243.0 / 200.0).abs() < 1e-4);
    }

    #[test]
    fn unknown_without_ratings_and_a_section() {
        let bare = SITE
            .replace("rated_mass = \"500 lb\"", "")
            .replace("section = \"HSS 2x2x1/8\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let write: Vec<&str> = finding
            .missing
            .iter()
            .map(|missing| missing.write.as_str())
            .collect();
        assert_eq!(write.len(), 2, "{write:?}");
        assert!(write[0].starts_with("mass_per_length"), "{write:?}");
    }
}
