//! What one thing of the site needs.

use quantity::{ConductorSize, Length, Quantity as _, Volume};
use site::{Date, Origin, Price, ServesAs};

/// How much is needed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Amount {
    /// So many.
    Pieces(u64),
    /// So long.
    Length(Length),
    /// So much.
    Volume(Volume),
    /// Nobody has measured it.
    Unknown,
}

/// What is needed, and how its entry of the price book is found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Wanted<'s> {
    /// A thing of the site: by its own name, or by the part that it is bought as.
    Thing {
        /// Its name, or one made from what it belongs to.
        id: String,
        /// Its entry of the parts file.
        part: Option<&'s str>,
    },
    /// Something that serves a purpose, and what it has to fit.
    Serving {
        /// The purpose.
        serves: ServesAs,
        /// What it has to fit, as the site writes it.
        fits: Option<String>,
        /// Conductor that it has to fit.
        conductor: Option<ConductorSize>,
        /// Diameter that it has to fit.
        diameter: Option<Length>,
    },
    /// An entry of the price book, by its name.
    Entry(&'s str),
}

impl Wanted<'_> {
    /// Something that serves a purpose and fits anything.
    pub(crate) fn serving(serves: ServesAs) -> Self {
        Self::Serving {
            serves,
            fits: None,
            conductor: None,
            diameter: None,
        }
    }

    /// Something that serves a purpose and fits what the site writes like this.
    pub(crate) fn fitting(serves: ServesAs, fits: String) -> Self {
        Self::Serving {
            serves,
            fits: Some(fits),
            conductor: None,
            diameter: None,
        }
    }
}

/// What one thing of the site needs.
#[derive(Debug, Clone)]
pub(crate) struct Need<'s> {
    pub(crate) wanted: Wanted<'s>,
    pub(crate) amount: Amount,
    /// What it is for.
    pub(crate) thing: String,
    /// What it is, where no entry of the price book says it.
    pub(crate) what: String,
    pub(crate) origin: &'s Origin,
    /// Day on which it has to be there.
    pub(crate) by: Option<Date>,
    /// Its price by the parts file, and the length that this is for.
    pub(crate) own: Option<(Price, Option<Length>)>,
}

/// A fact that is missing, or cannot be used.
#[derive(Debug, Clone)]
pub(crate) struct Gap<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) key: &'static str,
    /// What to write.
    pub(crate) write: &'static str,
    /// The same in words, with the thing's name.
    pub(crate) what: String,
}

/// Thousandths of a millimeter of a length, in which inches, feet and miles are whole as well.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the figure is held between zero and what a double holds exactly"
)]
pub(crate) fn micrometers(length: Length) -> Option<u64> {
    let figure = (length.base() * 1e6).round();
    (0.0..9e15).contains(&figure).then_some(figure as u64)
}
