//! What voltage reaches each device and operator in every case, and whether it still works at that.
//!
//! The whole circuit is solved: everything that shares a conductor draws what it draws in that case, and the device asked
//! about draws its own greatest. Conductors are as hot as they get, in the cold cases too, and have the larger of their
//! nominal resistance and that of the printed tables. Electronics draw the same power at less voltage, so more current.
//! A device fed by several cables is judged by the worst of them, each taken to carry all of its current.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::circuit::{Circuits, Part, PowerCase, State, Takes, states};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::{Quantity as _, Voltage};
use site::{Device, DeviceKind, Site, Supply, SupplyKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-voltage-at-device",
    codes: BOTH,
    leaves_open: "loose or rotten joints, and how low the voltage falls within the first milliseconds of a start",
    concerns: "each device and operator that is fed",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let circuits = Circuits::of(site);
    for operator in &site.operator {
        let takes = Takes::Operator(operator);
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            let least = read!(asking, operator.least_voltage);
            voltage(asking, &circuits, takes, least)
        });
    }
    for supply in site
        .supply
        .iter()
        .filter(|supply| is_converter(site, supply))
    {
        let takes = Takes::Supply(supply);
        round.ask(About::new(&supply.origin, &supply.id), |asking| {
            let least = read!(asking, supply.least_input);
            voltage(asking, &circuits, takes, least)
        });
    }
    for device in site
        .device
        .iter()
        .filter(|device| is_fed(&circuits, device))
    {
        let takes = Takes::Device(device);
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let least = read!(asking, device.least_voltage);
            voltage(asking, &circuits, takes, least)
        });
    }
}

/// It draws a current from a supply or a battery. A loop does not: its detector does, in its enclosure.
fn is_fed(circuits: &Circuits<'_>, device: &Device) -> bool {
    let by_a_source = match &device.supply {
        Some(name) => circuits.source(name).is_some(),
        None => device.current.is_some(),
    };
    by_a_source && device.kind != DeviceKind::Loop
}

/// It is fed by another supply than the mains, whose voltage is a question of its own.
fn is_converter(site: &Site, supply: &Supply) -> bool {
    let before = |other: &&Supply| supply.fed_by.as_ref() == Some(&other.id);
    let before = site.supply.iter().find(before);
    before.is_some_and(|before| before.kind != SupplyKind::Mains)
}

/// The lowest voltage at something, when, and where that is.
struct Lowest<'c, 's> {
    voltage: Voltage,
    state: State<'s>,
    part: &'c Part<'s>,
    taker: usize,
    /// Highest of its voltages in the other cases.
    highest: Voltage,
}

/// Voltages nearer than this, in volts, are the same.
const ALIKE: f64 = 1e-3;

impl Lowest<'_, '_> {
    /// When that is, in words.
    fn when(&self) -> &'static str {
        if self.highest.base() - self.voltage.base() < ALIKE {
            "in every case alike"
        } else {
            self.state.case().when()
        }
    }

    /// What each run on the way loses, one line each.
    fn way(&self, print: Print) -> Vec<String> {
        let State::Stands { through, ends, .. } = &self.state else {
            return Vec::new();
        };
        let one_way = self.part.ways().map(|ways| ways[self.taker].clone());
        let runs = one_way.unwrap_or_else(|| (0..self.part.runs.len()).collect());
        let line = |run: usize| {
            let ([near, far], current) = (ends[run], through[run]);
            format!(
                "By {}, {} become {}: {} through {}, both ways{}.",
                self.part.runs[run].cable.id,
                print.q(near),
                print.q(far),
                print.q(current),
                print.q((near - far) / current),
                if self.part.runs[run].fuse.is_some() {
                    " and the fuse"
                } else {
                    ""
                }
            )
        };
        let flowing = |run: &usize| through[*run].base() != 0.0;
        runs.into_iter().filter(flowing).map(line).collect()
    }
}

fn voltage<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    takes: Takes<'s>,
    least: Result<Voltage, Halt>,
) -> Answer {
    let lowest = lowest(asking, circuits, takes);
    let (least, lowest) = (least?, lowest?);
    for line in lowest.way(asking.print()) {
        asking.note(|_| line);
    }
    asking.say(|print| match &lowest.state {
        State::Stands { .. } => format!(
            "At {}, {} at its lowest, {}; it needs {}.",
            takes.id(),
            print.q(lowest.voltage),
            lowest.when(),
            print.q(least)
        ),
        State::Collapses { case, first, carried } => format!(
            "At {}, the voltage collapses {}: the conductors bring {} of what is asked of them at most, and {first} loses it first. Thicker or shorter conductors, or less on this run, mend it.",
            takes.id(),
            case.when(),
            print.q(*carried),
        ),
    });
    let comparison = Comparison::at_most(
        Labeled::new("least voltage at which it works", least),
        Labeled::new("lowest voltage at its terminals", lowest.voltage),
    );
    Ok(Outcome::Compared(comparison))
}

/// The lowest voltage at something while its supply holds its own voltage.
pub(super) fn lowest_on_supply<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    takes: Takes<'s>,
) -> Result<Voltage, Halt> {
    let supplied = |case| case != PowerCase::BatteryEnd;
    lowest_in(asking, circuits, takes, supplied).map(|lowest| lowest.voltage)
}

