//! How long a network takes: 200 places, six cases.

use quantity::{Current, Power, Quantity as _, Resistance, Voltage};
use sim::network::{Case, Draw, Grid, Network, Node};

fn main() {
    divan::main();
}

/// A trunk of places with three behind each, every fourth draw a constant power.
fn site(rings: bool) -> Option<(Grid, Vec<Case>)> {
    let mut network = Network::new();
    let supply = network.held();
    let mut nodes: Vec<Node> = vec![supply];
    for at in 0..199_usize {
        let node = network.node();
        let from = if at % 4 == 0 {
            at.saturating_sub(3)
        } else {
            at - at % 4 + 1
        };
        let ohms = 0.02 + 0.01 * f64::from(u8::try_from(at % 7).ok()?);
        network
            .join(*nodes.get(from)?, node, Resistance::from_base(ohms))
            .ok()?;
        nodes.push(node);
    }
    if rings {
        for at in (5..195).step_by(19) {
            network
                .join(nodes[at], nodes[at + 4], Resistance::from_base(0.3))
                .ok()?;
        }
    }
    let cases = (0..6_u8).map(|step| {
        let mut case = Case::new();
        case.hold(supply, Voltage::from_base(27.0)).ok()?;
        for (at, node) in nodes.iter().enumerate().skip(1) {
            let amperes = 0.004 + 0.001 * f64::from(step);
            let draw = if at % 4 == 0 {
                Draw::Power(Power::from_base(24.0 * amperes))
            } else {
                Draw::Current(Current::from_base(amperes))
            };
            case.draw(*node, draw).ok()?;
        }
        Some(case)
    });
    Some((network.prepared(), cases.collect::<Option<Vec<Case>>>()?))
}

fn solved(bencher: divan::Bencher<'_, '_>, rings: bool) {
    let Some((grid, cases)) = site(rings) else {
        return;
    };
    assert!(cases.iter().all(|case| grid.solve(case).is_ok()));
    bencher.bench_local(|| {
        cases
            .iter()
            .filter_map(|case| grid.solve(case).ok())
            .count()
    });
}

#[divan::bench]
fn six_cases_of_200_places_in_a_tree(bencher: divan::Bencher<'_, '_>) {
    solved(bencher, false);
}

#[divan::bench]
fn six_cases_of_200_places_with_ten_rings(bencher: divan::Bencher<'_, '_>) {
    solved(bencher, true);
}

#[divan::bench]
fn made_ready_from_nothing(bencher: divan::Bencher<'_, '_>) {
    bencher.bench_local(|| site(true).is_some());
}
