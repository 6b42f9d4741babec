//! What heavy simulations found, kept for whoever asks the same again: another question of the same round, another corner
//! of the tolerances, or the next round after an edit that did not touch what they rest on.
//!
//! A result is kept under the whole of what was simulated, written out to the last bit of every number, so that what is
//! remembered is what would be found afresh. Whoever asks hands the memory in and keeps it; there is none but that.

use crate::check::walk::vehicle_hit::Watched;
use formula::OutOfReach;
use quantity::Length;
use sim::glare::{GlareYear, SunPath};
use sim::sun::DayLight;
use sim::swept::Found;
use sim::walk::{Family, Sweep};
use std::collections::BTreeMap;
use std::fmt::Debug;
use std::sync::{Arc, Mutex, MutexGuard, OnceLock, PoisonError};

/// Rounds after which a result that nobody asked for is forgotten: as many as one goes back and forth between edits.
const ROUNDS: u64 = 16;

/// What simulations found for earlier rounds of questions.
#[derive(Debug, Default)]
pub struct Remembered {
    round: u64,
    /// The sun's way through a year.
    pub(crate) sun_paths: Table<Result<Arc<SunPath>, OutOfReach>>,
    /// The sun in what looks.
    pub(crate) glare_years: Table<Result<Vec<GlareYear>, OutOfReach>>,
    /// When days are light.
    pub(crate) daylights: Table<Arc<[DayLight]>>,
    /// Best lines of vehicles, and how far the last axle cuts their corners.
    pub(crate) lines: Table<Result<Option<(Found, Length)>, OutOfReach>>,
    /// First looks at walks past a gate.
    pub(crate) glances: Table<Arc<Sweep>>,
    /// How the stopping places of vehicles are watched.
    pub(crate) watched: Table<Result<Watched, OutOfReach>>,
    /// Families of walks of which somebody is hit.
    pub(crate) hits: Table<Result<Vec<Family>, OutOfReach>>,
}

impl Remembered {
    /// A memory of nothing.
    pub fn new() -> Self {
        Self::default()
    }

    /// Begins a round of questions; what nobody asked for in the last ones is forgotten.
    pub(crate) fn begin(&mut self) {
        self.round += 1;
        let round = self.round;
        self.sun_paths.begin(round);
        self.glare_years.begin(round);
        self.daylights.begin(round);
        self.lines.begin(round);
        self.glances.begin(round);
        self.hits.begin(round);
        self.watched.begin(round);
    }
}

/// Results of one simulation, each under what was simulated.
#[derive(Debug)]
pub(crate) struct Table<T> {
    known: Mutex<Known<T>>,
}

#[derive(Debug)]
struct Known<T> {
    round: u64,
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
                results: BTreeMap::new(),
            }),
        }
    }
}

impl<T: Clone> Table<T> {
    fn begin(&mut self, round: u64) {
        let mut known = self.known();
        known.round = round;
        known.results.retain(|_, kept| kept.asked + ROUNDS > round);
    }

    /// The result of what is simulated, found where nobody asked for it before; where another thread is about to find it,
    /// that is waited for.
    pub(crate) fn of(&self, simulated: &dyn Debug, find: impl FnOnce() -> T) -> T {
        let key = format!("{simulated:?}");
        let result = {
            let mut known = self.known();
            let asked = known.round;
            let kept = known.results.entry(key).or_insert_with(|| Kept {
                result: Arc::default(),
                asked,
            });
            kept.asked = asked;
            Arc::clone(&kept.result)
        };
        result.get_or_init(find).clone()
    }

    fn known(&self) -> MutexGuard<'_, Known<T>> {
        self.known.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
