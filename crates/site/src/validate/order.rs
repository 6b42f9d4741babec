//! Pairs of values that must be in order: cold and hot, least and greatest, before and after.

use super::report::{Report, above};
use crate::model::Site;
use crate::origin::Origin;
use crate::problem::Code;
use quantity::{Current, Measured, Temperature, Voltage};

/// The coldest is not hotter than the hottest.
pub(super) fn cold_above_hot(site: &Site, report: &mut Report<'_>) {
    if let Some(climate) = &site.climate {
        cold_hot(report, &climate.origin, climate.coldest, climate.hottest);
    }
    for operator in &site.operator {
        cold_hot(report, &operator.origin, operator.coldest, operator.hottest);
    }
    for device in &site.device {
        cold_hot(report, &device.origin, device.coldest, device.hottest);
    }
    for supply in &site.supply {
        cold_hot(report, &supply.origin, supply.coldest, supply.hottest);
    }
}

fn cold_hot(
    report: &mut Report<'_>,
    origin: &Origin,
    coldest: Option<Measured<Temperature>>,
    hottest: Option<Measured<Temperature>>,
) {
    if above(coldest, hottest) {
        let what = "`coldest` is hotter than `hottest`";
        report.wrong(
            Code::ColdAboveHot,
            origin,
            "coldest",
            what,
            "a temperature below `hottest`; watch for a lost minus sign",
        );
    }
}

/// The least voltage is not above the voltage, nor the voltage above the greatest.
pub(super) fn voltage_out_of_order(site: &Site, report: &mut Report<'_>) {
    for operator in &site.operator {
        least_voltage(
            report,
            &operator.origin,
            operator.least_voltage,
            operator.voltage,
        );
    }
    for device in &site.device {
        least_voltage(report, &device.origin, device.least_voltage, device.voltage);
        if above(device.voltage, device.greatest_voltage)
            || above(device.least_voltage, device.greatest_voltage)
        {
            let what = "`greatest_voltage` is below the other voltages";
            let expected = "the greatest voltage that the device stands";
            report.wrong(
                Code::VoltageOutOfOrder,
                &device.origin,
                "greatest_voltage",
                what,
                expected,
            );
        }
    }
}

fn least_voltage(
    report: &mut Report<'_>,
    origin: &Origin,
    least: Option<Measured<Voltage>>,
    voltage: Option<Measured<Voltage>>,
) {
    if above(least, voltage) {
        let what = "`least_voltage` is above `voltage`";
        report.wrong(
            Code::VoltageOutOfOrder,
            origin,
            "least_voltage",
            what,
            "a voltage below the one on the nameplate",
        );
    }
}

/// A short current is at least the lasting one.
pub(super) fn peak_below_lasting(site: &Site, report: &mut Report<'_>) {
    for operator in &site.operator {
        let values = (operator.starting_current, operator.running_current);
        peak(report, &operator.origin, "starting_current", values);
    }
    for device in &site.device {
        peak(
            report,
            &device.origin,
            "peak_current",
            (device.peak_current, device.current),
        );
    }
}

type Currents = (Option<Measured<Current>>, Option<Measured<Current>>);

fn peak(report: &mut Report<'_>, origin: &Origin, key: &str, (peak, lasting): Currents) {
    if above(lasting, peak) {
        let what = format!("`{key}` is below the lasting current");
        report.doubtful(
            Code::PeakBelowLasting,
            origin,
            key,
            &what,
            "at least the current in use",
        );
    }
}

/// An operator was made before it was installed.
pub(super) fn made_after_installed(site: &Site, report: &mut Report<'_>) {
    let Some(installed) = site.site.installed else {
        return;
    };
    for operator in &site.operator {
        if operator.made.is_some_and(|made| made > installed) {
            let what = "the operator was made after it was installed";
            let expected = format!("a day before the installation on {installed}");
            report.doubtful(
                Code::MadeAfterInstalled,
                &operator.origin,
                "made",
                what,
                &expected,
            );
        }
    }
}

/// An opening ends below the top of the thing that it is in.
pub(super) fn opening_above_top(site: &Site, report: &mut Report<'_>) {
    for thing in site.gate.iter().flat_map(|gate| &gate.nearby) {
        if above(thing.opening_height, thing.height) {
            let what = "`opening_height` is above the top";
            report.wrong(
                Code::OpeningAboveTop,
                &thing.origin,
                "opening_height",
                what,
                "at most `height`",
            );
        }
    }
}
