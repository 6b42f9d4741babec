//! Values of making that cannot be zero: what is dug, cut, pulled, labeled, priced and worked.

use super::super::report::Report;
use super::{MayBeZero, check};
use crate::model::{Cable, Site};

pub(super) fn work(site: &Site, report: &mut Report<'_>) {
    if let Some(work) = &site.work {
        not_zero!(report, work, hours_a_day);
    }
    for task in &site.task {
        not_zero!(report, task, hours helper_hours check_in);
        for line in task.curing.iter().flat_map(|curing| &curing.sheet) {
            not_zero!(report, line, cure_time);
        }
    }
    for zone in &site.work_zone {
        not_zero!(report, zone, clear_width);
    }
}

pub(super) fn prices(site: &Site, report: &mut Report<'_>) {
    if let Some(access) = &site.access {
        not_zero!(report, access, width height bearing);
    }
    let named = site.site.price_book.as_ref();
    let Some(book) = named.and_then(|named| named.book.as_ref()) else {
        return;
    };
    if let Some(rates) = &book.rates {
        not_zero!(report, rates, driving_distance);
    }
    for item in &book.item {
        not_zero!(report, item, pack length volume);
    }
    for tool in &book.tool {
        not_zero!(report, tool, diameter greatest_torque);
    }
    for worked in &book.worked {
        not_zero!(report, worked, planned);
    }
    labeled(site, report);
    cut(site, report);
}

fn cut(site: &Site, report: &mut Report<'_>) {
    let bars = site.bar_stock.iter().flat_map(|stock| &stock.bar);
    let reels = site.cable_reels.iter().flat_map(|reels| &reels.reel);
    for length in bars.chain(reels) {
        not_zero!(report, length, length);
    }
    for stock in &site.bar_stock {
        not_zero!(report, stock, longest_carried);
        for piece in &stock.piece {
            not_zero!(report, piece, length count);
        }
    }
}

/// What a cable is bent to, fitted with and made for.
pub(super) fn pulled(cable: &Cable, report: &mut Report<'_>) {
    if let Some(jacket) = &cable.jacket {
        not_zero!(report, jacket, radius_pulled radius_fixed);
    }
    if let Some(plug) = &cable.plug {
        not_zero!(report, plug, width height length);
    }
    if let Some(flex) = &cable.flex {
        not_zero!(report, flex, cycles radius);
    }
    if let Some(moving) = &cable.moving {
        not_zero!(report, moving, radius years);
    }
}

pub(super) fn ground(site: &Site, report: &mut Report<'_>) {
    if let Some(climate) = &site.climate {
        not_zero!(report, climate, basic_wind_speed topographic_factor soil_bearing soil_lateral soil_stiffness everyday_wind_speed);
    }
    for electrode in &site.electrode {
        not_zero!(report, electrode, rods length diameter resistivity resistance wanted);
    }
    for foundation in &site.foundation {
        not_zero!(report, foundation, length width diameter depth strength aggregate cover bar_strength bank_height);
        for anchor in &foundation.anchor {
            not_zero!(report, anchor, count rows diameter pitch embedment edge_distance spacing row_spacing bolt_circle plate_length plate_width plate_thickness plate_strength plate_spacing plate_row_spacing plate_hole tensile_strength yield_strength category bearing_area hook_length bond_cracked bond_uncracked pull_out breakout_coefficient hole_diameter hole_depth sheet_depth sheet_diameter torque cartridge);
        }
        for stub_up in &foundation.stub_up {
            not_zero!(report, stub_up, diameter);
        }
    }
    for bollard in &site.bollard {
        not_zero!(report, bollard, diameter yield_strength height vehicle_mass vehicle_speed give strike_height keeps_out);
    }
    for lift in &site.lift {
        not_zero!(report, lift, mass pace);
    }
    for sign in &site.sign {
        not_zero!(report, sign, letter_height read_from);
    }
    for interlock in site.gate.iter().flat_map(|gate| &gate.interlock) {
        not_zero!(report, interlock, space);
    }
    for lane in &site.lane {
        not_zero!(report, lane, width);
        if let Some(leaving) = &lane.leaving {
            not_zero!(report, leaving, seen_from braking);
        }
    }
    for vehicle in &site.vehicle {
        not_zero!(report, vehicle, length width height mass wheelbase turning_radius towing_length drawbar_height);
        if let Some(axles) = &vehicle.axles {
            not_zero!(report, axles, over_tires drawbar trailer_axle widest_angle underside front_underside rear_underside trailer_underside);
        }
    }
    super::on_foot(site, report);
}

fn labeled(site: &Site, report: &mut Report<'_>) {
    for terminals in &site.terminals {
        not_zero!(report, terminals, count smallest largest largest_in_ferrule wires strip tightening);
    }
    for core in site.wiring.iter().flat_map(|wiring| &wiring.core) {
        not_zero!(report, core, wire);
    }
    let Some(labels) = &site.labels else { return };
    not_zero!(report, labels, letter_height read_from next_wire);
    if let Some(sheet) = &labels.sheet {
        not_zero!(report, sheet, width height label_width label_height across down);
    }
    if let Some(strip) = &labels.strip {
        not_zero!(report, strip, width label_length);
    }
}
