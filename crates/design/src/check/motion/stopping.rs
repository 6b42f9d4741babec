//! How far a leaf still goes once a device has seen something, at its fastest and downhill.
//!
//! For a contact edge it is held against the travel left in the edge after it has reported. For a beam or a scanner the
//! distance is a figure for the commissioning test, and for the minimum distance, which is a question of its own.

use super::cruise_of;
use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{Stop, StoppingDistance};
use quantity::{Quantity as _, Ratio};
use site::{Device, Direction, Gate, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-stopping-distance",
    codes: BOTH,
    leaves_open: "a leaf or arm that comes down with another load than when its braking was measured, worn brakes, ice and wind on the leaf; five measured stops each way replace the figure",
    concerns: "each device that protects people",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site.device.iter().filter(|device| stops_the_leaf(device)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            distance(asking, site, device)
        });
    }
}

/// The device reports something that the leaf must stop for.
fn stops_the_leaf(device: &Device) -> bool {
    matches!(
        device.protection,
        Some(ProtectionType::B1 | ProtectionType::B2)
    )
}

fn distance<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let gate = gate_of(asking, site, device)?;
    let left = if device.protection == Some(ProtectionType::B2) {
        Some(read!(asking, device.soft_travel))
    } else {
        None
    };
    let stop = stop(asking, site, gate, device);
    let (stop, left) = (stop?, left.transpose()?);
    asking.say(|print| {
        let rest = left.map_or_else(String::new, |left| {
            format!("; the edge has {} left after it reports", print.q(left))
        });
        format!(
            "Once {} reports, the leaf still goes {} in {}{rest}.",
            device.id,
            print.q(stop.total_distance),
            print.q(stop.total_time)
        )
    });
    let demand = Labeled::new("stopping distance", stop.total_distance);
    Ok(match left {
        Some(left) => Outcome::at_most(demand, Labeled::new("travel left in the edge", left)),
        None => Outcome::Figure(demand),
    })
}

/// The leaf is carried by its own weight on its way down; what its brake does must have been measured on that way.
fn comes_down(gate: &Gate) -> bool {
    use site::GateKind::{BarrierArm, VerticalLift, VerticalPivot};
    matches!(gate.kind, VerticalLift | VerticalPivot | BarrierArm)
}

/// The longest stop among the directions in which the device acts.
pub(crate) fn stop<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<Stop, Halt> {
    if comes_down(gate) {
        asking.note(|_| {
            "The leaf or arm comes down with its weight or its balance: the braking counts as it was measured on its way down.".to_owned()
        });
    }
    let speed = cruise_of(asking, gate);
    let device_time = read!(asking, device.response_time);
    let controller_time = match operator_of(asking, site, gate) {
        Ok(operator) => read!(asking, operator.reaction_time),
        Err(halt) => Err(halt),
    };
    let deceleration = read!(asking, gate.motion?.stopping_deceleration);
    let slope = steepest_down(asking, gate, device);
    asking.work(&StoppingDistance {
        speed: speed?,
        device_time: device_time?,
        controller_time: controller_time?,
        deceleration: deceleration?,
        slope: slope?,
    })
}

/// Slope of the travel in the direction that runs down the most; zero for a leaf that turns or lifts.
fn steepest_down<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<Ratio, Halt> {
    use site::GateKind::{CantileverSlide, TrackSlide};
    if !matches!(gate.kind, TrackSlide | CantileverSlide) {
        return Ok(Ratio::from_base(0.0));
    }
    let opening = read!(asking, gate.slope)?;
    let both = device.guards.is_empty();
    let down = |direction: Direction, slope: Ratio| {
        (both || device.guards.contains(&direction)).then_some(slope.base())
    };
    let ways = [
        down(Direction::Opening, opening),
        down(Direction::Closing, -opening),
    ];
    let steepest = ways.into_iter().flatten().fold(f64::INFINITY, f64::min);
    Ok(Ratio::from_base(steepest))
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0.01"
        [gate.motion]
        cruise_speed = "1 ft/s"
        stopping_deceleration = "6 ft/s² ± 10 %"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms ± 10 ms"
        [[device]]
        id = "edge"
        kind = "contact edge"
        gate = "main"
        protection = "B2"
        guards = ["closing"]
        response_time = "15 ms"
        soft_travel = "3 in"
    "#;

    #[test]
    fn holds_with_a_deep_edge() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 1 ft/s · 95 ms, and v²/2b with b = 6 ft/s² less gravity down a slope of 0.01 (closing runs down).
        let braking = 1.0 / (2.0 * (6.0 - 32.17405 * 0.01 / 1.0001_f64.sqrt()));
        let feet = 0.095 + braking;
        assert!((finding.demand.unwrap().value.unwrap() / 0.3048 - feet).abs() < 1e-6);
    }

    #[test]
    fn fails_with_a_thin_edge() {
        assert_eq!(
            only(&CHECK, &SITE.replace("3 in", "1 in")).verdict,
            Verdict::Fails
        );
    }

    /// A lift is stopped by the braking of its way down; no slope comes into it.
    #[test]
    fn a_leaf_that_comes_down_is_answered_by_its_own_braking() {
        let lift = SITE.replace("track-slide", "vertical-lift");
        let finding = only(&CHECK, &lift);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let feet = 0.095 + 1.0 / 12.0;
        assert!((finding.demand.unwrap().value.unwrap() / 0.3048 - feet).abs() < 1e-6);
    }

    #[test]
    fn a_beam_gets_a_figure() {
        let beam = SITE
            .replace("contact edge", "through-beam photo-eye")
            .replace("B2", "B1");
        assert_eq!(only(&CHECK, &beam).verdict, Verdict::FigureOnly);
    }

    #[test]
    fn unknown_without_response_and_brake() {
        let bare = SITE
            .replace("response_time = \"15 ms\"", "")
            .replace("stopping_deceleration = \"6 ft/s² ± 10 %\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
