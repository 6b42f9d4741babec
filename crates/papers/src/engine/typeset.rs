//! Sets the files of a shelf as one PDF.

use super::shelf::Shelf;
use super::typeset_error::TypesetError;
use super::world::ShelfWorld;
use std::sync::{PoisonError, RwLock};
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

/// How many documents back the typesetter remembers what it has set, to set the like of it faster.
const REMEMBERED_DOCUMENTS: usize = 4;

/// Held by everybody who sets a document. What one of them has set in a first round it takes up again in the next: whoever
/// ends in the meantime must not have it forgotten.
static SETTING: RwLock<()> = RwLock::new(());

/// What is said about a document beside its files.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TypesetOptions {
    /// The template to begin with: `pack.typ`.
    pub main: String,
    /// Names this document and stays the same when it is made again; two runs with the same name and files give the
    /// same bytes.
    pub identity: String,
    /// The program that made it, with its version.
    pub maker: String,
}

/// Sets the document. The template sets title, language and date; all three are required by the standards.
///
/// Fails if a template asks for a file that is not on the shelf, is wrong in itself, or breaks PDF/A-3b or PDF/UA-1.
pub fn typeset(shelf: &Shelf, options: &TypesetOptions) -> Result<Vec<u8>, TypesetError> {
    let world = ShelfWorld::new(shelf, &options.main)
        .ok_or_else(|| TypesetError::NoSuchTemplate(options.main.clone()))?;
    let set = {
        let _setting = SETTING.read().unwrap_or_else(PoisonError::into_inner);
        set(&world, options)
    };
    if let Ok(_alone) = SETTING.try_write() {
        typst::comemo::evict(REMEMBERED_DOCUMENTS);
    }
    set
}

fn set(world: &ShelfWorld, options: &TypesetOptions) -> Result<Vec<u8>, TypesetError> {
    let document = typst::compile::<PagedDocument>(world)
        .output
        .map_err(|faults| TypesetError::layout(world, &faults))?;
    typst_pdf::pdf(&document, &pdf_options(options)?)
        .map_err(|faults| TypesetError::standard(world, &faults))
}

fn pdf_options(options: &TypesetOptions) -> Result<PdfOptions, TypesetError> {
    let standards = PdfStandards::new(&[PdfStandard::A_3b, PdfStandard::Ua_1])
        .map_err(|fault| TypesetError::Standards(fault.message().to_string()))?;
    Ok(PdfOptions {
        ident: Smart::Custom(options.identity.clone()),
        creator: Smart::Custom(Some(options.maker.clone())),
        standards,
        ..PdfOptions::default()
    })
}
