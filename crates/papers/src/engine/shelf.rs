//! The named files of one document, in memory.

use super::legible::{Legible, make_legible};
use super::typeset_error::TypesetError;
use serde::Serialize;
use std::collections::BTreeMap;
use typst::foundations::Bytes;

/// The files that a document is set from, each under the name by which a template asks for it.
///
/// Nothing that is not on the shelf exists for the typesetter: no disk, no network, no packages.
#[derive(Debug, Clone, Default)]
pub struct Shelf {
    files: BTreeMap<String, Bytes>,
    replaced: usize,
}

impl Shelf {
    /// An empty shelf.
    pub fn new() -> Self {
        Self::default()
    }

    /// Puts a template on the shelf.
    #[must_use]
    pub fn with_template(mut self, name: &str, text: &'static str) -> Self {
        self.files
            .insert(name.to_owned(), Bytes::new(text.as_bytes()));
        self
    }

    /// Puts data on the shelf as JSON, with every text made fit for the page.
    ///
    /// The count of characters that had to be replaced, in it and in what was put on the shelf before, is added to an
    /// object as `replaced`. Fails if the data has a form that JSON lacks.
    pub fn add_data(&mut self, name: &str, data: &impl Serialize) -> Result<(), TypesetError> {
        let mut value = serde_json::to_value(data).map_err(TypesetError::data)?;
        self.replaced += make_legible(&mut value);
        if let Some(fields) = value.as_object_mut() {
            fields.insert("replaced".to_owned(), self.replaced.into());
        }
        let bytes = serde_json::to_vec(&value).map_err(TypesetError::data)?;
        self.files.insert(name.to_owned(), Bytes::new(bytes));
        Ok(())
    }

    /// Puts a drawing on the shelf; characters in it that no face can show are marked.
    pub fn add_drawing(&mut self, name: &str, svg: &str) {
        let shown = Legible::shown(svg);
        self.replaced += shown.replaced;
        self.files
            .insert(name.to_owned(), Bytes::new(shown.text.into_bytes()));
    }

    /// Puts bytes on the shelf as they are, as is right for an attachment.
    pub fn add_bytes(&mut self, name: &str, bytes: Vec<u8>) {
        self.files.insert(name.to_owned(), Bytes::new(bytes));
    }

    /// The file of this name, if it is there.
    pub(super) fn get(&self, name: &str) -> Option<&Bytes> {
        self.files.get(name)
    }
}
