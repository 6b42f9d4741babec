//! Whether somebody in a wheelchair or with a cane passes the walk gate, and reaches and works what belongs to it.
//!
//! Each walk gate, each line that people take and each place where they stop is asked for itself, item by item: widths,
//! threshold, handle, forces, closer; slopes, grooves and lips; height, clear ground, force.

use super::limits::{Item, Way, held_to, latch, reached, slides, slope, slow_enough};
use super::way::WALK_GATE;
use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Comparison, Halt, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::protection::ReachApproach;
use quantity::{Force, Length, Quantity as _};
use site::{
    CodeBasis, ExitHardware, FootRoute, FootStop, Gate, Position, ReachFrom, Site, WalkGate,
    WalkLock, WalkWay,
};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "foot-accessible",
    codes: BOTH,
    leaves_open: "whether these rules apply here, room to stand and turn on each side of the walk gate, grip of handles with a closed fist, the force of an outdoor gate on hinges, ramps and landings, and in Europe the closer and local law: ask the authority",
    concerns: "each walk gate, line of people on foot and place where they stop",
    ask,
};

/// A threshold no higher than this may be upright all the way, in meters: 1/4 in.
const LOW: f64 = 0.006_35;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let basis = site.site.code_basis;
    if site.walk_gate.is_empty() && !site.gate.is_empty() {
        round.ask(About::site(&site.site.origin), |asking| {
            asking.lack(&site.origin, "walk_gate", Wants::Table(WALK_GATE))
        });
    }
    for gate in &site.walk_gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            let items = walk_gate(asking, basis, gate)?;
            Ok(told(asking, &gate.id, &items))
        });
    }
    for route in &site.foot_route {
        round.ask(About::new(&route.origin, &route.id), |asking| {
            let items = along(asking, basis, site, route)?;
            Ok(told(asking, &route.id, &items))
        });
    }
    for stop in &site.foot_stop {
        round.ask(About::new(&stop.origin, &stop.id), |asking| {
            let items = at_stop(asking, basis, site, stop)?;
            Ok(told(asking, &stop.id, &items))
        });
    }
}

/// The items one by one, and the worst of them as the answer.
fn told(asking: &mut Asking<'_>, name: &site::Id, items: &[Comparison]) -> Outcome {
    let worst = Outcome::worst(items.iter().copied());
    for item in items {
        asking.note(|print| line(print, item));
    }
    let broken = items.iter().filter(|item| !item.holds()).count();
    asking.say(|print| {
        let name = capitalized(name.as_str());
        match &worst {
            Some(Outcome::Compared(worst)) if broken > 0 => format!(
                "{name}: {broken} of {} items shut somebody out, first of all this one: {}",
                items.len(),
                line(print, worst)
            ),
            Some(Outcome::Compared(worst)) => format!(
                "{name}: {}; the tightest: {}",
                if items.len() == 1 {
                    "one item asked".to_owned()
                } else {
                    format!("{} items asked", items.len())
                },
                line(print, worst)
            ),
            _ => format!("{name}: nothing there that a wheel or a cane could meet."),
        }
    });
    worst.unwrap_or(Outcome::Rule(true))
}

fn line(print: Print, item: &Comparison) -> String {
    format!(
        "{} {}; {} {}.",
        item.demand.label,
        print.value(&item.demand.value),
        item.capacity.label,
        print.value(&item.capacity.value)
    )
}

fn walk_gate<'s>(
    asking: &mut Asking<'s>,
    basis: CodeBasis,
    gate: &'s WalkGate,
) -> Result<Vec<Comparison>, Halt> {
    let kind = pick!(asking, gate.kind);
    let width = read!(asking, gate.clear_width);
    if kind.as_ref().is_ok_and(|kind| *kind == WalkWay::Open) {
        return Ok(vec![held_to(asking, basis, Item::Width, width?)?]);
    }
    let threshold = read!(asking, gate.threshold);
    let step = match &gate.threshold_step {
        None if threshold.as_ref().map_or(true, |whole| whole.base() <= LOW) => Ok(None),
        _ => read!(asking, gate.threshold_step).map(Some),
    };
    let by_hand = by_hand(asking, gate);
    let closer = asking
        .need(&gate.origin, "closer", gate.closer.as_ref(), "true")
        .copied();
    let closing = match closer {
        Ok(true) if basis == CodeBasis::Us => read!(asking, gate.closing_time).map(Some),
        _ => Ok(None),
    };
    let moving = match kind {
        Ok(WalkWay::Sliding) => read!(asking, gate.opening_force).map(Some),
        _ => Ok(None),
    };
    let (_, _) = (kind?, closer?);
    let mut items = vec![
        held_to(asking, basis, Item::Width, width?)?,
        held_to(asking, basis, Item::Threshold, threshold?)?,
    ];
    if let Some(step) = step? {
        items.push(held_to(asking, basis, Item::Step, step)?);
    }
    if let Some((height, force)) = by_hand? {
        items.push(held_to(asking, basis, Item::LowHandle, height)?);
        items.push(held_to(asking, basis, Item::HighHandle, height)?);
        items.push(latch(asking, basis, force)?);
    }
    if let Some(time) = closing? {
        items.push(slow_enough(asking, time)?);
    }
    if let Some(force) = moving? {
        items.push(slides(asking, basis, force)?);
    }
    Ok(items)
}

