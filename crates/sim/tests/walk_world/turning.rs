//! Invented worlds of leaves that swing and of leaves that rise.

use super::*;
use std::f64::consts::FRAC_PI_2;

/// A plan along the arc of the free end of a leaf so long that turns by a quarter turn.
pub(crate) fn quarter(length: f64) -> Plan {
    Plan {
        cruise_speed: base(0.45),
        ..plan(length * FRAC_PI_2, 0.75)
    }
}

pub(crate) fn leaf(pivot: f64, length: f64, toward: Toward) -> SwingLeaf {
    SwingLeaf {
        pivot: spot(pivot, 0.0),
        toward,
        opens: Opens::Inward,
        heel: base(0.05),
        length: base(length),
        offset: base(0.0),
        thickness: base(0.06),
        bottom: base(0.05),
        top: base(1.8),
    }
}

fn turn(length: f64, delay: f64) -> Turn {
    Turn {
        plan: quarter(length),
        delay: base(delay),
    }
}

fn face(from: (f64, f64), to: (f64, f64)) -> Face {
    Face {
        from: spot(from.0, from.1),
        to: spot(to.0, to.1),
    }
}

pub(crate) fn on_leaf(leaf: usize, from: f64, to: f64, edge: ContactEdge) -> LeafEdge {
    LeafEdge {
        leaf,
        from: base(from),
        to: base(to),
        edge,
    }
}

/// One leaf of 3 m, hinged at x = 3 m, a beam before the closed leaf, an edge along its outer half, one round adult.
pub(crate) fn single(reaction: f64) -> SwingWorld {
    let pass = |direction| SwingPass {
        direction,
        turns: vec![turn(3.0, 0.0)],
    };
    let across = Beam {
        from: spot(0.0, -0.12),
        to: spot(3.0, -0.12),
        ..beam(0.0, 0.6)
    };
    SwingWorld {
        leaves: vec![leaf(3.0, 3.0, Toward::Smaller)],
        passes: vec![pass(Direction::Closing), pass(Direction::Opening)],
        faces: Vec::new(),
        beams: vec![across],
        scanners: Vec::new(),
        edges: vec![
            on_leaf(0, 1.5, 3.0, edge(Direction::Closing)),
            on_leaf(0, 1.5, 3.0, edge(Direction::Opening)),
        ],
        drive: None,
        bare_stiffness: base(75_000.0),
        controller: controller(reaction),
        limits: limits(),
        bodies: vec![round("adult", 0.20, 1.75, (0.3, 1.6))],
        greatest_slant: base(20.0),
        hefts: Vec::new(),
        measured: Vec::new(),
    }
}

/// Two leaves that meet with a delay, hinged off their middles and with tails, posts, a wall beside an open leaf, two
/// scanners, beams, edges, force sensing, nine bodies.
pub(crate) fn double() -> SwingWorld {
    let mut world = single(0.08);
    let mut left = leaf(0.0, 1.95, Toward::Greater);
    left.heel = base(-0.08);
    left.offset = base(0.07);
    let mut right = leaf(4.0, 1.95, Toward::Smaller);
    right.offset = base(-0.05);
    world.leaves = vec![left, right];
    world.passes = vec![
        SwingPass {
            direction: Direction::Closing,
            turns: vec![turn(1.95, 2.0), turn(1.95, 0.0)],
        },
        SwingPass {
            direction: Direction::Opening,
            turns: vec![turn(1.95, 0.0), turn(1.95, 2.0)],
        },
    ];
    world.faces = vec![
        face((-0.20, -0.3), (-0.20, 0.0)),
        face((4.15, -0.3), (4.15, 0.0)),
        face((-0.45, 0.6), (-0.45, 3.0)),
        face((4.30, 1.9), (4.90, 1.2)),
    ];
    let both = vec![Direction::Opening, Direction::Closing];
    let field = |corners: [(f64, f64); 4]| Scanner {
        guards: both.clone(),
        corners: corners.map(|(x, y)| spot(x, y)).to_vec(),
        bottom: base(0.2),
        top: base(0.2),
        smallest_object: base(0.05),
        response: base(0.12),
    };
    world.beams = vec![
        Beam {
            guards: both.clone(),
            from: spot(0.0, -0.25),
            to: spot(4.0, -0.25),
            ..beam(0.0, 0.5)
        },
        Beam {
            guards: vec![Direction::Closing],
            from: spot(0.0, 2.2),
            to: spot(4.0, 2.2),
            ..beam(0.0, 0.5)
        },
    ];
    world.scanners = vec![
        field([(0.2, 0.3), (1.9, 0.3), (1.7, 1.6), (0.3, 1.9)]),
        field([(2.1, 0.3), (3.8, 0.3), (3.7, 1.9), (2.3, 1.6)]),
    ];
    world.edges = Vec::new();
    for at in 0..2 {
        for direction in [Direction::Closing, Direction::Opening] {
            world.edges.push(on_leaf(at, 1.0, 1.95, edge(direction)));
        }
    }
    world.drive = Some(ForceSensing {
        guards: both,
        force: base(200.0),
        response: base(0.15),
    });
    world.bodies = people();
    world
}

