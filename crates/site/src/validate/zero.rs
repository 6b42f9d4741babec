//! Values that cannot be zero.

use super::report::Report;
use crate::model::{Device, Site};
use crate::origin::Origin;
use crate::problem::Code;
use quantity::{Awg, ConductorSize, Measured, Quantity};

/// A value that may be zero.
trait MayBeZero {
    fn is_zero(&self) -> bool;
}

impl<Q: Quantity> MayBeZero for Measured<Q> {
    fn is_zero(&self) -> bool {
        self.nominal().base() <= 0.0
    }
}

impl MayBeZero for u32 {
    fn is_zero(&self) -> bool {
        *self == 0
    }
}

impl MayBeZero for ConductorSize {
    fn is_zero(&self) -> bool {
        match self {
            Self::Gauge(Awg { .. }) => false,
            Self::Metric(area) => area.base() <= 0.0,
        }
    }
}

/// Reports the keys of one record that are zero.
fn check(report: &mut Report<'_>, origin: &Origin, keys: &[(&str, Option<&dyn MayBeZero>)]) {
    for (key, value) in keys {
        if value.is_some_and(MayBeZero::is_zero) {
            report.wrong(
                Code::Zero,
                origin,
                key,
                &format!("`{key}` is zero"),
                "more than zero, or no such line while nobody knows",
            );
        }
    }
}

/// The keys of a record, each with its value.
macro_rules! not_zero {
    ($report:ident, $record:expr, $($key:ident)*) => {
        check($report, &$record.origin, &[$((stringify!($key), $record.$key.as_ref().map(|value| value as &dyn MayBeZero)),)*])
    };
}

mod making;

/// Sizes, masses, voltages and counts are more than zero.
pub(super) fn zero(site: &Site, report: &mut Report<'_>) {
    gates(site, report);
    driven(site, report);
    wiring(site, report);
    buses(site, report);
    making::ground(site, report);
    driving(site, report);
    making::prices(site, report);
    making::work(site, report);
}

fn driving(site: &Site, report: &mut Report<'_>) {
    for driver in site
        .vehicle
        .iter()
        .filter_map(|vehicle| vehicle.driver.as_ref())
    {
        not_zero!(report, driver, window);
    }
    for lane in &site.lane {
        if let Some(pedestal) = &lane.pedestal {
            not_zero!(report, pedestal, reach);
        }
        if let Some(turn_back) = &lane.turn_back {
            not_zero!(report, turn_back, diameter arm);
        }
        if let Some(mirror) = lane
            .exit_sight
            .as_ref()
            .and_then(|sight| sight.mirror.as_ref())
        {
            not_zero!(report, mirror, radius);
        }
    }
    for radio in site
        .remote
        .iter()
        .filter_map(|remote| remote.radio.as_ref())
    {
        not_zero!(report, radio, held_at antenna_height wanted seen_from);
    }
}

fn gates(site: &Site, report: &mut Report<'_>) {
    for gate in &site.gate {
        not_zero!(report, gate, clear_opening clear_height wanted_opening_time run_timer);
        for leaf in &gate.leaf {
            not_zero!(report, leaf, length height thickness mass yield_strength);
            for member in &leaf.member {
                not_zero!(report, member, count length mass_per_length width mass_per_area);
            }
        }
        for hinges in gate.leaf.iter().filter_map(|leaf| leaf.hinges.as_ref()) {
            not_zero!(report, hinges, count spacing pin_diameter rated_load rated_side_load rated_cycles);
        }
        if let Some(wheels) = &gate.wheels {
            not_zero!(report, wheels, diameter axle_diameter count rated_load rated_uplift spacing tread_width dynamic_rating rated_cycles);
        }
        if let Some(guide) = &gate.guide {
            not_zero!(report, guide, count height rated_load);
        }
        if let Some(motion) = &gate.motion {
            not_zero!(report, motion, cruise_speed cruise_turning_speed acceleration deceleration creep_speed stopping_deceleration jerk slow_down_distance);
        }
        if let Some(balance) = &gate.balance {
            not_zero!(report, balance, mass radius torque_per_turn drum_radius stiffness hook_radius anchor_depth count rope_strength rated_cycles);
        }
        for stop in &gate.stop {
            not_zero!(report, stop, rated_force stiffness);
        }
        for post in &gate.post {
            not_zero!(report, post, height width yield_strength);
            if let Some(pillar) = &post.pillar {
                not_zero!(report, pillar, length width mass);
            }
        }
        for thing in &gate.nearby {
            not_zero!(report, thing, height);
        }
    }
}

