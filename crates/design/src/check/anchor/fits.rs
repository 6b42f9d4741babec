//! Whether the anchors fit here: edges, neighbors, thickness, conduits in the way, and the plate in hand.
//!
//! The least distances of ACI 318-19 17.9.2 keep the concrete from splitting; the product's own distances prevail. In
//! Europe the product's assessment says the same, and has to be at hand for drilled anchors.

use super::described::pattern;
use super::edges::{nearest, outline};
use super::in_the_way::conduits;
use super::plate_in_hand::{neighbors, plate_in_hand};
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use formula::standing::anchor_group::Pattern;
use formula::standing::{AnchorLeastDistances, AnchorSetting};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Anchor, AnchorKind, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-fits",
    codes: BOTH,
    leaves_open: "bars in the way: find them with a detector before drilling, and move the hole, not the bar",
    concerns: "each set of anchors",
    ask,
};

static USUAL: Source = Source {
    work: "2 in of concrete over bars that see weather, stones up to 3/4 in, an edge taped to 1/2 in",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken where the site says nothing else",
};

/// Cover, largest stone, and how well an edge is taped, in meters.
const COVER: f64 = 0.0508;
const STONE: f64 = 0.01905;
const TAPED: f64 = 0.0127;
/// Spacing of a single anchor, in meters: far from any other.
const ALONE: f64 = 100.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_anchors(site, |asking, foundation, anchor| {
        fits(asking, foundation, anchor)
    });
}

fn fits<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation, anchor: &'s Anchor) -> Answer {
    let needs = needs(asking, foundation, anchor);
    let pattern = pattern(asking, anchor);
    let plate = pattern.and_then(|pattern| plate_in_hand(asking, anchor, &pattern));
    let mut all = needs?;
    all.extend(plate?);
    let worst = Outcome::worst(all.iter().copied()).ok_or(Halt)?;
    asking.say(|print| sentence(print, foundation, anchor, &all));
    Ok(worst)
}

/// Every distance that has to be kept, whatever the plate is like.
pub(crate) fn needs<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Vec<Comparison>, Halt> {
    asking.rest_on(&USUAL);
    let pattern = pattern(asking, anchor);
    let distances = pattern.and_then(|pattern| distances(asking, foundation, anchor, &pattern));
    let depth = thickness(asking, foundation, anchor);
    let conduits = pattern.and_then(|pattern| conduits(asking, foundation, anchor, &pattern));
    let mut all = distances?;
    all.extend(depth?);
    all.extend(conduits?);
    Ok(all)
}

/// What does not fit, or that all fits.
fn sentence(print: Print, foundation: &Foundation, anchor: &Anchor, all: &[Comparison]) -> String {
    let short: Vec<String> = all
        .iter()
        .filter(|one| !one.holds())
        .map(|one| {
            format!(
                "{} is {}, and {} is {}",
                one.demand.label,
                print.value(&one.demand.value),
                one.capacity.label,
                print.value(&one.capacity.value)
            )
        })
        .collect();
    let name = capitalized(foundation.id.as_str());
    if short.is_empty() {
        format!(
            "{name} ({}): edges, neighbors, thickness, conduits and plate leave room for every anchor.",
            anchor.holds
        )
    } else {
        format!(
            "{name} ({}) does not fit: {}.",
            anchor.holds,
            short.join("; ")
        )
    }
}

/// Edges and neighbors against the least distances.
fn distances<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    pattern: &Pattern,
) -> Result<Vec<Comparison>, Halt> {
    let origin = &anchor.origin;
    let setting = setting(asking, anchor);
    let diameter = read!(asking, anchor.diameter);
    let embedment = read!(asking, anchor.embedment);
    let product_edge = product_edge(asking, anchor);
    let tested = asking.read_if_there(origin, "least_spacing", anchor.least_spacing.as_ref());
    let stated = asking.read_if_there(origin, "edge_distance", anchor.edge_distance.as_ref());
    let outline = outline(asking, foundation, anchor, pattern)?.map(|edges| nearest(&edges));
    let edge = match (outline, stated) {
        (Some(outline), Some(stated)) => Ok(if stated < outline { stated } else { outline }),
        (Some(only), None) | (None, Some(only)) => Ok(only),
        (None, None) => read!(asking, anchor.edge_distance),
    };
    let spacing = neighbors(pattern);
    let edge = edge?;
    let cover = cover(asking, foundation);
    let aggregate = asking
        .read_if_there(
            &foundation.origin,
            "aggregate",
            foundation.aggregate.as_ref(),
        )
        .unwrap_or(Length::from_base(STONE));
    let least = asking.work(&AnchorLeastDistances {
        setting: setting?,
        diameter: diameter?,
        embedment: embedment?,
        cover,
        aggregate,
        product_edge: product_edge?,
        edge: Length::from_base(edge.base().max(0.0)),
        spacing: spacing.unwrap_or(Length::from_base(ALONE)),
    })?;
    let mut all = vec![Comparison::at_most(
        Labeled::new("the least edge distance", least.least_edge),
        Labeled::new("that of the nearest anchor", edge),
    )];
    if let Some(spacing) = spacing {
        all.push(Comparison::at_most(
            Labeled::new("the least spacing", tested.unwrap_or(least.least_spacing)),
            Labeled::new("that of the nearest two anchors", spacing),
        ));
    }
    if let (Some(outline), Some(stated)) = (outline, stated) {
        all.push(Comparison::at_most(
            Labeled::new(
                "what the edge distance as taped differs from the outline",
                Length::from_base((outline - stated).base().abs()),
            ),
            Labeled::new("what a tape may differ", Length::from_base(TAPED)),
        ));
    }
    Ok(all)
}

