//! How far a post gives at its latch, and whether latch, lock or beam still line up.
//!
//! Looked at with the leaf shut. Held against the play that the site gives for that post; else, along the gate line, against the band of the catch, and for
//! a hanging post the drop of the leaf's end against the height that the catch takes. The foot turns as measured.

use super::at_foot::{AtFoot, Sideways, at_foot, hardest};
use super::foot_turn::foot_turn;
use super::loads::Level;
use super::on_leaf_post::is_unlatched;
use super::on_post::section;
use super::post_cases::leaf_of;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::leaf::{Metal, MetalProperties};
use formula::standing::{MastSway, PostDeflection};
use quantity::{Angle, Force, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque};
use site::{Gate, GateKind, Post, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-post-sway-at-latch",
    codes: BOTH,
    leaves_open: "play of hinges and guides, a plate that bends, a footing that creeps over the years, and heat: measure the movement at the latch with the leaf swung through its travel",
    concerns: "each hanging and catch post of steel, and each post with a latch or a beam",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked =
        |gate: &&Gate| !matches!(gate.kind, GateKind::VerticalPivot | GateKind::VerticalLift);
    for gate in site.gate.iter().filter(asked) {
        let latches = |post: &&Post| {
            let holds = matches!(post.role, PostRole::Hinge | PostRole::Catch);
            post.pillar.is_none() && (holds || post.latch_height.is_some())
        };
        for post in gate.post.iter().filter(latches) {
            round.ask(About::new(&post.origin, &post.id), |asking| {
                sway(asking, site, gate, post)
            });
        }
    }
}

/// Movement of a post at its latch.
#[derive(Debug, Clone, Copy)]
struct Moved {
    along: Length,
    across: Length,
    /// Turn of the post's top in the plane of the shut leaf.
    turn: Angle,
}

fn sway<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, post: &'s Post) -> Answer {
    let cases = at_foot(asking, site, gate, post, Level::Service);
    let stiff = stiff(asking, site, post);
    let allowed = allowed(asking, gate, post);
    let (cases, stiff, allowed) = (cases?, stiff?, allowed?);
    let latched: Vec<AtFoot> = cases
        .into_iter()
        .filter(|case| !is_unlatched(case.case))
        .collect();
    let along = hardest(&latched, |case| case.along.moment.base());
    let across = hardest(&latched, |case| case.across.moment.base());
    let (Some(along), Some(across)) = (along, across) else {
        return asking.refuse("nothing moves this post");
    };
    let moved = moved(asking, &stiff, (along, across))?;
    let comparisons = allowed.against(moved);
    asking.say(|print| {
        let drop = allowed.drop_of(moved).map_or_else(String::new, |drop| {
            format!(", and the end of its leaf drops {}", print.q(drop))
        });
        format!(
            "At its latch {} gives {} along the gate line with {} and {} across it with {}{drop}; {}.",
            capitalized(post.id.as_str()),
            print.q(moved.along),
            along.case,
            print.q(moved.across),
            across.case,
            allowed.words(|length| print.q(length))
        )
    });
    Outcome::worst(comparisons).ok_or(Halt)
}

/// A post as it resists.
#[derive(Debug, Clone, Copy)]
struct Stiff {
    height: Length,
    latch: Length,
    modulus: Pressure,
    along: SecondMomentOfArea,
    across: SecondMomentOfArea,
    base_turn: Angle,
}

fn stiff<'s>(asking: &mut Asking<'s>, site: &'s Site, post: &'s Post) -> Result<Stiff, Halt> {
    let section = section(asking, post);
    let height = read!(asking, post.height);
    let latch = read!(asking, post.latch_height);
    let base_turn = foot_turn(asking, site, post);
    let (section, height, latch, base_turn) = (section?, height?, latch?, base_turn?);
    let modulus = asking
        .work(&MetalProperties {
            metal: Metal::Steel,
        })?
        .elasticity;
    Ok(Stiff {
        height,
        latch,
        modulus,
        along: section.inertia,
        across: section.inertia_across(),
        base_turn,
    })
}

/// The hardest case along and the hardest across; the foot is taken to turn in each as far as it ever does.
fn moved(
    asking: &mut Asking<'_>,
    stiff: &Stiff,
    (along, across): (&AtFoot, &AtFoot),
) -> Result<Moved, Halt> {
    let mut one_way = |side: Sideways, second_moment| -> Result<(Length, Angle), Halt> {
        let (force, height, moment) = lever(side, stiff.height);
        let bent = asking.work(&PostDeflection {
            force,
            moment,
            height,
            latch_height: stiff.latch,
            modulus: stiff.modulus,
            second_moment,
            base_turn: stiff.base_turn,
        })?;
        let turned = asking.work(&MastSway {
            top_force: force,
            spread_force: Force::from_base(0.0),
            moment,
            height,
            modulus: stiff.modulus,
            second_moment,
            base_turn: stiff.base_turn,
        })?;
        Ok((bent.movement, turned.turn))
    };
    let (along, turn) = one_way(along.along, stiff.along)?;
    let (across, _) = one_way(across.across, stiff.across)?;
    Ok(Moved {
        along,
        across,
        turn,
    })
}

