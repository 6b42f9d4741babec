//! How far each conduit bends between pull points, how tight each bend is, and whether the pits at its ends serve.

use super::bore::{bore, cables_in};
use super::ends::pit;
use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::ways::{BendMade, ConduitBend, TradeSize};
use formula::{Evidence, Source};
use quantity::{Angle, Force, Length, Quantity as _, Word as _};
use site::{Carries, Conduit, Cover, Pit, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-bends",
    codes: BOTH,
    leaves_open: "flat spots and joints inside the conduit, the least radius of each cable, and pits whose conduits enter at a corner",
    concerns: "each conduit",
    ask,
};

static TURNS: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "344.26, 352.26, 358.26: at most 360° between pull points",
    evidence: Evidence::Seen,
    seen: "code discussion forum (address withheld: a personal name is in it)",
};

static DATA: Source = Source {
    work: "no more than two turns of 90° between pull points for data cables; in Europe 360° for the rest, as the NEC has it",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as data cables are drawn without hurting their pairs",
};

static DUCT: Source = Source {
    work: "a bend of a duct no tighter than four times its bore",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as tight as the tightest of NEC chapter 9 table 2 over its bore",
};

static PIT: Source = Source {
    work: "a pit as wide as eight times its thickest cable, so that the cable turns on a radius of four diameters on either side",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "room to turn a cable by hand",
};

/// Times the bore of a duct that its bends measure at least, to the middle.
const OF_BORE: f64 = 4.0;
/// Times the thickest cable that a pit measures at least.
const OF_CABLE: f64 = 8.0;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in &site.conduit {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            bent(asking, site, conduit)
        });
    }
}

fn bent<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    asking.rest_on(&TURNS);
    let turns = turns(asking, conduit);
    let tight = radii(asking, conduit);
    let pits = pits(asking, site, conduit);
    let (turns, tight, pits) = (turns?, tight?, pits?);
    let data = cables_in(site, conduit).any(|cable| cable.carries == Some(Carries::Data));
    if data {
        asking.rest_on(&DATA);
    }
    let most = Angle::from_base(std::f64::consts::PI * if data { 1.0 } else { 2.0 });
    asking.say(|print| {
        let too_far = if turns > most {
            " Put a handhole where it turns."
        } else {
            ""
        };
        let for_data = if data { " for data cables" } else { "" };
        let tightest = if tight.iter().all(Comparison::holds) {
            ""
        } else {
            " A bend is tighter than it may be."
        };
        let in_pits = if pits.iter().all(Comparison::holds) {
            ""
        } else {
            " A pit at its end does not serve."
        };
        format!(
            "Between its pull points conduit {} turns by {}; {} is the most{for_data}.{too_far}{tightest}{in_pits}",
            conduit.id,
            print.q(turns),
            print.q(most)
        )
    });
    let turned = Comparison::at_most(
        Labeled::new("turns between pull points", turns),
        Labeled::new("the most turns", most),
    );
    Outcome::worst([turned].into_iter().chain(tight).chain(pits)).ok_or(Halt)
}

/// The sum of all bends; a segment without a bend is straight.
fn turns<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Angle, Halt> {
    if conduit.segment.is_empty() {
        return asking.lack(
            &conduit.origin,
            "segment",
            Wants::Written("[{ straight = \"40 ft\", slope = \"0\", bend = \"90°\", radius = \"10 in\" }, { straight = \"3 ft\", slope = \"1\" }]"),
        );
    }
    let mut sum = Angle::from_base(0.0);
    for segment in &conduit.segment {
        let bend = asking.read_if_there(&segment.origin, "bend", segment.bend.as_ref());
        sum += bend.unwrap_or(Angle::from_base(0.0));
    }
    Ok(sum)
}

/// Each bend against the least radius.
fn radii<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Vec<Comparison>, Halt> {
    let mut bends = conduit
        .segment
        .iter()
        .filter(|one| one.bend.is_some())
        .peekable();
    if bends.peek().is_none() {
        return Ok(Vec::new());
    }
    let least = least_radius(asking, conduit);
    let radii: Vec<Result<Length, Halt>> =
        bends.map(|segment| read!(asking, segment.radius)).collect();
    let least = least?;
    let compared = |radius: Result<Length, Halt>| -> Result<Comparison, Halt> {
        Ok(Comparison::at_most(
            Labeled::new("least radius of a bend", least),
            Labeled::new("radius of the bend", radius?),
        ))
    };
    radii.into_iter().map(compared).collect()
}

fn least_radius<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Length, Halt> {
    let size = conduit.trade_size.as_ref();
    if let Some(trade_size) = size.and_then(|size| TradeSize::from_word(size.as_str())) {
        let made = BendMade::Other;
        return Ok(asking.work(&ConduitBend { trade_size, made })?.least_radius);
    }
    asking.rest_on(&DUCT);
    Ok(bore(asking, conduit)? * OF_BORE)
}

