//! Whether every source of power of an operator can be switched off and locked, within sight of the hands in it.
//!
//! Sources are the mains circuit at the head of its feed, the batteries and the solar panels on the way. Each has a
//! disconnect that a padlock holds, that opens every live conductor and is seen from the operator; where there is more than
//! one source, a label beside each names the others.

use super::branch::LICENSED;
use crate::asking::{Asking, Wants};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Quantity as _};
use site::{CodeBasis, Disconnect, Id, Operator, Origin, Site, SupplyKind};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "mains-disconnect",
    codes: BOTH,
    leaves_open: "springs, weights and a leaf on a slope, which stay loaded with all power off; prove the voltage absent every time",
    concerns: "each operator",
    ask,
};

static IN_SIGHT: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "430.102(B): in sight from the motor and the driven machine; article 100: visible and within 50 ft",
    evidence: Evidence::Seen,
    seen: "www.ecmag.com/magazine/articles/article-detail/codes-standards-motor-got-disconnected",
};

static EUROPE: Source = Source {
    work: "EN 60204-1",
    clause: "5.3: a disconnecting device for the supply and for each source on board, lockable, all live conductors",
    evidence: Evidence::Seen,
    seen: "a retelling of clause 5 on a consultancy's page (address withheld)",
};

/// Farthest that counts as within sight: 50 ft.
const SIGHT: f64 = 15.24;

/// How a disconnect is written.
const DISCONNECT: &str = "[[disconnect]]\nid = \"off-mains\"\nof = [\"mains\"]\nlockable = true\nall_poles = true\nin_sight = true\nlabeled = true\nproved = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for operator in &site.operator {
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            isolated(asking, site, operator)
        });
    }
}

fn isolated<'s>(asking: &mut Asking<'s>, site: &'s Site, operator: &'s Operator) -> Answer {
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &IN_SIGHT,
        CodeBasis::Eu => &EUROPE,
    });
    let sources = sources(asking, site, operator)?;
    let several = sources.len() > 1;
    let mut faults = Vec::new();
    let mut reach = Vec::new();
    let mut whole = Ok(());
    for (id, origin) in &sources {
        let found = of_source(asking, site, (id, origin), several);
        match found {
            Ok((disconnect, fault)) => {
                faults.extend(fault);
                reach.extend(within_sight(asking, operator, disconnect));
            }
            Err(halt) => whole = Err(halt),
        }
    }
    if faults.is_empty() {
        whole?;
    }
    let names: Vec<String> = sources.iter().map(|(id, _)| id.to_string()).collect();
    asking.say(|_| {
        if faults.is_empty() {
            format!(
                "{} of {} can be switched off and locked off in sight of it. {LICENSED}",
                and(&names),
                operator.id
            )
        } else {
            format!("{} {LICENSED}", faults.join(" "))
        }
    });
    if !faults.is_empty() {
        return Ok(Outcome::Rule(false));
    }
    Ok(Outcome::worst(reach).unwrap_or(Outcome::Rule(true)))
}

/// A source of power: its name and where it is written.
type Power<'s> = (&'s Id, &'s Origin);

/// The sources of an operator: mains, batteries and panels along its feed.
fn sources<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    operator: &'s Operator,
) -> Result<Vec<Power<'s>>, Halt> {
    let first = asking.need(
        &operator.origin,
        "supply",
        operator.supply.as_ref(),
        "\"supply-24\"",
    )?;
    let mut chain = vec![first];
    while let Some(next) = site
        .supply
        .iter()
        .find(|supply| Some(&supply.id) == chain.last().copied())
        .and_then(|supply| supply.fed_by.as_ref())
        .filter(|next| !chain.contains(next))
    {
        chain.push(next);
    }
    let on = |name: Option<&Id>| name.is_some_and(|name| chain.contains(&name));
    let mains = site
        .supply
        .iter()
        .filter(|supply| supply.kind == SupplyKind::Mains && chain.contains(&&supply.id))
        .map(|supply| (&supply.id, &supply.origin));
    let batteries = site
        .battery
        .iter()
        .filter(|battery| on(battery.supply.as_ref()) || chain.contains(&&battery.id))
        .map(|battery| (&battery.id, &battery.origin));
    let panels = site
        .solar_panel
        .iter()
        .filter(|panel| on(panel.supply.as_ref()))
        .map(|panel| (&panel.id, &panel.origin));
    let all: Vec<Power<'s>> = mains.chain(batteries).chain(panels).collect();
    if all.is_empty() {
        return asking.lack(&operator.origin, "supply", Wants::Written("\"mains\""));
    }
    Ok(all)
}

