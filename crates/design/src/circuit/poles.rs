//! Whether poles arrive the right way round.

use super::{Circuits, Part};
use site::Id;

/// How the poles of a source reach something.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Poles<'s> {
    /// Plus at plus, or nothing known of it.
    Right,
    /// Plus at minus.
    Reversed,
    /// A ring in which they change places an odd number of times shorts its source; this cable closes it.
    Shorted(&'s Id),
}

impl<'s> Circuits<'s> {
    /// How the poles reach something.
    pub(crate) fn poles(&self, id: &Id) -> Poles<'s> {
        for part in &self.parts {
            let mut here = part.takers_named(id).peekable();
            if here.peek().is_none() {
                continue;
            }
            match turned(part) {
                Err(cable) => return Poles::Shorted(cable),
                Ok(turned) => {
                    if here.any(|taker| turned[part.takers[taker].place]) {
                        return Poles::Reversed;
                    }
                }
            }
        }
        Poles::Right
    }
}

/// For each place of a part, whether its poles have changed places on the way from a source, or the cable that makes a short.
fn turned<'s>(part: &Part<'s>) -> Result<Vec<bool>, &'s Id> {
    let mut known: Vec<Option<bool>> = part
        .places
        .iter()
        .map(|place| matches!(place, super::parts::Place::Source(_)).then_some(false))
        .collect();
    for _ in 0..=part.runs.len() {
        for run in &part.runs {
            let crossed = run.cable.crossed == Some(true);
            match (known[run.from], known[run.to]) {
                (Some(from), Some(to)) if (from != to) != crossed => return Err(&run.cable.id),
                (Some(from), None) => known[run.to] = Some(from != crossed),
                (None, Some(to)) => known[run.from] = Some(to != crossed),
                _ => {}
            }
        }
    }
    Ok(known
        .into_iter()
        .map(|turned| turned == Some(true))
        .collect())
}
