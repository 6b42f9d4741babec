//! The kinds of quantity the program knows, each tied to its compile-time type.

use crate::value::{Argument, Sort, Value};
use uom::si::{ISQ, SI};
use uom::typenum::{N1, N2, N3, P1, P4, Z0};

/// A type that carries a physical quantity in its coherent SI unit.
pub trait Quantity: Copy + PartialEq + PartialOrd + std::fmt::Debug + Argument {
    /// Which kind of quantity this type is.
    const KIND: Kind;
    /// Builds the quantity from a number of its coherent SI unit.
    fn from_base(number: f64) -> Self;
    /// The number of coherent SI units.
    fn base(self) -> f64;
}

/// Keeps gains in decibels apart from plain numbers.
pub trait GainKind: uom::Kind {}

/// Keeps levels over a milliwatt apart from gains and from plain numbers.
pub trait PowerLevelKind: uom::Kind {}

/// Declares the kinds: the type, its name with article, and an example of how it is written.
macro_rules! kinds {
    ($($(#[doc = $doc:literal])* $name:ident = $type:ty, $article:literal, $words:literal, $example:literal;)*) => {
        /// A kind of physical quantity; torque and energy, or ratio and angle, are different kinds of one dimension.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Kind { $($(#[doc = $doc])* $name,)* }

        impl Kind {
            /// Every kind, in the order of the handbook.
            pub const ALL: &'static [Kind] = &[$(Kind::$name,)*];

            /// The kind in words: `length`.
            pub fn words(self) -> &'static str { match self { $(Kind::$name => $words,)* } }

            /// The kind in words with its article: `a length`.
            pub fn with_article(self) -> &'static str {
                match self { $(Kind::$name => concat!($article, " ", $words),)* }
            }

            /// An example of how a value of this kind is written: `14 ft 3 1/2 in`.
            pub fn example(self) -> &'static str { match self { $(Kind::$name => $example,)* } }
        }

        $(
            $(#[doc = $doc])*
            pub type $name = $type;

            impl Quantity for $type {
                const KIND: Kind = Kind::$name;
                fn from_base(number: f64) -> Self {
                    Self { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: number }
                }
                fn base(self) -> f64 { self.value }
            }

            impl Argument for $type {
                const SORT: Sort = Sort::Quantity(Kind::$name);
                fn to_value(&self) -> Value { Value::Quantity(Kind::$name, self.base()) }
                fn from_value(value: &Value) -> Option<Self> {
                    match value {
                        Value::Quantity(Kind::$name, number) => Some(Self::from_base(*number)),
                        _ => None,
                    }
                }
            }
        )*
    };
}

kinds! {
    /// A length, height, width, depth or distance (m).
    Length = uom::si::f64::Length, "a", "length", "14 ft 3 1/2 in";
    /// An area (m²).
    Area = uom::si::f64::Area, "an", "area", "48 ft²";
    /// A volume (m³).
    Volume = uom::si::f64::Volume, "a", "volume", "0.6 yd³";
    /// A plane angle (rad).
    Angle = uom::si::f64::Angle, "an", "angle", "90°";
    /// A number without unit: a share, a slope, a coefficient.
    Ratio = uom::si::f64::Ratio, "a", "ratio", "2.5 %";
    /// A span of time (s).
    Time = uom::si::f64::Time, "a", "time", "250 ms";
    /// A rate of repetition (Hz).
    Frequency = uom::si::f64::Frequency, "a", "frequency", "60 Hz";
    /// A speed along a line (m/s).
    Velocity = uom::si::f64::Velocity, "a", "speed", "1 ft/s";
    /// A rate of change of speed (m/s²).
    Acceleration = uom::si::f64::Acceleration, "an", "acceleration", "1.5 ft/s²";
    /// A rate of change of acceleration (m/s³).
    Jerk = uom::si::f64::Jerk, "a", "jerk", "3 ft/s³";
    /// A turning speed (rad/s).
    AngularVelocity = uom::si::f64::AngularVelocity, "a", "turning speed", "6 deg/s";
    /// A mass: how much matter, never how hard it presses (kg).
    Mass = uom::si::f64::Mass, "a", "mass", "640 lb";
    /// A mass of each unit of length (kg/m).
    MassPerLength = uom::si::f64::LinearMassDensity, "a", "mass per length", "0.09 lb/ft";
    /// A mass of each unit of area: sheet, mesh, ice (kg/m²).
    MassPerArea = uom::si::Quantity<ISQ<N2, P1, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>,
        "a", "mass per area", "1.2 lb/ft²";
    /// A mass of each unit of volume (kg/m³).
    MassDensity = uom::si::f64::MassDensity, "a", "density", "490 lb/ft³";
    /// How far mass lies from an axis, squared: resistance to being spun up (kg·m²).
    MomentOfInertia = uom::si::f64::MomentOfInertia, "a", "moment of inertia", "650 lb·ft²";
    /// How far area lies from an axis, squared: resistance of a section to bending (m⁴).
    SecondMomentOfArea = uom::si::Quantity<ISQ<P4, Z0, Z0, Z0, Z0, Z0, Z0>, SI<f64>, f64>,
        "a", "second moment of area", "7.8 in⁴";
    /// A force, weight included (N).
    Force = uom::si::f64::Force, "a", "force", "25 lbf";
    /// A force on each unit of length: side-wall load, stiffness of a spring (N/m).
    ForcePerLength = uom::si::f64::SurfaceTension, "a", "force per length", "300 lbf/ft";
    /// A turning moment; not an energy (N·m).
    Torque = uom::si::f64::Torque, "a", "torque", "120 lbf·ft";
    /// An energy; not a torque (J).
    Energy = uom::si::f64::Energy, "an", "energy", "120 ft·lbf";
    /// A pressure or a stress (Pa).
    Pressure = uom::si::f64::Pressure, "a", "pressure", "24 psf";
    /// A pressure that grows with depth, as the ground gives it sideways (Pa/m).
    PressurePerDepth = uom::si::Quantity<ISQ<N2, P1, N2, Z0, Z0, Z0, Z0>, SI<f64>, f64>,
        "a", "pressure per depth", "150 psf/ft";
    /// A power or a flow of heat (W).
    Power = uom::si::f64::Power, "a", "power", "25.5 W";
    /// A power arriving on each unit of area, such as sunshine (W/m²).
    HeatFlux = uom::si::f64::HeatFluxDensity, "a", "heat flux", "900 W/m²";
    /// A heat flow through each unit of area for each degree (W/(m²·K)).
    HeatTransfer = uom::si::f64::HeatTransfer, "a", "heat transfer coefficient", "5.5 W/(m²·K)";
    /// A temperature on a scale, not a difference (K inside).
    Temperature = uom::si::f64::ThermodynamicTemperature, "a", "temperature", "38 °C";
    /// A difference of temperatures (K).
    TemperatureDifference = uom::si::f64::TemperatureInterval, "a", "temperature difference", "20 Δ°F";
    /// A growth of each unit of length for each degree (1/K).
    ThermalExpansion = uom::si::Quantity<ISQ<Z0, Z0, Z0, Z0, N1, Z0, Z0>, SI<f64>, f64>,
        "a", "coefficient of expansion", "11.7 µm/(m·K)";
    /// An electric current (A).
    Current = uom::si::f64::ElectricCurrent, "a", "current", "500 mA";
    /// An electric voltage (V).
    Voltage = uom::si::f64::ElectricPotential, "a", "voltage", "24 V";
    /// An electric resistance (Ω).
    Resistance = uom::si::f64::ElectricalResistance, "a", "resistance", "6.4 Ω";
    /// A resistance of each unit of length of a conductor (Ω/m).
    ResistancePerLength = uom::si::Quantity<ISQ<P1, P1, N3, N2, Z0, Z0, Z0>, SI<f64>, f64>,
        "a", "resistance per length", "6.385 Ω/kft";
    /// How badly a material, such as soil, carries current (Ω·m).
    Resistivity = uom::si::f64::ElectricalResistivity, "a", "resistivity", "100 Ω·m";
    /// How many times a signal grows on its way, on the logarithmic scale; a loss where it shrinks (dB inside).
    Gain = uom::si::Quantity<ISQ<Z0, Z0, Z0, Z0, Z0, Z0, Z0, dyn GainKind>, SI<f64>, f64>,
        "a", "gain or loss", "12 dB";
    /// A radio power on the logarithmic scale over a milliwatt (dBm inside).
    PowerLevel = uom::si::Quantity<ISQ<Z0, Z0, Z0, Z0, Z0, Z0, Z0, dyn PowerLevelKind>, SI<f64>, f64>,
        "a", "power level", "-85 dBm";
    /// A strength of the electric field of a radio wave (V/m).
    FieldStrength = uom::si::f64::ElectricField, "a", "field strength", "11 mV/m";
    /// An amount of charge, as batteries are rated (C inside).
    Charge = uom::si::f64::ElectricCharge, "a", "charge", "26 Ah";
    /// How strongly a coil or a line answers a change of its current (H).
    Inductance = uom::si::f64::Inductance, "an", "inductance", "120 µH";
    /// How much charge a part holds for each volt (F).
    Capacitance = uom::si::f64::Capacitance, "a", "capacitance", "100 nF";
    /// An amount of data, as disks are sold (bit inside).
    DataSize = uom::si::f64::Information, "an", "amount of data", "4 TB";
    /// A rate of data over a link (bit/s).
    DataRate = uom::si::f64::InformationRate, "a", "data rate", "100 Mbit/s";
}