/// The pits at its ends: room to turn its thickest cable, and a cover for the wheels over it.
fn pits<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
) -> Result<Vec<Comparison>, Halt> {
    let mut all = Ok(Vec::new());
    for end in [&conduit.from, &conduit.to] {
        if let Some((cover, pit)) = pit(site, end.as_ref()) {
            let found = one_pit(asking, site, conduit, (cover, pit));
            all = all.and_then(|mut all: Vec<Comparison>| {
                all.extend(found?);
                Ok(all)
            });
        }
    }
    all
}

fn one_pit<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
    (cover, pit): (&'s Cover, &'s Pit),
) -> Result<Vec<Comparison>, Halt> {
    asking.rest_on(&PIT);
    let length = read!(asking, pit.length);
    let width = read!(asking, pit.width);
    let wheels = wheels(asking, site, cover);
    let mut thickest = Length::from_base(0.0);
    for cable in cables_in(site, conduit) {
        let diameter = read!(asking, cable.diameter)?;
        thickest = if diameter > thickest {
            diameter
        } else {
            thickest
        };
    }
    let (length, width) = (length?, width?);
    let side = if length < width { length } else { width };
    let turn = Comparison::at_most(
        Labeled::new("width that turns its thickest cable", thickest * OF_CABLE),
        Labeled::new("width of the pit", side),
    );
    Ok([turn].into_iter().chain(wheels?).collect())
}

/// The heaviest wheel against the rating of a cover that wheels roll over.
fn wheels<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    cover: &'s Cover,
) -> Result<Option<Comparison>, Halt> {
    let under = asking.need(
        &cover.origin,
        "under_wheels",
        cover.under_wheels.as_ref(),
        "false",
    )?;
    if !under {
        return Ok(None);
    }
    let rated = read!(asking, cover.rated_load);
    let mut heaviest = Ok(Force::from_base(0.0));
    for vehicle in &site.vehicle {
        let wheel = read!(asking, vehicle.wheel_load);
        heaviest = heaviest.and_then(|most: Force| {
            let wheel = wheel?;
            Ok(if wheel > most { wheel } else { most })
        });
    }
    Ok(Some(Comparison::at_most(
        Labeled::new("heaviest wheel", heaviest?),
        Labeled::new("wheel load of the cover", rated?),
    )))
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
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        carries = "data"
        diameter = "0.3 in"
        route = ["c-01"]
        [[vehicle]]
        id = "truck"
        what = "truck"
        wheel_load = "8000 lbf"
        [[cover]]
        id = "cover-h1"
        under_wheels = true
        rated_load = "10000 lbf"
        pit = { name = "H1", length = "24 in", width = "13 in" }
        [[conduit]]
        id = "c-01"
        kind = "PVC-40"
        trade_size = "1"
        from = "H1"
        to = "box"
        segment = [{ straight = "9 ft", bend = "90°", radius = "6 in" }, { straight = "9 ft", bend = "90.0°", radius = "6 in" }]
    "#;

    #[test]
    fn holds_with_two_sweeps() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_third_turn_for_data_and_holds_for_the_rest() {
        let third = SITE.replace("90.0°", "180°");
        let finding = only(&CHECK, &third);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let power = third.replace("\"data\"", "\"power\"");
        assert_eq!(only(&CHECK, &power).verdict, Verdict::Holds);
        let again = "segment = [{ straight = \"1 ft\", bend = \"100°\", radius = \"6 in\" }, ";
        let round = power.replace("segment = [", again);
        assert_eq!(only(&CHECK, &round).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_on_a_tight_bend_a_weak_cover_and_a_narrow_pit() {
        for (good, bad) in [
            ("radius = \"6 in\" }, {", "radius = \"5 in\" }, {"),
            ("10000 lbf", "5000 lbf"),
            ("13 in", "2 in"),
        ] {
            let finding = only(&CHECK, &SITE.replace(good, bad));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{bad}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn a_duct_is_held_to_four_bores() {
        let duct = SITE.replace("trade_size = \"1\"", "bore = \"1.4 in\"");
        assert_eq!(only(&CHECK, &duct).verdict, Verdict::Holds);
        let wide = SITE.replace("trade_size = \"1\"", "bore = \"2 in\"");
        assert_eq!(only(&CHECK, &wide).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_segments_or_the_pit() {
        let bare = SITE.replace("segment = ", "# segment = ");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let pit = SITE.replace(", width = \"13 in\"", "");
        assert_eq!(only(&CHECK, &pit).verdict, Verdict::UnknownUntil);
    }
}
