//! Works suns and boxes from fixed sequences and prints them, for cross-checks: `sun` or `enclosure` as argument.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

use quantity::{
    Angle, Area, Energy, HeatFlux, HeatTransfer, Power, Quantity as _, Temperature, Time, celsius,
};
use sim::enclosure::{Day, Enclosure, Heater, Switch, Vent, Walls};
use sim::sun::{Face, SunPlace, clear_sky, split};

fn main() {
    match std::env::args().nth(1).as_deref() {
        Some("enclosure") => enclosures(),
        _ => suns(),
    }
}

/// A number between two, from a fixed sequence: whole parts of multiples of irrational steps are dropped.
fn between(at: u32, which: u32, low: f64, high: f64) -> f64 {
    let step = f64::from(2 + which).sqrt() * 0.754_877_666;
    low + (f64::from(at + 1) * step).fract() * (high - low)
}

/// A thousand positions: place, seconds of 2026, where the sun is, and what a face gets of a clear sky.
fn suns() {
    println!("latitude,longitude,seconds,azimuth,elevation,global,diffuse,tilt,facing,face");
    for at in 0..1000 {
        let of = |which, low, high| between(at, which, low, high);
        let (latitude, longitude) = (of(0, -65.0, 65.0), of(1, -180.0, 180.0));
        let seconds = of(3, 0.0, 365.0 * 86_400.0);
        let (tilt, facing) = (of(4, 0.0, 90.0), of(5, 0.0, 360.0));
        let radians = |degrees: f64| Angle::from_base(degrees.to_radians());
        let place = SunPlace::new(radians(latitude), radians(longitude)).unwrap();
        let sun = place.sun(Time::from_base(seconds)).unwrap();
        let sky = split(clear_sky(sun.elevation) * of(8, 0.1, 1.0), sun.elevation);
        let face = Face::open(radians(tilt), radians(facing)).sunshine(sun, &sky);
        let values = [
            latitude,
            longitude,
            seconds,
            sun.azimuth.base().to_degrees(),
            sun.elevation.base().to_degrees(),
            sky.global.base(),
            sky.diffuse.base(),
            tilt,
            facing,
            HeatFlux::base(face),
        ];
        println!("{}", values.map(|value| format!("{value:.9}")).join(","));
    }
}

/// Forty boxes: what they are, and their day.
fn enclosures() {
    println!(
        "through,stores,inside,cold,hot,sun,power,on,off,stuck,opens,closes,vent,hottest,coldest,mean,heater"
    );
    for at in 0..40 {
        let of = |which, low, high| between(at, which, low, high);
        let (transfer, area) = (of(0, 1.0, 8.0), of(1, 0.5, 3.0));
        let (stores, inside) = (of(3, 10_000.0, 90_000.0), of(4, 5.0, 60.0));
        let cold = of(5, -25.0, 20.0);
        let hot = cold + of(6, 5.0, 18.0);
        let sun = of(8, 0.0, 200.0);
        let power = of(9, 50.0, 300.0);
        let stuck = at % 3 == 0;
        let vent = if at % 4 == 0 { of(10, 5.0, 40.0) } else { 0.0 };
        let mut day = Day::dark(celsius(cold), celsius(hot));
        for (hour, power) in day.sun.iter_mut().enumerate() {
            let lit = (7..18).contains(&hour);
            *power = Power::from_base(if lit { sun } else { 0.0 });
        }
        let switch = |above: f64, below: f64| Switch {
            above: celsius(above),
            below: celsius(below),
        };
        let one = Enclosure {
            walls: Walls {
                transfer: HeatTransfer::from_base(transfer),
                area: Area::from_base(area),
                stores: Energy::from_base(stores),
            },
            inside: Power::from_base(inside),
            heater: Some(Heater {
                power: Power::from_base(power),
                on_below: celsius(5.0),
                off_above: celsius(10.0),
                stuck,
            }),
            cut_out: Some(switch(45.0, 35.0)),
            vent: Some(Vent {
                switch: switch(38.0, 30.0),
                carries: Power::from_base(vent),
            }),
        };
        let found = one.through(&day).unwrap();
        let degrees = |value: Temperature| value.base() - 273.15;
        let values = [
            transfer * area,
            stores,
            inside,
            cold,
            hot,
            sun,
            power,
            5.0,
            10.0,
            f64::from(u8::from(stuck)),
            45.0,
            35.0,
            vent,
            degrees(found.hottest.1),
            degrees(found.coldest.1),
            degrees(found.mean),
            found.heater_on.base(),
        ];
        println!("{}", values.map(|value| format!("{value:.9}")).join(","));
    }
}
