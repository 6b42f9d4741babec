//! The compass of a site, and a year of low sun in something that looks.

use crate::asking::{Asking, End, Wants};
use crate::outcome::Halt;
use quantity::{Angle, Length, Quantity as _};
use sim::glare::{GlareYear, Look, Opening, SunPath, glare_year};
use sim::sun::{Skyline, SunPlace};
use site::Site;
use std::sync::Arc;

/// Where on Earth a site is and how it is turned.
pub(crate) struct Compass {
    place: SunPlace,
    skyline: Skyline,
    /// True north, counter-clockwise from +x.
    north: Angle,
    /// How well that is known.
    pub(crate) north_off: Angle,
    /// The site says nothing of its skyline: it counts as free.
    pub(crate) free: bool,
}

/// Reads the compass of a site.
pub(crate) fn compass<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Compass, Halt> {
    let Some(place) = &site.place else {
        return asking.lack(
            &site.origin,
            "place",
            Wants::Table("[place]\nlatitude = \"41°\"\nlongitude = \"-71°\"\nnorth = \"118°\""),
        );
    };
    let read = |asking: &mut Asking<'s>, key, value: Option<&quantity::Measured<Angle>>| {
        asking.read_at((&place.origin, key), value, End::Nominal)
    };
    let latitude = read(asking, "latitude", place.latitude.as_ref());
    let longitude = read(asking, "longitude", place.longitude.as_ref());
    let north = read(asking, "north", place.north.as_ref());
    let skyline = match &place.skyline {
        None => Ok(Skyline::default()),
        Some(line) if line.toward.len() == line.up.len() => {
            let corners = line.toward.iter().zip(&line.up);
            let corners = corners.map(|(toward, up)| (toward.nominal(), up.low()));
            asking.in_reach(Skyline::new(corners))
        }
        Some(line) => asking.lack(
            &line.origin,
            "up",
            Wants::Written("one height for each direction"),
        ),
    };
    let (latitude, longitude, north) = (latitude?, longitude?, north?);
    let off = place
        .north
        .as_ref()
        .map(|north| north.high() - north.nominal());
    Ok(Compass {
        place: asking.in_reach(SunPlace::new(latitude, longitude))?,
        skyline: skyline?,
        north,
        north_off: off.unwrap_or(Angle::from_base(0.0)),
        free: place.skyline.is_none(),
    })
}

impl Compass {
    /// A look in a direction, counter-clockwise from +x and up.
    pub(crate) fn look(&self, facing: Angle, up: Angle, opening: Opening) -> Look {
        Look {
            azimuth: self.north - facing,
            elevation: up,
            opening,
            hood: None,
        }
    }

    /// A look from one place to another.
    pub(crate) fn look_along(&self, from: [Length; 3], to: [Length; 3], opening: Opening) -> Look {
        let [x, y, z] = [0, 1, 2].map(|at| (to[at] - from[at]).base());
        let facing = Angle::from_base(y.atan2(x));
        self.look(facing, Angle::from_base(z.atan2(x.hypot(y))), opening)
    }
}

/// The years of several looks, and the hours by which the clock of the zone is ahead of universal time.
pub(crate) fn year_of(
    asking: &mut Asking<'_>,
    compass: &Compass,
    looks: &[Look],
) -> Result<(Vec<GlareYear>, i32), Halt> {
    let place = compass.place;
    let path = asking.simulate(
        |known| &known.sun_paths,
        &place,
        || SunPath::of(&place).map(Arc::new),
    );
    let path = asking.in_reach(path)?;
    let looked = (&place, looks, &compass.skyline);
    let years = asking.simulate(
        |known| &known.glare_years,
        &looked,
        || glare_year(&path, looks, &compass.skyline),
    );
    Ok((asking.in_reach(years)?, path.zone()))
}
