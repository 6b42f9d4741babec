//! What a gate's motion looks like over its travel, as curves: speed over time, and what its drive is asked for and has.
//!
//! Everything is at the values as written, without their tolerances. A curve whose facts are missing is not there; the
//! findings tell what is missing.

mod pull;
mod rising;
mod speed;
mod torque;

use crate::asking::{Asking, Lack};
use quantity::{Angle, Force, Length, Time, Torque, Velocity};
use site::{Gate, Site};

/// One curve sheet of a gate.
#[derive(Debug, Clone, PartialEq)]
pub struct TravelCurve {
    /// The gate, by its name on the site.
    pub gate: String,
    /// What is shown: `Pull of gate main`.
    pub title: String,
    /// The lines.
    pub graph: Graph,
    /// Whole sentences: what was taken for granted.
    pub remarks: Vec<String>,
}

/// What stands over what.
#[derive(Debug, Clone, PartialEq)]
pub enum Graph {
    /// Speed of the leaf's edge over time.
    Speed(Lines<Time, Velocity>),
    /// Force on a leaf over the way that it has opened.
    Force(Lines<Length, Force>),
    /// Torque on a leaf over the angle by which it has opened.
    Torque(Lines<Angle, Torque>),
}

/// Lines over one pair of axes.
#[derive(Debug, Clone, PartialEq)]
pub struct Lines<X, Y> {
    /// The lines.
    pub lines: Vec<Line<X, Y>>,
    /// Points that are pointed out, with words.
    pub points: Vec<((X, Y), String)>,
    /// Stretches that have a name.
    pub stretches: Vec<(X, X, &'static str)>,
}

/// A line.
#[derive(Debug, Clone, PartialEq)]
pub struct Line<X, Y> {
    /// What it is.
    pub name: &'static str,
    /// What it is to the reader.
    pub meaning: Meaning,
    /// Its points in order.
    pub points: Vec<(X, Y)>,
}

/// What a line is to the reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meaning {
    /// What is asked of the drive, or what the leaf does.
    Demand,
    /// The same in the other direction.
    OtherDemand,
    /// The same in easier conditions.
    EasierDemand,
    /// What the drive has.
    Capacity,
}

/// The curves of every gate whose facts are known, in the order of the site.
pub fn travel_curves(site: &Site) -> Vec<TravelCurve> {
    let units = site.site.unit_system();
    let mut curves = Vec::new();
    for gate in &site.gate {
        curves.extend(speed::speed(&mut Asking::new(units), gate));
        curves.extend(pull::pull(&mut Asking::new(units), site, gate));
        curves.extend(torque::torque(units, site, gate));
        curves.extend(rising::rising_curve(&mut Asking::new(units), site, gate));
    }
    curves
}

/// What keeps the curves of a gate from being drawn: where each missing fact belongs, and the line to write.
pub fn missing(site: &Site, gate: &Gate) -> Vec<String> {
    let units = site.site.unit_system();
    let mut lines: Vec<String> = Vec::new();
    let mut note = |asking: &Asking<'_>, is_drawn: bool| {
        for line in asking.lacks.iter().map(Lack::told) {
            if !is_drawn && !lines.contains(&line) {
                lines.push(line);
            }
        }
    };
    let mut asking = Asking::new(units);
    let is_drawn = speed::speed(&mut asking, gate).is_some();
    note(&asking, is_drawn);
    let mut asking = Asking::new(units);
    let is_drawn = pull::pull(&mut asking, site, gate).is_some();
    note(&asking, is_drawn);
    for (asking, is_drawn) in torque::asked(units, site, gate) {
        note(&asking, is_drawn);
    }
    let mut asking = Asking::new(units);
    let is_drawn = rising::rising_curve(&mut asking, site, gate).is_some();
    note(&asking, is_drawn);
    lines
}
