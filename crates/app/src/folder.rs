//! Reading a site's files from disk.

use crate::outcome::Complaint;
use sha2::{Digest as _, Sha256};
use site::{Loaded, SourceFile};
use std::path::{Path, PathBuf};

/// The name of the site file inside its folder.
const SITE_FILE: &str = "site.toml";

/// A site file with the parts files and the weather file that it names, as text.
pub(crate) struct Folder {
    /// Where the site file lies.
    pub(crate) site_file: PathBuf,
    main: SourceFile,
    parts: Vec<SourceFile>,
}

impl Folder {
    /// Reads the site at `path`, which is the site file or the folder that holds it.
    pub(crate) fn read(path: &Path) -> Result<Self, Complaint> {
        let site_file = if path.is_dir() {
            path.join(SITE_FILE)
        } else {
            path.to_path_buf()
        };
        let main = source(&site_file, &file_name(&site_file))?;
        let beside = site_file.parent().unwrap_or(Path::new(""));
        let parts = site::files_named(&main.text)
            .into_iter()
            .map(|name| source(&beside.join(&name), &name))
            .collect::<Result<_, _>>()?;
        Ok(Self {
            site_file,
            main,
            parts,
        })
    }

    /// The text of the site file.
    pub(crate) fn text(&self) -> &str {
        &self.main.text
    }

    /// The site file and its parts files.
    pub(crate) fn files(&self) -> (&SourceFile, &[SourceFile]) {
        (&self.main, &self.parts)
    }

    /// Twelve digits that tell this state of the site and its parts from every other.
    pub(crate) fn fingerprint(&self) -> String {
        fingerprint(&self.main, &self.parts)
    }

    /// The site and its problems.
    pub(crate) fn load(self) -> Loaded {
        site::load(self.main, self.parts)
    }
}

/// Twelve digits that tell this state of a site file and those beside it from every other.
pub(crate) fn fingerprint(main: &SourceFile, beside: &[SourceFile]) -> String {
    in_digits(&digest(std::iter::once(main).chain(beside))[..6])
}

/// Digest of the names and texts of files.
pub(crate) fn digest<'f>(files: impl Iterator<Item = &'f SourceFile>) -> [u8; 32] {
    let mut digest = Sha256::new();
    for file in files {
        digest.update(file.name.as_bytes());
        digest.update([0]);
        digest.update(file.text.as_bytes());
        digest.update([0]);
    }
    digest.finalize().into()
}

fn file_name(path: &Path) -> String {
    path.file_name().map_or_else(
        || path.display().to_string(),
        |name| name.to_string_lossy().into_owned(),
    )
}

fn source(path: &Path, name: &str) -> Result<SourceFile, Complaint> {
    let bytes = std::fs::read(path).map_err(|error| {
        Complaint::about(path, format_args!("cannot be read ({error}). A site is a folder with a {SITE_FILE} in it, or that file itself."))
    })?;
    if site::is_weather_file(name) {
        // The name of a station may be written in an older alphabet; nothing that is read stands there.
        let text = String::from_utf8_lossy(&bytes).into_owned();
        return Ok(SourceFile {
            name: name.to_owned(),
            text,
        });
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let readable = &error.as_bytes()[..error.utf8_error().valid_up_to()];
        let line = readable.split(|byte| *byte == b'\n').count();
        Complaint::about(
            path,
            format_args!(
                "line {line} holds bytes that are not UTF-8 text. Save the file as UTF-8."
            ),
        )
    })?;
    Ok(SourceFile {
        name: name.to_owned(),
        text,
    })
}

/// Bytes as digits, two for each.
pub(crate) fn in_digits(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |digits, byte| {
        digits + &format!("{byte:02x}")
    })
}
