//! Where the pins of each linear drive go so that it keeps the most leverage over its whole travel.

use crate::asking::{Asking, Lack, Wants, read};
use crate::check::drive::leaf_of;
use crate::check::force::swing_drive::swings;
use crate::figure::Print;
use crate::outcome::Halt;
use formula::motion::{LinearPins, LinearPlace};
use quantity::Length;
use serde::Serialize;
use site::{DriveKind, Gate, Operator, Site};

/// One distance of a mounting.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Pin {
    /// Key of the mounting in the site file: `rear_behind`.
    pub key: &'static str,
    /// The distance, in the units of the site.
    pub distance: String,
}

/// Where the pins of one drive go.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Mounted {
    /// The drive: `operator "drive-left"`.
    pub drive: String,
    /// The distances that keep the most leverage; empty where there are none.
    pub pins: Vec<Pin>,
    /// What they give, or why there are none, as a sentence.
    pub says: String,
    /// Lines that the site file lacks.
    pub write: Vec<String>,
}

/// The best place of the pins of each linear drive of a swing gate, in the order of the site.
pub fn mountings(site: &Site) -> Vec<Mounted> {
    let linear = |operator: &&Operator| operator.drive == Some(DriveKind::Linear);
    let of = |operator: &Operator| {
        let gate = site.gate.iter().find(|gate| gate.id == operator.gate);
        gate.filter(|gate| swings(gate))
            .map(|gate| mounted(site, gate, operator))
    };
    site.operator.iter().filter(linear).filter_map(of).collect()
}

fn mounted(site: &Site, gate: &Gate, operator: &Operator) -> Mounted {
    let mut asking = Asking::new(site.site.unit_system());
    let print = asking.print();
    let drive = operator.origin.path.clone();
    let bare = |says: String, write: Vec<String>| Mounted {
        drive: drive.clone(),
        pins: Vec::new(),
        says,
        write,
    };
    let Ok(place) = place(&mut asking, gate, operator) else {
        let write = asking.lacks.iter().map(Lack::line).collect();
        return bare("The search lacks some measurements.".to_owned(), write);
    };
    match place.best() {
        Ok(best) => Mounted {
            drive: drive.clone(),
            pins: pins(print, &best, place.front_across),
            says: format!(
                "With these pins the drive's line passes the hinge line at {} or more over the whole {} of travel.",
                print.q(best.least_lever_arm),
                print.q(place.travel_angle)
            ),
            write: Vec::new(),
        },
        Err(reach) => bare(capital(&reach.why), Vec::new()),
    }
}

fn pins(print: Print, best: &LinearPins, front_across: Length) -> Vec<Pin> {
    let pin = |key, distance: Length| Pin {
        key,
        distance: print.q(distance),
    };
    vec![
        pin("rear_behind", best.rear_behind),
        pin("rear_across", best.rear_across),
        pin("front_along", best.front_along),
        pin("front_across", front_across),
    ]
}

/// A sentence begins with a capital letter and ends with a stop.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first: String = letters
        .next()
        .into_iter()
        .flat_map(char::to_uppercase)
        .collect();
    format!("{first}{}.", letters.as_str())
}

/// The drive, its post and the room for its pins.
fn place<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
    operator: &'s Operator,
) -> Result<LinearPlace, Halt> {
    if operator.mounting.is_none() {
        return asking.lack(
            &operator.origin,
            "mounting",
            Wants::Written(
                "{ shortest = \"600 mm\", longest = \"1000 mm\", spare_stroke = \"10 mm\" }",
            ),
        );
    }
    let travel_angle = read!(asking, gate.travel_angle);
    let width = leaf_of(asking, gate, operator).and_then(|leaf| read!(asking, leaf.length));
    let shortest = read!(asking, operator.mounting?.shortest);
    let longest = read!(asking, operator.mounting?.longest);
    let spare_stroke = read!(asking, operator.mounting?.spare_stroke);
    let front_across = read!(asking, operator.mounting?.front_across);
    let post_depth = read!(asking, operator.mounting?.post_depth);
    let hinge_inset = read!(asking, operator.mounting?.hinge_inset);
    let clearance = read!(asking, operator.mounting?.body_clearance);
    let most_behind = read!(asking, operator.mounting?.most_behind);
    let most_across = read!(asking, operator.mounting?.most_across);
    Ok(LinearPlace {
        travel_angle: travel_angle?,
        shortest: shortest?,
        longest: longest?,
        spare_stroke: spare_stroke?,
        post_depth: post_depth?,
        hinge_inset: hinge_inset?,
        clearance: clearance?,
        front_across: front_across?,
        most_behind: most_behind?,
        most_across: most_across?,
        most_along: width?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::mountings;
    use crate::check::testing::site;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "single-swing"
        travel_angle = "90°"
        [[gate.leaf]]
        id = "leaf"
        length = "2.1 m"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "linear"
        [operator.mounting]
        front_across = "60 mm"
        shortest = "740 mm"
        longest = "1160 mm"
        spare_stroke = "10 mm"
        post_depth = "70 mm"
        hinge_inset = "40 mm"
        body_clearance = "60 mm"
        most_behind = "300 mm"
        most_across = "300 mm"
    "#;

    #[test]
    fn a_drive_that_fits_gets_its_pins() {
        let found = mountings(&site(SITE)).remove(0);
        let keys: Vec<&str> = found.pins.iter().map(|pin| pin.key).collect();
        assert_eq!(
            keys,
            ["rear_behind", "rear_across", "front_along", "front_across"]
        );
        assert!(found.says.contains("hinge line at"), "{}", found.says);
    }

    #[test]
    fn a_drive_that_is_too_short_is_refused_in_words() {
        let short = SITE.replace("1160 mm", "800 mm");
        let found = mountings(&site(&short)).remove(0);
        assert!(found.pins.is_empty());
        assert!(found.says.contains("longer drive"), "{}", found.says);
    }

    #[test]
    fn what_is_missing_is_named() {
        let bare = SITE.replace("post_depth = \"70 mm\"", "");
        let found = mountings(&site(&bare)).remove(0);
        assert_eq!(found.write.len(), 1, "{:?}", found.write);
        assert!(found.write.iter().all(|line| line.contains("post_depth")));
    }
}
