//! Whether a camera shows, hears and keeps no more than the law of the place lets it.
//!
//! What the law lets it is what the description says that somebody was told, by whom and when. Its picture is held against
//! each boundary line: ground on the far side that lies in it, as far off as somebody there could be told to be a person.

use super::{PINHOLE, cameras};
use crate::asking::{Asking, Wants, need, read};
use crate::check::plane::Point;
use crate::check::{BOTH, Check, Round};
use crate::eye::camera;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::signal::{ImageDetail2015, Purpose2015};
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Time};
use sim::camera::Camera;
use site::{Beyond, Boundary, Device, RecordingLaw, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "camera-only-what-is-allowed",
    codes: BOTH,
    leaves_open: "what the law says of windows and upper floors, of employees and of sharing pictures; whether the mask was set on the camera itself; it is no legal advice",
    concerns: "each camera",
    ask,
};

static LAW: Source = Source {
    work: "data-protection and recording law of the place, as somebody was told it",
    clause: "",
    evidence: Evidence::Seen,
    seen: "as the description gives it, with who said so and when",
};

/// How the law is written.
const WRITE: &str = "[recording_law]\nasked = \"the state's privacy office, by phone\"\non = 2026-05-20\nkept = \"30 days\"\nsound = false\nmay_show = [\"public way\"]\nnotice = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in cameras(site) {
        round.ask_in_full(About::new(&device.origin, &device.id), |asking| {
            allowed(asking, site, device)
        });
    }
}

fn allowed<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&PINHOLE);
    asking.rest_on(&LAW);
    let lens = camera(asking, device);
    let law = match &site.recording_law {
        Some(law) => asked(asking, law),
        None => asking.lack(&site.origin, "recording_law", Wants::Table(WRITE)),
    };
    let sound = need!(asking, device.recording?.sound, "false");
    let kept = read!(asking, device.recording?.kept);
    let viewers = need!(asking, device.recording?.viewers, "\"office\"");
    let (camera, law) = (lens?, law?);
    let (sound, kept, viewers) = (*sound?, kept?, viewers?);
    let mut broken = beyond(asking, site, device, (&camera, law))?;
    if sound && law.sound != Some(true) {
        broken.push("it records sound, which is not allowed".to_owned());
    }
    let notice = device
        .recording
        .as_ref()
        .map_or(&[][..], |recording| &recording.notice);
    if law.notice == Some(true) && notice.is_empty() {
        broken.push("no sign tells people of it".to_owned());
    }
    let limit = asking.read_if_there(&law.origin, "kept", law.kept.as_ref());
    let told = law.asked.as_ref().map_or("", |asked| asked.as_str());
    asking.say(|print| {
        let days = |time: Time| print.q(time);
        let keeping = limit.map_or_else(
            || format!("pictures are kept {}", days(kept)),
            |limit| {
                format!(
                    "pictures are kept {}, {} at most are allowed",
                    days(kept),
                    days(limit)
                )
            },
        );
        let found = if broken.is_empty() {
            "shows, hears and tells what it may".to_owned()
        } else {
            broken.join(", ")
        };
        format!(
            "{}: {found}; {keeping}; only {viewers} may look (asked: {told}).",
            capitalized(device.id.as_str())
        )
    });
    if !broken.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Ok(match limit {
        None => Outcome::Rule(true),
        Some(limit) => Outcome::Compared(Comparison::at_most(
            Labeled::new("time for which pictures are kept", kept),
            Labeled::new("time that the law allows", limit),
        )),
    })
}

/// The law as somebody was told it: by whom, when, and what of sound and signs.
fn asked<'s>(asking: &mut Asking<'s>, law: &'s RecordingLaw) -> Result<&'s RecordingLaw, Halt> {
    let who = need!(
        asking,
        law.asked,
        "\"the state's privacy office, by phone\""
    )
    .map(|_| ());
    let when = need!(asking, law.on, "2026-05-20").map(|_| ());
    let sound = need!(asking, law.sound, "false").map(|_| ());
    let notice = need!(asking, law.notice, "true").map(|_| ());
    who.and(when).and(sound).and(notice).map(|()| law)
}

/// Points along each side of the picture's ground, and from each to its middle.
const GRID: u32 = 12;

/// What the picture shows beyond the boundaries though it may not, and no mask is set.
fn beyond<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    (camera, law): (&Camera, &RecordingLaw),
) -> Result<Vec<String>, Halt> {
    if site.boundary.is_empty() {
        return asking.lack(
            &site.origin,
            "boundary",
            Wants::Table("[[boundary]]\nid = \"lot-line\"\nline = [[\"-60 ft\", \"-20 ft\", \"0 ft\"], [\"80 ft\", \"-20 ft\", \"0 ft\"]]\ninside = [\"10 ft\", \"40 ft\", \"0 ft\"]\nbeyond = \"public way\""),
        );
    }
    let pixel = asking.work(&ImageDetail2015 {
        purpose: Purpose2015::Detect,
    })?;
    let out_to =
        camera.focal_length * (f64::from(camera.pixels.0) * pixel.pixel / camera.sensor_width);
    let mut broken = Vec::new();
    for boundary in &site.boundary {
        let what = asking.need(
            &boundary.origin,
            "beyond",
            boundary.beyond.as_ref(),
            "\"public way\"",
        )?;
        let masked = device
            .recording
            .as_ref()
            .is_some_and(|recording| recording.masked.contains(&boundary.id));
        if masked || law.may_show.contains(what) {
            continue;
        }
        if crosses(camera, out_to, boundary) {
            let land = match what {
                Beyond::PublicWay => "the public way",
                Beyond::Neighbor => "the neighbor's land",
                Beyond::SharedDrive => "the shared drive",
            };
            broken.push(format!(
                "it shows {land} beyond {} without a mask",
                boundary.id
            ));
        }
    }
    Ok(broken)
}

