//! Whether the leaf stands as soon after each device's trip as the walk test assumed.
//!
//! What is measured is the whole chain: from the trip of the device to the standstill of the leaf at its running speed, ten
//! times. What was assumed is the slowest response, the slowest reaction and the weakest brake of the fastest leaf.

use crate::asking::{Asking, End, Wants};
use crate::check::drive::operator_of;
use crate::check::motion::turns;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::walk::senses_people;
use formula::{Evidence, Source};
use quantity::{Measured, Quantity as _, Time};
use site::{Device, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "walk-response-as-assumed",
    codes: BOTH,
    leaves_open: "readings on other days: cold, wet, on battery; stopping and reversing distances, which are questions of their own",
    concerns: "each device that stops the leaf for people",
    ask,
};

/// Readings of one chain.
const READINGS: usize = 10;

static TEN: Source = Source {
    work: "ISO 13855:2024",
    clause: "stop-time measurement, at least ten readings for each condition",
    evidence: Evidence::Seen,
    seen: "an article of a machine-safety service firm on its national adoption of 2025; address withheld, it carries a company's name",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let stops = |device: &&Device| senses_people(device) && !device.guards.is_empty();
    for device in site.device.iter().filter(stops) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            as_assumed(asking, site, device)
        });
    }
}

fn as_assumed<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let gate = gate_of(asking, site, device)?;
    let assumed = assumed(asking, site, gate, device);
    let worst = worst(asking, device);
    let (assumed, worst) = (assumed?, worst?);
    asking.rest_on(&TEN);
    asking.say(|print| {
        format!(
            "From the trip of {} to standstill the worst of {} readings is {}; the walk test assumes {}.",
            device.id,
            device.stopped_after.len(),
            print.q(worst),
            print.q(assumed)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("worst reading", worst),
        Labeled::new("assumed in the walk test", assumed),
    ))
}

/// The slowest chain that the tolerances leave.
fn assumed<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    device: &'s Device,
) -> Result<Time, Halt> {
    let response = asking.read_at(
        (&device.origin, "response_time"),
        device.response_time.as_ref(),
        End::High,
    );
    let reaction = match operator_of(asking, site, gate) {
        Ok(operator) => asking.read_at(
            (&operator.origin, "reaction_time"),
            operator.reaction_time.as_ref(),
            End::High,
        ),
        Err(halt) => Err(halt),
    };
    let speed = speed(asking, gate);
    let Some(motion) = &gate.motion else {
        return asking.lack_of(&gate.origin, "motion.stopping_deceleration");
    };
    let brake = asking.read_at(
        (&motion.origin, "stopping_deceleration"),
        motion.stopping_deceleration.as_ref(),
        End::Low,
    );
    let (response, reaction, speed, brake) = (response?, reaction?, speed?, brake?);
    let all = response.base() + reaction.base() + speed / brake.base();
    Ok(Time::from_base(all))
}

/// Speed of the edge or of the free end at its fastest, in m/s.
fn speed<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<f64, Halt> {
    let Some(motion) = &gate.motion else {
        return asking
            .lack_of::<quantity::Velocity>(&gate.origin, "motion.cruise_speed")
            .map(quantity::Quantity::base);
    };
    if !turns(gate) {
        let key = (&motion.origin, "cruise_speed");
        let speed = asking.read_at(key, motion.cruise_speed.as_ref(), End::High)?;
        return Ok(speed.base());
    }
    let key = (&motion.origin, "cruise_turning_speed");
    let turning = asking.read_at(key, motion.cruise_turning_speed.as_ref(), End::High);
    let mut longest = 0.0_f64;
    for leaf in &gate.leaf {
        let key = (&leaf.origin, "length");
        longest = longest.max(asking.read_at(key, leaf.length.as_ref(), End::High)?.base());
    }
    Ok(turning?.base() * longest)
}

/// The worst of ten readings.
fn worst<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Time, Halt> {
    if device.stopped_after.len() < READINGS {
        let ten = "[\"240 ms\", \"251 ms\"]   # ten readings at the running speed";
        return asking.lack(&device.origin, "stopped_after", Wants::Written(ten));
    }
    let highs = device.stopped_after.iter().map(Measured::high);
    Ok(highs.fold(Time::from_base(0.0), |worst, reading| {
        if reading > worst { reading } else { worst }
    }))
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
        [gate.motion]
        cruise_speed = "0.3 m/s"
        stopping_deceleration = "2 m/s² ± 25 %"
        [[operator]]
        id = "drive"
        gate = "main"
        reaction_time = "80 ms ± 10 ms"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        gate = "main"
        guards = ["closing"]
        response_time = "20 ms"
        stopped_after = ["230 ms", "240 ms", "250 ms", "260 ms", "270 ms", "280 ms", "290 ms", "300 ms", "305 ms", "308 ms"]
    "#;

    #[test]
    fn holds_while_the_worst_reading_is_within_what_was_assumed() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 20 ms + 90 ms + 0.3/1.5 s.
        assert!((finding.capacity.unwrap().value.unwrap() - 0.31).abs() < 1e-9);
    }

    #[test]
    fn fails_with_one_reading_that_is_slower() {
        let slow = SITE.replace("308 ms", "330 ms");
        assert_eq!(only(&CHECK, &slow).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_until_ten_readings_are_taken() {
        let nine = SITE.replace(", \"308 ms\"", "");
        let finding = only(&CHECK, &nine);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
