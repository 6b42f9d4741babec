//! What lies under each terminal, before it has a place on paper.

use crate::power::words::width;
use design::wiring::{ClampAt, Landed, clamps, landed, marks};
use site::{Id, Site, Terminals};

/// Height of words, of a row, of a heading, of a column (mm).
pub(super) const WORDS: f64 = 2.0;
pub(super) const ROW: f64 = 4.8;
pub(super) const HEAD: f64 = 9.0;
const COLUMN: f64 = 190.0;
/// Width of a terminal, and from it to the words beside it (mm).
pub(super) const WIDE: f64 = 13.0;
pub(super) const REACH: f64 = 5.0;

/// Strips under each other.
#[derive(Debug, Clone, Default)]
pub(super) struct Column {
    pub(super) strips: Vec<Strip>,
}

/// A strip, or as much of it as goes on one column.
#[derive(Debug, Clone)]
pub(super) struct Strip {
    pub(super) title: String,
    pub(super) blocks: Vec<Block>,
}

/// A terminal.
#[derive(Debug, Clone)]
pub(super) struct Block {
    pub(super) mark: String,
    /// Cores that come from outside, and such as stay in the enclosure.
    pub(super) sides: [Vec<String>; 2],
    /// How many wires are too many for it, in words.
    pub(super) too_many: Option<String>,
}

impl Block {
    pub(super) fn rows(&self) -> usize {
        let [left, right] = &self.sides;
        left.len().max(right.len()).max(1) + usize::from(self.too_many.is_some())
    }

    pub(super) fn is_free(&self) -> bool {
        self.sides.iter().all(Vec::is_empty)
    }

    pub(super) fn height(&self) -> f64 {
        ROW * f64::from(u32::try_from(self.rows()).unwrap_or(u32::MAX))
    }
}

impl Strip {
    pub(super) fn height(&self) -> f64 {
        HEAD + self.blocks.iter().map(Block::height).sum::<f64>()
    }
}

impl Column {
    /// Room for the words at each side (mm).
    pub(super) fn sides(&self) -> [f64; 2] {
        [0, 1].map(|side| {
            let blocks = self.strips.iter().flat_map(|strip| &strip.blocks);
            let words = blocks.flat_map(|block| {
                let too_many = block.too_many.as_ref().filter(|_| side == 1);
                block.sides.get(side).into_iter().flatten().chain(too_many)
            });
            let longest = words.map(|words| width(words, WORDS)).fold(0.0, f64::max);
            if longest > 0.0 { longest + REACH } else { 0.0 }
        })
    }

    pub(super) fn width(&self) -> f64 {
        let [left, right] = self.sides();
        let titles = self.strips.iter().map(|strip| width(&strip.title, 2.6));
        (left + WIDE + right).max(titles.fold(0.0, f64::max))
    }
}

/// Every strip on everything that has it, in columns that fit a sheet.
pub(super) fn columns(site: &Site) -> Vec<Column> {
    let landed = landed(site);
    let clamps = clamps(&landed);
    let mut columns: Vec<Column> = Vec::new();
    let mut used = COLUMN;
    for strip in &site.terminals {
        for on in &strip.on {
            let title = title(strip, on);
            let blocks = marks(strip)
                .into_iter()
                .map(|mark| block(&clamps, (strip, on), mark));
            let blocks = runs_of_free(blocks.collect());
            let whole = HEAD + blocks.iter().map(Block::height).sum::<f64>();
            if used + whole > COLUMN && whole <= COLUMN / 2.0 {
                // A short strip stays in one piece.
                used = COLUMN;
            }
            let mut begun = false;
            for block in blocks {
                let head = if begun { 0.0 } else { HEAD };
                let fits = used + head + block.height() <= COLUMN;
                if !fits {
                    columns.push(Column::default());
                    used = 0.0;
                }
                let Some(column) = columns.last_mut() else {
                    continue;
                };
                if !begun || !fits {
                    let again = if begun { ", continued" } else { "" };
                    column.strips.push(Strip {
                        title: format!("{title}{again}"),
                        blocks: Vec::new(),
                    });
                    used += HEAD;
                }
                begun = true;
                used += block.height();
                if let Some(strip) = column.strips.last_mut() {
                    strip.blocks.push(block);
                }
            }
        }
    }
    columns
}

fn title(strip: &Terminals, on: &Id) -> String {
    format!("{} on {on}", strip.id)
}

fn block(clamps: &[ClampAt<'_>], (strip, on): (&Terminals, &Id), mark: String) -> Block {
    let is = |clamp: &&ClampAt<'_>| {
        let of_strip = clamp.strip.is_some_and(|own| own.id == strip.id);
        of_strip && *clamp.on == *on && clamp.mark == mark
    };
    let ends = clamps.iter().find(is).map_or(&[][..], |clamp| &clamp.ends);
    let mut sides = [Vec::new(), Vec::new()];
    for (core, end) in ends {
        if core.cable.route.is_empty() {
            sides[1].push(inside(core, *end));
        } else {
            sides[0].push(outside(core, *end));
        }
    }
    let most = strip.wires.and_then(|wires| usize::try_from(wires).ok());
    let too_many = most.filter(|most| ends.len() > *most);
    Block {
        mark,
        sides,
        too_many: too_many.map(|most| format!("× {} wires, made for {most}", ends.len())),
    }
}

/// Free terminals whose numbers follow each other are told as one: `31 – 50`.
fn runs_of_free(blocks: Vec<Block>) -> Vec<Block> {
    let mut told: Vec<(Block, String)> = Vec::new();
    for block in blocks {
        let last = block.mark.clone();
        let is_number = last.parse::<u32>().is_ok();
        match told.last_mut() {
            Some((before, end)) if is_number && before.is_free() && block.is_free() => *end = last,
            _ => told.push((block, last)),
        }
    }
    let joined = told.into_iter().map(|(block, last)| {
        if block.mark == last {
            return block;
        }
        Block {
            mark: format!("{} – {last}", block.mark),
            ..block
        }
    });
    joined.collect()
}

/// From the far end to the terminal.
fn outside(core: &Landed<'_>, end: usize) -> String {
    let mut words = words(core, end);
    words.reverse();
    words.join(" · ")
}

/// From the terminal to the far end.
fn inside(core: &Landed<'_>, end: usize) -> String {
    words(core, end).join(" · ")
}

/// What is told of a core, from the terminal outward.
fn words(core: &Landed<'_>, end: usize) -> Vec<String> {
    let number = match core.wire {
        Some(wire) => wire.to_string(),
        None if core.core.is_none() => String::new(),
        None => "number ?".to_owned(),
    };
    let other = core.ends[1 - end.min(1)];
    let told = [
        number,
        core.color.unwrap_or_default().to_owned(),
        core.cable.id.to_string(),
        core.carries.unwrap_or_default().to_owned(),
        other.printed().unwrap_or_else(|| "terminal ?".to_owned()),
    ];
    told.into_iter().filter(|words| !words.is_empty()).collect()
}
