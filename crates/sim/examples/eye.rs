//! Works cameras and low suns from fixed sequences and prints them, for cross-checks: `camera`, `seen` or `glare` as argument.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

use quantity::{Angle, Length, Quantity as _};
use sim::camera::{Camera, Hider, Wanted};
use sim::glare::{Look, Opening, SunPath, glare_year};
use sim::sun::{Skyline, SunPlace};

fn main() {
    match std::env::args().nth(1).as_deref() {
        Some("seen") => seen(),
        Some("glare") => glare(),
        _ => cameras(),
    }
}

/// A number between two, from a fixed sequence: whole parts of multiples of irrational steps are dropped.
fn between(at: u32, which: u32, low: f64, high: f64) -> f64 {
    let step = f64::from(2 + which).sqrt() * 0.754_877_666;
    low + (f64::from(at + 1) * step).fract() * (high - low)
}

fn radians(degrees: f64) -> Angle {
    Angle::from_base(degrees.to_radians())
}

fn line(values: &[f64]) {
    let all: Vec<String> = values.iter().map(|value| format!("{value:.9}")).collect();
    println!("{}", all.join(","));
}

fn camera(at: u32) -> (Camera, [f64; 10]) {
    let of = |which, low, high| between(at, which, low, high);
    let (x, y, z) = (of(0, -5.0, 5.0), of(1, -5.0, 5.0), of(3, 2.0, 8.0));
    let (pan, tilt, roll) = (of(4, -180.0, 180.0), of(5, 5.0, 60.0), of(6, -20.0, 20.0));
    let (focal, sensor) = (of(8, 0.0025, 0.012), of(9, 0.0045, 0.009));
    let camera = Camera {
        at: [x, y, z].map(Length::from_base),
        pan: radians(pan),
        tilt: radians(tilt),
        roll: radians(roll),
        focal_length: Length::from_base(focal),
        sensor_width: Length::from_base(sensor),
        pixels: (2560, 1440),
    };
    (
        camera,
        [x, y, z, pan, tilt, roll, focal, sensor, 2560.0, 1440.0],
    )
}

/// Two thousand points in the pictures of forty cameras; those behind a lens are left out.
fn cameras() {
    println!("x,y,z,pan,tilt,roll,focal,sensor,across,down,px,py,pz,u,v,depth");
    for at in 0..40 {
        let (camera, values) = camera(at);
        for point in 0..80 {
            let of = |which, low, high| between(at * 80 + point, which, low, high);
            let place = [of(0, -30.0, 30.0), of(1, -30.0, 30.0), of(3, -1.0, 5.0)];
            if let Some(pixel) = camera.project(place.map(Length::from_base)) {
                let mut all = values.to_vec();
                all.extend(place);
                all.extend([pixel.across, pixel.down, pixel.depth.base()]);
                line(&all);
            }
        }
    }
}

/// Forty areas seen past three boxes each: corners of area and boxes, shares seen and outside the picture.
fn seen() {
    println!(
        "x,y,z,pan,tilt,roll,focal,sensor,across,down,west,south,east,north,boxes,seen,outside,hidden"
    );
    for at in 0..40 {
        let (camera, values) = camera(at);
        let of = |which, low, high| between(at, which, low, high);
        let ahead = of(10, 3.0, 12.0);
        let pan = camera.pan.base();
        let middle = (values[0] + ahead * pan.cos(), values[1] + ahead * pan.sin());
        let (wide, deep) = (of(11, 2.0, 6.0), of(12, 2.0, 6.0));
        let (west, east) = (middle.0 - wide, middle.0 + wide);
        let (south, north) = (middle.1 - deep, middle.1 + deep);
        let corners = [(west, south), (east, south), (east, north), (west, north)];
        let wanted = Wanted {
            corners: corners.map(|(x, y)| [x, y].map(Length::from_base)).to_vec(),
            height: Length::from_base(0.0),
        };
        let boxes: Vec<[f64; 6]> = (0..3)
            .map(|which| {
                let of = |row, low, high| between(at * 3 + which, row, low, high);
                let share = of(2, 0.3, 0.9);
                let x = values[0] + share * (middle.0 - values[0]) + of(4, -1.0, 1.0);
                let y = values[1] + share * (middle.1 - values[1]) + of(5, -1.0, 1.0);
                let (half, bottom) = (of(6, 0.1, 0.6), of(7, 0.0, 0.8));
                [
                    x - half,
                    y - half,
                    x + half,
                    y + half,
                    bottom,
                    bottom + of(9, 0.3, 4.0),
                ]
            })
            .collect();
        let hiders: Vec<Hider> = boxes.iter().map(hider).collect();
        let found = camera.sees(&wanted, &hiders).unwrap();
        let text: Vec<String> = boxes
            .iter()
            .map(|of| of.map(|value| format!("{value:.9}")).join(" "))
            .collect();
        let front: Vec<String> = values
            .iter()
            .chain(&[west, south, east, north])
            .map(|value| format!("{value:.9}"))
            .collect();
        let hidden: f64 = found.hidden_by.iter().map(|share| share.base()).sum();
        println!(
            "{},{},{:.9},{:.9},{hidden:.9}",
            front.join(","),
            text.join(";"),
            found.seen.base(),
            found.outside.base()
        );
    }
}

