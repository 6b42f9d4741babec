//! Whether the earth at each enclosure is good enough, and whether one is asked for at all.
//!
//! A measured resistance goes before a computed one; one taken in wet soil says too little. One rod by itself keeps 25 Ω in
//! the United States or gets a second, 6 ft away. A structure on one branch circuit with its ground needs none.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::mains::branch::LICENSED;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::mains::{RodResistance, RodsInParallel};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Resistance};
use site::{
    Circuit, CircuitKind, CodeBasis, DeviceKind, Electrode, ElectrodeKind, Enclosure, Site,
    SoilState,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "earth-electrode",
    codes: BOTH,
    leaves_open: "soil of several layers, frost, and a rod that rusts: measure it again in the dry season, taken off from everything else",
    concerns: "each enclosure with a supply in it",
    ask,
};

static ONE_CIRCUIT: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "250.32(A), exception: a single branch circuit with an equipment grounding conductor needs no electrode",
    evidence: Evidence::Seen,
    seen: "forums.mikeholt.com/threads/when-are-grounding-electrodes-required-in-separate-structures.104565",
};

static RODS: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "250.53(A)(2) and (3): one rod of 25 Ω or less, or a second at least 6 ft away",
    evidence: Evidence::Seen,
    seen: "ecmweb.com/nec/2011-national-electrical-code-changes",
};

static PROTECTIVE: Source = Source {
    work: "where the protective conductor comes from the source, it is the earth of the gate and of its protectors",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice under IEC 60364 in TN systems",
};

static FALL: Source = Source {
    work: "fall of potential, the electrode taken off from everything else",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site gives it, with day and state of the soil",
};

/// Resistance up to which one rod is enough, in ohms.
const ONE_ROD: f64 = 25.0;
/// Least distance between rods: 6 ft.
const APART: f64 = 1.8288;

/// How an electrode is written.
const ELECTRODE: &str = "[[electrode]]\nid = \"rods\"\nkind = \"rods\"\nenclosure = \"box\"\nrods = 2\nlength = \"8 ft\"\ndiameter = \"5/8 in\"\nspacing = \"8 ft\"\nresistance = \"22 Ω\"\ntested = 2026-08-20\nsoil = \"dry\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let holds_supply = |enclosure: &&Enclosure| {
        let mut supplies = site.supply.iter();
        supplies.any(|supply| supply.enclosure.as_ref() == Some(&enclosure.id))
    };
    for enclosure in site.enclosure.iter().filter(holds_supply) {
        round.ask(About::new(&enclosure.origin, &enclosure.id), |asking| {
            earthed(asking, site, enclosure)
        });
    }
}

fn earthed<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    let at = |electrode: &&Electrode| electrode.enclosure.as_ref() == Some(&enclosure.id);
    match site.electrode.iter().find(at) {
        Some(electrode) => good_enough(asking, site, electrode),
        None => none(asking, site, enclosure),
    }
}

/// No electrode is written down.
fn none<'s>(asking: &mut Asking<'s>, site: &'s Site, enclosure: &'s Enclosure) -> Answer {
    let protectors = site.device.iter().any(|device| {
        device.kind == DeviceKind::SurgeProtector
            && device.enclosure.as_ref() == Some(&enclosure.id)
    });
    let Some(circuit) = mains_into(site, enclosure) else {
        if protectors {
            return asking.lack(&enclosure.origin, "electrode", Wants::Table(ELECTRODE));
        }
        asking.rest_on(&FALL);
        asking.say(|_| {
            "No mains comes here and no surge protector stands here: nothing wants an electrode."
                .to_owned()
        });
        return Ok(Outcome::Rule(true));
    };
    let kind = pick!(asking, circuit.kind);
    let protective = pick!(asking, circuit.protective);
    let (kind, _) = (kind?, protective?);
    if kind == CircuitKind::Feeder {
        return asking.lack(&enclosure.origin, "electrode", Wants::Table(ELECTRODE));
    }
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &ONE_CIRCUIT,
        CodeBasis::Eu => &PROTECTIVE,
    });
    asking.say(|_| {
        format!("One branch circuit with its protective conductor comes here: no electrode is asked for. {LICENSED}")
    });
    Ok(Outcome::Rule(true))
}

/// The mains circuit that comes into an enclosure.
fn mains_into<'s>(site: &'s Site, enclosure: &Enclosure) -> Option<&'s Circuit> {
    let mounted = |supply: &&site::Supply| supply.enclosure.as_ref() == Some(&enclosure.id);
    let mut here = site.supply.iter().filter(mounted);
    here.find_map(|supply| {
        let feeder = supply.fed_by.as_ref()?;
        let mut all = site.supply.iter();
        all.find(|source| source.id == *feeder)?.circuit.as_ref()
    })
}

