//! Who still gets in and out when the internet, the provider or the maker's service is gone.
//!
//! A way in counts where the decision is made inside the fence by a list that is kept there, and where a contact does it by
//! itself. What rests on something outside is told to the owner. Ways out, the fire service's opening and the hand release
//! must need nothing from outside.

use crate::asking::{Asking, Wants, need, pick};
use crate::check::protect::means::of_gate;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use site::{
    Command, CommandKind, ContactKind, DecisionPlace, Device, Gate, OnVehicle, Remote, Site,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-internet-down",
    codes: BOTH,
    leaves_open: "locks of the walk gate, whose way out has its own question, and a list that nobody has kept up to date",
    concerns: "each gate with a reader, an intercom, a phone or another way to open it by message",
    ask,
};

static PATHS: Source = Source {
    work: "list of the paths by which each opening comes about",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as the site gives them: confirm with the uplink unplugged for an hour",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        if deciding(site, gate).next().is_some() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                open(asking, site, gate)
            });
        }
    }
}

/// The devices of a gate that open it by a message, or through which somebody opens it from afar.
fn deciding<'s>(site: &'s Site, gate: &'s Gate) -> impl Iterator<Item = &'s Device> {
    of_gate(site, gate).filter(|device| {
        let through = |remote: &Remote| {
            remote.through.as_ref() == Some(&device.id) && remote.does.contains(&CommandKind::Open)
        };
        device.does.iter().any(by_message) || site.remote.iter().any(through)
    })
}

fn by_message(command: &Command) -> bool {
    command.what == CommandKind::Open && command.contact == Some(ContactKind::Message)
}

fn by_contact(command: &Command) -> bool {
    command.what == CommandKind::Open && command.contact != Some(ContactKind::Message)
}

/// The ways of a gate.
#[derive(Default)]
struct Ways {
    inside: Vec<String>,
    resting: Vec<String>,
    untold: Vec<String>,
}

