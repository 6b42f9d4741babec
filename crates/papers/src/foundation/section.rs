//! A foundation cut through: depth, frost, anchors, conduits, and the ground beside it.

use super::figure::Block;
use super::layers::Layers;
use super::pattern::Pattern;
use super::plan::meters;
use super::standing::Shape;
use crate::plan::gate::nominal;
use draw::{Dimension, DimensionLine, Figure, Fill, Hatch, Ink, Label, Point, Scene, Text};
use quantity::{Length, Quantity as _};

/// How far what stands on it is drawn above the top, as a share of the depth.
pub(super) const ABOVE: f64 = 0.18;

/// How far the ground is drawn to either side, as a share of the half width.
const BESIDE: f64 = 0.35;

/// From the section to a row of dimensions, and from row to row (mm).
const FIRST_ROW: f64 = 7.0;
const NEXT_ROW: f64 = 8.0;

/// Draws the section with the middle of its top at a point.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, block: &Block<'_>, top: &Point) {
    let cut = Cut { block, top: *top };
    cut.draw_ground(scene, layers);
    cut.draw_concrete(scene, layers);
    cut.draw_things(scene, layers);
    if !block.cut_across() {
        for stub in &block.stubs {
            cut.draw_stub(scene, layers, stub.at.x.base(), stub.radius);
        }
        for pattern in &block.patterns {
            cut.draw_anchors(scene, layers, pattern);
        }
    }
    cut.measure(scene, layers);
    let words = if block.cut_across() {
        "section across, seen from the latching side"
    } else {
        "section along the gate line, seen from the road"
    };
    let under = cut.at(0.0, -block.depth * 1.1);
    scene.add(layers.notes, Text::new(under, words));
}

struct Cut<'a, 'b> {
    block: &'a Block<'b>,
    top: Point,
}

impl Cut<'_, '_> {
    /// A point of the section: to the right of its middle and above its top (m).
    fn at(&self, right: f64, up: f64) -> Point {
        self.top.moved(meters(right), meters(up))
    }

    fn draw_ground(&self, scene: &mut Scene, layers: &Layers) {
        let half = self.block.half_section();
        let far = half * (1.0 + BESIDE);
        let ground = -self.block.level;
        let thick = 0.05 * self.block.depth;
        for side in [-1.0, 1.0] {
            let (near, out) = (side * half, side * far);
            let line = Figure::line(self.at(near, ground), self.at(out, ground));
            scene.add_titled(layers.earth, "ground", line);
            let corners = [
                self.at(near, ground),
                self.at(out, ground),
                self.at(out, ground - thick),
                self.at(near, ground - thick),
            ];
            let hatched = Fill::Hatched(Hatch::cut());
            scene.add(layers.earth, Figure::area(corners, hatched));
            if let Some(frost) = self.block.frost {
                let level = ground - frost;
                let line = Figure::line(self.at(near, level), self.at(out, level));
                scene.add_titled(layers.frost, "depth of frost", line);
            }
        }
        scene.add(layers.notes, Label::new(self.at(-far, ground), "ground"));
        if let Some(frost) = self.block.frost {
            let at = self.at(far, ground - frost);
            scene.add(layers.notes, Label::new(at, "frost line"));
        }
    }

    fn draw_concrete(&self, scene: &mut Scene, layers: &Layers) {
        let half = self.block.half_section();
        let outline = Figure::rectangle(
            self.at(-half, -self.block.depth),
            self.at(half, 0.0),
            Fill::Hatched(Hatch::wide()),
        );
        let title = format!("foundation {}, cut through", self.block.foundation.id);
        scene.add_titled(layers.concrete, title, outline);
    }

    fn draw_things(&self, scene: &mut Scene, layers: &Layers) {
        for thing in &self.block.things {
            let (at, across) = (thing.at.x.base(), self.block.cut_across());
            let at = if across { -thing.at.y.base() } else { at };
            let wide = match thing.shape {
                Shape::Square(along, depth) => {
                    if across {
                        depth
                    } else {
                        along
                    }
                }
                Shape::Round(diameter) => diameter,
                Shape::Unknown => continue,
            };
            let (half, high) = (wide.base() / 2.0, ABOVE * self.block.depth);
            let sides = [-half, half].map(|side| at + side);
            for side in sides {
                let line = Figure::line(self.at(side, 0.0), self.at(side, high));
                scene.add_titled(layers.standing, thing.what.as_str(), line);
            }
            let (left, right) = (sides[0], sides[1]);
            let step = 0.06 * high;
            let broken = Figure::path([
                self.at(left - half * 0.3, high),
                self.at(at - step, high),
                self.at(at - step * 0.4, high + step),
                self.at(at + step * 0.4, high - step),
                self.at(at + step, high),
                self.at(right + half * 0.3, high),
            ]);
            scene.add_titled(layers.dimensions, "goes on", broken);
        }
    }

