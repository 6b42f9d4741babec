//! From a site to what its cameras see and where the sun stands in whatever looks.

mod level;
mod low_sun;
mod lowered;
mod shown;
mod standing;
mod words;

pub(crate) use level::finest;
pub use level::purposes;
pub(crate) use low_sun::{Compass, compass, year_of};
pub(crate) use lowered::{Wanted, camera, picture, wanted};
pub use shown::{LeafPlace, ShownCamera, ShownTarget, ShownThing, cameras};
pub(crate) use standing::{PLACES, Standing, fixed, leaf_at, parked};
pub use words::seasons;
pub(crate) use words::worst;
