//! The course of one scenario under a leaf that rises, for whoever wants to see it.

use super::super::account::{
    Account, Pictured, Pose, Sight, at_touch, check_step, command, middle, sights, spot,
};
use super::super::course::Course;
use super::super::device::Spot;
use super::super::scenario::Scenario;
use super::super::swing::case;
use super::super::watch::Walker;
use super::lane::{RisingLane, RisingWalk, Shape};
use formula::OutOfReach;
use quantity::{Quantity as _, Time};

impl RisingWalk {
    /// The course of a scenario, with frames at such a step from just before the body can be touched to a while after.
    pub fn account(&self, scenario: &Scenario, step: Time) -> Result<Account, OutOfReach> {
        let outcome = self.evaluate(scenario)?;
        check_step(step)?;
        let (lane, case) = (&self.lanes[scenario.pass], case(scenario));
        let walker = Walker::new(&case, &lane.people[case.body], 1.0);
        let sights = sights(&walker, &lane.fields);
        let starts = !sights.contains(&Sight::KeepsShut);
        let found = lane.run(&case);
        let command = starts
            .then(|| command(&found, &sights, lane.control.reaction))
            .flatten();
        let course = match command {
            Some(command) => Course::commanded(&lane.profile, &lane.control, command),
            None => lane.unhindered,
        };
        let half = lane.half + walker.person.reach;
        let time = Pictured::of(&walker, half, outcome.touch, lane.profile.end);
        let pictured = |time: f64| {
            let place = if starts { course.at(time).0 } else { 0.0 };
            (Pose::Front(lane.corners(place)), middle(&walker, time))
        };
        Ok(Account {
            outcome,
            sights,
            command: command.map(Time::from_base),
            frames: time.frames(step.base(), pictured),
            meets: found.touch.and_then(|(struck, _)| struck.meets).map(spot),
            at_touch: at_touch(outcome.touch, pictured),
        })
    }
}

impl RisingLane {
    /// The corners of the leaf at a place of its way, seen from the road.
    fn corners(&self, place: f64) -> [Spot; 4] {
        match &self.shape {
            Shape::Turning {
                swung,
                pivot,
                height,
                along,
                upward,
            } => swung
                .corners(place)
                .map(|(x, z)| spot((pivot + along * x, height + upward * z))),
            Shape::Lifting(lifted) => {
                let low = lifted.height(place);
                let high = low + lifted.tall;
                let (from, to) = (lifted.from, lifted.to);
                [(from, low), (to, low), (to, high), (from, high)].map(spot)
            }
        }
    }
}
