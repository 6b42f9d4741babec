//! Concrete, anchors and conduits.

use super::need::{Amount, Need, Wanted};
use formula::Formula as _;
use formula::standing::AdhesiveOrder;
use formula::ways::PullingLubricant;
use quantity::{Length, Measured, Quantity as _, Ratio, Volume};
use site::{Anchor, AnchorKind, Conduit, Foundation, Id, Segment, ServesAs, Site};

/// Share of adhesive that is lost.
const ADHESIVE_WASTE: f64 = 0.25;

/// Adds what goes into the ground.
pub(super) fn add<'s>(site: &'s Site, out: &dyn Fn(&Id) -> bool, needs: &mut Vec<Need<'s>>) {
    let new = |it: &&Foundation| it.existing != Some(true) && !out(&it.id);
    for foundation in site.foundation.iter().filter(new) {
        needs.push(concrete(site, foundation));
    }
    for foundation in site.foundation.iter().filter(|it| !out(&it.id)) {
        for anchor in &foundation.anchor {
            anchors(site, foundation, anchor, needs);
        }
    }
    for conduit in site.conduit.iter().filter(|it| !out(&it.id)) {
        pipe(site, conduit, needs);
        fittings(site, conduit, needs);
        lubricant(site, conduit, needs);
    }
}

/// The concrete of a foundation; not known while its sizes are missing.
fn concrete<'s>(site: &'s Site, foundation: &'s Foundation) -> Need<'s> {
    Need {
        wanted: Wanted::serving(ServesAs::Concrete),
        amount: volume(foundation).map_or(Amount::Unknown, |one| {
            Amount::Volume(one * alike(site, foundation))
        }),
        thing: foundation.id.to_string(),
        what: "concrete".to_owned(),
        origin: &foundation.origin,
        by: foundation.poured.or(site.site.installed),
        own: None,
    }
}

/// How many there are: one that has no place of its own stands under each post and bollard that names it.
fn alike(site: &Site, foundation: &Foundation) -> f64 {
    let posts = site.gate.iter().flat_map(|gate| &gate.post);
    let posts = posts.filter_map(|post| post.foundation.as_ref());
    let bollards = site.bollard.iter().filter_map(|it| it.foundation.as_ref());
    let users = posts.chain(bollards).filter(|name| **name == foundation.id);
    let users = u32::try_from(users.count()).unwrap_or(u32::MAX);
    if foundation.at.is_some() {
        1.0
    } else {
        f64::from(users.max(1))
    }
}

fn volume(foundation: &Foundation) -> Option<Volume> {
    let nominal = |length: Option<Measured<Length>>| length.map(|length| length.nominal());
    let depth = nominal(foundation.depth)?;
    if let Some(diameter) = nominal(foundation.diameter) {
        return Some(diameter * diameter * depth * std::f64::consts::FRAC_PI_4);
    }
    Some(nominal(foundation.length)? * nominal(foundation.width)? * depth)
}

/// The anchors of one plate, with their adhesive.
fn anchors<'s>(
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    needs: &mut Vec<Need<'s>>,
) {
    let cast_in = anchor.kind.is_some_and(AnchorKind::is_cast_in);
    let by = if cast_in {
        foundation.poured
    } else {
        anchor.set
    };
    let thing = format!("{} of {}", anchor.holds, foundation.id);
    let part = anchor.part.as_ref().map(Id::as_str);
    let need = |wanted, count: u32, what: String, price: Option<site::Price>| Need {
        wanted,
        amount: Amount::Pieces(u64::from(count)),
        thing: thing.clone(),
        what,
        origin: &anchor.origin,
        by: by.or(site.site.installed),
        own: price.map(|price| (price, None)),
    };
    let id = format!("{}-anchors", foundation.id);
    let what = part.map_or_else(|| id.clone(), |part| format!("anchor {part}"));
    let wanted = Wanted::Thing { id, part };
    needs.push(need(wanted, anchor.count.unwrap_or(1), what, anchor.price));
    if let Some(cartridges) = cartridges(anchor) {
        let fits = part.unwrap_or_else(|| foundation.id.as_str());
        let wanted = Wanted::fitting(ServesAs::Adhesive, fits.to_owned());
        let what = format!("adhesive for {fits}, a cartridge");
        needs.push(need(wanted, cartridges, what, anchor.cartridge_price));
    }
}

/// Cartridges for the anchors of one plate: each plate is set on its own, with a nozzle of its own.
fn cartridges(anchor: &Anchor) -> Option<u32> {
    let order = AdhesiveOrder {
        holes: anchor.count?,
        hole_diameter: anchor.hole_diameter.or(anchor.sheet_diameter)?.nominal(),
        rod_diameter: anchor.diameter?.nominal(),
        depth: anchor.hole_depth.or(anchor.sheet_depth)?.nominal(),
        waste: Ratio::from_base(ADHESIVE_WASTE),
        nozzles: 1,
        nozzle_loss: anchor.nozzle_loss?.nominal(),
        cartridge: anchor.cartridge?.nominal(),
    };
    (anchor.kind == Some(AnchorKind::Adhesive))
        .then(|| order.evaluate().ok())
        .flatten()
        .map(|need| need.cartridges)
}

