//! The blocks: model space, paper space, and the lines and words of each dimension.

use super::File;
use super::pairs::Pairs;
use super::tables::{Owners, block_name};
use crate::flat::Spot;

impl File<'_> {
    /// Writes all blocks.
    pub(super) fn blocks(&self, out: &mut Pairs, owners: &Owners) {
        out.section("BLOCKS");
        for (name, owner) in [
            ("*Model_Space", owners.model),
            ("*Paper_Space", owners.paper),
        ] {
            begin(out, name, owner, 0);
            finish(out, owner);
        }
        for (index, ((layer, measured), owner)) in
            self.measured.iter().zip(&owners.dimensions).enumerate()
        {
            begin(out, &block_name(index), *owner, 1);
            for mark in &measured.marks {
                self.mark(out, mark, *layer, *owner);
            }
            finish(out, *owner);
        }
        out.end_section();
    }
}

/// Begins a block.
fn begin(out: &mut Pairs, name: &str, owner: u32, flags: i32) {
    out.begin("BLOCK", owner);
    out.classes(&["AcDbEntity"]);
    out.words(8, "0");
    out.classes(&["AcDbBlockBegin"]);
    out.words(2, name);
    out.whole(70, flags);
    out.point(10, Spot::new(0.0, 0.0));
    out.words(3, name);
    out.words(1, "");
}

/// Ends a block.
fn finish(out: &mut Pairs, owner: u32) {
    out.begin("ENDBLK", owner);
    out.classes(&["AcDbEntity"]);
    out.words(8, "0");
    out.classes(&["AcDbBlockEnd"]);
}