fn driven(site: &Site, report: &mut Report<'_>) {
    for operator in &site.operator {
        not_zero!(report, operator, rated_force rated_torque starting_force starting_torque obstruction_force lowest_obstruction_force cycles_per_hour rated_cycles hand_gear rated_mass rated_length voltage least_voltage running_current starting_current duty battery_speed);
    }
    for mounting in site
        .operator
        .iter()
        .filter_map(|operator| operator.mounting.as_ref())
    {
        not_zero!(report, mounting, front_along shortest longest crank link);
    }
    for device in &site.device {
        if let Some(optics) = &device.optics {
            not_zero!(report, optics, gain gain_range);
        }
        if let Some(supervised) = &device.supervised_loop {
            not_zero!(report, supervised, series parallel insulation short_below closed_below open_below);
        }
        if let Some(speech) = &device.speech {
            not_zero!(report, speech, distance speaker_decibels voice_decibels);
        }
        if let Some(port) = &device.data_port {
            not_zero!(report, port, unit_load rise_time);
        }
        if let Some(link) = &device.link {
            not_zero!(report, link, reach cell_life);
        }
        if let Some(laid) = &device.loop_setup {
            not_zero!(report, laid, wire wire_outside core_outside twist sensitivity frequency measured_inductance);
        }
        if let Some(detector) = &device.loop_detector {
            not_zero!(report, detector, greatest_inductance capacitance);
        }
        if let Some(mount) = &device.field_mount {
            not_zero!(report, mount, ends);
        }
        on_the_network(device, report);
        if let Some(lens) = &device.lens {
            not_zero!(report, lens, sensor_width pixels_across pixels_down focal_length shutter infrared_reach infrared_angle);
        }
        if let Some(picture) = &device.picture {
            not_zero!(report, picture, plate_width plate_pixels);
        }
        not_zero!(report, device, range field_angle stiffness hard_stiffness voltage least_voltage greatest_voltage port_voltage ports turns frequency eye_height);
    }
    let fronts = (site.device.iter().map(|it| &it.front))
        .chain(site.supply.iter().map(|it| &it.front))
        .chain(site.battery.iter().map(|it| &it.front));
    for front in fronts.flatten() {
        not_zero!(report, front, width height);
    }
    for enclosure in &site.enclosure {
        not_zero!(report, enclosure, width height depth heat_transfer cooling_area);
        for mounted in &enclosure.mounted {
            not_zero!(report, mounted, count width height);
        }
        if let Some(layout) = &enclosure.layout {
            not_zero!(report, layout, rail_length mass rated_mass);
        }
        if let Some(panel) = &enclosure.panel {
            not_zero!(report, panel, width height);
            for rail in &panel.rails {
                not_zero!(report, rail, length);
            }
            for loose in &panel.loose {
                not_zero!(report, loose, width height);
            }
        }
    }
}

fn wiring(site: &Site, report: &mut Report<'_>) {
    for supply in &site.supply {
        not_zero!(report, supply, voltage rated_current efficiency highest_voltage peak_current fault_current least_input);
        not_zero!(report, supply, voltage rated_current efficiency);
        if let Some(circuit) = &supply.circuit {
            not_zero!(report, circuit, breaker bundled ampacity protective to_earth panel_loop measured_loop);
        }
        if let Some(intake) = &supply.intake {
            not_zero!(report, intake, least_voltage power_factor);
        }
    }
    for battery in &site.battery {
        not_zero!(report, battery, voltage capacity usable end_of_life end_voltage highest_voltage inner_resistance fault_current);
        not_zero!(report, battery, voltage capacity usable end_of_life);
        if let Some(charging) = &battery.charging {
            not_zero!(report, charging, current efficiency wanted_recharge);
        }
    }
    for residual in site
        .supply
        .iter()
        .filter_map(|supply| supply.circuit.as_ref()?.residual.as_ref())
    {
        not_zero!(report, residual, rating trip_time);
    }
    for surge in site
        .device
        .iter()
        .filter_map(|device| device.surge.as_ref())
    {
        not_zero!(report, surge, surge withstand passes);
    }
    for panel in &site.solar_panel {
        not_zero!(report, panel, power open_voltage);
        if let Some(sheet) = &panel.sheet {
            not_zero!(report, sheet, short_current series_fuse);
        }
    }
    for fuse in &site.fuse {
        not_zero!(report, fuse, rated_current rated_voltage breaking_current opens_at opens_within resistance);
    }
    for cable in &site.cable {
        not_zero!(report, cable, price_length cores size cores_per_pole length diameter mass_per_length greatest_tension greatest_side_load);
        making::pulled(cable, report);
    }
    for conduit in &site.conduit {
        not_zero!(report, conduit, bore);
        if let Some(proved) = &conduit.proved {
            not_zero!(report, proved, mandrel taped);
        }
        for segment in &conduit.segment {
            not_zero!(report, segment, radius);
        }
    }
    for digging in &site.digging {
        not_zero!(report, digging, price_length);
    }
    for pit in site.cover.iter().filter_map(|cover| cover.pit.as_ref()) {
        not_zero!(report, pit, length width depth);
    }
}

fn buses(site: &Site, report: &mut Report<'_>) {
    for bus in &site.bus {
        not_zero!(report, bus, bit_rate impedance velocity bias_voltage);
        for node in &bus.node {
            not_zero!(report, node, termination bias);
        }
    }
}

fn on_the_network(device: &Device, report: &mut Report<'_>) {
    if let Some(network) = &device.network {
        not_zero!(report, network, port radio_rate time_every);
    }
    if let Some(ethernet) = &device.ethernet {
        not_zero!(report, ethernet, speed fiber_speed);
    }
    if let Some(stream) = &device.stream {
        not_zero!(report, stream, peak busy);
    }
    if let Some(recorder) = &device.recorder {
        not_zero!(report, recorder, storage wanted);
    }
    if let Some(clock) = &device.clock {
        not_zero!(report, clock, drift);
    }
}

fn on_foot(site: &Site, report: &mut Report<'_>) {
    for walk_gate in &site.walk_gate {
        not_zero!(report, walk_gate, clear_width closing_time);
    }
    for route in &site.foot_route {
        not_zero!(report, route, width);
    }
    for release in site.gate.iter().flat_map(|gate| &gate.release) {
        not_zero!(report, release, time);
    }
    if let Some(fire) = &site.fire {
        not_zero!(report, fire, clear_width clear_height turn_outside);
    }
}
