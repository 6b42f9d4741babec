//! One cutting job: what is there or bought, and what is cut from it.

use crate::asking::{Asking, Wants};
use crate::figure::Print;
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use sim::cutting::{Bar, Cut, Cutting, Least, Piece, Plan};
use site::{Price, StockLength};

/// A piece that is wanted.
#[derive(Debug, Clone)]
pub(crate) struct Wanted {
    /// What it is for.
    pub(crate) what: String,
    /// Its length.
    pub(crate) length: Length,
    /// How many.
    pub(crate) count: u32,
}

/// What is there or bought, and what is cut from it.
#[derive(Debug, Clone)]
pub(crate) struct Job {
    /// Lengths as the optimizer takes them; those that cost nothing are there already.
    pub(crate) cutting: Cutting,
    /// The pieces, as many as the optimizer has.
    pub(crate) wanted: Vec<Wanted>,
    /// A price of the job, for its currency.
    pub(crate) currency: Option<Price>,
}

impl Job {
    /// The job of these pieces, bars without any trimmed ends.
    pub(crate) fn new(wanted: Vec<Wanted>, kerf: Length) -> Self {
        let pieces = wanted.iter().map(|wanted| Piece {
            length: wanted.length,
            count: wanted.count,
        });
        Self {
            cutting: Cutting {
                bars: Vec::new(),
                pieces: pieces.collect(),
                kerf,
            },
            wanted,
            currency: None,
        }
    }

    /// Adds a length as the site writes it: what is there already first, then what is bought.
    pub(crate) fn take<'s>(
        &mut self,
        asking: &mut Asking<'s>,
        stock: &'s StockLength,
        trim: Length,
    ) -> Result<(), Halt> {
        let length = asking.read(&stock.origin, "length", stock.length.as_ref());
        let there = stock.on_hand.filter(|count| *count > 0);
        if stock.price.is_none() && stock.on_hand.is_none() {
            return asking.lack(&stock.origin, "price", Wants::Written("\"84.00 USD\""));
        }
        let length = length?;
        let mut add = |price: u64, count: Option<u32>| {
            self.cutting.bars.push(Bar {
                length,
                trim,
                price,
                count,
            });
        };
        if let Some(count) = there {
            add(0, Some(count));
        }
        if let Some(price) = stock.price {
            add(price.hundredths(), stock.at_most);
            let known = self.currency.unwrap_or(price);
            if known.currency() != price.currency() {
                return asking.refuse("its prices are in two currencies; write them all in one");
            }
            self.currency = Some(known);
        }
        Ok(())
    }

    /// The piece that is longest.
    pub(crate) fn longest_piece(&self) -> Option<&Wanted> {
        let order =
            |one: &&Wanted, other: &&Wanted| one.length.base().total_cmp(&other.length.base());
        self.wanted.iter().max_by(order)
    }

    /// The longest length that one bar leaves for a piece.
    pub(crate) fn longest_room(&self) -> Length {
        let rooms = self.cutting.bars.iter();
        let longest = rooms.map(|bar| bar.length.base() - bar.trim.base());
        Length::from_base(longest.fold(0.0, f64::max))
    }

    /// How many pieces are wanted.
    pub(crate) fn count(&self) -> u32 {
        self.wanted.iter().map(|wanted| wanted.count).sum()
    }
}

/// A price or a length, as it is said.
pub(crate) fn least(job: &Job, least: Least, print: Print) -> String {
    match (least, job.currency) {
        (Least::Price(hundredths), Some(price)) => price.of_hundredths(hundredths).to_string(),
        (Least::Price(_), None) => "nothing".to_owned(),
        (Least::Drawn(length), _) => format!("{} drawn", print.q(length)),
    }
}

/// Each bar of a plan with the pieces on it: `2 × 20 ft: 9 ft 4 in + 9 ft 4 in, 14 in left`.
pub(crate) fn patterns(job: &Job, plan: &Plan, print: Print) -> Vec<String> {
    let one = |cut: &Cut| {
        let length = |piece: &usize| print.q(job.wanted[*piece].length);
        let pieces: Vec<String> = cut.pieces.iter().map(length).collect();
        let bar = job.cutting.bars[cut.bar];
        format!(
            "{} × {}{}: {}; {} left",
            cut.times,
            print.q(bar.length),
            if bar.price == 0 {
                ", there already"
            } else {
                ""
            },
            pieces.join(" + "),
            print.q(cut.left)
        )
    };
    plan.cuts.iter().map(one).collect()
}
