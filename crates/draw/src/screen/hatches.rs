//! Hatches as patterns in screen units.

use super::PER_MILLIMETER;
use crate::Hatch;
use crate::xml::number;
use quantity::Quantity as _;
use std::fmt::Write as _;

/// The hatches of a drawing, each once.
#[derive(Debug, Default)]
pub(super) struct Hatches(Vec<Hatch>);

impl Hatches {
    /// The name of a hatch in the drawing.
    pub(super) fn name(&mut self, hatch: Hatch) -> String {
        let known = self.0.iter().position(|known| *known == hatch);
        let index = known.unwrap_or_else(|| {
            self.0.push(hatch);
            self.0.len() - 1
        });
        format!("hatch-{index}")
    }

    /// Their definitions, at so many meters to a screen unit.
    pub(super) fn defined(&self, unit: f64) -> String {
        let mut out = String::from("<defs>");
        for (index, hatch) in self.0.iter().enumerate() {
            let step = (hatch.spacing.base() * 1000.0).max(0.6) * PER_MILLIMETER * 1.6;
            let turn = -hatch.angle.base().to_degrees();
            let crossed = if hatch.crossed {
                format!("M0 0V{}", number(step))
            } else {
                String::new()
            };
            let _ = write!(
                out,
                "<pattern id=\"hatch-{index}\" class=\"hatch\" patternUnits=\"userSpaceOnUse\" width=\"{step}\" height=\"{step}\" \
                 data-turn=\"{turn}\" patternTransform=\"rotate({turn}) scale({unit:.6})\"><path d=\"M0 0H{step}{crossed}\"/></pattern>",
                step = number(step),
                turn = number(turn),
            );
        }
        out.push_str("</defs>\n");
        out
    }
}
