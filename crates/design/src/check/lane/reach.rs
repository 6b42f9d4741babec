//! Whether the driver of each vehicle reaches a head at the pedestal from the window.
//!
//! A hand reaches so far out of an open window; the way to a head that is higher or lower than the window is longer than the
//! gap. Each vehicle has to reach one head, from the side on which its driver sits, or says how it is let in without.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{Lane, LanePedestal, PedestalHead, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-reach",
    codes: BOTH,
    leaves_open: "drivers with short arms, stiff shoulders or gloves, screens that cannot be read in the sun, and vehicles that nobody has named",
    concerns: "each lane with each vehicle that is expected",
    ask,
};

static ARM: Source = Source {
    work: "reach of a driver's hand out of the open window",
    clause: "20 in",
    evidence: Evidence::CommonPractice,
    seen: "habit of the trade; window heights differ from 40 in to 98 in, measured by a pedestal maker (address withheld)",
};

static LET_IN: Source = Source {
    work: "whoever is let in without reaching needs no head at the window",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "tags, remotes and plates are read from the vehicle",
};

static REACH: Source = Source {
    work: "straight way from the window to the head",
    clause: "",
    evidence: Evidence::Physics,
    seen: "Pythagoras on gap and difference of height",
};

/// How far a hand reaches where nobody taped it: 20 in.
const USUAL: f64 = 20.0 * 0.0254;

/// How what drivers reach for is written.
const PEDESTAL: &str = "{ head = [{ device = \"keypad-entry\", height = \"42 in\" }], side = \"left\", gap = \"14 in\", stays_put = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        let among = (site.lane.len() > 1).then_some(&lane.id);
        for vehicle in &site.vehicle {
            round.ask(
                About::passing(&vehicle.origin, &vehicle.id, among),
                |asking| reach(asking, lane, vehicle),
            );
        }
    }
}

fn reach<'s>(asking: &mut Asking<'s>, lane: &'s Lane, vehicle: &'s Vehicle) -> Answer {
    let driver = vehicle.driver.as_ref();
    if let Some(how) = driver.and_then(|driver| driver.let_in_by.as_ref()) {
        asking.rest_on(&LET_IN);
        asking.say(|_| format!("{} reaches for nothing: {how}.", capital(vehicle)));
        return Ok(Outcome::Rule(true));
    }
    asking.rest_on(&REACH);
    let pedestal = asking.need(&lane.origin, "pedestal", lane.pedestal.as_ref(), PEDESTAL);
    let window = read!(asking, vehicle.driver?.window);
    let sits = pick!(asking, vehicle.driver?.side);
    let pedestal: &LanePedestal = pedestal?;
    let stands = pick!(asking, pedestal.side);
    let gap = read!(asking, pedestal.gap);
    let stays = told(asking, &pedestal.origin, "stays_put", pedestal.stays_put);
    let arm = asking.read_if_there(&pedestal.origin, "reach", pedestal.reach.as_ref());
    let heads = heads(asking, pedestal);
    let (window, sits, stands, gap, stays) = (window?, sits?, stands?, gap?, stays?);
    let arm = arm.unwrap_or_else(|| {
        asking.rest_on(&ARM);
        Length::from_base(USUAL)
    });
    let way = |height: Length| gap.base().hypot(height.base() - window.base());
    let nearest = heads?
        .into_iter()
        .min_by(|one, other| way(one.1).total_cmp(&way(other.1)));
    let Some((head, height)) = nearest else {
        return asking.lack(
            &pedestal.origin,
            "heads",
            Wants::Written("[\"keypad-entry\"]"),
        );
    };
    let way = Length::from_base(way(height));
    let right_side = sits == stands;
    asking.say(|print| {
        let side = if right_side {
            String::new()
        } else {
            format!(
                " But the driver sits on the {} and the pedestal stands on the {}: a head on that side, or a tag, is missing.",
                sits.word(),
                stands.word()
            )
        };
        let rolls = if stays { "" } else { " A car rolls there with the foot off the brake." };
        format!(
            "From the window of {}, {} up, it is {} to {} at {}; a hand reaches {}.{side}{rolls}",
            vehicle.id,
            print.q(window),
            print.q(way),
            head.device,
            print.q(height),
            print.q(arm)
        )
    });
    if !right_side || !stays {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new("way to the nearest head", way),
        Labeled::new("reach out of the window", arm),
    )))
}

/// The faces with their heights above the ground on which vehicles stop.
fn heads<'s>(
    asking: &mut Asking<'s>,
    pedestal: &'s LanePedestal,
) -> Result<Vec<(&'s PedestalHead, Length)>, Halt> {
    let heads: Vec<_> = pedestal
        .head
        .iter()
        .map(|head| read!(asking, head.height).map(|height| (head, height)))
        .collect();
    heads.into_iter().collect()
}

fn capital(vehicle: &Vehicle) -> String {
    crate::plain::capitalized(vehicle.id.as_str())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "keypad"
        kind = "keypad"
        [[lane]]
        id = "drive"
        pedestal = { head = [{ device = "keypad", height = "42 in" }], side = "left", gap = "15 in", stays_put = true }
        [[vehicle]]
        id = "car"
        what = "car"
        driver = { side = "left", window = "44 in" }
    "#;

    #[test]
    fn holds_for_a_car() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let way = finding.demand.unwrap().value.unwrap();
        assert!((way / 0.0254 - 15.0_f64.hypot(2.0)).abs() < 1e-9);
    }

    #[test]
    fn fails_for_a_truck_for_the_other_side_and_on_a_hill() {
        for (from, to) in [
            ("\"44 in\"", "\"98 in\""),
            ("driver = { side = \"left\"", "driver = { side = \"right\""),
            ("stays_put = true", "stays_put = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn holds_without_reaching() {
        let tag = SITE.replace(
            "window = \"44 in\"",
            "let_in_by = \"tag on the windshield\"",
        );
        assert_eq!(only(&CHECK, &tag).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_window_and_gap() {
        let bare = SITE
            .replace(", window = \"44 in\"", "")
            .replace(", gap = \"15 in\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }
}
