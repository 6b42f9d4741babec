//! What is heavy on the job, and how it is lifted.

use crate::{Id, Text};
use quantity::{Angle, Force, Frequency, Length, Mass, Measured};

site_words! {
    /// How well hands hold a load.
    pub enum HandHold {
        /// Handles or hand-holds of good shape.
        Good = "good",
        /// Poorer handles, or fingers bent under the load.
        Fair = "fair",
        /// Bulky, slippery or limp, without handles.
        Poor = "poor",
    }
}

site_words! {
    /// How long lifting goes on in a day, with rest between.
    pub enum LiftingTime {
        /// Up to an hour.
        Hour = "up to 1 hour",
        /// Up to two hours.
        TwoHours = "up to 2 hours",
        /// Up to eight hours.
        EightHours = "up to 8 hours",
    }
}

record! {
    /// Something heavy that is lifted on this job.
    pub struct Lift {
        /// Name of the lift, unique on the site.
        id: Id,
        /// What is lifted: `"operator out of the van"`.
        what: Text,
        /// Mass of it.
        mass: Option<Measured<Mass>>,
        /// Distance of the hands ahead of the ankles.
        reach: Option<Measured<Length>>,
        /// Height of the hands where the lift begins.
        start_height: Option<Measured<Length>>,
        /// Height of the hands where it ends.
        end_height: Option<Measured<Length>>,
        /// Angle by which the load lies to the side.
        turn: Option<Measured<Angle>>,
        /// Lifts each minute, over a quarter of an hour; a lift now and then counts as one in five minutes.
        pace: Option<Measured<Frequency>>,
        /// How long lifting goes on in a day.
        duration: Option<LiftingTime>,
        /// How well the hands hold it.
        hold: Option<HandHold>,
        /// What lifts it, or helps: hoist, cart, second person.
        with: Option<Text>,
        /// Load that this gear is rated for.
        gear_rating: Option<Measured<Mass>>,
        /// Force that starts it where it is pushed or pulled, by a scale.
        start_push: Option<Measured<Force>>,
        /// Force that keeps it moving, by a scale.
        keep_push: Option<Measured<Force>>,
        /// Way over which it is carried.
        carried: Option<Measured<Length>>,
    }
}
