//! A leaf in the elevation: outline, rails, uprights, braces, infill hatched by what it is.

use super::layers::Layers;
use super::member::{self, Part, Rail};
use super::meters;
use super::named;
use super::panel::Panel;
use draw::{Figure, Fill, Hatch, Ink, Scene};
use quantity::{Angle, Length, Quantity as _};
use site::{Gate, GateKind, Leaf, Member};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4};

/// Draws a closed leaf.
pub(super) fn draw(scene: &mut Scene, layers: &Layers, gate: &Gate, leaf: &Leaf, panel: &Panel) {
    if gate.kind == GateKind::BarrierArm {
        scene.add_titled(
            layers.leaf,
            format!("arm {}, closed", leaf.id),
            Figure::area(panel.outline(), Fill::Solid(Ink::Tint)),
        );
        return;
    }
    let bottom = member::rail(leaf, Part::BottomRail, panel.height);
    let top = member::rail(leaf, Part::TopRail, panel.height);
    let upright = member::rail(leaf, Part::Upright, panel.height);
    let depth = |rail: &Option<Rail<'_>>| rail.as_ref().map_or(0.0, |rail| rail.depth);
    let inside = Inside {
        along: (depth(&upright), panel.length - depth(&upright)),
        up: (depth(&bottom), panel.height - depth(&top)),
    };
    draw_infill(scene, layers, leaf, panel, &inside);
    for brace in member::all(leaf, Part::Brace) {
        draw_braces(scene, layers, (leaf, brace), panel, &inside);
    }
    let rails = [
        (&bottom, (0.0, inside.up.0)),
        (&top, (inside.up.1, panel.height)),
    ];
    for (rail, up) in rails {
        if let Some(rail) = rail {
            let corners = panel.rectangle((0.0, panel.length), up);
            let figure = Figure::area(corners, Fill::Solid(Ink::Paper));
            scene.add_titled(layers.members, rail.member.what.to_string(), figure);
        }
    }
    if let Some(upright) = &upright {
        draw_uprights(scene, layers, (leaf, upright), panel, &inside);
    }
    scene.add_titled(
        layers.leaf,
        format!("leaf {}, closed", leaf.id),
        Figure::area(panel.outline(), Fill::Open),
    );
    remark(scene, leaf, [&bottom, &top, &upright]);
}

/// The room inside the frame.
struct Inside {
    along: (f64, f64),
    up: (f64, f64),
}

fn remark(scene: &mut Scene, leaf: &Leaf, rails: [&Option<Rail<'_>>; 3]) {
    if leaf.member.is_empty() {
        scene.remark(format!(
            "The members of {} are not listed; its outline alone is drawn.",
            named(leaf)
        ));
    } else if rails
        .iter()
        .any(|rail| rail.as_ref().is_some_and(|rail| rail.assumed))
    {
        scene.remark(format!(
            "Members of {} whose section is not given are drawn as deep as the leaf is thick.",
            named(leaf)
        ));
    }
}

/// Uprights at their places, or evenly between the ends.
fn draw_uprights(
    scene: &mut Scene,
    layers: &Layers,
    (leaf, end): (&Leaf, &Rail<'_>),
    panel: &Panel,
    inside: &Inside,
) {
    let mut places: Vec<(f64, &Member)> = Vec::new();
    for upright in member::all(leaf, Part::Upright) {
        let count = upright.count.unwrap_or(1);
        match meters(upright.along.as_ref()) {
            Some(along) if count == 1 => places.push((along, upright)),
            _ => {
                places.extend(evenly(count, inside, end.depth).map(|along| (along, upright)));
                if count > 2 {
                    scene.remark(format!(
                        "Uprights of {} are drawn evenly spaced; their places are not given.",
                        named(leaf)
                    ));
                }
            }
        }
    }
    if places.is_empty() {
        places.extend(evenly(2, inside, end.depth).map(|along| (along, end.member)));
    }
    for (along, upright) in places {
        let half = member::depth(upright).unwrap_or(end.depth) / 2.0;
        let corners = panel.rectangle((along - half, along + half), inside.up);
        scene.add_titled(
            layers.members,
            upright.what.to_string(),
            Figure::area(corners, Fill::Solid(Ink::Paper)),
        );
    }
}

/// Middles of so many uprights, the outermost at the ends of the leaf.
fn evenly(count: u32, inside: &Inside, depth: f64) -> impl Iterator<Item = f64> + use<> {
    let (first, last) = (inside.along.0 - depth / 2.0, inside.along.1 + depth / 2.0);
    (0..count).map(move |index| {
        let share = if count > 1 {
            f64::from(index) / f64::from(count - 1)
        } else {
            0.5
        };
        first + (last - first) * share
    })
}

/// Braces as lines from the lower rail up, as long as they are said to be, one beside the other.
fn draw_braces(
    scene: &mut Scene,
    layers: &Layers,
    (leaf, brace): (&Leaf, &Member),
    panel: &Panel,
    inside: &Inside,
) {
    let count = brace.count.unwrap_or(1).clamp(1, 50);
    let rise = inside.up.1 - inside.up.0;
    let room = (inside.along.1 - inside.along.0) / f64::from(count);
    let long = meters(brace.length.as_ref()).unwrap_or(0.0);
    let run = if long > rise {
        (long * long - rise * rise).sqrt().min(room)
    } else {
        room
    };
    for index in 0..count {
        let from = inside.along.0 + room * (f64::from(index) + 0.5) - run / 2.0;
        let ends = if index % 2 == 0 {
            (from, from + run)
        } else {
            (from + run, from)
        };
        scene.add_titled(
            layers.members,
            brace.what.to_string(),
            Figure::line(panel.at(ends.0, inside.up.0), panel.at(ends.1, inside.up.1)),
        );
    }
    scene.remark(format!(
        "Braces of {} are drawn as center lines side by side; their places are not given.",
        named(leaf)
    ));
}

/// What fills the frame, hatched by what it is.
fn draw_infill(scene: &mut Scene, layers: &Layers, leaf: &Leaf, panel: &Panel, inside: &Inside) {
    let member = member::all(leaf, Part::Infill)
        .next()
        .map(|member| member.what.to_string());
    let Some(words) = leaf.infill.as_ref().map(ToString::to_string).or(member) else {
        return;
    };
    let corners = panel.rectangle(inside.along, inside.up);
    scene.add_titled(
        layers.infill,
        words.as_str(),
        Figure::area(corners, fill(&words)),
    );
    scene.remark(format!(
        "Infill of {}: {words}; its hatching is not to scale.",
        named(leaf)
    ));
}

/// Upright lines for slats, boards and pickets, level ones where they lie level, crossed ones for mesh, a tone for sheet.
fn fill(words: &str) -> Fill {
    let words = words.to_lowercase();
    let says = |any: &[&str]| any.iter().any(|word| words.contains(word));
    let hatch = |angle: f64, spacing: f64, crossed: bool| {
        Fill::Hatched(Hatch {
            angle: Angle::from_base(angle),
            spacing: Length::from_base(spacing),
            crossed,
        })
    };
    if says(&["mesh", "wire"]) {
        hatch(FRAC_PI_4, 0.0022, true)
    } else if says(&["horizontal", "level", "lying"]) {
        hatch(0.0, 0.0022, false)
    } else if says(&["upright", "vertical", "slat", "board", "picket", "bar"]) {
        hatch(FRAC_PI_2, 0.0022, false)
    } else if says(&["sheet", "panel", "plate", "solid"]) {
        Fill::Solid(Ink::Tint)
    } else {
        hatch(FRAC_PI_4, 0.003, false)
    }
}
