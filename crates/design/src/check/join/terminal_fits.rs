//! Whether the conductors on each terminal fit it, ferrules and doubled ones included, and how tight it has to be.
//!
//! Every core end that is written down is laid under its clamp. Several conductors together have to stay inside the range
//! of the clamp, and each by itself as well.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::{and, counted};
use crate::subject::About;
use crate::wiring::{ClampAt, Landed, clamps, landed, marks};
use formula::ways::{ConductorsTogether, Together};
use quantity::{Area, ConductorSize, Quantity as _, Torque};
use site::{Clamp, CoreEnd, Site, Stranding, TakenEnd, Terminals};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-terminal-fits",
    codes: BOTH,
    leaves_open: "aluminum in a terminal made for copper, the temperature that the terminal is rated for, and whether each screw was really driven with a torque tool: tug every conductor",
    concerns: "a site with cables",
    ask,
};

/// How terminals are written.
const TERMINALS: &str = "[[terminals]]\nid = \"x1\"\non = [\"box\"]\ncount = 24\nclamp = \"screw\"\ntakes = [\"solid\", \"ferrule\"]\nsmallest = \"24 AWG\"\nlargest = \"12 AWG\"\nwires = 1\ntightening = \"5 lbf·in\"";

/// How the cores of a cable are written.
const WIRING: &str = "[[wiring]]\ncable = \"w-01\"\nends = \"ferrules\"\ncore = [{ wire = 1, color = \"red\", carries = \"24 V\", from = \"x1:1\", to = \"+\" }]";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.cable.is_empty() {
        return;
    }
    round.ask(About::site(&site.origin), |asking| fits(asking, site));
}

/// A clamp with all that is asked of it.
struct Filled<'s> {
    name: String,
    conductors: usize,
    all: Area,
    range: [Area; 2],
    strip: &'s Terminals,
    tightening: Option<Torque>,
}

