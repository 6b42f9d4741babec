//! Whether a reader bus is one line, short enough for its speed, ended at both ends and biased once.
//!
//! The two wires of a bus carry a wave. It must find the same impedance all along and a resistor of that size at each end;
//! what branches off must be short against the rise of the signal; and while nobody speaks, the bias must hold the wires
//! apart by more than the least voltage that a receiver tells from nothing. Tolerances are taken at their bad ends, the
//! pair as hot as it gets.

use super::is_reader;
use super::place::{Place, biased, idle, loads, pair, places, rise_time};
use crate::asking::{Asking, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Labeled};
use crate::plain::{and, counted};
use crate::subject::About;
use formula::signal::{BusReach, BusStub};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio, Resistance, Voltage};
use site::{Bus, Device, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "bus-line",
    codes: BOTH,
    leaves_open: "noise from drives along the way, leakage and capacitance of surge protectors on the pair, and that bias resistors load a sender like further receivers",
    concerns: "each bus",
    ask,
};

static LINE: Source = Source {
    work: "TIA-485: 32 unit loads, 200 mV",
    clause: "",
    evidence: Evidence::Seen,
    seen: "application notes and manuals of interface makers (addresses withheld: makers' names are in them)",
};

static MATCH: Source = Source {
    work: "a terminator throws back at most a fifth of the wave",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "120 Ω on pairs of 100 Ω to 120 Ω is everyday practice",
};

/// Unit loads that a sender carries.
const LOADS: f64 = 32.0;
/// Least idle voltage that receivers without a fail-safe take for a state, in volts.
const IDLE: f64 = 0.2;
/// Share of the wave that a terminator may throw back.
const THROWN_BACK: f64 = 0.2;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for bus in &site.bus {
        round.ask(About::new(&bus.origin, &bus.id), |asking| {
            line(asking, site, bus)
        });
    }
}

fn line<'s>(asking: &mut Asking<'s>, site: &'s Site, bus: &'s Bus) -> Answer {
    let rate = pick!(asking, bus.bit_rate);
    let impedance = read!(asking, bus.impedance);
    let velocity = read!(asking, bus.velocity);
    let pair = pair(asking, site, bus);
    let places = places(asking, site, bus);
    let supply = if bus.node.iter().filter(|node| node.bias.is_some()).count() == 1 {
        read!(asking, bus.bias_voltage).map(Some)
    } else {
        Ok(None)
    };
    let (rate, impedance, velocity, pair) = (rate?, impedance?, velocity?, pair?);
    let (places, supply) = (places?, supply?);
    asking.rest_on(&LINE);
    asking.rest_on(&MATCH);
    let mut rules = Rules::default();
    order(&mut rules, &places);
    ends(&mut rules, &places, impedance);
    let longest = asking.work(&BusReach { bit_rate: rate })?.longest;
    let rise_time = rise_time(&places);
    let stub = asking
        .work(&BusStub {
            rise_time,
            velocity,
        })?
        .longest;
    let idle = match (biased(&places).as_slice(), supply) {
        ([at], Some(supply)) => idle(asking, &places, *at, (supply, pair))?,
        _ => None,
    };
    let bare = bias(&mut rules, &places);
    let figures = Figures {
        length: places
            .last()
            .map_or(Length::from_base(0.0), |place| place.along),
        longest,
        stub,
        idle: idle.map(|idles| idles.far_voltage),
        bare,
    };
    figures.compare(&mut rules, &places);
    asking.say(|print| {
        figures
            .mend(&places, print)
            .unwrap_or_else(|| rules.says(|| figures.told(&places, rate, print)))
    });
    Ok(rules.outcome())
}

/// What the line has and what it may have.
struct Figures {
    length: Length,
    longest: Length,
    stub: Length,
    idle: Option<Voltage>,
    /// Some receiver has no fail-safe of its own.
    bare: bool,
}

