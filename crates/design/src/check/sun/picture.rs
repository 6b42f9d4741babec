//! For how many hours of a year the sun stands in a camera's picture, on a display, or in the eyes of a driver.
//!
//! In a picture any part of the sun's disc counts. On a display it counts up to 60° from straight before it and below what
//! its hood shades. A driver's eyes are taken to look along the lane at the gate, and the sun within 20° of that dazzles.
//! The owner says for how many hours that will do.

use super::POSITION;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::eye::{camera, compass, picture, worst, year_of};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _};
use sim::glare::{GlareYear, Look, Opening};
use site::{Device, DeviceKind, Lane, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "sun-in-the-picture",
    codes: BOTH,
    leaves_open: "clouds, sun thrown back by glass, water or a wet road, a dirty windshield, and contrast that is lost while the sun stands just outside the picture",
    concerns: "each camera, each intercom with a display, each lane",
    ask,
};

static DAZZLE: Source = Source {
    work: "the sun dazzles within 20° of where somebody looks, and washes a display out within 60° of straight before it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "half of the sun's light falls on a face at 60°; the angles are chosen, and the hours are looked at and not judged for drivers",
};

/// Half the angle in which the sun dazzles a driver, and in which it washes a display out, in degrees.
const EYES: f64 = 20.0;
const DISPLAY: f64 = 60.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in &site.device {
        let asked = match device.kind {
            DeviceKind::Camera => in_picture,
            DeviceKind::Intercom => on_display,
            _ => continue,
        };
        round.ask_in_full(About::new(&device.origin, &device.id), |asking| {
            asked(asking, site, device)
        });
    }
    for lane in &site.lane {
        round.ask_in_full(About::new(&lane.origin, &lane.id), |asking| {
            in_eyes(asking, site, lane)
        });
    }
}

fn in_picture<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&POSITION);
    let lens = camera(asking, device);
    let compass = compass(asking, site);
    let accepted = accepted(asking, device);
    let (camera, compass) = (lens?, compass?);
    let hood = hood(asking, device);
    let look = Look {
        hood,
        ..compass.look(camera.pan, -camera.tilt, picture(&camera))
    };
    let (years, zone) = year_of(asking, &compass, &[look])?;
    judged(
        asking,
        device,
        (years.first(), zone),
        accepted,
        "in its picture",
    )
}

fn on_display<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&POSITION);
    asking.rest_on(&DAZZLE);
    let shows = device
        .strong_light
        .as_ref()
        .and_then(|strong| strong.display);
    match shows {
        Some(false) => {
            asking.say(|_| format!("{} has no display.", capitalized(device.id.as_str())));
            return Ok(Outcome::Rule(true));
        }
        Some(true) => {}
        None => {
            let (origin, key) = match &device.strong_light {
                Some(strong) => (&strong.origin, "display"),
                None => (&device.origin, "strong_light.display"),
            };
            return asking.lack(origin, key, Wants::Written("true"));
        }
    }
    let compass = compass(asking, site);
    let facing = read!(asking, device.facing);
    let accepted = accepted(asking, device);
    let (compass, facing) = (compass?, facing?);
    let hood = hood(asking, device);
    let opening = Opening::Cone {
        half: Angle::from_base(DISPLAY.to_radians()),
    };
    let look = Look {
        hood,
        ..compass.look(facing, Angle::from_base(0.0), opening)
    };
    let (years, zone) = year_of(asking, &compass, &[look])?;
    judged(
        asking,
        device,
        (years.first(), zone),
        accepted,
        "on its display",
    )
}

fn hood<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Option<Angle> {
    let strong = device.strong_light.as_ref()?;
    asking.read_if_there(&strong.origin, "hood", strong.hood.as_ref())
}

fn accepted<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
) -> Option<Result<quantity::Time, Halt>> {
    let strong = device.strong_light.as_ref()?;
    strong.accepted.as_ref()?;
    Some(read!(asking, strong.accepted))
}

/// The hours against those that the owner accepts; where there are none, nobody has to accept any.
fn judged<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    (year, zone): (Option<&GlareYear>, i32),
    accepted: Option<Result<quantity::Time, Halt>>,
    place: &str,
) -> Answer {
    let Some(year) = year else { return Err(Halt) };
    let name = capitalized(device.id.as_str());
    if year.total.base() <= 0.0 {
        asking.say(|_| format!("{name}: the sun never stands {place}."));
        return Ok(Outcome::Rule(true));
    }
    asking.say(|_| format!("{name}: the sun stands {place} {}.", worst(year, zone)));
    let Some(accepted) = accepted else {
        let (origin, key) = match &device.strong_light {
            Some(strong) => (&strong.origin, "accepted"),
            None => (&device.origin, "strong_light.accepted"),
        };
        return asking.lack(origin, key, Wants::Written("\"40 h\""));
    };
    Ok(Outcome::at_most(
        Labeled::new("time in a year with the sun in it", year.total),
        Labeled::new("time that the owner accepts", accepted?),
    ))
}

