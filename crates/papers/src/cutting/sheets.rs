//! The cutting drawing: each bar and reel as long as its paper allows, with its pieces, their letters and what is left.

use super::letters::{Lettered, letter_of, lettered};
use crate::power::words::{SMALL, height, width};
use crate::sheets::Planned;
use design::cutting::{CutBar, CutSheet, bar_sheets, reel_sheets};
use draw::{
    Anchor, Figure, Fill, Hatch, Layer, LayerId, LineWeight, North, Point, ScaleChoice, Scene, Text,
};
use quantity::{Length, Quantity as _, Ratio, UnitSystem, print};
use site::Site;

/// On paper, in millimeters: room for how often a cut is made, length of the longest bar, room for what is left beside it.
const TIMES: f64 = 14.0;
const BAR: f64 = 290.0;
/// Height of a stock's heading, of a row, of a bar.
const HEAD: f64 = 11.0;
const ROW: f64 = 10.0;
const DEEP: f64 = 5.4;
/// Height of all that goes on one sheet.
const SHEET: f64 = 190.0;
/// Height of letters in a piece.
const LETTER: f64 = 2.2;

struct Layers {
    bars: LayerId,
    left: LayerId,
    words: LayerId,
}

/// Bars or reels, and how their pieces are named on the drawing.
struct Stock {
    sheet: CutSheet,
    letters: Vec<Lettered>,
}

/// One line of the drawing.
enum Row<'a> {
    Head(&'a Stock),
    Cut(&'a Stock, &'a CutBar),
}

/// The sheets, as many as it takes; none where nothing is cut.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let bars = bar_sheets(site).into_iter().map(|sheet| Stock {
        letters: lettered(&sheet),
        sheet,
    });
    // A run of cable goes by its own name.
    let reels = reel_sheets(site).into_iter().map(|sheet| Stock {
        letters: Vec::new(),
        sheet,
    });
    let stocks: Vec<Stock> = bars.chain(reels).collect();
    let pages = pages(&stocks);
    let count = pages.len();
    let sheets = pages.iter().enumerate();
    sheets
        .map(|(at, rows)| {
            let name = if count == 1 {
                "cutting".to_owned()
            } else {
                format!("cutting-{}", at + 1)
            };
            Planned {
                name,
                scene: scene(rows, site.site.unit_system(), (at + 1, count)),
                north: North::NotSeenFromAbove,
                scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
                half: false,
            }
        })
        .collect()
}

/// The rows of every sheet; a heading never stands alone at the foot of one.
fn pages(stocks: &[Stock]) -> Vec<Vec<Row<'_>>> {
    let mut pages: Vec<Vec<Row<'_>>> = Vec::new();
    let mut used = SHEET;
    for stock in stocks.iter().filter(|stock| !stock.sheet.bars.is_empty()) {
        if used + HEAD + ROW > SHEET {
            pages.push(Vec::new());
            used = 0.0;
        }
        used += HEAD;
        push(&mut pages, Row::Head(stock));
        for bar in &stock.sheet.bars {
            if used + ROW > SHEET {
                pages.push(vec![Row::Head(stock)]);
                used = HEAD;
            }
            used += ROW;
            push(&mut pages, Row::Cut(stock, bar));
        }
    }
    pages
}

fn push<'a>(pages: &mut [Vec<Row<'a>>], row: Row<'a>) {
    if let Some(page) = pages.last_mut() {
        page.push(row);
    }
}

