//! Power that arrives at the far end of a powered Ethernet cable.

use crate::OutOfReach;
use quantity::{Current, Length, Power, Quantity as _, Resistance, ResistancePerLength, Voltage};

quantity::words! {
    /// How many of the four pairs carry power.
    pub enum PoweredPairs {
        /// Two pairs, as in Types 1 and 2 of IEEE 802.3.
        Two = "two",
        /// All four pairs, as in Types 3 and 4.
        Four = "four",
    }
}

formula! {
    /// Current, voltage and loss when a device draws a power at the far end of a powered Ethernet cable.
    ///
    /// A device of this kind draws a power, not a current: as the voltage falls it takes more current, which makes the
    /// voltage fall further. Of the two currents that satisfy both the smaller one is real. A pair carries its
    /// current in both of its wires, so that two powered pairs have the loop resistance of one wire over the length,
    /// and four have half. Cords and connectors add to the length; heat adds to the resistance.
    pub struct PoePower = "poe-power" in Signal {
        /// Voltage at the injector or the switch, under load.
        source ("U"): Voltage,
        /// Resistance of one wire for each unit of length: 0.0938 Ω/m for a 24 AWG cable that just meets its category.
        resistance ("R′"): ResistancePerLength,
        /// Length of the cable with its cords.
        length ("l"): Length,
        /// Pairs that carry power.
        pairs ("–"): PoweredPairs,
        /// Power that the device draws at its own end.
        power ("P"): Power,
    }
    gives
    /// What arrives and what is lost.
    pub struct PoeArrival {
        /// Resistance of the loop, out and back.
        loop_resistance ("R"): Resistance,
        /// Current in all powered pairs together.
        current ("I"): Current,
        /// Voltage at the device.
        device_voltage ("U₂"): Voltage,
        /// Power that the injector gives.
        source_power ("P₁"): Power,
        /// Power lost as heat in the cable.
        loss ("ΔP"): Power,
    }
    formula "R = R′ · l (two pairs), R′ · l / 2 (four pairs)\nI = (U − √(U² − 4 · R · P)) / (2 · R)\nU₂ = U − I · R\nP₁ = U · I\nΔP = I² · R"
    valid "Pairs of equal resistance and a steady load; at most U² / (4 · R) can arrive. The class of the device and the limits of the injector are another matter."
    source { work: "Ohm's law; loop resistances as in IEEE 802.3, clauses 33 and 145", clause: "", evidence: Physics, seen: "the class tables of IEEE 802.3 follow from it, see the cases" }
    by poe_power
}

fn poe_power(channel: &PoePower) -> Result<PoeArrival, OutOfReach> {
    check(channel)?;
    let share = match channel.pairs {
        PoweredPairs::Two => 1.0,
        PoweredPairs::Four => 0.5,
    };
    let loop_resistance: Resistance = share * channel.resistance * channel.length;
    let (source, ohms) = (channel.source.base(), loop_resistance.base());
    let inner = source * source - 4.0 * ohms * channel.power.base();
    if inner < 0.0 {
        let most = source * source / (4.0 * ohms);
        return Err(OutOfReach::new(
            "power",
            format!(
                "at most {most:.1} W can arrive over this cable, whatever the injector; shorten it or power more pairs"
            ),
        ));
    }
    // The small root without cancellation, so that no resistance is no trouble.
    let current = Current::from_base(2.0 * channel.power.base() / (source + inner.sqrt()));
    let lost: Voltage = current * loop_resistance;
    Ok(PoeArrival {
        loop_resistance,
        current,
        device_voltage: channel.source - lost,
        source_power: current * channel.source,
        loss: current * lost,
    })
}

fn check(channel: &PoePower) -> Result<(), OutOfReach> {
    if channel.source.base() <= 0.0 {
        return Err(OutOfReach::new(
            "source",
            "give the injector's voltage, such as 54 V",
        ));
    }
    let negative = [
        ("resistance", channel.resistance.base()),
        ("length", channel.length.base()),
        ("power", channel.power.base()),
    ];
    match negative.iter().find(|(_, value)| *value < 0.0) {
        Some((input, _)) => Err(OutOfReach::new(input, "this cannot be below zero")),
        None => Ok(()),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn channel(length: f64, pairs: PoweredPairs, power: f64) -> PoePower {
        PoePower {
            source: Voltage::from_base(50.0),
            resistance: ResistancePerLength::from_base(0.0938),
            length: Length::from_base(length),
            pairs,
            power: Power::from_base(power),
        }
    }

    proptest! {
        #[test]
        fn what_is_given_is_drawn_or_lost(length in 0.0..100.0, power in 0.0..50.0) {
            let arrival = channel(length, PoweredPairs::Two, power).evaluate().unwrap();
            let sum = arrival.loss.base() + arrival.current.base() * arrival.device_voltage.base();
            prop_assert!((arrival.source_power.base() - sum).abs() < 1e-9 * (1.0 + sum));
            prop_assert!((sum - arrival.loss.base() - power).abs() < 1e-9 * (1.0 + power));
            prop_assert!(arrival.device_voltage.base() >= 25.0);
        }

        #[test]
        fn more_pairs_or_less_cable_lose_less(length in 1.0..100.0, power in 0.1..50.0) {
            let two = channel(length, PoweredPairs::Two, power).evaluate().unwrap();
            let four = channel(length, PoweredPairs::Four, power).evaluate().unwrap();
            let short = channel(length / 2.0, PoweredPairs::Two, power).evaluate().unwrap();
            prop_assert!(four.loss < two.loss);
            prop_assert!((four.loss.base() - short.loss.base()).abs() < 1e-9);
        }
    }

    #[test]
    fn what_cannot_arrive_is_refused() {
        let far = channel(1000.0, PoweredPairs::Two, 25.5)
            .evaluate()
            .unwrap_err();
        assert_eq!(far.input, "power");
        assert!(far.why.contains("6.7 W"), "{far}");
        assert_eq!(
            channel(-1.0, PoweredPairs::Two, 1.0)
                .evaluate()
                .unwrap_err()
                .input,
            "length"
        );
    }

    #[test]
    fn no_cable_loses_nothing() {
        let here = channel(0.0, PoweredPairs::Two, 25.0).evaluate().unwrap();
        assert!((here.current.base() - 0.5).abs() < 1e-12 && here.loss.base() < 1e-12);
    }
}
