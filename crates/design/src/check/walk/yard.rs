//! A yard with a sliding gate, for the tests of what people meet there.

/// A slow leaf with a soft edge at each end and a beam on each side of its line.
pub(crate) const YARD: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [[gate]]
    id = "main"
    kind = "track-slide"
    travel = "4.2 m"
    slope = "0"
    [[gate.leaf]]
    id = "leaf"
    length = "4.5 m"
    closed_end = "-0.1 m"
    height = "1.8 m"
    thickness = "60 mm"
    ground_clearance = "50 mm"
    [gate.motion]
    cruise_speed = "0.25 m/s"
    acceleration = "0.3 m/s²"
    deceleration = "0.3 m/s²"
    creep_speed = "0.1 m/s"
    slow_down_distance = "400 mm"
    stopping_deceleration = "2 m/s²"
    reversal_delay = "250 ms"
    reversal_distance = "150 mm"
    [[gate.post]]
    id = "catch"
    role = "catch"
    at = ["-0.2 m", "0 m", "0 m"]
    width = "100 mm"
    [[operator]]
    id = "drive"
    gate = "main"
    reaction_time = "80 ms"
    monitors_devices = true
    [[device]]
    id = "beam-out"
    kind = "through-beam photo-eye"
    monitored = true
    guards = ["closing"]
    at = ["4.2 m", "-0.1 m", "0.5 m"]
    to = ["-0.1 m", "-0.1 m", "0.5 m"]
    response_time = "20 ms"
    detection_capability = "70 mm"
    [[device]]
    id = "edge-leading"
    kind = "contact edge"
    carried_by = "leaf"
    monitored = true
    guards = ["closing"]
    at = ["-0.1 m", "0 m", "0.05 m"]
    to = ["-0.1 m", "0 m", "1.85 m"]
    response_time = "20 ms"
    actuation_travel = "10 mm"
    soft_travel = "80 mm"
    stiffness = "2 N/mm"
    hard_stiffness = "75 N/mm"
    [[device]]
    id = "edge-tail"
    kind = "contact edge"
    carried_by = "leaf"
    monitored = true
    guards = ["opening"]
    at = ["4.4 m", "0 m", "0.05 m"]
    to = ["4.4 m", "0 m", "1.85 m"]
    response_time = "20 ms"
    actuation_travel = "10 mm"
    soft_travel = "80 mm"
    stiffness = "2 N/mm"
    hard_stiffness = "75 N/mm"
"#;
