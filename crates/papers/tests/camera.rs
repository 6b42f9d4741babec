//! The sheets of cameras: nothing over another wherever a camera hangs and looks, what is hidden is hatched, and what it
//! shows stands in its tables.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, drawn as sheets, example, read, tidy, words};
use papers::sheets::NamedDrawing;
use proptest::prelude::*;
use site::Site;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("camera-"))
}

/// A sliding gate with a camera: where it hangs, how it looks, its lens.
fn text([x, y, z]: [f64; 3], [pan, tilt, roll]: [f64; 3], focal: f64) -> String {
    format!(
        r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [place]
        latitude = "47°"
        longitude = "9°"
        north = "75°"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "6 m"
        travel = "6 m"
        [[gate.leaf]]
        id = "leaf"
        length = "6.2 m"
        height = "1.8 m"
        thickness = "60 mm"
        ground_clearance = "50 mm"
        closed_end = "0 m"
        solidity = "0.9"
        [[gate.post]]
        id = "post-with-a-rather-long-name"
        role = "catch"
        at = ["-0.1 m", "0 m", "0 m"]
        height = "2 m"
        width = "150 mm"
        [[device]]
        id = "camera-test"
        kind = "camera"
        purpose = "whole gate"
        at = ["{x} m", "{y} m", "{z} m"]
        facing = "{pan}°"
        [device.lens]
        sensor_width = "5.6 mm"
        pixels_across = 2560
        pixels_down = 1440
        focal_length = "{focal} mm"
        tilt = "{tilt}°"
        roll = "{roll}°"
        [device.picture]
        area = [["0 m", "-3 m", "0 m"], ["6 m", "-3 m", "0 m"], ["6 m", "3 m", "0 m"], ["0 m", "3 m", "0 m"]]
        target = ["3 m", "-2 m", "1.5 m"]
        target_facing = "-90°"
        level = "recognize"
        plate_width = "520 mm"
        plate_pixels = 130
    "#
    )
}

#[test]
fn each_camera_of_the_examples_has_its_sheet() {
    for name in SITES {
        let site = example(name);
        let sheets = drawn(&site);
        if !name.ends_with("-faulty") {
            assert_eq!(sheets.len(), 2, "{name}");
        }
        for sheet in sheets {
            tidy(&format!("{name} {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn what_the_leaf_hides_is_hatched_and_told() {
    // Over the leaf from the yard: closed, it hides the road side.
    let site = read(&text([3.0, 9.0, 4.0], [-90.0, 22.0, 0.0], 2.8));
    let sheets = drawn(&site);
    assert_eq!(sheets.len(), 1);
    let sheet = &sheets[0];
    let said = words(&sheet.drawing);
    for told in [
        "Leaf closed",
        "Leaf half open",
        "Leaf open",
        "identify",
        "place that matters",
        "wanted: recognize",
        "Sun in the picture",
        "leaf",
    ] {
        assert!(said.contains(told), "{told}: {said}");
    }
    let svg = sheet.drawing.svg();
    assert!(svg.contains("hidden by leaf"), "no hatch");
}

#[test]
fn a_camera_without_a_lens_has_no_sheet() {
    let text = text([3.0, 9.0, 4.0], [-90.0, 22.0, 0.0], 2.8);
    let bare = text.replace("focal_length = \"2.8 mm\"", "");
    assert!(drawn(&read(&bare)).is_empty());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn nothing_lies_over_another_wherever_it_hangs(
        x in -30.0..40.0, y in -40.0..40.0, z in 0.5..12.0,
        pan in -180.0..180.0, tilt in -10.0..89.0, roll in -90.0..90.0, focal in 1.5..30.0,
    ) {
        let site = read(&text([x, y, z], [pan, tilt, roll], focal));
        for sheet in drawn(&site) {
            prop_assert_eq!(sheet.drawing.overlapping_text(), []);
        }
    }
}
