//! Calls at a gate: what is heard, what is seen, and who answers.

use crate::{Date, Id, Text};
use quantity::{Length, Measured, Time};

site_words! {
    /// What a caller wants to know of a call and of the gate.
    pub enum CallState {
        /// The call goes out.
        Calling = "calling",
        /// It is answered.
        Answered = "answered",
        /// The gate is open.
        Open = "gate open",
        /// The gate is about to close.
        Closing = "about to close",
    }
}

record! {
    /// What a device tells people.
    pub struct Signals {
        /// States that it shows by light, text or symbol.
        by_light: Vec<CallState>,
        /// States that it gives by sound.
        by_sound: Vec<CallState>,
        /// It has text or symbols beside the voice.
        text: Option<bool>,
    }
}

record! {
    /// What is heard over an intercom. Sound levels are decibels (A), as a meter shows them, in whole numbers.
    pub struct Speech {
        /// Level of its loudspeaker at 1 m, by its data sheet.
        speaker_decibels: Option<u32>,
        /// From its loudspeaker and microphone to the head of whoever calls, at the farthest.
        distance: Option<Measured<Length>>,
        /// Noise at that head in the worst hour: an engine idling, rain, wind.
        noise_decibels: Option<u32>,
        /// Noise that its microphone hears in the same hour, behind its cover.
        microphone_noise_decibels: Option<u32>,
        /// Level of the caller's voice at 1 m.
        voice_decibels: Option<u32>,
        /// From the lips at one end to the ear at the other.
        delay: Option<Measured<Time>>,
        /// Neither echo nor howl at the volume that is set: tried both ways.
        echo_free: Option<bool>,
    }
}

record! {
    /// Who answers the calls of an intercom.
    pub struct Answering {
        /// Who is called, in order: `["office", "yard master's phone"]`.
        order: Vec<Text>,
        /// How long each of them is rung.
        ring_time: Option<Measured<Time>>,
        /// Within which a caller has an answer, or knows what to do.
        within: Option<Measured<Time>>,
        /// What a caller hears when nobody answers, and what it tells them to do.
        fallback: Option<Text>,
        /// Somebody on the list answers at night and on holidays.
        at_all_hours: Option<bool>,
        /// The way by which an answer opens, among those that work from afar; no such line where an answer opens nothing.
        opens_by: Option<Id>,
        /// Who pays for the line or account.
        paid_by: Option<Text>,
        /// Day of the last test call to each at an odd hour.
        tested: Option<Date>,
    }
}
