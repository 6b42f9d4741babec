//! How long a card waits on a bus on which devices are asked one after the other.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Quantity as _, Time};

/// Bits of one character on the line: start, eight, stop.
const BITS: f64 = 10.0;
/// Characters of silence before a message.
const SILENCE: f64 = 2.0;

formula! {
    /// Times of a bus on which a controller asks one device after the other.
    ///
    /// A card that is held up right after its reader has been asked waits until every other device was asked and had a
    /// card to tell of, and then for its own turn. A controller that asks more rarely than it could makes it wait longer.
    pub struct BusPoll = "bus-poll" in Signal {
        /// Bits in a second.
        bit_rate ("b"): u32,
        /// Devices that are asked.
        devices ("n"): u32,
        /// Characters of a question.
        question ("Nq"): u32,
        /// Characters of an answer that has nothing to tell.
        quiet_answer ("Na"): u32,
        /// Characters of an answer that tells of a card.
        card_answer ("Nc"): u32,
        /// From the end of a question to the start of its answer.
        reply_time ("td"): Time,
    }
    gives
    /// Times on the bus.
    pub struct BusPolls {
        /// Silence before a message.
        silence ("tg"): Time,
        /// One device asked, with nothing to tell.
        quiet ("tq"): Time,
        /// One device asked, with a card to tell of.
        card ("tc"): Time,
        /// All devices asked, with nothing to tell.
        quiet_round ("Tq"): Time,
        /// All devices asked, each with a card to tell of: the longest that a card waits.
        busy_round ("Tc"): Time,
    }
    formula "tg = 2 · 10 / b\ntq = tg + (Nq + Na) · 10 / b + td\ntc = tg + (Nq + Nc) · 10 / b + td\nTq = n · tq\nTc = n · tc"
    valid "Eight bits with start and stop, no message lost, no other commands such as lamps and sounders in between."
    source { work: "SIA OSDP v2.2: questions and answers in turn, two characters of silence", clause: "", evidence: Seen, seen: "public introduction to the protocol with excerpts, https://doc.osdp.dev/protocol/introduction" }
    by bus_poll
}

fn bus_poll(bus: &BusPoll) -> Result<BusPolls, OutOfReach> {
    if bus.bit_rate == 0 {
        return Err(OutOfReach::new(
            "bit_rate",
            "give bits in a second, such as 9600",
        ));
    }
    not_negative("reply_time", bus.reply_time, "3 ms")?;
    let character = BITS / f64::from(bus.bit_rate);
    let asked = |answer: u32| {
        let characters = SILENCE + f64::from(bus.question) + f64::from(answer);
        Time::from_base(characters * character) + bus.reply_time
    };
    let (quiet, card) = (asked(bus.quiet_answer), asked(bus.card_answer));
    let devices = f64::from(bus.devices);
    Ok(BusPolls {
        silence: Time::from_base(SILENCE * character),
        quiet,
        card,
        quiet_round: quiet * devices,
        busy_round: card * devices,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn bus(bit_rate: u32, devices: u32) -> BusPoll {
        BusPoll {
            bit_rate,
            devices,
            question: 8,
            quiet_answer: 8,
            card_answer: 20,
            reply_time: Time::from_base(3e-3),
        }
    }

    proptest! {
        #[test]
        fn faster_waits_less_and_more_devices_more(rate in 300u32..500_000, devices in 1u32..32) {
            let known = bus(rate, devices).evaluate().unwrap();
            prop_assert!(bus(2 * rate, devices).evaluate().unwrap().busy_round < known.busy_round);
            prop_assert!(bus(rate, devices + 1).evaluate().unwrap().busy_round > known.busy_round);
            prop_assert!(known.quiet_round < known.busy_round);
        }
    }

    #[test]
    fn refusals_name_the_input() {
        assert_eq!(bus(0, 1).evaluate().unwrap_err().input, "bit_rate");
        let early = BusPoll {
            reply_time: Time::from_base(-1.0),
            ..bus(9600, 1)
        };
        assert_eq!(early.evaluate().unwrap_err().input, "reply_time");
    }
}
