//! How many characters a message of a reader bus has.

use crate::OutOfReach;

/// Start, address, two for the length, control.
const HEADER: u32 = 5;
/// The code of the command or of the answer.
const CODE: u32 = 1;
/// Check characters at the end.
const CHECK: u32 = 2;
/// Security block of a message in the secure channel.
const SECURITY: u32 = 2;
/// Authentication of a message in the secure channel.
const AUTHENTICATION: u32 = 4;
/// Data are encrypted in blocks of so many.
const BLOCK: u32 = 16;
/// Longest message that a device has to take.
const LONGEST: u32 = 1440;

quantity::words! {
    /// Whether a message goes in the secure channel.
    pub enum Channel {
        /// In the clear.
        Clear = "clear",
        /// In the secure channel: encrypted and authenticated.
        Secure = "secure",
    }
}

formula! {
    /// Length of one OSDP message.
    ///
    /// In the secure channel a message carries a security block and four characters of authentication, and its data are
    /// filled up to whole blocks of 16, with at least one character of filling.
    pub struct OsdpFrame = "osdp-frame" in Signal {
        /// Characters of data behind the code of the command or answer.
        data ("n"): u32,
        /// Whether it goes in the secure channel.
        channel ("–"): Channel,
    }
    gives
    /// Length of the message.
    pub struct OsdpFrameLength {
        /// Characters from the start to the last check character.
        characters ("N"): u32,
    }
    formula "N = 5 + 1 + n + 2 (clear)\nN = 5 + 2 + 1 + 16 · ⌈(n + 1) / 16⌉ + 4 + 2 (secure; no block where n is 0)"
    valid "Messages with a check of 16 bits; a marking character before each message is not counted."
    source { work: "SIA OSDP v2.2, packet structure", clause: "", evidence: Seen, seen: "public introduction to the protocol with excerpts, https://doc.osdp.dev/protocol/packet-structure; filling up: memory, the longer" }
    by osdp_frame
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every formula takes its inputs by reference"
)]
fn osdp_frame(frame: &OsdpFrame) -> Result<OsdpFrameLength, OutOfReach> {
    let data = frame.data;
    if data > LONGEST {
        return Err(OutOfReach::new(
            "data",
            "no device has to take a message of more than 1440 characters",
        ));
    }
    let characters = match frame.channel {
        Channel::Clear => HEADER + CODE + data + CHECK,
        Channel::Secure => {
            let blocks = if data == 0 {
                0
            } else {
                (data + 1).div_ceil(BLOCK)
            };
            HEADER + SECURITY + CODE + BLOCK * blocks + AUTHENTICATION + CHECK
        }
    };
    Ok(OsdpFrameLength { characters })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    fn length(data: u32, channel: Channel) -> u32 {
        OsdpFrame { data, channel }.evaluate().unwrap().characters
    }

    #[test]
    fn the_secure_channel_is_always_longer() {
        for data in 0..200 {
            assert!(length(data, Channel::Secure) > length(data, Channel::Clear));
            assert!(length(data + 1, Channel::Secure) >= length(data, Channel::Secure));
        }
    }

    #[test]
    fn no_message_is_that_long() {
        let frame = OsdpFrame {
            data: 5000,
            channel: Channel::Clear,
        };
        assert_eq!(frame.evaluate().unwrap_err().input, "data");
    }
}
