//! What a loop measures at the cabinet: by the guide, by its wire, with its lead-in, over steel.

use super::laid::Laid;
use crate::asking::{Asking, Wants, need, pick, read};
use crate::circuit::conductor::resistance;
use crate::outcome::Halt;
use formula::power::{ConductorResistance, Metal, Stranding, metal_area};
use formula::protection::LoopWire;
use formula::signal::{LoopGuideInductance, LoopInductance, LoopLeadIn, LoopOverSteel};
use quantity::{ConductorSize, Inductance, Length, Quantity as _, Resistance, Temperature};
use site::{Cable, Device, LoopSetup, Site};

/// A loop with its lead-in.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Electrical {
    /// By the guide of the trade, without lead-in.
    pub(crate) guide: Inductance,
    /// By its wire and turns, without lead-in.
    pub(crate) own: Inductance,
    /// The same over steel as a closed sheet; nothing where there is none.
    pub(crate) over_steel: Option<Inductance>,
    /// Depth of that steel below the wire.
    pub(crate) steel: Option<Length>,
    /// What the lead-in adds.
    pub(crate) lead_in: Inductance,
    /// Length of the lead-in.
    pub(crate) lead_length: Length,
    /// Wire of the loop, both wires of its lead-in counted.
    pub(crate) wire: Length,
    /// Resistance of both.
    pub(crate) resistance: Resistance,
}

impl Electrical {
    /// The least that may be read at the cabinet.
    pub(crate) fn least(&self) -> Inductance {
        self.over_steel.unwrap_or(self.own) + self.lead_in
    }

    /// The most that may be read at the cabinet.
    pub(crate) fn most(&self) -> Inductance {
        self.own + self.lead_in
    }
}

/// Height at which the field over steel is asked for where only the inductance counts (m).
const ANY_HEIGHT: f64 = 0.5;

pub(crate) fn electrical<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
    laid: Result<Laid, Halt>,
) -> Result<Electrical, Halt> {
    let wire = pick!(asking, device.loop_setup?.wire);
    let outside = read!(asking, device.loop_setup?.wire_outside);
    let steel = steel(asking, device);
    let lead = lead(asking, site, device);
    let (laid, wire, outside) = (laid?, wire?, outside?);
    let (steel, lead) = (steel?, lead?);
    let (length, width, turns) = (laid.length(), laid.width(), laid.turns);
    let guide = asking.work(&LoopGuideInductance {
        length,
        width,
        turns,
    })?;
    let own = asking
        .work(&LoopInductance {
            length,
            width,
            turns,
            wire: bare(wire),
            spacing: outside,
        })?
        .inductance;
    let core = match &device.loop_setup {
        Some(setup) => core(asking, setup, outside),
        None => outside,
    };
    let lead_in = asking.work(&LoopLeadIn {
        length: lead.length,
        wire: bare(lead.size),
        spacing: core,
    })?;
    let cut = asking.work(&LoopWire {
        length,
        width,
        turns,
        lead_in: lead.length,
    })?;
    let over_steel = match steel {
        Some(steel) => Some(
            asking
                .work(&LoopOverSteel {
                    length,
                    width,
                    turns,
                    inductance: own,
                    steel,
                    height: Length::from_base(ANY_HEIGHT),
                })?
                .left,
        ),
        None => None,
    };
    let slot = asking.work(&ConductorResistance {
        size: wire,
        metal: Metal::Copper,
        stranding: Stranding::Stranded,
        temperature: Temperature::from_base(293.15),
    })?;
    Ok(Electrical {
        guide: guide.inductance,
        own,
        over_steel,
        steel,
        lead_in: lead_in.inductance,
        lead_length: lead.length,
        wire: cut.wire,
        resistance: cut.slot * slot.resistance + lead.resistance,
    })
}

/// Diameter of the metal of a conductor, as if it were one round wire.
fn bare(size: ConductorSize) -> Length {
    let area = metal_area(size).base();
    Length::from_base((4.0 * area / std::f64::consts::PI).sqrt())
}

fn core<'s>(asking: &mut Asking<'s>, setup: &'s LoopSetup, wire: Length) -> Length {
    let core = setup.core_outside.as_ref();
    asking
        .read_if_there(&setup.origin, "core_outside", core)
        .unwrap_or(wire)
}

/// Depth of the steel below the wire, where there is steel.
fn steel<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Result<Option<Length>, Halt> {
    if *need!(asking, device.loop_setup?.steel_below, "false")? {
        read!(asking, device.loop_setup?.steel_depth).map(Some)
    } else {
        Ok(None)
    }
}

/// A lead-in: how long, how thick, and what both of its wires resist.
struct Lead {
    length: Length,
    size: ConductorSize,
    resistance: Resistance,
}

/// The cable that leads a loop to its detector.
pub(crate) fn lead_in<'s>(site: &'s Site, device: &Device) -> Option<&'s Cable> {
    let ends = |cable: &&Cable| cable.to == device.id || cable.from == device.id;
    site.cable.iter().find(ends)
}

fn lead<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Result<Lead, Halt> {
    const CABLE: &str = "[[cable]]\nid = \"w-25\"\ncarries = \"loop lead-in\"\nfrom = \"supply-24\"\nto = \"…\"\nsize = \"16 AWG\"\nlength = \"34 ft\"";
    let Some(cable) = lead_in(site, device) else {
        return asking.lack(&device.origin, "cable", Wants::Table(CABLE));
    };
    let length = read!(asking, cable.length);
    let size = pick!(asking, cable.size);
    let each = resistance(asking, cable);
    let (length, size, each) = (length?, size?, each?);
    Ok(Lead {
        length,
        size,
        resistance: 2.0 * length * each,
    })
}
