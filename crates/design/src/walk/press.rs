//! How hard the leaves can press: what moves with them, and the forces that were measured on them.

use super::assumption::Assumption;
use crate::asking::{Asking, End};
use crate::check::stop::impact::moving;
use quantity::{Force, Length, Measured as Known, Quantity as _};
use sim::walk::{Direction, Heft, Measured};
use site::{ForceTest, Gate, Leaf, Operator, Site};

/// A point at the free end is no farther from it than this.
const AT_END: f64 = 0.1;

/// What moves with each leaf; nothing where a fact of it is missing.
pub(super) fn hefts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    defaults: &mut Vec<Assumption>,
) -> Vec<Heft> {
    // Whether everything is there is tried aside: what is missing of it leaves the walk as it is.
    let known = |leaf: &'s Leaf| {
        let mut aside = Asking::new(site.site.unit_system());
        moving(&mut aside, site, gate, leaf).is_ok()
    };
    if !gate.leaf.iter().all(known) {
        return Vec::new();
    }
    let mut hefts = Vec::new();
    for leaf in &gate.leaf {
        let Ok(moves) = moving(asking, site, gate, leaf) else {
            return Vec::new();
        };
        let rated = site
            .operators_of_leaf(gate, leaf)
            .next()
            .and_then(|operator| by_rating(asking, operator, leaf));
        hefts.push(Heft {
            mass: moves.whole_mass(),
            push: rated.unwrap_or(moves.push()),
        });
    }
    let print = asking.print();
    let told = hefts.iter().map(|heft| {
        format!(
            "{} and {} at the free end",
            print.q(heft.mass),
            print.q(heft.push)
        )
    });
    defaults.push(Assumption::default(
        "what moves with a leaf, and the greatest push of its drive",
        told.collect::<Vec<_>>().join("; "),
        "a body is pressed no harder than by the energy of the leaf and the work of its drive; one that has room to where the leaf ends is struck, and gives way: 200 kg at most",
    ));
    hefts
}

/// Push at the free end of a drive that pushes like a jack, where its data sheet says what torque its push makes.
fn by_rating<'s>(asking: &mut Asking<'s>, operator: &'s Operator, leaf: &'s Leaf) -> Option<Force> {
    let of = |key| (&operator.origin, key);
    let torque = operator.rated_torque.as_ref()?;
    let rated = operator.rated_force.as_ref()?;
    let start = operator.starting_force.as_ref()?;
    let length = leaf.length.as_ref()?;
    let torque = asking.read_at(of("rated_torque"), Some(torque), End::High);
    let rated = asking.read_at(of("rated_force"), Some(rated), End::Nominal);
    let start = asking.read_at(of("starting_force"), Some(start), End::High);
    let length = asking.read_at((&leaf.origin, "length"), Some(length), End::Nominal);
    let at_end = torque.ok()?.base() / length.ok()?.base();
    Some(Force::from_base(
        at_end * start.ok()?.base() / rated.ok()?.base(),
    ))
}

/// Forces that were measured on the leaves, with how far each reaches from its hinge line or shaft.
pub(super) fn measured<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    ends: &[Length],
    defaults: &mut Vec<Assumption>,
) -> Vec<Measured> {
    let mut all = Vec::new();
    for test in &gate.force_test {
        all.extend(one(asking, gate, ends, test));
    }
    if !all.is_empty() {
        defaults.push(Assumption::default(
            "forces that were measured",
            format!("at {} points", all.len()),
            "count instead of those that are worked out, at the point and farther from the hinge line or shaft, at every height: the greatest in a gap that crushes, or of all where one was measured in a wider gap",
        ));
    }
    all
}

/// One point, where everything of it is written.
fn one<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    ends: &[Length],
    test: &'s ForceTest,
) -> Option<Measured> {
    let leaf = match &test.leaf {
        Some(id) => gate.leaf.iter().position(|leaf| leaf.id == *id)?,
        None if gate.leaf.len() == 1 => 0,
        None => return None,
    };
    let guards = match test.direction? {
        site::Direction::Opening => Direction::Opening,
        site::Direction::Closing => Direction::Closing,
    };
    let highest = test.peak.iter().map(|peak| peak.nominal().base());
    let highest = Force::from_base(highest.fold(0.0, f64::max));
    let of = |key| (&test.origin, key);
    let complete = test.peak.len() == 3 && test.settled.is_some() && test.end.is_some();
    if !complete || test.gap.is_none() || test.meter_tolerance.is_none() {
        return None;
    }
    let gap = asking.read_at(of("gap"), test.gap.as_ref(), End::Nominal);
    let settled = asking.read_at(of("settled"), test.settled.as_ref(), End::High);
    let end = asking.read_at(of("end"), test.end.as_ref(), End::High);
    let tolerance = test.meter_tolerance.as_ref();
    let tolerance = asking.read_at(of("meter_tolerance"), tolerance, End::High);
    let more = 1.0 + tolerance.ok()?.base();
    Some(Measured {
        leaf,
        guards,
        from: from(*ends.get(leaf)?, test.along.as_ref()),
        gap: gap.ok()?,
        peak: highest * more,
        settled: settled.ok()? * more,
        end: end.ok()? * more,
    })
}

fn from(end: Length, along: Option<&Known<Length>>) -> Length {
    let written = along.map(|along| along.nominal().base());
    Length::from_base(written.unwrap_or((end.base() - AT_END).max(0.0)))
}
