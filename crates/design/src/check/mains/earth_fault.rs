//! Whether the supply cuts off when a live wire touches the metal of the gate.
//!
//! In the United States the equipment ground is held against the breaker and grows with the conductors, and a dead fault at
//! the end of the run must drive enough current to trip the breaker. In Europe the loop is held against the curve of the
//! breaker or the residual-current device against the cut-off time, and the protective conductor against the heat of the
//! fault. A measured loop goes before a computed one. Either way the residual-current device has the right kind, and what
//! leaks all the time stays under a third of its rating.

use super::branch::{LICENSED, TRIPS, cable, circuit, circuits};
use super::fault_current::{Read, facts};
use super::ground;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::mains::{BreakerCurve, BreakerLoopLimit, CutOffTime, EarthingSystem};
use formula::power::{AdiabaticWithstand, Metal, metal_area};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Ratio, Resistance, Time, Voltage, Word as _, celsius};
use site::{CodeBasis, Earthing, Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-earth-fault",
    codes: BOTH,
    leaves_open: "whether every joint of the ground holds, and faults through something that resists: test the ground path and the residual-current device, and have a licensed electrician do it",
    concerns: "each mains circuit that feeds the gate",
    ask,
};

static PATH: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "250.4(A)(5), effective ground-fault current path",
    evidence: Evidence::Seen,
    seen: "up.codes/s/effective-ground-fault-current-path",
};

static TOUCH: Source = Source {
    work: "IEC 60364-4-41",
    clause: "411.5.3, loop times residual current no more than 50 V",
    evidence: Evidence::Seen,
    seen: "a loop tester's manual: www.easymanua.ls/kyoritsu/6050/manual",
};

/// Multiples of its rating at which a breaker of the United States trips soon, and at once.
const SOON: f64 = 5.0;
const AT_ONCE: f64 = 10.0;
/// Time in which a breaker that trips at once has cut off, in seconds.
const INSTANT: f64 = 0.1;
/// Touch voltage that lasts, in volts.
const LASTING: f64 = 50.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for supply in circuits(site) {
        round.ask(
            About::new(&supply.origin, &supply.id),
            |asking| match site.site.code_basis {
                CodeBasis::Us => american(asking, site, supply),
                CodeBasis::Eu => european(asking, site, supply),
            },
        );
    }
}

fn american<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Answer {
    asking.rest_on(&PATH);
    asking.rest_on(&TRIPS);
    let described = circuit(asking, supply)?;
    let cable = cable(asking, site, supply);
    let breaker = read!(asking, described.breaker);
    let ground = ground::compared(asking, described, cable, breaker);
    let read = facts(asking, site, supply, (described, cable), 1.0);
    let (ground, read) = (ground?, read?);
    let multiple = if read.fault.base() < AT_ONCE * read.breaker.base() {
        SOON
    } else {
        AT_ONCE
    };
    let trip = read.breaker * multiple;
    asking.say(|print| {
        format!(
            "A dead fault at its end drives {}; the breaker of {} wants {} to trip. The ground is {}, and {} is asked for. {LICENSED}",
            print.q(read.fault),
            print.q(read.breaker),
            print.q(trip),
            ground.laid,
            ground.asked
        )
    });
    let trips = Comparison::at_most(
        Labeled::new("current that trips the breaker", trip),
        Labeled::new("current of a dead fault", read.fault),
    );
    // A ground of just the size that is asked for holds; its margin of nothing says nothing.
    let ground = (!ground.compared.holds()).then_some(ground.compared);
    let compared = ground.into_iter().chain([trips, read.residual.leaks]);
    Ok(Outcome::worst(compared).unwrap_or(Outcome::Rule(false)))
}

fn european<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Answer {
    let described = circuit(asking, supply)?;
    let cable = cable(asking, site, supply);
    let earthing = pick!(asking, described.earthing);
    let kind = pick!(asking, described.breaker_kind);
    let protective = pick!(asking, described.protective);
    let read = facts(asking, site, supply, (described, cable), 0.95);
    let tripped = match &described.residual {
        Some(residual) => read!(asking, residual.trip_time),
        None => Err(Halt),
    };
    let voltage = read!(asking, described.to_earth);
    let (earthing, kind, protective) = (earthing?, kind?, protective?);
    let (read, tripped, voltage) = (read?, tripped?, voltage?);
    let Some(curve) = BreakerCurve::from_word(kind.word()) else {
        return asking.refuse("no cut-off is known here for this kind of breaker in Europe: take a miniature breaker of curve B, C or D, or its data sheet");
    };
    let system = match earthing {
        Earthing::Tn => EarthingSystem::Tn,
        Earthing::Tt => EarthingSystem::Tt,
    };
    let allowed = asking.work(&CutOffTime { system, voltage })?.longest;
    let by_residual = Comparison::at_most(
        Labeled::new("time in which the residual-current device tripped", tripped),
        Labeled::new("time until it must be cut off", allowed),
    );
    let by_breaker = breaker_trips(asking, &read, curve, voltage)?;
    let cuts_off = match earthing {
        Earthing::Tn if by_breaker.holds() => vec![by_breaker],
        Earthing::Tn => vec![by_residual],
        Earthing::Tt => vec![by_residual, touch(asking, &read)],
    };
    let instant = earthing == Earthing::Tn && by_breaker.holds();
    let time = if instant {
        Time::from_base(INSTANT)
    } else {
        tripped
    };
    let heat = asking.work(&AdiabaticWithstand {
        size: protective,
        metal: Metal::Copper,
        initial: celsius(70.0),
        limit: celsius(160.0),
        current: read.fault,
        time,
    })?;
    let stands = Comparison::at_most(
        Labeled::new(
            "cross-section that stands the heat of the fault",
            heat.least_area,
        ),
        Labeled::new(
            "cross-section of the protective conductor",
            metal_area(protective),
        ),
    );
    let blind = read.residual.blind;
    asking.say(|print| {
        if blind {
            return format!(
                "The residual-current device does not see what the drive may leak: its papers ask for a better kind. {LICENSED}"
            );
        }
        format!(
            "A dead fault at its end drives {} and is cut off by the {}; {} are allowed. {LICENSED}",
            print.q(read.fault),
            if instant { "breaker at once" } else { "residual-current device" },
            print.q(allowed)
        )
    });
    if blind {
        return Ok(Outcome::Rule(false));
    }
    let all = cuts_off.into_iter().chain([stands, read.residual.leaks]);
    Ok(Outcome::worst(all).unwrap_or(Outcome::Rule(false)))
}

