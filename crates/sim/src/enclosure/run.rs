//! An enclosure followed through its day.

use super::course::Course;
use super::piece::{HOUR, Hours, Piece, repeated};
use super::{Day, Enclosure, Switch};
use formula::OutOfReach;
use quantity::{Energy, Quantity as _, Ratio, Temperature, TemperatureDifference, Time};

/// An enclosure through a day that repeats.
#[derive(Debug, Clone)]
pub struct DayInside {
    /// Inside at each quarter of an hour, midnight by the sun first and last.
    pub quarters: Vec<Temperature>,
    /// When it is hottest, and how hot.
    pub hottest: (Time, Temperature),
    /// When it is coldest, and how cold.
    pub coldest: (Time, Temperature),
    /// Mean of the day.
    pub mean: Temperature,
    /// Share of the day in which the heater gives heat.
    pub heater_on: Ratio,
    /// Heat that the heater gives in the day.
    pub heater_gives: Energy,
    /// When the cut-out first opens; not at all where nothing.
    pub cut_out_opens: Option<Time>,
    /// How often something switches in the day.
    pub switchings: u32,
}

/// Days before the one that is told, in which the beginning is forgotten.
pub(super) const BEFORE: u32 = 9;

/// Seconds of a quarter of an hour.
pub(super) const QUARTER: f64 = 900.0;

/// Switchings in a day, at most.
const BUSY: u32 = 20_000;

impl Enclosure {
    /// Follows it until the day repeats, and tells of that day.
    pub fn through(&self, day: &Day) -> Result<DayInside, OutOfReach> {
        self.check()?;
        let outside = repeated(&day.outside.map(quantity::Quantity::base));
        let sun = repeated(&day.sun.map(quantity::Quantity::base));
        let mut run = Run::new(self, outside, sun);
        for _ in 0..BEFORE {
            run.day()?;
        }
        run.day()
    }
}

impl DayInside {
    /// Notes the hottest and the coldest of a piece.
    fn reach(&mut self, course: &Course, begin: f64, span: f64) {
        for time in [course.turns(span), Some(span)].into_iter().flatten() {
            let here = Temperature::from_base(course.at(time));
            if here > self.hottest.1 {
                self.hottest = (Time::from_base(begin + time), here);
            }
            if here < self.coldest.1 {
                self.coldest = (Time::from_base(begin + time), here);
            }
        }
    }

    /// Least margin of the inner face of the walls above a dew point, at each quarter of an hour: the face lies between inside
    /// and outside as a resistance of 0.13 m²·K/W asks for.
    pub fn least_margin(
        &self,
        enclosure: &Enclosure,
        day: &Day,
        dew_point: Temperature,
    ) -> TemperatureDifference {
        let share = (1.0 - enclosure.walls.transfer.base() * 0.13).max(0.0);
        let outside = repeated(&day.outside.map(quantity::Quantity::base));
        let mut least = f64::INFINITY;
        for (hour, inside) in self.quarters.chunks(4).enumerate() {
            let piece = Piece::of(&outside, hour % 24);
            let mut time = 0.0;
            for inside in inside {
                let face = piece.at(time) + (inside.base() - piece.at(time)) * share;
                least = least.min(face - dew_point.base());
                time += QUARTER;
            }
        }
        TemperatureDifference::from_base(least)
    }
}

/// The state on the way.
pub(super) struct Run<'a> {
    enclosure: &'a Enclosure,
    /// Air outside, and heat of the sun, at the full hours of the day.
    pub(super) outside: Hours,
    pub(super) sun: Hours,
    now: f64,
    called: bool,
    open: bool,
    vented: bool,
}

impl<'a> Run<'a> {
    pub(super) fn new(enclosure: &'a Enclosure, outside: Hours, sun: Hours) -> Self {
        let through = enclosure.walls.transfer.base() * enclosure.walls.area.base();
        Self {
            enclosure,
            outside,
            sun,
            now: outside[0] + (enclosure.inside.base() + sun[0]) / through,
            called: false,
            open: false,
            vented: false,
        }
    }

    /// The heater gives heat.
    fn heats(&self) -> bool {
        let heater = self.enclosure.heater;
        heater.is_some_and(|heater| heater.stuck || self.called) && !self.open
    }

