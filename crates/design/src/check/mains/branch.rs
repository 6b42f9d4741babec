//! The mains circuits that feed the gate, and the cable of each.

use crate::asking::{Asking, Wants};
use crate::outcome::Halt;
use formula::{Evidence, Source};
use site::{Cable, Carries, Circuit, Id, Site, Supply, SupplyKind};

/// Whoever may do it and signs for it.
pub(crate) const LICENSED: &str = "A licensed electrician does this and signs for it.";

/// What codes leave to judgment in the United States: how far above its rating a breaker surely trips.
pub(super) static TRIPS: Source = Source {
    work: "a molded-case breaker trips at once at about ten times its rating, and soon at five times",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "tools.gera.services/ground-fault-loop-impedance-calculator; trainers and inspectors in forums.mikeholt.com, thread 68467",
};

/// How a circuit is written.
const CIRCUIT: &str = "[supply.circuit]\nkind = \"branch circuit\"\nbreaker = \"20 A\"\nbreaker_kind = \"inverse-time breaker\"\nprotective = \"10 AWG\"\nto_earth = \"120 V\"\npanel_loop = \"0.1 Ω\"";

/// How a mains cable is written.
const CABLE: &str = "[[cable]]\nid = \"w-01\"\ncarries = \"mains\"\nfrom = \"mains\"\nto = \"supply-24\"\nsize = \"10 AWG\"\nlength = \"120 ft\"";

/// The mains circuits that feed an operator, a power supply or something in an enclosure.
pub(crate) fn circuits(site: &Site) -> impl Iterator<Item = &Supply> {
    site.supply
        .iter()
        .filter(|supply| supply.kind == SupplyKind::Mains && feeds_the_gate(site, &supply.id))
}

fn feeds_the_gate(site: &Site, id: &Id) -> bool {
    let by = |name: &Option<Id>| name.as_ref() == Some(id);
    site.supply.iter().any(|supply| by(&supply.fed_by))
        || site.operator.iter().any(|operator| by(&operator.supply))
        || site
            .device
            .iter()
            .any(|device| by(&device.supply) && device.enclosure.is_some())
}

/// What the site says of a circuit.
pub(crate) fn circuit<'s>(
    asking: &mut Asking<'s>,
    supply: &'s Supply,
) -> Result<&'s Circuit, Halt> {
    match &supply.circuit {
        Some(circuit) => Ok(circuit),
        None => asking.lack(&supply.origin, "circuit", Wants::Table(CIRCUIT)),
    }
}

/// The cable that brings a circuit to the gate: the longest that leaves its source.
pub(crate) fn cable<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<&'s Cable, Halt> {
    use quantity::Quantity as _;
    let length = |cable: &&Cable| cable.length.map_or(0.0, |length| length.nominal().base());
    let leaves = |cable: &&Cable| {
        cable.from == supply.id && matches!(cable.carries, None | Some(Carries::Mains))
    };
    let longest = site
        .cable
        .iter()
        .filter(leaves)
        .max_by(|one, other| length(one).total_cmp(&length(other)));
    match longest {
        Some(cable) => Ok(cable),
        None => asking.lack(&supply.origin, "cable", Wants::Table(CABLE)),
    }
}
