//! Whether a supervised input still tells closed, open, cut and short apart, with its wire, its tolerances and damp.
//!
//! Every band of resistance is taken at its own bad ends and held against the limits of the input: the wire as long and
//! as hot as it gets or not there at all, resistors and limits at the ends of their tolerance, the insulation on a wet day.

use crate::asking::{Asking, End, Wants, pick};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::circuit::conductor::resistance;
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::signal::{LoopBands, SupervisedLoop as Bands};
use quantity::Resistance;
use site::{Device, ResistorPlace, Site, SupervisedLoop};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-supervised-loop",
    codes: BOTH,
    leaves_open: "voltages that damp or a broken cable feed in, loops that only notice a cut, and somebody who brings resistors of the right size",
    concerns: "each device with a supervised contact",
    ask,
};

/// How a supervised loop is written.
const LOOP: &str = "supervised_loop = { series = \"1 kΩ ± 1 %\", parallel = \"1 kΩ ± 1 %\", contact_resistance = \"2 Ω\", insulation = \"200 kΩ\", resistors = \"at the device\", short_below = \"500 Ω ± 5 %\", closed_below = \"1.5 kΩ ± 5 %\", open_below = \"4 kΩ ± 5 %\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let supervised = |device: &&Device| {
        device.supervised_loop.is_some()
            || device
                .does
                .iter()
                .any(|command| command.supervised == Some(true))
    };
    for device in site.device.iter().filter(supervised) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let Some(wired) = &device.supervised_loop else {
                return asking.lack(&device.origin, "supervised_loop", Wants::Table(LOOP));
            };
            apart(asking, site, device, wired)
        });
    }
}

/// The limits of the input, each at the end that is bad for the band below it and for the band above it.
struct Limits {
    short: [Resistance; 2],
    closed: [Resistance; 2],
    open: [Resistance; 2],
}

fn apart<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    wired: &'s SupervisedLoop,
) -> Answer {
    let bands = bands(asking, site, device, wired);
    let limits = limits(asking, wired);
    let place = pick!(asking, wired.resistors);
    let (bands, limits, place) = (bands?, limits?, place?);
    let mut rules = Rules::default();
    rules.keep(place == ResistorPlace::Device, &format!(
        "The resistors of {} sit in the cabinet and watch none of its cable: move them to the contact.",
        device.id
    ));
    for (label, value, limit_label, limit) in edges(&bands, &limits) {
        rules.compare(Comparison::at_most(
            Labeled::new(label, value),
            Labeled::new(limit_label, limit),
        ));
    }
    let [short, closed, open] = [limits.short[0], limits.closed[0], limits.open[0]];
    asking.say(|print| {
        rules.says(|| {
            format!(
                "The loop of {} reads at most {} shorted, {} to {} closed, {} to {} open, and at least {} cut and damp; its input parts them at {}, {} and {}.",
                device.id,
                print.q(bands.short_greatest),
                print.q(bands.closed_least),
                print.q(bands.closed_greatest),
                print.q(bands.open_least),
                print.q(bands.open_greatest),
                print.q(bands.cut_least),
                print.q(short),
                print.q(closed),
                print.q(open)
            )
        })
    });
    Ok(rules.outcome())
}

/// What must not pass what, from the lowest band to the highest.
fn edges(
    bands: &LoopBands,
    limits: &Limits,
) -> [(&'static str, Resistance, &'static str, Resistance); 6] {
    [
        (
            "greatest reading of a short",
            bands.short_greatest,
            "limit of the input for a short",
            limits.short[0],
        ),
        (
            "limit of the input for a short",
            limits.short[1],
            "least reading of the closed contact",
            bands.closed_least,
        ),
        (
            "greatest reading of the closed contact",
            bands.closed_greatest,
            "limit of the input for the closed contact",
            limits.closed[0],
        ),
        (
            "limit of the input for the closed contact",
            limits.closed[1],
            "least reading of the open contact",
            bands.open_least,
        ),
        (
            "greatest reading of the open contact",
            bands.open_greatest,
            "limit of the input for the open contact",
            limits.open[0],
        ),
        (
            "limit of the input for the open contact",
            limits.open[1],
            "least reading of a cut",
            bands.cut_least,
        ),
    ]
}