/// The disconnect of a source, and what is wrong with it.
fn of_source<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (id, origin): Power<'s>,
    several: bool,
) -> Result<(&'s Disconnect, Option<String>), Halt> {
    let Some(disconnect) = site.disconnect.iter().find(|one| one.of.contains(id)) else {
        return asking.lack(origin, "disconnect", Wants::Table(DISCONNECT));
    };
    let at = &disconnect.origin;
    let lockable = told(asking, at, "lockable", disconnect.lockable);
    let all_poles = told(asking, at, "all_poles", disconnect.all_poles);
    let in_sight = told(asking, at, "in_sight", disconnect.in_sight);
    let labeled = if several {
        told(asking, at, "labeled", disconnect.labeled)
    } else {
        Ok(true)
    };
    let proved = told(asking, at, "proved", disconnect.proved);
    let fault = [
        (lockable, "cannot be locked off"),
        (all_poles, "leaves a conductor live"),
        (in_sight, "is out of sight of the hands in the operator"),
        (labeled, "says nothing of the other source that stays live"),
        (proved, "was tried, and something stayed live"),
    ]
    .into_iter()
    .find(|(told, _)| matches!(told, Ok(false)))
    .map(|(_, why)| format!("The disconnect of {id} {why}."));
    if fault.is_none() {
        let _ = (lockable?, all_poles?, in_sight?, labeled?, proved?);
    }
    Ok((disconnect, fault))
}

/// The way from operator to disconnect, where both places are known.
fn within_sight<'s>(
    asking: &mut Asking<'s>,
    operator: &'s Operator,
    disconnect: &'s Disconnect,
) -> Option<Comparison> {
    let (from, to) = (operator.at.as_ref()?, disconnect.at.as_ref()?);
    let from = asking.position(&operator.origin, "at", Some(from)).ok()?;
    let to = asking.position(&disconnect.origin, "at", Some(to)).ok()?;
    let way = from
        .iter()
        .zip(to)
        .map(|(one, other)| (other - *one).base().powi(2))
        .sum::<f64>()
        .sqrt();
    Some(Comparison::at_most(
        Labeled::new("way from operator to disconnect", Length::from_base(way)),
        Labeled::new("way that counts as within sight", Length::from_base(SIGHT)),
    ))
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
        [[gate]]
        id = "main"
        kind = "track-slide"
        [[operator]]
        id = "drive"
        gate = "main"
        at = ["20 ft", "1 ft", "1 ft"]
        supply = "supply-24"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [[supply]]
        id = "supply-24"
        kind = "power supply"
        fed_by = "mains"
        [[battery]]
        id = "battery"
        supply = "supply-24"
        [[disconnect]]
        id = "off-mains"
        of = ["mains"]
        at = ["25 ft", "5 ft", "4 ft"]
        lockable = true
        all_poles = true
        in_sight = true
        labeled = true
        proved = true
        [[disconnect]]
        id = "off-battery"
        of = ["battery"]
        lockable = true
        all_poles = true
        in_sight = true
        labeled = true
        proved = true
    "#;

    #[test]
    fn holds_with_a_lock_for_each_source() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.starts_with("mains and battery of drive"),
            "{}",
            finding.sentence
        );
        let europe = SITE.replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::Holds);
    }

    #[test]
    fn fails_far_away_and_without_a_lock() {
        let far = SITE.replace("[\"25 ft\"", "[\"90 ft\"");
        assert_eq!(only(&CHECK, &far).verdict, Verdict::Fails);
        let open = SITE.replacen("lockable = true", "lockable = false", 1);
        let finding = only(&CHECK, &open);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        assert!(finding.sentence.contains("cannot be locked off"));
    }

    #[test]
    fn unknown_without_one_for_the_battery() {
        let one = SITE.replace("of = [\"battery\"]", "of = [\"mains\"]");
        let finding = only(&CHECK, &one);
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        assert!(finding.missing[0].path.contains("battery"));
    }

    #[test]
    fn unknown_until_somebody_tried() {
        let finding = only(&CHECK, &SITE.replacen("proved = true", "", 1));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].path.ends_with("proved"));
    }
}
