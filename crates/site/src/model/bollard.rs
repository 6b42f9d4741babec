//! Bollards: what keeps vehicles off the gate.

use crate::{Id, Position, Section};
use quantity::{Length, Mass, Measured, Pressure, Velocity};

site_words! {
    /// Rating of a vehicle barrier by its test (ASTM F2656 and F3016).
    pub enum BarrierTest {
        /// Low-speed test, 10 mph.
        S10 = "S10",
        /// Low-speed test, 20 mph.
        S20 = "S20",
        /// Low-speed test, 30 mph.
        S30 = "S30",
        /// Small car, 30 mph.
        Sc30 = "SC30",
        /// Small car, 40 mph.
        Sc40 = "SC40",
        /// Full-size sedan, 30 mph.
        Fs30 = "FS30",
        /// Full-size sedan, 40 mph.
        Fs40 = "FS40",
        /// Pickup, 30 mph.
        Pu30 = "PU30",
        /// Pickup, 40 mph.
        Pu40 = "PU40",
        /// Medium-duty truck, 30 mph.
        M30 = "M30",
        /// Medium-duty truck, 40 mph.
        M40 = "M40",
        /// Medium-duty truck, 50 mph.
        M50 = "M50",
        /// Heavy goods vehicle, 30 mph.
        H30 = "H30",
        /// Heavy goods vehicle, 40 mph.
        H40 = "H40",
        /// Heavy goods vehicle, 50 mph.
        H50 = "H50",
    }
}

record! {
    /// A bollard, or another guard against vehicles.
    pub struct Bollard {
        /// Name, unique on the site.
        id: Id,
        /// Middle of its foot.
        at: Option<Position>,
        /// What it guards.
        guards: Vec<Id>,
        /// Section, such as `"pipe 6"`.
        section: Option<Section>,
        /// Diameter over all, sleeve included.
        diameter: Option<Measured<Length>>,
        /// Yield strength of its steel.
        yield_strength: Option<Measured<Pressure>>,
        /// Filled with concrete.
        filled: Option<bool>,
        /// Height above the finished surface.
        height: Option<Measured<Length>>,
        /// Foundation that it stands in.
        foundation: Option<Id>,
        /// Mass of the vehicle that it must stop.
        vehicle_mass: Option<Measured<Mass>>,
        /// Speed of that vehicle.
        vehicle_speed: Option<Measured<Velocity>>,
        /// How far bollard, ground and bumper may give until the vehicle stands.
        give: Option<Measured<Length>>,
        /// Height of the bumper that strikes it.
        strike_height: Option<Measured<Length>>,
        /// Rating to which the owner wants it.
        wanted_test: Option<BarrierTest>,
        /// Rating that its test report shows, for the bollard in its footing.
        test: Option<BarrierTest>,
        /// How far the test vehicle came.
        test_penetration: Option<Measured<Length>>,
        /// Room that is kept clear behind it.
        clear_behind: Option<Measured<Length>>,
        /// People on foot and with wheelchairs pass beside it.
        beside_route: Option<bool>,
        /// Clear gap to the next bollard, from face to face, taped.
        gap: Option<Measured<Length>>,
        /// Least width of the vehicle that must not pass beside it.
        keeps_out: Option<Measured<Length>>,
    }
}
