//! Who can open the door of an enclosure, whether that shows, and whether it opens clear of the leaf.
//!
//! A key of its own, with somebody who has it; a message or a list that shows an opening; a stay against wind. The door as
//! wide as the box swings about its hinge: where the leaf in its whole travel stays farther from the hinge than the door is
//! wide, they never meet.

use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::control::envelope::envelopes;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::{and, capitalized};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{DoorKey, DoorShows, Enclosure, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-door-and-lock",
    codes: BOTH,
    leaves_open: "how strong the lock is, copies of the key that nobody counted, and sun on the open door",
    concerns: "each enclosure",
    ask,
};

static KEYED_APART: Source = Source {
    work: "a box with controls of a gate has a key of its own, and its opening shows",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as access-control installers keep it: common cabinet keys are sold openly",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            door(asking, site, enclosure)
        });
    }
}

fn door<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&KEYED_APART);
    asking.rest_on(&GEOMETRY);
    let key = pick!(asking, enclosure.door?.key);
    let shows = pick!(asking, enclosure.door?.shows);
    let stay = need!(asking, enclosure.door?.stay, "true");
    let around = need!(asking, enclosure.door?.clear_around, "true");
    let holders = holders(asking, enclosure);
    let room = room(asking, site, enclosure);
    let width = read!(asking, enclosure.width);
    let (key, shows, stay, around) = (key?, shows?, stay?, around?);
    let (holders, room, width) = (holders?, room?, width?);
    let mut rules = Rules::default();
    rules.keep(
        key == DoorKey::Own,
        "Anybody with the common key or a screwdriver opens it: fit a lock of its own.",
    );
    rules.keep(
        shows != DoorShows::Nowhere,
        "Nobody learns that it was opened: fit a contact and report it.",
    );
    rules.keep(*stay, "Wind throws the open door about: fit a stay.");
    rules.keep(
        *around,
        "Fully open the door meets a post or stands in the lane.",
    );
    if let Some(room) = room {
        rules.compare(Comparison::at_most(
            Labeled::new("width of the door", width),
            Labeled::new("distance from its hinge to the travel of the leaf", room),
        ));
    }
    asking.say(|print| {
        rules.says(|| {
            let leaf = room.map_or_else(String::new, |room| {
                format!(
                    " The leaf stays {} from its hinge, and it is {} wide.",
                    print.q(room),
                    print.q(width)
                )
            });
            format!(
                "{}: its door has a {}, with {}; an opening is {}.{leaf}",
                capitalized(enclosure.id.as_str()),
                key.word(),
                and(&holders),
                shows.word()
            )
        })
    });
    Ok(rules.outcome())
}

fn holders<'s>(asking: &mut Asking<'s>, enclosure: &'s Enclosure) -> Result<Vec<String>, Halt> {
    let wants = Wants::Written("[\"yard master\", \"service\"]");
    match &enclosure.door {
        Some(door) if door.held_by.is_empty() => asking.lack(&door.origin, "held_by", wants),
        Some(door) => Ok(door.held_by.iter().map(ToString::to_string).collect()),
        None => asking.lack(&enclosure.origin, "door.held_by", wants),
    }
}

/// Least distance from the hinge of the door to anything that a leaf passes over; nothing on a site without a leaf.
fn room<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<Option<Length>, Halt> {
    let hinge = match &enclosure.door {
        Some(door) => asking.position(&door.origin, "hinge_at", door.hinge_at.as_ref()),
        None => asking.lack(&enclosure.origin, "door.hinge_at", Wants::Position),
    };
    let mut nearest: Option<f64> = None;
    let mut whole = Ok(());
    for gate in &site.gate {
        match envelopes(asking, gate) {
            Ok(leaves) => {
                let Ok([x, y, _]) = hinge else { continue };
                let point = (x.base(), y.base());
                for leaf in &leaves {
                    let away = leaf.distance(&[point, point]);
                    nearest = Some(nearest.map_or(away, |known| known.min(away)));
                }
            }
            Err(halt) => whole = Err(halt),
        }
    }
    hinge?;
    whole?;
    Ok(nearest.map(Length::from_base))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SITE: &str = short_slide!(
        "0 in",
        r#"
        [[enclosure]]
        id = "box"
        width = "24 in"
        [enclosure.door]
        key = "key of its own"
        held_by = ["yard master"]
        shows = "reported"
        hinge_at = ["25 ft", "5 ft", "5 ft"]
        stay = true
        clear_around = true
    "#
    );

    #[test]
    fn holds_clear_of_the_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 5 ft less half of the leaf's 2 in.
        let room = finding.capacity.unwrap().value.unwrap();
        assert!((room - 59.0 * 0.0254).abs() < 1e-9, "{room}");
    }

    #[test]
    fn fails_for_each_way_in_and_near_the_leaf() {
        for (from, to) in [
            ("key of its own", "common key"),
            ("\"reported\"", "\"not shown\""),
            ("stay = true", "stay = false"),
            ("clear_around = true", "clear_around = false"),
            ("\"25 ft\", \"5 ft\"", "\"25 ft\", \"1 ft\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_key_and_hinge() {
        let bare = SITE
            .replace("held_by = [\"yard master\"]", "")
            .replace("hinge_at = [\"25 ft\", \"5 ft\", \"5 ft\"]", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
