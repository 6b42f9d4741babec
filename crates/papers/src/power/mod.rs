//! The single-line diagram: from the mains, batteries and panels over supplies, fuses and cables to every load, with its
//! greatest current and its lowest voltage.

mod ends;
mod layers;
mod node;
pub(crate) mod pen;
mod split;
mod symbols;
mod tree;
pub(crate) mod words;

use crate::sheets::Planned;
use design::power::{LoadStanding, PowerShown, ShownLoad, SourceKind, Worked, shown};
use draw::{North, ScaleChoice, Scene};
use layers::Layers;
use node::{Node, Shown};
use pen::Pen;
use quantity::{Quantity as _, Ratio, UnitSystem};
use site::{CodeBasis, Site};
use tree::{Place, ROW, Tree, up};

/// Widest tree up to the symbols of its loads (mm).
const WIDEST: f64 = 262.0;
/// Rows on a sheet, US and EU.
const ROWS: (usize, usize) = (18, 21);

/// The single-line diagram on as many sheets as it takes; none where the site has no source.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let power = shown(site);
    let rows = match site.site.code_basis {
        CodeBasis::Us => ROWS.0,
        CodeBasis::Eu => ROWS.1,
    };
    let scenes = scenes(&power, site.site.unit_system(), rows);
    let alone = scenes.len() == 1;
    let planned = scenes.into_iter().enumerate().map(|(at, scene)| Planned {
        name: if alone {
            "single-line".to_owned()
        } else {
            format!("single-line-{}", at + 1)
        },
        scene,
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: false,
    });
    planned.collect()
}

fn scenes(power: &PowerShown, units: UnitSystem, rows: usize) -> Vec<Scene> {
    let shown = Shown { power, units };
    let roots = power.roots.iter().filter(|at| is_drawn(power, **at));
    let roots: Vec<Node> = roots.map(|at| Node::root(power, *at)).collect();
    let sheets = split::sheets(shown, roots, (rows, WIDEST));
    let count = sheets.len();
    let scenes = sheets.iter().enumerate().map(|(at, trees)| {
        let title = if count == 1 {
            "Single-line diagram".to_owned()
        } else {
            format!("Single-line diagram, {} of {count}", at + 1)
        };
        let mut scene = Scene::new(title, units).describe(describe(power));
        draw(&mut scene, shown, trees);
        remarks(&mut scene, power);
        scene
    });
    scenes.collect()
}

/// A battery at a supply is drawn there.
fn is_drawn(power: &PowerShown, at: usize) -> bool {
    let Some(source) = power.sources.get(at) else {
        return false;
    };
    let at_supply = power
        .sources
        .iter()
        .flat_map(|other| &other.stores)
        .any(|store| store.id == source.id);
    !(source.kind == SourceKind::Battery && at_supply && source.branches.is_empty())
}

fn draw(scene: &mut Scene, shown: Shown<'_>, trees: &[Node]) {
    let reach = trees.iter().map(|node| node.reach(shown, 0.0));
    let loads = reach.fold(0.0, f64::max) + node::GAP;
    let layers = Layers::add_to(scene);
    let mut tree = Tree {
        pen: Pen { scene, layers },
        shown,
        loads,
    };
    ends::heads(&mut tree, up(0) + ROW * 0.7);
    let mut row = 0;
    for node in trees {
        let place = Place {
            x: 0.0,
            row,
            before: 0.0,
            mains: false,
        };
        tree.node(node, place);
        row += node.rows(shown) + 1;
    }
}

fn describe(power: &PowerShown) -> String {
    let too_low: Vec<&str> = standing(power, LoadStanding::TooLow);
    let verdict = if too_low.is_empty() {
        "No load is known to be below its least voltage.".to_owned()
    } else {
        format!("Below their least voltage: {}.", too_low.join(", "))
    };
    format!(
        "From {} over fuses and cables to {} loads, each with its greatest current and its lowest voltage. {verdict}",
        names(power),
        power.loads.len()
    )
}

fn names(power: &PowerShown) -> String {
    let names: Vec<&str> = power
        .roots
        .iter()
        .filter_map(|at| power.sources.get(*at))
        .map(|source| source.id.as_str())
        .collect();
    names.join(", ")
}

/// The names of the loads that stand so, each once.
fn standing(power: &PowerShown, asked: LoadStanding) -> Vec<&str> {
    let mut names: Vec<&str> = Vec::new();
    for load in power.loads.iter().filter(|load| load.standing == asked) {
        if !names.contains(&load.id.as_str()) {
            names.push(&load.id);
        }
    }
    names
}

fn remarks(scene: &mut Scene, power: &PowerShown) {
    scene.remark(
        "One line stands for all conductors of a circuit. Greatest current and lowest voltage are those of each load's own worst moment in any case, every value at the bad end of its tolerance; the load tables have each case.",
    );
    if has_mains(power) {
        scene.remark(
            "Work on the mains circuit, its breaker, its disconnect and its earth (ground) is for a licensed electrician under local codes: disconnect, lock off, prove dead. A question mark at a disconnect: none is written for that circuit.",
        );
    }
    let unknown = |load: &ShownLoad| load.lowest.is_none() || load.least.is_none();
    if power.loads.iter().any(unknown) || power.sources.iter().any(is_open) {
        scene.remark(
            "A question mark: facts are missing. The load tables and the fuse list name them.",
        );
    }
    if !power.unfed.is_empty() {
        scene.remark(format!(
            "Draws a current, and nothing that feeds it is written: {}.",
            power.unfed.join(", ")
        ));
    }
    scene.remark("What is fed over a data cable is part of its switch here; loops are fed by their detectors.");
}

fn has_mains(power: &PowerShown) -> bool {
    let mains = |kind: SourceKind| kind == SourceKind::Mains;
    power.sources.iter().any(|source| mains(source.kind))
}

fn is_open(source: &design::power::ShownSource) -> bool {
    source.given.contains(&Worked::Unknown)
}
