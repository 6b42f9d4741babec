//! Whether each call ends in an answer, or in words that say what to do, within the set time, at any hour.
//!
//! An answer that opens the gate from afar moves it with nobody watching: the gate is then asked as one that runs by itself.

use crate::asking::{Asking, Wants, need, read};
use crate::check::control::automatic::protected;
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Comparison, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Answering, Device, DeviceKind, GateView, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "intercom-answered",
    codes: BOTH,
    leaves_open: "whether somebody who answers asks who calls, phones that are flat or out of reach, and numbers that change",
    concerns: "each intercom",
    ask,
};

static ANSWER: Source = Source {
    work: "a caller is answered or told what to do",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "who waits at a gate in the dark backs out onto the road",
};

/// How the answering of calls is written.
const ANSWERING: &str = "answering = { order = [\"office\", \"yard master's phone\"], ring_time = \"20 s\", within = \"60 s\", fallback = \"says: call the number on the sign\", at_all_hours = true, opens_by = \"phone-office\", paid_by = \"owner\", tested = 2026-06-15 }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let stations = site
        .device
        .iter()
        .filter(|device| device.kind == DeviceKind::Intercom);
    for device in stations {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let Some(answering) = &device.answering else {
                return asking.lack(&device.origin, "answering", Wants::Table(ANSWERING));
            };
            answered(asking, site, device, answering)
        });
    }
}

fn answered<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    answering: &'s Answering,
) -> Answer {
    asking.rest_on(&ANSWER);
    let order = asking.need(
        &answering.origin,
        "order",
        answering.order.first(),
        "[\"office\", \"yard master's phone\"]",
    );
    let ring = read!(asking, answering.ring_time);
    let within = read!(asking, answering.within);
    let fallback = need!(
        asking,
        answering.fallback,
        "\"says: call the number on the sign\""
    );
    let hours = told(
        asking,
        &answering.origin,
        "at_all_hours",
        answering.at_all_hours,
    );
    let paid = need!(asking, answering.paid_by, "\"owner\"");
    let tested = need!(asking, answering.tested, "2026-06-15");
    let unwatched = opens_unwatched(site, answering);
    let protected = if unwatched {
        gate_of(asking, site, device).and_then(|gate| protected(asking, site, gate))
    } else {
        Ok(Outcome::Rule(true))
    };
    let (ring, within, fallback, hours) = (ring?, within?, fallback?, hours?);
    let (_, paid, _, protected) = (order?, paid?, tested?, protected?);
    let rung = u32::try_from(answering.order.len()).unwrap_or(u32::MAX);
    let longest = ring * f64::from(rung);
    let mut rules = Rules::default();
    rules.keep(holds(&protected), "Whoever answers opens from afar, and the gate is not protected for moving with nobody watching: take the opening off that phone, or protect the gate.");
    rules.compare(Comparison::at_most(
        Labeled::new("everybody on the list rung, one after the other", longest),
        Labeled::new("time within which a caller knows", within),
    ));
    let names: Vec<String> = answering.order.iter().map(ToString::to_string).collect();
    asking.say(|print| {
        rules.says(|| {
            format!(
                "{} rings {}; after {} at the latest the caller hears: {fallback}. {} Paid by {paid}.",
                device.id,
                and(&names),
                print.q(longest),
                if hours {
                    "Somebody answers at all hours."
                } else {
                    "At night and on holidays nobody answers, so these words are what a caller has."
                }
            )
        })
    });
    Ok(rules.outcome())
}

/// The outcome of another question holds as the values are.
fn holds(outcome: &Outcome) -> bool {
    match outcome {
        Outcome::Compared(comparison) => comparison.holds(),
        Outcome::Rule(kept) => *kept,
        Outcome::Figure(_) => true,
    }
}

/// An answer opens the gate without the whole of it in view.
fn opens_unwatched(site: &Site, answering: &Answering) -> bool {
    let by = site
        .remote
        .iter()
        .find(|remote| Some(&remote.id) == answering.opens_by.as_ref());
    by.is_some_and(|remote| remote.view != Some(GateView::Whole))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        use_type = "3"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        inherent_sensing = true
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
        monitored = true
        [[device]]
        id = "intercom"
        kind = "intercom"
        answering = { order = ["house", "owner's phone"], ring_time = "20 s", within = "45 s", fallback = "says the number to call", at_all_hours = true, opens_by = "phone", paid_by = "owner", tested = 2026-06-15 }
        [[remote]]
        id = "phone"
        by = "phone"
        through = "intercom"
        does = ["open"]
        holder = "owner"
        view = "by camera"
    "#;

    #[test]
    fn holds_with_an_answer_in_time() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_too_late_and_with_an_opening_that_is_not_protected() {
        let late = SITE.replace("\"20 s\"", "\"30 s\"");
        assert_eq!(only(&CHECK, &late).verdict, Verdict::Fails);
        let blind = SITE.replace("guards = [\"closing\"]", "guards = [\"opening\"]");
        let finding = only(&CHECK, &blind);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let speaks_only = blind.replace(" opens_by = \"phone\",", "");
        assert_eq!(only(&CHECK, &speaks_only).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_words_for_a_caller_whom_nobody_answers() {
        let silent = SITE.replace(" fallback = \"says the number to call\",", "");
        assert_eq!(only(&CHECK, &silent).verdict, Verdict::UnknownUntil);
    }
}
