//! Whether the fuse of a cable opens before its copper or its insulation suffers, and whether there is one.
//!
//! The cables that begin at a source are asked, that between a battery and its supply too. Four things are compared: the fuse with what the conductors carry for good;
//! the current of a dead short at the far end, conductors hot, with the current at which the fuse surely opens; the heat of
//! that current for as long as the fuse takes, with what the insulation stands; and what a battery pushes into a short with
//! what the fuse breaks. It also carries what flows for good.

use super::carries::carries;
use super::heat_of_short::heat;
use super::unfused::unfused;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Part, Run, Source, State, fault_at_far_end, states};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Current, Quantity as _};
use site::{Battery, Cable, Fuse, Site, SupplyKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-fuse",
    codes: BOTH,
    leaves_open: "shorts through a bad contact that draw less than the fuse, and the let-through of a fuse in its first hundredth of a second",
    concerns: "each cable that begins at a low-voltage supply or a battery, and that of each battery",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    for (at, part) in circuits.parts.iter().enumerate() {
        for run in &part.runs {
            if let Some(source) = circuits.begins_at(part, run)
                && !is_mains(source)
            {
                round.ask(About::new(&run.cable.origin, &run.cable.id), |asking| {
                    fused(asking, site, (&circuits, &circuits.parts[at]), run, source)
                });
            }
        }
    }
    for (cable, battery) in between(site) {
        round.ask(About::new(&cable.origin, &cable.id), |asking| {
            at_battery(asking, site, cable, battery)
        });
    }
}

/// The cables between batteries and the supplies that charge them.
fn between(site: &Site) -> impl Iterator<Item = (&Cable, &Battery)> {
    site.cable.iter().filter_map(move |cable| {
        let ends = |battery: &&Battery| {
            let supply = battery.supply.as_ref();
            (cable.from == battery.id && supply == Some(&cable.to))
                || (cable.to == battery.id && supply == Some(&cable.from))
        };
        Some((cable, site.battery.iter().find(ends)?))
    })
}

pub(super) fn is_mains(source: Source<'_>) -> bool {
    matches!(source, Source::Supply(supply) if supply.kind == SupplyKind::Mains)
}

/// The cable of a battery: a short in it is fed by the battery, and nothing but its own fuse opens it.
fn at_battery<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    cable: &'s Cable,
    battery: &'s Battery,
) -> Answer {
    let carried = carries(asking, site, cable);
    let fault = read!(asking, battery.fault_current);
    let name = match &cable.fuse {
        Some(name) => Ok(name),
        None => asking.lack(&cable.origin, "fuse", Wants::Written("\"f3\"")),
    };
    let (carried, fault, name) = (carried?, fault?, name?);
    let Some(fuse) = site.fuse.iter().find(|fuse| fuse.id == *name) else {
        return asking.refuse("the fuse of this cable is not on the site");
    };
    let rated = read!(asking, fuse.rated_current);
    let breaking = read!(asking, fuse.breaking_current);
    let heat = heat(asking, cable, fuse);
    let (rated, breaking, heat) = (rated?, breaking?, heat?);
    asking.say(|print| {
        format!(
            "Fuse {} at {} has {}; the conductors carry {}. The battery pushes {} into a short, and the fuse breaks {}.",
            fuse.id,
            battery.id,
            print.q(rated),
            print.q(carried),
            print.q(fault),
            print.q(breaking)
        )
    });
    let comparisons = [
        Some(Comparison::at_most(
            Labeled::new("rating of the fuse", rated),
            Labeled::new("current that the conductors carry", carried),
        )),
        Some(Comparison::at_most(
            Labeled::new("current of the battery into a short", fault),
            Labeled::new("current that the fuse breaks", breaking),
        )),
        heat,
    ];
    match Outcome::worst(comparisons.into_iter().flatten()) {
        Some(outcome) => Ok(outcome),
        None => asking.refuse("nothing to compare"),
    }
}

fn fused<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (circuits, part): (&Circuits<'s>, &Part<'s>),
    run: &Run<'s>,
    source: Source<'s>,
) -> Answer {
    let cable = run.cable;
    let carried = carries(asking, site, cable);
    let Some(fuse) = run.fuse else {
        return unfused(asking, site, cable, source, carried);
    };
    let rated = read!(asking, fuse.rated_current);
    let opens_at = read!(asking, fuse.opens_at);
    let fault = fault_at_far_end(circuits, asking, part, run);
    let lasting = lasting(asking, circuits, part, run);
    let heat = heat(asking, cable, fuse);
    let breaks = breaks(asking, circuits, source, fuse);
    let (carried, rated, opens_at, fault) = (carried?, rated?, opens_at?, fault?);
    let (lasting, heat, breaks) = (lasting?, heat?, breaks?);
    asking.say(|print| {
        format!(
            "Fuse {} of {} has {}; the conductors carry {}. A dead short at the far end draws {}, and the fuse surely opens at {}.",
            fuse.id,
            cable.id,
            print.q(rated),
            print.q(carried),
            print.q(fault),
            print.q(opens_at)
        )
    });
    let comparisons = [
        Some(Comparison::at_most(
            Labeled::new("greatest lasting current", lasting),
            Labeled::new("rating of the fuse", rated),
        )),
        Some(Comparison::at_most(
            Labeled::new("rating of the fuse", rated),
            Labeled::new("current that the conductors carry", carried),
        )),
        Some(Comparison::at_most(
            Labeled::new("current at which the fuse surely opens", opens_at),
            Labeled::new("current of a short at the far end", fault),
        )),
        heat,
        breaks,
    ];
    match Outcome::worst(comparisons.into_iter().flatten()) {
        Some(outcome) => Ok(outcome),
        None => asking.refuse("nothing to compare"),
    }
}

