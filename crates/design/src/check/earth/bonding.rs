//! Whether the metal that a hand can touch is tied together and to the protective terminal.
//!
//! Asked of operators, of leaves of metal and of enclosures with a supply in them. A leaf is tied by a conductor that bends
//! with it: hinges and rollers are no bond. Where whoever answers for the circuit has a reason against a bond, it is shown.
//! Where nothing on the site is above 50 V, no bond is asked for.

use crate::asking::{Asking, Wants, read};
use crate::check::mains::branch::{LICENSED, circuits};
use crate::check::protect::means::told;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::and;
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Resistance, Voltage};
use site::{Bond, CodeBasis, Id, Material, Origin, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "earth-bonding",
    codes: BOTH,
    leaves_open: "fences farther away, what a customer adds later, and rust under a lug: measure each bond at test current and again at visits",
    concerns: "each site with an operator",
    ask,
};

static AMERICAN: Source = Source {
    work: "NFPA 70 (NEC)",
    clause: "250.4(A)(3) to (5): metal that may become live is tied together and to the source",
    evidence: Evidence::Seen,
    seen: "up.codes/s/effective-ground-fault-current-path",
};

static EUROPEAN: Source = Source {
    work: "IEC 60364-4-41 and IEC 60364-5-54",
    clause: "protective bonding of exposed metal",
    evidence: Evidence::Memory,
    seen: "",
};

static LOW: Source = Source {
    work: "a bond has no more than 0.1 Ω from the part to the protective terminal",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "limit of usual continuity tests of equipment",
};

static HARMLESS: Source = Source {
    work: "IEC 60364-4-41",
    clause: "table 41.1 begins above 50 V",
    evidence: Evidence::Seen,
    seen: "a retelling of the table: www.ericmark.talktalk.net/41-1.html",
};

/// Resistance that a bond may have, in ohms.
const MOST: f64 = 0.1;
/// Voltage up to which no bond is asked for.
const LOW_VOLTAGE: f64 = 50.0;

/// How a bond is written.
const BOND: &str =
    "[[bond]]\nid = \"bond-leaf\"\njoins = [\"leaf\"]\nresistance = \"0.04 Ω\"\nflexible = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.operator.is_empty() {
        round.ask(About::site(&site.origin), |asking| bonded(asking, site));
    }
}

fn bonded<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    if circuits(site).next().is_none() {
        return low_voltage(asking, site);
    }
    asking.rest_on(match site.site.code_basis {
        CodeBasis::Us => &AMERICAN,
        CodeBasis::Eu => &EUROPEAN,
    });
    asking.rest_on(&LOW);
    let mut found = Found::default();
    let mut whole = Ok(());
    for part in parts(site) {
        if let Err(halt) = tied(asking, site, part, &mut found) {
            whole = Err(halt);
        }
    }
    if !found.stiff.is_empty() {
        asking.say(|_| {
            format!(
                "{}: hinges and rollers are no bond; tie it with a conductor that bends with the leaf. {LICENSED}",
                and(&found.stiff)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    whole?;
    asking.say(|_| {
        let reasons = if found.instead.is_empty() {
            String::new()
        } else {
            format!(" Not tied: {}.", found.instead.join("; "))
        };
        format!(
            "Tied to the protective terminal: {}.{reasons} {LICENSED}",
            and(&found.tied)
        )
    });
    Ok(Outcome::worst(found.compared).unwrap_or(Outcome::Rule(true)))
}

/// What was found of the metal parts.
#[derive(Default)]
struct Found {
    tied: Vec<String>,
    stiff: Vec<String>,
    instead: Vec<String>,
    compared: Vec<Comparison>,
}

/// A metal part that a hand can touch.
#[derive(Clone, Copy)]
struct Part<'s> {
    id: &'s Id,
    origin: &'s Origin,
    moves: bool,
}

fn parts(site: &Site) -> Vec<Part<'_>> {
    let operators = site.operator.iter().map(|operator| Part {
        id: &operator.id,
        origin: &operator.origin,
        moves: false,
    });
    let leaves = site
        .gate
        .iter()
        .flat_map(|gate| &gate.leaf)
        .filter(|leaf| {
            matches!(
                leaf.material,
                None | Some(Material::Steel | Material::Aluminum)
            )
        })
        .map(|leaf| Part {
            id: &leaf.id,
            origin: &leaf.origin,
            moves: true,
        });
    let with_supply = |id: &Id| {
        let mut supplies = site.supply.iter();
        supplies.any(|supply| supply.enclosure.as_ref() == Some(id))
    };
    let enclosures = site
        .enclosure
        .iter()
        .filter(|enclosure| with_supply(&enclosure.id))
        .map(|enclosure| Part {
            id: &enclosure.id,
            origin: &enclosure.origin,
            moves: false,
        });
    operators.chain(leaves).chain(enclosures).collect()
}

fn tied<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    part: Part<'s>,
    found: &mut Found,
) -> Result<(), Halt> {
    let joins = |bond: &&Bond| bond.joins.contains(part.id);
    let Some(bond) = site.bond.iter().find(joins) else {
        return asking.lack(part.origin, "bond", Wants::Table(BOND));
    };
    if let Some(instead) = &bond.instead {
        found.instead.push(format!("{}, {instead}", part.id));
        return Ok(());
    }
    let resistance = read!(asking, bond.resistance);
    if part.moves && !told(asking, &bond.origin, "flexible", bond.flexible)? {
        found.stiff.push(part.id.to_string());
        return Ok(());
    }
    found.tied.push(part.id.to_string());
    found.compared.push(Comparison::at_most(
        Labeled::new("resistance of the bond", resistance?),
        Labeled::new(
            "resistance that a bond may have",
            Resistance::from_base(MOST),
        ),
    ));
    Ok(())
}

