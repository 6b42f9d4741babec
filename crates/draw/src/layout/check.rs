//! Whether every number of a scene can be drawn.

use crate::{Content, DimensionLine, DrawError, Point, Scene, Shape, TextHeight};
use quantity::{Length, Quantity};

/// The farthest that anything may lie from the origin (m).
const FARTHEST: f64 = 1e6;

/// Refuses a scene with a coordinate that has no value or lies absurdly far out.
pub(crate) fn check(scene: &Scene) -> Result<(), DrawError> {
    scene
        .shapes()
        .iter()
        .enumerate()
        .try_for_each(|(index, shape)| {
            let numbers = numbers(&shape.content);
            if numbers.iter().any(|number| !number.is_finite()) {
                return Err(DrawError::NoValue {
                    shape: name(index, shape),
                });
            }
            if numbers.iter().any(|number| number.abs() > FARTHEST) {
                return Err(DrawError::TooFar {
                    shape: name(index, shape),
                });
            }
            Ok(())
        })
}

/// A shape's title, or its place in the scene.
fn name(index: usize, shape: &Shape) -> String {
    shape
        .title
        .clone()
        .unwrap_or_else(|| format!("shape {} of the drawing", index + 1))
}

/// Every number that a content is made of.
fn numbers(content: &Content) -> Vec<f64> {
    let point = |point: Point| vec![point.x.base(), point.y.base()];
    match content {
        Content::Figure(figure) => figure.numbers(),
        Content::Text(text) => [
            point(text.at),
            vec![text.rotation.base(), height(text.height)],
        ]
        .concat(),
        Content::Label(label) => [point(label.at), vec![height(label.height)]].concat(),
        Content::Note(note) => [
            point(note.at),
            vec![note.toward.base(), height(note.height)],
        ]
        .concat(),
        Content::Dimension(dimension) => {
            let mut all: Vec<f64> = dimension
                .points
                .iter()
                .flat_map(|spot| point(*spot))
                .collect();
            all.extend(match dimension.line {
                DimensionLine::Through(through) => point(through),
                DimensionLine::Away(off) => vec![off.base()],
                DimensionLine::Beyond(beside, off) => [point(beside), vec![off.base()]].concat(),
            });
            all
        }
        Content::Symbol(placement) => {
            let mut all = point(placement.at);
            all.push(placement.rotation.base());
            all.extend(
                placement
                    .symbol
                    .figures
                    .iter()
                    .flat_map(crate::Figure::numbers),
            );
            all.extend(placement.symbol.letters.iter().flat_map(|letters| {
                [letters.at.x, letters.at.y, letters.height].map(Length::base)
            }));
            all
        }
    }
}

/// The number in a height.
fn height(height: TextHeight) -> f64 {
    match height {
        TextHeight::Paper(length) | TextHeight::Site(length) => length.base(),
    }
}
