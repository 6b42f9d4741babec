//! Whether a radio link has signal to spare, with its antennas where they are and in the boxes they are in.
//!
//! A bridge is counted both ways, through free space, trees in full leaf and the hardest rain; where the level was logged on
//! site it takes the place of what is counted for the dry way. A mobile modem is held to its logged level. A radio in a metal
//! box needs its antenna outside, and that antenna's cable its own surge protection.

use super::ends::{distance, ends, frequency, place};
use crate::asking::{Asking, pick, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{
    EarlyItuFoliage, FreeSpaceLoss, LinkBudget, LinkMargin, Polarization, RainLoss,
};
use formula::{Evidence, Source};
use quantity::{Frequency, Gain, Length, Quantity as _};
use site::{Polarized, RadioEnd, RadioLink, RadioLinkKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "radio-link",
    codes: BOTH,
    leaves_open: "waves thrown back by ground, water and metal that put out part of the signal, antennas that the wind turns, and other radios on the channel: the margin has to carry them; a wet day's log shows it",
    concerns: "each radio link",
    ask,
};

static MEASURED: Source = Source {
    work: "level logged on site against the receiver's limit",
    clause: "",
    evidence: Evidence::Physics,
    seen: "difference of two levels",
};

static METAL: Source = Source {
    work: "metal boxes and radio",
    clause: "a closed metal box keeps waves in; an antenna outside brings surges in",
    evidence: Evidence::CommonPractice,
    seen: "habit of the trade",
};

/// From here on rain is felt on the ways of a gate, in hertz.
const RAIN_FELT: f64 = 5e9;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for link in &site.radio_link {
        round.ask(About::new(&link.origin, &link.id), |asking| {
            match link.kind {
                RadioLinkKind::Bridge => bridge(asking, site, link),
                RadioLinkKind::Modem => modem(asking, link),
            }
        });
    }
}

fn bridge<'s>(asking: &mut Asking<'s>, site: &'s Site, link: &'s RadioLink) -> Answer {
    let wanted = read!(asking, link.wanted_margin);
    let both = ends(asking, link)?;
    let boxes = boxes_let_out(asking, both[0]);
    let loss = losses(asking, site, link, both);
    let limit = read_limit(asking, both[0]);
    let level = asking.read_if_there(&link.origin, "level", link.level.as_ref());
    let sent = [sent(asking, both[0]), sent(asking, both[1])];
    let [near, far] = sent;
    let (wanted, boxes, loss, limit) = (wanted?, boxes?, loss?, limit?);
    let (near, far) = (near?, far?);
    let out = budget(asking, &near, &far, loss.dry + loss.wet)?;
    let back = budget(asking, &far, &near, loss.dry + loss.wet)?;
    let worse = if out.margin < back.margin { out } else { back };
    let margin = match level {
        Some(level) => {
            asking.rest_on(&MEASURED);
            let logged = level.base() - limit.base() - loss.wet;
            Gain::from_base(logged.min(worse.margin.base()))
        }
        None => worse.margin,
    };
    asking.say(|print| {
        let logged = level.map_or_else(String::new, |level| {
            format!("; logged were {}", print.q(level))
        });
        let swallowed = if boxes {
            ""
        } else {
            " Its metal box swallows the signal: the antenna belongs outside, with surge protection of its own."
        };
        format!(
            "{} arrive at the weaker end over {}, {} lost in rain and leaves at their worst{logged}: {} above what the receiver needs; {} are wanted.{swallowed}",
            print.q(worse.received),
            print.q(Length::from_base(loss.distance)),
            print.q(Gain::from_base(loss.wet)),
            print.q(margin),
            print.q(wanted)
        )
    });
    Ok(judged(boxes, wanted, margin))
}

fn judged(boxes: bool, wanted: Gain, margin: Gain) -> Outcome {
    if boxes {
        Outcome::Compared(Comparison::at_most(
            Labeled::new("margin that is wanted", wanted),
            Labeled::new("margin that is there", margin),
        ))
    } else {
        Outcome::Rule(false)
    }
}

fn modem<'s>(asking: &mut Asking<'s>, link: &'s RadioLink) -> Answer {
    asking.rest_on(&MEASURED);
    let wanted = read!(asking, link.wanted_margin);
    let level = read!(asking, link.level);
    let near = asking.need(
        &link.origin,
        "near",
        link.near.as_ref(),
        "{ device = \"modem\", receiver_limit = \"-105 dBm\", in_metal_box = true, antenna_outside = true, surge_protected = true }",
    );
    let near = near?;
    let limit = read_limit(asking, near);
    let boxes = boxes_let_out(asking, near);
    let (wanted, level, limit, boxes) = (wanted?, level?, limit?, boxes?);
    let margin = Gain::from_base(level.base() - limit.base());
    asking.say(|print| {
        format!(
            "The modem was logged at {}, {} above what it needs; {} are wanted.{}",
            print.q(level),
            print.q(margin),
            print.q(wanted),
            if boxes {
                ""
            } else {
                " Its metal box swallows the signal: the antenna belongs outside, with surge protection of its own."
            }
        )
    });
    Ok(judged(boxes, wanted, margin))
}

/// A radio in a metal box has its antenna outside; an antenna outside has surge protection.
fn boxes_let_out<'s>(asking: &mut Asking<'s>, end: &'s RadioEnd) -> Result<bool, Halt> {
    asking.rest_on(&METAL);
    let metal = told(asking, &end.origin, "in_metal_box", end.in_metal_box);
    let outside = told(asking, &end.origin, "antenna_outside", end.antenna_outside);
    let (metal, outside) = (metal?, outside?);
    if !outside {
        return Ok(!metal);
    }
    told(asking, &end.origin, "surge_protected", end.surge_protected)
}

