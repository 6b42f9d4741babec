//! Writes the scene of a drawing as DXF (R2010, text form): model space at full size, layers in plain words.
//!
//! The writer is our own because the library that was tried writes the clock into the file and handles that an
//! independent reader has to repair; this one passes that reader's audit without a repair.

mod blocks;
mod entities;
mod header;
mod names;
mod objects;
mod pairs;
mod tables;

use crate::Drawing;
use crate::flat::Spot;
use crate::mark::{Mark, Measured};
use names::layer_names;
use pairs::Pairs;

/// The unit of a DXF file's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DxfUnit {
    /// Meters.
    Meters,
    /// Millimeters.
    Millimeters,
    /// Feet.
    Feet,
    /// Inches.
    Inches,
}

impl DxfUnit {
    /// Its number in the header. Source: the DXF reference, `$INSUNITS`.
    fn code(self) -> i32 {
        match self {
            DxfUnit::Inches => 1,
            DxfUnit::Feet => 2,
            DxfUnit::Millimeters => 4,
            DxfUnit::Meters => 6,
        }
    }

    /// How many of it are in a meter.
    fn in_a_meter(self) -> f64 {
        match self {
            DxfUnit::Inches => 1.0 / 0.0254,
            DxfUnit::Feet => 1.0 / 0.3048,
            DxfUnit::Millimeters => 1000.0,
            DxfUnit::Meters => 1.0,
        }
    }

    /// Whether it is metric.
    fn is_metric(self) -> bool {
        matches!(self, DxfUnit::Millimeters | DxfUnit::Meters)
    }
}

impl Drawing {
    /// The scene, without the sheet around it, as DXF at full size in a unit. The same drawing gives the same bytes.
    ///
    /// Every stretch of a dimension is a true dimension that measures its points and shows the words of the sheet.
    pub fn dxf(&self, unit: DxfUnit) -> String {
        let file = File {
            drawing: self,
            unit,
            layers: layer_names(&self.layers),
            measured: self.measured(),
        };
        file.write()
    }

    /// Every stretch of a dimension with the place of its layer, in the order of the drawing.
    fn measured(&self) -> Vec<(usize, &Measured)> {
        let mut all = Vec::new();
        for (layer, marks) in self.words.iter().enumerate() {
            for mark in marks {
                find(mark, layer, &mut all);
            }
        }
        all
    }
}

/// The dimensions in a mark.
fn find<'a>(mark: &'a Mark, layer: usize, all: &mut Vec<(usize, &'a Measured)>) {
    match mark {
        Mark::Group { marks, .. } => marks.iter().for_each(|mark| find(mark, layer, all)),
        Mark::Measured(measured) => all.push((layer, measured)),
        _ => {}
    }
}

/// A file to be written.
struct File<'a> {
    drawing: &'a Drawing,
    unit: DxfUnit,
    /// The layers' names as DXF allows them.
    layers: Vec<String>,
    measured: Vec<(usize, &'a Measured)>,
}

impl File<'_> {
    /// A spot of the paper as a point of the model.
    fn point(&self, spot: Spot) -> Spot {
        let site = self.drawing.view.site(spot);
        let each = self.unit.in_a_meter();
        Spot::new(site.x * each, site.y * each)
    }

    /// Model units to a millimeter of paper.
    fn each(&self) -> f64 {
        self.unit.in_a_meter() / self.drawing.view.per_meter
    }

    /// The name of a layer.
    fn layer(&self, index: usize) -> &str {
        self.layers.get(index).map_or("0", String::as_str)
    }

    /// The whole file. The header is written last, since it tells the next free handle.
    fn write(&self) -> String {
        let mut body = Pairs::new();
        let owners = self.tables(&mut body);
        self.blocks(&mut body, &owners);
        self.entities(&mut body, &owners);
        objects::objects(&mut body, &owners);
        let mut file = Pairs::new();
        self.header(&mut file, body.next_handle());
        file.finish(&body)
    }
}
