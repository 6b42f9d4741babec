//! What a document shows, as plain text: the border between the site's findings and the page.
//!
//! Every value arrives printed, with its unit and tolerance, in the units of the site. The page adds marks, order
//! and rules, and never computes.

mod caution;
mod document;
mod drawing;
mod finding;
mod pack;
mod question;
mod table;
mod verdict;
mod working;

pub use caution::{CAUTION_LINE, Caution, standing_cautions};
pub use document::{Day, DocumentView, Fact, Paper};
pub use drawing::{Attachment, DrawingView};
pub use finding::{FindingView, Measure};
pub use pack::PackView;
pub use question::{QuestionGroup, QuestionRow, QuestionState};
pub use table::{Align, Cell, Column, Table};
pub use verdict::{Verdict, VerdictCounts};
pub use working::{Working, WorkingLine};
