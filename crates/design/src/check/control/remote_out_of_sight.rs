//! Ways to start a movement with nobody watching, and whether the gate is protected for it.
//!
//! Every radio receiver, intercom and access controller has to say which way comes in through it, or that it moves
//! nothing. A way that works only with the whole gate in view asks for nothing more; a camera is no view. With any other,
//! and with auto-close, the gate is asked as one that runs by itself.

use super::automatic::protected;
use super::{belongs, devices_of};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Word as _;
use site::{CommandKind, Device, DeviceKind, Gate, GateView, Remote, RemoteKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-remote-out-of-sight",
    codes: BOTH,
    leaves_open: "whether each hazard zone is covered by the means that are counted, and ways that nobody has written down",
    concerns: "each gate",
    ask,
};

static ALERT: Source = Source {
    work: "safety authority's alert on powered gates",
    clause: "hazards and controls",
    evidence: Evidence::Seen,
    seen: "a page that reprints the text of the Irish authority; address withheld, it carries a company name",
};

/// How a way to start a movement is written.
const REMOTE: &str = "[[remote]]\nid = \"fob-drivers\"\nby = \"fob\"\nthrough = \"receiver\"\ndoes = [\"open\"]\nholder = \"two drivers\"\nview = \"not in view\"\nworks_from = \"200 ft\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            out_of_sight(asking, site, gate)
        });
    }
}

fn out_of_sight<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&ALERT);
    let whole = every_way_written(asking, site, gate);
    let ways: Vec<_> = site
        .remote
        .iter()
        .filter(|remote| belongs(site, gate, remote.gate.as_ref()))
        .map(|remote| way(asking, remote))
        .collect();
    let ways: Result<Vec<_>, _> = ways.into_iter().collect();
    whole?;
    let ways = ways?;
    let mut unwatched: Vec<String> = ways
        .iter()
        .filter(|way| way.unwatched)
        .map(|way| way.said.clone())
        .collect();
    if gate.hold_time.is_some() {
        unwatched.push("auto-close".to_owned());
    }
    if unwatched.is_empty() {
        asking.say(|_| "No way starts a movement unless the whole gate is in view.".to_owned());
        return Ok(Outcome::Rule(true));
    }
    let outcome = protected(asking, site, gate)?;
    asking.say(|_| {
        format!(
            "With nobody watching it is moved by {}: it has to be protected as a gate that runs by itself.",
            and(&unwatched)
        )
    });
    Ok(outcome)
}

/// Every device through which a command may come from afar says what comes in through it.
fn every_way_written<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<(), Halt> {
    use DeviceKind::{AccessController, Intercom, Radio};
    let mut written = Ok(());
    let entrances = devices_of(site, gate)
        .filter(|device| matches!(device.kind, Radio | Intercom | AccessController));
    for device in entrances {
        let named = |remote: &Remote| remote.through.as_ref() == Some(&device.id);
        if !moves_nothing(device) && !site.remote.iter().any(named) {
            written = asking.lack(&device.origin, "remote", Wants::Table(REMOTE));
        }
    }
    written
}

fn moves_nothing(device: &Device) -> bool {
    let nothing = |command: &site::Command| command.what == CommandKind::Nothing;
    !device.does.is_empty() && device.does.iter().all(nothing)
}

/// One way, as it is said, and whether it works with nobody watching.
struct Way {
    said: String,
    unwatched: bool,
}

fn way<'s>(asking: &mut Asking<'s>, remote: &'s Remote) -> Result<Way, Halt> {
    let holder = asking.need(
        &remote.origin,
        "holder",
        remote.holder.as_ref(),
        "\"two drivers of the yard\"",
    );
    let view = pick!(asking, remote.view);
    let does = asking.need(&remote.origin, "does", remote.does.first(), "[\"open\"]");
    let carried = remote.by == RemoteKind::Fob;
    let from = if carried {
        read!(asking, remote.works_from).map(Some)
    } else {
        Ok(None)
    };
    let (holder, view, _, from) = (holder?, view?, does?, from?);
    let print = asking.print();
    let reach = from.map_or_else(String::new, |from| {
        format!(", from as far as {}", print.q(from))
    });
    let nothing = remote.does.iter().all(|what| *what == CommandKind::Nothing);
    Ok(Way {
        said: format!("{} ({holder}{reach})", remote.by.word()),
        unwatched: view != GateView::Whole && !nothing,
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
        name = "Test court"
        code_basis = "eu"
        use_type = "3"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        inherent_sensing = true
        [[device]]
        id = "receiver"
        kind = "radio"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
        monitored = true
        [[remote]]
        id = "fobs"
        by = "fob"
        through = "receiver"
        does = ["open", "close"]
        holder = "two drivers"
        view = "not in view"
        works_from = "80 m"
    "#;

    #[test]
    fn holds_where_it_is_protected_as_automatic() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("two drivers"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_nothing_that_sees_people() {
        let blind = SITE.replace("guards = [\"closing\"]", "guards = [\"opening\"]");
        let finding = only(&CHECK, &blind);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let watched = blind.replace("not in view", "whole gate in view");
        assert_eq!(only(&CHECK, &watched).verdict, Verdict::Holds);
        let by_camera = blind.replace("not in view", "by camera");
        assert_eq!(only(&CHECK, &by_camera).verdict, Verdict::Fails);
    }

    #[test]
    fn in_the_united_states_the_means_are_counted() {
        let us = SITE
            .replace("\"eu\"", "\"us\"\nprotection_code = \"UL 325 from 2018\"")
            .replace(
                "inherent_sensing = true",
                "inherent_sensing = true\nmonitors_devices = true",
            );
        let finding = only(&CHECK, &us);
        assert_eq!(
            finding.verdict,
            Verdict::Fails,
            "opening has one means only: {}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_every_receiver_says_what_it_lets_in() {
        let none = SITE.split("[[remote]]").next().unwrap();
        let finding = only(&CHECK, none);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let link = none.replace(
            "kind = \"radio\"",
            "kind = \"radio\"\ndoes = [{ what = \"nothing\" }]",
        );
        assert_eq!(only(&CHECK, &link).verdict, Verdict::Holds);
    }
}
