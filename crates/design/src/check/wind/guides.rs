//! How guides and catch share the wind on a leaf that slides, at each place of its travel.
//!
//! The foot of the leaf is held by its track or its trolleys, the top by the two outermost guides beside it. Closed, the
//! catch holds the latching end too. Just off its catch nothing holds that end, and the guides carry it all.

use super::load::{LeafWind, Wind, on_leaf};
use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use quantity::{Force, Length, Quantity as _};
use site::{Gate, Leaf, PostRole, Site};

/// A place of the leaf in its travel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Place {
    /// Shut, its end in the catch.
    Closed,
    /// Nearly shut, its end held by nothing.
    OffItsCatch,
    /// Halfway.
    Halfway,
    /// Open.
    Open,
}

impl Place {
    /// The place in words that follow "the leaf".
    pub(crate) fn words(self) -> &'static str {
        match self {
            Self::Closed => "closed",
            Self::OffItsCatch => "stopped just off its catch",
            Self::Halfway => "stopped halfway",
            Self::Open => "open",
        }
    }
}

/// Something that holds the leaf, with its share of the wind.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Support {
    /// Where it stands along the gate line.
    pub(crate) at: Length,
    /// Its share of the wind, at the worse place of the wind's middle.
    pub(crate) share: f64,
    /// It is the catch, and no guide.
    pub(crate) is_catch: bool,
}

/// What holds the leaf at one place of its travel.
#[derive(Debug, Clone)]
pub(crate) struct Held {
    /// The place.
    pub(crate) place: Place,
    /// What holds it; the two outermost carry it.
    pub(crate) by: Vec<Support>,
}

/// The design wind on a leaf that slides, and what holds it.
#[derive(Debug, Clone)]
pub(crate) struct SlideWind {
    /// The wind.
    pub(crate) wind: LeafWind,
    /// Height of its middle above the ground.
    pub(crate) middle: Length,
    /// Height of the guides.
    pub(crate) guide_height: Length,
    /// Each place of the travel.
    pub(crate) places: Vec<Held>,
}

impl SlideWind {
    /// Force on a guide with that share.
    pub(crate) fn at_guide(&self, share: f64) -> Force {
        self.wind.force * (share * (self.middle.base() / self.guide_height.base()))
    }

    /// The hardest-pressed guide: where the leaf is, and the force.
    pub(crate) fn hardest_guide(&self) -> (Place, Force) {
        self.places
            .iter()
            .flat_map(|held| held.by.iter().map(|by| (held.place, by)))
            .filter(|(_, by)| !by.is_catch)
            .map(|(place, by)| (place, self.at_guide(by.share)))
            .max_by(|one, other| one.1.base().total_cmp(&other.1.base()))
            .unwrap_or((Place::Closed, Force::from_base(0.0)))
    }
}

/// As near as this a guide and a post, or a guide and the leaf's end, belong together.
pub(crate) const NEAR: f64 = 0.5;

/// The design wind on a leaf that slides, with the shares of guides and catch.
pub(crate) fn slide_wind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<SlideWind, Halt> {
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let guide_height = read!(asking, gate.guide?.height);
    let height = read!(asking, leaf.height);
    let clearance = read!(asking, leaf.ground_clearance);
    let from = read!(asking, leaf.closed_end);
    let length = read!(asking, leaf.length);
    let travel = read!(asking, gate.travel);
    let guides = guides(asking, gate);
    let catch = catch(asking, gate);
    let (wind, guide_height, height, clearance) = (wind?, guide_height?, height?, clearance?);
    let (from, length, travel, guides, catch) = (from?, length?, travel?, guides?, catch?);
    if guide_height.base() <= 0.0 {
        return asking.refuse("the guide's height above the surface must be more than zero");
    }
    asking.note(|_| {
        "The track or the trolleys hold the bottom of the leaf, the guides its top.".to_owned()
    });
    let line = Line {
        from: from.base(),
        length: length.base(),
        off_middle: wind.off_middle.base(),
        guides,
        catch,
    };
    Ok(SlideWind {
        wind,
        middle: clearance + height / 2.0,
        guide_height,
        places: line.places(travel.base()),
    })
}

/// Where the guides stand.
pub(crate) fn guides<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<f64>, Halt> {
    let places = gate.guide.as_ref().filter(|guide| !guide.at.is_empty());
    let Some(guide) = places else {
        let wants = Wants::Written("[\"0 ft\", \"20 ft 8 in\"]");
        return match &gate.guide {
            Some(guide) => asking.lack(&guide.origin, "at", wants),
            None => asking.lack(&gate.origin, "guide.at", wants),
        };
    };
    Ok(guide.at.iter().map(|at| at.nominal().base()).collect())
}

/// Where the catch post stands, where there is one.
fn catch<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Option<f64>, Halt> {
    let post = gate.post.iter().find(|post| post.role == PostRole::Catch);
    let Some(post) = post else { return Ok(None) };
    match &post.at {
        Some(at) => Ok(Some(at.x.nominal().base())),
        None => asking.lack(&post.origin, "at", Wants::Position),
    }
}

