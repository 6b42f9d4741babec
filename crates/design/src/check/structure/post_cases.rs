//! The cases of a post: where its leaf stands, what blows, what bumps into it.

use super::at_foot::Sideways;
use super::on_leaf_post::{hanging, lifted, pivoted, shut, sliding, turned};
use super::on_post::{PostWind, own_weight, post_wind};
use crate::asking::{Asking, Wants, read};
use crate::check::stop::impact::hardest_on;
use crate::check::wind::load::Wind;
use crate::outcome::Halt;
use quantity::{Force, Quantity as _};
use site::{Gate, GateKind, Leaf, Post, PostRole, Site, Stop, TravelEnd};

/// Loads of one kind in one case.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part {
    pub(super) along: Sideways,
    pub(super) across: Sideways,
    pub(super) down: Force,
}

impl Part {
    pub(super) fn nothing() -> Self {
        Self {
            along: Sideways::none(),
            across: Sideways::none(),
            down: Force::from_base(0.0),
        }
    }

    pub(super) fn along(along: Sideways) -> Self {
        Self {
            along,
            ..Self::nothing()
        }
    }

    pub(super) fn across(across: Sideways) -> Self {
        Self {
            across,
            ..Self::nothing()
        }
    }

    fn and(self, other: Self) -> Self {
        Self {
            along: self.along + other.along,
            across: self.across + other.across,
            down: self.down + other.down,
        }
    }
}

/// What reaches a post at once, factors not yet counted.
#[derive(Debug, Clone, Copy)]
pub(super) struct Case {
    /// In words that follow "with".
    pub(super) name: &'static str,
    pub(super) dead: Part,
    pub(super) wind: Option<Part>,
    pub(super) live: Option<Part>,
}

impl Case {
    /// Wind, with nothing that hangs.
    pub(super) fn blown(name: &'static str, wind: Part) -> Self {
        Self {
            name,
            dead: Part::nothing(),
            wind: Some(wind),
            live: None,
        }
    }

    /// A push.
    pub(super) fn pushed(name: &'static str, live: Part) -> Self {
        Self {
            name,
            dead: Part::nothing(),
            wind: None,
            live: Some(live),
        }
    }

    /// The same with a weight that hangs from the post.
    pub(super) fn with(self, dead: Part) -> Self {
        Self { dead, ..self }
    }
}

/// Every case of a post.
pub(super) fn cases<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    post: &'s Post,
) -> Result<Vec<Case>, Halt> {
    let own = post_wind(asking, site, post, Wind::Design);
    let weight = own_weight(asking, post);
    let of_leaf = of_leaf(asking, site, gate, post);
    let jolts = jolts(asking, site, gate, post);
    let push = side_push(asking, post);
    let (own, weight, push) = (own?, weight?, push?);
    let mut cases = alone(&own);
    cases.extend(of_leaf?.into_iter().map(|case| blown_itself(case, &own)));
    cases.extend(jolts?);
    let mut pushed = Vec::new();
    for push in push.iter().flatten() {
        pushed.push(Case::pushed("a push from the side", *push));
        let both = |case: &Case| Case {
            live: Some(case.live.unwrap_or_else(Part::nothing).and(*push)),
            ..*case
        };
        pushed.extend(cases.iter().filter(|case| case.live.is_none()).map(both));
    }
    cases.extend(pushed);
    for case in &mut cases {
        case.dead.down += weight;
    }
    Ok(cases)
}

/// Wind on the post itself.
fn alone(own: &PostWind) -> Vec<Case> {
    vec![
        Case::blown("the wind along the gate line", Part::along(own.along)),
        Case::blown("the wind across the gate line", Part::across(own.across)),
    ]
}

