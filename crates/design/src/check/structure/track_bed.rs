//! Whether the beam under a ground track carries the wheels of vehicles and of the leaf, lies below frost, and drains.
//!
//! The beam lies on the soil along its whole length. Wheels press hardest at its end, which lies at the edge of the
//! opening, and bend it most far from its ends. The stiffness of the soil is measured, or both ends of the range of its
//! class count. The whole leaf is taken to stand on one wheel at the end of the track.

use super::footing::named;
use super::frost::bottom;
use super::loads::{Factors, Level};
use super::soil;
use crate::asking::{Asking, Wants, read};
use crate::check::fire::apparatus;
use crate::check::leaf::mass;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::standing::{BeamOnSoil, BeamOnSoilLoad, ConcreteSectionBending};
use formula::{Evidence, Source};
use quantity::{
    Force, Length, Pressure, PressurePerDepth, Quantity as _, SecondMomentOfArea, Torque,
};
use site::{CodeBasis, Foundation, Gate, GateKind, Site, Vehicle};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "structure-track-bed",
    codes: BOTH,
    leaves_open: "bars at the top of the beam, least bars and stirrups; the weight of the beam itself; a beam much shorter than three times the length over which it spreads a wheel; two wheels near each other, wheels that roll along the beam, and the edge of the concrete beside the rail",
    concerns: "each gate that slides on a ground track",
    ask,
};

/// Half of a bar and what ties it, beyond the cover, in meters: 1 in.
const TO_BARS: f64 = 0.0254;
/// Elasticity of concrete over the square root of its strength, both in pounds on each square inch.
const ELASTICITY: f64 = 57_000.0;
/// One pound-force on each square inch, in pascals.
const PSI: f64 = 6_894.757_293_168;
/// Standard gravity in m/s².
const GRAVITY: f64 = 9.806_65;

static BEAM: Source = Source {
    work: "ACI 318-19: elasticity of concrete 57,000 √f'c; the middle of the bars 1 in beyond their cover",
    clause: "19.2.2.1(b)",
    evidence: Evidence::Seen,
    seen: "the text of the clause, then 8.5.1, in an engineers' mail archive: http://seaintarchive.org/mailarchive/2015/msg00193.html; the inch is common practice for bars up to No. 8 in a stirrup",
};

static EUROPE: Source = Source {
    work: "EN 1992-1-1",
    clause: "6.1",
    evidence: Evidence::Memory,
    seen: "not seen; the figures of ACI 318-19 stand in",
};

/// How a track is written.
const TRACK: &str =
    "{ length = \"42 ft\", foundation = \"beam-track\", rated_wheel_load = \"16000 lbf\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site
        .gate
        .iter()
        .filter(|gate| gate.kind == GateKind::TrackSlide)
    {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            bed(asking, site, gate)
        });
    }
}

fn bed<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    let wheel = heaviest_wheel(asking, site);
    let leaf = heaviest_leaf(asking, gate);
    let Some(track) = &gate.track else {
        return asking.lack(&gate.origin, "track", Wants::Written(TRACK));
    };
    let rated = read!(asking, track.rated_wheel_load);
    let foundation = named(asking, site, (&track.origin, track.foundation.as_ref()));
    let beam = foundation.and_then(|foundation| beam(asking, site, foundation));
    let bearing = soil::bearing(asking, site);
    let (wheel, leaf, rated, beam, bearing) = (wheel?, leaf?, rated?, beam?, bearing?);
    let factors = Factors::of(asking, site.site.code_basis, Level::Strength);
    asking.rest_on(&BEAM);
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&EUROPE);
    }
    let [softest, stiffest] = beam.stiffness;
    let bent = beam.under(asking, wheel, softest)?;
    let pressed = beam.under(asking, wheel, stiffest)?;
    let rolled = beam.under(asking, leaf, stiffest)?;
    let holds = asking.work(&beam.section)?.design;
    let asked = bent.moment * factors.live;
    let press = larger(pressed.end_pressure, rolled.end_pressure);
    asking.say(|print| {
        let groove = if beam.drained {
            ""
        } else {
            " Water stands in the groove: drain it below the rail."
        };
        format!(
            "The heaviest wheel, {}, bends the bed with {}, {} with its factor, and it holds {}; at its end it presses with {} on \
             soil that carries {}, and pulls the top with {}; the fixing of the track takes a wheel of {}.{groove}",
            print.q(wheel),
            print.q(bent.moment),
            print.q(asked),
            print.q(holds),
            print.q(press),
            print.q(bearing),
            print.q(bent.end_moment),
            print.q(rated)
        )
    });
    let mut all = compared(wheel, rated, (asked, holds), (press, bearing));
    all.push(beam.bottom);
    if !beam.drained {
        all.push(Comparison::at_most(
            Labeled::new("grooves in which water stands", 1),
            Labeled::new("grooves in which it may", 0),
        ));
    }
    Outcome::worst(all).ok_or(Halt)
}

