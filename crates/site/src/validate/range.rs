//! Values beyond what they can be by themselves: shares, angles, slopes, weather.

use super::report::Report;
use crate::Signed;
use crate::model::Site;
use crate::origin::Origin;
use crate::problem::Code;
use quantity::{Angle, Measured, Quantity, Ratio, celsius};

/// Rounding of angles that were written in degrees, in radians.
const SLACK: f64 = 1e-9;

/// Steepest slope that is taken without a question: beyond the 12 % or so of steep driveways. Common practice.
const STEEP: f64 = 0.30;

/// Degrees Celsius beyond the records of the World Meteorological Organization, 56.7 °C and −89.2 °C. Memory.
const WEATHER: (f64, f64) = (-90.0, 60.0);

/// A share of a whole is at most the whole.
pub(super) fn share_above_one(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            share(report, &leaf.origin, "solidity", leaf.solidity);
        }
    }
    for operator in &site.operator {
        share(report, &operator.origin, "duty", operator.duty);
        share(
            report,
            &operator.origin,
            "battery_speed",
            operator.battery_speed,
        );
    }
    for enclosure in &site.enclosure {
        share(
            report,
            &enclosure.origin,
            "absorptance",
            enclosure.absorptance,
        );
    }
    for supply in &site.supply {
        share(report, &supply.origin, "efficiency", supply.efficiency);
    }
    for battery in &site.battery {
        share(report, &battery.origin, "usable", battery.usable);
        share(report, &battery.origin, "end_of_life", battery.end_of_life);
    }
}

fn share(report: &mut Report<'_>, origin: &Origin, key: &str, value: Option<Measured<Ratio>>) {
    if value.is_some_and(|value| value.nominal().base() > 1.0) {
        let what = format!("`{key}` is a share of more than the whole");
        report.wrong(Code::ShareAboveOne, origin, key, &what, "100 % or less");
    }
}

/// Angles lie within what they can be.
pub(super) fn angle_out_of_range(site: &Site, report: &mut Report<'_>) {
    if let Some(place) = &site.place {
        angle(
            report,
            &place.origin,
            "latitude",
            place.latitude,
            (-90.0, 90.0),
        );
        angle(
            report,
            &place.origin,
            "longitude",
            place.longitude,
            (-180.0, 180.0),
        );
        angle(report, &place.origin, "north", place.north, (-360.0, 360.0));
    }
    for gate in &site.gate {
        angle(
            report,
            &gate.origin,
            "travel_angle",
            gate.travel_angle,
            (0.0, 180.0),
        );
    }
    for device in &site.device {
        angle(
            report,
            &device.origin,
            "facing",
            device.facing,
            (-360.0, 360.0),
        );
        angle(
            report,
            &device.origin,
            "field_angle",
            device.field_angle,
            (0.0, 360.0),
        );
    }
    for panel in &site.solar_panel {
        angle(report, &panel.origin, "tilt", panel.tilt, (0.0, 90.0));
        angle(
            report,
            &panel.origin,
            "azimuth",
            panel.azimuth,
            (-360.0, 360.0),
        );
    }
    for segment in site.conduit.iter().flat_map(|conduit| &conduit.segment) {
        angle(report, &segment.origin, "bend", segment.bend, (0.0, 180.0));
    }
}

fn angle(
    report: &mut Report<'_>,
    origin: &Origin,
    key: &str,
    value: Option<Measured<Angle>>,
    degrees: (f64, f64),
) {
    let Some(value) = value.map(|value| value.nominal().base()) else {
        return;
    };
    if value < degrees.0.to_radians() - SLACK || value > degrees.1.to_radians() + SLACK {
        let what = format!("`{key}` is an angle that it cannot have");
        report.wrong(
            Code::AngleOutOfRange,
            origin,
            key,
            &what,
            &format!("from {}° to {}°", degrees.0, degrees.1),
        );
    }
}

/// Slopes are such as a drive can have.
pub(super) fn steep_slope(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        slope(report, &gate.origin, "slope", gate.slope);
        slope(report, &gate.origin, "cross_slope", gate.cross_slope);
    }
}

fn slope(report: &mut Report<'_>, origin: &Origin, key: &str, value: Option<Signed<Ratio>>) {
    if value.is_some_and(|value| value.nominal().base().abs() > STEEP) {
        let what = format!("`{key}` is steeper than any drive");
        report.doubtful(
            Code::SteepSlope,
            origin,
            key,
            &what,
            "rise over length, such as `\"2.5 %\"` or `\"1 in 40\"`",
        );
    }
}

/// The air is no hotter or colder than it has ever been.
pub(super) fn beyond_weather(site: &Site, report: &mut Report<'_>) {
    let Some(climate) = &site.climate else { return };
    for (key, value) in [("hottest", climate.hottest), ("coldest", climate.coldest)] {
        let Some(value) = value.map(|value| value.nominal().base()) else {
            continue;
        };
        if value < celsius(WEATHER.0).base() || value > celsius(WEATHER.1).base() {
            let what = format!("`{key}` is beyond any weather on Earth");
            report.doubtful(
                Code::BeyondWeather,
                &climate.origin,
                key,
                &what,
                "from -90 °C to 60 °C (-130 °F to 140 °F)",
            );
        }
    }
}
