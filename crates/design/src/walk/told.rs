//! One walk in words: who does what where and when, how hard the leaf touches, and which device saw it.

use super::devices::{Sensing, Slot};
use super::{GateWalk, Seed};
use crate::figure::Print;
use quantity::{Length, Quantity as _, Ratio, Time};
use serde::{Deserialize, Serialize};
use sim::walk::{
    Account, AnyWalk, Beam, Behavior, Body, Class, Direction, Scanner, Scenario, Sight, Touch, Way,
};

/// One walk in words.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Told {
    /// What makes it again; missing of an arm that reaches through the leaf.
    pub seed: Option<Seed>,
    /// How it ends: touched beyond limits, trapped.
    pub ends: String,
    /// Nobody may end like this.
    pub bad: bool,
    /// The walk in sentences.
    pub sentence: String,
    /// What happens when, in order: seconds since the leaf started, and words.
    pub events: Vec<Event>,
    /// Force of the touch over its limit, or what else is used up the most.
    pub severity: f64,
}

/// Something that happens in a walk.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Event {
    /// Seconds since the leaf started.
    pub seconds: f64,
    /// What happens.
    pub what: String,
}

/// Frames of an account that is only told, not drawn.
pub(super) const COARSE: f64 = 1.0;
/// A force so many times the limit is told as far more than the limit: what the body is by then is no spring.
pub(super) const FAR_MORE: f64 = 10.0;

