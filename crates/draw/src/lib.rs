//! Scale drawings: scenes of geometry on layers, laid out on a sheet of paper and written as SVG or DXF.
//!
//! A [`Scene`] is geometry and words in site coordinates: right-handed, meters inside, x to the right and y up on the
//! sheet. A [`Sheet`] lays it out on paper at a true standard scale with border, title block, north, scale bar and
//! legend; the resulting [`Drawing`] is written by [`Drawing::svg`] and [`Drawing::dxf`]. Nothing here knows what is
//! drawn, reads a file or asks the time: the same scene gives the same bytes.

pub mod symbols;

mod cloud;
mod detail;
mod dimension;
mod dimension_text;
mod drawing;
mod dxf;
mod error;
mod figure;
mod flat;
mod label;
mod layer;
mod layout;
mod lettering;
mod mark;
mod north;
mod patch;
mod plot;
mod point;
mod room;
mod scale;
mod scale_bar;
mod scene;
mod screen;
mod sheet;
mod svg;
mod symbol;
mod text_box;
mod tile;
mod wording;
mod xml;

pub use dimension::{Dimension, DimensionLine, Measure};
pub use dimension_text::dimension_text;
pub use drawing::Drawing;
pub use dxf::DxfUnit;
pub use error::DrawError;
pub use figure::{Figure, Fill, Hatch};
pub use label::{LabelRequest, PlacedLabel, place_labels};
pub use layer::{Ink, Layer, LinePattern, LineWeight};
pub use lettering::text_width;
pub use north::North;
pub use plot::{
    Axis, Chart, Curve, Level, LevelOf, Levels, Mark, Marked, Part, Plot, Series, Span, Stretch,
};
pub use point::Point;
pub use scale::{Scale, ScaleChoice};
pub use scale_bar::ScaleBar;
pub use scene::{Content, LayerId, Scene, Shape};
pub use screen::{Group, Screen};
pub use sheet::{Orientation, Paper, Sheet, TitleBlock};
pub use symbol::{Letters, Placement, Symbol};
pub use text_box::{TextBox, overlapping};
pub use tile::{FullSize, FullSizeWords};
pub use wording::{Anchor, Label, Note, Text, TextHeight};
