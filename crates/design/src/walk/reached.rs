//! Arms through the leaf in words: who is held where, how hard, and what feels it.

use super::GateWalk;
use super::decided::{FamilyTold, Standing};
use super::reach::word;
use super::told::{Event, Told, capital, severity};
use quantity::{Length, Quantity as _};
use sim::walk::{Catch, Outcome, Reach, ReachVerdict, Walk, World};

/// Steps of the leaf's way at which an arm is held before a proof begins.
const TRIED: u32 = 4096;

impl GateWalk<'_> {
    /// How many arms may reach through.
    pub(super) fn reaches(&self) -> usize {
        self.sliding().map_or(0, |(_, walk)| walk.reaches().len())
    }

    /// Proves or refutes each arm that may reach through the leaf, looking at so many pieces of time at most.
    pub fn prove_arms(&self, most: u64) -> Vec<FamilyTold> {
        self.prove_reaches(most, &|| {})
    }

    /// The same; tells when one is done.
    pub(super) fn prove_reaches(&self, most: u64, done: &dyn Fn()) -> Vec<FamilyTold> {
        let Some((world, walk)) = self.sliding() else {
            return Vec::new();
        };
        let one = |reach: &Reach| {
            let told = self.proved_reach(world, walk, reach, most);
            done();
            told
        };
        walk.reaches().iter().map(one).collect()
    }

    fn proved_reach(&self, world: &World, walk: &Walk, reach: &Reach, most: u64) -> FamilyTold {
        let catch = &world.catches[reach.catch];
        let mut told = FamilyTold {
            family: format!(
                "someone reaches through the leaf beside {}, leaf {}",
                catch.name,
                word(catch.direction)
            ),
            standing: Standing::Undecided,
            open: 1.0,
            boxes: 0,
            refuted_by: None,
        };
        if let Ok((travel, worst)) = walk.worst_reach(reach, TRIED)
            && worst.class.is_bad()
        {
            told.standing = Standing::Refuted;
            told.open = 0.0;
            told.refuted_by = Some(self.held(catch, travel, &worst));
            return told;
        }
        let Ok(proof) = walk.prove_reach(reach, most) else {
            return told;
        };
        told.boxes = proof.boxes;
        match proof.verdict {
            ReachVerdict::Proved => {
                told.standing = Standing::Proved;
                told.open = 0.0;
            }
            ReachVerdict::Undecided(share) => told.open = share.base(),
            ReachVerdict::Refuted(travel, outcome) => {
                told.standing = Standing::Refuted;
                told.open = 0.0;
                told.refuted_by = Some(self.held(catch, travel, &outcome));
            }
        }
        told
    }

    /// An arm that is held, in words.
    fn held(&self, catch: &Catch, travel: Length, outcome: &Outcome) -> Told {
        let print = self.print;
        let moves = word(catch.direction);
        let feels = if catch.edge.is_some() {
            "the strip on it feels the arm"
        } else {
            "no strip on it feels the arm"
        };
        let (after, events) = outcome.touch.map_or_else(
            || (String::new(), Vec::new()),
            |touch| {
                let force = if touch.force.base() > 10.0 * touch.limit.base() {
                    "far harder than".to_owned()
                } else {
                    format!("with {} where", print.q(touch.force))
                };
                let sentence = format!(
                    "{} after it starts, {} on its way and at {}, the leaf has carried the arm to {} and presses it {force} {} is allowed; {feels}.",
                    capital(&print.q(touch.time)),
                    print.q(travel),
                    print.q(touch.speed),
                    catch.name,
                    print.q(touch.limit)
                );
                let event = |seconds: f64, what: String| Event { seconds, what };
                let events = vec![
                    event(0.0, format!("the leaf starts {moves}")),
                    event(
                        touch.time.base(),
                        format!("the arm is held against {}", catch.name),
                    ),
                ];
                (sentence, events)
            },
        );
        Told {
            seed: None,
            ends: outcome.class.words().to_owned(),
            bad: outcome.class.is_bad(),
            sentence: format!(
                "Someone reaches through an opening of the {moves} leaf beside {} and stays. {after}",
                catch.name
            ),
            events,
            severity: outcome
                .touch
                .map_or(0.0, |touch| severity(self, &touch).base()),
        }
    }
}
