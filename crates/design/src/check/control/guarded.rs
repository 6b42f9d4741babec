//! Whether a passer-by, a child, or an arm through the bars can work something that opens.
//!
//! Controls toward the road want a key, a code or a credential, or only ask somebody who decides. What opens from inside
//! without one must lie farther from where anybody may stand outside than an arm with the stated stick reaches; where
//! nobody taped that, its distance from the gate line on the plan is taken.

use super::{DOES, devices_of};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::bus::opening_wires::{is_outside, opens};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Device, DeviceKind, Gate, GateSide, HandRelease, KeyNeeded, OnVehicle, Site, WorkedBy};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-guarded",
    codes: BOTH,
    leaves_open: "a code that everybody knows, a wire or a magnet thrown at a loop, and a drone or a rope",
    concerns: "each gate",
    ask,
};

static UL: Source = Source {
    work: "UL 325: outdoor controls and those within reach of the public have a security feature",
    clause: "installation text",
    evidence: Evidence::Seen,
    seen: "reprint in manuals of operators (addresses withheld: makers' names are in them)",
};

static ARM: Source = Source {
    work: "ISO 13857: an arm through an opening reaches 850 mm",
    clause: "table 4",
    evidence: Evidence::Seen,
    seen: "public retellings of the table of reach through openings",
};

/// What an arm reaches, in meters.
const REACH: f64 = 0.85;

/// How a control is said to be guarded.
const GUARDED: &str = "guarded = { worked_by = \"key\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            guarded(asking, site, gate)
        });
    }
}

/// Something inside that opens without key, and its way from outside.
struct Open {
    name: String,
    way: Length,
}

fn guarded<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&UL);
    asking.rest_on(&ARM);
    let stick = read!(asking, gate.holds_against?.stick);
    let mut rules = Rules::default();
    let mut inside = Ok(Vec::new());
    let mut outside = Vec::new();
    let mut add = |found: Result<Option<Open>, Halt>| match found {
        Err(halt) => inside = Err(halt),
        Ok(None) => {}
        Ok(Some(open)) => {
            if let Ok(list) = &mut inside {
                list.push(open);
            }
        }
    };
    for device in devices_of(site, gate).filter(|device| can_open(device)) {
        if is_outside(device) {
            let worked = worked_by(asking, device);
            if let Ok(by) = worked {
                rules.keep(
                    by != WorkedBy::Anybody,
                    &format!(
                        "Anybody who passes opens by {}: put it behind a key, a code or a card.",
                        device.id
                    ),
                );
                outside.push(device.id.to_string());
            }
            add(worked.map(|_| None));
        } else {
            add(within(asking, device));
        }
    }
    for release in &gate.release {
        add(released(asking, release));
    }
    let (stick, inside) = (stick?, inside?);
    let reach = Length::from_base(REACH) + stick;
    for open in &inside {
        rules.keep(
            open.way >= reach,
            &format!(
                "{} opens without a key and lies within reach of an arm with a stick from outside.",
                open.name
            ),
        );
        rules.compare(Comparison::at_most(
            Labeled::new("reach of an arm with the stated stick", reach),
            Labeled::new("nearest way from outside to what opens", open.way),
        ));
    }
    asking.say(|print| {
        rules.says(|| {
            let names: Vec<String> = inside
                .iter()
                .map(|open| format!("{} at {}", open.name, print.q(open.way)))
                .collect();
            format!(
                "Toward the road {} asked for key, code, credential or an answer; inside, an arm with the stick reaches {}{}.",
                if outside.is_empty() { "nothing has to be".to_owned() } else { format!("{} {}", and(&outside), if outside.len() == 1 { "is" } else { "are" }) },
                print.q(reach),
                if names.is_empty() { String::new() } else { format!(", and what opens lies farther: {}", and(&names)) }
            )
        })
    });
    Ok(rules.outcome())
}

