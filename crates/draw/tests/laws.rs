//! Laws that hold for any scene and any set of labels.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::float_cmp,
    reason = "a test fails by stopping"
)]

use crate::common::{degrees, millimeters, sheet};
use draw::{
    Content, Dimension, DimensionLine, DxfUnit, Figure, Fill, Hatch, Label, LabelRequest, Layer,
    LineWeight, Note, Orientation, Paper, Placement, Point, Scene, Text, overlapping, place_labels,
};
use proptest::prelude::*;
use quantity::{Length, Quantity, UnitSystem};

/// A point within 5 km, at every size of step.
fn point() -> impl Strategy<Value = Point> {
    let number = prop_oneof![-30.0..30.0_f64, -5000.0..5000.0_f64, Just(0.0)];
    (number.clone(), number)
        .prop_map(|(x, y)| Point::new(Length::from_base(x), Length::from_base(y)))
}

/// Words of any characters, XML's own and control characters among them.
fn words() -> impl Strategy<Value = String> {
    prop_oneof![
        "[a-z 0-9'\"<&>]{0,18}",
        "\\PC{0,8}",
        ".{0,6}\n.{0,6}",
        Just("\u{1}\u{fffe}]]>%%^".to_owned())
    ]
}

/// Geometry of any kind.
fn figure() -> impl Strategy<Value = Content> {
    let fill = prop_oneof![
        Just(Fill::Open),
        Just(Fill::Hatched(Hatch::cut())),
        Just(Fill::Hatched(Hatch::unknown()))
    ];
    let size = (0.0..40.0_f64).prop_map(Length::from_base);
    prop_oneof![
        (point(), point()).prop_map(|(from, to)| Figure::line(from, to).into()),
        (prop::collection::vec(point(), 0..7), fill.clone())
            .prop_map(|(points, fill)| Figure::area(points, fill).into()),
        prop::collection::vec(point(), 0..7).prop_map(|points| Figure::path(points).into()),
        (point(), size.clone(), fill)
            .prop_map(|(center, radius, fill)| Figure::circle(center, radius, fill).into()),
        (point(), size, -800.0..800.0_f64, -800.0..800.0_f64).prop_map(
            |(center, radius, start, sweep)| Figure::arc(
                center,
                radius,
                degrees(start),
                degrees(sweep)
            )
            .into()
        ),
    ]
}

/// Words of any kind.
fn worded() -> impl Strategy<Value = Content> {
    let angle = (-800.0..800.0_f64).prop_map(degrees);
    let away = (-60.0..60.0_f64).prop_map(|number| DimensionLine::Away(millimeters(number)));
    prop_oneof![
        (point(), words(), angle.clone())
            .prop_map(|(at, words, turn)| Text::new(at, words).rotation(turn).into()),
        (point(), words()).prop_map(|(at, words)| Label::new(at, words).into()),
        (point(), words(), angle)
            .prop_map(|(at, words, toward)| Note::new(at, words, toward).into()),
        (prop::collection::vec(point(), 0..5), away.clone())
            .prop_map(|(points, away)| Dimension::aligned(points, away).into()),
        (prop::collection::vec(point(), 2..5), away, words()).prop_map(|(points, away, words)| {
            Dimension::vertical(points, away).words([words]).into()
        }),
        point().prop_map(|at| Placement::new(draw::symbols::lamp(), at).into()),
    ]
}

/// A scene of anything.
fn scene() -> impl Strategy<Value = Scene> {
    let shape = (0..3_usize, prop_oneof![figure(), worded()], words());
    (
        prop::collection::vec(shape, 0..14),
        words(),
        words(),
        any::<bool>(),
    )
        .prop_map(|(shapes, title, name, us)| {
            let mut scene = Scene::new(
                title,
                if us {
                    UnitSystem::UsCustomary
                } else {
                    UnitSystem::Si
                },
            );
            let names = [name, "two, 2".to_owned(), "Two 2".to_owned()];
            let layers = names
                .map(|name| scene.layer(Layer::new(name, LineWeight::Medium).describe("a & b")));
            for (layer, content, title) in shapes {
                scene.add_titled(layers[layer], title, content);
            }
            scene
        })
}

