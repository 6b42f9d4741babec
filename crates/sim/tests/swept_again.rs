//! A search for the best line that knows another one finds what one finds that knows nothing.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::swept_world::{course, entrance, semi, spot, truck};
use proptest::prelude::*;
use quantity::{Length, Quantity as _};
use sim::swept::{Place, Rig, Searched};

fn m(length: f64) -> Length {
    Length::from_base(length)
}

fn search(rig: &Rig, place: &Place, known: Option<&Searched>) -> Searched {
    let how = (m(0.3), m(0.02));
    rig.search(&course(), place, how, known).unwrap()
}

/// The entrance with some of its posts pulled back from the way, so that lines of every kind are found.
fn place(pulled: f64) -> Place {
    let mut place = entrance();
    for one in &mut place.obstacles {
        for end in &mut one.ends {
            let by = if end.x.base() < 3.5 { -pulled } else { pulled };
            end.x += m(by);
        }
    }
    place
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn what_is_known_of_another_place_never_shows(
        is_long in any::<bool>(),
        pulled in 0.0_f64..3.0,
        moves in prop::collection::vec((0_usize..64, -8.0_f64..8.0, -8.0_f64..8.0, any::<bool>()), 1..5),
    ) {
        let rig = if is_long { semi() } else { truck() };
        let mut place = place(pulled);
        let mut known = search(&rig, &place, None);
        for (which, x, y, is_put) in moves {
            let index = which % place.obstacles.len();
            let one = &mut place.obstacles[index];
            let by = spot(x, y);
            for end in &mut one.ends {
                if is_put {
                    *end = by;
                } else {
                    end.x += by.x / 10.0;
                    end.y += by.y / 10.0;
                }
            }
            let again = search(&rig, &place, Some(&known));
            let fresh = search(&rig, &place, None);
            prop_assert_eq!(again.found(), fresh.found());
            known = again;
        }
    }
}

#[test]
fn a_search_of_another_rig_or_beside_other_things_tells_nothing() {
    let place = place(1.0);
    let known = search(&truck(), &place, None);
    assert_eq!(
        search(&semi(), &place, Some(&known)).found(),
        search(&semi(), &place, None).found()
    );
    let mut fewer = place.clone();
    fewer.obstacles.truncate(4);
    fewer.edges.pop();
    assert_eq!(
        search(&truck(), &fewer, Some(&known)).found(),
        search(&truck(), &fewer, None).found()
    );
}
