//! The people that a walk test asks about where a site names no others.
//!
//! Cylinders stand for bodies: two for shoulders, one for legs and feet, one for a head, a row for what is long. Adult
//! sizes were computed from the raw rows of ANSUR II (2012), which measured soldiers, not the public. Sizes marked
//! memory were not seen in print.

use super::body::{Body, Cylinder, Speeds};
use quantity::{Length, Quantity as _, Velocity};

/// Adult, small adult, children, one who crawls, one who fell, wheelchair user, cyclist.
pub fn people() -> Vec<Body> {
    vec![
        adult(),
        small_adult(),
        child_of_seven(),
        child_of_three(),
        crawling_child(),
        fallen_along(),
        wheelchair_user(),
        cyclist(),
        fallen_across(),
    ]
}

/// Ahead, aside, radius, bottom, top in millimeters.
pub(super) type Row = [f64; 5];

pub(super) fn body(name: &str, rows: &[Row], speeds: Option<(f64, f64)>, source: &str) -> Body {
    let meters = |millimeters: f64| Length::from_base(millimeters / 1000.0);
    Body {
        name: name.to_owned(),
        parts: rows
            .iter()
            .map(|[ahead, aside, radius, bottom, top]| Cylinder {
                ahead: meters(*ahead),
                aside: meters(*aside),
                radius: meters(*radius),
                bottom: meters(*bottom),
                top: meters(*top),
            })
            .collect(),
        arm: 0,
        speeds: speeds.map(|(from, to)| Speeds {
            from: Velocity::from_base(from),
            to: Velocity::from_base(to),
        }),
        source: source.to_owned(),
    }
}

fn adult() -> Body {
    let rows = [
        [0.0, -134.5, 149.0, 900.0, 1546.0],
        [0.0, 134.5, 149.0, 900.0, 1546.0],
        [0.0, 0.0, 146.5, 0.0, 900.0],
        [0.0, 0.0, 105.5, 1546.0, 1870.0],
    ];
    let source = "ANSUR II 2012, men, 95th percentile: shoulders 567 mm, chest 298 mm deep, foot 293 mm, head 211 mm, \
                  shoulder 1546 mm and top 1870 mm high; hip 900 mm high: memory; to 1.6 m/s: ISO 13855:2010";
    body("adult", &rows, Some((0.3, 1.6)), source)
}

fn small_adult() -> Body {
    let rows = [
        [0.0, -100.5, 102.5, 700.0, 1242.0],
        [0.0, 100.5, 102.5, 700.0, 1242.0],
        [0.0, 0.0, 113.0, 0.0, 700.0],
        [0.0, 0.0, 89.0, 1242.0, 1525.0],
    ];
    let source = "ANSUR II 2012, women, 5th percentile: shoulders 406 mm, chest 205 mm deep, foot 226 mm, head 178 mm, \
                  shoulder 1242 mm and top 1525 mm high; hip 700 mm high: memory; to 1.6 m/s: ISO 13855:2010";
    body("small adult", &rows, Some((0.3, 1.6)), source)
}

fn child_of_seven() -> Body {
    let rows = [
        [0.0, -75.0, 75.0, 560.0, 970.0],
        [0.0, 75.0, 75.0, 560.0, 970.0],
        [0.0, 0.0, 95.0, 0.0, 560.0],
        [0.0, 0.0, 90.0, 970.0, 1220.0],
    ];
    let source = "memory: 1220 mm tall, shoulders 300 mm, chest 150 mm deep; runs to 3 m/s: memory; walks at 1.3 m/s on \
                  average: study of 170 pupils over 10 m, 2022";
    body("child of about 7", &rows, Some((0.3, 3.0)), source)
}

fn child_of_three() -> Body {
    let rows = [
        [0.0, -60.0, 62.5, 380.0, 690.0],
        [0.0, 60.0, 62.5, 380.0, 690.0],
        [0.0, 0.0, 75.0, 0.0, 380.0],
        [0.0, 0.0, 85.0, 690.0, 893.0],
    ];
    let source = "893 mm tall: US growth percentiles, girls of 3, 10th percentile; shoulders 245 mm, chest 125 mm deep, \
                  runs to 2 m/s: memory";
    body("child of about 3", &rows, Some((0.2, 2.0)), source)
}