/// A value at one end, and at the other.
fn both<'s>(
    asking: &mut Asking<'s>,
    wired: &'s SupervisedLoop,
    key: &'static str,
    value: Option<&quantity::Measured<Resistance>>,
) -> Result<[Resistance; 2], Halt> {
    let least = asking.read_at((&wired.origin, key), value, End::Low);
    let greatest = asking.read_at((&wired.origin, key), value, End::High);
    Ok([least?, greatest?])
}

fn limits<'s>(asking: &mut Asking<'s>, wired: &'s SupervisedLoop) -> Result<Limits, Halt> {
    let short = both(asking, wired, "short_below", wired.short_below.as_ref());
    let closed = both(asking, wired, "closed_below", wired.closed_below.as_ref());
    let open = both(asking, wired, "open_below", wired.open_below.as_ref());
    Ok(Limits {
        short: short?,
        closed: closed?,
        open: open?,
    })
}

fn bands<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    wired: &'s SupervisedLoop,
) -> Result<LoopBands, Halt> {
    let series = both(asking, wired, "series", wired.series.as_ref());
    let parallel = both(asking, wired, "parallel", wired.parallel.as_ref());
    let contact = both(
        asking,
        wired,
        "contact_resistance",
        wired.contact_resistance.as_ref(),
    );
    let insulation = both(asking, wired, "insulation", wired.insulation.as_ref());
    let wire = wire(asking, site, device);
    let ([series_least, series_greatest], [parallel_least, parallel_greatest]) =
        (series?, parallel?);
    let ([_, contact], [insulation, _], wire) = (contact?, insulation?, wire?);
    asking.work(&Bands {
        series_least,
        series_greatest,
        parallel_least,
        parallel_greatest,
        wire,
        contact,
        insulation,
    })
}

/// Resistance of the wire, out and back, at its longest.
fn wire<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<Resistance, Halt> {
    const CABLE: &str = "[[cable]]\nid = \"w-09\"\ncarries = \"signal\"\nfrom = \"controller-access\"\nto = \"key-fire\"\nsize = \"18 AWG\"\nlength = \"120 ft\"";
    let Some(cable) = site.cable.iter().find(|cable| cable.to == device.id) else {
        return asking.lack(&device.origin, "cable", Wants::Table(CABLE));
    };
    let length = asking.read_at((&cable.origin, "length"), cable.length.as_ref(), End::High);
    let resistance = resistance(asking, cable);
    Ok(2.0 * (resistance? * length?))
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
        id = "key"
        kind = "control"
        does = [{ what = "fire open", contact = "normally open", supervised = true }]
        supervised_loop = { series = "1 kΩ ± 1 %", parallel = "1 kΩ ± 1 %", contact_resistance = "2 Ω", insulation = "200 kΩ", resistors = "at the device", short_below = "500 Ω ± 5 %", closed_below = "1.5 kΩ ± 5 %", open_below = "4 kΩ ± 5 %" }
        [[cable]]
        id = "w-01"
        carries = "signal"
        from = "box"
        to = "key"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "104 °F"
        length = "126 ft ± 3 ft"
        [[enclosure]]
        id = "box"
    "#;

    #[test]
    fn holds_with_one_percent_resistors() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_damp_thin_or_in_the_cabinet() {
        for (from, to) in [
            ("200 kΩ", "3 kΩ"),
            ("126 ft ± 3 ft", "60000 ft"),
            ("at the device", "in the cabinet"),
            ("series = \"1 kΩ ± 1 %\"", "series = \"1 kΩ ± 60 %\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_limits_of_the_input() {
        let finding = only(&CHECK, &SITE.replace(", open_below = \"4 kΩ ± 5 %\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
