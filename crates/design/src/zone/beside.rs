//! What a leaf slides past, and whether somebody could be drawn in there.

use crate::asking::{Asking, read};
use crate::outcome::Halt;
use crate::zone::gap::squeezes;
use crate::zone::leaf::{self, panel};
use crate::zone::slide::{FAR, Run, TOUCH, aside, run};
use crate::zone::thing::{Thing, things};
use crate::zone::{BOTH_WAYS, Extent, OPENING, Zone, ZoneKind};
use formula::protection::{FINGER_GAP_RECALLED, LimitVerdict, SlideGateGap, finger_gap_recalled};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Gate, Site};

/// The places where a leaf passes a post, a fence or a wall.
pub(crate) fn draw_in<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    if !leaf::slides(gate) {
        return beside_a_lift(asking, site, gate);
    }
    let run = run(asking, site, gate);
    let things = things(asking, site, gate);
    let (run, things) = (run?, things?);
    let passed = |thing: &&Thing| {
        let ((low, _), (high, _)) = thing.bounds();
        let along = high > run.closed + TOUCH && low < run.tail().1 - TOUCH;
        along && aside(thing, run.panel.half) > TOUCH
    };
    let reached = |thing: &&Thing| !is_screened(thing, &things, &run);
    let met = things.iter().filter(passed).filter(reached);
    let zones = met.map(|thing| zone(asking, site, gate, (&run, thing)));
    let zones: Result<Vec<_>, Halt> = zones.collect();
    Ok(zones?.into_iter().flatten().collect())
}

/// A fence or a wall stands on the same side of the leaf, no nearer to it, past the whole of a post and as high as the zone:
/// nobody gets to the post from outside.
fn is_screened(post: &Thing, things: &[Thing], run: &Run<'_>) -> bool {
    let ((low, y_low), (high, y_high)) = post.bounds();
    let side = if y_low > 0.0 { 1.0 } else { -1.0 };
    let face = if y_low > 0.0 { y_low } else { -y_high };
    let screens = |thing: &Thing| {
        let ((from, near), (to, far)) = thing.bounds();
        let out = (near * side).min(far * side);
        let past = from <= low + TOUCH && to >= high - TOUCH;
        past && out >= face - TOUCH && thing.height >= run.panel.top.min(post.height)
    };
    !post.is_long && things.iter().any(|thing| thing.is_long && screens(thing))
}

fn zone<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (run, thing): (&Run<'s>, &Thing),
) -> Result<Option<Zone>, Halt> {
    let panel = run.panel;
    let gap = thing
        .measured
        .unwrap_or(Length::from_base(aside(thing, panel.half)));
    if thing.height <= panel.bottom || gap.base() > FAR || panel.bottom >= panel.top {
        return Ok(None);
    }
    let judged = judged(asking, site, gate, (gap, Length::from_base(panel.bottom)))?;
    let ((low, y_low), (high, y_high)) = thing.bounds();
    let face = if y_low > 0.0 { y_low } else { y_high };
    let from = low.max(run.closed);
    let to = high.min(run.tail().1);
    let own = panel.half.copysign(face);
    // A post is met where the opening leaf runs in behind it; along a fence both directions carry along.
    let live = if thing.is_long { BOTH_WAYS } else { OPENING };
    let top = panel.top.min(thing.height);
    Ok(Some(Zone {
        kind: ZoneKind::DrawIn,
        leaf: run.leaf.id.to_string(),
        against: thing.name.clone(),
        extent: Extent::spanned([from, own, panel.bottom], [to, face, top]),
        least_gap: gap,
        least_at: (from, face),
        on_leaf: None,
        wanted_gap: judged.wanted,
        live,
        catches: judged.catches,
    }))
}

/// How a gap that is passed stands to the rule.
struct Passed {
    wanted: Length,
    catches: bool,
}

/// A gap that the leaf passes is narrow enough, or wide enough that nobody is squeezed who gets in.
fn judged(
    asking: &mut Asking<'_>,
    site: &Site,
    gate: &Gate,
    (gap, height): (Length, Length),
) -> Result<Passed, Halt> {
    let squeeze = squeezes(asking, site, gate, (gap, height))?;
    if !squeeze.catches {
        return Ok(Passed {
            wanted: squeeze.wanted,
            catches: false,
        });
    }
    let (narrow, wanted) = match site.site.code_basis {
        CodeBasis::Us => {
            let rule = asking.work(&SlideGateGap { gap })?;
            (rule.verdict == LimitVerdict::Kept, rule.limit)
        }
        CodeBasis::Eu => {
            let safe = finger_gap_recalled(Length::from_base(0.0), gap).unwrap_or(false);
            if safe {
                asking.rest_on(&FINGER_GAP_RECALLED);
            }
            (safe, Length::from_base(0.008))
        }
    };
    Ok(Passed {
        wanted,
        catches: !narrow,
    })
}

/// A leaf that rises passes what stands right beside its plane; only what was measured counts.
fn beside_a_lift<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Vec<Zone>, Halt> {
    leaf::each(gate, |one| {
        let panel = panel(asking, site, one);
        let length = read!(asking, one.length);
        let things = things(asking, site, gate);
        let (panel, length, things) = (panel?, length?, things?);
        let mut zones = Vec::new();
        for thing in &things {
            let Some(gap) = thing.measured else { continue };
            let judged = judged(asking, site, gate, (gap, Length::from_base(panel.bottom)))?;
            let ((low, y_low), (high, y_high)) = thing.bounds();
            let face = if y_low > 0.0 { y_low } else { y_high };
            let own = panel.half.copysign(face);
            zones.push(Zone {
                kind: ZoneKind::DrawIn,
                leaf: one.id.to_string(),
                against: thing.name.clone(),
                extent: Extent::spanned(
                    [low.max(0.0), own, panel.bottom],
                    [high.min(length.base()), face, panel.top],
                ),
                least_gap: gap,
                least_at: (low.max(0.0), face),
                on_leaf: None,
                wanted_gap: judged.wanted,
                live: BOTH_WAYS,
                catches: judged.catches,
            });
        }
        Ok(zones)
    })
}
