//! Whether a camera shows enough of the place that matters: detail, angle, sharpness while it moves.
//!
//! The detail is that of the level which the description names, by the edition of the standard to which that level belongs.
//! A plate needs the pixels that the software asks for, or 130 across it, and is read at no more than 30° from the side
//! and from above. What moves may smear over two pixels. A post or a fence in the line of sight is named.

use super::lenses::{Wanted, lenses};
use super::target::{Target, density, speed, target};
use super::{PINHOLE, cameras};
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round, gate_of};
use crate::eye::{camera, finest, fixed};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::signal::{MotionBlur, PlateView};
use formula::{Evidence, Source};
use quantity::{Angle, Length, Quantity as _, Ratio, Time, Velocity, Word as _};
use sim::camera::Camera;
use site::{Device, Picture, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "camera-detail",
    codes: BOTH,
    leaves_open: "sway of what carries it, compression of the stream, a lens that is out of focus or dirty, light at the target, and the leaf or a vehicle in the line of sight",
    concerns: "each camera",
    ask,
};

static PLATES: Source = Source {
    work: "manuals of software that reads plates: 130 pixels across a plate, at most 30° from the side and from above",
    clause: "",
    evidence: Evidence::Seen,
    seen: "two manuals (publishers withheld); a third asks for 170 pixels across a plate of 52 cm",
};

static SMEAR: Source = Source {
    work: "what moves may smear over two pixels",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the stroke of a character is two pixels wide where a plate is just read",
};

/// Pixels across a plate where the description names none.
const PLATE_PIXELS: f64 = 130.0;
/// Pixels over which something may smear.
const SMEARED: f64 = 2.0;
/// Greatest angle at which a plate is read, from the side and from above, in degrees.
const SLANT: f64 = 30.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in cameras(site) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            detail(asking, site, device)
        });
    }
}

