//! Where the site is, and the weather and soil that the design must stand.

use crate::model::{Corrosivity, DampMorning, Skyline, SunOverYear};
use crate::{Signed, Text, WeatherFile};
use quantity::{
    Angle, HeatFlux, Length, Measured, Pressure, PressurePerDepth, Ratio, Temperature, Velocity,
};

site_words! {
    /// Surface roughness upwind of the site (ASCE 7 chapter 26).
    pub enum Exposure {
        /// Towns, suburbs, woods.
        B = "B",
        /// Open ground with scattered obstructions.
        C = "C",
        /// Flat, unobstructed shores.
        D = "D",
    }
}

site_words! {
    /// Terrain category (EN 1991-1-4 table 4.1).
    pub enum TerrainCategory {
        /// Sea or coast open to the sea.
        Category0 = "0",
        /// Lakes or flat ground without obstacles.
        CategoryI = "I",
        /// Low vegetation with scattered obstacles.
        CategoryII = "II",
        /// Villages, suburbs, permanent forest.
        CategoryIII = "III",
        /// Towns.
        CategoryIV = "IV",
    }
}

site_words! {
    /// Class of soil or rock (IBC table 1806.2).
    pub enum SoilClass {
        /// Crystalline bedrock.
        Bedrock = "crystalline bedrock",
        /// Sedimentary and foliated rock.
        Rock = "sedimentary and foliated rock",
        /// Sandy gravel and gravel.
        Gravel = "gravel",
        /// Sand, silty and clayey sand, silty and clayey gravel.
        Sand = "sand",
        /// Clay, sandy and silty clay, clayey silt, silt.
        Clay = "clay and silt",
        /// Mud, peat, fill, or nobody knows: it needs an investigation.
        Poor = "fill, peat or unknown",
    }
}

record! {
    /// Where on Earth the site is and which way it faces.
    pub struct Place {
        /// Latitude, north positive.
        latitude: Option<Measured<Angle>>,
        /// Longitude, east positive.
        longitude: Option<Measured<Angle>>,
        /// Elevation above the sea.
        elevation: Option<Signed<Length>>,
        /// Direction of true north, counter-clockwise from +x (along the closed leaf, from the latching side).
        north: Option<Measured<Angle>>,
        /// Remarks on the surroundings.
        note: Option<Text>,
        /// The skyline as seen from the gate at the height of a beam: houses, trees, hills; free when missing.
        skyline: Option<Skyline>,
    }
}

record! {
    /// Weather and soil that the design must stand.
    pub struct Climate {
        /// Basic wind speed in which the gate must stand: 3-second gust of the wind code (US), or 10-minute mean (EU).
        basic_wind_speed: Option<Measured<Velocity>>,
        /// Wind up to which the gate must still move.
        operating_wind_speed: Option<Measured<Velocity>>,
        /// Surface roughness upwind (US).
        exposure: Option<Exposure>,
        /// Terrain category (EU).
        terrain_category: Option<TerrainCategory>,
        /// Topographic factor: Kzt (US) or orography factor (EU); 1 on flat ground.
        topographic_factor: Option<Measured<Ratio>>,
        /// Hottest air of a usual year.
        hottest: Option<Measured<Temperature>>,
        /// Coldest air of a usual year.
        coldest: Option<Measured<Temperature>>,
        /// Sunshine on a surface that faces the sun on a clear day.
        sunshine: Option<Measured<HeatFlux>>,
        /// Depth to which the soil freezes.
        frost_depth: Option<Measured<Length>>,
        /// Thickness of ice on bars.
        ice: Option<Measured<Length>>,
        /// Wind that comes with the ice.
        ice_wind_speed: Option<Measured<Velocity>>,
        /// How hard the air is on metal.
        corrosivity: Option<Corrosivity>,
        /// Soil, as dug or as reported.
        soil: Option<Text>,
        /// Class of that soil, where nobody has tested it.
        soil_class: Option<SoilClass>,
        /// Pressure that the soil may carry, by a report or the building authority.
        soil_bearing: Option<Measured<Pressure>>,
        /// Sideways pressure that the soil may take for each unit of depth, by a report or the building authority.
        soil_lateral: Option<Measured<PressurePerDepth>>,
        /// Pressure of the soil for each unit that a bed sinks into it.
        soil_stiffness: Option<Measured<PressurePerDepth>>,
        /// Wind of every windy day, in which cameras and radios must stand still.
        everyday_wind_speed: Option<Measured<Velocity>>,
        /// Sunshine through the year.
        sun: Option<SunOverYear>,
        /// The air of a damp morning.
        damp_morning: Option<DampMorning>,
        /// File with a whole typical year of weather, EPW or TMY3, as seen from the site file.
        weather_file: Option<WeatherFile>,
    }
}
