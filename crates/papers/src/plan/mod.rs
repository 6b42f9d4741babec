//! The plans of a site, seen from above: what stands where, to scale.
//!
//! Each gate has a sheet of its own; what lies farther away is on a plan of the whole site. Only what the site file
//! gives a position is drawn; the rest is listed on the sheet, so that nobody takes an empty spot for a clear one.

mod equipment;
mod far;
pub(crate) mod gate;
mod gate_sheet;
mod ground;
mod guards;
mod lane;
mod layers;
mod measures;
pub(crate) mod rows;
mod site_sheet;
pub(crate) mod symbols;
pub(crate) mod tags;
mod window;

use crate::sheets::{Planned, north, sheet_name};
use draw::{DrawError, Point, ScaleChoice, Sheet};
use equipment::Placed;
use site::Site;
use window::Window;

/// The plans of a site: one for each gate, and one of the whole site where something stands farther away.
pub(crate) fn planned(site: &Site, sheet: &Sheet) -> Result<Vec<Planned>, DrawError> {
    let mut planned: Vec<Planned> = Vec::new();
    let mut windows: Vec<Window> = Vec::new();
    for gate in &site.gate {
        let window = gate_sheet::window(site, gate, sheet)?;
        planned.push(Planned {
            name: sheet_name(site, gate, "gate-plan"),
            scene: gate_sheet::scene(site, gate, &window),
            north: north(site),
            scale: ScaleChoice::LargestThatFits,
            half: false,
        });
        windows.push(window);
    }
    let is_far = |thing: &Placed| !windows.iter().any(|window| window.shows(thing.at));
    let hidden = |at: &Point| !windows.iter().any(|window| window.shows(*at));
    let guards_far = guards::points(site).iter().any(hidden);
    if planned.is_empty() || guards_far || equipment::placed(site).iter().any(is_far) {
        planned.push(Planned {
            name: "site-plan".to_owned(),
            scene: site_sheet::scene(site, &windows),
            north: north(site),
            scale: ScaleChoice::LargestThatFits,
            half: false,
        });
    }
    Ok(planned)
}
