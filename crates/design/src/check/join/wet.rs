//! Whether a joint lies in water, is made for that, hangs clear, can be reached and is needed.
//!
//! A cable is one run from end to end, so that only what is written as a joint is one; a loop's lead-in has one to its loop,
//! or says that both are of one piece.

use crate::asking::{Asking, Wants};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::power::metal_area;
use formula::{Evidence, Source};
use quantity::{Argument, ConductorSize, Length, Quantity as _};
use site::{Carries, CodeBasis, JointPlace, JointRating, MadeJoint, Origin, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-wet",
    codes: BOTH,
    leaves_open: "how well the joint was made: insulation to earth at commissioning and after the first wet month tells",
    concerns: "each joint, and each loop's lead-in",
    ask,
};

static WET_LISTED: Source = Source {
    work: "NFPA 70 (NEC) 314.30(C), 300.5(B) and 110.14(B)",
    clause: "splices in handholes are listed for wet locations; the inside of what lies underground is one",
    evidence: Evidence::Seen,
    seen: "a splice maker's page and a code discussion forum, which quote the clauses",
};

static WATER: Source = Source {
    work: "pits and ducts fill with water: joints there are made to stand under it, hang above the floor and come out to be looked at",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice",
};

/// Length of cable with which a joint comes out of a handhole, in meters: 2 ft.
const COMES_OUT: f64 = 0.6096;
/// Least height above the floor, in meters: 4 in.
const ABOVE_FLOOR: f64 = 0.1016;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for cable in &site.cable {
        if cable.carries != Some(Carries::LoopLeadIn) && cable.joined.is_none() {
            continue;
        }
        round.ask(About::new(&cable.origin, &cable.id), |asking| {
            let sizes: Vec<ConductorSize> = cable.size.into_iter().collect();
            let said = Said {
                origin: &cable.origin,
                made: cable.joined.as_ref(),
                keys: CABLE,
            };
            joint(asking, site, &said, &sizes)
        });
    }
    for one in &site.joint {
        round.ask(About::new(&one.origin, &one.id), |asking| {
            let here = |end: &site::Id| *end == one.id;
            let cables = site.cable.iter();
            let sizes: Vec<ConductorSize> = cables
                .filter(|cable| here(&cable.from) || here(&cable.to))
                .filter_map(|cable| cable.size)
                .collect();
            let said = Said {
                origin: &one.origin,
                made: one.made.as_ref(),
                keys: JOINT,
            };
            joint(asking, site, &said, &sizes)
        });
    }
}

/// The keys as they are named where the whole record is missing.
type Keys = [&'static str; 7];

const CABLE: Keys = [
    "joined.place",
    "joined.rating",
    "joined.smallest",
    "joined.largest",
    "joined.above_floor",
    "joined.spare",
    "joined.why",
];
const JOINT: Keys = [
    "made.place",
    "made.rating",
    "made.smallest",
    "made.largest",
    "made.above_floor",
    "made.spare",
    "made.why",
];

/// What is said of a joint, and where.
struct Said<'s> {
    origin: &'s Origin,
    made: Option<&'s MadeJoint>,
    keys: Keys,
}

impl<'s> Said<'s> {
    fn pick<A: Argument + Copy>(
        &self,
        asking: &mut Asking<'s>,
        (at, key): (usize, &'static str),
        value: fn(&MadeJoint) -> Option<A>,
    ) -> Result<A, Halt> {
        match self.made {
            Some(made) => asking.pick(&made.origin, key, value(made)),
            None => asking.pick(self.origin, self.keys[at], None),
        }
    }

    fn length(
        &self,
        asking: &mut Asking<'s>,
        (at, key): (usize, &'static str),
        value: fn(&MadeJoint) -> Option<&quantity::Measured<Length>>,
    ) -> Result<Length, Halt> {
        match self.made {
            Some(made) => asking.read(&made.origin, key, value(made)),
            None => asking.lack_of(self.origin, self.keys[at]),
        }
    }

    fn why(&self, asking: &mut Asking<'s>) -> Result<(), Halt> {
        const WHY: &str = "\"the loop is a wire of its own\"";
        match self.made {
            Some(made) => asking
                .need(&made.origin, "why", made.why.as_ref(), WHY)
                .map(|_| ()),
            None => asking.lack(self.origin, self.keys[6], Wants::Written(WHY)),
        }
    }
}

fn joint<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    said: &Said<'s>,
    sizes: &[ConductorSize],
) -> Answer {
    let place = said.pick(asking, (0, "place"), |made| made.place)?;
    let mut rules = Rules::default();
    if place == JointPlace::OnePiece {
        asking.rest_on(&WATER);
        asking.say(|_| "One piece from end to end: there is no joint on the way.".to_owned());
        return Ok(rules.outcome());
    }
    let rating = said.pick(asking, (1, "rating"), |made| made.rating);
    let fits = fits(asking, said, sizes);
    let wet_place = matches!(place, JointPlace::Handhole | JointPlace::Buried);
    let why = if wet_place { said.why(asking) } else { Ok(()) };
    let hung = if place == JointPlace::Handhole {
        hung(asking, said, &mut rules)
    } else {
        Ok(())
    };
    let (rating, fits) = (rating?, fits?);
    why?;
    hung?;
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&WATER);
    if site.site.code_basis == CodeBasis::Us && wet_place {
        asking.rest_on(&WET_LISTED);
    }
    keep(&mut rules, place, rating, fits);
    asking.say(|_| {
        rules.says(|| {
            let where_to = match place {
                JointPlace::Handhole => "It hangs in a handhole above the floor, made to stand under water, comes out to be looked at, and takes these conductors.",
                JointPlace::AboveGround => "It lies above ground, is made for rain, and takes these conductors.",
                _ => "It lies in a closed enclosure and takes these conductors.",
            };
            where_to.to_owned()
        })
    });
    Ok(rules.outcome())
}

