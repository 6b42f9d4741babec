//! Plots: every word has its room, curves stay between the axes, and series are told apart without color.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use draw::{
    Drawing, Marked, North, Orientation, Paper, Part, Plot, ScaleChoice, Series, Sheet, Stretch,
    TitleBlock,
};
use quantity::{Force, Length, Quantity as _, Ratio, UnitSystem};

fn pull() -> Plot<Length, Force> {
    let curve = |name: &str, part, forces: [f64; 3]| {
        let places = [0.0, 3.0, 6.2].map(Length::from_base);
        let points = places
            .into_iter()
            .zip(forces.map(Force::from_base))
            .collect();
        Series {
            name: name.to_owned(),
            points,
            part,
        }
    };
    let mut plot = Plot::new("Pull along the travel", "opening", "force on the leaf");
    plot.series = vec![
        curve("pull, opening", Part::Demand, [310.0, 180.0, 220.0]),
        curve("pull, closing", Part::OtherDemand, [260.0, 120.0, 140.0]),
        curve("operator", Part::Capacity, [650.0, 480.0, 650.0]),
    ];
    plot.marked.push(Marked {
        at: (Length::from_base(0.0), Force::from_base(310.0)),
        words: "hardest pull\n310 N".to_owned(),
    });
    plot.stretches.push(Stretch {
        from: Length::from_base(0.0),
        to: Length::from_base(3.0),
        name: "seals".to_owned(),
    });
    plot.remarks.push("Nominal values.".to_owned());
    plot
}

fn laid_out(plot: &Plot<Length, Force>, units: UnitSystem) -> Drawing {
    let sheet = Sheet::new(
        Paper::A3,
        Orientation::Landscape,
        North::NotSeenFromAbove,
        TitleBlock::default(),
    );
    sheet
        .scale(ScaleChoice::NotToScale(Ratio::from_base(1.0)))
        .lay_out(&plot.scene(units))
        .unwrap()
}

fn words(drawing: &Drawing) -> Vec<String> {
    drawing
        .text_boxes()
        .into_iter()
        .map(|text| text.words)
        .collect()
}

#[test]
fn every_word_has_its_room() {
    for units in [UnitSystem::Si, UnitSystem::UsCustomary] {
        let drawing = laid_out(&pull(), units);
        assert_eq!(drawing.overlapping_text(), []);
        assert!(drawing.without_room().is_empty());
    }
}

#[test]
fn axes_tell_what_they_measure_in_the_units_of_the_site() {
    let has = |units, said: &str| {
        words(&laid_out(&pull(), units))
            .iter()
            .any(|words| words == said)
    };
    assert!(has(UnitSystem::Si, "opening, m"));
    assert!(has(UnitSystem::Si, "force on the leaf, N"));
    assert!(has(UnitSystem::UsCustomary, "opening, ft"));
    assert!(has(UnitSystem::UsCustomary, "force on the leaf, lbf"));
}

#[test]
fn series_differ_in_their_lines_and_stand_in_the_legend() {
    let drawing = laid_out(&pull(), UnitSystem::Si);
    let words = words(&drawing);
    for name in [
        "pull, opening",
        "pull, closing",
        "operator",
        "seals",
        "hardest pull",
    ] {
        assert!(words.iter().any(|said| said == name), "{name} in {words:?}");
    }
    assert!(drawing.svg().contains("stroke-dasharray=\"3 1.2\""));
}

#[test]
fn remarks_stand_under_the_drawing() {
    let words = words(&laid_out(&pull(), UnitSystem::Si));
    assert!(words.iter().any(|said| said == "1. Nominal values."));
}

#[test]
fn a_plot_without_curves_or_with_values_that_are_none_is_still_a_sheet() {
    let empty = Plot::new("Nothing", "opening", "force");
    assert!(
        laid_out(&empty, UnitSystem::Si)
            .overlapping_text()
            .is_empty()
    );
    let mut strange = pull();
    strange.series[0].points[1].1 = Force::from_base(f64::NAN);
    assert_eq!(laid_out(&strange, UnitSystem::Si).overlapping_text(), []);
}
