//! Whether copper for data, signals or speech joins two earths.
//!
//! Two ends whose power comes from different sources stand on different earths. Between them glass or radio is right; where
//! it is copper all the same, something must part the ends galvanically, or a protector stand at each of them.

use super::line::{is_glass, protectors, root};
use crate::asking::Asking;
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Cable, Carries, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "surge-between-buildings",
    codes: BOTH,
    leaves_open: "ends that take no power and are earthed all the same, steel armor and shields of glass cables, and two circuits of one panel, which are taken for two earths",
    concerns: "each site with cables",
    ask,
};

static APART: Source = Source {
    work: "current of a stroke flows from earth to earth through whatever joins them; glass joins nothing",
    clause: "",
    evidence: Evidence::Physics,
    seen: "Ohm's law between two electrodes; the clauses of IEEE 1100 and IEC 62305-4 were not at hand",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.cable.is_empty() {
        round.ask(About::site(&site.origin), |asking| joined(asking, site));
    }
}

/// The lines of data and signals whose ends draw their power from two sources.
fn crossing(site: &Site) -> impl Iterator<Item = &Cable> {
    let wire =
        |cable: &&Cable| matches!(cable.carries, None | Some(Carries::Data | Carries::Signal));
    site.cable.iter().filter(wire).filter(|cable| {
        let ends = (root(site, &cable.from), root(site, &cable.to));
        matches!(ends, (Some(one), Some(other)) if one != other)
    })
}

fn joined<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&APART);
    let (mut glass, mut guarded, mut bare) = (Vec::new(), Vec::new(), Vec::new());
    let mut whole = Ok(());
    for cable in crossing(site) {
        let name = cable.id.to_string();
        if is_glass(cable) {
            glass.push(name);
            continue;
        }
        match parted(asking, site, cable) {
            Ok(true) => guarded.push(name),
            Ok(false) => bare.push(name),
            Err(halt) => whole = Err(halt),
        }
    }
    if !bare.is_empty() {
        asking.say(|_| {
            format!(
                "{}: copper between two earths; make it fiber or radio, part it galvanically, or put a protector at each end on the bar of its equipment.",
                and(&bare)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    whole?;
    asking.say(|_| match (glass.is_empty(), guarded.is_empty()) {
        (true, true) => "No line for data, signals or speech joins two earths.".to_owned(),
        (false, true) => format!("Between the two earths runs glass ({}).", and(&glass)),
        (_, false) => format!(
            "Between two earths: {} is copper and guarded at both ends or parted.",
            and(&guarded)
        ),
    });
    Ok(Outcome::Rule(true))
}

/// It is parted galvanically, or has a protector on the bar of the equipment at each end.
fn parted<'s>(asking: &mut Asking<'s>, site: &'s Site, cable: &'s Cable) -> Result<bool, Halt> {
    let mut ends = 0;
    for device in protectors(site, cable) {
        let Some(surge) = &device.surge else { continue };
        if surge.isolates == Some(true) {
            return Ok(true);
        }
        if told(asking, &surge.origin, "same_earth", surge.same_earth)? {
            ends += 1;
        }
    }
    Ok(ends >= 2)
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
        id = "mains-gate"
        kind = "mains circuit"
        [[supply]]
        id = "mains-office"
        kind = "mains circuit"
        [[device]]
        id = "switch-gate"
        kind = "network switch"
        supply = "mains-gate"
        [[device]]
        id = "switch-office"
        kind = "network switch"
        supply = "mains-office"
        [[cable]]
        id = "w-02"
        carries = "data"
        from = "switch-office"
        to = "switch-gate"
    "#;

    const COPPER: &str = r#"
        size = "23 AWG"
    "#;

    const BOTH_ENDS: &str = r#"
        [[device]]
        id = "surge-one"
        kind = "surge protector"
        [device.surge]
        cables = ["w-02"]
        same_earth = true
        [[device]]
        id = "surge-two"
        kind = "surge protector"
        [device.surge]
        cables = ["w-02"]
        same_earth = true
    "#;

    #[test]
    fn holds_with_glass_and_with_a_protector_at_each_end() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("glass (w-02)"));
        let guarded = only(&CHECK, &format!("{SITE}{COPPER}{BOTH_ENDS}"));
        assert_eq!(guarded.verdict, Verdict::Holds, "{}", guarded.sentence);
    }

    #[test]
    fn fails_with_bare_copper() {
        let finding = only(&CHECK, &format!("{SITE}{COPPER}"));
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
    }

    #[test]
    fn unknown_where_nobody_says_what_a_protector_is_bonded_to() {
        let guarded = format!("{SITE}{COPPER}{BOTH_ENDS}").replace("same_earth = true", "");
        let finding = only(&CHECK, &guarded);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
    }
}
