//! Class names by which a page's style sheet gives a line its weight, its pattern and its ink.

use crate::xml::id;
use crate::{Fill, Ink, Layer, LinePattern, LineWeight};

/// The classes of a layer: its own name, and how its lines are drawn.
pub(super) fn layer_classes(layer: &Layer) -> String {
    let weight = match layer.weight {
        LineWeight::Fine => "w-fine",
        LineWeight::Medium => "w-medium",
        LineWeight::Heavy => "w-heavy",
    };
    let pattern = match layer.pattern {
        LinePattern::Unbroken => "p-unbroken",
        LinePattern::Dashed => "p-dashed",
        LinePattern::DashDot => "p-dash-dot",
        LinePattern::DashDotDot => "p-dash-dot-dot",
        LinePattern::Dotted => "p-dotted",
    };
    format!(
        "of-{} {weight} {pattern} i-{}",
        id(&layer.name),
        ink(layer.ink)
    )
}

/// The class of a fill.
pub(super) fn fill_class(fill: Option<&Fill>) -> String {
    match fill {
        Some(Fill::Solid(of)) => format!("f-{}", ink(*of)),
        _ => "f-open".to_owned(),
    }
}

fn ink(ink: Ink) -> &'static str {
    match ink {
        Ink::Black => "black",
        Ink::Gray => "gray",
        Ink::Tint => "tint",
        Ink::Touch => "touch",
        Ink::Fails => "fails",
        Ink::Paper => "paper",
    }
}
