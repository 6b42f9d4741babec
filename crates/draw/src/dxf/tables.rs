//! The tables: line patterns, layers, the text style, the dimension style, and a record for every block.

use super::File;
use super::pairs::Pairs;
use crate::{Ink, Layer, LinePattern};

/// Handles that later sections refer to.
pub(super) struct Owners {
    /// The record of model space.
    pub(super) model: u32,
    /// The record of paper space.
    pub(super) paper: u32,
    /// The record of each dimension's block.
    pub(super) dimensions: Vec<u32>,
    /// The layout of model space.
    pub(super) model_layout: u32,
    /// The layout of paper space.
    pub(super) paper_layout: u32,
}

impl File<'_> {
    /// Writes all tables.
    pub(super) fn tables(&self, out: &mut Pairs) -> Owners {
        out.section("TABLES");
        self.viewport(out);
        self.line_patterns(out);
        self.layer_table(out);
        let style = text_style(out, self.each());
        table(out, "VIEW", 0);
        end(out);
        table(out, "UCS", 0);
        end(out);
        let names = table(out, "APPID", 1);
        record(out, "APPID", names, "AcDbRegAppTableRecord", "ACAD");
        out.whole(70, 0);
        end(out);
        self.dimension_style(out, style);
        let owners = self.block_records(out);
        out.end_section();
        owners
    }

    /// The view on opening: the whole scene.
    fn viewport(&self, out: &mut Pairs) {
        let reach = self.reach();
        let owner = table(out, "VPORT", 1);
        record(out, "VPORT", owner, "AcDbViewportTableRecord", "*Active");
        out.whole(70, 0);
        for (code, x, y) in [(10, 0.0, 0.0), (11, 1.0, 1.0)] {
            out.flat(code, crate::flat::Spot::new(x, y));
        }
        out.flat(12, reach.center());
        let high = reach.height().max(reach.width() / 1.5).max(1e-3);
        out.number(40, high * 1.1);
        out.number(41, 1.5);
        end(out);
    }

    /// The line patterns at the size of the model.
    fn line_patterns(&self, out: &mut Pairs) {
        let owner = table(out, "LTYPE", 7);
        for name in ["ByBlock", "ByLayer"] {
            pattern(out, owner, name, &[]);
        }
        for line in LinePattern::ALL {
            let dashes: Vec<f64> = line
                .dashes()
                .iter()
                .map(|dash| dash * self.each())
                .collect();
            pattern(out, owner, pattern_name(line), &dashes);
        }
        end(out);
    }

    /// The layers.
    fn layer_table(&self, out: &mut Pairs) {
        let count = i32::try_from(self.layers.len())
            .unwrap_or(i32::MAX)
            .saturating_add(2);
        let owner = table(out, "LAYER", count);
        for name in ["0", "Defpoints"] {
            record(out, "LAYER", owner, "AcDbLayerTableRecord", name);
            out.whole(70, 0);
            out.whole(62, 7);
            out.words(6, "Continuous");
            out.whole(290, i32::from(name == "0"));
        }
        for (name, layer) in self.layers.iter().zip(&self.drawing.layers) {
            layer_record(out, owner, name, layer);
        }
        end(out);
    }

    /// How dimensions look when another program draws them anew.
    fn dimension_style(&self, out: &mut Pairs, style: u32) {
        let owner = table(out, "DIMSTYLE", 1);
        out.classes(&["AcDbDimStyleTable"]);
        record(
            out,
            "DIMSTYLE",
            owner,
            "AcDbDimStyleTableRecord",
            "Standard",
        );
        out.whole(70, 0);
        for (code, number) in [
            (40, self.each()),
            (41, 2.5),
            (42, 1.2),
            (44, 1.6),
            (140, 2.5),
            (142, 1.3),
            (147, 0.8),
        ] {
            out.number(code, number);
        }
        for (code, number) in [(73, 0), (74, 0), (77, 1), (277, 2)] {
            out.whole(code, number);
        }
        out.refers(340, style);
        end(out);
    }

    /// A record for model space, paper space and each dimension.
    fn block_records(&self, out: &mut Pairs) -> Owners {
        let count = i32::try_from(self.measured.len())
            .unwrap_or(i32::MAX)
            .saturating_add(2);
        let (model_layout, paper_layout) = (out.fresh(), out.fresh());
        let owner = table(out, "BLOCK_RECORD", count);
        let block = |out: &mut Pairs, name: &str, layout: u32| {
            let handle = record(out, "BLOCK_RECORD", owner, "AcDbBlockTableRecord", name);
            out.refers(340, layout);
            out.whole(70, 0);
            handle
        };
        let model = block(out, "*Model_Space", model_layout);
        let paper = block(out, "*Paper_Space", paper_layout);
        let dimensions = (0..self.measured.len())
            .map(|index| block(out, &block_name(index), 0))
            .collect();
        end(out);
        Owners {
            model,
            paper,
            dimensions,
            model_layout,
            paper_layout,
        }
    }
}

