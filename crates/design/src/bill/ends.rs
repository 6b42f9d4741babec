//! Cables, and what their ends take: ferrules, glands, plugs and labels.

use super::need::{Amount, Need, Wanted};
use site::{Cable, Carries, Id, Origin, ServesAs, Site, Stranding};

/// Adds the cables, what ends them, and the labels of cables and devices.
pub(super) fn add<'s>(site: &'s Site, out: &dyn Fn(&Id) -> bool, needs: &mut Vec<Need<'s>>) {
    let left = |cable: &&Cable| !out(&cable.id) && !out(&cable.from) && !out(&cable.to);
    for cable in site.cable.iter().filter(left) {
        pulled(site, cable, needs);
        ended(site, cable, needs);
    }
    let named = (site.operator.iter().map(|it| (&it.id, &it.origin)))
        .chain(site.device.iter().map(|it| (&it.id, &it.origin)))
        .chain(site.enclosure.iter().map(|it| (&it.id, &it.origin)))
        .chain(site.supply.iter().map(|it| (&it.id, &it.origin)))
        .chain(site.battery.iter().map(|it| (&it.id, &it.origin)))
        .chain(site.fuse.iter().map(|it| (&it.id, &it.origin)));
    for (id, origin) in named.filter(|(id, _)| !out(id)) {
        let label = Wanted::serving(ServesAs::DeviceLabel);
        needs.push(pieces(site, (id, origin), label, 1, "label of a device"));
    }
}

fn pieces<'s>(
    site: &'s Site,
    (id, origin): (&'s Id, &'s Origin),
    wanted: Wanted<'s>,
    count: u64,
    what: &str,
) -> Need<'s> {
    Need {
        wanted,
        amount: Amount::Pieces(count),
        thing: id.to_string(),
        what: what.to_owned(),
        origin,
        by: site.site.installed,
        own: None,
    }
}

/// The cable itself.
fn pulled<'s>(site: &'s Site, cable: &'s Cable, needs: &mut Vec<Need<'s>>) {
    let part = cable.part.as_ref().map(Id::as_str);
    let own = cable.price.map(|price| {
        let length = cable.price_length.map(|length| length.nominal());
        (price, length)
    });
    needs.push(Need {
        wanted: Wanted::Thing {
            id: cable.id.to_string(),
            part,
        },
        amount: cable
            .length
            .map_or(Amount::Unknown, |length| Amount::Length(length.nominal())),
        thing: cable.id.to_string(),
        what: format!("cable {}", part.unwrap_or_else(|| cable.id.as_str())),
        origin: &cable.origin,
        by: site.site.installed,
        own,
    });
}

/// What both ends of a cable take.
fn ended<'s>(site: &'s Site, cable: &'s Cable, needs: &mut Vec<Need<'s>>) {
    let of = (&cable.id, &cable.origin);
    let label = Wanted::serving(ServesAs::CableLabel);
    needs.push(pieces(site, of, label, 2, "label of a cable"));
    let gland = Wanted::Serving {
        serves: ServesAs::Gland,
        fits: None,
        conductor: None,
        diameter: cable.diameter.map(|diameter| diameter.nominal()),
    };
    if cable.route.is_empty() {
        needs.push(pieces(site, of, gland, 2, "cable gland"));
    }
    if cable.carries == Some(Carries::Data) {
        // Cords and fiber come with their plugs.
        if cable.size.is_some() {
            let plug = Wanted::serving(ServesAs::DataPlug);
            needs.push(pieces(site, of, plug, 2, "plug or jack of a data cable"));
        }
    } else if cable.stranding == Some(Stranding::Stranded) {
        let ferrule = Wanted::Serving {
            serves: ServesAs::Ferrule,
            fits: None,
            conductor: cable.size,
            diameter: None,
        };
        let size = cable
            .size
            .map_or_else(String::new, |size| format!(", {size}"));
        let count = 2 * u64::from(cable.cores.unwrap_or(1));
        needs.push(pieces(site, of, ferrule, count, &format!("ferrule{size}")));
    }
}