impl Figures {
    fn compare(&self, rules: &mut Rules, places: &[Place<'_>]) {
        rules.compare(Comparison::at_most(
            Labeled::new("length of the line", self.length),
            Labeled::new("longest at this bit rate", self.longest),
        ));
        for place in places {
            rules.compare(Comparison::at_most(
                Labeled::new("longest stub on the line", place.stub),
                Labeled::new("longest that its fastest sender allows", self.stub),
            ));
        }
        rules.compare(Comparison::at_most(
            Labeled::new("unit loads on the line", loads(places)),
            Labeled::new("unit loads that a sender carries", Ratio::from_base(LOADS)),
        ));
        if let Some(idle) = self.idle.filter(|_| self.bare) {
            rules.compare(Comparison::at_most(
                Labeled::new(
                    "least idle voltage that a receiver is sure of",
                    Voltage::from_base(IDLE),
                ),
                Labeled::new("idle voltage at the end of the line", idle),
            ));
        }
    }

    /// What would mend the first figure that is past its limit.
    fn mend(&self, places: &[Place<'_>], print: Print) -> Option<String> {
        if self.length > self.longest {
            return Some(format!(
                "The line is {} long and {} is what its bit rate allows: set a lower rate, or part the line with a repeater.",
                print.q(self.length),
                print.q(self.longest)
            ));
        }
        if let Some(place) = places.iter().find(|place| place.stub > self.stub) {
            return Some(format!(
                "{} hangs on a stub of {}, and {} is what the fastest sender on the line allows: lead the line in and out of its terminals.",
                place.node.device,
                print.q(place.stub),
                print.q(self.stub)
            ));
        }
        let low = |idle: &Voltage| self.bare && idle.base() < IDLE;
        self.idle.filter(low).map(|idle| {
            format!(
                "While nobody speaks, {} stand on the end of the line, and a receiver is sure of 200 mV and more: take smaller bias resistors.",
                print.q(idle)
            )
        })
    }

    fn told(&self, places: &[Place<'_>], rate: u32, print: Print) -> String {
        let idle = self.idle.map_or_else(String::new, |idle| {
            format!(", and idles at {} at its end", print.q(idle))
        });
        format!(
            "The line runs {} past {} at {rate} bits a second, where {} would do{idle}; stubs may be {} long, and it carries {:.3} of {LOADS} unit loads.",
            print.q(self.length),
            counted(places.len(), "device"),
            print.q(self.longest),
            print.q(self.stub),
            loads(places).base()
        )
    }
}

/// Bias at one place; none where every receiver has a fail-safe of its own. Gives whether some receiver has none.
fn bias(rules: &mut Rules, places: &[Place<'_>]) -> bool {
    let biased = biased(places).len();
    let bare: Vec<String> = places
        .iter()
        .filter(|place| !place.fail_safe)
        .map(|place| place.node.device.to_string())
        .collect();
    rules.keep(biased < 2, &format!(
        "Bias resistors sit at {biased} places; take all away but one pair, they pull the line down for every sender."
    ));
    rules.keep(biased > 0 || bare.is_empty(), &format!(
        "Nothing holds the line while nobody speaks, and {} would read noise: switch on the bias at the controller.",
        and(&bare)
    ));
    !bare.is_empty()
}

/// The line does not turn back: each place lies farther along than the one before.
fn order(rules: &mut Rules, places: &[Place<'_>]) {
    for pair in places.windows(2) {
        if let [one, next] = pair {
            rules.keep(next.along >= one.along, &format!(
                "{} is written after {} and lies nearer to the beginning: a bus is one line, so write its places in order, and a branch as a stub.",
                next.node.device, one.node.device
            ));
        }
    }
}

/// A resistor of the line's impedance at its two ends, and nowhere between.
fn ends(rules: &mut Rules, places: &[Place<'_>], impedance: Resistance) {
    for (at, place) in places.iter().enumerate() {
        let is_end = at == 0 || at + 1 == places.len();
        let device = &place.node.device;
        match place.termination {
            None => rules.keep(!is_end, &format!(
                "The line ends at {device} without a resistor: put one of its impedance across the pair there."
            )),
            Some(_) if !is_end => rules.keep(false, &format!(
                "{device} hangs in the middle of the line and carries a terminator: switch it off there."
            )),
            Some(ends) => {
                let thrown = ((ends - impedance) / (ends + impedance)).abs();
                rules.compare(Comparison::at_most(
                    Labeled::new("share of the wave that a terminator throws back", thrown),
                    Labeled::new("share that does no harm", Ratio::from_base(THROWN_BACK)),
                ));
            }
        }
    }
}

/// The devices that hang on a line of the site.
pub(crate) fn on_a_line<'s>(site: &'s Site, device: &Device) -> Option<&'s Bus> {
    let holds = |bus: &&Bus| bus.node.iter().any(|node| node.device == device.id);
    site.bus.iter().find(holds).filter(|_| is_reader(device))
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
        [[device]]
        id = "controller"
        kind = "access controller"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false }
        [[device]]
        id = "reader"
        kind = "reader"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false, reply_time = "3 ms" }
        data_line = { speaks = "OSDP", address = 0, secure_channel = "site key", offline = "refuses" }
        [[device]]
        id = "keypad"
        kind = "keypad"
        data_port = { unit_load = "0.125", rise_time = "100 ns", fail_safe = false, reply_time = "3 ms" }
        data_line = { speaks = "OSDP", address = 1, secure_channel = "site key", offline = "refuses" }
        [[cable]]
        id = "w-01"
        carries = "signal"
        from = "controller"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "104 °F"
        length = "126 ft"
        [[bus]]
        id = "readers"
        cable = ["w-01"]
        bit_rate = 9600
        impedance = "100 Ω ± 10 %"
        velocity = "0.66"
        bias_voltage = "5 V ± 5 %"
        decision_time = "150 ms"
        poll_period = "100 ms"
        [[bus.node]]
        device = "controller"
        along = "0 ft"
        stub = "0 ft"
        termination = "120 Ω ± 5 %"
        bias = "470 Ω ± 5 %"
        [[bus.node]]
        device = "keypad"
        along = "123 ft"
        stub = "2 ft"
        [[bus.node]]
        device = "reader"
        along = "126 ft ± 3 ft"
        stub = "0 ft"
        termination = "120 Ω ± 5 %"
    "#;

    #[test]
    fn holds_ended_and_biased() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert_eq!(finding.standing, crate::Standing::Holds, "{finding:#?}");
    }

    #[test]
    fn fails_too_long_too_fast_or_with_a_long_stub() {
        for (from, to) in [
            ("bit_rate = 9600", "bit_rate = 10000000"),
            ("stub = \"2 ft\"", "stub = \"20 ft\""),
            ("along = \"126 ft ± 3 ft\"", "along = \"5000 ft\""),
            ("along = \"123 ft\"", "along = \"200 ft\""),
            ("unit_load = \"0.125\"", "unit_load = \"12\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_without_an_end_and_with_one_in_the_middle() {
        let open = SITE.replace(
            "stub = \"0 ft\"\n        termination = \"120 Ω ± 5 %\"\n    ",
            "stub = \"0 ft\"\n    ",
        );
        let finding = only(&CHECK, &open);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("ends at reader"),
            "{}",
            finding.sentence
        );
        let middle = SITE.replace(
            "stub = \"2 ft\"",
            "stub = \"2 ft\"\n        termination = \"120 Ω\"",
        );
        assert_eq!(only(&CHECK, &middle).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_without_bias_unless_the_receivers_need_none() {
        let bare = SITE.replace("        bias = \"470 Ω ± 5 %\"\n", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::Fails);
        let modern = bare.replace("fail_safe = false", "fail_safe = true");
        assert_eq!(only(&CHECK, &modern).verdict, Verdict::Holds);
        let weak = SITE.replace("bias = \"470 Ω ± 5 %\"", "bias = \"1 kΩ ± 5 %\"");
        assert_eq!(only(&CHECK, &weak).verdict, Verdict::Fails);
        let twice = SITE.replace(
            "stub = \"2 ft\"",
            "stub = \"2 ft\"\n        bias = \"470 Ω\"",
        );
        assert_eq!(only(&CHECK, &twice).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_impedance_and_stub() {
        let bare = SITE
            .replace("impedance = \"100 Ω ± 10 %\"", "")
            .replace("stub = \"2 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2);
    }
}
