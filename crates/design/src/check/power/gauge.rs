//! Which conductors must grow, and to what, so that everything on a source gets its voltage.
//!
//! Holds where nothing is below its least voltage with the conductors as they are. Where something is, the same cables are
//! tried in every larger standard size, none thinner than it is, and the set with the least metal is named: the search is
//! that of `choose conductors`, which weighs the prices in the parts files instead and makes conductors thinner, too.

use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::choose::conductors::{
    Costs, Plan, Reached, Settled, Spot, at_low_voltage, reached, ready, settled,
};
use crate::circuit::{Circuits, Part};
use crate::outcome::{Answer, Comparison, Labeled, Outcome};
use crate::subject::About;
use site::Site;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-gauge-least-cost",
    codes: BOTH,
    leaves_open: "whether thicker cables fit their conduits and terminals, and what they cost: choose conductors weighs the prices on hand",
    concerns: "a low-voltage source with cables",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    for (number, source) in circuits.sources.iter().enumerate() {
        let about = About::new(source.origin(), source.id());
        if parts(&circuits, number).next().is_some() {
            round.ask_in_full(about, |asking| answer(asking, &circuits, number));
        }
    }
}

/// The parts with cables that a source feeds at low voltage; a part with several sources goes with the first of them.
fn parts<'c, 's>(circuits: &'c Circuits<'s>, source: usize) -> impl Iterator<Item = &'c Part<'s>> {
    at_low_voltage(circuits).filter(move |part| {
        let first = (0..circuits.sources.len()).find(|source| part.holds(*source));
        first == Some(source) && !part.runs.is_empty()
    })
}

fn answer<'s>(asking: &mut Asking<'s>, circuits: &Circuits<'s>, source: usize) -> Answer {
    let mut all: Vec<Reached> = Vec::new();
    let mut whole = Ok(());
    for part in parts(circuits, source) {
        match ready(asking, circuits, part) {
            Ok(ready) => all.extend(reached(part, &ready)),
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    for one in &all {
        asking.note(|print| {
            let (volts, least) = (print.q(one.volts), print.q(one.least));
            format!(
                "{}: {volts} {}, its lowest; it needs {least}",
                one.id,
                one.case.when()
            )
        });
    }
    let id = circuits.sources[source].id();
    let Some(worst) = all.iter().max_by(|a, b| strain(a).total_cmp(&strain(b))) else {
        return asking.refuse("nothing on this source has a least voltage");
    };
    if all.iter().all(Reached::is_kept) {
        asking.say(|print| {
            format!(
                "From {id}, no conductor has to grow: the nearest to its least is {}, {} {}; it needs {}.",
                worst.id,
                print.q(worst.volts),
                worst.case.when(),
                print.q(worst.least)
            )
        });
    } else {
        let grown = grown(circuits, source);
        asking.say(|_| format!("From {id}, {grown}"));
    }
    Outcome::worst([compared(worst)]).map_or_else(|| asking.refuse("nothing to compare"), Ok)
}

fn compared(reached: &Reached) -> Comparison {
    Comparison::at_most(
        Labeled::new("least voltage at which it works", reached.least),
        Labeled::new("lowest voltage at its terminals", reached.volts),
    )
}

fn strain(reached: &Reached) -> f64 {
    compared(reached).strain()
}

/// What must grow, in words.
fn grown(circuits: &Circuits<'_>, source: usize) -> String {
    let site = circuits.site;
    let within = |cable: &site::Id| {
        let mut runs = parts(circuits, source).flat_map(|part| &part.runs);
        runs.any(|run| run.cable.id == *cable)
    };
    let spots: Vec<Spot> = (0..site.cable.len())
        .filter(|cable| within(&site.cable[*cable].id))
        .map(|cable| Spot::of_standard_sizes(site, cable))
        .collect();
    let plan = Plan {
        site,
        costs: Costs::by_metal(&spots),
        spots,
        banned: Vec::new(),
    };
    let found = settled(&plan);
    let sizes: Vec<String> = grown_to(&plan, &found);
    let stuck: Vec<&str> = found
        .after
        .iter()
        .filter(|reached| !reached.is_kept() && within_plan(reached, &within))
        .map(|reached| reached.id.as_str())
        .collect();
    let how = if found.is_proved() {
        "the least metal of standard sizes, proved"
    } else {
        "the least metal of standard sizes that was found"
    };
    match (sizes.is_empty(), stuck.is_empty()) {
        (_, true) => format!("must grow: {} ({how}).", sizes.join(", ")),
        (true, false) => format!(
            "no conductor mends {}: raise the supply voltage, set a converter beside it, or shorten or unload its run.",
            stuck.join(", ")
        ),
        (false, false) => format!(
            "must grow: {} ({how}); no conductor mends {}: raise the supply voltage, set a converter beside it, or shorten or unload its run.",
            sizes.join(", "),
            stuck.join(", ")
        ),
    }
}

fn within_plan(reached: &Reached, within: &dyn Fn(&site::Id) -> bool) -> bool {
    reached.cable.as_ref().is_some_and(within)
}

/// Each cable that grows, with its sizes.
fn grown_to(plan: &Plan<'_>, found: &Settled) -> Vec<String> {
    plan.spots
        .iter()
        .zip(&found.decided.chosen)
        .filter(|(_, chosen)| **chosen > 0)
        .filter_map(|(spot, chosen)| {
            let (today, then) = (&spot.offers[0], &spot.offers[*chosen]);
            Some(format!(
                "{} from {} to {}",
                today.id, today.size?, then.size?
            ))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    /// A trunk to a joint, and from there a reader and a lamp.
    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "12 V"
        [[joint]]
        id = "splice"
        [[device]]
        id = "reader"
        kind = "lock"
        supply = "source"
        least_voltage = "10.2 V"
        current = "500 mA"
        [[device]]
        id = "lamp"
        kind = "warning light"
        supply = "source"
        least_voltage = "10 V"
        current = "300 mA"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "splice"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "60 ft"
        [[cable]]
        id = "w-02"
        from = "splice"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "60 ft"
        [[cable]]
        id = "w-03"
        from = "splice"
        to = "lamp"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "30 ft"
    "#;

    #[test]
    fn holds_while_everything_gets_its_voltage() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("no conductor has to grow"));
    }

    #[test]
    fn fails_and_names_the_cheapest_growth() {
        let long = SITE.replace("length = \"60 ft\"", "length = \"160 ft\"");
        let finding = only(&CHECK, &long);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("proved"), "{}", finding.sentence);
        assert!(
            finding.sentence.contains("w-01 from 18 AWG to 16 AWG")
                || finding.sentence.contains("w-02 from 18 AWG to 16 AWG"),
            "{}",
            finding.sentence
        );
        assert!(!finding.sentence.contains("w-03"), "{}", finding.sentence);
    }

    #[test]
    fn fails_and_says_so_where_no_conductor_helps() {
        let high = SITE.replace("least_voltage = \"10.2 V\"", "least_voltage = \"12.5 V\"");
        let finding = only(&CHECK, &high);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("no conductor mends reader"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_a_length_and_a_least_voltage() {
        let bare = SITE
            .replace("length = \"30 ft\"", "")
            .replace("least_voltage = \"10 V\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
