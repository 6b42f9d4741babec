//! Whether a detector tunes on a loop and sees the vehicles that come: each loop.
//!
//! The inductance is worked from the wire and its turns, with the lead-in and with steel below as a closed sheet, which is
//! the worst; what was read at the cabinet counts before what was worked, and is held against it, so that a lost turn or
//! a shorted one is found. The share that a vehicle takes is the least that its highest frame surely takes.

use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::loops::{Electrical, Least, electrical, laid, least_share, loops};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Inductance, Length, Quantity as _, Ratio, Resistance};
use site::{Device, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-loop-inductance",
    codes: BOTH,
    leaves_open: "insulation against the ground, damp in the slot, corners cut across, steel that is neither a sheet nor absent, frames that are open, and drift: read inductance, resistance and insulation at the cabinet and drive the highest vehicle over it",
    concerns: "each loop",
    ask,
};

static RANGE: Source = Source {
    work: "technical page of the gate trade, and a guide to loop sensors: 20 to 1000 microhenries, better not below 50; 0.005 to 0.5 percent",
    clause: "",
    evidence: Evidence::Seen,
    seen: "both pages (addresses withheld, they carry company names)",
};

static RESISTANCE: Source = Source {
    work: "chart of loop characteristics: less than 5 ohms between the leads",
    clause: "",
    evidence: Evidence::Seen,
    seen: "the printed chart (address withheld, it carries a company's name)",
};

static TWIST: Source = Source {
    work: "instructions of several detectors: six twists a foot; another: five; a European one: fifteen a meter",
    clause: "",
    evidence: Evidence::Seen,
    seen: "copies of the instructions (addresses withheld, they carry company names)",
};

static READ: Source = Source {
    work: "what is read lies within a fifth of what is worked; one turn more or less makes two fifths",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the square of the number of turns",
};

/// Least inductance that the guides advise (H).
const ADVISED: f64 = 50e-6;
/// Most resistance between the leads (Ω).
const MOST_RESISTANCE: f64 = 5.0;
/// Longest twist that any guide allows (m).
const LONGEST_TWIST: f64 = 1.0 / 15.0;
/// How far what is read may be from what is worked.
const AWAY: f64 = 0.2;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in loops(site) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            tunes(asking, site, device)
        });
    }
}

/// What the detector does, and what was read.
struct Facts {
    least: Inductance,
    greatest: Inductance,
    sensitivity: Ratio,
    twist: Length,
    inductance: Option<Inductance>,
    resistance: Option<Resistance>,
}

fn facts<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Facts, Halt> {
    let least = read!(asking, device.loop_detector?.least_inductance);
    let greatest = read!(asking, device.loop_detector?.greatest_inductance);
    let sensitivity = read!(asking, device.loop_setup?.sensitivity);
    let twist = read!(asking, device.loop_setup?.twist);
    let (mut inductance, mut resistance) = (None, None);
    if let Some(setup) = &device.loop_setup {
        let origin = &setup.origin;
        let read = setup.measured_inductance.as_ref();
        inductance = asking.read_if_there(origin, "measured_inductance", read);
        let read = setup.measured_resistance.as_ref();
        resistance = asking.read_if_there(origin, "measured_resistance", read);
    }
    Ok(Facts {
        least: least?,
        greatest: greatest?,
        sensitivity: sensitivity?,
        twist: twist?,
        inductance,
        resistance,
    })
}

fn tunes<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let facts = facts(asking, device);
    let laid = laid(asking, site, device);
    let of = electrical(asking, site, device, laid);
    let (facts, laid, of) = (facts?, laid?, of?);
    let least = least_share(asking, site, &laid, &of)?;
    for source in [&RANGE, &RESISTANCE, &TWIST] {
        asking.rest_on(source);
    }
    say(asking, device, &facts, &of, least.as_ref());
    if facts.twist.base() > LONGEST_TWIST {
        return Ok(Outcome::Rule(false));
    }
    let (low, high) = match facts.inductance {
        Some(read) => (read, read),
        None => (of.least(), of.most()),
    };
    let advised = Inductance::from_base(ADVISED.max(facts.least.base()));
    let mut comparisons = vec![
        Comparison::at_most(
            Labeled::new("inductance that the detector wants at least", advised),
            Labeled::new("inductance of loop and lead-in", low),
        ),
        Comparison::at_most(
            Labeled::new("inductance of loop and lead-in", high),
            Labeled::new("greatest inductance of the detector", facts.greatest),
        ),
        Comparison::at_most(
            Labeled::new(
                "resistance of loop and lead-in",
                facts.resistance.unwrap_or(of.resistance),
            ),
            Labeled::new(
                "resistance that is allowed",
                Resistance::from_base(MOST_RESISTANCE),
            ),
        ),
    ];
    if let Some(least) = least {
        comparisons.push(Comparison::at_most(
            Labeled::new("change at which the output comes on", facts.sensitivity),
            Labeled::new("change that the worst vehicle makes", least.share),
        ));
    }
    if let Some(read) = facts.inductance {
        asking.rest_on(&READ);
        comparisons.push(Comparison::at_most(
            Labeled::new("what was read, away from what was worked", away(read, &of)),
            Labeled::new("how far it may be away", Ratio::from_base(AWAY)),
        ));
    }
    Outcome::worst(comparisons).ok_or(Halt)
}