fn scene(rows: &[Row<'_>], units: UnitSystem, (number, count): (usize, usize)) -> Scene {
    let title = if count == 1 {
        "Cutting plan".to_owned()
    } else {
        format!("Cutting plan, {number} of {count}")
    };
    let mut scene = Scene::new(title, units).describe(
        "Each bar and reel that is cut, with its pieces by letter and length in the order in which they are cut, and what is left of it.",
    );
    let layers = layers(&mut scene);
    let mut top = 0.0;
    for row in rows {
        match row {
            Row::Head(stock) => {
                head(&mut scene, &layers, top, &stock.sheet);
                top -= HEAD;
            }
            Row::Cut(stock, bar) => {
                cut(&mut scene, &layers, (top, units), stock, bar);
                top -= ROW;
            }
        }
    }
    scene.remark("Letters are those of the list of pieces; runs of cable go by their names. Hatched: what is left. The saw's width lies between the pieces; the first end is squared and trimmed before the first piece.");
    scene.remark("Each stock is drawn at its own scale: its longest bar or reel is as long as the paper allows.");
    scene
}

fn layers(scene: &mut Scene) -> Layers {
    use LineWeight::{Fine, Medium};
    let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
    Layers {
        left: layer(Layer::new("what is left", Fine), "What no piece takes."),
        bars: layer(
            Layer::new("pieces", Medium),
            "Pieces in the order of cutting.",
        ),
        words: layer(Layer::new("words", Fine), "Letters and lengths."),
    }
}

fn head(scene: &mut Scene, layers: &Layers, top: f64, stock: &CutSheet) {
    let bars: u32 = stock.bars.iter().map(|bar| bar.times).sum();
    let least = if stock.least {
        "proved the least"
    } else {
        "not proved the least"
    };
    let words = format!(
        "{}: {}, {bars} for {}, {least}",
        stock.id, stock.what, stock.cost
    );
    let text = Text::new(at(0.0, top - HEAD + 3.2), words)
        .anchor(Anchor::Start)
        .height(height(2.6));
    scene.add(layers.words, text);
}

fn cut(
    scene: &mut Scene,
    layers: &Layers,
    (top, units): (f64, UnitSystem),
    Stock { sheet, letters }: &Stock,
    bar: &CutBar,
) {
    let longest = sheet.bars.iter().map(|bar| bar.length.base());
    let scale = BAR / longest.fold(f64::MIN_POSITIVE, f64::max);
    let (low, high) = (top - ROW + 2.0, top - ROW + 2.0 + DEEP);
    let times = Text::new(at(0.0, low + 1.6), format!("{} ×", bar.times))
        .anchor(Anchor::Start)
        .height(height(LETTER));
    scene.add(layers.words, times);
    let mut from = bar.trim.base();
    for (what, length) in &bar.pieces {
        let edges = (TIMES + from * scale, TIMES + (from + length.base()) * scale);
        let piece = Figure::rectangle(at(edges.0, low), at(edges.1, high), Fill::Open);
        let title = format!("{what}, {}", print(*length, units));
        scene.add_titled(layers.bars, title, piece);
        let words = inside(letters, (what, *length), edges.1 - edges.0, units);
        name(
            scene,
            layers,
            &words,
            (f64::midpoint(edges.0, edges.1), low),
        );
        from += length.base() + sheet.kerf.base();
    }
    let end = TIMES + bar.length.base() * scale;
    let begins = TIMES + from.min(bar.length.base()) * scale;
    if end - begins > 0.05 {
        let rest = Figure::rectangle(at(begins, low), at(end, high), Fill::Hatched(Hatch::cut()));
        scene.add_titled(
            layers.left,
            format!("left, {}", print(bar.left, units)),
            rest,
        );
    }
    let left = Text::new(at(end + 2.0, low + 1.6), beside(bar, units))
        .anchor(Anchor::Start)
        .height(height(SMALL));
    scene.add(layers.words, left);
}

/// Letter and length where they fit into the piece, else the letter, else nothing; the name of what has no letter.
fn inside(
    letters: &[Lettered],
    (what, length): (&str, Length),
    room: f64,
    units: UnitSystem,
) -> String {
    let letter = letter_of(letters, what, length).unwrap_or_else(|| what.to_owned());
    let both = format!("{letter}  {}", print(length, units));
    let fits = |words: &String| width(words, LETTER) + 1.0 < room;
    [both, letter].into_iter().find(fits).unwrap_or_default()
}

fn name(scene: &mut Scene, layers: &Layers, words: &str, (middle, low): (f64, f64)) {
    if words.is_empty() {
        return;
    }
    let text = Text::new(at(middle, low + 1.6), words)
        .anchor(Anchor::Middle)
        .height(height(LETTER));
    scene.add(layers.words, text);
}

/// What it was and what is left.
fn beside(bar: &CutBar, units: UnitSystem) -> String {
    let from = if bar.there { "from the van, " } else { "" };
    let kept = match bar.kept {
        Some(true) => ", keep",
        Some(false) => ", scrap",
        None => "",
    };
    format!(
        "{from}{} long, {} left{kept}",
        print(bar.length, units),
        print(bar.left, units)
    )
}

/// A point of the paper, in millimeters.
fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0))
}
