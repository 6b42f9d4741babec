//! Whether a bollard stops the vehicle that it must stop, with its give, its section and its footing.
//!
//! The vehicle's energy over the whole give is the mean force; the foot of the pipe has to hold it in bending, and the
//! footing in the ground. Where the owner wants a rating, the test report counts instead: only a test of the whole
//! assembly gives a rating. Where the bollard names no vehicle, the one with the most energy that is expected counts.

use super::tested::tested;
use crate::asking::{Asking, Wants, read};
use crate::check::leaf::section;
use crate::check::structure::footing;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::leaf::Metal;
use formula::standing::{BollardBending, VehicleImpact};
use quantity::{Length, Mass, Quantity as _, Velocity};
use site::{Bollard, Foundation, SectionShape, Site, Vehicle};
use std::f64::consts::PI;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bollard-energy",
    codes: BOTH,
    leaves_open: "the peak of the force, twice the mean and more; the concrete fill; a bank or trench beside the footing; a rated bollard in another footing or soil than its test, and a wanted vehicle that rides higher than the tested one",
    concerns: "each bollard",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for bollard in &site.bollard {
        round.ask(
            About::new(&bollard.origin, &bollard.id),
            |asking| match bollard.wanted_test {
                Some(wanted) => tested(asking, bollard, wanted),
                None => stops(asking, site, bollard),
            },
        );
    }
}

fn stops<'s>(asking: &mut Asking<'s>, site: &'s Site, bollard: &'s Bollard) -> Answer {
    let vehicle = vehicle(asking, site, bollard);
    let distance = read!(asking, bollard.give);
    let height = read!(asking, bollard.strike_height);
    let pipe = pipe(asking, bollard);
    let yield_strength = read!(asking, bollard.yield_strength);
    let foundation = footing::named(asking, site, (&bollard.origin, bollard.foundation.as_ref()));
    let depth = foundation.and_then(|foundation| depth(asking, site, foundation));
    let ((mass, speed), distance, height) = (vehicle?, distance?, height?);
    let ((diameter, wall), yield_strength) = (pipe?, yield_strength?);
    let (foundation, depth) = (foundation?, depth?);
    let impact = asking.work(&VehicleImpact {
        mass,
        speed,
        distance,
    })?;
    let half = height / 2.0;
    let holds = asking.work(&BollardBending {
        diameter,
        wall,
        yield_strength,
        height,
        lean: if distance < half { distance } else { half },
        energy: impact.energy,
    })?;
    let needed = footing::depth_needed(asking, site, foundation, (impact.force, height))?;
    asking.say(|print| {
        format!(
            "{} has to stop a vehicle of {} at {}: {}, a mean force of {} while everything gives {}; its foot holds {}, and its footing needs {} of depth and has {}.",
            capitalized(bollard.id.as_str()),
            print.q(mass),
            print.q(speed),
            print.q(impact.energy),
            print.q(impact.force),
            print.q(distance),
            print.q(holds.force),
            print.q(needed),
            print.q(depth)
        )
    });
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("mean force of the vehicle", impact.force),
            Labeled::new("force at which the foot bends", holds.force),
        ),
        Comparison::at_most(
            Labeled::new("depth that the footing needs", needed),
            Labeled::new("depth of the footing", depth),
        ),
    ])
    .ok_or(Halt)
}

/// Mass and speed of the vehicle that the bollard must stop.
fn vehicle<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bollard: &'s Bollard,
) -> Result<(Mass, Velocity), Halt> {
    let named = bollard.vehicle_mass.is_some() || bollard.vehicle_speed.is_some();
    if named || site.vehicle.is_empty() {
        let mass = read!(asking, bollard.vehicle_mass);
        let speed = read!(asking, bollard.vehicle_speed);
        return Ok((mass?, speed?));
    }
    let all: Vec<_> = site
        .vehicle
        .iter()
        .map(|vehicle| expected(asking, vehicle))
        .collect();
    let all: Result<Vec<_>, Halt> = all.into_iter().collect();
    let energy = |one: &(Mass, Velocity)| one.0.base() * one.1.base().powi(2);
    all?.into_iter()
        .max_by(|one, two| energy(one).total_cmp(&energy(two)))
        .ok_or(Halt)
}

fn expected<'s>(asking: &mut Asking<'s>, vehicle: &'s Vehicle) -> Result<(Mass, Velocity), Halt> {
    let mass = read!(asking, vehicle.mass);
    let speed = read!(asking, vehicle.speed);
    Ok((mass?, speed?))
}

