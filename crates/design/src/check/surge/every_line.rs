//! Whether each metal line that leaves an enclosure has a surge protector of the right voltage and speed, or a reason.
//!
//! A line leaves an enclosure when one of its ends is inside and the other is not. Glass carries no surge.

use super::line::{enclosure_of, is_glass, protectors, supply};
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Frequency, Quantity as _, Word as _};
use site::{Cable, Carries, Device, Enclosure, PoeClass, Site, Surge};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "surge-every-line",
    codes: BOTH,
    leaves_open: "the far ends of lines whose far end has an earth of its own, a stroke into the gate itself, and whether a protector has already given its life: look at its window at each visit",
    concerns: "each enclosure that a line leaves",
    ask,
};

static OUT_OF_DOORS: Source = Source {
    work: "each metal line out of doors has a protector where it comes in, or a reason why not",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice behind IEEE C62.41 and IEC 61643; zimyelectronics.com/knowledge/surge-protection-low-voltage",
};

static GIGABIT: Source = Source {
    work: "data at a gigabit over four pairs uses frequencies up to 100 MHz",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice: category 5e channels are tested to 100 MHz",
};

/// Frequency that a protector of data passes at least, in hertz.
const DATA: f64 = 100e6;

/// How a protector is written.
const PROTECTOR: &str = "[[device]]\nid = \"surge-entry\"\nkind = \"surge protector\"\nenclosure = \"box\"\n[device.surge]\ncables = [\"w-07\"]\n# or on the cable: no_protector = \"why it has none\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        if lines(site, enclosure).next().is_some() {
            round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
                guarded(asking, site, enclosure)
            });
        }
    }
}

/// The cables that leave an enclosure.
fn lines<'s>(
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> impl Iterator<Item = &'s Cable> + use<'s> {
    site.cable.iter().filter(move |cable| {
        let inside = |id| enclosure_of(site, id) == Some(&enclosure.id);
        inside(&cable.from) != inside(&cable.to)
    })
}

fn guarded<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&OUT_OF_DOORS);
    let mut compared = Vec::new();
    let (mut protected, mut reasons, mut glass) = (Vec::new(), 0_usize, 0_usize);
    let mut whole = Ok(());
    for cable in lines(site, enclosure) {
        if is_glass(cable) {
            glass += 1;
        } else if let Some(device) = protectors(site, cable).next() {
            protected.push(cable.id.to_string());
            match suits(asking, site, (cable, device)) {
                Ok(comparisons) => compared.extend(comparisons),
                Err(halt) => whole = Err(halt),
            }
        } else if cable.no_protector.is_some() {
            reasons += 1;
        } else {
            whole = asking.lack(&cable.origin, "surge_protector", Wants::Table(PROTECTOR));
        }
    }
    let powerless = powerless(site, enclosure);
    if !powerless.is_empty() {
        asking.say(|_| {
            format!(
                "The protector on {} passes less power than the device at its end asks for.",
                and(&powerless)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    whole?;
    asking.say(|_| {
        format!(
            "Of the lines that leave {}, {} have a protector ({}), {reasons} have a reason against one, and {glass} are glass.",
            enclosure.id,
            protected.len(),
            if protected.is_empty() {
                "none".to_owned()
            } else {
                and(&protected)
            }
        )
    });
    Ok(Outcome::worst(compared).unwrap_or(Outcome::Rule(true)))
}

/// A protector against the voltage and the speed of its line.
fn suits<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (cable, device): (&'s Cable, &'s Device),
) -> Result<Vec<Comparison>, Halt> {
    let mut all = Vec::new();
    if cable.carries == Some(Carries::Data) {
        asking.rest_on(&GIGABIT);
        all.push(fast_enough(asking, device.surge.as_ref())?);
        return Ok(all);
    }
    let mut panels = site.solar_panel.iter();
    let panel = panels.find(|panel| panel.id == cable.from);
    let voltage = match (supply(site, &cable.from), panel) {
        (Some(source), _) => Some(read!(asking, source.voltage)),
        (None, Some(panel)) => Some(read!(asking, panel.open_voltage)),
        (None, None) => None,
    };
    if let Some(voltage) = voltage {
        let stands = read!(asking, device.greatest_voltage);
        all.push(Comparison::at_most(
            Labeled::new("voltage of the line", voltage?),
            Labeled::new("voltage that its protector stands without end", stands?),
        ));
    }
    Ok(all)
}

fn fast_enough<'s>(asking: &mut Asking<'s>, surge: Option<&'s Surge>) -> Result<Comparison, Halt> {
    let surge = surge.ok_or(Halt)?;
    let passes = read!(asking, surge.passes)?;
    Ok(Comparison::at_most(
        Labeled::new("frequency that the data need", Frequency::from_base(DATA)),
        Labeled::new("frequency that the protector passes", passes),
    ))
}

/// The lines whose protector is known to pass less power than the device at the end asks for.
fn powerless(site: &Site, enclosure: &Enclosure) -> Vec<String> {
    lines(site, enclosure)
        .filter(|cable| {
            let far = site.device.iter().find(|device| device.id == cable.to);
            let asks = far.and_then(|device| device.poe_class).map(class);
            let passes = protectors(site, cable)
                .filter_map(|device| device.poe_class.map(class))
                .min();
            matches!((asks, passes), (Some(asks), Some(passes)) if passes < asks)
        })
        .map(|cable| cable.id.to_string())
        .collect()
}

/// The class as a number.
fn class(class: PoeClass) -> u8 {
    class.word().parse().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[enclosure]]
        id = "box"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        enclosure = "box"
        voltage = "24 V"
        [[device]]
        id = "switch"
        kind = "network switch"
        enclosure = "box"
        [[device]]
        id = "camera"
        kind = "camera"
        poe_class = "3"
        [[device]]
        id = "reader"
        kind = "reader"
        [[device]]
        id = "office"
        kind = "network switch"
        [[device]]
        id = "surge-data"
        kind = "surge protector"
        enclosure = "box"
        poe_class = "4"
        [device.surge]
        cables = ["w-02"]
        passes = "250 MHz"
        [[device]]
        id = "surge-24"
        kind = "surge protector"
        enclosure = "box"
        greatest_voltage = "33 V"
        [device.surge]
        cables = ["w-03"]
        [[cable]]
        id = "w-01"
        carries = "data"
        from = "office"
        to = "switch"
        [[cable]]
        id = "w-02"
        carries = "data"
        size = "23 AWG"
        from = "switch"
        to = "camera"
        [[cable]]
        id = "w-03"
        carries = "power"
        size = "18 AWG"
        from = "supply-24"
        to = "reader"
        [[cable]]
        id = "w-41"
        carries = "power"
        size = "14 AWG"
        from = "supply-24"
        to = "switch"
    "#;

    #[test]
    fn holds_with_one_on_each_metal_line() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding
                .sentence
                .contains("2 have a protector (w-02 and w-03)"),
            "{}",
            finding.sentence
        );
        let reason = SITE.replace("cables = [\"w-03\"]", "cables = []").replace(
            "to = \"reader\"",
            "to = \"reader\"\nno_protector = \"3 ft to the wall\"",
        );
        assert_eq!(only(&CHECK, &reason).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_too_little_voltage_speed_or_power() {
        for (from, to) in [
            ("\"33 V\"", "\"18 V\""),
            ("\"250 MHz\"", "\"16 MHz\""),
            ("poe_class = \"4\"", "poe_class = \"2\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{from}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_a_protector_or_a_reason() {
        let finding = only(&CHECK, &SITE.replace("cables = [\"w-03\"]", "cables = []"));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].path.contains("w-03"));
    }
}