/// How the anchors are set; cast-in ones count as tightened until the site says that they are not.
fn setting<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<AnchorSetting, Halt> {
    let kind = pick!(asking, anchor.kind)?;
    Ok(match kind {
        AnchorKind::HeadedStud => AnchorSetting::CastIn,
        AnchorKind::HeadedBolt | AnchorKind::HookedBolt => {
            if anchor.tightened == Some(false) {
                AnchorSetting::CastIn
            } else {
                AnchorSetting::CastInTightened
            }
        }
        AnchorKind::Expansion | AnchorKind::Undercut => AnchorSetting::Expansion,
        AnchorKind::Screw => AnchorSetting::Screw,
        AnchorKind::Adhesive => AnchorSetting::Adhesive,
    })
}

/// Least edge distance of the product's report; none for what is cast in.
fn product_edge<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Length, Halt> {
    if is_drilled(anchor) {
        read!(asking, anchor.least_edge)
    } else {
        Ok(Length::default())
    }
}

/// It is set in a drilled hole.
pub(super) fn is_drilled(anchor: &Anchor) -> bool {
    anchor.kind.is_some_and(|kind| !kind.is_cast_in())
}

fn cover<'s>(asking: &mut Asking<'s>, foundation: &'s Foundation) -> Length {
    asking
        .read_if_there(&foundation.origin, "cover", foundation.cover.as_ref())
        .unwrap_or(Length::from_base(COVER))
}

/// The anchor, or its hole, ends above the cover at the bottom; a drilled one has the thickness that its report asks for.
fn thickness<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<Vec<Comparison>, Halt> {
    let origin = &anchor.origin;
    let depth = read!(asking, foundation.depth);
    let embedment = read!(asking, anchor.embedment);
    let hole = asking.read_if_there(origin, "hole_depth", anchor.hole_depth.as_ref());
    let least = if is_drilled(anchor) {
        read!(asking, anchor.least_thickness).map(Some)
    } else {
        Ok(None)
    };
    let (depth, least) = (depth?, least?);
    let left = depth - cover(asking, foundation);
    let mut all = vec![Comparison::at_most(
        Labeled::new("the depth of anchor or hole", hole.unwrap_or(embedment?)),
        Labeled::new("the concrete above the lower cover", left),
    )];
    if let Some(least) = least {
        all.push(Comparison::at_most(
            Labeled::new("the least thickness of the concrete", least),
            Labeled::new("the thickness there", depth),
        ));
    }
    Ok(all)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::anchor::testing::PLATE;
    use crate::check::testing::only;

    fn plate() -> String {
        PLATE.replace(
            "kind =",
            "plate_spacing = \"8 in\"\nplate_row_spacing = \"8 in\"\nplate_hole = \"13/16 in\"\nkind =",
        )
    }

    #[test]
    fn holds_in_the_middle_of_a_pad() {
        let finding = only(&CHECK, &plate());
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_near_each_other() {
        let near = plate().replace("    spacing = \"8 in\"", "    spacing = \"4 in\"");
        let finding = only(
            &CHECK,
            &near.replace("plate_spacing = \"8 in\"", "plate_spacing = \"4 in\""),
        );
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        // Six diameters of 3/4 in.
        let least = finding.demand.unwrap().value.unwrap();
        assert!((least - 4.5 * 0.0254).abs() < 1e-9, "{least}");
    }

    #[test]
    fn fails_where_the_plate_in_hand_is_another() {
        let other = plate().replace("plate_spacing = \"8 in\"", "plate_spacing = \"8 1/4 in\"");
        let finding = only(&CHECK, &other);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(finding.sentence.contains("hole"), "{}", finding.sentence);
    }

    #[test]
    fn fails_over_a_conduit() {
        let over = plate().replace(
            "id = \"pad\"",
            "id = \"pad\"\nat = [\"0 in\", \"0 in\", \"0 in\"]",
        ) + "\n[[foundation.stub_up]]\nat = [\"4 in\", \"3 in\", \"0 in\"]\ndiameter = \"1 in\"\n";
        assert_eq!(only(&CHECK, &over).verdict, Verdict::Fails);
        let beside = over.replace("[\"4 in\", \"3 in\"", "[\"0 in\", \"0 in\"");
        assert_eq!(only(&CHECK, &beside).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_deeper_than_the_concrete_reaches() {
        let thin = plate().replace("depth = \"36 in\"", "depth = \"9 in\"");
        assert_eq!(only(&CHECK, &thin).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_tape_and_outline_disagree() {
        let taped = plate().replace("kind =", "edge_distance = \"10 in\"\nkind =");
        assert_eq!(only(&CHECK, &taped).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_report_of_a_drilled_anchor() {
        let finding = only(&CHECK, &plate().replace("headed bolt", "adhesive anchor"));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
