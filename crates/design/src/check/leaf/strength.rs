//! Whether the rails of a leaf, or its arm, hold the design wind, and their own weight with a person who climbs on.
//!
//! Each rail takes half the wind and spans from support to support: a leaf that slides from its catch to its guides, one
//! that swings from its hinges to its latch. Weight and climber pull on one rail and push on the other, as far apart as the
//! frame is high. An arm stands out from its pivot.

use super::frame::{section_of, weight};
use super::section::Bending;
use crate::asking::{Asking, Wants, read};
use crate::check::structure::loads::{Factors, Steel};
use crate::check::wind::load::{LeafWind, Wind, on_leaf};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::leaf::{CantileverBeam, MetalProperties, SimpleBeam};
use quantity::{
    Force, ForcePerLength, Length, Pressure, Quantity as _, SecondMomentOfArea, Torque,
};
use site::{Gate, GateKind, Leaf, Member, MemberRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-strength",
    codes: BOTH,
    leaves_open: "welds, infill, the buckling of a rail between its uprights, the jolt of a sudden stop, and the gust at the windward edge alone; where the law wants a licensed engineer, the engineer decides",
    concerns: "each leaf",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                strength(asking, site, gate, leaf)
            });
        }
    }
}

fn strength<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let yields = read!(asking, leaf.yield_strength);
    let wind = on_leaf(asking, site, leaf, Wind::Design);
    let weight = weight(asking, leaf);
    let steel = Steel::of(asking, site.site.code_basis);
    let factors = Factors::of(asking, site.site.code_basis, steel.level);
    let stresses = if gate.kind == GateKind::BarrierArm {
        arm(asking, leaf, factors, (wind, weight))
    } else {
        frame(asking, gate, leaf, factors, (wind, weight))
    };
    let (stresses, allowed) = (stresses?, yields? / steel.yield_over);
    asking.say(|print| {
        format!(
            "In the design wind a rail bends to {}, and under its weight {} it is pulled to {}, factors on the loads counted; {} is allowed.",
            print.q(stresses.wind),
            if gate.kind == GateKind::BarrierArm { "alone" } else { "with a climber" },
            print.q(stresses.weight),
            print.q(allowed)
        )
    });
    let held = |label: &'static str, stress: Pressure| {
        Comparison::at_most(
            Labeled::new(label, stress),
            Labeled::new("stress allowed", allowed),
        )
    };
    Outcome::worst([
        held("stress in the design wind", stresses.wind),
        held("stress from weight and climber", stresses.weight),
    ])
    .ok_or(Halt)
}

/// Stress with the factors of the loads, by case.
struct Stresses {
    wind: Pressure,
    weight: Pressure,
}

type Loads = (Result<LeafWind, Halt>, Result<ForcePerLength, Halt>);

fn frame<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    factors: Factors,
    (wind, weight): Loads,
) -> Result<Stresses, Halt> {
    let length = read!(asking, leaf.length);
    let height = read!(asking, leaf.height);
    let climber = read!(asking, gate.climbing_load);
    let top = rail(asking, leaf, MemberRole::TopRail);
    let bottom = rail(asking, leaf, MemberRole::BottomRail);
    let spans = spans(asking, gate, leaf);
    let hangs = hanging(asking, gate, leaf);
    let (length, height, climber) = (length?, height?, climber?);
    let (top, bottom, spans) = (top?, bottom?, spans?);
    let spread = spread(wind?, length, factors.wind / 2.0);
    let upper = in_wind(asking, &top, spread, spans.top)?;
    let lower = in_wind(asking, &bottom, spread, spans.bottom)?;
    let moment = moment(&hangs?, weight? * factors.dead, climber * factors.live);
    let apart = height - (top.bending.depth + bottom.bending.depth) / 2.0;
    if apart.base() <= 0.0 {
        return asking.refuse("the rails are deeper than the leaf is high");
    }
    let pull = moment.base() / apart.base();
    let area = top.bending.area.base().min(bottom.bending.area.base());
    let climbed = Pressure::from_base(pull / area);
    asking.note(|print| {
        format!(
            "Moment in the frame {} over {} between the rails: {} in the lighter rail.",
            print.q(moment),
            print.q(apart),
            print.q(climbed)
        )
    });
    Ok(Stresses {
        wind: if upper > lower { upper } else { lower },
        weight: climbed,
    })
}

/// A share of the wind on the leaf, over its length.
fn spread(wind: LeafWind, length: Length, share: f64) -> ForcePerLength {
    ForcePerLength::from_base(wind.force.base() / length.base() * share)
}

/// A rail with what bends it across the leaf.
struct Rail {
    bending: Bending,
    inertia_across: SecondMomentOfArea,
    elasticity: Pressure,
}

fn rail<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf, role: MemberRole) -> Result<Rail, Halt> {
    let member = leaf.member.iter().find(|member| member.role == Some(role));
    match member {
        Some(member) => of_member(asking, leaf, member),
        None => asking.lack(
            &leaf.origin,
            "member",
            Wants::Written(
                "[{ what = \"top rail\", role = \"top rail\", count = 1, length = \"20 ft\", section = \"HSS 2x2x1/8\" }], and so each rail and upright",
            ),
        ),
    }
}

fn of_member<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    member: &'s Member,
) -> Result<Rail, Halt> {
    let (bending, metal) = section_of(asking, leaf, member)?;
    let elasticity = asking.work(&MetalProperties { metal })?.elasticity;
    Ok(Rail {
        bending,
        inertia_across: bending.inertia_across(),
        elasticity,
    })
}

