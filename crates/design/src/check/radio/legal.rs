//! Whether band, power and antenna of each radio are allowed, and whether it shares the air with something that must not be
//! disturbed.
//!
//! Power counts as the band counts it: at the socket, over an even antenna, or over a dipole. Hand remotes in the United
//! States go by the field strength at 3 m. Who else uses the band has to be asked and written down.

use super::ends::{device, ends, frequency};
use crate::asking::{Asking, need, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{
    ControlSignalLimit, CountedAt, EirpOfFieldStrength, RadiatedPower, RadiatedPowers, RadioBand,
    radio_bands,
};
use formula::{Evidence, Source};
use quantity::{Frequency, Gain, Length, Power, Quantity as _, Ratio};
use site::{CodeBasis, RadioEnd, RadioLink, RadioLinkKind, Remote, RemoteKind, RemoteRadio, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "radio-legal",
    codes: BOTH,
    leaves_open: "what the maker declares of bandwidth, spurious waves, automatic choice of channels and type approval, national departures, and changes of the rules since",
    concerns: "each radio bridge, and each hand remote",
    ask,
};

static US: Source = Source {
    work: "47 CFR 15.247(b) and 15.249(a)",
    clause: "1 W at the socket with 6 dB of antenna; 50 mV/m at 3 m",
    evidence: Evidence::Seen,
    seen: "two public threads that quote 15.247; CFR of 2000 at gpo.gov for 15.249",
};

static US_RECALLED: Source = Source {
    work: "47 CFR 15.255",
    clause: "57 to 71 GHz",
    evidence: Evidence::Memory,
    seen: "not seen; from memory",
};

static EU: Source = Source {
    work: "ERC/REC 70-03, EN 300 328 and ECC/DEC/(04)08",
    clause: "868 MHz, 2.4 GHz and 5 GHz",
    evidence: Evidence::Seen,
    seen: "European database rows, a national table note, a national order in an equipment manual (maker withheld), the decision's text on a public mailing list",
};

static EU_RECALLED: Source = Source {
    work: "ERC/REC 70-03 annex 1 at 433 MHz, and EN 302 567",
    clause: "duty of 10 % at 433 MHz; 40 dBm at 57 to 71 GHz",
    evidence: Evidence::Memory,
    seen: "power at 433 MHz seen in an annex extract, the rest from memory",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let bridges = site.radio_link.iter();
    for link in bridges.filter(|link| link.kind == RadioLinkKind::Bridge) {
        round.ask(About::new(&link.origin, &link.id), |asking| {
            bridge(asking, site, link)
        });
    }
    for remote in site
        .remote
        .iter()
        .filter(|remote| remote.by == RemoteKind::Fob)
    {
        round.ask(About::new(&remote.origin, &remote.id), |asking| {
            fob(asking, site, remote)
        });
    }
}

fn bridge<'s>(asking: &mut Asking<'s>, site: &'s Site, link: &'s RadioLink) -> Answer {
    let frequency = frequency(asking, site, link);
    let neighbors = need!(asking, link.neighbors, "\"nobody; scanned 2026-05-02\"");
    let sent = ends(asking, link).and_then(|[near, far]| {
        let near = radiated(asking, near);
        let far = radiated(asking, far);
        Ok([near?, far?])
    });
    let (frequency, neighbors, sent) = (frequency?, neighbors?, sent?);
    let Some(band) = band(asking, site, (frequency, "link"))? else {
        return no_band(asking, frequency);
    };
    let duty = duty(asking, band, |asking| read!(asking, link.on_air))?;
    let stronger = sent
        .into_iter()
        .max_by(|one, other| one.0.even.base().total_cmp(&other.0.even.base()));
    let Some((power, gain)) = stronger else {
        return Err(Halt);
    };
    judge(asking, band, (power, gain), (duty, neighbors.as_str()))
}

