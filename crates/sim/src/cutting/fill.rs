//! Cutting plans by hand's reasoning: bar after bar, each filled with what is worth most on it.

use super::relax::to_float;
use super::search::Node;
use super::sums::Sums;
use super::whole::{Pattern, Whole};

/// Patterns with how often each is cut.
pub(super) type Plan = Vec<(Pattern, u32)>;

/// What a plan costs.
pub(super) fn cost(whole: &Whole, plan: &[(Pattern, u32)]) -> i128 {
    let costs = plan
        .iter()
        .map(|(pattern, times)| i128::from(whole.costs[pattern.bar]) * i128::from(*times));
    costs.sum()
}

/// What a plan scores.
pub(super) fn score(whole: &Whole, plan: &[(Pattern, u32)]) -> i64 {
    let scores = plan
        .iter()
        .map(|(pattern, times)| whole.scores[pattern.bar].saturating_mul(i64::from(*times)));
    scores.fold(0, i64::saturating_add)
}

/// Fills bars until every piece of a node has its place; nothing where the bars run out.
pub(super) fn filled(whole: &Whole, sums: &Sums, node: &Node, worths: &[f64]) -> Option<Plan> {
    let mut left = node.clone();
    let mut plan = Plan::new();
    let greatest = worths.iter().copied().fold(0.0, f64::max);
    while left.demand.iter().any(|count| *count > 0) {
        let pattern = best(whole, sums, &left, (worths, greatest))?;
        let times = left.how_often(&pattern);
        left.cut(&pattern, times);
        plan.push((pattern, times));
    }
    Some(plan)
}

/// The pattern that costs least beyond what it is worth.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_precision_loss,
    reason = "worths are brought to forty bits"
)]
fn best(
    whole: &Whole,
    sums: &Sums,
    left: &Node,
    (worths, greatest): (&[f64], f64),
) -> Option<Pattern> {
    let scale = 2.0_f64.powi(40) / greatest.max(1e-300);
    let values: Vec<i64> = worths
        .iter()
        .map(|worth| ((worth * scale) as i64).max(1))
        .collect();
    let filled = sums.best(&whole.widths, &values, &left.demand);
    let usable = (0..whole.rooms.len()).filter(|bar| left.most[*bar] > 0);
    let beyond = |bar: usize| {
        let worth = filled.worth(whole.rooms[bar]);
        (to_float(whole.costs[bar]) - worth as f64 / scale, worth > 0)
    };
    let bar = usable
        .map(|bar| (bar, beyond(bar)))
        .filter(|(_, (_, some))| *some)
        .min_by(|one, other| one.1.0.total_cmp(&other.1.0))?
        .0;
    let counts = filled.counts(whole.rooms[bar]);
    Some(Pattern { bar, counts })
}

/// Worths by width, at the price of the bar that is cheapest for its room.
pub(super) fn by_width(whole: &Whole) -> Vec<f64> {
    let each = whole.rooms.iter().zip(&whole.costs).zip(&whole.counts);
    let rate = each
        .filter(|((room, _), count)| **room > 0 && **count > 0)
        .map(|((room, cost), _)| to_float(*cost) / to_float(*room))
        .fold(f64::INFINITY, f64::min);
    let rate = if rate.is_finite() { rate } else { 1.0 };
    whole
        .widths
        .iter()
        .map(|width| to_float(*width) * rate)
        .collect()
}
