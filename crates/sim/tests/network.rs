//! Voltages in networks: by hand, by laws that every network keeps, and at the limit of what conductors can bring.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use proptest::prelude::*;
use quantity::{Current, Power, Quantity as _, Resistance, Voltage};
use sim::network::{Branch, Case, Draw, Grid, Network, Node, Unsolved};

fn ohms(value: f64) -> Resistance {
    Resistance::from_base(value)
}

fn volts(value: f64) -> Voltage {
    Voltage::from_base(value)
}

/// A source and a load with a conductor between.
fn single(resistance: f64, source: f64, draw: Draw) -> Result<f64, Unsolved> {
    let mut network = Network::new();
    let supply = network.held();
    let load = network.node();
    network.join(supply, load, ohms(resistance)).unwrap();
    let grid = network.prepared();
    let mut case = Case::new();
    case.hold(supply, volts(source)).unwrap();
    case.draw(load, draw).unwrap();
    grid.solve(&case).map(|solved| solved.voltage(load).base())
}

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-10, "{found} {wanted}");
}

#[test]
fn one_load_by_hand() {
    near(
        single(2.0, 12.0, Draw::Current(Current::from_base(0.5))).unwrap(),
        11.0,
    );
    near(
        single(2.0, 12.0, Draw::Resistance(ohms(10.0))).unwrap(),
        10.0,
    );
    // V² − 24 V + 2 · 40 = 0: the upper root.
    let upper = 12.0 + f64::sqrt(144.0 - 80.0);
    near(
        single(2.0, 24.0, Draw::Power(Power::from_base(40.0))).unwrap(),
        upper,
    );
}

#[test]
fn the_most_that_a_conductor_can_bring_is_the_square_of_the_voltage_over_four_times_its_resistance()
{
    // 24² / (4 · 2) = 72 W.
    let at = |watts| single(2.0, 24.0, Draw::Power(Power::from_base(watts)));
    assert!(at(71.999).is_ok());
    let Unsolved::Collapse { carried, .. } = at(90.0).unwrap_err() else {
        panic!("it collapses");
    };
    assert!((carried.base() - 0.8).abs() < 1e-6, "{carried:?}");
}

#[test]
fn a_current_that_the_source_cannot_push_collapses_too() {
    let error = single(2.0, 12.0, Draw::Current(Current::from_base(7.0))).unwrap_err();
    let Unsolved::Collapse { carried, .. } = error else {
        panic!("it collapses");
    };
    assert!((carried.base() - 6.0 / 7.0).abs() < 1e-6);
}

#[test]
fn a_ring_shares_its_load_by_conductance() {
    // 1 Ω one way, 2 Ω and 1 Ω the other: three quarters of 4 A go the short way.
    let mut network = Network::new();
    let supply = network.held();
    let (load, splice) = (network.node(), network.node());
    let short = network.join(supply, load, ohms(1.0)).unwrap();
    let long = network.join(supply, splice, ohms(2.0)).unwrap();
    network.join(splice, load, ohms(1.0)).unwrap();
    let grid = network.prepared();
    let mut case = Case::new();
    case.hold(supply, volts(24.0)).unwrap();
    case.draw(load, Draw::Current(Current::from_base(4.0)))
        .unwrap();
    let solved = grid.solve(&case).unwrap();
    near(solved.current(short).base(), 3.0);
    near(solved.current(long).base(), 1.0);
    near(solved.given(supply).base(), 4.0);
    near(solved.lost().base(), 9.0 + 2.0 + 1.0);
    // Seen from the load: 1 Ω beside 3 Ω.
    let fault = grid.fault(load, &case).unwrap();
    near(fault.resistance.base(), 0.75);
    near(fault.current().base(), 32.0);
}

#[test]
fn a_load_that_nothing_feeds_is_named() {
    let mut network = Network::new();
    let supply = network.held();
    let (fed, alone) = (network.node(), network.node());
    network.join(supply, fed, ohms(1.0)).unwrap();
    let grid = network.prepared();
    let mut case = Case::new();
    case.hold(supply, volts(24.0)).unwrap();
    assert!(grid.solve(&case).is_ok());
    case.draw(alone, Draw::Current(Current::from_base(0.1)))
        .unwrap();
    assert_eq!(
        grid.solve(&case).unwrap_err(),
        Unsolved::Unfed { at: vec![alone] }
    );
    assert_eq!(
        grid.solve(&Case::new()).unwrap_err(),
        Unsolved::NoVoltage { at: supply }
    );
}

#[test]
fn what_cannot_be_is_refused() {
    let mut network = Network::new();
    let (one, other) = (network.held(), network.node());
    assert!(network.join(one, other, ohms(0.0)).is_err());
    assert!(network.join(one, other, ohms(f64::NAN)).is_err());
    assert!(network.join(one, one, ohms(1.0)).is_err());
    let mut case = Case::new();
    assert!(case.hold(one, volts(0.0)).is_err());
    assert!(
        case.draw(other, Draw::Power(Power::from_base(-1.0)))
            .is_err()
    );
    assert!(case.draw(other, Draw::Resistance(ohms(0.0))).is_err());
}

