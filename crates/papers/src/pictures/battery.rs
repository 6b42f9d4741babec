//! Batteries that live on panels: what is left on each day of the year.

use super::{Group, Picture, lacking, none};
use design::sunlit::{SunlitBattery, SunlitYear, sunlit};
use draw::{Chart, Marked, Part, Plot, Series};
use quantity::{Power, Quantity as _, Ratio, Time, UnitSystem, print};
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "battery";

/// Seconds of a day, and days of a year.
const DAY: f64 = 86_400.0;
const DAYS: f64 = 365.0;

/// The days of a year on which its months begin, and the last day.
const MONTHS: [f64; 13] = [
    0.0, 31.0, 59.0, 90.0, 120.0, 151.0, 181.0, 212.0, 243.0, 273.0, 304.0, 334.0, DAYS,
];

/// Every battery that panels charge alone.
pub(super) fn group(site: &Site) -> Group {
    let units = site.site.unit_system();
    let (mut pictures, mut untold) = (Vec::new(), Vec::new());
    let batteries = sunlit(site);
    for battery in &batteries {
        match &battery.year {
            Ok(year) => {
                let charge = charge(battery, year, units);
                pictures.push(Picture::curves(
                    format!("battery-year-{}", battery.id),
                    charge,
                ));
                let sun = sun(battery, year, units);
                pictures.push(Picture::curves(format!("panel-year-{}", battery.id), sun));
            }
            Err(missing) => untold.push(lacking(
                format!("Battery {} through the year", battery.id),
                missing.clone(),
            )),
        }
    }
    if batteries.is_empty() {
        untold.push(none(
            "Battery through the year",
            "No battery lives on panels alone here. Where one does, write",
            "[[solar_panel]]",
        ));
    }
    Group {
        name: NAME,
        title: "Battery and sun through the year",
        pictures,
        untold,
    }
}

fn charge(battery: &SunlitBattery, year: &SunlitYear, units: UnitSystem) -> Chart {
    let mut plot: Plot<Time, Ratio> = Plot::new(
        format!("Battery {} through the year", battery.id),
        "day of the year",
        "left of what may be drawn",
    );
    plot.description = format!(
        "What is left in {} on each day of the year, at its emptiest and at its fullest hour.",
        battery.id
    );
    let line = |name: &str, part, of: fn(&(Ratio, Ratio)) -> Ratio| {
        let mut noon = -DAY / 2.0;
        let points = year.days.iter().map(|day| {
            noon += DAY;
            (Time::from_base(noon), of(day))
        });
        Series {
            name: name.to_owned(),
            points: points.collect(),
            part,
        }
    };
    let none = Ratio::from_base(0.0);
    plot.series = vec![
        line("emptiest hour of the day", Part::Demand, |day| day.0),
        line("fullest hour of the day", Part::OtherDemand, |day| day.1),
        Series {
            name: "nothing left that may be drawn".to_owned(),
            points: vec![
                (Time::from_base(0.0), none),
                (Time::from_base(DAYS * DAY), none),
            ],
            part: Part::Limit,
        },
    ];
    plot.marked = vec![Marked {
        at: year.least,
        words: format!("least of the year\n{}", print(year.least.1, units)),
    }];
    let empty = match year.days_without {
        0 => "It is never empty.".to_owned(),
        1 => "It is empty at some hour of 1 day.".to_owned(),
        days => format!("It is empty at some hour of {days} days."),
    };
    plot.remarks = vec![
        format!(
            "{empty} Full, it lasts {} without any sun; the longest run of dark days is {}.",
            print(year.autonomy, units),
            print(year.dark_run, units)
        ),
        "Old battery, hungry devices, panels at the low end of their power; snow that lies on a panel, and years that are darker than the mean, are not counted.".to_owned(),
    ];
    plot.chart(units)
}

fn sun(battery: &SunlitBattery, year: &SunlitYear, units: UnitSystem) -> Chart {
    let mut plot: Plot<Time, Power> = Plot::new(
        format!("What the panels of {} give", battery.id),
        "day of the year",
        "mean power of the month",
    );
    plot.description = format!(
        "Mean power that the panels of {} give in each month.",
        battery.id
    );
    let day = |day: f64| Time::from_base(day * DAY);
    let steps = year.monthly.iter().zip(MONTHS.windows(2));
    let points: Vec<(Time, Power)> = steps
        .flat_map(|(power, ends)| [(day(ends[0]), *power), (day(ends[1]), *power)])
        .collect();
    let least = points
        .iter()
        .copied()
        .reduce(|one, other| if other.1 < one.1 { other } else { one });
    plot.marked = least
        .map(|(at, power)| Marked {
            at: (at + day(15.0), power),
            words: format!("darkest month\n{}", print(power, units)),
        })
        .into_iter()
        .collect();
    plot.series = vec![Series {
        name: "panels".to_owned(),
        points,
        part: Part::Demand,
    }];
    plot.chart(units)
}
