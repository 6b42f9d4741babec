//! Reads the files of a job, and puts a text in the place of a file so that either the old or the new one is there, whole.

use crate::command::{WALK_FILE, records_in};
use crate::folder::{digest, fingerprint, in_digits};
use crate::serve::refusal::Refusal;
use design::walk::WalkRecord;
use site::SourceFile;
use std::fs::{File, OpenOptions, Permissions};
use std::io::Write as _;
use std::path::{Component, Path, PathBuf};
use std::time::SystemTime;

/// The name of the site file inside its folder.
pub(crate) const SITE_FILE: &str = "site.toml";
/// Where a text is written before it takes the place of the file.
const UNFINISHED: &str = ".site.toml.unfinished";
/// Bytes of a file that are read: a year of weather is a tenth of it.
const LARGEST: u64 = 16 * 1024 * 1024;

/// The files of a job as they lie on the disk.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Files {
    /// The site file.
    pub(crate) main: SourceFile,
    /// The parts files, the weather file and the price book that it names, as far as they are there.
    pub(crate) beside: Vec<SourceFile>,
    /// Results of walks that somebody keeps beside it, or why they cannot be read.
    walks: Option<Result<SourceFile, String>>,
    /// Names of the others, whether they are there or not.
    named: Vec<String>,
}

impl Files {
    /// Reads the site file and the files that were known to be named.
    pub(crate) fn read(folder: &Path, known: Option<&Self>) -> Result<Self, Refusal> {
        let bytes = bytes(&folder.join(SITE_FILE)).map_err(|error| unreadable(folder, &error))?;
        let text = String::from_utf8(bytes).map_err(|error| {
            let before = &error.as_bytes()[..error.utf8_error().valid_up_to()];
            let line = before.split(|byte| *byte == b'\n').count();
            Refusal::unusable(
                format!("Line {line} of {SITE_FILE} holds bytes that are not UTF-8 text."),
                "Save the file as UTF-8.",
            )
            .at(format!("{}:{line}", folder.join(SITE_FILE).display()))
        })?;
        let named = match known {
            Some(known) => known.named.clone(),
            None => own(&site::files_named(&text)),
        };
        Ok(Self::naming(folder, text, named))
    }

    /// The files if the site file had this text and named the same others.
    pub(crate) fn with_text(&self, folder: &Path, text: String) -> Self {
        Self::naming(folder, text, self.named.clone())
    }

    /// The files that the site file names, where it names others than these.
    pub(crate) fn naming_others(&self, folder: &Path, names: &[String]) -> Option<Self> {
        let named = own(names);
        (named != self.named).then(|| Self::naming(folder, self.main.text.clone(), named))
    }

    fn naming(folder: &Path, text: String, named: Vec<String>) -> Self {
        let read = |name: &str| {
            let bytes = bytes(&folder.join(name)).ok()?;
            // The name of a weather station may be in an older alphabet; in other files, the reader finds what is wrong.
            let text = String::from_utf8_lossy(&bytes).into_owned();
            let name = name.to_owned();
            Some(SourceFile { name, text })
        };
        let beside = named.iter().filter_map(|name| read(name)).collect();
        let main = SourceFile {
            name: SITE_FILE.to_owned(),
            text,
        };
        Self {
            main,
            beside,
            walks: walks(folder),
            named,
        }
    }

    /// Results of walks that are kept beside the site file; a file that cannot be read holds none.
    pub(crate) fn kept_walks(&self) -> Vec<WalkRecord> {
        self.walks_as_read().unwrap_or_default()
    }

    /// What is wrong with the file of results of walks, where it cannot be read: what is in it counts for nothing.
    pub(crate) fn walks_unread(&self) -> Option<String> {
        self.walks_as_read().err()
    }

    fn walks_as_read(&self) -> Result<Vec<WalkRecord>, String> {
        let told = |what: &dyn std::fmt::Display| format!("{WALK_FILE} {what}");
        match &self.walks {
            None => Ok(Vec::new()),
            Some(Ok(file)) => records_in(&file.text).map_err(|what| told(&what)),
            Some(Err(what)) => Err(told(what)),
        }
    }

    /// The stamp of the files, the site file first.
    pub(crate) fn stamp(&self, folder: &Path) -> Stamp {
        let named = self.named.iter().map(String::as_str);
        let names = [SITE_FILE, WALK_FILE].into_iter().chain(named);
        names.map(|name| written(&folder.join(name))).collect()
    }

