//! Whether a driver who leaves sees the footpath and the road in time, and if not whether a mirror really shows it.
//!
//! On the footpath has to be seen as far to each side as the fastest person comes while the vehicle still stops from the
//! speed at which it rolls out; looked at is a child's head. On the road as far as a driver needs to pull out: by the gap in
//! the traffic in the United States, by the stopping distance of the traffic elsewhere. Walls, hedges, boxes, open leaves
//! and parked cars stand between. What is hidden may be shown by a mirror in which it is large enough to be made out.

use super::seen_at_night::unwarned;
use super::view_out::{Hidden, look};
use crate::asking::{Asking, read};
use crate::check::control::view::Eye;
use crate::check::plane::{Piece, Point, nearest};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::signal::{
    ConvexMirrorImage, GapVehicle, IntersectionSightDistance, Maneuver, StoppingSightDistance,
};
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _};
use site::{CodeBasis, ExitSight, Lane, Position, Site, VehicleKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "lane-sight",
    codes: BOTH,
    leaves_open: "people who run or come out of doors beside the way, low sun and glare, mist on a mirror, planting that grows, cars that park where none are written down, and a road that bends or rises out of view",
    concerns: "each lane on which vehicles leave",
    ask,
};

static LINES: Source = Source {
    work: "straight lines of sight over and past what stands between",
    clause: "",
    evidence: Evidence::Physics,
    seen: "similar triangles",
};

static MADE_OUT: Source = Source {
    work: "least size at which a person is made out in a mirror",
    clause: "a child's head 3 ft up; 0.2°: twelve times the finest detail of a good eye",
    evidence: Evidence::CommonPractice,
    seen: "sharpness of a good eye is one minute of arc; twelve details across a figure",
};

/// Height of a small child's head, in meters.
const CHILD: f64 = 0.9;
/// Height at which a car on the road is looked for: 3.5 ft.
const CAR: f64 = 3.5 * 0.3048;
/// Least angle under which a person is made out, in degrees.
const LEAST: f64 = 0.2;
/// How it is written.
const EXIT: &str = "[lane.exit_sight]\neye = [\"14 ft\", \"-80 ft\", \"42 in\"]\nexit_speed = \"3 mph\"\npeople_cross = true\ncrossing_speed = \"10 ft/s\"\nfootpath = [[\"-100 ft\", \"-90 ft\", \"0 ft\"], [\"120 ft\", \"-90 ft\", \"0 ft\"]]\nroad = [[\"-500 ft\", \"-100 ft\", \"0 ft\"], [\"500 ft\", \"-100 ft\", \"0 ft\"]]\nroad_speed = \"30 mph\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for lane in &site.lane {
        round.ask(About::new(&lane.origin, &lane.id), |asking| {
            sight(asking, site, lane)
        });
    }
}

/// What has to be in view.
struct Wanted {
    what: &'static str,
    piece: Piece,
    height: f64,
}

fn sight<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    asking.rest_on(&LINES);
    let sight = asking.need(&lane.origin, "exit_sight", lane.exit_sight.as_ref(), EXIT)?;
    let eye = asking.position(&sight.origin, "eye", sight.eye.as_ref());
    let footpath = footpath(asking, sight, &eye);
    let road = road(asking, site, (sight, &eye));
    let (eye, footpath, road) = (eye?, footpath?, road?);
    let eye = Eye {
        at: (eye[0].base(), eye[1].base()),
        height: eye[2].base(),
    };
    let mut said = Vec::new();
    let mut held = Vec::new();
    for wanted in footpath.iter().chain([&road]) {
        let hidden = look(
            asking,
            site,
            (lane, sight),
            eye,
            (&wanted.piece, wanted.height),
        )?;
        let (sentence, comparison) = judged(asking, sight, eye, (wanted, &hidden))?;
        said.push(sentence);
        held.push(comparison);
    }
    asking.say(|_| said.join(" "));
    let held: Vec<Comparison> = held.into_iter().flatten().collect();
    Ok(Outcome::worst(held).unwrap_or(Outcome::Rule(true)))
}

/// The stretch of footpath from which somebody comes while the vehicle still stops.
fn footpath<'s>(
    asking: &mut Asking<'s>,
    sight: &'s ExitSight,
    eye: &Result<[Length; 3], Halt>,
) -> Result<Option<Wanted>, Halt> {
    if !told(asking, &sight.origin, "people_cross", sight.people_cross)? {
        return Ok(None);
    }
    asking.rest_on(&MADE_OUT);
    let speed = read!(asking, sight.exit_speed);
    let comes = read!(asking, sight.crossing_speed);
    let line = line(asking, sight, ("footpath", &sight.footpath));
    let stop = asking.work(&StoppingSightDistance {
        speed: speed?,
        ..unwarned()
    })?;
    let away: Length = comes? * stop.total_time;
    let ((line, level), [x, y, _]) = (line?, (*eye)?);
    Ok(Some(stretch(
        ("the footpath", level + CHILD),
        line,
        (x.base(), y.base()),
        away.base(),
    )))
}

