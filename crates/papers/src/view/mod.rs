//! What a document shows, as plain text: the border between the site's findings and the page.
//!
//! Every value arrives printed, with its unit and tolerance, in the units of the site. The page adds marks, order
//! and rules, and never computes.

mod caution;
mod day_sheet;
mod document;
mod drawing;
mod finding;
mod labels;
mod pack;
mod question;
mod structure;
mod table;
mod templates;
mod verdict;
mod walk;
mod working;

pub use caution::{CAUTION_LINE, Caution, standing_cautions};
pub use day_sheet::{DaySheetView, HangingRow, HangingView, LiftRow};
pub use document::{Day, DocumentView, Fact, Paper};
pub use drawing::{Attachment, DrawingView};
pub use finding::{FindingView, Measure};
pub use labels::{LabelView, LabelsView, TablesView};
pub use pack::PackView;
pub use question::{QuestionGroup, QuestionRow, QuestionState};
pub use structure::{Input, InputGroup, StructureResult, StructureView};
pub use table::{Align, Cell, Column, Table};
pub use templates::TemplatesView;
pub use verdict::{Verdict, VerdictCounts};
pub use walk::{AssumedRow, MarginRow, OpenRow, ShareRow, WalkFinding, WalkView};
pub use working::{Working, WorkingLine};
