//! Whether a data cable is short enough for its signals, its cords and its heat counted, or wants fiber.
//!
//! Heat and stranded cords make copper lose more, which shortens what is left for the run. Three lengths count: the fixed
//! cable at its hottest, the whole channel as cable at 20 °C, and the channel as it is taped. An extender divides a long way
//! into two channels, each a cable of its own here; what the extender takes is counted with the power over the cable.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::network::{is_data, is_fiber, is_gear};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{ChannelLength, ChannelLengths, PairScreen};
use formula::{Evidence, Source};
use quantity::{ConductorSize, Length, Quantity as _, Ratio};
use site::{Cable, Device, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-length",
    codes: BOTH,
    leaves_open: "connectors of a lower category, kinks and water in the cable, and the loss budget of a fiber link, which its modules' sheets give",
    concerns: "each data cable that ends at a switch, an injector, an extender or a router",
    ask,
};

static CHANNEL: Source = Source {
    work: "ANSI/TIA-568, ISO/IEC 11801",
    clause: "channel of 100 m: 90 m of fixed cable and 10 m of cords",
    evidence: Evidence::Seen,
    seen: "common to several cabling pages seen",
};

static THIN_CORDS: Source = Source {
    work: "ANSI/TIA-568",
    clause: "cords of 26 AWG lose 50 % more than fixed cable",
    evidence: Evidence::Memory,
    seen: "",
};

static FIBER: Source = Source {
    work: "fiber carries the rates of a gate over kilometers",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "data sheets of fiber modules",
};

/// Lengths of the standard, in meters: the channel as taped, and as fixed cable at 20 °C.
const TAPED: f64 = 100.0;
const GROWN: f64 = 102.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let gear = |name: &Id| site.device.iter().any(|it| it.id == *name && is_gear(it));
    for cable in site.cable.iter().filter(|cable| is_data(cable)) {
        if gear(&cable.from) || gear(&cable.to) {
            round.ask(About::new(&cable.origin, &cable.id), |asking| {
                long(asking, site, cable)
            });
        }
    }
}

fn long<'s>(asking: &mut Asking<'s>, site: &'s Site, cable: &'s Cable) -> Answer {
    if is_fiber(cable) {
        asking.rest_on(&FIBER);
        let length = read!(asking, cable.length)?;
        asking.say(|print| {
            format!(
                "Cable {} is {} of fiber: the length of copper does not bind it.",
                cable.id,
                print.q(length)
            )
        });
        return Ok(Outcome::Rule(true));
    }
    if cable.size.is_none() {
        pick!(asking, cable.channel?.medium)?;
    }
    asking.rest_on(&CHANNEL);
    let channel = channel(asking, cable)?;
    let lengths = asking.work(&channel)?;
    let taped = channel.run + channel.cords;
    let compared = compared(&channel, &lengths, taped);
    let short = compared.iter().all(Comparison::holds);
    asking.say(|print| {
        let mend = if short {
            String::new()
        } else {
            format!("; {}", mend(site, cable, &print.q(lengths.longest_run)))
        };
        format!(
            "Cable {} is {}, with its cords {}; as hot as it gets, its signals have {} of cable at 20 °C before them, and a channel has {}{mend}.",
            cable.id,
            print.q(channel.run),
            print.q(taped),
            print.q(lengths.grown_channel),
            print.q(Length::from_base(GROWN))
        )
    });
    Outcome::worst(compared).ok_or(Halt)
}

fn compared(channel: &ChannelLength, lengths: &ChannelLengths, taped: Length) -> [Comparison; 3] {
    [
        Comparison::at_most(
            Labeled::new("length of the fixed cable", channel.run),
            Labeled::new("longest fixed cable at this heat", lengths.longest_run),
        ),
        Comparison::at_most(
            Labeled::new("channel as cable at 20 °C", lengths.grown_channel),
            Labeled::new("longest channel at 20 °C", Length::from_base(GROWN)),
        ),
        Comparison::at_most(
            Labeled::new("length with cords", taped),
            Labeled::new("length of a channel", Length::from_base(TAPED)),
        ),
    ]
}

