//! Physical quantities with their units in the type, and reading and printing them as the trade writes them.
//!
//! A value enters the program once, as text such as `14 ft 3 1/2 in` or `640 lb ± 5 %`, and from then on its
//! dimension is checked by the compiler: mass is not force, torque is not energy, and a temperature difference is
//! not a temperature. Inside, every value is in the coherent SI unit of its kind (meter, kilogram, second, kelvin…).
//!
//! ```
//! use quantity::{Mass, Measured, UnitSystem, print_measured, read_measured};
//! let leaf: Measured<Mass> = read_measured("640 lb ± 5 %, assumed")?;
//! assert_eq!(print_measured(&leaf, UnitSystem::Si), "290 kg ± 5 %, assumed");
//! # Ok::<(), quantity::ReadError>(())
//! ```
//!
//! Mass is not force, however alike they are said:
//!
//! ```compile_fail,E0308
//! let mass: quantity::Mass = quantity::read("640 lb").unwrap();
//! let force: quantity::Force = quantity::read("25 lbf").unwrap();
//! let sum = mass + force;
//! ```
//!
//! Torque is not energy, though both are a force times a length:
//!
//! ```compile_fail,E0308
//! let torque: quantity::Torque = quantity::read("120 lbf·ft").unwrap();
//! let energy: quantity::Energy = quantity::read("120 ft·lbf").unwrap();
//! let sum = torque + energy;
//! ```
//!
//! A temperature is not a temperature difference:
//!
//! ```compile_fail,E0308
//! let warm: quantity::Temperature = quantity::read("38 °C").unwrap();
//! let rise: quantity::TemperatureDifference = warm;
//! ```

mod conductor;
mod kind;
mod looked;
mod measured;
mod number;
mod print;
mod read;
mod temperature;
mod unit;
mod value;
mod word;

pub use conductor::{Awg, ConductorSize};
pub use kind::*;
pub use looked::{Looked, looking};
pub use measured::{Known, Measured, Tolerance};
pub use print::{
    UnitSystem, print, print_kind, print_measured, print_rounding, print_value, write_exact,
    write_kind, write_measured, write_value,
};
pub use read::{ReadError, read, read_conductor, read_kind, read_measured, read_value};
pub use temperature::{celsius, difference, kelvin_of, warmed};
pub use unit::{Unit, units_of};
pub use value::{Argument, Sort, Value};
pub use word::Word;

/// The dimension-checked units of the underlying library, for building values in code: `units::length::foot`.
pub use uom::si as units;
