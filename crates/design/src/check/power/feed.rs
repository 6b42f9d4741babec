//! What feeds a device or an operator: its source, and the cables between.

use crate::asking::{Asking, Wants, read};
use crate::outcome::Halt;
use quantity::Voltage;
use site::{Battery, Cable, Id, Origin, Site, Supply};

/// Something that takes power: where it is described, and what the description says of its feed.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Fed<'s> {
    pub(crate) origin: &'s Origin,
    pub(crate) id: &'s Id,
    pub(crate) supply: Option<&'s Id>,
    pub(crate) enclosure: Option<&'s Id>,
}

/// A source of power at a fixed voltage.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Source<'s> {
    Supply(&'s Supply),
    Battery(&'s Battery),
}

impl<'s> Source<'s> {
    pub(crate) fn id(self) -> &'s Id {
        match self {
            Self::Supply(supply) => &supply.id,
            Self::Battery(battery) => &battery.id,
        }
    }

    fn enclosure(self) -> Option<&'s Id> {
        match self {
            Self::Supply(supply) => supply.enclosure.as_ref(),
            Self::Battery(battery) => battery.enclosure.as_ref(),
        }
    }

    /// The voltage that it gives.
    pub(crate) fn voltage(self, asking: &mut Asking<'s>) -> Result<Voltage, Halt> {
        match self {
            Self::Supply(supply) => read!(asking, supply.voltage),
            Self::Battery(battery) => read!(asking, battery.voltage),
        }
    }
}

/// The supply or battery of that name; nothing where the name is that of a device, such as a powered switch.
pub(crate) fn source_named<'s>(site: &'s Site, name: &Id) -> Option<Source<'s>> {
    let supply = site
        .supply
        .iter()
        .find(|supply| supply.id == *name)
        .map(Source::Supply);
    let battery = || {
        site.battery
            .iter()
            .find(|battery| battery.id == *name)
            .map(Source::Battery)
    };
    supply.or_else(battery)
}

/// The source of something that takes power.
pub(crate) fn source_of<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    fed: Fed<'s>,
) -> Result<Source<'s>, Halt> {
    match fed.supply.and_then(|name| source_named(site, name)) {
        Some(source) => Ok(source),
        None => asking.lack(fed.origin, "supply", Wants::Written("\"supply-24\"")),
    }
}

/// The cables that bring it power: from its source, or none where both sit in one enclosure.
pub(crate) fn cables_to<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    fed: Fed<'s>,
    source: Source<'s>,
) -> Result<Vec<&'s Cable>, Halt> {
    let brings = |cable: &&Cable| cable.to == *fed.id && cable.from == *source.id();
    let cables: Vec<&Cable> = site.cable.iter().filter(brings).collect();
    let together = fed.enclosure.is_some() && fed.enclosure == source.enclosure();
    if cables.is_empty() && !together {
        return asking.lack(
            fed.origin,
            "cable",
            Wants::Table("[[cable]]\nid = \"w-01\"\nfrom = \"supply-24\"\nto = \"…\"\nsize = \"18 AWG\"\nlength = \"120 ft\""),
        );
    }
    Ok(cables)
}
