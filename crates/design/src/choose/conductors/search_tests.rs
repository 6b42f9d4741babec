//! The search against trying all sets, and on sixty runs.

#![allow(
    clippy::unwrap_used,
    clippy::cast_precision_loss,
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a test may stop at the first surprise, and its numbers are small"
)]
use super::*;
use crate::choose::conductors::ladder::Rung;

/// Rows and nothing else: what constant currents give.
struct Rows(Vec<Row>, Vec<f64>);

impl Circuit for Rows {
    fn keeps(&mut self, set: &[f64]) -> bool {
        self.0.iter().all(|row| {
            let of = |(run, amps): &(usize, f64)| amps * (set[*run] - self.1[*run]);
            row.runs.iter().map(of).sum::<f64>() <= row.in_hand
        })
    }

    fn rows(&mut self, ladders: &[Ladder]) -> Option<Vec<Row>> {
        let least = |run: usize| ladders[run].thickest().map_or(0.0, |rung| rung.ohms);
        let moved = |row: &Row| {
            let of = |(run, amps): &(usize, f64)| amps * (least(*run) - self.1[*run]);
            let used: f64 = row.runs.iter().map(of).sum();
            let in_hand = row.in_hand - used + 1e-9;
            (in_hand >= 0.0).then(|| Row {
                runs: row.runs.clone(),
                in_hand,
            })
        };
        self.0.iter().map(moved).collect()
    }

    fn is_monotone(&self) -> bool {
        true
    }
}

/// A plain sequence of numbers from 0 to 1 (Lehmer; Park and Miller 1988).
fn chance(seed: &mut u64) -> f64 {
    *seed = *seed * 48_271 % 2_147_483_647;
    *seed as f64 / 2_147_483_647.0
}

/// A chance tree: ladders, and a row for each of its ends.
fn tree(runs: usize, seed: u64) -> (Vec<Ladder>, Rows) {
    let mut seed = seed * 7919 + 17;
    let parent: Vec<Option<usize>> = (0..runs)
        .map(|run| {
            let at = (chance(&mut seed) * (run as f64 + 0.3)) as usize;
            (at < run).then_some(at)
        })
        .collect();
    let mut amperes = vec![0.0; runs];
    let loads: Vec<f64> = (0..runs).map(|_| 0.1 + chance(&mut seed)).collect();
    let way = |run: usize| std::iter::successors(Some(run), |run| parent[*run]);
    for (run, load) in loads.iter().enumerate() {
        way(run).for_each(|other| amperes[other] += load);
    }
    let mut thickest = Vec::new();
    let ladders: Vec<Ladder> = (0..runs)
        .map(|_| {
            let length = 5.0 + 40.0 * chance(&mut seed);
            let rungs = [0.5, 0.75, 1.5, 2.5, 4.0]
                .iter()
                .enumerate()
                .map(|(offer, area)| Rung {
                    ohms: 0.0344 * length / area,
                    cost: (length * (20.0 + 31.0 * area * (0.9 + 0.2 * chance(&mut seed)))) as u64,
                    offer,
                });
            Ladder::new(rungs.collect())
        })
        .collect();
    thickest.extend(ladders.iter().map(|ladder| ladder.rungs()[0].ohms));
    let rows = (0..runs)
        .map(|run| {
            let runs: Vec<(usize, f64)> = way(run).map(|run| (run, amperes[run])).collect();
            let most: f64 = runs
                .iter()
                .map(|(run, amps)| {
                    let rungs = ladders[*run].rungs();
                    amps * (rungs[rungs.len() - 1].ohms - rungs[0].ohms)
                })
                .sum();
            let in_hand = most * (0.1 + 0.5 * chance(&mut seed));
            Row { runs, in_hand }
        })
        .collect();
    (ladders, Rows(rows, thickest))
}

fn by_trying_all(ladders: &[Ladder], circuit: &mut Rows) -> u64 {
    let mut set = vec![0; ladders.len()];
    let mut least = u64::MAX;
    loop {
        if cost(ladders, &set) < least && circuit.keeps(&ohms(ladders, &set)) {
            least = cost(ladders, &set);
        }
        let Some(run) = (0..set.len()).find(|run| set[*run] + 1 < ladders[*run].rungs().len())
        else {
            return least;
        };
        set[run] += 1;
        set[..run].fill(0);
    }
}

#[test]
fn it_is_the_cheapest_of_all_sets() {
    for seed in 1..60 {
        let (ladders, mut rows) = tree(6, seed);
        let found = search(&ladders, &mut rows).unwrap();
        assert_eq!(found.cost, by_trying_all(&ladders, &mut rows), "{seed}");
        assert_eq!(found.bound, found.cost);
    }
}

#[test]
fn sixty_runs_are_proved() {
    for seed in 1..12 {
        let (ladders, mut rows) = tree(60, seed);
        let found = search(&ladders, &mut rows).unwrap();
        assert_eq!(found.bound, found.cost, "{seed}: {}", found.looked_at);
    }
}

#[test]
fn nothing_where_the_thickest_is_too_thin() {
    let (ladders, mut rows) = tree(4, 3);
    rows.0[2].in_hand = -0.1;
    assert_eq!(search(&ladders, &mut rows), None);
}
