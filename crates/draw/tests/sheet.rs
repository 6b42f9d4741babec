//! What must be true of a finished sheet: true to scale, well formed, no text over text.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test fails by stopping"
)]

use crate::common;
use crate::common::{at, feet, millimeters, plan, sheet};
use draw::{
    Dimension, DimensionLine, DrawError, Drawing, Figure, Fill, Hatch, Layer, LineWeight, North,
    Orientation, Paper, Point, Scale, ScaleChoice, Scene, Shape, Text,
};
use quantity::{Length, Quantity, Ratio, UnitSystem};

/// The plan on every paper in both systems of units.
fn every_sheet() -> Vec<Drawing> {
    let mut all = Vec::new();
    for units in [UnitSystem::UsCustomary, UnitSystem::Si] {
        for paper in [Paper::Letter, Paper::Tabloid, Paper::A4, Paper::A3] {
            for orientation in [Orientation::Portrait, Orientation::Landscape] {
                all.push(sheet(paper, orientation).lay_out(&plan(units)).unwrap());
            }
        }
    }
    all
}

/// The numbers of an SVG path of straight lines.
fn corners(path: &str) -> Vec<(f64, f64)> {
    let plain = path.trim_matches(['M', 'Z']);
    let two = |spot: &str| {
        let (x, y) = spot.split_once(' ').unwrap();
        (x.parse().unwrap(), y.parse().unwrap())
    };
    plain.split('L').map(two).collect()
}

/// The paths in the group of a class, in the order of the file.
fn paths(svg: &str, class: &str) -> Vec<Vec<(f64, f64)>> {
    let document = roxmltree::Document::parse(svg).unwrap();
    let group = document
        .descendants()
        .find(|node| node.attribute("class") == Some(class))
        .unwrap();
    group
        .descendants()
        .filter_map(|node| node.attribute("d"))
        .map(corners)
        .collect()
}

#[test]
fn the_plan_is_written_as_it_was_looked_at() {
    let drawing = sheet(Paper::Letter, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::UsCustomary))
        .unwrap();
    insta::assert_snapshot!(drawing.svg());
}

#[test]
fn no_text_overlaps_on_any_paper() {
    for drawing in every_sheet() {
        assert_eq!(drawing.overlapping_text(), []);
        assert!(
            drawing.without_room().is_empty(),
            "{:?}",
            drawing.without_room()
        );
        assert!(drawing.text_boxes().len() > 25);
    }
}

#[test]
fn overlapping_text_is_reported() {
    let drawing = sheet(Paper::Letter, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::UsCustomary))
        .unwrap();
    let mut boxes = drawing.text_boxes();
    let mut again = boxes[0].clone();
    again.center = again.center.moved(millimeters(1.0), millimeters(0.5));
    again.words = "again".to_owned();
    boxes.push(again);
    assert_eq!(
        draw::overlapping(&boxes),
        [(boxes[0].words.clone(), "again".to_owned())]
    );
}

#[test]
fn the_scale_bar_is_as_long_as_it_says() {
    for drawing in every_sheet() {
        let bar = drawing.scale_bar().unwrap();
        let ends = paths(&drawing.svg(), "scale-bar")
            .into_iter()
            .flatten()
            .map(|corner| corner.0);
        let (low, high) = ends.fold((f64::MAX, f64::MIN), |(low, high), x| {
            (low.min(x), high.max(x))
        });
        let stated = bar
            .words
            .split_once(' ')
            .map(|(number, unit)| (number.parse::<f64>().unwrap(), unit))
            .unwrap();
        let meters = match stated {
            (number, "ft") => number * 0.3048,
            (number, "in") => number * 0.0254,
            (number, "m") => number,
            (number, "mm") => number / 1000.0,
            other => panic!("{other:?}"),
        };
        let on_site = (high - low) / 1000.0 / drawing.scale().unwrap().ratio().base();
        assert!(
            (on_site / meters - 1.0).abs() < 1e-4,
            "{} drawn as {on_site} m",
            bar.words
        );
    }
}

#[test]
fn the_drawing_is_true_to_its_scale() {
    for drawing in every_sheet() {
        let drive = paths(&drawing.svg(), "figure").into_iter().next().unwrap();
        let long = (drive[0].1 - drive[1].1).abs() / 1000.0;
        let site = long / drawing.scale().unwrap().ratio().base();
        assert!((site / feet(30.0).base() - 1.0).abs() < 1e-4, "{site}");
    }
}

#[test]
fn the_scale_is_a_standard_one_of_the_sites_units() {
    let us = sheet(Paper::Tabloid, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::UsCustomary))
        .unwrap();
    assert_eq!(us.scale().unwrap().words(), "3/16\" = 1'-0\"");
    let si = sheet(Paper::A3, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::Si))
        .unwrap();
    assert_eq!(si.scale().unwrap().words(), "1:100");
}

#[test]
fn a_scale_that_does_not_fit_is_refused_in_words() {
    let large = sheet(Paper::Letter, Orientation::Landscape)
        .scale(ScaleChoice::Fixed(Scale::read("1:20").unwrap()));
    let problem = large.lay_out(&plan(UnitSystem::Si)).unwrap_err();
    assert!(
        matches!(&problem, DrawError::DoesNotFit { scale, .. } if scale == "1:20"),
        "{problem}"
    );
}

#[test]
fn a_point_without_a_value_is_refused_by_its_title() {
    let mut scene = Scene::new("Nothing", UnitSystem::Si);
    let layer = scene.layer(Layer::new("lines", LineWeight::Medium));
    let nowhere = Point::new(Length::from_base(f64::NAN), feet(0.0));
    scene.add_titled(layer, "north wall", Figure::line(nowhere, at(1.0, 1.0)));
    let problem = sheet(Paper::A4, Orientation::Portrait)
        .lay_out(&scene)
        .unwrap_err();
    assert_eq!(
        problem,
        DrawError::NoValue {
            shape: "north wall".to_owned()
        }
    );
}

