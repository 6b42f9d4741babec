//! What reaches the foot of a post: the wind on its leaf, on itself and on what is on top, a leaf that hangs from it,
//! the jolt at a stop, and a push from the side.
//!
//! Everything is counted at the finished surface. Each case is a place of the leaf or an event; loads of one case come
//! together, with the factors of the level asked for.

use super::loads::{Factors, Level};
use super::post_cases::{Case, Part, cases};
use crate::asking::Asking;
use crate::outcome::Halt;
use quantity::{Force, Length, Quantity as _, Torque};
use site::{Gate, Post, Site};
use std::ops::{Add, Mul};

/// A force to one side, and its moment about the foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Sideways {
    /// The force.
    pub(crate) force: Force,
    /// Its moment about the foot, with that of weight that hangs to that side.
    pub(crate) moment: Torque,
}

impl Sideways {
    /// Nothing.
    pub(crate) fn none() -> Self {
        Self {
            force: Force::from_base(0.0),
            moment: Torque::from_base(0.0),
        }
    }

    /// A force at a height.
    pub(crate) fn at(force: Force, height: Length) -> Self {
        Self {
            force,
            moment: Torque::from_base(force.base() * height.base()),
        }
    }

    /// A weight that hangs at a distance.
    pub(crate) fn hanging(weight: Force, reach: Length) -> Self {
        Self {
            force: Force::from_base(0.0),
            moment: Torque::from_base(weight.base() * reach.base()),
        }
    }

    /// Force and moment without their signs.
    fn size(self) -> Self {
        Self {
            force: Force::from_base(self.force.base().abs()),
            moment: Torque::from_base(self.moment.base().abs()),
        }
    }
}

impl Add for Sideways {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self {
            force: self.force + other.force,
            moment: self.moment + other.moment,
        }
    }
}

impl Mul<f64> for Sideways {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self {
            force: self.force * factor,
            moment: self.moment * factor,
        }
    }
}

/// What reaches the foot of a post in one case, factors included.
#[derive(Debug, Clone, Copy)]
pub(crate) struct AtFoot {
    /// The case, in words that follow "with": "the leaf closed in the design wind".
    pub(crate) case: &'static str,
    /// Along the gate line.
    pub(crate) along: Sideways,
    /// Across it.
    pub(crate) across: Sideways,
    /// All that presses down, with the factors of weight that does harm.
    pub(crate) weight: Force,
    /// Weight alone, with the factor of weight that helps.
    pub(crate) least_weight: Force,
}

impl AtFoot {
    /// Both directions together: the force, and the moment that a round post or footing feels.
    pub(crate) fn together(&self) -> Sideways {
        let hypot = |along: f64, across: f64| along.hypot(across);
        Sideways {
            force: Force::from_base(hypot(self.along.force.base(), self.across.force.base())),
            moment: Torque::from_base(hypot(self.along.moment.base(), self.across.moment.base())),
        }
    }
}

/// Every case that reaches the foot of a post, with the factors of a level.
pub(crate) fn at_foot<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    post: &'s Post,
    level: Level,
) -> Result<Vec<AtFoot>, Halt> {
    let cases = cases(asking, site, gate, post)?;
    let factors = Factors::of(asking, site.site.code_basis, level);
    Ok(cases.iter().map(|case| factored(case, &factors)).collect())
}

/// The case that is worst by some measure.
pub(crate) fn hardest(cases: &[AtFoot], by: impl Fn(&AtFoot) -> f64) -> Option<&AtFoot> {
    cases
        .iter()
        .max_by(|one, other| by(one).total_cmp(&by(other)))
}

/// The post of that name, with its gate.
pub(crate) fn post_named<'s>(site: &'s Site, name: &site::Id) -> Option<(&'s Gate, &'s Post)> {
    let posts = |gate: &'s Gate| gate.post.iter().map(move |post| (gate, post));
    let mut all = site.gate.iter().flat_map(posts);
    all.find(|(_, post)| post.id == *name)
}

