//! Bars, and the pieces of the leaf, of tracks and racks and of the list that are cut from them.

use super::job::{Job, Wanted};
use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{BarStock, Gate, Joined, JoinedKind, Member, Site};

/// The job of one kind of bar.
pub(crate) fn bars<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    stock: &'s BarStock,
) -> Result<Job, Halt> {
    let kerf = read!(asking, stock.kerf);
    let trim = read!(asking, stock.end_trim);
    let wanted = wanted(asking, site, stock);
    if stock.bar.is_empty() {
        let write = crate::asking::Wants::Written(
            "[{ length = \"20 ft\", price = \"84.00 USD\" }, { length = \"7 ft\", on_hand = 1 }]",
        );
        return asking.lack(&stock.origin, "bar", write);
    }
    let (kerf, trim, wanted) = (kerf?, trim?, wanted?);
    let both_ends = Length::from_base(2.0 * trim.base());
    let mut job = Job::new(wanted, kerf);
    let mut whole = Ok(());
    for bar in &stock.bar {
        whole = job.take(asking, bar, both_ends).and(whole);
    }
    whole.map(|()| job)
}

/// Every piece that is cut from it.
fn wanted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    stock: &'s BarStock,
) -> Result<Vec<Wanted>, Halt> {
    let mut all = Ok(Vec::new());
    let mut add = |pieces: Result<Vec<Wanted>, Halt>| {
        all = std::mem::replace(&mut all, Err(Halt)).and_then(|mut all: Vec<Wanted>| {
            all.extend(pieces?);
            Ok(all)
        });
    };
    for member in members(site, stock) {
        add(of_member(asking, member));
    }
    for joined in site
        .joined
        .iter()
        .filter(|joined| joined.bar_stock.as_ref() == Some(&stock.id))
    {
        let gate = site.gate.iter().find(|gate| gate.id == joined.gate);
        add(of_joined(asking, gate, joined));
    }
    for piece in &stock.piece {
        let length = read!(asking, piece.length);
        let count = pick!(asking, piece.count);
        add(one(piece.what.to_string(), length, count));
    }
    all
}

fn one(
    what: String,
    length: Result<Length, Halt>,
    count: Result<u32, Halt>,
) -> Result<Vec<Wanted>, Halt> {
    let (length, count) = (length?, count?);
    Ok(vec![Wanted {
        what,
        length,
        count,
    }])
}

/// The members of leaves that have its section.
fn members<'s>(site: &'s Site, stock: &'s BarStock) -> impl Iterator<Item = &'s Member> {
    let leaves = site.gate.iter().flat_map(|gate| &gate.leaf);
    let members = leaves.flat_map(|leaf| &leaf.member);
    members.filter(|member| stock.section.is_some() && member.section == stock.section)
}

fn of_member<'s>(asking: &mut Asking<'s>, member: &'s Member) -> Result<Vec<Wanted>, Halt> {
    let length = read!(asking, member.length);
    let count = pick!(asking, member.count);
    one(member.what.to_string(), length, count)
}

/// The lengths between the joints; at each joint of a track a gap is left.
fn of_joined<'s>(
    asking: &mut Asking<'s>,
    gate: Option<&'s Gate>,
    joined: &'s Joined,
) -> Result<Vec<Wanted>, Halt> {
    let begins = read!(asking, joined.begins);
    let ends = read!(asking, joined.ends);
    let track = gate.and_then(|gate| gate.track.as_ref());
    let gap = track
        .filter(|_| joined.kind == JoinedKind::Track)
        .and_then(|track| {
            asking.read_if_there(&track.origin, "joint_gap", track.joint_gap.as_ref())
        })
        .map_or(0.0, quantity::Quantity::base);
    let (begins, ends) = (begins?.base(), ends?.base());
    let mut joints: Vec<f64> = joined
        .joint_at
        .iter()
        .map(|at| at.nominal().base())
        .collect();
    joints.sort_by(f64::total_cmp);
    // Half a gap beyond both free ends, so that every length loses one gap.
    let gap = if joints.is_empty() { 0.0 } else { gap };
    let edges: Vec<f64> = std::iter::once(begins - gap / 2.0)
        .chain(joints)
        .chain([ends + gap / 2.0])
        .collect();
    let count = edges.len() - 1;
    let pieces = edges.windows(2).enumerate().map(|(at, pair)| Wanted {
        what: format!("{}, {} of {count}", joined.id, at + 1),
        length: Length::from_base(pair[1] - pair[0] - gap),
        count: 1,
    });
    let pieces: Vec<Wanted> = pieces.collect();
    if pieces.iter().any(|piece| piece.length.base() <= 0.0) {
        return asking
            .refuse("its joints do not lie between its beginning and its end; mend the places");
    }
    Ok(pieces)
}
