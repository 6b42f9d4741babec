//! The units of each kind, as they are written, with their exact definitions.

mod data;
mod electric;
mod geometry;
mod heat;
mod load;
mod motion;
mod radio;

use crate::Kind;

/// Meters in the international inch (yard and pound agreement of 1959; NIST SP 811, B.6).
const INCH: f64 = 0.0254;
/// Meters in the international foot, twelve inches.
const FOOT: f64 = 0.3048;
/// Meters in the international mile, 5280 feet.
const MILE: f64 = 1609.344;
/// Kilograms in the avoirdupois pound (NIST SP 811, B.6).
const POUND: f64 = 0.45359237;
/// Standard gravity in m/s² (SI brochure, 3rd CGPM 1901).
const GRAVITY: f64 = 9.80665;
/// Newtons in the pound-force, a pound under standard gravity.
const POUND_FORCE: f64 = POUND * GRAVITY;
/// Joules in the British thermal unit of the International Table (NIST SP 811, B.6).
const BTU: f64 = 1055.05585262;
/// Kelvin in one degree of the Fahrenheit scale.
const DEGREE_FAHRENHEIT: f64 = 5.0 / 9.0;

/// One way to write a kind of quantity.
#[derive(Debug, Clone, Copy)]
pub struct Unit {
    /// How it is printed, and further spellings that are read.
    pub symbols: &'static [&'static str],
    /// Coherent SI units in one of this.
    pub scale: f64,
    /// Added after scaling; only temperatures have one.
    pub offset: f64,
}

impl Unit {
    /// A unit whose zero is the zero of its kind.
    const fn new(symbols: &'static [&'static str], scale: f64) -> Self {
        Self {
            symbols,
            scale,
            offset: 0.0,
        }
    }

    /// How this unit is printed; empty for a plain number.
    pub fn symbol(&self) -> &'static str {
        self.symbols.first().copied().unwrap_or_default()
    }

    /// So many of this unit in the coherent SI unit, on the scale of the kind.
    pub fn to_base(&self, number: f64) -> f64 {
        self.scaled(number) + self.offset
    }

    /// How many of this unit a value in the coherent SI unit is, on the scale of the kind.
    pub fn from_base(&self, base: f64) -> f64 {
        self.unscaled(base - self.offset)
    }

    /// A difference of so many of this unit in the coherent SI unit.
    pub(crate) fn scaled(&self, number: f64) -> f64 {
        let (numerator, denominator) = decimal_fraction(self.scale);
        let exact = number * numerator / denominator;
        if exact.is_finite() {
            exact
        } else {
            number * self.scale
        }
    }

    /// How many of this unit a difference in the coherent SI unit is.
    pub(crate) fn unscaled(&self, base: f64) -> f64 {
        let (numerator, denominator) = decimal_fraction(self.scale);
        let exact = base * denominator / numerator;
        if exact.is_finite() {
            exact
        } else {
            base / self.scale
        }
    }
}

/// A factor as a quotient of whole numbers where it is a short decimal, so that `500 mA` is exactly half an ampere.
fn decimal_fraction(scale: f64) -> (f64, f64) {
    /// Whole numbers up to this are exact, 2⁵³.
    const EXACT: f64 = 9_007_199_254_740_992.0;
    /// The most decimals of a defined factor, those of the pound-force; powers of ten this small are exact.
    const DECIMALS: i32 = 13;
    let quotient = |power: i32| {
        let denominator = 10f64.powi(power);
        let numerator = (scale * denominator).round();
        let same = (numerator / denominator).to_bits() == scale.to_bits();
        (same && (1.0..=EXACT).contains(&numerator)).then_some((numerator, denominator))
    };
    (0..=DECIMALS).find_map(quotient).unwrap_or((scale, 1.0))
}

