//! A cutting problem in whole numbers: the same lengths and the same bars once, saw cuts counted into the pieces.

use super::{Cutting, Uncuttable};
use quantity::{Length, Quantity as _};

/// Pieces beside each other on one kind of bar.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Pattern {
    pub(super) bar: usize,
    pub(super) counts: Vec<u32>,
}

/// A cutting problem in whole numbers.
#[derive(Debug, Clone)]
pub(super) struct Whole {
    /// Width of each kind of piece with its saw cut, falling.
    pub(super) widths: Vec<i64>,
    pub(super) demand: Vec<u32>,
    /// Room on each kind of bar, one saw cut added.
    pub(super) rooms: Vec<i64>,
    /// What one costs, and after that how long it is: `score · weight + drawn`.
    pub(super) costs: Vec<i64>,
    /// How many there are at most.
    pub(super) counts: Vec<u32>,
    /// What one costs alone.
    pub(super) scores: Vec<i64>,
    pub(super) weight: i64,
    /// Every cost is so much or a multiple of it.
    pub(super) step: i64,
    /// Pieces as given that are of each kind.
    pub(super) pieces: Vec<Vec<usize>>,
    /// Bars as given that are of each kind.
    pub(super) bars: Vec<Vec<usize>>,
    /// One unit of what counts where nothing costs anything.
    pub(super) unit: i64,
    /// Nothing costs anything.
    pub(super) free: bool,
}

/// Most pieces in one problem.
const MOST_PIECES: u32 = 5000;
/// Longest length, in meters.
const LONGEST: f64 = 10_000.0;
/// Nothing costs more, in hundredths.
const DEAREST: u64 = 100_000_000;
/// Lengths drawn are told apart to a tenth of a millimeter, in nanometers.
const FINEST: i64 = 100_000;
/// What each bar counts beside the length drawn.
const PER_BAR: i64 = 16;

/// Whole nanometers, in which every sixty-fourth of an inch is whole.
#[allow(
    clippy::cast_possible_truncation,
    reason = "lengths over ten kilometers are refused before"
)]
pub(super) fn nanometers(length: Length) -> i64 {
    (length.base() * 1e9).round() as i64
}

fn refused(given: &Cutting) -> Option<&'static str> {
    let length = |length: Length| length.base().is_finite() && length.base().abs() <= LONGEST;
    let lengths = given.bars.iter().flat_map(|bar| [bar.length, bar.trim]);
    let lengths = lengths.chain(given.pieces.iter().map(|piece| piece.length));
    if !lengths.chain([given.kerf]).all(length) {
        return Some("a length is over 10 km, or no number");
    }
    let below = |length: Length| length.base() < 0.0;
    if below(given.kerf) || given.bars.iter().any(|bar| below(bar.trim)) {
        return Some("a saw cut or a trimmed end is below nothing");
    }
    let pieces = given.pieces.iter().map(|piece| u64::from(piece.count));
    if pieces.sum::<u64>() > u64::from(MOST_PIECES) {
        return Some("these are more than 5000 pieces");
    }
    if given.bars.iter().any(|bar| bar.price > DEAREST) {
        return Some("a bar costs more than a million");
    }
    given
        .pieces
        .iter()
        .any(|piece| nanometers(piece.length) <= 0)
        .then_some("a piece has no length")
}

impl Whole {
    pub(super) fn new(given: &Cutting) -> Result<Self, Uncuttable> {
        if let Some(why) = refused(given) {
            return Err(Uncuttable::Refused(why));
        }
        let kerf = nanometers(given.kerf);
        let room = |bar: &super::Bar| nanometers(bar.length) - nanometers(bar.trim) + kerf;
        let longest = given.bars.iter().map(room).max().unwrap_or(0);
        let too_long = |piece: &super::Piece| nanometers(piece.length) + kerf > longest;
        if let Some(piece) = given
            .pieces
            .iter()
            .position(|piece| piece.count > 0 && too_long(piece))
        {
            return Err(Uncuttable::TooLong { piece });
        }
        let mut whole = Self {
            widths: Vec::new(),
            demand: Vec::new(),
            rooms: Vec::new(),
            costs: Vec::new(),
            counts: Vec::new(),
            scores: Vec::new(),
            weight: 1,
            step: 1,
            pieces: Vec::new(),
            bars: Vec::new(),
            unit: FINEST,
            free: given.bars.iter().all(|bar| bar.price == 0),
        };
        whole.take_pieces(given, kerf);
        whole.take_bars(given, room);
        Ok(whole)
    }

