//! How much of its wanted area a camera sees, with the leaf closed, half open and open.
//!
//! The area is taken level at the mean height of its corners. Posts, bollards, boxes, fences that one does not see through
//! and the leaf stand before it with their heights; a leaf or fence that is more open than solid is seen through. What the
//! camera itself hangs on hides nothing. A vehicle that has stopped in the gate is looked at for the words only.

use super::{PINHOLE, cameras};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::eye::{PLACES, Standing, Wanted, camera, fixed, leaf_at, parked, wanted};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use quantity::{Length, Quantity as _, Ratio};
use sim::camera::{Camera, Hider, Seen};
use site::{Device, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "camera-view",
    codes: BOTH,
    leaves_open: "its own housing or hood in the picture, planting that has grown since, a lens that bends straight lines, what stands there without a place in this description, and vehicles that stop elsewhere",
    concerns: "each camera",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in cameras(site) {
        round.ask_in_full(About::new(&device.origin, &device.id), |asking| {
            view(asking, site, device)
        });
    }
}

/// Shares below that are the rim of the strips in which the area is cut.
const NOTHING: f64 = 0.003;

/// What is seen while the leaf is at one place.
struct AtPlace {
    name: &'static str,
    seen: Seen,
    things: Vec<Standing>,
}

fn view<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&PINHOLE);
    let lens = camera(asking, device);
    let wanted = wanted(asking, device);
    let gate = gate_of(asking, site, device);
    let standing = gate.and_then(|gate| leaves(asking, gate));
    let accepted = match &device.picture {
        Some(picture) => {
            asking.read_if_there(&picture.origin, "may_hide", picture.may_hide.as_ref())
        }
        None => None,
    };
    let (camera, wanted, gate, standing) = (lens?, wanted?, gate?, standing?);
    let mut found = Vec::with_capacity(PLACES.len());
    for (name, leaf) in standing {
        let mut things = fixed(site, gate);
        things.extend(leaf);
        let hiders: Vec<Hider> = things.iter().map(|one| one.hider.clone()).collect();
        let seen = asking.in_reach(camera.sees(&wanted, &hiders))?;
        found.push(AtPlace { name, seen, things });
    }
    let lost = found
        .iter()
        .map(|at| 1.0 - at.seen.seen.base())
        .fold(0.0, f64::max);
    let lost = if lost < NOTHING { 0.0 } else { lost };
    asking.say(|print| {
        let shares: Vec<String> = found
            .iter()
            .map(|at| format!("{} with the leaf {}", print.percent(at.seen.seen), at.name))
            .collect();
        format!(
            "{} sees {} of its area{}{}{}.",
            capitalized(device.id.as_str()),
            shares.join(", "),
            hidden(&found, |share| print.percent(share)),
            lens_words(&camera, &wanted, |length| print.q(length)),
            behind_a_vehicle((site, gate), (&camera, &wanted), &found, |share| print
                .percent(share))
        )
    });
    Ok(Outcome::at_most(
        Labeled::new(
            "share of the wanted area that is not seen",
            Ratio::from_base(lost),
        ),
        Labeled::new(
            "share that may be hidden",
            accepted.unwrap_or(Ratio::from_base(0.0)),
        ),
    ))
}

