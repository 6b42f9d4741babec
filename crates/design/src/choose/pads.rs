//! The pad with the least concrete that neither tips, slides nor sinks, lies below frost, and leaves room around its anchors.
//!
//! Sides and thickness are tried in steps, the smallest volume first, by the figures of the check itself. The pad that
//! is found is put into the site, and every question is asked again.

use super::anchors::sound_in;
use super::ruled_out::{RuledOut, Tally};
use super::tried::{Candidate, Tried};
use crate::Finding;
use crate::answers::findings;
use crate::asking::{Asking, Lack};
use crate::check::structure::frost::bottom;
use crate::check::structure::pad::is_pad;
use crate::check::structure::pad_loads::PadLoad;
use crate::check::structure::pad_stability::{Pad, compared, facts};
use crate::figure::Print;
use formula::Formula as _;
use formula::standing::{Bag, BagYield};
use quantity::{Length, Measured, Quantity as _, UnitSystem, Volume, Word as _};
use serde::Serialize;
use site::{Foundation, Site, SourceFile, load};
use std::borrow::Cow;

/// The pads for one foundation.
#[derive(Debug, Clone, Serialize)]
pub struct PadChoice {
    /// The foundation: `foundation "pad"`.
    pub pad: String,
    /// How many sizes were tried until the smallest that holds was found.
    pub tried: usize,
    /// The smallest pad, and the smallest square one where that is another.
    pub best: Vec<PadSize>,
    /// What ruled smaller ones out, the most frequent first.
    pub ruled_out: Vec<RuledOut>,
    /// Lines that the site lacks, or why no calculation reaches.
    pub write: Vec<String>,
}

/// A pad that holds.
#[derive(Debug, Clone, Serialize)]
pub struct PadSize {
    /// Length along the gate line, width across it, depth.
    pub size: [String; 3],
    /// Its concrete.
    pub volume: String,
    /// Bags of dry mix for it, with a tenth for waste.
    pub bags: u32,
    /// What such a bag weighs.
    pub bag: &'static str,
    /// Lines for the foundation in the site file.
    pub write: Vec<String>,
    /// How it does when the whole site is asked.
    pub asked: Candidate,
}

/// Share of concrete that is added for waste.
const WASTE: f64 = 0.1;

/// What rules a size out that holds at the nominal values.
const TOLERANCES: &str = "the bad end of a tolerance, or another question of the site";
/// A volume that is worth asking the whole site again, over one that failed there.
const NEARLY_THE_SAME: f64 = 1.04;

/// Finds a pad for every foundation that is one and not there yet; nothing when the site cannot be read.
pub fn pad_choices(main: &SourceFile, parts: &[SourceFile]) -> Option<Vec<PadChoice>> {
    let site = load(main.clone(), parts.to_vec()).site?;
    let wanted = |one: &Foundation| is_pad(&site, one) && one.existing != Some(true);
    let places: Vec<usize> = (0..site.foundation.len())
        .filter(|at| site.foundation.get(*at).is_some_and(wanted))
        .collect();
    let choices = places.into_iter();
    Some(choices.filter_map(|at| choice(&site, at)).collect())
}

fn choice(site: &Site, at: usize) -> Option<PadChoice> {
    let foundation = site.foundation.get(at)?;
    let mut found = PadChoice {
        pad: foundation.origin.path.clone(),
        tried: 0,
        best: Vec::new(),
        ruled_out: Vec::new(),
        write: Vec::new(),
    };
    match Search::new(site, at) {
        Ok(mut search) => {
            let bare = findings(&without_size(site, at));
            found.best = search.smallest(|size| asked(site, at, size, &bare));
            found.tried = search.tried;
            found.ruled_out = search.ruled_out.by_frequency();
        }
        Err(write) => found.write = write,
    }
    Some(found)
}

/// Length along the gate line, width across it, depth.
type Size = [Length; 3];

/// The search for one pad.
struct Search {
    trial: Site,
    at: usize,
    pad: Pad,
    loads: Vec<PadLoad>,
    /// Depths that lie below frost.
    deep_enough: Vec<Length>,
    units: UnitSystem,
    steps: Steps,
    /// The largest plate along the gate line and across it.
    plate: [Length; 2],
    tried: usize,
    ruled_out: Tally,
}