fn factored(case: &Case, factors: &Factors) -> AtFoot {
    let (wind, live) = if case.wind.is_some() && case.live.is_some() {
        (factors.wind_beside_live, factors.live_beside_wind)
    } else {
        (factors.wind, factors.live)
    };
    let of = |part: &Option<Part>| part.unwrap_or_else(Part::nothing);
    let (blown, pushed) = (of(&case.wind), of(&case.live));
    let sum = |of: fn(&Part) -> Sideways| {
        (of(&case.dead) * factors.dead + of(&blown) * wind + of(&pushed) * live).size()
    };
    AtFoot {
        case: case.name,
        along: sum(|part| part.along),
        across: sum(|part| part.across),
        weight: case.dead.down * factors.dead + pushed.down * live,
        least_weight: case.dead.down * factors.dead_that_helps,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::{AtFoot, Level, at_foot, hardest, post_named};
    use crate::asking::Asking;
    use crate::check::testing::site;
    use crate::check::wind::load::{Wind, on_leaf};
    use quantity::UnitSystem;

    const SLIDE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        wind_code = "ASCE 7-16"
        [climate]
        basic_wind_speed = "115 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = "0 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "80 %"
        mass = "640 lb"
        [gate.guide]
        height = "6 ft"
        at = ["20 ft", "30 ft"]
        [gate.motion]
        cruise_speed = "1 ft/s"
        [[gate.post]]
        id = "post-catch"
        role = "catch"
        at = ["0 ft", "0 ft", "0 ft"]
        height = "7 ft"
        section = "HSS 6x6x1/4"
        [[gate.post]]
        id = "post-guide"
        role = "guide"
        at = ["20 ft", "-6 in", "0 ft"]
        height = "7 ft"
        section = "HSS 6x6x1/4"
        [[gate.stop]]
        end = "closed"
        at = ["0 ft", "0 ft", "2 ft"]
        post = "post-catch"
        stiffness = "1200 lbf/in"
        [[operator]]
        id = "drive"
        gate = "main"
        starting_force = "300 lbf"
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [climate]
        basic_wind_speed = "24 m/s"
        terrain_category = "II"
        topographic_factor = "1"
        [[gate]]
        id = "court"
        kind = "single-swing"
        climbing_load = "800 N"
        [[gate.leaf]]
        id = "leaf"
        length = "3 m"
        height = "1.4 m"
        ground_clearance = "0.1 m"
        solidity = "90 %"
        mass = "120 kg"
        center_along = "1.5 m"
        [[gate.post]]
        id = "post"
        role = "hinge"
        height = "1.7 m"
        section = "tube 140x140x6 mm"
    "#;

    /// The cases of a post, and the force of the design wind on its leaf.
    fn of(text: &str, post: &str, level: Level) -> (Vec<AtFoot>, f64) {
        let site = site(text);
        let name = site.gate[0].post.iter().find(|one| one.id.as_str() == post);
        let (gate, post) = post_named(&site, &name.unwrap().id).unwrap();
        let mut asking = Asking::new(UnitSystem::Si);
        let cases = at_foot(&mut asking, &site, gate, post, level);
        assert!(cases.is_ok(), "{:?}", asking.lacks);
        let wind = on_leaf(&mut asking, &site, &gate.leaf[0], Wind::Design);
        (cases.unwrap(), wind.unwrap().force.value)
    }

    fn named<'a>(cases: &'a [AtFoot], name: &str) -> &'a AtFoot {
        cases.iter().find(|case| case.case == name).unwrap()
    }

    #[test]
    fn a_catch_post_takes_its_share_of_the_leaf_and_its_own_wind() {
        let (cases, wind) = of(SLIDE, "post-catch", Level::Strength);
        let closed = named(&cases, "the leaf closed in the design wind");
        let own = named(&cases, "the wind across the gate line");
        // Catch at 0 ft, last guide beside the closed leaf at 20 ft; the wind's middle 10.5 ft from the end, up to a fifth
        // of 21 ft nearer the catch: (20 − 6.3) / 20.
        let share = (closed.across.force.value - own.across.force.value) / wind;
        assert!((share - 13.7 / 20.0).abs() < 1e-9, "{share}");
        let arm = (closed.across.moment.value - own.across.moment.value)
            / (closed.across.force.value - own.across.force.value);
        // Half of 6 ft above a clearance of 2 in.
        assert!((arm / 0.3048 - (3.0 + 2.0 / 12.0)).abs() < 1e-9, "{arm}");
    }

    #[test]
    fn a_lone_guide_post_has_the_whole_of_the_leaf() {
        let (cases, wind) = of(SLIDE, "post-guide", Level::Strength);
        let loose = named(
            &cases,
            "the leaf stopped just off its catch in the design wind",
        );
        let own = named(&cases, "the wind across the gate line");
        let moment = loose.across.moment.value - own.across.moment.value;
        // Whatever the guide's height, its moment is that of the wind at its middle.
        let expected = wind * (3.0 + 2.0 / 12.0) * 0.3048;
        assert!(
            (moment / expected - 1.0).abs() < 1e-9,
            "{moment} {expected}"
        );
    }

    #[test]
    fn the_stop_jolts_along_with_the_factor_of_a_live_load() {
        let name = "the leaf run into its stop";
        let (service, _) = of(SLIDE, "post-catch", Level::Service);
        let (strength, _) = of(SLIDE, "post-catch", Level::Strength);
        let (service, strength) = (named(&service, name).along, named(&strength, name).along);
        assert!((strength.force.value / service.force.value - 1.6).abs() < 1e-12);
        let arm = service.moment.value / service.force.value;
        assert!((arm / 0.3048 - 2.0).abs() < 1e-9, "{arm}");
    }

    #[test]
    fn a_leaf_hangs_to_where_it_points_and_is_blown_square_to_it() {
        let (cases, wind) = of(SWING, "post", Level::Service);
        let closed = named(&cases, "the leaf closed in the design wind");
        // 120 kg at 1.5 m and half of 140 mm.
        let hung = 120.0 * 9.806_65 * 1.57;
        assert!((closed.along.moment.value - hung).abs() < 1e-6);
        assert!(closed.along.force.value.abs() < 1e-12);
        let open = named(&cases, "the leaf open in the design wind");
        assert!((open.across.moment.value - hung).abs() < 1e-6);
        let own = named(&cases, "the wind along the gate line");
        let blown = open.along.force.value - own.along.force.value;
        assert!((blown - wind).abs() < 1e-9, "{blown} {wind}");
        // Halfway both stand square to each other: the sum of their squares is that of the open leaf.
        let halfway = named(&cases, "the leaf stopped halfway in the design wind");
        let ratio = halfway.together().moment.value / open.together().moment.value;
        assert!((ratio - 1.0).abs() < 1e-9, "{ratio}");
    }

    #[test]
    fn somebody_on_the_end_tips_the_post_with_the_leaf() {
        let (cases, _) = of(SWING, "post", Level::Strength);
        let climbed = named(&cases, "somebody on the end of the leaf");
        let by_hand = 1.35 * 120.0 * 9.806_65 * 1.57 + 1.5 * 800.0 * 3.07;
        assert!((climbed.along.moment.value - by_hand).abs() < 1e-6);
    }

    #[test]
    fn a_push_comes_alone_and_with_the_wind() {
        let pushed = SWING.replace(
            "role = \"hinge\"",
            "role = \"hinge\"\nside_force = \"1 kN\"\nside_force_height = \"1 m\"",
        );
        let (bare, _) = of(SWING, "post", Level::Strength);
        let (more, _) = of(&pushed, "post", Level::Strength);
        // The hardest in the wind: somebody on the end of the leaf comes without it, and without the push.
        let worst = |cases: &[AtFoot]| {
            let closed = |case: &&AtFoot| case.case == "the leaf closed in the design wind";
            let blown: Vec<AtFoot> = cases.iter().filter(closed).copied().collect();
            let hardest = hardest(&blown, |case| case.across.moment.value).unwrap();
            hardest.across.moment.value
        };
        assert!((worst(&more) - worst(&bare) - 1500.0).abs() < 1e-6);
        let alone = named(&more, "a push from the side");
        assert!((alone.along.moment.value - 1500.0).abs() < 1e-9);
    }
}
