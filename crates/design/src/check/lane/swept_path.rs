//! Whether each vehicle that is expected takes its lane in and out: beside all that stands there, inside the lane's edges,
//! over the grade of the drive, beneath what hangs over the gate.
//!
//! Each way is driven in steps of a centimeter along the line that leaves the most room, wide entries included, so that
//! "cannot be taken" is not the fault of a clumsy driver. The ground is held to be as it was surveyed, with sharp breaks.

use super::swept_words::{Drive, say};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::remembered::BestLine;
use crate::subject::About;
use crate::swept::{Rolling, STEP, Things, Way, drivers, gate_of, over, rolling, things, ways};
use formula::signal::OffTracking;
use formula::{Evidence, OutOfReach, Source};
use quantity::{Length, Quantity as _};
use sim::swept::{Found, Nearest, Place, Searched, Target};
use site::{CodeBasis, Lane, Site, Vehicle};
use std::sync::Arc;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-swept-path",
    codes: BOTH,
    leaves_open: "reversing, a driver who does not know the place, loads beside or behind the outline, mud, ice and soft shoulders, tires that scrub on three axles, springs that dip, parked cars and traffic on the road: drive the longest vehicle in and out once and tape its wheel marks",
    concerns: "each lane with each vehicle that is expected",
    ask,
};

static ROOM: Source = Source {
    work: "1 ft or 0.3 m kept clear beside what a vehicle sweeps at walking pace",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "shown because the vehicle states no margin of its own",
};

/// Room beside what is swept where the vehicle states none (m).
const MARGIN: (f64, f64) = (0.3048, 0.3);

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        if gate_of(site, lane).is_none() {
            continue;
        }
        for vehicle in drivers(site, lane) {
            let of_several = (site.lane.len() > 1).then_some(&lane.id);
            let about = About::passing(&vehicle.origin, &vehicle.id, of_several);
            round.ask_in_full(about, |asking| swept(asking, site, lane, vehicle));
        }
    }
}

fn swept<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    lane: &'s Lane,
    vehicle: &'s Vehicle,
) -> Answer {
    let rolling = rolling(asking, vehicle);
    let width = rolling.as_ref().map_or(Length::default(), |it| it.width);
    let ways = ways(asking, lane, width);
    let things = things(asking, site, lane);
    let margin = margin(asking, site, vehicle);
    let clear = match gate_of(site, lane) {
        Some(gate) => read!(asking, gate.clear_height),
        None => Err(Halt),
    };
    let (rolling, ways, things) = (rolling?, ways?, things?);
    steady(asking, &rolling);
    let drives: Vec<Result<Drive, Halt>> = ways
        .iter()
        .map(|way| driven(asking, (&rolling, way), &things, margin))
        .collect();
    let drives = drives.into_iter().collect::<Result<Vec<_>, _>>()?;
    let clear = clear?;
    let height = rolling.height?;
    say(asking, vehicle, &drives, (&things, margin, clear, height));
    let all = drives
        .iter()
        .flat_map(|drive| compared(drive, margin, (height, clear)));
    Outcome::worst(all.collect::<Vec<_>>()).ok_or(Halt)
}

fn margin<'s>(asking: &mut Asking<'s>, site: &'s Site, vehicle: &'s Vehicle) -> Length {
    let own = asking.read_if_there(&vehicle.origin, "margin", vehicle.margin.as_ref());
    own.unwrap_or_else(|| {
        asking.rest_on(&ROOM);
        Length::from_base(match site.site.code_basis {
            CodeBasis::Us => MARGIN.0,
            CodeBasis::Eu => MARGIN.1,
        })
    })
}

/// The off-tracking to which a steady circle at full lock would come, for the working.
fn steady(asking: &mut Asking<'_>, rolling: &Rolling) {
    let [first, rest @ ..] = rolling.rig.units.as_slice() else {
        return;
    };
    let trailer = rest.iter().map(|unit| unit.wheelbase.base().powi(2));
    let circle = OffTracking {
        radius: rolling.rig.least_radius,
        wheelbase: first.wheelbase,
        hitch: if first.hitch.base() < 0.0 {
            -first.hitch
        } else {
            first.hitch
        },
        trailer: Length::from_base(trailer.sum::<f64>().sqrt()),
    };
    asking.work_if_in_reach(&circle);
}