/// Height and force of the handle; nothing where a push opens it.
fn by_hand<'s>(
    asking: &mut Asking<'s>,
    gate: &'s WalkGate,
) -> Result<Option<(Length, Force)>, Halt> {
    let lock = pick!(asking, gate.lock);
    let exit = pick!(asking, gate.exit_by);
    if let (Ok(WalkLock::Unlocked), Ok(ExitHardware::Push)) = (&lock, &exit) {
        return Ok(None);
    }
    let height = read!(asking, gate.hardware_height);
    let force = read!(asking, gate.latch_force);
    let (_, _) = (lock?, exit?);
    Ok(Some((height?, force?)))
}

fn along<'s>(
    asking: &mut Asking<'s>,
    basis: CodeBasis,
    site: &'s Site,
    route: &'s FootRoute,
) -> Result<Vec<Comparison>, Halt> {
    let width = read!(asking, route.width);
    let steep = read!(asking, route.slope);
    let cross = read!(asking, route.cross_slope);
    let groove = read!(asking, route.groove);
    let lip = read!(asking, route.lip);
    let (width, steep, cross, groove, lip) = (width?, steep?, cross?, groove?, lip?);
    let crossed = site.gate.iter().find(|gate| crosses_track(route, gate));
    if let Some(gate) = crossed.filter(|_| groove.base() <= 0.0) {
        let gate = gate.id.clone();
        asking.note(|_| format!("The line crosses the track of {gate}: its groove counts."));
        return asking
            .lack_of::<Length>(&route.origin, "groove")
            .map(|_| Vec::new());
    }
    Ok(vec![
        held_to(asking, basis, Item::RouteWidth, width)?,
        held_to(asking, basis, Item::Groove, groove)?,
        held_to(asking, basis, Item::Lip, lip)?,
        slope(asking, basis, steep, Way::Along),
        slope(asking, basis, cross, Way::Across),
    ])
}

/// The line crosses the gate line where a ground track lies.
fn crosses_track(route: &FootRoute, gate: &Gate) -> bool {
    let length = gate.track.as_ref().and_then(|track| track.length.as_ref());
    let end = length.map_or(0.0, |length| length.nominal().base());
    let at = |position: &Position| (position.x.nominal().base(), position.y.nominal().base());
    route.path.windows(2).any(|leg| match leg {
        [from, to] => {
            let (from, to) = (at(from), at(to));
            (from.1 > 0.0) != (to.1 > 0.0) && {
                let x = from.0 + from.1 / (from.1 - to.1) * (to.0 - from.0);
                (0.0..=end).contains(&x)
            }
        }
        _ => false,
    })
}

