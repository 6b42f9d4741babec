//! How much detail a picture needs for a level, by the edition of 2025.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// How much detail a picture shows (IEC 62676-4, 2025).
    pub enum Detail2025 {
        /// The scene as a whole.
        Overview = "overview",
        /// The outline of people.
        Outline = "outline",
        /// People told from each other roughly.
        Discern = "discern",
        /// Features perceived.
        Perceive = "perceive",
        /// Features described.
        Characterize = "characterize",
        /// Somebody confirmed.
        Validate = "validate",
        /// Closest scrutiny.
        Scrutinize = "scrutinize",
    }
}

formula! {
    /// Greatest width that one pixel may show at the target for a level of detail, by the edition of 2025.
    ///
    /// The edition of 2015 has other names and other figures: a contract names the edition.
    pub struct ImageDetail2025 = "image-detail-2025" in Signal {
        /// Level of detail.
        level ("–"): Detail2025,
    }
    gives
    /// The detail that it needs.
    pub struct DetailNeeded2025 {
        /// Greatest width of what one pixel shows.
        pixel ("p"): Length,
    }
    formula "p: table of the standard"
    valid "A sharp picture with enough light, little compression, and little motion."
    source { work: "IEC 62676-4", clause: "levels of image detail, 2025", evidence: Memory, seen: "the names in a public article, the figures on one product page only: look them up in the standard" }
    by image_detail_2025
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("image_detail_2025.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn image_detail_2025(wanted: &ImageDetail2025) -> Result<DetailNeeded2025, OutOfReach> {
    let row = match wanted.level {
        Detail2025::Overview => 0,
        Detail2025::Outline => 1,
        Detail2025::Discern => 2,
        Detail2025::Perceive => 3,
        Detail2025::Characterize => 4,
        Detail2025::Validate => 5,
        Detail2025::Scrutinize => 6,
    };
    let densities = Table::of(&TABLE)?.numbers("pixels_per_meter");
    match densities.get(row) {
        Some(density) if *density > 0.0 => Ok(DetailNeeded2025 {
            pixel: Length::from_base(1.0 / density),
        }),
        _ => Err(OutOfReach::new("level", "the table lacks this row")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn each_level_shows_finer_detail_than_the_one_before() {
        let all = [
            Detail2025::Overview,
            Detail2025::Outline,
            Detail2025::Discern,
            Detail2025::Perceive,
            Detail2025::Characterize,
            Detail2025::Validate,
            Detail2025::Scrutinize,
        ];
        let pixels = all.map(|level| ImageDetail2025 { level }.evaluate().unwrap().pixel);
        assert!(
            pixels.windows(2).all(|pair| pair[1] < pair[0]),
            "{pixels:?}"
        );
    }
}
