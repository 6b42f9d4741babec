//! Whether a plug that is on a cable before the pull goes through every conduit and gland, and whether edges are smooth.
//!
//! The diagonal of the plug has to fit above the cables that lie in each conduit, taken as if all others were in already,
//! and its stiff part has to go around each bend. A cable that is cut and ended on site has nothing to pass but edges.

use super::bend_radius::on_the_way;
use super::walk::{Piece, pieces};
use super::{Alike, in_conduits};
use crate::asking::{Asking, need, pick, read};
use crate::check::route::bore::{bore, cables_in};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::ways::{PlugThroughBend, RoomBesideCables};
use formula::{Evidence, Source};
use quantity::{Area, Length, Quantity as _, Ratio};
use site::{Conduit, PlugOn, Site};
use std::f64::consts::FRAC_PI_4;

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "pull-connector-passes",
    codes: BOTH,
    leaves_open: "holes in posts and bases that are no conduit: try the plug through a sample of each",
    concerns: "each kind of cable that runs through a conduit",
    ask,
};

static EDGES: Source = Source {
    work: "every edge that a cable rubs over has a bushing, a bell end, or is of plastic",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice; NEC 300.4(G) asks for it from 4 AWG upwards",
};

static PACKING: Source = Source {
    work: "loosely laid cables fill about 60 % of the room in which they lie",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice of tray and trunking fill",
};

/// Share of their room that loosely laid cables fill.
const LOOSE: f64 = 0.6;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for kind in in_conduits(site, &["plug"]) {
        round.ask(About::new(&kind.first.origin, &kind.first.id), |asking| {
            passes(asking, site, &kind)
        });
    }
}

/// A plug as it goes through.
#[derive(Clone, Copy)]
struct Going {
    diagonal: Length,
    length: Length,
}

fn passes<'s>(asking: &mut Asking<'s>, site: &'s Site, kind: &Alike<'s>) -> Answer {
    let cable = kind.first;
    let on = pick!(asking, cable.plug?.on);
    let rough = rough(asking, site, kind);
    let (on, rough) = (on?, rough?);
    asking.rest_on(&EDGES);
    let mut rules = Rules::default();
    rules.keep(
        rough.is_none(),
        &format!(
            "A raw edge rubs the cable at an end of {}: fit a bushing first.",
            rough.unwrap_or_default()
        ),
    );
    let mut tight = None;
    if on == PlugOn::Pulled {
        tight = Some(plug_goes(asking, site, kind, &mut rules)?);
    }
    asking.say(|print| {
        rules.says(|| match tight {
            None => format!(
                "{}: no plug goes through, it is cut and ended on site; every edge on the way is smooth.",
                kind.named()
            ),
            Some((plug, clear)) => format!(
                "{}: the plug is {} across its corners, and the narrowest place leaves {}.",
                kind.named(),
                print.q(plug.diagonal),
                print.q(clear)
            ),
        })
    });
    Ok(rules.outcome())
}

/// The first conduit with a raw edge at an end.
fn rough<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
) -> Result<Option<&'s str>, Halt> {
    let mut rough = None;
    let mut whole = Ok(());
    for conduit in on_the_way(site, kind) {
        match need!(asking, conduit.proved?.ends_smooth, "true") {
            Ok(smooth) if !*smooth && rough.is_none() => rough = Some(conduit.id.as_str()),
            Ok(_) => {}
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| rough)
}

/// Holds the plug against each conduit and gland; gives it with the narrowest place.
fn plug_goes<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
    rules: &mut Rules,
) -> Result<(Going, Length), Halt> {
    let plug = plug(asking, kind)?;
    asking.rest_on(&PACKING);
    let mut narrowest: Option<Length> = None;
    for conduit in on_the_way(site, kind) {
        let clear = clear(asking, site, kind, conduit)?;
        rules.compare(Comparison::at_most(
            Labeled::new("plug across its corners", plug.diagonal),
            Labeled::new("clear width in the conduit", clear),
        ));
        if narrowest.is_none_or(|known| clear < known) {
            narrowest = Some(clear);
        }
        if plug.diagonal <= clear {
            bends(asking, (conduit, clear), plug, rules)?;
        }
    }
    glands(asking, site, kind, (plug, rules));
    narrowest.map(|narrowest| (plug, narrowest)).ok_or(Halt)
}

fn plug<'s>(asking: &mut Asking<'s>, kind: &Alike<'s>) -> Result<Going, Halt> {
    let cable = kind.first;
    let width = read!(asking, cable.plug?.width);
    let height = read!(asking, cable.plug?.height);
    let length = read!(asking, cable.plug?.length);
    let (width, height, length) = (width?, height?, length?);
    Ok(Going {
        diagonal: Length::from_base(width.base().hypot(height.base())),
        length,
    })
}

