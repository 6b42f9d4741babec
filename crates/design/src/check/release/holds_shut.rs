//! Whether a shut gate holds against the wind and a person, at the lock or at the drive, with and without power.
//!
//! Each pulls where the leaf moves most easily: along the travel of a leaf that slides, at the free end of one that turns.
//! A lock nearer to the hinge than that end is pulled by the longer lever. What holds is the stronger of lock and
//! standing drive; without power a lock that lets go then holds nothing.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::protect::means::{of_gate, told};
use crate::check::wind::along::along;
use crate::check::wind::load::Wind;
use crate::check::wind::reaction::at_free_end;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _};
use site::{
    Device, DeviceKind, DriveKind, Gate, GateKind, HoldsAgainst, Leaf, Operator, PowerLoss, Site,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "release-holds-shut",
    codes: BOTH,
    leaves_open: "a pry bar at the keeper, play that lets the leaf swing against its bolt, a leaf lifted off its hinges or track, and a hand release that somebody gets at",
    concerns: "each leaf with a lock or an operator",
    ask,
};

static LEVER: Source = Source {
    work: "lever about the hinge line",
    clause: "",
    evidence: Evidence::Physics,
    seen: "equal moments of push and lock",
};

/// How what a gate shall hold against is written.
const AGAINST: &str = "[gate.holds_against]\npush = \"200 lbf\"\nwithout_power = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let asked = |gate: &&Gate| gate.kind != GateKind::VerticalLift;
    for gate in site.gate.iter().filter(asked) {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                let Some(against) = &gate.holds_against else {
                    return asking.lack(&gate.origin, "holds_against", Wants::Table(AGAINST));
                };
                shut(asking, site, (gate, leaf), against)
            });
        }
    }
}

/// What holds one leaf: with power, and without.
struct Held {
    by: String,
    with: Force,
    without: Force,
}

fn shut<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (gate, leaf): (&'s Gate, &'s Leaf),
    against: &'s HoldsAgainst,
) -> Answer {
    let push = read!(asking, against.push);
    let without = told(
        asking,
        &against.origin,
        "without_power",
        against.without_power,
    );
    let wind = wind(asking, site, gate, leaf);
    let held = held(asking, site, gate, leaf);
    let (push, without, wind, held) = (push?, without?, wind?, held?);
    asking.rest_on(&DATA_SHEET);
    let mut compared = vec![
        against_push(push, held.with, "what holds it with power"),
        against_wind(wind, held.with, "what holds it with power"),
    ];
    if without {
        compared.push(against_push(
            push,
            held.without,
            "what holds it without power",
        ));
        compared.push(against_wind(
            wind,
            held.without,
            "what holds it without power",
        ));
    }
    asking.say(|print| {
        format!(
            "Shut, {} is pushed with {} by a person and {} by the storm where it moves most easily; {} holds {} there with power and {} without{}.",
            leaf.id,
            print.q(push),
            print.q(wind),
            held.by,
            print.q(held.with),
            print.q(held.without),
            if without { "" } else { ", where it need not hold" }
        )
    });
    Outcome::worst(compared).ok_or(Halt)
}

fn against_push(push: Force, holds: Force, label: &'static str) -> Comparison {
    Comparison::at_most(
        Labeled::new("push of a person where the leaf moves most easily", push),
        Labeled::new(label, holds),
    )
}

fn against_wind(wind: Force, holds: Force, label: &'static str) -> Comparison {
    Comparison::at_most(
        Labeled::new("push of the storm in the same place", wind),
        Labeled::new(label, holds),
    )
}

/// Push of the design wind: along the travel, or at the free end; none lifts an arm that lies down.
fn wind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Force, Halt> {
    match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => {
            along(asking, site, leaf, Wind::Design).map(|(_, force)| force)
        }
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            at_free_end(asking, site, leaf, Wind::Design).map(|(_, force)| force)
        }
        _ => Ok(Force::from_base(0.0)),
    }
}

/// What holds a leaf, brought to where it is pushed.
fn held<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    leaf: &'s Leaf,
) -> Result<Held, Halt> {
    let lock = of_gate(site, gate).find(|device| device.kind == DeviceKind::Lock);
    let drive = site
        .operators_of_leaf(gate, leaf)
        .find(|operator| operator.holding_force.is_some());
    let by_drive = drive.and_then(|operator| by_drive(asking, gate, operator));
    let by_lock = match lock {
        Some(lock) => Some(by_lock(asking, gate, leaf, lock)?),
        None => None,
    };
    match (by_lock, by_drive) {
        (Some((lock, with, without)), Some((_, driven))) if with >= driven => Ok(Held {
            by: lock,
            with,
            without: if without > driven { without } else { driven },
        }),
        (_, Some((drive, force))) => Ok(Held {
            by: drive,
            with: force,
            without: force,
        }),
        (Some((by, with, without)), None) => Ok(Held { by, with, without }),
        (None, None) => match site.operators_of_leaf(gate, leaf).next() {
            Some(operator) => {
                let wants = Wants::Sort(<Force as quantity::Argument>::SORT);
                asking.lack(&operator.origin, "holding_force", wants)
            }
            None => asking.lack(&leaf.origin, "operator", Wants::Written("\"drive\"")),
        },
    }
}

