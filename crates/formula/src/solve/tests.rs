//! Questions backward with known answers.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    unreachable_pub,
    reason = "a test may stop at the first surprise"
)]
use super::*;
use crate::find;
use proptest::prelude::*;
use quantity::{Length, Quantity as _, Ratio, Value};

quantity::words! {
    /// Curves with known answers.
    pub enum Shape {
        /// `(x − 2)·(x − 3)`.
        TwoRoots = "two roots",
        /// `(x − 2)²`.
        Touch = "touch",
        /// 1 below 2, and 3 from there.
        Jump = "jump",
        /// Rises to 5 at 4, level until 6, rises again.
        Level = "level",
        /// 1 everywhere.
        Flat = "flat",
        /// `1 / (x − 2)`, without a value at 2.
        Pole = "pole",
        /// `√(x − 2)`, refused below 2.
        Late = "late",
        /// Refused everywhere.
        Refused = "refused",
        /// `(x − 2)·(x − 2.001)`: both within one step.
        CloseRoots = "close roots",
    }
}

formula! {
    /// A curve for these tests.
    pub struct Drawn = "drawn" in Wind {
        /// Which one.
        shape ("s"): Shape,
        /// The input.
        x ("x"): Length,
    }
    gives
    /// Its value.
    pub struct DrawnValue {
        /// The output.
        y ("y"): Ratio,
    }
    formula "y(x)"
    valid "These tests."
    source { work: "arithmetic", clause: "", evidence: Physics, seen: "arithmetic" }
    by drawn
}

fn drawn(curve: &Drawn) -> Result<DrawnValue, OutOfReach> {
    let x = curve.x.base();
    let y = match curve.shape {
        Shape::TwoRoots => (x - 2.0) * (x - 3.0),
        Shape::Touch => (x - 2.0).powi(2),
        Shape::Jump if x < 2.0 => 1.0,
        Shape::Jump => 3.0,
        Shape::Level => 5.0 + (x - 4.0).min(0.0) + (x - 6.0).max(0.0),
        Shape::Flat => 1.0,
        Shape::Pole => 1.0 / (x - 2.0),
        Shape::Late if x >= 2.0 => (x - 2.0).sqrt(),
        Shape::Late | Shape::Refused => return Err(OutOfReach::new("x", "too short")),
        Shape::CloseRoots => (x - 2.0) * (x - 2.001),
    };
    Ok(DrawnValue {
        y: Ratio::from_base(y),
    })
}

fn found(shape: Shape, wanted: f64) -> Found {
    let question = Backward {
        given: vec![Some(quantity::Argument::to_value(&shape)), None],
        output: 0,
        value: wanted,
        note: None,
    };
    solve(&Calculation::of::<Drawn>(), &question).unwrap().found
}

fn at(places: &[Place]) -> Vec<f64> {
    let value = |place: &Place| match place {
        Place::At(value) => *value,
        Place::Between { .. } => panic!("a range: {place:?}"),
    };
    places.iter().map(value).collect()
}

fn close(found: &[f64], expected: &[f64]) {
    let near = |pair: (&f64, &f64)| (pair.0 - pair.1).abs() < 1e-7;
    assert_eq!(found.len(), expected.len(), "{found:?}");
    assert!(
        found.iter().zip(expected).all(near),
        "{found:?} {expected:?}"
    );
}

#[test]
fn several_answers_are_all_found() {
    for shape in [Shape::TwoRoots, Shape::CloseRoots] {
        let Found::Several(places) = found(shape, 0.0) else {
            panic!("{shape}: not several")
        };
        let second = if shape == Shape::TwoRoots { 3.0 } else { 2.001 };
        close(&at(&places), &[2.0, second]);
    }
    let Found::Several(places) = found(Shape::Touch, 1.0) else {
        panic!("not several")
    };
    close(&at(&places), &[1.0, 3.0]);
}

#[test]
fn a_touch_is_an_answer() {
    let Found::One(place) = found(Shape::Touch, 0.0) else {
        panic!("not one")
    };
    close(&at(&[place]), &[2.0]);
}

#[test]
fn a_jump_or_a_pole_is_none() {
    let Found::None { closest, .. } = found(Shape::Jump, 2.0) else {
        panic!("not none")
    };
    assert!((closest.unwrap().output - 2.0).abs() > 0.9);
    let Found::None { closest, .. } = found(Shape::Pole, 0.0) else {
        panic!("not none")
    };
    assert!(closest.unwrap().output.abs() > 0.0);
}

#[test]
fn a_level_stretch_is_a_range_and_a_flat_curve_any() {
    let Found::One(Place::Between { from, to }) = found(Shape::Level, 5.0) else {
        panic!("no range")
    };
    close(&[from, to], &[4.0, 6.0]);
    assert_eq!(found(Shape::Flat, 1.0), Found::Any);
    assert!(matches!(
        found(Shape::Flat, 1.5),
        Found::None {
            closest: Some(_),
            ..
        }
    ));
}

#[test]
fn the_edge_of_reach_counts() {
    let Found::One(place) = found(Shape::Late, 0.0) else {
        panic!("not one")
    };
    close(&at(&[place]), &[2.0]);
    let Found::None { closest, refused } = found(Shape::Refused, 0.0) else {
        panic!("not none")
    };
    assert!(closest.is_none() && refused.unwrap().input == "x");
    let Found::None { closest, .. } = found(Shape::Late, -1.0) else {
        panic!("not none")
    };
    close(&[closest.unwrap().input], &[2.0]);
}

#[test]
fn what_cannot_be_looked_for_is_refused() {
    let question = |given| Backward {
        given,
        output: 0,
        value: 1.0,
        note: None,
    };
    let calculation = Calculation::of::<Drawn>();
    let length = Some(Value::Quantity(Kind::Length, 1.0));
    let word = solve(&calculation, &question(vec![None, length])).unwrap_err();
    assert_eq!(word.input, "shape");
    assert_eq!(
        solve(&calculation, &question(vec![None, None]))
            .unwrap_err()
            .input,
        "inputs"
    );
}

proptest! {
    #[test]
    fn backward_undoes_forward(
        source in 5.0..300.0, current in 0.01..30.0, length in 0.5..2000.0, resistance in 0.0003..0.09
    ) {
        let calculation = find("voltage-drop").unwrap();
        let inputs = [
            Value::Quantity(Kind::Voltage, source),
            Value::Quantity(Kind::Current, current),
            Value::Quantity(Kind::Length, length),
            Value::Quantity(Kind::ResistancePerLength, resistance),
        ];
        let outputs = calculation.evaluate(&inputs).unwrap();
        for (place, input) in inputs.iter().enumerate() {
            let output = 3; // the share depends on every input
            let (Value::Quantity(_, value), Value::Quantity(_, expected)) = (outputs[output], input) else {
                panic!("not a quantity")
            };
            let mut given: Vec<Option<Value>> = inputs.iter().copied().map(Some).collect();
            given[place] = None;
            let question = Backward { given, output, value, note: None };
            let Found::One(Place::At(found)) = solve(calculation, &question).unwrap().found else {
                panic!("not one")
            };
            prop_assert!((found - expected).abs() <= 1e-9 * expected);
        }
    }
}
