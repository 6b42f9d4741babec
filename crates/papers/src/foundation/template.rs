//! Templates for drilling and setting anchors: the pattern of a set at full size, with plate, conduits and edges.

use super::layers::Layers;
use super::pattern::{Outline, Pattern, Stub, distinct, patterns, stubs};
use super::plan::{draw_cross, meters};
use crate::plan::gate::nominal;
use crate::sheets::{Imprint, Template};
use draw::{DrawError, Figure, Fill, FullSize, FullSizeWords, Label, Paper, Point, Scene};
use quantity::{Length, Measured, Quantity as _, UnitSystem};
use site::{Anchor, CodeBasis, Foundation, Site};

/// How far the cross of a hole reaches beyond its rim (m).
const CROSS: f64 = 0.012;

/// Paper beside the outermost line of the pattern (m).
const BESIDE: f64 = 0.012;

/// Conduits and edges of concrete farther from the holes and the plate than this do not ask for pages of their own (m).
const WITHIN: f64 = 0.10;

/// What every page says.
const INSTRUCTION: &str = "Print at 100 %; measure the ruler before you drill";
const CAUTION: &str = "Hold the plate in hand against the pattern before you drill. Look for bars and conduits first. Local codes prevail; anchors that carry a leaf are for whoever is licensed for it.";

/// A pattern, and the foundations that it is for.
struct Shared<'a> {
    foundation: &'a Foundation,
    pattern: Pattern<'a>,
    stubs: Vec<Stub>,
    /// What the pattern holds, and on which foundations.
    uses: Vec<(String, Vec<String>)>,
    name: String,
}

impl Shared<'_> {
    /// Takes in another foundation for which the pattern is.
    fn take(&mut self, (holds, on): (String, String)) {
        match self.uses.iter_mut().find(|(known, _)| *known == holds) {
            Some((_, places)) => places.push(on),
            None => self.uses.push((holds, vec![on])),
        }
    }

    /// `guide post on footing-a, footing-b`.
    fn words(&self) -> String {
        let each =
            |(holds, places): &(String, Vec<String>)| format!("{holds} on {}", places.join(", "));
        let uses: Vec<String> = self.uses.iter().map(each).collect();
        uses.join("; ")
    }
}

/// The templates of every set of anchors that has a pattern; like ones are made once.
pub(crate) fn templates(site: &Site, imprint: &Imprint) -> Result<Vec<Template>, DrawError> {
    let mut made = Vec::new();
    for shared in shared(site) {
        made.push(template(site, imprint, &shared)?);
    }
    Ok(made)
}

fn shared(site: &Site) -> Vec<Shared<'_>> {
    let mut all: Vec<(String, Shared<'_>)> = Vec::new();
    for foundation in &site.foundation {
        for (index, pattern) in patterns(foundation).into_iter().enumerate() {
            if pattern.places.is_empty() {
                continue;
            }
            let stubs = stubs(foundation);
            let anchor = pattern.anchor;
            let look = format!(
                "{:?} {:?} {:?} {:?} {:?} {:?} {:?}",
                pattern.places,
                pattern.plate,
                stubs,
                hole(anchor),
                Outline::of(foundation),
                anchor.kind,
                nominal(anchor.hole_depth.as_ref())
            );
            let used = (anchor.holds.to_string(), foundation.id.to_string());
            match all.iter_mut().find(|(known, _)| *known == look) {
                Some((_, shared)) => shared.take(used),
                None => all.push((
                    look,
                    Shared {
                        foundation,
                        pattern,
                        stubs,
                        uses: vec![(used.0, vec![used.1])],
                        name: name(foundation, index),
                    },
                )),
            }
        }
    }
    all.into_iter().map(|(_, shared)| shared).collect()
}

/// The name of a set's file.
fn name(foundation: &Foundation, index: usize) -> String {
    if index == 0 {
        format!("template-{}", foundation.id)
    } else {
        format!("template-{}-{}", foundation.id, index + 1)
    }
}

/// Diameter of the hole in the concrete: as drilled, or that of the anchor that is placed before the concrete.
fn hole(anchor: &Anchor) -> Option<Length> {
    let sheet = anchor.sheet_diameter.as_ref();
    let drilled = anchor.hole_diameter.as_ref().or(sheet);
    nominal(drilled.or(anchor.diameter.as_ref()))
}

fn template(site: &Site, imprint: &Imprint, shared: &Shared<'_>) -> Result<Template, DrawError> {
    let scene = scene(site, shared);
    let words = FullSizeWords {
        site: site.site.name.to_string(),
        issue: issue(site, imprint),
        instruction: INSTRUCTION.to_owned(),
        check: check(&shared.pattern),
        up: "toward the property".to_owned(),
        left: "toward the latching side".to_owned(),
        caution: CAUTION.to_owned(),
    };
    let paper = match site.site.code_basis {
        CodeBasis::Us => Paper::Letter,
        CodeBasis::Eu => Paper::A4,
    };
    let full = FullSize {
        paper,
        reach: reach(shared),
        words,
    };
    Ok(Template {
        name: shared.name.clone(),
        pages: full.lay_out(&scene)?,
        whole: crate::sheets::whole(site, imprint, &scene)?,
    })
}

