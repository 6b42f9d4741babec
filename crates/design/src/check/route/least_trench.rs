//! Whether the ways taken are the cheapest that reach everything, and stay off ground that bars them.
//!
//! The site draws points and the ways between them; each way costs its length times a price for its making and surface.
//! The cheapest connected set is found by branch and bound over whole hundredths, with a bound that proves it.

use crate::asking::{Asking, Wants};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::plain::{and, counted};
use crate::routes::{Cheapest, Ground, cheapest, joined};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _, Ratio};
use site::{Device, Id, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-least-trench",
    codes: BOTH,
    leaves_open: "ways that nobody drew, ground that nobody marked, who must agree to the digging, and what a trench beside a footing takes from it",
    concerns: "a site with conduits",
    ask,
};

static NETWORK: Source = Source {
    work: "cheapest connected set of ways: branch and bound over whole hundredths, bound by dual ascent",
    clause: "",
    evidence: Evidence::Physics,
    seen: "same cost as a general integer solver on a hundred random nets",
};

/// How a served thing is written.
const POINT: &str = "[[way_point]]\nid = \"wp-post\"\nat = [\"-3 ft\", \"-9 ft\", \"0 ft\"]\nserves = [\"reader-entry\"]";
/// How a conduit gets into a way.
const WAY: &str = "[[way]]\nid = \"way-1\"\nfrom = \"wp-box\"\nto = \"wp-post\"\nby = \"trench\"\nsurface = \"lawn\"\nconduits = [\"c-01\"]";

/// Cases that are looked at before the answer stays open.
const MOST: usize = 60;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.conduit.is_empty() {
        round.ask_in_full(About::site(&site.origin), |asking| least(asking, site));
    }
}

fn least<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&NETWORK);
    let ground = Ground::read(asking, site);
    let served = all_served(asking, site);
    let laid = all_in_ways(asking, site);
    let ground = ground?;
    served.and(laid)?;
    if let Some(barred) = through_forbidden(&ground) {
        asking.say(|_| barred);
        return Ok(Outcome::Rule(false));
    }
    let (net, places) = ground.net();
    let is_taken = |edge: &usize| !ground.ways[places[*edge]].way.conduits.is_empty();
    let taken: Vec<usize> = (0..places.len()).filter(is_taken).collect();
    if !joined(&net, taken.iter().copied()) {
        asking.say(|_| "The ways that conduits lie in do not join everything that must be reached; draw the way that is missing, or lay a conduit in it.".to_owned());
        return Ok(Outcome::Rule(false));
    }
    let Some(found) = cheapest(&net, MOST) else {
        return asking.refuse("no ways that are allowed join everything that must be reached");
    };
    let cost: u64 = taken.iter().map(|edge| net.edges[*edge].cost).sum();
    let length = taken.iter().map(|edge| ground.ways[places[*edge]].length);
    let length = length.fold(Length::from_base(0.0), |sum, one| sum + one);
    asking.say(|print| {
        let taken = counted(taken.len(), "way");
        format!(
            "{} taken, {} long together, {} at the prices given; {}",
            crate::plain::capitalized(&taken),
            print.q(length),
            ground.money(cost),
            proof(&ground, &found)
        )
    });
    if cost > found.at_least && cost <= found.cost && !found.is_proved() {
        return asking.refuse(
            "the search was cut short with a gap; run the whole one: gatewright choose routes",
        );
    }
    Ok(Outcome::at_most(
        Labeled::new(
            "cost of the ways taken, over the least",
            over(cost, found.cost),
        ),
        Labeled::new("the least", Ratio::from_base(1.0)),
    ))
}

fn proof(ground: &Ground<'_>, found: &Cheapest) -> String {
    let reached = counted(ground.goals(), "point");
    if found.is_proved() {
        format!(
            "the cheapest set that reaches all {reached} costs {}, and none is cheaper: proved over {}.",
            ground.money(found.cost),
            counted(found.looked, "case")
        )
    } else {
        format!(
            "the cheapest set found that reaches all {reached} costs {}, and none costs less than {}.",
            ground.money(found.cost),
            ground.money(found.at_least)
        )
    }
}

#[allow(
    clippy::cast_precision_loss,
    reason = "costs stay far below 2^53 hundredths"
)]
fn over(cost: u64, least: u64) -> Ratio {
    Ratio::from_base(if least == 0 {
        f64::from(u8::from(cost > 0)) + 1.0
    } else {
        cost as f64 / least as f64
    })
}

/// A way that is taken through ground that bars it.
fn through_forbidden(ground: &Ground<'_>) -> Option<String> {
    let taken = ground
        .ways
        .iter()
        .filter(|one| !one.way.conduits.is_empty());
    let mut barred = taken.filter_map(|one| Some((one.way, one.barred?)));
    barred.next().map(|(way, off)| {
        let what = off.what.as_ref().map_or(off.id.as_str(), |what| what.as_str());
        format!("Way {} runs through ground that bars it: {what}. Go around it, or bore where that is allowed.", way.id)
    })
}