    /// Digits that tell this state of the files from every other.
    pub(crate) fn revision(&self) -> String {
        let walks = self.walks.as_ref().map(Result::as_ref);
        let unread = walks.and_then(Result::err).map(|why| SourceFile {
            name: format!("{WALK_FILE} unread"),
            text: why.clone(),
        });
        let beside = self.beside.iter().chain(walks.and_then(Result::ok));
        let all = std::iter::once(&self.main).chain(beside).chain(&unread);
        in_digits(&digest(all)[..8])
    }

    /// Digits that papers of this state carry.
    pub(crate) fn fingerprint(&self) -> String {
        fingerprint(&self.main, &self.beside)
    }
}

/// The stamp of each file of a job: as long as this is the same, nothing has to be read again.
pub(crate) type Stamp = Vec<Option<(SystemTime, u64, Permissions)>>;

/// When a file was written, how long it is, and who may read it.
pub(crate) fn written(path: &Path) -> Option<(SystemTime, u64, Permissions)> {
    let about = std::fs::metadata(path).ok()?;
    Some((about.modified().ok()?, about.len(), about.permissions()))
}

/// Files that a site names, as far as they lie in its own folder or below: what a site that came from elsewhere names must not
/// lead to other files of this computer.
fn own(named: &[String]) -> Vec<String> {
    let is_own = |name: &&String| {
        let mut steps = Path::new(name).components().peekable();
        steps.peek().is_some() && steps.all(|step| matches!(step, Component::Normal(_)))
    };
    named.iter().filter(is_own).cloned().collect()
}

/// Results of walks in a folder; nothing where there is no such file.
fn walks(folder: &Path) -> Option<Result<SourceFile, String>> {
    let text = bytes(&folder.join(WALK_FILE))
        .and_then(|bytes| String::from_utf8(bytes).map_err(std::io::Error::other));
    match text {
        Ok(text) => Some(Ok(SourceFile {
            name: WALK_FILE.to_owned(),
            text,
        })),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => None,
        Err(error) => Some(Err(format!("cannot be read ({error})."))),
    }
}

fn bytes(path: &Path) -> std::io::Result<Vec<u8>> {
    let about = std::fs::metadata(path)?;
    if !about.is_file() || about.len() > LARGEST {
        return Err(std::io::Error::other(
            "it is not a file, or longer than 16 MiB",
        ));
    }
    std::fs::read(path)
}

fn unreadable(folder: &Path, error: &std::io::Error) -> Refusal {
    let path = folder.join(SITE_FILE);
    if error.kind() == std::io::ErrorKind::NotFound {
        return Refusal::absent(
            "The site file of this job is not there any more.",
            "Put it back, or open another job.",
        )
        .at(path.display().to_string());
    }
    Refusal::failed(
        format!("The site file cannot be read ({error})."),
        "See that the file may be read by you.",
    )
    .at(path.display().to_string())
}

/// A text that lies whole on the disk beside the site file, to take its place.
pub(crate) struct Unfinished {
    path: PathBuf,
    target: PathBuf,
}

impl Unfinished {
    /// Writes a text beside the site file; when this returns, it is on the disk.
    pub(crate) fn write(folder: &Path, text: &str) -> std::io::Result<Self> {
        // A site file that is a link stays one.
        let target = folder.join(SITE_FILE).canonicalize()?;
        let path = target.parent().unwrap_or(folder).join(UNFINISHED);
        let mut file = File::create(&path)?;
        file.write_all(text.as_bytes())?;
        if let Ok(about) = std::fs::metadata(&target) {
            file.set_permissions(about.permissions())?;
        }
        file.sync_all()?;
        Ok(Self { path, target })
    }

    /// Puts it in the place of the site file; when this returns, that is on the disk.
    pub(crate) fn take_its_place(&self) -> std::io::Result<()> {
        std::fs::rename(&self.path, &self.target)?;
        sync_folder(self.target.parent().unwrap_or(Path::new(".")))
    }
}

/// Writes a file that is not there yet.
pub(crate) fn write_new(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let mut file = OpenOptions::new().write(true).create_new(true).open(path)?;
    file.write_all(bytes)?;
    file.sync_all()
}

/// Brings the names in a folder to the disk.
pub(crate) fn sync_folder(folder: &Path) -> std::io::Result<()> {
    if cfg!(unix) {
        File::open(folder)?.sync_all()?;
    }
    Ok(())
}

#[cfg(all(test, unix))]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::written;
    use std::fs::{Permissions, set_permissions, write};
    use std::os::unix::fs::PermissionsExt as _;

    #[test]
    fn who_may_read_a_file_is_part_of_its_stamp() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("walk.json");
        write(&path, "[]").unwrap();
        let before = written(&path);
        assert_eq!(written(&path), before);
        set_permissions(&path, Permissions::from_mode(0o000)).unwrap();
        assert_ne!(written(&path), before);
    }
}
