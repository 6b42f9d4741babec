//! Many circles on their ways past one leaf that turns, searched side by side in the steps of [`Swung::first`]: each comes
//! to the same time, to the last bit.

use super::super::profile::Stretch;
use super::contact::{Piece, STEPS, Swung};

/// Circles that are worked in one go.
const WIDE: usize = 8;

type Values = [f64; WIDE];

/// A circle that is searched: whose it is, on which piece of its path.
#[derive(Clone, Copy)]
pub(super) struct Sought {
    pub whose: usize,
    pub piece: Piece,
}

/// What is found: a time, and the stretch of the leaf in which it is.
#[derive(Clone, Copy)]
pub(super) struct Seized {
    pub sought: Sought,
    pub stretch: Stretch,
    pub time: f64,
}

/// Some circles side by side, each with the stretch of the leaf in which it is.
#[derive(Clone, Copy)]
struct Row {
    x: Values,
    y: Values,
    when: Values,
    dx: Values,
    dy: Values,
    radius: Values,
    from: Values,
    place: Values,
    speed: Values,
    rate: Values,
    jerk: Values,
    until: Values,
    time: Values,
    apart: Values,
    next: Values,
}

/// Where a circle is in its search.
#[derive(Clone, Copy)]
struct Place {
    sought: usize,
    stretch: usize,
    steps: u32,
}

impl Row {
    const EMPTY: Self = {
        let none = [0.0; WIDE];
        Self {
            x: none,
            y: none,
            when: none,
            dx: none,
            dy: none,
            radius: none,
            from: none,
            place: none,
            speed: none,
            rate: none,
            jerk: none,
            until: none,
            time: none,
            apart: none,
            next: none,
        }
    };

    /// Works the distance of each, and until when it is surely not touched.
    #[inline]
    fn step(&mut self, swung: &Swung) {
        for at in 0..WIDE {
            let time = self.time[at];
            let gone = time - self.from[at];
            let place = self.place[at] + gone * (self.speed[at] + 0.5 * self.rate[at] * gone);
            let speed = self.speed[at] + self.rate[at] * gone;
            let gone = time - self.when[at];
            let spot = (
                self.x[at] + self.dx[at] * gone,
                self.y[at] + self.dy[at] * gone,
            );
            let seen = swung.seen(place, spot, (self.dx[at], self.dy[at]));
            let turns = (speed * swung.turn, self.rate[at] * swung.turn);
            let gap = seen.gap(&swung.slab, turns, self.radius[at]);
            self.apart[at] = gap.apart;
            self.next[at] = time + gap.step(self.jerk[at], self.until[at] - time);
        }
    }

    fn put(&mut self, at: usize, piece: &Piece) {
        (self.x[at], self.y[at]) = piece.at;
        (self.dx[at], self.dy[at]) = piece.speed;
        self.when[at] = piece.when;
        self.radius[at] = piece.radius;
    }

    fn enter(&mut self, at: usize, stretch: &Stretch, (time, until): (f64, f64), jerk: f64) {
        self.from[at] = stretch.from;
        self.place[at] = stretch.place;
        self.speed[at] = stretch.speed;
        self.rate[at] = stretch.rate;
        self.time[at] = time;
        self.until[at] = until;
        self.jerk[at] = jerk;
    }
}

impl Swung {
    /// First touches of many on pieces that [`Swung::meets`] has left: a distance counts as one.
    pub(super) fn seize(
        &self,
        stretches: &[Stretch],
        sought: &[Sought],
        touch: f64,
        mut note: impl FnMut(Seized),
    ) {
        let mut left = sought.iter().enumerate();
        let mut row = Row::EMPTY;
        let mut places = [None; WIDE];
        let mut busy = 0;
        for (at, place) in places.iter_mut().enumerate() {
            *place = self.begin(stretches, &mut left, &mut row, at);
            busy += usize::from(place.is_some());
        }
        while busy > 0 {
            row.step(self);
            for (at, here) in places.iter_mut().enumerate() {
                let Some(mut place) = *here else {
                    continue;
                };
                let (time, next) = (row.time[at], row.next[at]);
                place.steps += 1;
                let touched = row.apart[at] <= touch || place.steps > STEPS;
                let goes_on = next < row.until[at];
                if !touched && goes_on && next > time {
                    row.time[at] = next;
                    *here = Some(place);
                    continue;
                }
                let sought = &sought[place.sought];
                if touched || goes_on {
                    let stretch = stretches[place.stretch];
                    let sought = *sought;
                    note(Seized {
                        sought,
                        stretch,
                        time,
                    });
                    *here = self.begin(stretches, &mut left, &mut row, at);
                } else {
                    let time = row.until[at];
                    *here = if time < sought.piece.until {
                        self.enter(stretches, (place.stretch + 1, time), sought, &mut row, at)
                            .map(|stretch| Place {
                                sought: place.sought,
                                stretch,
                                steps: 0,
                            })
                    } else {
                        None
                    }
                    .or_else(|| self.begin(stretches, &mut left, &mut row, at));
                }
                busy -= usize::from(here.is_none());
            }
        }
    }

    /// Begins the next that is left.
    fn begin<'a>(
        &self,
        stretches: &[Stretch],
        left: &mut impl Iterator<Item = (usize, &'a Sought)>,
        row: &mut Row,
        at: usize,
    ) -> Option<Place> {
        left.find_map(|(number, sought)| {
            row.put(at, &sought.piece);
            let entered = self.enter(stretches, (0, sought.piece.from), sought, row, at);
            entered.map(|stretch| Place {
                sought: number,
                stretch,
                steps: 0,
            })
        })
    }

    /// Enters the first stretch that ends after a time.
    fn enter(
        &self,
        stretches: &[Stretch],
        (first, time): (usize, f64),
        sought: &Sought,
        row: &mut Row,
        at: usize,
    ) -> Option<usize> {
        let mut rest = stretches.iter().enumerate().skip(first);
        let (stage, stretch) = rest.find(|(_, stretch)| stretch.until > time)?;
        let until = stretch.until.min(sought.piece.until);
        let jerk = self.jerk(stretch, &sought.piece, time, until);
        row.enter(at, stretch, (time, until), jerk);
        Some(stage)
    }
}
