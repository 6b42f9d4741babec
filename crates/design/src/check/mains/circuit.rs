//! Whether conductor and breaker of a mains circuit suit what hangs on it, the heat, their neighbors and the length.
//!
//! The load is that of the power supplies at full output, or while an operator starts where that is more, of the heaters,
//! and of operators that run on the mains themselves. In the United States ampacity, its corrections and the limits of the
//! breaker are worked out; in Europe the ampacity as laid is the electrician's, and the breaker stands between the two.

use super::branch::{LICENSED, cable, circuit, circuits};
use super::load::{Steady, motors, steady};
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::conductor::resistance;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::mains::{
    MotorProtection, NecAmpacity, NecMotorBranch, NecSmallConductor, RatedTemperature,
};
use formula::power::VoltageDrop;
use formula::{Evidence, Source};
use quantity::{Current, Quantity as _, Ratio, Voltage, Word as _};
use site::{BreakerKind, Cable, Circuit, CodeBasis, Site, Supply};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-circuit",
    codes: BOTH,
    leaves_open: "what else is plugged in one day, conductors on a hot roof, what the breaker must interrupt, and harmonics",
    concerns: "each mains circuit that feeds the gate",
    ask,
};

static CONTINUOUS: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "210.19 and 210.20: 125 % of continuous load",
    evidence: Evidence::Seen,
    seen: "electrakit.com/formulas/motor-circuit-formulas; practice questions: www.voltexam.com/questions/electrician/voltage-drop",
};

static COORDINATED: Source = Source {
    work: "IEC 60364-4-43",
    clause: "433.1: load, breaker and conductor in that order, IB ≤ In ≤ IZ",
    evidence: Evidence::Seen,
    seen: "an excerpt of clause 433.1: studylib.net/doc/26984198/appendix-a",
};

static DROP: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "210.19, informational note: 3 % in a branch circuit, suggested",
    evidence: Evidence::Seen,
    seen: "practice questions: www.voltexam.com/questions/electrician/voltage-drop",
};

/// How much more than the continuous load a conductor carries.
const CONTINUOUS_SHARE: f64 = 1.25;
/// Share of the voltage that a run may lose.
const SUGGESTED: f64 = 0.03;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for supply in circuits(site) {
        round.ask(About::new(&supply.origin, &supply.id), |asking| {
            sized(asking, site, supply)
        });
    }
}

fn sized<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Answer {
    asking.rest_on(&DROP);
    let described = circuit(asking, supply);
    let cable = cable(asking, site, supply);
    let load = load(asking, site, supply);
    let drop = match &cable {
        Ok(cable) => run(asking, cable),
        Err(halt) => Err(*halt),
    };
    let described = described?;
    let breaker = read!(asking, described.breaker);
    let limits = match site.site.code_basis {
        CodeBasis::Us => american(asking, site, (described, cable), load.as_ref().ok()),
        CodeBasis::Eu => european(asking, described),
    };
    let (load, drop, breaker, limits) = (load?, drop?, breaker?, limits?);
    let lost = asking.work(&VoltageDrop {
        source: load.voltage,
        current: load.all,
        ..drop
    })?;
    let us = site.site.code_basis == CodeBasis::Us;
    let asked = if us { load.with_reserve() } else { load.all };
    asking.say(|print| {
        format!(
            "What hangs on it draws up to {}; its conductors may carry {} as they are laid, its breaker is {} and may be up to {}; the run loses {}. {LICENSED}",
            print.q(load.all),
            print.q(limits.ampacity),
            print.q(breaker),
            print.q(limits.breaker),
            print.q(lost.share)
        )
    });
    let label = if us {
        "load with a quarter in hand"
    } else {
        "load"
    };
    let mut all = vec![
        Comparison::at_most(
            Labeled::new(label, asked),
            Labeled::new("current that the conductors may carry", limits.ampacity),
        ),
        Comparison::at_most(
            Labeled::new("rating of the breaker", breaker),
            Labeled::new("largest breaker for these conductors", limits.breaker),
        ),
        Comparison::at_most(
            Labeled::new("share of the voltage that the run loses", lost.share),
            Labeled::new("share that is suggested", Ratio::from_base(SUGGESTED)),
        ),
    ];
    if load.largest_motor.base() <= 0.0 {
        all.push(Comparison::at_most(
            Labeled::new(label, asked),
            Labeled::new("rating of the breaker", breaker),
        ));
    }
    Ok(Outcome::worst(all).unwrap_or(Outcome::Rule(false)))
}

/// What hangs on a circuit.
struct Load {
    voltage: Voltage,
    /// Everything at once.
    all: Current,
    /// The largest operator that runs on the mains itself; zero where there is none.
    largest_motor: Current,
    steady: Current,
    motors: Current,
}

impl Load {
    /// A quarter more than what is continuous, and than the largest motor.
    fn with_reserve(&self) -> Current {
        self.steady * CONTINUOUS_SHARE + self.largest_motor * (CONTINUOUS_SHARE - 1.0) + self.motors
    }
}

fn load<'s>(asking: &mut Asking<'s>, site: &'s Site, supply: &'s Supply) -> Result<Load, Halt> {
    let voltage = read!(asking, supply.voltage);
    let steady: Result<Steady, Halt> = steady(asking, site, supply);
    let nothing = Current::from_base(0.0);
    let mut running = Ok((nothing, nothing));
    for operator in motors(site, supply) {
        let current = read!(asking, operator.running_current);
        running = running.and_then(|(sum, largest): (Current, Current)| {
            let current = current?;
            let largest = if current > largest { current } else { largest };
            Ok((sum + current, largest))
        });
    }
    let (voltage, steady, (motors, largest_motor)) = (voltage?, steady?, running?);
    let steady = steady.current(voltage);
    Ok(Load {
        voltage,
        all: steady + motors,
        largest_motor,
        steady,
        motors,
    })
}

