//! Whether the gate knows that a sensor is dead before it moves, and what it still does then.
//!
//! Each sensor is tested once a cycle at least, in a way that finds the faults of its kind: a resistor at the end of the
//! line finds a cut and a short, and not a receiver that is stuck. While one is missing or faulty only a control held in
//! sight of the gate moves it, and no remote. A sensor that nothing tests is worked out as what may be dead unnoticed by
//! the next visit.

use super::means::{behavior_told, names, sensors, told};
use crate::asking::{Asking, pick};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::protection::UnnoticedFailure;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Ratio, Time};
use site::{CodeBasis, Device, DeviceKind, FaultMove, Gate, Monitoring, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-monitored",
    codes: BOTH,
    leaves_open: "faults that a test of the line cannot find: an edge that has come off its rail, a lens that looks past the place; each sensor opened, shorted and covered in turn shows what is left",
    concerns: "each gate with a sensor that protects people",
    ask,
};

static US: Source = Source {
    work: "UL 325, in force from January 2016",
    clause: "monitoring of external sensors; held control only on a fault; no portable wireless control then",
    evidence: Evidence::Seen,
    seen: "a gate-operator manual and a trade article of December 2015 that retell them (addresses withheld)",
};

static EU: Source = Source {
    work: "EN 12978 and EN 12453",
    clause: "category 2: tested by the machine at least once in each cycle",
    evidence: Evidence::Seen,
    seen: "DHF, Powered Gate Myth Buster 4, and a mounting sheet of door sensors (address withheld); the standards themselves were not at hand",
};

/// Mean time between failures that UL 325 allows an operator with its sensor: six in a million hours.
const MEAN_TIME: f64 = 1e6 / 6.0 * 3600.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if sensors(site, gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                monitored(asking, site, gate)
            });
        }
    }
}

fn monitored<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let operator = operator_of(asking, site, gate)?;
    let tests = told(
        asking,
        &operator.origin,
        "monitors_devices",
        operator.monitors_devices,
    );
    let mut blind = Ok(Vec::new());
    for device in sensors(site, gate) {
        match (knows(asking, device), &mut blind) {
            (Ok(false), Ok(blind)) => blind.push(device),
            (Err(halt), _) => blind = Err(halt),
            _ => {}
        }
    }
    let after = after_fault(asking, operator);
    let (tests, mut blind, (still, remotes)) = (tests?, blind?, after?);
    if !tests {
        blind = sensors(site, gate).collect();
    }
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &US,
        CodeBasis::Eu => &EU,
    });
    let dead = dead_by_visit(asking, site, !blind.is_empty());
    let stands = is_safe(still);
    asking.say(|print| {
        let known = if blind.is_empty() {
            "A dead sensor is found before the gate moves".to_owned()
        } else {
            let dead = dead.map_or_else(String::new, |chance| {
                format!(
                    ", and by the next visit one is with a chance of {}",
                    print.percent(chance)
                )
            });
            format!(
                "Nothing finds out whether {} is dead{dead}",
                names(blind.iter().copied())
            )
        };
        let then = match still {
            FaultMove::Stands => "then it stands still",
            FaultMove::HeldInSight => "then only a control held in sight of the gate moves it",
            FaultMove::AnyHeld => "then a held control moves it that may hang out of sight",
            FaultMove::OpensOnly => "then it still opens on its own",
            FaultMove::AsUsual => "then it runs as if nothing were wrong",
        };
        let by_radio = if remotes {
            ", and remotes still work"
        } else {
            ""
        };
        format!("{known}; {then}{by_radio}.")
    });
    Ok(Outcome::Rule(blind.is_empty() && stands && !remotes))
}

/// A sensor is tested, in a way that finds the faults of its kind.
pub(super) fn knows<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<bool, Halt> {
    let tested = told(asking, &device.origin, "monitored", device.monitored);
    let way = pick!(asking, device.monitoring);
    let (tested, way) = (tested?, way?);
    let enough = match way {
        Monitoring::Nothing | Monitoring::ClosedContact => false,
        Monitoring::EndResistor => device.kind == DeviceKind::ContactEdge,
        Monitoring::SenderTest | Monitoring::SelfCheck | Monitoring::RadioCheck => true,
    };
    Ok(tested && enough)
}

/// Only a control held in sight of the gate is left, or nothing.
fn is_safe(still: FaultMove) -> bool {
    matches!(still, FaultMove::Stands | FaultMove::HeldInSight)
}

/// On a fault only a control held in sight of the gate is left, or nothing.
pub(super) fn stops_on_fault<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
) -> Result<bool, Halt> {
    Ok(is_safe(pick!(asking, operator.behavior?.on_fault)?))
}

/// What still moves the gate on a fault, and whether remotes do.
fn after_fault<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
) -> Result<(FaultMove, bool), Halt> {
    let still = pick!(asking, operator.behavior?.on_fault);
    let remotes = behavior_told(
        asking,
        operator,
        ("remotes_on_fault", "behavior.remotes_on_fault"),
        operator
            .behavior
            .as_ref()
            .and_then(|behavior| behavior.remotes_on_fault),
    );
    Ok((still?, remotes?))
}

/// Chance that a sensor which nothing tests is dead by the next visit; nothing where all are tested.
fn dead_by_visit<'s>(asking: &mut Asking<'s>, site: &'s Site, some: bool) -> Option<Ratio> {
    let about = &site.site;
    let interval = about.visit_interval.as_ref().filter(|_| some);
    let interval = asking.read_if_there(&about.origin, "visit_interval", interval)?;
    let failure = UnnoticedFailure {
        mean_time: Time::from_base(MEAN_TIME),
        interval,
    };
    Some(asking.work_if_in_reach(&failure)?.chance)
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
        visit_interval = "1 year"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        monitors_devices = true
        [operator.behavior]
        on_fault = "held control in sight"
        remotes_on_fault = false
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        monitored = true
        monitoring = "end resistor"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        monitored = true
        monitoring = "sender test"
    "#;

    #[test]
    fn holds_where_each_is_tested_and_only_a_held_control_is_left() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_for_a_sensor_that_nothing_tests_or_tests_only_the_line_of() {
        for (was, is, who) in [
            ("\"end resistor\"", "\"closed contact only\"", "edge"),
            ("\"sender test\"", "\"end resistor\"", "beam"),
            (
                "monitors_devices = true",
                "monitors_devices = false",
                "edge, beam",
            ),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
            assert!(finding.sentence.contains(who), "{}", finding.sentence);
            // By hand: 1 − exp(−8766 h / 166667 h) = 5.1 %.
            assert!(finding.sentence.contains("5.1"), "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_where_a_fault_leaves_more_than_a_held_control_in_sight() {
        for (was, is) in [
            ("\"held control in sight\"", "\"runs as usual\""),
            ("\"held control in sight\"", "\"any held control\""),
            ("remotes_on_fault = false", "remotes_on_fault = true"),
        ] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_way_of_testing_and_what_it_does_then() {
        let bare = SITE
            .replace("monitoring = \"end resistor\"", "")
            .replace("on_fault = \"held control in sight\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
