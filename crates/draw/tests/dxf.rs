//! The DXF file, read back pair by pair.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by stopping"
)]

use crate::common::{plan, sheet};
use draw::{DxfUnit, Orientation, Paper};
use quantity::UnitSystem;

/// A thing of the file: its kind and its pairs.
#[derive(Debug)]
struct Thing {
    kind: String,
    pairs: Vec<(u16, String)>,
}

impl Thing {
    /// The first value under a code.
    fn word(&self, code: u16) -> &str {
        &self
            .pairs
            .iter()
            .find(|pair| pair.0 == code)
            .unwrap_or_else(|| panic!("{code} in {self:?}"))
            .1
    }

    /// The first number under a code.
    fn number(&self, code: u16) -> f64 {
        self.word(code).parse().unwrap()
    }
}

/// Everything in a file.
fn things(file: &str) -> Vec<Thing> {
    let lines: Vec<&str> = file.lines().collect();
    assert_eq!(lines.len() % 2, 0, "a pair is cut off");
    let mut all: Vec<Thing> = Vec::new();
    for pair in lines.chunks_exact(2) {
        match (pair[0].parse().unwrap(), pair[1]) {
            (0_u16, kind) => all.push(Thing {
                kind: kind.to_owned(),
                pairs: Vec::new(),
            }),
            (code, value) => all.last_mut().unwrap().pairs.push((code, value.to_owned())),
        }
    }
    all
}

/// The plan in a unit.
fn dxf(unit: DxfUnit) -> String {
    sheet(Paper::Letter, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::UsCustomary))
        .unwrap()
        .dxf(unit)
}

#[test]
fn the_opening_measures_twenty_feet_in_every_unit() {
    for (unit, expected) in [
        (DxfUnit::Meters, 6.096),
        (DxfUnit::Millimeters, 6096.0),
        (DxfUnit::Feet, 20.0),
        (DxfUnit::Inches, 240.0),
    ] {
        let all = things(&dxf(unit));
        let opening = all
            .iter()
            .find(|thing| thing.kind == "DIMENSION" && thing.word(1) == "20'-0\"")
            .unwrap();
        assert!((opening.number(42) - expected).abs() < 1e-6 * expected);
        let apart = opening.number(14) - opening.number(13);
        assert!((apart - expected).abs() < 1e-6 * expected, "{apart}");
        assert_eq!(opening.word(8), "dimensions");
    }
}

#[test]
fn the_header_tells_the_unit() {
    for (unit, code) in [
        (DxfUnit::Inches, 1),
        (DxfUnit::Feet, 2),
        (DxfUnit::Millimeters, 4),
        (DxfUnit::Meters, 6),
    ] {
        assert!(dxf(unit).contains(&format!("$INSUNITS\n70\n{code}\n")));
    }
}

#[test]
fn the_model_is_at_full_size() {
    let all = things(&dxf(DxfUnit::Feet));
    let drive = all
        .iter()
        .find(|thing| thing.kind == "LINE" && thing.word(8) == "edge of drive")
        .unwrap();
    let ends = [10, 20, 11, 21].map(|code| drive.number(code));
    for (found, expected) in ends.into_iter().zip([1.0, -6.0, 1.0, 24.0]) {
        assert!((found - expected).abs() < 1e-7, "{ends:?}");
    }
}

#[test]
fn every_layer_and_block_that_is_named_exists() {
    let all = things(&dxf(DxfUnit::Meters));
    let named = |kind: &str| -> Vec<&str> {
        all.iter()
            .filter(|thing| thing.kind == kind)
            .map(|thing| thing.word(2))
            .collect()
    };
    let (layers, blocks) = (named("LAYER"), named("BLOCK"));
    for kind in [
        "LINE",
        "LWPOLYLINE",
        "CIRCLE",
        "ARC",
        "TEXT",
        "HATCH",
        "DIMENSION",
    ] {
        let mut of_kind = all.iter().filter(|thing| thing.kind == kind).peekable();
        assert!(of_kind.peek().is_some(), "no {kind}");
        assert!(of_kind.all(|thing| layers.contains(&thing.word(8))));
    }
    assert!(
        all.iter()
            .filter(|thing| thing.kind == "DIMENSION")
            .all(|thing| blocks.contains(&thing.word(2)))
    );
}

#[test]
fn every_handle_is_used_once() {
    let all = things(&dxf(DxfUnit::Meters));
    let mut handles: Vec<&str> = all
        .iter()
        .filter(|thing| thing.kind != "SECTION")
        .filter_map(|thing| {
            let code = if thing.kind == "DIMSTYLE" { 105 } else { 5 };
            thing
                .pairs
                .iter()
                .find(|pair| pair.0 == code)
                .map(|pair| pair.1.as_str())
        })
        .collect();
    let count = handles.len();
    handles.sort_unstable();
    handles.dedup();
    assert!(count > 100);
    assert_eq!(handles.len(), count);
}

#[test]
fn the_same_drawing_gives_the_same_bytes() {
    assert_eq!(dxf(DxfUnit::Inches), dxf(DxfUnit::Inches));
}