/// The stretch of road on which traffic has to be seen.
fn road<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (sight, eye): (&'s ExitSight, &Result<[Length; 3], Halt>),
) -> Result<Wanted, Halt> {
    let road_speed = read!(asking, sight.road_speed);
    let line = line(asking, sight, ("road", &sight.road));
    let (road_speed, (line, level), [x, y, _]) = (road_speed?, line?, (*eye)?);
    let away = match site.site.code_basis {
        CodeBasis::Us => {
            let gap = IntersectionSightDistance {
                road_speed,
                vehicle: slowest(site),
                maneuver: Maneuver::LeftTurn,
            };
            asking.work(&gap)?.distance
        }
        CodeBasis::Eu => {
            let stop = StoppingSightDistance {
                speed: road_speed,
                ..unwarned()
            };
            asking.work(&stop)?.total_distance
        }
    };
    Ok(stretch(
        ("the road", level + CAR),
        line,
        (x.base(), y.base()),
        away.base(),
    ))
}

/// What takes longest to be under way among the vehicles that come every day.
fn slowest(site: &Site) -> GapVehicle {
    use VehicleKind::{Machine, TractorTrailer, Truck, WithTrailer};
    let daily = || {
        site.vehicle
            .iter()
            .filter(|vehicle| vehicle.fire_apparatus != Some(true))
    };
    let any = |kinds: &[VehicleKind]| {
        daily().any(|vehicle| vehicle.kind.is_some_and(|kind| kinds.contains(&kind)))
    };
    if any(&[TractorTrailer, WithTrailer]) {
        GapVehicle::Combination
    } else if any(&[Truck, Machine]) {
        GapVehicle::Truck
    } else {
        GapVehicle::Car
    }
}

/// Both ends of a line of the site, and its height half way.
fn line<'s>(
    asking: &mut Asking<'s>,
    sight: &'s ExitSight,
    (key, points): (&'static str, &'s [Position]),
) -> Result<(Piece, f64), Halt> {
    let [from, .., to] = points else {
        return asking.lack(
            &sight.origin,
            key,
            crate::asking::Wants::Written(
                "[[\"-100 ft\", \"-90 ft\", \"0 ft\"], [\"120 ft\", \"-90 ft\", \"0 ft\"]]",
            ),
        );
    };
    let mut at = |point: &'s Position| {
        asking
            .position_as_written((&sight.origin, key), Some(point))
            .map(|at| at.map(Length::base))
    };
    let ([x, y, z], [x2, y2, z2]) = (at(from)?, at(to)?);
    Ok(([(x, y), (x2, y2)], f64::midpoint(z, z2)))
}

/// So far to each side of the place where the way out crosses a line, and not beyond its ends.
fn stretch((what, height): (&'static str, f64), line: Piece, eye: Point, away: f64) -> Wanted {
    let crossing = nearest(eye, &line);
    let toward = |end: Point| {
        let (x, y) = (end.0 - crossing.0, end.1 - crossing.1);
        let length = x.hypot(y);
        let share = if length > away { away / length } else { 1.0 };
        (crossing.0 + x * share, crossing.1 + y * share)
    };
    Wanted {
        what,
        piece: [toward(line[0]), toward(line[1])],
        height,
    }
}

fn long(piece: &Piece) -> f64 {
    (piece[1].0 - piece[0].0).hypot(piece[1].1 - piece[0].1)
}

/// One stretch in words, and what is there against what is asked of it; nothing where the whole of it is in view.
fn judged<'s>(
    asking: &mut Asking<'s>,
    sight: &'s ExitSight,
    eye: Eye,
    (wanted, hidden): (&Wanted, &Hidden),
) -> Result<(String, Option<Comparison>), Halt> {
    let length = long(&wanted.piece);
    let seen = Length::from_base(length - hidden.length);
    let whole = Length::from_base(length);
    let direct = Comparison::at_most(
        Labeled::new("length that has to be in view", whole),
        Labeled::new("length in view", seen),
    );
    let print = asking.print();
    if direct.holds() {
        let said = format!(
            "Of {} {} have to be in view, both sides together, and all of it is.",
            wanted.what,
            print.q(whole)
        );
        return Ok((said, None));
    }
    if sight.mirror.is_none() {
        let why = hidden.by.as_ref().map_or_else(String::new, |name| {
            format!(", the rest behind {name}: lower it, or set a mirror across the way")
        });
        let said = format!(
            "Of {} {} have to be in view, both sides together, and {} are{why}.",
            wanted.what,
            print.q(whole),
            print.q(seen)
        );
        return Ok((said, Some(direct)));
    }
    let apparent = mirrored(asking, sight, eye, (wanted, hidden))?;
    let said = format!(
        "Of {} {} are hidden from the driver; in the mirror somebody at the far end looks {} tall.",
        wanted.what,
        print.q(Length::from_base(hidden.length)),
        print.q(apparent)
    );
    let comparison = Comparison::at_most(
        Labeled::new(
            "least size in the mirror",
            Angle::from_base(LEAST.to_radians()),
        ),
        Labeled::new("size in the mirror", apparent),
    );
    Ok((said, Some(comparison)))
}