#[test]
fn north_is_on_every_sheet_even_when_it_is_not_known() {
    let mut unknown = sheet(Paper::A4, Orientation::Landscape);
    unknown.north = North::NotMeasured;
    let svg = unknown.lay_out(&plan(UnitSystem::Si)).unwrap().svg();
    assert!(svg.contains("North has not been measured."));
    let known = sheet(Paper::A4, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::Si))
        .unwrap()
        .svg();
    assert!(known.contains(">N</text>") && known.contains("Leaf line bears 28°"));
}

#[test]
fn the_needle_points_to_north() {
    let svg = sheet(Paper::A4, Orientation::Landscape)
        .lay_out(&plan(UnitSystem::Si))
        .unwrap()
        .svg();
    let half = paths(&svg, "north").into_iter().next().unwrap();
    let (tip, center) = (half[0], half[2]);
    let angle = (center.1 - tip.1).atan2(tip.0 - center.0).to_degrees();
    assert!((angle - 62.0).abs() < 0.01, "{angle}");
}

#[test]
fn a_drawing_without_scale_says_so() {
    let mut scene = Scene::new("Circuit", UnitSystem::Si);
    let layer = scene.layer(Layer::new("conductors", LineWeight::Medium));
    let mm = |x: f64, y: f64| Point::new(millimeters(x), millimeters(y));
    for (index, symbol) in symbols().into_iter().enumerate() {
        let x = 20.0 * f64::from(u32::try_from(index).unwrap());
        scene.add(layer, draw::Placement::new(symbol, mm(x, 0.0)));
    }
    scene.add(layer, Text::new(mm(10.0, 10.0), "24 V"));
    let free = sheet(Paper::A4, Orientation::Landscape)
        .scale(ScaleChoice::NotToScale(Ratio::from_base(1.0)));
    let drawing = free.lay_out(&scene).unwrap();
    assert!(drawing.scale().is_none() && drawing.scale_bar().is_none());
    assert!(drawing.svg().contains("Not to scale"));
    assert_eq!(drawing.overlapping_text(), []);
}

/// All symbols of the crate.
fn symbols() -> Vec<draw::Symbol> {
    use draw::symbols as all;
    vec![
        all::resistor(),
        all::fuse(),
        all::lamp(),
        all::battery(),
        all::earth(),
        all::junction(),
        all::terminal(),
        all::connector(),
        all::open_contact(),
        all::closed_contact(),
    ]
}

#[test]
fn an_empty_scene_is_a_sheet_with_its_frame() {
    let drawing = sheet(Paper::A4, Orientation::Portrait)
        .lay_out(&Scene::new("", UnitSystem::Si))
        .unwrap();
    roxmltree::Document::parse(&drawing.svg()).unwrap();
    assert_eq!(drawing.overlapping_text(), []);
}

#[test]
fn hatching_stays_inside_its_outline() {
    let mut scene = Scene::new("Pad", UnitSystem::Si);
    let layer = scene.layer(Layer::new("concrete", LineWeight::Heavy));
    scene.add(
        layer,
        Figure::rectangle(at(0.0, 0.0), at(3.0, 3.0), Fill::Hatched(Hatch::unknown())),
    );
    let svg = sheet(Paper::A4, Orientation::Landscape)
        .lay_out(&scene)
        .unwrap()
        .svg();
    let lines = paths(&svg, "figure");
    let outline = lines.last().unwrap().clone();
    let (low, high) = (outline[3], outline[1]);
    assert!(lines.len() > 50);
    for (x, y) in lines.into_iter().flatten() {
        assert!(
            x >= low.0 - 0.002 && x <= high.0 + 0.002 && y >= low.1 - 0.002 && y <= high.1 + 0.002
        );
    }
}

#[test]
fn dimensions_read_from_the_bottom_or_from_the_right() {
    let mut scene = Scene::new("Wheel", UnitSystem::Si);
    let layer = scene.layer(Layer::new("dimensions", LineWeight::Fine));
    for turn in 0..16_u32 {
        let end = at(0.0, 0.0).toward(common::degrees(22.5 * f64::from(turn)), feet(10.0));
        let start = at(0.0, 0.0).toward(common::degrees(22.5 * f64::from(turn)), feet(4.0));
        scene.add(
            layer,
            Dimension::aligned([start, end], DimensionLine::Away(millimeters(3.0))),
        );
    }
    let drawing = sheet(Paper::A3, Orientation::Landscape)
        .lay_out(&scene)
        .unwrap();
    let turned: Vec<f64> = drawing
        .text_boxes()
        .iter()
        .map(|text| text.rotation.base().to_degrees())
        .collect();
    assert_eq!(turned.iter().filter(|angle| angle.abs() > 1.0).count(), 14);
    assert!(
        turned.iter().all(|angle| *angle > -89.9 && *angle < 90.1),
        "{turned:?}"
    );
    assert_eq!(drawing.overlapping_text(), []);
}

#[test]
fn layers_of_one_name_are_one_layer() {
    let mut scene = Scene::new("Layers", UnitSystem::Si);
    let first = scene.layer(Layer::new("posts", LineWeight::Heavy));
    assert_eq!(scene.layer(Layer::new("posts", LineWeight::Fine)), first);
    scene.add(first, Figure::line(at(0.0, 0.0), at(1.0, 0.0)));
    let shapes: &[Shape] = scene.shapes();
    assert_eq!((shapes.len(), scene.layers().len()), (1, 1));
}
