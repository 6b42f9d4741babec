//! The hardest-worked hinge of a swing leaf.

use super::{center_from_hinge, mass};
use crate::asking::{Asking, Wants, read};
use crate::check::wind::load::{Wind, on_leaf};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::leaf::{HingeLoads, HingeReactions};
use quantity::{Force, Length, Quantity as _, Ratio};
use site::{Gate, Leaf, Site};

/// What the hinges of a leaf carry in the design wind: latched at its end, and held by each drive.
#[derive(Debug, Clone)]
pub(crate) struct AcrossHinge {
    /// Latched.
    pub(crate) latched: HingeLoads,
    /// Held by a drive alone.
    pub(crate) by_drive: Vec<HingeLoads>,
}

impl AcrossHinge {
    /// Greatest force across one hinge.
    pub(crate) fn side(&self) -> Force {
        let loose = self.loose();
        if loose > self.latched.side {
            loose
        } else {
            self.latched.side
        }
    }

    /// Greatest force across one hinge with the leaf held by its drive alone.
    pub(crate) fn loose(&self) -> Force {
        let sides = self.by_drive.iter().map(|loads| loads.side);
        sides.fold(
            Force::from_base(0.0),
            |most, side| {
                if side > most { side } else { most }
            },
        )
    }
}

/// What the hinges of a leaf carry in the design wind, with a person on its end.
pub(crate) fn across_hinge<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<AcrossHinge, Halt> {
    let latched = latched(asking, site, gate, leaf);
    let arms = drive_arms(asking, site, gate, leaf);
    let (latched, arms) = (latched?, arms?);
    let held_by = |held_at| HingeReactions { held_at, ..latched };
    Ok(AcrossHinge {
        latched: asking.work(&latched)?,
        by_drive: arms
            .into_iter()
            .map(|arm| asking.work(&held_by(arm)))
            .collect::<Result<_, Halt>>()?,
    })
}

/// Weight on one hinge, and the force across the worse one.
pub(super) fn hardest<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<[Comparison; 2], Halt> {
    let loads = across_hinge(asking, site, gate, leaf);
    let rated_load = read!(asking, leaf.hinges?.rated_load);
    let rated_side_load = read!(asking, leaf.hinges?.rated_side_load);
    let loads = loads?;
    Ok([
        Comparison::at_most(
            Labeled::new("weight on one hinge", loads.latched.weight),
            Labeled::new("rated load of a hinge", rated_load?),
        ),
        Comparison::at_most(
            Labeled::new("force across one hinge", loads.side()),
            Labeled::new("rated side load of a hinge", rated_side_load?),
        ),
    ])
}

/// The leaf with a person on its free end, in the design wind, held at its latching end.
fn latched<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<HingeReactions, Halt> {
    let mass = mass(asking, leaf);
    let center = center_from_hinge(asking, leaf);
    let spacing = read!(asking, leaf.hinges?.spacing);
    let tip_load = read!(asking, gate.climbing_load);
    let tip = read!(asking, leaf.length);
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let height = read!(asking, leaf.height);
    let (tip, spacing) = (tip?, spacing?);
    if spacing.base() <= 0.0 {
        return asking.refuse("the hinges must stand apart");
    }
    Ok(HingeReactions {
        mass: mass?,
        center: center?,
        spacing,
        tip_load: tip_load?,
        tip,
        wind: wind?.force,
        wind_at: tip / 2.0,
        held_at: tip,
        wind_share: worse_share(height?, spacing),
    })
}

/// Both hinges sit within the height of the leaf, so the wind's middle is at most this far off the middle between them.
fn worse_share(height: Length, spacing: Length) -> Ratio {
    Ratio::from_base((height.base() / (2.0 * spacing.base())).max(0.5))
}

/// Where the drives hold the leaf while it is not latched.
fn drive_arms<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Vec<Length>, Halt> {
    let arms: Vec<Result<Length, Halt>> = site
        .operators_of_leaf(gate, leaf)
        .map(|operator| match &operator.mounting {
            Some(mounting) => read!(asking, mounting.front_along),
            None => asking.lack(
                &operator.origin,
                "mounting.front_along",
                Wants::Written("\"3 ft\""),
            ),
        })
        .collect();
    arms.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hinges_at_both_edges_share_the_wind_evenly() {
        let meters = Length::from_base;
        assert!((worse_share(meters(1.5), meters(1.5)).base() - 0.5).abs() < 1e-12);
        assert!(worse_share(meters(1.5), meters(1.0)).base() > 0.7);
    }
}
