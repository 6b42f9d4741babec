//! The warmth in each enclosure as plots: a cold night, and the hottest day with a heater that sticks.

use crate::sheets::Planned;
use design::heat::{Followed, Limit, Warmth, warmth};
use draw::{Chart, Marked, North, Part, Plot, ScaleChoice, Series};
use quantity::{Quantity as _, Ratio, Temperature, Time, UnitSystem, print};
use site::Site;

/// A plot of time and temperature.
type Curves = Plot<Time, Temperature>;

/// Seconds of a quarter of an hour, and of a day.
const QUARTER: f64 = 900.0;
const DAY: f64 = 86_400.0;

/// The plots of every enclosure whose facts are written.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let units = site.site.unit_system();
    let alone = site.enclosure.len() == 1;
    let mut planned = Vec::new();
    for one in warmth(site) {
        for (what, chart) in charts(&one, units) {
            planned.push(Planned {
                name: if alone {
                    format!("enclosure-{what}")
                } else {
                    format!("enclosure-{}-{what}", one.id)
                },
                scene: chart.scene(),
                north: North::NotSeenFromAbove,
                scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
                half: true,
            });
        }
    }
    planned
}

/// The cold night and the hottest day of an enclosure, as far as their facts are written.
pub(crate) fn charts(one: &Warmth, units: UnitSystem) -> Vec<(&'static str, Chart)> {
    let cold = cold(one, units).map(|chart| ("cold", chart));
    let hot = hot(one, units).map(|chart| ("hot", chart));
    cold.into_iter().chain(hot).collect()
}

/// A cold night.
fn cold(one: &Warmth, units: UnitSystem) -> Option<Chart> {
    let night = one.night.as_ref()?;
    let mut plot = plot(format!("Enclosure {} in the coldest night", one.id));
    plot.series = vec![inside("air inside", night, Part::Demand), outside(night)];
    let limits = one
        .limits
        .iter()
        .filter_map(|limit| Some((limit, limit.coldest?)));
    let first = limits.reduce(|one, other| if other.1 > one.1 { other } else { one });
    if let Some((limit, at)) = first {
        plot.series
            .push(level(limit, "stops first in the cold", at));
    }
    let coldest = night.inside.coldest;
    plot.marked = vec![mark(
        coldest,
        format!("coldest inside\n{}", print(coldest.1, units)),
    )];
    plot.remarks = vec![
        cold_words(one, night, units),
        "In wind, which doubles what the walls lose; air coldest at three in the morning and 10 °C (18 °F) warmer in the afternoon, no sun. Everything at its nominal value.".to_owned(),
    ];
    plot.description = format!(
        "Air inside {} through a cold night beside the air outside.",
        one.id
    );
    Some(plot.chart(units))
}

fn cold_words(one: &Warmth, night: &Followed, units: UnitSystem) -> String {
    let Some((heater, (on, off))) = one.heater.zip(one.thermostat) else {
        return "It has no heater.".to_owned();
    };
    format!(
        "Heater of {}, on below {} and off above {}: on for {:.0} % of the day, {} in the day.",
        print(heater, units),
        print(on, units),
        print(off, units),
        night.inside.heater_on.base() * 100.0,
        energy(night.inside.heater_gives.base())
    )
}

/// An energy in kilowatt hours.
fn energy(joules: f64) -> String {
    format!("{:.2} kWh", joules / 3.6e6)
}

/// The hottest day, with the heater off and stuck on.
fn hot(one: &Warmth, units: UnitSystem) -> Option<Chart> {
    let day = one.day.as_ref()?;
    let mut plot = plot(format!("Enclosure {} on the hottest day", one.id));
    plot.series = vec![
        inside("air inside, heater off", day, Part::Demand),
        outside(day),
    ];
    let limits = one
        .limits
        .iter()
        .filter_map(|limit| Some((limit, limit.hottest?)));
    let first = limits.reduce(|one, other| if other.1 < one.1 { other } else { one });
    if let Some((limit, at)) = first {
        plot.series
            .push(level(limit, "gives up first in the heat", at));
    }
    let hottest = day.inside.hottest;
    plot.marked = vec![mark(
        hottest,
        format!("hottest inside\n{}", print(hottest.1, units)),
    )];
    if let Some(stuck) = &one.stuck {
        let name = "thermostat stuck closed, cut-out works";
        plot.series.push(inside(name, stuck, Part::Limit));
    }
    if let Some(unchecked) = &one.unchecked {
        let name = "thermostat stuck closed, no cut-out";
        plot.series.push(inside(name, unchecked, Part::Aside));
        let worst = unchecked.inside.hottest;
        plot.marked.push(mark(
            worst,
            format!("stuck, no cut-out\n{}", print(worst.1, units)),
        ));
    }
    plot.remarks = vec![hot_words(one, units), sun_words(one)];
    plot.description = format!(
        "Air inside {} on the hottest day beside the air outside, and what a heater that sticks does.",
        one.id
    );
    Some(plot.chart(units))
}

fn hot_words(one: &Warmth, units: UnitSystem) -> String {
    match (one.heater, one.cut_out) {
        (None, _) => "It has no heater that could stick.".to_owned(),
        (Some(heater), None) => format!(
            "Heater of {}; no cut-out of its own opens its feed. Near 38 °C (100 °F) is usual.",
            print(heater, units)
        ),
        (Some(heater), Some(opens)) => format!(
            "Heater of {}; the cut-out in its feed opens at {} (near 38 °C, 100 °F, is usual) and is taken to close again 10 °C (18 °F) below.{}",
            print(heater, units),
            print(opens, units),
            stays_open(one)
        ),
    }
}

/// Whether a cut-out that once opened stays open on that day.
fn stays_open(one: &Warmth) -> &'static str {
    match &one.stuck {
        Some(stuck) if stuck.inside.heater_on.base() < 1e-9 => {
            " Once open it stays open on that day: the curve lies on that with the heater off."
        }
        _ => "",
    }
}

fn sun_words(one: &Warmth) -> String {
    let sun = if one.by_face {
        "Clear sky; the sun goes around the faces that it can reach"
    } else {
        "Clear sky; all that the sun can reach is taken to look at it all day, which is on the safe side"
    };
    format!(
        "{sun}. Still air, 10 °C (18 °F) cooler at three in the morning. Everything at its nominal value."
    )
}

fn plot(title: String) -> Curves {
    Plot::new(title, "hour of the day by the sun", "temperature")
}

fn inside(name: &str, followed: &Followed, part: Part) -> Series<Time, Temperature> {
    let mut time = -QUARTER;
    let quarters = followed.inside.quarters.iter().map(|inside| {
        time += QUARTER;
        (Time::from_base(time), *inside)
    });
    Series {
        name: name.to_owned(),
        points: quarters.collect(),
        part,
    }
}

fn outside(followed: &Followed) -> Series<Time, Temperature> {
    let mut time = -4.0 * QUARTER;
    let hours = followed.outside.iter().chain(followed.outside.first());
    let hours = hours.map(|outside| {
        time += 4.0 * QUARTER;
        (Time::from_base(time), *outside)
    });
    Series {
        name: "air outside".to_owned(),
        points: hours.collect(),
        part: Part::OtherDemand,
    }
}

/// A limit as a level line.
fn level(limit: &Limit, what: &str, at: Temperature) -> Series<Time, Temperature> {
    Series {
        name: format!("{what}: {}", limit.name),
        points: vec![(Time::from_base(0.0), at), (Time::from_base(DAY), at)],
        part: Part::Capacity,
    }
}

fn mark(at: (Time, Temperature), words: String) -> Marked<Time, Temperature> {
    Marked { at, words }
}
