//! A set of anchors under every case of its loads: what is used most, or what does not hold.

use crate::asking::{Asking, Lack};
use crate::check::anchor::described::described;
use crate::check::anchor::edges::nearest;
use crate::check::anchor::fits::needs;
use crate::check::anchor::hardest::loaded;
use crate::check::anchor::on_plate::has_loads;
use crate::check::anchor::plate_forces::loaded_set;
use crate::check::anchor::thin_plate::thin_plate;
use crate::outcome::Halt;
use formula::standing::anchor_group::{AnchorAnswer, AnchorSet, PlateLoads, Quietly, answer};
use quantity::Length;
use site::{Anchor, Foundation, Site};
use std::borrow::Cow;

/// A set, once for each case of its loads.
#[derive(Debug, Clone)]
pub(super) struct Loaded(Vec<AnchorSet>);

/// Why a set cannot be worked.
#[derive(Debug)]
pub(super) enum Unknown {
    /// Lines to write.
    Missing(Vec<String>),
    /// No calculation reaches it.
    Refused(Cow<'static, str>),
}

/// What is ruled out where no calculation reaches.
const OUTSIDE: &str = "outside what the calculations reach";

impl Loaded {
    /// Gathers what the site says of the set.
    pub(super) fn of(
        site: &Site,
        foundation: &Foundation,
        anchor: &Anchor,
    ) -> Result<Self, Unknown> {
        let mut asking = Asking::new(site.site.unit_system());
        let sets = sets(&mut asking, site, foundation, anchor);
        match sets {
            Ok(sets) if !sets.is_empty() => Ok(Self(sets)),
            _ => Err(unknown(&asking, anchor)),
        }
    }

    /// Distance from the outermost anchor to the nearest edge.
    pub(super) fn nearest_edge(&self) -> Length {
        let first = self.0.first();
        first.map_or(Length::default(), |set| nearest(&set.concrete.edges))
    }

    /// The greatest share that is used at the depth that the anchor has now, and of which strength; or what does not hold.
    pub(super) fn used(
        &self,
        site: &Site,
        anchor: &Anchor,
    ) -> Result<(f64, &'static str), &'static str> {
        let mut most = (0.0, "nothing that pulls or shoves");
        for set in &self.0 {
            let mut set = *set;
            if let Some(embedment) = anchor.embedment {
                set.rod.embedment = embedment.nominal();
            }
            let found = answer(&set, &mut Quietly).map_err(|_| OUTSIDE)?;
            let used = worst(&found);
            if used.0 > 1.0 {
                return Err(used.1);
            }
            if used.0 > most.0 {
                most = used;
            }
            stiff(site, anchor, &set, &found)?;
        }
        Ok(most)
    }
}

/// The plate stays straight under these pulls, or nothing says how thick it is.
fn stiff(
    site: &Site,
    anchor: &Anchor,
    set: &AnchorSet,
    found: &AnchorAnswer,
) -> Result<(), &'static str> {
    let mut asking = Asking::new(site.site.unit_system());
    match thin_plate(&mut asking, site, anchor, set, &found.pulls) {
        Ok(Some(plate)) if !plate.holds() => Err(plate.demand.label),
        _ => Ok(()),
    }
}

/// The first distance that is not kept, in words; nothing where all are.
pub(super) fn too_near(
    site: &Site,
    foundation: &Foundation,
    anchor: &Anchor,
) -> Result<Option<&'static str>, Unknown> {
    let mut asking = Asking::new(site.site.unit_system());
    match needs(&mut asking, foundation, anchor) {
        Ok(all) => Ok(all
            .into_iter()
            .find(|one| !one.holds())
            .map(|one| one.demand.label)),
        Err(_) => Err(unknown(&asking, anchor)),
    }
}

/// The set under each case of loads, and under the pull that somebody worked out.
fn sets<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Vec<AnchorSet>, Halt> {
    let mut sets = Vec::new();
    let pull = asking.read_if_there(&anchor.origin, "pull", anchor.pull.as_ref());
    if let Some(pull) = pull {
        let set = described(asking, site, foundation, anchor)?;
        let loads = PlateLoads {
            stated_pull: Some(pull),
            ..set.loads
        };
        sets.push(AnchorSet { loads, ..set });
    }
    if pull.is_none() || has_loads(foundation, anchor) {
        let (set, cases) = loaded_set(asking, site, foundation, anchor)?;
        sets.extend(cases.iter().map(|case| loaded(&set, case)));
    }
    Ok(sets)
}

fn unknown(asking: &Asking<'_>, anchor: &Anchor) -> Unknown {
    match &asking.beyond {
        Some(beyond) if asking.lacks.is_empty() => {
            Unknown::Refused(beyond.reach.why.clone().into())
        }
        _ => Unknown::Missing(asking.lacks.iter().map(|lack| line(lack, anchor)).collect()),
    }
}

/// The line to write, with the entry that lacks it.
fn line(lack: &Lack<'_>, anchor: &Anchor) -> String {
    match &anchor.part {
        Some(part) if std::ptr::eq(lack.origin, &raw const anchor.origin) => {
            format!("{} for {part}", lack.line())
        }
        _ => lack.line(),
    }
}

fn worst(found: &AnchorAnswer) -> (f64, &'static str) {
    let modes = found.tension.iter().chain(&found.shear);
    let alone = modes
        .map(|mode| (mode.share(), mode.way.words()))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap_or((0.0, "nothing that pulls or shoves"));
    match &found.together {
        Some(together) if together.used > alone.0 && alone.0 <= 1.0 => {
            (together.used, "strength against pull and shove together")
        }
        _ => alone,
    }
}

/// Whether the anchors of a foundation hold and keep their distances as they stand; what does not, in words. Sets whose
/// facts are missing do not count.
pub(in crate::choose) fn sound_in(
    site: &Site,
    foundation: &Foundation,
) -> Result<(), Cow<'static, str>> {
    for anchor in &foundation.anchor {
        match too_near(site, foundation, anchor) {
            Ok(Some(distance)) => return Err(distance.into()),
            Err(Unknown::Refused(why)) => return Err(why),
            Ok(None) | Err(Unknown::Missing(_)) => {}
        }
        match Loaded::of(site, foundation, anchor) {
            Ok(loaded) => {
                loaded.used(site, anchor)?;
            }
            Err(Unknown::Refused(why)) => return Err(why),
            Err(Unknown::Missing(_)) => {}
        }
    }
    Ok(())
}
