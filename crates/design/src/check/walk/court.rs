//! A court with a swing gate and a lane with an arm, for the tests of what people meet there.

/// One slow leaf that swings in, with a field on the ground about it, wider than anybody goes in the time that it takes to stop and run back.
pub(crate) const COURT: &str = r#"
    [site]
    name = "Test court"
    code_basis = "eu"
    [[gate]]
    id = "court"
    kind = "single-swing"
    clear_opening = "2 m"
    travel_angle = "90°"
    swings = "into the property"
    slope = "0"
    [[gate.leaf]]
    id = "leaf"
    length = "1.95 m"
    height = "1.5 m"
    thickness = "40 mm"
    ground_clearance = "50 mm"
    [gate.motion]
    cruise_turning_speed = "5 deg/s"
    acceleration = "0.3 m/s²"
    deceleration = "0.3 m/s²"
    creep_speed = "0.05 m/s"
    slow_down_distance = "300 mm"
    stopping_deceleration = "2 m/s²"
    reversal_delay = "150 ms"
    reversal_distance = "20 mm"
    [[gate.post]]
    id = "post-hinge"
    role = "hinge"
    at = ["2.1 m", "0 m", "0 m"]
    width = "100 mm"
    [[gate.nearby]]
    id = "wall"
    what = "wall beside the open leaf"
    from = ["3.2 m", "0.5 m", "0 m"]
    to = ["3.2 m", "4 m", "0 m"]
    height = "1.5 m"
    [[operator]]
    id = "drive"
    gate = "court"
    reaction_time = "80 ms"
    monitors_devices = true
    [[device]]
    id = "field"
    kind = "area scanner"
    monitored = true
    guards = ["opening", "closing"]
    at = ["1 m", "0 m", "0.1 m"]
    response_time = "40 ms"
    detection_capability = "40 mm"
    field = [["-9 m", "-9 m", "0.1 m"], ["11 m", "-9 m", "0.1 m"], ["11 m", "9 m", "0.1 m"], ["-9 m", "9 m", "0.1 m"]]
"#;

/// A slow arm with a field on the ground about it, wider than anybody goes in the time that it takes to stop.
pub(crate) const LANE: &str = r#"
    [site]
    name = "Test lane"
    code_basis = "eu"
    [[gate]]
    id = "arm"
    kind = "barrier-arm"
    clear_opening = "3 m"
    travel_angle = "88°"
    [[gate.leaf]]
    id = "boom"
    length = "3.2 m"
    closed_end = "-0.1 m"
    height = "100 mm"
    thickness = "50 mm"
    ground_clearance = "900 mm"
    [gate.motion]
    cruise_turning_speed = "15 deg/s"
    acceleration = "1 m/s²"
    deceleration = "1 m/s²"
    creep_speed = "0.2 m/s"
    slow_down_distance = "500 mm"
    stopping_deceleration = "3 m/s²"
    reversal_delay = "500 ms"
    reversal_distance = "20 mm"
    [[operator]]
    id = "drive"
    gate = "arm"
    reaction_time = "50 ms"
    monitors_devices = true
    [[device]]
    id = "field"
    kind = "area scanner"
    monitored = true
    guards = ["opening", "closing"]
    at = ["3.2 m", "0 m", "0.1 m"]
    response_time = "60 ms"
    detection_capability = "40 mm"
    field = [["-9 m", "-9 m", "0.1 m"], ["11 m", "-9 m", "0.1 m"], ["11 m", "9 m", "0.1 m"], ["-9 m", "9 m", "0.1 m"]]
"#;