    /// One day, from midnight to midnight.
    pub(super) fn day(&mut self) -> Result<DayInside, OutOfReach> {
        let mut told = DayInside {
            quarters: vec![Temperature::from_base(self.now)],
            hottest: (Time::from_base(0.0), Temperature::from_base(self.now)),
            coldest: (Time::from_base(0.0), Temperature::from_base(self.now)),
            mean: Temperature::from_base(0.0),
            heater_on: Ratio::from_base(0.0),
            heater_gives: Energy::from_base(0.0),
            cut_out_opens: None,
            switchings: 0,
        };
        let (mut sum, mut on, mut midnight) = (0.0, 0.0, 0.0);
        for hour in 0..24_usize {
            let hours = (Piece::of(&self.outside, hour), Piece::of(&self.sun, hour));
            for quarter in 0..4_u32 {
                let begin = f64::from(quarter) * QUARTER;
                let mut gone = 0.0;
                while gone < QUARTER {
                    let course = self.course(&hours, begin + gone);
                    let (span, switch) = self.next(&course, QUARTER - gone);
                    told.reach(&course, midnight + begin + gone, span);
                    sum += course.sum(span);
                    on += if self.heats() { span } else { 0.0 };
                    self.now = course.at(span);
                    gone = if switch.is_some() {
                        gone + span
                    } else {
                        QUARTER
                    };
                    if let Some(switch) = switch {
                        self.switch(switch, &mut told, midnight + begin + gone)?;
                    }
                }
                told.quarters.push(Temperature::from_base(self.now));
            }
            midnight += HOUR;
        }
        let whole = 24.0 * HOUR;
        told.mean = Temperature::from_base(sum / whole);
        told.heater_on = Ratio::from_base(on / whole);
        let power = self
            .enclosure
            .heater
            .map_or(0.0, |heater| heater.power.base());
        told.heater_gives = Energy::from_base(on * power);
        Ok(told)
    }

    /// How the inside goes on from a time of the hour, as long as nothing switches and no hour is full.
    fn course(&self, (outside, sun): &(Piece, Piece), time: f64) -> Course {
        let enclosure = self.enclosure;
        let vent = enclosure.vent.filter(|_| self.vented);
        let through = enclosure.walls.transfer.base() * enclosure.walls.area.base()
            + vent.map_or(0.0, |vent| vent.carries.base());
        let heater = enclosure.heater.filter(|_| self.heats());
        let given = enclosure.inside.base() + heater.map_or(0.0, |heater| heater.power.base());
        let strives = outside.at(time) + (given + sun.at(time)) / through;
        let slope = outside.slope + sun.slope / through;
        Course::new(
            self.now,
            (strives, slope),
            enclosure.walls.stores.base() / through,
        )
    }

    /// Until when, and what switches then.
    fn next(&self, course: &Course, left: f64) -> (f64, Option<What>) {
        let mut first = (left, None);
        for (what, level, rising) in self.waiting() {
            if let Some(time) = course.reaches(level, rising, first.0) {
                first = (time, Some(what));
            }
        }
        first
    }

    /// What may switch next, at which level, rising or falling.
    fn waiting(&self) -> impl Iterator<Item = (What, f64, bool)> {
        let of = |what, switch: Switch, acted: bool| {
            let level = if acted { switch.below } else { switch.above };
            (what, level.base(), !acted)
        };
        let thermostat = self
            .enclosure
            .heater
            .filter(|heater| !heater.stuck)
            .map(|heater| {
                let switch = Switch {
                    above: heater.off_above,
                    below: heater.on_below,
                };
                of(What::Thermostat, switch, !self.called)
            });
        let cut_out = self
            .enclosure
            .cut_out
            .map(|switch| of(What::CutOut, switch, self.open));
        let vent = self
            .enclosure
            .vent
            .map(|vent| of(What::Vent, vent.switch, self.vented));
        [thermostat, cut_out, vent].into_iter().flatten()
    }

    fn switch(&mut self, what: What, told: &mut DayInside, time: f64) -> Result<(), OutOfReach> {
        told.switchings += 1;
        if told.switchings > BUSY {
            return Err(OutOfReach::new(
                "switch",
                "a thermostat, cut-out or vent switches thousands of times a day: set its two temperatures farther apart",
            ));
        }
        match what {
            What::Thermostat => self.called = !self.called,
            What::Vent => self.vented = !self.vented,
            What::CutOut => {
                self.open = !self.open;
                if self.open && told.cut_out_opens.is_none() {
                    told.cut_out_opens = Some(Time::from_base(time));
                }
            }
        }
        Ok(())
    }
}

