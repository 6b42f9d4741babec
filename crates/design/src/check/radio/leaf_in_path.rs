//! Whether the leaf in any position, the ground, posts or a parked truck stand in the way of a radio link.
//!
//! A wave takes up a spindle around the straight line: 60 % of the radius of its first Fresnel zone is to be free everywhere.
//! The leaf is looked at closed, half way and open, and counts as solid. Where it is in the way the finding says how much the
//! antenna at the gate has to go up.

use super::ends::{distance, ends, frequency, place};
use super::in_path::{Line, things};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{FresnelRadius, KnifeEdgeLoss};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{RadioLink, RadioLinkKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "radio-leaf-in-path",
    codes: BOTH,
    leaves_open: "chain-link, mesh and bars beside the leaf, which pass part of a wave, and what grows or is built later; foliage and rain are counted in the margin of the link",
    concerns: "each radio bridge",
    ask,
};

static SHARE: Source = Source {
    work: "60 % of the first Fresnel zone kept free",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "rule of radio planning; an edge there takes nothing by ITU-R P.526",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let bridges = site.radio_link.iter();
    for link in bridges.filter(|link| link.kind == RadioLinkKind::Bridge) {
        round.ask(About::new(&link.origin, &link.id), |asking| {
            in_path(asking, site, link)
        });
    }
}

fn in_path<'s>(asking: &mut Asking<'s>, site: &'s Site, link: &'s RadioLink) -> Answer {
    asking.rest_on(&SHARE);
    let frequency = frequency(asking, site, link);
    let places = ends(asking, link).and_then(|[near, far]| {
        let (from, to) = (place(asking, near), place(asking, far));
        Ok((from?, to?))
    });
    let things = things(asking, site, link);
    let (frequency, (from, to), things) = (frequency?, places?, things?);
    let line = Line {
        from,
        to,
        frequency,
    };
    let whole = Length::from_base(distance(from, to));
    let Some(tight) = line.worst(&things) else {
        asking.say(|print| format!("Over {} nothing stands in the way.", print.q(whole)));
        return Ok(Outcome::Rule(true));
    };
    let level = (to[0] - from[0]).hypot(to[1] - from[1]);
    let (near, far) = (
        Length::from_base(tight.along),
        Length::from_base(level - tight.along),
    );
    let zone = asking.work(&FresnelRadius {
        frequency,
        near,
        far,
    })?;
    let wanted = zone.radius * 0.6;
    let room = Length::from_base(tight.room);
    let clear = room >= wanted;
    let raise = line.raise(&things);
    let lost = asking.work(&KnifeEdgeLoss {
        frequency,
        near,
        far,
        height: -room,
    })?;
    asking.say(|print| {
        let along = print.q(near);
        if clear {
            return format!(
                "Over {} the tightest place is {along} along, at {}: {} free from the line, and {} are wanted.",
                print.q(whole),
                tight.name.trim_end_matches(','),
                print.q(room),
                print.q(wanted)
            );
        }
        let cut = if tight.room < 0.0 {
            format!("stands in the line by {}", print.q(-room))
        } else {
            format!("leaves {}", print.q(room))
        };
        format!(
            "{along} along, {} {cut} where {} are wanted, which takes {} from the signal; the antenna at the gate would have to go up by {}, to {}, or move aside.",
            tight.name,
            print.q(wanted),
            print.q(lost.loss),
            print.q(Length::from_base(raise)),
            print.q(Length::from_base(from[2] + raise))
        )
    });
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new("room that the wave wants", wanted),
        Labeled::new("room that is left", room),
    )))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_swing};

    const SITE: &str = short_swing!(
        r#"
        [[device]]
        id = "bridge"
        kind = "radio"
        frequency = "5.6 GHz"
        [[radio_link]]
        id = "house"
        kind = "bridge"
        ground = [["1.5 m", "90 m", "1 m"]]
        near = { device = "bridge", at = ["1.5 m", "-3 m", "3.5 m"] }
        far = { at = ["1.5 m", "180 m", "6 m"] }
    "#
    );

    #[test]
    fn holds_over_the_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_the_leaf_and_says_how_high_to_go() {
        let low = SITE.replace("\"3.5 m\"", "\"1.2 m\"");
        let finding = only(&CHECK, &low);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("leaf"), "{}", finding.sentence);
        assert!(
            finding.sentence.contains("go up by"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_over_a_rise_of_the_ground_and_behind_a_truck() {
        let hill = SITE.replace("\"1 m\"]]", "\"5 m\"]]");
        let finding = only(&CHECK, &hill);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("ground"), "{}", finding.sentence);
        let truck = format!(
            "{}\nparked = [{{ vehicle = \"truck\", at = [\"1.5 m\", \"20 m\", \"0 m\"] }}]\n[[vehicle]]\nid = \"truck\"\nwhat = \"truck\"\nlength = \"9 m\"\nwidth = \"2.5 m\"\nheight = \"3.9 m\"\n",
            SITE.trim_end()
        );
        let finding = only(&CHECK, &truck);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("truck"), "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_antennas_and_ground() {
        let bare = SITE
            .replace("ground = [[\"1.5 m\", \"90 m\", \"1 m\"]]", "")
            .replace("far = { at = [\"1.5 m\", \"180 m\", \"6 m\"] }", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