fn keep(rules: &mut Rules, place: JointPlace, rating: JointRating, fits: bool) {
    rules.keep(
        place != JointPlace::Buried,
        "The joint is buried: nobody reaches it. Pull a longer piece, or move it into a handhole.",
    );
    let rated = match place {
        JointPlace::Handhole | JointPlace::Buried => rating == JointRating::UnderWater,
        JointPlace::AboveGround => rating != JointRating::Dry,
        JointPlace::Enclosure | JointPlace::OnePiece => true,
    };
    rules.keep(
        rated,
        if place == JointPlace::AboveGround {
            "The joint lies in the open and is made for dry places only."
        } else {
            "Water will stand over the joint, and it is not made for that."
        },
    );
    rules.keep(
        fits,
        "The kit of the joint does not take the conductors that are joined in it.",
    );
}

/// The kit takes each of the conductors.
fn fits<'s>(
    asking: &mut Asking<'s>,
    said: &Said<'s>,
    sizes: &[ConductorSize],
) -> Result<bool, Halt> {
    let smallest = said.pick(asking, (2, "smallest"), |made| made.smallest);
    let largest = said.pick(asking, (3, "largest"), |made| made.largest);
    if sizes.is_empty() {
        return asking.lack(said.origin, "size", Wants::Written("\"16 AWG\""));
    }
    let (smallest, largest) = (metal_area(smallest?), metal_area(largest?));
    Ok(sizes.iter().all(|size| {
        let area = metal_area(*size);
        smallest <= area && area <= largest
    }))
}

/// A joint in a handhole hangs above its floor and comes out.
fn hung<'s>(asking: &mut Asking<'s>, said: &Said<'s>, rules: &mut Rules) -> Result<(), Halt> {
    let above = said.length(asking, (4, "above_floor"), |made| made.above_floor.as_ref());
    let spare = said.length(asking, (5, "spare"), |made| made.spare.as_ref());
    let (above, spare) = (above?, spare?);
    rules.compare(Comparison::at_most(
        Labeled::new(
            "least height above the floor",
            Length::from_base(ABOVE_FLOOR),
        ),
        Labeled::new("height above the floor", above),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new(
            "cable with which it comes out",
            Length::from_base(COMES_OUT),
        ),
        Labeled::new("spare length at the joint", spare),
    ));
    Ok(())
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
        id = "w-25"
        from = "source"
        to = "box"
        carries = "loop lead-in"
        size = "16 AWG"
        joined = { place = "handhole", rating = "under water", smallest = "22 AWG", largest = "14 AWG", above_floor = "8 in", spare = "3 ft", why = "the loop is a wire of its own" }
    "#;

    #[test]
    fn holds_hung_in_a_handhole_and_in_one_piece() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let start = SITE.split("joined").next().unwrap().to_owned();
        let whole = start + "joined = { place = \"one piece\" }\n";
        assert_eq!(only(&CHECK, &whole).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_buried_made_for_dry_places_of_the_wrong_size_and_on_the_floor() {
        for (from, to) in [
            ("\"handhole\"", "\"buried\""),
            ("under water", "wet places"),
            ("largest = \"14 AWG\"", "largest = \"18 AWG\""),
            ("above_floor = \"8 in\"", "above_floor = \"1 in\""),
            ("spare = \"3 ft\"", "spare = \"6 in\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{to} {}", finding.sentence);
        }
    }

    #[test]
    fn unknown_while_nobody_says_how_it_is_made() {
        let bare = SITE.split("joined").next().unwrap();
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(
            finding.missing[0].path.contains("joined"),
            "{:?}",
            finding.missing
        );
        let half = SITE.replace(
            "spare = \"3 ft\", why = \"the loop is a wire of its own\"",
            "",
        );
        let finding = only(&CHECK, &half);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
