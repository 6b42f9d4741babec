//! Units of amounts and rates of data. Prefixes are powers of ten, as disks and links are sold (IEC 80000-13).

use super::Unit;

/// Units of an amount of data, in bits.
pub(super) const SIZE: &[Unit] = &[
    Unit::new(&["TB"], 8e12),
    Unit::new(&["GB"], 8e9),
    Unit::new(&["MB"], 8e6),
    Unit::new(&["kB"], 8e3),
    Unit::new(&["B", "byte", "bytes"], 8.0),
    Unit::new(&["bit", "bits"], 1.0),
];

/// Units of a rate of data, in bits per second.
pub(super) const RATE: &[Unit] = &[
    Unit::new(&["Mbit/s", "Mbps", "Mb/s"], 1e6),
    Unit::new(&["Gbit/s", "Gbps", "Gb/s"], 1e9),
    Unit::new(&["kbit/s", "kbps", "kb/s"], 1e3),
    Unit::new(&["bit/s", "bps"], 1.0),
];
