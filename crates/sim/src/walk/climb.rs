//! The way uphill from a touch to one that ends badly: bad walks may be one in a hundred thousand, on slopes that many more
//! walks touch.

use super::evaluate::Found;
use super::path::Case;

/// Steps of a climb, first and last, as shares of what a coordinate ranges over.
const FIRST: f64 = 1.0 / 16.0;
const LAST: f64 = 1.0 / 4096.0;
/// Most rounds of a climb: some slopes are long and end nowhere.
const ROUNDS: usize = 200;

/// Moves one coordinate after the other within its range as long as somebody is pressed harder, in ever smaller steps; what
/// ends badly, where a walk on the way does. `run` has no walk for some points.
pub(super) fn climbed<const N: usize>(
    (mut severity, mut point): (f64, [f64; N]),
    ranges: &[(f64, f64); N],
    run: &dyn Fn([f64; N]) -> Option<(Case, Found)>,
) -> Option<(Case, Found)> {
    let mut step = FIRST;
    for _ in 0..ROUNDS {
        let mut is_higher = false;
        for (at, (low, high)) in ranges
            .iter()
            .enumerate()
            .filter(|(_, (low, high))| high > low)
        {
            for by in [step, -step] {
                let mut moved = point;
                moved[at] = (moved[at] + by * (high - low)).clamp(*low, *high);
                let Some((case, found)) = run(moved) else {
                    continue;
                };
                if found.class.is_bad() {
                    return Some((case, found));
                }
                let Some((_, harm)) = found.touch.filter(|(_, harm)| harm.severity > severity)
                else {
                    continue;
                };
                (severity, point, is_higher) = (harm.severity, moved, true);
            }
        }
        if !is_higher {
            step /= 2.0;
        }
        if step < LAST {
            break;
        }
    }
    None
}
