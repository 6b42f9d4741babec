//! A finding of a site whose lines stand elsewhere now.

use super::{Finding, Reading};
use site::Changed;
use std::sync::Arc;

/// The finding with the lines of now; nothing where it names one of which nothing is known.
pub(crate) fn moved(finding: &Arc<Finding>, changed: &Changed) -> Option<Arc<Finding>> {
    if changed.moves_nothing() {
        return Some(finding.clone());
    }
    let mut moved = Finding::clone(finding);
    let subject = &mut moved.subject;
    let missing = moved.missing.iter_mut();
    let missing = missing.map(|missing| (&missing.file, &mut missing.line));
    let deciding = moved.deciding.iter_mut();
    let readings = deciding.map(|deciding| &mut deciding.reading);
    let readings = readings
        .chain(&mut moved.turned_by)
        .chain(&mut moved.assumed);
    let readings = readings.map(|reading: &mut Reading| (&reading.file, &mut reading.line));
    let places = missing.chain(readings);
    for (file, line) in places.chain([(&subject.file, &mut subject.line)]) {
        *line = changed.line(file, *line)?;
    }
    Some(Arc::new(moved))
}
