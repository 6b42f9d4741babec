//! Voltages: what each load gets in each case, and the way to the one that has the least to spare.

use super::{Group, Picture, Untold, none};
use design::power::{LoadStanding, Moment, ShownLoad, VoltageAlong, Worked, shown, voltages_along};
use draw::{Chart, Levels, Marked, Part, Plot, Series};
use quantity::{Length, Quantity as _, UnitSystem, Voltage, print};
use site::Site;

/// Name of the group.
pub(super) const NAME: &str = "voltage";

/// Every source that feeds something.
pub(super) fn group(site: &Site) -> Group {
    let units = site.site.unit_system();
    let power = shown(site);
    let along = voltages_along(site);
    let mut pictures = Vec::new();
    for source in &power.sources {
        let loads: Vec<&ShownLoad> = power
            .loads
            .iter()
            .filter(|load| load.source == source.id && load.lowest.is_some())
            .collect();
        if loads.is_empty() {
            continue;
        }
        let levels = levels(&source.id, &power.cases, &loads, units);
        pictures.push(Picture::levels(format!("voltage-at-{}", source.id), levels));
        let way = along.iter().find(|way| way.source == source.id);
        pictures.extend(
            way.map(|way| Picture::curves(format!("voltage-along-{}", source.id), run(way, units))),
        );
    }
    let mut untold: Vec<Untold> = power
        .loads
        .iter()
        .filter(|load| load.lowest.is_none() && !load.missing.is_empty())
        .map(|load| Untold {
            title: format!("Voltage at {}", load.id),
            why: "Missing:".to_owned(),
            write: load.missing.clone(),
        })
        .collect();
    if power.loads.is_empty() {
        untold.push(none(
            "Voltage at each device",
            "Nothing on this site names what feeds it. Write",
            "supply = \"supply-24\"",
        ));
    }
    Group {
        name: NAME,
        title: "Voltage at each device",
        pictures,
        untold,
    }
}

fn levels(source: &str, cases: &[&'static str], loads: &[&ShownLoad], units: UnitSystem) -> Levels {
    let values = |load: &ShownLoad| {
        let moments = load.moments.iter();
        let at = |moment: &Worked<Moment>| match moment {
            Worked::Known(Moment::Stands { voltage, .. }) => Some(*voltage),
            Worked::Known(Moment::Collapses) => Some(Voltage::from_base(0.0)),
            Worked::Unknown | Worked::Apart => None,
        };
        moments.map(at).chain([load.lowest]).collect::<Vec<_>>()
    };
    let rows: Vec<_> = loads
        .iter()
        .map(|load| (load.id.clone(), values(load), load.least))
        .collect();
    let names = cases.iter().map(|case| (*case).to_owned());
    let mut levels = Levels::of(
        (format!("Voltage at what {source} feeds"), "voltage"),
        names.chain(["drawing its most".to_owned()]).collect(),
        &rows,
        units,
    );
    levels.description = format!(
        "For each load on {source} the voltage that it gets in each case, and the least at which it works."
    );
    for (row, load) in levels.rows.iter_mut().zip(loads) {
        row.words = words(load, units);
        row.fails = load.standing == LoadStanding::TooLow;
    }
    levels.remarks = vec![
        "Everything at the bad end of its tolerance; as it draws its own greatest current."
            .to_owned(),
    ];
    levels
}

fn words(load: &ShownLoad, units: UnitSystem) -> String {
    let lowest = load.lowest.map_or_else(String::new, |lowest| {
        format!("lowest {}", print(lowest, units))
    });
    let needs = load.least.map_or_else(
        || "no least".to_owned(),
        |least| format!("needs {}", print(least, units)),
    );
    let standing = match load.standing {
        LoadStanding::Holds => "holds",
        LoadStanding::NotSure => "holds as written, not at the bad end of every tolerance",
        LoadStanding::TooLow => "too low",
        LoadStanding::NoLeast => "only gets less warm",
        LoadStanding::Unknown => "unknown",
    };
    format!("{lowest}, {needs}: {standing}")
}

/// How the lines of cases are told apart.
const PARTS: [Part; 5] = [
    Part::Demand,
    Part::OtherDemand,
    Part::Capacity,
    Part::Limit,
    Part::Aside,
];

fn run(way: &VoltageAlong, units: UnitSystem) -> Chart {
    let mut plot: Plot<Length, Voltage> = Plot::new(
        format!("Voltage on the way from {} to {}", way.source, way.load),
        format!("way from {}", way.source),
        "voltage",
    );
    plot.description = format!(
        "Of all that {} feeds, {} has the least to spare: the voltage along {} in each case.",
        way.source,
        way.load,
        way.cables.join(", ")
    );
    plot.series = way
        .cases
        .iter()
        .rev()
        .zip(PARTS.iter().chain([&Part::Aside]))
        .map(|((name, points), part)| Series {
            name: (*name).to_owned(),
            points: points.clone(),
            part: *part,
        })
        .collect();
    plot.series.push(Series {
        name: format!("least at which {} works", way.load),
        points: vec![(Length::from_base(0.0), way.least), (way.length, way.least)],
        part: Part::Limit,
    });
    plot.marked = vec![Marked {
        at: (way.length, way.lowest),
        words: format!("lowest\n{}", print(way.lowest, units)),
    }];
    plot.remarks = vec![format!(
        "{} has the least to spare of all that {} feeds. By {}, there and back; everything at the bad end of its tolerance.",
        way.load,
        way.source,
        way.cables.join(", ")
    )];
    plot.chart(units)
}
