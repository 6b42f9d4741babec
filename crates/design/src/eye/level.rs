//! The detail that a level of a standard asks for.

use crate::asking::Asking;
use crate::outcome::Halt;
use formula::Formula as _;
use formula::signal::{Detail2025, ImageDetail2015, ImageDetail2025, Purpose2015};
use quantity::{Length, Word as _};
use site::ImageLevel;

/// Greatest width that one pixel may show for a level, by the edition that the level belongs to.
pub(crate) fn finest(asking: &mut Asking<'_>, level: ImageLevel) -> Result<Length, Halt> {
    if let Some(purpose) = Purpose2015::from_word(level.word()) {
        return Ok(asking.work(&ImageDetail2015 { purpose })?.pixel);
    }
    match Detail2025::from_word(level.word()) {
        Some(level) => Ok(asking.work(&ImageDetail2025 { level })?.pixel),
        None => asking.refuse("no edition of the standard has this level"),
    }
}

/// The purposes of the edition of 2015, finest first, with the greatest width that one pixel may show for each.
pub fn purposes() -> Vec<(&'static str, Length)> {
    let all = [
        Purpose2015::Identify,
        Purpose2015::Recognize,
        Purpose2015::Observe,
        Purpose2015::Detect,
        Purpose2015::Monitor,
    ];
    let of = |purpose: Purpose2015| {
        let found = ImageDetail2015 { purpose }.evaluate().ok()?;
        Some((purpose.word(), found.pixel))
    };
    all.into_iter().filter_map(of).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::{Quantity as _, UnitSystem};

    #[test]
    fn each_word_has_its_edition() {
        let mut asking = Asking::new(UnitSystem::Si);
        let pixel = finest(&mut asking, ImageLevel::Identify).unwrap();
        assert!((pixel.base() - 0.004).abs() < 1e-12);
        assert_eq!(asking.remembered().count(), 0);
        finest(&mut asking, ImageLevel::Validate).unwrap();
        assert_eq!(asking.remembered().count(), 1);
    }
}
