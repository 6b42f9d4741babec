//! How far a leaf comes down, and whether its bottom edge still clears the ground.
//!
//! The frame sags as a braced truss, held at its hinges, its front trolley or its wheels; an arm as a beam. Play at the
//! hinges and a hinge line that leans toward the latch lower the free end; the ground may rise under its way, and heave in
//! a frost. What comes of it is held against the clearance of the closed leaf, and the drop of the free end against the
//! catch. Where the clearance was taped on the hung leaf, its sag is in it already, and the answer is on the safe side.

use super::frame::{Frame, frame, section_of, weight};
use super::trolleys;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::leaf::{CantileverBeam, MetalProperties};
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _};
use site::{Gate, GateKind, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-sag-and-clearance",
    codes: BOTH,
    leaves_open: "how far the posts give and settle, play in trolleys and wheels, a person who hangs on the leaf, and snow",
    concerns: "each leaf",
    ask,
};

/// Room left for heave where the ground freezes, in meters: one inch.
const HEAVE: f64 = 0.0254;

static HEAVES: Source = Source {
    work: "an inch (25 mm) of clearance left for heave where the ground freezes",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; a paved and drained apron heaves less, wet silt more",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                clearance(asking, site, gate, leaf)
            });
        }
    }
}

/// What lowers a leaf, and what raises the ground.
#[derive(Debug, Clone, Copy)]
struct Falls {
    frame: Length,
    hinges: Length,
    ground: Length,
}

fn clearance<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Answer {
    let clearance = read!(asking, leaf.ground_clearance);
    let frame = by_frame(asking, gate, leaf);
    let hinges = by_hinges(asking, gate, leaf);
    let ground = by_ground(asking, site, gate);
    let band = gate.catch.as_ref().and_then(|catch| {
        asking.read_if_there(&catch.origin, "height_band", catch.height_band.as_ref())
    });
    let falls = Falls {
        frame: frame?,
        hinges: hinges?,
        ground: ground?,
    };
    let clearance = clearance?;
    asking.say(|print| {
        format!(
            "The frame sags {}{}, ground and frost take {}; it stands {} clear when closed.",
            print.q(falls.frame),
            if falls.hinges.base() > 0.0 {
                format!(", the hinges let it down {}", print.q(falls.hinges))
            } else {
                String::new()
            },
            print.q(falls.ground),
            print.q(clearance)
        )
    });
    let free_end = falls.frame + falls.hinges;
    let above_ground = Comparison::below(
        Labeled::new(
            "sag, play, lean and rise of the ground",
            free_end + falls.ground,
        ),
        Labeled::new("clearance of the closed leaf", clearance),
    );
    let in_catch = band.map(|band| {
        Comparison::at_most(
            Labeled::new("drop of the free end", free_end),
            Labeled::new("height that the catch takes", band),
        )
    });
    Outcome::worst([Some(above_ground), in_catch].into_iter().flatten()).ok_or(Halt)
}

/// Sag of the frame or of the arm.
fn by_frame<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Length, Halt> {
    match gate.kind {
        GateKind::SingleSwing | GateKind::DoubleSwing | GateKind::VerticalPivot => {
            let frame = frame(asking, leaf);
            let length = read!(asking, leaf.length);
            let frame = frame?;
            frame.hanging(asking, length?, (Force::from_base(0.0), frame.weight))
        }
        GateKind::TrackSlide => {
            let frame = frame(asking, leaf);
            let spacing = read!(asking, gate.wheels?.spacing);
            frame?.spanning(asking, spacing?)
        }
        GateKind::VerticalLift => {
            let frame = frame(asking, leaf);
            let length = read!(asking, leaf.length);
            frame?.spanning(asking, length?)
        }
        GateKind::CantileverSlide => {
            let frame = frame(asking, leaf);
            let ends = trolleys::ends(asking, gate, leaf);
            cantilever(asking, &frame?, ends?)
        }
        GateKind::BarrierArm => arm(asking, leaf),
    }
}

/// The part ahead of the front trolley, turned down further by the part between the two.
fn cantilever(
    asking: &mut Asking<'_>,
    frame: &Frame,
    ends: trolleys::Ends,
) -> Result<Length, Halt> {
    let (overhang, spacing) = (ends.closed.tip_ahead, ends.closed.spacing);
    if overhang.base() <= 0.0 {
        return Ok(Length::from_base(0.0));
    }
    let loads = asking.work(&ends.closed)?;
    let ahead = frame.hanging(asking, overhang, (Force::from_base(0.0), frame.weight))?;
    let nothing = frame.weight * 0.0;
    let between = frame.hanging(asking, spacing, (loads.uplift, nothing))?;
    Ok(ahead + between * (overhang.base() / spacing.base()))
}

/// An arm is a beam of its longest member.
fn arm<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Result<Length, Halt> {
    let weight = weight(asking, leaf);
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
    let section = section_of(asking, leaf, member);
    let (section, metal) = section?;
    let elasticity = asking.work(&MetalProperties { metal })?.elasticity;
    let bent = asking.work(&CantileverBeam {
        length: length?,
        end_load: Force::from_base(0.0),
        uniform_load: weight?,
        elasticity,
        inertia: section.inertia,
        modulus: section.modulus,
    })?;
    Ok(bent.deflection)
}

