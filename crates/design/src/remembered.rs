//! What earlier rounds of questions found, kept for the next one: whole findings, and the results of heavy simulations.
//!
//! A result is kept under the whole of what was simulated, written out to the last bit of every number, and a finding with
//! the values that were looked at for it, so that what is remembered is what would be found afresh. Whoever asks hands the
//! memory in and keeps it; there is none but that.

use crate::check::found::Rounds;
use crate::check::walk::vehicle_hit::Watched;
use formula::OutOfReach;
use quantity::Length;
use sim::glare::{GlareYear, SunPath};
use sim::sun::DayLight;
use sim::swept::Searched;
use sim::walk::{Family, Sweep};
use std::collections::{BTreeMap, VecDeque};
use std::fmt::Debug;
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

/// Rounds in which something new was simulated, after which a result that nobody asked for meanwhile is forgotten: as many as
/// one goes back and forth between edits.
const ROUNDS: u64 = 16;
/// Kinds of simulation of which the last result is kept: more than a site has vehicles on ways.
const KINDS: usize = 64;

/// What was found in earlier rounds of questions.
#[derive(Debug, Default)]
pub struct Remembered {
    /// Findings of the last few rounds.
    pub(crate) rounds: Rounds,
    /// The sun's way through a year.
    pub(crate) sun_paths: Table<Result<Arc<SunPath>, OutOfReach>>,
    /// The sun in what looks.
    pub(crate) glare_years: Table<Result<Vec<GlareYear>, OutOfReach>>,
    /// When days are light.
    pub(crate) daylights: Table<Arc<[DayLight]>>,
    /// Best lines of vehicles.
    pub(crate) lines: Table<Result<Arc<BestLine>, OutOfReach>>,
    /// First looks at walks past a gate.
    pub(crate) glances: Table<Arc<Sweep>>,
    /// How the stopping places of vehicles are watched.
    pub(crate) watched: Table<Result<Watched, OutOfReach>>,
    /// Families of walks of which somebody is hit.
    pub(crate) hits: Table<Result<Vec<Family>, OutOfReach>>,
}

/// The line of a vehicle that leaves the most room.
#[derive(Debug)]
pub(crate) struct BestLine {
    /// The search for it.
    pub(crate) searched: Searched,
    /// How far the last axle cuts its corners, where there is one.
    pub(crate) off_tracking: Option<Length>,
}

impl Remembered {
    /// A memory of nothing.
    pub fn new() -> Self {
        Self::default()
    }

    /// Begins a round of questions; what nobody asked for in the last ones is forgotten.
    pub(crate) fn begin(&mut self) {
        self.sun_paths.begin();
        self.glare_years.begin();
        self.daylights.begin();
        self.lines.begin();
        self.glances.begin();
        self.hits.begin();
        self.watched.begin();
    }
}

/// Results of one simulation, each under what was simulated.
#[derive(Debug)]
pub(crate) struct Table<T> {
    known: Mutex<Known<T>>,
    /// The last results, each of another kind, the newest first.
    latest: Mutex<VecDeque<(String, T)>>,
}

#[derive(Debug)]
struct Known<T> {
    round: u64,
    /// Something new was simulated in this round.
    is_used: bool,
    results: BTreeMap<String, Kept<T>>,
}

#[derive(Debug)]
struct Kept<T> {
    result: Arc<OnceLock<T>>,
    /// The last round that asked for it.
    asked: u64,
}

impl<T> Default for Table<T> {
    fn default() -> Self {
        Self {
            known: Mutex::new(Known {
                round: 0,
                is_used: false,
                results: BTreeMap::new(),
            }),
            latest: Mutex::default(),
        }
    }
}

impl<T: Clone> Table<T> {
    fn begin(&mut self) {
        let mut known = self.known();
        known.round += u64::from(std::mem::take(&mut known.is_used));
        let round = known.round;
        known.results.retain(|_, kept| kept.asked + ROUNDS > round);
    }

    /// The result of what is simulated, found where nobody asked for it before; where another thread is about to find it,
    /// that is waited for.
    pub(crate) fn of(&self, simulated: &dyn Debug, find: impl FnOnce() -> T) -> T {
        let key = format!("{simulated:?}");
        let result = {
            let mut known = self.known();
            let Known {
                round,
                is_used,
                results,
            } = &mut *known;
            let asked = *round;
            let kept = results.entry(key).or_insert_with(|| {
                *is_used = true;
                Kept {
                    result: Arc::default(),
                    asked,
                }
            });
            kept.asked = asked;
            Arc::clone(&kept.result)
        };
        result.get_or_init(find).clone()
    }

    /// The same for what is found quicker by whoever knows the last result of its kind, and is the same all the same.
    pub(crate) fn of_kind(
        &self,
        (kind, simulated): (&dyn Debug, &dyn Debug),
        find: impl FnOnce(Option<T>) -> T,
    ) -> T {
        self.of(&(kind, simulated), || {
            let kind = format!("{kind:?}");
            let known = lock(&self.latest)
                .iter()
                .find(|(known, _)| *known == kind)
                .cloned();
            let found = find(known.map(|(_, result)| result));
            let mut latest = lock(&self.latest);
            latest.retain(|(known, _)| *known != kind);
            latest.push_front((kind, found.clone()));
            latest.truncate(KINDS);
            found
        })
    }

    fn known(&self) -> MutexGuard<'_, Known<T>> {
        lock(&self.known)
    }
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
