//! Tables that give one limit for each of several things.

use super::customary::inches;
use super::limit::{is_at_least, is_at_most};
use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::Length;

/// How a length stands to the limit of its thing.
pub(super) struct ItemLimit {
    /// The limit.
    pub(super) limit: Length,
    /// Room to spare; below zero where the limit is not kept.
    pub(super) spare: Length,
    /// Whether the limit is kept.
    pub(super) kept: bool,
}

/// Looks a thing up in a table with the columns `item`, `side` (at most, at least, above) and `limit` in inches.
pub(super) fn item_limit(
    stored: &'static Stored,
    item: &str,
    measured: Length,
) -> Result<ItemLimit, OutOfReach> {
    let table = Table::of(stored)?;
    let (side, limit) = table
        .column("item")
        .zip(table.column("side"))
        .zip(table.column("limit"))
        .find(|((name, _), _)| name.words() == Some(item))
        .and_then(|((_, side), limit)| Some((side.words()?, inches(limit.number()?))))
        .ok_or_else(|| OutOfReach::new("item", "the table has no row for this thing"))?;
    let over = measured - limit;
    let (spare, kept) = match side {
        "at most" => (-over, is_at_most(measured, limit)),
        "above" => (over, !is_at_most(measured, limit)),
        _ => (over, is_at_least(measured, limit)),
    };
    Ok(ItemLimit { limit, spare, kept })
}
