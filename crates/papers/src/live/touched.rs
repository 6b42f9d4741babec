//! Where on the plan a leaf touches people, on the screen: the same maps as on paper.

use super::unit;
use crate::walk::mapped;
use design::walk::GateWalk;
use draw::Screen;
use site::Site;

/// A map of one direction.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TouchedMap {
    /// The direction: `closing`.
    pub direction: &'static str,
    /// Its title.
    pub title: String,
    /// The drawing, in site coordinates (m), y downward.
    pub svg: String,
    /// How to read it, in sentences.
    pub words: Vec<String>,
}

/// The maps of a gate, one for each direction in which its leaf goes.
pub fn touched(site: &Site, walk: &GateWalk<'_>) -> Vec<TouchedMap> {
    let maps = mapped(site, walk).into_iter();
    maps.map(|map| {
        let mut screen = Screen::new(unit(map.corners));
        screen.scene(&map.scene, |_| true);
        let title = map.scene.title.clone();
        let svg = screen.finish(map.corners, "live touched", &title, &map.scene.description);
        // Several drawings stand on one page: each has hatches of its own.
        let own = |prefix: &str| format!("{prefix}hatch-{}-", map.word);
        TouchedMap {
            direction: map.word,
            svg: svg
                .replace("id=\"hatch-", &own("id=\""))
                .replace("url(#hatch-", &own("url(#")),
            title,
            words: map.scene.remarks.clone(),
        }
    })
    .collect()
}