/// Any network: a tree from the first place, and a few more branches that make rings.
#[derive(Debug, Clone)]
struct Any {
    /// For each further place, the earlier one that it hangs on, and the resistance between.
    tree: Vec<(usize, f64)>,
    rings: Vec<(usize, usize, f64)>,
    /// Watts, amperes and siemens at each further place.
    draws: Vec<(f64, f64, f64)>,
}

fn any() -> impl Strategy<Value = Any> {
    (2usize..30).prop_flat_map(|places| {
        let tree = prop::collection::vec((0usize..1000, 0.01..2.0f64), places);
        let rings = prop::collection::vec((0usize..1000, 0usize..1000, 0.01..2.0f64), 0..4);
        let draws = prop::collection::vec((0.0..0.4f64, 0.0..0.02f64, 0.0..0.001f64), places);
        (tree, rings, draws).prop_map(|(tree, rings, draws)| Any { tree, rings, draws })
    })
}

struct Built {
    grid: Grid,
    case: Case,
    nodes: Vec<Node>,
    branches: Vec<Branch>,
}

fn built(any: &Any, share: f64) -> Built {
    let mut network = Network::new();
    let mut nodes = vec![network.held()];
    let mut branches = Vec::new();
    for (at, resistance) in &any.tree {
        let node = network.node();
        branches.push(
            network
                .join(nodes[at % nodes.len()], node, ohms(*resistance))
                .unwrap(),
        );
        nodes.push(node);
    }
    for (a, b, resistance) in &any.rings {
        let (a, b) = (nodes[a % nodes.len()], nodes[b % nodes.len()]);
        if a != b {
            branches.push(network.join(a, b, ohms(*resistance)).unwrap());
        }
    }
    let mut case = Case::new();
    case.hold(nodes[0], volts(24.0)).unwrap();
    for (node, (watts, amperes, siemens)) in nodes[1..].iter().zip(&any.draws) {
        case.draw(*node, Draw::Power(Power::from_base(watts * share)))
            .unwrap();
        case.draw(*node, Draw::Current(Current::from_base(amperes * share)))
            .unwrap();
        if *siemens > 0.0 {
            case.draw(*node, Draw::Resistance(ohms(1.0 / siemens)))
                .unwrap();
        }
    }
    Built {
        grid: network.prepared(),
        case,
        nodes,
        branches,
    }
}

proptest! {
    #[test]
    fn what_the_source_gives_is_what_loads_take_and_conductors_lose(any in any()) {
        let built = built(&any, 1.0);
        let Ok(solved) = built.grid.solve(&built.case) else { return Ok(()) };
        let given = solved.given(built.nodes[0]).base() * 24.0;
        let taken: f64 = built.nodes[1..].iter().zip(&any.draws).map(|(node, (watts, amperes, siemens))| {
            let volts = solved.voltage(*node).base();
            watts + amperes * volts + siemens * volts * volts
        }).sum();
        prop_assert!((given - taken - solved.lost().base()).abs() < 1e-9 * (1.0 + given), "{given} {taken}");
        prop_assert!(built.nodes.iter().all(|node| solved.voltage(*node) <= volts(24.0 + 1e-9)));
    }

    #[test]
    fn less_load_never_lowers_a_voltage(any in any(), share in 0.0..1.0f64) {
        let (full, part) = (built(&any, 1.0), built(&any, share));
        let Ok(loaded) = full.grid.solve(&full.case) else { return Ok(()) };
        let eased = part.grid.solve(&part.case).unwrap();
        for node in &full.nodes {
            prop_assert!(eased.voltage(*node).base() >= loaded.voltage(*node).base() - 1e-9);
        }
    }

    #[test]
    fn a_thicker_conductor_lowers_no_voltage_of_a_tree(any in any(), at in 0usize..1000, part in 0.1..1.0f64) {
        let heaters_and_rings_out = Any {
            rings: Vec::new(),
            draws: any.draws.iter().map(|(watts, amperes, _)| (*watts, *amperes, 0.0)).collect(),
            ..any
        };
        let built = built(&heaters_and_rings_out, 1.0);
        let Ok(before) = built.grid.solve(&built.case) else { return Ok(()) };
        let mut thicker = built.grid.clone();
        let at = at % built.branches.len();
        thicker.set(built.branches[at], ohms(heaters_and_rings_out.tree[at].1 * part)).unwrap();
        let after = thicker.solve(&built.case).unwrap();
        for node in &built.nodes {
            prop_assert!(after.voltage(*node).base() >= before.voltage(*node).base() - 1e-9);
        }
    }

    #[test]
    fn what_could_be_carried_is_carried_and_a_little_more_is_not(any in any(), times in 20.0..200.0f64) {
        let heavy = built(&any, times);
        let Err(Unsolved::Collapse { carried, .. }) = heavy.grid.solve(&heavy.case) else { return Ok(()) };
        let below = built(&any, times * carried.base() * 0.999);
        prop_assert!(below.grid.solve(&below.case).is_ok());
        let above = built(&any, times * carried.base() * 1.001);
        prop_assert!(above.grid.solve(&above.case).is_err());
    }
}
