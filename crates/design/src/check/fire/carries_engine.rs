//! Whether what is covered or buried in a fire lane carries the engine.
//!
//! Covers, the fixing of a ground track and the covers of underground drives against the heaviest wheel; conduits under
//! the lane against the cover that they need there. Where nothing is known of the engine, a site in the United States
//! counts on the heaviest axle that an emergency vehicle may have there.

use super::apparatus::{comes_or_asked, wheel};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Force, Length, Quantity as _};
use site::{CodeBasis, Conduit, Cover, GateKind, Site, Track};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "fire-carries-engine",
    codes: BOTH,
    leaves_open: "outriggers of ladder trucks, paving and trenches, sleeves of bollards that come out, and what the mark of a cover class means: read the wheel load off its sheet, for the classes of EN 124 and SCTE 77 are known here from memory only",
    concerns: "each cover, track, drive box and conduit where fire engines drive",
    ask,
};

/// Least cover of a conduit under driveways, in meters: 24 in, and what is remembered for Europe.
const COVER: (f64, f64) = (0.6096, 0.6);

static BURIED: Source = Source {
    work: "NFPA 70",
    clause: "table 300.5: 24 in under streets, roads, driveways and parking lots",
    evidence: Evidence::Seen,
    seen: "https://up.codes/s/underground-installations",
};

static BURIED_EUROPE: Source = Source {
    work: "IEC 60364-5-52 and local practice: 0.6 m under drives",
    clause: "",
    evidence: Evidence::Memory,
    seen: "not seen",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !comes_or_asked(site, round) {
        return;
    }
    for one in &site.cover {
        if one.under_wheels != Some(false) {
            round.ask(About::new(&one.origin, &one.id), |asking| {
                cover(asking, site, one)
            });
        }
    }
    for gate in site
        .gate
        .iter()
        .filter(|gate| gate.kind == GateKind::TrackSlide)
    {
        if let Some(rail) = &gate.track {
            round.ask(About::new(&rail.origin, &gate.id), |asking| {
                track(asking, site, rail)
            });
        }
    }
    for operator in &site.operator {
        if operator.drive_box.is_some() {
            round.ask(About::new(&operator.origin, &operator.id), |asking| {
                let rated = read!(asking, operator.drive_box?.cover_rating);
                carries(
                    asking,
                    site,
                    (format!("The cover of {}", operator.id), rated),
                )
            });
        }
    }
    for conduit in site
        .conduit
        .iter()
        .filter(|one| one.under_lane == Some(true))
    {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            buried(asking, site, conduit)
        });
    }
}

fn cover<'s>(asking: &mut Asking<'s>, site: &'s Site, cover: &'s Cover) -> Answer {
    let rolled = asking.need(
        &cover.origin,
        "under_wheels",
        cover.under_wheels.as_ref(),
        "true",
    );
    let rated = read!(asking, cover.rated_load);
    rolled?;
    carries(asking, site, (format!("Cover {}", cover.id), rated))
}

fn track<'s>(asking: &mut Asking<'s>, site: &'s Site, track: &'s Track) -> Answer {
    let rated = read!(asking, track.rated_wheel_load);
    carries(asking, site, ("The fixing of the track".to_owned(), rated))
}

fn carries<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (what, rated): (String, Result<Force, Halt>),
) -> Answer {
    let wheel = wheel(asking, site);
    let (wheel, rated) = (wheel?, rated?);
    asking.rest_on(&DATA_SHEET);
    asking.say(|print| {
        format!(
            "{what} carries a wheel of {}; the engine brings {}.",
            print.q(rated),
            print.q(wheel)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("wheel of the engine", wheel),
        Labeled::new("wheel that it carries", rated),
    ))
}

fn buried<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    let depth = read!(asking, conduit.burial_depth)?;
    let (source, least) = match site.site.code_basis {
        CodeBasis::Us => (&BURIED, COVER.0),
        CodeBasis::Eu => (&BURIED_EUROPE, COVER.1),
    };
    asking.rest_on(source);
    let least = Length::from_base(least);
    asking.say(|print| {
        format!(
            "{} lies {} deep under the lane; {} are asked under wheels.",
            capitalized(conduit.id.as_str()),
            print.q(depth),
            print.q(least)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("cover that is asked under wheels", least),
        Labeled::new("cover of the conduit", depth),
    ))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[lane]]
        id = "lane-in"
        fire_lane = true
        [[cover]]
        id = "handhole-1"
        under_wheels = true
        rated_load = "20000 lbf ± 5 %"
    "#;

    #[test]
    fn holds_on_a_strong_cover() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("16750"), "{}", finding.sentence);
    }

    #[test]
    fn fails_on_a_light_cover_a_weak_track_and_a_shallow_conduit() {
        let light = only(&CHECK, &SITE.replace("20000 lbf", "8000 lbf"));
        assert_eq!(light.verdict, Verdict::Fails, "{}", light.sentence);
        let more = SITE.to_owned()
            + "[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n[gate.track]\nrated_wheel_load = \"9000 lbf\"\n[[conduit]]\nid = \"c-1\"\nunder_lane = true\nburial_depth = \"18 in\"\n[[operator]]\nid = \"drive\"\ngate = \"main\"\n[operator.drive_box]\ncover_rating = \"9000 lbf\"\n";
        let findings = all(&CHECK, &more);
        assert_eq!(findings.len(), 4);
        let fail = findings.iter().filter(|one| one.verdict == Verdict::Fails);
        assert_eq!(fail.count(), 3);
    }

    #[test]
    fn a_stated_engine_counts_instead() {
        let own = SITE.to_owned()
            + "[[vehicle]]\nid = \"engine\"\nwhat = \"engine\"\nfire_apparatus = true\naxle_load = \"44000 lbf\"\n";
        assert_eq!(only(&CHECK, &own).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_while_nobody_says_whether_engines_come() {
        let open = SITE.replace("fire_lane = true", "");
        assert_eq!(only(&CHECK, &open).verdict, Verdict::UnknownUntil);
        let bare = SITE.replace("rated_load = \"20000 lbf ± 5 %\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 1);
        let europe = only(&CHECK, &SITE.replace("\"us\"", "\"eu\""));
        assert_eq!(europe.verdict, Verdict::UnknownUntil);
        assert!(
            all(
                &CHECK,
                &SITE.replace("= true\n        [[cover", "= false\n        [[cover")
            )
            .is_empty()
        );
    }
}
