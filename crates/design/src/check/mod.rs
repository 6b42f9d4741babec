//! The checks: each answers one question for everything on the site that it concerns.

pub(crate) mod drive;
pub(crate) mod found;
pub(crate) mod plane;
pub(crate) mod round;
pub(crate) mod rules;
#[cfg(test)]
pub(crate) mod testing;
#[cfg(test)]
mod tests;

pub(crate) mod anchor;
pub(crate) mod bollard;
pub(crate) mod bus;
mod camera;
pub(crate) mod control;
mod detector;
mod earth;
mod egress;
pub(crate) mod enclosure;
pub(crate) mod fire;
mod foot;
pub(crate) mod force;
mod hazard;
mod intercom;
mod join;
mod keep;
pub(crate) mod lane;
pub(crate) mod leaf;
mod lifting;
pub(crate) mod mains;
mod make;
pub(crate) mod motion;
mod network;
pub(crate) mod power;
pub(crate) mod protect;
pub(crate) mod pull;
pub(crate) mod radio;
mod record;
mod release;
pub(crate) mod route;
mod sign;
pub(crate) mod solar;
mod standby;
pub(crate) mod stop;
pub(crate) mod structure;
mod sun;
mod surge;
pub(crate) mod survey;
mod vehicle;
pub(crate) mod walk;
pub(crate) mod wind;
pub(crate) mod work;

pub(crate) use round::Round;

use crate::asking::Asking;
use crate::outcome::Halt;
use formula::{Evidence, Source};
use site::{CodeBasis, Device, Gate, Site};

/// A check: which question it answers, what it leaves open, and the function that asks.
pub(crate) struct Check {
    /// Id of the question.
    pub(crate) question: &'static str,
    /// Code bases under which it is asked: those of the question.
    pub(crate) codes: &'static [CodeBasis],
    /// What its answer leaves open; empty where it answers in full.
    pub(crate) leaves_open: &'static str,
    /// What the site must have for there to be anything to ask: `a cable in a conduit`.
    pub(crate) concerns: &'static str,
    /// Asks it of each thing concerned.
    pub(crate) ask: for<'s> fn(&'s Site, &mut Round<'s, '_>),
}

/// Figures held against what a maker promises.
static DATA_SHEET: Source = Source {
    work: "ratings and limits on the data sheets of the parts",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site and its parts files give them",
};

/// Distances that add up.
static GEOMETRY: Source = Source {
    work: "lengths along the gate line",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as taped on site",
};

/// Asked under both code bases.
const BOTH: &[CodeBasis] = &[CodeBasis::Us, CodeBasis::Eu];