    fn draw_stub(&self, scene: &mut Scene, layers: &Layers, x: f64, radius: Option<Length>) {
        let radius = radius.map_or(0.01, quantity::Quantity::base);
        let high = 0.6 * ABOVE * self.block.depth;
        for side in [-radius, radius] {
            let line = Figure::line(
                self.at(x + side, -self.block.depth),
                self.at(x + side, high),
            );
            scene.add_titled(layers.conduits, "conduit that comes up", line);
        }
    }

    fn draw_anchors(&self, scene: &mut Scene, layers: &Layers, pattern: &Pattern<'_>) {
        let anchor = pattern.anchor;
        let under = nominal(anchor.stand_off.as_ref()).map_or(0.0, quantity::Quantity::base);
        let thick = nominal(anchor.plate_thickness.as_ref()).map_or(0.01, quantity::Quantity::base);
        let middle = pattern.middle.x.base();
        if let Some((length, _)) = pattern.plate {
            let half = length.base();
            let plate = Figure::rectangle(
                self.at(middle - half, under),
                self.at(middle + half, under + thick),
                Fill::Solid(Ink::Tint),
            );
            scene.add_titled(layers.standing, "plate", plate);
        }
        let Some(deep) = nominal(anchor.embedment.as_ref()).map(quantity::Quantity::base) else {
            return;
        };
        let radius = nominal(anchor.diameter.as_ref()).map_or(0.008, |it| it.base() / 2.0);
        let columns = super::pattern::distinct(pattern.places.iter().map(|at| at.x));
        for x in columns.into_iter().map(quantity::Quantity::base) {
            let rod = Figure::rectangle(
                self.at(x - radius, -deep),
                self.at(x + radius, under + thick + 3.0 * radius),
                Fill::Solid(Ink::Paper),
            );
            scene.add_titled(layers.anchors, format!("anchor for {}", anchor.holds), rod);
            if anchor.kind.is_some_and(site::AnchorKind::is_cast_in) {
                let head = Figure::rectangle(
                    self.at(x - 1.8 * radius, -deep - radius),
                    self.at(x + 1.8 * radius, -deep),
                    Fill::Solid(Ink::Paper),
                );
                scene.add_titled(layers.anchors, "head or nut", head);
            }
        }
    }

    /// Depth, height above the ground, frost, and the embedment of the deepest anchors.
    fn measure(&self, scene: &mut Scene, layers: &Layers) {
        let half = self.block.half_section();
        let far = half * (1.0 + BESIDE);
        let (depth, level) = (self.block.depth, self.block.level);
        let known = self.block.foundation.depth.is_some();
        let mut right = FIRST_ROW;
        if known {
            self.upright(scene, layers, ("depth", far), (-depth, 0.0), right);
            right += NEXT_ROW;
        }
        if level.abs() > 0.001 {
            let said = draw::dimension_text(meters(level), scene.units);
            let words = if level > 0.0 { "above" } else { "below" };
            let line = self.beyond(far, right);
            let points = [self.at(far, -level), self.at(far, 0.0)];
            let dimension =
                Dimension::vertical(points, line).words([format!("top {said} {words} the ground")]);
            scene.add_titled(layers.dimensions, "top and ground", dimension);
        }
        let mut left = -FIRST_ROW;
        let deepest = |pattern: &Pattern<'_>| nominal(pattern.anchor.embedment.as_ref());
        let mut depths: Vec<f64> = self
            .block
            .patterns
            .iter()
            .filter_map(deepest)
            .map(quantity::Quantity::base)
            .collect();
        depths.sort_by(f64::total_cmp);
        depths.dedup_by(|a, b| (*a - *b).abs() < 0.001);
        if !self.block.cut_across() {
            for deep in depths {
                self.upright(scene, layers, ("embedment", -far), (-deep, 0.0), left);
                left -= NEXT_ROW;
            }
        }
        if let Some(frost) = self.block.frost {
            let ends = (-level - frost, -level);
            self.upright(scene, layers, ("frost", -far), ends, left);
        }
    }

    fn beyond(&self, far: f64, away: f64) -> DimensionLine {
        DimensionLine::Beyond(self.at(far, 0.0), meters(away / 1000.0))
    }

    fn upright(
        &self,
        scene: &mut Scene,
        layers: &Layers,
        (what, far): (&str, f64),
        (from, to): (f64, f64),
        away: f64,
    ) {
        let said = draw::dimension_text(meters(to - from), scene.units);
        let points = [self.at(far, from), self.at(far, to)];
        let dimension =
            Dimension::vertical(points, self.beyond(far, away)).words([format!("{what} {said}")]);
        scene.add_titled(layers.dimensions, what, dimension);
    }
}
