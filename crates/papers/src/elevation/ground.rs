//! The ground under a gate, seen from the road: as it was surveyed, or as the slope of the track tells it.

use super::layers::Layers;
use super::{length, place, symbols};
use draw::{Figure, Fill, Hatch, Placement, Scene};
use quantity::Quantity as _;
use site::{Gate, GateKind};

/// How deep the hatching of the ground reaches (m).
const DEPTH: f64 = 0.08;

/// Levels farther than this from the gate line are not on it (m).
const ON_LINE: f64 = 0.3;

/// The level of the finished surface along the gate line.
#[derive(Debug, Clone)]
pub(super) struct Ground {
    /// Surveyed levels: along, and up (m).
    levels: Vec<(f64, f64)>,
    /// Rise over run where no levels were surveyed.
    slope: f64,
    known: Known,
}

/// How the level of the ground is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Known {
    Surveyed,
    BySlope,
    Assumed,
}

impl Ground {
    /// The ground of a gate.
    pub(super) fn of(gate: &Gate) -> Self {
        let on_line = |at: &&site::Position| at.y.nominal().base().abs() < ON_LINE;
        let mut levels: Vec<(f64, f64)> = gate
            .ground
            .iter()
            .filter(on_line)
            .map(|at| (at.x.nominal().base(), at.z.nominal().base()))
            .collect();
        levels.sort_by(|one, other| one.0.total_cmp(&other.0));
        let slope = track_slope(gate);
        let known = match (levels.len() > 1, slope) {
            (true, _) => Known::Surveyed,
            (false, Some(_)) => Known::BySlope,
            (false, None) => Known::Assumed,
        };
        Self {
            levels,
            slope: slope.unwrap_or(0.0),
            known,
        }
    }

    /// The level at a distance along the gate (m).
    pub(super) fn level(&self, along: f64) -> f64 {
        if self.known != Known::Surveyed {
            return self.slope * along;
        }
        let within = self.levels.windows(2).find_map(|two| match two {
            [(from, low), (to, high)] if (*from..=*to).contains(&along) && to > from => {
                Some(low + (high - low) * (along - from) / (to - from))
            }
            _ => None,
        });
        let ends = self.levels.first().zip(self.levels.last());
        within.unwrap_or_else(|| {
            ends.map_or(
                0.0,
                |(first, last)| if along < first.0 { first.1 } else { last.1 },
            )
        })
    }

    /// The highest level over a stretch, less a line that rises by so much over run (m).
    pub(super) fn highest_over(&self, (from, to): (f64, f64), rise: f64) -> f64 {
        (0..=100_u32)
            .map(|step| from + (to - from) * f64::from(step) / 100.0)
            .map(|along| self.level(along) - rise * along)
            .fold(f64::NEG_INFINITY, f64::max)
    }

    /// Draws the surface between two ends, and the levels that were surveyed.
    pub(super) fn draw(&self, scene: &mut Scene, layers: &Layers, (left, right): (f64, f64)) {
        let mut stations: Vec<f64> = vec![left];
        stations.extend(
            self.levels
                .iter()
                .map(|(along, _)| *along)
                .filter(|along| (left..right).contains(along)),
        );
        stations.push(right);
        let surface: Vec<_> = stations.iter().map(|x| place(*x, self.level(*x))).collect();
        let below = stations
            .iter()
            .rev()
            .map(|x| place(*x, self.level(*x) - DEPTH));
        let earth: Vec<_> = surface.iter().copied().chain(below).collect();
        scene.add(
            layers.earth,
            Figure::area(earth, Fill::Hatched(Hatch::cut())),
        );
        scene.add_titled(layers.ground, "finished surface", Figure::path(surface));
        for (along, up) in self.levels.iter().filter(|_| self.known == Known::Surveyed) {
            let sign = if *up < 0.0 { "−" } else { "+" };
            let size = draw::dimension_text(length(up.abs()), scene.units);
            let mark = symbols::level(&format!("{sign}{size}"));
            let at = place(*along, self.level(*along));
            scene.add_titled(layers.notes, "surveyed level", Placement::new(mark, at));
        }
        scene.remark(match self.known {
            Known::Surveyed => {
                "Ground as surveyed; levels are from the finished surface at the gate line."
            }
            Known::BySlope => {
                "Ground drawn along the slope of the track; no levels of the ground are given."
            }
            Known::Assumed => "Ground drawn level; no levels of the ground are given.",
        });
    }
}

/// Slope of the track of a slide gate.
pub(super) fn track_slope(gate: &Gate) -> Option<f64> {
    let slides = matches!(gate.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    gate.slope
        .as_ref()
        .filter(|_| slides)
        .map(|slope| slope.nominal().base())
}