fn issue(site: &Site, imprint: &Imprint) -> String {
    match &site.site.revision {
        Some(revision) => format!("{}, revision {revision}", imprint.date),
        None => imprint.date.clone(),
    }
}

fn scene(site: &Site, shared: &Shared<'_>) -> Scene {
    let title = format!("Template: {}", shared.words());
    let mut scene = Scene::new(title, site.site.unit_system()).describe(format!(
        "Holes for {} at full size from above, with the outline of the plate, the conduits that come up and the edges of the concrete within reach. {INSTRUCTION}.",
        shared.words()
    ));
    let layers = Layers::add_to(&mut scene);
    draw_edges(&mut scene, &layers, shared.foundation);
    draw_plate(&mut scene, &layers, &shared.pattern);
    for stub in &shared.stubs {
        let words = match stub.radius {
            Some(radius) => {
                let circle = Figure::circle(stub.at, radius, Fill::Open);
                scene.add_titled(layers.anchors, format!("conduit {}", stub.name), circle);
                format!("conduit {}, {}", stub.name, both(radius * 2.0))
            }
            None => format!("conduit {}, size not given", stub.name),
        };
        draw_cross(&mut scene, &layers, stub.at, meters(0.006));
        scene.add(layers.notes, Label::new(stub.at, words));
    }
    draw_holes(&mut scene, &layers, &shared.pattern);
    scene
}

fn draw_edges(scene: &mut Scene, layers: &Layers, foundation: &Foundation) {
    let Some(outline) = Outline::of(foundation) else {
        return;
    };
    let title = "edge of the concrete";
    let (length, width) = outline.halves();
    if let Outline::Round { diameter } = outline {
        let circle = Figure::circle(Point::origin(), diameter / 2.0, Fill::Open);
        scene.add_titled(layers.concrete, title, circle);
        return;
    }
    let figure = Figure::rectangle(
        Point::new(-length, -width),
        Point::new(length, width),
        Fill::Open,
    );
    scene.add_titled(layers.concrete, title, figure);
}

/// The outline of the plate, and its two axes.
fn draw_plate(scene: &mut Scene, layers: &Layers, pattern: &Pattern<'_>) {
    let middle = pattern.middle;
    let zero = meters(0.0);
    let half = pattern.plate.unwrap_or((meters(0.03), meters(0.03)));
    let beyond = meters(CROSS * 0.8);
    for (x, y) in [(half.0 + beyond, zero), (zero, half.1 + beyond)] {
        let axis = Figure::line(middle.moved(-x, -y), middle.moved(x, y));
        scene.add_titled(layers.axes, "axis of the plate", axis);
    }
    if pattern.plate.is_some() {
        let outline = Figure::rectangle(
            middle.moved(-half.0, -half.1),
            middle.moved(half.0, half.1),
            Fill::Open,
        );
        scene.add_titled(layers.plate, "plate", outline);
        let corner = middle.moved(half.0, half.1);
        scene.add(layers.notes, Label::new(corner, "plate"));
    }
}

fn draw_holes(scene: &mut Scene, layers: &Layers, pattern: &Pattern<'_>) {
    let anchor = pattern.anchor;
    let diameter = hole(anchor);
    let words = hole_words(anchor);
    for (index, at) in pattern.places.iter().enumerate() {
        let radius = diameter.map_or(meters(0.002), |diameter| diameter / 2.0);
        let circle = Figure::circle(*at, radius, Fill::Open);
        scene.add_titled(layers.anchors, format!("hole {}", index + 1), circle);
        draw_cross(scene, layers, *at, radius + meters(CROSS));
        scene.add(
            layers.notes,
            Label::new(*at, format!("{}: {words}", index + 1)),
        );
    }
}

fn hole_words(anchor: &Anchor) -> String {
    let cast_in = anchor.kind.is_some_and(site::AnchorKind::is_cast_in);
    let drilled = anchor
        .hole_diameter
        .as_ref()
        .or(anchor.sheet_diameter.as_ref());
    match (nominal(drilled), nominal(anchor.diameter.as_ref())) {
        (Some(hole), _) => format!("hole {}", both(hole)),
        (None, Some(bolt)) if cast_in => format!("bolt {}", both(bolt)),
        (None, Some(bolt)) => format!("anchor {}, hole by its sheet", both(bolt)),
        (None, None) => "hole by the sheet of the anchor".to_owned(),
    }
}