fn driven(
    asking: &mut Asking<'_>,
    (rolling, way): (&Rolling, &Way),
    things: &Things,
    margin: Length,
) -> Result<Drive, Halt> {
    let line = best_line(asking, rolling, way, (&things.place, margin));
    let line = asking.in_reach(line)?;
    let under = rolling.under.as_ref().map_err(|halt| *halt)?;
    let over = over(asking, rolling, under, way)?;
    Ok(Drive {
        direction: way.direction,
        gate: way.gate,
        circle: rolling.rig.least_radius,
        off_tracking: line.off_tracking,
        found: line.searched.found().cloned(),
        over,
    })
}

/// The line that leaves the most room. Where something else stands otherwise than before, only lines near it are driven again.
fn best_line(
    asking: &Asking<'_>,
    rolling: &Rolling,
    way: &Way,
    (place, margin): (&Place, Length),
) -> Result<Arc<BestLine>, OutOfReach> {
    let (rig, step) = (&rolling.rig, Length::from_base(STEP));
    let kind = (rig, &way.course, margin);
    asking.simulate_again(
        |known| &known.lines,
        (&kind, place),
        |known| {
            let known = known.and_then(Result::ok);
            let before = known.as_ref().map(|line| &line.searched);
            let searched = rig.search(&way.course, place, (margin, step), before)?;
            let path = searched.found().map(|found| &found.path);
            let is_same = path == before.and_then(Searched::found).map(|found| &found.path);
            let off_tracking = match known.filter(|_| is_same) {
                Some(known) => known.off_tracking,
                None => path.map(|path| rig.off_tracking(path)).transpose()?,
            };
            Ok(Arc::new(BestLine {
                searched,
                off_tracking,
            }))
        },
    )
}

/// The least room beside an obstacle, and inside an edge.
pub(super) fn least(found: &Found, edges: bool) -> Option<Nearest> {
    let of_kind = |one: &&Nearest| matches!(one.target, Target::Edge(_)) == edges;
    let all = found.room.nearest.iter().filter(of_kind);
    all.min_by(|one, other| one.room.base().total_cmp(&other.room.base()))
        .copied()
}