/// Drop of the free end from play at the hinges and from a line that leans toward the latch.
fn by_hinges<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Result<Length, Halt> {
    if !matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing) {
        return Ok(Length::from_base(0.0));
    }
    let play = read!(asking, leaf.hinges?.play);
    let spacing = read!(asking, leaf.hinges?.spacing);
    let lean = read!(asking, leaf.hinges?.lean_along);
    let length = read!(asking, leaf.length);
    let (spacing, length) = (spacing?, length?);
    if spacing.base() <= 0.0 {
        return asking.refuse("the hinges must stand apart");
    }
    let by_play = play? * (length.base() / spacing.base());
    Ok(by_play + length * lean?.base().max(0.0))
}

/// How far the ground rises under the way of the leaf, with heave where it freezes. A leaf on a track goes with it, and
/// one that rises leaves it.
fn by_ground<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Length, Halt> {
    match gate.kind {
        GateKind::TrackSlide => read!(asking, gate.track?.level_error),
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => {
            Ok(Length::from_base(0.0))
        }
        GateKind::CantileverSlide | GateKind::SingleSwing | GateKind::DoubleSwing => {
            let frost = read!(asking, site.climate?.frost_depth);
            let rise = highest(asking, gate);
            let heave = if frost?.base() > 0.0 {
                asking.rest_on(&HEAVES);
                HEAVE
            } else {
                0.0
            };
            Ok(rise? + Length::from_base(heave))
        }
    }
}

/// The highest of the levels taken under the leaf's way, not below the gate line.
fn highest<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    if gate.ground.is_empty() {
        return asking.lack(
            &gate.origin,
            "ground",
            Wants::Written("[[\"0 ft\", \"0 ft\", \"0 in\"], [\"10 ft\", \"8 ft\", \"1 in\"]]"),
        );
    }
    let levels = gate.ground.iter().map(|at| at.z.high().base());
    Ok(Length::from_base(levels.fold(0.0, f64::max)))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const FRAME: &str = r#"
        material = "steel"
        member = [
          { what = "top rail", role = "top rail", section = "HSS 2x2x1/8" },
          { what = "bottom rail", role = "bottom rail", section = "HSS 2x2x1/8" },
          { what = "upright", role = "upright", length = "5 ft 2 in", section = "HSS 2x2x1/8" },
          { what = "brace", role = "brace", count = 2, length = "8 ft", section = "HSS 2x2x1/8" },
        ]
    "#;

    fn swing() -> String {
        let head = r#"
            [site]
            name = "Test court"
            code_basis = "us"
            [climate]
            frost_depth = "30 in"
            [[gate]]
            id = "main"
            kind = "single-swing"
            ground = [["6 ft", "6 ft", "1 in"]]
            [gate.catch]
            height_band = "1/2 in"
            [[gate.leaf]]
            id = "leaf"
            length = "12 ft"
            height = "5 ft 6 in"
            mass = "300 lb ± 5 %"
            ground_clearance = "3 in"
        "#;
        let hinges = r#"
            [gate.leaf.hinges]
            play = "0.02 in"
            spacing = "4 ft"
            lean_along = "0.001"
        "#;
        format!("{head}{FRAME}{hinges}")
    }

    fn arm() -> String {
        r#"
            [site]
            name = "Test lot"
            code_basis = "us"
            [[gate]]
            id = "lane"
            kind = "barrier-arm"
            [[gate.leaf]]
            id = "arm"
            length = "12 ft"
            mass = "24 lb"
            ground_clearance = "34 in"
            material = "aluminum"
            member = [{ what = "arm", count = 1, length = "12 ft", section = "tube 4x2x1/8" }]
        "#
        .to_owned()
    }

    /// By hand: play 0.02 · 12 / 4 = 0.06 in, lean 0.001 · 144 = 0.144 in, ground and heave 2 in; the frame a few hundredths.
    #[test]
    fn holds_with_three_inches() {
        let finding = only(&CHECK, &swing());
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        let inches = finding.demand.unwrap().value.unwrap() / 0.0254;
        assert!((2.21..2.25).contains(&inches), "{inches}");
    }

    /// By hand: I of 4 × 2 × 1/8 in with sharp corners is 2.975 in⁴ and 24 lb over 12 ft sag w · L⁴ / (8 · E · I).
    #[test]
    fn holds_under_an_arm() {
        let finding = only(&CHECK, &arm());
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let inertia = (2.0 * 64.0 - 1.75 * 3.75_f64.powi(3)) / 12.0;
        let sag = 24.0 * 144.0_f64.powi(3) / (8.0 * 68.9e9 / 6894.757 * inertia);
        let inches = finding.demand.unwrap().value.unwrap() / 0.0254;
        assert!((inches / sag - 1.0).abs() < 1e-3, "{inches} {sag}");
    }

    #[test]
    fn fails_close_to_rising_ground_and_in_a_narrow_catch() {
        let low = only(&CHECK, &swing().replace("\"3 in\"", "\"2 in\""));
        assert_eq!(low.verdict, Verdict::Fails, "{}", low.sentence);
        let narrow = only(&CHECK, &swing().replace("1/2 in", "1/8 in"));
        assert_eq!(narrow.verdict, Verdict::Fails, "{}", narrow.sentence);
    }

    #[test]
    fn a_frame_with_too_few_braces_is_outside() {
        let one = only(&CHECK, &swing().replace("count = 2", "count = 1"));
        assert_eq!(one.verdict, Verdict::OutsideThisTool, "{}", one.sentence);
    }

    #[test]
    fn unknown_without_levels_and_play() {
        let bare = swing()
            .replace("ground = [[\"6 ft\", \"6 ft\", \"1 in\"]]", "")
            .replace("play = \"0.02 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
