//! Examples of values for keys whose kind alone gives a poor one.

use quantity::Kind;

/// Keys with an example that suits them better than that of their kind.
const EXAMPLES: &[(&str, &str)] = &[
    ("absorptance", "0.4"),
    ("aggregate", "3/4 in"),
    ("allowed_drop", "12 in"),
    ("allowed_sway", "0.5°"),
    ("anchor_depth", "30 in"),
    ("arm_gap", "2 in"),
    ("arm_gap_widest", "3 in"),
    ("axle_diameter", "3/4 in"),
    ("axle_load", "24000 lbf"),
    ("bank_distance", "10 ft"),
    ("bank_height", "2 ft"),
    ("bar_strength", "60 ksi"),
    ("barbed_tape", "8 ft"),
    ("barbed_wire", "6 ft 6 in"),
    ("basic_wind_speed", "115 mph"),
    ("battery_speed", "85 %"),
    ("bearing_area", "0.9 in²"),
    ("bearing_friction", "0.01"),
    ("bolt_circle", "10 in"),
    ("bond_cracked", "850 psi"),
    ("bond_uncracked", "1600 psi"),
    ("bottom_bars", "1.3 in²"),
    ("bottom_protrusion", "1/4 in"),
    ("capacity", "26 Ah"),
    ("carried", "40 ft"),
    ("cartridge", "22 in³"),
    ("catch_drop", "4 in"),
    ("center_along", "10 ft 6 in"),
    ("center_along", "10 ft"),
    ("clear_behind", "42 in"),
    ("climbing_load", "200 lbf"),
    ("closed_end", "-4 in"),
    ("closed_force", "600 lbf"),
    ("coldest", "5 °F"),
    ("concrete_temperature", "58 °F"),
    ("cover", "2 in"),
    ("creep_distance", "12 in"),
    ("creep_speed", "0.3 ft/s"),
    ("critical_edge", "8 in"),
    ("cross_section", "4 in²"),
    ("depth", "42 in"),
    ("detection_capability", "1 in"),
    ("diameter", "6 in"),
    ("drive_height", "8 in"),
    ("drum_radius", "3 in"),
    ("edge_distance", "6 in"),
    ("efficiency", "90 %"),
    ("embedment", "4 in"),
    ("end_of_life", "80 %"),
    ("everyday_wind_speed", "25 mph"),
    ("fixing_heights", "12 in"),
    ("foot_turn", "0.1°"),
    ("friction", "0.35"),
    ("gap", "40 in"),
    ("gear_rating", "330 lb"),
    ("give", "12 in"),
    ("greatest_lean", "10°"),
    ("ground_clearance", "2 in"),
    ("guarded_height", "74 in"),
    ("hard_stiffness", "430 lbf/in"),
    ("holding_force", "450 lbf"),
    ("hole_depth", "4 1/4 in"),
    ("hole_diameter", "9/16 in"),
    ("hook_length", "3 in"),
    ("hook_radius", "6 in"),
    ("hottest", "104 °F"),
    ("ice_wind_speed", "40 mph"),
    ("joint_gap", "3/16 in"),
    ("keep_push", "13 lbf"),
    ("keeps_out", "5 ft 6 in"),
    ("latch_height", "42 in"),
    ("latch_play", "1/4 in"),
    ("least_age", "21 days"),
    ("least_edge", "3 in"),
    ("least_friction", "9 lbf"),
    ("least_friction_torque", "6 lbf·ft"),
    ("least_spacing", "3 in"),
    ("least_thickness", "6 in"),
    ("least_voltage", "20 V"),
    ("length", "120 ft"),
    ("lifts_at_most", "20 lb"),
    ("limit_repeatability", "1/4 in"),
    ("loaded_after", "24 h"),
    ("margin", "2 ft"),
    ("nozzle_loss", "1 in³"),
    ("opening", "2 in"),
    ("operating_wind_speed", "35 mph"),
    ("pin_diameter", "3/4 in"),
    ("pitch", "1/10 in"),
    ("pivot_to_end", "3 in"),
    ("pivot_up", "40 in"),
    ("plate_hole", "9/16 in"),
    ("plate_length", "14 in"),
    ("plate_row_spacing", "8 in"),
    ("plate_spacing", "12 in"),
    ("plate_strength", "36 ksi"),
    ("plate_thickness", "1 in"),
    ("plate_width", "12 in"),
    ("proof_pull", "900 lbf"),
    ("pull", "520 lbf"),
    ("pull_out", "3800 lbf"),
    ("rated_side_load", "900 lbf"),
    ("rated_wheel_load", "16000 lbf"),
    ("reaction_time", "80 ms"),
    ("response_time", "20 ms"),
    ("reversal_delay", "400 ms"),
    ("reversal_distance", "4 in"),
    ("roller_height", "3 in"),
    ("row_spacing", "8 in"),
    ("run_timer", "45 s"),
    ("sheet_depth", "4 in"),
    ("sheet_diameter", "9/16 in"),
    ("side_force", "100 lbf"),
    ("side_force_height", "42 in"),
    ("slope", "0.005"),
    ("slow_down_distance", "18 in"),
    ("soft_travel", "2 in"),
    ("soil_bearing", "2000 psf"),
    ("soil_lateral", "150 psf/ft"),
    ("soil_stiffness", "60 lbf/in³"),
    ("solidity", "80 %"),
    ("spacing", "12 in"),
    ("stand_off", "1 in"),
    ("start_push", "30 lbf"),
    ("stop_gap", "1 in"),
    ("stop_gap", "3/4 in"),
    ("stopping_deceleration", "6 ft/s²"),
    ("stops_at_wind", "12 mph"),
    ("strength", "3500 psi"),
    ("strike_height", "20 in"),
    ("tensile_strength", "75 ksi"),
    ("test_penetration", "10 in"),
    ("top_area", "0.5 ft²"),
    ("top_mass", "6 lb"),
    ("topographic_factor", "1"),
    ("torque", "40 lbf·ft"),
    ("torque_reached", "40 lbf·ft"),
    ("travel", "20 ft 8 in"),
    ("turns_closed", "4"),
    ("usable", "80 %"),
    ("vehicle_mass", "6000 lb"),
    ("vehicle_speed", "3 mph"),
    ("wanted_standby", "8 h"),
    ("wheel_load", "12000 lbf"),
    ("yield_strength", "46 ksi"),
    ("zinc", "85 µm"),
];

/// An example of a value of a key: that of the key itself, else that of its kind.
pub(super) fn example(key: &str, kind: Kind) -> &'static str {
    let own = key.rsplit('.').next().unwrap_or(key);
    EXAMPLES
        .iter()
        .find(|(name, example)| *name == own && quantity::read_kind(kind, example).is_ok())
        .map_or_else(|| kind.example(), |(_, example)| example)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_keys_own_example_comes_first_and_only_if_it_is_of_the_kind() {
        assert_eq!(example("friction", Kind::Ratio), "0.35");
        assert_eq!(example("guide.friction", Kind::Ratio), "0.35");
        assert_eq!(example("friction", Kind::Length), Kind::Length.example());
        assert_eq!(example("mass", Kind::Mass), Kind::Mass.example());
    }

    #[test]
    fn every_example_is_of_some_kind() {
        for (name, example) in EXAMPLES {
            let reads = |kind: &&Kind| quantity::read_kind(**kind, example).is_ok();
            assert!(
                Kind::ALL.iter().any(|kind| reads(&kind)),
                "{name} {example}"
            );
        }
    }
}
