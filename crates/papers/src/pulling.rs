//! The pulls of a site: the tension along each, from both ends, and a schedule to pull by.

use crate::power::words::long;
use crate::sheets::Planned;
use crate::view::{Cell, Column, Table};
use design::pulling::{ShownPull, WayPiece, WorkedPull, shown};
use draw::{Chart, Marked, North, Part, Plot, ScaleChoice, Series, Stretch};
use quantity::units::angle::degree;
use quantity::{Force, Length, Quantity as _, Ratio, UnitSystem, print};
use site::Site;

/// A limit is drawn where the pull comes to this share of it; elsewhere it would flatten the curves, and is said.
const NEAR: f64 = 0.25;
/// Stretches shorter than this share of the way have no name over the plot.
const NAMED: f64 = 0.09;

/// A plot for each conduit: of its pulls the one that comes nearest to what a cable stands.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let units = site.site.unit_system();
    let one = |(pull, worked): &(ShownPull, WorkedPull)| Planned {
        name: format!("pull-{}", pull.conduit),
        scene: chart(pull, worked, units).scene(),
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: true,
    };
    hardest(shown(site)).iter().map(one).collect()
}

/// Of the pulls through each conduit the one that comes nearest to what a cable stands.
pub(crate) fn hardest(pulls: Vec<ShownPull>) -> Vec<(ShownPull, WorkedPull)> {
    let mut hardest: Vec<(ShownPull, WorkedPull)> = Vec::new();
    for pull in pulls {
        let Ok(worked) = pull.worked.clone() else {
            continue;
        };
        let same = |known: &&mut (ShownPull, WorkedPull)| known.0.conduit == pull.conduit;
        match hardest.iter_mut().find(same) {
            Some(known) if strain(&worked) > strain(&known.1) => *known = (pull, worked),
            Some(_) => {}
            None => hardest.push((pull, worked)),
        }
    }
    hardest
}

/// The tension along a pull, from both ends.
pub(crate) fn chart(pull: &ShownPull, worked: &WorkedPull, units: UnitSystem) -> Chart {
    plot(pull, worked, units).chart(units)
}

/// The pull as a share of what the weakest cable stands, or of what a hand keeps up where that is not known.
pub(crate) fn strain(worked: &WorkedPull) -> f64 {
    let limit = worked.limit.unwrap_or(worked.hand);
    worked.easier().tension.base() / limit.base()
}

fn plot(pull: &ShownPull, worked: &WorkedPull, units: UnitSystem) -> Plot<Length, Force> {
    let [from, to] = &pull.ends;
    let title = format!("Pull through {}: {}", pull.conduit, pull.cables.join(", "));
    let mut plot = Plot::new(
        title,
        format!("way from {from}"),
        "pull on all cables together",
    );
    plot.description = format!(
        "Pull along conduit {} from {from} to {to}, fed from either end.",
        pull.conduit
    );
    let (forward, backward) = if worked.is_easier_forward() {
        (Part::Demand, Part::OtherDemand)
    } else {
        (Part::OtherDemand, Part::Demand)
    };
    let line = |feed: &str, at: &str, points: &[(Length, Force)], part| Series {
        name: format!("fed at {feed}, pulled at {at}"),
        points: points.to_vec(),
        part,
    };
    plot.series = vec![
        line(from, to, &worked.forward.steps, forward),
        line(to, from, &worked.backward.steps, backward),
    ];
    let most = worked.harder().tension;
    let ends = |force: Force| vec![(Length::from_base(0.0), force), (worked.length(), force)];
    let is_near = |force: &Force| most.base() > NEAR * force.base();
    if let Some(limit) = worked.limit.filter(is_near) {
        plot.series.push(Series {
            name: "greatest pull on the weakest cable".to_owned(),
            points: ends(limit),
            part: Part::Limit,
        });
    }
    if is_near(&worked.hand) {
        plot.series.push(Series {
            name: "what a hand keeps up".to_owned(),
            points: ends(worked.hand),
            part: Part::Aside,
        });
    }
    let last = if worked.is_easier_forward() {
        worked.forward.steps.last()
    } else {
        worked.backward.steps.first()
    };
    plot.marked = last
        .map(|at| Marked {
            at: *at,
            words: print(at.1, units),
        })
        .into_iter()
        .collect();
    plot.stretches = stretches(worked, units);
    plot.remarks = remarks(worked, units);
    plot
}

