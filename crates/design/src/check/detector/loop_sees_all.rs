//! Whether a loop sees the highest bed, the smallest motorcycle and the bicycle at the curb: each loop.
//!
//! A vehicle that was driven slowly along edge and middle and was seen counts as seen. Of the others, broad metal is held
//! against the height of detection, motorcycles against the longest side, and bicycles have to be tried.

use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::loops::{Laid, laid, loops};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use crate::vehicle::{Sized, lanes, sized};
use formula::protection::LoopDetectionHeight;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{Device, OnVehicle, Site, Vehicle, VehicleKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "vehicle-loop-sees-all",
    codes: BOTH,
    leaves_open: "vehicles that the site does not name, frames of plastic or wood, what steel below takes, and how the detector is set: drive the lightest motorcycle and the highest truck slowly along the edge and the middle, and write them down as tried",
    concerns: "each loop",
    ask,
};

static NARROW: Source = Source {
    work: "instructions of several loop detectors: no side of a loop longer than 6 ft where it must see a motorcycle",
    clause: "",
    evidence: Evidence::Seen,
    seen: "copies of the instructions; addresses withheld, they carry company names",
};

static CURB: Source = Source {
    work: "guides to loops: within 2 ft of each curb; another: within 1 ft where motorcycles come, within 3 ft for cars only",
    clause: "",
    evidence: Evidence::Seen,
    seen: "two articles (addresses withheld, they carry company names); they disagree, both are named",
};

static TRIED: Source = Source {
    work: "the vehicle itself, driven slowly along edge and middle",
    clause: "",
    evidence: Evidence::Physics,
    seen: "as tried on site",
};

/// Longest side that surely sees a motorcycle: 6 ft (m).
const NARROW_SIDE: f64 = 6.0 * 0.3048;
/// Farthest from the curb where motorcycles or bicycles come: 1 ft (m).
const CURB_NARROW: f64 = 0.3048;
/// Farthest from the curb for cars only: 3 ft (m).
const CURB_CARS: f64 = 3.0 * 0.3048;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in loops(site) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            sees_all(asking, site, device)
        });
    }
}

fn is_narrow(vehicle: &Vehicle) -> bool {
    matches!(
        vehicle.kind,
        Some(VehicleKind::Motorcycle | VehicleKind::Bicycle)
    )
}

fn was_tried(device: &Device, vehicle: &Vehicle) -> bool {
    let tried = device.loop_setup.as_ref().map(|setup| &setup.tried);
    tried.is_some_and(|tried| tried.contains(&vehicle.id))
}

fn sees_all<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    let laid = laid(asking, site, device);
    let gap = curb_gap(asking, site, device, laid.as_ref().ok());
    let untried = |vehicle: &&Vehicle| !was_tried(device, vehicle);
    let all: Vec<Result<(&Vehicle, Sized), Halt>> = site
        .vehicle
        .iter()
        .filter(untried)
        .map(|vehicle| sized(asking, vehicle).map(|sized| (vehicle, sized)))
        .collect();
    if site.vehicle.is_empty() {
        let write = "[[vehicle]]\nid = \"truck\"\nwhat = \"delivery truck\"\nkind = \"truck\"\nchassis_height = \"40 in\"";
        return asking.lack(&device.origin, "vehicle", Wants::Table(write));
    }
    let all: Vec<(&Vehicle, Sized)> = all.into_iter().collect::<Result<_, Halt>>()?;
    let (laid, gap) = (laid?, gap?);
    bicycles(asking, device, &all)?;
    if site
        .vehicle
        .iter()
        .any(|vehicle| was_tried(device, vehicle))
    {
        asking.rest_on(&TRIED);
    }
    let highest = all
        .iter()
        .map(|(_, sized)| underside(sized))
        .fold(0.0, f64::max);
    let sees = asking.work(&LoopDetectionHeight {
        short_side: laid.short(),
        clearance: laid.depth + Length::from_base(highest),
    })?;
    say(asking, site, device, &laid, (highest, gap));
    let mut comparisons = vec![Comparison::at_most(
        Labeled::new(
            "highest frame above the wire, of those not tried",
            laid.depth + Length::from_base(highest),
        ),
        Labeled::new(
            "height of detection, two thirds of the short side",
            sees.height,
        ),
    )];
    if all.iter().any(|(vehicle, _)| is_narrow(vehicle)) {
        asking.rest_on(&NARROW);
        comparisons.push(Comparison::at_most(
            Labeled::new("longest side", laid.long()),
            Labeled::new(
                "longest side that sees a motorcycle",
                Length::from_base(NARROW_SIDE),
            ),
        ));
    }
    if let Some(gap) = gap {
        asking.rest_on(&CURB);
        let narrow = site.vehicle.iter().any(is_narrow);
        comparisons.push(Comparison::at_most(
            Labeled::new("farthest from the loop to the edge of the lane", gap),
            Labeled::new(
                "what may pass beside it unseen",
                Length::from_base(if narrow { CURB_NARROW } else { CURB_CARS }),
            ),
        ));
    }
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The underside of the highest broad metal; none for what is narrow.
fn underside(sized: &Sized) -> f64 {
    let metal = sized.outline.parts.iter().filter(|part| part.metal);
    if sized.outline.narrow {
        return 0.0;
    }
    metal.map(|part| part.bottom.base()).fold(0.0, f64::max)
}

