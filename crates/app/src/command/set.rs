//! `gatewright set`: one changed value, written back.

use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, say};
use std::path::Path;

/// Changes one value of the site file.
pub(crate) fn run(site: &Path, path: &str, value: &str) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let changed = site::set_value(folder.text(), path, value)
        .map_err(|problem| Complaint(problem.to_string()))?;
    std::fs::write(&folder.site_file, changed).map_err(|error| {
        Complaint::about(
            &folder.site_file,
            format_args!("cannot be written ({error})"),
        )
    })?;
    say(&format_args!(
        "{}: {path} is now {value}",
        folder.site_file.display()
    ));
    Ok(Outcome::Holds)
}
