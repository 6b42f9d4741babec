//! How long a warm copper channel with stranded cords is for its signals.

use crate::OutOfReach;
use quantity::{Length, Quantity as _, Ratio, Temperature};

quantity::words! {
    /// How the pairs of a data cable are kept from each other and from outside.
    pub enum PairScreen {
        /// No screen.
        Unscreened = "unscreened",
        /// A screen over all pairs or over each.
        Screened = "screened",
    }
}

formula! {
    /// The length that a copper channel has for its signals: fixed cable grown for heat, cords grown for their strands.
    ///
    /// The standard lets 90 m of fixed cable at 20 °C and 10 m of cords of 20 % more loss stand for a channel: what they
    /// lose is what 102 m of fixed cable lose. Warm copper loses more, and thin stranded cords lose more for each
    /// meter; both shorten what is left for the run. Cable that is colder than 20 °C is counted as if it had 20 °C.
    pub struct ChannelLength = "channel-length" in Signal {
        /// Length of the fixed cable, slack included.
        run ("H"): Length,
        /// Hottest that the fixed cable gets over its length.
        temperature ("θ"): Temperature,
        /// How its pairs are kept apart.
        screen ("–"): PairScreen,
        /// Length of the cords at both ends together.
        cords ("C"): Length,
        /// How much more a cord loses than fixed cable of the same length: 20 % for 24 AWG strands.
        extra_loss ("D"): Ratio,
    }
    gives
    /// What the channel comes to.
    pub struct ChannelLengths {
        /// Loss of the warm fixed cable over that at 20 °C.
        growth ("k"): Ratio,
        /// Length of fixed cable at 20 °C that loses as much as the fixed cable does.
        grown_run ("H₂₀"): Length,
        /// Length of fixed cable at 20 °C that loses as much as the whole channel does.
        grown_channel ("L₂₀"): Length,
        /// Longest fixed cable at this temperature.
        longest_run ("Hₘ"): Length,
        /// Longest cords that this fixed cable leaves room for.
        longest_cords ("Cₘ"): Length,
    }
    formula "k = 1 + 0.004 · (θ − 20 °C) up to 40 °C, 1.08 + 0.006 · (θ − 40 °C) above (unscreened)\nk = 1 + 0.002 · (θ − 20 °C) (screened)\nH₂₀ = k · H,  L₂₀ = k · H + (1 + D) · C\nHₘ = 90 m / k,  Cₘ = (102 m − k · H) / (1 + D)"
    valid "Four-pair copper of category 5e, 6 or 6A up to 60 °C; the limits are 90 m for the fixed cable and 102 m for the channel, both at 20 °C."
    source { work: "ANSI/TIA-568-C.2", clause: "6.4.7 insertion loss at temperature; formula for longer cords", evidence: Seen, seen: "clause 6.4.7 as quoted to an IEEE 802.3 working group: grouper.ieee.org/groups/802/3/4PPOE/email/msg00302.html; cord formula with 20 % on a cabling standards page (address withheld: a maker's name is in it)" }
    by channel_length
}

/// Longest fixed cable at 20 °C, in meters.
const LONGEST_RUN: f64 = 90.0;
/// The channel as fixed cable at 20 °C, in meters: 90 m, and 10 m of cords with 20 % more loss.
const LONGEST_CHANNEL: f64 = 102.0;
/// Kelvin at 0 °C.
const FREEZING: f64 = 273.15;

fn channel_length(channel: &ChannelLength) -> Result<ChannelLengths, OutOfReach> {
    check(channel)?;
    let growth = growth(channel.temperature.base() - FREEZING, channel.screen);
    let cord = 1.0 + channel.extra_loss.base();
    let grown_run = growth * channel.run.base();
    Ok(ChannelLengths {
        growth: Ratio::from_base(growth),
        grown_run: Length::from_base(grown_run),
        grown_channel: Length::from_base(grown_run + cord * channel.cords.base()),
        longest_run: Length::from_base(LONGEST_RUN / growth),
        longest_cords: Length::from_base(((LONGEST_CHANNEL - grown_run) / cord).max(0.0)),
    })
}

/// Loss over that at 20 °C.
fn growth(celsius: f64, screen: PairScreen) -> f64 {
    let above = |from: f64| (celsius - from).max(0.0);
    match screen {
        PairScreen::Screened => 1.0 + 0.002 * above(20.0),
        PairScreen::Unscreened => 1.0 + 0.004 * above(20.0) + 0.002 * above(40.0),
    }
}

fn check(channel: &ChannelLength) -> Result<(), OutOfReach> {
    let negative = [
        ("run", channel.run.base()),
        ("cords", channel.cords.base()),
        ("extra_loss", channel.extra_loss.base()),
    ];
    if let Some((input, _)) = negative.iter().find(|(_, value)| *value < 0.0) {
        return Err(OutOfReach::new(input, "this cannot be below zero"));
    }
    if channel.temperature.base() > 60.0 + FREEZING {
        return Err(OutOfReach::new(
            "temperature",
            "the standard's factors end at 60 °C; shade or bury the cable",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn channel(run: f64, celsius: f64, screen: PairScreen, cords: f64) -> ChannelLength {
        ChannelLength {
            run: Length::from_base(run),
            temperature: Temperature::from_base(celsius + FREEZING),
            screen,
            cords: Length::from_base(cords),
            extra_loss: Ratio::from_base(0.2),
        }
    }

    proptest! {
        #[test]
        fn heat_and_cords_never_shorten_it(run in 0.0..200.0, cold in -40.0..60.0_f64, more in 0.0..20.0, cords in 0.0..30.0) {
            let screen = PairScreen::Unscreened;
            let hot = f64::min(cold + more, 60.0);
            let here = channel(run, cold, screen, cords).evaluate().unwrap();
            let there = channel(run, hot, screen, cords).evaluate().unwrap();
            let longer = channel(run, cold, screen, cords + 1.0).evaluate().unwrap();
            prop_assert!(there.grown_channel >= here.grown_channel);
            prop_assert!(longer.grown_channel > here.grown_channel);
            prop_assert!(here.grown_run.base() >= run);
            let screened = channel(run, cold, PairScreen::Screened, cords).evaluate().unwrap();
            prop_assert!(screened.grown_channel <= here.grown_channel);
        }

        #[test]
        fn the_longest_cords_just_fill_the_channel(run in 0.0..75.0, celsius in 0.0..60.0) {
            let screen = PairScreen::Unscreened;
            let most = channel(run, celsius, screen, 0.0).evaluate().unwrap().longest_cords;
            let full = channel(run, celsius, screen, most.base()).evaluate().unwrap();
            prop_assert!((full.grown_channel.base() - 102.0).abs() < 1e-9);
        }
    }

    #[test]
    fn what_the_standard_does_not_cover_is_refused() {
        let hot = channel(50.0, 70.0, PairScreen::Screened, 5.0).evaluate();
        assert_eq!(hot.unwrap_err().input, "temperature");
        let backward = channel(-1.0, 20.0, PairScreen::Screened, 5.0).evaluate();
        assert_eq!(backward.unwrap_err().input, "run");
    }
}
