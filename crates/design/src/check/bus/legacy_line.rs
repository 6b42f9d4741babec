//! Whether an old reader on two data lines stays inside the limits of its interface.

use super::is_reader;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::power::lowest_at;
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Takes};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::power::metal_area;
use formula::{Evidence, Source};
use quantity::{ConductorSize, Length, Quantity as _};
use site::{Cable, Carries, DataLine, Device, ScreenEarth, Site, Speaks};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-legacy-line",
    codes: BOTH,
    leaves_open: "capacitance of the cable, drop along the common wire by what else it carries, and noise from drives",
    concerns: "each reader or keypad on two data lines",
    ask,
};

static LIMITS: Source = Source {
    work: "SIA recommendation for readers on two data lines: 61 m of 22 AWG, 91 m of 20 AWG, 153 m of 18 AWG",
    clause: "",
    evidence: Evidence::Seen,
    seen: "user's manual of a reader, page 10 (address withheld: a maker's name is in it)",
};

/// Longest runs in meters, by the least conductor area in mm²: 22, 20 and 18 AWG.
const RUNS: [(f64, f64); 3] = [(0.82, 153.0), (0.51, 91.0), (0.32, 61.0)];

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    for device in site.device.iter().filter(|device| is_reader(device)) {
        if let Some(line) = device
            .data_line
            .as_ref()
            .filter(|line| line.speaks == Some(Speaks::TwoDataLines))
        {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                legacy(asking, (site, &circuits), device, line)
            });
        }
    }
}

fn legacy<'s>(
    asking: &mut Asking<'s>,
    (site, circuits): (&'s Site, &Circuits<'s>),
    device: &'s Device,
    line: &'s DataLine,
) -> Answer {
    asking.rest_on(&LIMITS);
    let cable = cable(asking, site, device);
    let screen = pick!(asking, line.screen);
    let pulled = told(asking, &line.origin, "pulled_up", line.pulled_up);
    let least = read!(asking, device.least_voltage);
    let lowest = lowest_at(asking, circuits, Takes::Device(device));
    let cable = cable?;
    let length = read!(asking, cable.length);
    let size = pick!(asking, cable.size);
    let (length, size, screen, pulled) = (length?, size?, screen?, pulled?);
    let (least, lowest) = (least?, lowest?);
    let Some(longest) = longest(size) else {
        return asking.refuse("no run is printed for a conductor thinner than 22 AWG");
    };
    let mut rules = Rules::default();
    rules.keep(
        pulled,
        "The data lines are not pulled up at the controller: they float, and read noise as cards.",
    );
    rules.keep(
        screen == ScreenEarth::OneEnd,
        "The screen of the data cable has to be earthed at one end, at the controller: at both it carries current between two earths, at none it is an aerial.",
    );
    rules.compare(Comparison::at_most(
        Labeled::new("run of the data cable", length),
        Labeled::new("longest for this conductor", longest),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("voltage that the reader needs", least),
        Labeled::new("lowest voltage at the reader", lowest),
    ));
    asking.say(|print| {
        rules.says(|| {
            format!(
                "{} hangs on {} of {size}, which may be {} long, and gets {} at its lowest where it needs {}.",
                device.id,
                print.q(length),
                print.q(longest),
                print.q(lowest),
                print.q(least)
            )
        })
    });
    Ok(rules.outcome())
}

/// The longest run that is printed for a conductor.
fn longest(size: ConductorSize) -> Option<Length> {
    let square_millimeters = metal_area(size).base() * 1e6;
    RUNS.iter()
        .find(|(least, _)| square_millimeters >= *least)
        .map(|(_, meters)| Length::from_base(*meters))
}

/// The data cable of a reader: the one that does not bring its power.
fn cable<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<&'s Cable, Halt> {
    const CABLE: &str = "[[cable]]\nid = \"w-08\"\ncarries = \"signal\"\nfrom = \"controller-access\"\nto = \"reader-entry\"\nsize = \"18 AWG\"\nlength = \"120 ft\"";
    let brings = |cable: &&Cable| {
        cable.to == device.id
            && Some(&cable.from) != device.supply.as_ref()
            && cable.carries != Some(Carries::Power)
    };
    match site.cable.iter().find(brings) {
        Some(cable) => Ok(cable),
        None => asking.lack(&device.origin, "cable", Wants::Table(CABLE)),
    }
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
        [[supply]]
        id = "supply"
        kind = "power supply"
        voltage = "12 V ± 2 %"
        rated_current = "2 A"
        [[device]]
        id = "controller"
        kind = "access controller"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "supply"
        takes = "direct"
        voltage = "12 V"
        least_voltage = "9 V"
        current = "100 mA"
        data_line = { speaks = "two data lines", screen = "at one end", pulled_up = true }
        [[cable]]
        id = "w-01"
        carries = "power"
        from = "supply"
        to = "reader"
        cores = 2
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "104 °F"
        length = "200 ft"
        [[cable]]
        id = "w-02"
        carries = "signal"
        from = "controller"
        to = "reader"
        cores = 4
        size = "20 AWG"
        length = "200 ft ± 5 ft"
    "#;

    #[test]
    fn holds_within_the_run_of_its_gauge() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_far_with_the_screen_at_both_ends_and_starved() {
        for (from, to) in [
            ("200 ft ± 5 ft", "320 ft"),
            ("at one end", "at both ends"),
            ("least_voltage = \"9 V\"", "least_voltage = \"11.8 V\""),
            ("pulled_up = true", "pulled_up = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_screen() {
        let finding = only(&CHECK, &SITE.replace(" screen = \"at one end\",", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