/// It opens the gate: by a hand, a card, a voice, or for a vehicle that leaves.
fn can_open(device: &Device) -> bool {
    use DeviceKind::{Control, Intercom, Keypad, Reader};
    let by_hand = matches!(device.kind, Control | Keypad | Reader | Intercom);
    (by_hand && (opens(device) || device.does.is_empty()))
        || device.on_vehicle.contains(&OnVehicle::Opens)
}

fn worked_by<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<WorkedBy, Halt> {
    if device.does.is_empty() {
        return asking.lack(&device.origin, "does", Wants::Written(DOES));
    }
    match &device.guarded {
        Some(guarded) => pick!(asking, guarded.worked_by),
        None => asking.lack(&device.origin, "guarded", Wants::Table(GUARDED)),
    }
}

/// A control inside that works without key, or a detector for vehicles that leave.
fn within<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Option<Open>, Halt> {
    let detects = !device.on_vehicle.is_empty();
    if !detects && worked_by(asking, device)? != WorkedBy::Anybody {
        return Ok(None);
    }
    let taped = device.guarded.as_ref().and_then(|guarded| {
        asking.read_if_there(
            &guarded.origin,
            "from_outside",
            guarded.from_outside.as_ref(),
        )
    });
    let way = if let Some(way) = taped {
        way
    } else {
        let [_, y, _] = asking.position(&device.origin, "at", device.at.as_ref())?;
        y
    };
    Ok(Some(Open {
        name: device.id.to_string(),
        way,
    }))
}

/// A hand release that works without a key, and is reached from inside.
fn released<'s>(asking: &mut Asking<'s>, release: &'s HandRelease) -> Result<Option<Open>, Halt> {
    let key = pick!(asking, release.key)?;
    let locked = matches!(key, KeyNeeded::Carried | KeyNeeded::Elsewhere);
    if locked {
        return Ok(None);
    }
    let taped = asking.read_if_there(
        &release.origin,
        "from_outside",
        release.from_outside.as_ref(),
    );
    let outside = release.reached_from.contains(&GateSide::Outside);
    let way = match taped {
        Some(way) => way,
        None if outside => Length::from_base(0.0),
        None => {
            let [_, y, _] = asking.position(&release.origin, "at", release.at.as_ref())?;
            y
        }
    };
    Ok(Some(Open {
        name: "the hand release".to_owned(),
        way,
    }))
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
        holds_against = { stick = "3 ft" }
        [[gate.release]]
        at = ["22 ft", "20 in", "30 in"]
        reached_from = ["inside"]
        key = "key carried"
        [[device]]
        id = "keypad"
        kind = "keypad"
        at = ["-3 ft", "-20 ft", "42 in"]
        does = [{ what = "open", contact = "message" }]
        guarded = { worked_by = "code" }
        [[device]]
        id = "button"
        kind = "control"
        at = ["30 ft", "8 ft", "48 in"]
        does = [{ what = "open", contact = "normally open" }]
        guarded = { worked_by = "anybody" }
    "#;

    #[test]
    fn holds_with_a_code_outside_and_a_button_far_inside() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_within_reach_and_with_nothing_asked() {
        let near = SITE.replace("\"30 ft\", \"8 ft\"", "\"30 ft\", \"4 ft\"");
        assert_eq!(only(&CHECK, &near).verdict, Verdict::Fails);
        let free = SITE.replace("worked_by = \"code\"", "worked_by = \"anybody\"");
        assert_eq!(only(&CHECK, &free).verdict, Verdict::Fails);
        let release = SITE.replace("key carried", "no key");
        assert_eq!(only(&CHECK, &release).verdict, Verdict::Fails);
        let taped = near.replace("\"anybody\" }", "\"anybody\", from_outside = \"9 ft\" }");
        assert_eq!(only(&CHECK, &taped).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_what_a_control_asks_for() {
        let finding = only(
            &CHECK,
            &SITE.replace("guarded = { worked_by = \"code\" }", ""),
        );
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
