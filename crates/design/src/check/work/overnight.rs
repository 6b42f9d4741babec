//! Whether the job can be left at night: nothing can fall, be fallen into, be opened, start or be live.
//!
//! Each danger that a task leaves behind is followed from the day of that task to the end of the one that takes it away. On
//! every night between, it is held by so many means: a leaf by two; a hole by one, and by two where children or the public
//! come by; all else by one.

use super::order::about;
use crate::asking::{Asking, Wants, need};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::{and, capitalized, counted};
use crate::plan::{Wish, WorkPlan};
use formula::{Evidence, Source};
use sim::job::DAY;
use site::{LeftBehind, LeftKind, Overnight, PersonKind, Site, Task, TaskKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "work-left-safe-overnight",
    codes: BOTH,
    leaves_open: "whether it was really done each evening: the photographs show that; what a storm or a thief does",
    concerns: "each site with tasks",
    ask,
};

static MEANS: Source = Source {
    work: "a leaf held by two means, holes covered, wires dead or shut away, the drive isolated and locked, photographs taken",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the rule drawn from a death in 2022, where a gate without its drive rolled past its posts",
};

static ROLLED: Source = Source {
    work: "WorkSafe Victoria prosecution, death of April 2022",
    clause: "",
    evidence: Evidence::Seen,
    seen: "report on the prosecution: the drive was away for repair, and only word of mouth told to chain the gate",
};

/// How the nights are written.
const OVERNIGHT: &str = "{ way_in_and_out = \"walk gate\", agreed_with = \"owner\", told = \"owner, by phone\", photographs = true }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.task.is_empty() {
        round.ask_in_full(about(site), |asking| left(asking, site));
    }
}

/// A danger on the nights that it lasts.
struct Night<'s> {
    task: &'s Task,
    left: &'s LeftBehind,
    nights: i64,
}

fn left<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&MEANS);
    asking.rest_on(&ROLLED);
    let listed: Vec<Result<(), Halt>> = site
        .task
        .iter()
        .filter(|task| task.done.is_none())
        .map(|task| listed(asking, task))
        .collect();
    let agreed = agreed(asking, site);
    let plan = WorkPlan::read(asking, site, &Wish::default());
    let listed: Result<Vec<()>, Halt> = listed.into_iter().collect();
    let (plan, overnight) = (plan?, agreed?);
    listed?;
    if plan.found.is_err() {
        return asking.refuse("the tasks have no order; mend that first");
    }
    let nights = nights(&plan);
    let public = comes_by(site);
    let compared: Vec<(usize, Comparison)> = nights
        .iter()
        .enumerate()
        .map(|(at, night)| (at, held(night, public)))
        .collect();
    let loose = compared.iter().find(|one| !one.1.holds()).map(|one| one.0);
    let photographs = overnight.photographs == Some(true);
    asking.say(|_| match loose.and_then(|at| nights.get(at)) {
        Some(night) => loose_said(night, public),
        None if !photographs => {
            "Nobody photographs at the end of the day how the job was left.".to_owned()
        }
        None => held_said(&nights, overnight),
    });
    if !photographs {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::worst(compared.into_iter().map(|one| one.1)).unwrap_or(Outcome::Rule(true)))
}

/// What a task of this kind leaves behind must be listed, with what holds it.
fn listed<'s>(asking: &mut Asking<'s>, task: &'s Task) -> Result<(), Halt> {
    let write = match task.kind {
        Some(TaskKind::Dig) => {
            "[{ what = \"open hole or trench\", until = \"task-fill\", secured_by = [\"boards screwed down\", \"fence\"] }]"
        }
        Some(TaskKind::Hang) => {
            "[{ what = \"leaf not held by its gear\", secured_by = [\"chain and lock\", \"stop bolted down\"] }]"
        }
        Some(TaskKind::SwitchOn) => {
            "[{ what = \"drive without proved protection\", until = \"task-test\", secured_by = [\"switched off and locked\"] }]"
        }
        _ => "",
    };
    if task.leaves.is_empty() && !write.is_empty() {
        return asking.lack(&task.origin, "leaves", Wants::Written(write));
    }
    let mut found = Ok(());
    for left in task.leaves.iter().filter(|left| left.secured_by.is_empty()) {
        found = asking.lack(
            &left.origin,
            "secured_by",
            Wants::Written("[\"boards screwed down\", \"fence\"]"),
        );
    }
    found
}

