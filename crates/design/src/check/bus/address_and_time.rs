//! Whether each device on a bus has an address of its own, and how long a driver waits from card to click.
//!
//! The controller asks one device after the other. The worst wait is that of a card held up just after its reader was
//! asked, while every other device has a card to tell of; or the set time between two questions, where that is longer.

use super::{asks, nodes};
use crate::asking::{Asking, Wants, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::and;
use crate::subject::About;
use formula::signal::{BusPoll, Channel, OsdpFrame};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Time};
use site::{Bus, Device, Offline, SecureChannel, Site};
use std::collections::BTreeMap;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-address-and-time",
    codes: BOTH,
    leaves_open: "messages that are lost and asked again, commands for lamps and sounders between the questions, and card numbers of more than 64 bits",
    concerns: "each bus",
    ask,
};

static ADDRESSES: Source = Source {
    work: "SIA OSDP v2.2: addresses 0 to 126, an answer within 200 ms",
    clause: "",
    evidence: Evidence::Seen,
    seen: "public introduction to the protocol with excerpts, https://doc.osdp.dev/protocol/introduction",
};

static STANDS: Source = Source {
    work: "a driver stands about a second from card to click",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "after half a second people hold the card up again",
};

/// Greatest address of a device.
const GREATEST: u32 = 126;
/// Longest that a device may take to answer, in seconds.
const ANSWERS: f64 = 0.2;
/// Longest that a driver stands, in seconds.
const STANDS_FOR: f64 = 1.0;
/// Characters of an answer with a card number of 64 bits: reader, format, two for the count of bits, eight.
const CARD: u32 = 12;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for bus in &site.bus {
        round.ask(About::new(&bus.origin, &bus.id), |asking| {
            waits(asking, site, bus)
        });
    }
}

/// What is known of one device that is asked.
pub(crate) struct Asked<'s> {
    device: &'s Device,
    address: u32,
    secure: bool,
    reply_time: Time,
    opens_alone: bool,
}

fn waits<'s>(asking: &mut Asking<'s>, site: &'s Site, bus: &'s Bus) -> Answer {
    let rate = pick!(asking, bus.bit_rate);
    let decision = read!(asking, bus.decision_time);
    let all = all_asked(asking, site, bus)?;
    let (rate, decision) = (rate?, decision?);
    asking.rest_on(&ADDRESSES);
    asking.rest_on(&STANDS);
    let mut rules = Rules::default();
    addresses(&mut rules, &all);
    rules.compare(Comparison::at_most(
        Labeled::new("slowest answer of a device", slowest(&all)),
        Labeled::new(
            "longest that the controller waits",
            Time::from_base(ANSWERS),
        ),
    ));
    for asked in all.iter().filter(|asked| asked.opens_alone) {
        rules.keep(false, &format!(
            "While its controller is silent, {} lets everybody in: cutting one wire opens the gate. Set it to refuse.",
            asked.device.id
        ));
    }
    let turn = turns(asking, bus, &all, rate)?.longest;
    let wait = turn + decision;
    rules.compare(Comparison::at_most(
        Labeled::new("from card to click with all readers busy", wait),
        Labeled::new("what a driver stands", Time::from_base(STANDS_FOR)),
    ));
    asking.say(|print| {
        rules.says(|| {
            let names: Vec<String> = all
                .iter()
                .map(|asked| format!("{} {}", asked.device.id, asked.address))
                .collect();
            format!(
                "Addresses: {}. From card to click {} at the worst: {} until it is asked, {} for the controller.",
                and(&names),
                print.q(wait),
                print.q(turn),
                print.q(decision)
            )
        })
    });
    Ok(rules.outcome())
}

/// Times of the bus as its devices are asked in turn.
pub(crate) struct Turns {
    /// One device asked, with nothing to tell.
    pub(crate) quiet: Time,
    /// All devices asked, with nothing to tell.
    pub(crate) quiet_round: Time,
    /// The longest that a card waits until it is asked for.
    pub(crate) longest: Time,
}

/// The times of a bus with these devices.
pub(crate) fn turns<'s>(
    asking: &mut Asking<'s>,
    bus: &'s Bus,
    all: &[Asked<'s>],
    bit_rate: u32,
) -> Result<Turns, Halt> {
    let period = asking.read_if_there(&bus.origin, "poll_period", bus.poll_period.as_ref());
    let secure = all.iter().any(|asked| asked.secure);
    let channel = if secure {
        Channel::Secure
    } else {
        Channel::Clear
    };
    let question = asking.work(&OsdpFrame { data: 0, channel })?.characters;
    let card_answer = asking
        .work(&OsdpFrame {
            data: CARD,
            channel,
        })?
        .characters;
    let times = asking.work(&BusPoll {
        bit_rate,
        devices: u32::try_from(all.len()).unwrap_or(u32::MAX),
        question,
        quiet_answer: question,
        card_answer,
        reply_time: slowest(all),
    })?;
    let longest = match period {
        Some(period) if period + times.card > times.busy_round => period + times.card,
        _ => times.busy_round,
    };
    Ok(Turns {
        quiet: times.quiet,
        quiet_round: times.quiet_round,
        longest,
    })
}

