//! Whether metal, the next loop or a power cable upsets a loop: each loop.
//!
//! The guides' distance to the moving leaf is what is planned with; what the detector showed while the empty leaf travelled
//! counts before it. Steel, grates, neighboring loops and the cables beside the lead-in are each held against a guide.

use super::loop_neighbors::{Neighbor, neighbors};
use super::loop_to_leaf::from_leaf;
use crate::asking::{Asking, need, read};
use crate::check::{BOTH, Check, Round};
use crate::loops::{Laid, laid, lead_in, loops};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::LoopGateClearance;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio};
use site::{Carries, Device, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-loop-near-metal",
    codes: BOTH,
    leaves_open: "metal that nobody knows of, grates that rattle, radio and drives that disturb through the air, loops beyond the property: watch the detector's level while the empty leaf makes three full travels, and again when all other loops are off",
    concerns: "each loop",
    ask,
};

static OTHER_GUIDE: Source = Source {
    work: "instructions for preformed loops: from a moving door or gate two thirds of the short side and not less than 3 ft; 3 in from fixed iron",
    clause: "",
    evidence: Evidence::Seen,
    seen: "the maker's page on layout (address withheld, it carries a company's name)",
};

static TRADE: Source = Source {
    work: "Professional Door Dealer, March 2009: loops about 4 ft from a slide gate, down to 2 ft where both are phased",
    clause: "",
    evidence: Evidence::Seen,
    seen: "professionaldoordealer.com, articles, 2009/03",
};

static SET_APART: Source = Source {
    work: "frequencies of neighboring loops a tenth apart",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "two steps of a usual selector",
};

static SHOWN: Source = Source {
    work: "what the detector shows while the empty leaf travels stays below half of what makes its output come on",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the other half is left for cold and damp",
};

/// Least distance from fixed iron: 3 in (m).
const FROM_IRON: f64 = 3.0 * 0.0254;
/// Least distance to a moving leaf by the other guide: 3 ft (m).
const FROM_DOOR: f64 = 3.0 * 0.3048;
/// How far apart frequencies of neighbors are.
const APART: f64 = 0.1;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in loops(site) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            undisturbed(asking, site, device)
        });
    }
}

fn undisturbed<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let of = laid(asking, site, device);
    let from_leaf = from_leaf(asking, site, device, of.as_ref().ok());
    let iron = iron(asking, device);
    let neighbors = of
        .as_ref()
        .map_or(Err(Halt), |of| neighbors(asking, site, (device, of)));
    let (of, from_leaf) = (of?, from_leaf?);
    let mut comparisons = leaf_moves(asking, device, &of, from_leaf)?;
    comparisons.extend(iron?);
    let neighbors = neighbors?;
    let mains = beside(site, device, Carries::Mains);
    say(asking, site, device, (from_leaf, &neighbors, &mains));
    if !mains.is_empty()
        || neighbors
            .iter()
            .any(|next| next.same_detector == Some(false))
    {
        return Ok(Outcome::Rule(false));
    }
    for next in neighbors {
        if let (None, Some(step)) = (next.same_detector, next.step) {
            asking.rest_on(&SET_APART);
            comparisons.push(Comparison::at_most(
                Labeled::new(
                    "how far frequencies should be apart",
                    Ratio::from_base(APART),
                ),
                Labeled::new("how far they are apart", step),
            ));
        }
    }
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The leaf: by what the detector showed, or else by the guides.
fn leaf_moves<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    of: &Laid,
    way: Length,
) -> Result<Vec<Comparison>, Halt> {
    asking.rest_on(&OTHER_GUIDE);
    asking.rest_on(&TRADE);
    let other = Length::from_base((of.short().base() * 2.0 / 3.0).max(FROM_DOOR));
    let table = asking.work_if_in_reach(&LoopGateClearance {
        length: of.length(),
        distance: way,
    });
    let wanted = match table {
        Some(table) if table.least > other => table.least,
        _ => other,
    };
    let setup = device.loop_setup.as_ref();
    let shown = setup.and_then(|setup| {
        asking.read_if_there(&setup.origin, "leaf_shift", setup.leaf_shift.as_ref())
    });
    let Some(shown) = shown else {
        return Ok(vec![Comparison::at_most(
            Labeled::new("distance that the guides want to the moving leaf", wanted),
            Labeled::new("distance to the moving leaf", way),
        )]);
    };
    asking.rest_on(&SHOWN);
    let sensitivity = read!(asking, device.loop_setup?.sensitivity)?;
    Ok(vec![Comparison::at_most(
        Labeled::new("change while the empty leaf travels", shown),
        Labeled::new(
            "half of the change at which the output comes on",
            sensitivity * 0.5,
        ),
    )])
}

