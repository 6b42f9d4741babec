//! Where water and snow stand, as the site tells it.

use crate::asking::{Asking, pick, read};
use crate::check::plane::{Point, is_inside};
use crate::outcome::Halt;
use crate::routes::outline;
use quantity::Length;
use site::{Site, Standing, WaterLine};

/// A mark stands for a place.
pub(crate) fn stands_at(line: &WaterLine, at: Point) -> bool {
    line.outline.len() < 3 || is_inside(at, &outline(&line.outline))
}

/// The highest water at a place, standing or running; nothing where no mark stands for it.
pub(super) fn water_at<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    at: Point,
) -> Result<Option<Length>, Halt> {
    let mut highest: Option<Length> = None;
    for line in site.water_line.iter().filter(|line| stands_at(line, at)) {
        let what = pick!(asking, line.what)?;
        if matches!(what, Standing::Water | Standing::Running) {
            let level = read!(asking, line.level)?;
            highest = Some(highest.map_or(level, |most| if level > most { level } else { most }));
        }
    }
    Ok(highest)
}
