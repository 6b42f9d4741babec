//! How hard the air presses at a height, by the code of the site.

use super::load::Wind;
use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::wind::{
    Asce716VelocityPressure, Asce722VelocityPressure, En1991PeakVelocityPressure, Exposure, Terrain,
};
use quantity::{Length, Pressure, Quantity as _, Ratio, Velocity, Word as _};
use site::{CodeBasis, Site, WindCode};

/// A wind at one height.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Air {
    /// Speed of the wind, as the code counts it.
    pub(crate) speed: Velocity,
    /// Velocity pressure, gusts and the code's directionality included.
    pub(crate) pressure: Pressure,
}

/// Directionality factor of walls, signs and posts in ASCE 7.
const ANY_DIRECTION: f64 = 0.85;

/// The air at a height above the ground.
pub(crate) fn air_at<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    wind: Wind,
    height: Result<Length, Halt>,
) -> Result<Air, Halt> {
    let speed = match wind {
        Wind::Design => read!(asking, site.climate?.basic_wind_speed),
        Wind::Operating => read!(asking, site.climate?.operating_wind_speed),
        Wind::WithIce => read!(asking, site.climate?.ice_wind_speed),
        Wind::Everyday => read!(asking, site.climate?.everyday_wind_speed),
    };
    let topography = read!(asking, site.climate?.topographic_factor);
    let facts = (speed, topography, height);
    let pressure = match site.site.code_basis {
        CodeBasis::Us => in_the_us(asking, site, wind, facts),
        CodeBasis::Eu => in_the_eu(asking, site, facts),
    }?;
    Ok(Air {
        speed: speed?,
        pressure,
    })
}

/// Speed, topography and height, each there or not.
type Facts = (
    Result<Velocity, Halt>,
    Result<Ratio, Halt>,
    Result<Length, Halt>,
);

fn in_the_us<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    wind: Wind,
    (speed, topography, height): Facts,
) -> Result<Pressure, Halt> {
    let about = &site.site;
    let code = pick!(asking, about.wind_code);
    let exposure = pick!(asking, site.climate?.exposure);
    let (basic_speed, topographic_factor, height) = (speed?, topography?, height?);
    let (code, exposure) = (code?, exposure?);
    let Some(exposure) = Exposure::from_word(exposure.word()) else {
        return asking.refuse("this exposure has no figures");
    };
    let directionality_factor = Ratio::from_base(match wind {
        Wind::Design | Wind::WithIce => ANY_DIRECTION,
        Wind::Operating | Wind::Everyday => 1.0,
    });
    let ground_elevation = elevation(asking, site);
    match code {
        WindCode::Asce716 => asking
            .work(&Asce716VelocityPressure {
                basic_speed,
                exposure,
                height,
                topographic_factor,
                directionality_factor,
                ground_elevation,
            })
            .map(|gives| gives.pressure),
        WindCode::Asce722 => asking
            .work(&Asce722VelocityPressure {
                basic_speed,
                exposure,
                height,
                topographic_factor,
                directionality_factor,
                ground_elevation,
            })
            .map(|gives| gives.directed_pressure),
        WindCode::En1991 => {
            asking.refuse("the wind code is European and the code basis is that of the United States; name the edition of ASCE 7 adopted here")
        }
    }
}

/// Height of the ground above the sea; zero, the safe side, where it is not written down.
fn elevation<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Length {
    site.place
        .as_ref()
        .and_then(|place| {
            asking.read_if_there(&place.origin, "elevation", place.elevation.as_ref())
        })
        .unwrap_or(Length::from_base(0.0))
}

fn in_the_eu<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (speed, topography, height): Facts,
) -> Result<Pressure, Halt> {
    let terrain = pick!(asking, site.climate?.terrain_category);
    let (speed, topography, height, terrain) = (speed?, topography?, height?, terrain?);
    let Some(terrain) = Terrain::from_word(terrain.word()) else {
        return asking.refuse("this terrain category has no figures");
    };
    let one = Ratio::from_base(1.0);
    let peak = asking.work(&En1991PeakVelocityPressure {
        fundamental_speed: speed,
        direction_factor: one,
        season_factor: one,
        probability_factor: one,
        terrain,
        orography_factor: topography,
        height,
    })?;
    Ok(peak.pressure)
}
