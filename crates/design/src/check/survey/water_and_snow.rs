//! Whether everything live stands above the highest water and snow, or is built for it and drains.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::route::wet::stands_at;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Word as _};
use site::{Device, Enclosure, Id, Position, Site, WaterLine};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "survey-water-and-snow",
    codes: BOTH,
    leaves_open: "floods higher than anybody remembers, spray from wheels and waves, ice that creeps, and whether the drains of what is built for water stay open",
    concerns: "each mark of water or snow; each site",
    ask,
};

static ABOVE: Source = Source {
    work: "lowest live part, lens and drive above the highest water and snow that stands there, or built and drained for it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "level of each part above the finished surface at the gate line",
};

/// How a mark is written.
const MARK: &str = "[[water_line]]\nid = \"flood\"\nwhat = \"standing water\"\nlevel = \"-2 in\"\nseen = \"silt line on the fence\"\n[[water_line]]\nid = \"snow\"\nwhat = \"snow\"\nlevel = \"14 in\"\nseen = \"the owner, worst of ten winters\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if site.water_line.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| {
            asking.lack(&site.origin, "water_line", Wants::Table(MARK))
        });
    }
    for line in &site.water_line {
        round.ask(About::new(&line.origin, &line.id), |asking| {
            above(asking, site, line)
        });
    }
}

/// Something live, and the height of its lowest part.
struct Live<'s> {
    name: &'s Id,
    lowest: Length,
}

fn above<'s>(asking: &mut Asking<'s>, site: &'s Site, line: &'s WaterLine) -> Answer {
    asking.rest_on(&ABOVE);
    let what = pick!(asking, line.what);
    let level = read!(asking, line.level);
    let seen = asking.need(
        &line.origin,
        "seen",
        line.seen.as_ref(),
        "\"silt line on the fence\"",
    );
    let live = live(asking, site, line);
    let (what, level) = (what?, level?);
    seen?;
    let Some(lowest) = live
        .iter()
        .min_by(|one, other| one.lowest.base().total_cmp(&other.lowest.base()))
    else {
        let built = counted(line.built_for.len(), "thing");
        asking.say(|_| {
            format!(
                "Nothing stands where {} may be, but for {built} built for it.",
                what.word()
            )
        });
        return Ok(Outcome::Rule(true));
    };
    asking.say(|print| {
        let advice = if level >= lowest.lowest {
            " Raise it, move it, or take what is built for it and drain it."
        } else {
            ""
        };
        format!(
            "Where {} reaches a level of {}, the lowest part that is not built for it is at {}, with its underside at {}.{advice}",
            what.word(),
            print.q(level),
            lowest.name,
            print.q(lowest.lowest)
        )
    });
    Ok(Outcome::Compared(Comparison::below(
        Labeled::new("level of water or snow", level),
        Labeled::new("level of the lowest live part", lowest.lowest),
    )))
}

/// What stands where a mark counts and is not built for it; things in an enclosure stand with it.
fn live<'s>(asking: &mut Asking<'s>, site: &'s Site, line: &'s WaterLine) -> Vec<Live<'s>> {
    let mut all = Vec::new();
    let counts = |id: &Id, at: &Position| {
        !line.built_for.contains(id)
            && stands_at(line, (at.x.nominal().base(), at.y.nominal().base()))
    };
    for device in site.device.iter().filter(|one| one.enclosure.is_none()) {
        if let Some(at) = device.at.as_ref().filter(|at| counts(&device.id, at)) {
            all.extend(of_device(asking, device, at));
        }
    }
    for operator in &site.operator {
        if let Some(at) = operator.at.as_ref().filter(|at| counts(&operator.id, at)) {
            all.extend(placed(asking, (&operator.origin, "at"), &operator.id, at));
        }
    }
    for supply in site.supply.iter().filter(|one| one.enclosure.is_none()) {
        if let Some(at) = supply.at.as_ref().filter(|at| counts(&supply.id, at)) {
            all.extend(placed(asking, (&supply.origin, "at"), &supply.id, at));
        }
    }
    for enclosure in &site.enclosure {
        if let Some(at) = enclosure.at.as_ref().filter(|at| counts(&enclosure.id, at)) {
            all.extend(of_enclosure(asking, enclosure, at));
        }
    }
    all
}

fn placed<'s>(
    asking: &mut Asking<'s>,
    (origin, key): (&'s site::Origin, &'static str),
    name: &'s Id,
    at: &Position,
) -> Result<Live<'s>, Halt> {
    let [_, _, lowest] = asking.position(origin, key, Some(at))?;
    Ok(Live { name, lowest })
}

/// A beam or an edge reaches down to the lower of its ends.
fn of_device<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    at: &Position,
) -> Result<Live<'s>, Halt> {
    let mut live = placed(asking, (&device.origin, "at"), &device.id, at)?;
    if let Some(to) = &device.to {
        let [_, _, other] = asking.position(&device.origin, "to", Some(to))?;
        live.lowest = if other < live.lowest {
            other
        } else {
            live.lowest
        };
    }
    Ok(live)
}

/// A box reaches half its height below its middle.
fn of_enclosure<'s>(
    asking: &mut Asking<'s>,
    enclosure: &'s Enclosure,
    at: &Position,
) -> Result<Live<'s>, Halt> {
    let mut live = placed(asking, (&enclosure.origin, "at"), &enclosure.id, at)?;
    let height = asking.read_if_there(&enclosure.origin, "height", enclosure.height.as_ref());
    live.lowest -= height.unwrap_or_default() / 2.0;
    Ok(live)
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "eye"
        kind = "through-beam photo-eye"
        at = ["0 ft", "1 ft", "21 in"]
        to = ["20 ft", "1 ft", "20 in ± 1/2 in"]
        [[device]]
        id = "loop"
        kind = "loop"
        at = ["5 ft", "5 ft", "-2 in"]
        [[enclosure]]
        id = "box"
        at = ["25 ft", "5 ft", "4 ft"]
        height = "24 in"
        [[water_line]]
        id = "snow"
        what = "snow"
        level = "14 in"
        seen = "the owner, worst of ten winters"
        built_for = ["loop"]
    "#;

    #[test]
    fn holds_above_the_snow() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("eye"), "{}", finding.sentence);
    }

    #[test]
    fn fails_below_it_or_not_built_for_it() {
        let deep = SITE.replace("14 in", "30 in");
        assert_eq!(only(&CHECK, &deep).verdict, Verdict::Fails);
        let bare = SITE.replace("built_for = [\"loop\"]", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("loop"), "{}", finding.sentence);
    }

    #[test]
    fn holds_where_the_heap_lies_elsewhere() {
        let heap = SITE.replace(
            "level = \"14 in\"",
            "level = \"6 ft\"\noutline = [[\"100 ft\", \"0 ft\", \"0 ft\"], [\"120 ft\", \"0 ft\", \"0 ft\"], [\"120 ft\", \"20 ft\", \"0 ft\"]]",
        );
        assert_eq!(only(&CHECK, &heap).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_a_mark_or_its_level() {
        let none = SITE.split("[[water_line]]").next().unwrap_or_default();
        assert_eq!(all(&CHECK, none)[0].verdict, Verdict::UnknownUntil);
        let level = SITE.replace("level = \"14 in\"", "");
        assert_eq!(only(&CHECK, &level).verdict, Verdict::UnknownUntil);
    }
}
