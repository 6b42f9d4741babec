//! Invented worlds for the tests, the benchmark and the program that other languages ask.

#![allow(dead_code, reason = "each that includes it uses a part")]
#![allow(
    clippy::wildcard_imports,
    reason = "everything of a walk test is used to write a world"
)]

pub(crate) mod turning;

use quantity::{Acceleration, Force, ForcePerLength, Length, Quantity, Ratio, Time, Velocity};
use sim::Plan;
use sim::walk::*;

pub(crate) fn base<Q: Quantity>(number: f64) -> Q {
    Q::from_base(number)
}

pub(crate) fn spot(x: f64, y: f64) -> Spot {
    Spot {
        x: base(x),
        y: base(y),
    }
}

pub(crate) fn plan(travel: f64, set_point: f64) -> Plan {
    Plan {
        travel: base::<Length>(travel),
        cruise_speed: base::<Velocity>(0.33),
        acceleration: base::<Acceleration>(0.5),
        deceleration: base(0.3),
        set_point: base(set_point),
        creep_speed: base(0.1),
    }
}

pub(crate) fn closing() -> Pass {
    Pass {
        direction: Direction::Closing,
        plan: plan(4.0, 0.75),
        edge: base(4.0),
        opposing: Some(base(0.0)),
    }
}

/// The tail of a leaf that runs toward a wall.
pub(crate) fn opening() -> Pass {
    Pass {
        direction: Direction::Opening,
        plan: plan(4.0, 0.75),
        edge: base(5.2),
        opposing: Some(base(9.4)),
    }
}

pub(crate) fn beam(y: f64, height: f64) -> Beam {
    Beam {
        guards: vec![Direction::Closing],
        from: spot(0.0, y),
        to: spot(4.0, y),
        height: base(height),
        diameter: base(0.0),
        response: base::<Time>(0.02),
    }
}

pub(crate) fn edge(guards: Direction) -> ContactEdge {
    ContactEdge {
        guards,
        bottom: base(0.05),
        top: base(2.0),
        actuation_travel: base(0.010),
        response: base(0.02),
        stiffness: base::<ForcePerLength>(8_000.0),
        soft_travel: base(0.050),
        hard_stiffness: base(75_000.0),
    }
}

pub(crate) fn controller(reaction: f64) -> Controller {
    Controller {
        reaction: base(reaction),
        stopping: base(1.5),
        answer: Answer::Reverse {
            pause: base(0.2),
            speed: base(0.2),
            distance: base(0.3),
        },
    }
}

/// Limits of EN 12453 as one trade body words them; the squeeze is invented.
pub(crate) fn limits() -> Limits {
    Limits {
        crushing_gap: base(0.5),
        crushing_force: base::<Force>(400.0),
        open_force: base(1400.0),
        lasting_force: base(150.0),
        lasting_after: base(0.75),
        rest_force: base(25.0),
        rest_after: base(5.0),
        squeeze: base(0.05),
    }
}

/// One upright cylinder.
pub(crate) fn round(name: &str, radius: f64, top: f64, speeds: (f64, f64)) -> Body {
    Body {
        name: name.to_owned(),
        parts: vec![Cylinder {
            ahead: base(0.0),
            aside: base(0.0),
            radius: base(radius),
            bottom: base(0.0),
            top: base(top),
        }],
        arm: 0,
        speeds: Some(Speeds {
            from: base(speeds.0),
            to: base(speeds.1),
        }),
        source: "invented".to_owned(),
    }
}

/// Cylinders side by side: ahead, aside, radius.
pub(crate) fn joined(parts: &[[f64; 3]]) -> Body {
    let mut body = round("joined", 0.1, 1.5, (0.3, 1.6));
    let first = body.parts[0];
    body.parts = parts
        .iter()
        .map(|[ahead, aside, radius]| Cylinder {
            ahead: base(*ahead),
            aside: base(*aside),
            radius: base(*radius),
            ..first
        })
        .collect();
    body
}

/// The gate of the first trial: two beams 120 mm off the line, an edge, one round adult.
pub(crate) fn trial(reaction: f64) -> World {
    World {
        leaf: Leaf {
            thickness: base(0.06),
            bottom: base(0.05),
            top: base(2.0),
        },
        passes: vec![closing()],
        beams: vec![beam(-0.12, 0.5), beam(0.12, 0.5)],
        scanners: vec![],
        edges: vec![edge(Direction::Closing)],
        drive: None,
        bare_stiffness: base(75_000.0),
        controller: controller(reaction),
        limits: limits(),
        bodies: vec![round("adult", 0.20, 1.75, (0.3, 1.6))],
        catches: vec![],
        greatest_slant: base::<Ratio>(1.0),
    }
}

/// Both ways of a leaf, six devices that see and two edges, nine bodies.
pub(crate) fn full() -> World {
    let mut world = trial(0.08);
    world.passes.push(opening());
    world.beams.push(beam(-0.3, 0.25));
    world.beams.push(beam(0.3, 0.25));
    world.beams.push(Beam {
        guards: vec![Direction::Opening, Direction::Closing],
        from: spot(-0.1, -0.6),
        to: spot(9.2, 0.7),
        diameter: base(0.02),
        ..beam(0.0, 0.3)
    });
    world.scanners.push(Scanner {
        guards: vec![Direction::Opening, Direction::Closing],
        corners: vec![
            spot(4.5, 0.1),
            spot(9.4, 0.1),
            spot(9.0, 1.1),
            spot(5.0, 1.3),
        ],
        bottom: base(0.2),
        top: base(0.2),
        smallest_object: base(0.05),
        response: base(0.12),
    });
    world.edges.push(edge(Direction::Opening));
    world.drive = Some(ForceSensing {
        guards: vec![Direction::Opening, Direction::Closing],
        force: base(450.0),
        response: base(0.15),
    });
    world.bodies = people();
    world.bodies.extend(leaning());
    world
}

/// Whether two scenarios come out alike, but for rounding.
pub(crate) fn alike(one: &Outcome, other: &Outcome) -> bool {
    let near = match (one.touch, other.touch) {
        (Some(one), Some(other)) => {
            (one.time - other.time).base().abs() < 1e-6
                && (one.travel - other.travel).base().abs() < 1e-6
        }
        (None, None) => true,
        _ => false,
    };
    one.class == other.class && near
}