impl GateWalk<'_> {
    /// A walk in words.
    pub fn told(&self, seed: Seed) -> Told {
        let told = self.scenario(seed).and_then(|scenario| {
            let account = self.walk.account(&scenario, Time::from_base(COARSE))?;
            Ok(match self.walk {
                AnyWalk::Sliding(_) => self.in_words(&scenario, &account, seed),
                _ => self.turned_or_raised(&scenario, &account, seed),
            })
        });
        told.unwrap_or_else(|out| Told {
            seed: Some(seed),
            ends: "no walk".to_owned(),
            bad: false,
            sentence: out.why,
            events: Vec::new(),
            severity: 0.0,
        })
    }

    fn in_words(&self, scenario: &Scenario, account: &Account, seed: Seed) -> Told {
        let body = &self.lowered.world.bodies()[scenario.body];
        let who = self.who(scenario, body);
        let outcome = account.outcome;
        let after = match outcome.touch {
            Some(touch) => self.touched(scenario, body, &touch, account.command.is_some()),
            None => format!("{}.", capital(outcome.class.words())),
        };
        let seen = outcome.touch.map_or_else(String::new, |touch| {
            format!(" {}", self.seen(scenario, body, account, touch.time))
        });
        Told {
            seed: Some(seed),
            ends: outcome.class.words().to_owned(),
            bad: outcome.class.is_bad(),
            sentence: format!("{who} {after}{seen}"),
            events: self.events(scenario, account),
            severity: outcome
                .touch
                .map_or(0.0, |touch| severity(self, &touch).base()),
        }
    }

    /// Who goes or stands where, and when: `A child of about 7 runs in at 9.4 ft/s ...`
    pub(super) fn who(&self, scenario: &Scenario, body: &Body) -> String {
        let print = self.print;
        let place = self.place(scenario.crosses_at);
        let way = match scenario.way {
            Way::In => "in",
            Way::Out => "out",
        };
        let name = with_article(&body.name);
        let speed = print.q(scenario.speed);
        let when = self.when(scenario.arrives, scenario);
        match scenario.behavior {
            Behavior::Cross => format!(
                "{name} goes {way} at {speed}{}, on the gate line {place} {when}.",
                slanted(scenario.slant)
            ),
            Behavior::Stop(depth) => format!(
                "{name} comes {way} at {speed}{} and stays {} the gate line, {place}.",
                slanted(scenario.slant),
                beside(depth, print)
            ),
            Behavior::Stand(depth) if body.arm > 0 => format!(
                "{name} stands beside the path of the leaf before it starts, facing {way}, the hand {} the gate line, {place}.",
                beside(depth, print)
            ),
            Behavior::Stand(depth) => format!(
                "{name} is there before the leaf starts, facing {way}, {} the gate line, {place}.",
                beside(depth, print)
            ),
        }
    }

    /// A place along the gate line: `6 ft 2 in from the latching side`.
    pub(super) fn place(&self, x: Length) -> String {
        let print = self.print;
        if x.base() < 0.0 {
            format!("{} beyond the latching side", print.q(-x))
        } else {
            format!("{} from the latching side", print.q(x))
        }
    }

    /// The direction in which the leaf moves.
    pub(super) fn direction(&self, scenario: &Scenario) -> Direction {
        let direction = self.lowered.world.direction(scenario.pass);
        direction.unwrap_or(Direction::Closing)
    }

    fn when(&self, time: Time, scenario: &Scenario) -> String {
        let moving = self.moving(scenario);
        if time.base() < 0.0 {
            format!("{} before the leaf starts {moving}", self.print.q(-time))
        } else {
            format!("{} after the leaf starts {moving}", self.print.q(time))
        }
    }

    pub(super) fn moving(&self, scenario: &Scenario) -> &'static str {
        match self.lowered.world.direction(scenario.pass) {
            Some(Direction::Opening) => "opening",
            _ => "closing",
        }
    }

    fn touched(&self, scenario: &Scenario, body: &Body, touch: &Touch, is_stopped: bool) -> String {
        let print = self.print;
        let part = &body.parts[touch.part];
        let gap = if touch.gap.base().is_finite() {
            format!(
                "{} before the leaf's end meets what it shuts against",
                print.q(touch.gap)
            )
        } else {
            "nothing behind".to_owned()
        };
        let force = if is_stopped {
            let fall = touch.lasts.map_or_else(
                || "it never falls to what may last".to_owned(),
                |lasts| format!("it is down to what may last after {}", print.q(lasts)),
            );
            format!(
                "{} where {} is allowed; {fall}",
                print.q(touch.force),
                print.q(touch.limit)
            )
        } else if touch.force > touch.limit {
            format!(
                "nothing stops it, and it pushes on as hard as the drive can; {} is allowed",
                print.q(touch.limit)
            )
        } else {
            format!(
                "it comes to its end with {} where {} is allowed",
                print.q(touch.force),
                print.q(touch.limit)
            )
        };
        format!(
            "{} after the leaf starts {} its edge, at {}, touches them between {} and {} above the ground, {gap}: {force}.",
            capital(&print.q(touch.time)),
            self.moving(scenario),
            print.q(touch.speed),
            print.q(part.bottom),
            print.q(part.top),
        )
    }

    /// Which device saw them in time, too late or not at all.
    fn seen(&self, scenario: &Scenario, body: &Body, account: &Account, touch: Time) -> String {
        let direction = self.direction(scenario);
        let words: Vec<String> = self
            .in_order(direction)
            .zip(&account.sights)
            .map(|(sensing, sight)| self.one_sight(sensing, *sight, body, touch))
            .collect();
        if words.is_empty() {
            return "No beam or field acts in this direction.".to_owned();
        }
        format!("{}.", capital(&words.join("; ")))
    }

    /// The beams, and after them the fields, that act in a direction.
    pub(super) fn in_order(&self, direction: Direction) -> impl Iterator<Item = &Sensing> {
        let (beams, fields) = self.lowered.world.seeing();
        let beams = (0..beams.len())
            .filter(move |at| beams[*at].guards.contains(&direction))
            .map(Slot::Beam);
        let fields = (0..fields.len())
            .filter(move |at| fields[*at].guards.contains(&direction))
            .map(Slot::Scanner);
        beams
            .chain(fields)
            .filter_map(|slot| self.lowered.sensing.iter().find(|one| one.slot == slot))
    }

    fn one_sight(&self, sensing: &Sensing, sight: Sight, body: &Body, touch: Time) -> String {
        let id = &sensing.id;
        match sight {
            Sight::KeepsShut => format!("{id} keeps the leaf from starting"),
            Sight::Reports { said, .. } if said < touch => {
                format!("{id} reports {} before", self.print.q(touch - said))
            }
            Sight::Reports { .. } => format!("{id} reports too late"),
            Sight::Nothing if self.is_out_of_height(sensing, body) => {
                format!("{id} is not at their height")
            }
            Sight::Nothing => format!("{id} does not have them in its line"),
        }
    }

    pub(super) fn is_out_of_height(&self, sensing: &Sensing, body: &Body) -> bool {
        let (beams, fields) = self.lowered.world.seeing();
        match sensing.slot {
            Slot::Beam(at) => !cuts(&beams[at], body),
            Slot::Scanner(at) => !found(&fields[at], body),
            _ => false,
        }
    }

    pub(super) fn events(&self, scenario: &Scenario, account: &Account) -> Vec<Event> {
        let direction = self.direction(scenario);
        let mut events = Vec::new();
        let mut add = |time: Time, what: String| {
            events.push(Event {
                seconds: time.base(),
                what,
            });
        };
        for (sensing, sight) in self.in_order(direction).zip(&account.sights) {
            if let Sight::Reports { entered, said } = sight {
                add(*entered, format!("they come into {}", sensing.id));
                add(*said, format!("{} reports", sensing.id));
            }
        }
        if account.sights.contains(&Sight::KeepsShut) {
            add(
                Time::from_base(0.0),
                "the leaf does not start: a device is blocked".to_owned(),
            );
        } else {
            let starts = format!("the leaf starts {}", self.moving(scenario));
            add(Time::from_base(0.0), starts);
        }
        if let Some(command) = account.command {
            add(command, "braking begins".to_owned());
        }
        if let Some(touch) = account.outcome.touch {
            let print = self.print;
            let what = if touch.force.base() > FAR_MORE * touch.limit.base() {
                "the leaf touches them".to_owned()
            } else {
                let force = print.q(touch.force);
                format!("the leaf touches them; the force rises to {force}")
            };
            add(touch.time, what);
            for (after, what) in [
                (touch.lasts, "what may last"),
                (touch.rests, "what may remain"),
            ] {
                if let Some(after) = after {
                    add(touch.time + after, format!("the force is down to {what}"));
                }
            }
        }
        events.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
        events
    }
}

