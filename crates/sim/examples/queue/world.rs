//! The worlds of the cross-checks.

use quantity::{Length, Quantity as _, Ratio, Time, Velocity};
use sim::queue::{Driver, Lane, Leaf, Turn, World};

fn driver(share: f64, service: f64, spread: f64, length: f64, speed: f64) -> Driver {
    Driver {
        share: Ratio::from_base(share),
        service: Time::from_base(service),
        spread: Time::from_base(spread),
        length: Length::from_base(length),
        speed: Velocity::from_base(speed),
    }
}

/// One server with nothing behind it, eight hours at one rate.
pub(crate) fn bare(rate: f64, service: f64, spread: f64) -> World {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few hundred"
    )]
    let count = rate as u32;
    let nothing = Length::from_base(0.0);
    let none = Time::from_base(0.0);
    World {
        arrivals: vec![count; 8],
        group: Ratio::from_base(1.0),
        drivers: vec![driver(1.0, service, spread, 0.0, 1.0)],
        followers: Ratio::from_base(0.0),
        lane: Lane {
            reader: nothing,
            stacking: Length::from_base(100.0),
            gap: nothing,
            set_off: none,
            headway: none,
            seen_before: nothing,
            clear_after: nothing,
        },
        leaf: Leaf {
            opening: none,
            closing: none,
            reversal: none,
            drop_out: none,
            hold: none,
            turn: Turn::StaysOpen,
        },
    }
}

/// A gate with tags, codes and visitors, cars and trucks, through a busy morning.
pub(crate) fn gate(room: bool, one_each: bool) -> World {
    World {
        arrivals: vec![20, 55, 70, 40],
        group: Ratio::from_base(1.25),
        drivers: vec![
            driver(0.6, 4.0, 1.0, 4.8, 2.8),
            driver(0.3, 12.0, 5.0, 4.8, 2.8),
            driver(0.1, 40.0, 25.0, 9.5, 1.7),
        ],
        followers: Ratio::from_base(if one_each { 0.0 } else { 0.2 }),
        lane: Lane {
            reader: Length::from_base(if room { 12.0 } else { 3.6 }),
            stacking: Length::from_base(30.0),
            gap: Length::from_base(1.5),
            set_off: Time::from_base(1.5),
            headway: Time::from_base(1.0),
            seen_before: Length::from_base(3.0),
            clear_after: Length::from_base(2.0),
        },
        leaf: Leaf {
            opening: Time::from_base(8.0),
            closing: Time::from_base(9.0),
            reversal: Time::from_base(1.0),
            drop_out: Time::from_base(0.5),
            hold: Time::from_base(if one_each { 0.0 } else { 12.0 }),
            turn: if one_each {
                Turn::OneEach
            } else {
                Turn::StaysOpen
            },
        },
    }
}
