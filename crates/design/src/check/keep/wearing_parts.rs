//! How many cycles until the first wearing part is used up, against those of one year.
//!
//! What is known of each part is the number of cycles on its data sheet, and for the wheels of a track slide also the life
//! of their bearings. The part that goes first is named with its years, so that it is replaced before.

use crate::asking::{Asking, pick, read};
use crate::check::leaf::mass;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::life::{BearingKind, WheelBearingCycles};
use formula::{Evidence, Source};
use quantity::{Acceleration, Force, Quantity as _, Ratio, Word as _};
use site::{Gate, GateKind, Leaf, Site, Wheels};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "keep-wearing-parts",
    codes: BOTH,
    leaves_open: "what each part has run already, which the counter tells; chain, rack, rope and rollers, measured against their reject sizes; water and grit",
    concerns: "each gate",
    ask,
};

static VISITS: Source = Source {
    work: "one visit a year at least; parts that hold a leaf up are replaced before they reach their number of cycles",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of service",
};

/// Days in a year on which the gate is used as on a usual day.
const DAYS: f64 = 365.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            wears(asking, site, gate)
        });
    }
}

/// A part with the cycles that it lasts.
#[derive(Debug, Clone, Copy)]
struct Part {
    what: &'static str,
    cycles: Ratio,
}

fn wears<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let daily = pick!(asking, gate.cycles_per_day);
    let carriers = carriers(asking, gate);
    let drives = drives(asking, site, gate);
    let (daily, mut parts) = (daily?, carriers?);
    parts.extend(drives?);
    asking.rest_on(&VISITS);
    let yearly = Ratio::from_base(f64::from(daily) * DAYS);
    let first = parts
        .into_iter()
        .min_by(|a, b| a.cycles.base().total_cmp(&b.cycles.base()))
        .ok_or(Halt)?;
    asking.say(|print| {
        format!(
            "{} cycles a year; {} last {} cycles, {} years: replace them before.",
            print.q(yearly),
            first.what,
            print.q(first.cycles),
            years(first.cycles, yearly)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("cycles until the next yearly visit", yearly),
        Labeled::new("cycles of the part that goes first", first.cycles),
    ))
}

/// Years to one decimal; without end where the gate is not used.
fn years(cycles: Ratio, yearly: Ratio) -> String {
    if yearly.base() > 0.0 {
        format!("{:.1}", cycles.base() / yearly.base())
    } else {
        "no end of".to_owned()
    }
}

/// Wheels, hinges or springs, by the kind of gate.
fn carriers<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Part>, Halt> {
    match gate.kind {
        GateKind::TrackSlide => on_wheels(asking, gate),
        GateKind::CantileverSlide => {
            let cycles = pick!(asking, gate.wheels?.rated_cycles)?;
            Ok(vec![part("the trolleys", cycles)])
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let hinges: Vec<Result<Part, Halt>> = gate
                .leaf
                .iter()
                .map(|leaf| {
                    let cycles = pick!(asking, leaf.hinges?.rated_cycles);
                    cycles.map(|cycles| part("the hinges", cycles))
                })
                .collect();
            hinges.into_iter().collect()
        }
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => {
            let cycles = pick!(asking, gate.balance?.rated_cycles)?;
            Ok(vec![part(
                "the springs, ropes or weights of the balance",
                cycles,
            )])
        }
    }
}

fn part(what: &'static str, cycles: u32) -> Part {
    Part {
        what,
        cycles: Ratio::from_base(f64::from(cycles)),
    }
}

fn drives<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &Gate) -> Result<Vec<Part>, Halt> {
    let parts: Vec<Result<Part, Halt>> = site
        .operators_of(gate)
        .map(|operator| {
            let cycles = pick!(asking, operator.rated_cycles);
            cycles.map(|cycles| part("the operator's gears", cycles))
        })
        .collect();
    parts.into_iter().collect()
}

/// The data sheet's number, and the life of the bearings where their rating is known.
fn on_wheels<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Vec<Part>, Halt> {
    let rated = match &gate.wheels {
        Some(wheels) if wheels.rated_cycles.is_none() && wheels.dynamic_rating.is_some() => None,
        _ => Some(pick!(asking, gate.wheels?.rated_cycles)),
    };
    let bearing = match (&gate.wheels, gate.leaf.first()) {
        (Some(wheels), Some(leaf)) if wheels.dynamic_rating.is_some() => {
            Some(bearings(asking, gate, (wheels, leaf)))
        }
        _ => None,
    };
    let rated = rated.transpose()?.map(|cycles| part("the wheels", cycles));
    Ok(rated.into_iter().chain(bearing.transpose()?).collect())
}

/// A stiff leaf rests on two of its wheels, each with half of its weight.
fn bearings<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    (wheels, leaf): (&'s Wheels, &'s Leaf),
) -> Result<Part, Halt> {
    let rating = read!(asking, wheels.dynamic_rating);
    let kind = pick!(asking, wheels.bearing);
    let wheel_diameter = read!(asking, wheels.diameter);
    let travel = read!(asking, gate.travel);
    let mass = mass(asking, leaf);
    let Some(bearing) = BearingKind::from_word(kind?.word()) else {
        return asking.refuse("no life is printed for such a bearing");
    };
    let weight: Force = mass? * Acceleration::from_base(9.80665);
    let life = asking.work(&WheelBearingCycles {
        rating: rating?,
        load: weight / 2.0,
        bearing,
        wheel_diameter: wheel_diameter?,
        travel: travel?,
    })?;
    Ok(Part {
        what: "the bearings of the wheels",
        cycles: life.cycles,
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        cycles_per_day = 100
        [[gate.leaf]]
        id = "leaf"
        mass = "640 lb"
        [gate.wheels]
        diameter = "6 in"
        bearing = "ball"
        dynamic_rating = "3000 lbf"
        rated_cycles = 300000
        [[operator]]
        id = "drive"
        gate = "main"
        rated_cycles = 365000
    "#;

    #[test]
    fn holds_with_years_in_hand_and_names_the_part_that_goes_first() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("the wheels last"),
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("8.2 years"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_a_part_does_not_last_the_year() {
        let weak = only(&CHECK, &SITE.replace("300000", "30000"));
        assert_eq!(weak.verdict, Verdict::Fails, "{}", weak.sentence);
        let busy = SITE.replace("cycles_per_day = 100", "cycles_per_day = 120");
        let small = only(&CHECK, &busy.replace("3000 lbf", "330 lbf"));
        assert!(small.sentence.contains("bearings"), "{}", small.sentence);
        assert_eq!(small.verdict, Verdict::Fails, "{}", small.sentence);
    }

    #[test]
    fn hinges_and_balances_are_asked_for_by_kind() {
        for (kind, key) in [("single-swing", "hinges"), ("barrier-arm", "balance")] {
            let finding = only(&CHECK, &SITE.replace("track-slide", kind));
            assert_eq!(finding.verdict, Verdict::UnknownUntil);
            assert!(
                finding.missing[0].path.contains(key),
                "{:?}",
                finding.missing
            );
        }
    }

    #[test]
    fn unknown_without_the_cycles() {
        let bare = SITE
            .replace("cycles_per_day = 100", "")
            .replace("rated_cycles = 365000", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