fn hider([west, south, east, north, bottom, top]: &[f64; 6]) -> Hider {
    let corners = [
        (*west, *south),
        (*east, *south),
        (*east, *north),
        (*west, *north),
    ];
    Hider {
        corners: corners.map(|(x, y)| [x, y].map(Length::from_base)).to_vec(),
        bottom: Length::from_base(*bottom),
        top: Length::from_base(*top),
    }
}

/// Four places with a dozen looks each: what looks, and its year. Kinds: 0 cone, 1 fan, 2 picture.
fn glare() {
    println!(
        "latitude,longitude,ridge,kind,azimuth,elevation,first,second,roll,hood,zone,hours,worst_day,worst_second,worst_off"
    );
    for at in 0..4 {
        let (latitude, longitude) = (between(at, 0, -55.0, 65.0), between(at, 1, -170.0, 170.0));
        let ridge = if at % 2 == 0 { 0.0 } else { 6.0 };
        let place = SunPlace::new(radians(latitude), radians(longitude)).unwrap();
        let path = SunPath::of(&place).unwrap();
        let skyline = Skyline::new([(radians(0.0), radians(ridge))]).unwrap();
        let rows: Vec<[f64; 7]> = (0..12).map(|look| row(at * 12 + look)).collect();
        let looks: Vec<Look> = rows.iter().map(look).collect();
        let years = glare_year(&path, &looks, &skyline).unwrap();
        for (row, year) in rows.iter().zip(&years) {
            let worst = year.worst.map_or([-1.0; 3], |worst| {
                [
                    f64::from(worst.day),
                    worst.time.base(),
                    worst.off.base().to_degrees(),
                ]
            });
            let mut all = vec![latitude, longitude, ridge];
            all.extend(row);
            all.extend([f64::from(path.zone()), year.total.base() / 3600.0]);
            all.extend(worst);
            line(&all);
        }
    }
}

fn row(at: u32) -> [f64; 7] {
    let of = |which, low, high| between(at, which, low, high);
    let hood = if at % 5 == 4 { 12.0 } else { 999.0 };
    let (azimuth, elevation) = (of(2, 0.0, 360.0), of(3, -20.0, 5.0));
    match at % 3 {
        0 => [0.0, azimuth, elevation, of(4, 2.0, 60.0), 0.0, 0.0, hood],
        1 => [
            1.0,
            azimuth,
            0.0,
            of(4, 20.0, 100.0),
            of(5, 2.0, 8.0),
            0.0,
            hood,
        ],
        _ => [
            2.0,
            azimuth,
            elevation,
            of(4, 10.0, 45.0),
            of(5, 8.0, 28.0),
            of(6, -15.0, 15.0),
            hood,
        ],
    }
}

fn look(row: &[f64; 7]) -> Look {
    let [kind, azimuth, elevation, first, second, roll, hood] = *row;
    Look {
        azimuth: radians(azimuth),
        elevation: radians(elevation),
        opening: if kind < 0.5 {
            Opening::Cone {
                half: radians(first),
            }
        } else if kind < 1.5 {
            Opening::Fan {
                across: radians(first),
                off: radians(second),
            }
        } else {
            Opening::Picture {
                across: radians(first),
                down: radians(second),
                roll: radians(roll),
            }
        },
        hood: (hood < 900.0).then(|| radians(hood)),
    }
}
