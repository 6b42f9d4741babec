//! Whether the open voltage of a panel on the coldest bright morning is more than its charge controller stands, and whether
//! its string needs a fuse.
//!
//! The cells are as cold as the coldest air of a usual year. Strings side by side on one controller feed back into one that
//! is shorted: with a quarter more than their short-circuit current under bright cloud edges. Where that is more than the
//! fuse that a panel may stand behind, each string has a fuse.

use crate::asking::{Asking, Wants, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::capitalized;
use crate::subject::About;
use formula::power::PanelColdVoltage;
use formula::{Evidence, Source};
use quantity::{Current, Quantity as _};
use site::{Site, SolarPanel, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "solar-cold-voltage",
    codes: BOTH,
    leaves_open: "a colder morning than the coldest of a usual year, the factors of NFPA 70 table 690.7 where no coefficient is known, and the fuse between battery and controller",
    concerns: "each solar panel",
    ask,
};

static BRIGHT: Source = Source {
    work: "bright cloud edges lift the current of a panel by up to a quarter",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the factor of 1.25 on short-circuit current in sizing guides for panels",
};

/// Current under bright cloud edges over that at standard test conditions.
const CLOUD_EDGE: f64 = 1.25;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for panel in &site.solar_panel {
        round.ask(About::new(&panel.origin, &panel.id), |asking| {
            in_cold(asking, site, panel)
        });
    }
}

fn in_cold<'s>(asking: &mut Asking<'s>, site: &'s Site, panel: &'s SolarPanel) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let mut rules = Rules::default();
    let open_voltage = read!(asking, panel.open_voltage);
    let per_celsius = read!(asking, panel.sheet?.voltage_per_celsius);
    let cells = read!(asking, site.climate?.coldest);
    let controller = controller(asking, site, panel);
    let stands = controller.and_then(|supply| read!(asking, supply.panel_input?.greatest_voltage));
    let back = back(asking, site, panel, &mut rules);
    let (open_voltage, per_celsius, cells) = (open_voltage?, per_celsius?, cells?);
    let (stands, back) = (stands?, back?);
    let voltage = asking
        .work(&PanelColdVoltage {
            open_voltage,
            per_celsius,
            cells,
        })?
        .voltage;
    rules.compare(Comparison::at_most(
        Labeled::new("open voltage on the coldest morning", voltage),
        Labeled::new("voltage that the controller stands", stands),
    ));
    asking.say(|print| {
        let back = rules.says(|| match back {
            Some(back) => format!("The strings beside it feed back {} at most.", print.q(back)),
            None => "No string lies beside it.".to_owned(),
        });
        format!(
            "{} gives {} at no load on a bright morning of {}; its controller stands {}. {back}",
            capitalized(panel.id.as_str()),
            print.q(voltage),
            print.q(cells),
            print.q(stands)
        )
    });
    Ok(rules.outcome())
}

fn controller<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    panel: &'s SolarPanel,
) -> Result<&'s Supply, Halt> {
    let found = panel
        .supply
        .as_ref()
        .and_then(|name| site.supply.iter().find(|supply| supply.id == *name));
    match found {
        Some(supply) => Ok(supply),
        None => asking.lack(&panel.origin, "supply", Wants::Written("\"charge\"")),
    }
}

/// Current that the other strings on the same controller feed into this one when it is shorted; nothing where it is alone.
fn back<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    panel: &'s SolarPanel,
    rules: &mut Rules,
) -> Result<Option<Current>, Halt> {
    let beside = |other: &&SolarPanel| other.supply == panel.supply && other.id != panel.id;
    let others: Vec<&'s SolarPanel> = site.solar_panel.iter().filter(beside).collect();
    if others.is_empty() {
        return Ok(None);
    }
    asking.rest_on(&BRIGHT);
    let mut sum = Current::from_base(0.0);
    let mut whole = Ok(());
    for other in others {
        match read!(asking, other.sheet?.short_current) {
            Ok(current) => sum += current * CLOUD_EDGE,
            Err(halt) => whole = Err(halt),
        }
    }
    let greatest = read!(asking, panel.sheet?.series_fuse);
    whole?;
    let greatest = greatest?;
    let fuse = panel
        .stand
        .as_ref()
        .and_then(|stand| asking.read_if_there(&stand.origin, "fuse", stand.fuse.as_ref()));
    match fuse {
        Some(fuse) => rules.compare(Comparison::at_most(
            Labeled::new("fuse of the string", fuse),
            Labeled::new("greatest fuse that its panels may stand behind", greatest),
        )),
        None => rules.compare(Comparison::at_most(
            Labeled::new("current that the strings beside it feed back", sum),
            Labeled::new("greatest fuse that its panels may stand behind", greatest),
        )),
    }
    Ok(Some(sum))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [climate]
        coldest = "-14 °C"
        [[supply]]
        id = "charge"
        kind = "charge controller"
        [supply.panel_input]
        greatest_voltage = "100 V"
        [[solar_panel]]
        id = "pv-1"
        supply = "charge"
        open_voltage = "49 V"
        [solar_panel.sheet]
        voltage_per_celsius = "0.28 %"
        short_current = "10.5 A"
        series_fuse = "20 A"
    "#;

    #[test]
    fn holds_with_two_in_series() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let volts = finding.demand.unwrap().value.unwrap();
        assert!(
            (volts - 49.0 * (1.0 + 0.0028 * 39.0)).abs() < 1e-9,
            "{volts}"
        );
    }

    #[test]
    fn fails_with_all_four_in_one_string() {
        let finding = only(&CHECK, &SITE.replace("\"49 V\"", "\"98 V\""));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_three_strings_and_no_fuse() {
        let string = SITE.split("[[solar_panel]]").nth(1).unwrap();
        let more = |id: &str| format!("[[solar_panel]]{}", string.replace("pv-1", id));
        let three = format!("{SITE}{}{}", more("pv-2"), more("pv-3"));
        let found = all(&CHECK, &three);
        assert!(
            found.iter().all(|one| one.verdict == Verdict::Fails),
            "{found:#?}"
        );
        let fused = three.replace(
            "series_fuse = \"20 A\"",
            "series_fuse = \"20 A\"\n[solar_panel.stand]\nfuse = \"15 A\"",
        );
        assert!(
            all(&CHECK, &fused)
                .iter()
                .all(|one| one.verdict == Verdict::Holds)
        );
    }

    #[test]
    fn unknown_without_coefficient_and_controller() {
        let bare = SITE
            .replace("voltage_per_celsius = \"0.28 %\"", "")
            .replace("greatest_voltage = \"100 V\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
