//! A set of four headed bolts under one plate, for the tests of the checks.

/// Four bolts of 3/4 in, 8 in apart, in the middle of a footing of 36 in.
pub(super) const PLATE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [[foundation]]
    id = "pad"
    length = "36 in"
    width = "36 in"
    depth = "36 in"
    strength = "4000 psi"
    concrete = "cracked"
    [[foundation.anchor]]
    holds = "post"
    count = 4
    rows = 2
    kind = "headed bolt"
    diameter = "3/4 in"
    embedment = "8 in"
    bearing_area = "0.91 in²"
    spacing = "8 in"
    row_spacing = "8 in"
    under_plate = "nothing"
    plate_length = "12 in"
    plate_width = "12 in"
    moment_along = "3000 lbf·ft"
    moment_across = "0 lbf·ft"
    shear_along = "500 lbf"
    shear_across = "0 lbf"
"#;
