//! Whether each gate still breaks away in the coldest hour.
//!
//! Grease, motor and controller must be made for the cold; then the pull at the start, against seal and ice and half more
//! for stiff grease (common practice), is held against the starting force, less on a battery. The battery's share of the
//! speed stands for its share of the voltage, and so of the force.

use super::rising::{Rising, RisingAt, rises, rising};
use super::sliding::{Conditions, on_the_level};
use super::turning::{At, turning};
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::SlideGateForce;
use formula::{Evidence, Source};
use quantity::{Angle, Force, Kind, Quantity as _, Ratio, Torque, Value};
use site::{Direction, DriveKind, Gate, GateKind, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-cold-start",
    codes: BOTH,
    leaves_open: "a leaf frozen to its stop or its track, and the voltage that arrives in the cold, which is a question of its own",
    concerns: "each operator",
    ask,
};

/// Start in the cold over start at room temperature.
const BREAK_AWAY: f64 = 1.5;

static ALLOWANCE: Source = Source {
    work: "half more at the start in the cold; force in proportion to voltage on a battery",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of drive sizing; a scale on the first cold morning replaces it",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(
        site,
        |_| true,
        |asking, gate, operator| cold_start(asking, site, gate, operator),
    );
}

fn cold_start<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Answer {
    let coldest = read!(asking, site.climate?.coldest);
    let grease = read!(asking, operator.grease_coldest);
    let rated = read!(asking, operator.coldest);
    let demand = demand(asking, site, gate, operator);
    let capacity = capacity(asking, gate, operator);
    let share = battery_share(asking, site, operator);
    let (coldest, grease, rated) = (coldest?, grease?, rated?);
    let (demand, capacity, share) = (demand?, capacity?, share?);
    asking.rest_on(&ALLOWANCE);
    let demand = times(demand, BREAK_AWAY);
    let capacity = times(capacity, share.base());
    asking.say(|print| {
        format!(
            "At {} {} needs {} to break away, half more than in the warm (common practice), and has {}; \
             its grease is good down to {}, the drive itself to {}.",
            print.q(coldest),
            operator.id,
            print.value(&demand),
            print.value(&capacity),
            print.q(grease),
            print.q(rated)
        )
    });
    let starts = Comparison::at_most(
        labeled("break-away in the cold", demand),
        labeled("what the drive has at the start", capacity),
    );
    // A temperature has no ratio to speak of: it decides only where it fails.
    let made_for = [
        ("lowest temperature of its grease", grease),
        ("lowest temperature of the drive", rated),
    ];
    let cold = made_for.into_iter().map(|(label, lowest)| {
        Comparison::at_most(
            Labeled::new(label, lowest),
            Labeled::new("coldest air", coldest),
        )
    });
    Outcome::worst(cold.filter(|cold| !cold.holds()).chain([starts])).ok_or(Halt)
}

fn labeled(label: &'static str, value: Value) -> Labeled {
    Labeled { label, value }
}

fn times(value: Value, factor: f64) -> Value {
    match value {
        Value::Quantity(kind, base) => Value::Quantity(kind, base * factor),
        other => other,
    }
}

/// Speed on battery over speed on mains; one where there is no battery.
fn battery_share<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    operator: &'s Operator,
) -> Result<Ratio, Halt> {
    if site.battery.is_empty() {
        return Ok(Ratio::from_base(1.0));
    }
    read!(asking, operator.battery_speed)
}

/// Pull or torque at the start, against everything but the wind.
fn demand<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<Value, Halt> {
    let leaf = leaf_of(asking, gate, operator)?;
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            let calm = Conditions {
                wind: None,
                ..Conditions::IN_THE_WIND
            };
            let level = on_the_level(asking, site, gate, leaf, calm);
            let slope = read!(asking, gate.slope);
            let (level, slope) = (level?, slope?);
            let uphill = Ratio::from_base(slope.base().abs());
            let force = asking.work(&SlideGateForce {
                slope: uphill,
                ..level
            })?;
            Ok(Value::Quantity(Kind::Force, force.total.base()))
        }
        _ if rises(gate) => {
            let at = RisingAt {
                wind: None,
                ..RisingAt::starting(0.0)
            };
            let here: Rising = rising(asking, site, gate, leaf, at)?;
            Ok(here.value(here.demand()))
        }
        _ => {
            let open = read!(asking, gate.travel_angle)?;
            let mut hardest = 0.0_f64;
            for (angle, direction) in [
                (Angle::from_base(0.0), Direction::Opening),
                (open, Direction::Closing),
            ] {
                let at = At {
                    angle,
                    wind: None,
                    direction,
                    speeding_up: true,
                    hindered: true,
                };
                let torque = turning(asking, site, gate, leaf, at)?;
                hardest = hardest.max(torque.total.base());
            }
            Ok(Value::Quantity(Kind::Torque, hardest))
        }
    }
}

/// What the drive has at the start: force on a slide or a lift, torque on a leaf that turns.
fn capacity<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<Value, Halt> {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let straight = matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    if straight {
        let force: Force = read!(asking, operator.starting_force)?;
        return Ok(Value::Quantity(Kind::Force, force.base()));
    }
    if operator.starting_torque.is_none() && operator.drive == Some(DriveKind::Linear) {
        let force = read!(asking, operator.starting_force);
        let arm = read!(asking, operator.mounting?.least_lever_arm);
        return Ok(Value::Quantity(Kind::Torque, force?.base() * arm?.base()));
    }
    let torque: Torque = read!(asking, operator.starting_torque)?;
    Ok(Value::Quantity(Kind::Torque, torque.base()))
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
        coldest = "5 °F"
        [[gate]]
        id = "main"
        kind = "track-slide"
        slope = "0.01 ± 0.002"
        seal_force = "5 lbf"
        debris_force = "25 lbf"
        leaf = [{ id = "leaf", mass = "640 lb ± 5 %" }]
        [gate.wheels]
        diameter = "6 in"
        rolling = "steel on steel"
        bearing_friction = "0.01"
        axle_diameter = "3/4 in"
        [gate.motion]
        acceleration = "0.8 ft/s²"
        [[operator]]
        id = "drive"
        gate = "main"
        starting_force = "200 lbf"
        grease_coldest = "-13 °F"
        coldest = "-4 °F"
    "#;

    #[test]
    fn holds_with_enough_at_the_start() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_weak_on_a_tired_battery_or_with_the_wrong_grease() {
        let battery = SITE.to_owned() + "\nbattery_speed = \"30 %\"\n[[battery]]\nid = \"b\"\n";
        for bad in [
            SITE.replace("200 lbf", "60 lbf"),
            SITE.replace("-13 °F", "14 °F"),
            battery,
        ] {
            let finding = only(&CHECK, &bad);
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_grease_and_the_cold() {
        let bare = SITE
            .replace("grease_coldest = \"-13 °F\"", "")
            .replace("coldest = \"5 °F\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