fn crawling_child() -> Body {
    let rows = [
        [-220.0, 0.0, 90.0, 0.0, 250.0],
        [-60.0, 0.0, 105.0, 0.0, 320.0],
        [100.0, 0.0, 105.0, 0.0, 320.0],
        [250.0, 0.0, 80.0, 150.0, 400.0],
    ];
    body(
        "crawling child",
        &rows,
        Some((0.1, 0.5)),
        "memory: 640 mm long, back 320 mm high",
    )
}

/// How far along the body from its middle, radius and height of one who lies.
const LYING: [(f64, f64, f64); 8] = [
    (-660.0, 100.0, 130.0),
    (-480.0, 100.0, 150.0),
    (-300.0, 130.0, 190.0),
    (-110.0, 165.0, 200.0),
    (90.0, 180.0, 205.0),
    (280.0, 200.0, 205.0),
    (500.0, 70.0, 130.0),
    (640.0, 90.0, 178.0),
];

const LYING_SOURCE: &str = "as high as the chest is deep, 205 mm, and shoulders 406 mm: ANSUR II 2012, women, 5th \
                            percentile; the rest of the shape: memory";

fn fallen_along() -> Body {
    let rows = LYING.map(|(along, radius, top)| [along, 0.0, radius, 0.0, top]);
    body(
        "someone fallen, lying through the gate",
        &rows,
        None,
        LYING_SOURCE,
    )
}

fn fallen_across() -> Body {
    let rows = LYING.map(|(along, radius, top)| [0.0, along, radius, 0.0, top]);
    body(
        "someone fallen, lying along the leaf",
        &rows,
        None,
        LYING_SOURCE,
    )
}

fn wheelchair_user() -> Body {
    let rows = [
        [-420.0, -190.0, 190.0, 0.0, 700.0],
        [-420.0, 190.0, 190.0, 0.0, 700.0],
        [-120.0, -190.0, 190.0, 0.0, 700.0],
        [-120.0, 190.0, 190.0, 0.0, 700.0],
        [180.0, -170.0, 160.0, 50.0, 650.0],
        [180.0, 170.0, 160.0, 50.0, 650.0],
        [470.0, -90.0, 140.0, 20.0, 350.0],
        [470.0, 90.0, 140.0, 20.0, 350.0],
        [-150.0, 0.0, 200.0, 500.0, 1300.0],
    ];
    let source = "760 mm by 1220 mm: clear floor space of a wheelchair, 2010 ADA Standards 305.3 (memory); heights and \
                  the rest of the shape: memory; to 2 m/s: memory";
    body("wheelchair user", &rows, Some((0.3, 2.0)), source)
}

fn cyclist() -> Body {
    let rows = [
        [760.0, 0.0, 90.0, 0.0, 650.0],
        [600.0, 0.0, 90.0, 0.0, 650.0],
        [350.0, -200.0, 100.0, 850.0, 1050.0],
        [350.0, 200.0, 100.0, 850.0, 1050.0],
        [450.0, 0.0, 100.0, 150.0, 1000.0],
        [250.0, 0.0, 120.0, 150.0, 850.0],
        [0.0, 0.0, 180.0, 150.0, 900.0],
        [-100.0, 0.0, 230.0, 900.0, 1500.0],
        [-300.0, 0.0, 120.0, 150.0, 850.0],
        [-600.0, 0.0, 90.0, 0.0, 650.0],
        [-760.0, 0.0, 90.0, 0.0, 650.0],
        [150.0, 0.0, 105.0, 1500.0, 1750.0],
    ];
    body(
        "cyclist",
        &rows,
        Some((1.0, 5.0)),
        "memory: 1700 mm long, handlebar 600 mm wide, 1 m/s to 5 m/s",
    )
}