fn fits<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    if site.wiring.is_empty() {
        return asking.lack(&site.origin, "wiring", Wants::Table(WIRING));
    }
    asking.rest_on(&DATA_SHEET);
    let landed = landed(site);
    let mut rules = Rules::default();
    let mut filled = Vec::new();
    let mut whole = Ok(());
    for clamp in clamps(&landed) {
        match under(asking, site, &clamp, &mut rules) {
            Ok(Some(found)) => filled.push(found),
            Ok(None) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole?;
    let mut fullest: Option<(Comparison, &Filled<'_>)> = None;
    for found in &filled {
        let full = Comparison::at_most(
            Labeled::new("cross-section under the clamp", found.all),
            Labeled::new("largest that it takes", found.range[1]),
        );
        if fullest
            .as_ref()
            .is_none_or(|(worst, _)| full.strain() > worst.strain())
        {
            fullest = Some((full, found));
        }
    }
    if let Some((full, _)) = fullest {
        rules.compare(full);
    }
    asking.note(|print| torques(print, &filled));
    asking.say(|print| {
        rules.says(|| match fullest {
            None => "No core lands on a terminal yet.".to_owned(),
            Some((_, found)) => format!(
                "{} carry conductors, each inside its range; the fullest is {} with {}, {} of {} that it takes.",
                counted(filled.len(), "terminal"),
                found.name,
                counted(found.conductors, "conductor"),
                print.q(found.all),
                print.q(found.range[1])
            ),
        })
    });
    Ok(rules.outcome())
}

/// The torque of each make of terminals, once.
fn torques(print: crate::figure::Print, filled: &[Filled<'_>]) -> Option<String> {
    let mut said: Vec<String> = Vec::new();
    for found in filled {
        let Some(torque) = found.tightening else {
            continue;
        };
        let line = format!("{} to {}", found.strip.id, print.q(torque));
        if !said.contains(&line) {
            said.push(line);
        }
    }
    (!said.is_empty()).then(|| format!("Tighten {}.", and(&said)))
}

/// One clamp: nothing where a plug takes the cores.
fn under<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    clamp: &ClampAt<'s>,
    rules: &mut Rules,
) -> Result<Option<Filled<'s>>, Halt> {
    let plugged = clamp.ends.iter().all(|(core, _)| {
        core.wiring.ends == Some(CoreEnd::Plugs) || (clamp.strip.is_none() && core.core.is_none())
    });
    if plugged {
        return Ok(None);
    }
    let Some(strip) = clamp.strip else {
        return asking.lack(&site.origin, "terminals", Wants::Table(TERMINALS));
    };
    let how = pick!(asking, strip.clamp)?;
    let name = clamp.printed();
    rules.keep(
        marks(strip).iter().any(|mark| mark == clamp.mark),
        &format!(
            "There is no terminal {name}: {} has {}.",
            strip.id,
            has(strip)
        ),
    );
    if how == Clamp::Plug {
        return Ok(None);
    }
    let wires = pick!(asking, strip.wires);
    let largest = pick!(asking, strip.largest);
    let smallest = pick!(asking, strip.smallest);
    let tightening = match how {
        Clamp::Screw | Clamp::Stud => read!(asking, strip.tightening).map(Some),
        _ => Ok(None),
    };
    let takes = asking.need(
        &strip.origin,
        "takes",
        strip.takes.first(),
        "[\"solid\", \"ferrule\"]",
    );
    let sizes = sizes(asking, &clamp.ends);
    takes?;
    let (wires, largest, smallest) = (wires?, largest?, smallest?);
    let (sizes, tightening) = (sizes?, tightening?);
    let many = u32::try_from(sizes.len()).unwrap_or(u32::MAX);
    rules.keep(
        many <= wires,
        &format!("{name} holds {many} conductors and is rated for {wires}: use a bridge or a second terminal."),
    );
    let ferruled = clamp
        .ends
        .iter()
        .any(|(core, _)| core.wiring.ends == Some(CoreEnd::Ferrules));
    let largest = match strip.largest_in_ferrule {
        Some(in_ferrule) if ferruled => in_ferrule,
        _ => largest,
    };
    let area = |asking: &mut Asking<'s>, size| asking.work(&ConductorsTogether { size, count: 1 });
    let range = [area(asking, smallest)?.one, area(asking, largest)?.one];
    let mut all = Area::from_base(0.0);
    for (size, core) in &sizes {
        let Together { one, .. } = area(asking, *size)?;
        all += one;
        rules.keep(
            one >= range[0] * 0.999,
            &format!("Wire {} at {name} is thinner than the terminal holds: double it back, or take another terminal.", wire(core)),
        );
    }
    rules.keep(
        all <= range[1] * 1.001,
        &format!(
            "The metal of {} at {name} is more than the terminal takes.",
            counted(sizes.len(), "conductor")
        ),
    );
    made_up(strip, clamp, rules);
    Ok(Some(Filled {
        name,
        conductors: sizes.len(),
        all,
        range,
        strip,
        tightening,
    }))
}

/// How a core is told from others.
fn wire(core: &Landed<'_>) -> String {
    core.wire.map_or_else(
        || format!("{} of {}", core.number, core.cable.id),
        |wire| wire.to_string(),
    )
}

/// How many terminals there are, in words.
fn has(strip: &Terminals) -> String {
    let marks = marks(strip);
    match marks.as_slice() {
        [] => "no mark written".to_owned(),
        [only] => format!("only {only}"),
        [first, .., last] if marks.len() > 4 => format!("{first} to {last}"),
        all => and(all),
    }
}

/// The size of each conductor under a clamp.
fn sizes<'s>(
    asking: &mut Asking<'s>,
    ends: &[(Landed<'s>, usize)],
) -> Result<Vec<(ConductorSize, Landed<'s>)>, Halt> {
    let mut found = Ok(Vec::new());
    for (core, _) in ends {
        let cable = core.cable;
        match (pick!(asking, cable.size), &mut found) {
            (Ok(size), Ok(sizes)) => sizes.push((size, *core)),
            (Err(halt), _) => found = Err(halt),
            (Ok(_), Err(_)) => {}
        }
    }
    found
}

/// Whether the terminal takes conductors that are made up like these.
fn made_up(strip: &Terminals, clamp: &ClampAt<'_>, rules: &mut Rules) {
    for (core, _) in &clamp.ends {
        let made = match (core.wiring.ends, core.cable.stranding) {
            (Some(CoreEnd::Ferrules), _) => TakenEnd::Ferrule,
            (Some(CoreEnd::Lugs), _) => TakenEnd::Lug,
            (Some(CoreEnd::Plugs), _) | (None | Some(CoreEnd::Bare), None) => continue,
            (_, Some(Stranding::Solid)) => TakenEnd::Solid,
            (_, _) => TakenEnd::Strands,
        };
        rules.keep(
            strip.takes.contains(&made),
            &format!(
                "{} does not take wire {} as it is made up ({made}): it takes {}.",
                clamp.printed(),
                wire(core),
                and(&strip
                    .takes
                    .iter()
                    .map(ToString::to_string)
                    .collect::<Vec<_>>())
            ),
        );
    }
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
        [[supply]]
        id = "psu"
        kind = "power supply"
        [[device]]
        id = "reader"
        kind = "reader"
        [[cable]]
        id = "w-01"
        from = "psu"
        to = "reader"
        cores = 2
        size = "14 AWG"
        stranding = "stranded"
        [[terminals]]
        id = "x1"
        on = ["box"]
        count = 4
        clamp = "screw"
        takes = ["solid", "ferrule"]
        smallest = "24 AWG"
        largest = "12 AWG"
        wires = 1
        tightening = "5 lbf·in"
        [[terminals]]
        id = "reader-block"
        on = ["reader"]
        marks = ["+", "-"]
        clamp = "spring"
        takes = ["ferrule"]
        smallest = "24 AWG"
        largest = "14 AWG"
        wires = 1
        [[wiring]]
        cable = "w-01"
        ends = "ferrules"
        core = [
          { wire = 1, color = "red", from = "x1:1", to = "+" },
          { wire = 2, color = "black", from = "x1:2", to = "-" },
        ]
    "#;

    #[test]
    fn holds_where_each_conductor_is_in_its_range() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("4 terminals"),
            "{}",
            finding.sentence
        );
        // 14 AWG in a terminal for 14 AWG: full.
        assert!((finding.ratio.unwrap() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn fails_too_thick_too_thin_and_doubled() {
        let thick = only(
            &CHECK,
            &SITE.replace("size = \"14 AWG\"", "size = \"12 AWG\""),
        );
        assert_eq!(thick.verdict, Verdict::Fails, "{}", thick.sentence);
        let thin = only(
            &CHECK,
            &SITE.replace("size = \"14 AWG\"", "size = \"26 AWG\""),
        );
        assert_eq!(thin.verdict, Verdict::Fails, "{}", thin.sentence);
        let doubled = only(&CHECK, &SITE.replace("x1:2", "x1:1"));
        assert_eq!(doubled.verdict, Verdict::Fails);
        assert!(
            doubled.sentence.contains("rated for 1"),
            "{}",
            doubled.sentence
        );
    }

    #[test]
    fn fails_on_a_terminal_that_is_not_there_and_on_bare_strands() {
        let none = only(&CHECK, &SITE.replace("x1:2", "x1:7"));
        assert_eq!(none.verdict, Verdict::Fails);
        assert!(none.sentence.contains("x1:7"), "{}", none.sentence);
        let bare = only(
            &CHECK,
            &SITE.replace("ends = \"ferrules\"", "ends = \"bare\""),
        );
        assert_eq!(bare.verdict, Verdict::Fails);
        assert!(bare.sentence.contains("strands"), "{}", bare.sentence);
    }

    #[test]
    fn two_thin_ones_hold_together_where_the_clamp_is_rated_for_two() {
        let both = SITE
            .replace("x1:2", "x1:1")
            .replacen("wires = 1", "wires = 2", 1)
            .replace("size = \"14 AWG\"", "size = \"16 AWG\"");
        let finding = only(&CHECK, &both);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let thick = both.replace("size = \"16 AWG\"", "size = \"14 AWG\"");
        assert_eq!(only(&CHECK, &thick).verdict, Verdict::Fails);
    }

    #[test]
    fn a_ferrule_may_leave_less_room() {
        let tight = SITE.replacen("wires = 1", "wires = 1\nlargest_in_ferrule = \"16 AWG\"", 1);
        assert_eq!(only(&CHECK, &tight).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_range_torque_and_wiring() {
        let bare = SITE
            .replacen("largest = \"12 AWG\"", "", 1)
            .replace("tightening = \"5 lbf·in\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let none = SITE.split("[[wiring]]").next().unwrap();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
    }
}
