//! What breaks first when a gate stalls against something solid.
//!
//! The greatest force of the operator and, on a leaf that moves along a line, the blow of its turning parts, taken up by the
//! spring of the stop, go through every part between motor and leaf. A part that is meant to give way first may give way to
//! the blow, so it is held against the stall alone; it must be weaker than all others, and lets no more than its own
//! strength through to them. Along a ram all forces are the ram's; of other drives of a leaf that turns, those at its free end.

use crate::asking::{Asking, Wants, read};
use crate::check::motion::{cruise_of, radius, turns};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use formula::motion::StopImpactForce;
use quantity::{Force, Quantity as _, Ratio};
use site::{Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-drive-parts",
    codes: BOTH,
    leaves_open: "the blow of the turning parts on a leaf that turns, which its stop at the ground takes by a lever; welds and brackets that rust or crack with time, and a vehicle that runs into the leaf",
    concerns: "each operator",
    ask,
};

/// How parts are written.
const PARTS: &str =
    "[{ what = \"rack\", strength = \"1200 lbf\", factor = \"1.5\", gives_first = true }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_operators(site, |_| true, parts);
}

/// One part: its name, strength, wanted factor, and whether it is meant to give way first.
struct Part<'s> {
    what: &'s str,
    strength: Force,
    factor: Ratio,
    gives_first: bool,
}

fn parts<'s>(asking: &mut Asking<'s>, gate: &'s Gate, operator: &'s Operator) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let stall = stall(asking, gate, operator);
    let blow = blow(asking, gate, &stall, operator);
    let parts = read_parts(asking, operator);
    let (stall, blow, parts) = (stall?, blow?, parts?);
    let weakest = parts
        .iter()
        .min_by(|a, b| a.strength.base().total_cmp(&b.strength.base()));
    let Some(weakest) = weakest else {
        return Err(Halt);
    };
    asking.say(|print| {
        let chosen = if weakest.gives_first {
            "as it is meant to"
        } else {
            "which nobody chose"
        };
        format!(
            "Stalled against something solid, {} puts {} through its parts; the weakest is the {} at {}, {chosen}.",
            operator.id,
            print.q(blow),
            weakest.what,
            print.q(weakest.strength)
        )
    });
    let let_through = parts
        .iter()
        .filter(|part| part.gives_first)
        .fold(blow, |least, part| {
            if part.strength < least {
                part.strength
            } else {
                least
            }
        });
    let own = parts.iter().map(|part| {
        let demand = if part.gives_first {
            ("stall with the wanted factor", stall * part.factor)
        } else {
            (
                "stall and blow with the wanted factor",
                let_through * part.factor,
            )
        };
        compared(demand, ("strength of the part", part.strength))
    });
    let chosen = parts
        .iter()
        .filter(|part| part.gives_first)
        .flat_map(|first| {
            parts.iter().filter(|part| !part.gives_first).map(|other| {
                compared(
                    ("strength of the part that is to give way", first.strength),
                    ("strength of another part", other.strength),
                )
            })
        });
    Outcome::worst(own.chain(chosen)).ok_or(Halt)
}

fn compared(demand: (&'static str, Force), capacity: (&'static str, Force)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
}

fn read_parts<'s>(asking: &mut Asking<'s>, operator: &'s Operator) -> Result<Vec<Part<'s>>, Halt> {
    if operator.drive_part.is_empty() {
        return asking.lack(&operator.origin, "drive_part", Wants::Written(PARTS));
    }
    let mut parts = Vec::with_capacity(operator.drive_part.len());
    let mut lacks = false;
    for part in &operator.drive_part {
        let strength = read!(asking, part.strength);
        let factor = read!(asking, part.factor);
        match (strength, factor) {
            (Ok(strength), Ok(factor)) => parts.push(Part {
                what: part.what.as_str(),
                strength,
                factor,
                gives_first: part.gives_first == Some(true),
            }),
            _ => lacks = true,
        }
    }
    if lacks { Err(Halt) } else { Ok(parts) }
}

/// Force at the start: along the ram or at the leaf; of a drive with a turning shaft, at the free end.
fn stall<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<Force, Halt> {
    if !turns(gate) || operator.starting_torque.is_none() || operator.starting_force.is_some() {
        return read!(asking, operator.starting_force);
    }
    let torque = read!(asking, operator.starting_torque);
    let radius = radius(asking, gate);
    Ok(Force::from_base(torque?.base() / radius?.base()))
}

/// Greatest force: that of the start, on top of the blow of the turning parts on the spring of the stop.
fn blow<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    stall: &Result<Force, Halt>,
    operator: &'s Operator,
) -> Result<Force, Halt> {
    if turns(gate) {
        return *stall;
    }
    let mass = read!(asking, operator.rotating_mass);
    let speed = cruise_of(asking, gate);
    let stop = gate.stop.iter().find(|stop| stop.stiffness.is_some());
    let stiffness = match stop.or(gate.stop.first()) {
        Some(stop) => read!(asking, stop.stiffness),
        None => asking.lack(
            &gate.origin,
            "stop",
            Wants::Written("[{ end = \"closed\", stiffness = \"5000 lbf/ft\" }]"),
        ),
    };
    let impact = asking.work(&StopImpactForce {
        mass: mass?,
        speed: speed?,
        push: (*stall)?,
        stiffness: stiffness?,
    })?;
    Ok(impact.force)
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        leaf = [{ id = "leaf" }]
        stop = [{ end = "closed", stiffness = "20000 N/m" }]
        [gate.motion]
        cruise_speed = "0.3 m/s"
        [[operator]]
        id = "drive"
        gate = "main"
        starting_force = "900 N"
        rotating_mass = "60 kg"
        drive_part = [
          { what = "rack bolts", strength = "2500 N", factor = "1.5", gives_first = true },
          { what = "bracket", strength = "4500 N", factor = "1.5" },
        ]
    "#;

    #[test]
    fn holds_with_a_chosen_weak_link() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 900 + √(900² + 20000 · 60 · 0.09) = 1857.9 N, times 1.5.
        let demand = finding.demand.and_then(|demand| demand.value);
        let blow = 900.0 + (900.0_f64.powi(2) + 20000.0 * 60.0 * 0.09).sqrt();
        assert!(demand.is_some_and(|newtons| (newtons - 1.5 * blow).abs() < 1e-6));
    }

    #[test]
    fn fails_with_a_weak_rack_or_a_weaker_bracket() {
        for (was, is) in [("2500 N", "1300 N"), ("4500 N", "2400 N")] {
            let finding = only(&CHECK, &SITE.replace(was, is));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_strengths_and_stiffness() {
        let bare = SITE
            .replace("strength = \"4500 N\", ", "")
            .replace(", stiffness = \"20000 N/m\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