/// Every check that asks the site itself, in the order of the questions.
pub(crate) const CHECKS: &[Check] = &[
    survey::authority::CHECK,
    survey::use_and_people::CHECK,
    survey::old_gate_brought_up::CHECK,
    survey::inside_boundary::CHECK,
    survey::buried_services::CHECK,
    survey::water_and_snow::CHECK,
    wind::pressure::CHECK,
    leaf::rated_mass::CHECK,
    leaf::cladding::CHECK,
    leaf::covers::CHECK,
    leaf::strength::CHECK,
    leaf::sag::CHECK,
    leaf::rollers::CHECK,
    leaf::carriers::CHECK,
    leaf::growth::CHECK,
    wind::stands_everywhere::CHECK,
    wind::still_moves::CHECK,
    wind::holds_when_off::CHECK,
    wind::ice_on_leaf::CHECK,
    force::slide::CHECK,
    force::swing_torque::CHECK,
    force::linear_geometry::CHECK,
    force::articulated_geometry::CHECK,
    force::underground_drive::CHECK,
    force::balance::CHECK,
    force::by_hand::CHECK,
    force::cold_start::CHECK,
    force::drive_parts::CHECK,
    force::lock_preload::CHECK,
    motion::travel_time::CHECK,
    motion::edge_speed::CHECK,
    motion::stopping::CHECK,
    motion::reversal::CHECK,
    motion::slowdown_setpoint::CHECK,
    motion::duty::CHECK,
    motion::track_true::CHECK,
    stop::positive::CHECK,
    stop::stays::CHECK,
    stop::fall::CHECK,
    stop::gravity_run::CHECK,
    stop::rope::CHECK,
    motion::two_leaves::CHECK,
    structure::post_strength::CHECK,
    structure::post_sway::CHECK,
    structure::embedment::CHECK,
    structure::existing_pillar::CHECK,
    structure::pad::CHECK,
    structure::track_bed::CHECK,
    structure::mast::CHECK,
    anchor::plate_forces::CHECK,
    anchor::tension::CHECK,
    anchor::shear_at_edge::CHECK,
    anchor::fits::CHECK,
    anchor::concrete_known::CHECK,
    anchor::hole_and_cure::CHECK,
    bollard::where_placed::CHECK,
    bollard::energy::CHECK,
    bollard::gap_width::CHECK,
    lifting::each_task::CHECK,
    lifting::propped::CHECK,
    lifting::lone_check_in::CHECK,
    hazard::leading_edge::CHECK,
    hazard::trailing_edge::CHECK,
    hazard::draw_in::CHECK,
    hazard::reach_through::CHECK,
    hazard::hinge_side::CHECK,
    hazard::behind_open::CHECK,
    hazard::under_edge::CHECK,
    hazard::rollers_rack::CHECK,
    hazard::arm_and_counterweight::CHECK,
    hazard::falling_arm::CHECK,
    hazard::lift_carry::CHECK,
    hazard::protrusions::CHECK,
    protect::count::CHECK,
    protect::level_eu::CHECK,
    protect::every_zone::CHECK,
    protect::common_cause::CHECK,
    protect::monitored::CHECK,
    protect::right_kind::CHECK,
    protect::beam_heights::CHECK,
    protect::person_between::CHECK,
    protect::minimum_distance::CHECK,
    protect::edge_travel::CHECK,
    protect::edge_signal::CHECK,
    protect::force_limits::CHECK,
    protect::inherent_set::CHECK,
    protect::sense_window::CHECK,
    protect::after_hit::CHECK,
    protect::hold_to_run::CHECK,
    protect::beam_margin::CHECK,
    protect::trapped_freed::CHECK,
    control::out_of_reach_of_leaf::CHECK,
    control::in_sight::CHECK,
    control::remote_out_of_sight::CHECK,
    control::guarded::CHECK,
    control::priority::CHECK,
    control::power_return::CHECK,
    control::auto_close::CHECK,
    control::wire_cut::CHECK,
    control::interlock::CHECK,
    sign::both_sides::CHECK,
    walk::anyone_hit::CHECK,
    walk::vehicle_hit::CHECK,
    walk::device_lost::CHECK,
    walk::response::CHECK,
    foot::way::CHECK,
    foot::accessible::CHECK,
    foot::both_senses::CHECK,
    egress::way_out::CHECK,
    egress::hand_release::CHECK,
    fire::clear_way::CHECK,
    fire::opens::CHECK,
    fire::carries_engine::CHECK,
    lane::reach::CHECK,
    lane::turn_back::CHECK,
    lane::sight::CHECK,
    lane::meeting::CHECK,
    lane::seen_at_night::CHECK,
    detector::held_open::CHECK,
    detector::loop_inductance::CHECK,
    detector::loop_sees_all::CHECK,
    detector::loop_near_metal::CHECK,
    detector::field_side::CHECK,
    detector::detector_fails::CHECK,
    lane::swept_path::CHECK,
    vehicle::exit_in_time::CHECK,
    vehicle::tailgate::CHECK,
    lane::queue::CHECK,
    power::voltage::CHECK,
    power::release::CHECK,
    power::overvoltage::CHECK,
    power::capacity::CHECK,
    power::inrush::CHECK,
    power::fuse::CHECK,
    power::branches::CHECK,
    power::coil::CHECK,
    power::shared_return::CHECK,
    power::gauge::CHECK,
    standby::hours_and_moves::CHECK,
    standby::recharge::CHECK,
    standby::last_action::CHECK,
    standby::far_end::CHECK,
    solar::year::CHECK,
    solar::cold_voltage::CHECK,
    mains::source::CHECK,
    mains::circuit::CHECK,
    mains::earth_fault::CHECK,
    mains::disconnect::CHECK,
    mains::working_space::CHECK,
    mains::voltage_at_start::CHECK,
    earth::electrode::CHECK,
    earth::bonding::CHECK,
    earth::fences_and_lines::CHECK,
    surge::every_line::CHECK,
    surge::lead_and_order::CHECK,
    surge::between_buildings::CHECK,
    enclosure::hot::CHECK,
    enclosure::cold::CHECK,
    enclosure::condensation::CHECK,
    enclosure::heater_stuck::CHECK,
    enclosure::space_and_mount::CHECK,
    enclosure::entries::CHECK,
    enclosure::door_and_lock::CHECK,
    enclosure::inside_apart::CHECK,
    network::length::CHECK,
    network::poe::CHECK,
    network::budget::CHECK,
    network::ports::CHECK,
    network::pictures::CHECK,
    network::addresses::CHECK,
    network::internet_down::CHECK,
    network::clocks::CHECK,
    camera::view::CHECK,
    camera::detail::CHECK,
    camera::night::CHECK,
    camera::allowed::CHECK,
    sun::beam::CHECK,
    sun::picture::CHECK,
    radio::link::CHECK,
    radio::leaf_in_path::CHECK,
    radio::legal::CHECK,
    radio::remote_range::CHECK,
    bus::line::CHECK,
    bus::address_and_time::CHECK,
    bus::secure_channel::CHECK,
    bus::legacy_line::CHECK,
    bus::supervised_loop::CHECK,
    bus::opening_wires::CHECK,
    release::unlocks_first::CHECK,
    release::holds_shut::CHECK,
    intercom::heard::CHECK,
    intercom::answered::CHECK,
    route::least_trench::CHECK,
    route::depth::CHECK,
    route::apart::CHECK,
    route::fill::CHECK,
    route::bends::CHECK,
    route::stub_up::CHECK,
    route::sealed::CHECK,
    pull::tension::CHECK,
    make::bill_complete::CHECK,
    make::tools_and_machines::CHECK,
    make::price_covers_it::CHECK,
    work::order::CHECK,
    work::weather::CHECK,
    work::overnight::CHECK,
    work::lane::CHECK,
    join::terminal_fits::CHECK,
    join::label_and_schedule::CHECK,
    pull::alone::CHECK,
    pull::connector_passes::CHECK,
    pull::bend_radius::CHECK,
    pull::clear::CHECK,
    join::wet::CHECK,
    join::cable_for_the_place::CHECK,
    join::screen::CHECK,
    join::moving_cable::CHECK,
    pull::reels::CHECK,
    make::cut_list::CHECK,
    make::joint_places::CHECK,
    keep::wearing_parts::CHECK,
    keep::corrosion::CHECK,
    record::revision_on_site::CHECK,
];

/// The gate that a device belongs to; the only one of the site where the device names none.
pub(crate) fn gate_of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<&'s Gate, Halt> {
    let gate = match (&device.gate, site.gate.as_slice()) {
        (Some(name), gates) => gates.iter().find(|gate| gate.id == *name),
        (None, [only]) => Some(only),
        (None, _) => None,
    };
    asking.need(&device.origin, "gate", gate, "\"main\"")
}

/// The tool has a check for the question of that name.
pub fn is_answered(question: &str) -> bool {
    CHECKS.iter().any(|check| check.question == question) || question == survey::deciding::QUESTION
}
