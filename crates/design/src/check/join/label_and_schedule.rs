//! Whether somebody can tell both ends of every cable, every core and every fuse, years later and by lamp light.
//!
//! Every core is written down with its color and its two terminals, or as spare; every wire number is given once and
//! never again; the labels last where they hang and are large enough to be read from where one stands.

use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::plain::{and, counted};
use crate::subject::About;
use crate::wiring::{Landed, fed, landed, wiring_of};
use formula::ways::LettersByAngle;
use formula::{Evidence, Source};
use quantity::{Angle, Quantity as _};
use site::{LabelStands, Labels, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "join-label-and-schedule",
    codes: BOTH,
    leaves_open: "whether each label is really on its cable and tells the truth: trace ten cables picked at random",
    concerns: "a site with cables",
    ask,
};

/// How labels are written.
const LABELS: &str = "[labels]\nletter_height = \"1/8 in\"\nread_from = \"18 in\"\nstands = [\"sun\", \"damp\"]\nfuses_say = true\nnext_wire = 1";

/// How the cores of a cable are written.
const WIRING: &str = "[[wiring]]\ncable = \"w-01\"\nends = \"ferrules\"\ncore = [{ wire = 1, color = \"red\", carries = \"24 V\", from = \"x1:1\", to = \"+\" }]";

/// Angle under which a letter is read by lamp light, in degrees: 20 minutes of arc.
const LAMP_LIGHT: f64 = 20.0 / 60.0;

static BY_LAMP: Source = Source {
    work: "a letter that is read by lamp light fills 20 minutes of arc, four times what good eyes just read by day",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "a rule of thumb for panels and labels",
};

static BOTH_ENDS: Source = Source {
    work: "each end of a cable carries its number, each core a number of its own, each fuse what it feeds",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as panels are labeled",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.cable.is_empty() {
        return;
    }
    round.ask(About::site(&site.origin), |asking| told_apart(asking, site));
}

fn told_apart<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&BOTH_ENDS);
    let mut rules = Rules::default();
    let labels = match &site.labels {
        Some(labels) => legible(asking, site, labels, &mut rules),
        None => asking.lack(&site.origin, "labels", Wants::Table(LABELS)),
    };
    let landed = landed(site);
    let listed = listed(asking, site, &mut rules);
    let numbered = numbered(asking, site, &landed, &mut rules);
    labels?;
    listed?;
    numbered?;
    for fed in fed(site).iter().filter(|fed| fed.feeds.is_empty()) {
        rules.keep(
            false,
            &format!(
                "Nothing says what {} feeds: name it at its cable, or take it out.",
                fed.fuse.id
            ),
        );
    }
    asking.say(|_| {
        rules.says(|| {
            let numbers = landed.iter().filter(|core| core.wire.is_some()).count();
            format!(
                "{} with {} are listed end by end, {numbers} of them with a wire number of their own; {} say what they feed; the labels last in sun and damp and are read by lamp light.",
                counted(site.cable.len(), "cable"),
                counted(landed.len(), "core"),
                counted(site.fuse.len(), "fuse")
            )
        })
    });
    Ok(rules.outcome())
}

/// Letters, material, and what stands beside the fuses.
fn legible<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    labels: &'s Labels,
    rules: &mut Rules,
) -> Result<(), Halt> {
    let height = read!(asking, labels.letter_height);
    let distance = read!(asking, labels.read_from);
    let stands = asking.need(
        &labels.origin,
        "stands",
        labels.stands.first(),
        "[\"sun\", \"damp\"]",
    );
    let fuses = if site.fuse.is_empty() {
        Ok(true)
    } else {
        need!(asking, labels.fuses_say, "true").copied()
    };
    let (height, distance) = (height?, distance?);
    stands?;
    rules.keep(fuses?, "Nothing beside the fuses says what each feeds.");
    for (what, word) in [(LabelStands::Sun, "sun"), (LabelStands::Damp, "damp")] {
        rules.keep(
            labels.stands.contains(&what),
            &format!(
                "The labels are not made for {word}: they fade or fall off before they are needed."
            ),
        );
    }
    let wanted = asking.work(&LettersByAngle {
        distance,
        angle: Angle::from_base(LAMP_LIGHT.to_radians()),
    })?;
    asking.rest_on(&BY_LAMP);
    let letters = Comparison::at_most(
        Labeled::new(
            "height of letters that is read by lamp light",
            wanted.height,
        ),
        Labeled::new("height of the smallest letters", height),
    );
    let print = asking.print();
    rules.keep(
        letters.holds(),
        &format!(
            "Letters of {} are too small to be read by lamp light from {}: make them {}.",
            print.q(height),
            print.q(distance),
            print.q(wanted.height)
        ),
    );
    rules.compare(letters);
    Ok(())
}

/// Each core of each cable is written down, each with a color of its own, and each end with a terminal.
fn listed<'s>(asking: &mut Asking<'s>, site: &'s Site, rules: &mut Rules) -> Result<(), Halt> {
    if site.wiring.is_empty() {
        return asking.lack(&site.origin, "wiring", Wants::Table(WIRING));
    }
    let mut whole = Ok(());
    for cable in &site.cable {
        let Some(wiring) = wiring_of(site, cable) else {
            whole = asking.lack(&cable.origin, "wiring", Wants::Table(WIRING));
            continue;
        };
        if wiring.pattern.is_some() {
            continue;
        }
        let Ok(cores) = pick!(asking, cable.cores) else {
            whole = Err(Halt);
            continue;
        };
        let written = u32::try_from(wiring.core.len()).unwrap_or(u32::MAX);
        if written < cores {
            whole = asking.lack(
                &wiring.origin,
                "core",
                Wants::Written("[{ color = \"white\", spare = true }]"),
            );
        }
        rules.keep(
            written <= cores,
            &format!("{} has {cores} cores, and {written} are listed.", cable.id),
        );
        for (place, core) in wiring.core.iter().enumerate() {
            if need!(asking, core.color, "\"red\"").is_err() {
                whole = Err(Halt);
            }
            let before = wiring.core.get(..place).unwrap_or_default();
            if let Some(color) = &core.color {
                let doubled = before
                    .iter()
                    .any(|other| other.color.as_ref() == Some(color));
                rules.keep(
                    !doubled,
                    &format!("{} has two cores that are {color}.", cable.id),
                );
            }
            if core.spare == Some(true) {
                continue;
            }
            for end in [
                need!(asking, core.from, "\"x1:1\""),
                need!(asking, core.to, "\"+\""),
            ] {
                if end.is_err() {
                    whole = Err(Halt);
                }
            }
        }
    }
    whole
}