/// Greatest share of a limit that a touch uses up.
pub(super) fn severity(walk: &GateWalk<'_>, touch: &Touch) -> Ratio {
    let limits = walk.lowered.world.bounds();
    let share = |time: Option<Time>, limit: Time| {
        time.map_or(100.0, |time| (time.base() / limit.base()).min(100.0))
    };
    let force = touch.force.base() / touch.limit.base();
    let squeezed = (touch.travel - touch.room).base() / limits.squeeze.base();
    Ratio::from_base(
        force
            .max(share(touch.lasts, limits.lasting_after))
            .max(share(touch.rests, limits.rest_after))
            .max(squeezed),
    )
}

/// Some part of a body covers the whole width of a beam.
fn cuts(beam: &Beam, body: &Body) -> bool {
    let half = 0.5 * beam.diameter.base();
    let (low, high) = (beam.height.base() - half, beam.height.base() + half);
    body.parts.iter().any(|part| {
        part.bottom.base() <= low.max(0.0) && part.top.base() >= high && part.radius.base() > half
    })
}

/// Some part of a body is large enough in a field to be surely seen.
fn found(scanner: &Scanner, body: &Body) -> bool {
    let smallest = scanner.smallest_object.base();
    let (low, high) = (scanner.bottom.base(), scanner.top.base());
    body.parts.iter().any(|part| {
        let shared = part.top.base().min(high) - part.bottom.base().max(low);
        shared >= smallest.min(high - low) && part.radius.base() > smallest
    })
}

fn slanted(slant: Ratio) -> String {
    let degrees = slant.base().atan().to_degrees().abs();
    if degrees < 5.0 {
        ", straight".to_owned()
    } else {
        format!(", {degrees:.0}° off square")
    }
}

fn beside(depth: Length, print: Print) -> String {
    let distance = Length::from_base(depth.base().abs());
    let side = if depth.base() < 0.0 { "before" } else { "past" };
    format!("{} {side}", print.q(distance))
}

fn with_article(name: &str) -> String {
    let article = if name.starts_with("someone") {
        ""
    } else if name.starts_with('a') {
        "An "
    } else {
        "A "
    };
    if article.is_empty() {
        capital(name)
    } else {
        format!("{article}{name}")
    }
}

pub(crate) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

/// The worse of two ends.
pub(crate) fn rank(class: Class) -> usize {
    class as usize
}

/// A count in groups of three digits.
pub fn grouped(count: u64) -> String {
    let digits = count.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}