fn read_limit<'s>(
    asking: &mut Asking<'s>,
    end: &'s RadioEnd,
) -> Result<quantity::PowerLevel, Halt> {
    read!(asking, end.receiver_limit)
}

/// What one end brings to the budget, the far side left out.
fn sent<'s>(asking: &mut Asking<'s>, end: &'s RadioEnd) -> Result<LinkBudget, Halt> {
    let power = read!(asking, end.power);
    let gain = read!(asking, end.antenna_gain);
    let cable = read!(asking, end.cable_loss);
    let limit = read!(asking, end.receiver_limit);
    let (gain, cable) = (gain?, cable?);
    Ok(LinkBudget {
        power: power?,
        sending_cable: cable,
        sending_gain: gain,
        path_loss: Gain::from_base(0.0),
        receiving_gain: gain,
        receiving_cable: cable,
        receiver_limit: limit?,
    })
}

fn budget(
    asking: &mut Asking<'_>,
    from: &LinkBudget,
    to: &LinkBudget,
    loss: f64,
) -> Result<LinkMargin, Halt> {
    asking.work(&LinkBudget {
        path_loss: Gain::from_base(loss),
        receiving_gain: to.receiving_gain,
        receiving_cable: to.receiving_cable,
        receiver_limit: to.receiver_limit,
        ..*from
    })
}

/// What the way takes, in decibels.
struct Losses {
    distance: f64,
    dry: f64,
    wet: f64,
}

fn losses<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    link: &'s RadioLink,
    [near, far]: [&'s RadioEnd; 2],
) -> Result<Losses, Halt> {
    let frequency = frequency(asking, site, link);
    let (from, to) = (place(asking, near), place(asking, far));
    let mut leaves = Ok(0.0);
    let depths: Vec<_> = link
        .tree
        .iter()
        .map(|tree| read!(asking, tree.depth))
        .collect();
    let (frequency, from, to) = (frequency?, from?, to?);
    for depth in depths {
        let taken = depth.and_then(|depth| asking.work(&EarlyItuFoliage { frequency, depth }));
        leaves = leaves.and_then(|sum: f64| taken.map(|taken| sum + taken.loss.base()));
    }
    let distance = Length::from_base(distance(from, to));
    let rain = rain(asking, link, (frequency, distance));
    let free = asking.work(&FreeSpaceLoss {
        frequency,
        distance,
    })?;
    Ok(Losses {
        distance: distance.base(),
        dry: free.loss.base(),
        wet: leaves? + rain?,
    })
}

fn rain<'s>(
    asking: &mut Asking<'s>,
    link: &'s RadioLink,
    (frequency, distance): (Frequency, Length),
) -> Result<f64, Halt> {
    if frequency.base() < RAIN_FELT {
        return Ok(0.0);
    }
    let rain_rate = read!(asking, link.rain_rate);
    let stands = pick!(asking, link.polarization);
    let polarization = match stands? {
        Polarized::Horizontal => Polarization::Horizontal,
        Polarized::Vertical => Polarization::Vertical,
    };
    let taken = asking.work(&RainLoss {
        frequency,
        polarization,
        rain_rate: rain_rate?,
        distance,
    })?;
    Ok(taken.loss.base())
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
        [[device]]
        id = "bridge"
        kind = "radio"
        frequency = "5.6 GHz"
        [[radio_link]]
        id = "house"
        kind = "bridge"
        polarization = "vertical"
        near = { device = "bridge", at = ["0 m", "0 m", "3 m"], power = "10 dBm", antenna_gain = "14 dBi", cable_loss = "0 dB", receiver_limit = "-80 dBm", in_metal_box = false, antenna_outside = true, surge_protected = true }
        far = { at = ["0 m", "180 m", "8 m"], power = "10 dBm", antenna_gain = "14 dBi", cable_loss = "0 dB", receiver_limit = "-80 dBm" }
        wanted_margin = "15 dB"
        rain_rate = "50 mm/h"
    "#;

    #[test]
    fn holds_over_a_clear_way() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 10 + 28 − 92.5 dB over 180.07 m at 5.6 GHz, less some hundredths for rain, against −80 dBm.
        let margin = finding.capacity.unwrap().value.unwrap();
        assert!((margin - 25.4).abs() < 0.2, "{margin}");
    }

    #[test]
    fn fails_through_a_wood_and_in_a_metal_box() {
        let wood = SITE.replace(
            "wanted_margin",
            "tree = [{ what = \"lime trees\", depth = \"12 m\" }]\n        wanted_margin",
        );
        assert_eq!(only(&CHECK, &wood).verdict, Verdict::Fails);
        let boxed = SITE
            .replace("in_metal_box = false", "in_metal_box = true")
            .replace("antenna_outside = true", "antenna_outside = false");
        let finding = only(&CHECK, &boxed);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("metal box"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_the_far_end_and_the_rain() {
        let bare = SITE.replace("rain_rate = \"50 mm/h\"", "").replace(
            "far = { at = [\"0 m\", \"180 m\", \"8 m\"], power = \"10 dBm\", antenna_gain",
            "far = { at = [\"0 m\", \"180 m\", \"8 m\"], antenna_gain",
        );
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_modem_holds_by_its_log() {
        let modem = r#"
            [site]
            name = "Test yard"
            code_basis = "us"
            [[radio_link]]
            id = "modem"
            kind = "mobile modem"
            wanted_margin = "10 dB"
            level = "-85 dBm"
            near = { receiver_limit = "-105 dBm", in_metal_box = true, antenna_outside = true, surge_protected = true }
        "#;
        assert_eq!(only(&CHECK, modem).verdict, Verdict::Holds);
        let weak = modem.replace("-85", "-98");
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
    }
}
