//! What arrives at the far end of a radio link, and what it has in hand.

use crate::OutOfReach;
use crate::check::not_negative;
use quantity::{Gain, PowerLevel, Quantity as _};

formula! {
    /// What arrives at the receiver of a radio link, and how far that stands above what it needs.
    ///
    /// All gains and losses from socket to socket add up. The margin has to carry rain, wet leaves, an antenna that the
    /// wind has turned, and waves that come by other ways.
    pub struct LinkBudget = "link-budget" in Signal {
        /// Power at the transmitter's socket.
        power ("Pt"): PowerLevel,
        /// Loss in the transmitter's cable and plugs.
        sending_cable ("Lt"): Gain,
        /// Gain of the transmitter's antenna.
        sending_gain ("Gt"): Gain,
        /// Loss on the way: distance, ground, edges, trees.
        path_loss ("L"): Gain,
        /// Gain of the receiver's antenna.
        receiving_gain ("Gr"): Gain,
        /// Loss in the receiver's cable and plugs.
        receiving_cable ("Lr"): Gain,
        /// Weakest signal that the receiver takes at the wanted rate.
        receiver_limit ("Ps"): PowerLevel,
    }
    gives
    /// What arrives.
    pub struct LinkMargin {
        /// Signal at the receiver's socket.
        received ("Pr"): PowerLevel,
        /// How far it stands above what the receiver needs.
        margin ("M"): Gain,
    }
    formula "Pr = Pt − Lt + Gt − L + Gr − Lr\nM = Pr − Ps"
    valid "Antennas that look at each other with the same polarization."
    source { work: "Friis transmission equation in decibels", clause: "", evidence: Physics, seen: "textbooks of radio communication; worked examples, see the cases" }
    by link_budget
}

fn link_budget(link: &LinkBudget) -> Result<LinkMargin, OutOfReach> {
    not_negative("sending_cable", link.sending_cable, "1 dB")?;
    not_negative("receiving_cable", link.receiving_cable, "1 dB")?;
    not_negative("path_loss", link.path_loss, "90 dB")?;
    let gains = link.sending_gain.base() + link.receiving_gain.base();
    let losses = link.sending_cable.base() + link.path_loss.base() + link.receiving_cable.base();
    let received = link.power.base() + gains - losses;
    Ok(LinkMargin {
        received: PowerLevel::from_base(received),
        margin: Gain::from_base(received - link.receiver_limit.base()),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn link(loss: f64) -> LinkBudget {
        LinkBudget {
            power: PowerLevel::from_base(20.0),
            sending_cable: Gain::from_base(1.0),
            sending_gain: Gain::from_base(14.0),
            path_loss: Gain::from_base(loss),
            receiving_gain: Gain::from_base(14.0),
            receiving_cable: Gain::from_base(0.5),
            receiver_limit: PowerLevel::from_base(-82.0),
        }
    }

    proptest! {
        #[test]
        fn a_decibel_on_the_way_is_a_decibel_of_the_margin(loss in 0.0..150.0_f64, more in 0.0..40.0_f64) {
            let here = link(loss).evaluate().unwrap().margin.base();
            let there = link(loss + more).evaluate().unwrap().margin.base();
            let lost = here - there;
            prop_assert!((lost - more).abs() < 1e-9);
        }
    }

    #[test]
    fn a_way_that_strengthens_is_refused() {
        assert_eq!(link(-1.0).evaluate().unwrap_err().input, "path_loss");
    }
}
