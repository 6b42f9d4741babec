//! A plot whose quantities have become numbers on its axes, for whoever draws it or tells it.

use super::axis::Axis;
use super::{Part, Plot, Series};
use quantity::{Quantity, UnitSystem};

/// A plot in the units of a site.
#[derive(Debug, Clone)]
pub struct Chart {
    /// What is shown.
    pub title: String,
    /// What is to be seen, for those who can't see it.
    pub description: String,
    /// What runs along the axis below.
    pub across: Axis,
    /// What runs up the axis on the left.
    pub up: Axis,
    /// The curves.
    pub curves: Vec<Curve>,
    /// Points that are pointed out.
    pub marks: Vec<Mark>,
    /// Stretches of the axis below that have a name.
    pub spans: Vec<Span>,
    /// Whole sentences under the plot.
    pub remarks: Vec<String>,
    /// The units in which it is told.
    pub(super) units: UnitSystem,
}

/// A curve of a chart: points that are joined by straight lines.
#[derive(Debug, Clone, PartialEq)]
pub struct Curve {
    /// What it is.
    pub name: String,
    /// What it is to the reader.
    pub part: Part,
    /// Its points in order, in the units of the axes.
    pub points: Vec<(f64, f64)>,
}

impl Curve {
    /// It stands at one height all along: a limit.
    pub fn level(&self) -> Option<f64> {
        let (_, first) = self.points.first()?;
        let same = |(_, y): &(f64, f64)| (y - first).abs() <= 1e-9 * first.abs().max(1.0);
        self.points.iter().all(same).then_some(*first)
    }
}

/// A point with words.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// Where it is, in the units of the axes.
    pub at: (f64, f64),
    /// What is there; `\n` begins a new line.
    pub words: String,
}

/// A part of the axis below with a name.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// Where it begins, in the unit of the axis.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// What it is called.
    pub name: String,
}

impl<X: Quantity, Y: Quantity> Plot<X, Y> {
    /// The plot in the units of a site; a point that is no number is left out.
    pub fn chart(&self, units: UnitSystem) -> Chart {
        let points = || self.series.iter().flat_map(|series| &series.points);
        let marked = || self.marked.iter().map(|marked| &marked.at);
        let stretches = self
            .stretches
            .iter()
            .flat_map(|it| [it.from.base(), it.to.base()]);
        let across = points()
            .chain(marked())
            .map(|(x, _)| x.base())
            .chain(stretches);
        let up = points().chain(marked()).map(|(_, y)| y.base());
        let across = Axis::over((&self.across, X::KIND), across, units);
        let up = Axis::over((&self.up, Y::KIND), up, units);
        let at = |(x, y): (X, Y)| (across.in_units(x.base()), up.in_units(y.base()));
        let curve = |series: &Series<X, Y>| Curve {
            name: series.name.clone(),
            part: series.part,
            points: series
                .points
                .iter()
                .map(|point| at(*point))
                .filter(|(x, y)| x.is_finite() && y.is_finite())
                .collect(),
        };
        Chart {
            title: self.title.clone(),
            description: self.description.clone(),
            curves: self.series.iter().map(curve).collect(),
            marks: self
                .marked
                .iter()
                .map(|marked| Mark {
                    at: at(marked.at),
                    words: marked.words.clone(),
                })
                .collect(),
            spans: self
                .stretches
                .iter()
                .map(|stretch| Span {
                    from: across.in_units(stretch.from.base()),
                    to: across.in_units(stretch.to.base()),
                    name: stretch.name.clone(),
                })
                .collect(),
            remarks: self.remarks.clone(),
            across,
            up,
            units,
        }
    }
}