fn compared(
    wheel: Force,
    rated: Force,
    (asked, holds): (Torque, Torque),
    (press, bearing): (Pressure, Pressure),
) -> Vec<Comparison> {
    vec![
        Comparison::at_most(
            Labeled::new("heaviest wheel of a vehicle", wheel),
            Labeled::new("wheel for which the track's fixing is good", rated),
        ),
        Comparison::at_most(
            Labeled::new("moment under the wheel, with its factor", asked),
            Labeled::new("moment that the bed holds", holds),
        ),
        Comparison::at_most(
            Labeled::new("pressure under the end of the bed", press),
            Labeled::new("pressure that the soil may carry", bearing),
        ),
    ]
}

fn larger(one: Pressure, other: Pressure) -> Pressure {
    if one > other { one } else { other }
}

/// The beam with what it lies on.
struct Beam {
    width: Length,
    inertia: SecondMomentOfArea,
    elasticity: Pressure,
    stiffness: [PressurePerDepth; 2],
    section: ConcreteSectionBending,
    bottom: Comparison,
    drained: bool,
}

impl Beam {
    fn under(
        &self,
        asking: &mut Asking<'_>,
        load: Force,
        stiffness: PressurePerDepth,
    ) -> Result<BeamOnSoilLoad, Halt> {
        asking.work(&BeamOnSoil {
            load,
            width: self.width,
            inertia: self.inertia,
            elasticity: self.elasticity,
            stiffness,
        })
    }
}

fn beam<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
) -> Result<Beam, Halt> {
    let width = read!(asking, foundation.width);
    let depth = read!(asking, foundation.depth);
    let strength = read!(asking, foundation.strength);
    let bars = read!(asking, foundation.bottom_bars);
    let bar_strength = read!(asking, foundation.bar_strength);
    let cover = read!(asking, foundation.cover);
    let drained = asking.need(
        &foundation.origin,
        "drained",
        foundation.drained.as_ref(),
        "true",
    );
    let bottom = bottom(asking, site, foundation);
    let stiffness = soil::stiffness(asking, site);
    let (width, depth, strength) = (width?, depth?, strength?);
    let effective = depth - cover? - Length::from_base(TO_BARS);
    let inertia = width.base() * depth.base().powi(3) / 12.0;
    Ok(Beam {
        width,
        inertia: SecondMomentOfArea::from_base(inertia),
        elasticity: Pressure::from_base(ELASTICITY * (strength.base() / PSI).max(0.0).sqrt() * PSI),
        stiffness: stiffness?,
        section: ConcreteSectionBending {
            width,
            effective_depth: effective,
            bars: bars?,
            bar_strength: bar_strength?,
            concrete_strength: strength,
        },
        bottom: bottom?,
        drained: *drained?,
    })
}

/// The heaviest wheel that may cross the track. A vehicle whose wheels nobody knows counts where half of its mass would
/// be more than the heaviest that is known.
fn heaviest_wheel<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Force, Halt> {
    let stated = |vehicle: &&Vehicle| vehicle.wheel_load.is_some() || vehicle.axle_load.is_some();
    let mut heaviest = Force::from_base(0.0);
    let mut whole = Ok(());
    if apparatus::comes(site) {
        match apparatus::wheel(asking, site) {
            Ok(wheel) => heaviest = wheel,
            Err(halt) => whole = Err(halt),
        }
    }
    for vehicle in site.vehicle.iter().filter(stated) {
        let wheel = apparatus::of_vehicle(asking, vehicle)?;
        if wheel > heaviest {
            heaviest = wheel;
        }
    }
    for vehicle in site.vehicle.iter().filter(|vehicle| !stated(vehicle)) {
        let side = asking
            .read_if_there(&vehicle.origin, "mass", vehicle.mass.as_ref())
            .map(|mass| mass.base() * GRAVITY / 2.0);
        let engine = vehicle.fire_apparatus == Some(true);
        if !engine && side.is_none_or(|side| side > heaviest.base()) {
            whole = read!(asking, vehicle.wheel_load).map(|_| ());
        }
    }
    if site.vehicle.is_empty() && heaviest.base() <= 0.0 {
        return asking.lack(
            &site.origin,
            "vehicle",
            Wants::Table(
                "[[vehicle]]\nid = \"truck\"\nwhat = \"delivery truck\"\nwheel_load = \"9000 lbf\"",
            ),
        );
    }
    whole.map(|()| heaviest)
}