/// The wind that blows on the leaf blows on its post too, in the same direction.
fn blown_itself(case: Case, own: &PostWind) -> Case {
    let Some(wind) = case.wind else { return case };
    let share = |part: Sideways, other: Sideways| {
        let (here, there) = (part.force.base(), other.force.base());
        let whole = here.hypot(there);
        if whole > 0.0 { here / whole } else { 0.0 }
    };
    let along = own.along * share(wind.along, wind.across);
    let across = own.across * share(wind.across, wind.along);
    Case {
        wind: Some(Part {
            along: wind.along + along,
            across: wind.across + across,
            ..wind
        }),
        ..case
    }
}

/// What the leaf does to its post.
fn of_leaf<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    post: &'s Post,
) -> Result<Vec<Case>, Halt> {
    use GateKind::{
        BarrierArm, CantileverSlide, DoubleSwing, SingleSwing, TrackSlide, VerticalLift,
        VerticalPivot,
    };
    if post.role == PostRole::Device {
        return Ok(Vec::new());
    }
    let leaf = leaf_of(asking, gate, post)?;
    let all = (gate, leaf, post);
    match (gate.kind, post.role) {
        (TrackSlide | CantileverSlide, _) => sliding(asking, site, all),
        (SingleSwing | DoubleSwing, PostRole::Hinge) => hanging(asking, site, all),
        (SingleSwing | DoubleSwing, _) => shut(asking, site, all),
        (BarrierArm | VerticalPivot, PostRole::Hinge) => pivoted(asking, site, all),
        (BarrierArm | VerticalPivot, _) => turned(asking, site, all),
        (VerticalLift, _) => lifted(asking, site, all),
    }
}

/// The leaf that a post holds.
pub(crate) fn leaf_of<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    post: &'s Post,
) -> Result<&'s Leaf, Halt> {
    match (&post.leaf, gate.leaf.as_slice()) {
        (Some(name), leaves) => {
            let leaf = leaves.iter().find(|leaf| leaf.id == *name);
            asking.need(&post.origin, "leaf", leaf, "\"leaf-left\"")
        }
        (None, [only]) => Ok(only),
        (None, []) => asking.lack(
            &gate.origin,
            "leaf",
            Wants::Written("[{ id = \"leaf\", mass = \"640 lb\" }]"),
        ),
        (None, _) => asking.lack(&post.origin, "leaf", Wants::Written("\"leaf-left\"")),
    }
}

/// The jolt at the stops whose force the post takes.
fn jolts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    post: &'s Post,
) -> Result<Vec<Case>, Halt> {
    let takes = |stop: &&Stop| stop.post.as_ref() == Some(&post.id);
    let mut whole = Ok(Vec::new());
    for stop in gate.stop.iter().filter(takes) {
        let force = hardest_on(asking, site, gate, stop);
        let at = asking.position(&stop.origin, "at", stop.at.as_ref());
        let jolt =
            force.and_then(|force| at.map(|[_, _, up]| jolt(gate.kind, stop.end, force, up)));
        whole = whole.and_then(|mut cases| {
            cases.push(jolt?);
            Ok(cases)
        });
    }
    whole
}

/// The jolt in the direction in which the leaf runs into that stop.
fn jolt(kind: GateKind, end: TravelEnd, force: Force, up: quantity::Length) -> Case {
    let side = Sideways::at(force, up);
    let part = match (kind, end) {
        (GateKind::SingleSwing | GateKind::DoubleSwing, TravelEnd::Closed) => Part::across(side),
        (GateKind::BarrierArm | GateKind::VerticalPivot, TravelEnd::Closed)
        | (GateKind::VerticalLift, _) => Part {
            down: force,
            ..Part::nothing()
        },
        _ => Part::along(side),
    };
    Case::pushed("the leaf run into its stop", part)
}

/// A push from the side, along the gate line or across it.
fn side_push<'s>(asking: &mut Asking<'s>, post: &'s Post) -> Result<Option<[Part; 2]>, Halt> {
    let force = asking.read_if_there(&post.origin, "side_force", post.side_force.as_ref());
    let Some(force) = force else { return Ok(None) };
    let height = read!(asking, post.side_force_height)?;
    let side = Sideways::at(force, height);
    Ok(Some([Part::along(side), Part::across(side)]))
}
