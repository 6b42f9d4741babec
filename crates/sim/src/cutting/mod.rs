//! Pieces cut from bars or reels for the least cost, with a proof that nothing costs less.
//!
//! Every piece is one length, every cut takes the saw's width, every bar loses its trimmed ends. Bars cost what is written;
//! where nothing costs anything, the length drawn counts instead. Of plans that cost the same, one with little drawn is
//! given.
//!
//! The proof gives each piece a worth such that no bar holds pieces worth more than it costs: then all pieces together cost at
//! least what they are worth. Where that leaves a gap, branch and bound closes it, or says how wide it stays.
//!
//! ```
//! use quantity::{Length, Quantity as _};
//! use sim::cutting::{Bar, Cutting, Effort, Piece, cut};
//! let inches = |inches: f64| Length::from_base(inches * 0.0254);
//! let bar = Bar { length: inches(240.0), trim: inches(0.0), price: 9_000, count: None };
//! let piece = Piece { length: inches(60.0), count: 8 };
//! let plan = cut(&Cutting { bars: vec![bar], pieces: vec![piece], kerf: inches(0.125) }, Effort::THOROUGH)?;
//! assert_eq!((plan.bars(), plan.is_least()), (3, true)); // without the saw cut two would do
//! # Ok::<(), sim::cutting::Uncuttable>(())
//! ```

mod fill;
mod laid;
mod master;
mod relax;
mod search;
mod sums;
#[cfg(test)]
mod tests;
mod ways;
mod whole;

use quantity::Length;

/// A kind of bar, rod, tube or reel that pieces are cut from.
#[derive(Debug, Clone, Copy)]
pub struct Bar {
    /// Its whole length.
    pub length: Length,
    /// What both ends lose before the first piece.
    pub trim: Length,
    /// What one costs, in hundredths; nothing for what is there anyway.
    pub price: u64,
    /// How many there are; any number where this is missing.
    pub count: Option<u32>,
}

/// Pieces of one length.
#[derive(Debug, Clone, Copy)]
pub struct Piece {
    /// Length of one.
    pub length: Length,
    /// How many are wanted.
    pub count: u32,
}

/// What is to be cut, and from what.
#[derive(Debug, Clone)]
pub struct Cutting {
    /// What it is cut from.
    pub bars: Vec<Bar>,
    /// What is wanted.
    pub pieces: Vec<Piece>,
    /// Width that each cut takes.
    pub kerf: Length,
}

/// How hard it is tried to close the last gap.
#[derive(Debug, Clone, Copy)]
pub struct Effort {
    work: u64,
}

impl Effort {
    /// A plan and a bound, without a search.
    pub const QUICK: Self = Self { work: 1_000_000 };
    /// A search that closes nearly every gap.
    pub const THOROUGH: Self = Self { work: 800_000_000 };
}

/// One bar, and all others that are cut alike.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// Which bar it is, by its place among those given.
    pub bar: usize,
    /// How many are cut like this.
    pub times: u32,
    /// The pieces in order along the bar, by their places among those given.
    pub pieces: Vec<usize>,
    /// What is left of one behind the last cut.
    pub left: Length,
}

/// How it is known that nothing costs less.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Proof {
    /// By the worths of the pieces alone.
    Worths,
    /// By a search through so many cases.
    Search(u32),
    /// It is not known: the least lies between the bound and this plan.
    Open,
}

/// What counts, or a bound on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Least {
    /// Price, in hundredths.
    Price(u64),
    /// Length of all bars drawn, where nothing costs anything.
    Drawn(Length),
}

/// How the bars are cut.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// The bars, those with the longest pieces first.
    pub cuts: Vec<Cut>,
    /// What it costs.
    pub cost: Least,
    /// Nothing costs less than this.
    pub bound: Least,
    /// How that is known.
    pub proof: Proof,
    /// What each piece given is worth, in hundredths of a hundredth: no bar holds more worth than it costs, and all pieces
    /// together are worth more than any cost below that of the plan. Nothing where length counts, or where worths alone do not
    /// show it.
    pub worths: Vec<u64>,
}

impl Plan {
    /// How many bars are cut.
    pub fn bars(&self) -> u32 {
        self.cuts.iter().map(|cut| cut.times).sum()
    }

    /// Nothing costs less.
    pub fn is_least(&self) -> bool {
        self.proof != Proof::Open
    }
}

/// Why there is no plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Uncuttable {
    /// A piece, by its place, is longer than every bar leaves room for.
    #[error("a piece is longer than every bar")]
    TooLong {
        /// Its place among the pieces given.
        piece: usize,
    },
    /// It is proved that the bars do not give all pieces.
    #[error("the bars do not give all pieces")]
    TooFew,
    /// No plan was found, and none was ruled out.
    #[error("no plan was found, and none was ruled out")]
    NotFound,
    /// The lengths or counts are none that anybody cuts.
    #[error("{0}")]
    Refused(&'static str),
}

/// Cuts pieces from bars for the least cost.
pub fn cut(given: &Cutting, effort: Effort) -> Result<Plan, Uncuttable> {
    let whole = whole::Whole::new(given)?;
    if whole.demand.is_empty() {
        return Ok(laid::nothing(given, &whole));
    }
    let room: i128 = whole
        .rooms
        .iter()
        .zip(&whole.counts)
        .map(|(room, count)| i128::from(*room) * i128::from(*count))
        .sum();
    let width: i128 = whole
        .widths
        .iter()
        .zip(&whole.demand)
        .map(|(width, count)| i128::from(*width) * i128::from(*count))
        .sum();
    if width > room {
        return Err(Uncuttable::TooFew);
    }
    let Some(sums) = sums::Sums::new(&whole.widths, &whole.demand, whole.longest()) else {
        return laid::by_hand(given, &whole);
    };
    let found = search::search(&whole, &sums, effort.work);
    laid::out(given, (&whole, &sums), found)
}
