//! What a detector does when it sees a vehicle, and in which direction of the leaf, in words.

use site::{Device, DeviceKind, Direction, OnVehicle};

/// In which directions of the leaf it is live: closing, opening.
pub(super) fn live(device: &Device) -> (bool, bool) {
    use OnVehicle::{HoldsOpen, StopsClosing, StopsOpening};
    let does = |wanted: OnVehicle| device.on_vehicle.contains(&wanted);
    if device.on_vehicle.is_empty() && device.kind != DeviceKind::Loop {
        let guards = |direction| device.guards.is_empty() || device.guards.contains(&direction);
        return (guards(Direction::Closing), guards(Direction::Opening));
    }
    (does(HoldsOpen) || does(StopsClosing), does(StopsOpening))
}

/// Its name, what it does, and when it is live, each on a line.
pub(super) fn words(device: &Device) -> String {
    let does: Vec<String> = device.on_vehicle.iter().map(ToString::to_string).collect();
    let does = if does.is_empty() {
        match device.kind {
            DeviceKind::Loop => "not written what it does".to_owned(),
            _ => "guards".to_owned(),
        }
    } else {
        does.join(", ")
    };
    let live = match live(device) {
        (true, true) => "live while it closes\nand while it opens",
        (true, false) => "live while it closes",
        (false, true) => "live while it opens",
        (false, false) => "stops no leaf",
    };
    format!("{}\n{does}\n{live}", device.id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_loop_that_opens_stops_no_leaf() {
        let text = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n[[device]]\nid = \"exit\"\nkind = \"loop\"\non_vehicle = [\"opens\"]\n[[device]]\nid = \"hold\"\nkind = \"loop\"\non_vehicle = [\"stops closing\", \"stops opening\"]\n";
        let file = site::SourceFile {
            name: "site.toml".to_owned(),
            text: text.to_owned(),
        };
        let loaded = site::load(file, Vec::new());
        let said: Vec<String> = loaded
            .site
            .iter()
            .flat_map(|site| &site.device)
            .map(words)
            .collect();
        assert_eq!(
            said,
            [
                "exit\nopens\nstops no leaf",
                "hold\nstops closing, stops opening\nlive while it closes\nand while it opens"
            ]
        );
    }
}
