//! What ice adds to a leaf: weight on the parts that carry it, and face for the wind that comes with it.
//!
//! The ice of the map is taken all round on every member whose section is known, by the circle around it as ASCE 7 does.
//! Openings are closed as those of a mesh, which closes faster than bars. The weight is held against the wheels or the
//! hinges; the wind on the iced leaf against the design wind on the bare one, for which all else is made.

use super::load::{LeafWind, Wind, on_face, on_leaf};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::leaf::{load_factor, mass};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::wind::{IceOnMembers, IcedSolidity, OpeningPattern};
use quantity::{Acceleration, Force, Length, Mass, MassDensity, Quantity as _, Ratio};
use site::{Gate, GateKind, Leaf, Member, MemberRole, SectionShape, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "wind-ice-on-leaf",
    codes: BOTH,
    leaves_open: "ice on fittings, in the track, in the hinges and on the drive; wet snow that bridges openings; whether the drive moves the iced leaf: clear it first",
    concerns: "each leaf",
    ask,
};

/// Density of glaze in ASCE 7, 56 lb/ft³.
const GLAZE: f64 = 897.03;
/// How much bigger a pipe of the United States is than its nominal size, at most: true from 3/4 in on.
const PIPE: f64 = 0.015;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                iced(asking, site, gate, leaf)
            });
        }
    }
}

fn iced<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let thickness = read!(asking, site.climate?.ice);
    let bare = mass(asking, leaf);
    let ice = thickness.and_then(|thickness| ice(asking, leaf, thickness));
    let carried = carried(asking, gate, leaf);
    let solidity = thickness.and_then(|thickness| closed_by(asking, leaf, thickness));
    let with_ice = on_face(asking, site, leaf, (Wind::WithIce, solidity));
    let design = on_leaf(asking, site, leaf, Wind::Design);
    let (bare, ice, carried) = (bare?, ice?, carried?);
    let (with_ice, design): (LeafWind, LeafWind) = (with_ice?, design?);
    let (thickness, solidity) = (thickness?, solidity?);
    let weight: Force = (bare + ice) * Acceleration::from_base(9.80665);
    let load = weight * carried.share;
    asking.say(|print| {
        format!(
            "{} of ice adds {} to the {} of {} and closes it to {}; {} carries {} of {}. With {} of wind it takes {}, bare in the storm {}.",
            print.q(thickness),
            print.q(ice),
            print.q(bare),
            leaf.id,
            print.percent(solidity),
            carried.what,
            print.q(load),
            print.q(carried.rated),
            print.q(with_ice.speed),
            print.q(with_ice.force),
            print.q(design.force)
        )
    });
    let comparisons = [
        Comparison::at_most(
            Labeled::new("load of the iced leaf", load),
            Labeled::new("load that its wheel or hinge may carry", carried.rated),
        ),
        Comparison::at_most(
            Labeled::new("wind on the iced leaf", with_ice.force),
            Labeled::new("design wind on the bare leaf", design.force),
        ),
    ];
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The hardest loaded part that carries the leaf: which, what share of the weight, and what it may carry.
#[derive(Debug, Clone, Copy)]
struct Carried {
    what: &'static str,
    share: Ratio,
    rated: Force,
}

fn carried<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Carried, Halt> {
    match gate.kind {
        // A stiff leaf rests on two of its wheels.
        GateKind::TrackSlide => Ok(Carried {
            what: "one of two wheels",
            share: Ratio::from_base(0.5),
            rated: read!(asking, gate.wheels?.rated_load)?,
        }),
        GateKind::CantileverSlide => {
            let factor = load_factor(asking, gate, leaf);
            let rated = read!(asking, gate.wheels?.rated_load);
            // The loads of both trolleys add up to the factor; the front one carries all but what pulls the rear one down.
            Ok(Carried {
                what: "the front trolley",
                share: (factor? + Ratio::from_base(1.0)) / 2.0,
                rated: rated?,
            })
        }
        // Pins seldom share the weight: one carries it.
        GateKind::SingleSwing | GateKind::DoubleSwing => Ok(Carried {
            what: "one hinge",
            share: Ratio::from_base(1.0),
            rated: read!(asking, leaf.hinges?.rated_load)?,
        }),
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => asking.refuse(
            "ice on a balanced leaf or arm upsets its balance, which is not worked here: clear the ice before it moves",
        ),
    }
}

/// Solid share of the iced leaf.
fn closed_by<'s>(
    asking: &mut Asking<'s>,
    leaf: &'s Leaf,
    thickness: Length,
) -> Result<Ratio, Halt> {
    let solidity = read!(asking, leaf.solidity)?;
    if solidity.base() >= 1.0 {
        return Ok(solidity);
    }
    let opening = read!(asking, leaf.opening)?;
    let leaf = asking.work(&IcedSolidity {
        solidity,
        opening,
        pattern: OpeningPattern::Mesh,
        thickness,
    })?;
    Ok(leaf.iced)
}

