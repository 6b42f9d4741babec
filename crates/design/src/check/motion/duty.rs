//! Whether the motor of each gate gets through the busiest hour of the year, hot.
//!
//! Each cycle is one way out and one way back at the slowest. The share of the hour that it runs is held against the duty
//! of the data sheet, the cycles against the cycles of the data sheet, the hottest air against the temperature up to which
//! the duty is given in full, and on leaves that slide or swing what would heat the motor as much against what it may give
//! without end.

use super::heating::heating;
use super::travel_time::slowest_travel;
use crate::asking::{Asking, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Quantity as _, Ratio, Time};
use site::{Gate, Lane, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-duty",
    codes: BOTH,
    leaves_open: "how hard the drive of a leaf that rises pulls in that hour, sun on its case, and a battery that ages; the case temperature after the hour shows it",
    concerns: "each gate",
    ask,
};

/// Seconds of an hour.
const HOUR: f64 = 3600.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            duty(asking, site, gate)
        });
    }
}

fn duty<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let cycles = cycles(asking, site, gate);
    let travel = slowest_travel(asking, site, gate);
    let hottest = read!(asking, site.climate?.hottest);
    let operator = operator_of(asking, site, gate)?;
    let rated = read!(asking, operator.duty);
    let rated_at = read!(asking, operator.duty_hottest);
    let (cycles, travel, hottest) = (cycles?, travel?, hottest?);
    let (rated, rated_at) = (rated?, rated_at?);
    let share = Ratio::from_base(f64::from(cycles) * 2.0 * travel.base() / HOUR);
    let between = Time::from_base(HOUR / (2.0 * f64::from(cycles.max(1))));
    let heated = heating(asking, site, (gate, operator), (travel, between))?;
    asking.say(|print| {
        format!(
            "In its busiest hour gate {} runs {cycles} cycles of twice {}: {} of the time, in air of up to {}. \
             Its operator may run {} of the time up to {}{}.{}",
            gate.id,
            print.q(travel),
            print.percent(share),
            print.q(hottest),
            print.percent(rated),
            print.q(rated_at),
            operator
                .cycles_per_hour
                .map_or_else(String::new, |most| format!(", and {most} cycles in an hour")),
            heated.map_or_else(String::new, |heated| format!(
                " The load heats it like a steady {}; it may give {} without end.",
                print.value(&heated.demand.value),
                print.value(&heated.capacity.value)
            ))
        )
    });
    let running = Comparison::at_most(
        Labeled::new("share of the busiest hour that it runs", share),
        Labeled::new("duty of the operator", rated),
    );
    let heat = Comparison::at_most(
        Labeled::new("hottest air", hottest),
        Labeled::new("temperature up to which the duty is full", rated_at),
    );
    let counted = operator.cycles_per_hour.map(|most| {
        Comparison::at_most(
            Labeled::new("cycles in the busiest hour", cycles),
            Labeled::new("cycles in an hour on the data sheet", most),
        )
    });
    // A temperature has no ratio to speak of: it decides only where it fails.
    let heat = Some(heat).filter(|heat| !heat.holds());
    Outcome::worst([Some(running), counted, heated, heat].into_iter().flatten()).ok_or(Halt)
}

/// Cycles in the busiest hour: as written, else one for each vehicle of the busiest hour on the lanes of the gate.
fn cycles<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<u32, Halt> {
    let only = site.gate.len() == 1;
    let of_gate = |lane: &&Lane| match &lane.gate {
        Some(name) => *name == gate.id,
        None => only,
    };
    let mut arrivals = None;
    if gate.cycles_in_busiest_hour.is_none() {
        for lane in site.lane.iter().filter(of_gate) {
            if lane.arrivals_per_hour.is_some() {
                let here =
                    asking.pick(&lane.origin, "arrivals_per_hour", lane.arrivals_per_hour)?;
                arrivals = Some(here.saturating_add(arrivals.unwrap_or(0)));
            }
        }
    }
    match arrivals {
        Some(arrivals) => Ok(arrivals),
        None => asking.pick(
            &gate.origin,
            "cycles_in_busiest_hour",
            gate.cycles_in_busiest_hour,
        ),
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        hottest = "100 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "20 ft"
        cycles_in_busiest_hour = 24
        [gate.motion]
        cruise_speed = "1 ft/s ± 3 %"
        acceleration = "1 ft/s²"
        deceleration = "1 ft/s²"
        creep_speed = "0.5 ft/s"
        creep_distance = "0 in"
        [[operator]]
        id = "drive"
        gate = "main"
        duty = "40 %"
        duty_hottest = "104 °F"
        cycles_per_hour = 40
    "#;

    #[test]
    fn holds_with_duty_in_hand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 24 cycles of twice 21 s are 28 % of the hour, of 40 % that it may run; 24 of 40 cycles are less.
        assert!(
            finding
                .ratio
                .is_some_and(|ratio| (ratio - 0.28 / 0.40).abs() < 1e-6)
        );
    }

    #[test]
    fn fails_by_time_by_count_and_by_heat() {
        for (was, is) in [("40 %", "25 %"), ("= 40", "= 20"), ("104 °F", "95 °F")] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    /// A slide whose pull is known: 700 lb on steel wheels, up 1 in 50, in no wind to speak of.
    const PULLED: &str = r#"
        seal_force = "5 lbf"
        debris_force = "10 lbf"
        slope = "0.02"
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [gate.guide]
        friction = "0.15"
        height = "6 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        height = "6 ft"
        ground_clearance = "2 in"
        solidity = "80 %"
        mass = "700 lb"
    "#;

    #[test]
    fn fails_where_the_pull_heats_more_than_the_rating_stands() {
        let weather = "hottest = \"100 °F\"\n operating_wind_speed = \"1 mph\"\n exposure = \"C\"\n topographic_factor = \"1\"";
        let site = SITE
            .replace(
                "code_basis = \"us\"",
                "code_basis = \"us\"\n wind_code = \"ASCE 7-16\"",
            )
            .replace("hottest = \"100 °F\"", weather)
            .replace(
                "cycles_in_busiest_hour = 24",
                &format!("cycles_in_busiest_hour = 24\n{PULLED}"),
            );
        for (rated, verdict) in [("60 lbf", Verdict::Holds), ("10 lbf", Verdict::Fails)] {
            let finding = only(
                &CHECK,
                &site.replace("duty = ", &format!("rated_force = \"{rated}\"\n duty = ")),
            );
            assert_eq!(finding.verdict, verdict, "{}", finding.sentence);
        }
    }

    #[test]
    fn the_arrivals_of_its_lanes_stand_for_the_cycles() {
        let lanes = SITE.replace("cycles_in_busiest_hour = 24", "")
            + "\n[[lane]]\nid = \"in\"\narrivals_per_hour = 30\n[[lane]]\nid = \"out\"\narrivals_per_hour = 20\n";
        let finding = only(&CHECK, &lanes);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_duty_and_cycles() {
        let bare = SITE
            .replace("duty = \"40 %\"", "")
            .replace("cycles_in_busiest_hour = 24", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
