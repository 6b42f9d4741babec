//! An axis: which values it spans, where its ticks stand, and how they are printed.

use quantity::{Kind, UnitSystem, units_of};

/// About so many ticks are wanted on an axis.
const WANTED: f64 = 8.0;

/// The units of plots: kind, in the United States, elsewhere.
const UNITS: [(Kind, &str, &str); 7] = [
    (Kind::Length, "ft", "m"),
    (Kind::Time, "s", "s"),
    (Kind::Velocity, "ft/s", "m/s"),
    (Kind::AngularVelocity, "deg/s", "deg/s"),
    (Kind::Force, "lbf", "N"),
    (Kind::Torque, "lbf·ft", "N·m"),
    (Kind::Ratio, "%", "%"),
];

/// An axis from its first to its last tick.
#[derive(Debug, Clone)]
pub struct Axis {
    /// What is measured along it, without its unit.
    what: String,
    /// The unit as it is printed; empty for a plain number.
    unit: &'static str,
    /// It runs through a year.
    year: bool,
    /// Units in one of the coherent SI unit, and the units at none of it.
    per_base: f64,
    at_none: f64,
    /// First and last tick, and the step between ticks, in units.
    low: f64,
    high: f64,
    step: f64,
}

impl Axis {
    /// The axis of a kind of quantity that shows zero and all values, given in coherent SI units; one of temperatures or
    /// voltages need not show zero.
    pub(super) fn over(
        (what, kind): (&str, Kind),
        values: impl Iterator<Item = f64>,
        system: UnitSystem,
    ) -> Self {
        let values: Vec<f64> = values.filter(|value| value.is_finite()).collect();
        let greatest = values.iter().copied().fold(0.0, f64::max);
        let (unit, per_base, at_none) = unit(kind, system, greatest);
        let year = kind == Kind::Time && greatest >= A_YEAR;
        let first = match (kind, values.first()) {
            (Kind::Temperature | Kind::Voltage, Some(value)) => value * per_base + at_none,
            _ => 0.0,
        };
        let reach = |(low, high): (f64, f64), value: f64| (low.min(value), high.max(value));
        let in_units = values.iter().map(|value| value * per_base + at_none);
        let (low, high) = in_units.fold((first, first), reach);
        let span = if high - low > 0.0 { high - low } else { 1.0 };
        let step = match unit {
            _ if year => 1.0,
            HOURS => (span / WANTED).max(1.0).ceil(),
            _ => even(span / WANTED),
        };
        let low = (low / step + 1e-9).floor() * step;
        let high = (high / step - 1e-9).ceil() * step;
        Self {
            what: what.to_owned(),
            unit,
            year,
            per_base,
            at_none,
            low,
            high: if high > low { high } else { low + step },
            step,
        }
    }

    /// What is measured along it, with its unit.
    pub fn named(&self) -> String {
        match self.unit {
            "" => self.what.clone(),
            unit => format!("{}, {unit}", self.what),
        }
    }

    /// What is measured along it, without its unit.
    pub fn what(&self) -> &str {
        &self.what
    }

    /// The unit of its numbers; empty for a plain number, and for days of a year.
    pub fn unit(&self) -> &'static str {
        self.unit
    }

    /// It runs through a year: its numbers are days since the first of January began, its ticks stand at the months.
    pub fn is_year(&self) -> bool {
        self.year
    }

    /// Its first and last tick, in its unit.
    pub fn ends(&self) -> (f64, f64) {
        (self.low, self.high)
    }

    /// Digits behind the point that a value read from it deserves: a fiftieth of a step or finer.
    pub fn digits(&self) -> usize {
        let least = self.step / 50.0;
        (0..6_i32)
            .find(|digits| 10_f64.powi(-digits) <= least * (1.0 + 1e-9))
            .and_then(|digits| usize::try_from(digits).ok())
            .unwrap_or(6)
    }

    /// A value in its unit, given in the coherent SI unit.
    pub(super) fn in_units(&self, value: f64) -> f64 {
        value * self.per_base + self.at_none
    }

    /// The share of the axis at which a value stands, given in its unit.
    pub fn share(&self, value: f64) -> f64 {
        (value - self.low) / (self.high - self.low)
    }

    /// The share of the axis at which zero of its units stands, where it stands on it.
    pub fn zero(&self) -> Option<f64> {
        (self.low..=self.high)
            .contains(&0.0)
            .then(|| -self.low / (self.high - self.low))
    }

    /// Ticks: share of the axis, and number in units; of a year its months, where they begin.
    pub fn ticks(&self) -> Vec<(f64, String)> {
        if self.is_year() {
            let months = MONTHS.iter();
            return months
                .map(|(day, name)| (self.share(*day), (*name).to_owned()))
                .collect();
        }
        let mut ticks = Vec::new();
        let mut index = 0_u32;
        loop {
            let value = self.low + self.step * f64::from(index);
            if value > self.high + self.step * 0.01 || index > 60 {
                return ticks;
            }
            let share = (value - self.low) / (self.high - self.low);
            ticks.push((share, printed(value, self.step)));
            index += 1;
        }
    }
}

/// Times from here on are a year, counted in days (s).
const A_YEAR: f64 = 300.0 * 86_400.0;

/// Days in a second.
const PER_DAY: f64 = 1.0 / 86_400.0;

/// The days of a year on which its months begin.
const MONTHS: [(f64, &str); 12] = [
    (0.0, "Jan"),
    (31.0, "Feb"),
    (59.0, "Mar"),
    (90.0, "Apr"),
    (120.0, "May"),
    (151.0, "Jun"),
    (181.0, "Jul"),
    (212.0, "Aug"),
    (243.0, "Sep"),
    (273.0, "Oct"),
    (304.0, "Nov"),
    (334.0, "Dec"),
];