/// Weight of the heaviest leaf.
fn heaviest_leaf<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Force, Halt> {
    let masses: Vec<_> = gate.leaf.iter().map(|leaf| mass(asking, leaf)).collect();
    let masses: Result<Vec<_>, Halt> = masses.into_iter().collect();
    let most = masses?.iter().map(|mass| mass.base()).fold(0.0, f64::max);
    if most > 0.0 {
        return Ok(Force::from_base(most * GRAVITY));
    }
    asking.lack(
        &gate.origin,
        "leaf",
        Wants::Written("[{ id = \"leaf\", mass = \"640 lb\" }]"),
    )
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
        [climate]
        soil_bearing = "3000 psf"
        soil_stiffness = "100 lbf/in³"
        frost_depth = "36 in"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[gate.leaf]]
        id = "leaf"
        mass = "640 lb"
        [gate.track]
        foundation = "beam"
        rated_wheel_load = "20000 lbf"
        [[foundation]]
        id = "beam"
        width = "14 in"
        depth = "42 in"
        strength = "3500 psi"
        cover = "3 in"
        bottom_bars = "1.58 in²"
        bar_strength = "60 ksi"
        drained = true
        [[vehicle]]
        id = "truck"
        what = "truck"
        wheel_load = "16750 lbf ± 2 %"
    "#;

    #[test]
    fn holds_under_a_truck() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // The case of beam-on-soil: 59,280 lbf·ft under the wheel, 2,028 psf at the end.
        assert!(
            finding.sentence.contains("59280 lbf"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_too_slender_too_shallow_or_wet() {
        for (from, to) in [
            ("1.58 in²", "0.2 in²"),
            ("soil_bearing = \"3000 psf\"", "soil_bearing = \"1500 psf\""),
            (
                "rated_wheel_load = \"20000 lbf\"",
                "rated_wheel_load = \"9000 lbf\"",
            ),
            ("frost_depth = \"36 in\"\n", "frost_depth = \"60 in\"\n"),
            ("drained = true", "drained = false"),
        ] {
            let changed = if from.starts_with("frost") {
                // Frost is let off where water drains, so the groove is what fails here.
                SITE.replace(from, to)
                    .replace("drained = true", "drained = false")
            } else {
                SITE.replace(from, to)
            };
            let finding = only(&CHECK, &changed);
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_wheels_bars_and_soil() {
        let bare = SITE
            .replace("wheel_load = \"16750 lbf ± 2 %\"", "mass = \"30000 lb\"")
            .replace("bottom_bars = \"1.58 in²\"", "")
            .replace("soil_bearing = \"3000 psf\"", "")
            .replace("soil_stiffness = \"100 lbf/in³\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn a_lighter_vehicle_needs_no_wheel_load() {
        let van =
            SITE.to_owned() + "[[vehicle]]\nid = \"van\"\nwhat = \"van\"\nmass = \"9000 lb\"\n";
        assert_eq!(only(&CHECK, &van).verdict, Verdict::Holds);
        let lorry = van.replace("9000 lb\"", "80000 lb\"");
        assert_eq!(only(&CHECK, &lorry).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn the_class_of_the_soil_gives_a_range() {
        let class = SITE.replace("soil_stiffness = \"100 lbf/in³\"", "soil_class = \"sand\"");
        let finding = only(&CHECK, &class);
        assert!(
            finding
                .sources
                .iter()
                .any(|source| source.work.contains("subgrade")),
            "{:?}",
            finding.sources
        );
    }

    #[test]
    fn in_europe_it_warns_and_does_not_pass() {
        let europe = SITE.replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::UnknownUntil);
    }
}