/// What is agreed for the nights.
fn agreed<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<&'s Overnight, Halt> {
    let Some(work) = &site.work else {
        return asking.lack(&site.origin, "work.overnight", Wants::Written(OVERNIGHT));
    };
    let Some(overnight) = &work.overnight else {
        return asking.lack(&work.origin, "overnight", Wants::Written(OVERNIGHT));
    };
    let way = need!(asking, overnight.way_in_and_out, "\"walk gate\"");
    let with = need!(asking, overnight.agreed_with, "\"owner\"");
    let told = need!(asking, overnight.told, "\"owner, by phone\"");
    let photographs = need!(asking, overnight.photographs, "true");
    way?;
    with?;
    told?;
    photographs?;
    Ok(overnight)
}

/// Each danger that lasts over a night.
fn nights<'s>(plan: &WorkPlan<'s>) -> Vec<Night<'s>> {
    let mut nights = Vec::new();
    for task in plan.tasks.iter().copied() {
        let Some(placed) = plan.place_of(task) else {
            continue;
        };
        for left in &task.leaves {
            let until = left.until.as_ref().and_then(|id| {
                let ending = plan.tasks.iter().find(|one| one.id == *id)?;
                plan.place_of(ending)
            });
            let end = until.map_or(placed.to(), sim::job::Placed::to);
            let lasts = end / DAY - placed.from() / DAY;
            if lasts > 0 {
                nights.push(Night {
                    task,
                    left,
                    nights: lasts,
                });
            }
        }
    }
    nights
}

/// Children or strangers come by.
fn comes_by(site: &Site) -> bool {
    let known = |who: PersonKind| who == PersonKind::TrainedAdults;
    site.people.iter().any(|people| !known(people.who))
}

/// Means that are asked against those that there are.
fn held(night: &Night<'_>, public: bool) -> Comparison {
    let there = u32::try_from(night.left.secured_by.len()).unwrap_or(u32::MAX);
    Comparison::at_most(
        Labeled::new(
            "means asked to hold it overnight",
            asked(night.left.what, public),
        ),
        Labeled::new("means that hold it", there),
    )
}

fn asked(what: LeftKind, public: bool) -> u32 {
    match what {
        LeftKind::Leaf => 2,
        LeftKind::Hole if public => 2,
        _ => 1,
    }
}

fn loose_said(night: &Night<'_>, public: bool) -> String {
    format!(
        "After {} the {} is left for {}, held by {} where {} are asked: {}.",
        night.task.id,
        night.left.what,
        nights_in_words(night.nights),
        night.left.secured_by.len(),
        asked(night.left.what, public),
        secured(night.left)
    )
}

fn held_said(nights: &[Night<'_>], overnight: &Overnight) -> String {
    let Some(longest) = nights.iter().max_by_key(|night| night.nights) else {
        return "Nothing that can hurt anybody is left over a night.".to_owned();
    };
    let told = overnight
        .told
        .as_ref()
        .map_or_else(String::new, ToString::to_string);
    format!(
        "{} left over a night, the longest the {} of {} for {}: {}. Told each evening: {told}.",
        capitalized(&counted(nights.len(), "thing")),
        longest.left.what,
        longest.task.id,
        nights_in_words(longest.nights),
        secured(longest.left)
    )
}

fn nights_in_words(nights: i64) -> String {
    counted(usize::try_from(nights).unwrap_or_default(), "night")
}

fn secured(left: &LeftBehind) -> String {
    let means: Vec<String> = left.secured_by.iter().map(ToString::to_string).collect();
    and(&means)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::work::example::SITE;

    fn held() -> String {
        SITE.replace(
            "[\"boards screwed down\"]",
            "[\"boards screwed down\", \"fence\"]",
        )
    }

    #[test]
    fn holds_with_everything_held() {
        let finding = only(&CHECK, &held());
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "{} {:?}",
            finding.sentence,
            finding.missing
        );
        assert!(finding.sentence.contains("night"), "{}", finding.sentence);
    }

    #[test]
    fn fails_with_one_means_for_leaf_or_for_a_hole_that_the_public_passes() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("task-dig"),
            "{}",
            finding.sentence
        );
        let trained = SITE.replace("who = \"adults\"", "who = \"trained adults\"");
        assert_eq!(only(&CHECK, &trained).verdict, Verdict::Holds);
        let leaf = held().replace(", \"stop bolted down\"]", "]");
        let finding = only(&CHECK, &leaf);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let unseen = held().replace("photographs = true", "photographs = false");
        assert_eq!(only(&CHECK, &unseen).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_means_and_agreement() {
        let bare = SITE
            .replace(", secured_by = [\"boards screwed down\"]", "")
            .replace("told = \"owner, by phone\", ", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
