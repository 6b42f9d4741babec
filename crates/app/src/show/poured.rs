//! The smallest pad that holds, its concrete in volume and bags, and what asks for more.

use super::ranked::{details, ruled_out, standing};
use super::{width, wrapped};
use crate::tint::{paint, quiet, strong, touchable};
use design::{PadChoice, PadSize};

/// The pads for one foundation.
pub(crate) fn poured(choice: &PadChoice) -> String {
    let mut lines = vec![paint(&choice.pad, strong()), String::new()];
    if choice.best.is_empty() && choice.write.is_empty() {
        let none = format!(
            "{} sizes tried up to 8 ft (2.4 m) of side and 6 ft (1.8 m) of depth, none holds. Brace the load, or look for firmer ground.",
            choice.tried
        );
        lines.extend([wrapped(&none, 2, width()), String::new()]);
    }
    for (place, pad) in choice.best.iter().enumerate() {
        lines.extend(one(place, pad));
        lines.push(String::new());
    }
    if !choice.ruled_out.is_empty() {
        lines.push("  Smaller ones ruled out by".to_owned());
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

const FOOTER: &str = "Bags with a tenth for waste. Shore or slope a hole deeper than a person's waist, and have buried lines marked before \
you dig. Results support a competent person; local codes and the authority having jurisdiction prevail.";

fn one(place: usize, pad: &PadSize) -> Vec<String> {
    let what = if place == 0 {
        "smallest"
    } else {
        "smallest square"
    };
    let [length, across, depth] = &pad.size;
    let mut lines = vec![
        format!(
            "{:>3}  {}  {}  {}",
            place + 1,
            paint(what, touchable()),
            pad.volume,
            standing(&pad.asked)
        ),
        wrapped(
            &format!(
                "{length} along the gate by {across} across, {depth} deep: {} of concrete, or {} bags of {}.",
                pad.volume, pad.bags, pad.bag
            ),
            7,
            width(),
        ),
    ];
    lines.extend(details(&pad.asked, place == 0));
    lines.extend(pad.write.iter().map(|line| format!("       write  {line}")));
    lines
}