/// Ground on the far side of a boundary lies in the picture.
fn crosses(camera: &Camera, out_to: Length, boundary: &Boundary) -> bool {
    let spot = |at: &site::Position| (at.x.nominal().base(), at.y.nominal().base());
    let Some(inside) = boundary.inside.as_ref().map(spot) else {
        return false;
    };
    let line: Vec<Point> = boundary.line.iter().map(spot).collect();
    let count = f64::from(u32::try_from(boundary.line.len().max(1)).unwrap_or(1));
    let up = boundary
        .line
        .iter()
        .map(|at| at.z.nominal().base())
        .sum::<f64>()
        / count;
    let field = camera.field(Length::from_base(up), out_to);
    let field: Vec<Point> = field.iter().map(|[x, y]| (x.base(), y.base())).collect();
    let middle = |pick: fn(&Point) -> f64| {
        field.iter().map(pick).sum::<f64>() / f64::from(u32::try_from(field.len()).unwrap_or(1))
    };
    let middle = (middle(|point| point.0), middle(|point| point.1));
    let share = |step: u32| f64::from(step) / f64::from(GRID);
    let between =
        |a: Point, b: Point, part: f64| (a.0 + part * (b.0 - a.0), a.1 + part * (b.1 - a.1));
    let next = field.iter().cycle().skip(1);
    field.iter().zip(next).any(|(from, to)| {
        (0..GRID).any(|along| {
            let rim = between(*from, *to, share(along));
            (0..GRID).any(|inward| {
                let point = between(rim, middle, share(inward) * 0.999 + 0.001);
                line.windows(2)
                    .any(|piece| cut(inside, point, [piece[0], piece[1]]))
            })
        })
    })
}

/// The straight way from one point to another crosses a piece.
fn cut(from: Point, to: Point, [a, b]: [Point; 2]) -> bool {
    let turn = |a: Point, b: Point, c: Point| (b.0 - a.0) * (c.1 - a.1) - (b.1 - a.1) * (c.0 - a.0);
    turn(from, to, a) * turn(from, to, b) < 0.0 && turn(a, b, from) * turn(a, b, to) < 0.0
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
        [recording_law]
        asked = "town's data-protection office"
        on = 2026-03-02
        kept = "3 days"
        sound = false
        notice = true
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[boundary]]
        id = "line"
        line = [["-90 m", "-10 m", "0 m"], ["90 m", "-10 m", "0 m"]]
        inside = ["0 m", "20 m", "0 m"]
        beyond = "public way"
        [[sign]]
        id = "notice"
        what = "other"
        [[device]]
        id = "camera"
        kind = "camera"
        at = ["0 m", "8 m", "4 m"]
        facing = "-90°"
        [device.lens]
        sensor_width = "4.8 mm"
        pixels_across = 1920
        pixels_down = 1080
        focal_length = "4 mm"
        tilt = "45°"
        [device.recording]
        sound = false
        kept = "2 days"
        notice = ["notice"]
        viewers = "reception"
    "#;

    #[test]
    fn holds_where_it_shows_its_own_ground_only() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_over_the_line_without_a_mask() {
        let level = SITE.replace("\"45°\"", "\"10°\"");
        let finding = only(&CHECK, &level);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("beyond line"),
            "{}",
            finding.sentence
        );
        let masked = level.replace(
            "notice = [\"notice\"]",
            "notice = [\"notice\"]\nmasked = [\"line\"]",
        );
        assert_eq!(only(&CHECK, &masked).verdict, Verdict::Holds);
        let street = level.replace(
            "notice = true",
            "notice = true\nmay_show = [\"public way\"]",
        );
        assert_eq!(only(&CHECK, &street).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_with_sound_without_a_sign_and_kept_too_long() {
        for (from, to) in [
            (
                "sound = false\n        kept = \"2 days\"",
                "sound = true\n        kept = \"2 days\"",
            ),
            ("notice = [\"notice\"]", ""),
            ("\"2 days\"", "\"9 days\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_until_somebody_has_asked() {
        let law = SITE.split("[recording_law]").next().unwrap().to_owned()
            + "[[gate]]"
            + SITE.split("[[gate]]").nth(1).unwrap();
        let finding = only(&CHECK, &law.replace("viewers = \"reception\"", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
