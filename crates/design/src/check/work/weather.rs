//! Whether the planned days have the weather and the light that each task needs.
//!
//! Each task of the plan is held against the forecast of its days, or against the usual weather of those weeks where nothing
//! is forecast yet. Pours, cures, hanging and joining state their limits; forces are tested by daylight, pictures also after
//! dark.

use super::order::about;
use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::plan::{Wish, WorkPlan, forecast_on};
use formula::{Evidence, Source};
use quantity::Quantity as _;
use site::{Date, Site, Task, TaskKind, TaskLight, TaskLimits, Work};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "work-weather-and-daylight",
    codes: BOTH,
    leaves_open: "the weather of the day itself; gusts and showers within a usual day; heat and cold on whoever works",
    concerns: "each site with tasks",
    ask,
};

static LIMITS: Source = Source {
    work: "wind for hanging, dry joints, warmth for concrete; forces tested by daylight, pictures also after dark",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "limits as the site gives them",
};

static SUN: Source = Source {
    work: "sunrise and sunset by the position of the sun",
    clause: "NREL/TP-560-34302",
    evidence: Evidence::Seen,
    seen: "the algorithm's printed example of sunrise and sunset",
};

/// How usual weather is written.
const USUAL: &str =
    "{ coldest = \"46 °F\", hottest = \"66 °F\", wind = \"14 mph\", wet_days = \"30 %\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.task.is_empty() {
        round.ask_in_full(about(site), |asking| weather(asking, site));
    }
}

fn weather<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&LIMITS);
    asking.rest_on(&SUN);
    let limited: Vec<Result<(), Halt>> = site
        .task
        .iter()
        .filter(|task| task.done.is_none())
        .map(|task| stated(asking, task))
        .collect();
    let plan = WorkPlan::read(asking, site, &Wish::default());
    let limited: Result<Vec<()>, Halt> = limited.into_iter().collect();
    let plan = plan?;
    if plan.found.is_err() {
        return asking.refuse("the tasks have no order; mend that first");
    }
    let Some(work) = &site.work else {
        return asking.lack(&site.origin, "work", Wants::Table("[work]"));
    };
    let mut found = Found::default();
    let mut halted = limited.map(|_| ());
    for task in plan.tasks.iter().copied() {
        if let Err(halt) = on_its_days(asking, &plan, work, task, &mut found) {
            halted = Err(halt);
        }
    }
    halted?;
    let wrong = plan.tasks.iter().find_map(|task| wrong_light(task));
    asking.say(|_| said(&plan, &found, wrong.as_deref()));
    if wrong.is_some() {
        return Ok(Outcome::Rule(false));
    }
    let all: Vec<Comparison> = found.compared.into_iter().map(|one| one.1).collect();
    let nearest = nearest(&all).and_then(|at| all.get(at).copied());
    Ok(nearest.map_or(Outcome::Rule(true), Outcome::Compared))
}

/// The comparison that fails, else the one nearest its limit: temperatures, whose zero says nothing, after all else.
fn nearest(all: &[Comparison]) -> Option<usize> {
    let worse = |one: &(usize, &Comparison), other: &(usize, &Comparison)| {
        let rank = |it: &Comparison| (!it.holds(), it.ratio().is_some());
        rank(one.1)
            .cmp(&rank(other.1))
            .then(one.1.strain().total_cmp(&other.1.strain()))
    };
    all.iter().enumerate().max_by(worse).map(|(at, _)| at)
}

/// What was found: comparisons with the task and day of each, and the days that must be dry.
#[derive(Default)]
struct Found {
    compared: Vec<(String, Comparison, String)>,
    dry_days: usize,
    wet: Option<f64>,
}

/// The limits that a task of this kind must state.
fn stated<'s>(asking: &mut Asking<'s>, task: &'s Task) -> Result<(), Halt> {
    let limits = task.limits.as_ref();
    let has = |is: fn(&TaskLimits) -> bool| limits.is_some_and(is);
    let (complete, write) = match task.kind {
        Some(TaskKind::Pour) => (
            has(|limits| limits.coldest.is_some() && limits.dry.is_some()),
            "{ coldest = \"40 °F\", hottest = \"95 °F\", dry = true }",
        ),
        Some(TaskKind::Hang) => (has(|limits| limits.wind.is_some()), "{ wind = \"20 mph\" }"),
        Some(TaskKind::Join) => (has(|limits| limits.dry.is_some()), "{ dry = true }"),
        Some(TaskKind::PictureTest) => (
            has(|limits| limits.light.is_some()),
            "{ light = \"daylight and dark\" }",
        ),
        _ => (true, ""),
    };
    if complete {
        Ok(())
    } else {
        asking.lack(&task.origin, "limits", Wants::Written(write))
    }
}