fn compared(drive: &Drive, margin: Length, (height, clear): (Length, Length)) -> Vec<Comparison> {
    let mut all = vec![
        Comparison::at_most(
            Labeled::new("rise of the ground under it", drive.over.rise()),
            Labeled::new("its underside above level ground", drive.over.underside),
        ),
        Comparison::at_most(
            Labeled::new(
                "height of its roof over the drive",
                height + drive.over.found.lifted,
            ),
            Labeled::new("height that is free at the gate", clear),
        ),
    ];
    let Some(found) = &drive.found else {
        all.push(Comparison::at_most(
            Labeled::new("circle that its front axle needs", drive.circle),
            Labeled::new("circle that the way leaves", Length::default()),
        ));
        return all;
    };
    if let Some(nearest) = least(found, false) {
        all.push(Comparison::at_most(
            Labeled::new("room that it must have beside it", margin),
            Labeled::new("least room beside what it sweeps", nearest.room),
        ));
    }
    if let Some(edge) = least(found, true).filter(|edge| edge.room.base() < 0.0) {
        all.push(Comparison::at_most(
            Labeled::new("how far its tires run over the edge", -edge.room),
            Labeled::new("how far they may", Length::default()),
        ));
    }
    all
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    /// A gate of 20 ft, 60 ft back from a road of 24 ft, its apron flared by 20 ft to each side.
    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "20 ft"
        clear_height = "16 ft"
        travel = "20 ft 8 in"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft"
        closed_end = "-3 in"
        [[gate.post]]
        id = "post-catch"
        role = "catch"
        at = ["-4 in", "0 ft", "0 ft"]
        width = "6 in"
        [[lane]]
        id = "lane"
        gate = "main"
        width = "18 ft"
        path = [["10 ft", "-60 ft", "0 ft"], ["10 ft", "0 ft", "0 ft"], ["10 ft", "80 ft", "0 ft"]]
        [[lane.way]]
        direction = "in"
        path = [["-110 ft", "-66 ft", "0 ft"], ["10 ft", "-66 ft", "0 ft"]]
        room_left = "16 ft"
        room_right = "6 ft"
        [lane.edges]
        left = [["-25 ft", "-60 ft", "0 ft"], ["1 ft", "-30 ft", "0 ft"], ["1 ft", "80 ft", "0 ft"]]
        right = [["45 ft", "-60 ft", "0 ft"], ["19 ft", "-30 ft", "0 ft"], ["19 ft", "80 ft", "0 ft"]]
        [[bollard]]
        id = "bollard-in"
        at = ["0 ft", "4 ft", "0 ft"]
        diameter = "6 in"
        height = "42 in"
        [[vehicle]]
        id = "truck"
        what = "delivery truck"
        kind = "truck"
        length = "30 ft"
        width = "8 ft"
        height = "13 ft"
        wheelbase = "20 ft"
        front_overhang = "4 ft"
        turning_radius = "41 ft 6 in"
        [vehicle.axles]
        underside = "12 in"
        front_underside = "14 in"
        rear_underside = "20 in"
    "#;

    /// The truck as a tractor with a semi-trailer of 41 ft behind the fifth wheel.
    fn with_semi() -> String {
        SITE.replace("kind = \"truck\"", "kind = \"tractor-trailer\"")
            .replace("length = \"30 ft\"", "length = \"69 ft\"")
            .replace(
                "turning_radius = \"41 ft 6 in\"",
                "turning_radius = \"44 ft 10 in\"",
            )
            .replace("wheelbase = \"20 ft\"", "wheelbase = \"19 ft 6 in\"")
            .replace(
                "rear_underside = \"20 in\"",
                "hitch = \"0 in\"\ntrailer_axle = \"41 ft\"\ntrailer_underside = \"30 in\"",
            )
    }

    #[test]
    fn holds_for_a_truck_on_a_flared_apron() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert_eq!(finding.subject.name, "truck");
    }

    #[test]
    fn fails_where_the_trailer_cuts_the_corner_and_says_where() {
        let narrow = with_semi().replace("[\"-25 ft\", \"-60 ft\"", "[\"-4 ft\", \"-60 ft\"");
        let finding = only(&CHECK, &narrow);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("left edge"),
            "{}",
            finding.sentence
        );
        assert!(finding.sentence.contains("Widened"), "{}", finding.sentence);
    }

    #[test]
    fn fails_at_a_bollard_in_the_way_on_a_crest_and_under_a_low_wire() {
        let astray = SITE.replace("at = [\"0 ft\", \"4 ft\"", "at = [\"10 ft\", \"4 ft\"");
        let finding = only(&CHECK, &astray);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("bollard-in"),
            "{}",
            finding.sentence
        );
        let crest = SITE.replace(
            "[\"10 ft\", \"80 ft\", \"0 ft\"]",
            "[\"10 ft\", \"80 ft\", \"-20 ft\"]",
        );
        // By hand: on a break of 25 % the belly of a wheelbase of 20 ft comes down by 20 ft · 0.25 / 4 = 15 in.
        let finding = only(&CHECK, &crest);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let low = SITE.replace("clear_height = \"16 ft\"", "clear_height = \"12 ft 6 in\"");
        assert_eq!(only(&CHECK, &low).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_the_steering_does_not_turn_so_far() {
        let short = SITE
            .replace("[\"-110 ft\", \"-66 ft\"", "[\"-12 ft\", \"-66 ft\"")
            .replace("\"41 ft 6 in\"", "\"60 ft\"");
        let finding = only(&CHECK, &short);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_the_way_from_the_road_and_the_circle() {
        let bare = SITE
            .replace("turning_radius = \"41 ft 6 in\"", "")
            .replace("[[lane.way]]\n        direction = \"in\"\n        path = [[\"-110 ft\", \"-66 ft\", \"0 ft\"], [\"10 ft\", \"-66 ft\", \"0 ft\"]]\n        room_left = \"16 ft\"\n        room_right = \"6 ft\"\n", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:#?}", finding.missing);
    }

    #[test]
    fn unknown_for_a_design_vehicle_from_memory_that_would_pass() {
        let like = SITE
            .replace("wheelbase = \"20 ft\"", "")
            .replace("front_overhang = \"4 ft\"", "")
            .replace("turning_radius = \"41 ft 6 in\"", "")
            .replace("[vehicle.axles]", "[vehicle.axles]\nlike = \"SU-30\"");
        assert_eq!(only(&CHECK, &like).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn bicycles_are_not_asked_about() {
        let narrow = SITE.replace("kind = \"truck\"", "kind = \"bicycle\"");
        assert!(all(&CHECK, &narrow).is_empty());
    }
}
