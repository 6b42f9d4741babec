//! The bar chart: a row for each task, a column for each day.

use crate::power::words::{SMALL, height, width};
use crate::sheets::Planned;
use design::plan::{PlanShown, TaskShown};
use draw::{
    Anchor, Figure, Fill, Hatch, Ink, Layer, LayerId, LinePattern, LineWeight, North, Point,
    ScaleChoice, Scene, Text,
};
use quantity::{Length, Quantity as _, Ratio};
use site::Site;

/// Minutes of a day.
const DAY: i64 = 24 * 60;

/// Size of the chart on paper, in millimeters: room for names, for days, and height of a row.
const NAMES: f64 = 78.0;
const DAYS: f64 = 290.0;
const ROW: f64 = 8.0;
const HEAD: f64 = 16.0;

struct Layers {
    grid: LayerId,
    off: LayerId,
    work: LayerId,
    decides: LayerId,
    waits: LayerId,
    words: LayerId,
}

/// The chart, ready for its sheet.
pub(super) fn planned(site: &Site, shown: &PlanShown) -> Planned {
    let mut scene = Scene::new("Work plan", site.site.unit_system()).describe(format!(
        "Bar chart of {} tasks from {} to {}: when each is worked on, what cures or is inspected after it, and which decide the end.",
        shown.tasks.len(),
        shown.begins,
        shown.ends
    ));
    let layers = layers(&mut scene);
    let chart = Chart::new(shown);
    chart.head(&mut scene, &layers);
    for (row, task) in shown.tasks.iter().enumerate() {
        chart.row(&mut scene, &layers, row, task);
    }
    scene.remark("One pair of hands: no two bars lie above one another. Solid bars decide the end; a day lost there is a day lost for the job.");
    Planned {
        name: "work-plan".to_owned(),
        scene,
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: false,
    }
}

fn layers(scene: &mut Scene) -> Layers {
    use LineWeight::{Fine, Medium};
    let mut layer = |layer: Layer, words: &str| scene.layer(layer.describe(words));
    Layers {
        off: layer(
            Layer::new("no work", Fine).ink(Ink::Tint),
            "Days on which nobody works there.",
        ),
        grid: layer(Layer::new("days", Fine).ink(Ink::Gray), "Weeks and rows."),
        waits: layer(
            Layer::new("waits", Fine).pattern(LinePattern::Dashed),
            "What cures or is inspected meanwhile.",
        ),
        work: layer(Layer::new("work", Medium), "Work that has time to spare."),
        decides: layer(
            Layer::new("decides the end", Medium),
            "Work that decides the end of the job.",
        ),
        words: layer(Layer::new("words", Fine), "Tasks and days."),
    }
}

struct Chart<'a> {
    shown: &'a PlanShown,
    first: i64,
    days: i64,
    wide: f64,
}

impl<'a> Chart<'a> {
    fn new(shown: &'a PlanShown) -> Self {
        let first = shown.days.first().map_or(0, |day| day.index);
        let last = shown.days.last().map_or(0, |day| day.index);
        let days = i64::try_from(last - first + 1).unwrap_or(1);
        #[allow(clippy::cast_precision_loss, reason = "a few hundred days")]
        let wide = (DAYS / days as f64).min(14.0);
        Self {
            shown,
            first: i64::try_from(first).unwrap_or_default(),
            days,
            wide,
        }
    }

