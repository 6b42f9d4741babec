//! Whether the field of a scanner, radar or ultrasonic detector lies where it should: each of them.
//!
//! The field as the detector is set, told in its own left and right, is held against the one that was chalked on the ground.
//! Where only the one with left and right swapped fits, that is said. Street, leaf, plants and rising ground inside it are
//! found; a mask over ground that should be watched is a hole.

use super::field_finds::{disturbed, reaches_street, sees_leaf, spot};
use crate::asking::{Asking, Wants, need, pick, read};
use crate::check::{BOTH, Check, Round, gate_of};
use crate::field::{AsSet, Spot, as_set};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::vehicle::{Ground, leaf};
use formula::signal::FieldReach;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Device, DeviceKind, FieldPrinciple, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-field-side",
    codes: BOTH,
    leaves_open: "snow that lies, plants that grow, vehicles that stand in the field for days, glass and wet metal that mirror it: walk its edge with the test board, chalk it, and do so again after each change of its settings",
    concerns: "each area scanner, radar and ultrasonic detector",
    ask,
};

static SET: Source = Source {
    work: "settings of the detector, and the field as chalked on the ground",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as the site gives them; corners turned by the direction in which it looks",
};

static WEATHER: Source = Source {
    work: "detectors of light and sound outdoors run with their filter for rain and snow on",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "radar sees through rain; light and sound do not",
};

/// How far the chalked corner may lie outside of the field as set, where no smallest object is given (m).
const CHALK: f64 = 0.05;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let with = |it: &&Device| it.kind == DeviceKind::AreaScanner || it.field_mount.is_some();
    for device in site.device.iter().filter(with) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            lies_right(asking, site, device)
        });
    }
}

fn lies_right<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let set = as_set(asking, device);
    let principle = pick!(asking, device.field_mount?.principle);
    let filter = need!(asking, device.field_mount?.weather_filter, "true");
    let wanted = wanted(asking, device);
    let smallest = asking.read_if_there(
        &device.origin,
        "detection_capability",
        device.detection_capability.as_ref(),
    );
    let gate = gate_of(asking, site, device);
    let moving = gate.map_or(Err(Halt), |gate| leaf(asking, gate));
    let reach = reach(asking, device, principle.as_ref().ok());
    let (set, principle, filter, wanted) = (set?, principle?, *filter?, wanted?);
    let (gate, moving) = (gate?, moving?);
    let reach = reach?;
    asking.rest_on(&SET);
    asking.rest_on(&WEATHER);
    let field = set.corners();
    let mut wrong = Vec::new();
    if !filter && principle != FieldPrinciple::Radar {
        wrong.push("its filter for rain and snow is off".to_owned());
    }
    wrong.extend(disturbed(device, &field, &wanted));
    if reaches_street(site, gate, &field) {
        wrong.push("it reaches into the street, so that whoever drives by sets it off".to_owned());
    }
    let plane = (principle == FieldPrinciple::Laser).then_some(set.height);
    if sees_leaf(&moving, &field, plane) {
        wrong.push("the moving leaf comes into it".to_owned());
    }
    let allowed = smallest.map_or(CHALK, |smallest| smallest.base().max(CHALK));
    let open = outside(&set, &wanted);
    let swapped = open > allowed && outside(&set.turned_over(), &wanted) <= allowed;
    say(asking, device, (&field, &wanted), (open, swapped, &wrong));
    if !wrong.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    let mut comparisons = vec![Comparison::at_most(
        Labeled::new(
            "how far ground that should be watched lies outside the field",
            Length::from_base(open),
        ),
        Labeled::new("what may lie outside", Length::from_base(allowed)),
    )];
    comparisons.extend(reach.map(|far| {
        Comparison::at_most(
            Labeled::new("end of the field as set", Length::from_base(set.ends)),
            Labeled::new("end of the field by height and tilt", far),
        )
    }));
    if plane.is_some() {
        let tilt = read!(asking, device.field_mount?.tilt)?.base();
        let ground = Ground::of(site, gate);
        let rise = field.iter().map(|spot| ground.at(spot.1));
        let rise = rise.fold(f64::NEG_INFINITY, f64::max) + set.ends * tilt.tan();
        comparisons.push(Comparison::below(
            Labeled::new(
                "ground under its edge, and what its tilt takes",
                Length::from_base(rise.max(0.0)),
            ),
            Labeled::new("height of its plane", Length::from_base(set.height)),
        ));
    }
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The corners of the field as chalked.
fn wanted<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Vec<Spot>, Halt> {
    if device.field.len() < 3 {
        let write = "[[\"0 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"1 ft\", \"1 ft\"], [\"20 ft\", \"10 ft\", \"1 ft\"]]";
        return asking.lack(&device.origin, "field", Wants::Written(write));
    }
    Ok(device.field.iter().map(spot).collect())
}

