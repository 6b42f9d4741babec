//! A plan found in whole numbers, laid out on the bars and pieces as they were given.

use super::fill::{Plan as Filled, score};
use super::relax;
use super::search::Found;
use super::sums::Sums;
use super::whole::{Whole, nanometers};
use super::{Cut, Cutting, Least, Plan, Proof, Uncuttable};
use quantity::{Length, Quantity as _};

/// The plan of no pieces at all.
pub(super) fn nothing(given: &Cutting, whole: &Whole) -> Plan {
    Plan {
        cuts: Vec::new(),
        cost: least(whole, 0),
        bound: least(whole, 0),
        proof: Proof::Worths,
        worths: vec![0; given.pieces.len()],
    }
}

/// A plan from the search.
pub(super) fn out(
    given: &Cutting,
    (whole, sums): (&Whole, &Sums),
    found: Found,
) -> Result<Plan, Uncuttable> {
    let Some(filled) = found.plan else {
        return Err(if found.closed {
            Uncuttable::TooFew
        } else {
            Uncuttable::NotFound
        });
    };
    let score = score(whole, &filled);
    let bound = if found.closed {
        score
    } else {
        whole.score_of(found.bound).min(score)
    };
    let proof = match found.looked_at {
        _ if bound < score => Proof::Open,
        0 | 1 => Proof::Worths,
        cases => Proof::Search(cases),
    };
    Ok(Plan {
        cuts: cuts(given, whole, &filled),
        cost: least(whole, score),
        bound: least(whole, bound),
        proof,
        worths: worths(given, (whole, sums), &found.worths, score),
    })
}

/// A plan without a search, for lengths with too little in common: longest pieces first, each into the fullest bar that takes
/// it, bars as cheap for their room as there are.
pub(super) fn by_hand(given: &Cutting, whole: &Whole) -> Result<Plan, Uncuttable> {
    let filled = first_fit(whole).ok_or(Uncuttable::NotFound)?;
    let score = score(whole, &filled);
    let bound = by_room(whole).min(score);
    Ok(Plan {
        cuts: cuts(given, whole, &filled),
        cost: least(whole, score),
        bound: least(whole, bound),
        proof: if bound < score {
            Proof::Open
        } else {
            Proof::Worths
        },
        worths: vec![0; given.pieces.len()],
    })
}

/// What all pieces score at the rate of the bar that is cheapest for its room.
fn by_room(whole: &Whole) -> i64 {
    let pairs = whole.widths.iter().zip(&whole.demand);
    let width: i128 = pairs
        .map(|(width, count)| i128::from(*width) * i128::from(*count))
        .sum();
    let each = whole.rooms.iter().zip(&whole.scores);
    let bounds = each
        .filter(|(room, _)| **room > 0)
        .map(|(room, score)| width * i128::from(*score) / i128::from(*room));
    i64::try_from(bounds.min().unwrap_or(0)).unwrap_or(i64::MAX)
}

fn first_fit(whole: &Whole) -> Option<Filled> {
    let mut open: Vec<(usize, i64, Vec<u32>)> = Vec::new();
    let mut left = whole.counts.clone();
    for (piece, (&width, &count)) in whole.widths.iter().zip(&whole.demand).enumerate() {
        for _ in 0..count {
            let fitting = open.iter_mut().filter(|bar| bar.1 >= width);
            if let Some(bar) = fitting.min_by_key(|bar| bar.1) {
                bar.1 -= width;
                bar.2[piece] += 1;
                continue;
            }
            let usable = (0..left.len()).filter(|bar| left[*bar] > 0 && whole.rooms[*bar] >= width);
            let rate = |bar: &usize| {
                i128::from(whole.costs[*bar]) * 1_000_000 / i128::from(whole.rooms[*bar].max(1))
            };
            let bar = usable.min_by_key(rate)?;
            left[bar] -= 1;
            let mut counts = vec![0; whole.widths.len()];
            counts[piece] = 1;
            open.push((bar, whole.rooms[bar] - width, counts));
        }
    }
    let patterns = open
        .into_iter()
        .map(|(bar, _, counts)| (super::whole::Pattern { bar, counts }, 1));
    Some(patterns.collect())
}

/// A score as it is said.
#[allow(
    clippy::cast_precision_loss,
    reason = "lengths drawn are far below what a double holds"
)]
fn least(whole: &Whole, score: i64) -> Least {
    if whole.free {
        Least::Drawn(Length::from_base(score as f64 * whole.unit as f64 / 1e9))
    } else {
        Least::Price(u64::try_from(score).unwrap_or_default())
    }
}

