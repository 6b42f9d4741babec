//! The queue of each lane as a plot, and the time line of one vehicle at the gate.

use crate::sheets::Planned;
use design::queue::{LaneQueue, QueuePicture};
use draw::{Chart, Marked, North, Part, Plot, ScaleChoice, Scene, Series, Stretch};
use quantity::{Length, Quantity as _, Ratio, Time, UnitSystem, print};
use site::{Lane, Site};

/// The most hours of a plot, each with a pattern of its own.
const MOST_HOURS: usize = 4;

/// The plots of every lane whose facts are known.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let units = site.site.unit_system();
    let mut planned = Vec::new();
    for lane in &site.lane {
        let Some(picture) = LaneQueue::of(site, lane)
            .ok()
            .and_then(|queue| queue.picture())
        else {
            continue;
        };
        for (what, chart) in charts(&picture, units) {
            planned.push(half(named(site, lane, what), chart.scene()));
        }
    }
    planned
}

/// The queue of a lane, and one vehicle at the gate.
pub(crate) fn charts(picture: &QueuePicture, units: UnitSystem) -> [(&'static str, Chart); 2] {
    [
        ("lane-queue", reach(picture, units).chart(units)),
        ("gate-timeline", line(picture).chart(units)),
    ]
}

/// The name of a lane's sheet; the lane is named where there are more of them.
fn named(site: &Site, lane: &Lane, what: &str) -> String {
    if site.lane.len() == 1 {
        what.to_owned()
    } else {
        format!("{what}-{}", lane.id)
    }
}

fn half(name: String, scene: Scene) -> Planned {
    Planned {
        name,
        scene,
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: true,
    }
}

/// For how much of each hour the queue reaches farther back than a length.
fn reach(picture: &QueuePicture, units: UnitSystem) -> Plot<Length, Ratio> {
    let mut plot = Plot::new(
        format!("Queue of {}, from the reader back", picture.lane),
        "length from the reader back",
        "share of the hour in which it reaches farther",
    );
    plot.description = format!(
        "Share of each busy hour in which the queue reaches farther back than a length; the road begins {} behind the reader.",
        print(picture.stacking, units)
    );
    plot.series = series(picture);
    if let Some(length) = picture.length {
        plot.marked.push(Marked {
            at: (length, Ratio::from_base(0.05)),
            words: format!("5 % beyond\n{}", print(length, units)),
        });
    }
    let ends = plot.series.iter().filter_map(|series| series.points.last());
    let last = ends
        .map(|(length, _)| length.base())
        .fold(picture.stacking.base() * 1.15, f64::max);
    plot.stretches = vec![
        Stretch {
            from: Length::from_base(0.0),
            to: picture.stacking,
            name: "lane".to_owned(),
        },
        Stretch {
            from: picture.stacking,
            to: Length::from_base(last),
            name: "road".to_owned(),
        },
    ];
    plot.remarks.clone_from(&picture.remarks);
    plot
}

/// The worst hour heaviest; of many hours those with the longest queues.
fn series(picture: &QueuePicture) -> Vec<Series<Length, Ratio>> {
    let longest = |at: &usize| picture.hours[*at].farther.len();
    let mut kept: Vec<usize> = (0..picture.hours.len())
        .filter(|at| *at != picture.worst)
        .collect();
    kept.sort_by_key(|at| std::cmp::Reverse(longest(at)));
    kept.truncate(MOST_HOURS - 1);
    kept.push(picture.worst);
    kept.sort_unstable();
    let mut others = [Part::OtherDemand, Part::Limit, Part::Aside].into_iter();
    let one = |at: usize| Series {
        name: picture.hours[at].name.clone(),
        points: picture.hours[at].farther.clone(),
        part: if at == picture.worst {
            Part::Demand
        } else {
            others.next().unwrap_or(Part::Aside)
        },
    };
    kept.into_iter().map(one).collect()
}

/// How far the gate stands open while one vehicle comes through.
fn line(picture: &QueuePicture) -> Plot<Time, Ratio> {
    let line = &picture.line;
    let mut plot = Plot::new(
        format!(
            "One vehicle on {}: detect, open, pass, hold, close",
            picture.lane
        ),
        "time from the stop at the reader",
        "how far the gate stands open",
    );
    "How far the gate stands open from the stop of one vehicle at the reader until it is shut again behind it.".clone_into(&mut plot.description);
    let (none, whole) = (Ratio::from_base(0.0), Ratio::from_base(1.0));
    let start = Time::from_base(0.0);
    plot.series = vec![Series {
        name: "gate".to_owned(),
        points: vec![
            (start, none),
            (line.commanded, none),
            (line.open, whole),
            (line.closes, whole),
            (line.shut, none),
        ],
        part: Part::Demand,
    }];
    let stretch = |from: Time, to: Time, name: &str| Stretch {
        from,
        to,
        name: name.to_owned(),
    };
    plot.stretches = vec![
        stretch(start, line.commanded, "read"),
        stretch(line.commanded, line.open, "open"),
        stretch(line.open, line.clear, "pass"),
        stretch(line.clear, line.closes, "hold"),
        stretch(line.closes, line.shut, "close"),
    ];
    let said = |time: Time| format!("{:.1} s", time.base());
    plot.marked = vec![
        Marked {
            at: (line.passes, whole),
            words: format!("front passes\n{}", said(line.passes)),
        },
        Marked {
            at: (line.closes, whole),
            words: format!("begins to close\n{}", said(line.closes)),
        },
    ];
    plot.remarks = vec![
        format!(
            "Let in after {}; open after {}; tail over the gate line after {}, out of the last detector after {}; shut after {}.",
            said(line.commanded),
            said(line.open),
            said(line.tail_over),
            said(line.clear),
            said(line.shut)
        ),
        "The most frequent kind of driver, lane and gate free, the travel at the slow end of its tolerances; drawn as if the leaf moved evenly.".to_owned(),
    ];
    plot
}