fn open<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&PATHS);
    let mut ways = Ways::default();
    let mut whole = Ok(());
    for device in deciding(site, gate) {
        if let Err(halt) = decided(asking, site, device, &mut ways) {
            whole = Err(halt);
        }
    }
    let out = out(site, gate);
    let fire = fire(site, gate);
    if whole.is_ok() && ways.inside.is_empty() {
        asking.say(|_| {
            format!(
                "Without the internet nobody enrolled gets in at {}: no way in is decided inside the fence with a list that is kept there. Let the controller at the gate keep the list.",
                gate.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    if !ways.untold.is_empty() {
        return asking.wait_for(format!(
            "tell the owner what is lost without what is outside the fence, and write it as owner_told at {}",
            and(&ways.untold)
        ));
    }
    if out.is_empty() {
        const OUT: &str = "[\"opens\"]";
        return asking.lack(&gate.origin, "device.on_vehicle", Wants::Written(OUT));
    }
    if let Some(device) = fire {
        asking.say(|_| {
            format!(
                "The fire service opens {} by {}, which needs something from outside the fence: give it a key switch or a contact of its own.",
                gate.id, device.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    whole?;
    asking.say(|_| {
        let resting = if ways.resting.is_empty() {
            String::new()
        } else {
            format!(" Lost then, and told to the owner: {}.", ways.resting.join("; "))
        };
        format!(
            "With nothing from outside the fence, people get in at {} by {}, and out by {}; the fire service's opening and the hand release need none.{resting}",
            gate.id,
            and(&ways.inside),
            and(&out)
        )
    });
    Ok(Outcome::Rule(true))
}

/// Where it is decided for one device.
fn decided<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    ways: &mut Ways,
) -> Result<(), Halt> {
    if device.decision.is_none() && device.does.iter().any(by_contact) {
        ways.inside.push(device.id.to_string());
        return Ok(());
    }
    let place = pick!(asking, device.decision?.place)?;
    let Some(decision) = &device.decision else {
        return Err(Halt);
    };
    let name = device.id.to_string();
    let needs = decision.needs.as_ref();
    if place != DecisionPlace::Outside && needs.is_none() {
        let kept = need!(asking, decision.list_kept, "true").copied()?;
        if kept {
            let by = decision.by.as_ref().filter(|by| **by != device.id);
            let by = by.and_then(|by| site.device.iter().find(|it| it.id == *by));
            ways.inside.push(match by {
                Some(by) => format!("{name} (decided by {})", by.id),
                None => name,
            });
        } else {
            ways.resting
                .push(format!("{name}, whose list is gone with its power"));
            ways.untold
                .extend(decision.owner_told.is_none().then(|| device.id.to_string()));
        }
        return Ok(());
    }
    let needs = need!(
        asking,
        decision.needs,
        "\"phone network; contract ends 2028-03-31\""
    )?;
    let told = decision.owner_told.as_ref();
    match told {
        Some(told) => ways.resting.push(format!("{name} ({needs}; {told})")),
        None => ways.untold.push(name),
    }
    Ok(())
}

/// What lets a vehicle out by a contact of its own.
fn out(site: &Site, gate: &Gate) -> Vec<String> {
    let lets_out = |device: &&Device| {
        device.on_vehicle.contains(&OnVehicle::Opens) || device.does.iter().any(by_contact)
    };
    of_gate(site, gate)
        .filter(lets_out)
        .map(|device| device.id.to_string())
        .collect()
}

/// A device by which the fire service opens, and that needs something from outside.
fn fire<'s>(site: &'s Site, gate: &Gate) -> Option<&'s Device> {
    let openers = site.fire.iter().flat_map(|fire| &fire.opener);
    let of_gate = openers.filter(|it| it.gate.as_ref().is_none_or(|name| *name == gate.id));
    let devices = of_gate.filter_map(|opener| opener.device.as_ref());
    let rests = |device: &&Device| {
        let decision = device.decision.as_ref();
        decision.is_some_and(|it| it.place == Some(DecisionPlace::Outside) || it.needs.is_some())
    };
    devices
        .filter_map(|name| site.device.iter().find(|device| device.id == *name))
        .find(rests)
}

#[cfg(test)]
mod tests {
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
        [[device]]
        id = "keypad"
        kind = "keypad"
        does = [{ what = "open", contact = "message" }]
        decision = { place = "at the gate", by = "controller", list_kept = true }
        [[device]]
        id = "station"
        kind = "intercom"
        does = [{ what = "open", contact = "message" }]
        decision = { place = "outside the fence", needs = "phone network", owner_told = "2026-06-15" }
        [[device]]
        id = "controller"
        kind = "access controller"
        [[device]]
        id = "loop-out"
        kind = "loop"
        on_vehicle = ["opens"]
    "#;

    #[test]
    fn holds_with_a_list_at_the_gate_and_the_rest_told() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("keypad (decided by controller)"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_where_everything_is_decided_outside() {
        let outside = SITE.replace(
            "place = \"at the gate\", by = \"controller\", list_kept = true",
            "place = \"outside the fence\", needs = \"a service\", owner_told = \"2026-06-15\"",
        );
        let finding = only(&CHECK, &outside);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let fire =
            SITE.to_owned() + "\n[fire]\n[[fire.opener]]\ngate = \"main\"\ndevice = \"station\"\n";
        assert_eq!(only(&CHECK, &fire).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_until_it_is_written_and_told() {
        for gone in [
            ", list_kept = true",
            "decision = { place = \"at the gate\", by = \"controller\", list_kept = true }",
            ", owner_told = \"2026-06-15\"",
            "on_vehicle = [\"opens\"]",
        ] {
            let finding = only(&CHECK, &SITE.replace(gone, ""));
            assert_eq!(finding.verdict, Verdict::UnknownUntil, "{gone}");
        }
    }
}
