//! The network diagram and the port and address plan: nothing over another however the network branches, every device on a
//! sheet, and what is missing shown as not known.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, drawn as sheets, example, read, tidy, words};
use papers::compose::schedules;
use papers::sheets::NamedDrawing;
use papers::view::{Cell, Table};
use proptest::prelude::*;
use site::Site;
use std::fmt::Write as _;

const GOOD: [&str; 4] = ["boatyard", "vineyard", "quarry", "clinic"];

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| {
        name == "network" || name.starts_with("network-")
    })
}

fn table(site: &Site, title: &str) -> Option<Table> {
    schedules(site)
        .into_iter()
        .find(|table| table.title == title)
}

/// One device of a random network: what it is, into which switch it is plugged, by what, and what is known of it.
#[derive(Debug, Clone)]
struct Plug {
    into: usize,
    switch: bool,
    way: u8,
    known: bool,
    name: String,
}

fn plug() -> impl Strategy<Value = Plug> {
    let name = "[a-z]{1,8}(-[a-z]{3,9}){0,3}";
    (any::<usize>(), 0..4_u8, 0..4_u8, any::<bool>(), name).prop_map(
        |(into, kind, way, known, name)| Plug {
            into,
            switch: kind == 0,
            way,
            known,
            name,
        },
    )
}