/// Every end of a routed cable stands at a point, by itself or in its enclosure.
fn all_served<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<(), Halt> {
    let serves = |id: &Id| site.way_point.iter().any(|point| point.serves.contains(id));
    let routed = site.cable.iter().filter(|cable| !cable.route.is_empty());
    let ends = routed.flat_map(|cable| [(cable, &cable.from), (cable, &cable.to)]);
    let lost: Vec<_> = ends
        .filter(|(_, end)| !serves(end) && !shelter(site, end).is_some_and(serves))
        .collect();
    let mut whole = Ok(());
    for (cable, end) in &lost {
        asking.note(|_| format!("No way point serves {end}."));
        whole = asking.lack(&cable.origin, "way_point", Wants::Table(POINT));
    }
    whole
}

/// The enclosure that a thing is mounted in.
fn shelter<'s>(site: &'s Site, id: &Id) -> Option<&'s Id> {
    let device = site.device.iter().find(|device: &&Device| device.id == *id);
    let supply = site.supply.iter().find(|supply| supply.id == *id);
    let battery = site.battery.iter().find(|battery| battery.id == *id);
    let joint = site.joint.iter().find(|joint| joint.id == *id);
    device
        .and_then(|one| one.enclosure.as_ref())
        .or_else(|| supply.and_then(|one| one.enclosure.as_ref()))
        .or_else(|| battery.and_then(|one| one.enclosure.as_ref()))
        .or_else(|| joint.and_then(|one| one.enclosure.as_ref()))
}

/// Every conduit lies in some way.
fn all_in_ways<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<(), Halt> {
    let lies = |id: &Id| site.way.iter().any(|way| way.conduits.contains(id));
    let lost: Vec<_> = site.conduit.iter().filter(|one| !lies(&one.id)).collect();
    if lost.is_empty() {
        return Ok(());
    }
    asking.note(|_| {
        let names: Vec<String> = lost.iter().map(|one| one.id.to_string()).collect();
        format!("No way holds {}.", and(&names))
    });
    let mut whole = Ok(());
    for conduit in lost {
        whole = asking.lack(&conduit.origin, "way", Wants::Table(WAY));
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    /// A box and two posts: 10 ft to each over the middle, or 16 ft from post to post.
    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        units = "us"
        [[enclosure]]
        id = "box"
        [[device]]
        id = "eye"
        kind = "through-beam photo-eye"
        [[conduit]]
        id = "c-01"
        [[cable]]
        id = "w-01"
        from = "box"
        to = "eye"
        route = ["c-01"]
        [[digging]]
        by = "trench"
        price = "10.00 USD"
        price_length = "1 ft"
        [[way_point]]
        id = "wp-box"
        at = ["0 ft", "0 ft", "0 ft"]
        serves = ["box"]
        [[way_point]]
        id = "wp-eye"
        at = ["20 ft", "0 ft", "0 ft"]
        serves = ["eye"]
        [[way]]
        id = "straight"
        from = "wp-box"
        to = "wp-eye"
        by = "trench"
        surface = "lawn"
        conduits = ["c-01"]
        [[way]]
        id = "around"
        from = "wp-box"
        to = "wp-eye"
        via = [["10 ft", "10 ft", "0 ft"]]
        by = "trench"
        surface = "lawn"
    "#;

    const ROOTS: &str = "\n[[keep_off]]\nid = \"oak\"\nwhat = \"roots of the oak\"\noutline = [[\"8 ft\", \"-2 ft\", \"0 ft\"], [\"12 ft\", \"-2 ft\", \"0 ft\"], [\"12 ft\", \"2 ft\", \"0 ft\"], [\"8 ft\", \"2 ft\", \"0 ft\"]]\n";

    #[test]
    fn holds_straight() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("200.00 USD"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_the_long_way_round() {
        let swapped = SITE
            .replace("conduits = [\"c-01\"]", "")
            .replace("via = ", "conduits = [\"c-01\"]\nvia = ");
        let finding = only(&CHECK, &swapped);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn fails_through_roots_unless_bored() {
        let rooted = SITE.to_owned() + ROOTS;
        let finding = only(&CHECK, &rooted);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("oak"), "{}", finding.sentence);
        let let_by = rooted + "lets = [\"trench\"]\n";
        assert_eq!(only(&CHECK, &let_by).verdict, Verdict::Holds);
    }

    #[test]
    fn holds_around_roots() {
        let rooted = SITE
            .replace("conduits = [\"c-01\"]", "")
            .replace("via = ", "conduits = [\"c-01\"]\nvia = ")
            + ROOTS;
        let finding = only(&CHECK, &rooted);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_where_nothing_joins() {
        let cut = SITE.replace("conduits = [\"c-01\"]", "")
            + "\n[[way]]\nid = \"stub\"\nfrom = \"wp-box\"\nto = \"wp-far\"\nby = \"trench\"\nconduits = [\"c-01\"]\n[[way_point]]\nid = \"wp-far\"\nat = [\"0 ft\", \"5 ft\", \"0 ft\"]\n";
        let finding = only(&CHECK, &cut);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_without_ways_or_prices() {
        let bare = SITE.split("[[digging]]").next().unwrap_or_default();
        let finding = only(&CHECK, bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let free = SITE.replace("price = \"10.00 USD\"", "");
        assert_eq!(only(&CHECK, &free).verdict, Verdict::UnknownUntil);
    }
}