fn at_stop<'s>(
    asking: &mut Asking<'s>,
    basis: CodeBasis,
    site: &'s Site,
    stop: &'s FootStop,
) -> Result<Vec<Comparison>, Halt> {
    let device = stop
        .device
        .as_ref()
        .and_then(|id| site.device.iter().find(|device| device.id == *id));
    let at = match (&stop.at, device) {
        (None, Some(device)) => asking.position(&device.origin, "at", device.at.as_ref()),
        _ => asking.position(&stop.origin, "at", stop.at.as_ref()),
    };
    let stand = asking.position(&stop.origin, "stand_at", stop.stand_at.as_ref());
    let approach = pick!(asking, stop.approach);
    let depth = read!(asking, stop.obstruction_depth);
    let wide = read!(asking, stop.ground_width);
    let long = read!(asking, stop.ground_length);
    let force = read!(asking, stop.force);
    let ([_, _, up], [_, _, ground]) = (at?, stand?);
    let approach = match approach? {
        ReachFrom::Side => ReachApproach::Side,
        ReachFrom::Front => ReachApproach::Front,
    };
    let mut items = reached(asking, basis, (approach, depth?), up - ground)?;
    items.push(held_to(asking, basis, Item::GroundWidth, wide?)?);
    items.push(held_to(asking, basis, Item::GroundLength, long?)?);
    items.push(latch(asking, basis, force?)?);
    Ok(items)
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
        [[walk_gate]]
        id = "walk"
        kind = "hinged gate"
        clear_width = "36 in"
        lock = "latch"
        exit_by = "lever"
        hardware_height = "40 in"
        latch_force = "4 lbf"
        closer = true
        closing_time = "6 s"
        threshold = "3/8 in"
        threshold_step = "1/4 in"
    "#;

    const ROUTE: &str = r#"
        [[foot_route]]
        id = "to-the-office"
        width = "4 ft"
        slope = "0.03"
        cross_slope = "0.01"
        groove = "0 in"
        lip = "1/4 in"
        path = [["-12 ft", "-20 ft", "0 in"], ["-12 ft", "20 ft", "0 in"]]
    "#;

    const STOP: &str = r#"
        [[foot_stop]]
        id = "bell"
        what = "bell"
        at = ["-14 ft", "-2 ft", "40 in"]
        stand_at = ["-14 ft", "-4 ft", "-2 in"]
        approach = "front"
        obstruction_depth = "0 in"
        ground_width = "36 in"
        ground_length = "5 ft"
        force = "2 lbf"
    "#;

    fn verdicts(text: &str) -> Vec<Verdict> {
        all(&CHECK, text).iter().map(|one| one.verdict).collect()
    }

    #[test]
    fn holds_at_gate_and_bell_and_asks_the_line_to_be_looked_up() {
        let text = format!("{SITE}{ROUTE}{STOP}");
        let expected = [Verdict::Holds, Verdict::UnknownUntil, Verdict::Holds];
        assert_eq!(verdicts(&text), expected, "{:#?}", all(&CHECK, &text));
    }

    #[test]
    fn fails_item_by_item() {
        for (from, to) in [
            ("\"36 in\"\n        lock", "\"31 in\"\n        lock"),
            ("\"40 in\"\n        latch", "\"52 in\"\n        latch"),
            ("\"40 in\"\n        latch", "\"30 in\"\n        latch"),
            ("\"4 lbf\"", "\"6 lbf\""),
            ("\"6 s\"", "\"3 s\""),
            ("\"3/8 in\"", "\"3/4 in\""),
            ("threshold_step = \"1/4 in\"", "threshold_step = \"3/8 in\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
        let text = format!("{SITE}{ROUTE}{STOP}");
        for (at, from, to) in [
            (1, "slope = \"0.03\"", "slope = \"0.08\""),
            (1, "groove = \"0 in\"", "groove = \"1 in\""),
            (2, "\"40 in\"]", "\"55 in\"]"),
            (2, "\"40 in\"]", "\"10 in\"]"),
            (2, "\"2 lbf\"", "\"7 lbf\""),
            (2, "ground_width = \"36 in\"", "ground_width = \"24 in\""),
        ] {
            let found = verdicts(&text.replace(from, to));
            assert_eq!(found.get(at), Some(&Verdict::Fails), "{to}");
        }
    }

    #[test]
    fn unknown_lists_what_is_missing_and_a_line_over_a_track_wants_its_groove() {
        let bare = SITE.split("clear_width").next().unwrap_or_default();
        assert_eq!(only(&CHECK, bare).missing.len(), 7);
        let tracked = format!(
            "{SITE}{ROUTE}[[gate]]\nid = \"main\"\nkind = \"track-slide\"\n[gate.track]\nlength = \"40 ft\"\n"
        )
        .replace("\"-12 ft\", \"20 ft\"", "\"20 ft\", \"20 ft\"");
        let found = all(&CHECK, &tracked);
        let missing = found.get(1).map(|finding| finding.missing.len());
        assert_eq!(missing, Some(1), "{found:#?}");
    }

    #[test]
    fn unknown_in_europe_until_the_figures_are_looked_up() {
        let europe = format!("{SITE}{STOP}")
            .replace("\"us\"", "\"eu\"")
            .replace("\"36 in\"", "\"1500 mm\"")
            .replace("\"1/4 in\"", "\"3 mm\"");
        assert_eq!(
            verdicts(&europe),
            [Verdict::UnknownUntil; 2],
            "{:#?}",
            all(&CHECK, &europe)
        );
    }
}
