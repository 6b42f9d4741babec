//! Figures with their error, from sixteen groups of days.

use super::hour::Hour;
use quantity::Quantity;

/// Groups of days that are counted apart.
pub(super) const GROUPS: usize = 16;
/// Student's factor for 95 % between two limits with fifteen degrees of freedom, as tables print it.
const STUDENT: f64 = 2.131;

/// A figure with its error at 95 %.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Estimate<Q> {
    /// The figure over all days.
    pub value: Q,
    /// How far the true figure may be off, from the spread of sixteen independent groups of days.
    pub error: Q,
}

impl<Q: Quantity> Estimate<Q> {
    /// The upper end of the interval.
    pub fn most(&self) -> Q {
        Q::from_base(self.value.base() + self.error.base())
    }

    /// A figure of all days, and its spread between the groups.
    pub(super) fn of(all: &Hour, groups: &[&Hour], figure: impl Fn(&Hour) -> f64) -> Self {
        Self {
            value: Q::from_base(figure(all)),
            error: Q::from_base(error(groups, figure)),
        }
    }
}

/// Half of the interval in which the mean of the groups lies.
#[allow(clippy::cast_precision_loss, reason = "sixteen")]
fn error(groups: &[&Hour], figure: impl Fn(&Hour) -> f64) -> f64 {
    let figures: Vec<f64> = groups.iter().map(|hour| figure(hour)).collect();
    let count = figures.len() as f64;
    let mean = figures.iter().sum::<f64>() / count;
    let squares: f64 = figures.iter().map(|figure| (figure - mean).powi(2)).sum();
    STUDENT * (squares / (count * (count - 1.0))).sqrt()
}
