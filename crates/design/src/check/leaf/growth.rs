//! Growth of leaf and track between the coldest night and the hottest sun, and the bow of a leaf with one sunny face.
//!
//! Metal in the sun is taken 30 K warmer than the hottest air, and on a clear night 5 K colder than the coldest: common
//! practice. The leaf may grow and shrink by what its catch takes along its length; the joints of the track by the gaps
//! that were left. The bow is a figure: nothing on the site says what the beams and the catch take across the leaf.

use super::member::of_word;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::leaf::{Metal, MetalProperties, RailJointGaps, ThermalBow, ThermalGrowth};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Temperature, TemperatureDifference, ThermalExpansion};
use site::{Gate, GateKind, Leaf, Material, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-thermal-growth",
    codes: BOTH,
    leaves_open: "the bow against beams and catch, play of the rack at its joints, and timber, which swells with water instead",
    concerns: "each leaf",
    ask,
};

/// Metal in the sun over the hottest air, and the coldest air over metal under a clear sky, in kelvin.
const SUN: f64 = 30.0;
const CLEAR_SKY: f64 = 5.0;
/// A sunny face over the shaded one, in kelvin.
const FACE: f64 = 15.0;

static METAL: Source = Source {
    work: "metal in the sun 30 K (54 °F) above the hottest air, 15 K (27 °F) from face to face, and 5 K (9 °F) below the coldest air on a clear night",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for dark metal; light paint stays cooler",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                growth(asking, site, gate, leaf)
            });
        }
    }
}

/// Coldest and hottest metal.
#[derive(Debug, Clone, Copy)]
struct Range {
    coldest: Temperature,
    hottest: Temperature,
}

fn growth<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let range = range(asking, site);
    let in_catch = in_catch(asking, gate, leaf, &range);
    let joints = match gate.kind {
        GateKind::TrackSlide => joints(asking, gate, &range).map(Some),
        _ => Ok(None),
    };
    let bow = bow(asking, leaf);
    let (range, in_catch, joints) = (range?, in_catch?, joints?);
    asking.say(|print| {
        let track = joints.map_or_else(String::new, |joints| {
            format!(
                " A joint of the track needs {} and has {}.",
                print.value(&joints.demand.value),
                print.value(&joints.capacity.value)
            )
        });
        let bow = bow.map_or_else(String::new, |bow| {
            format!(" With the sun on one face it bows about {}.", print.q(bow))
        });
        format!(
            "From {} to {} of its metal, the leaf grows {}; the catch takes {}.{track}{bow}",
            print.q(range.coldest),
            print.q(range.hottest),
            print.value(&in_catch.demand.value),
            print.value(&in_catch.capacity.value)
        )
    });
    Outcome::worst([Some(in_catch), joints].into_iter().flatten()).ok_or(Halt)
}

fn range<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Range, Halt> {
    let coldest = read!(asking, site.climate?.coldest);
    let hottest = read!(asking, site.climate?.hottest);
    asking.rest_on(&METAL);
    Ok(Range {
        coldest: Temperature::from_base(coldest?.base() - CLEAR_SKY),
        hottest: Temperature::from_base(hottest?.base() + SUN),
    })
}

/// Growth of the leaf from end to end of the range, against what its catch takes.
fn in_catch<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    range: &Result<Range, Halt>,
) -> Result<Comparison, Halt> {
    let length = read!(asking, leaf.length);
    let material = pick!(asking, leaf.material);
    let band = read!(asking, gate.catch?.length_band);
    let expansion = expansion(asking, material)?;
    let range = (*range)?;
    let grown = asking.work(&ThermalGrowth {
        length: length?,
        expansion,
        from: range.coldest,
        to: range.hottest,
    })?;
    Ok(Comparison::at_most(
        Labeled::new("growth of the leaf", grown.growth),
        Labeled::new("what its catch takes along the leaf", band?),
    ))
}

fn expansion(
    asking: &mut Asking<'_>,
    material: Result<Material, Halt>,
) -> Result<ThermalExpansion, Halt> {
    let metal: Option<Metal> = of_word(material?);
    match metal {
        Some(metal) => Ok(asking.work(&MetalProperties { metal })?.expansion),
        None => asking.refuse(
            "timber swells with water and plastics differ from kind to kind; measure the gaps in the wet and in the dry season",
        ),
    }
}

/// The joints of the track.
fn joints<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    range: &Result<Range, Halt>,
) -> Result<Comparison, Halt> {
    let length = read!(asking, gate.track?.length);
    let joints = pick!(asking, gate.track?.joints);
    let gap = read!(asking, gate.track?.joint_gap);
    let set_at = read!(asking, gate.track?.set_at);
    let material = pick!(asking, gate.track?.material);
    let expansion = expansion(asking, material)?;
    let (range, gap) = ((*range)?, gap?);
    let gaps = asking.work(&RailJointGaps {
        length: length?,
        joints: joints?,
        gap,
        expansion,
        set_at: set_at?,
        coldest: range.coldest,
        hottest: range.hottest,
    })?;
    Ok(Comparison::at_most(
        Labeled::new("gap that a joint of the track needs", gaps.needed),
        Labeled::new("gap that was left", gap),
    ))
}

/// Bow of the leaf, where its thickness is known.
fn bow<'s>(asking: &mut Asking<'s>, leaf: &'s Leaf) -> Option<Length> {
    let thickness = asking.read_if_there(&leaf.origin, "thickness", leaf.thickness.as_ref())?;
    let length = asking.read_if_there(&leaf.origin, "length", leaf.length.as_ref())?;
    let metal = of_word(leaf.material?)?;
    let expansion = asking
        .work_if_in_reach(&MetalProperties { metal })?
        .expansion;
    let bow = asking.work_if_in_reach(&ThermalBow {
        length,
        thickness,
        expansion,
        difference: TemperatureDifference::from_base(FACE),
    })?;
    Some(bow.middle)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        coldest = "5 °F"
        hottest = "95 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft 6 in"
        thickness = "2 in"
        material = "steel"
        [gate.catch]
        length_band = "3/4 in"
        [gate.track]
        length = "42 ft"
        material = "steel"
        joints = 2
        joint_gap = "1/4 in"
        set_at = "60 °F ± 5 Δ°F"
    "#;

    /// By hand: 12 millionths a kelvin, 258 in of leaf over 85 K; 504 in of track, two joints, from 60 °F to 149 °F.
    #[test]
    fn holds_with_gaps_left() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        let needed = 12e-6 / 1.8 * 89.0 * 504.0 / 2.0;
        let demand = finding.demand.unwrap().value.unwrap() / 0.0254;
        assert!((demand - needed).abs() < 1e-6, "{demand} {needed}");
    }

    #[test]
    fn fails_with_tight_joints() {
        let tight = SITE.replace("1/4 in", "1/8 in");
        assert_eq!(only(&CHECK, &tight).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_day_it_was_set_and_the_catch() {
        let bare = SITE
            .replace("set_at = \"60 °F ± 5 Δ°F\"", "")
            .replace("length_band = \"3/4 in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn timber_is_outside() {
        let timber = SITE.replacen("material = \"steel\"", "material = \"timber\"", 1);
        assert_eq!(only(&CHECK, &timber).verdict, Verdict::OutsideThisTool);
    }
}
