//! How much detail a picture needs for a purpose, by the edition of 2015.

use crate::OutOfReach;
use crate::table::{Stored, Table};
use quantity::{Length, Quantity as _};

quantity::words! {
    /// What a picture is to be good for (IEC 62676-4, 2015).
    pub enum Purpose2015 {
        /// To see that there is movement in a crowd or an area.
        Monitor = "monitor",
        /// To see that somebody is there.
        Detect = "detect",
        /// To see how somebody is dressed and moves.
        Observe = "observe",
        /// To tell whether it is somebody already known.
        Recognize = "recognize",
        /// To know a stranger beyond doubt.
        Identify = "identify",
    }
}

formula! {
    /// Greatest width that one pixel may show at the target for a purpose, by the edition of 2015.
    ///
    /// The edition of 2025 has seven levels of detail with other names and other figures: a contract names the edition.
    pub struct ImageDetail2015 = "image-detail-2015" in Signal {
        /// What the picture is to be good for.
        purpose ("–"): Purpose2015,
    }
    gives
    /// The detail that it needs.
    pub struct DetailNeeded2015 {
        /// Greatest width of what one pixel shows.
        pixel ("p"): Length,
    }
    formula "p: table of the standard"
    valid "A sharp picture with enough light, little compression, and little motion."
    source { work: "IEC 62676-4", clause: "levels of operational requirement, 2014/2015", evidence: Seen, seen: "a training course's lesson on the levels; a German page that explains the standard" }
    by image_detail_2015
}

static TABLE: Stored = Stored::new(|| Table::read(include_str!("image_detail_2015.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn image_detail_2015(wanted: &ImageDetail2015) -> Result<DetailNeeded2015, OutOfReach> {
    let row = match wanted.purpose {
        Purpose2015::Monitor => 0,
        Purpose2015::Detect => 1,
        Purpose2015::Observe => 2,
        Purpose2015::Recognize => 3,
        Purpose2015::Identify => 4,
    };
    let pixels = Table::of(&TABLE)?.numbers("pixel");
    match pixels.get(row) {
        Some(pixel) => Ok(DetailNeeded2015 {
            pixel: Length::from_base(*pixel / 1000.0),
        }),
        None => Err(OutOfReach::new("purpose", "the table lacks this row")),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn each_purpose_needs_finer_detail_than_the_one_before() {
        let all = [
            Purpose2015::Monitor,
            Purpose2015::Detect,
            Purpose2015::Observe,
            Purpose2015::Recognize,
            Purpose2015::Identify,
        ];
        let pixels = all.map(|purpose| ImageDetail2015 { purpose }.evaluate().unwrap().pixel);
        assert!(
            pixels.windows(2).all(|pair| pair[1] < pair[0]),
            "{pixels:?}"
        );
    }
}
