//! Whether a camera sees by night: its own infrared, what throws that back, and headlamps.
//!
//! The infrared on the data sheet must reach the place that matters, or else the farthest corner of the wanted area, and be
//! as wide as the picture. What stands near in the picture is lit so many times as brightly as what is far; from sixteen
//! times on, and wherever a vehicle's front at the place that matters looks within 30° of the camera, or a dome stands
//! before the lens, only a look at the picture by night answers: headlamps on, leaf moving, lens wet.

use super::{PINHOLE, cameras};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round, gate_of};
use crate::eye::{PLACES, camera, fixed, leaf_at};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::signal::{InfraredExcess, PictureAngle};
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _};
use sim::camera::{Camera, Hider};
use site::{Device, DeviceKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "camera-night",
    codes: BOTH,
    leaves_open: "rain, fog and insects before the lens, lamps of others, a window that has got dirty since, and light that the camera needs where its own infrared is off",
    concerns: "each camera",
    ask,
};

static EVEN: Source = Source {
    work: "what is lit sixteen times as brightly as the place that matters, four stops, blinds a camera to it; headlamps within 30° of it do",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "beyond it the finding asks for a look by night, and does not pass by figures",
};

/// How many times as bright something near may be.
const EXCESS: f64 = 16.0;
/// Within that angle headlamps shine into a lens, in degrees.
const HEADLAMPS: f64 = 30.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in cameras(site) {
        round.ask_in_full(About::new(&device.origin, &device.id), |asking| {
            night(asking, site, device)
        });
    }
}

fn night<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&PINHOLE);
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&EVEN);
    let lens = camera(asking, device);
    let reach = read!(asking, device.lens?.infrared_reach);
    let width = read!(asking, device.lens?.infrared_angle);
    let far = farthest(asking, device);
    let near = near(asking, site, device, lens.as_ref().ok());
    let (camera, reach, width, far, near) = (lens?, reach?, width?, far?, near?);
    let distance = far.iter().map(|at| apart(&camera, *at)).fold(0.0, f64::max);
    let picture = asking.work(&PictureAngle {
        side: camera.sensor_width,
        focal_length: camera.focal_length,
    })?;
    let mut why: Vec<String> = Vec::new();
    if let Some((name, at)) = &near {
        let lit = asking.work(&InfraredExcess {
            near: *at,
            far: Length::from_base(distance),
        })?;
        if lit.excess.base() > EXCESS {
            let print = asking.print();
            why.push(format!(
                "{name}, {} off, is lit {:.0} times as brightly as what matters",
                print.q(*at),
                lit.excess.base()
            ));
        }
    }
    if let Some(off) = headlamps(device, &camera) {
        let print = asking.print();
        why.push(format!(
            "headlamps there point within {} of it",
            print.q(off)
        ));
    }
    if device.lens.as_ref().and_then(|lens| lens.behind_glass) == Some(true) {
        why.push("a dome or window throws its own infrared back".to_owned());
    }
    let lamps = lamps(site, &camera);
    if let Some(name) = lamps {
        why.push(format!("{name} shines in its picture"));
    }
    let seen = looked_at(asking, device, !why.is_empty());
    let far = Length::from_base(distance);
    asking.say(|print| {
        let trouble = if why.is_empty() {
            "; nothing bright stands in its picture".to_owned()
        } else {
            format!("; {}", why.join(", "))
        };
        let looked = match &device.picture {
            Some(picture) if !why.is_empty() => picture
                .night_seen
                .map_or_else(String::new, |day| format!("; looked at by night on {day}")),
            _ => String::new(),
        };
        format!(
            "{} lights {} of the {} that it has to see to, {} wide for a picture of {}{trouble}{looked}.",
            capitalized(device.id.as_str()),
            print.q(reach),
            print.q(far),
            print.q(width),
            print.q(picture.angle)
        )
    });
    seen?;
    let compared = [
        Comparison::at_most(
            Labeled::new("distance of what has to be seen", far),
            Labeled::new("reach of its infrared", reach),
        ),
        Comparison::at_most(
            Labeled::new("angle of its picture", picture.angle),
            Labeled::new("angle of its infrared", width),
        ),
    ];
    Outcome::worst(compared).ok_or(Halt)
}

/// Where something says that only a look by night answers, the day of that look.
fn looked_at<'s>(asking: &mut Asking<'s>, device: &'s Device, needed: bool) -> Result<(), Halt> {
    if !needed {
        return Ok(());
    }
    let day = device
        .picture
        .as_ref()
        .and_then(|picture| picture.night_seen.as_ref());
    let origin = device
        .picture
        .as_ref()
        .map_or(&device.origin, |picture| &picture.origin);
    let key = if device.picture.is_some() {
        "night_seen"
    } else {
        "picture.night_seen"
    };
    asking.need(origin, key, day, "2026-11-20").map(|_| ())
}

fn apart(camera: &Camera, at: [Length; 3]) -> f64 {
    let off = [0, 1, 2].map(|along| (at[along] - camera.at[along]).base());
    off.iter().map(|along| along * along).sum::<f64>().sqrt()
}

/// The place that matters, or else the corners of the wanted area.
fn farthest<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Vec<[Length; 3]>, Halt> {
    if let Some(picture) = &device.picture
        && picture.target.is_some()
    {
        let at = asking.position(&picture.origin, "target", picture.target.as_ref())?;
        return Ok(vec![at]);
    }
    let area = crate::eye::wanted(asking, device)?;
    Ok(area
        .corners
        .iter()
        .map(|[x, y]| [*x, *y, area.height])
        .collect())
}

