//! Whether anybody with access to the wires can listen to a reader, or put another in its place.

use super::is_reader;
use super::line::on_a_line;
use crate::asking::{Asking, Wants, pick};
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::Answer;
use crate::subject::About;
use formula::{Evidence, Source};
use site::{DataLine, Device, SecureChannel, Site, Speaks};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-secure-channel",
    codes: BOTH,
    leaves_open: "who knows the key and where it is written down, cards that can be copied, and what a reader on the network does",
    concerns: "each reader and keypad that commands a gate",
    ask,
};

static CHANNEL: Source = Source {
    work: "SIA OSDP secure channel: a default key that everybody knows serves only to set the key of the site",
    clause: "",
    evidence: Evidence::Seen,
    seen: "documentation of a public open-source library for the protocol",
};

/// How a data line is written.
const LINE: &str = "data_line = { speaks = \"OSDP\", secure_channel = \"site key\", insists = true, install_mode = false }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let commands = |device: &&Device| {
        is_reader(device) && (!device.does.is_empty() || on_a_line(site, device).is_some())
    };
    for device in site.device.iter().filter(commands) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let Some(line) = &device.data_line else {
                return asking.lack(&device.origin, "data_line", Wants::Table(LINE));
            };
            secure(asking, device, line)
        });
    }
}

fn secure<'s>(asking: &mut Asking<'s>, device: &'s Device, line: &'s DataLine) -> Answer {
    asking.rest_on(&CHANNEL);
    let mut rules = Rules::default();
    match pick!(asking, line.speaks)? {
        Speaks::TwoDataLines => rules.keep(false, &format!(
            "{} speaks in the clear over two data lines: whoever gets at its wires reads every card, and plays it back. Take a reader with a secure channel.",
            device.id
        )),
        Speaks::Network => {
            return asking.refuse("how a reader on the network is encrypted is not in this tool");
        }
        Speaks::Osdp => {
            let channel = pick!(asking, line.secure_channel);
            let insists = told(asking, &line.origin, "insists", line.insists);
            let install = told(asking, &line.origin, "install_mode", line.install_mode);
            let (channel, insists, install) = (channel?, insists?, install?);
            rules.keep(channel != SecureChannel::Off, &format!(
                "{} speaks in the clear: switch its secure channel on and set a key of this site.",
                device.id
            ));
            rules.keep(channel != SecureChannel::DefaultKey, &format!(
                "{} still has the key from the works, which everybody knows: set a key of this site.",
                device.id
            ));
            rules.keep(insists, &format!(
                "The controller takes {} without its secure channel as well, so another reader in its place is believed: require it.",
                device.id
            ));
            rules.keep(!install, &format!(
                "{} still takes a key from whoever asks: switch its install mode off.",
                device.id
            ));
        }
    }
    asking.say(|_| {
        rules.says(|| {
            format!(
                "{} speaks in a secure channel with a key of this site, and its controller insists on it.",
                device.id
            )
        })
    });
    Ok(rules.outcome())
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
        [[device]]
        id = "reader"
        kind = "reader"
        does = [{ what = "open", contact = "message" }]
        data_line = { speaks = "OSDP", secure_channel = "site key", insists = true, install_mode = false }
    "#;

    #[test]
    fn holds_with_a_key_of_the_site() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_in_the_clear_with_the_default_key_and_in_install_mode() {
        for (from, to) in [
            ("site key", "default key"),
            ("site key", "off"),
            ("OSDP", "two data lines"),
            ("insists = true", "insists = false"),
            ("install_mode = false", "install_mode = true"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_its_line() {
        let finding = only(&CHECK, &SITE.replace(" secure_channel = \"site key\",", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
    }
}
