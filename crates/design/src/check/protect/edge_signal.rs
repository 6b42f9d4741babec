//! How a sensor on a moving leaf reaches the operator, at every place of the leaf, in the cold and with an old cell.
//!
//! A cord or a chain follows the whole travel without strain, a loop at the hinge only a leaf that turns; radio and light
//! reach as far as their sheet says, and their cell outlives the time from one visit to the next. The edge has been tripped
//! with the leaf closed, half way and open: nothing else shows that the path is whole.

use super::means::{is_sensor, told};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::motion::{radius, turns};
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Device, Gate, Link, LinkKind, Site, TravelPlace};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-edge-signal",
    codes: BOTH,
    leaves_open: "planting that grows and metal that is added later, water in plugs, and how much life the cell in place has spent already: write its voltage at every visit",
    concerns: "each sensor that moves with a leaf",
    ask,
};

static WIRING: Source = Source {
    work: "UL 325, installation instructions on contact sensors",
    clause: "a wired edge is not damaged by its motion; a radio edge is not blocked by structures or planting",
    evidence: Evidence::Seen,
    seen: "two gate-operator manuals that reprint the instructions (addresses withheld)",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let moves = |device: &&Device| is_sensor(device) && device.carried_by.is_some();
    for device in site.device.iter().filter(moves) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            signal(asking, site, device)
        });
    }
}

fn signal<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let gate = gate_of(asking, site, device)?;
    let monitored = told(asking, &device.origin, "monitored", device.monitored);
    let Some(link) = &device.link else {
        let example = Wants::Table(
            "[device.link]\nkind = \"energy chain\"\nreach = \"22 ft\"\nclear = true\ntried = [\"closed\", \"middle\", \"open\"]",
        );
        return asking.lack(&device.origin, "link", example);
    };
    let kind = pick!(asking, link.kind);
    let clear = told(asking, &link.origin, "clear", link.clear);
    let tried = tried(asking, link);
    let kind = kind?;
    let reaches = reaches(asking, gate, (link, kind));
    let lasts = lasts(asking, site, device, (link, kind));
    let (monitored, clear) = (monitored?, clear?);
    tried?;
    let (reaches, lasts) = (reaches?, lasts?);
    asking.rest_on(&WIRING);
    let follows = kind != LinkKind::HingeLoop || turns(gate);
    asking.say(|_| {
        let fault = if !follows {
            "; a loop at a hinge cannot follow a leaf that does not turn"
        } else if !clear {
            "; something strains, crushes or blocks it on the way"
        } else if !monitored {
            "; and nothing notices when it is cut"
        } else {
            ""
        };
        format!(
            "{} reaches the operator by {}, tried with the leaf closed, half way and open{fault}.",
            device.id,
            spoken(kind)
        )
    });
    if !(follows && clear && monitored) {
        return Ok(Outcome::Rule(false));
    }
    let comparisons: Vec<Comparison> = reaches.into_iter().chain(lasts).collect();
    Ok(Outcome::worst(comparisons).unwrap_or(Outcome::Rule(true)))
}

/// It was tripped at each place of the leaf.
fn tried<'s>(asking: &mut Asking<'s>, link: &'s Link) -> Result<(), Halt> {
    let places = [TravelPlace::Closed, TravelPlace::Middle, TravelPlace::Open];
    if places.iter().all(|place| link.tried.contains(place)) {
        return Ok(());
    }
    let write = Wants::Written("[\"closed\", \"middle\", \"open\"]");
    asking.lack(&link.origin, "tried", write)
}

/// The way that cord, chain, radio or light has to reach, against its reach; none for a loop at the hinge.
fn reaches<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    (link, kind): (&'s Link, LinkKind),
) -> Result<Option<Comparison>, Halt> {
    let wired = matches!(kind, LinkKind::CoilCord | LinkKind::EnergyChain);
    if kind == LinkKind::HingeLoop || (wired && turns(gate)) {
        return Ok(None);
    }
    let reach = read!(asking, link.reach);
    let way = if turns(gate) {
        radius(asking, gate)
    } else {
        read!(asking, gate.travel)
    };
    Ok(Some(Comparison::at_most(
        Labeled::new("way that the signal has to follow the leaf", way?),
        Labeled::new("reach of its path", reach?),
    )))
}

/// A cell outlives the time between visits, and works in the cold of the place.
fn lasts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    (link, kind): (&'s Link, LinkKind),
) -> Result<Vec<Comparison>, Halt> {
    if !matches!(kind, LinkKind::Radio | LinkKind::Optical) {
        return Ok(Vec::new());
    }
    let about = &site.site;
    let life = read!(asking, link.cell_life);
    let interval = read!(asking, about.visit_interval);
    let lowest = read!(asking, device.coldest);
    let coldest = read!(asking, site.climate?.coldest);
    let (lowest, coldest) = (lowest?, coldest?);
    let mut comparisons = vec![Comparison::below(
        Labeled::new("time from visit to visit", interval?),
        Labeled::new("life of its cell", life?),
    )];
    // A temperature has no ratio to speak of: it decides only where it fails.
    let too_cold = Comparison::at_most(
        Labeled::new("lowest temperature of its data sheet", lowest),
        Labeled::new("coldest air", coldest),
    );
    if !too_cold.holds() {
        comparisons.push(too_cold);
    }
    Ok(comparisons)
}

fn spoken(kind: LinkKind) -> &'static str {
    match kind {
        LinkKind::CoilCord => "a coiled cord",
        LinkKind::EnergyChain => "a cable in an energy chain",
        LinkKind::HingeLoop => "a loop of flexible cable at the turning axis",
        LinkKind::Radio => "radio, with a cell on the leaf",
        LinkKind::Optical => "light along the leaf, with a cell on the leaf",
    }
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
        visit_interval = "1 year"
        [climate]
        coldest = "5 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        carried_by = "leaf"
        monitored = true
        coldest = "-4 °F"
        [device.link]
        kind = "energy chain"
        reach = "21 ft"
        clear = true
        tried = ["closed", "middle", "open"]
    "#;

    fn radio() -> String {
        SITE.replace("energy chain", "radio")
            .replace("\"21 ft\"", "\"100 ft\"\ncell_life = \"2 years\"")
    }

    #[test]
    fn holds_by_chain_and_by_radio() {
        for text in [SITE.to_owned(), radio()] {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_on_a_short_chain_an_old_cell_the_cold_and_a_loop_on_a_slide() {
        let cases = [
            SITE.replace("\"21 ft\"", "\"19 ft\""),
            SITE.replace("energy chain", "hinge loop"),
            SITE.replace("clear = true", "clear = false"),
            SITE.replace("monitored = true", "monitored = false"),
            radio()
                .replace("2 years", "10 months")
                .replace("10 months", "300 days"),
            radio().replace("\"-4 °F\"", "\"14 °F\""),
        ];
        for text in cases {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_until_it_was_tripped_at_all_three_places_and_without_a_link() {
        let half = only(&CHECK, &SITE.replace(", \"open\"]", "]"));
        assert_eq!(half.verdict, Verdict::UnknownUntil);
        let (bare, _) = SITE.split_once("[device.link]").unwrap_or((SITE, ""));
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }

    #[test]
    fn a_sensor_that_stands_still_is_not_asked() {
        assert!(all(&CHECK, &SITE.replace("carried_by = \"leaf\"", "")).is_empty());
    }
}
