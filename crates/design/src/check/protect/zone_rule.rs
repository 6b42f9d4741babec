//! What is asked of each hazard zone: so many means of different types (UL 325), or a level at the closing edge (EN 12453).

use crate::asking::{Asking, pick};
use crate::outcome::Halt;
use crate::zone::means::letters;
use crate::zone::{Zone, ZoneKind};
use formula::protection::{
    EN12453_MINIMUM_LEVEL_RECALLED, En12453MinimumLevel, Entrapment, EntrapmentProtectionCount,
    GateControl as Control, GateKind, ProtectionLevel, UseType, en12453_minimum_level_recalled,
};
use quantity::Word as _;
use site::{CodeBasis, Device, Gate, GateControl, ProtectionType, Site};

/// What protects at a zone in one direction.
pub(super) struct Seen<'z, 's> {
    pub(super) zone: &'z Zone,
    pub(super) devices: &'z [&'s Device],
    pub(super) own: bool,
    pub(super) beside: bool,
}

/// What is asked of each zone.
pub(super) enum Rule {
    /// So many means of different types.
    Means(u32),
    /// A level at the closing edge.
    Level(ProtectionLevel),
}

impl Rule {
    pub(super) fn of<'s>(
        asking: &mut Asking<'s>,
        site: &'s Site,
        gate: &'s Gate,
    ) -> Result<Self, Halt> {
        match site.site.code_basis {
            CodeBasis::Us => {
                let Some(kind) = GateKind::from_word(gate.kind.word()) else {
                    return asking.refuse("this kind of gate is not in the rule");
                };
                let count = asking.work(&EntrapmentProtectionCount {
                    gate: kind,
                    entrapment: Entrapment::Possible,
                })?;
                Ok(Self::Means(count.means))
            }
            CodeBasis::Eu => level(asking, site, gate).map(Self::Level),
        }
    }

    pub(super) fn missing(&self, seen: &Seen<'_, '_>) -> Option<String> {
        match self {
            Self::Means(needed) => {
                let have = letters(seen.zone, seen.devices, seen.own);
                let count = u32::try_from(have.len()).unwrap_or(u32::MAX);
                (count < *needed).then(|| {
                    let words: Vec<&str> = have.iter().map(|letter| letter.word()).collect();
                    let have = if words.is_empty() {
                        "none".to_owned()
                    } else {
                        words.join(", ")
                    };
                    format!("{needed} means of different types are asked, there is {have}")
                })
            }
            Self::Level(level) => missing_at_level(*level, seen),
        }
    }
}

fn missing_at_level(level: ProtectionLevel, seen: &Seen<'_, '_>) -> Option<String> {
    let has = |letter| {
        seen.devices
            .iter()
            .any(|device| device.protection == Some(letter))
    };
    let limited = (seen.own && seen.zone.kind.is_felt_by_the_drive())
        || has(ProtectionType::B2)
        || has(ProtectionType::C);
    let untouched = seen
        .devices
        .iter()
        .any(|device| device.prevents_contact == Some(true));
    let closing_edge = matches!(seen.zone.kind, ZoneKind::LeadingEdge | ZoneKind::UnderArm);
    let present = seen.beside || has(ProtectionType::B1);
    match level {
        _ if untouched => None,
        ProtectionLevel::NotAllowed => Some("this way of control is not allowed here".to_owned()),
        ProtectionLevel::Two if closing_edge && limited && !present => {
            Some("nothing detects that somebody is present".to_owned())
        }
        ProtectionLevel::One | ProtectionLevel::Two if !limited && seen.devices.is_empty() => {
            Some("force is not limited there and nothing detects anybody".to_owned())
        }
        ProtectionLevel::Two if closing_edge && !limited => {
            Some("force is not limited there".to_owned())
        }
        ProtectionLevel::One
        | ProtectionLevel::Two
        | ProtectionLevel::Held
        | ProtectionLevel::HeldByKey => None,
    }
}

/// The least level at the closing edge; a gate that closes by itself is automatic.
fn level<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    gate: &'s Gate,
) -> Result<ProtectionLevel, Halt> {
    let about = &site.site;
    let users = pick!(asking, about.use_type);
    let commanded = match gate.hold_time {
        Some(_) => Ok(GateControl::Automatic),
        None => pick!(asking, gate.commanded),
    };
    let users = match users? {
        site::UseType::Trained => UseType::Trained,
        site::UseType::TrainedInPublic => UseType::TrainedInPublic,
        site::UseType::Untrained => UseType::Public,
    };
    let Some(control) = Control::from_word(commanded?.word()) else {
        return asking.refuse("this way of control is not in the table");
    };
    let cell = En12453MinimumLevel { users, control };
    if let Some(found) = asking.work_if_in_reach(&cell) {
        return Ok(found.level);
    }
    asking.rest_on(&EN12453_MINIMUM_LEVEL_RECALLED);
    en12453_minimum_level_recalled(users, control)
        .map(|found| found.level)
        .or_else(|_| asking.refuse("the table of levels has no such cell"))
}
