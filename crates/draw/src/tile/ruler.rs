//! The check ruler: 100 mm and 4 in, to be measured before anything is drilled.

use crate::Anchor;
use crate::flat::Spot;
use crate::layout::typist::{PLAIN, Style, letters};
use crate::mark::{Mark, Pen};

/// Lines of the ruler.
const LINE: Pen = Pen::black(0.18);
/// Height of its words (mm).
const WORDS: Style = Style {
    height: 2.0,
    ..PLAIN
};

/// A scale of the ruler.
struct Scale {
    /// From tick to tick (mm).
    tick: f64,
    ticks: u32,
    /// Every so many ticks one is long.
    long: u32,
    /// Words at its end.
    words: &'static str,
    /// Which way its ticks point: 1 up, -1 down.
    way: f64,
}

/// The ruler with its zero at this spot: millimeters above the line, inches under it.
pub(super) fn marks(at: Spot) -> Vec<Mark> {
    let scales = [
        Scale {
            tick: 5.0,
            ticks: 20,
            long: 2,
            words: "100 mm",
            way: 1.0,
        },
        Scale {
            tick: 25.4 / 4.0,
            ticks: 16,
            long: 4,
            words: "4 in",
            way: -1.0,
        },
    ];
    let mut marks: Vec<Mark> = scales.iter().flat_map(|scale| scale.marks(at)).collect();
    let zero = Spot::new(at.x - 1.0, at.y - 1.0);
    marks.push(letters(zero, "0".to_owned(), WORDS, Anchor::End));
    marks
}

impl Scale {
    fn marks(&self, at: Spot) -> Vec<Mark> {
        let up = |length: f64| Spot::new(0.0, self.way * length);
        let foot = at.plus(up(0.6), 1.0);
        let end = foot.plus(Spot::new(1.0, 0.0), self.tick * f64::from(self.ticks));
        let mut marks = vec![Mark::line(foot, end, LINE)];
        for tick in 0..=self.ticks {
            let foot = foot.plus(Spot::new(1.0, 0.0), self.tick * f64::from(tick));
            let length = if tick == 0 || tick == self.ticks {
                4.6
            } else if tick % self.long == 0 {
                3.2
            } else {
                1.8
            };
            marks.push(Mark::line(foot, foot.plus(up(length), 1.0), LINE));
        }
        let base = if self.way > 0.0 { 1.4 } else { -3.4 };
        let beside = Spot::new(end.x + 1.6, foot.y + base);
        marks.push(letters(beside, self.words.to_owned(), WORDS, Anchor::Start));
        marks
    }
}
