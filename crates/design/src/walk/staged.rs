//! What stands around a walk that is played: devices and when each sees the body, fixed things, what leaf and controller do.

use super::devices::Slot;
use super::told::FAR_MORE;
use super::{GateWalk, Seed};
use quantity::{Quantity as _, Time};
use serde::Serialize;
use sim::walk::{Account, AnyWorld, Direction, Frame, Pose, Scenario, Sight};

/// The stage of a walk that [`GateWalk::trace`] draws, in its coordinates: meters, and seconds since the leaf started.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Staged {
    /// The beams, and after them the fields, that act in the direction of the leaf.
    pub devices: Vec<StagedDevice>,
    /// What stands around the leaf, or what it moves toward: both ends of each, as x and y.
    pub fixed: Vec<[[f64; 2]; 2]>,
    /// What leaf and controller do from when on, in order.
    pub states: Vec<StagedState>,
    /// The touch; none where nobody is touched.
    pub touch: Option<StagedTouch>,
}

/// A device on the stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StagedDevice {
    /// Its name on the site.
    pub name: String,
    /// `beam` or `field`.
    pub kind: &'static str,
    /// Both ends of a beam, the corners of a field: x and y.
    pub corners: Vec<[f64; 2]>,
    /// From which height to which it sees.
    pub heights: [f64; 2],
    /// It is not at the height of this body.
    pub blind: bool,
    /// It sees the body before the leaf starts, and keeps it from starting.
    pub keeps_shut: bool,
    /// When the body comes into it.
    pub entered: Option<f64>,
    /// When its output changes.
    pub reports: Option<f64>,
}

/// What leaf and controller do from a time on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct StagedState {
    /// From when on, in thousandths of a second.
    pub from_ms: i64,
    /// The leaf, in words.
    pub leaf: String,
    /// The controller, in words.
    pub controller: String,
}

/// A touch on the stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StagedTouch {
    /// When.
    pub time: f64,
    /// Where, as x and y.
    pub at: [f64; 2],
    /// Where a leaf that rises and the body meet, as x and z.
    pub meets: Option<[f64; 2]>,
    /// From which height to which the part of the body reaches.
    pub heights: [f64; 2],
    /// How hard, in words.
    pub force: String,
    /// It passes a limit, or traps.
    pub bad: bool,
}

impl GateWalk<'_> {
    /// The stage of a walk; nothing where it cannot be worked.
    pub fn staged(&self, seed: Seed) -> Option<Staged> {
        let scenario = self.scenario(seed).ok()?;
        let step = Time::from_base(0.01);
        let account = self.walk.account(&scenario, step).ok()?;
        Some(Staged {
            devices: self.staged_devices(&scenario, &account),
            fixed: fixed(&self.lowered.world, self.direction(&scenario)),
            states: self.states(&scenario, &account),
            touch: self.staged_touch(&scenario, &account),
        })
    }

    fn staged_devices(&self, scenario: &Scenario, account: &Account) -> Vec<StagedDevice> {
        let Some(body) = self.lowered.world.bodies().get(scenario.body) else {
            return Vec::new();
        };
        let (beams, fields) = self.lowered.world.seeing();
        let sensing = self.in_order(self.direction(scenario));
        let sights = account.sights.iter().copied();
        let mut devices = Vec::new();
        for (sensing, sight) in sensing.zip(sights) {
            let (kind, corners, heights) = match sensing.slot {
                Slot::Beam(at) => {
                    let beam = &beams[at];
                    let (half, middle) = (beam.diameter.base() / 2.0, beam.height.base());
                    let ends = [beam.from, beam.to].map(|end| [end.x.base(), end.y.base()]);
                    ("beam", ends.to_vec(), [middle - half, middle + half])
                }
                Slot::Scanner(at) => {
                    let field = &fields[at];
                    let corners = field.corners.iter();
                    let corners = corners.map(|corner| [corner.x.base(), corner.y.base()]);
                    let heights = [field.bottom.base(), field.top.base()];
                    ("field", corners.collect(), heights)
                }
                _ => continue,
            };
            let (entered, reports) = match sight {
                Sight::Reports { entered, said } => (Some(entered.base()), Some(said.base())),
                _ => (None, None),
            };
            devices.push(StagedDevice {
                name: sensing.id.clone(),
                kind,
                corners,
                heights,
                blind: self.is_out_of_height(sensing, body),
                keeps_shut: sight == Sight::KeepsShut,
                entered: entered.filter(|time| time.is_finite()),
                reports: reports.filter(|time| time.is_finite()),
            });
        }
        devices
    }

    fn states(&self, scenario: &Scenario, account: &Account) -> Vec<StagedState> {
        let moves = self.moving(scenario);
        let mut states = Vec::new();
        let mut add = |time: f64, leaf: &str, controller: String| {
            states.push(StagedState {
                from_ms: thousandths(time),
                leaf: leaf.to_owned(),
                controller,
            });
        };
        let first = account
            .frames
            .first()
            .map_or(0.0, |frame| frame.time.base());
        if account.sights.contains(&Sight::KeepsShut) {
            add(
                first.min(0.0),
                "stands still",
                "does not start the leaf: a device is blocked".to_owned(),
            );
            return states;
        }
        if first < 0.0 {
            add(first, "stands still", "has not started the leaf".to_owned());
        }
        add(0.0, moves, format!("runs the leaf {moves}"));
        let command = account.command.map(quantity::Quantity::base);
        for (sensing, sight) in self.in_order(self.direction(scenario)).zip(&account.sights) {
            let before = |said: f64| said >= 0.0 && command.is_none_or(|command| said <= command);
            if let Sight::Reports { said, .. } = sight
                && before(said.base())
            {
                let words = format!("has the report of {}, and is to act on it", sensing.id);
                add(said.base(), moves, words);
            }
        }
        if let Some(command) = command {
            add(command, "slows down", "brakes the leaf".to_owned());
            for (time, leaf) in turns(&account.frames, command) {
                let controller = match leaf {
                    Way::Stands => "has stopped the leaf",
                    Way::Back => "runs the leaf back",
                };
                add(time, leaf.words(), controller.to_owned());
            }
        } else if let Some(time) = stands_from(&account.frames) {
            add(
                time,
                "stands at its end",
                "has come to the end of the travel".to_owned(),
            );
        }
        states.sort_by_key(|state| state.from_ms);
        states
    }

    fn staged_touch(&self, scenario: &Scenario, account: &Account) -> Option<StagedTouch> {
        let touch = account.outcome.touch?;
        let part = self
            .lowered
            .world
            .bodies()
            .get(scenario.body)?
            .parts
            .get(touch.part)?;
        let limit = self.print.q(touch.limit);
        let force = if touch.force.base() > FAR_MORE * touch.limit.base() {
            format!("far harder than the {limit} that is allowed")
        } else {
            format!("{}; {limit} is allowed", self.print.q(touch.force))
        };
        Some(StagedTouch {
            time: touch.time.base(),
            at: [touch.at.x.base(), touch.at.y.base()],
            meets: account.meets.map(|meets| [meets.x.base(), meets.y.base()]),
            heights: [part.bottom.base(), part.top.base()],
            force,
            bad: account.outcome.class.is_bad(),
        })
    }
}

