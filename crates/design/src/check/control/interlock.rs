//! Two gates that may not be open together: the room between them, the way out of it, fire and loss of power.

use crate::asking::{Asking, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::Length;
use site::{Gate, Interlock, PairState, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "control-interlock",
    codes: BOTH,
    leaves_open: "what the authority wants open after a fire call where it wants more than both gates, and a vehicle that breaks down between",
    concerns: "each pair of gates that may not be open together",
    ask,
};

static PAIR: Source = Source {
    work: "gates in a row: never both open, room for the longest vehicle, always a way out, both open after a fire call",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as locks of two gates are commonly built",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for (index, interlock) in gate.interlock.iter().enumerate() {
            let about = About::one_of(&interlock.origin, &gate.id, index);
            round.ask(about, |asking| locked(asking, site, gate, interlock));
        }
    }
}

fn locked<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
    interlock: &'s Interlock,
) -> Answer {
    asking.rest_on(&PAIR);
    let never = interlock.never_both_open.as_ref();
    let never = asking.need(&interlock.origin, "never_both_open", never, "true");
    let way_out = interlock.way_out.as_ref();
    let way_out = asking.need(
        &interlock.origin,
        "way_out",
        way_out,
        "\"walk gate with a push bar between the two\"",
    );
    let on_fire = pick!(asking, interlock.on_fire);
    let on_loss = pick!(asking, interlock.on_power_loss);
    let vehicles = site.gate.iter().any(|other| other.id == interlock.with);
    let room = if vehicles {
        room(asking, site, interlock).map(Some)
    } else {
        Ok(None)
    };
    let (never, way_out, on_fire, on_loss, room) = (never?, way_out?, on_fire?, on_loss?, room?);
    let faults: Vec<&str> = [
        (!never).then_some("both can be open at once"),
        (on_fire != PairState::BothOpen).then_some("a fire call does not open both"),
        (on_loss == PairState::BothShut).then_some("without power both stay shut and locked"),
        (room.is_some_and(|room| !room.holds()))
            .then_some("the longest vehicle does not fit between them"),
    ]
    .into_iter()
    .flatten()
    .collect();
    asking.say(|_| {
        let pair = format!("{} and {}", capitalized(gate.id.as_str()), interlock.with);
        if faults.is_empty() {
            format!(
                "{pair} are never open together; whoever is between gets out by this: {way_out}."
            )
        } else {
            format!("{pair}: {}.", faults.join("; "))
        }
    });
    Ok(match room {
        Some(room) if faults.is_empty() || (faults.len() == 1 && !room.holds()) => {
            Outcome::Compared(room)
        }
        _ => Outcome::Rule(faults.is_empty()),
    })
}

/// The room between two vehicle gates against the longest vehicle.
fn room<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    interlock: &'s Interlock,
) -> Result<Comparison, Halt> {
    let space = read!(asking, interlock.space);
    let lengths: Vec<_> = site
        .vehicle
        .iter()
        .map(|vehicle| read!(asking, vehicle.length))
        .collect();
    let longest = asking.need(
        &site.origin,
        "vehicle",
        site.vehicle.first(),
        "[{ id = \"truck\", what = \"delivery truck\", length = \"30 ft\" }]",
    );
    let lengths = lengths.into_iter().collect::<Result<Vec<Length>, _>>();
    let (space, lengths) = (space?, lengths?);
    longest?;
    let longest =
        lengths.into_iter().fold(
            Length::default(),
            |one, other| if other > one { other } else { one },
        );
    Ok(Comparison::at_most(
        Labeled::new("length of the longest vehicle", longest),
        Labeled::new("room between the two gates", space),
    ))
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
        [[gate]]
        id = "outer"
        kind = "track-slide"
        [[gate.interlock]]
        with = "inner"
        never_both_open = true
        space = "60 ft"
        way_out = "walk gate with a push bar"
        on_fire = "both open"
        on_power_loss = "as they are, free by hand"
        [[gate]]
        id = "inner"
        kind = "track-slide"
        [[vehicle]]
        id = "truck"
        what = "truck"
        length = "48 ft"
    "#;

    #[test]
    fn holds_with_room_and_a_way_out() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_short_and_shut() {
        for (one, other) in [
            ("60 ft", "40 ft"),
            ("never_both_open = true", "never_both_open = false"),
            ("both open", "one opens"),
            ("as they are, free by hand", "both shut"),
        ] {
            let finding = only(&CHECK, &SITE.replace(one, other));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{other}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn a_gate_alone_is_not_asked() {
        let alone = SITE.replace("[[gate.interlock]]", "[[gate.stop]]");
        let (head, rest) = alone.split_once("[[gate.stop]]").unwrap();
        let (_, tail) = rest.split_once("[[gate]]").unwrap();
        assert!(all(&CHECK, &format!("{head}[[gate]]{tail}")).is_empty());
    }

    #[test]
    fn unknown_without_room_and_way_out() {
        let bare = SITE
            .replace("space = \"60 ft\"", "")
            .replace("way_out = \"walk gate with a push bar\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