/// One spelling for all: `mm2` for mm², `lbf·ft` for `lbf-ft` and `lbf ft`, `Ω` for either sign of the ohm.
pub(crate) fn plain_spelling(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut gap = false;
    for letter in text.trim().chars().filter(|letter| *letter != '^') {
        let letter = match letter {
            '²' => '2',
            '³' => '3',
            '⁴' => '4',
            '\u{3bc}' => 'µ',
            '\u{2126}' => 'Ω',
            '\u{2206}' => 'Δ',
            '⋅' | '∙' | '•' | '*' | '-' | '\u{2011}' => '·',
            other => other,
        };
        if letter.is_whitespace() {
            gap = true;
            continue;
        }
        let joins = |letter: char| matches!(letter, '/' | '·' | '(' | ')' | 'Δ' | '°');
        if gap && !joins(letter) && plain.chars().last().is_some_and(|last| !joins(last)) {
            plain.push('·');
        }
        gap = false;
        plain.push(letter);
    }
    plain
}

/// The units in which a kind may be written, the preferred SI and US customary ones first.
pub fn units_of(kind: Kind) -> &'static [Unit] {
    match kind {
        Kind::Length => geometry::LENGTH,
        Kind::Area => geometry::AREA,
        Kind::Volume => geometry::VOLUME,
        Kind::SecondMomentOfArea => geometry::SECOND_MOMENT_OF_AREA,
        Kind::Angle => geometry::ANGLE,
        Kind::Ratio => geometry::RATIO,
        Kind::Time => motion::TIME,
        Kind::Frequency => motion::FREQUENCY,
        Kind::Velocity => motion::VELOCITY,
        Kind::Acceleration => motion::ACCELERATION,
        Kind::Jerk => motion::JERK,
        Kind::AngularVelocity => motion::ANGULAR_VELOCITY,
        Kind::Mass => load::MASS,
        Kind::MassPerLength => load::MASS_PER_LENGTH,
        Kind::MassPerArea => load::MASS_PER_AREA,
        Kind::MassDensity => load::MASS_DENSITY,
        Kind::MomentOfInertia => load::MOMENT_OF_INERTIA,
        Kind::Force => load::FORCE,
        Kind::ForcePerLength => load::FORCE_PER_LENGTH,
        Kind::Torque => load::TORQUE,
        Kind::Energy => load::ENERGY,
        Kind::Pressure => load::PRESSURE,
        Kind::PressurePerDepth => load::PRESSURE_PER_DEPTH,
        Kind::Power => heat::POWER,
        Kind::HeatFlux => heat::HEAT_FLUX,
        Kind::HeatTransfer => heat::HEAT_TRANSFER,
        Kind::Temperature => heat::TEMPERATURE,
        Kind::TemperatureDifference => heat::TEMPERATURE_DIFFERENCE,
        Kind::ThermalExpansion => heat::THERMAL_EXPANSION,
        Kind::Current => electric::CURRENT,
        Kind::Voltage => electric::VOLTAGE,
        Kind::Resistance => electric::RESISTANCE,
        Kind::ResistancePerLength => electric::RESISTANCE_PER_LENGTH,
        Kind::Resistivity => electric::RESISTIVITY,
        Kind::Gain => radio::GAIN,
        Kind::PowerLevel => radio::POWER_LEVEL,
        Kind::FieldStrength => radio::FIELD_STRENGTH,
        Kind::Charge => electric::CHARGE,
        Kind::Inductance => electric::INDUCTANCE,
        Kind::Capacitance => electric::CAPACITANCE,
        Kind::DataSize => data::SIZE,
        Kind::DataRate => data::RATE,
    }
}

/// The unit of a kind that is written so.
pub(crate) fn unit_written(kind: Kind, text: &str) -> Option<&'static Unit> {
    let units = units_of(kind);
    units
        .iter()
        .find(|unit| unit.symbols.contains(&text))
        .or_else(|| {
            let plain = plain_spelling(text);
            units.iter().find(|unit| {
                unit.symbols
                    .iter()
                    .any(|symbol| plain_spelling(symbol) == plain)
            })
        })
}