/// What a leaf does once it has been braked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Stands,
    Back,
}

impl Way {
    fn words(self) -> &'static str {
        match self {
            Self::Stands => "stands still",
            Self::Back => "runs back",
        }
    }
}

/// When a leaf that was braked stands, and when it runs back.
fn turns(frames: &[Frame], command: f64) -> Vec<(f64, Way)> {
    let Some(start) = frames.first() else {
        return Vec::new();
    };
    let mut turns: Vec<(f64, Way)> = Vec::new();
    for pair in frames.windows(2) {
        if pair[0].time.base() < command {
            continue;
        }
        let [before, after] = [&pair[0], &pair[1]].map(|frame| far(&start.leaf, &frame.leaf));
        let way = match after - before {
            step if step.abs() < STILL => Way::Stands,
            step if step < 0.0 => Way::Back,
            _ => continue,
        };
        if turns.last().is_none_or(|(_, known)| *known != way) {
            turns.push((pair[0].time.base(), way));
        }
    }
    turns
}

/// A leaf that goes less than this from one picture to the next stands (m).
const STILL: f64 = 1e-6;

/// When a leaf that nothing stops stands for good.
fn stands_from(frames: &[Frame]) -> Option<f64> {
    let last = frames.last()?;
    let moved = frames
        .iter()
        .rposition(|frame| far(&last.leaf, &frame.leaf) > STILL)?;
    let next = frames.get(moved + 1)?;
    (next.time < last.time).then_some(next.time.base())
}

/// How far a leaf is from where it was at first: what a sliding edge has gone, or the corner that has gone farthest (m).
fn far(start: &Pose, now: &Pose) -> f64 {
    let corners = |one: &[sim::walk::Spot; 4], other: &[sim::walk::Spot; 4]| {
        let apart = one.iter().zip(other).map(|(one, other)| {
            let (x, y) = ((other.x - one.x).base(), (other.y - one.y).base());
            x.hypot(y)
        });
        apart.fold(0.0, f64::max)
    };
    match (start, now) {
        (Pose::Edge(start), Pose::Edge(now)) => (*now - *start).base().abs(),
        (Pose::Above(start), Pose::Above(now)) => start
            .iter()
            .zip(now)
            .map(|(one, other)| corners(one, other))
            .fold(0.0, f64::max),
        (Pose::Front(start), Pose::Front(now)) => corners(start, now),
        _ => 0.0,
    }
}

#[allow(clippy::cast_possible_truncation, reason = "a walk takes seconds")]
fn thousandths(time: f64) -> i64 {
    (time * 1000.0).round() as i64
}

/// Half the length of the line that stands for a face across the gate line (m).
const FACE: f64 = 0.4;

/// What stands around the leaf, or what it moves toward.
fn fixed(world: &AnyWorld, direction: Direction) -> Vec<[[f64; 2]; 2]> {
    match world {
        AnyWorld::Sliding(world) => {
            let passes = world.passes.iter();
            let passes = passes.filter(|pass| pass.direction == direction);
            passes
                .filter_map(|pass| pass.opposing)
                .map(|face| [[face.base(), -FACE], [face.base(), FACE]])
                .collect()
        }
        AnyWorld::Swinging(world) => {
            let faces = world.faces.iter();
            faces
                .map(|face| [face.from, face.to].map(|end| [end.x.base(), end.y.base()]))
                .collect()
        }
        AnyWorld::Rising(_) => Vec::new(),
    }
}