impl Search {
    /// Gathers what the pad carries and stands on; lines to write where that is not known.
    fn new(site: &Site, at: usize) -> Result<Self, Vec<String>> {
        let mut trial = site.clone();
        let steps = Steps::of(site.site.unit_system());
        let mut deep_enough = Vec::new();
        let mut gathered = Err(Vec::new());
        let side = steps.smallest_side();
        for depth in steps.depths() {
            put(&mut trial, at, [side, side, depth]);
            let Some(foundation) = trial.foundation.get(at) else {
                continue;
            };
            let mut asking = Asking::new(site.site.unit_system());
            let below = bottom(&mut asking, &trial, foundation);
            let facts = facts(&mut asking, &trial, foundation);
            let (Ok(below), Ok(facts)) = (below, facts) else {
                return Err(missing(&asking));
            };
            if below.holds() {
                deep_enough.push(depth);
            }
            gathered = Ok(facts);
        }
        let (pad, loads) = gathered?;
        Ok(Self {
            trial,
            at,
            pad,
            loads,
            deep_enough,
            units: site.site.unit_system(),
            steps,
            plate: largest_plate(site, at),
            tried: 0,
            ruled_out: Tally::default(),
        })
    }

    /// The smallest pad, and the smallest square one where that is another. What holds at the nominal values is asked again
    /// with all tolerances; where it fails there, sizes of nearly the same volume are passed over.
    fn smallest(&mut self, asked: impl Fn(Size) -> PadSize) -> Vec<PadSize> {
        let mut found: Vec<PadSize> = Vec::new();
        let mut asking = Asking::new(self.units);
        let mut least = 0.0;
        for size in self.steps.sizes(&self.deep_enough) {
            let square = size[0] == size[1];
            let only_square = !found.is_empty();
            if only_square && !square {
                continue;
            }
            let volume = volume(&size).base();
            let why = if volume < least {
                Some(TOLERANCES.into())
            } else {
                self.hindrance(&mut asking, size)
            };
            let why = why.or_else(|| {
                let pad = asked(size);
                if pad.asked.failing.is_empty() {
                    found.push(pad);
                    return None;
                }
                least = volume * NEARLY_THE_SAME;
                Some(TOLERANCES.into())
            });
            if !only_square {
                self.tried += 1;
            }
            match why {
                Some(why) if !only_square => self.ruled_out.add(why, 1),
                None if square => break,
                _ => {}
            }
        }
        found
    }

    /// What does not hold with a pad of this size.
    fn hindrance(&mut self, asking: &mut Asking<'_>, size: Size) -> Option<Cow<'static, str>> {
        if size[0] < self.plate[0] || size[1] < self.plate[1] {
            return Some("a plate that is larger than the pad".into());
        }
        [self.pad.length, self.pad.width, self.pad.depth] = size;
        asking.forget_run();
        let Ok(all) = compared(asking, &self.pad, &self.loads) else {
            return Some("outside what the calculations reach".into());
        };
        let failing = all.into_iter().find(|one| !one.holds());
        failing.map(|one| one.demand.label.into()).or_else(|| {
            put(&mut self.trial, self.at, size);
            let foundation = self.trial.foundation.get(self.at)?;
            sound_in(&self.trial, foundation).err()
        })
    }
}

/// The steps in which sizes are tried, in meters: step, least and greatest side, least and greatest depth.
#[derive(Debug, Clone, Copy)]
struct Steps {
    step: f64,
    sides: (u32, u32),
    depths: (u32, u32),
}

impl Steps {
    /// 2 in from 12 in to 8 ft of side, or 50 mm from 300 mm to 2.4 m; from 8 in or 200 mm to 6 ft or 1.8 m of depth.
    fn of(units: UnitSystem) -> Self {
        let (step, sides, depths) = match units {
            UnitSystem::Si => (0.05, (6, 48), (4, 36)),
            UnitSystem::UsCustomary => (0.0508, (6, 48), (4, 36)),
        };
        Self {
            step,
            sides,
            depths,
        }
    }

    fn length(self, steps: u32) -> Length {
        Length::from_base(f64::from(steps) * self.step)
    }

    fn smallest_side(self) -> Length {
        self.length(self.sides.0)
    }