/// How far a reading lies outside of what was worked, with and without steel.
fn away(read: Inductance, of: &Electrical) -> Ratio {
    let (least, most) = (of.least().base(), of.most().base());
    let read = read.base();
    Ratio::from_base(((read - most) / most).max((least - read) / least).max(0.0))
}

fn say(
    asking: &mut Asking<'_>,
    device: &Device,
    facts: &Facts,
    of: &Electrical,
    least: Option<&Least>,
) {
    asking.say(|print| {
        let steel = of.over_steel.map_or(String::new(), |left| {
            format!(", down to {} where the steel below were a closed sheet", print.q(left))
        });
        let read = match facts.inductance {
            Some(read) => format!("{} was read there", print.q(read)),
            None => "read it there".to_owned(),
        };
        let taken = least.map_or(String::new(), |least| {
            format!(
                " The {} takes at least {} of that with its frame {} above the wire; the output comes on at {}.",
                least.what,
                print.q(least.share),
                print.q(least.height),
                print.q(facts.sensitivity)
            )
        });
        let twist = if facts.twist.base() > LONGEST_TWIST {
            format!(
                " Its lead-in is twisted once in {}, which lets in whatever runs beside it: twist it six times a foot.",
                print.q(facts.twist)
            )
        } else {
            String::new()
        };
        format!(
            "{} has {} by its wire and turns (the guide's P (N² + N) / 4 says {}){steel}; {} of lead-in adds {}, so that the cabinet sees {} and {}: {read}.{taken}{twist}",
            device.id,
            print.q(of.own),
            print.q(of.guide),
            print.q(of.lead_length),
            print.q(of.lead_in),
            print.q(of.most()),
            print.q(of.resistance),
        )
    });
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "loop-in"
        kind = "loop"
        turns = 4
        at = ["3 ft", "4 ft", "-2 in"]
        to = ["11 ft", "8 ft", "-2 in"]
        loop_setup = { wire = "14 AWG", wire_outside = "0.15 in", core_outside = "0.12 in", twist = "2 in", steel_below = false, sensitivity = "0.05 %" }
        loop_detector = { least_inductance = "20 µH", greatest_inductance = "1000 µH" }
        [[device]]
        id = "supply"
        kind = "access controller"
        [[cable]]
        id = "w-25"
        carries = "loop lead-in"
        from = "supply"
        to = "loop-in"
        size = "16 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "50 ft"
        [[vehicle]]
        id = "van"
        what = "van"
        kind = "car"
        length = "20 ft"
        width = "8 ft"
        height = "9 ft"
        chassis_height = "9 in"
        drawbar_gap = "0 ft"
        speed = "5 mph"
    "#;

    #[test]
    fn holds_on_a_usual_loop() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // The sum over the turns, worked elsewhere, gives 126.7 µH; the guide 120 µH.
        assert!(finding.sentence.contains("127 µH"), "{}", finding.sentence);
        assert!(finding.sentence.contains("120 µH"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_a_lost_turn_was_read_and_where_the_twist_is_loose() {
        let read = |what: &str| {
            SITE.replace(
                "sensitivity",
                &format!("measured_inductance = \"{what}\", sensitivity"),
            )
        };
        assert_eq!(only(&CHECK, &read("135 µH")).verdict, Verdict::Holds);
        // Three turns of it are 75.3 µH, and the lead-in.
        assert_eq!(only(&CHECK, &read("86 µH")).verdict, Verdict::Fails);
        let loose = SITE.replace("twist = \"2 in\"", "twist = \"6 in\"");
        assert_eq!(only(&CHECK, &loose).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_with_one_turn_and_under_a_bed_that_it_barely_feels() {
        let one = SITE.replace("turns = 4", "turns = 1");
        assert_eq!(only(&CHECK, &one).verdict, Verdict::Fails);
        let high = SITE
            .replace("chassis_height = \"9 in\"", "chassis_height = \"60 in\"")
            .replace("0.05 %", "0.5 %");
        let finding = only(&CHECK, &high);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn steel_just_below_takes_from_it() {
        let over = SITE.replace(
            "steel_below = false",
            "steel_below = true, steel_depth = \"2 in\"",
        );
        let finding = only(&CHECK, &over);
        assert!(
            finding.sentence.contains("closed sheet"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_wire_steel_lead_in_and_setting() {
        let bare = SITE.split("[[cable]]").next().unwrap_or_default().replace(
            "steel_below = false, sensitivity = \"0.05 %\"",
            "fixed_metal = \"3 ft\"",
        );
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:#?}", finding.missing);
    }
}