/// What each piece given is worth, so that no bar holds more worth than it costs and all pieces together are worth more than
/// anything cheaper than the plan; nothing where these worths do not show that, as where bars are few or cost nothing.
fn worths(
    given: &Cutting,
    (whole, sums): (&Whole, &Sums),
    of_kinds: &[f64],
    score: i64,
) -> Vec<u64> {
    let mut worths = vec![0; given.pieces.len()];
    if whole.free || of_kinds.len() != whole.demand.len() {
        return worths;
    }
    let mut of_kinds = in_parts(of_kinds, 100.0 / relax::to_float(whole.weight));
    let share = least_share(whole, sums, &of_kinds);
    if share < 1.0 {
        let floats: Vec<f64> = of_kinds
            .iter()
            .map(|worth| relax::to_float(*worth))
            .collect();
        of_kinds = in_parts(&floats, share);
    }
    let pairs = of_kinds.iter().zip(&whole.demand);
    let all: i128 = pairs
        .map(|(worth, count)| i128::from(*worth) * i128::from(*count))
        .sum();
    let step = 100 * i128::from(whole.step);
    let shown = all.div_euclid(step) + i128::from(all.rem_euclid(step) > 0);
    if least_share(whole, sums, &of_kinds) < 1.0 || shown * step < 100 * i128::from(score) {
        return worths;
    }
    for (pieces, worth) in whole.pieces.iter().zip(of_kinds) {
        for piece in pieces {
            worths[*piece] = u64::try_from(worth).unwrap_or_default();
        }
    }
    worths
}

/// Each worth times a factor, rounded down.
#[allow(
    clippy::cast_possible_truncation,
    reason = "worths are not below nothing and hold a few digits"
)]
fn in_parts(worths: &[f64], times: f64) -> Vec<i64> {
    worths
        .iter()
        .map(|worth| (worth * times).floor() as i64)
        .collect()
}

/// What a bar costs against the most that pieces on it are worth, for the bar where that is least; one or more where no bar
/// holds more worth than it costs.
fn least_share(whole: &Whole, sums: &Sums, worths: &[i64]) -> f64 {
    let filled = sums.best(&whole.widths, worths, &whole.demand);
    let bars = whole.rooms.iter().zip(&whole.scores);
    let shares = bars.filter_map(|(room, score)| {
        let worth = filled.worth(*room);
        (worth > 0).then(|| relax::to_float(100 * score) / relax::to_float(worth))
    });
    shares.fold(f64::INFINITY, f64::min)
}

/// Bars and pieces as they were given, cut by cut.
fn cuts(given: &Cutting, whole: &Whole, filled: &Filled) -> Vec<Cut> {
    let mut wanted: Vec<u32> = given.pieces.iter().map(|piece| piece.count).collect();
    let mut there: Vec<u32> = given
        .bars
        .iter()
        .map(|bar| bar.count.unwrap_or(u32::MAX))
        .collect();
    let mut cuts: Vec<Cut> = Vec::new();
    for (pattern, times) in filled {
        for _ in 0..*times {
            let mut pieces = Vec::new();
            for (kind, count) in pattern.counts.iter().enumerate() {
                for _ in 0..*count {
                    let next = whole.pieces[kind].iter().find(|piece| wanted[**piece] > 0);
                    // A pattern may give more than is wanted; that much is left on the bar.
                    if let Some(piece) = next {
                        wanted[*piece] -= 1;
                        pieces.push(*piece);
                    }
                }
            }
            let of_kind = whole.bars[pattern.bar].iter();
            let bar = of_kind.copied().find(|bar| there[*bar] > 0);
            let Some(bar) = bar.filter(|_| !pieces.is_empty()) else {
                continue;
            };
            there[bar] -= 1;
            match cuts
                .iter_mut()
                .find(|cut| cut.bar == bar && cut.pieces == pieces)
            {
                Some(cut) => cut.times += 1,
                None => cuts.push(Cut {
                    bar,
                    times: 1,
                    left: left(given, bar, &pieces),
                    pieces,
                }),
            }
        }
    }
    let longest = |cut: &Cut| {
        cut.pieces
            .first()
            .map_or(0, |piece| nanometers(given.pieces[*piece].length))
    };
    cuts.sort_by_key(|cut| (-longest(cut), nanometers(cut.left)));
    cuts
}

/// What is left behind the last cut.
#[allow(
    clippy::cast_precision_loss,
    reason = "lengths up to ten kilometers in nanometers are whole in a double"
)]
fn left(given: &Cutting, bar: usize, pieces: &[usize]) -> Length {
    let bar = &given.bars[bar];
    let each = |piece: &usize| nanometers(given.pieces[*piece].length) + nanometers(given.kerf);
    let used: i64 = pieces.iter().map(each).sum();
    let left = nanometers(bar.length) - nanometers(bar.trim) - used;
    Length::from_base(left.max(0) as f64 / 1e9)
}
