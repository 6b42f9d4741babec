//! Units of time, frequency, speed, acceleration and turning speed.

use super::{FOOT, GRAVITY, INCH, MILE, Unit};
use std::f64::consts::PI;

/// Units of time, in seconds.
pub(super) const TIME: &[Unit] = &[
    Unit::new(&["s", "sec", "second", "seconds"], 1.0),
    Unit::new(&["ms", "millisecond", "milliseconds"], 1e-3),
    Unit::new(&["ns", "nanosecond", "nanoseconds"], 1e-9),
    Unit::new(&["min", "minute", "minutes"], 60.0),
    Unit::new(&["h", "hr", "hour", "hours"], 3600.0),
    Unit::new(&["d", "day", "days"], 86_400.0),
    Unit::new(&["µs", "us"], 1e-6),
    Unit::new(&["years", "year", "a"], 365.25 * 86_400.0),
];

/// Units of frequency, in hertz.
pub(super) const FREQUENCY: &[Unit] = &[
    Unit::new(&["Hz", "hertz"], 1.0),
    Unit::new(&["kHz"], 1e3),
    Unit::new(&["MHz"], 1e6),
    Unit::new(&["GHz"], 1e9),
    Unit::new(&["per minute", "/min"], 1.0 / 60.0),
    Unit::new(&["per hour", "/h"], 1.0 / 3600.0),
];

/// Units of speed, in meters per second.
pub(super) const VELOCITY: &[Unit] = &[
    Unit::new(&["m/s", "meters per second"], 1.0),
    Unit::new(&["ft/s", "fps", "ft/sec", "feet per second"], FOOT),
    Unit::new(&["mph", "mi/h", "miles per hour"], MILE / 3600.0),
    Unit::new(&["in/s", "in/sec", "inches per second"], INCH),
    Unit::new(&["ft/min", "fpm", "feet per minute"], FOOT / 60.0),
    Unit::new(&["m/min", "meters per minute"], 1.0 / 60.0),
    Unit::new(&["mm/s"], 1e-3),
    Unit::new(&["cm/s"], 1e-2),
    Unit::new(&["km/h", "kph"], 1.0 / 3.6),
    Unit::new(&["kn", "knot", "knots"], 1852.0 / 3600.0),
    Unit::new(&["mm/h"], 1e-3 / 3600.0),
    Unit::new(&["in/h"], INCH / 3600.0),
];

/// Units of acceleration, in meters per second squared.
pub(super) const ACCELERATION: &[Unit] = &[
    Unit::new(&["m/s²"], 1.0),
    Unit::new(&["ft/s²"], FOOT),
    Unit::new(&["in/s²"], INCH),
    Unit::new(&["mm/s²"], 1e-3),
    Unit::new(&["g"], GRAVITY),
];

/// Units of jerk, in meters per second cubed.
pub(super) const JERK: &[Unit] = &[Unit::new(&["m/s³"], 1.0), Unit::new(&["ft/s³"], FOOT)];

/// Units of turning speed, in radians per second.
pub(super) const ANGULAR_VELOCITY: &[Unit] = &[
    Unit::new(&["rad/s"], 1.0),
    Unit::new(&["deg/s", "°/s", "degrees per second"], PI / 180.0),
    Unit::new(&["rpm", "r/min", "rev/min"], PI / 30.0),
];
