//! Boxes that shelter equipment.

use crate::model::{
    BoxInSun, ClimateControl, EnclosureDoor, EnclosureEntry, EnclosureLayout, InsideApart,
    MountingPanel, Tightness, WorkingSpace,
};
use crate::{Id, Position, Text};
use quantity::{Area, HeatTransfer, Length, Measured, Power, Ratio, Temperature};

record! {
    /// An enclosure.
    pub struct Enclosure {
        /// Name, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// Where it is.
        at: Option<Position>,
        /// Outside width.
        width: Option<Measured<Length>>,
        /// Outside height.
        height: Option<Measured<Length>>,
        /// Outside depth.
        depth: Option<Measured<Length>>,
        /// Rating against weather, as on its plate: `"NEMA 4X"`, `"IP66"`.
        rating: Option<Text>,
        /// Heat flow through each unit of its surface for each degree.
        heat_transfer: Option<Measured<HeatTransfer>>,
        /// Surface that gives off heat, when it is not that of the whole box.
        cooling_area: Option<Measured<Area>>,
        /// Surface that the sun strikes at once.
        sunlit_area: Option<Measured<Area>>,
        /// Share of the sunshine that its finish takes up.
        absorptance: Option<Measured<Ratio>>,
        /// Power of its heater.
        heater: Option<Measured<Power>>,
        /// Air temperature inside that the equipment stands, where no device says less.
        hottest_inside: Option<Measured<Temperature>>,
        /// What else is mounted in it, beside the devices, supplies and batteries that name it.
        mounted: Vec<Mounted>,
        /// Room before it for whoever works in it.
        working_space: Option<WorkingSpace>,
        /// Remarks.
        note: Option<Text>,
        /// How it is kept warm enough, and from getting too warm.
        climate_control: Option<ClimateControl>,
        /// How it is kept dry and closed to animals.
        tightness: Option<Tightness>,
        /// How full it is, and what carries it.
        layout: Option<EnclosureLayout>,
        /// Its door.
        door: Option<EnclosureDoor>,
        /// What is kept apart from what in it.
        apart: Option<InsideApart>,
        /// Its holes, each sort with what closes it.
        entry: Vec<EnclosureEntry>,
        /// The panel on which everything in it is mounted.
        panel: Option<MountingPanel>,
        /// Its faces in the sun.
        in_sun: Option<BoxInSun>,
    }
}

record! {
    /// Something mounted in an enclosure that has no entry of its own.
    pub struct Mounted {
        /// What it is.
        what: Text,
        /// How many.
        count: Option<u32>,
        /// Heat that one gives off.
        heat: Option<Measured<Power>>,
        /// Width along the mounting rail of one.
        width: Option<Measured<Length>>,
        /// Height of one as it is mounted.
        height: Option<Measured<Length>>,
    }
}
