//! What the site lists one by one: gates, operators, devices, boxes, power, guards and signs.

use super::need::{Amount, Need, Wanted};
use quantity::{Length, Measured};
use site::{Gate, Id, Leaf, Origin, Post, Price, ServesAs, Site, SupplyKind};

/// A thing that is bought in pieces.
struct Piece<'s> {
    id: String,
    part: Option<&'s Id>,
    what: String,
    count: u64,
    price: Option<Price>,
    origin: &'s Origin,
}

/// Adds the things of a site, but for those that are left out or were there.
pub(super) fn add<'s>(site: &'s Site, out: &dyn Fn(&Id) -> bool, needs: &mut Vec<Need<'s>>) {
    let mut list = Things { site, out, needs };
    for gate in &site.gate {
        list.gate(gate);
    }
    list.driven();
    list.power();
    list.guards();
}

struct Things<'s, 'l> {
    site: &'s Site,
    out: &'l dyn Fn(&Id) -> bool,
    needs: &'l mut Vec<Need<'s>>,
}

impl<'s> Things<'s, '_> {
    fn piece(&mut self, piece: Piece<'s>) {
        self.needs.push(Need {
            wanted: Wanted::Thing {
                id: piece.id.clone(),
                part: piece.part.map(Id::as_str),
            },
            amount: Amount::Pieces(piece.count),
            thing: piece.id,
            what: piece.what,
            origin: piece.origin,
            by: self.site.site.installed,
            own: piece.price.map(|price| (price, None)),
        });
    }

    /// One piece of a thing that has a name, unless it is left out.
    fn one(
        &mut self,
        (id, part): (&'s Id, Option<&'s Id>),
        sort: &str,
        price: Option<Price>,
        origin: &'s Origin,
    ) {
        if !(self.out)(id) {
            self.piece(Piece {
                id: id.to_string(),
                part,
                what: named(sort, part.unwrap_or(id)),
                count: 1,
                price,
                origin,
            });
        }
    }

    fn gate(&mut self, gate: &'s Gate) {
        for post in gate.post.iter().filter(|post| post.pillar.is_none()) {
            self.post(post);
        }
        if gate.existing == Some(true) {
            return;
        }
        let out = self.out;
        for leaf in gate.leaf.iter().filter(|leaf| !out(&leaf.id)) {
            self.leaf(leaf);
        }
        if let Some(wheels) = &gate.wheels {
            let of = (wheels.part.as_ref(), wheels.price);
            self.gear(gate, "wheels", of, &wheels.origin);
        }
        if let Some(guide) = &gate.guide {
            self.gear(gate, "guide", (None, None), &guide.origin);
        }
        if let Some(catch) = &gate.catch {
            self.gear(gate, "catch", (None, None), &catch.origin);
        }
        if let Some(track) = &gate.track {
            self.by_length(format!("{}-track", gate.id), track.length, &track.origin);
        }
    }

    /// Gear of a gate that has no name of its own: `main-wheels`.
    fn gear(
        &mut self,
        gate: &'s Gate,
        what: &str,
        (part, price): (Option<&'s Id>, Option<Price>),
        origin: &'s Origin,
    ) {
        self.piece(Piece {
            id: format!("{}-{what}", gate.id),
            part,
            what: format!("{what} of gate {}, a set", gate.id),
            count: 1,
            price,
            origin,
        });
    }

    fn by_length(&mut self, id: String, length: Option<Measured<Length>>, origin: &'s Origin) {
        self.needs.push(Need {
            wanted: Wanted::Thing {
                id: id.clone(),
                part: None,
            },
            amount: length.map_or(Amount::Unknown, |it| Amount::Length(it.nominal())),
            thing: id.clone(),
            what: id,
            origin,
            by: self.site.site.installed,
            own: None,
        });
    }

    fn post(&mut self, post: &'s Post) {
        self.one(
            (&post.id, post.part.as_ref()),
            "post",
            post.price,
            &post.origin,
        );
    }

    /// A leaf that is bought as a whole or made from its members, and its hinges.
    fn leaf(&mut self, leaf: &'s Leaf) {
        let bought = super::book(self.site)
            .is_some_and(|book| book.item.iter().any(|item| item.of.contains(&leaf.id)));
        if bought || leaf.member.is_empty() {
            self.one((&leaf.id, None), "leaf", None, &leaf.origin);
        } else {
            self.members(leaf);
        }
        if let Some(hinges) = &leaf.hinges {
            self.piece(Piece {
                id: format!("{}-hinges", leaf.id),
                part: hinges.part.as_ref(),
                what: format!("hinges of leaf {}, a set", leaf.id),
                count: 1,
                price: hinges.price,
                origin: &hinges.origin,
            });
        }
    }

    fn members(&mut self, leaf: &'s Leaf) {
        for member in &leaf.member {
            let section = member.section.as_ref().map(ToString::to_string);
            let fits = section.unwrap_or_else(|| member.what.to_string());
            let count = f64::from(member.count.unwrap_or(1));
            let amount = member.length.map_or(Amount::Unknown, |length| {
                Amount::Length(length.nominal() * count)
            });
            self.needs.push(Need {
                wanted: Wanted::fitting(ServesAs::Section, fits),
                amount,
                thing: leaf.id.to_string(),
                what: member.what.to_string(),
                origin: &member.origin,
                by: self.site.site.installed,
                own: None,
            });
        }
    }

    fn driven(&mut self) {
        let site = self.site;
        for it in &site.operator {
            self.one((&it.id, it.part.as_ref()), "operator", it.price, &it.origin);
        }
        for it in &site.device {
            self.one((&it.id, it.part.as_ref()), "device", None, &it.origin);
        }
        for it in &site.enclosure {
            self.one((&it.id, it.part.as_ref()), "enclosure", None, &it.origin);
            for mounted in &it.mounted {
                self.piece(Piece {
                    id: mounted.what.to_string(),
                    part: None,
                    what: mounted.what.to_string(),
                    count: u64::from(mounted.count.unwrap_or(1)),
                    price: None,
                    origin: &mounted.origin,
                });
            }
        }
    }

    fn power(&mut self) {
        let site = self.site;
        let circuit = |kind: SupplyKind| kind == SupplyKind::Mains;
        for it in site
            .supply
            .iter()
            .filter(|it| it.part.is_some() || !circuit(it.kind))
        {
            self.one((&it.id, it.part.as_ref()), "supply", None, &it.origin);
        }
        for it in &site.battery {
            self.one((&it.id, it.part.as_ref()), "battery", None, &it.origin);
        }
        for it in &site.solar_panel {
            self.one((&it.id, it.part.as_ref()), "solar panel", None, &it.origin);
        }
        for it in &site.fuse {
            self.one((&it.id, it.part.as_ref()), "fuse", None, &it.origin);
        }
        for it in &site.disconnect {
            self.one((&it.id, None), "disconnect", None, &it.origin);
        }
        for it in &site.electrode {
            self.one((&it.id, None), "electrode", None, &it.origin);
        }
    }

    fn guards(&mut self) {
        let site = self.site;
        for it in &site.bollard {
            self.one((&it.id, None), "bollard", None, &it.origin);
        }
        for it in &site.cover {
            self.one((&it.id, None), "handhole with its cover", None, &it.origin);
        }
        for it in &site.sign {
            self.one((&it.id, None), "sign", None, &it.origin);
        }
    }
}

/// A sort of thing with its name: device beam-pair-24v.
fn named(sort: &str, id: &Id) -> String {
    format!("{sort} {id}")
}
