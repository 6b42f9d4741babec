//! Leaves that swing, lowered: where they hang, how they turn, in which order, and what stands around them.

use super::around::{Around, around};
use super::assumption::Assumption;
use super::devices::Sensing;
use super::lower::{common, first_leaf, prism, settled};
use super::motion::turning;
use super::press::{hefts, measured};
use super::strip::{Places, on_swinging};
use crate::asking::{Asking, End, Wants, pick};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _, Time};
use sim::Plan;
use sim::walk::{AnyWorld, Direction, Opens, Spot, SwingLeaf, SwingPass, SwingWorld, Toward, Turn};
use site::{Gate, GateKind, Leaf, Site, SwingSide};

/// How the order of two leaves is written.
const ORDER: &str = "{ covering = \"leaf-right\", opening_delay = \"3 s\", closing_delay = \"3 s\", stops_both = true }";

/// Lowers a gate with leaves that swing.
pub(super) fn lower<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Result<(AnyWorld, Vec<Sensing>), Halt> {
    let leaves = leaves(asking, gate);
    let hung = leaves.as_deref().unwrap_or(&[]);
    let lengths: Vec<Length> = hung.iter().map(|leaf| leaf.length).collect();
    let plans = turning(asking, gate, &lengths);
    let delays = delays(asking, gate);
    let names: Vec<&str> = gate.leaf.iter().map(|leaf| leaf.id.as_str()).collect();
    let places: &Places<'_> = &|device, ends| on_swinging((hung, &names), device, ends);
    let common = common(asking, site, gate, places, defaults);
    let near = around(asking, site, gate, hung, defaults);
    let (plans, delays, common, mut near) = (plans?, delays?, common?, near?);
    if covered_at_hinges(gate) {
        near.hung_on.clear();
        defaults.push(Assumption::default(
            "the gap between each leaf and its own post",
            "covered: nobody gets into it, and the post is not counted",
            "cover of the hinge side on the site; the gap at the hinges is asked for by itself",
        ));
    }
    let limits = settled(
        asking,
        &common,
        Length::from_base(0.0),
        &words(&near),
        defaults,
    );
    hangs(gate, defaults);
    let ends: Vec<Length> = hung.iter().map(|leaf| leaf.length).collect();
    let measured = measured(asking, gate, &ends, defaults);
    let hefts = hefts(asking, site, gate, defaults);
    let world = SwingWorld {
        passes: passes(&plans, &delays),
        leaves: leaves?,
        faces: near.faces.iter().chain(&near.hung_on).copied().collect(),
        beams: common.devices.beams,
        scanners: common.devices.scanners,
        edges: common.devices.edges,
        drive: common.drive,
        bare_stiffness: common.bare,
        controller: common.controller,
        limits,
        bodies: common.bodies,
        greatest_slant: common.slant,
        hefts,
        measured,
    };
    let world = clear_of_posts(world, &near, defaults);
    Ok((AnyWorld::Swinging(world), common.devices.sensing))
}

/// The leaves where they hang: what the opening leaves over is shared by both hinge sides.
fn leaves<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<SwingLeaf>, Halt> {
    let first = first_leaf(asking, gate);
    let of = |key| (&gate.origin, key);
    let opening = asking.read_at(
        of("clear_opening"),
        gate.clear_opening.as_ref(),
        End::Nominal,
    );
    let side = pick!(asking, gate.swings);
    let both: Vec<_> = gate.leaf.iter().map(|leaf| section(asking, leaf)).collect();
    let both: Result<Vec<_>, Halt> = both.into_iter().collect();
    first?;
    let double = gate.kind == GateKind::DoubleSwing;
    if gate.leaf.len() != if double { 2 } else { 1 } {
        return asking.refuse("a double swing gate has two leaves, a single swing gate has one");
    }
    let (opening, side, both) = (opening?.base(), side?, both?);
    let together: f64 = both.iter().map(|leaf| leaf.length.base()).sum();
    let before = (opening - together) / 2.0;
    let place = |(at, leaf): (usize, SwingLeaf)| {
        let first = double && at == 0;
        let x = if first { before } else { opening - before };
        SwingLeaf {
            pivot: Spot {
                x: Length::from_base(x),
                y: Length::from_base(0.0),
            },
            toward: if first {
                Toward::Greater
            } else {
                Toward::Smaller
            },
            opens: match side {
                SwingSide::IntoProperty => Opens::Inward,
                SwingSide::TowardRoad => Opens::Outward,
            },
            ..leaf
        }
    };
    Ok(both.into_iter().enumerate().map(place).collect())
}