/// Kind and trade size of a conduit, as its entry of the price book says it: `PVC-40 1-1/4`.
fn size(conduit: &Conduit) -> String {
    let kind = conduit.kind.map_or_else(
        || "conduit".to_owned(),
        |kind| quantity::Word::word(kind).to_owned(),
    );
    match (&conduit.trade_size, conduit.bore) {
        (Some(size), _) => format!("{kind} {size}"),
        (None, Some(bore)) => {
            format!(
                "{kind} {}",
                quantity::print(bore.nominal(), quantity::UnitSystem::Si)
            )
        }
        (None, None) => kind,
    }
}

/// Length of the straight pieces.
fn straight(conduit: &Conduit) -> Length {
    let straights = conduit
        .segment
        .iter()
        .filter_map(|segment| segment.straight);
    straights.fold(Length::from_base(0.0), |sum, one| sum + one.nominal())
}

/// Length along the middle, bends counted by their arcs.
fn along(conduit: &Conduit) -> Length {
    let arc = |segment: &Segment| Some(segment.radius?.nominal() * segment.bend?.nominal().base());
    let arcs = conduit.segment.iter().filter_map(arc);
    arcs.fold(straight(conduit), |sum, arc| sum + arc)
}

fn of_conduit<'s>(
    site: &'s Site,
    conduit: &'s Conduit,
    wanted: Wanted<'s>,
    amount: Amount,
    what: String,
) -> Need<'s> {
    Need {
        wanted,
        amount,
        thing: conduit.id.to_string(),
        what,
        origin: &conduit.origin,
        by: site.site.installed,
        own: None,
    }
}

/// Pipe, the cord that stays in it, and the tape above it.
fn pipe<'s>(site: &'s Site, conduit: &'s Conduit, needs: &mut Vec<Need<'s>>) {
    let size = size(conduit);
    let long = |length: Length| {
        if length.base() > 0.0 {
            Amount::Length(length)
        } else {
            Amount::Unknown
        }
    };
    let wanted = Wanted::fitting(ServesAs::Conduit, size.clone());
    let amount = long(straight(conduit));
    needs.push(of_conduit(
        site,
        conduit,
        wanted,
        amount,
        format!("conduit {size}"),
    ));
    let cord = Wanted::serving(ServesAs::PullCord);
    let amount = long(along(conduit));
    needs.push(of_conduit(
        site,
        conduit,
        cord,
        amount,
        "pull cord".to_owned(),
    ));
    if conduit.burial_depth.is_some() {
        let tape = Wanted::serving(ServesAs::WarningTape);
        let amount = long(straight(conduit));
        needs.push(of_conduit(
            site,
            conduit,
            tape,
            amount,
            "warning tape".to_owned(),
        ));
    }
}

/// Bends, couplings, and what closes the two ends.
fn fittings<'s>(site: &'s Site, conduit: &'s Conduit, needs: &mut Vec<Need<'s>>) {
    let size = size(conduit);
    let bends = conduit
        .segment
        .iter()
        .filter(|segment| segment.bend.is_some());
    let bends = u64::try_from(bends.count()).unwrap_or(u64::MAX);
    for (serves, count, what) in [
        (ServesAs::Bend, bends, "bend"),
        (ServesAs::Coupling, bends.saturating_add(1), "coupling"),
        (ServesAs::ConduitEnd, 2, "bushing or bell end"),
        (ServesAs::Seal, 2, "seal"),
    ] {
        if count > 0 {
            let wanted = Wanted::fitting(serves, size.clone());
            let what = format!("{what} for conduit {size}");
            needs.push(of_conduit(
                site,
                conduit,
                wanted,
                Amount::Pieces(count),
                what,
            ));
        }
    }
}

/// Lubricant for a conduit with cables in it.
fn lubricant<'s>(site: &'s Site, conduit: &'s Conduit, needs: &mut Vec<Need<'s>>) {
    let inside = site
        .cable
        .iter()
        .filter(|cable| cable.route.contains(&conduit.id));
    let widest = inside
        .filter_map(|cable| cable.diameter.map(|diameter| diameter.nominal()))
        .fold(Length::from_base(0.0), |widest, one| {
            if one > widest { one } else { widest }
        });
    let order = PullingLubricant {
        length: along(conduit),
        diameter: widest,
    };
    if let Ok(found) = order.evaluate() {
        let wanted = Wanted::serving(ServesAs::Lubricant);
        let what = "pulling lubricant".to_owned();
        needs.push(of_conduit(
            site,
            conduit,
            wanted,
            Amount::Volume(found.volume),
            what,
        ));
    }
}