/// How large the farthest person of a hidden stretch looks in the mirror; nothing large where the mirror does not show it.
fn mirrored<'s>(
    asking: &mut Asking<'s>,
    sight: &'s ExitSight,
    eye: Eye,
    (wanted, hidden): (&Wanted, &Hidden),
) -> Result<Angle, Halt> {
    asking.rest_on(&MADE_OUT);
    let Some(mirror) = &sight.mirror else {
        return Err(Halt);
    };
    let at = asking.position(&mirror.origin, "at", mirror.at.as_ref());
    let radius = read!(asking, mirror.radius);
    let shows = told(asking, &mirror.origin, "shows_it", mirror.shows_it);
    let ([x, y, z], radius, shows) = (at?, radius?, shows?);
    if !shows {
        return Ok(Angle::from_base(0.0));
    }
    let (x, y, z) = (x.base(), y.base(), z.base());
    let far = hidden
        .ends
        .iter()
        .map(|point| (point.0 - x).hypot(point.1 - y).hypot(wanted.height - z))
        .fold(0.0, f64::max);
    let near = (eye.at.0 - x).hypot(eye.at.1 - y).hypot(eye.height - z);
    let image = asking.work(&ConvexMirrorImage {
        radius,
        object_distance: Length::from_base(far),
        object_height: Length::from_base(CHILD),
        eye_distance: Length::from_base(near),
    })?;
    Ok(image.apparent)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SITE: &str = short_slide!(
        "-6 in",
        r#"
        solidity = "0.3"
        [[lane]]
        id = "drive"
        gate = "main"
        [lane.exit_sight]
        eye = ["10 ft", "-60 ft", "42 in"]
        exit_speed = "3 mph"
        people_cross = true
        crossing_speed = "10 ft/s"
        footpath = [["-200 ft", "-70 ft", "0 ft"], ["220 ft", "-70 ft", "0 ft"]]
        road = [["-900 ft", "-85 ft", "0 ft"], ["900 ft", "-85 ft", "0 ft"]]
        road_speed = "30 mph"
    "#
    );

    const HEDGE: &str = "hides = [{ what = \"hedge\", from = [\"-60 ft\", \"-64 ft\", \"0 ft\"], to = [\"0 ft\", \"-64 ft\", \"0 ft\"], height = \"5 ft\" }]\n";

    fn with(lines: &str) -> String {
        format!("{}\n{lines}", SITE.trim_end())
    }

    #[test]
    fn holds_over_open_ground_and_over_a_low_hedge() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let low = with(&HEDGE.replace("5 ft", "18 in"));
        let finding = only(&CHECK, &low);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_a_hedge_and_names_it() {
        let finding = only(&CHECK, &with(HEDGE));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("hedge"), "{}", finding.sentence);
    }

    #[test]
    fn a_mirror_shows_it_only_if_it_is_large_enough() {
        let mirror = "mirror = { at = [\"4 ft\", \"-90 ft\", \"8 ft\"], radius = \"8 ft\", shows_it = true }\n";
        let far = format!("{}\n{HEDGE}{mirror}", SITE.trim_end());
        let finding = only(&CHECK, &far);
        assert_eq!(
            finding.verdict,
            Verdict::Fails,
            "three hundred feet off: {}",
            finding.sentence
        );
        let near = far.replace("[\"-900 ft\", \"-85 ft\"", "[\"-60 ft\", \"-85 ft\"");
        let finding = only(&CHECK, &near);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let blind = near.replace("shows_it = true", "shows_it = false");
        assert_eq!(only(&CHECK, &blind).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_eye_and_speed() {
        let bare = SITE
            .replace("eye = [\"10 ft\", \"-60 ft\", \"42 in\"]", "")
            .replace("road_speed = \"30 mph\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }
}
