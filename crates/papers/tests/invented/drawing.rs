//! A plan on its own sheet: 17 × 11 in, with border, scale bar, and a few hundred lines.

use papers::view::DrawingView;
use quantity::Length;
use quantity::units::length::inch;
use std::fmt::Write;

pub(crate) fn plan() -> DrawingView {
    DrawingView {
        title: "Plan".to_owned(),
        scale: "1 : 48".to_owned(),
        width: Length::new::<inch>(17.0),
        height: Length::new::<inch>(11.0),
        alternative: "Plan of the gate at 1 : 48. The leaf closes from right to left across a 20 ft opening; the operator \
                      stands inside the property at the right; two photo-eyes look across the lane."
            .to_owned(),
        svg: svg(),
    }
}

fn svg() -> String {
    let mut svg = String::from(
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 431.8 279.4' width='431.8mm' height='279.4mm'>\
         <rect x='10' y='10' width='411.8' height='259.4' fill='none' stroke='#111' stroke-width='0.5'/>",
    );
    for step in 0..150 {
        let x = 20.0 + f64::from(step) * 2.6;
        let _ = write!(
            svg,
            "<line x1='{x:.2}' y1='60' x2='{x:.2}' y2='200' stroke='#888' stroke-width='0.1'/>"
        );
    }
    svg.push_str(
        "<rect x='80' y='120' width='200' height='4' fill='#ddd' stroke='#111' stroke-width='0.35'/>\
         <text x='180' y='116' font-family='Inter' font-size='4' text-anchor='middle'>20 ft 0 in ± 1/2 in 🔒</text>\
         <text x='20' y='260' font-family='Inter' font-size='5'>Plan · 1 : 48</text></svg>",
    );
    svg
}
