//! From where a hand remote works: far enough with a tired cell, and no farther than the gate is seen from.
//!
//! What was tried on site comes first; without it the reach is reckoned over level ground, with 20 dB kept for the hand, the
//! car around it and waves that put each other out. Where it works from beyond the sight of the gate, the gate has to be
//! protected as one that moves with nobody watching.

use super::legal::{REMOTE_RADIO, heard_at};
use crate::asking::{Asking, read};
use crate::check::control::automatic::protected;
use crate::check::control::belongs;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::RadioRange;
use formula::{Evidence, Source};
use quantity::{Frequency, Gain, Length, Quantity as _};
use site::{Remote, RemoteKind, RemoteRadio, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "radio-remote-range",
    codes: BOTH,
    leaves_open: "noise that comes later: a lamp, a charger or a neighbor's remote on the channel; walk and drive it again at each visit",
    concerns: "each hand remote",
    ask,
};

static KEPT: Source = Source {
    work: "20 dB kept between reckoned and real reach of a hand remote",
    clause: "hand, pocket, car body, waves that put each other out",
    evidence: Evidence::CommonPractice,
    seen: "habit of radio planning",
};

/// What is kept between reckoned and real reach, in decibels.
const HAND: f64 = 20.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for remote in site
        .remote
        .iter()
        .filter(|remote| remote.by == RemoteKind::Fob)
    {
        round.ask(About::new(&remote.origin, &remote.id), |asking| {
            range(asking, site, remote)
        });
    }
}

fn range<'s>(asking: &mut Asking<'s>, site: &'s Site, remote: &'s Remote) -> Answer {
    let radio = asking.need(&remote.origin, "radio", remote.radio.as_ref(), REMOTE_RADIO)?;
    let wanted = read!(asking, radio.wanted);
    let seen = read!(asking, radio.seen_from);
    let tried = asking.read_if_there(
        &radio.origin,
        "tired_works_from",
        radio.tired_works_from.as_ref(),
    );
    let fresh = asking.read_if_there(&remote.origin, "works_from", remote.works_from.as_ref());
    let (fresh, tired) = match (fresh, tried) {
        (Some(fresh), Some(tired)) => (Ok(fresh), Ok(tired)),
        _ => match reckoned(asking, site, (remote, radio)) {
            Ok((new, old)) => (Ok(fresh.unwrap_or(new)), Ok(tried.unwrap_or(old))),
            Err(halt) => (Err(halt), Err(halt)),
        },
    };
    let (wanted, seen, fresh, tired) = (wanted?, seen?, fresh?, tired?);
    let useful = Comparison::at_most(
        Labeled::new("reach that is wanted", wanted),
        Labeled::new("reach with a tired cell", tired),
    );
    let in_view = Comparison::at_most(
        Labeled::new("reach with a new cell", fresh),
        Labeled::new("place from which the gate is seen", seen),
    );
    let watched = in_view.holds();
    let outcome = if watched {
        Outcome::worst([useful, in_view]).ok_or(Halt)?
    } else {
        let mut gates = site.gate.iter();
        let gate = gates.find(|gate| belongs(site, gate, remote.gate.as_ref()));
        let covered = match gate {
            Some(gate) => protected(asking, site, gate)?,
            None => Outcome::Rule(false),
        };
        if useful.holds() {
            covered
        } else {
            Outcome::Compared(useful)
        }
    };
    asking.say(|print| {
        let view = if watched {
            "never beyond the sight of it".to_owned()
        } else {
            format!(
                "beyond the {} from which the gate is seen, so that the gate has to be protected as one that runs by itself",
                print.q(seen)
            )
        };
        format!(
            "With a tired cell it works from {}, and {} are wanted; with a new one from {}, {view}.",
            print.q(tired),
            print.q(wanted),
            print.q(fresh)
        )
    });
    Ok(outcome)
}

/// Reach with a new and with a tired cell, as reckoned.
fn reckoned<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (remote, radio): (&'s Remote, &'s RemoteRadio),
) -> Result<(Length, Length), Halt> {
    asking.rest_on(&KEPT);
    let frequency = heard_at(asking, site, remote);
    let radiated = read!(asking, radio.radiated);
    let tired = read!(asking, radio.tired_loss);
    let held = read!(asking, radio.held_at);
    let antenna = read!(asking, radio.antenna_height);
    let gain = read!(asking, radio.receiver_gain);
    let limit = read!(asking, radio.receiver_limit);
    let noise = read!(asking, radio.noise);
    let (frequency, heights) = (frequency?, (held?, antenna?));
    let spare = radiated?.base() + gain?.base() - limit?.base() - noise?.base() - HAND;
    let new = reach(asking, frequency, spare, heights)?;
    let old = reach(asking, frequency, spare - tired?.base(), heights)?;
    Ok((new, old))
}

fn reach(
    asking: &mut Asking<'_>,
    frequency: Frequency,
    spare: f64,
    (first_height, second_height): (Length, Length),
) -> Result<Length, Halt> {
    let reach = asking.work(&RadioRange {
        frequency,
        allowed_loss: Gain::from_base(spare),
        first_height,
        second_height,
    })?;
    Ok(reach.range)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
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
        [[device]]
        id = "receiver"
        kind = "radio"
        frequency = "433.92 MHz"
        [[remote]]
        id = "fobs"
        by = "fob"
        through = "receiver"
        works_from = "80 m"
        radio = { wanted = "20 m", seen_from = "100 m", tired_works_from = "45 m" }
    "#;

    #[test]
    fn holds_as_it_was_tried() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_as_it_was_reckoned() {
        let reckoned = SITE.replace("works_from = \"80 m\"", "").replace(
            "tired_works_from = \"45 m\"",
            "radiated = \"-14.4 dBm\", tired_loss = \"3 dB\", held_at = \"1 m\", antenna_height = \"2 m\", receiver_gain = \"-5 dB\", receiver_limit = \"-100 dBm\", noise = \"0 dB\"",
        );
        let finding = only(&CHECK, &reckoned);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("46.29"), "{}", finding.sentence);
    }

    #[test]
    fn fails_where_it_does_not_reach_or_reaches_out_of_sight_of_a_bare_gate() {
        let short = SITE.replace("\"45 m\"", "\"15 m\"");
        assert_eq!(only(&CHECK, &short).verdict, Verdict::Fails);
        let beyond = SITE
            .replace("\"100 m\"", "\"60 m\"")
            .replace("[[device]]", "[[device]]\n        id = \"beam\"\n        kind = \"through-beam photo-eye\"\n        protection = \"B1\"\n        guards = [\"opening\"]\n        monitored = true\n        [[operator]]\n        id = \"drive\"\n        gate = \"main\"\n        inherent_sensing = true\n        [[device]]");
        let finding = only(&CHECK, &beyond);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_what_is_wanted() {
        let bare = SITE.replace("wanted = \"20 m\", seen_from = \"100 m\", ", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }
}