/// Short labels within letter paper.
fn labels() -> impl Strategy<Value = Vec<LabelRequest>> {
    let label =
        (0.0..200.0_f64, 0.0..150.0_f64, "[A-Za-z0-9 ]{1,10}[A-Z]").prop_map(|(x, y, words)| {
            LabelRequest {
                at: Point::new(millimeters(x), millimeters(y)),
                words,
                height: millimeters(2.5),
            }
        });
    prop::collection::vec(label, 1..60)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn any_scene_is_well_formed_and_the_same_twice(scene in scene()) {
        let sheet = sheet(Paper::A4, Orientation::Landscape);
        let drawing = sheet.lay_out(&scene).unwrap();
        let svg = drawing.svg();
        prop_assert!(roxmltree::Document::parse(&svg).is_ok(), "{:?}", roxmltree::Document::parse(&svg).err());
        prop_assert!(!svg.contains("NaN") && !svg.contains("inf ") && !svg.contains("\"-0\""));
        let again = sheet.lay_out(&scene).unwrap();
        prop_assert_eq!(svg, again.svg());
        let dxf = drawing.dxf(DxfUnit::Meters);
        prop_assert_eq!(dxf.lines().count() % 2, 0);
        prop_assert!(!dxf.contains("NaN"));
        prop_assert_eq!(dxf, again.dxf(DxfUnit::Meters));
    }

    #[test]
    fn text_of_any_scene_keeps_apart(scene in scene()) {
        let drawing = sheet(Paper::Tabloid, Orientation::Landscape).lay_out(&scene).unwrap();
        prop_assert_eq!(drawing.overlapping_text(), vec![]);
    }

    #[test]
    fn labels_that_can_fit_are_placed_apart_and_inside(labels in labels()) {
        let placed = place_labels(millimeters(200.0), millimeters(150.0), &[], &labels);
        prop_assert!(placed.iter().all(Option::is_some));
        let boxes: Vec<_> = placed.into_iter().flatten().map(|label| label.text).collect();
        prop_assert_eq!(overlapping(&boxes), vec![]);
        for text in &boxes {
            let (x, y) = (text.center.x.base() * 1e3, text.center.y.base() * 1e3);
            let (wide, high) = (text.width.base() * 5e2, text.height.base() * 5e2);
            prop_assert!(x - wide > -1e-3 && x + wide < 200.001 && y - high > -1e-3 && y + high < 150.001);
        }
    }
}

#[test]
fn a_label_that_moved_away_has_a_line_to_its_point() {
    let label = |words: &str| LabelRequest {
        at: Point::new(millimeters(50.0), millimeters(50.0)),
        words: words.to_owned(),
        height: millimeters(2.5),
    };
    let crowd: Vec<_> = (0..12)
        .map(|number| label(&format!("device {number}")))
        .collect();
    let placed = place_labels(millimeters(100.0), millimeters(100.0), &[], &crowd);
    let first = placed.first().unwrap().as_ref().unwrap();
    let last = placed.last().unwrap().as_ref().unwrap();
    assert!(first.leader.is_none());
    let (from, to) = last.leader.unwrap();
    assert_eq!(from, label("").at);
    assert!(from.distance(to) > millimeters(2.0));
}

#[test]
fn a_label_without_room_is_told() {
    let label = LabelRequest {
        at: Point::new(millimeters(2.0), millimeters(2.0)),
        words: "much too long for this".to_owned(),
        height: millimeters(2.5),
    };
    assert_eq!(
        place_labels(millimeters(10.0), millimeters(10.0), &[], &[label]),
        [None]
    );
}
