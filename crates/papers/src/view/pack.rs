//! The design pack.

use super::caution::Caution;
use super::day_sheet::DaySheetView;
use super::document::{DocumentView, Fact};
use super::drawing::{Attachment, DrawingView};
use super::finding::FindingView;
use super::question::QuestionGroup;
use super::structure::StructureView;
use super::table::Table;
use super::verdict::VerdictCounts;
use super::walk::WalkView;
use serde::Serialize;

/// All that a pack shows. Order is kept everywhere: the caller puts the worst finding first.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PackView {
    /// What the document says of itself.
    pub document: DocumentView,
    /// Facts of the site, for the cover: six to twelve read best.
    pub facts: Vec<Fact>,
    /// How many findings have each verdict.
    pub counts: VerdictCounts,
    /// What the counts come to, as one sentence: `Two findings fail; the gate is not to go into service.`
    pub summary: String,
    /// The cautions, for the cover and the last sheet.
    pub cautions: Vec<Caution>,
    /// The findings, worst first.
    pub findings: Vec<FindingView>,
    /// The questions that apply to the site, by part of the trade.
    pub questions: Vec<QuestionGroup>,
    /// The walk test of each gate.
    pub walks: Vec<WalkView>,
    /// What stands for structure, with its inputs and factors; nothing where nothing does.
    pub structure: Option<StructureView>,
    /// What is lifted and hung; nothing where the site lists neither.
    pub day_sheet: Option<DaySheetView>,
    /// Device schedule, cable schedule and whatever else is a table.
    pub schedules: Vec<Table>,
    /// The drawings, each on its own sheet.
    pub drawings: Vec<DrawingView>,
    /// Files that travel inside the PDF: the site file first.
    pub attachments: Vec<Attachment>,
}
