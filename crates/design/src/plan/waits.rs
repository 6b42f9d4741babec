//! What runs by the clock between two tasks: cure and inspection.

use crate::asking::{Asking, End, Wants, need, pick, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::ways::{CementSpeed, ConcreteWait};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Temperature, Time, Word as _, celsius};
use site::{Cure, CureKind, Curing, Inspection, Task};

/// How a cure is written.
const CURING: &str =
    "{ of = \"concrete\", temperature = \"54 °F\", cement = \"normal\", wanted = \"75 %\" }";

/// How an inspection is written.
const INSPECTION: &str = "{ by = \"county inspector\", wait = \"24 h\", photograph = true }";

static COLD: Source = Source {
    work: "cold weather for concrete begins where the air falls below 40 °F (5 °C) while it is protected",
    clause: "",
    evidence: Evidence::Seen,
    seen: "topic page of a concrete institute on cold weather, which cites its guide to cold weather concreting",
};

static SHEET: Source = Source {
    work: "cure times of the product's own sheet",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the site gives them",
};

/// Coldest concrete that hardens without protection, in degrees Celsius: 40 °F.
const COLDEST_CONCRETE: f64 = 40.0 / 9.0;

/// A cure that something waits for.
#[derive(Debug, Clone)]
pub(crate) struct Cured<'s> {
    /// The task that leaves it.
    pub(crate) task: &'s Task,
    /// Time until it may be loaded; nothing where it is too cold for it.
    pub(crate) wait: Option<Time>,
    /// Its temperature against the coldest at which it hardens.
    pub(crate) warmth: Comparison,
}

/// How long what a task made waits for its load.
pub(super) fn cure<'s>(asking: &mut Asking<'s>, task: &'s Task) -> Result<Cured<'s>, Halt> {
    let Some(curing) = &task.curing else {
        return asking.lack(&task.origin, "curing", Wants::Written(CURING));
    };
    let temperature = asking.read_at(
        (&curing.origin, "temperature"),
        curing.temperature.as_ref(),
        End::Low,
    );
    let of = pick!(asking, curing.of);
    if of? == CureKind::Concrete && curing.sheet.is_empty() {
        concrete(asking, task, curing, temperature)
    } else {
        by_sheet(asking, task, curing, temperature)
    }
}

fn concrete<'s>(
    asking: &mut Asking<'s>,
    task: &'s Task,
    curing: &'s Curing,
    temperature: Result<Temperature, Halt>,
) -> Result<Cured<'s>, Halt> {
    let cement = pick!(asking, curing.cement);
    let wanted = asking.read_at(
        (&curing.origin, "wanted"),
        curing.wanted.as_ref(),
        End::High,
    );
    let (temperature, cement, wanted) = (temperature?, cement?, wanted?);
    asking.rest_on(&COLD);
    let coldest = celsius(COLDEST_CONCRETE);
    let warmth = Comparison::at_most(
        Labeled::new("coldest concrete without protection", coldest),
        Labeled::new("temperature of the concrete", temperature),
    );
    let Some(cement) = CementSpeed::from_word(cement.word()) else {
        return asking.refuse("there are no figures for this cement");
    };
    let wait = if warmth.holds() {
        let waits = asking.work(&ConcreteWait {
            wanted,
            temperature,
            cement,
        })?;
        Some(waits.wait)
    } else {
        None
    };
    Ok(Cured { task, wait, warmth })
}

fn by_sheet<'s>(
    asking: &mut Asking<'s>,
    task: &'s Task,
    curing: &'s Curing,
    temperature: Result<Temperature, Halt>,
) -> Result<Cured<'s>, Halt> {
    asking.rest_on(&SHEET);
    if curing.sheet.is_empty() {
        let lines = Wants::Written("[{ from = \"50 °F\", cure_time = \"24 h\" }]");
        return asking.lack(&curing.origin, "sheet", lines);
    }
    let lines: Vec<Result<_, Halt>> = curing.sheet.iter().map(|line| row(asking, line)).collect();
    let lines: Vec<(Temperature, Time)> = lines.into_iter().collect::<Result<_, _>>()?;
    let temperature = temperature?;
    let coldest = lines
        .iter()
        .map(|line| line.0.base())
        .fold(f64::MAX, f64::min);
    let warmth = Comparison::at_most(
        Labeled::new(
            "coldest at which its sheet lets it cure",
            Temperature::from_base(coldest),
        ),
        Labeled::new("temperature of it", temperature),
    );
    let wait = lines
        .iter()
        .filter(|line| line.0 <= temperature)
        .max_by(|one, other| one.0.base().total_cmp(&other.0.base()))
        .map(|line| line.1);
    Ok(Cured { task, wait, warmth })
}

fn row<'s>(asking: &mut Asking<'s>, line: &'s Cure) -> Result<(Temperature, Time), Halt> {
    let from = read!(asking, line.from);
    let time = read!(asking, line.cure_time);
    Ok((from?, time?))
}

/// What is to be seen of a task before it is covered.
pub(super) fn inspection<'s>(
    asking: &mut Asking<'s>,
    task: &'s Task,
) -> Result<(&'s Inspection, Time), Halt> {
    let Some(inspection) = &task.inspection else {
        return asking.lack(&task.origin, "inspection", Wants::Written(INSPECTION));
    };
    let by = need!(asking, inspection.by, "\"county inspector\"");
    let photograph = need!(asking, inspection.photograph, "true");
    let wait = if inspection.passed.is_some() {
        Ok(Time::from_base(0.0))
    } else {
        asking.read_at(
            (&inspection.origin, "wait"),
            inspection.wait.as_ref(),
            End::High,
        )
    };
    by?;
    photograph?;
    Ok((inspection, wait?))
}