/// Mass of the ice on all members whose shape is written down.
fn ice<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf, thickness: Length) -> Result<Mass, Halt> {
    if leaf.member.is_empty() {
        let member = "[{ what = \"picket\", role = \"infill\", count = 40, length = \"5 ft 6 in\", section = \"tube 1x1x1/16\" }]";
        return asking.lack(&leaf.origin, "member", Wants::Written(member));
    }
    let masses: Vec<Result<Mass, Halt>> = leaf
        .member
        .iter()
        .filter(|member| member.role != Some(MemberRole::Fitting) || member.section.is_some())
        .map(|member| ice_on(asking, member, thickness))
        .collect();
    let mut sum = Mass::from_base(0.0);
    for mass in masses {
        sum += mass?;
    }
    Ok(sum)
}

fn ice_on<'s>(
    asking: &mut Asking<'s>,
    member: &'s Member,
    thickness: Length,
) -> Result<Mass, Halt> {
    let density = MassDensity::from_base(GLAZE);
    let length = read!(asking, member.length);
    if member.width.is_some() {
        let width = read!(asking, member.width);
        // Ice on both faces of the whole outline: more than round sleeves on thin wires come to.
        let volume = length?.base() * width?.base() * 2.0 * thickness.base();
        return Ok(Mass::from_base(
            volume * GLAZE * f64::from(member.count.unwrap_or(1)),
        ));
    }
    let count = pick!(asking, member.count);
    let section = asking.need(
        &member.origin,
        "section",
        member.section.as_ref(),
        "\"tube 1x1x1/16\"",
    );
    let (around, width) = sizes(section?.shape());
    let bars = asking.work(&IceOnMembers {
        thickness,
        around,
        width,
        length: length? * f64::from(count?),
        density,
    })?;
    Ok(bars.mass)
}

/// Circle around a section, and its greater side.
fn sizes(shape: SectionShape) -> (Length, Length) {
    match shape {
        SectionShape::Hss { depth, width, .. }
        | SectionShape::Tube { depth, width, .. }
        | SectionShape::Flat { depth, width } => (
            Length::from_base(depth.base().hypot(width.base())),
            if depth > width { depth } else { width },
        ),
        SectionShape::RoundTube { diameter, .. } | SectionShape::Rod { diameter } => {
            (diameter, diameter)
        }
        SectionShape::Pipe { nominal } => {
            let outer = nominal + Length::from_base(PIPE);
            (outer, outer)
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
        ice = "1/2 in"
        ice_wind_speed = "40 mph"
        exposure = "C"
        topographic_factor = "1"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "25 %"
        opening = "4 in"
        mass = "300 lb"
        member = [
          { what = "picket", role = "infill", count = 48, length = "6 ft", section = "rod 1 in" },
          { what = "wheels", role = "fitting", count = 1, length = "20 ft", mass_per_length = "2 lb/ft" },
        ]
        [gate.wheels]
        rated_load = "500 lbf"
    "#;

    #[test]
    fn holds_on_wheels_with_load_in_hand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: π · 0.5 · 1.5 in² of 56 pcf on 288 ft are 263.9 lb; half of 563.9 lb on one wheel.
        let load = finding.demand.unwrap().value.unwrap() / 4.448_221_6;
        assert!((load - 281.95).abs() < 0.05, "{load}");
    }

    #[test]
    fn fails_on_small_wheels_and_where_ice_makes_a_wall() {
        let small = only(&CHECK, &SITE.replace("500 lbf", "250 lbf"));
        assert_eq!(small.verdict, Verdict::Fails, "{}", small.sentence);
        let shut = SITE
            .replace("opening = \"4 in\"", "opening = \"1 in\"")
            .replace("\"40 mph\"", "\"80 mph\"");
        let wall = only(&CHECK, &shut);
        assert_eq!(wall.verdict, Verdict::Fails, "{}", wall.sentence);
    }

    #[test]
    fn a_mesh_is_iced_over_its_whole_outline() {
        let mesh = SITE.replace(
            "section = \"rod 1 in\"",
            "section = \"rod 1 in\" }, { what = \"mesh\", role = \"infill\", length = \"10 ft\", width = \"5 ft\", mass_per_area = \"1 lb/ft²\"",
        );
        let load = |text: &str| only(&CHECK, text).demand.unwrap().value.unwrap() / 4.448_221_6;
        // An inch of ice of 56 pcf on 50 ft² are 233.3 lb, half of it on one wheel.
        assert!((load(&mesh) - load(SITE) - 116.67).abs() < 0.05);
    }

    #[test]
    fn unknown_without_ice_and_sections() {
        let bare = SITE
            .replace("ice = \"1/2 in\"", "")
            .replace(", section = \"rod 1 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(!finding.missing.is_empty());
        let no_section = only(&CHECK, &SITE.replace(", section = \"rod 1 in\"", ""));
        assert_eq!(no_section.missing.len(), 1, "{:?}", no_section.missing);
    }
}