/// What a standing drive holds where the leaf is pushed, where that is written; the push of a ram is at its pin.
fn by_drive<'s>(
    asking: &mut Asking<'s>,
    gate: &Gate,
    operator: &'s Operator,
) -> Option<(String, Force)> {
    let turning = matches!(gate.kind, GateKind::SingleSwing | GateKind::DoubleSwing);
    if turning && operator.drive == Some(DriveKind::Linear) {
        return None;
    }
    let force = asking.read_if_there(
        &operator.origin,
        "holding_force",
        operator.holding_force.as_ref(),
    )?;
    Some((operator.id.to_string(), force))
}

/// What a lock holds where the leaf is pushed: with power, and without.
fn by_lock<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    lock: &'s Device,
) -> Result<(String, Force, Force), Halt> {
    let tried = lock
        .lock
        .as_ref()
        .and_then(|timing| asking.read_if_there(&timing.origin, "held", timing.held.as_ref()));
    let force = match tried {
        Some(force) => Ok(force),
        None => read!(asking, lock.holding_force),
    };
    let state = pick!(asking, lock.on_power_loss);
    let share = lever(asking, gate, leaf, lock);
    let (force, state, share) = (force?, state?, share?);
    let with = force * share;
    let without = match state {
        PowerLoss::FailSecure => with,
        PowerLoss::FailSafe => Force::from_base(0.0),
    };
    Ok((lock.id.to_string(), with, without))
}

/// Share of a lock's force that counts at the free end: by its distance from the hinge line, and by the leaves that it
/// holds; all of it where the leaf slides.
fn lever<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    leaf: &'s Leaf,
    lock: &'s Device,
) -> Result<f64, Halt> {
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    if slides {
        return Ok(1.0);
    }
    let both = gate.kind == GateKind::DoubleSwing;
    let at = asking.position(&lock.origin, "at", lock.at.as_ref());
    let length = read!(asking, leaf.length);
    let free = if both {
        read!(asking, gate.clear_opening).map(|opening| opening / 2.0)
    } else {
        read!(asking, leaf.closed_end)
    };
    let ([x, ..], length, free) = (at?, length?, free?);
    asking.rest_on(&LEVER);
    let from_free: Length = (x - free).abs();
    let lever = ((length - from_free) / length).base().clamp(0.0, 1.0);
    let share = if both { lever / 2.0 } else { lever };
    asking.note(|print| {
        format!(
            "{} sits {} from the free end of {}{}: {share:.2} of its force counts there.",
            lock.id,
            print.q(from_free),
            leaf.id,
            if both { " and holds two leaves" } else { "" }
        )
    });
    Ok(share)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test lot"
        code_basis = "us"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        holds_against = { push = "50 lbf ± 5 lbf", without_power = false }
        [[gate.leaf]]
        id = "boom"
        [[operator]]
        id = "drive"
        gate = "arm"
        self_locking = true
        holding_force = "80 lbf"
    "#;

    #[test]
    fn holds_by_its_drive() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_lock_lets_go_without_power() {
        let lock = SITE
            .replace("without_power = false", "without_power = true")
            .replace("self_locking = true", "self_locking = false")
            + r#"
        [[device]]
        id = "magnet"
        kind = "lock"
        on_power_loss = "fail-safe"
        holding_force = "600 lbf"
        at = ["1 ft", "0 ft", "3 ft"]
    "#;
        let slide = lock.replace("barrier-arm", "single-swing").replace(
            "id = \"boom\"",
            "id = \"boom\"\n        length = \"12 ft\"\n        closed_end = \"0 ft\"",
        );
        let finding = only(&CHECK, &slide);
        assert_ne!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let weak = SITE.replace("80 lbf", "40 lbf");
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_what_it_shall_hold() {
        let finding = only(&CHECK, &SITE.replace("push = \"50 lbf ± 5 lbf\", ", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let by_nothing = SITE.replace("holding_force = \"80 lbf\"", "");
        assert_eq!(only(&CHECK, &by_nothing).verdict, Verdict::UnknownUntil);
    }
}
