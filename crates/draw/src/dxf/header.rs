//! The header: version, unit, reach of the drawing and the next free handle.

use super::File;
use super::pairs::Pairs;
use crate::flat::{Bounds, Spot};

impl File<'_> {
    /// Writes the header and the empty list of classes.
    pub(super) fn header(&self, out: &mut Pairs, next_handle: u32) {
        let reach = self.reach();
        out.section("HEADER");
        variable(out, "$ACADVER", |out| out.words(1, "AC1024"));
        variable(out, "$DWGCODEPAGE", |out| out.words(3, "ANSI_1252"));
        variable(out, "$INSBASE", |out| out.point(10, Spot::new(0.0, 0.0)));
        variable(out, "$EXTMIN", |out| out.point(10, reach.low));
        variable(out, "$EXTMAX", |out| out.point(10, reach.high));
        variable(out, "$LTSCALE", |out| out.number(40, 1.0));
        variable(out, "$DIMSCALE", |out| out.number(40, self.each()));
        variable(out, "$MEASUREMENT", |out| {
            out.whole(70, i32::from(self.unit.is_metric()));
        });
        variable(out, "$INSUNITS", |out| out.whole(70, self.unit.code()));
        variable(out, "$HANDSEED", |out| out.refers(5, next_handle));
        out.end_section();
        out.section("CLASSES");
        out.end_section();
    }

    /// How far the scene reaches in the model.
    pub(super) fn reach(&self) -> Bounds {
        let mut paper = Bounds::EMPTY;
        let all = self
            .drawing
            .geometry
            .iter()
            .chain(&self.drawing.words)
            .flatten();
        all.for_each(|mark| mark.bound(&mut paper));
        if paper.is_empty() {
            return Bounds::new(Spot::new(0.0, 0.0), Spot::new(1.0, 1.0));
        }
        Bounds::new(self.point(paper.low), self.point(paper.high))
    }
}

/// One variable of the header.
fn variable(out: &mut Pairs, name: &str, value: impl FnOnce(&mut Pairs)) {
    out.words(9, name);
    value(out);
}
