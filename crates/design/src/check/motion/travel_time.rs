//! How long each gate takes to open and close, on mains and on battery, against its run timer and the owner's wish.
//!
//! A leaf that turns is timed along the arc of its free end, with the accelerations of its profile taken there.

use super::cruise_of;
use super::profile::{radius, turns};
use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::motion::TrapezoidalTravel;
use quantity::{Length, Quantity as _, Time};
use site::{Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-travel-time",
    codes: BOTH,
    leaves_open: "the travel in the cold, the queue's wish, and whether the run timer is so long that a stalled drive burns",
    concerns: "each gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            travel_time(asking, site, gate)
        });
    }
}

fn travel_time<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let run = run(asking, gate);
    let timer = read!(asking, gate.run_timer);
    let operator = operator_of(asking, site, gate);
    let wanted = asking.read_if_there(
        &gate.origin,
        "wanted_opening_time",
        gate.wanted_opening_time.as_ref(),
    );
    let (run, timer, operator) = (run?, timer?, operator?);
    let on_mains = asking.work(&run)?.total_time;
    let on_battery = on_battery(asking, site, operator, run)?;
    let slowest = on_battery.map_or(on_mains, |time| slower(time, on_mains));
    asking.say(|print| {
        let battery = on_battery.map_or_else(String::new, |time| {
            format!(", {} on battery", print.q(time))
        });
        let wish = wanted.map_or_else(String::new, |time| {
            format!(", and the owner wants at most {}", print.q(time))
        });
        format!(
            "Gate {} takes {} from stop to stop on mains{battery}; its run timer cuts at {}{wish}.",
            gate.id,
            print.q(on_mains),
            print.q(timer)
        )
    });
    let timed = compared(("slowest travel", slowest), ("run timer", timer));
    let wished = wanted.map(|wanted| {
        compared(
            ("travel on mains", on_mains),
            ("time that the owner wants", wanted),
        )
    });
    Outcome::worst([Some(timed), wished].into_iter().flatten()).ok_or(Halt)
}

fn compared(demand: (&'static str, Time), capacity: (&'static str, Time)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
}

/// The travel on mains.
fn run<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<TrapezoidalTravel, Halt> {
    let travel = if turns(gate) {
        arc(asking, gate)
    } else {
        read!(asking, gate.travel)
    };
    let cruise_speed = cruise_of(asking, gate);
    let acceleration = read!(asking, gate.motion?.acceleration);
    let deceleration = read!(asking, gate.motion?.deceleration);
    let creep_speed = read!(asking, gate.motion?.creep_speed);
    let creep_distance = read!(asking, gate.motion?.creep_distance);
    Ok(TrapezoidalTravel {
        travel: travel?,
        cruise_speed: cruise_speed?,
        acceleration: acceleration?,
        deceleration: deceleration?,
        creep_speed: creep_speed?,
        creep_distance: creep_distance?,
    })
}

/// Way of the free end of a leaf that turns.
fn arc<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Length, Halt> {
    let angle = read!(asking, gate.travel_angle);
    let radius = radius(asking, gate);
    Ok(Length::from_base(angle?.base() * radius?.base()))
}

/// Time of one travel on battery, or on mains where that is the slower.
pub(crate) fn slowest_travel<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<Time, Halt> {
    let run = run(asking, gate);
    let operator = operator_of(asking, site, gate);
    let (run, operator) = (run?, operator?);
    let on_mains = asking.work(&run)?.total_time;
    let on_battery = on_battery(asking, site, operator, run)?;
    Ok(on_battery.map_or(on_mains, |time| slower(time, on_mains)))
}

fn slower(one: Time, other: Time) -> Time {
    if one > other { one } else { other }
}

/// The travel on battery; nothing where the site has no battery.
fn on_battery<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    operator: &'s Operator,
    run: TrapezoidalTravel,
) -> Result<Option<Time>, Halt> {
    if site.battery.is_empty() {
        return Ok(None);
    }
    let share = read!(asking, operator.battery_speed)?;
    let slower = TrapezoidalTravel {
        cruise_speed: run.cruise_speed * share,
        creep_speed: run.creep_speed * share,
        ..run
    };
    Ok(Some(asking.work(&slower)?.total_time))
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        run_timer = "30 s"
        [[gate.leaf]]
        id = "leaf"
        length = "20 ft"
        [gate.motion]
        cruise_speed = "1 ft/s ± 3 %"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[operator]]
        id = "drive"
        gate = "main"
    "#;

    #[test]
    fn holds_with_a_long_timer() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // One foot in two ramps of one second each, and 19 ft at 1 ft/s.
        assert!((finding.demand.unwrap().value.unwrap() - 21.0).abs() < 1e-9);
    }

    #[test]
    fn fails_on_battery_and_by_the_owners_wish() {
        let wish = SITE.replace("run_timer", "wanted_opening_time = \"15 s\"\n run_timer");
        assert_eq!(only(&CHECK, &wish).verdict, Verdict::Fails);
        let battery = format!("{SITE}\nbattery_speed = \"60 %\"\n[[battery]]\nid = \"b\"\n");
        let finding = only(&CHECK, &battery);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn turns_within_the_tolerance_of_the_speed() {
        let tight = SITE.replace("30 s", "21.2 s");
        let finding = only(&CHECK, &tight);
        assert_eq!(
            finding.standing,
            Standing::TurnsWithinTolerance,
            "{}",
            finding.sentence
        );
        assert!(finding.deciding.unwrap().turns);
        assert_eq!(finding.turned_by.len(), 1);
    }

    #[test]
    fn unknown_without_a_timer() {
        let finding = only(&CHECK, &SITE.replace("run_timer = \"30 s\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing[0].write, "run_timer = \"45 s\"");
    }

    #[test]
    fn a_swing_leaf_is_timed_along_its_arc() {
        let swing = SITE
            .replace("track-slide", "single-swing")
            .replace("travel = \"20 ft\"", "travel_angle = \"90°\"")
            .replace(
                "cruise_speed = \"1 ft/s ± 3 %\"",
                "cruise_turning_speed = \"6 deg/s\"",
            );
        let finding = only(&CHECK, &swing);
        // 90° at 6°/s is 15 s; two ramps to ω · 20 ft at 1 ft/s² add v/a = 2.094 s.
        let seconds = finding.demand.unwrap().value.unwrap();
        assert!(
            (seconds - (15.0 + 20.0 * 6.0_f64.to_radians())).abs() < 1e-6,
            "{seconds}"
        );
    }
}
