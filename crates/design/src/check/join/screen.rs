//! Where the screen of each data cable is earthed, whether it goes on unbroken, and whether it ties two earths together.
//!
//! Asked of each copper data cable, each cable of a reader bus and each that has a screen. What the papers of the devices ask
//! for counts: one end at low frequency; both ends only where both stand on one bonded earth.

use crate::asking::{Asking, need, pick};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Halt};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Cable, Carries, Medium, ScreenEarth, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-screen",
    codes: BOTH,
    leaves_open: "noise that comes by another way, which the counter of errors tells",
    concerns: "each copper data cable, each cable of a reader bus, each cable with a screen",
    ask,
};

static SCREENS: Source = Source {
    work: "a screen goes on unbroken, is earthed as the devices ask, and at both ends only on one bonded earth",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; ANSI/TIA-607 and EN 50310 go further",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for cable in site.cable.iter().filter(|cable| concerned(site, cable)) {
        round.ask(About::new(&cable.origin, &cable.id), |asking| {
            screen(asking, cable)
        });
    }
}

fn concerned(site: &Site, cable: &Cable) -> bool {
    let fiber = cable
        .channel
        .as_ref()
        .is_some_and(|channel| channel.medium == Some(Medium::Fiber));
    let on_bus = site.bus.iter().any(|bus| bus.cable.contains(&cable.id));
    let data = cable.carries == Some(Carries::Data) && !fiber;
    data || on_bus || cable.screen.is_some() || said(cable) == Some(true)
}

/// Whether the cable has a screen, as far as is written.
fn said(cable: &Cable) -> Option<bool> {
    let channel = cable.channel.as_ref().and_then(|channel| channel.screened);
    channel.or_else(|| cable.jacket.as_ref().and_then(|jacket| jacket.screened))
}

fn screen<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Answer {
    let screened = match said(cable) {
        Some(screened) => Ok(screened),
        None => need!(asking, cable.jacket?.screened, "false").copied(),
    };
    let asked = pick!(asking, cable.screen?.asked);
    let earthed = if screened.unwrap_or(false) {
        earthed(asking, cable).map(Some)
    } else {
        Ok(None)
    };
    let (asked, earthed) = (asked?, earthed?);
    screened?;
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&SCREENS);
    let mut rules = Rules::default();
    let Some(earthed) = earthed else {
        rules.keep(
            asked == ScreenEarth::Nowhere,
            "The devices ask for a screened cable, and this one has no screen.",
        );
        asking.say(|_| {
            rules.says(|| format!("{} has no screen, and its devices ask for none.", cable.id))
        });
        return Ok(rules.outcome());
    };
    judge(&mut rules, asked, &earthed);
    asking.say(|_| {
        rules.says(|| {
            let ends = match earthed.at {
                ScreenEarth::OneEnd => "at one end",
                ScreenEarth::BothEnds => "at both ends, on one bonded earth",
                ScreenEarth::Nowhere => "nowhere",
            };
            format!(
                "The screen of {} goes on unbroken and is earthed {ends}, as its devices ask.",
                cable.id
            )
        })
    });
    Ok(rules.outcome())
}

/// How a screen is earthed.
struct Earthed {
    at: ScreenEarth,
    unbroken: bool,
    one_earth: bool,
}

fn earthed<'s>(asking: &mut Asking<'s>, cable: &'s Cable) -> Result<Earthed, Halt> {
    let at = pick!(asking, cable.screen?.earthed);
    let unbroken = need!(asking, cable.screen?.unbroken, "true").copied();
    let at = at?;
    let one_earth = if at == ScreenEarth::BothEnds {
        need!(asking, cable.screen?.one_earth, "true").copied()
    } else {
        Ok(true)
    };
    Ok(Earthed {
        at,
        unbroken: unbroken?,
        one_earth: one_earth?,
    })
}

fn judge(rules: &mut Rules, asked: ScreenEarth, earthed: &Earthed) {
    rules.keep(
        earthed.unbroken,
        "The screen is broken on the way: carry it through each joint and terminal.",
    );
    rules.keep(
        earthed.one_earth,
        "The screen ties two earths together and carries what flows between them: lift one end.",
    );
    rules.keep(
        asked == ScreenEarth::Nowhere || earthed.at == asked,
        "The screen is not earthed as its devices ask.",
    );
    rules.keep(
        earthed.at != ScreenEarth::Nowhere,
        "The screen is earthed nowhere: it is an aerial.",
    );
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
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[cable]]
        id = "w-10"
        from = "source"
        to = "box"
        carries = "data"
        channel = { medium = "copper", screened = true }
        screen = { asked = "at both ends", earthed = "at both ends", unbroken = true, one_earth = true }
    "#;

    #[test]
    fn holds_at_both_ends_on_one_earth() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn holds_without_a_screen_where_none_is_asked_for() {
        let none = SITE
            .replace("screened = true", "screened = false")
            .replace("asked = \"at both ends\"", "asked = \"nowhere\"");
        assert_eq!(only(&CHECK, &none).verdict, Verdict::Holds);
        let asked = SITE.replace("screened = true", "screened = false");
        assert_eq!(only(&CHECK, &asked).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_broken_between_two_earths_and_at_the_wrong_end() {
        for (from, to) in [
            ("unbroken = true", "unbroken = false"),
            ("one_earth = true", "one_earth = false"),
            ("earthed = \"at both ends\"", "earthed = \"at one end\""),
            ("earthed = \"at both ends\"", "earthed = \"nowhere\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_advice_of_the_device() {
        let bare = SITE.lines().filter(|line| !line.contains("screen = "));
        let bare = bare.collect::<Vec<_>>().join("\n");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }
}
