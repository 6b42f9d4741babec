//! How long a year of low sun takes at steps of five minutes, for twenty devices at one place.
//!
//! Run with `cargo bench --package sim --bench glare`. One item is one device.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::Bencher;
use divan::counter::ItemsCount;
use quantity::{Angle, Quantity as _};
use sim::glare::{Look, Opening, SunPath, glare_year};
use sim::sun::{Skyline, SunPlace};

fn main() {
    divan::main();
}

fn degrees(value: f64) -> Angle {
    Angle::from_base(value.to_radians())
}

/// Receivers, scanners, cameras and displays that look all around.
fn looks() -> Vec<Look> {
    let opening = |at: u32| match at % 4 {
        0 => Opening::Cone { half: degrees(2.5) },
        1 => Opening::Fan {
            across: degrees(95.0),
            off: degrees(5.0),
        },
        2 => Opening::Picture {
            across: degrees(40.0),
            down: degrees(25.0),
            roll: degrees(0.0),
        },
        _ => Opening::Cone {
            half: degrees(60.0),
        },
    };
    let look = |at: u32| Look {
        azimuth: degrees(f64::from(at) * 18.0),
        elevation: degrees(-f64::from(at % 3) * 5.0),
        opening: opening(at),
        hood: None,
    };
    (0..20).map(look).collect()
}

/// The sun's way and twenty devices, from nothing.
#[divan::bench]
fn twenty_devices(bencher: Bencher) {
    let looks = looks();
    let skyline = Skyline::new([
        (degrees(90.0), degrees(3.0)),
        (degrees(180.0), degrees(8.0)),
        (degrees(270.0), degrees(2.0)),
    ])
    .unwrap();
    bencher.counter(ItemsCount::new(20_usize)).bench(|| {
        let place = SunPlace::new(degrees(47.0), degrees(9.0)).unwrap();
        let path = SunPath::of(&place).unwrap();
        glare_year(&path, &looks, &skyline).unwrap()
    });
}