/// A bicycle is seen or not by its rims and where it stands: only a try says.
fn bicycles<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    untried: &[(&'s Vehicle, Sized)],
) -> Result<(), Halt> {
    let bicycle = |(vehicle, _): &&(&Vehicle, Sized)| vehicle.kind == Some(VehicleKind::Bicycle);
    if !untried.iter().any(|it| bicycle(&it)) {
        return Ok(());
    }
    match &device.loop_setup {
        Some(setup) => asking.lack(&setup.origin, "tried", Wants::Written("[\"bicycle\"]")),
        None => asking.lack(
            &device.origin,
            "loop_setup.tried",
            Wants::Written("[\"bicycle\"]"),
        ),
    }
}

/// The wider way from a loop that keeps the leaf to the edges of the lane; nothing for loops that only open or report.
fn curb_gap<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    laid: Option<&Laid>,
) -> Result<Option<Length>, Halt> {
    use OnVehicle::{HoldsOpen, StopsClosing, StopsOpening};
    let keeps = |does: &OnVehicle| matches!(does, HoldsOpen | StopsClosing | StopsOpening);
    if !device.on_vehicle.iter().any(keeps) {
        return Ok(None);
    }
    let gate = crate::check::gate_of(asking, site, device)?;
    let mut widest: Option<Length> = None;
    for lane in lanes(site, gate) {
        let width = asking.read(&lane.origin, "width", lane.width.as_ref())?;
        let Some(laid) = laid else { continue };
        let middle = f64::midpoint(laid.into.0.base(), laid.into.1.base());
        let path: Vec<(f64, f64)> = lane
            .path
            .iter()
            .map(|at| (at.y.nominal().base(), at.x.nominal().base()))
            .collect();
        let Some(at) = crate::vehicle::between(&path, middle) else {
            continue;
        };
        let half = width.base() / 2.0;
        let gap = (laid.along.0.base() - (at - half)).max(at + half - laid.along.1.base());
        let gap = Length::from_base(gap.max(0.0));
        if widest.is_none_or(|widest| gap > widest) {
            widest = Some(gap);
        }
    }
    Ok(widest)
}

fn say(
    asking: &mut Asking<'_>,
    site: &Site,
    device: &Device,
    laid: &Laid,
    (highest, gap): (f64, Option<Length>),
) {
    asking.say(|print| {
        let short = laid.short().base();
        let tried: Vec<&str> = site
            .vehicle
            .iter()
            .filter(|vehicle| was_tried(device, vehicle))
            .map(|vehicle| vehicle.what.as_str())
            .collect();
        let tried = if tried.is_empty() {
            String::new()
        } else {
            format!(" Tried and seen: {}.", tried.join(", "))
        };
        let edge = gap.map_or(String::new(), |gap| {
            format!(" The lane is open {} beside it.", print.q(gap))
        });
        let narrow = if site.vehicle.iter().any(is_narrow) {
            ""
        } else {
            " No motorcycle and no bicycle is named on this site; its field ends inches beside the wire."
        };
        format!(
            "{} sees metal up to {} above its wire by two thirds of its short side (a chart says four fifths, {}); the highest frame that was not tried is {} above the wire.{tried}{edge}{narrow}",
            device.id,
            print.q(Length::from_base(short * 2.0 / 3.0)),
            print.q(Length::from_base(short * 0.8)),
            print.q(laid.depth + Length::from_base(highest)),
        )
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
        code_basis = "us"
        units = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[device]]
        id = "loop-in"
        kind = "loop"
        turns = 4
        on_vehicle = ["holds open"]
        at = ["3 ft", "4 ft", "-2 in"]
        to = ["17 ft", "10 ft", "-2 in"]
        [[lane]]
        id = "lane"
        width = "18 ft"
        path = [["10 ft", "-40 ft", "0 ft"], ["10 ft", "40 ft", "0 ft"]]
        [[vehicle]]
        id = "truck"
        what = "delivery truck"
        kind = "truck"
        length = "30 ft"
        width = "8 ft"
        height = "12 ft"
        chassis_height = "40 in"
        drawbar_gap = "0 ft"
        speed = "5 mph"
    "#;

    #[test]
    fn holds_for_a_truck_over_a_wide_loop() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // Two thirds of 6 ft are 4 ft, four fifths 4.8 ft; the frame is 42 in above the wire; 2 ft of lane beside it.
        assert!(finding.sentence.contains("4 ft"), "{}", finding.sentence);
    }

    #[test]
    fn fails_under_a_higher_bed_until_it_was_tried() {
        let high = SITE.replace("40 in", "50 in");
        assert_eq!(only(&CHECK, &high).verdict, Verdict::Fails);
        let tried = high.replace(
            "turns = 4",
            "turns = 4\nloop_setup = { tried = [\"truck\"] }",
        );
        assert_eq!(only(&CHECK, &tried).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_for_a_motorcycle_over_a_long_side_and_for_a_lane_open_beside_it() {
        let rider = SITE.replace("kind = \"truck\"", "kind = \"motorcycle\"");
        assert_eq!(only(&CHECK, &rider).verdict, Verdict::Fails);
        let wide = SITE.replace("width = \"18 ft\"", "width = \"26 ft\"");
        assert_eq!(only(&CHECK, &wide).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_for_a_bicycle_and_without_vehicles() {
        let bicycle = SITE.replace("kind = \"truck\"", "kind = \"bicycle\"");
        assert_eq!(only(&CHECK, &bicycle).verdict, Verdict::UnknownUntil);
        let none = SITE.split("[[vehicle]]").next().unwrap_or_default();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
    }
}
