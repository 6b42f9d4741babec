//! Where each conduit is sealed, and where the water in it goes.

use super::ends::pit;
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Quantity as _;
use site::{Conduit, Site, Text};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "route-sealed",
    codes: BOTH,
    leaves_open: "whether the compound suits the sheaths, gas that drifts through soil, and seals that later work has opened",
    concerns: "each conduit",
    ask,
};

static SEALS: Source = Source {
    work: "each end outside a pit sealed with removable compound; the low point drains; an enclosure is never the drain",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "asks for more than NEC 300.5(G) and 300.7 as they are remembered",
};

/// Heights nearer than this are level, in meters.
const LEVEL: f64 = 0.01;

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for conduit in &site.conduit {
        round.ask(About::new(&conduit.origin, &conduit.id), |asking| {
            sealed(asking, site, conduit)
        });
    }
}

fn sealed<'s>(asking: &mut Asking<'s>, site: &'s Site, conduit: &'s Conduit) -> Answer {
    asking.rest_on(&SEALS);
    let laid = conduit.laid.as_ref();
    let from = seal(
        asking,
        site,
        (conduit, "laid.seal_from"),
        (
            conduit.from.as_ref(),
            laid.and_then(|laid| laid.seal_from.as_ref()),
        ),
    );
    let to = seal(
        asking,
        site,
        (conduit, "laid.seal_to"),
        (
            conduit.to.as_ref(),
            laid.and_then(|laid| laid.seal_to.as_ref()),
        ),
    );
    let drain = drained(asking, site, conduit);
    let (from, to, drain) = (from?, to?, drain?);
    let open = from == Some("none") || to == Some("none");
    asking.say(|_| {
        let at = |place: Option<&Text>, seal: Option<&str>| {
            let place = place.map_or("its end", Text::as_str);
            match seal {
                None => format!("open into the pit {place}"),
                Some("none") => format!("not sealed at {place}"),
                Some(seal) => format!("sealed at {place} with {seal}"),
            }
        };
        let water = match &drain {
            Drain::Into(words) => format!("its water goes to {words}"),
            Drain::Enclosure(words) => {
                format!("its water runs into {words}, which must never be the drain")
            }
            Drain::Nowhere => "its water has nowhere to go".to_owned(),
        };
        format!(
            "Conduit {} is {} and {}; {water}.",
            conduit.id,
            at(conduit.from.as_ref(), from),
            at(conduit.to.as_ref(), to)
        )
    });
    Ok(Outcome::Rule(!open && matches!(drain, Drain::Into(_))))
}

/// What seals an end; nothing where it opens into a pit.
fn seal<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (conduit, key): (&'s Conduit, &'static str),
    (end, seal): (Option<&Text>, Option<&'s Text>),
) -> Result<Option<&'s str>, Halt> {
    if pit(site, end).is_some() {
        return Ok(None);
    }
    let seal = asking.need(&conduit.origin, key, seal, "\"duct seal\"")?;
    Ok(Some(seal.as_str()))
}

/// Where water in a conduit goes.
enum Drain {
    Into(String),
    Enclosure(String),
    Nowhere,
}

/// Where it goes: into the pit at the low end, by the drain at the low point, or into a box.
fn drained<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
) -> Result<Drain, Halt> {
    if let Some(drain) = conduit.laid.as_ref().and_then(|laid| laid.drain.as_ref()) {
        return Ok(match drain.as_str() {
            "none" => Drain::Nowhere,
            words => Drain::Into(words.to_owned()),
        });
    }
    let heights = heights(asking, conduit)?;
    let end = heights.last().copied().unwrap_or(0.0);
    let lowest = heights.iter().copied().fold(0.0, f64::min);
    let low_ends = [(&conduit.from, 0.0), (&conduit.to, end)];
    let mut whole = Ok(());
    for (name, _) in low_ends
        .into_iter()
        .filter(|(_, height)| height - lowest <= LEVEL)
    {
        if let Some((_, pit)) = pit(site, name.as_ref()) {
            match asking.need(&pit.origin, "drain", pit.drain.as_ref(), "\"gravel below\"") {
                Ok(drain) => return Ok(Drain::Into(format!("{}: {drain}", pit.name))),
                Err(halt) => whole = Err(halt),
            }
        }
        let is_box = |id: &site::Id| {
            name.as_ref()
                .is_some_and(|name| name.as_str() == id.as_str())
        };
        if let Some(enclosure) = site.enclosure.iter().find(|one| is_box(&one.id)) {
            return Ok(Drain::Enclosure(enclosure.id.to_string()));
        }
    }
    whole?;
    asking
        .need(
            &conduit.origin,
            "laid.drain",
            None,
            "\"weep hole into gravel at the low point\"",
        )
        .map(|words: &Text| Drain::Into(words.to_string()))
}

/// Height of each joint of the segments above the beginning, in meters.
fn heights<'s>(asking: &mut Asking<'s>, conduit: &'s Conduit) -> Result<Vec<f64>, Halt> {
    let mut height = 0.0;
    let mut all = Vec::new();
    let mut whole = Ok(());
    for segment in &conduit.segment {
        let straight = read!(asking, segment.straight);
        let slope = read!(asking, segment.slope);
        match straight.and_then(|straight| Ok(straight.base() * slope?.base())) {
            Ok(rise) => {
                height += rise;
                all.push(height);
            }
            Err(halt) => whole = Err(halt),
        }
    }
    whole.map(|()| all)
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
        [[enclosure]]
        id = "box"
        [[cover]]
        id = "cover-h1"
        pit = { name = "H1", drain = "gravel below" }
        [[conduit]]
        id = "c-01"
        from = "box"
        to = "H1"
        segment = [{ straight = "4 ft", slope = "-1" }, { straight = "20 ft", slope = "-0.01" }]
        laid = { seal_from = "duct seal" }
    "#;

    #[test]
    fn holds_sealed_and_falling_to_a_pit_that_drains() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("gravel"), "{}", finding.sentence);
    }

    #[test]
    fn fails_into_the_box_or_open() {
        let uphill = SITE.replace("\"-1\"", "\"0\"").replace("-0.01", "0.02");
        let finding = only(&CHECK, &uphill);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let open = SITE.replace("\"duct seal\"", "\"none\"");
        assert_eq!(only(&CHECK, &open).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_seal_or_drain() {
        let bare = SITE.replace("seal_from = \"duct seal\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
        let dry = SITE.replace(", drain = \"gravel below\"", "");
        assert_eq!(only(&CHECK, &dry).verdict, Verdict::UnknownUntil);
        // A low point between two rises has no pit to drain to.
        let sag = SITE.replace(
            "slope = \"-0.01\" }",
            "slope = \"-0.01\" }, { straight = \"3 ft\", slope = \"1\" }",
        );
        assert_eq!(only(&CHECK, &sag).verdict, Verdict::UnknownUntil);
    }
}