/// The lowest voltage at something over all its cables and all cases.
pub(crate) fn lowest_at<'s>(
    asking: &mut Asking<'s>,
    circuits: &Circuits<'s>,
    takes: Takes<'s>,
) -> Result<Voltage, Halt> {
    lowest(asking, circuits, takes).map(|lowest| lowest.voltage)
}

/// The lowest voltage at something over all its cables and all cases, with when and where.
fn lowest<'c, 's>(
    asking: &mut Asking<'s>,
    circuits: &'c Circuits<'s>,
    takes: Takes<'s>,
) -> Result<Lowest<'c, 's>, Halt> {
    lowest_in(asking, circuits, takes, |_| true)
}

fn lowest_in<'c, 's>(
    asking: &mut Asking<'s>,
    circuits: &'c Circuits<'s>,
    takes: Takes<'s>,
    wanted: impl Fn(PowerCase) -> bool,
) -> Result<Lowest<'c, 's>, Halt> {
    circuits.feeding(asking, takes)?;
    let without = circuits
        .without_cable
        .iter()
        .any(|other| other.id() == takes.id());
    if without {
        return asking.lack(takes.origin(), "cable", Wants::Table(CABLE));
    }
    let mut lowest: Option<Lowest<'c, 's>> = None;
    let mut highest = Voltage::from_base(0.0);
    let mut whole = Ok(());
    for part in &circuits.parts {
        let here: Vec<usize> = part.takers_named(takes.id()).collect();
        if here.is_empty() {
            continue;
        }
        let Ok(found) = states(circuits, asking, part, Some(takes.id())) else {
            whole = Err(Halt);
            continue;
        };
        for state in found.into_iter().filter(|state| wanted(state.case())) {
            for taker in &here {
                let voltage = state.voltage(*taker);
                let (case, cable) = (state.case(), part.run_to(*taker));
                let by = cable.map_or(String::new(), |run| format!(" by {}", run.cable.id));
                asking.note(|print| {
                    format!(
                        "{}: {} at {}{by}",
                        case.when(),
                        print.q(voltage),
                        takes.id()
                    )
                });
                highest = if voltage > highest { voltage } else { highest };
                if lowest.as_ref().is_none_or(|known| voltage < known.voltage) {
                    lowest = Some(Lowest {
                        voltage,
                        state: state.clone(),
                        part,
                        taker: *taker,
                        highest,
                    });
                }
            }
        }
    }
    whole?;
    match lowest {
        Some(lowest) => Ok(Lowest { highest, ..lowest }),
        None => asking.refuse("nothing feeds this"),
    }
}

/// How a cable is written.
const CABLE: &str = "[[cable]]\nid = \"w-01\"\nfrom = \"supply-24\"\nto = \"…\"\nsize = \"18 AWG\"\nlength = \"120 ft\"";

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "source"
        kind = "power supply"
        voltage = "12 V ± 1 %"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "source"
        least_voltage = "10.2 V"
        current = "500 mA"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "120 ft ± 5 ft"
    "#;

    #[test]
    fn holds_over_a_short_run() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        // By hand: 7.95 Ω/kft at 75 °C by the table, less 35 · 0.323 %: 240 ft and 0.5 A lose 0.846 V.
        let volts = 12.0 - 0.5 * 0.240 * 7.95 * (1.0 - 0.00323 * 35.0);
        let arriving = finding.capacity.unwrap().value.unwrap();
        assert!((arriving - volts).abs() < 0.005, "{arriving} {volts}");
        assert!(
            finding.sentence.starts_with("At reader, "),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_over_a_long_one_and_for_its_burst() {
        assert_eq!(
            only(&CHECK, &SITE.replace("120 ft", "400 ft")).verdict,
            Verdict::Fails
        );
        let burst = SITE.replace(
            "current = \"500 mA\"",
            "current = \"500 mA\"\npeak_current = \"1.5 A\"",
        );
        assert_eq!(only(&CHECK, &burst).verdict, Verdict::Fails);
    }

    #[test]
    fn two_cores_a_pole_halve_the_loss() {
        let double = SITE.replace("size =", "cores_per_pole = 2\nsize =");
        let volts = |text: &str| only(&CHECK, text).capacity.unwrap().value.unwrap();
        assert!((2.0 * (12.0 - volts(&double)) - (12.0 - volts(SITE))).abs() < 1e-9);
    }

    #[test]
    fn unknown_without_the_length_and_the_least_voltage() {
        let bare = SITE
            .replace("length = \"120 ft ± 5 ft\"", "")
            .replace("least_voltage = \"10.2 V\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn unknown_without_a_cable_and_without_a_supply() {
        let no_cable = &SITE[..SITE.find("[[cable]]").unwrap()];
        let finding = only(&CHECK, no_cable);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("[[cable]]"));
        let no_supply = no_cable.replace("supply = \"source\"", "");
        assert!(only(&CHECK, &no_supply).missing[0].path.ends_with("supply"));
    }
}