/// A leaf that is not hung yet.
fn section<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<SwingLeaf, Halt> {
    let length = asking.read_at((&leaf.origin, "length"), leaf.length.as_ref(), End::Nominal);
    let prism = prism(asking, leaf)?;
    Ok(SwingLeaf {
        pivot: Spot {
            x: Length::from_base(0.0),
            y: Length::from_base(0.0),
        },
        toward: Toward::Smaller,
        opens: Opens::Inward,
        heel: Length::from_base(0.0),
        length: length?,
        offset: Length::from_base(0.0),
        thickness: prism.thickness,
        bottom: prism.bottom,
        top: prism.top,
    })
}

/// How long each leaf waits: while opening, while closing.
fn delays<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<[Vec<Time>; 2], Halt> {
    let none = || vec![Time::from_base(0.0); gate.leaf.len()];
    if gate.kind != GateKind::DoubleSwing {
        return Ok([none(), none()]);
    }
    let Some(order) = &gate.leaf_order else {
        return asking.lack(&gate.origin, "leaf_order", Wants::Written(ORDER));
    };
    let of = |key| (&order.origin, key);
    let opening = asking.read_at(
        of("opening_delay"),
        order.opening_delay.as_ref(),
        End::Nominal,
    );
    let closing = asking.read_at(
        of("closing_delay"),
        order.closing_delay.as_ref(),
        End::Nominal,
    );
    let covering = order.covering.as_ref();
    let covering = asking.need(&order.origin, "covering", covering, "\"leaf-right\"");
    let stops = order.stops_both.as_ref();
    let stops = asking.need(&order.origin, "stops_both", stops, "true");
    let (opening, closing, covering) = (opening?, closing?, covering?);
    if !*stops? {
        return asking
            .refuse("an event on one leaf leaves the other running: no walk is worked for that");
    }
    let wait = |waits: bool, delay: Time| if waits { delay } else { Time::from_base(0.0) };
    let covers = |leaf: &Leaf| leaf.id == *covering;
    let leaves = &gate.leaf;
    Ok([
        leaves
            .iter()
            .map(|leaf| wait(!covers(leaf), opening))
            .collect(),
        leaves
            .iter()
            .map(|leaf| wait(covers(leaf), closing))
            .collect(),
    ])
}

fn passes(plans: &[Plan], [opening, closing]: &[Vec<Time>; 2]) -> Vec<SwingPass> {
    let pass = |direction, delays: &[Time]| SwingPass {
        direction,
        turns: plans
            .iter()
            .zip(delays)
            .map(|(plan, delay)| Turn {
                plan: *plan,
                delay: *delay,
            })
            .collect(),
    };
    vec![
        pass(Direction::Closing, closing),
        pass(Direction::Opening, opening),
    ]
}

fn words(near: &Around) -> Vec<(&'static str, String)> {
    let all = if near.names.is_empty() {
        "nothing written near it: open ground".to_owned()
    } else {
        near.names.join(", ")
    };
    vec![("swinging", all)]
}

fn hangs(gate: &Gate, defaults: &mut Vec<Assumption>) {
    defaults.push(Assumption::default(
        "hinge lines",
        "on the gate line, in the middle of each leaf's thickness; each leaf begins at its hinge line",
        "clear opening less the leaves, shared by both sides; the gap at the hinges is asked for by itself",
    ));
    if gate.kind == GateKind::DoubleSwing {
        defaults.push(Assumption::default(
            "the other leaf",
            "counts as what stands opposite, where it stands in the end; a report stops both",
            "order of the leaves on the site",
        ));
    }
}

/// Every hinge side has a cover.
fn covered_at_hinges(gate: &Gate) -> bool {
    gate.leaf.iter().all(|leaf| {
        let side = leaf.hinge_side.as_ref();
        side.is_some_and(|side| side.covered == Some(true))
    })
}

/// The world without the sides of the hinge posts, where the leaf as it is drawn would cut one of them.
fn clear_of_posts(world: SwingWorld, near: &Around, defaults: &mut Vec<Assumption>) -> SwingWorld {
    if near.hung_on.is_empty() || world.lower().is_ok() {
        return world;
    }
    let bare = SwingWorld {
        faces: near.faces.clone(),
        ..world.clone()
    };
    if bare.lower().is_err() {
        return world;
    }
    defaults.push(Assumption::default(
        "the posts on which the leaves hang",
        "not counted",
        "a leaf as it is drawn would cut them: the true place of its hinge line is not on the site",
    ));
    bare
}
