//! The voltage on the way from a source to the load on it that has the least to spare, in each case.

use super::part::Worst;
use super::{ShownLoad, Worked};
use crate::circuit::parts::Place;
use crate::circuit::{CASES, Circuits, Part, Run, State};
use quantity::{Length, Quantity as _, Ratio, Voltage};

/// The voltage on the way to a load.
#[derive(Debug, Clone)]
pub struct VoltageAlong {
    /// The source.
    pub source: String,
    /// The load.
    pub load: String,
    /// The cables on the way, from the source on.
    pub cables: Vec<String>,
    /// Each case that can be worked: its name, and the voltage over the way from the source; the load draws its own greatest
    /// current.
    pub cases: Vec<(&'static str, Vec<(Length, Voltage)>)>,
    /// The least voltage at which the load works.
    pub least: Voltage,
    /// The lowest that it gets.
    pub lowest: Voltage,
    /// The length of the way.
    pub length: Length,
}

/// For each source, the way to the load with the smallest share to spare among those that cables bring power.
pub(super) fn all(circuits: &Circuits<'_>, loads: &[ShownLoad]) -> Vec<VoltageAlong> {
    let mut found: Vec<(VoltageAlong, Ratio)> = Vec::new();
    for load in loads {
        let (Some(lowest), Some(least), Some((part, taker))) = (load.lowest, load.least, load.at)
        else {
            continue;
        };
        let spare = lowest / least;
        let known = found
            .iter()
            .position(|(known, _)| known.source == load.source);
        if known.is_some_and(|at| found[at].1 <= spare) {
            continue;
        }
        let part = &circuits.parts[part];
        let Some(along) = along(circuits, (part, taker), load, (lowest, least)) else {
            continue;
        };
        match known {
            Some(at) => found[at] = (along, spare),
            None => found.push((along, spare)),
        }
    }
    found.into_iter().map(|(along, _)| along).collect()
}

fn along<'s>(
    circuits: &Circuits<'s>,
    (part, taker): (&Part<'s>, usize),
    load: &ShownLoad,
    (lowest, least): (Voltage, Voltage),
) -> Option<VoltageAlong> {
    let takes = part.takers[taker].takes;
    let way = way(part, part.takers[taker].place)?;
    let lengths: Vec<Length> = way
        .iter()
        .map(|(_, run)| Some(run.cable.length.as_ref()?.nominal()))
        .collect::<Option<_>>()?;
    let states = Worst::of(circuits, part).states(Some(takes.id()))?;
    let mut cases = Vec::new();
    for (case, state) in CASES.iter().zip(&states) {
        let Worked::Known(State::Stands { ends, .. }) = state else {
            continue;
        };
        let mut points = Vec::new();
        let mut from = Length::from_base(0.0);
        for ((run, _), length) in way.iter().zip(&lengths) {
            let [near, far] = ends[*run];
            points.push((from, near));
            from += *length;
            points.push((from, far));
        }
        points.dedup();
        cases.push((case.title(), points));
    }
    let length = lengths
        .iter()
        .fold(Length::from_base(0.0), |sum, length| sum + *length);
    (!cases.is_empty()).then(|| VoltageAlong {
        source: load.source.clone(),
        load: load.id.clone(),
        cables: way
            .iter()
            .map(|(_, run)| run.cable.id.to_string())
            .collect(),
        cases,
        least,
        lowest,
        length,
    })
}

/// The runs from a source to a place, each with its number; nothing where none leads there.
fn way<'p, 's>(part: &'p Part<'s>, place: usize) -> Option<Vec<(usize, &'p Run<'s>)>> {
    let mut way = Vec::new();
    let mut at = place;
    for _ in &part.runs {
        let (number, run) = part.runs.iter().enumerate().find(|(_, run)| run.to == at)?;
        way.push((number, run));
        at = run.from;
        if matches!(part.places[at], Place::Source(_)) {
            way.reverse();
            return Some(way);
        }
    }
    None
}