/// A force with its height and a moment there that give the same at the foot. A moment that no force below the top of the
/// post gives acts at that top, where it bends the post most.
fn lever(side: Sideways, top: Length) -> (Force, Length, Torque) {
    let (force, moment) = (side.force.base(), side.moment.base());
    let height = if force * top.base() > moment {
        Length::from_base((moment / force).max(top.base() * 0.01))
    } else {
        top
    };
    let rest = (moment - force * height.base()).max(0.0);
    (side.force, height, Torque::from_base(rest))
}

/// What latch, lock or beam takes.
#[derive(Debug, Clone, Copy)]
enum Allowed {
    /// The play written for the post, any way.
    Play(Length),
    /// The bands of the catch: along, and for a leaf of some length that hangs here, up and down.
    Bands(Length, Option<(Length, Length)>),
}

fn allowed<'s>(asking: &mut Asking<'s>, gate: &'s Gate, post: &'s Post) -> Result<Allowed, Halt> {
    let play = asking.read_if_there(&post.origin, "latch_play", post.latch_play.as_ref());
    if let Some(play) = play {
        return Ok(Allowed::Play(play));
    }
    let banded = |catch: &&site::Catch| catch.length_band.is_some();
    let Some(catch) = gate.catch.as_ref().filter(banded) else {
        return asking.lack(&post.origin, "latch_play", Wants::Written("\"1/2 in\""));
    };
    let along = read!(asking, catch.length_band);
    if post.role != PostRole::Hinge {
        return Ok(Allowed::Bands(along?, None));
    }
    let height = read!(asking, catch.height_band);
    let length = leaf_of(asking, gate, post).and_then(|leaf| read!(asking, leaf.length));
    let (along, height, length) = (along?, height?, length?);
    Ok(Allowed::Bands(along, Some((height, length))))
}

impl Allowed {
    fn against(self, moved: Moved) -> Vec<Comparison> {
        let compared = |demand, movement: Length, capacity, allowed: Length| {
            Comparison::at_most(
                Labeled::new(demand, movement),
                Labeled::new(capacity, allowed),
            )
        };
        let any_way = moved.along.base().hypot(moved.across.base());
        match self {
            Self::Play(play) => vec![compared(
                "movement of the post at its latch",
                Length::from_base(any_way),
                "movement that the latch takes",
                play,
            )],
            Self::Bands(along, hung) => {
                let mut all = vec![compared(
                    "movement of the post along the gate line",
                    moved.along,
                    "distance that the catch takes",
                    along,
                )];
                if let (Some((height, _)), Some(drop)) = (hung, self.drop_of(moved)) {
                    all.push(compared(
                        "drop of the leaf's end",
                        drop,
                        "height that the catch takes",
                        height,
                    ));
                }
                all
            }
        }
    }

    /// How far the end of a leaf drops as its post turns.
    fn drop_of(self, moved: Moved) -> Option<Length> {
        match self {
            Self::Bands(_, Some((_, length))) => Some(length * moved.turn.base().tan()),
            Self::Bands(_, None) | Self::Play(_) => None,
        }
    }

    fn words(self, print: impl Fn(Length) -> String) -> String {
        match self {
            Self::Play(play) => format!("{} is taken there", print(play)),
            Self::Bands(along, None) => format!("the catch takes {} along", print(along)),
            Self::Bands(along, Some((height, _))) => format!(
                "the catch takes {} along and {} up or down",
                print(along),
                print(height)
            ),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
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
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        length = "10 ft"
        height = "5 ft"
        ground_clearance = "4 in"
        solidity = "30 %"
        mass = "300 lb"
        center_along = "5 ft"
        [gate.catch]
        length_band = "1 in"
        height_band = "1 1/2 in"
        [[gate.post]]
        id = "post"
        role = "hinge"
        height = "6 ft"
        latch_height = "4 ft"
        section = "HSS 6x6x1/4"
        foot_turn = "0.1°"
        foundation = "footing"
        [[foundation]]
        id = "footing"
        diameter = "24 in"
        depth = "5 ft"
    "#;

    #[test]
    fn holds_as_a_stiff_post() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The foot alone drops the end by 10 ft times the tangent of a tenth of a degree.
        let foot = 3.048 * 0.1_f64.to_radians().tan();
        assert!(finding.demand.unwrap().value.unwrap() > foot);
    }

    #[test]
    fn fails_as_a_whip_and_on_a_soft_foot() {
        let whip = only(&CHECK, &SITE.replace("HSS 6x6x1/4", "HSS 3x3x1/8"));
        assert_eq!(whip.verdict, Verdict::Fails, "{}", whip.sentence);
        let soft = only(&CHECK, &SITE.replace("0.1°", "1°"));
        assert_eq!(soft.verdict, Verdict::Fails, "{}", soft.sentence);
        let play = SITE.replace("foot_turn", "latch_play = \"1/16 in\"\nfoot_turn");
        assert_eq!(only(&CHECK, &play).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_foot_and_a_latch() {
        let bare = SITE
            .replace("foot_turn = \"0.1°\"", "")
            .replace("length_band = \"1 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_footing_that_may_move_is_taken_to_move_half_an_inch() {
        let moves = SITE
            .replace("foot_turn = \"0.1°\"", "")
            .replace("depth = \"5 ft\"", "depth = \"5 ft\"\nmay_move = true");
        let finding = only(&CHECK, &moves);
        // 1/2 in over 40 in turns the post by 1 in 80, and drops the end of 10 ft of leaf by more than 1 1/2 in.
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let drop = finding.demand.unwrap().value.unwrap() / 0.0254;
        assert!(drop > 1.5 && drop < 4.0, "{drop}");
    }
}
