//! Whether a battery that lives on panels ever runs flat in the year, and what is the least that never does.
//!
//! The sun of a weather file, or of twelve monthly means, hour by hour. Of the means: the shape of clear days, dimmed so that each month has its mean, with the
//! longest run of dark days at the beginning of each month. Trees, roofs and the open leaf stand in the skyline and take
//! the sun itself. Old battery, hungry devices, panels at the low end of their power. Values stand at the bad ends of their
//! tolerances where they are given with any.

use super::carried::{Carried, carried, panels_of};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, capitalized};
use crate::subject::About;
use quantity::{Charge, Quantity as _, Ratio, Time};
use sim::sun_year::{Pair, least};
use site::{Battery, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "solar-year",
    codes: BOTH,
    leaves_open: "snow that lies on a panel, years that are darker than the mean, and wires between panel and battery",
    concerns: "each battery that panels charge alone",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for battery in &site.battery {
        if panels_of(site, battery).next().is_some() {
            round.ask_in_full(About::new(&battery.origin, &battery.id), |asking| {
                year(asking, site, battery)
            });
        }
    }
}

fn year<'s>(asking: &mut Asking<'s>, site: &'s Site, battery: &'s Battery) -> Answer {
    let carried = carried(asking, site, battery)?;
    let pairs = pairs(asking, &carried)?;
    let drawn = carried.usable * (1.0 - carried.through.least.base());
    asking.say(|print| sentence(print, battery, &carried, &pairs));
    let never_empty = Comparison::below(
        Labeled::new("charge drawn in the worst hour of the year", drawn),
        Labeled::new("charge that may be drawn", carried.usable),
    );
    let dark = Comparison::at_most(
        Labeled::new("longest run of dark days", carried.dark_run),
        Labeled::new("time without any sun", carried.through.autonomy),
    );
    Outcome::worst([never_empty, dark]).ok_or(Halt)
}

/// Steps of the search, over what is there.
const STEP: f64 = 0.25;

/// Steps of panels and of batteries.
const STEPS: u32 = 12;

fn pairs(asking: &mut Asking<'_>, carried: &Carried) -> Result<Vec<Pair>, Halt> {
    let steps: Vec<Ratio> = (1..=STEPS)
        .map(|step| Ratio::from_base(STEP * f64::from(step)))
        .collect();
    asking.in_reach(least(
        &carried.sun,
        &carried.bank,
        &carried.load,
        (&steps, &steps),
    ))
}

fn sentence(print: Print, battery: &Battery, carried: &Carried, pairs: &[Pair]) -> String {
    let name = capitalized(battery.id.as_str());
    let through = &carried.through;
    let went = if through.hours_without == 0 {
        format!(
            "is never empty: in the worst hour, on {}, {} of what may be drawn is left",
            day(through.least_at),
            print.q(through.least)
        )
    } else {
        format!(
            "is empty at some hour of {} days of the year, first on {}",
            through.days_without,
            day(through.least_at)
        )
    };
    let pairs: Vec<String> = pairs
        .iter()
        .take(3)
        .map(|pair| {
            let capacity: Charge = carried.capacity * pair.battery.base();
            format!(
                "{} of panels with {}",
                print.q(carried.power * pair.panel.base()),
                print.q(capacity)
            )
        })
        .collect();
    let least = if pairs.is_empty() {
        "Three times the panels and the battery would not do either.".to_owned()
    } else {
        format!("The least that never runs flat: {}.", and(&pairs))
    };
    format!(
        "{name} {went}; full, it lasts {} without any sun. {least}",
        print.q(through.autonomy)
    )
}

/// The day of an hour of the year: `14 January`.
fn day(since: Time) -> String {
    const MONTHS: [(&str, f64); 12] = [
        ("January", 31.0),
        ("February", 28.0),
        ("March", 31.0),
        ("April", 30.0),
        ("May", 31.0),
        ("June", 30.0),
        ("July", 31.0),
        ("August", 31.0),
        ("September", 30.0),
        ("October", 31.0),
        ("November", 30.0),
        ("December", 31.0),
    ];
    let mut day = (since.base() / 86_400.0).floor();
    for (name, days) in MONTHS {
        if day < days {
            return format!("{} {name}", day + 1.0);
        }
        day -= days;
    }
    "31 December".to_owned()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::{CHECK, day};
    use crate::Verdict;
    use crate::check::testing::only;
    use quantity::{Quantity as _, Time};

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [place]
        latitude = "47°"
        longitude = "9°"
        [climate]
        hottest = "36 °C"
        coldest = "-14 °C"
        [climate.sun]
        monthly = ["1.1 kWh/(m²·day)", "1.9 kWh/(m²·day)", "3.1 kWh/(m²·day)", "4.2 kWh/(m²·day)", "5.0 kWh/(m²·day)", "5.5 kWh/(m²·day)", "5.6 kWh/(m²·day)", "4.8 kWh/(m²·day)", "3.5 kWh/(m²·day)", "2.1 kWh/(m²·day)", "1.2 kWh/(m²·day)", "0.9 kWh/(m²·day)"]
        plane = "level"
        dark_run = "4 days"
        [[gate]]
        id = "main"
        kind = "track-slide"
        travel = "6 m"
        cycles_per_day = 30
        [gate.motion]
        cruise_speed = "0.3 m/s"
        acceleration = "0.3 m/s²"
        deceleration = "0.3 m/s²"
        creep_speed = "0.1 m/s"
        creep_distance = "0 m"
        [[supply]]
        id = "charge"
        kind = "charge controller"
        rated_current = "40 A"
        efficiency = "96 %"
        [[battery]]
        id = "battery"
        supply = "charge"
        chemistry = "lithium iron phosphate"
        voltage = "25.6 V"
        capacity = "200 Ah"
        usable = "90 %"
        end_of_life = "80 %"
        [battery.charging]
        efficiency = "95 %"
        [[solar_panel]]
        id = "pv"
        supply = "charge"
        power = "600 W"
        tilt = "60°"
        azimuth = "175°"
        [solar_panel.sheet]
        power_per_celsius = "0.35 %"
        [solar_panel.stand]
        dirt = "5 %"
        [solar_panel.stand.skyline]
        toward = ["90°", "270°"]
        up = ["5°", "5°"]
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "charge"
        standing_current = "500 mA"
        running_current = "5 A"
        battery_speed = "100 %"
    "#;

    #[test]
    fn holds_with_enough_of_both() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("never empty"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_behind_a_wood_and_with_a_small_panel() {
        let wood = SITE
            .replace("up = [\"5°\", \"5°\"]", "up = [\"50°\", \"50°\"]")
            .replace("\"600 W\"", "\"300 W\"");
        let finding = only(&CHECK, &wood);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let small = only(&CHECK, &SITE.replace("\"600 W\"", "\"100 W\""));
        assert_eq!(small.verdict, Verdict::Fails, "{}", small.sentence);
        assert!(
            small.sentence.contains("days of the year"),
            "{}",
            small.sentence
        );
    }

    #[test]
    fn unknown_without_sun_and_skyline() {
        let bare = SITE
            .replace("dark_run = \"4 days\"", "")
            .replace("toward = [\"90°\", \"270°\"]", "")
            .replace("dirt = \"5 %\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn days_have_names() {
        assert_eq!(day(Time::from_base(13.5 * 86_400.0)), "14 January");
        assert_eq!(day(Time::from_base(364.9 * 86_400.0)), "31 December");
    }
}