/// A site without mains: nothing on it is above the voltage from which a bond is asked for.
fn low_voltage<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&HARMLESS);
    let mut greatest = Ok(Voltage::from_base(0.0));
    let mut count = |found: Result<Voltage, Halt>| {
        greatest = greatest.and_then(|most| {
            let found = found?;
            Ok(if found > most { found } else { most })
        });
    };
    for supply in &site.supply {
        count(read!(asking, supply.voltage));
    }
    for battery in &site.battery {
        count(read!(asking, battery.voltage));
    }
    for panel in &site.solar_panel {
        count(read!(asking, panel.open_voltage));
    }
    let greatest = greatest?;
    asking.say(|print| {
        format!(
            "No mains comes to this gate; nothing on it has more than {}, and no bond is asked for against shock.",
            print.q(greatest)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("greatest voltage on the site", greatest),
        Labeled::new(
            "voltage up to which no bond is asked for",
            Voltage::from_base(LOW_VOLTAGE),
        ),
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
        [[gate.leaf]]
        id = "leaf"
        material = "steel"
        [[operator]]
        id = "drive"
        gate = "main"
        supply = "mains"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        [[bond]]
        id = "bond-drive"
        joins = ["drive"]
        resistance = "0.03 Ω"
        [[bond]]
        id = "bond-leaf"
        joins = ["leaf"]
        resistance = "0.06 Ω"
        flexible = true
    "#;

    #[test]
    fn holds_with_a_strap_to_the_leaf() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_by_its_rollers_alone_and_over_a_rusty_lug() {
        let rollers = SITE.replace("flexible = true", "flexible = false");
        assert_eq!(only(&CHECK, &rollers).verdict, Verdict::Fails);
        let rusty = SITE.replace("0.06 Ω", "0.6 Ω");
        assert_eq!(only(&CHECK, &rusty).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_a_bond_and_in_europe() {
        let bare = SITE.replace("joins = [\"leaf\"]", "joins = []");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert!(finding.missing[0].write.starts_with("[[bond]]"));
        let europe = SITE.replace("\"us\"", "\"eu\"");
        assert_eq!(only(&CHECK, &europe).verdict, Verdict::UnknownUntil);
    }

    #[test]
    fn holds_without_mains_below_fifty_volts() {
        let sun = SITE.replace(
            "kind = \"mains circuit\"",
            "kind = \"charge controller\"\nvoltage = \"24 V\"",
        );
        let finding = only(&CHECK, &sun);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }
}