/// What would mend a channel that is too long.
fn mend(site: &Site, cable: &Cable, longest: &str) -> String {
    let end = |name: &Id| site.device.iter().find(|device| device.id == *name);
    let powered = |device: &&Device| device.poe_class.is_some() && !is_gear(device);
    match [end(&cable.to), end(&cable.from)]
        .into_iter()
        .flatten()
        .find(powered)
    {
        Some(device) => format!(
            "copper reaches {longest} here: screened or cooler cable, fiber with a supply at {}, or an extender on the way whose own power the port gives too",
            device.id
        ),
        None => format!("copper reaches {longest} here: pull fiber"),
    }
}

fn channel<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<ChannelLength, Halt> {
    let run = read!(asking, cable.length);
    let temperature = read!(asking, cable.hottest);
    let cords = cords(asking, cable);
    let screened = cable
        .channel
        .as_ref()
        .is_some_and(|channel| channel.screened == Some(true));
    let (cords, extra_loss) = cords?;
    Ok(ChannelLength {
        run: run?,
        temperature: temperature?,
        screen: if screened {
            PairScreen::Screened
        } else {
            PairScreen::Unscreened
        },
        cords,
        extra_loss,
    })
}

/// Length of the cords and how much more they lose.
fn cords<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<(Length, Ratio), Halt> {
    const CORDS: &str = "[cable.cords]\nlength = \"6 ft\"\nsize = \"24 AWG\"";
    let Some(cords) = &cable.cords else {
        return asking.lack(&cable.origin, "cords", Wants::Table(CORDS));
    };
    let length = read!(asking, cords.length)?;
    if length.base() <= 0.0 {
        return Ok((length, Ratio::from_base(0.0)));
    }
    let extra = match pick!(asking, cords.size)? {
        ConductorSize::Gauge(size) if size.number() <= 24 => 0.2,
        ConductorSize::Gauge(size) if size.number() <= 26 => {
            asking.rest_on(&THIN_CORDS);
            0.5
        }
        _ => return asking.refuse("no extra loss is printed for cords of this size"),
    };
    Ok((length, Ratio::from_base(extra)))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[device]]
        id = "switch"
        kind = "network switch"
        [[device]]
        id = "camera"
        kind = "camera"
        poe_class = "3"
        [[cable]]
        id = "w-01"
        carries = "data"
        from = "switch"
        to = "camera"
        size = "23 AWG"
        hottest = "40 °C"
        length = "80 m ± 1 m"
        [cable.channel]
        medium = "copper"
        screened = false
        [cable.cords]
        length = "3 m"
        size = "24 AWG"
    "#;

    #[test]
    fn holds_while_short_and_cool() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_when_too_warm_and_says_what_would_mend_it() {
        let warm = only(&CHECK, &SITE.replace("40 °C", "55 °C"));
        assert_eq!(warm.verdict, Verdict::Fails, "{}", warm.sentence);
        assert!(
            warm.sentence.contains("fiber with a supply at camera"),
            "{}",
            warm.sentence
        );
        let screened = SITE
            .replace("40 °C", "55 °C")
            .replace("screened = false", "screened = true");
        assert_eq!(only(&CHECK, &screened).verdict, Verdict::Holds);
        let cords = only(&CHECK, &SITE.replace("\"3 m\"", "\"18 m\""));
        assert_eq!(cords.verdict, Verdict::Fails, "{}", cords.sentence);
    }

    #[test]
    fn fiber_is_not_bound_by_it() {
        let fiber = SITE
            .replace("80 m", "400 m")
            .replace("\"copper\"", "\"fiber\"");
        assert_eq!(only(&CHECK, &fiber).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_its_cords_and_with_thin_ones_from_memory() {
        let bare = SITE
            .replace("[cable.cords]", "")
            .replace("length = \"3 m\"\n        size = \"24 AWG\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
        let thin = only(&CHECK, &SITE.replace("24 AWG", "26 AWG"));
        assert_eq!(thin.verdict, Verdict::UnknownUntil, "{}", thin.sentence);
    }
}