/// How far the farthest corner that should be watched lies outside of a field.
fn outside(set: &AsSet, wanted: &[Spot]) -> f64 {
    let each = wanted.iter().map(|spot| set.outside(*spot));
    each.fold(0.0, f64::max)
}

/// Where a tilted cone ends; nothing for a plane of light.
fn reach<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    principle: Option<&FieldPrinciple>,
) -> Result<Option<Length>, Halt> {
    if principle.is_none_or(|principle| *principle == FieldPrinciple::Laser) {
        return Ok(None);
    }
    let at = asking.position(&device.origin, "at", device.at.as_ref());
    let tilt = read!(asking, device.field_mount?.tilt);
    let opening = read!(asking, device.field_mount?.opening);
    let spread = read!(asking, device.field_angle);
    let range = read!(asking, device.range);
    let ([_, _, height], tilt) = (at?, tilt?);
    let (opening, spread, range) = (opening?, spread?, range?);
    let found = asking.work(&FieldReach {
        height,
        tilt,
        opening,
        spread,
        range,
    })?;
    Ok(Some(found.far))
}

fn say(
    asking: &mut Asking<'_>,
    device: &Device,
    (field, wanted): (&[Spot], &[Spot]),
    (open, swapped, wrong): (f64, bool, &[String]),
) {
    let side = |corners: &[Spot]| {
        let sum: f64 = corners.iter().map(|spot| spot.1).sum();
        if sum < 0.0 { "road" } else { "property" }
    };
    asking.say(|print| {
        // To a millimeter: a side along the gate line lies at nothing, not at the rest of a rotation.
        let place = |y: f64| print.q(Length::from_base((y * 1e3).round() / 1e3 + 0.0));
        let stretch = |corners: &[Spot]| {
            let ends = corners
                .iter()
                .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), spot| {
                    (low.min(spot.1), high.max(spot.1))
                });
            format!("{} to {}", place(ends.0), place(ends.1))
        };
        let lies = format!(
            "As it is set and hung, the field of {} lies on the {} side, {} from the gate line into the property",
            device.id,
            side(field),
            stretch(field)
        );
        let should = format!("it should lie on the {} side, {}", side(wanted), stretch(wanted));
        let fits = if swapped {
            format!("; {should}: its left and its right are swapped. Turn over its setting for left and right, or hang it the other way up")
        } else if open > CHALK {
            format!("; {should}, and up to {} of that lies outside", print.q(Length::from_base(open)))
        } else {
            ", as it was chalked".to_owned()
        };
        let wrong = if wrong.is_empty() { String::new() } else { format!("; {}", wrong.join("; ")) };
        format!("{lies}{fits}{wrong}.")
    });
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        travel_angle = "89°"
        cross_slope = "0.01"
        [[gate.leaf]]
        id = "boom"
        length = "3.8 m"
        closed_end = "-0.15 m"
        height = "100 mm"
        thickness = "45 mm"
        ground_clearance = "850 mm"
        [[device]]
        id = "scanner"
        kind = "area scanner"
        at = ["3.95 m", "-0.2 m", "0.3 m"]
        facing = "180°"
        field = [["-0.9 m", "0 m", "0.3 m"], ["3.6 m", "0 m", "0.3 m"], ["3.6 m", "-3 m", "0.3 m"], ["-0.9 m", "-3 m", "0.3 m"]]
        field_mount = { principle = "laser", tilt = "0°", begins = "0.3 m", ends = "4.9 m", left = "2.8 m", right = "0.2 m", upside_down = false, mirrored = false, weather_filter = true }
        [[lane]]
        id = "lane"
        path = [["1.75 m", "-26 m", "0 m"], ["1.75 m", "20 m", "0 m"]]
    "#;

    #[test]
    fn holds_on_the_side_that_was_chalked() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("road side"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_mirrored_and_says_where_it_lies_and_where_it_should() {
        let over = SITE.replace("upside_down = false", "upside_down = true");
        let finding = only(&CHECK, &over);
        assert_eq!(finding.verdict, Verdict::Fails);
        // Hung upside down it reaches 2.8 m to the other side of the scanner at y = -0.2 m: to 2.6 m.
        assert!(
            finding.sentence.contains("lies on the property side"),
            "{}",
            finding.sentence
        );
        assert!(
            finding.sentence.contains("should lie on the road side"),
            "{}",
            finding.sentence
        );
        assert!(finding.sentence.contains("swapped"), "{}", finding.sentence);
        let undone = over.replace("mirrored = false", "mirrored = true");
        assert_eq!(only(&CHECK, &undone).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_over_a_hedge_a_mask_the_street_and_in_the_way_of_the_arm() {
        let with = |what: &str| {
            SITE.replace(
                "weather_filter",
                &format!("disturbance = [{{ what = \"hedge\", {what} }}], weather_filter"),
            )
        };
        let stands = with("from = [\"1 m\", \"-2 m\", \"0 m\"], to = [\"2 m\", \"-4 m\", \"0 m\"]");
        assert_eq!(only(&CHECK, &stands).verdict, Verdict::Fails);
        let hole = with(
            "from = [\"1 m\", \"-2 m\", \"0 m\"], to = [\"2 m\", \"-4 m\", \"0 m\"], masked = true",
        );
        assert_eq!(only(&CHECK, &hole).verdict, Verdict::Fails);
        let beside =
            with("from = [\"1 m\", \"-3.2 m\", \"0 m\"], to = [\"2 m\", \"-4 m\", \"0 m\"]");
        assert_eq!(only(&CHECK, &beside).verdict, Verdict::Holds);
        let street = SITE.replace("\"-26 m\"", "\"-2 m\"");
        assert_eq!(only(&CHECK, &street).verdict, Verdict::Fails);
        let high = SITE.replace("0.3 m\"]", "0.9 m\"]");
        assert_eq!(only(&CHECK, &high).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_on_rising_ground_and_without_its_filter() {
        let steep = SITE
            .replace("cross_slope = \"0.01\"", "cross_slope = \"0.15\"")
            .replace("[[lane]]", "")
            .replace("id = \"lane\"\n", "")
            .replace(
                "path = [[\"1.75 m\", \"-26 m\", \"0 m\"], [\"1.75 m\", \"20 m\", \"0 m\"]]",
                "",
            );
        let inside = steep.replace("\"-3 m\"", "\"3 m\"").replace(
            "left = \"2.8 m\", right = \"0.2 m\"",
            "left = \"0.2 m\", right = \"3.2 m\"",
        );
        let finding = only(&CHECK, &inside);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let off = SITE.replace("weather_filter = true", "weather_filter = false");
        assert_eq!(only(&CHECK, &off).verdict, Verdict::Fails);
    }

    #[test]
    fn a_radar_ends_where_its_tilt_takes_it() {
        let radar = SITE
            .replace(
                "principle = \"laser\", tilt = \"0°\"",
                "principle = \"radar\", tilt = \"30°\", opening = \"20°\"",
            )
            .replace(
                "facing = \"180°\"",
                "facing = \"180°\"\nfield_angle = \"80°\"\nrange = \"10 m\"",
            )
            .replace(
                "at = [\"3.95 m\", \"-0.2 m\", \"0.3 m\"]",
                "at = [\"3.95 m\", \"-0.2 m\", \"3 m\"]",
            );
        // From 3 m up its cone ends 8.24 m out, beyond the 4.9 m as set; but the arm comes into a cone.
        assert_eq!(only(&CHECK, &radar).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_where_nobody_wrote_how_it_is_set() {
        let bare = SITE
            .replace("tilt = \"0°\", begins = \"0.3 m\", ", "tilt = \"0°\", ")
            .replace("upside_down = false, ", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:#?}", finding.missing);
    }
}