/// What the conductors allow.
struct Limits {
    ampacity: Current,
    breaker: Current,
}

fn american<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (circuit, cable): (&'s Circuit, Result<&'s Cable, Halt>),
    load: Option<&Load>,
) -> Result<Limits, Halt> {
    asking.rest_on(&CONTINUOUS);
    let insulation = pick!(asking, circuit.insulation);
    let terminals = pick!(asking, circuit.terminals);
    let conductors = pick!(asking, circuit.bundled);
    let kind = pick!(asking, circuit.breaker_kind);
    let ambient = read!(asking, site.climate?.hottest);
    let size = cable.and_then(|cable| pick!(asking, cable.size));
    let words = (
        RatedTemperature::from_word(insulation?.word()),
        RatedTemperature::from_word(terminals?.word()),
    );
    let (Some(insulation), Some(terminals)) = words else {
        return asking.refuse("no ampacity is printed for this insulation");
    };
    let (size, kind) = (size?, kind?);
    let ampacity = asking
        .work(&NecAmpacity {
            size,
            insulation,
            terminals,
            ambient: ambient?,
            conductors: conductors?,
        })?
        .ampacity;
    let motor = load.map(|load| (load.largest_motor, load.all - load.largest_motor));
    let breaker = match motor {
        Some((largest, others)) if largest.base() > 0.0 => {
            let protection = match kind {
                BreakerKind::TimeDelayFuse => MotorProtection::TimeDelayFuse,
                _ => MotorProtection::InverseTimeBreaker,
            };
            let branch = NecMotorBranch {
                full_load: largest,
                protection,
            };
            asking.work(&branch)?.largest + others
        }
        _ => match asking.work_if_in_reach(&NecSmallConductor { size }) {
            Some(small) if small.largest < ampacity => small.largest,
            _ => ampacity,
        },
    };
    Ok(Limits { ampacity, breaker })
}

fn european<'s>(asking: &mut Asking<'s>, circuit: &'s Circuit) -> Result<Limits, Halt> {
    asking.rest_on(&COORDINATED);
    let ampacity = read!(asking, circuit.ampacity)?;
    Ok(Limits {
        ampacity,
        breaker: ampacity,
    })
}

/// The run without its source and current.
pub(super) fn run<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<VoltageDrop, Halt> {
    let length = read!(asking, cable.length);
    let resistance = resistance(asking, cable);
    Ok(VoltageDrop {
        source: Voltage::from_base(0.0),
        current: Current::from_base(0.0),
        length: length?,
        resistance: resistance?,
    })
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
        [climate]
        hottest = "95 °F"
        [[enclosure]]
        id = "box"
        heater = "60 W"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        voltage = "120 V"
        [supply.circuit]
        breaker = "20 A"
        breaker_kind = "inverse-time breaker"
        insulation = "90 °C"
        terminals = "75 °C"
        bundled = 2
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        enclosure = "box"
        fed_by = "mains"
        voltage = "24 V"
        rated_current = "20 A"
        efficiency = "92 %"
        [supply.intake]
        power_factor = "0.95"
        [[cable]]
        id = "w-01"
        carries = "mains"
        from = "mains"
        to = "supply-24"
        size = "10 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "122 °F"
        length = "212 ft"
    "#;

    #[test]
    fn holds_with_10_awg_over_a_long_run() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // By hand: 480 W / 0.92 / 0.95 + 60 W is 609.2 W, 5.08 A at 120 V.
        assert!(finding.sentence.contains("5.08 A"), "{}", finding.sentence);
    }

    #[test]
    fn fails_with_thin_wire_and_a_large_breaker() {
        let thin = SITE.replace("10 AWG", "12 AWG");
        assert_eq!(only(&CHECK, &thin).verdict, Verdict::Fails, "drop");
        let large = SITE.replace(
            "\"20 A\"\n        breaker_kind",
            "\"40 A\"\n        breaker_kind",
        );
        assert_eq!(only(&CHECK, &large).verdict, Verdict::Fails, "breaker");
        let hot = SITE
            .replace("bundled = 2", "bundled = 41")
            .replace("rated_current = \"20 A\"", "rated_current = \"50 A\"");
        assert_eq!(only(&CHECK, &hot).verdict, Verdict::Fails, "bundled");
    }

    #[test]
    fn a_motor_may_have_a_larger_breaker() {
        let motor = SITE.replace("\"20 A\"\n        breaker_kind", "\"40 A\"\n        breaker_kind").replace(
            "[[cable]]",
            "[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n[[operator]]\nid = \"drive\"\ngate = \"main\"\nsupply = \"mains\"\nrunning_current = \"16 A\"\n[[cable]]",
        ).replace("212 ft", "30 ft");
        let finding = only(&CHECK, &motor);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn in_europe_the_electrician_gives_the_ampacity() {
        let europe = SITE
            .replace("\"us\"", "\"eu\"")
            .replace("bundled = 2", "ampacity = \"26 A\"");
        let finding = only(&CHECK, &europe);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_breaker_and_heater() {
        let bare = SITE
            .replace("breaker = \"20 A\"", "")
            .replace("heater = \"60 W\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