/// The text of a site with a random network.
fn text(plugs: &[Plug]) -> String {
    let mut text = "[site]\nname = \"Test yard\"\ncode_basis = \"us\"\n[[network_segment]]\nid = \"gate-net\"\naddresses = \"10.0.0.0/24\"\n[[device]]\nid = \"root\"\nkind = \"router\"\n".to_owned();
    let mut switches = vec!["root".to_owned()];
    for (at, plug) in plugs.iter().enumerate() {
        let into = switches[plug.into % switches.len()].clone();
        let name = format!("{}-{at}", plug.name);
        let kind = if plug.switch {
            "network switch"
        } else {
            "camera"
        };
        write!(text, "[[device]]\nid = \"{name}\"\nkind = \"{kind}\"\n").unwrap();
        if plug.way == 1 {
            write!(
                text,
                "supply = \"{into}\"\npower = \"9 W\"\npoe_class = \"3\"\n"
            )
            .unwrap();
        }
        if plug.switch {
            write!(
                text,
                "ports = 8\npoe_class = \"4\"\nport_voltage = \"50 V\"\npower_budget = \"60 W\"\n"
            )
            .unwrap();
        }
        let radio = if plug.way == 2 {
            ", radio_rate = \"40 Mbit/s\""
        } else {
            ""
        };
        let address = if plug.known {
            format!(
                ", address = \"10.0.0.{}\", port = {}",
                at % 200 + 2,
                at % 8 + 1
            )
        } else {
            String::new()
        };
        writeln!(
            text,
            "network = {{ segment = \"gate-net\", plugged_into = \"{into}\"{address}{radio} }}"
        )
        .unwrap();
        if plug.known {
            text.push_str("ethernet = { speed = \"100 Mbit/s\" }\n");
        }
        if plug.way < 2 {
            write!(text, "[[cable]]\nid = \"w-{at}\"\ncarries = \"data\"\nfrom = \"{into}\"\nto = \"{name}\"\nsize = \"23 AWG\"\nmetal = \"copper\"\nstranding = \"solid\"\npower_pairs = 2\nhottest = \"40 °C\"\nlength = \"120 ft\"\n").unwrap();
        }
        if plug.switch {
            switches.push(name);
        }
    }
    text
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_random_network_is_drawn_whole_and_nothing_over_another(
        plugs in proptest::collection::vec(plug(), 1..60)
    ) {
        let site = read(&text(&plugs));
        let sheets = drawn(&site);
        let mut said = Vec::new();
        for sheet in &sheets {
            tidy(&sheet.name, &sheet.drawing);
            said.extend(sheet.drawing.text_boxes().into_iter().map(|text| text.words));
        }
        for (at, plug) in plugs.iter().enumerate() {
            let name = format!("{}-{at}", plug.name);
            let short: String = name.chars().take(21).collect();
            let shown = if name.chars().count() > 22 { format!("{short}…") } else { name };
            prop_assert!(said.contains(&shown), "{shown} is left out");
        }
    }
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in GOOD {
        let sheets = drawn(&example(name));
        assert!(!sheets.is_empty(), "{name}");
        for sheet in sheets {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn every_device_of_the_good_sites_is_on_a_sheet_and_in_the_plan() {
    for name in GOOD {
        let site = example(name);
        let said: String = drawn(&site)
            .iter()
            .map(|sheet| words(&sheet.drawing))
            .collect();
        let plan = table(&site, "Port and address plan").unwrap();
        for member in &design::data_network::shown(&site).members {
            assert!(said.contains(&member.id), "{name}: {}", member.id);
            let listed = plan.rows.iter().any(|row| row[2].printed() == member.id);
            assert!(listed, "{name}: {}", member.id);
        }
        assert!(said.contains("Crosses from"), "{name}");
        assert!(
            table(&site, "Network segments and crossings").is_some(),
            "{name}"
        );
    }
}

#[test]
fn every_place_on_a_bus_is_drawn_with_its_resistors() {
    for name in GOOD {
        let site = example(name);
        let said: String = drawn(&site)
            .iter()
            .map(|sheet| words(&sheet.drawing))
            .collect();
        for bus in &site.bus {
            assert!(said.contains(bus.id.as_str()), "{name}: {}", bus.id);
            for node in &bus.node {
                assert!(
                    said.contains(node.device.as_str()),
                    "{name}: {}",
                    node.device
                );
            }
        }
        assert_eq!(said.matches("120 Ω").count(), 2, "{name}: {said}");
        assert!(said.contains("card to click at most"), "{name}");
    }
}

#[test]
fn a_stub_too_long_and_an_address_taken_twice_are_marked_on_the_bus() {
    let site = changed("boatyard", |text| {
        text.replace("stub = \"6 in\"", "stub = \"40 ft\"")
            .replace("address = 1,", "address = 0,")
            .replace("address = 1\n", "address = 0\n")
    });
    let sheets = drawn(&site);
    let said: String = sheets.iter().map(|sheet| words(&sheet.drawing)).collect();
    assert!(said.contains("× stub 40 ft"), "{said}");
    assert!(said.contains("× address 0 is taken twice"), "{said}");
}

#[test]
fn a_bus_that_is_wider_than_a_sheet_goes_on_below() {
    let mut text = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n".to_owned();
    let mut nodes = String::new();
    for at in 0..24 {
        write!(text, "[[device]]\nid = \"reader-of-the-long-row-{at}\"\nkind = \"reader\"\ndata_line = {{ address = {at} }}\n").unwrap();
        write!(
            nodes,
            "[[bus.node]]\ndevice = \"reader-of-the-long-row-{at}\"\nalong = \"{} ft\"\n",
            10 * at
        )
        .unwrap();
    }
    write!(text, "[[bus]]\nid = \"row\"\nbit_rate = 9600\n{nodes}").unwrap();
    let sheets = drawn(&read(&text));
    let said: String = sheets.iter().map(|sheet| words(&sheet.drawing)).collect();
    for sheet in &sheets {
        tidy(&sheet.name, &sheet.drawing);
    }
    assert!(said.contains("continued"), "{said}");
    for at in 0..24 {
        assert!(said.contains(&format!("address {at}")), "{at}");
    }
}

#[test]
fn two_on_one_address_are_marked_on_the_sheet_and_in_the_plan() {
    let site = changed("boatyard", |text| {
        text.replace("10.20.30.12", "10.20.30.11")
    });
    let said: String = drawn(&site)
        .iter()
        .map(|sheet| words(&sheet.drawing))
        .collect();
    assert!(said.contains("taken twice: 10.20.30.11"), "{said}");
    let plan = table(&site, "Port and address plan").unwrap();
    let twice = plan
        .rows
        .iter()
        .filter(|row| row[5].printed().contains("taken twice"));
    assert_eq!(twice.count(), 2);
}

#[test]
fn power_that_is_not_known_is_hatched_and_a_circle_does_no_harm() {
    let site = changed("boatyard", |text| text.replace("power = \"9 W\"\n", ""));
    let plan = table(&site, "Port and address plan").unwrap();
    let station = plan
        .rows
        .iter()
        .find(|row| row[2].printed() == "intercom-entry")
        .unwrap();
    assert!(matches!(station[9], Cell::Unknown(_)), "{station:?}");
    let circle = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n[[device]]\nid = \"a\"\nkind = \"network switch\"\nnetwork = { plugged_into = \"b\" }\n[[device]]\nid = \"b\"\nkind = \"network switch\"\nnetwork = { plugged_into = \"a\" }\n[[device]]\nid = \"c\"\nkind = \"camera\"\nnetwork = { plugged_into = \"c\" }\n";
    for sheet in drawn(&read(circle)) {
        tidy(&sheet.name, &sheet.drawing);
    }
}
