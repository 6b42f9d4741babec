//! Ways to anchor a plate in the order in which they suit, and what rules the others out.

use super::ranked::{details, ruled_out, standing};
use super::{width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{AnchorChoice, AnchorWay};

/// The ways for one set of anchors.
pub(crate) fn anchored(choice: &AnchorChoice) -> String {
    let mut lines = vec![
        paint(format!("{}, holds {}", choice.set, choice.holds), strong()),
        String::new(),
        wrapped(&tried(choice), 2, width()),
        String::new(),
    ];
    for (place, way) in choice.best.iter().enumerate() {
        lines.extend(one(place + 1, way));
        lines.push(String::new());
    }
    if !choice.ruled_out.is_empty() {
        lines.push("  Ruled out by".to_owned());
        lines.extend(choice.ruled_out.iter().map(ruled_out));
        lines.push(String::new());
    }
    if !choice.write.is_empty() {
        lines.push("  Missing, or out of reach".to_owned());
        lines.extend(choice.write.iter().map(|line| wrapped(line, 7, width())));
        lines.push(String::new());
    }
    lines.push(paint(wrapped(FOOTER, 0, width()), quiet()));
    lines.join("\n")
}

const FOOTER: &str = "The plate is taken as drilled for the anchors, its holes 1/16 in (1.6 mm) wider. Price without labor, drill bits and waste beyond a quarter of adhesive. Find bars and pipes before you drill. \
Results support a competent person; anchors that carry a gate are for a licensed engineer where the law wants one, and the \
product's sheet and local codes prevail.";

fn tried(choice: &AnchorChoice) -> String {
    let stays = if choice.pattern_stays {
        " The pattern stays as it is: the plate is in hand, or plate, concrete and loads do not say enough to move anchors."
    } else {
        ""
    };
    match choice.holding {
        0 => format!(
            "{} ways tried, none holds.{stays} A larger plate, a larger or thicker pad, or another anchor may do.",
            choice.tried
        ),
        holding => format!(
            "{} ways tried, {holding} hold with every distance kept.{stays}",
            choice.tried
        ),
    }
}

fn one(place: usize, way: &AnchorWay) -> Vec<String> {
    let price = way.asked.price.as_deref().unwrap_or("no price");
    let mut lines = vec![
        format!(
            "{place:>3}  {}  {price}  {}",
            paint(&way.asked.part, touchable()),
            standing(&way.asked)
        ),
        wrapped(
            &format!(
                "{}, {} deep: uses {} of the {}.",
                way.pattern, way.embedment, way.used, way.used_of
            ),
            7,
            width(),
        ),
    ];
    if place == 1 {
        lines.extend(details(&way.asked, true));
        lines.extend(way.write.iter().map(|line| format!("       write  {line}")));
    }
    lines
}