fn slowest(all: &[Asked<'_>]) -> Time {
    let times = all.iter().map(|asked| asked.reply_time.base());
    Time::from_base(times.fold(0.0, f64::max))
}

/// The devices of a bus that are asked.
pub(crate) fn all_asked<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    bus: &'s Bus,
) -> Result<Vec<Asked<'s>>, Halt> {
    let all: Vec<_> = nodes(asking, site, bus)?
        .into_iter()
        .filter(|(_, device)| !asks(device))
        .map(|(_, device)| asked(asking, device))
        .collect();
    all.into_iter().collect()
}

/// Each address once, and none that cannot be.
fn addresses(rules: &mut Rules, all: &[Asked<'_>]) {
    let mut by_address: BTreeMap<u32, Vec<String>> = BTreeMap::new();
    for asked in all {
        let here = by_address.entry(asked.address).or_default();
        here.push(asked.device.id.to_string());
    }
    let free = (0..=GREATEST).find(|address| !by_address.contains_key(address));
    for (address, devices) in &by_address {
        rules.keep(
            *address <= GREATEST,
            &format!(
                "{} has address {address}; addresses go from 0 to {GREATEST}.",
                and(devices)
            ),
        );
        rules.keep(devices.len() < 2, &format!(
            "{} share address {address} and answer at once: give one of them another, such as {}.",
            and(devices),
            free.unwrap_or(0)
        ));
    }
}

/// How a data line is written.
const LINE: &str = "data_line = { speaks = \"OSDP\", address = 0, secure_channel = \"site key\", offline = \"refuses\" }";

fn asked<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Asked<'s>, Halt> {
    let reply_time = read!(asking, device.data_port?.reply_time);
    let Some(line) = &device.data_line else {
        return asking.lack(&device.origin, "data_line", Wants::Table(LINE));
    };
    let address = pick!(asking, line.address);
    let channel = pick!(asking, line.secure_channel);
    let offline = pick!(asking, line.offline);
    Ok(Asked {
        device,
        address: address?,
        secure: channel? != SecureChannel::Off,
        reply_time: reply_time?,
        opens_alone: offline? == Offline::Opens,
    })
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
        id = "controller"
        kind = "access controller"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false }
        [[device]]
        id = "reader"
        kind = "reader"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false, reply_time = "3 ms" }
        data_line = { speaks = "OSDP", address = 0, secure_channel = "site key", offline = "refuses" }
        [[device]]
        id = "keypad"
        kind = "keypad"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false, reply_time = "3 ms" }
        data_line = { speaks = "OSDP", address = 1, secure_channel = "site key", offline = "refuses" }
        [[cable]]
        id = "w-01"
        carries = "signal"
        from = "controller"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "104 °F"
        length = "126 ft"
        [[bus]]
        id = "readers"
        cable = ["w-01"]
        bit_rate = 9600
        impedance = "100 Ω ± 10 %"
        velocity = "0.66"
        bias_voltage = "5 V ± 5 %"
        decision_time = "150 ms"
        poll_period = "100 ms"
        [[bus.node]]
        device = "controller"
        along = "0 ft"
        stub = "0 ft"
        termination = "120 Ω ± 5 %"
        bias = "470 Ω ± 5 %"
        [[bus.node]]
        device = "keypad"
        along = "123 ft"
        stub = "2 ft"
        [[bus.node]]
        device = "reader"
        along = "126 ft ± 3 ft"
        stub = "0 ft"
        termination = "120 Ω ± 5 %"
    "#;

    #[test]
    fn holds_with_an_address_each() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_two_on_one_address_and_says_which_is_free() {
        let finding = only(&CHECK, &SITE.replace("address = 1", "address = 0"));
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding
                .sentence
                .contains("keypad and reader share address 0")
                && finding.sentence.contains("such as 1"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_when_slow_or_open_alone() {
        for (from, to) in [
            ("poll_period = \"100 ms\"", "poll_period = \"1 s\""),
            ("bit_rate = 9600", "bit_rate = 300"),
            (
                "offline = \"refuses\" }\n        [[cable",
                "offline = \"opens\" }\n        [[cable",
            ),
            ("address = 1", "address = 127"),
            ("reply_time = \"3 ms\"", "reply_time = \"250 ms\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_an_address() {
        let finding = only(&CHECK, &SITE.replace(" address = 1,", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
