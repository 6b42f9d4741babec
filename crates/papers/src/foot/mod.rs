//! The plan for people on foot: where they go, what they work and read, where a drive is let go by hand, and where the
//! property ends.

mod layers;
mod spots;
mod words;

use crate::plan::tags::{LINE, Tags, broken};
use crate::plan::window::Window;
use crate::plan::{around_people, middle, seen_from_above, where_it_is};
use crate::sheets::{Planned, north};
use draw::{Figure, Label, LayerId, Placement, Point, ScaleChoice, Scene};
use layers::{Layers, Part};
use quantity::Quantity as _;
use site::{Position, Site};
use spots::Spot;

/// Distance under which names share a label (m).
const NEAR: f64 = 0.8;
/// Distance under which things of one kind share a symbol (m).
const SAME: f64 = 0.4;
/// Controls farther than this from the middle of the opening are told in words (m).
const REACH: f64 = 12.0;
/// Clear ground around what stands there (m).
const MARGIN: f64 = 2.0;

/// The plan for people on foot; none where nothing of theirs has a place.
pub(crate) fn planned(site: &Site) -> Option<Planned> {
    let spots = spots::all(site);
    if spots.is_empty() {
        return None;
    }
    Some(Planned {
        name: "foot-plan".to_owned(),
        scene: scene(site, &spots),
        north: north(site),
        scale: ScaleChoice::LargestThatFits,
        half: false,
    })
}

fn scene(site: &Site, spots: &[Spot]) -> Scene {
    let title = "Ways on foot, controls and signs";
    let mut scene = Scene::new(title, site.site.unit_system()).describe(
        "The gate from above as people on foot meet it: ways and walk gates, signs, what they work, where a drive is let go by hand, where they stand for it, and where the property ends.",
    );
    let mut tags = Tags::default();
    let (near, far): (Vec<&Spot>, Vec<&Spot>) = spots.iter().partition(|spot| is_near(site, spot));
    let points: Vec<Point> = near.iter().map(|spot| spot.at).collect();
    let window = Window::around(site, &points, MARGIN);
    let notes = around_people(&mut scene, site, &window);
    draw_lines(&mut scene, notes, (site, &window));
    let layers = Layers::add_to(&mut scene);
    for (at, spot) in near.iter().enumerate() {
        let shares =
            |other: &&Spot| other.symbol == spot.symbol && other.at.distance(spot.at).base() < SAME;
        if !near[..at].iter().any(shares) {
            let symbol = Placement::new(spot.symbol.clone(), spot.at);
            scene.add_titled(layers.of(spot.part), spot.title.as_str(), symbol);
        }
        if let Some(name) = &spot.name {
            tags.add(spot.at, name.as_str());
        }
    }
    tags.place(&mut scene, notes, NEAR, |_| None);
    for sentence in words::sentences(site) {
        scene.remark(sentence);
    }
    remark_far(&mut scene, site, &far);
    scene
}

/// What belongs to the ways is drawn wherever it is; what is worked, as far as it is near a gate.
fn is_near(site: &Site, spot: &Spot) -> bool {
    let gates = site.gate.iter().map(middle);
    spot.part != Part::Control
        || gates
            .map(|gate| gate.distance(spot.at).base())
            .any(|away| away <= REACH)
}

/// Says where the controls are that stand farther away.
fn remark_far(scene: &mut Scene, site: &Site, far: &[&Spot]) {
    let Some(middle) = site.gate.first().map(middle) else {
        return;
    };
    let units = scene.units;
    let places = far.iter().filter_map(|spot| {
        let name = spot.name.as_ref()?;
        Some(format!("{name} {}", where_it_is(middle, spot.at, units)))
    });
    let places: Vec<String> = places.collect();
    if !places.is_empty() {
        scene.remark(format!(
            "Beyond this sheet, from the middle of the opening: {}.",
            places.join("; ")
        ));
    }
}

/// Draws boundaries and ways on foot with their names, as far as a sheet shows them.
pub(crate) fn draw_lines(scene: &mut Scene, notes: LayerId, (site, window): (&Site, &Window)) {
    let layers = Layers::add_to(scene);
    for boundary in &site.boundary {
        let beyond = boundary
            .beyond
            .map_or_else(String::new, |beyond| format!(", beyond it a {beyond}"));
        let words = format!("boundary {}{beyond}", boundary.id);
        draw_line(
            scene,
            (layers.boundary, notes),
            (&boundary.line, window),
            &words,
        );
    }
    for route in &site.foot_route {
        let words = format!("way {}", route.id);
        draw_line(scene, (layers.ways, notes), (&route.path, window), &words);
    }
}

/// A line with its words at its longest piece.
fn draw_line(
    scene: &mut Scene,
    (layer, notes): (LayerId, LayerId),
    (line, window): (&[Position], &Window),
    words: &str,
) {
    let corners: Vec<Point> = line.iter().map(seen_from_above).collect();
    let pieces = corners.iter().zip(corners.iter().skip(1));
    let shown: Vec<(Point, Point)> = pieces
        .filter_map(|(from, to)| window.cut(*from, *to))
        .collect();
    let length = |piece: &&(Point, Point)| piece.0.distance(piece.1).base();
    let longest = shown
        .iter()
        .max_by(|one, other| length(one).total_cmp(&length(other)));
    if let Some((from, to)) = longest {
        scene.add(notes, Label::new(from.middle(*to), broken(words, LINE)));
    }
    for (from, to) in shown {
        scene.add_titled(layer, words, Figure::line(from, to));
    }
}
