//! Whether a photo-eye has light to spare, whether a shiny face can lead its light around a person, and whether another
//! pair can dazzle it.
//!
//! The gain at the range comes from the one that the data sheet prints, by the square of the distance; for a reflector no
//! credit is taken for a shorter way. Clean air needs half more light than the receiver; the figures for dirty air are
//! recalled. Other pairs count where their light falls the same way, unless it is coded.

use super::means::of_gate;
use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round, gate_of};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::protection::{
    Air, BEAM_GAIN_IN_DIRTY_AIR_RECALLED, BeamCrosstalkSpacing, BeamExcessGain, EspeType,
    ReflectiveSurfaceDistance, beam_gain_in_air_recalled,
};
use quantity::{Length, Quantity as _, Ratio, Word as _};
use site::{Device, DeviceKind, ProtectionType, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-beam-margin",
    codes: BOTH,
    leaves_open: "frost and spiders on the lens, vehicles that shine as they pass, low sun into the receiver; the signal with half the lens covered shows what is left",
    concerns: "each photo-eye that protects people",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let protects =
        |device: &&Device| is_eye(device) && device.protection == Some(ProtectionType::B1);
    for device in site.device.iter().filter(protects) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            margin(asking, site, device)
        });
    }
}

fn is_eye(device: &Device) -> bool {
    matches!(
        device.kind,
        DeviceKind::ThroughBeam | DeviceKind::Reflective
    )
}

fn margin<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let line = line(asking, device);
    let range = line.map(|line| Length::from_base(norm(line.along)));
    let gain = gain(asking, device, range);
    let shiny = shiny(asking, device, range);
    let dazzled = dazzled(asking, site, device, line);
    let (gain, shiny, dazzled) = (gain?, shiny?, dazzled?);
    let all: Vec<Comparison> = [gain, shiny].into_iter().chain(dazzled).collect();
    asking.say(|print| {
        let others = if all.len() > 2 {
            "; other pairs that shine its way are looked at"
        } else {
            ""
        };
        format!(
            "Over {} {} has {} times the light that it needs where {} is asked; shiny faces have to be {} from its axis, and the nearest is {}{others}.",
            range.map_or_else(|_| String::new(), |range| print.q(range)),
            device.id,
            print.value(&gain.capacity.value),
            print.value(&gain.demand.value),
            print.value(&shiny.demand.value),
            print.value(&shiny.capacity.value)
        )
    });
    Outcome::worst(all).ok_or(Halt)
}

/// A beam as a line in space, in meters: where its light begins, and the way from there to the far end.
#[derive(Debug, Clone, Copy)]
struct Beam {
    from: [f64; 3],
    along: [f64; 3],
}

fn line<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Beam, Halt> {
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let to = asking.position(&device.origin, "to", device.to.as_ref());
    let (at, to) = (at?.map(Length::base), to?.map(Length::base));
    Ok(Beam {
        from: at,
        along: minus(to, at),
    })
}

/// Light that the air asks for, against the light that arrives.
fn gain<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    range: Result<Length, Halt>,
) -> Result<Comparison, Halt> {
    let printed = read!(asking, device.optics?.gain);
    let printed_range = read!(asking, device.optics?.gain_range);
    let air = pick!(asking, device.air);
    let (printed, printed_range, air, range) = (printed?, printed_range?, air?, range?);
    let reflected = device.kind == DeviceKind::Reflective;
    if reflected && range > printed_range {
        return asking.refuse(
            "a reflector farther away than the range of the printed gain sends back far less light than the square of the distance tells: use the data sheet's own curve",
        );
    }
    let gain = asking.work(&BeamExcessGain {
        printed_gain: printed,
        printed_range,
        range: if reflected { printed_range } else { range },
        lens_open: Ratio::from_base(1.0),
    })?;
    let air = Air::from_word(air.word()).ok_or(Halt)?;
    let needed = if air == Air::Clean {
        gain.least_gain
    } else {
        asking.rest_on(&BEAM_GAIN_IN_DIRTY_AIR_RECALLED);
        beam_gain_in_air_recalled(air)
    };
    Ok(Comparison::at_most(
        Labeled::new(
            "light that this air asks for, over what the receiver needs",
            needed,
        ),
        Labeled::new("light that arrives", gain.gain),
    ))
}

/// Least distance of shiny faces, against the nearest one.
fn shiny<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    range: Result<Length, Halt>,
) -> Result<Comparison, Halt> {
    let kind = pick!(asking, device.optics?.optical_type);
    let distance = read!(asking, device.shiny_distance);
    let (kind, distance, range) = (kind?, distance?, range?);
    let rule = asking.work(&ReflectiveSurfaceDistance {
        device: EspeType::from_word(kind.word()).ok_or(Halt)?,
        range,
        distance,
    })?;
    Ok(Comparison::at_most(
        Labeled::new("least distance of shiny faces", rule.least),
        Labeled::new("distance of the nearest one", distance),
    ))
}