fn detail<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&PINHOLE);
    let lens = camera(asking, device);
    let Some(picture) = &device.picture else {
        return asking.lack(
            &device.origin,
            "picture.target",
            Wants::Table("[device.picture]\ntarget = [\"0 ft\", \"-60 ft\", \"4 ft\"]\ntarget_facing = \"-90°\"\ntarget_speed = \"0 mph\"\nlevel = \"identify\""),
        );
    };
    let at = asking.position(&picture.origin, "target", picture.target.as_ref());
    let facing = read!(asking, picture.target_facing);
    let speed = speed(asking, site, picture);
    let shutter = match speed {
        Ok(speed) if speed.base() <= 0.0 => Ok(Time::from_base(0.0)),
        _ => read!(asking, device.lens?.shutter),
    };
    let wanted = wanted(asking, picture);
    let (camera, at, facing) = (lens?, at?, facing?);
    let (speed, shutter, wanted) = (speed?, shutter?, wanted?);
    let Some(target) = target(asking, &camera, at, facing)? else {
        asking.say(|_| {
            format!(
                "The place that matters to {} lies outside its picture: point it there.",
                device.id
            )
        });
        return Ok(Outcome::Rule(false));
    };
    if let Some(name) = behind(asking, site, device, (&camera, at)) {
        asking.say(|_| {
            format!(
                "{name} stands between {} and the place that matters.",
                device.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let mut told = Told::default();
    if let Some(level) = wanted.level {
        told.compared.push(Comparison::at_most(
            Labeled::new("width of one pixel at the place that matters", target.pixel),
            Labeled::new("width that the level allows", level),
        ));
    }
    if let Some((width, pixels)) = wanted.plate {
        plate(asking, &target, (width, pixels), &mut told)?;
    }
    if speed.base() > 0.0 {
        smear(asking, &target, (speed, shutter), &mut told)?;
    }
    let lenses = lenses(asking, &camera, &target, (device, &wanted))?;
    say(asking, device, (&target, &wanted), (&told, &lenses));
    Outcome::worst(told.compared).ok_or(Halt)
}

/// What is found beside the detail itself.
#[derive(Default)]
struct Told {
    compared: Vec<Comparison>,
    words: String,
}

fn wanted<'s>(asking: &mut Asking<'s>, picture: &'s Picture) -> Result<Wanted, Halt> {
    let level = match picture.level {
        Some(level) => Some(finest(asking, level)?),
        None => None,
    };
    let width = asking.read_if_there(&picture.origin, "plate_width", picture.plate_width.as_ref());
    if level.is_none() && width.is_none() {
        return asking.lack(&picture.origin, "level", Wants::Written("\"identify\""));
    }
    let pixels = picture.plate_pixels.map_or(PLATE_PIXELS, f64::from);
    Ok(Wanted {
        level,
        named: picture.level,
        plate: width.map(|width| (width, pixels)),
    })
}

/// What stands still in the line of sight.
fn behind<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    (camera, at): (&Camera, [Length; 3]),
) -> Option<String> {
    let gate = gate_of(asking, site, device).ok()?;
    let hides = fixed(site, gate)
        .into_iter()
        .find(|one| camera.is_hidden(at, &one.hider));
    hides.map(|one| capitalized(&one.name))
}

fn plate(
    asking: &mut Asking<'_>,
    target: &Target,
    (width, wanted): (Length, f64),
    told: &mut Told,
) -> Result<(), Halt> {
    asking.rest_on(&PLATES);
    let slant = Angle::from_base(SLANT.to_radians());
    told.compared.push(Comparison::at_most(
        Labeled::new(
            "angle from the side at which the plate is seen",
            target.turned,
        ),
        Labeled::new("angle up to which plates are read", slant),
    ));
    if target.turned.base() >= std::f64::consts::FRAC_PI_2 {
        told.words += "; the plate looks away from it";
        return Ok(());
    }
    let seen = asking.work(&PlateView {
        plate_width: width,
        pixel: target.pixel,
        turned: target.turned,
        above: target.above,
        distance: target.distance,
    })?;
    told.compared.push(Comparison::at_most(
        Labeled::new("pixels that the plate needs", Ratio::from_base(wanted)),
        Labeled::new("pixels across the plate", seen.pixels),
    ));
    told.compared.push(Comparison::at_most(
        Labeled::new(
            "angle from above at which the plate is seen",
            Angle::from_base(seen.from_above.base().abs()),
        ),
        Labeled::new("angle up to which plates are read", slant),
    ));
    let print = asking.print();
    let more = format!(
        "; a plate has {:.0} pixels across and needs {wanted:.0}, seen {} from the side and {} from above",
        seen.pixels.base(),
        print.q(target.turned),
        print.q(seen.from_above)
    );
    told.words.push_str(&more);
    Ok(())
}

fn smear(
    asking: &mut Asking<'_>,
    target: &Target,
    (speed, shutter): (Velocity, Time),
    told: &mut Told,
) -> Result<(), Halt> {
    asking.rest_on(&SMEAR);
    let blur = asking.work(&MotionBlur {
        speed,
        shutter,
        pixel: target.pixel,
        angle: target.to_camera,
    })?;
    told.compared.push(Comparison::at_most(
        Labeled::new("pixels over which it smears", blur.blur),
        Labeled::new("pixels over which it may smear", Ratio::from_base(SMEARED)),
    ));
    let print = asking.print();
    let more = format!(
        "; at {} it smears over {:.1} pixels",
        print.q(speed),
        blur.blur.base()
    );
    told.words.push_str(&more);
    if blur.blur.base() > SMEARED {
        let more = format!(
            ", and an exposure of {:.0} ms would keep it to two",
            (shutter.base() * SMEARED / blur.blur.base() * 1000.0).floor()
        );
        told.words.push_str(&more);
    }
    Ok(())
}

fn say(
    asking: &mut Asking<'_>,
    device: &Device,
    (target, wanted): (&Target, &Wanted),
    (told, lenses): (&Told, &str),
) {
    asking.say(|print| {
        let units = print.units();
        let level = match (wanted.named, wanted.level) {
            (Some(named), Some(level)) => {
                format!(", and {} takes {}", named.word(), density(level, units))
            }
            _ => String::new(),
        };
        format!(
            "{} shows {} at the place that matters, {} off{level}{}{lenses}.",
            capitalized(device.id.as_str()),
            density(target.pixel, units),
            print.q(target.depth),
            told.words
        )
    });
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
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "camera"
        kind = "camera"
        at = ["0 m", "0 m", "2.5 m"]
        facing = "0°"
        [device.lens]
        sensor_width = "4.8 mm"
        pixels_across = 1920
        pixels_down = 1080
        focal_length = "4 mm"
        tilt = "10°"
        shutter = "2 ms"
        [device.picture]
        target = ["5 m", "0 m", "0.6 m"]
        target_facing = "180°"
        target_speed = "0 km/h"
        level = "identify"
    "#;

    #[test]
    fn holds_near_enough_to_know_a_face() {
        let finding = only(
            &CHECK,
            &SITE
                .replace("\"0.6 m\"", "\"1.6 m\"")
                .replace("\"10°\"", "\"0°\""),
        );
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 4.8 mm at 4 mm and 5 m: 6 m across 1,920 pixels, 320 pixels a meter.
        assert!((finding.demand.unwrap().value.unwrap() - 0.003125).abs() < 1e-9);
        assert!(
            finding.sentence.contains("320 pixels per meter"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_too_far_off_or_outside_the_picture() {
        let far = SITE.replace("\"5 m\"", "\"9 m\"");
        let finding = only(&CHECK, &far);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("lenses from"),
            "{}",
            finding.sentence
        );
        let beside = SITE.replace("[\"5 m\", \"0 m\"", "[\"5 m\", \"9 m\"");
        let finding = only(&CHECK, &beside);
        assert!(
            finding.sentence.contains("outside its picture"),
            "{}",
            finding.sentence
        );
    }

    /// As worked in the list of outside facts: 2.5 m over 0.6 m at 5 m is 20.81° from above.
    #[test]
    fn a_plate_is_held_to_its_pixels_and_angles() {
        let plate = SITE.replace("level = \"identify\"", "plate_width = \"520 mm\"");
        let finding = only(&CHECK, &plate);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("20.8"), "{}", finding.sentence);
        let turned = only(&CHECK, &plate.replace("\"180°\"", "\"145°\""));
        assert_eq!(turned.verdict, Verdict::Fails, "{}", turned.sentence);
        let fussy = only(&CHECK, &(plate + "plate_pixels = 170\n"));
        assert_eq!(fussy.verdict, Verdict::Fails, "{}", fussy.sentence);
    }

    #[test]
    fn fails_while_it_crosses_fast() {
        let crossing = SITE
            .replace("\"180°\"", "\"90°\"")
            .replace("\"0 km/h\"", "\"20 km/h\"");
        let finding = only(&CHECK, &crossing);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("1 ms"), "{}", finding.sentence);
    }

    #[test]
    fn fails_behind_a_post() {
        let with = SITE.replace(
            "[[device]]",
            "[[gate.post]]\nid = \"post-in-line\"\nrole = \"device\"\nat = [\"2 m\", \"0 m\", \"0 m\"]\nheight = \"3 m\"\nwidth = \"200 mm\"\n[[device]]",
        );
        let finding = only(&CHECK, &with);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("Post-in-line"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_without_lens_and_level_and_until_the_edition_of_2025_is_looked_up() {
        let bare = SITE
            .replace("focal_length = \"4 mm\"", "")
            .replace("level = \"identify\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let new = only(&CHECK, &SITE.replace("identify", "perceive"));
        assert_eq!(new.verdict, Verdict::UnknownUntil, "{}", new.sentence);
    }
}
