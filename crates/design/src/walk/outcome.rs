//! One walk past a leaf that swings or rises, in words: who is touched where and when, and with what force.

use super::told::{FAR_MORE, Told, capital, severity};
use super::{GateWalk, Seed};
use quantity::{Length, Quantity as _, Time};
use sim::walk::{Account, AnyWorld, Body, RisingLeaf, Scenario, Spot, Touch};

impl GateWalk<'_> {
    /// A course in words.
    pub(super) fn turned_or_raised(
        &self,
        scenario: &Scenario,
        account: &Account,
        seed: Seed,
    ) -> Told {
        let outcome = &account.outcome;
        let body = &self.lowered.world.bodies()[scenario.body];
        let who = self.who(scenario, body);
        let after = match &outcome.touch {
            Some(touch) => format!(
                "{} {}",
                self.met((scenario, body), touch, account.meets),
                self.at_height(scenario, body)
            ),
            None => format!("{}.", capital(outcome.class.words())),
        };
        Told {
            seed: Some(seed),
            ends: outcome.class.words().to_owned(),
            bad: outcome.class.is_bad(),
            sentence: format!("{who} {after}"),
            events: self.events(scenario, account),
            severity: outcome
                .touch
                .map_or(0.0, |touch| severity(self, &touch).base()),
        }
    }

    /// The touch: `4.1 s after it starts closing the leaf touches them ...`
    fn met(
        &self,
        (scenario, body): (&Scenario, &Body),
        touch: &Touch,
        meets: Option<Spot>,
    ) -> String {
        let print = self.print;
        let side = if touch.at.y.base() < 0.0 {
            "outside"
        } else {
            "inside"
        };
        format!(
            "{} after it starts {} the leaf, going at {} there, touches them {} the gate line, {}, {}: {}.",
            capital(&print.q(touch.time)),
            self.moving(scenario),
            print.q(touch.speed),
            beside(&print.q(Length::from_base(touch.at.y.base().abs())), side),
            self.place(touch.at.x),
            self.where_on(body, touch, meets),
            self.force(touch),
        )
    }

    /// How high it touches them, and what is behind them.
    fn where_on(&self, body: &Body, touch: &Touch, meets: Option<Spot>) -> String {
        let print = self.print;
        if let (Some(meets), AnyWorld::Rising(world)) = (meets, &self.lowered.world) {
            let height = format!("{} above the ground", print.q(meets.y));
            let RisingLeaf::Turning(arm) = world.leaf else {
                return height;
            };
            let (along, up) = (meets.x - arm.pivot, meets.y - arm.height);
            let from_pivot = Length::from_base(along.base().hypot(up.base()));
            return format!("{height} and {} from its pivot", print.q(from_pivot));
        }
        let part = &body.parts[touch.part];
        let heights = format!(
            "between {} and {} above the ground",
            print.q(part.bottom),
            print.q(part.top)
        );
        if touch.gap.base().is_finite() {
            let gap = print.q(touch.gap);
            format!("{heights}, in a gap of {gap} to what stands opposite")
        } else {
            format!("{heights}, nothing behind")
        }
    }

    fn force(&self, touch: &Touch) -> String {
        let print = self.print;
        let limit = print.q(touch.limit);
        if touch.force.base() > FAR_MORE * touch.limit.base() {
            return format!(
                "it is not stopped in time, and presses far harder than the {limit} that is allowed"
            );
        }
        let fall = |time: Option<Time>| {
            time.map_or_else(
                || "it never falls to what may last".to_owned(),
                |time| format!("it is down to what may last after {}", print.q(time)),
            )
        };
        format!(
            "{} where {limit} is allowed; {}",
            print.q(touch.force),
            fall(touch.lasts)
        )
    }

    /// What acts in the direction, and what of it cannot see them.
    fn at_height(&self, scenario: &Scenario, body: &Body) -> String {
        let acting: Vec<_> = self.in_order(self.direction(scenario)).collect();
        if acting.is_empty() {
            return "No beam or field acts in this direction.".to_owned();
        }
        let words: Vec<String> = acting
            .iter()
            .map(|sensing| {
                let id = &sensing.id;
                if self.is_out_of_height(sensing, body) {
                    format!("{id} is not at their height")
                } else {
                    format!("{id} does not keep the leaf off them")
                }
            })
            .collect();
        format!("{}.", capital(&words.join("; ")))
    }
}

fn beside(distance: &str, side: &str) -> String {
    format!("{distance} {side}")
}