/// Least spacing of this receiver from the axis of each other sender that shines its way, against the spacing.
fn dazzled<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    line: Result<Beam, Halt>,
) -> Result<Vec<Comparison>, Halt> {
    let coded = device.optics.as_ref().and_then(|optics| optics.coded);
    if coded == Some(true) {
        return Ok(Vec::new());
    }
    let gate = gate_of(asking, site, device)?;
    let line = line?;
    let (receiver, comes) = match device.kind {
        DeviceKind::Reflective => (line.from, line.along.map(|part| -part)),
        _ => (plus(line.from, line.along), line.along),
    };
    let mut all = Vec::new();
    for other in of_gate(site, gate).filter(|other| is_eye(other) && other.id != device.id) {
        if let Some(found) = from(asking, other, (receiver, comes)) {
            all.push(found?);
        }
    }
    Ok(all)
}

/// The spacing from one other sender; nothing where its light does not fall on the receiver's face.
fn from<'s>(
    asking: &mut Asking<'s>,
    other: &'s Device,
    (receiver, comes): ([f64; 3], [f64; 3]),
) -> Option<Result<Comparison, Halt>> {
    if other.at.is_none() || other.to.is_none() {
        return None;
    }
    let beam = line(asking, other).ok()?;
    let length = norm(beam.along);
    let offset = minus(receiver, beam.from);
    let ahead = dot(offset, beam.along) / length;
    if dot(comes, beam.along) <= 0.0 || ahead.is_nan() || ahead <= 0.0 {
        return None;
    }
    let aside = (dot(offset, offset) - ahead * ahead).max(0.0).sqrt();
    let half = read!(asking, other.field_angle).map(|angle| angle / 2.0);
    let tilt = read!(asking, other.optics?.tilt);
    let lens = read!(asking, other.optics?.lens);
    let (Ok(half_angle), Ok(misalignment), Ok(lens)) = (half, tilt, lens) else {
        return Some(Err(Halt));
    };
    let spacing = asking.work(&BeamCrosstalkSpacing {
        range: Length::from_base(ahead),
        half_angle,
        misalignment,
        lens,
        spacing: Length::from_base(aside),
    });
    Some(spacing.map(|spacing| {
        Comparison::at_most(
            Labeled::new(
                "least distance from the axis of another pair",
                spacing.least,
            ),
            Labeled::new("distance from it", Length::from_base(aside)),
        )
    }))
}

fn plus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}

fn minus(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn norm(a: [f64; 3]) -> f64 {
    dot(a, a).sqrt()
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const ONE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        at = ["0 m", "1 m", "0.5 m"]
        to = ["6 m", "1 m", "0.5 m"]
        field_angle = "5°"
        shiny_distance = "0.53 m"
        air = "clean"
        [device.optics]
        gain = "4"
        gain_range = "10 m"
        lens = "20 mm"
        tilt = "1°"
        optical_type = "2"
    "#;

    fn with_other(y: &str, (from, to): (&str, &str)) -> String {
        format!(
            r#"{ONE}
        [[device]]
        id = "other"
        kind = "through-beam photo-eye"
        at = ["{from}", "{y}", "0.5 m"]
        to = ["{to}", "{y}", "0.5 m"]
        field_angle = "5°"
        [device.optics]
        lens = "20 mm"
        tilt = "1°"
    "#
        )
    }

    #[test]
    fn holds_with_light_to_spare_and_nothing_shiny() {
        let finding = only(&CHECK, ONE);
        // By hand: 4 · (10 / 6)² = 11.1 against 1.5; 6 m · tan 5° = 525 mm against 530 mm.
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding
                .ratio
                .is_some_and(|ratio| (ratio - 0.5249 / 0.53).abs() < 1e-3)
        );
    }

    #[test]
    fn fails_with_too_little_light_a_shiny_face_and_a_pair_beside_it() {
        let cases = [
            ONE.replace("gain = \"4\"", "gain = \"0.5\""),
            ONE.replace("0.53 m", "0.5 m"),
            // By hand: 6 m · tan 3.5° + 10 mm = 377 mm.
            with_other("1.35 m", ("0 m", "6 m")),
        ];
        for text in cases {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn holds_beside_a_pair_that_is_crossed_far_or_coded() {
        let near = with_other("1.35 m", ("0 m", "6 m"));
        for text in [
            with_other("1.35 m", ("6 m", "0 m")),
            with_other("1.40 m", ("0 m", "6 m")),
            near.replacen(
                "optical_type = \"2\"",
                "optical_type = \"2\"\ncoded = true",
                1,
            ),
        ] {
            let finding = only(&CHECK, &text);
            assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_in_dirty_air_and_without_the_sheet() {
        let dirty = ONE.replace("\"clean\"", "\"moderately dirty\"");
        assert_eq!(only(&CHECK, &dirty).verdict, Verdict::UnknownUntil);
        let (bare, _) = ONE.split_once("[device.optics]").unwrap_or((ONE, ""));
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn a_reflector_beyond_the_printed_range_is_outside() {
        let far = ONE
            .replace("through-beam", "reflective")
            .replace("\"10 m\"", "\"5 m\"");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::OutsideThisTool);
        assert!(all(&CHECK, &ONE.replace("protection = \"B1\"", "")).is_empty());
    }
}