/// The eyes of drivers who come in and go out.
fn in_eyes<'s>(asking: &mut Asking<'s>, site: &'s Site, lane: &'s Lane) -> Answer {
    asking.rest_on(&POSITION);
    asking.rest_on(&DAZZLE);
    let compass = compass(asking, site);
    let path = path(asking, lane);
    let (compass, path) = (compass?, path?);
    let opening = Opening::Cone {
        half: Angle::from_base(EYES.to_radians()),
    };
    let mut looks = Vec::with_capacity(2);
    let mut ways = Vec::with_capacity(2);
    let at = crossing(&path);
    if let Some(before) = at.checked_sub(1).and_then(|at| path.get(at)) {
        looks.push(compass.look_along(*before, path[at], opening));
        ways.push("coming in");
    }
    if let Some(behind) = path.get(at + 1) {
        looks.push(compass.look_along(*behind, path[at], opening));
        ways.push("going out");
    }
    let (years, zone) = year_of(asking, &compass, &looks)?;
    let most = years
        .iter()
        .map(|year| year.total.base())
        .fold(0.0, f64::max);
    asking.say(|_| {
        let each = ways.iter().zip(&years).map(|(way, year)| {
            if year.total.base() > 0.0 {
                format!(
                    "{way} the sun stands in the driver's eyes {}",
                    worst(year, zone)
                )
            } else {
                format!("{way} it never does")
            }
        });
        format!("On {}, {}.", lane.id, each.collect::<Vec<_>>().join("; "))
    });
    Ok(Outcome::Figure(Labeled::new(
        "time in a year with the sun in a driver's eyes",
        quantity::Time::from_base(most),
    )))
}

fn path<'s>(asking: &mut Asking<'s>, lane: &'s Lane) -> Result<Vec<[Length; 3]>, Halt> {
    if lane.path.len() < 2 {
        return asking.lack(
            &lane.origin,
            "path",
            Wants::Written("[[\"10 ft\", \"-60 ft\", \"0 ft\"], [\"10 ft\", \"0 ft\", \"0 ft\"], [\"10 ft\", \"40 ft\", \"0 ft\"]]"),
        );
    }
    let corner = |at| asking.position_as_written((&lane.origin, "path"), Some(at));
    lane.path.iter().map(corner).collect()
}

/// The corner of the path that is nearest to the gate line.
fn crossing(path: &[[Length; 3]]) -> usize {
    let off = |at: &usize| path[*at][1].base().abs();
    (0..path.len())
        .min_by(|one, other| off(one).total_cmp(&off(other)))
        .unwrap_or(0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    /// True north is +y: the camera looks west.
    const SITE: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [place]
        latitude = "47°"
        longitude = "9°"
        north = "90°"
        [[gate]]
        id = "court"
        kind = "single-swing"
        [[device]]
        id = "camera"
        kind = "camera"
        at = ["0 m", "0 m", "3 m"]
        facing = "180°"
        [device.lens]
        sensor_width = "4.8 mm"
        pixels_across = 1920
        pixels_down = 1080
        focal_length = "4 mm"
        tilt = "10°"
        [device.strong_light]
        accepted = "900 h"
    "#;

    #[test]
    fn holds_within_what_the_owner_accepts_and_steeply_tilted() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let steep = only(
            &CHECK,
            &SITE
                .replace("\"10°\"", "\"30°\"")
                .replace("accepted = \"900 h\"", ""),
        );
        assert_eq!(steep.verdict, Verdict::Holds, "{}", steep.sentence);
        assert!(steep.sentence.contains("never"), "{}", steep.sentence);
    }

    #[test]
    fn fails_beyond_it() {
        let finding = only(&CHECK, &SITE.replace("900 h", "5 h"));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn a_hood_helps_a_display_and_a_station_without_one_is_fine() {
        let station = SITE.split("[[device]]").next().unwrap().to_owned()
            + "[[device]]\nid = \"station\"\nkind = \"intercom\"\nfacing = \"180°\"\n[device.strong_light]\ndisplay = true\naccepted = \"600 h\"\n";
        let bare = only(&CHECK, &station);
        assert_eq!(bare.verdict, Verdict::Fails, "{}", bare.sentence);
        let hooded = only(&CHECK, &(station.clone() + "hood = \"15°\"\n"));
        assert_eq!(hooded.verdict, Verdict::Holds, "{}", hooded.sentence);
        let without = only(
            &CHECK,
            &station.replace("display = true", "display = false"),
        );
        assert_eq!(without.verdict, Verdict::Holds);
    }

    #[test]
    fn a_driver_gets_a_figure() {
        // True north is +x: the way in leads west.
        let head = SITE.split("[[device]]").next().unwrap();
        let lane = head.replace("north = \"90°\"", "north = \"0°\"")
            + "[[lane]]\nid = \"lane\"\npath = [[\"0 m\", \"-20 m\", \"0 m\"], [\"0 m\", \"0 m\", \"0 m\"], [\"0 m\", \"20 m\", \"0 m\"]]\n";
        let finding = &all(&CHECK, &lane)[0];
        assert_eq!(finding.verdict, Verdict::FigureOnly, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("coming in"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_the_owner_has_accepted_it() {
        let finding = only(&CHECK, &SITE.replace("accepted = \"900 h\"", ""));
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