/// The unit of long times.
const HOURS: &str = "h";

/// Times from here on are counted in hours (s).
const LONG: f64 = 7_200.0;

/// The unit of a kind of quantity, how many of it are one coherent SI unit, and how many are none of that.
fn unit(kind: Kind, system: UnitSystem, greatest: f64) -> (&'static str, f64, f64) {
    match (kind, system) {
        (Kind::Angle, _) => return ("°", 180.0 / std::f64::consts::PI, 0.0),
        (Kind::Time, _) if greatest >= A_YEAR => return ("", PER_DAY, 0.0),
        (Kind::Time, _) if greatest >= LONG => return (HOURS, 1.0 / 3600.0, 0.0),
        (Kind::Temperature, UnitSystem::UsCustomary) => return ("°F", 1.8, -459.67),
        (Kind::Temperature, UnitSystem::Si) => return ("°C", 1.0, -273.15),
        _ => {}
    }
    let named = UNITS.iter().find(|(known, ..)| *known == kind);
    let wanted = named.map(|(_, us, si)| match system {
        UnitSystem::UsCustomary => *us,
        UnitSystem::Si => *si,
    });
    let units = units_of(kind);
    let unit = units
        .iter()
        .find(|unit| wanted.is_some_and(|wanted| unit.symbols.contains(&wanted)))
        .or(units.first());
    unit.map_or(("", 1.0, 0.0), |unit| {
        (unit.symbol(), 1.0 / unit.scale, 0.0)
    })
}

/// The next step that counts evenly: 1, 2, 2.5 or 5 times a power of ten.
fn even(least: f64) -> f64 {
    let power = 10_f64.powf(least.log10().floor());
    let steps = [1.0, 2.0, 2.5, 5.0, 10.0].map(|lead| lead * power);
    steps
        .into_iter()
        .find(|step| *step >= least * (1.0 - 1e-9))
        .unwrap_or(10.0 * power)
}

/// A number of an axis with the digits that its step asks for.
fn printed(value: f64, step: f64) -> String {
    let digits = (0..6_usize)
        .find(|digits| {
            let power = 10_f64.powi(i32::try_from(*digits).unwrap_or(0));
            let scaled = step * power;
            (scaled - scaled.round()).abs() < 1e-6 * scaled.abs().max(1.0)
        })
        .unwrap_or(6);
    let value = if value.abs() < step * 1e-6 {
        0.0
    } else {
        value
    };
    let text = format!("{value:.digits$}");
    text.replace('-', "−")
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn axis(kind: Kind, values: &[f64], system: UnitSystem) -> Axis {
        Axis::over(("", kind), values.iter().copied(), system)
    }

    fn numbers(axis: &Axis) -> Vec<String> {
        axis.ticks().into_iter().map(|(_, words)| words).collect()
    }

    #[test]
    fn ticks_are_even_and_in_the_units_of_the_site() {
        let feet = axis(Kind::Length, &[0.0, 6.2992], UnitSystem::UsCustomary);
        assert_eq!(feet.unit, "ft");
        assert_eq!(numbers(&feet), ["0", "5", "10", "15", "20", "25"]);
        let newtons = axis(Kind::Force, &[-120.0, 480.0], UnitSystem::Si);
        assert_eq!(
            numbers(&newtons),
            ["−200", "−100", "0", "100", "200", "300", "400", "500"]
        );
        let degrees = axis(
            Kind::Angle,
            &[0.0, std::f64::consts::FRAC_PI_2],
            UnitSystem::Si,
        );
        assert_eq!(degrees.unit, "°");
        assert_eq!(numbers(&degrees), ["0", "20", "40", "60", "80", "100"]);
        let speed = axis(Kind::Velocity, &[0.26], UnitSystem::Si);
        assert_eq!(
            numbers(&speed),
            ["0.00", "0.05", "0.10", "0.15", "0.20", "0.25", "0.30"]
        );
    }

    #[test]
    fn a_year_has_months_and_voltages_need_no_zero() {
        let year = axis(Kind::Time, &[0.0, 365.0 * 86_400.0], UnitSystem::Si);
        assert!(year.is_year());
        assert_eq!(year.ends(), (0.0, 365.0));
        assert_eq!(numbers(&year).len(), 12);
        assert!((year.ticks()[6].0 - 181.0 / 365.0).abs() < 1e-12);
        let volts = axis(Kind::Voltage, &[21.2, 24.0], UnitSystem::Si);
        assert_eq!(volts.unit(), "V");
        assert_eq!(volts.ends(), (21.0, 24.0));
        assert_eq!(volts.digits(), 2);
    }

    #[test]
    fn an_axis_without_values_still_has_two_ticks() {
        for values in [&[][..], &[0.0], &[f64::NAN]] {
            assert!(numbers(&axis(Kind::Force, values, UnitSystem::Si)).len() > 1);
        }
    }

    proptest! {
        #[test]
        fn every_value_stands_on_its_axis(one in -1e5..1e5_f64, other in -1e5..1e5_f64) {
            let axis = axis(Kind::Force, &[one, other], UnitSystem::UsCustomary);
            for value in [one, other, 0.0] {
                let share = axis.share(axis.in_units(value));
                prop_assert!((-1e-6..=1.0 + 1e-6).contains(&share));
            }
            let ticks = axis.ticks().len();
            prop_assert!((2..=20).contains(&ticks), "{ticks}");
        }
    }
}
