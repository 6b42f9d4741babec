//! What happens to a leaf that rises when its spring, rope or chain breaks.
//!
//! A second means that holds it must be there, and the drop until it holds is held against the drop that the standard or
//! the data sheet allows. What the ropes have in hand, and the energy of a fall without a catch, are said beside it.

use crate::asking::{Asking, Wants, read};
use crate::check::force::rising::rises;
use crate::check::leaf::mass;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Labeled, Outcome};
use crate::subject::About;
use formula::motion::{EnergyOfFall, FallEnergy, RopeSafetyFactor};
use formula::{Evidence, Source};
use quantity::{Acceleration, Quantity as _, Ratio};
use site::{Balance, Gate, Leaf, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "stop-spring-or-rope-breaks",
    codes: BOTH,
    leaves_open: "the drop that EN 12604 itself allows, the factor that it wants of ropes, a burst hose, and the state of catch, rope and spring at each visit",
    concerns: "each leaf of a gate that rises",
    ask,
};

static NO_FALL: Source = Source {
    work: "EN 12453:2017+A1:2021 and EN 12604: no falling because of a single fault",
    clause: "",
    evidence: Evidence::Seen,
    seen: "news of a door and gate trade federation on both standards: https://www.dhfonline.org.uk/news/; its list of causes of deaths says that a leaf must not fall when one part fails",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in site.gate.iter().filter(|gate| rises(gate)) {
        if gate.leaf.is_empty() {
            round.ask(About::new(&gate.origin, &gate.id), |asking| {
                asking.lack(
                    &gate.origin,
                    "leaf",
                    Wants::Written("[{ id = \"leaf\", mass = \"640 lb\" }]"),
                )
            });
        }
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                breaks(asking, gate, leaf)
            });
        }
    }
}

fn breaks<'s>(asking: &mut Asking<'s>, gate: &'s Gate, leaf: &'s Leaf) -> Answer {
    let balance = asking.need(
        &gate.origin,
        "balance",
        gate.balance.as_ref(),
        "{ kind = \"torsion spring\", second_means = true, catch_drop = \"4 in\", allowed_drop = \"12 in\" }",
    )?;
    let second = asking.need(
        &balance.origin,
        "second_means",
        balance.second_means.as_ref(),
        "true",
    );
    let drop = read!(asking, balance.catch_drop);
    let allowed = read!(asking, balance.allowed_drop);
    let mass = mass(asking, leaf);
    asking.rest_on(&NO_FALL);
    if !*second? {
        asking.say(|_| {
            format!(
                "When its spring, rope or chain breaks, nothing else holds {}. Keep people from under it and leave it shut until \
                 a catch or a second means holds it.",
                leaf.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let (drop, allowed, mass) = (drop?, allowed?, mass?);
    let fall = asking.work(&FallEnergy { mass, drop })?;
    let in_hand = in_hand(asking, balance, mass);
    asking.say(|print| {
        let EnergyOfFall { energy, .. } = fall;
        let ropes = in_hand.map_or_else(String::new, |factor| {
            format!(
                " New ropes or chains break at {} times what hangs from them.",
                print.q(factor)
            )
        });
        format!(
            "When its spring, rope or chain breaks, {} drops {} with {} until a second means holds it; {} is allowed.{ropes}",
            leaf.id,
            print.q(drop),
            print.q(energy),
            print.q(allowed)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("drop until the catch holds", drop),
        Labeled::new("drop that is allowed", allowed),
    ))
}

/// What the ropes have in hand, where the site says what they break at.
fn in_hand<'s>(
    asking: &mut Asking<'s>,
    balance: &'s Balance,
    mass: quantity::Mass,
) -> Option<Ratio> {
    let strength = asking.read_if_there(
        &balance.origin,
        "rope_strength",
        balance.rope_strength.as_ref(),
    )?;
    let gives = asking.work_if_in_reach(&RopeSafetyFactor {
        mass,
        acceleration: Acceleration::from_base(0.0),
        strength,
        count: balance.count?,
    })?;
    Some(gives.factor)
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
        code_basis = "eu"
        [[gate]]
        id = "lift"
        kind = "vertical-lift"
        [gate.balance]
        kind = "torsion spring"
        count = 2
        rope_strength = "9000 N"
        second_means = true
        catch_drop = "80 mm ± 20 mm"
        allowed_drop = "300 mm"
        [[gate.leaf]]
        id = "panel"
        mass = "290 kg"
    "#;

    #[test]
    fn holds_with_a_catch() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        // 2 · 9000 N over 290 kg · 9.80665 m/s² is 6.33.
        assert!(finding.sentence.contains("6.33"), "{}", finding.sentence);
    }

    #[test]
    fn fails_without_a_second_means_or_with_a_long_drop() {
        let none = only(&CHECK, &SITE.replace("= true", "= false"));
        assert_eq!(none.verdict, Verdict::Fails);
        assert!(none.sentence.contains("Keep people from under it"));
        let long = only(&CHECK, &SITE.replace("80 mm", "400 mm"));
        assert_eq!(long.verdict, Verdict::Fails, "{}", long.sentence);
    }

    #[test]
    fn unknown_without_the_catch_and_the_drops() {
        let bare = SITE
            .replace("second_means = true", "")
            .replace("catch_drop = \"80 mm ± 20 mm\"", "")
            .replace("allowed_drop = \"300 mm\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 3, "{:?}", finding.missing);
    }

    #[test]
    fn a_slide_is_not_asked() {
        assert!(all(&CHECK, &SITE.replace("vertical-lift", "track-slide")).is_empty());
    }
}
