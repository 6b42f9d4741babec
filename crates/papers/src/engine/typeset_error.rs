//! What can go wrong when a document is set.

use super::world::ShelfWorld;
use std::fmt;
use typst::World;
use typst::WorldExt;
use typst::diag::SourceDiagnostic;

/// A document that could not be set.
///
/// A site cannot cause these: its text is data. They point at a template or a drawing of this program.
#[derive(Debug, thiserror::Error)]
pub enum TypesetError {
    /// The first template's name cannot be the name of a file.
    #[error("the document could not be set: no template is called `{0}`")]
    NoSuchTemplate(String),
    /// The data has a form that the templates cannot be given.
    #[error("the document could not be set: its data cannot be handed to the template ({0})")]
    Data(String),
    /// The archival and accessibility levels exclude each other.
    #[error("the document could not be set: its levels do not go together ({0})")]
    Standards(String),
    /// A template is wrong.
    #[error("the document could not be set; this is a fault of the program, not of the site file:\n{}", listed(.0))]
    Layout(Vec<Complaint>),
    /// The document breaks its archival or accessibility level.
    #[error("the document could not be made archival and accessible; this is a fault of the program, not of the site file:\n{}", listed(.0))]
    Standard(Vec<Complaint>),
}

/// One thing that the typesetter objects to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Complaint {
    /// File and line, where known: `findings.typ:12`.
    pub place: Option<String>,
    /// What is wrong.
    pub message: String,
    /// What may mend it.
    pub hints: Vec<String>,
}

impl fmt::Display for Complaint {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let place = self.place.as_deref().unwrap_or("the document");
        write!(formatter, "  {place}: {}", self.message)?;
        for hint in &self.hints {
            write!(formatter, "\n    {hint}")?;
        }
        Ok(())
    }
}

impl TypesetError {
    #[allow(
        clippy::needless_pass_by_value,
        reason = "taken as the target of `map_err`"
    )]
    pub(super) fn data(fault: serde_json::Error) -> Self {
        Self::Data(fault.to_string())
    }

    pub(super) fn layout(world: &ShelfWorld<'_>, faults: &[SourceDiagnostic]) -> Self {
        Self::Layout(complaints(world, faults))
    }

    pub(super) fn standard(world: &ShelfWorld<'_>, faults: &[SourceDiagnostic]) -> Self {
        Self::Standard(complaints(world, faults))
    }
}

fn complaints(world: &ShelfWorld<'_>, faults: &[SourceDiagnostic]) -> Vec<Complaint> {
    faults.iter().map(|fault| complaint(world, fault)).collect()
}

fn complaint(world: &ShelfWorld<'_>, fault: &SourceDiagnostic) -> Complaint {
    Complaint {
        place: place(world, fault),
        message: fault.message.to_string(),
        hints: fault.hints.iter().map(|hint| hint.v.to_string()).collect(),
    }
}

fn place(world: &ShelfWorld<'_>, fault: &SourceDiagnostic) -> Option<String> {
    let id = fault.span.id()?;
    let name = id.get().vpath().get_without_slash().to_owned();
    let line = world.range(fault.span).and_then(|range| {
        let source = world.source(id).ok()?;
        source.lines().byte_to_line(range.start)
    });
    Some(match line {
        Some(line) => format!("{name}:{}", line + 1),
        None => name,
    })
}

fn listed(complaints: &[Complaint]) -> String {
    let lines: Vec<String> = complaints.iter().map(ToString::to_string).collect();
    lines.join("\n")
}
