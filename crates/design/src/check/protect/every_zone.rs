//! Which device sees or feels somebody in each place and direction where the gate can catch them, and what is missing.
//!
//! The zones are worked out from the site, and a device counts for a zone only where its strip, line or field is. United
//! States: as many means of different types as the count asks, in each direction in which the zone is live; the drive's own
//! sensing is type A. Europe: at the closing edge the level for the kind of use and the way of control; at every other place
//! force that is limited, or a device there. Loops see steel and never count.

use super::zone_rule::{Rule, Seen};
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::zone::means::{covering, ends, sensors};
use crate::zone::{Zone, zones};
use quantity::{Quantity as _, Word as _};
use site::{Device, DeviceKind, Direction, Gate, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "protect-every-zone",
    codes: BOTH,
    leaves_open: "zones against things that the site file does not hold, whether each device is monitored, and whether its height suits every body: those are questions of their own",
    concerns: "each gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            every_zone(asking, site, gate)
        });
    }
}

/// A zone in one direction, with what protects there.
struct Place<'z, 's> {
    zone: &'z Zone,
    direction: Direction,
    devices: Vec<&'s Device>,
    /// Words for what is missing; none where nothing is.
    missing: Option<String>,
}

fn every_zone<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let zones = zones(asking, site, gate);
    let own = own_sensing(asking, site, gate);
    let rule = Rule::of(asking, site, gate);
    let (zones, own, rule) = (zones?, own?, rule?);
    let catching = zones.iter().filter(|zone| zone.catches);
    let pairs = catching.flat_map(|zone| zone.live.iter().map(move |live| (zone, *live)));
    let mut places = Vec::new();
    for (zone, direction) in pairs {
        let devices = covering(asking, site, gate, (zone, direction))?;
        let seen = Seen {
            zone,
            devices: &devices,
            own,
            beside: is_watched_beside(asking, site, gate, (zone, direction))?,
        };
        let missing = rule.missing(&seen);
        places.push(Place {
            zone,
            direction,
            devices,
            missing,
        });
    }
    for place in &places {
        asking.note(|_| line(place, own));
    }
    asking.say(|_| sentence(gate, &places));
    let protected = places
        .iter()
        .filter(|place| place.missing.is_none())
        .count();
    let number = |count: usize| u32::try_from(count).map_err(|_| Halt);
    Ok(Outcome::Compared(Comparison::at_most(
        Labeled::new(
            "places and directions that catch somebody",
            number(places.len())?,
        ),
        Labeled::new("of these protected as asked", number(protected)?),
    )))
}

fn line(place: &Place<'_, '_>, own: bool) -> String {
    let mut means: Vec<&str> = place
        .devices
        .iter()
        .map(|device| device.id.as_str())
        .collect();
    if own && place.zone.kind.is_felt_by_the_drive() {
        means.push("the drive's own sensing");
    }
    let means = if means.is_empty() {
        "nothing".to_owned()
    } else {
        means.join(", ")
    };
    let missing = place
        .missing
        .as_ref()
        .map_or_else(String::new, |missing| format!(" Missing: {missing}."));
    format!(
        "{}, {}: {means}.{missing}",
        place.zone.words(),
        place.direction.word()
    )
}

fn sentence(gate: &Gate, places: &[Place<'_, '_>]) -> String {
    if places.is_empty() {
        return format!("No place at {} catches anybody.", gate.id);
    }
    let open: Vec<String> = places
        .iter()
        .filter_map(|place| {
            let missing = place.missing.as_ref()?;
            Some(format!(
                "{} while {}: {missing}; {}",
                place.zone.words(),
                place.direction.word(),
                place.zone.kind.answers()
            ))
        })
        .collect();
    if open.is_empty() {
        return format!(
            "Each of the {} places and directions in which {} can catch somebody is protected as asked.",
            places.len(),
            gate.id
        );
    }
    format!("Not protected as asked, {}.", open.join(". Nor "))
}

/// What is missing at a zone in one direction by what the codes ask; none where nothing is.
pub(crate) fn missing<'s>(
    asking: &mut Asking<'s>,
    (site, gate): (&'s Site, &'s Gate),
    (zone, direction): (&Zone, Direction),
) -> Result<Option<String>, Halt> {
    let own = own_sensing(asking, site, gate)?;
    let rule = Rule::of(asking, site, gate)?;
    let devices = covering(asking, site, gate, (zone, direction))?;
    Ok(rule.missing(&Seen {
        zone,
        devices: &devices,
        own,
        beside: is_watched_beside(asking, site, gate, (zone, direction))?,
    }))
}

