//! The sheet of a camera: what it sees from above with the leaf closed, half open and open, its picture in outline, how much
//! detail it shows how far off, and when the sun stands in it.

mod layers;
mod page;
mod plan;
mod tables;
mod view;

use crate::sheets::{Planned, north};
use design::eye::{ShownCamera, cameras};
use draw::{ScaleChoice, Scene};
use layers::Layers;
use page::{Frame, Page};
use quantity::{Quantity as _, Ratio, UnitSystem};
use site::Site;

/// Where everything lies on the page (mm): three plans above, view and tables below.
const PLAN: (f64, f64) = (122.0, 84.0);
const GAP: f64 = 9.0;
const VIEW: (f64, f64) = (136.0, 76.5);
/// Height of the plans' lower edge over that of the view.
const UPPER: f64 = 92.0;

/// A sheet for each camera whose place and lens are known.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let (drawn, _) = cameras(site);
    let planned = drawn.iter().map(|camera| Planned {
        name: format!("camera-{}", short(&camera.id)),
        scene: scene(camera, site.site.unit_system()),
        north: north(site),
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: false,
    });
    planned.collect()
}

/// The camera's name without the word that the file begins with.
fn short(id: &str) -> &str {
    id.strip_prefix("camera-").unwrap_or(id)
}

fn scene(camera: &ShownCamera, units: UnitSystem) -> Scene {
    let title = format!("Camera: {}", short(&camera.id));
    let mut scene = Scene::new(title, units).describe(describe(camera));
    let layers = Layers::add_to(&mut scene);
    let mut page = Page {
        scene: &mut scene,
        layers,
        units,
    };
    let shared = plan::shared_window(camera);
    for (at, place) in (0_u32..).zip(&camera.places) {
        let frame = Frame {
            left: f64::from(at) * (PLAN.0 + GAP),
            bottom: UPPER,
            width: PLAN.0,
            height: PLAN.1,
        };
        plan::draw(&mut page, camera, place, (frame, shared));
    }
    let frame = Frame {
        left: 0.0,
        bottom: 0.0,
        width: VIEW.0,
        height: VIEW.1,
    };
    view::draw(&mut page, camera, frame);
    tables::detail(&mut page, camera, (VIEW.0 + GAP, VIEW.1));
    tables::sun(
        &mut page,
        camera,
        (VIEW.0 + GAP + tables::WIDTH + GAP, VIEW.1),
    );
    remarks(&mut scene);
    scene
}

fn describe(camera: &ShownCamera) -> String {
    let seen = camera.places.iter().filter_map(|place| {
        let seen = place.seen.as_ref()?.seen.base();
        Some(format!(
            "{:.0} % with the leaf {}",
            seen * 100.0,
            place.name
        ))
    });
    let seen: Vec<String> = seen.collect();
    let seen = if seen.is_empty() {
        "how much of its area it sees is not known".to_owned()
    } else {
        format!("of its area it sees {}", seen.join(", "))
    };
    format!(
        "{}: from above, in its own picture, and in tables; {seen}.",
        camera.purpose
    )
}

fn remarks(scene: &mut Scene) {
    scene.remark(
        "Each plan has its own scale bar. The ground is drawn level at the height of the wanted area; what one sees through is left out; planting and parked vehicles are not drawn.",
    );
    scene.remark(
        "The picture is that of a lens without distortion with the leaf closed; dotted lines are the leaf half open and open. The figure is 1.75 m (5 ft 9 in) tall.",
    );
    scene.remark(
        "Purposes are those of IEC 62676-4, edition of 2015; that of 2025 names and counts them otherwise. Times are standard time of the nearest zone, without summer time; clouds are not counted.",
    );
}