/// Straight pieces by their length and bends by their angle, where there is room for the words.
fn stretches(worked: &WorkedPull, units: UnitSystem) -> Vec<Stretch<Length>> {
    let least = NAMED * worked.length().base();
    let one = |piece: &WayPiece| {
        let long = piece.to - piece.from;
        let name = match piece.bend {
            _ if long.base() < least => String::new(),
            Some(angle) => format!("bend {:.0}°", angle.get::<degree>()),
            None => format!("straight {}", print(long, units)),
        };
        Stretch {
            from: piece.from,
            to: piece.to,
            name,
        }
    };
    worked.pieces.iter().map(one).collect()
}

fn remarks(worked: &WorkedPull, units: UnitSystem) -> Vec<String> {
    let drag = worked.drag.map_or_else(
        || "What the reel holds back is not written: it comes on top.".to_owned(),
        |drag| {
            format!(
                "Each begins with what the reel holds back, {}.",
                print(drag, units)
            )
        },
    );
    let limit = worked.limit.map_or_else(
        || "What the weakest cable stands is not written.".to_owned(),
        |limit| {
            format!(
                "The weakest cable stands {}; a hand keeps up {}.",
                print(limit, units),
                print(worked.hand, units)
            )
        },
    );
    vec![format!(
        "{drag} {limit} A bend multiplies what is already there: feed where the bends are near."
    )]
}

/// The schedule of pulls, where there is one.
pub(crate) fn tables(site: &Site) -> Vec<Table> {
    let units = site.site.unit_system();
    let rows: Vec<Vec<Cell>> = shown(site).iter().map(|pull| row(pull, units)).collect();
    if rows.is_empty() {
        return Vec::new();
    }
    vec![Table {
        title: "Schedule of pulls".to_owned(),
        note: "From the end at which less is needed. Stop when the puller shows more than the weakest cable stands: find out what holds it. Talk, or see each other, before anybody pulls what somebody feeds.".to_owned(),
        columns: vec![
            Column::words("Conduit", 18),
            Column::words("Cables together", 54),
            Column::words("Way", 20),
            Column::numbers("Bends", "°", 14),
            Column::words("Feed at", 30),
            Column::words("Pull at", 30),
            Column::words("Pull", 20),
            Column::words("The other way", 20),
            Column::words("Weakest stands", 22),
            Column::words("At bends", 24),
            Column::words("Stands at bends", 24),
            Column::words("By hand", 34),
        ],
        rows,
    }]
}

fn row(pull: &ShownPull, units: UnitSystem) -> Vec<Cell> {
    let mut row = vec![
        Cell::text(pull.conduit.clone()),
        Cell::text(pull.cables.join(", ")),
    ];
    let worked = match &pull.worked {
        Ok(worked) => worked,
        Err(missing) => {
            row.push(Cell::unknown(missing.join("; ")));
            return row;
        }
    };
    let [from, to] = &pull.ends;
    let (feed, at) = if worked.is_easier_forward() {
        (from, to)
    } else {
        (to, from)
    };
    let easier = worked.easier();
    row.extend([
        Cell::text(long(worked.length(), units)),
        Cell::number(worked.bends().get::<degree>(), 0),
        Cell::text(feed.clone()),
        Cell::text(at.clone()),
        Cell::text(print(easier.tension, units)),
        Cell::text(print(worked.harder().tension, units)),
        limit(worked.limit.map(|limit| print(limit, units))),
        Cell::text(print(easier.side_load, units)),
        limit(worked.side_limit.map(|limit| print(limit, units))),
        Cell::text(match easier.past_hand {
            None => "yes".to_owned(),
            Some(reach) => format!("no: pull point within {}", long(reach, units)),
        }),
    ]);
    row
}

fn limit(printed: Option<String>) -> Cell {
    printed.map_or_else(|| Cell::unknown("data sheet"), Cell::text)
}
