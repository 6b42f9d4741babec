//! The course of one scenario past leaves that swing, for whoever wants to see it.

use super::super::account::{
    Account, Pictured, Pose, Sight, at_touch, check_step, command, middle, sights, spot,
};
use super::super::scenario::Scenario;
use super::super::watch::Walker;
use super::lane::{SwingWalk, case};
use formula::OutOfReach;
use quantity::{Quantity as _, Time};

impl SwingWalk {
    /// The course of a scenario, with frames at such a step from just before the body can be touched to a while after.
    pub fn account(&self, scenario: &Scenario, step: Time) -> Result<Account, OutOfReach> {
        let outcome = self.evaluate(scenario)?;
        check_step(step)?;
        let (lane, case) = (&self.lanes[scenario.pass], case(scenario));
        let walker = Walker::new(&case, &lane.people[case.body], 1.0);
        let sights = sights(&walker, &lane.fields);
        let starts = !sights.contains(&Sight::KeepsShut);
        let command = starts
            .then(|| command(&lane.run(&case), &sights, lane.reaction))
            .flatten();
        let courses = command.map(|command| lane.commanded(command));
        let reach = lane.area[1].0.abs().max(lane.area[1].1.abs());
        let half = reach + walker.person.reach;
        let time = Pictured::of(&walker, half, outcome.touch, lane.end);
        let pictured = |time: f64| {
            let leaves = lane.wings.iter().enumerate().map(|(at, wing)| {
                let course = courses.as_ref().map_or(&wing.unhindered, |all| &all[at]);
                let place = if starts {
                    course.at(time - wing.delay).0
                } else {
                    0.0
                };
                wing.corners(place).map(spot)
            });
            (Pose::Above(leaves.collect()), middle(&walker, time))
        };
        Ok(Account {
            outcome,
            sights,
            command: command.map(Time::from_base),
            frames: time.frames(step.base(), pictured),
            meets: None,
            at_touch: at_touch(outcome.touch, pictured),
        })
    }
}