/// Each core that lands somewhere has a number, no two the same, none that is still free.
fn numbered<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    landed: &[Landed<'s>],
    rules: &mut Rules,
) -> Result<(), Halt> {
    let mut whole = Ok(());
    for core in landed.iter().filter(|core| !core.spare) {
        if let Some(core) = core.core
            && pick!(asking, core.wire).is_err()
        {
            whole = Err(Halt);
        }
    }
    let mut numbers: Vec<u32> = landed.iter().filter_map(|core| core.wire).collect();
    numbers.sort_unstable();
    let mut doubled: Vec<String> = numbers
        .windows(2)
        .filter(|pair| pair.first() == pair.last())
        .filter_map(|pair| pair.first().map(ToString::to_string))
        .collect();
    doubled.dedup();
    rules.keep(
        doubled.is_empty(),
        &format!(
            "Wire number {} is given twice: give the later core the next free number.",
            and(&doubled)
        ),
    );
    let Some(labels) = &site.labels else {
        return whole;
    };
    let next = pick!(asking, labels.next_wire)?;
    let highest = numbers.last().copied().unwrap_or(0);
    rules.keep(
        highest < next,
        &format!("Wire number {highest} is given, and {next} is kept as the next free one: a number would be given again."),
    );
    whole
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
        id = "psu"
        kind = "power supply"
        [[device]]
        id = "reader"
        kind = "reader"
        [[fuse]]
        id = "f1"
        [[cable]]
        id = "w-01"
        from = "psu"
        to = "reader"
        cores = 3
        fuse = "f1"
        [labels]
        letter_height = "1/8 in ± 0.005 in"
        read_from = "18 in"
        stands = ["sun", "damp"]
        fuses_say = true
        next_wire = 3
        [[wiring]]
        cable = "w-01"
        core = [
          { wire = 1, color = "red", from = "x1:1", to = "+" },
          { wire = 2, color = "black", from = "x1:2", to = "-" },
          { color = "white", spare = true },
        ]
    "#;

    #[test]
    fn holds_with_every_core_listed() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 2 · 18 in · tan 10′.
        let wanted = 2.0 * 18.0 * 0.0254 * (10.0_f64 / 60.0).to_radians().tan();
        assert!((finding.demand.unwrap().value.unwrap() - wanted).abs() < 1e-9);
    }

    #[test]
    fn fails_with_a_number_twice_or_given_again() {
        let twice = only(&CHECK, &SITE.replace("wire = 2", "wire = 1"));
        assert_eq!(twice.verdict, Verdict::Fails);
        assert!(twice.sentence.contains("twice"), "{}", twice.sentence);
        let again = only(&CHECK, &SITE.replace("next_wire = 3", "next_wire = 2"));
        assert_eq!(again.verdict, Verdict::Fails);
    }

    #[test]
    fn fails_small_or_fading_or_with_a_fuse_that_feeds_nothing() {
        let small = only(&CHECK, &SITE.replace("1/8 in", "1/16 in"));
        assert_eq!(small.verdict, Verdict::Fails);
        let fading = only(&CHECK, &SITE.replace("[\"sun\", \"damp\"]", "[\"damp\"]"));
        assert_eq!(fading.verdict, Verdict::Fails);
        let idle = only(&CHECK, &SITE.replace("fuse = \"f1\"", ""));
        assert_eq!(idle.verdict, Verdict::Fails);
        assert!(idle.sentence.contains("f1"), "{}", idle.sentence);
        let silent = only(
            &CHECK,
            &SITE.replace("fuses_say = true", "fuses_say = false"),
        );
        assert_eq!(silent.verdict, Verdict::Fails);
    }

    #[test]
    fn fails_with_two_cores_of_one_color_or_one_too_many() {
        let alike = only(&CHECK, &SITE.replace("\"black\"", "\"red\""));
        assert_eq!(alike.verdict, Verdict::Fails);
        let many = only(&CHECK, &SITE.replace("cores = 3", "cores = 2"));
        assert_eq!(many.verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_with_cores_that_nobody_listed() {
        let bare = SITE.split("[labels]").next().unwrap();
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let few = only(&CHECK, &SITE.replace("cores = 3", "cores = 4"));
        assert_eq!(few.verdict, Verdict::UnknownUntil);
        let open = only(&CHECK, &SITE.replace(", to = \"-\"", ""));
        assert_eq!(open.verdict, Verdict::UnknownUntil);
        assert_eq!(open.missing.len(), 1, "{:?}", open.missing);
    }

    #[test]
    fn a_pattern_lists_its_cores_by_itself() {
        let data = SITE.split("core = [").next().unwrap().to_owned() + "pattern = \"T568B\"\n";
        let finding = only(&CHECK, &data.replace("cores = 3", "cores = 8"));
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }
}