fn radiated<'s>(
    asking: &mut Asking<'s>,
    end: &'s RadioEnd,
) -> Result<(RadiatedPowers, Gain), Halt> {
    let power = read!(asking, end.power);
    let antenna_gain = read!(asking, end.antenna_gain);
    let cable_loss = read!(asking, end.cable_loss);
    let (power, antenna_gain, cable_loss) = (power?, antenna_gain?, cable_loss?);
    let powers = asking.work(&RadiatedPower {
        power,
        cable_loss,
        antenna_gain,
    })?;
    Ok((powers, antenna_gain))
}

/// How the radio of a hand remote is written.
pub(super) const REMOTE_RADIO: &str = "{ radiated = \"-18 dBm\", tired_loss = \"3 dB\", wanted = \"60 ft\", seen_from = \"250 ft\", tired_works_from = \"140 ft\", on_air = \"0.1 %\", neighbors = \"none heard, 2026-05-02\" }";

fn fob<'s>(asking: &mut Asking<'s>, site: &'s Site, remote: &'s Remote) -> Answer {
    let radio = asking.need(&remote.origin, "radio", remote.radio.as_ref(), REMOTE_RADIO);
    let frequency = heard_at(asking, site, remote);
    let radio: &RemoteRadio = radio?;
    let level = read!(asking, radio.radiated);
    let neighbors = need!(asking, radio.neighbors, "\"none heard, 2026-05-02\"");
    let (frequency, level, neighbors) = (frequency?, level?, neighbors?);
    let even = Gain::from_base(0.0);
    let powers = asking.work(&RadiatedPower {
        power: level,
        cable_loss: even,
        antenna_gain: even,
    })?;
    let control = (260e6..=470e6).contains(&frequency.base());
    if site.site.code_basis == CodeBasis::Us && control {
        return control_signal(asking, frequency, (powers.even, neighbors.as_str()));
    }
    let Some(band) = band(asking, site, (frequency, "remote"))? else {
        return no_band(asking, frequency);
    };
    let duty = duty(asking, band, |asking| read!(asking, radio.on_air))?;
    judge(asking, band, (powers, even), (duty, neighbors.as_str()))
}

/// The frequency of the receiver through which a remote comes in.
pub(super) fn heard_at<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    remote: &'s Remote,
) -> Result<Frequency, Halt> {
    let through = need!(asking, remote.through, "\"receiver-remote\"")?;
    match device(site, through) {
        Some(device) => read!(asking, device.frequency),
        None => Err(Halt),
    }
}

fn control_signal<'s>(
    asking: &mut Asking<'s>,
    frequency: Frequency,
    (power, neighbors): (Power, &'s str),
) -> Answer {
    let fields = asking.work(&ControlSignalLimit { frequency })?;
    let limit = asking.work(&EirpOfFieldStrength {
        field: fields.control,
        distance: Length::from_base(3.0),
    })?;
    asking.say(|print| {
        format!(
            "At {} a hand remote may make {} at 3 m, which is {} radiated; it radiates {}. On the band: {neighbors}.",
            print.q(frequency),
            print.q(fields.control),
            print.q(limit.power),
            print.q(power)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("radiated power", power),
        Labeled::new("power that is allowed", limit.power),
    ))
}

/// The band around a frequency that is open to this use.
fn band<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (frequency, use_): (Frequency, &str),
) -> Result<Option<RadioBand>, Halt> {
    let us = site.site.code_basis == CodeBasis::Us;
    let code = if us { "us" } else { "eu" };
    let bands = asking.in_reach(radio_bands(code, use_, frequency))?;
    let open = |band: &RadioBand| !band.alarms_only && !band.indoors_only;
    let band = bands.into_iter().find(open);
    let seen = band.is_none_or(|band| band.seen);
    asking.rest_on(match (us, seen) {
        (true, true) => &US,
        (true, false) => &US_RECALLED,
        (false, true) => &EU,
        (false, false) => &EU_RECALLED,
    });
    Ok(band)
}

#[allow(
    clippy::unnecessary_wraps,
    reason = "it stands where an answer is asked for"
)]
fn no_band(asking: &mut Asking<'_>, frequency: Frequency) -> Answer {
    asking.say(|print| {
        format!(
            "At {} no band that is known here is open to this outdoors without a license; choose another channel, or show the license.",
            print.q(frequency)
        )
    });
    Ok(Outcome::Rule(false))
}

