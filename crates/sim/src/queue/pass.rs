//! How one vehicle comes through: from the one before it, and from how the leaf stands.

use super::world::{MOST_DRIVERS, Turn, World};
use quantity::Quantity as _;

/// A time before everything.
const NEVER: f64 = -1e18;

/// Lane and leaf in plain numbers.
#[derive(Debug, Clone)]
pub(super) struct Passing {
    /// Share of the drivers of each kind and of those before it.
    until: [f64; MOST_DRIVERS],
    kinds: [Kind; MOST_DRIVERS],
    followers: f64,
    /// Vehicles that find room between reader and gate line.
    pub room: usize,
    set_off: f64,
    headway: f64,
    opening: f64,
    reversal: f64,
    /// One over the closing time.
    closed_each: f64,
    /// From the start of closing until the reader answers: for one each opening the closing time.
    locked: f64,
    stays: f64,
}

/// One kind of drivers in plain numbers.
#[derive(Debug, Clone, Copy, Default)]
struct Kind {
    least: f64,
    rest: f64,
    length: f64,
    /// Reader to gate line.
    drive: f64,
    /// Reader to the outermost detector.
    until_seen: f64,
    /// Gate line to out of the innermost detector, tail and all.
    clear: f64,
    /// Until the tail is over the gate line.
    over: f64,
    /// Until the place at the gate line is free for the next.
    onward: f64,
    /// Until the next stands at the reader.
    pull_up: f64,
}

/// How lane and leaf stand once a vehicle is through.
#[derive(Debug, Clone, Copy)]
pub(super) struct Stand {
    /// When the next can be at the reader.
    reader_free: f64,
    /// Since when the leaf is fully open.
    open: f64,
    /// When it begins to close.
    closes: f64,
    /// When the tail of the last is over the gate line.
    over: f64,
}

impl Stand {
    /// An empty lane, the leaf shut.
    pub(super) const EMPTY: Self = Self {
        reader_free: NEVER,
        open: NEVER,
        closes: NEVER,
        over: NEVER,
    };
}

/// What became of one vehicle.
#[derive(Debug, Clone, Copy)]
pub(super) struct Passed {
    /// When it stood at the reader, and when it left it.
    pub reads: f64,
    pub leaves: f64,
    pub length: f64,
    /// When its front passed the gate line, and when its place there was free.
    pub through: f64,
    pub onward: f64,
    /// The leaf was shut, or turned back, for it.
    pub opened: bool,
    pub reversed: bool,
    /// It drove on without reading.
    pub tailgated: bool,
}

impl Passing {
    pub(super) fn new(world: &World) -> Self {
        let (lane, leaf) = (&world.lane, &world.leaf);
        let mut until = [f64::INFINITY; MOST_DRIVERS];
        let mut kinds = [Kind::default(); MOST_DRIVERS];
        let mut sum = 0.0;
        for (at, driver) in world.drivers.iter().enumerate() {
            sum += driver.share.base();
            until[at] = sum;
            kinds[at] = Kind::of(world, driver);
        }
        until[world.drivers.len() - 1] = f64::INFINITY;
        let closing = leaf.closing.base();
        Self {
            until,
            kinds,
            followers: world.followers.base(),
            room: world.room(),
            set_off: lane.set_off.base(),
            headway: lane.headway.base(),
            opening: leaf.opening.base(),
            reversal: leaf.reversal.base(),
            // A little more, so that a leaf that is told to open the moment it is shut counts as shut.
            closed_each: (1.0 + 1e-9) / closing.max(1e-9),
            locked: match leaf.turn {
                Turn::StaysOpen => NEVER,
                Turn::OneEach => closing,
            },
            stays: leaf.drop_out.base() + leaf.hold.base(),
        }
    }

    /// Brings one vehicle through.
    #[inline]
    pub(super) fn pass(
        &self,
        stand: &mut Stand,
        arrives: f64,
        place_free: f64,
        (choice, beyond, follows): (f64, f64, f64),
    ) -> Passed {
        let kind = self.kind(choice);
        let reads = greater(arrives, stand.reader_free);
        let tailgated = follows < self.followers && reads < stand.closes;
        let let_in = greater(
            reads + kind.least + kind.rest * beyond,
            stand.closes + self.locked,
        );
        let command = if tailgated {
            reads + kind.until_seen
        } else {
            let_in
        };
        let shut = ((command - stand.closes) * self.closed_each).clamp(0.0, 1.0);
        let turned = shut > 0.0 && shut < 1.0;
        let again = command + shut * self.opening + if turned { self.reversal } else { 0.0 };
        let open = if shut > 0.0 { again } else { stand.open };
        let ready = if tailgated { reads } else { let_in };
        let held = if self.room > 0 || tailgated {
            place_free
        } else {
            open
        };
        let leaves = greater(ready, held);
        let off = if tailgated { 0.0 } else { self.set_off };
        let comes = greater(leaves + off + kind.drive, open + self.set_off);
        let through = greater(comes, stand.over + self.headway);
        stand.open = open;
        stand.closes = greater(stand.closes, through + kind.clear + self.stays);
        stand.over = through + kind.over;
        stand.reader_free = leaves + kind.pull_up;
        Passed {
            reads,
            leaves,
            length: kind.length,
            through,
            onward: through + kind.onward,
            opened: shut >= 1.0,
            reversed: turned,
            tailgated,
        }
    }

    /// The kind of driver that a share falls on.
    #[inline]
    fn kind(&self, choice: f64) -> &Kind {
        let mut at = 0;
        while choice >= self.until[at] {
            at += 1;
        }
        &self.kinds[at]
    }
}

impl Kind {
    fn of(world: &World, driver: &super::Driver) -> Self {
        let lane = &world.lane;
        let speed = driver.speed.base();
        let length = driver.length.base();
        let spaced = (length + lane.gap.base()) / speed;
        Self {
            least: (driver.service - driver.spread).base(),
            rest: driver.spread.base(),
            length,
            drive: lane.reader.base() / speed,
            until_seen: (lane.reader - lane.seen_before).base().max(0.0) / speed,
            clear: (lane.clear_after.base() + length) / speed,
            over: length / speed,
            onward: spaced,
            pull_up: lane.set_off.base() + spaced,
        }
    }
}

impl World {
    /// Vehicles that find room between reader and gate line, all of the longest kind.
    pub(super) fn room(&self) -> usize {
        let longest = self.drivers.iter().map(|driver| driver.length.base());
        let longest = longest.fold(0.0, f64::max);
        let gap = self.lane.gap.base();
        let fits = (self.lane.reader.base() + gap) / (longest + gap).max(0.1);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and 100"
        )]
        let fits = fits.clamp(0.0, 100.0) as usize;
        fits
    }
}

#[inline]
fn greater(one: f64, other: f64) -> f64 {
    if one > other { one } else { other }
}