fn good_enough<'s>(asking: &mut Asking<'s>, site: &'s Site, electrode: &'s Electrode) -> Answer {
    let kind = pick!(asking, electrode.kind);
    let wanted = asking.read_if_there(&electrode.origin, "wanted", electrode.wanted.as_ref());
    let resistance = resistance(asking, electrode);
    let rods = match kind {
        Ok(ElectrodeKind::Rods) => pick!(asking, electrode.rods),
        Ok(_) => Ok(0),
        Err(halt) => Err(halt),
    };
    let spacing = match rods {
        Ok(rods) if rods > 1 => read!(asking, electrode.spacing).map(Some),
        _ => Ok(None),
    };
    let (resistance, rods, spacing) = (resistance?, rods?, spacing?);
    let us = site.site.code_basis == CodeBasis::Us;
    let mut all = Vec::new();
    if us && rods > 0 {
        asking.rest_on(&RODS);
    }
    if let Some(spacing) = spacing {
        all.push(Comparison::at_most(
            Labeled::new("least distance between rods", Length::from_base(APART)),
            Labeled::new("distance between rods", spacing),
        ));
    }
    let limit = match wanted {
        Some(wanted) => Some(wanted),
        None => (us && rods == 1).then(|| Resistance::from_base(ONE_ROD)),
    };
    if let Some(limit) = limit {
        all.push(Comparison::at_most(
            Labeled::new("resistance to earth", resistance),
            Labeled::new("resistance that is asked for", limit),
        ));
    }
    asking.say(|print| {
        let asked = limit.map_or_else(
            || "no figure is asked for here".to_owned(),
            |limit| format!("{} are asked for", print.q(limit)),
        );
        format!(
            "The electrode {} has {} to earth; {asked}. {LICENSED}",
            electrode.id,
            print.q(resistance)
        )
    });
    Ok(Outcome::worst(all).unwrap_or(Outcome::Figure(Labeled::new(
        "resistance to earth",
        resistance,
    ))))
}

/// Its resistance as measured, or that of its rods in the soil of the dry season.
fn resistance<'s>(asking: &mut Asking<'s>, electrode: &'s Electrode) -> Result<Resistance, Halt> {
    if electrode.resistance.is_some() || electrode.resistivity.is_none() {
        asking.rest_on(&FALL);
        let measured = read!(asking, electrode.resistance);
        let tested = asking.need(
            &electrode.origin,
            "tested",
            electrode.tested.as_ref(),
            "2026-08-20",
        );
        let soil = asking.need(
            &electrode.origin,
            "soil",
            electrode.soil.as_ref(),
            "\"dry\"",
        );
        let (measured, _, soil) = (measured?, tested?, soil?);
        if *soil == SoilState::Wet {
            return asking.wait_for(format!(
                "Measured in wet soil, where {} looks better than it is: measure it again in the dry season.",
                electrode.id
            ));
        }
        return Ok(measured);
    }
    let resistivity = read!(asking, electrode.resistivity);
    let length = read!(asking, electrode.length);
    let diameter = read!(asking, electrode.diameter);
    let rods = pick!(asking, electrode.rods);
    let one = asking.work(&RodResistance {
        resistivity: resistivity?,
        length: length?,
        diameter: diameter?,
    })?;
    let together = asking.work(&RodsInParallel {
        one: one.resistance,
        rods: rods?,
    })?;
    Ok(together.resistance)
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
        id = "mains"
        kind = "mains circuit"
        [supply.circuit]
        kind = "branch circuit"
        protective = "10 AWG"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        enclosure = "box"
        fed_by = "mains"
    "#;

    const ROD: &str = r#"
        [[electrode]]
        id = "rods"
        kind = "rods"
        enclosure = "box"
        rods = 1
        length = "8 ft"
        diameter = "5/8 in"
        resistivity = "50 Ω·m"
    "#;

    #[test]
    fn holds_on_one_branch_circuit_with_its_ground() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_with_a_rod_in_good_soil() {
        let finding = only(&CHECK, &format!("{SITE}{ROD}"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // Half of the 39.90 Ω that 100 Ω·m give.
        let ohms = finding.demand.unwrap().value.unwrap();
        assert!((ohms - 39.9049 / 2.0).abs() < 0.001, "{ohms}");
    }

    #[test]
    fn fails_with_one_rod_in_dry_soil_and_two_too_close() {
        let dry = format!("{SITE}{ROD}").replace("50 Ω·m", "300 Ω·m");
        assert_eq!(only(&CHECK, &dry).verdict, Verdict::Fails);
        let close = format!("{SITE}{ROD}").replace("rods = 1", "rods = 2\nspacing = \"4 ft\"");
        assert_eq!(only(&CHECK, &close).verdict, Verdict::Fails);
        let asked = format!("{SITE}{ROD}").replace("rods = 1", "rods = 1\nwanted = \"5 Ω\"");
        assert_eq!(only(&CHECK, &asked).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_on_a_feeder_without_an_electrode() {
        let feeder = SITE.replace("branch circuit", "feeder");
        let finding = only(&CHECK, &feeder);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("[[electrode]]"));
    }

    #[test]
    fn unknown_where_it_was_measured_in_wet_soil() {
        let wet = format!("{SITE}{ROD}").replace(
            "resistivity = \"50 Ω·m\"",
            "resistance = \"12 Ω\"\ntested = 2026-03-01\nsoil = \"wet\"",
        );
        let finding = only(&CHECK, &wet);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }
}
