//! How long a year of sun takes: the hours of a panel, and fifty pairs of panel and battery through them.
//!
//! Run with `cargo bench --package sim --bench sun_year`. One item is one pair.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::Bencher;
use divan::counter::ItemsCount;
use quantity::{Angle, Energy, HeatFlux, Power, Quantity as _, Ratio, Time, celsius};
use sim::sun::SunPlace;
use sim::sun_year::{Bank, Given, Panel, PanelHours, Plane, hourly};

fn main() {
    divan::main();
}

fn given() -> Given {
    let monthly = [1.0, 1.8, 3.0, 4.2, 5.1, 5.6, 5.7, 4.9, 3.6, 2.1, 1.2, 0.8];
    Given {
        place: SunPlace::new(Angle::from_base(0.82), Angle::from_base(0.157)).unwrap(),
        monthly: monthly.map(|value| HeatFlux::from_base(value * 1e3 / 24.0)),
        plane: Plane::Level,
        dark_run: Time::from_base(4.0 * 86_400.0),
        air: (celsius(36.0), celsius(-14.0)),
    }
}

fn panel(watts: f64) -> Panel {
    Panel::open(
        Power::from_base(watts),
        Angle::from_base(1.05),
        Angle::from_base(2.97),
    )
}

fn fifty(sun: &[PanelHours]) -> usize {
    let load = [Power::from_base(30.0); 24];
    let holds = |hours: &&PanelHours| {
        (1..=10).any(|step| {
            let bank = Bank {
                usable: Energy::from_base(f64::from(step) * 1000.0 * 3600.0),
                efficiency: Ratio::from_base(0.95),
                greatest_charge: Power::from_base(1000.0),
            };
            divan::black_box(bank.through(hours, &load).unwrap()).hours_without == 0 && step == 10
        })
    };
    sun.iter().filter(holds).count()
}

/// The hours of one panel.
#[divan::bench]
fn hours_of_a_panel(bencher: Bencher) {
    let (given, panel) = (given(), panel(400.0));
    bencher.bench(|| hourly(&given, &panel).unwrap());
}

/// Five panels with ten batteries each, hours included.
#[divan::bench]
fn fifty_pairs(bencher: Bencher) {
    let given = given();
    bencher.counter(ItemsCount::new(50_usize)).bench(|| {
        let one = hourly(&given, &panel(200.0)).unwrap();
        let mut sun = vec![one.clone()];
        for _ in 0..4 {
            let more = sun.last().unwrap().clone().and(&one);
            sun.push(more);
        }
        fifty(&sun)
    });
}