/// What switches.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum What {
    Thermostat,
    CutOut,
    Vent,
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::super::{Heater, Vent, Walls};
    use super::*;
    use proptest::prelude::*;
    use quantity::{Area, HeatTransfer, Power, celsius};

    fn enclosure(stores: f64) -> Enclosure {
        Enclosure {
            walls: Walls {
                transfer: HeatTransfer::from_base(6.0),
                area: Area::from_base(1.5),
                stores: Energy::from_base(stores),
            },
            inside: Power::from_base(30.0),
            heater: None,
            cut_out: None,
            vent: None,
        }
    }

    fn switch(above: f64, below: f64) -> Switch {
        Switch {
            above: celsius(above),
            below: celsius(below),
        }
    }

    fn heater(power: f64, stuck: bool) -> Heater {
        Heater {
            power: Power::from_base(power),
            on_below: celsius(5.0),
            off_above: celsius(10.0),
            stuck,
        }
    }

    #[test]
    fn an_even_day_ends_where_the_balance_is() {
        let found = enclosure(40_000.0)
            .through(&Day::dark(celsius(20.0), celsius(20.0)))
            .unwrap();
        let steady = 293.15 + 30.0 / 9.0;
        assert!((found.hottest.1.base() - steady).abs() < 1e-9);
        assert!((found.coldest.1.base() - steady).abs() < 1e-9);
    }

    proptest! {
        /// Over a day that repeats, what is given off inside leaves through the walls.
        #[test]
        fn what_is_given_leaves(cold in -25.0_f64..10.0, swing in 0.0_f64..20.0, stores in 5_000.0_f64..90_000.0, power in 60.0_f64..300.0) {
            let day = Day::dark(celsius(cold), celsius(cold + swing));
            let one = Enclosure { heater: Some(heater(power, true)), ..enclosure(stores) };
            let found = one.through(&day).unwrap();
            let outside = cold + swing / 2.0 + 273.15;
            let left: f64 = 9.0 * (found.mean.base() - outside) - 30.0 - power;
            prop_assert!(left.abs() < 1e-4);
            prop_assert!((found.heater_on.base() - 1.0).abs() < 1e-12);
        }

        #[test]
        fn more_mass_swings_less(stores in 5_000.0..60_000.0) {
            let day = Day::dark(celsius(5.0), celsius(25.0));
            let swing = |stores: f64| {
                let found = enclosure(stores).through(&day).unwrap();
                found.hottest.1.base() - found.coldest.1.base()
            };
            prop_assert!(swing(1.3 * stores) < swing(stores));
        }
    }

    #[test]
    fn a_thermostat_holds_its_band() {
        let one = Enclosure {
            heater: Some(heater(400.0, false)),
            ..enclosure(30_000.0)
        };
        let found = one
            .through(&Day::dark(celsius(-20.0), celsius(-10.0)))
            .unwrap();
        assert!(
            (found.coldest.1.base() - 278.15).abs() < 1e-6,
            "{:?}",
            found.coldest
        );
        assert!(
            (found.hottest.1.base() - 283.15).abs() < 1e-6,
            "{:?}",
            found.hottest
        );
        // Mean heat: 9 W/K over the mean of the band and the air, less what is inside.
        let wanted = (9.0 * (found.mean.base() - 258.15) - 30.0) / 400.0;
        assert!(
            (found.heater_on.base() - wanted).abs() < 0.01,
            "{:?}",
            found.heater_on
        );
    }

    #[test]
    fn a_cut_out_stops_a_stuck_heater_and_a_vent_cools() {
        let hot = Day::dark(celsius(20.0), celsius(30.0));
        let stuck = Enclosure {
            heater: Some(heater(300.0, true)),
            ..enclosure(30_000.0)
        };
        let free = stuck.through(&hot).unwrap();
        assert!(free.hottest.1 > celsius(60.0) && free.cut_out_opens.is_none());
        let cut = Enclosure {
            cut_out: Some(switch(38.0, 30.0)),
            ..stuck.clone()
        };
        let held = cut.through(&hot).unwrap();
        assert!((held.hottest.1.base() - 311.15).abs() < 1e-6 && held.cut_out_opens.is_some());
        let vent = Some(Vent {
            switch: switch(35.0, 30.0),
            carries: Power::from_base(60.0),
        });
        let vented = Enclosure { vent, ..stuck }.through(&hot).unwrap();
        assert!(vented.hottest.1.base() < free.hottest.1.base() - 20.0);
    }

    #[test]
    fn dew_and_what_cannot_be() {
        let day = Day::dark(celsius(5.0), celsius(15.0));
        let one = enclosure(30_000.0);
        let found = one.through(&day).unwrap();
        let margin = found.least_margin(&one, &day, celsius(4.0)).base();
        assert!(margin > 1.0 && margin < 2.5, "{margin}");
        let bad = Enclosure {
            cut_out: Some(switch(38.0, 38.0)),
            ..enclosure(1.0)
        };
        assert_eq!(bad.through(&day).unwrap_err().input, "switch");
        assert_eq!(enclosure(0.0).through(&day).unwrap_err().input, "stores");
    }
}