/// The pattern in words, to be taped on paper and plate: spacings, and corner to corner.
fn check(pattern: &Pattern<'_>) -> String {
    let along = distinct(pattern.places.iter().map(|at| at.x));
    let across = distinct(pattern.places.iter().map(|at| at.y));
    let span = |places: &[Length]| match (places.first(), places.last()) {
        (Some(first), Some(last)) => *last - *first,
        _ => meters(0.0),
    };
    let (wide, high) = (span(&along), span(&across));
    let count = pattern.places.len();
    let mut parts = vec![format!("{count} hole{}", if count == 1 { "" } else { "s" })];
    if let Some(circle) = nominal(pattern.anchor.bolt_circle.as_ref()) {
        parts.push(format!("on a circle of {}", both(circle)));
    } else if wide.base() > 0.0 && high.base() > 0.0 {
        let corner = Length::from_base(wide.base().hypot(high.base()));
        parts.push(format!(
            "outermost {} along the gate by {} across it, corner to corner {}",
            both(wide),
            both(high),
            both(corner)
        ));
    } else if wide.base() > 0.0 {
        parts.push(format!("outermost {} apart along the gate", both(wide)));
    } else if high.base() > 0.0 {
        parts.push(format!("outermost {} apart across the gate", both(high)));
    }
    let deep = |value: Option<&Measured<Length>>| nominal(value).map(both);
    if let Some(deep) = deep(pattern.anchor.hole_depth.as_ref()) {
        parts.push(format!("drill {deep} deep"));
    }
    if let Some(deep) = deep(pattern.anchor.embedment.as_ref()) {
        parts.push(format!("effective embedment {deep}"));
    }
    parts.join("; ") + "."
}

/// A length in millimeters and in inches, whatever the site is written in.
fn both(length: Length) -> String {
    let millimeters = format!("{:.1}", length.base() * 1000.0);
    let millimeters = millimeters.strip_suffix(".0").unwrap_or(&millimeters);
    let inches = draw::dimension_text(length, UnitSystem::UsCustomary);
    format!("{millimeters} mm ({inches})")
}

/// What the pages must show: holes, plate, and the conduits and edges beside them.
fn reach(shared: &Shared<'_>) -> (Point, Point) {
    let pattern = &shared.pattern;
    let mut around = Around::new(pattern.middle);
    let rim = hole(pattern.anchor).map_or(0.0, |hole| hole.base() / 2.0) + CROSS;
    for at in &pattern.places {
        around.take(*at, (rim, rim));
    }
    if let Some((length, width)) = pattern.plate {
        around.take(pattern.middle, (length.base(), width.base()));
    }
    let core = around;
    for stub in &shared.stubs {
        let radius = stub.radius.map_or(0.006, quantity::Quantity::base);
        if core.is_near(stub.at) {
            around.take(stub.at, (radius, radius));
        }
    }
    if let Some(outline) = Outline::of(shared.foundation) {
        around.take_edges(&core, outline.halves());
    }
    around.corners()
}

/// Bounds that grow (m).
#[derive(Clone, Copy)]
struct Around {
    low: (f64, f64),
    high: (f64, f64),
}

impl Around {
    fn new(at: Point) -> Self {
        let at = (at.x.base(), at.y.base());
        Self { low: at, high: at }
    }

    fn take(&mut self, at: Point, half: (f64, f64)) {
        let (x, y) = (at.x.base(), at.y.base());
        self.low = (self.low.0.min(x - half.0), self.low.1.min(y - half.1));
        self.high = (self.high.0.max(x + half.0), self.high.1.max(y + half.1));
    }

    fn is_near(&self, at: Point) -> bool {
        let (x, y) = (at.x.base(), at.y.base());
        x > self.low.0 - WITHIN
            && x < self.high.0 + WITHIN
            && y > self.low.1 - WITHIN
            && y < self.high.1 + WITHIN
    }

    /// Takes in the edges that lie near what another reaches.
    fn take_edges(&mut self, core: &Self, (length, width): (Length, Length)) {
        let (length, width) = (length.base(), width.base());
        if core.low.0 + length < WITHIN {
            self.low.0 = self.low.0.min(-length);
        }
        if length - core.high.0 < WITHIN {
            self.high.0 = self.high.0.max(length);
        }
        if core.low.1 + width < WITHIN {
            self.low.1 = self.low.1.min(-width);
        }
        if width - core.high.1 < WITHIN {
            self.high.1 = self.high.1.max(width);
        }
    }

    fn corners(&self) -> (Point, Point) {
        let at = |x: f64, y: f64| Point::new(meters(x), meters(y));
        (
            at(self.low.0 - BESIDE, self.low.1 - BESIDE),
            at(self.high.0 + BESIDE, self.high.1 + BESIDE),
        )
    }
}
