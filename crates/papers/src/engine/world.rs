//! All that the typesetter can see while it sets one document.

use super::fonts::FACES;
use super::shelf::Shelf;
use std::path::PathBuf;
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));

/// One shelf of files, the compiled-in faces, and no clock.
pub(super) struct ShelfWorld<'a> {
    shelf: &'a Shelf,
    main: FileId,
}

impl<'a> ShelfWorld<'a> {
    /// A world whose main template has this name; nothing if the name cannot be a path.
    pub(super) fn new(shelf: &'a Shelf, main: &str) -> Option<Self> {
        let path = VirtualPath::new(main).ok()?;
        let main = RootedPath::new(VirtualRoot::Project, path).intern();
        Some(Self { shelf, main })
    }

    fn bytes(&self, id: FileId) -> FileResult<Bytes> {
        let path = id.get();
        if *path.root() != VirtualRoot::Project {
            return Err(FileError::AccessDenied);
        }
        let name = path.vpath().get_without_slash();
        let found = self.shelf.get(name);
        found
            .cloned()
            .ok_or_else(|| FileError::NotFound(PathBuf::from(name)))
    }
}

impl World for ShelfWorld<'_> {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FACES.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        let bytes = self.bytes(id)?;
        let text = bytes.as_str().map_err(|_| FileError::InvalidUtf8)?;
        Ok(Source::new(id, text.to_owned()))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.bytes(id)
    }

    fn font(&self, index: usize) -> Option<Font> {
        FACES.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}
