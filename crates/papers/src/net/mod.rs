//! The network and bus diagram: from the router or the switch in the house over each switch, injector and extender to every device,
//! each line with its cable, its medium, its length, its rate, and the power that its port has to give; then each bus of
//! readers along its line.

mod along;
mod buses;
mod layers;
mod line;
mod lower;
mod split;
mod symbols;
mod trees;
mod view;

use crate::sheets::Planned;
use design::data_network::{NetworkShown, shown};
use draw::{North, ScaleChoice, Scene};
use quantity::{Quantity as _, Ratio};
use site::{CodeBasis, Crossing, NetworkSegment, Site};
use split::Piece;

/// Widest tree (mm).
const WIDEST: f64 = 360.0;
/// Rows on a sheet, US and EU.
const ROWS: (usize, usize) = (11, 13);

/// The diagram on as many sheets as it takes; none where nothing is plugged into anything and no bus is there.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let network = shown(site);
    let buses = buses::lines(site);
    let plugged = network.members.iter().any(|member| member.up.is_some());
    if !plugged && buses.is_empty() {
        return Vec::new();
    }
    let trees = if plugged {
        lower::things(&network, site.site.unit_system())
    } else {
        Vec::new()
    };
    let rows = match site.site.code_basis {
        CodeBasis::Us => ROWS.0,
        CodeBasis::Eu => ROWS.1,
    };
    let sheets = split::sheets(trees, buses, (rows, WIDEST));
    let count = sheets.len();
    let planned = sheets.iter().enumerate().map(|(at, pieces)| Planned {
        name: if count == 1 {
            "network".to_owned()
        } else {
            format!("network-{}", at + 1)
        },
        scene: scene(site, &network, pieces, (at, count)),
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: false,
    });
    planned.collect()
}

fn scene(
    site: &Site,
    network: &NetworkShown,
    pieces: &[Piece],
    (at, count): (usize, usize),
) -> Scene {
    let title = if count == 1 {
        "Network and bus diagram".to_owned()
    } else {
        format!("Network and bus diagram, {} of {count}", at + 1)
    };
    let units = site.site.unit_system();
    let mut scene = Scene::new(title, units).describe(describe(site, network));
    trees::draw(&mut scene, pieces, WIDEST);
    remarks(&mut scene, site, network);
    scene
}

fn describe(site: &Site, network: &NetworkShown) -> String {
    let doubled: Vec<&str> = network
        .members
        .iter()
        .filter(|member| member.doubled)
        .map(|member| member.id.as_str())
        .collect();
    let addresses = if doubled.is_empty() {
        "No two have one address.".to_owned()
    } else {
        format!("These share an address: {}.", doubled.join(", "))
    };
    let buses: Vec<String> = site
        .bus
        .iter()
        .filter(|bus| !bus.node.is_empty())
        .map(|bus| {
            let devices: Vec<&str> = bus.node.iter().map(|node| node.device.as_str()).collect();
            format!(" Along {}: {}.", bus.id, devices.join(", "))
        })
        .collect();
    format!(
        "{} devices of the data network, each with what it is plugged into, its cable and its address. {addresses}{}",
        network.members.len(),
        buses.concat()
    )
}

fn remarks(scene: &mut Scene, site: &Site, network: &NetworkShown) {
    scene.remark(
        "The power beside a line is what the port has to give in the worst hour, loss in the warm cable counted; values as written. The port and address plan has every port.",
    );
    if site.bus.iter().any(|bus| !bus.node.is_empty()) {
        scene.remark("Buses: the pair from end to end, places not to scale. A resistor across the pair at both ends and nowhere between; bias at one place. Lengths and resistors as written.");
    }
    for segment in &site.network_segment {
        scene.remark(of_segment(segment));
    }
    for crossing in &site.crossing {
        scene.remark(of_crossing(crossing));
    }
    if network.members.iter().any(is_open) {
        scene.remark("A question mark: facts are missing. The findings name them.");
    }
}

fn is_open(member: &design::data_network::ShownMember) -> bool {
    let line = member.line.as_ref();
    line.is_some_and(|line| (line.powered && line.power.is_none()) || line.rate.is_none())
}

fn of_segment(segment: &NetworkSegment) -> String {
    let what = segment.what.as_ref();
    let what = what.map_or_else(String::new, |what| format!(", {what}"));
    let addresses = segment.addresses;
    let addresses = addresses.map_or_else(
        || "addresses ?".to_owned(),
        |addresses| addresses.to_string(),
    );
    format!("{}{what}: {addresses}.", segment.id)
}

fn of_crossing(crossing: &Crossing) -> String {
    let name = |id: &Option<site::Id>| {
        id.as_ref()
            .map_or_else(|| "?".to_owned(), ToString::to_string)
    };
    let what = crossing.what.as_ref();
    let what = what.map_or_else(|| "?".to_owned(), ToString::to_string);
    format!(
        "Crosses from {} to {}: {what}.",
        name(&crossing.from),
        name(&crossing.to)
    )
}