/// A test that is planned for the wrong light, in words.
fn wrong_light(task: &Task) -> Option<String> {
    let light = task.limits.as_ref().and_then(|limits| limits.light)?;
    match (task.kind?, light) {
        (TaskKind::ForceTest, TaskLight::Dark | TaskLight::Any) => Some(format!(
            "{} is not held to daylight, and forces are tested by daylight",
            task.id
        )),
        (TaskKind::PictureTest, TaskLight::Daylight | TaskLight::Any) => Some(format!(
            "{} is planned by day only, and pictures are tested after dark too",
            task.id
        )),
        _ => None,
    }
}

/// Holds a task against the weather of each of its days.
fn on_its_days<'s>(
    asking: &mut Asking<'s>,
    plan: &WorkPlan<'s>,
    work: &'s Work,
    task: &'s Task,
    found: &mut Found,
) -> Result<(), Halt> {
    let (Some(limits), Some(placed)) = (&task.limits, plan.place_of(task)) else {
        return Ok(());
    };
    let mut halted = Ok(());
    let mut days: Vec<Date> = (placed.stretches.iter())
        .filter_map(|stretch| plan.date(stretch.from))
        .collect();
    days.dedup();
    for day in days {
        if let Err(halt) = on(asking, work, (task, limits), day, found) {
            halted = Err(halt);
        }
    }
    halted
}

fn on<'s>(
    asking: &mut Asking<'s>,
    work: &'s Work,
    (task, limits): (&'s Task, &'s TaskLimits),
    day: Date,
    found: &mut Found,
) -> Result<(), Halt> {
    let forecast = forecast_on(work, day);
    let wants = limits.wind.is_some()
        || limits.coldest.is_some()
        || limits.hottest.is_some()
        || limits.dry == Some(true);
    if !wants {
        return Ok(());
    }
    let origin = match (forecast, &work.usual) {
        (Some(forecast), _) => &forecast.origin,
        (None, Some(usual)) => &usual.origin,
        (None, None) => return asking.lack(&work.origin, "usual", Wants::Written(USUAL)),
    };
    let usual = work.usual.as_ref();
    let is_forecast = forecast.is_some();
    let named = format!("{} on {day}", task.id);
    if limits.dry == Some(true) {
        found.dry_days += 1;
        if forecast.is_none() {
            let wet = asking.read(
                origin,
                "wet_days",
                usual.and_then(|usual| usual.wet_days.as_ref()),
            )?;
            found.wet = Some(wet.base());
        }
    }
    if let Some(limit) = asking.read_if_there(&limits.origin, "wind", limits.wind.as_ref()) {
        let wind = forecast.and_then(|one| one.wind.as_ref());
        let wind = either(
            is_forecast,
            wind,
            usual.and_then(|usual| usual.wind.as_ref()),
        );
        let wind = asking.read(origin, "wind", wind)?;
        let print = asking.print();
        let said = format!("a wind of {} against {}", print.q(wind), print.q(limit));
        let compared = Comparison::at_most(
            Labeled::new("strongest wind of the day", wind),
            Labeled::new("wind above which it stops", limit),
        );
        found.compared.push((named.clone(), compared, said));
    }
    if let Some(limit) = asking.read_if_there(&limits.origin, "coldest", limits.coldest.as_ref()) {
        let coldest = forecast.and_then(|one| one.coldest.as_ref());
        let coldest = either(
            is_forecast,
            coldest,
            usual.and_then(|usual| usual.coldest.as_ref()),
        );
        let coldest = asking.read(origin, "coldest", coldest)?;
        let print = asking.print();
        let said = format!(
            "{} in the coldest hours against {}",
            print.q(coldest),
            print.q(limit)
        );
        let compared = Comparison::at_most(
            Labeled::new("coldest air in which it can be done", limit),
            Labeled::new("coldest air of the day", coldest),
        );
        found.compared.push((named.clone(), compared, said));
    }
    if let Some(limit) = asking.read_if_there(&limits.origin, "hottest", limits.hottest.as_ref()) {
        let hottest = forecast.and_then(|one| one.hottest.as_ref());
        let hottest = either(
            is_forecast,
            hottest,
            usual.and_then(|usual| usual.hottest.as_ref()),
        );
        let hottest = asking.read(origin, "hottest", hottest)?;
        let print = asking.print();
        let said = format!(
            "{} in the hottest hours against {}",
            print.q(hottest),
            print.q(limit)
        );
        let compared = Comparison::at_most(
            Labeled::new("hottest air of the day", hottest),
            Labeled::new("hottest air in which it can be done", limit),
        );
        found.compared.push((named, compared, said));
    }
    Ok(())
}

