//! An arm through an opening of the leaf, carried along to something fixed that the leaf passes: a post, the end of a fence.
//!
//! The arm may come in at any moment and stays: neither a beam that it cut on the way in nor the time to draw back counts.
//! So when it is held first is any moment at which an opening passes, and the place of the leaf then says all: how fast it
//! is, and how far it goes on until the strip on the post, or the drive, has stopped it.

use super::device::{ContactEdge, Direction};
use super::harm::{Bounds, Feel, Spring, Struck, harm};
use super::lane::{Lane, Walk};
use super::scenario::{Class, Outcome};
use super::world::{World, at_least_zero, positive};
use super::{evaluate::Found, world::Pass};
use formula::OutOfReach;
use quantity::{Length, Quantity as _};

/// Something fixed against which an arm is carried that reaches through the leaf.
#[derive(Debug, Clone, PartialEq)]
pub struct Catch {
    /// What it is, by its name on the site.
    pub name: String,
    /// The direction of motion in which it is met.
    pub direction: Direction,
    /// Travel of the leaf at which an opening of it first comes there.
    pub from: Length,
    /// Travel of the leaf at which the last opening of it is past.
    pub to: Length,
    /// The contact edge on it that acts in that direction.
    pub edge: Option<ContactEdge>,
    /// How far an arm may be squeezed there before it counts as trapped.
    pub squeeze: Length,
}

/// An arm that reaches through the leaf in one of its ways, to one of the things that hold it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Reach {
    /// Which of the leaf's ways.
    pub pass: usize,
    /// Which thing, by its place in the list.
    pub catch: usize,
}

impl Catch {
    pub(super) fn check(&self) -> Result<(), OutOfReach> {
        at_least_zero("from", self.from)?;
        positive("squeeze", self.squeeze)?;
        self.edge.iter().try_for_each(ContactEdge::check)?;
        if self.to >= self.from && self.to.base().is_finite() {
            Ok(())
        } else {
            Err(OutOfReach::new(
                "to",
                "an opening comes to a thing before it is past",
            ))
        }
    }

    /// What feels an arm there, and how soft it is.
    fn feel(&self, world: &World, pass: &Pass) -> Feel {
        let bare = world.bare_stiffness.base();
        let stiff = Spring {
            soft: bare,
            way: 0.0,
            hard: bare,
        };
        let spring = self.edge.as_ref().map_or(stiff, |edge| Spring {
            soft: edge.stiffness.base(),
            way: (edge.actuation_travel + edge.soft_travel).base(),
            hard: edge.hard_stiffness.base(),
        });
        let edge = self.edge.iter();
        let edge = edge.map(|edge| (edge.actuation_travel.base(), edge.response.base()));
        let drive = world.drive.iter();
        let drive = drive.filter(|drive| drive.guards.contains(&pass.direction));
        let drive = drive.map(|one| (spring.pressed(one.force.base()), one.response.base()));
        Feel {
            spring,
            after: edge.chain(drive).collect(),
        }
    }
}

/// One thing that holds an arm, in plain numbers.
#[derive(Debug, Clone)]
pub(super) struct Hold {
    /// Which thing.
    pub catch: usize,
    /// Places of the leaf at which an opening is there.
    pub from: f64,
    pub to: f64,
    pub feel: Feel,
    squeeze: f64,
}

/// What holds an arm in one pass.
pub(super) fn holds(world: &World, pass: &Pass) -> Vec<Hold> {
    let travel = pass.plan.travel.base();
    let catches = world.catches.iter().enumerate();
    catches
        .filter(|(_, one)| one.direction == pass.direction && one.from.base() <= travel)
        .map(|(at, one)| Hold {
            catch: at,
            from: one.from.base(),
            to: one.to.base().min(travel),
            feel: one.feel(world, pass),
            squeeze: one.squeeze.base(),
        })
        .collect()
}

impl Hold {
    /// An arm is held in no gap at all: the lower limit holds, and nobody is free once the leaf stands.
    pub(super) fn bounds(&self, lane: &Lane) -> Bounds {
        Bounds {
            gap: f64::INFINITY,
            squeeze: self.squeeze,
            ..lane.bounds
        }
    }

    /// What comes of an arm that is held with the leaf at a place.
    pub(super) fn found(&self, lane: &Lane, place: f64) -> Found {
        let profile = &lane.profile;
        let place = place.clamp(self.from, self.to);
        let time = profile.time_at(place).unwrap_or(profile.end);
        if profile.speed_at(time) <= 0.0 {
            return Found::harmless(Class::MetTheSide);
        }
        let struck = Struck {
            time,
            part: 0,
            x: 0.0,
            y: 0.0,
            meets: None,
            gap: 0.0,
            room: 0.0,
            command: None,
        };
        let harm = harm(
            profile,
            &lane.control,
            &self.bounds(lane),
            &self.feel,
            &struck,
        );
        Found {
            class: harm.class,
            touch: Some((struck, harm)),
        }
    }
}

impl Walk {
    /// Every arm that may reach through the leaf.
    pub fn reaches(&self) -> Vec<Reach> {
        let lanes = self.lanes.iter().enumerate();
        lanes
            .flat_map(|(pass, lane)| {
                let holds = lane.holds.iter();
                holds.map(move |hold| Reach {
                    pass,
                    catch: hold.catch,
                })
            })
            .collect()
    }

    /// What comes of an arm that is held after the leaf has gone so far; refuses one that is not among [`Walk::reaches`], and
    /// a place at which no opening is there.
    pub fn reach(&self, reach: &Reach, travel: Length) -> Result<Outcome, OutOfReach> {
        let (lane, hold) = self.hold(reach)?;
        let place = travel.base();
        if !(hold.from..=hold.to).contains(&place) {
            return Err(OutOfReach::new(
                "travel",
                "the leaf is where one of its openings passes the thing",
            ));
        }
        Ok(lane.outcome(0, &hold.found(lane, place)))
    }

    /// The worst of so many arms that are held at equal steps of the leaf's way, with that way.
    pub fn worst_reach(&self, reach: &Reach, count: u32) -> Result<(Length, Outcome), OutOfReach> {
        let (lane, hold) = self.hold(reach)?;
        let mut worst = (hold.from, hold.found(lane, hold.from));
        for step in 1..=count {
            let share = f64::from(step) / f64::from(count.max(1));
            let place = hold.from + share * (hold.to - hold.from);
            let found = hold.found(lane, place);
            if bad(&found).total_cmp(&bad(&worst.1)).is_gt() {
                worst = (place, found);
            }
        }
        Ok((Length::from_base(worst.0), lane.outcome(0, &worst.1)))
    }

    pub(super) fn hold(&self, reach: &Reach) -> Result<(&Lane, &Hold), OutOfReach> {
        let lane = self.lanes.get(reach.pass);
        lane.and_then(|lane| {
            let holds = lane.holds.iter();
            let found = holds.into_iter().find(|hold| hold.catch == reach.catch);
            found.map(|hold| (lane, hold))
        })
        .ok_or_else(|| OutOfReach::new("reach", "this is one of the arms that may reach through"))
    }
}

fn bad(found: &Found) -> f64 {
    found.touch.map_or(0.0, |(_, harm)| harm.severity)
}