type Placed = Vec<(&'static str, Vec<Standing>)>;

fn leaves<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Placed, crate::outcome::Halt> {
    let mut all = Vec::with_capacity(PLACES.len());
    for (name, share) in PLACES {
        all.push((name, leaf_at(asking, gate, share)?));
    }
    Ok(all)
}

/// What hides the rest, worst first, each thing by its greatest share.
fn hidden(found: &[AtPlace], percent: impl Fn(Ratio) -> String) -> String {
    let mut all: Vec<(&str, &str, f64)> = Vec::new();
    for at in found {
        let outside = at.seen.outside.base();
        let parts = at.things.iter().zip(&at.seen.hidden_by);
        let parts = parts.map(|(thing, share)| (thing.name.as_str(), share.base()));
        for (name, share) in parts.chain([("", outside)]) {
            match all.iter_mut().find(|known| known.0 == name) {
                Some(known) if known.2 < share => (known.1, known.2) = (at.name, share),
                Some(_) => {}
                None => all.push((name, at.name, share)),
            }
        }
    }
    all.retain(|(_, _, share)| *share >= NOTHING);
    all.sort_by(|one, other| other.2.total_cmp(&one.2));
    let words: Vec<String> = all
        .iter()
        .take(4)
        .map(|(name, at, share)| match *name {
            "" => format!(
                "{} lies outside the picture",
                percent(Ratio::from_base(*share))
            ),
            name => format!(
                "{name} hides {} with the leaf {at}",
                percent(Ratio::from_base(*share))
            ),
        })
        .collect();
    if words.is_empty() {
        "; nothing of it is hidden".to_owned()
    } else {
        format!("; {}", words.join(", "))
    }
}

/// Up to which lens the whole area stays in the picture.
fn lens_words(camera: &Camera, wanted: &Wanted, length: impl Fn(Length) -> String) -> String {
    let lens = camera.longest_lens(wanted.corners.iter().map(|[x, y]| [*x, *y, wanted.height]));
    lens.map_or_else(
        || "; part of the area lies behind it: turn or move it".to_owned(),
        |lens| {
            format!(
                "; pointed like this, lenses up to {} take the whole area in, and it has {}",
                length(lens),
                length(camera.focal_length)
            )
        },
    )
}

/// What is left of it behind the vehicle that hides most of it, stopped in the gate.
fn behind_a_vehicle(
    (site, gate): (&Site, &Gate),
    (camera, wanted): (&Camera, &Wanted),
    found: &[AtPlace],
    percent: impl Fn(Ratio) -> String,
) -> String {
    let Some(open) = found.last() else {
        return String::new();
    };
    let (vehicles, _) = crate::vehicle::shown(site, gate);
    let seen = vehicles.iter().filter_map(|vehicle| {
        let parts = parked(vehicle);
        let hiders = open.things.iter().chain(&parts);
        let hiders: Vec<Hider> = hiders.map(|one| one.hider.clone()).collect();
        let seen = camera.sees(wanted, &hiders).ok()?.seen;
        Some((vehicle.id.clone(), seen))
    });
    let worst = seen.min_by(|one, other| one.1.base().total_cmp(&other.1.base()));
    worst.map_or_else(String::new, |(name, seen)| {
        format!(
            "; with {name} stopped in the gate it sees {}",
            percent(seen)
        )
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SITE: &str = short_slide!(
        "0 ft",
        r#"
        solidity = "0.9"
        [[device]]
        id = "camera"
        kind = "camera"
        at = ["10 ft", "40 ft", "15 ft"]
        facing = "-90°"
        [device.lens]
        sensor_width = "5.6 mm"
        pixels_across = 2560
        pixels_down = 1440
        focal_length = "4 mm"
        tilt = "20°"
        [device.picture]
        area = [["2 ft", "2 ft", "0 ft"], ["18 ft", "2 ft", "0 ft"], ["18 ft", "12 ft", "0 ft"], ["2 ft", "12 ft", "0 ft"]]
    "#
    );

    #[test]
    fn holds_over_open_ground_before_the_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("lenses up to"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_behind_the_closed_leaf_and_names_it() {
        let behind = SITE.replace("\"2 ft\", \"0 ft\"]", "\"-10 ft\", \"0 ft\"]");
        let finding = only(&CHECK, &behind);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("leaf hides"),
            "{}",
            finding.sentence
        );
        let mesh = only(&CHECK, &behind.replace("0.9", "0.3"));
        assert_eq!(mesh.verdict, Verdict::Holds, "{}", mesh.sentence);
    }

    #[test]
    fn fails_turned_away_unless_so_much_may_be_hidden() {
        let away = SITE.replace("\"-90°\"", "\"-60°\"");
        let finding = only(&CHECK, &away);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("outside the picture"),
            "{}",
            finding.sentence
        );
        let accepted = away + "may_hide = \"90 %\"\n";
        assert_eq!(only(&CHECK, &accepted).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_lens_and_area() {
        let bare = SITE.split("[device.lens]").next().unwrap();
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 6, "{:?}", finding.missing);
    }
}
