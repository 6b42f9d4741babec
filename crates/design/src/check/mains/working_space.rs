//! Whether there is room to stand before an enclosure and open its door, out of the way of leaf and vehicles.
//!
//! Asked of every enclosure that holds a supply or a battery: somebody will work there while it is live. The room of the
//! American code is measured from the front of the enclosure, as wide as 30 in or the enclosure.

use super::branch::LICENSED;
use crate::asking::{Asking, Wants, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _, Voltage};
use site::{CodeBasis, Enclosure, Site, Supply, SupplyKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-working-space",
    codes: BOTH,
    leaves_open: "snow, parked things and plants that grow into it, and light to work by",
    concerns: "each enclosure that holds a supply or a battery",
    ask,
};

static AMERICAN: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "110.26(A): depth by table, 30 in or the width of the equipment, 6 1/2 ft, doors at least 90°",
    evidence: Evidence::Seen,
    seen: "www.ecmag.com, articles on 110.26; ecmweb.com/national-electrical-code/qa/article/20900660",
};

static EUROPEAN: Source = Source {
    work: "IEC 60364-7-729",
    clause: "gangways 700 mm wide and 2 m high",
    evidence: Evidence::Memory,
    seen: "",
};

static OUT_OF_TRAVEL: Source = Source {
    work: "nobody works where the leaf or a wheel can come",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

/// How the room is written.
const SPACE: &str = "[enclosure.working_space]\ndepth = \"42 in\"\nwidth = \"36 in\"\nheight = \"7 ft\"\ndoor_opens = \"120°\"\nfirm = true\nclear_of_leaf = true\nclear_of_lane = true";

/// Least room in meters.
struct Room {
    depth: f64,
    width: f64,
    height: f64,
}

/// Up to 150 V to ground the table asks for 3 ft; above, it goes up to 4 ft by what stands opposite, which is taken.
const UP_TO_150_VOLTS: f64 = 0.9144;
const ABOVE_150_VOLTS: f64 = 1.2192;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in site.enclosure.iter().filter(|one| is_live(site, one)) {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            room(asking, site, enclosure)
        });
    }
}

fn is_live(site: &Site, enclosure: &Enclosure) -> bool {
    let here = |name: &Option<site::Id>| name.as_ref() == Some(&enclosure.id);
    site.supply.iter().any(|supply| here(&supply.enclosure))
        || site.battery.iter().any(|battery| here(&battery.enclosure))
}

fn room<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&OUT_OF_TRAVEL);
    let wide = read!(asking, enclosure.width);
    let wanted = wanted(asking, site, enclosure);
    let Some(space) = &enclosure.working_space else {
        return asking.lack(&enclosure.origin, "working_space", Wants::Table(SPACE));
    };
    let depth = read!(asking, space.depth);
    let width = read!(asking, space.width);
    let height = read!(asking, space.height);
    let opens = read!(asking, space.door_opens);
    let at = &space.origin;
    let firm = told(asking, at, "firm", space.firm);
    let leaf = told(asking, at, "clear_of_leaf", space.clear_of_leaf);
    let lane = told(asking, at, "clear_of_lane", space.clear_of_lane);
    let fault = [
        (firm, "the ground before it is soft, wet or not level"),
        (leaf, "the leaf comes into the room before it"),
        (lane, "vehicles pass through the room before it"),
    ]
    .into_iter()
    .find(|(told, _)| matches!(told, Ok(false)));
    if let Some((_, why)) = fault {
        asking.say(|_| {
            format!(
                "{}: {why}, where somebody works on live parts. {LICENSED}",
                capitalized(enclosure.id.as_str())
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let (wide, wanted, depth, width) = (wide?, wanted?, depth?, width?);
    let (height, opens) = (height?, opens?);
    let _ = (firm?, leaf?, lane?);
    asking.say(|print| {
        format!(
            "Before {} there is room {} deep, {} wide and {} high, firm and out of the way of leaf and wheels. {LICENSED}",
            enclosure.id,
            print.q(depth),
            print.q(width),
            print.q(height)
        )
    });
    let least = |label, have_label, least: f64, have: Length| {
        Comparison::at_most(
            Labeled::new(label, Length::from_base(least)),
            Labeled::new(have_label, have),
        )
    };
    let comparisons = [
        least(
            "depth that is asked for",
            "depth of the room",
            wanted.depth,
            depth,
        ),
        least(
            "width that is asked for",
            "width of the room",
            wanted.width.max(wide.base()),
            width,
        ),
        least(
            "height that is asked for",
            "height of the room",
            wanted.height,
            height,
        ),
        Comparison::at_most(
            Labeled::new(
                "angle to which the door must open",
                Angle::from_base(std::f64::consts::FRAC_PI_2),
            ),
            Labeled::new("angle to which it opens", opens),
        ),
    ];
    Ok(Outcome::worst(comparisons).unwrap_or(Outcome::Rule(true)))
}

/// The room that the code of the site asks for.
fn wanted<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
) -> Result<Room, Halt> {
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&EUROPEAN);
        return Ok(Room {
            depth: 0.7,
            width: 0.7,
            height: 2.0,
        });
    }
    asking.rest_on(&AMERICAN);
    let mains = mains_in(site, enclosure);
    let volts = match mains {
        Some(supply) => read!(asking, supply.circuit?.to_earth)?,
        None => Voltage::from_base(0.0),
    };
    Ok(Room {
        depth: if volts.base() <= 150.0 {
            UP_TO_150_VOLTS
        } else {
            ABOVE_150_VOLTS
        },
        width: 0.762,
        height: 1.9812,
    })
}

/// The mains circuit that comes into an enclosure.
fn mains_in<'s>(site: &'s Site, enclosure: &Enclosure) -> Option<&'s Supply> {
    let mounted = |supply: &&Supply| supply.enclosure.as_ref() == Some(&enclosure.id);
    let is_mains = |supply: &&Supply| supply.kind == SupplyKind::Mains;
    let mut here = site.supply.iter().filter(mounted);
    here.find_map(|supply| {
        let feeder = supply.fed_by.as_ref()?;
        let all = &mut site.supply.iter();
        all.filter(is_mains).find(|mains| mains.id == *feeder)
    })
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[enclosure]]
        id = "box"
        width = "24 in"
        [enclosure.working_space]
        depth = "40 in"
        width = "36 in"
        height = "7 ft"
        door_opens = "120°"
        firm = true
        clear_of_leaf = true
        clear_of_lane = true
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [supply.circuit]
        to_earth = "120 V"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        enclosure = "box"
        fed_by = "mains"
    "#;

    #[test]
    fn holds_with_room_to_stand() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_shallow_in_the_way_and_at_a_higher_voltage() {
        for (from, to) in [
            ("\"40 in\"", "\"35 in\""),
            ("clear_of_leaf = true", "clear_of_leaf = false"),
            ("\"120 V\"", "\"277 V\""),
            ("\"24 in\"", "\"40 in\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{from}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_the_room_and_in_europe() {
        let bare = SITE.replace("depth = \"40 in\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let europe = SITE.replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::UnknownUntil);
    }
}