/// Steel below and fixed metal beside.
fn iron<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Vec<Comparison>, Halt> {
    let steel = need!(asking, device.loop_setup?.steel_below, "false");
    let fixed = read!(asking, device.loop_setup?.fixed_metal);
    let depth = match &steel {
        Ok(true) => read!(asking, device.loop_setup?.steel_depth).map(Some),
        Ok(false) => Ok(None),
        Err(halt) => Err(*halt),
    };
    let least = Labeled::new(
        "distance that a guide wants to fixed iron",
        Length::from_base(FROM_IRON),
    );
    let mut found = vec![Comparison::at_most(
        least,
        Labeled::new("distance to fixed metal beside it", fixed?),
    )];
    if let Some(depth) = depth? {
        found.push(Comparison::at_most(
            least,
            Labeled::new("depth of the steel below the wire", depth),
        ));
    }
    Ok(found)
}

/// The cables of a sort that share a conduit with the lead-in.
fn beside<'s>(site: &'s Site, device: &Device, what: Carries) -> Vec<&'s str> {
    let Some(lead) = lead_in(site, device) else {
        return Vec::new();
    };
    let shares = |cable: &&site::Cable| {
        cable.carries == Some(what)
            && cable
                .route
                .iter()
                .any(|conduit| lead.route.contains(conduit))
    };
    site.cable
        .iter()
        .filter(shares)
        .map(|cable| cable.id.as_str())
        .collect()
}

