//! A line of the bill: how much of one entry of the price book is needed, whether it is there in time, and its cost.

use super::Billed;
use super::need::{Amount, Gap, Need, micrometers};
use quantity::{Length, Quantity as _, Volume};
use serde::Serialize;
use site::{Date, Item, Percent, Price, Site};

/// How a line stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum LineState {
    /// On the van.
    OnVan,
    /// Ordered, and there before it is needed.
    Ordered,
    /// Still to be ordered.
    ToOrder,
    /// Ordered, and there after it is needed.
    Late,
    /// Less is ordered than is needed.
    Short,
    /// The price book does not say enough.
    Unknown,
}

/// A line of the bill.
#[derive(Debug, Clone, Serialize)]
pub struct Line {
    /// Its entry of the price book.
    pub item: Option<String>,
    /// What it is.
    pub what: String,
    /// Pieces that the job takes, waste and spares counted; for what is used by length or volume, lengths or packs of it.
    pub pieces: Option<u64>,
    /// Pieces in a pack.
    pub pack: u32,
    /// What one pack costs.
    pub pack_price: Option<Price>,
    /// Length in all, where it is used by length, in meters.
    pub length: Option<f64>,
    /// Volume in all, where it is used by volume, in cubic meters.
    pub volume: Option<f64>,
    /// What it is for.
    pub things: Vec<String>,
    /// Who supplies it.
    pub supplier: Option<String>,
    /// Days from the order until it is there.
    pub lead_days: Option<u32>,
    /// Pieces of it on the van.
    pub on_van: u32,
    /// Packs that have to be bought.
    pub to_buy: Option<u64>,
    /// Day on which it has to be there.
    pub needed: Option<String>,
    /// Day on which the last of it comes.
    pub due: Option<String>,
    /// How it stands.
    pub state: LineState,
    /// What the pieces that the job takes cost.
    pub cost: Option<Price>,
}

/// How an entry of the price book is written.
const ITEM: &str = "[[item]] in the price book with of = [\"…\"] or serves_as = \"…\", what, price, supplier and lead_time";

/// Adds a line, and what it lacks.
pub(super) fn add<'s>(
    billed: &mut Billed<'s>,
    site: &Site,
    item: Option<&Item>,
    needs: &[Need<'s>],
) {
    let Some(first) = needs.first() else { return };
    let mut line = begun(item, first, needs);
    let gap = |key, write, what: &str| Gap {
        origin: first.origin,
        key,
        write,
        what: format!("{} for {}: {what}", first.what, first.thing),
    };
    let Some(item) = item else {
        billed
            .to_buy
            .push(gap("item", ITEM, "no entry in the price book"));
        line.cost = own_cost(&line, needs);
        if line.cost.is_none() {
            billed.to_price.push(gap("price", ITEM, "no price"));
        }
        billed.bill.lines.push(line);
        return;
    };
    line.pieces = pieces(item, needs);
    if line.pieces.is_none() {
        billed.to_buy.push(gap(
            "length",
            "a length of the thing here, and length or volume of one in its entry of the price book",
            "how much one gives is not known",
        ));
    }
    if item.supplier.is_none() {
        billed.to_buy.push(gap(
            "supplier",
            "supplier = \"…\" in its entry of the price book",
            "nobody to buy it from",
        ));
    }
    if item.lead_time.is_none() {
        billed.to_buy.push(gap(
            "lead_time",
            "lead_time = \"3 days\" in its entry of the price book",
            "no lead time",
        ));
    }
    stand(&mut line, site, item, needs);
    line.cost = cost(&line, item, needs);
    if line.cost.is_none() {
        billed.to_price.push(gap(
            "price",
            "price = \"4.50 USD\" in its entry of the price book",
            "no price",
        ));
    }
    billed.bill.lines.push(line);
}

fn begun(item: Option<&Item>, first: &Need<'_>, needs: &[Need<'_>]) -> Line {
    let length = total(needs, |amount| match amount {
        Amount::Length(length) => Some(length.base()),
        _ => None,
    });
    let volume = total(needs, |amount| match amount {
        Amount::Volume(volume) => Some(volume.base()),
        _ => None,
    });
    let counted = needs.iter().try_fold(0_u64, |sum, need| match need.amount {
        Amount::Pieces(count) => sum.checked_add(count),
        _ => None,
    });
    let mut things: Vec<String> = Vec::new();
    for need in needs {
        if !things.contains(&need.thing) {
            things.push(need.thing.clone());
        }
    }
    Line {
        item: item.map(|item| item.id.to_string()),
        what: item.map_or_else(|| first.what.clone(), |item| item.what.to_string()),
        pieces: counted,
        pack: item.and_then(|item| item.pack).unwrap_or(1).max(1),
        pack_price: item.and_then(|item| item.price),
        length,
        volume,
        things,
        supplier: item
            .and_then(|item| item.supplier.as_ref())
            .map(ToString::to_string),
        lead_days: item.and_then(|item| days(item.lead_time?.nominal().base())),
        on_van: item.and_then(|item| item.on_van).unwrap_or(0),
        to_buy: None,
        needed: by(needs).map(|day| day.to_string()),
        due: None,
        state: LineState::Unknown,
        cost: None,
    }
}