/// The leaf along the gate line with all that may hold it, in meters.
struct Line {
    from: f64,
    length: f64,
    off_middle: f64,
    guides: Vec<f64>,
    catch: Option<f64>,
}

impl Line {
    fn places(&self, travel: f64) -> Vec<Held> {
        let closed = self.closed();
        let loose: Vec<f64> = self
            .beside(0.0)
            .filter(|at| *at > self.from + NEAR)
            .collect();
        let is_caught = closed.len() > loose.len();
        let mut places = vec![self.held(Place::Closed, 0.0, &closed)];
        if is_caught {
            let guides: Vec<(f64, bool)> = loose.iter().map(|at| (*at, false)).collect();
            places.push(self.held(Place::OffItsCatch, 0.0, &guides));
        }
        for (place, moved) in [(Place::Halfway, travel / 2.0), (Place::Open, travel)] {
            let guides: Vec<(f64, bool)> = self.beside(moved).map(|at| (at, false)).collect();
            places.push(self.held(place, moved, &guides));
        }
        places
    }

    /// Guides beside the leaf.
    fn beside(&self, moved: f64) -> impl Iterator<Item = f64> + '_ {
        let (from, to) = (self.from + moved, self.from + moved + self.length);
        let beside = move |at: &f64| (from..=to).contains(at);
        self.guides.iter().copied().filter(beside)
    }

    /// Guides beside the closed leaf, and the catch where no guide stands at it.
    fn closed(&self) -> Vec<(f64, bool)> {
        let mut by: Vec<(f64, bool)> = self.beside(0.0).map(|at| (at, false)).collect();
        if let Some(catch) = self.catch
            && !self.guides.iter().any(|at| (at - catch).abs() <= NEAR)
        {
            by.push((catch.max(self.from), true));
        }
        by
    }

    /// The two outermost carry the leaf, the wind's middle being off the leaf's toward either end.
    fn held(&self, place: Place, moved: f64, by: &[(f64, bool)]) -> Held {
        let outermost = |of: fn(f64, f64) -> f64, start| by.iter().map(|one| one.0).fold(start, of);
        let first = outermost(f64::min, f64::INFINITY);
        let last = outermost(f64::max, f64::NEG_INFINITY);
        let middle = self.from + moved + self.length / 2.0;
        let share = |at: f64| -> f64 {
            if last <= first {
                return 1.0;
            }
            if at > first && at < last {
                return 0.0;
            }
            let lever = |load: f64| {
                let on_last = (load - first) / (last - first);
                if at >= last { on_last } else { 1.0 - on_last }
            };
            let worse = lever(middle - self.off_middle).abs();
            worse.max(lever(middle + self.off_middle).abs())
        };
        let by = by.iter().map(|(at, is_catch)| Support {
            at: Length::from_base(*at),
            share: share(*at),
            is_catch: *is_catch,
        });
        Held {
            place,
            by: by.collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Line, Place};

    fn shares(line: &Line, place: Place) -> Vec<f64> {
        let held = line
            .places(4.0)
            .into_iter()
            .find(|held| held.place == place);
        let by = held.map(|held| held.by).unwrap_or_default();
        by.iter().map(|by| by.share).collect()
    }

    /// Five meters of leaf with its tail, guides at 4 m and 6 m, a catch at its end.
    fn line(off_middle: f64) -> Line {
        Line {
            from: 0.0,
            length: 6.0,
            off_middle,
            guides: vec![4.0, 6.0],
            catch: Some(-0.1),
        }
    }

    #[test]
    fn closed_it_rests_on_catch_and_tail() {
        let shares = shares(&line(0.0), Place::Closed);
        assert_eq!(shares.len(), 3);
        // Moments about the catch at 0 m: the wind's middle at 3 m, the last guide at 6 m.
        for (share, expected) in shares.iter().zip([0.0, 0.5, 0.5]) {
            assert!((share - expected).abs() < 1e-12, "{shares:?}");
        }
    }

    #[test]
    fn off_its_catch_the_front_guide_carries_more_than_the_wind() {
        let shares = shares(&line(0.0), Place::OffItsCatch);
        // About the last guide: 3 m over 2 m; about the front one: 1 m over 2 m.
        for (share, expected) in shares.iter().zip([1.5, 0.5]) {
            assert!((share - expected).abs() < 1e-12, "{shares:?}");
        }
    }

    #[test]
    fn wind_off_the_middle_asks_more() {
        let (even, off) = (line(0.0), line(1.2));
        for place in [Place::Closed, Place::OffItsCatch, Place::Halfway] {
            let sum = |line: &Line| shares(line, place).iter().sum::<f64>();
            assert!(sum(&off) > sum(&even), "{place:?}");
        }
    }

    #[test]
    fn a_lone_guide_has_it_all() {
        let lone = Line {
            guides: vec![4.0],
            catch: None,
            ..line(0.0)
        };
        assert_eq!(shares(&lone, Place::Closed), [1.0]);
    }
}