fn say(
    asking: &mut Asking<'_>,
    site: &Site,
    device: &Device,
    (way, neighbors, mains): (Length, &[Neighbor<'_>], &[&str]),
) {
    let power = beside(site, device, Carries::Power);
    let shown = device
        .loop_setup
        .as_ref()
        .and_then(|setup| setup.leaf_shift.as_ref());
    asking.say(|print| {
        let leaf = match shown {
            Some(shown) => format!(
                "; while the empty leaf travels its detector shows {} of change, which counts before the guides' distance",
                print.q(shown.nominal())
            ),
            None => "; guides want two thirds of its short side, 3 to 6 ft by its length, or 4 ft".to_owned(),
        };
        let next: Vec<String> = neighbors
            .iter()
            .map(|next| {
                let how = match (next.same_detector, next.step) {
                    (Some(true), _) => "on the same detector, which drives them in turn".to_owned(),
                    (Some(false), _) => "on the same detector, which does not drive them in turn: they disturb each other".to_owned(),
                    (None, Some(step)) => format!("on frequencies {} apart", print.q(step)),
                    (None, None) => "on a detector of its own".to_owned(),
                };
                format!(" {} lies {} off, {how}.", next.id, print.q(next.way))
            })
            .collect();
        let beside = if !mains.is_empty() {
            format!(" Its lead-in shares a conduit with mains ({}): give it one of its own.", mains.join(", "))
        } else if power.is_empty() {
            String::new()
        } else {
            format!(" Its lead-in shares a conduit with low-voltage power ({}); only its twist keeps that out.", power.join(", "))
        };
        format!(
            "{} lies {} from the nearest place of the moving leaf{leaf}.{}{beside}",
            device.id,
            print.q(way),
            next.concat(),
        )
    });
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "20 ft"
        travel = "20 ft 6 in"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        height = "6 ft"
        thickness = "2 in"
        ground_clearance = "2 in"
        closed_end = "-3 in"
        [[device]]
        id = "loop-in"
        kind = "loop"
        turns = 4
        at = ["3 ft", "5 ft 3 in", "-2 in"]
        to = ["17 ft", "11 ft", "-2 in"]
        loop_setup = { steel_below = false, fixed_metal = "2 ft", detector = "detector 1", sensitivity = "0.05 %" }
        loop_detector = { scans = true }
    "#;

    #[test]
    fn holds_far_enough_from_the_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_nearer_than_the_guides_until_the_level_was_watched() {
        // 14 ft of loop want 5 ft by the table.
        let near = SITE.replace("5 ft 3 in", "4 ft");
        let finding = only(&CHECK, &near);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let watched = |shift: &str| {
            near.replace(
                "sensitivity",
                &format!("leaf_shift = \"{shift}\", sensitivity"),
            )
        };
        assert_eq!(only(&CHECK, &watched("0.01 %")).verdict, Verdict::Holds);
        assert_eq!(only(&CHECK, &watched("0.04 %")).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_over_steel_and_beside_mains() {
        let over = SITE.replace(
            "steel_below = false",
            "steel_below = true, steel_depth = \"2 in\"",
        );
        assert_eq!(only(&CHECK, &over).verdict, Verdict::Fails);
        let cables = format!(
            "{SITE}[[device]]\nid = \"box\"\nkind = \"access controller\"\n[[conduit]]\nid = \"c-1\"\n[[cable]]\nid = \"w-1\"\ncarries = \"loop lead-in\"\nfrom = \"box\"\nto = \"loop-in\"\nroute = [\"c-1\"]\n[[cable]]\nid = \"w-2\"\ncarries = \"mains\"\nfrom = \"box\"\nto = \"loop-in\"\nroute = [\"c-1\"]\n"
        );
        let finding = only(&CHECK, &cables);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("w-2"), "{}", finding.sentence);
    }

    #[test]
    fn neighbors_want_turns_or_frequencies_of_their_own() {
        let second = "[[device]]\nid = \"loop-next\"\nkind = \"loop\"\nturns = 4\nat = [\"3 ft\", \"14 ft\", \"-2 in\"]\nto = [\"17 ft\", \"20 ft\", \"-2 in\"]\n";
        let next = |how: &str| {
            format!(
                "{SITE}{second}loop_setup = {{ steel_below = false, fixed_metal = \"2 ft\", sensitivity = \"0.05 %\", {how} }}\nloop_detector = {{ scans = true }}\n"
            )
        };
        let verdicts = |text: &str| {
            all(&CHECK, text)
                .iter()
                .map(|finding| finding.verdict)
                .collect::<Vec<_>>()
        };
        assert_eq!(
            verdicts(&next("detector = \"detector 1\"")),
            [Verdict::Holds, Verdict::Holds]
        );
        let apart = |frequency: &str| {
            next(&format!(
                "detector = \"detector 2\", frequency = \"{frequency}\""
            ))
            .replace(
                "detector = \"detector 1\"",
                "detector = \"detector 1\", frequency = \"40 kHz\"",
            )
        };
        assert_eq!(verdicts(&apart("48 kHz")), [Verdict::Holds, Verdict::Holds]);
        assert_eq!(verdicts(&apart("41 kHz")), [Verdict::Fails, Verdict::Fails]);
    }

    #[test]
    fn unknown_without_what_lies_below_and_beside() {
        let bare = SITE.replace("steel_below = false, fixed_metal = \"2 ft\", ", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:#?}", finding.missing);
    }
}
