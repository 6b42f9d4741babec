//! When the sun stands in the receiver of a beam or a scanner, and what the device does then.
//!
//! Every five minutes of a year are looked at. The receiver of a through-beam is its far end and looks at the sender; a
//! reflective one looks at its reflector; a scanner takes light in over its field, near its plane. The sun's disc, the air
//! that lifts it and the tolerance of north count against it; a skyline counts for it where the description has one. What
//! the sun reaches holds only where the device reports while it is blinded, tried with the sun or a strong lamp.

use super::POSITION;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::eye::{Compass, compass, worst, year_of};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use quantity::{Angle, Quantity as _};
use sim::glare::{Look, Opening};
use site::{Blinded, Device, DeviceKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "sun-in-the-beam",
    codes: BOTH,
    leaves_open: "sun thrown back by glass, water, snow or a car, light that strays in from outside the stated angle, clouds, and what has grown or been built on the skyline since",
    concerns: "each photo-eye and each scanner",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in site.device.iter().filter(|device| receives(device.kind)) {
        round.ask_in_full(About::new(&device.origin, &device.id), |asking| {
            beam(asking, site, device)
        });
    }
}

fn receives(kind: DeviceKind) -> bool {
    matches!(
        kind,
        DeviceKind::ThroughBeam | DeviceKind::Reflective | DeviceKind::AreaScanner
    )
}

fn beam<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&POSITION);
    let compass = compass(asking, site);
    let look = look(asking, device, compass.as_ref().ok());
    let (compass, look) = (compass?, look?);
    let (years, zone) = year_of(asking, &compass, &[look])?;
    let Some(year) = years.first() else {
        return Err(Halt);
    };
    let free = if compass.free {
        "; no skyline is written, so it counts as free"
    } else {
        ""
    };
    let name = capitalized(device.id.as_str());
    let toward = look.azimuth.base().to_degrees().rem_euclid(360.0);
    if year.total.base() <= 0.0 {
        asking.say(|_| {
            format!("{name}: the receiver looks {toward:.0}° from north, and the sun never stands in it{free}.")
        });
        return Ok(Outcome::Rule(true));
    }
    let strong = device.strong_light.as_ref();
    let blinded = strong.and_then(|strong| strong.blinded);
    let tried = strong.and_then(|strong| strong.tried);
    asking.say(|_| {
        let does = match (blinded, tried) {
            (Some(Blinded::Reports), Some(day)) => {
                format!("it then reports and the gate stands, tried {day}")
            }
            (Some(Blinded::Reports), None) => "it is said to report then".to_owned(),
            (Some(_), _) => "it then does not see: turn the receiver to the shaded end, hood it, or take another device".to_owned(),
            (None, _) => "what it does then is not known".to_owned(),
        };
        format!(
            "{name}: the receiver looks {toward:.0}° from north, and the sun stands in it {}; {does}{free}.",
            worst(year, zone)
        )
    });
    let origin = strong.map_or(&device.origin, |strong| &strong.origin);
    let key = |short, long| if strong.is_some() { short } else { long };
    match blinded {
        None => asking.lack(
            origin,
            key("blinded", "strong_light.blinded"),
            Wants::Written("\"reports\""),
        ),
        Some(Blinded::Reports) => {
            let day = asking.need(origin, "tried", tried.as_ref(), "2026-11-20")?;
            asking.note(|_| format!("Tried with the sun or a strong lamp on its axis on {day}."));
            Ok(Outcome::Rule(true))
        }
        Some(Blinded::SaysClear | Blinded::WashedOut) => Ok(Outcome::Rule(false)),
    }
}

/// Where the receiver looks and what it takes in, the tolerance of north added.
fn look<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    compass: Option<&Compass>,
) -> Result<Look, Halt> {
    let at = asking.position_as_written((&device.origin, "at"), device.at.as_ref());
    if device.kind == DeviceKind::AreaScanner {
        let facing = read!(asking, device.facing);
        let field = read!(asking, device.field_angle);
        let off = read!(asking, device.strong_light?.acceptance);
        let (_, facing, field, off) = (at?, facing?, field?, off?);
        let compass = compass.ok_or(Halt)?;
        let across = field / 2.0 + compass.north_off;
        let across = if across.base() > std::f64::consts::PI {
            Angle::from_base(std::f64::consts::PI)
        } else {
            across
        };
        return Ok(compass.look(facing, Angle::from_base(0.0), Opening::Fan { across, off }));
    }
    let to = asking.position_as_written((&device.origin, "to"), device.to.as_ref());
    let half = match &device.strong_light {
        Some(strong) if strong.acceptance.is_some() => read!(asking, strong.acceptance),
        _ => read!(asking, device.field_angle).map(|whole| whole / 2.0),
    };
    let (at, to, half) = (at?, to?, half?);
    let compass = compass.ok_or(Halt)?;
    let opening = Opening::Cone {
        half: half + compass.north_off,
    };
    Ok(if device.kind == DeviceKind::ThroughBeam {
        compass.look_along(to, at, opening)
    } else {
        compass.look_along(at, to, opening)
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    /// True north is +y: +x is east. The receiver at the far end looks west, into the setting sun of the equinoxes.
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
        id = "eye"
        kind = "through-beam photo-eye"
        at = ["0 m", "-2 m", "0.5 m"]
        to = ["4 m", "-2 m", "0.5 m"]
        field_angle = "5°"
    "#;

    #[test]
    fn holds_with_the_receiver_to_the_north() {
        let north = SITE.replace("[\"4 m\", \"-2 m\"", "[\"0 m\", \"-6 m\"");
        let finding = only(&CHECK, &north);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("never"), "{}", finding.sentence);
    }

    #[test]
    fn holds_where_it_reports_and_was_tried() {
        let tried =
            SITE.to_owned() + "[device.strong_light]\nblinded = \"reports\"\ntried = 2026-03-20\n";
        let finding = only(&CHECK, &tried);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("March"), "{}", finding.sentence);
        let never = tried.replace("tried = 2026-03-20", "");
        assert_eq!(only(&CHECK, &never).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn fails_where_it_says_clear() {
        let clear = SITE.to_owned() + "[device.strong_light]\nblinded = \"says clear\"\n";
        let finding = only(&CHECK, &clear);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        // Turned about, it looks east: morning instead of evening, and fails as well. Behind a hill it holds.
        let hill = clear.replace(
            "north = \"90°\"",
            "north = \"90°\"\nskyline = { toward = [\"0°\"], up = [\"9°\"] }",
        );
        assert_eq!(only(&CHECK, &hill).verdict, Verdict::Holds);
    }

    #[test]
    fn a_scanner_takes_light_in_near_its_plane() {
        let scanner = SITE
            .replace("through-beam photo-eye", "area scanner")
            .replace(
                "field_angle = \"5°\"",
                "field_angle = \"190°\"\nfacing = \"180°\"",
            )
            + "[device.strong_light]\nacceptance = \"5°\"\nblinded = \"reports\"\ntried = 2026-03-20\n";
        let finding = only(&CHECK, &scanner);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("hours a year"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_while_nobody_knows_what_it_does_then() {
        let finding = only(&CHECK, SITE);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let bare = SITE
            .replace("field_angle = \"5°\"", "")
            .replace("latitude = \"47°\"", "");
        assert_eq!(only(&CHECK, &bare).missing.len(), 2);
    }
}
