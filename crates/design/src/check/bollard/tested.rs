//! A bollard that was tested, against the rating that the owner wants and the room behind it.

use crate::asking::{Asking, pick, read};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use formula::standing::{BarrierRating, PenetrationRating, VehicleTestClass};
use quantity::{Energy, Word as _};
use site::{BarrierTest, Bollard};

/// The test report against what is wanted: energy of the test vehicle, and how far it may come.
pub(super) fn tested<'s>(
    asking: &mut Asking<'s>,
    bollard: &'s Bollard,
    wanted: BarrierTest,
) -> Answer {
    let test = pick!(asking, bollard.test);
    let distance = read!(asking, bollard.test_penetration);
    let room = read!(asking, bollard.clear_behind);
    let (test, distance, room) = (test?, distance?, room?);
    let wants = energy(asking, wanted)?;
    let shows = energy(asking, test)?;
    let rated = asking.work(&PenetrationRating { distance })?;
    asking.say(|print| {
        format!(
            "{} is wanted as {}, a test vehicle of {}; its report shows {}, {}. The test vehicle came {}, a rating of {}: up to {}; {} are kept clear behind it.",
            capitalized(bollard.id.as_str()),
            wanted.word(),
            print.q(wants),
            test.word(),
            print.q(shows),
            print.q(distance),
            rated.rating.word(),
            print.q(rated.limit),
            print.q(room)
        )
    });
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("energy of the wanted test", wants),
            Labeled::new("energy of the test in the report", shows),
        ),
        Comparison::at_most(
            Labeled::new("how far a vehicle may come by its rating", rated.limit),
            Labeled::new("room kept clear behind it", room),
        ),
    ])
    .ok_or(Halt)
}

fn energy(asking: &mut Asking<'_>, test: BarrierTest) -> Result<Energy, Halt> {
    let Some(rating) = BarrierRating::from_word(test.word()) else {
        return asking.refuse("no figures are printed for this test");
    };
    asking
        .work(&VehicleTestClass { rating })
        .map(|vehicle| vehicle.energy)
}