/// The share of an hour in which it sends, where the band limits that.
fn duty<'s>(
    asking: &mut Asking<'s>,
    band: RadioBand,
    read: impl FnOnce(&mut Asking<'s>) -> Result<Ratio, Halt>,
) -> Result<Option<Ratio>, Halt> {
    if band.duty.base() < 1.0 {
        read(asking).map(Some)
    } else {
        Ok(None)
    }
}

fn judge<'s>(
    asking: &mut Asking<'s>,
    band: RadioBand,
    (powers, gain): (RadiatedPowers, Gain),
    (duty, neighbors): (Option<Ratio>, &'s str),
) -> Answer {
    let (counted, limit, how) = match band.counted {
        CountedAt::Even => (powers.even, band.power, "radiated (EIRP)"),
        CountedAt::Dipole => (powers.dipole, band.power, "radiated over a dipole (ERP)"),
        CountedAt::Socket => (
            powers.even,
            band.power * 10f64.powf(gain.base().min(6.0) / 10.0),
            "radiated (EIRP)",
        ),
    };
    asking.say(|print| {
        let sends = duty.map_or_else(String::new, |duty| {
            format!(
                " It sends {} of an hour, and may {}.",
                print.percent(duty),
                print.percent(band.duty)
            )
        });
        format!(
            "{} are {how}, and {} from {} to {} allow {}.{sends} On the band: {neighbors}.",
            print.q(counted),
            band.rule,
            print.q(band.low),
            print.q(band.high),
            print.q(limit)
        )
    });
    let power = Comparison::at_most(
        Labeled::new("radiated power", counted),
        Labeled::new("power that is allowed", limit),
    );
    let time = duty.map(|duty| {
        Comparison::at_most(
            Labeled::new("share of an hour on the air", duty),
            Labeled::new("share that is allowed", band.duty),
        )
    });
    Outcome::worst([power].into_iter().chain(time)).ok_or(Halt)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const FOB: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[device]]
        id = "receiver"
        kind = "radio"
        frequency = "868.3 MHz"
        [[remote]]
        id = "fobs"
        by = "fob"
        through = "receiver"
        radio = { radiated = "10 dBm", on_air = "0.1 %", neighbors = "none heard" }
    "#;

    const BRIDGE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[device]]
        id = "bridge"
        kind = "radio"
        frequency = "5.6 GHz"
        [[radio_link]]
        id = "house"
        kind = "bridge"
        neighbors = "none"
        near = { device = "bridge", power = "14 dBm", antenna_gain = "14 dBi", cable_loss = "0 dB" }
        far = { power = "14 dBm", antenna_gain = "14 dBi", cable_loss = "0 dB" }
    "#;

    #[test]
    fn holds_within_the_band() {
        for site in [FOB, BRIDGE] {
            let finding = only(&CHECK, site);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_with_too_much_power_too_long_or_indoors_only() {
        for (site, from, to) in [
            (FOB, "10 dBm", "20 dBm"),
            (FOB, "0.1 %", "5 %"),
            (BRIDGE, "5.6 GHz", "5.2 GHz"),
            (
                BRIDGE,
                "power = \"14 dBm\", antenna_gain = \"14 dBi\"",
                "power = \"20 dBm\", antenna_gain = \"14 dBi\"",
            ),
        ] {
            let finding = only(&CHECK, &site.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_by_memory_and_until_the_neighbors_are_asked() {
        let us = FOB
            .replace("\"eu\"", "\"us\"")
            .replace("868.3", "433.92")
            .replace("10 dBm", "-20 dBm");
        let finding = only(&CHECK, &us);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let loud = us.replace("-20 dBm", "0 dBm");
        assert_eq!(only(&CHECK, &loud).verdict, Verdict::Fails);
        let bare = FOB.replace(", neighbors = \"none heard\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 1);
    }
}