    fn take_pieces(&mut self, given: &Cutting, kerf: i64) {
        let mut order: Vec<usize> = (0..given.pieces.len())
            .filter(|at| given.pieces[*at].count > 0)
            .collect();
        let width = |at: usize| nanometers(given.pieces[at].length) + kerf;
        order.sort_by_key(|at| -width(*at));
        for at in order {
            if self.widths.last() == Some(&width(at)) {
                if let Some(last) = self.demand.last_mut() {
                    *last += given.pieces[at].count;
                }
                if let Some(last) = self.pieces.last_mut() {
                    last.push(at);
                }
            } else {
                self.widths.push(width(at));
                self.demand.push(given.pieces[at].count);
                self.pieces.push(vec![at]);
            }
        }
    }

    fn take_bars(&mut self, given: &Cutting, room: impl Fn(&super::Bar) -> i64) {
        let all = self.total();
        let common = self.widths.iter().copied().fold(0, divisor).max(1);
        let lengths = given.bars.iter().map(|bar| nanometers(bar.length));
        self.unit = lengths.fold(0, divisor).max(FINEST);
        let free = self.free;
        let drawn = |bar: &super::Bar| (nanometers(bar.length) + self.unit - 1) / self.unit;
        let longest = given.bars.iter().map(drawn).max().unwrap_or(1);
        // Where length counts, plans of the same length are told apart by how many bars they take.
        let beside = if free { PER_BAR } else { longest };
        let weight = beside * i64::from(all.max(1)) + 1;
        let mut kinds: Vec<(i64, i64, i64, Vec<usize>)> = Vec::new();
        for (at, bar) in given.bars.iter().enumerate() {
            let price = i64::try_from(bar.price).unwrap_or(i64::MAX);
            let score = if free { drawn(bar) } else { price };
            let cost = score * weight + if free { PER_BAR } else { drawn(bar) };
            let kind = (room(bar).max(0) / common, score, cost);
            match kinds
                .iter_mut()
                .find(|known| (known.0, known.1, known.2) == kind)
            {
                Some(known) => known.3.push(at),
                None => kinds.push((kind.0, kind.1, kind.2, vec![at])),
            }
        }
        self.weight = weight;
        for width in &mut self.widths {
            *width /= common;
        }
        for (room, score, cost, bars) in kinds {
            let count = bars.iter().map(|at| given.bars[*at].count.unwrap_or(all));
            self.rooms.push(room);
            self.scores.push(score);
            self.costs.push(cost);
            self.counts
                .push(count.fold(0, u32::saturating_add).min(all));
            self.bars.push(bars);
        }
        self.step = self.scores.iter().copied().fold(0, divisor).max(1);
    }

    /// How many pieces there are.
    pub(super) fn total(&self) -> u32 {
        self.demand.iter().sum()
    }

    /// The longest room.
    pub(super) fn longest(&self) -> i64 {
        self.rooms.iter().copied().max().unwrap_or(0)
    }

    /// The greatest cost of a bar.
    pub(super) fn dearest(&self) -> i64 {
        self.costs.iter().copied().max().unwrap_or(1).max(1)
    }

    /// The least score that a solution has which costs at least so much.
    pub(super) fn score_of(&self, cost: i128) -> i64 {
        let score = cost.div_euclid(i128::from(self.weight)).max(0);
        let step = i128::from(self.step);
        let stepped = (score + step - 1) / step * step;
        i64::try_from(stepped).unwrap_or(i64::MAX)
    }
}

fn divisor(one: i64, other: i64) -> i64 {
    let (mut one, mut other) = (one, other);
    while other != 0 {
        (one, other) = (other, one % other);
    }
    one
}