fn total(needs: &[Need<'_>], of: impl Fn(Amount) -> Option<f64>) -> Option<f64> {
    let found: Vec<f64> = needs.iter().filter_map(|need| of(need.amount)).collect();
    (!found.is_empty()).then(|| found.iter().sum())
}

/// The first day on which any of it has to be there.
fn by(needs: &[Need<'_>]) -> Option<Date> {
    needs.iter().filter_map(|need| need.by).min()
}

#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the figure is held between zero and a million"
)]
fn days(seconds: f64) -> Option<u32> {
    let days = (seconds / 86_400.0).ceil();
    (0.0..1e6).contains(&days).then_some(days as u32)
}

/// Pieces of an entry for all needs together, with waste and spares.
fn pieces(item: &Item, needs: &[Need<'_>]) -> Option<u64> {
    let mut all = 0.0;
    for need in needs {
        all += match need.amount {
            Amount::Pieces(count) => f64::from(u32::try_from(count).ok()?),
            Amount::Length(length) => share(length, item.length?.nominal())?,
            Amount::Volume(volume) => volume_share(volume, item.volume?.nominal())?,
            Amount::Unknown => return None,
        };
    }
    let waste = f64::from(item.waste.map_or(0, Percent::thousandths));
    let whole = f64::from(Percent::WHOLE.thousandths());
    whole_up(all * (whole + waste) / whole)?.checked_add(u64::from(item.spare.unwrap_or(0)))
}

fn share(part: Length, whole: Length) -> Option<f64> {
    (whole.base() > 0.0).then(|| part.base() / whole.base())
}

fn volume_share(part: Volume, whole: Volume) -> Option<f64> {
    (whole.base() > 0.0).then(|| part.base() / whole.base())
}

/// The least whole number that is not less, but for the last digits of converted units.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the figure is held between zero and a thousand million"
)]
fn whole_up(figure: f64) -> Option<u64> {
    let up = (figure - 1e-7).ceil().max(0.0);
    (0.0..1e9).contains(&up).then_some(up as u64)
}

/// Whether it is there in time.
fn stand(line: &mut Line, site: &Site, item: &Item, needs: &[Need<'_>]) {
    let Some(pieces) = line.pieces else { return };
    let missing = pieces.saturating_sub(u64::from(line.on_van));
    let packs = missing.div_ceil(u64::from(line.pack));
    line.to_buy = Some(packs);
    if packs == 0 {
        line.state = LineState::OnVan;
        return;
    }
    let of_item = |order: &&site::Ordered| order.items.iter().any(|name| item.id == *name.as_str());
    let orders: Vec<_> = site.ordered.iter().filter(of_item).collect();
    if orders.is_empty() {
        line.state = LineState::ToOrder;
        return;
    }
    let enough = orders.iter().any(|order| order.count.is_none())
        || orders
            .iter()
            .filter_map(|order| order.count)
            .map(u64::from)
            .sum::<u64>()
            >= packs;
    let due = orders.iter().filter_map(|order| order.due).max();
    line.due = due.map(|day| day.to_string());
    line.state = match (enough, due, by(needs)) {
        (false, ..) => LineState::Short,
        (true, None, _) => LineState::Unknown,
        (true, Some(due), Some(needed)) if due > needed => LineState::Late,
        (true, ..) => LineState::Ordered,
    };
}

/// What the pieces cost: by the price book, or by the parts file where the price book is silent.
fn cost(line: &Line, item: &Item, needs: &[Need<'_>]) -> Option<Price> {
    if let Some(price) = item.price {
        return price.parts(line.pieces?, u64::from(line.pack));
    }
    match needs.first()?.own? {
        (price, None) => price.parts(line.pieces?, 1),
        (price, Some(length)) => {
            let one = item.length?.nominal();
            price.parts(
                line.pieces?.checked_mul(micrometers(one)?)?,
                micrometers(length)?,
            )
        }
    }
}

/// What things without an entry of the price book cost by the parts file.
fn own_cost(line: &Line, needs: &[Need<'_>]) -> Option<Price> {
    match needs.first()?.own? {
        (price, None) => price.parts(line.pieces?, 1),
        (price, Some(length)) => price.parts(
            micrometers(Length::from_base(line.length?))?,
            micrometers(length)?,
        ),
    }
}
