//! The typefaces that are compiled into the program.

use std::sync::LazyLock;
use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// The font files, in the order in which they are tried for a letter that the chosen family lacks.
const FILES: [&[u8]; 6] = [
    include_bytes!("../../fonts/Inter-Regular.otf"),
    include_bytes!("../../fonts/Inter-Medium.otf"),
    include_bytes!("../../fonts/Inter-SemiBold.otf"),
    include_bytes!("../../fonts/Inter-Italic.otf"),
    include_bytes!("../../fonts/DejaVuSans.ttf"),
    include_bytes!("../../fonts/DejaVuSansMono.ttf"),
];

/// The typeface of every document, for a page that is to look the same: regular and semi-bold, as OpenType.
pub const INTER: [&[u8]; 2] = [FILES[0], FILES[2]];

/// The faces and the book in which the typesetter looks them up.
pub(super) struct Faces {
    /// Each face, at the place that the book gives it.
    pub(super) fonts: Vec<Font>,
    /// What is known of each face.
    pub(super) book: LazyHash<FontBook>,
}

impl Faces {
    /// Whether any face can show this character.
    pub(super) fn can_show(&self, character: char) -> bool {
        self.fonts
            .iter()
            .any(|font| font.info().coverage.contains(u32::from(character)))
    }
}

/// All faces, read once.
pub(super) static FACES: LazyLock<Faces> = LazyLock::new(|| {
    let fonts: Vec<Font> = FILES
        .iter()
        .flat_map(|file| Font::iter(Bytes::new(*file)))
        .collect();
    let book = LazyHash::new(FontBook::from_fonts(&fonts));
    Faces { fonts, book }
});

#[cfg(test)]
mod tests {
    use super::FACES;

    #[test]
    fn every_sign_of_the_trade_can_be_shown() {
        for sign in "·√²³⁄±−×÷°ΩΔΣµφψλ′″≤≥→½✓□".chars() {
            assert!(FACES.can_show(sign), "no face shows {sign}");
        }
    }

    #[test]
    fn each_file_is_a_face() {
        assert_eq!(FACES.fonts.len(), super::FILES.len());
    }
}
