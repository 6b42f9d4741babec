//! What the sheet of an enclosure says in sentences: fixing, door, what is missing.

use super::Drawn;
use super::content::Place;
use quantity::{Measured, Quantity, print_measured};
use site::{EnclosureEntry, EntrySide};

impl Drawn<'_> {
    pub(super) fn described(&self) -> String {
        let placed = |place: &Place| matches!(place, Place::At(..));
        let things = &self.contents.things;
        let drawn = things.iter().filter(|thing| placed(&thing.place)).count();
        format!(
            "Enclosure {} from the front with {drawn} of {} things in it to scale, and the faces through which cables come in.",
            self.enclosure.id,
            things.len()
        )
    }

    pub(super) fn remarks(&self) -> Vec<String> {
        let mut remarks = vec![self.fixing(), self.door_words()];
        remarks.extend(self.rails_words());
        remarks.extend(self.entries_words());
        if self.enclosure.depth.is_none() {
            remarks.push("Its depth is not written: no face is drawn.".to_owned());
        }
        remarks
    }

    fn shown<Q: Quantity>(&self, value: Option<&Measured<Q>>) -> Option<String> {
        value.map(|value| print_measured(value, self.scene.units))
    }

    fn fixing(&self) -> String {
        let layout = self.enclosure.layout.as_ref();
        let mass = layout.and_then(|layout| self.shown(layout.mass.as_ref()));
        let rated = layout.and_then(|layout| self.shown(layout.rated_mass.as_ref()));
        let to = self
            .enclosure
            .panel
            .as_ref()
            .and_then(|panel| panel.fixed_to.as_ref());
        format!(
            "Mass with all in it: {}; fixed to: {}; the fixings are good for {}.",
            mass.unwrap_or_else(|| "not written".to_owned()),
            to.map_or_else(|| "not written".to_owned(), ToString::to_string),
            rated.unwrap_or_else(|| "a mass that is not written".to_owned())
        )
    }

    fn door_words(&self) -> String {
        let Some(door) = &self.enclosure.door else {
            return "Door and lock: not written.".to_owned();
        };
        let key = door
            .key
            .map_or_else(|| "lock not written".to_owned(), |key| key.to_string());
        let held: Vec<String> = door.held_by.iter().map(ToString::to_string).collect();
        let held = if held.is_empty() {
            "holders of the key not written".to_owned()
        } else {
            format!("held by {}", held.join(", "))
        };
        let opens = self.shown(door.opens.as_ref()).map_or_else(
            || "angle not written".to_owned(),
            |it| format!("opens {it}"),
        );
        let hinge = match self.hinged_left() {
            Some(true) => "hinges on the left",
            Some(false) => "hinges on the right",
            None => "side of the hinges not known",
        };
        format!("Door: {key}, {held}; {hinge}; {opens}.")
    }

    /// What is missing of panel and rails, and rails that are too short.
    fn rails_words(&self) -> Vec<String> {
        let Some(panel) = &self.enclosure.panel else {
            return vec!["Panel, rails and places of what is in it are not written: nothing of them is drawn. Tape them and write [enclosure.panel].".to_owned()];
        };
        let mut said = Vec::new();
        if self.panel_corner().is_none() {
            said.push("Place of the panel in the box is not written: it is not drawn.".to_owned());
        } else if panel.width.is_none() || panel.height.is_none() {
            said.push("Size of the panel is not written: its outline is not drawn.".to_owned());
        }
        for (rail, number) in self.contents.rails.iter().zip(1..) {
            match rail {
                None => said.push(format!(
                    "Rail {number} from above: beginning, height or length is not written."
                )),
                Some(rail) if rail.taken > rail.length + 1e-6 => said.push(format!(
                    "Rail {number} from above is too short for what is on it, by {}.",
                    draw::dimension_text(
                        quantity::Length::from_base(rail.taken - rail.length),
                        self.scene.units
                    )
                )),
                Some(_) => {}
            }
        }
        said
    }

    /// Entries whose holes are not written, or not drawn.
    fn entries_words(&self) -> Vec<String> {
        if self.enclosure.entry.is_empty() {
            return vec!["Entries of cables are not written.".to_owned()];
        }
        let mut said = Vec::new();
        for entry in &self.enclosure.entry {
            if let Some(missing) = missing(entry) {
                said.push(format!("Holes of “{}”: {missing}.", entry.what));
            }
        }
        let from_above = |entry: &EnclosureEntry| {
            entry.side == Some(EntrySide::Top) && entry.drip_loop != Some(true)
        };
        if self.enclosure.entry.iter().any(from_above) {
            said.push("Something comes in from above: water follows it.".to_owned());
        }
        said
    }
}

/// What of its holes is not written.
fn missing(entry: &EnclosureEntry) -> Option<String> {
    let mut lacks = Vec::new();
    if entry.side.is_none() {
        lacks.push("side");
    }
    let wanted = entry.conduits.len() + entry.cables.len();
    match &entry.holes {
        None => lacks.extend(["drill sizes", "places"]),
        Some(holes) => {
            if holes.drill.is_empty() || (holes.drill.len() > 1 && holes.drill.len() < wanted) {
                lacks.push("drill sizes");
            }
            if holes.from_left.len() < wanted || holes.from_back.is_none() {
                lacks.push("places");
            }
        }
    }
    (!lacks.is_empty()).then(|| {
        let are = if lacks.len() == 1 && lacks == ["side"] {
            "is"
        } else {
            "are"
        };
        format!("{} {are} not written", lacks.join(" and "))
    })
}
