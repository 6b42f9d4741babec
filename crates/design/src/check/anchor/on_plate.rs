//! The factored loads on a plate: as the site states them, or worked out from what stands on it.
//!
//! A post brings the cases of its foot; an operator on a rack or a chain its greatest force at its height; what bumps
//! into a foundation's things counts beside both. Only the weight that may be counted on helps.

use super::described::unloaded;
use crate::asking::{Asking, read};
use crate::check::force::operator_curve::force_at;
use crate::check::structure::at_foot::{AtFoot, Sideways, at_foot, post_named};
use crate::check::structure::loads::{Factors, Level};
use crate::outcome::Halt;
use formula::standing::anchor_group::PlateLoads;
use quantity::{Force, Length, Quantity as _, Velocity};
use site::{Anchor, DriveKind, Foundation, Operator, Push, Site};

/// Loads that come together.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Case {
    /// In words that follow "with".
    pub(crate) with: &'static str,
    pub(crate) loads: PlateLoads,
}

/// Something says what moves the plate, beside a pull that somebody worked out.
pub(crate) fn has_loads(foundation: &Foundation, anchor: &Anchor) -> bool {
    states_own(anchor) || anchor.carries.is_some() || !foundation.push.is_empty()
}

fn states_own(anchor: &Anchor) -> bool {
    anchor.moment_along.is_some()
        || anchor.moment_across.is_some()
        || anchor.shear_along.is_some()
        || anchor.shear_across.is_some()
        || anchor.uplift.is_some()
}

/// Every case of loads on the plate.
pub(super) fn cases<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Vec<Case>, Halt> {
    if states_own(anchor) || !has_loads(foundation, anchor) {
        return stated(asking, anchor).map(|case| vec![case]);
    }
    let carried = carried(asking, site, foundation, anchor);
    let bumps = bumps(asking, site, foundation);
    let mut cases = carried?;
    cases.extend(bumps?);
    if cases.is_empty() {
        return stated(asking, anchor).map(|case| vec![case]);
    }
    Ok(cases)
}

/// The loads as somebody worked them out.
fn stated<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Case, Halt> {
    let moment_along = read!(asking, anchor.moment_along);
    let moment_across = read!(asking, anchor.moment_across);
    let shear_along = read!(asking, anchor.shear_along);
    let shear_across = read!(asking, anchor.shear_across);
    let weight = asking.read_if_there(&anchor.origin, "weight", anchor.weight.as_ref());
    let uplift = asking.read_if_there(&anchor.origin, "uplift", anchor.uplift.as_ref());
    Ok(Case {
        with: "the loads as stated",
        loads: PlateLoads {
            moment_along: moment_along?,
            moment_across: moment_across?,
            shear_along: shear_along?,
            shear_across: shear_across?,
            weight: weight.unwrap_or_default(),
            uplift: uplift.unwrap_or_default(),
            ..unloaded()
        },
    })
}

/// What stands on the plate.
fn carried<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Vec<Case>, Halt> {
    let Some(name) = &anchor.carries else {
        return Ok(Vec::new());
    };
    if let Some((gate, post)) = post_named(site, name) {
        let cases = at_foot(asking, site, gate, post, Level::Strength)?;
        return Ok(cases.iter().map(of_post).collect());
    }
    match site.operator.iter().find(|operator| operator.id == *name) {
        Some(operator) => driven(asking, site, foundation, anchor, operator),
        None => Ok(Vec::new()),
    }
}

fn of_post(case: &AtFoot) -> Case {
    Case {
        with: case.case,
        loads: PlateLoads {
            moment_along: case.along.moment,
            moment_across: case.across.moment,
            shear_along: case.along.force,
            shear_across: case.across.force,
            weight: case.least_weight,
            ..unloaded()
        },
    }
}

/// The drive pulls along the gate line as hard as it can, at its height.
fn driven<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    operator: &'s Operator,
) -> Result<Vec<Case>, Halt> {
    if !matches!(operator.drive, Some(DriveKind::Rack | DriveKind::Chain)) {
        return stated(asking, anchor).map(|case| vec![case]);
    }
    let stall = force_at(asking, operator, Velocity::default());
    let start = asking.read_if_there(
        &operator.origin,
        "starting_force",
        operator.starting_force.as_ref(),
    );
    let at = asking.position(&operator.origin, "at", operator.at.as_ref());
    let top = asking.position(&foundation.origin, "at", foundation.at.as_ref());
    let ([.., up], [.., ground]) = (at?, top?);
    let force = stall?.base().max(start.map_or(0.0, Force::base));
    let height = Length::from_base((up - ground).base().max(0.0));
    let live = Factors::of(asking, site.site.code_basis, Level::Strength).live;
    let side = Sideways::at(Force::from_base(force), height) * live;
    Ok(vec![Case {
        with: "the drive pulling as hard as it can",
        loads: along(side),
    }])
}

/// Whatever bumps into what stands on the foundation, along the gate line or across it.
fn bumps<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Vec<Case>, Halt> {
    if foundation.push.is_empty() {
        return Ok(Vec::new());
    }
    let live = Factors::of(asking, site.site.code_basis, Level::Strength).live;
    let sides: Vec<Result<Sideways, Halt>> = foundation
        .push
        .iter()
        .map(|push| bump(asking, push))
        .collect();
    let mut cases = Vec::new();
    for side in sides {
        let side = side? * live;
        cases.extend([along(side), across(side)].map(|loads| Case {
            with: "the bump that the foundation is to take",
            loads,
        }));
    }
    Ok(cases)
}

fn bump<'s>(asking: &mut Asking<'s>, push: &'s Push) -> Result<Sideways, Halt> {
    let force = read!(asking, push.force);
    let height = read!(asking, push.height);
    Ok(Sideways::at(force?, height?))
}

fn along(side: Sideways) -> PlateLoads {
    PlateLoads {
        moment_along: side.moment,
        shear_along: side.force,
        ..unloaded()
    }
}

fn across(side: Sideways) -> PlateLoads {
    PlateLoads {
        moment_across: side.moment,
        shear_across: side.force,
        ..unloaded()
    }
}