    fn depths(self) -> impl Iterator<Item = Length> {
        (self.depths.0..=self.depths.1).map(move |steps| self.length(steps))
    }

    /// Every size of these depths, the smallest volume first; of the same volume the squarest, then the shallowest.
    fn sizes(self, depths: &[Length]) -> Vec<Size> {
        let (least, greatest) = self.sides;
        let mut sizes = Vec::new();
        for along in least..=greatest {
            for across in least..=greatest {
                // A pad that is longer than twice its width is a beam.
                if along.max(across) > 2 * along.min(across) {
                    continue;
                }
                let (length, width) = (self.length(along), self.length(across));
                sizes.extend(depths.iter().map(|depth| [length, width, *depth]));
            }
        }
        let out_of_square = |size: &Size| (size[0] - size[1]).base().abs();
        sizes.sort_by(|a, b| {
            let rounded = |size: &Size| (volume(size).base() * 1e6).round();
            rounded(a)
                .total_cmp(&rounded(b))
                .then(out_of_square(a).total_cmp(&out_of_square(b)))
                .then(a[2].base().total_cmp(&b[2].base()))
        });
        sizes
    }
}

fn volume(size: &Size) -> Volume {
    Volume::from_base(size.iter().map(|side| side.base()).product())
}

/// The largest plate on the foundation, no size where none is given.
fn largest_plate(site: &Site, at: usize) -> [Length; 2] {
    let anchors = site
        .foundation
        .get(at)
        .into_iter()
        .flat_map(|one| &one.anchor);
    let mut largest = [Length::default(); 2];
    for anchor in anchors {
        for (side, plate) in largest
            .iter_mut()
            .zip([anchor.plate_length, anchor.plate_width])
        {
            let plate = plate.map(|plate| plate.nominal()).unwrap_or_default();
            if plate > *side {
                *side = plate;
            }
        }
    }
    largest
}

fn missing(asking: &Asking<'_>) -> Vec<String> {
    let lines = asking.lacks.iter().map(Lack::line);
    let refused = asking
        .beyond
        .as_ref()
        .map(|beyond| beyond.reach.why.clone());
    lines.chain(refused).collect()
}

/// Gives the foundation this size.
fn put(site: &mut Site, at: usize, size: Size) {
    if let Some(foundation) = site.foundation.get_mut(at) {
        [foundation.length, foundation.width, foundation.depth] =
            size.map(|side| Some(Measured::exact(side)));
        for anchor in &mut foundation.anchor {
            anchor.edge_distance = None;
        }
    }
}

/// The site as it would be if nobody had said how large the pad is.
fn without_size(site: &Site, at: usize) -> Site {
    let mut bare = site.clone();
    if let Some(foundation) = bare.foundation.get_mut(at) {
        [foundation.length, foundation.width, foundation.depth] = [None, None, None];
    }
    bare
}

/// The whole site asked with the pad in it.
fn asked(site: &Site, at: usize, size: Size, bare: &[Finding]) -> PadSize {
    let mut trial = site.clone();
    put(&mut trial, at, size);
    let units = site.site.unit_system();
    let print = Print::new(units);
    let bag = match units {
        UnitSystem::Si => Bag::Fifty,
        UnitSystem::UsCustomary => Bag::Eighty,
    };
    let texts = size.map(|side| print.q(side));
    let keys = ["length", "width", "depth"].iter().zip(&texts);
    PadSize {
        volume: print.q(volume(&size)),
        bags: bags(volume(&size), bag),
        bag: match units {
            UnitSystem::Si => "23 kg",
            UnitSystem::UsCustomary => bag.word(),
        },
        write: keys
            .map(|(key, text)| format!("{key} = \"{text}\""))
            .collect(),
        asked: Tried::new("", None, findings(&trial), bare).candidate,
        size: texts,
    }
}

/// Bags for so much concrete, with waste; rounded up.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the pads that are tried take no more than a few thousand bags"
)]
fn bags(volume: Volume, bag: Bag) -> u32 {
    let each = BagYield { bag }.evaluate();
    each.map_or(0, |each| {
        let bags = volume.base() * (1.0 + WASTE) / each.volume.base();
        (bags - 1e-9).ceil() as u32
    })
}