    /// A moment along the chart.
    fn x(&self, minute: i64) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "minutes of a year or two")]
        let days = (minute - self.first * DAY) as f64 / DAY as f64;
        NAMES + days * self.wide
    }

    fn foot(&self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "some dozens of tasks")]
        let rows = self.shown.tasks.len() as f64;
        -HEAD - rows * ROW
    }

    /// Days, weeks, and what is no working day.
    fn head(&self, scene: &mut Scene, layers: &Layers) {
        let foot = self.foot();
        let mut last_week = f64::MIN;
        for day in 0..=self.days {
            let index = self.first + day;
            let x = self.x(index * DAY);
            let worked = self
                .shown
                .days
                .iter()
                .find(|shown| i64::try_from(shown.index).is_ok_and(|at| at == index));
            if worked.is_none() && day < self.days {
                let off = Figure::rectangle(
                    at(x, foot),
                    at(x + self.wide, -HEAD),
                    Fill::Solid(Ink::Tint),
                );
                scene.add(layers.off, off);
            }
            let Some(shown) = worked.filter(|_| x - last_week > 17.0) else {
                continue;
            };
            last_week = x;
            scene.add(layers.grid, Figure::line(at(x, foot), at(x, -HEAD + 2.0)));
            let words = format!(
                "{}\n{}",
                &shown.weekday[..3.min(shown.weekday.len())],
                short_date(&shown.date)
            );
            let text = Text::new(at(x, -HEAD + 7.0), words)
                .anchor(Anchor::Start)
                .height(height(SMALL));
            scene.add(layers.words, text);
        }
        let end = self.x((self.first + self.days) * DAY);
        scene.add(layers.grid, Figure::line(at(0.0, -HEAD), at(end, -HEAD)));
        scene.add(layers.grid, Figure::line(at(0.0, foot), at(end, foot)));
    }

    fn row(&self, scene: &mut Scene, layers: &Layers, row: usize, task: &TaskShown) {
        #[allow(clippy::cast_precision_loss, reason = "some dozens of tasks")]
        let top = -HEAD - row as f64 * ROW;
        let (low, high) = (top - ROW * 0.78, top - ROW * 0.22);
        let name = Text::new(at(0.0, top - ROW * 0.62), fitted(&task.what))
            .anchor(Anchor::Start)
            .height(height(2.0));
        scene.add(layers.words, name);
        let end = self.x((self.first + self.days) * DAY);
        scene.add(
            layers.grid,
            Figure::line(at(0.0, top - ROW), at(end, top - ROW)),
        );
        if task.ready_minute > task.to_minute {
            let ready = self.x(task.ready_minute).min(end);
            let wait = Figure::rectangle(
                at(self.x(task.to_minute), low + 1.2),
                at(ready, high - 1.2),
                Fill::Open,
            );
            scene.add_titled(layers.waits, &*task.waits, wait);
        }
        for (from, to) in self.pieces(task) {
            let (layer, fill) = if task.decides {
                (layers.decides, Fill::Solid(Ink::Black))
            } else {
                (layers.work, Fill::Hatched(Hatch::cut()))
            };
            let bar = Figure::rectangle(at(self.x(from), low), at(self.x(to), high), fill);
            scene.add_titled(layer, &*task.id, bar);
        }
    }

    /// The days on which a task is worked on, as stretches that can be seen: a day's work fills its column.
    fn pieces(&self, task: &TaskShown) -> Vec<(i64, i64)> {
        let mut pieces = Vec::new();
        for day in &self.shown.days {
            let Ok(index) = i64::try_from(day.index) else {
                continue;
            };
            for piece in day.work.iter().filter(|piece| piece.task == task.id) {
                let (Some(from), Some(to)) = (minute(&piece.from), minute(&piece.to)) else {
                    continue;
                };
                let to = if to < from { DAY } else { to };
                pieces.push((index * DAY + spread(from), index * DAY + spread(to)));
            }
        }
        pieces
    }
}

/// Six to twenty-two o'clock spread over the whole column.
fn spread(minute: i64) -> i64 {
    ((minute - 6 * 60) * DAY / (16 * 60)).clamp(0, DAY)
}

/// Minutes of `07:30`.
fn minute(clock: &str) -> Option<i64> {
    let (hours, minutes) = clock.split_once(':')?;
    Some(hours.parse::<i64>().ok()? * 60 + minutes.parse::<i64>().ok()?)
}

/// `05-04` of `2026-05-04`.
fn short_date(date: &str) -> &str {
    date.get(5..).unwrap_or(date)
}

/// A name that fits into its column.
fn fitted(name: &str) -> String {
    let mut kept = name.to_owned();
    while width(&kept, 2.0) > NAMES - 4.0 {
        kept.pop();
        if width(&format!("{kept}…"), 2.0) <= NAMES - 4.0 {
            return format!("{kept}…");
        }
    }
    kept
}

/// A point of the paper, in millimeters.
fn at(x: f64, y: f64) -> Point {
    Point::new(Length::from_base(x / 1000.0), Length::from_base(y / 1000.0))
}