/// What is forecast where something is, else what is usual.
fn either<T>(is_forecast: bool, forecast: Option<T>, usual: Option<T>) -> Option<T> {
    if is_forecast { forecast } else { usual }
}

fn said(plan: &WorkPlan<'_>, found: &Found, wrong: Option<&str>) -> String {
    if let Some(wrong) = wrong {
        return format!("{wrong}.");
    }
    let shown = plan.shown();
    let shortest = shown.days.iter().max_by_key(|day| day.rise.clone());
    let light = shortest.map_or_else(String::new, |day| {
        format!(
            "The sun is up from {} to {} on {}, and daylight work stands within that. ",
            day.rise, day.set, day.date
        )
    });
    let all: Vec<Comparison> = found.compared.iter().map(|one| one.1).collect();
    let nearest = nearest(&all).and_then(|at| found.compared.get(at));
    let met = match nearest {
        Some((task, compared, what)) if !compared.holds() => {
            format!("{task} meets {what}: move it, or shelter it.")
        }
        Some((task, _, what)) => format!("Nearest its limit is {task}, with {what}."),
        None => "No task has a limit of weather.".to_owned(),
    };
    format!("{light}{met}{}", dry(found))
}

/// How many days must be dry, and how many more to allow for rain.
fn dry(found: &Found) -> String {
    match found.wet {
        Some(wet) if found.dry_days > 0 && wet < 0.95 => {
            #[allow(clippy::cast_precision_loss, reason = "a few days")]
            let more = (found.dry_days as f64 * wet / (1.0 - wet)).ceil();
            format!(
                " {} must be dry; with {:.0} % of days wet, allow {more:.0} more.",
                counted(found.dry_days, "day"),
                wet * 100.0
            )
        }
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;
    use crate::check::work::example::SITE;

    #[test]
    fn holds_within_every_limit() {
        let finding = only(&CHECK, SITE);
        assert_eq!(
            finding.verdict,
            Verdict::Holds,
            "{} {:?}",
            finding.sentence,
            finding.missing
        );
        assert!(finding.sentence.contains("task-"), "{}", finding.sentence);
        assert!(
            finding.sentence.contains("must be dry"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_in_the_usual_wind_and_moves_for_a_forecast() {
        let windy = SITE.replace("wind = \"14 mph\"", "wind = \"24 mph\"");
        let finding = only(&CHECK, &windy);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("task-hang"),
            "{}",
            finding.sentence
        );
        // A stormy day is passed over: the leaf is hung on the next one.
        let stormy = SITE.replace(
            "check_in = { person",
            "forecast = [{ on = \"2026-05-04\", coldest = \"30 °F\", hottest = \"50 °F\", wind = \"40 mph\", dry = false }]\ncheck_in = { person",
        );
        let finding = only(&CHECK, &stormy);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_tests_in_the_wrong_light() {
        let dark = SITE.replace("light = \"daylight\"", "light = \"dark\"");
        let finding = only(&CHECK, &dark);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_limits_and_usual_weather() {
        let bare = SITE
            .replace("limits = { wind = \"20 mph\", dry = false }", "")
            .replace("usual = { coldest = \"46 °F\", hottest = \"66 °F\", wind = \"14 mph\", wet_days = \"30 %\" }", "");
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