/// The greatest current that lasts in a run: starts and pulls pass.
fn lasting<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    part: &Part<'s>,
    run: &Run<'s>,
) -> Result<Current, Halt> {
    let states = states(circuits, asking, part, None)?;
    let number = part
        .runs
        .iter()
        .position(|other| other.cable.id == run.cable.id);
    let mut most = Current::from_base(0.0);
    for state in &states {
        if let State::Stands { case, through, .. } = state
            && case.lasts()
            && let Some(current) = number.and_then(|number| through.get(number))
            && *current > most
        {
            most = *current;
        }
    }
    Ok(most)
}

/// What batteries push into a short beside what the fuse breaks; nothing to compare where there is no battery.
fn breaks<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    source: Source<'s>,
    fuse: &'s Fuse,
) -> Result<Option<Comparison>, Halt> {
    let mut sum = Current::from_base(0.0);
    let mut whole = Ok(());
    let mut some = false;
    for battery in source.pushing(circuits.site) {
        some = true;
        match read!(asking, battery.fault_current) {
            Ok(current) => sum += current,
            Err(halt) => whole = Err(halt),
        }
    }
    if !some {
        return Ok(None);
    }
    let breaking = read!(asking, fuse.breaking_current);
    whole?;
    Ok(Some(Comparison::at_most(
        Labeled::new("current of the battery into a short", sum),
        Labeled::new("current that the fuse breaks", breaking?),
    )))
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
        [climate]
        hottest = "30 °C"
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "24 V"
        fault_current = "60 A"
        [[fuse]]
        id = "f1"
        rated_current = "10 A"
        opens_at = "40 A"
        opens_within = "0.5 s"
        [[device]]
        id = "lock"
        kind = "lock"
        supply = "source"
        current = "2 A"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "lock"
        fuse = "f1"
        size = "14 AWG"
        cores = 2
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        insulation = "thermoplastic"
        insulation_rating = "75 °C"
        length = "60 ft"
    "#;

    #[test]
    fn holds_with_enough_current_to_open_it() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 120 ft of 14 AWG at 40 °C: some 0.33 Ω, so 24 V push more than the supply gives: its 60 A.
        assert!(finding.sentence.contains("60 A"), "{}", finding.sentence);
    }

    #[test]
    fn fails_too_big_too_far_and_behind_a_supply_that_gives_too_little() {
        for (right, wrong) in [
            ("\"10 A\"", "\"20 A\""),
            ("\"60 ft\"", "\"250 ft\""),
            ("fault_current = \"60 A\"", "fault_current = \"30 A\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(right, wrong));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{wrong}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn fails_where_a_battery_pushes_more_than_the_fuse_breaks() {
        let battery = format!(
            "{SITE}\n[[battery]]\nid = \"battery\"\nsupply = \"source\"\nvoltage = \"24 V\"\nend_voltage = \"22 V\"\ninner_resistance = \"20 mΩ\"\nfault_current = \"1200 A\""
        );
        let weak = battery.replace("opens_at", "breaking_current = \"200 A\"\nopens_at");
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
        let strong = battery.replace("opens_at", "breaking_current = \"2000 A\"\nopens_at");
        assert_eq!(only(&CHECK, &strong).verdict, Verdict::Holds);
    }

    #[test]
    fn without_a_fuse_the_source_itself_must_be_small() {
        let bare = SITE.replace("fuse = \"f1\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::Fails);
        let small = bare.replace("fault_current = \"60 A\"", "fault_current = \"6 A\"");
        assert_eq!(only(&CHECK, &small).verdict, Verdict::Holds);
    }

    #[test]
    fn a_class_2_source_needs_none_while_it_is_small_enough() {
        let class_2 = SITE.replace("fuse = \"f1\"", "").replace(
            "fault_current = \"60 A\"",
            "limited = true\nrated_current = \"4 A\"",
        );
        let finding = only(&CHECK, &class_2);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 100 VA at 24 V.
        let limit = finding.capacity.unwrap().value.unwrap();
        assert!((limit - 100.0 / 24.0).abs() < 1e-9, "{limit}");
        let large = class_2.replace("\"4 A\"", "\"5 A\"");
        assert_eq!(only(&CHECK, &large).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_the_curve_of_the_fuse() {
        let bare = SITE.replace("opens_at = \"40 A\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