/// Every drive of the gate senses obstructions itself.
pub(crate) fn own_sensing<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<bool, Halt> {
    let mut all = Ok(true);
    for operator in site.operators_of(gate) {
        let senses = asking.need(
            &operator.origin,
            "inherent_sensing",
            operator.inherent_sensing.as_ref(),
            "true",
        );
        all = all.and_then(|all| senses.map(|senses| all && *senses));
    }
    Ok(all? && site.operators_of(gate).next().is_some())
}

/// A photo-eye that acts in the direction runs past the whole width of the zone, on either side of the leaf: whoever stands
/// at that side is detected.
fn is_watched_beside<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    (zone, direction): (&Zone, Direction),
) -> Result<bool, Halt> {
    let ([low, _, _], [high, _, _]) = (zone.extent.low(), zone.extent.high());
    let mut watched = false;
    for device in sensors(site, gate, direction) {
        if matches!(
            device.kind,
            DeviceKind::ThroughBeam | DeviceKind::Reflective
        ) {
            let [one, other] = ends(asking, device)?;
            let (from, to) = (one[0].min(other[0]), one[0].max(other[0]));
            watched |= from <= low.base() && to >= high.base();
        }
    }
    Ok(watched)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{only, short_slide};

    const SLIDE: &str = short_slide!(
        "-3 in",
        r#"
        [[gate.post]]
        id = "post-catch"
        role = "catch"
        at = ["-5 in", "0 in", "0 in"]
        height = "7 ft"
        width = "6 in"
        [[operator]]
        id = "drive"
        gate = "main"
        inherent_sensing = true
        [[device]]
        id = "edge"
        kind = "contact edge"
        protection = "B2"
        carried_by = "leaf"
        guards = ["closing"]
        at = ["-3 in", "0 in", "3 in"]
        to = ["-3 in", "0 in", "6 ft"]
    "#
    );

    const ARM: &str = r#"
        [site]
        name = "Test clinic"
        code_basis = "eu"
        use_type = "3"
        [[gate]]
        id = "arm"
        kind = "barrier-arm"
        hold_time = "10 s"
        [[gate.leaf]]
        id = "boom"
        length = "3.8 m"
        height = "100 mm"
        thickness = "45 mm"
        ground_clearance = "850 mm"
        [[operator]]
        id = "drive"
        gate = "arm"
        arm_covered = true
        inherent_sensing = true
        [[device]]
        id = "beam"
        kind = "through-beam photo-eye"
        protection = "B1"
        guards = ["closing"]
        at = ["-0.2 m", "0.5 m", "0.4 m"]
        to = ["4 m", "0.5 m", "0.4 m"]
    "#;

    #[test]
    fn holds_with_two_means_at_the_only_place() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_one_means_or_with_one_that_is_elsewhere() {
        let one = only(
            &CHECK,
            &SLIDE.replace("inherent_sensing = true", "inherent_sensing = false"),
        );
        assert_eq!(one.verdict, Verdict::Fails, "{}", one.sentence);
        assert!(
            one.sentence.contains("2 means of different types"),
            "{}",
            one.sentence
        );
        let elsewhere = only(
            &CHECK,
            &SLIDE
                .replace(
                    "\"-3 in\", \"0 in\", \"3 in\"",
                    "\"20 ft\", \"0 in\", \"3 in\"",
                )
                .replace(
                    "\"-3 in\", \"0 in\", \"6 ft\"",
                    "\"20 ft\", \"0 in\", \"6 ft\"",
                ),
        );
        assert_eq!(elsewhere.verdict, Verdict::Fails, "{}", elsewhere.sentence);
    }

    #[test]
    fn an_automatic_arm_for_anybody_wants_little_force_and_presence() {
        let finding = only(&CHECK, ARM);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        let blind = only(&CHECK, &ARM.replace("[\"closing\"]", "[\"opening\"]"));
        assert_eq!(blind.verdict, Verdict::Fails, "{}", blind.sentence);
        let hard = only(
            &CHECK,
            &ARM.replace("inherent_sensing = true", "inherent_sensing = false"),
        );
        assert_eq!(hard.verdict, Verdict::Fails, "{}", hard.sentence);
    }

    #[test]
    fn a_level_that_is_only_remembered_passes_nothing() {
        let trained = ARM.replace("use_type = \"3\"", "use_type = \"1\"");
        let finding = only(&CHECK, &trained);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn unknown_until_the_drive_is_described() {
        let finding = only(&CHECK, &SLIDE.replace("inherent_sensing = true", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("inherent_sensing"));
    }
}
