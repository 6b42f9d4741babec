//! A cable without a fuse: only a source that cannot give more than its conductors carry, or one of limited power, will do.

use crate::asking::{Asking, Wants, read};
use crate::circuit::Source;
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use formula::Evidence;
use formula::power::NecClass2Source;
use quantity::Current;
use site::{Cable, CodeBasis, Site, Supply};

static LIMITED_EU: formula::Source = formula::Source {
    work: "IEC 62368-1",
    clause: "annex Q: limited power sources, 100 VA up to 60 V",
    evidence: Evidence::Memory,
    seen: "recalled",
};

/// Whether a cable may go without a fuse.
pub(super) fn unfused<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    cable: &'s Cable,
    source: Source<'s>,
    carried: Result<Current, Halt>,
) -> Answer {
    if let Source::Supply(supply) = source
        && supply.limited == Some(true)
    {
        return of_limited_power(asking, site, cable, supply);
    }
    let most = match source {
        Source::Supply(supply) if supply.fault_current.is_some() => {
            read!(asking, supply.fault_current)
        }
        _ => asking.lack(&cable.origin, "fuse", Wants::Written("\"f3\"")),
    };
    let (carried, most) = (carried?, most?);
    asking.say(|print| {
        format!(
            "{} has no fuse; a short draws {} from {}, and its conductors carry {}.",
            cable.id,
            print.q(most),
            source.id(),
            print.q(carried)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("most that its source gives", most),
        Labeled::new("current that the conductors carry", carried),
    ))
}

/// A source that is marked as class 2 or as of limited power protects its own wiring, while it is small enough to be one.
fn of_limited_power<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    cable: &'s Cable,
    supply: &'s Supply,
) -> Answer {
    let rated = read!(asking, supply.rated_current);
    let highest = match &supply.highest_voltage {
        Some(_) => read!(asking, supply.highest_voltage),
        None => read!(asking, supply.voltage),
    };
    let (rated, highest) = (rated?, highest?);
    if site.site.code_basis == CodeBasis::Eu {
        asking.rest_on(&LIMITED_EU);
    }
    let limits = asking.work(&NecClass2Source { highest })?;
    asking.say(|print| {
        format!(
            "{} has no fuse; {} is marked as a source of limited power, which may give {} at {}, and is rated for {}.",
            cable.id,
            supply.id,
            print.q(limits.current),
            print.q(highest),
            print.q(rated)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("rating of the source", rated),
        Labeled::new(
            "greatest rating of a source of limited power",
            limits.current,
        ),
    ))
}