/// What stands nearest in the picture, the leaf anywhere, and how far off.
fn near<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    camera: Option<&Camera>,
) -> Result<Option<(String, Length)>, Halt> {
    let gate = gate_of(asking, site, device)?;
    let mut things = fixed(site, gate);
    for (_, share) in PLACES {
        things.extend(leaf_at(asking, gate, share)?);
    }
    let Some(camera) = camera else {
        return Ok(None);
    };
    let found = things.into_iter().filter_map(|thing| {
        let distance = framed(camera, &thing.hider)?;
        Some((thing.name, distance))
    });
    let nearest = found.min_by(|one, other| one.1.total_cmp(&other.1));
    Ok(nearest.map(|(name, distance)| (name, Length::from_base(distance))))
}

/// Steps along each side of a thing, and up it, at which it is looked at.
const STEPS: u32 = 8;

/// How far off the nearest part of a thing is that lies in the picture; what the camera hangs on is left out.
fn framed(camera: &Camera, hider: &Hider) -> Option<f64> {
    let share = |step: u32| f64::from(step) / f64::from(STEPS);
    let next = hider.corners.iter().cycle().skip(1);
    let mut nearest: Option<f64> = None;
    for (from, to) in hider.corners.iter().zip(next) {
        for along in 0..STEPS {
            let spot = [0, 1].map(|at| from[at] + (to[at] - from[at]) * share(along));
            for up in 0..=STEPS {
                let z = hider.bottom + (hider.top - hider.bottom) * share(up);
                let at = [spot[0], spot[1], z];
                let off = apart(camera, at);
                if off > MOUNT && nearest.is_none_or(|least| off < least) && camera.frames(at) {
                    nearest = Some(off);
                }
            }
        }
    }
    nearest
}

/// So near is what the camera hangs on, in meters.
const MOUNT: f64 = 0.3;

/// The angle between the way a vehicle's front looks at the place that matters and the camera, where that is small.
fn headlamps(device: &Device, camera: &Camera) -> Option<Angle> {
    let picture = device.picture.as_ref()?;
    let (target, facing) = (picture.target.as_ref()?, picture.target_facing.as_ref()?);
    let x = camera.at[0] - target.x.nominal();
    let y = camera.at[1] - target.y.nominal();
    let off = facing.nominal().base() - y.base().atan2(x.base());
    let off = off.sin().atan2(off.cos()).abs();
    (off <= HEADLAMPS.to_radians()).then(|| Angle::from_base(off))
}

/// A lamp of the site in the picture.
fn lamps<'s>(site: &'s Site, camera: &Camera) -> Option<&'s str> {
    let lamp = site.device.iter().find(|device| {
        let at = device
            .at
            .as_ref()
            .filter(|_| device.kind == DeviceKind::WarningLight);
        at.is_some_and(|at| {
            let at = [at.x.nominal(), at.y.nominal(), at.z.nominal()];
            apart(camera, at) < BRIGHT && camera.frames(at)
        })
    })?;
    Some(lamp.id.as_str())
}

/// Up to that distance a warning light is bright in a picture, in meters.
const BRIGHT: f64 = 5.0;

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SITE: &str = short_slide!(
        "0 ft",
        r#"
        solidity = "0.9"
        [[device]]
        id = "camera"
        kind = "camera"
        at = ["10 ft", "40 ft", "15 ft"]
        facing = "-90°"
        [device.lens]
        sensor_width = "5.6 mm"
        pixels_across = 2560
        pixels_down = 1440
        focal_length = "4 mm"
        tilt = "20°"
        infrared_reach = "80 ft"
        infrared_angle = "80°"
        [device.picture]
        target = ["10 ft", "5 ft", "5 ft"]
        target_facing = "0°"
    "#
    );

    #[test]
    fn holds_within_its_own_light() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_beyond_its_light_or_with_a_wider_picture() {
        let short = only(&CHECK, &SITE.replace("80 ft", "30 ft"));
        assert_eq!(short.verdict, Verdict::Fails, "{}", short.sentence);
        // 5.6 mm behind 4 mm: 70°.
        let narrow = only(&CHECK, &SITE.replace("\"80°\"", "\"60°\""));
        assert_eq!(narrow.verdict, Verdict::Fails, "{}", narrow.sentence);
    }

    #[test]
    fn unknown_with_headlamps_until_somebody_has_looked_by_night() {
        let faced = SITE.replace("target_facing = \"0°\"", "target_facing = \"80°\"");
        let finding = only(&CHECK, &faced);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let looked = only(&CHECK, &(faced + "night_seen = 2026-11-20\n"));
        assert_eq!(looked.verdict, Verdict::Holds, "{}", looked.sentence);
        assert!(
            looked.sentence.contains("2026-11-20"),
            "{}",
            looked.sentence
        );
    }

    #[test]
    fn unknown_behind_a_near_post_until_somebody_has_looked_by_night() {
        let post = SITE.replace(
            "[[device]]",
            "[[gate.post]]\nid = \"near\"\nrole = \"device\"\nat = [\"11 ft\", \"35 ft\", \"0 ft\"]\nheight = \"14 ft\"\nwidth = \"4 in\"\n[[device]]",
        );
        let finding = only(&CHECK, &post);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }
}
