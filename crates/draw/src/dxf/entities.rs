//! The entities: every mark of the scene at full size, and the dimensions with what they measure.

use super::File;
use super::names::text;
use super::pairs::Pairs;
use super::tables::{Owners, block_name, color};
use crate::flat::Spot;
use crate::mark::{Letter, Mark, Measured};
use crate::{Anchor, Ink};

impl File<'_> {
    /// Writes the scene into model space.
    pub(super) fn entities(&self, out: &mut Pairs, owners: &Owners) {
        out.section("ENTITIES");
        for layers in [&self.drawing.geometry, &self.drawing.words] {
            for (index, marks) in layers.iter().enumerate() {
                for mark in marks {
                    self.mark(out, mark, index, owners.model);
                }
            }
        }
        for (index, (layer, measured)) in self.measured.iter().enumerate() {
            self.dimension(out, &block_name(index), *layer, measured, owners.model);
        }
        out.end_section();
    }

    /// One mark; a dimension is written on its own, and clear paper under words isn't part of the model.
    pub(super) fn mark(&self, out: &mut Pairs, mark: &Mark, layer: usize, owner: u32) {
        match mark {
            Mark::Path {
                spots,
                closed,
                pen,
                fill,
            } => {
                if let Some(ink) = fill.filter(|ink| *ink != Ink::Paper) {
                    self.filled(out, spots, ink, layer, owner);
                }
                if pen.is_some() {
                    self.path(out, spots, *closed, layer, owner);
                }
            }
            Mark::Circle { center, radius, .. } => {
                self.begin(out, "CIRCLE", "AcDbCircle", layer, owner);
                out.point(10, self.point(*center));
                out.number(40, radius * self.each());
            }
            Mark::Arc {
                center,
                radius,
                start,
                sweep,
                ..
            } => {
                self.begin(out, "ARC", "AcDbCircle", layer, owner);
                out.point(10, self.point(*center));
                out.number(40, radius * self.each());
                out.classes(&["AcDbArc"]);
                out.number(50, start.to_degrees());
                out.number(51, (start + sweep).to_degrees().rem_euclid(360.0));
            }
            Mark::Letters(letter) => self.letters(out, letter, layer, owner),
            Mark::Group { marks, .. } => marks
                .iter()
                .for_each(|mark| self.mark(out, mark, layer, owner)),
            Mark::Ground(_) | Mark::Measured(_) => {}
        }
    }

    /// Begins an entity on a layer.
    fn begin(&self, out: &mut Pairs, kind: &str, class: &str, layer: usize, owner: u32) {
        out.begin(kind, owner);
        out.classes(&["AcDbEntity"]);
        out.words(8, self.layer(layer));
        out.classes(&[class]);
    }

    /// Straight lines.
    fn path(&self, out: &mut Pairs, spots: &[Spot], closed: bool, layer: usize, owner: u32) {
        if let ([from, to], false) = (spots, closed) {
            self.begin(out, "LINE", "AcDbLine", layer, owner);
            out.point(10, self.point(*from));
            out.point(11, self.point(*to));
        } else if spots.len() > 1 {
            self.begin(out, "LWPOLYLINE", "AcDbPolyline", layer, owner);
            out.whole(90, i32::try_from(spots.len()).unwrap_or(i32::MAX));
            out.whole(70, i32::from(closed));
            for spot in spots {
                out.flat(10, self.point(*spot));
            }
        }
    }

    /// An evenly filled outline.
    fn filled(&self, out: &mut Pairs, spots: &[Spot], ink: Ink, layer: usize, owner: u32) {
        if spots.len() < 3 {
            return;
        }
        out.begin("HATCH", owner);
        out.classes(&["AcDbEntity"]);
        out.words(8, self.layer(layer));
        out.whole(62, color(ink));
        out.classes(&["AcDbHatch"]);
        out.point(10, Spot::new(0.0, 0.0));
        for (code, number) in [(210, 0.0), (220, 0.0), (230, 1.0)] {
            out.number(code, number);
        }
        out.words(2, "SOLID");
        for (code, number) in [(70, 1), (71, 0), (91, 1), (92, 3), (72, 0), (73, 1)] {
            out.whole(code, number);
        }
        out.whole(93, i32::try_from(spots.len()).unwrap_or(i32::MAX));
        for spot in spots {
            out.flat(10, self.point(*spot));
        }
        for (code, number) in [(97, 0), (75, 0), (76, 1), (98, 0)] {
            out.whole(code, number);
        }
    }

    /// One line of words.
    fn letters(&self, out: &mut Pairs, letter: &Letter, layer: usize, owner: u32) {
        let align = match letter.anchor {
            Anchor::Start => 0,
            Anchor::Middle => 1,
            Anchor::End => 2,
        };
        let at = self.point(letter.at);
        self.begin(out, "TEXT", "AcDbText", layer, owner);
        out.point(10, at);
        out.number(40, letter.height * self.each());
        out.words(1, &text(&letter.words));
        out.number(50, letter.angle.to_degrees().rem_euclid(360.0));
        out.words(7, "Standard");
        out.whole(72, align);
        if align != 0 {
            out.point(11, at);
        }
        out.classes(&["AcDbText"]);
        out.whole(73, 0);
    }

    /// One stretch of a dimension.
    fn dimension(
        &self,
        out: &mut Pairs,
        block: &str,
        layer: usize,
        measured: &Measured,
        owner: u32,
    ) {
        let (from, to) = (self.point(measured.from), self.point(measured.to));
        self.begin(out, "DIMENSION", "AcDbDimension", layer, owner);
        out.words(2, block);
        out.point(10, self.point(measured.line));
        out.point(11, self.point(measured.middle));
        out.whole(70, 32 + 128 + i32::from(measured.aligned));
        out.words(1, &text(&measured.words));
        out.number(42, to.minus(from).along(Spot::unit(measured.angle)).abs());
        out.words(3, "Standard");
        out.classes(&["AcDbAlignedDimension"]);
        out.point(13, from);
        out.point(14, to);
        if !measured.aligned {
            out.number(50, measured.angle.to_degrees().rem_euclid(360.0));
            out.classes(&["AcDbRotatedDimension"]);
        }
    }
}