/// What the other cables leave clear in a conduit.
fn clear<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
    conduit: &'s Conduit,
) -> Result<Length, Halt> {
    let bore = bore(asking, conduit);
    let (mut area, mut thickest) = (0.0, 0.0_f64);
    let mut left_out = false;
    for cable in cables_in(site, conduit) {
        // The plug's own cable is behind it.
        if cable.id == kind.first.id && !left_out {
            left_out = true;
            continue;
        }
        let diameter = read!(asking, cable.diameter)?.base();
        area += FRAC_PI_4 * diameter * diameter;
        thickest = thickest.max(diameter);
    }
    let lying = RoomBesideCables {
        bore: bore?,
        cables: Area::from_base(area),
        thickest: Length::from_base(thickest),
        packing: Ratio::from_base(LOOSE),
    };
    Ok(asking.work(&lying)?.clear)
}

fn bends<'s>(
    asking: &mut Asking<'s>,
    (conduit, clear): (&'s Conduit, Length),
    plug: Going,
    rules: &mut Rules,
) -> Result<(), Halt> {
    for piece in pieces(asking, conduit)? {
        let Piece::Bend { radius, .. } = piece else {
            continue;
        };
        let around = PlugThroughBend {
            radius,
            clear,
            width: plug.diagonal,
        };
        let longest = asking.work(&around)?.longest;
        rules.compare(Comparison::at_most(
            Labeled::new("stiff length of the plug", plug.length),
            Labeled::new("longest that goes around the bend", longest),
        ));
    }
    Ok(())
}

/// The plug against each gland that its cable comes in through.
fn glands<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    kind: &Alike<'s>,
    (plug, rules): (Going, &mut Rules),
) {
    let entries = site.enclosure.iter().flat_map(|enclosure| &enclosure.entry);
    let used = entries.filter(|entry| {
        kind.cables
            .iter()
            .any(|cable| entry.cables.contains(&cable.id))
    });
    for entry in used {
        if let Some(largest) =
            asking.read_if_there(&entry.origin, "largest", entry.largest.as_ref())
        {
            rules.compare(Comparison::at_most(
                Labeled::new("plug across its corners", plug.diagonal),
                Labeled::new("widest that the gland lets through", largest),
            ));
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "source"
        kind = "power supply"
        [[enclosure]]
        id = "box"
        [[conduit]]
        id = "c-01"
        bore = "1 in"
        segment = [{ straight = "40 ft", bend = "90°", radius = "6 in" }, { straight = "4 ft" }]
        proved = { ends_smooth = true }
        [[cable]]
        id = "w-01"
        from = "source"
        to = "box"
        diameter = "0.25 in"
        plug = { on = "pulled end", width = "0.5 in", height = "0.4 in", length = "1.5 in" }
        route = ["c-01"]
    "#;

    #[test]
    fn holds_where_the_plug_is_small() {
        // 0.640 in across its corners in a clear inch.
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!((finding.ratio.unwrap() - 0.5_f64.hypot(0.4)).abs() < 1e-9);
    }

    #[test]
    fn fails_beside_another_cable_around_a_tight_bend_and_over_an_edge() {
        let other = SITE.to_owned()
            + "[[cable]]\nid = \"w-02\"\nfrom = \"source\"\nto = \"box\"\ndiameter = \"0.4 in\"\nplug = { on = \"none\" }\nroute = [\"c-01\"]\n";
        let findings = all(&CHECK, &other);
        assert!(
            findings
                .iter()
                .any(|finding| finding.verdict == Verdict::Fails)
        );
        assert!(
            findings
                .iter()
                .any(|finding| finding.verdict == Verdict::Holds)
        );
        // 6.5² − 6.14² is 4.5 in², twice its root 4.3 in.
        let long = SITE.replace("length = \"1.5 in\"", "length = \"4.5 in\"");
        assert_eq!(only(&CHECK, &long).verdict, Verdict::Fails);
        let rough = SITE.replace("ends_smooth = true", "ends_smooth = false");
        let finding = only(&CHECK, &rough);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("c-01"), "{}", finding.sentence);
    }

    #[test]
    fn fails_in_a_gland_that_is_made_for_the_cable_alone() {
        let gland = SITE.replace(
            "id = \"box\"",
            "id = \"box\"\nentry = [{ what = \"gland\", cables = [\"w-01\"], largest = \"0.4 in\" }]",
        );
        assert_eq!(only(&CHECK, &gland).verdict, Verdict::Fails);
        let cut = gland.replace("pulled end", "none");
        assert_eq!(only(&CHECK, &cut).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_while_nobody_says_whether_a_plug_is_on() {
        let bare = SITE.lines().filter(|line| !line.contains("plug = "));
        let bare = bare.collect::<Vec<_>>().join("\n");
        let finding = only(&CHECK, &bare.replace("proved = { ends_smooth = true }", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
