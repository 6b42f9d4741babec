//! Force with which a person may be asked to push or pull.

use super::slope::GRAVITY;
use crate::OutOfReach;
use crate::table::{Cell, Stored, Table};
use quantity::{Force, Quantity as _, Word as _};
use std::sync::LazyLock;

quantity::words! {
    /// Who pushes or pulls.
    pub enum Pusher {
        /// Men.
        Men = "men",
        /// Women; also the figure for whoever may be the weakest.
        Women = "women",
    }
}

formula! {
    /// Guide forces for a person who pushes or pulls by hand: to start or stop a load, and to keep it moving.
    ///
    /// Hands between knuckle and shoulder height, firm footing, up to about 20 m. They are a filter, not a limit for
    /// everybody: children, old and ill people have less.
    pub struct PushPullGuide = "push-pull-guide" in Motion {
        /// Who pushes or pulls.
        who ("–"): Pusher,
    }
    gives
    /// Guide forces.
    pub struct HandForces {
        /// Force to start or stop.
        start ("Fs"): Force,
        /// Force to keep it moving.
        keep ("Fk"): Force,
    }
    formula "Fs and Fk from the table, in kgf"
    valid "Hands between knuckle and shoulder, up to 20 m, no obstacles; standing on firm ground."
    source { work: "HSE L23, guidance on manual handling", clause: "pushing and pulling guide forces", evidence: Seen, seen: "HSE pushing and pulling assessment page: http://www.hse.gov.uk/msd/pushpull/assessment.htm" }
    by push_pull_guide
}

static GUIDE: Stored = LazyLock::new(|| Table::read(include_str!("push_pull_guide.toml")));

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "every calculation takes its inputs by reference"
)]
fn push_pull_guide(asked: &PushPullGuide) -> Result<HandForces, OutOfReach> {
    let table = Table::of(&GUIDE)?;
    let row = table
        .rows
        .iter()
        .find(|row| row.first().and_then(Cell::words) == Some(asked.who.word()));
    let force = |place: usize| {
        let kilograms = row.and_then(|row| row.get(place)).and_then(Cell::number);
        kilograms.map(|kilograms| Force::from_base(kilograms * GRAVITY))
    };
    match (force(1), force(2)) {
        (Some(start), Some(keep)) => Ok(HandForces { start, keep }),
        _ => Err(OutOfReach::new(
            "who",
            "the table has no row for this person",
        )),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;

    #[test]
    fn keeping_takes_no_more_than_starting_and_women_are_given_no_more_than_men() {
        let [men, women] =
            [Pusher::Men, Pusher::Women].map(|who| PushPullGuide { who }.evaluate().unwrap());
        assert!(men.keep <= men.start && women.keep <= women.start);
        assert!(women.start <= men.start && women.keep <= men.keep);
    }
}