fn depth<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Length, Halt> {
    let depth = read!(asking, foundation.depth);
    // What the footing needs is asked for here as well, so that all that is missing is named at once.
    let width = footing::width(asking, foundation);
    let lateral = crate::check::structure::soil::lateral(asking, site);
    width.and(lateral.map(|_| Length::from_base(0.0)))?;
    depth
}

/// Outside diameter and wall of the pipe; the wall of a standard pipe follows from its area.
fn pipe<'s>(asking: &mut Asking<'s>, bollard: &'s Bollard) -> Result<(Length, Length), Halt> {
    let Some(section) = &bollard.section else {
        return asking.lack(&bollard.origin, "section", Wants::Written("\"pipe 6\""));
    };
    match section.shape() {
        SectionShape::RoundTube { diameter, wall } => Ok((diameter, wall)),
        SectionShape::Rod { diameter } => Ok((diameter, diameter / 2.0)),
        shape @ SectionShape::Pipe { .. } => {
            let pipe = section::bending(asking, shape, Metal::Steel)?;
            let diameter = pipe.depth.base();
            let inside = (diameter.powi(2) - 4.0 * pipe.area.base() / PI).max(0.0);
            let wall = (diameter - inside.sqrt()) / 2.0;
            Ok((pipe.depth, Length::from_base(wall)))
        }
        _ => asking.refuse("the bending of bollards is worked out for round ones only"),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        soil_class = "sand"
        [[foundation]]
        id = "footing-1"
        diameter = "24 in"
        depth = "48 in ± 1 in"
        held_at_grade = true
        [[bollard]]
        id = "bollard-1"
        section = "pipe 6"
        yield_strength = "35 ksi"
        strike_height = "18 in"
        vehicle_mass = "5000 lb"
        vehicle_speed = "4 mph ± 0.2 mph"
        give = "12 in"
        foundation = "footing-1"
    "#;

    #[test]
    fn holds_a_slow_pickup() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 5000 / 32.174 · 5.8667² / 2 is 2674 ft·lbf, over 1 ft 2674 lbf.
        assert!(
            finding.sentence.contains("2674 lbf"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_at_speed_and_in_a_shallow_hole() {
        let fast = only(&CHECK, &SITE.replace("4 mph ±", "12 mph ±"));
        assert_eq!(fast.verdict, Verdict::Fails, "{}", fast.sentence);
        let shallow = only(&CHECK, &SITE.replace("48 in ±", "18 in ±"));
        assert_eq!(shallow.verdict, Verdict::Fails, "{}", shallow.sentence);
        let loose = only(&CHECK, &SITE.replace("held_at_grade = true", ""));
        assert_eq!(loose.verdict, Verdict::Fails, "{}", loose.sentence);
    }

    #[test]
    fn unknown_without_give_section_soil_and_footing() {
        let bare = SITE
            .replace("give = \"12 in\"", "")
            .replace("section = \"pipe 6\"", "")
            .replace("soil_class = \"sand\"", "")
            .replace("diameter = \"24 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 4, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_in_poor_soil_until_somebody_has_looked() {
        let poor = SITE.replace("\"sand\"", "\"fill, peat or unknown\"");
        assert_eq!(only(&CHECK, &poor).verdict, Verdict::UnknownUntil);
        let tested = poor.replace("[climate]", "[climate]\nsoil_lateral = \"150 psf/ft\"");
        assert_eq!(only(&CHECK, &tested).verdict, Verdict::Holds);
    }

    #[test]
    fn a_vehicle_of_the_site_counts_where_the_bollard_names_none() {
        let any = SITE
            .replace("vehicle_mass = \"5000 lb\"", "")
            .replace("vehicle_speed = \"4 mph ± 0.2 mph\"", "")
            + "[[vehicle]]\nid = \"truck\"\nwhat = \"truck\"\nmass = \"30000 lb\"\nspeed = \"8 mph\"\n";
        assert_eq!(only(&CHECK, &any).verdict, Verdict::Fails);
    }

    const TESTED: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[bollard]]
        id = "bollard-1"
        wanted_test = "M30"
        test = "M30"
        test_penetration = "0.8 m"
        clear_behind = "1.5 m"
    "#;

    #[test]
    fn holds_and_fails_by_its_test() {
        let finding = only(&CHECK, TESTED);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let weak = TESTED.replace(
            "test = \"M30\"\n        test_p",
            "test = \"PU30\"\n        test_p",
        );
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
        // A vehicle that came 1.2 m is rated to 7 m.
        assert_eq!(
            only(&CHECK, &TESTED.replace("0.8 m", "1.2 m")).verdict,
            Verdict::Fails
        );
        let bare = TESTED.replace("clear_behind = \"1.5 m\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
    }
}