/// The name of the block of a dimension.
pub(super) fn block_name(index: usize) -> String {
    format!("*D{}", index + 1)
}

/// Begins a table of so many records.
fn table(out: &mut Pairs, name: &str, count: i32) -> u32 {
    out.words(0, "TABLE");
    out.words(2, name);
    let handle = out.fresh();
    out.refers(5, handle);
    out.refers(330, 0);
    out.classes(&["AcDbSymbolTable"]);
    out.whole(70, count);
    handle
}

/// Ends a table.
fn end(out: &mut Pairs) {
    out.words(0, "ENDTAB");
}

/// Begins a record of a table.
fn record(out: &mut Pairs, kind: &str, owner: u32, class: &str, name: &str) -> u32 {
    let handle = out.begin(kind, owner);
    out.classes(&["AcDbSymbolTableRecord", class]);
    out.words(2, name);
    handle
}

/// One line pattern.
fn pattern(out: &mut Pairs, owner: u32, name: &str, dashes: &[f64]) {
    record(out, "LTYPE", owner, "AcDbLinetypeTableRecord", name);
    out.whole(70, 0);
    out.words(3, "");
    out.whole(72, 65);
    out.whole(73, i32::try_from(dashes.len()).unwrap_or(0));
    out.number(40, dashes.iter().sum());
    for (index, dash) in dashes.iter().enumerate() {
        out.number(49, if index % 2 == 0 { *dash } else { -dash });
        out.whole(74, 0);
    }
}

/// The name of a line pattern.
fn pattern_name(line: LinePattern) -> &'static str {
    match line {
        LinePattern::Unbroken => "Continuous",
        LinePattern::Dashed => "dashed",
        LinePattern::DashDot => "dash dot",
        LinePattern::DashDotDot => "dash dot dot",
        LinePattern::Dotted => "dotted",
    }
}

/// One layer of the scene.
fn layer_record(out: &mut Pairs, owner: u32, name: &str, layer: &Layer) {
    record(out, "LAYER", owner, "AcDbLayerTableRecord", name);
    out.whole(70, 0);
    out.whole(62, color(layer.ink));
    out.words(6, pattern_name(layer.pattern));
    out.whole(370, hundredths(layer));
}

/// The weight of a layer's lines in hundredths of a millimeter, one of the values that DXF knows.
fn hundredths(layer: &Layer) -> i32 {
    match layer.weight {
        crate::LineWeight::Fine => 18,
        crate::LineWeight::Medium => 35,
        crate::LineWeight::Heavy => 70,
    }
}

/// The indexed color of an ink; 7 is black on white and white on black.
pub(super) fn color(ink: Ink) -> i32 {
    match ink {
        Ink::Black | Ink::Paper => 7,
        Ink::Gray => 8,
        Ink::Tint => 254,
        Ink::Touch => 5,
        Ink::Fails => 30,
    }
}

/// The text style.
fn text_style(out: &mut Pairs, each: f64) -> u32 {
    let owner = table(out, "STYLE", 1);
    let handle = record(out, "STYLE", owner, "AcDbTextStyleTableRecord", "Standard");
    out.whole(70, 0);
    out.number(40, 0.0);
    out.number(41, 1.0);
    out.number(50, 0.0);
    out.whole(71, 0);
    out.number(42, 2.5 * each);
    out.words(3, "txt");
    out.words(4, "");
    end(out);
    handle
}
