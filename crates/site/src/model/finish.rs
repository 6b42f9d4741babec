//! How metal is kept from rust.

use crate::model::Material;
use quantity::{Length, Measured, Time};

site_words! {
    /// How hard the air is on metal (ISO 9223).
    pub enum Corrosivity {
        /// Very low.
        C1 = "C1",
        /// Low.
        C2 = "C2",
        /// Medium.
        C3 = "C3",
        /// High.
        C4 = "C4",
        /// Very high.
        C5 = "C5",
        /// Extreme.
        CX = "CX",
    }
}

site_words! {
    /// What covers the metal.
    pub enum Coating {
        /// Zinc from the bath.
        HotDipZinc = "hot-dip zinc",
        /// Zinc from the bath, and paint or powder over it.
        ZincAndPaint = "zinc and paint",
        /// Paint or powder alone.
        Paint = "paint",
        /// A metal that needs none.
        None = "none",
    }
}

record! {
    /// How a part is kept from rust.
    pub struct Finish {
        /// What covers the metal.
        coating: Option<Coating>,
        /// Thickness of its zinc.
        zinc: Option<Measured<Length>>,
        /// Years until the first paint, as the owner wants them.
        wanted_life: Option<Measured<Time>>,
        /// Another metal that it touches where it is wet.
        touches: Option<Material>,
        /// A sleeve or a pad keeps the two apart.
        insulated: Option<bool>,
        /// Cut and drilled edges were coated again.
        edges_coated: Option<bool>,
    }
}