/// The loop against what the breaker's curve allows, cold where it was measured.
fn breaker_trips(
    asking: &mut Asking<'_>,
    read: &Read<'_>,
    curve: BreakerCurve,
    voltage: Voltage,
) -> Result<Comparison, Halt> {
    let limit = asking.work(&BreakerLoopLimit {
        curve,
        rating: read.breaker,
        voltage,
        low: Ratio::from_base(0.95),
    })?;
    Ok(match read.measured {
        Some(measured) => Comparison::at_most(
            Labeled::new("loop as measured, cold", measured),
            Labeled::new("largest loop to measure", limit.measured),
        ),
        None => Comparison::at_most(
            Labeled::new("current that trips the breaker at once", limit.trip_current),
            Labeled::new("current of a dead fault", read.fault),
        ),
    })
}

/// The loop through the soil against the touch voltage that may last.
fn touch(asking: &mut Asking<'_>, read: &Read<'_>) -> Comparison {
    asking.rest_on(&TOUCH);
    let voltage: Voltage = read.residual.rating
        * read.measured.unwrap_or_else(|| {
            let volts = read
                .circuit
                .to_earth
                .map_or(0.0, |volts| volts.nominal().base());
            Resistance::from_base(volts / read.fault.base())
        });
    Comparison::at_most(
        Labeled::new("voltage on the metal before the device trips", voltage),
        Labeled::new("voltage that may last", Voltage::from_base(LASTING)),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const AMERICAN: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [supply.circuit]
        breaker = "20 A"
        to_earth = "120 V"
        panel_loop = "0.1 Ω"
        protective = "10 AWG"
        [supply.circuit.residual]
        kind = "for equipment"
        rating = "30 mA"
        leakage = "2 mA"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        fed_by = "mains"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "supply-24"
        size = "10 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "75 °C"
        length = "200 ft"
    "#;

    const EUROPEAN: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [supply.circuit]
        breaker = "10 A"
        breaker_kind = "B"
        earthing = "TN"
        to_earth = "230 V"
        measured_loop = "1.2 Ω"
        protective = "2.5 mm²"
        [supply.circuit.residual]
        kind = "A"
        rating = "30 mA"
        leakage = "3 mA"
        trip_time = "28 ms"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        fed_by = "mains"
        [supply.intake]
        residual_kind = "A"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "supply-24"
        size = "2.5 mm²"
    "#;

    #[test]
    fn holds_where_the_fault_trips_the_breaker() {
        let finding = only(&CHECK, AMERICAN);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 0.1 Ω + 0.4 kft · 1.24 Ω/kft is 0.596 Ω, through which 120 V drive 201 A: at once.
        assert!(finding.sentence.contains("201 A"), "{}", finding.sentence);
        let finding = only(&CHECK, EUROPEAN);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_ground_that_has_not_grown() {
        let thin = AMERICAN.replace("protective = \"10 AWG\"", "protective = \"12 AWG\"");
        let finding = only(&CHECK, &thin);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_far_away_and_with_much_leakage() {
        let far = AMERICAN.replace("200 ft", "900 ft");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Fails);
        let leaks = EUROPEAN.replace("leakage = \"3 mA\"", "leakage = \"12 mA\"");
        assert_eq!(only(&CHECK, &leaks).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_the_device_is_blind_for_the_drive() {
        let drive = EUROPEAN.replace("residual_kind = \"A\"", "residual_kind = \"B\"");
        let finding = only(&CHECK, &drive);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("does not see"));
    }

    #[test]
    fn an_electrode_of_its_own_needs_the_residual_device() {
        let soil = EUROPEAN
            .replace("\"TN\"", "\"TT\"")
            .replace("1.2 Ω", "400 Ω");
        let finding = only(&CHECK, &soil);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let dry = soil.replace("400 Ω", "2000 Ω");
        assert_eq!(only(&CHECK, &dry).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_loop_and_residual_device() {
        let bare = AMERICAN
            .replace("panel_loop = \"0.1 Ω\"", "")
            .replace("leakage = \"2 mA\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_circuit_that_feeds_nothing_of_the_gate_is_not_asked() {
        let other = AMERICAN.replace("fed_by = \"mains\"", "");
        assert!(all(&CHECK, &other).is_empty());
    }
}