fn in_wind(
    asking: &mut Asking<'_>,
    rail: &Rail,
    spread: ForcePerLength,
    span: Length,
) -> Result<Pressure, Halt> {
    let bent = asking.work(&SimpleBeam {
        length: span,
        middle_load: Force::from_base(0.0),
        uniform_load: spread,
        elasticity: rail.elasticity,
        inertia: rail.inertia_across,
        modulus: rail.bending.modulus_across,
    })?;
    Ok(bent.stress)
}

/// How far the rails reach between what holds them against the wind.
struct Spans {
    top: Length,
    bottom: Length,
}

fn spans<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Spans, Halt> {
    match gate.kind {
        GateKind::TrackSlide => {
            let top = read!(asking, gate.clear_opening);
            let bottom = read!(asking, gate.wheels?.spacing);
            Ok(Spans {
                top: top?,
                bottom: bottom?,
            })
        }
        GateKind::CantileverSlide => {
            let span = read!(asking, gate.clear_opening)?;
            Ok(Spans {
                top: span,
                bottom: span,
            })
        }
        _ => {
            let span = read!(asking, leaf.length)?;
            Ok(Spans {
                top: span,
                bottom: span,
            })
        }
    }
}

/// How the frame carries what pulls it down.
enum Hanging {
    /// Held at one end.
    Out(Length),
    /// Held at both.
    Between(Length),
}

fn hanging<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Hanging, Halt> {
    match gate.kind {
        GateKind::TrackSlide => Ok(Hanging::Between(read!(asking, gate.wheels?.spacing)?)),
        GateKind::CantileverSlide => {
            let front = read!(asking, gate.wheels?.front_at);
            let end = read!(asking, leaf.closed_end);
            Ok(Hanging::Out(front? - end?))
        }
        GateKind::VerticalLift => Ok(Hanging::Between(read!(asking, leaf.length)?)),
        _ => Ok(Hanging::Out(read!(asking, leaf.length)?)),
    }
}

fn moment(hanging: &Hanging, weight: ForcePerLength, climber: Force) -> Torque {
    let (weight, climber) = (weight.base(), climber.base());
    Torque::from_base(match hanging {
        Hanging::Out(length) => climber * length.base() + weight * length.base().powi(2) / 2.0,
        Hanging::Between(span) => climber * span.base() / 4.0 + weight * span.base().powi(2) / 8.0,
    })
}

/// An arm stands out from its pivot, in the wind and under its weight.
fn arm<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    factors: Factors,
    (wind, weight): Loads,
) -> Result<Stresses, Halt> {
    let length = read!(asking, leaf.length);
    let Some(member) = leaf.member.iter().find(|member| member.section.is_some()) else {
        return asking.lack(
            &leaf.origin,
            "member",
            Wants::Written(
                "[{ what = \"arm\", count = 1, length = \"14 ft\", section = \"tube 4x2x1/8\", material = \"aluminum\" }]",
            ),
        );
    };
    let rail = of_member(asking, leaf, member)?;
    let length = length?;
    let beam = |spread: ForcePerLength| CantileverBeam {
        length,
        end_load: Force::from_base(0.0),
        uniform_load: spread,
        elasticity: rail.elasticity,
        inertia: rail.inertia_across,
        modulus: rail.bending.modulus_across,
    };
    let blown = asking.work(&beam(spread(wind?, length, factors.wind)))?;
    let hung = asking.work(&CantileverBeam {
        inertia: rail.bending.inertia,
        modulus: rail.bending.modulus,
        ..beam(weight? * factors.dead)
    })?;
    Ok(Stresses {
        wind: blown.stress,
        weight: hung.stress,
    })
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
        basic_wind_speed = "100 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "16 ft"
        climbing_load = "200 lbf"
        [gate.wheels]
        spacing = "14 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "17 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "40 %"
        mass = "500 lb"
        material = "steel"
        yield_strength = "46 ksi"
        member = [
          { what = "top rail", role = "top rail", count = 1, length = "17 ft", section = "HSS 3x3x3/16" },
          { what = "bottom rail", role = "bottom rail", count = 1, length = "17 ft", section = "HSS 4x4x1/4" },
        ]
    "#;

    #[test]
    fn holds_with_stout_rails() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 0.6 · 2.5 lbf/in² of frame against 46 ksi / 1.67: the allowed stress is 27.5 ksi.
        let allowed = finding.capacity.unwrap().value.unwrap();
        assert!((allowed / 6.894757e6 - 46.0 / 1.67).abs() < 1e-3);
    }

    #[test]
    fn fails_with_a_thin_top_rail_in_a_storm() {
        let thin = SITE
            .replace("HSS 3x3x3/16", "HSS 2x2x1/8")
            .replace("100 mph", "140 mph")
            .replace("40 %", "100 %");
        let finding = only(&CHECK, &thin);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_climber_hangs_on_a_long_thin_leaf() {
        let swing = SITE
            .replace("track-slide", "single-swing")
            .replace("length = \"17 ft\"\n", "length = \"30 ft\"\n")
            .replace("height = \"6 ft\"", "height = \"1 ft\"")
            .replace("mass = \"500 lb\"", "mass = \"3000 lb\"")
            .replace("100 mph", "10 mph");
        let finding = only(&CHECK, &swing);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_grade_and_rails() {
        let bare = SITE
            .replace("yield_strength = \"46 ksi\"", "")
            .replace("role = \"top rail\", ", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing.len() >= 2, "{:?}", finding.missing);
    }
}
