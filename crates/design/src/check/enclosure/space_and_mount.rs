//! Whether everything fits into an enclosure with room to bend, to cool, to work and to add, and what carries it.
//!
//! The mounting rail is taken by what lies on it, taped, and never by less than the widths listed as mounted; a share of it
//! stays free, a quarter where the site says nothing else. The thickest cable that comes in bends within six times its
//! diameter. Gaps for heat are those of the data sheets. The mass hangs on fixings that are good for it, the battery below.

use crate::asking::{Asking, need, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio};
use site::{Enclosure, EnclosureLayout, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "enclosure-space-and-mount",
    codes: BOTH,
    leaves_open: "the table of wire-bending space of NFPA 70, 312.6, for conductors of 8 AWG and larger, the post or wall behind the fixings, and whether a hand with a screwdriver gets at each terminal",
    concerns: "each enclosure",
    ask,
};

static SPARE: Source = Source {
    work: "a quarter of the mounting rail stays free for what comes later",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as panel builders quote it",
};

static BEND: Source = Source {
    work: "a cable bends with an inner radius of six times its diameter",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "data sheets of flexible control cable; stiff cable asks for more",
};

/// Share of the rail kept free where the site says nothing.
const FREE: f64 = 0.25;

/// Radius of a bend over the diameter of the cable.
const RADIUS: f64 = 6.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for enclosure in &site.enclosure {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            space(asking, site, enclosure)
        });
    }
}

fn space<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let mut rules = Rules::default();
    let rail = rail(asking, enclosure, &mut rules);
    let bend = bend(asking, site, enclosure, &mut rules);
    let gap = gap(asking, enclosure, &mut rules);
    let mass = mass(asking, site, enclosure, &mut rules);
    let (free, radius) = (rail?, bend?);
    gap?;
    let mass = mass?;
    asking.say(|print| {
        let said = rules.says(|| {
            let bend = radius.map_or_else(String::new, |radius| {
                format!(" The thickest cable wants {} to bend.", print.q(radius))
            });
            format!(
                "it weighs {}, and its fixings are good for {}.{bend}",
                print.q(mass.0),
                print.q(mass.1)
            )
        });
        format!(
            "{}: {} of its mounting rail is free; {said}",
            capitalized(enclosure.id.as_str()),
            print.q(free)
        )
    });
    Ok(rules.outcome())
}

/// Share of the rail that is free.
fn rail<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<Ratio, Halt> {
    let length = read!(asking, enclosure.layout?.rail_length);
    let taped = read!(asking, enclosure.layout?.rail_used);
    let (length, taped) = (length?, taped?);
    let mut listed = Length::from_base(0.0);
    for part in &enclosure.mounted {
        if let Some(width) = asking.read_if_there(&part.origin, "width", part.width.as_ref()) {
            listed += width * f64::from(part.count.unwrap_or(1));
        }
    }
    let used = if listed > taped { listed } else { taped };
    let spare = enclosure
        .layout
        .as_ref()
        .and_then(|layout: &'s EnclosureLayout| {
            asking.read_if_there(&layout.origin, "spare_wanted", layout.spare_wanted.as_ref())
        });
    let spare = spare.unwrap_or_else(|| {
        asking.rest_on(&SPARE);
        Ratio::from_base(FREE)
    });
    rules.compare(Comparison::at_most(
        Labeled::new("mounting rail that is taken", used),
        Labeled::new(
            "mounting rail that may be taken",
            length * (1.0 - spare.base()),
        ),
    ));
    Ok(Ratio::from_base(1.0 - used.base() / length.base()))
}

/// Radius that the thickest cable asks for; nothing where no cable comes in.
fn bend<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<Option<Length>, Halt> {
    let mut thickest: Option<Length> = None;
    let mut whole = Ok(());
    for cable in super::coming_in::cables(site, enclosure) {
        match read!(asking, cable.diameter) {
            Ok(diameter) if thickest.is_none_or(|known| diameter > known) => {
                thickest = Some(diameter);
            }
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let Some(thickest) = thickest else {
        return Ok(None);
    };
    asking.rest_on(&BEND);
    let room = read!(asking, enclosure.layout?.bend_space)?;
    let radius = thickest * RADIUS;
    rules.compare(Comparison::at_most(
        Labeled::new("bend of the thickest cable", radius),
        Labeled::new("room to bend", room),
    ));
    Ok(Some(radius))
}

fn gap<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<(), Halt> {
    let there = read!(asking, enclosure.layout?.heat_gap);
    let wanted = read!(asking, enclosure.layout?.heat_gap_wanted);
    rules.compare(Comparison::at_most(
        Labeled::new("gap that the data sheets ask for", wanted?),
        Labeled::new("gap above and below what gives off heat", there?),
    ));
    Ok(())
}

fn mass<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    enclosure: &'s Enclosure,
    rules: &mut Rules,
) -> Result<(quantity::Mass, quantity::Mass), Halt> {
    let mass = read!(asking, enclosure.layout?.mass);
    let rated = read!(asking, enclosure.layout?.rated_mass);
    let here = |battery: &site::Battery| battery.enclosure.as_ref() == Some(&enclosure.id);
    let below = if site.battery.iter().any(here) {
        need!(asking, enclosure.layout?.battery_at_bottom, "true").copied()
    } else {
        Ok(true)
    };
    let (mass, rated) = (mass?, rated?);
    rules.keep(
        below?,
        "the battery does not stand at the bottom: move it down.",
    );
    rules.compare(Comparison::at_most(
        Labeled::new("mass of the box with all that is in it", mass),
        Labeled::new("mass that its fixings are good for", rated),
    ));
    Ok((mass, rated))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[enclosure]]
        id = "box"
        mounted = [{ what = "terminal", count = 40, width = "1/4 in" }]
        [enclosure.layout]
        rail_length = "40 in"
        rail_used = "26 in"
        bend_space = "4 in"
        heat_gap = "2 in"
        heat_gap_wanted = "2 in"
        mass = "60 lb"
        rated_mass = "150 lb"
        battery_at_bottom = true
        [[battery]]
        id = "battery"
        enclosure = "box"
        [[device]]
        id = "reader"
        kind = "reader"
        [[cable]]
        id = "w-01"
        from = "box"
        to = "reader"
        diameter = "0.5 in"
    "#;

    #[test]
    fn holds_with_a_quarter_free() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("35 %"), "{}", finding.sentence);
    }

    #[test]
    fn fails_full_tight_or_heavy() {
        for (from, to) in [
            ("rail_used = \"26 in\"", "rail_used = \"32 in\""),
            ("count = 40", "count = 130"),
            ("bend_space = \"4 in\"", "bend_space = \"2 in\""),
            ("heat_gap = \"2 in\"", "heat_gap = \"1 in\""),
            ("mass = \"60 lb\"", "mass = \"160 lb\""),
            ("battery_at_bottom = true", "battery_at_bottom = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_a_tape_and_a_scale() {
        let bare = SITE
            .replace("rail_used = \"26 in\"", "")
            .replace("        mass = \"60 lb\"\n", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
