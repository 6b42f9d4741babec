//! Curves of a gate's motion as plots: what design knows of a travel, drawn.

use design::curves::{Graph, Lines, Meaning, TravelCurve, travel_curves};
use draw::{Chart, Marked, Part, Plot, Scene, Series, Stretch};
use quantity::{Quantity, UnitSystem};
use site::{Gate, Site};

/// The plots of a gate on paper, each with the first part of the name of its file.
pub(crate) fn scenes(site: &Site, gate: &Gate) -> Vec<(String, Scene)> {
    let charts = charts(site, gate).into_iter();
    charts.map(|(name, chart)| (name, chart.scene())).collect()
}

/// The plots of a gate, each with the first part of the name of its file.
pub(crate) fn charts(site: &Site, gate: &Gate) -> Vec<(String, Chart)> {
    let units = site.site.unit_system();
    let of_gate = travel_curves(site)
        .into_iter()
        .filter(|curve| gate.id == *curve.gate);
    let mut charts: Vec<(String, Chart)> = Vec::new();
    for curve in of_gate {
        let (name, chart) = chart(&curve, units);
        let alike = charts
            .iter()
            .filter(|(other, _)| other.starts_with(name))
            .count();
        let name = if alike == 0 {
            name.to_owned()
        } else {
            format!("{name}-{}", alike + 1)
        };
        charts.push((name, chart));
    }
    charts
}

fn chart(curve: &TravelCurve, units: UnitSystem) -> (&'static str, Chart) {
    match &curve.graph {
        Graph::Speed(lines) => {
            let plot = plot(curve, lines, ("time from the start", "speed of the leaf"));
            ("gate-speed", plot.chart(units))
        }
        Graph::Force(lines) => {
            let plot = plot(
                curve,
                lines,
                ("way that the leaf stands open", "force on the leaf"),
            );
            ("gate-force", plot.chart(units))
        }
        Graph::Torque(lines) => {
            let plot = plot(
                curve,
                lines,
                ("angle by which the leaf stands open", "torque on the leaf"),
            );
            ("gate-torque", plot.chart(units))
        }
    }
}

fn plot<X: Quantity, Y: Quantity>(
    curve: &TravelCurve,
    lines: &Lines<X, Y>,
    (across, up): (&str, &str),
) -> Plot<X, Y> {
    let mut plot = Plot::new(curve.title.as_str(), across, up);
    let names: Vec<&str> = lines.lines.iter().map(|line| line.name).collect();
    plot.description = format!("{} over {across}: {}.", capitalized(up), names.join("; "));
    plot.series = lines
        .lines
        .iter()
        .map(|line| Series {
            name: line.name.to_owned(),
            points: line.points.clone(),
            part: part(line.meaning),
        })
        .collect();
    plot.marked = lines
        .points
        .iter()
        .map(|(at, words)| Marked {
            at: *at,
            words: words.clone(),
        })
        .collect();
    plot.stretches = lines
        .stretches
        .iter()
        .map(|(from, to, name)| Stretch {
            from: *from,
            to: *to,
            name: (*name).to_owned(),
        })
        .collect();
    plot.remarks.clone_from(&curve.remarks);
    plot
}

fn part(meaning: Meaning) -> Part {
    match meaning {
        Meaning::Demand => Part::Demand,
        Meaning::OtherDemand => Part::Limit,
        Meaning::EasierDemand => Part::Aside,
        Meaning::Capacity => Part::Capacity,
    }
}

fn capitalized(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
