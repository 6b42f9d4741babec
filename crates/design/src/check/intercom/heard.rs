//! Whether caller and answerer hear each other over an engine, rain and wind.
//!
//! The loudspeaker has to stand above the noise at the caller's ear, and the caller's voice above the noise at the
//! microphone, at the farthest that anybody speaks from. Levels fall by six decibels for each doubling of the distance.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Labeled};
use crate::subject::About;
use formula::signal::SoundLevel;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Time};
use site::{Device, DeviceKind, Site, Speech};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "intercom-heard",
    codes: BOTH,
    leaves_open: "what the line, its codec and the loudspeaker at the other end make of a voice, hearing that is not what it was, and a window that stays shut",
    concerns: "each intercom",
    ask,
};

static OVER_NOISE: Source = Source {
    work: "speech has to stand 6 dB above noise at the least",
    clause: "",
    evidence: Evidence::Seen,
    seen: "http://public-address-info.co.uk/Sound%20Pressure%20Levels%20&%20Ambient%20Noise%20.html, and a retelling of Moore, An Introduction to the Psychology of Hearing, 1997; ISO 9921 was not at hand",
};

static DELAY: Source = Source {
    work: "ITU-T G.114 (05/2003): up to 150 ms one way disturbs no talk",
    clause: "",
    evidence: Evidence::Seen,
    seen: "https://en.wikipedia.org/wiki/G.114 and https://studylib.net/doc/9049394",
};

/// Speech above noise, in decibels.
const ABOVE: u32 = 6;
/// Longest delay from lips to ear, in seconds.
const LONGEST_DELAY: f64 = 0.15;

/// How the sound of a station is written.
const SPEECH: &str = "speech = { speaker_decibels = 90, distance = \"3 ft\", noise_decibels = 70, microphone_noise_decibels = 62, voice_decibels = 66, delay = \"120 ms\", echo_free = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let stations = site
        .device
        .iter()
        .filter(|device| device.kind == DeviceKind::Intercom);
    for device in stations {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let Some(speech) = &device.speech else {
                return asking.lack(&device.origin, "speech", Wants::Table(SPEECH));
            };
            heard(asking, device, speech)
        });
    }
}

fn heard<'s>(asking: &mut Asking<'s>, device: &'s Device, speech: &'s Speech) -> Answer {
    let speaker = pick!(asking, speech.speaker_decibels);
    let voice = pick!(asking, speech.voice_decibels);
    let noise = pick!(asking, speech.noise_decibels);
    let behind = pick!(asking, speech.microphone_noise_decibels);
    let distance = read!(asking, speech.distance);
    let delay = read!(asking, speech.delay);
    let echo = told(asking, &speech.origin, "echo_free", speech.echo_free);
    let (speaker, voice, noise, behind) = (speaker?, voice?, noise?, behind?);
    let (distance, delay, echo) = (distance?, delay?, echo?);
    asking.rest_on(&OVER_NOISE);
    asking.rest_on(&DELAY);
    let at_ear = asking
        .work(&SoundLevel {
            at_one_meter: speaker,
            distance,
        })?
        .level;
    let at_microphone = asking
        .work(&SoundLevel {
            at_one_meter: voice,
            distance,
        })?
        .level;
    let mut rules = Rules::default();
    rules.keep(echo, &format!(
        "{} echoes or howls at the volume that is set: turn it down, part microphone and loudspeaker, or let it switch sides.",
        device.id
    ));
    rules.compare(Comparison::at_most(
        Labeled::new(
            "noise at the caller's ear and 6 dB",
            noise.saturating_add(ABOVE),
        ),
        Labeled::new("loudspeaker at the caller's ear, dB", at_ear),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new(
            "noise at the microphone and 6 dB",
            behind.saturating_add(ABOVE),
        ),
        Labeled::new("caller's voice at the microphone, dB", at_microphone),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("delay from lips to ear", delay),
        Labeled::new(
            "longest that disturbs no talk",
            Time::from_base(LONGEST_DELAY),
        ),
    ));
    asking.say(|print| {
        rules.says(|| {
            format!(
                "From {} away, {} is heard with {at_ear} dB over {noise} dB of noise, and hears {at_microphone} dB over {behind} dB; speech takes {} to the other end.",
                print.q(distance),
                device.id,
                print.q(delay)
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
        id = "intercom"
        kind = "intercom"
        speech = { speaker_decibels = 92, distance = "3 ft", noise_decibels = 72, microphone_noise_decibels = 60, voice_decibels = 68, delay = "120 ms", echo_free = true }
    "#;

    #[test]
    fn holds_over_an_idling_engine() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_from_a_high_cab_with_delay_and_echo() {
        for (from, to) in [
            ("\"3 ft\"", "\"8 ft\""),
            ("120 ms", "400 ms"),
            ("echo_free = true", "echo_free = false"),
            ("noise_decibels = 72", "noise_decibels = 90"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_noise() {
        let finding = only(&CHECK, &SITE.replace(" noise_decibels = 72,", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