/// A barrier's arm of 4 m at 0.95 m, with an edge below it and two beams.
pub(crate) fn arm() -> RisingWorld {
    let plain = single(0.08);
    let pass = |direction| RisingPass {
        direction,
        plan: Plan {
            cruise_speed: base(1.6),
            acceleration: base(1.5),
            deceleration: base(1.5),
            ..plan(4.0 * FRAC_PI_2, 1.6)
        },
    };
    RisingWorld {
        leaf: RisingLeaf::Turning(TurningLeaf {
            pivot: base(-0.3),
            height: base(1.0),
            toward: Toward::Greater,
            heel: base(-0.4),
            length: base(4.0),
            below: base(0.05),
            above: base(0.05),
            thickness: base(0.08),
        }),
        passes: vec![pass(Direction::Closing), pass(Direction::Opening)],
        beams: vec![beam(-0.4, 0.5), beam(0.4, 0.5)],
        scanners: Vec::new(),
        edges: vec![on_leaf(0, 0.3, 4.0, edge(Direction::Closing))],
        drive: None,
        bare_stiffness: base(10_000.0),
        controller: Controller {
            stopping: base(4.0),
            ..controller(0.08)
        },
        limits: plain.limits,
        bodies: people(),
        greatest_slant: base(1.0),
        heft: None,
        measured: Vec::new(),
        housing: None,
    }
}

/// A leaf that is lifted over an opening of 4 m.
pub(crate) fn lift() -> RisingWorld {
    let pass = |direction| RisingPass {
        direction,
        plan: plan(2.6, 0.75),
    };
    RisingWorld {
        leaf: RisingLeaf::Lifting(LiftingLeaf {
            from: base(0.0),
            to: base(4.0),
            closed: base(0.03),
            tall: base(2.0),
            thickness: base(0.06),
        }),
        passes: vec![pass(Direction::Closing), pass(Direction::Opening)],
        beams: vec![beam(-0.12, 0.3), beam(0.12, 0.3)],
        edges: vec![on_leaf(0, 0.0, 4.0, edge(Direction::Closing))],
        bare_stiffness: base(75_000.0),
        controller: controller(0.08),
        ..arm()
    }
}

/// A barrier's arm of 3.8 m at 0.89 m over the whole of a lane, with a field on each side of it that acts while it closes,
/// forces that were measured along it, and a housing about its pivot.
pub(crate) fn watched_arm() -> RisingWorld {
    let plain = arm();
    let pass = |direction| RisingPass {
        direction,
        plan: Plan {
            travel: base(3.8 * 89.0_f64.to_radians()),
            cruise_speed: base(3.8 * 23.1_f64.to_radians()),
            acceleration: base(1.2),
            deceleration: base(1.2),
            creep_speed: base(0.275),
            set_point: base(1.1),
        },
    };
    let field = |deep: f64| Scanner {
        guards: vec![Direction::Closing],
        corners: vec![
            spot(-0.9, 0.0),
            spot(3.6, 0.0),
            spot(3.6, deep),
            spot(-0.9, deep),
        ],
        bottom: base(0.3),
        top: base(0.3),
        smallest_object: base(0.07),
        response: base(0.1),
    };
    let measured = |guards, from: f64, gap: f64, peak: f64, settled: f64| Measured {
        leaf: 0,
        guards,
        from: base(from),
        gap: base(gap),
        peak: base(1.05 * peak),
        settled: base(1.05 * settled),
        end: base(0.0),
    };
    let (closing, opening) = (Direction::Closing, Direction::Opening);
    RisingWorld {
        leaf: RisingLeaf::Turning(TurningLeaf {
            pivot: base(3.65),
            height: base(0.89),
            toward: Toward::Smaller,
            heel: base(0.0),
            length: base(3.8),
            below: base(0.05),
            above: base(0.05),
            thickness: base(0.045),
        }),
        passes: vec![pass(closing), pass(opening)],
        beams: Vec::new(),
        scanners: vec![field(-3.0), field(3.0)],
        edges: Vec::new(),
        drive: Some(ForceSensing {
            guards: vec![opening, closing],
            force: base(80.0),
            response: base(0.08),
        }),
        bare_stiffness: base(150_000.0),
        controller: Controller {
            reaction: base(0.06),
            stopping: base(2.55),
            answer: Answer::Reverse {
                pause: base(0.0678),
                speed: base(0.275),
                distance: base(5.9),
            },
        },
        limits: Limits {
            crushing_gap: base(0.5),
            crushing_force: base(400.0),
            open_force: base(400.0),
            lasting_force: base(150.0),
            lasting_after: base(0.75),
            rest_force: base(25.0),
            rest_after: base(5.0),
            squeeze: base(0.01),
        },
        heft: Some(Heft {
            mass: base(5.75),
            push: base(46.0),
        }),
        measured: vec![
            measured(closing, 3.7, 0.5, 220.0, 60.0),
            measured(closing, 1.9, 0.5, 251.0, 66.0),
            measured(closing, 1.0, 0.3, 310.0, 71.0),
            measured(opening, 3.7, 1.5, 271.0, 44.0),
            measured(opening, 1.0, 1.5, 322.0, 68.0),
        ],
        housing: Some((base(3.55), base(3.75))),
        ..plain
    }
}
