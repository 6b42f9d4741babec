//! Examples of values for keys whose kind alone gives a poor one.

use quantity::Kind;

/// Keys with an example that suits them better than that of their kind.
const EXAMPLES: &[(&str, &str)] = &[
    ("absorptance", "0.4"),
    ("allowed_drop", "12 in"),
    ("anchor_depth", "30 in"),
    ("axle_diameter", "3/4 in"),
    ("basic_wind_speed", "115 mph"),
    ("battery_speed", "85 %"),
    ("allowed_drop", "12 in"),
    ("catch_drop", "4 in"),
    ("center_along", "10 ft 6 in"),
    ("climbing_load", "200 lbf"),
    ("joint_gap", "3/16 in"),
    ("limit_repeatability", "1/4 in"),
    ("pin_diameter", "3/4 in"),
    ("reversal_delay", "400 ms"),
    ("reversal_distance", "4 in"),
    ("slow_down_distance", "18 in"),
    ("stop_gap", "1 in"),
    ("yield_strength", "46 ksi"),
    ("zinc", "85 µm"),
    ("bearing_friction", "0.01"),
    ("capacity", "26 Ah"),
    ("catch_drop", "4 in"),
    ("center_along", "10 ft"),
    ("closed_end", "-4 in"),
    ("coldest", "5 °F"),
    ("creep_distance", "12 in"),
    ("creep_speed", "0.3 ft/s"),
    ("detection_capability", "1 in"),
    ("diameter", "6 in"),
    ("drum_radius", "3 in"),
    ("edge_distance", "6 in"),
    ("efficiency", "90 %"),
    ("embedment", "4 in"),
    ("end_of_life", "80 %"),
    ("friction", "0.35"),
    ("greatest_lean", "10°"),
    ("ground_clearance", "2 in"),
    ("guarded_height", "74 in"),
    ("hook_radius", "6 in"),
    ("hottest", "104 °F"),
    ("ice_wind_speed", "40 mph"),
    ("least_friction", "9 lbf"),
    ("least_friction_torque", "6 lbf·ft"),
    ("least_voltage", "20 V"),
    ("length", "120 ft"),
    ("opening", "2 in"),
    ("operating_wind_speed", "35 mph"),
    ("pivot_up", "40 in"),
    ("pull", "520 lbf"),
    ("reaction_time", "80 ms"),
    ("response_time", "20 ms"),
    ("run_timer", "45 s"),
    ("slope", "0.005"),
    ("soft_travel", "2 in"),
    ("solidity", "80 %"),
    ("spacing", "12 in"),
    ("stop_gap", "3/4 in"),
    ("stopping_deceleration", "6 ft/s²"),
    ("strength", "3500 psi"),
    ("topographic_factor", "1"),
    ("travel", "20 ft 8 in"),
    ("turns_closed", "4"),
    ("usable", "80 %"),
    ("wanted_standby", "8 h"),
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
