//! The single-line diagram and the tables of loads and fuses: nothing over another however the circuits branch, every load
//! in its row, and what is missing shown as not known.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, changed, drawn as sheets, example, read, tidy, words};
use papers::compose::schedules;
use papers::sheets::NamedDrawing;
use papers::view::{Cell, Table};
use proptest::prelude::*;
use site::Site;
use std::fmt::Write as _;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("single-line"))
}

/// A table of a site by the beginning of its title.
fn table(site: &Site, title: &str) -> Table {
    let mut all = schedules(site);
    all.retain(|table| table.title.starts_with(title));
    all.remove(0)
}

/// The rows of a table in which a column has this text.
fn rows<'t>(table: &'t Table, column: usize, text: &str) -> Vec<&'t Vec<Cell>> {
    let rows = table.rows.iter();
    rows.filter(|row| row[column].printed() == text).collect()
}

const HEAD: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [[supply]]
    id = "mains"
    kind = "mains circuit"
    voltage = "120 V"
    rated_current = "15 A"
    [[supply]]
    id = "supply"
    kind = "power supply"
    fed_by = "mains"
    voltage = "24 V"
    rated_current = "10 A"
    efficiency = "90 %"
    least_input = "90 V"
    [[battery]]
    id = "battery"
    supply = "supply"
    voltage = "24 V"
    end_voltage = "21 V"
    inner_resistance = "20 mΩ"
    [[cable]]
    id = "m-1"
    from = "mains"
    to = "supply"
    size = "12 AWG"
    length = "80 ft"
    metal = "copper"
    stranding = "stranded"
    hottest = "40 °C"
"#;

/// What every cable of a random tree is made of.
const METAL: &str = "metal = \"copper\"\nstranding = \"stranded\"\nhottest = \"40 °C\"\n";

/// One load of a random tree: from which joint, with or without a fuse, and what is known of it.
#[derive(Debug, Clone)]
struct Twig {
    from: usize,
    fuse: Option<usize>,
    joint: bool,
    known: bool,
    name: String,
}

fn twig() -> impl Strategy<Value = Twig> {
    let name = "[a-z]{1,8}(-[a-z]{3,9}){0,3}";
    let fuse = proptest::option::of(0..8_usize);
    (any::<usize>(), fuse, any::<bool>(), any::<bool>(), name).prop_map(
        |(from, fuse, joint, known, name)| Twig {
            from,
            fuse,
            joint,
            known,
            name,
        },
    )
}

/// The text of a site with a random tree.
fn text(twigs: &[Twig]) -> String {
    let mut text = HEAD.to_owned();
    let mut places = vec!["supply".to_owned()];
    for (at, twig) in twigs.iter().enumerate() {
        let from = places[twig.from % places.len()].clone();
        let fuse = twig
            .fuse
            .map_or_else(String::new, |fuse| format!("fuse = \"f{fuse}\"\n"));
        let mut lead = from;
        if twig.joint {
            let joint = format!("j{at}");
            write!(text, "[[joint]]\nid = \"{joint}\"\n").unwrap();
            write!(text, "[[cable]]\nid = \"c-{at}\"\nfrom = \"{lead}\"\nto = \"{joint}\"\nsize = \"14 AWG\"\nlength = \"40 ft\"\n{METAL}{fuse}").unwrap();
            places.push(joint.clone());
            lead = joint;
        }
        let fuse = if twig.joint { String::new() } else { fuse };
        let current = if twig.known {
            "current = \"20 mA\"\nleast_voltage = \"18 V\"\n"
        } else {
            ""
        };
        let name = format!("{}-{at}", twig.name);
        write!(
            text,
            "[[device]]\nid = \"{name}\"\nkind = \"reader\"\nsupply = \"supply\"\n{current}"
        )
        .unwrap();
        write!(text, "[[cable]]\nid = \"w-{at}\"\nfrom = \"{lead}\"\nto = \"{name}\"\nsize = \"18 AWG\"\nlength = \"120 ft\"\n{METAL}{fuse}").unwrap();
    }
    for fuse in 0..4 {
        write!(
            text,
            "[[fuse]]\nid = \"f{fuse}\"\nrated_current = \"2 A\"\n"
        )
        .unwrap();
    }
    text
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn a_random_tree_is_drawn_whole_and_nothing_over_another(
        twigs in proptest::collection::vec(twig(), 1..60)
    ) {
        let site = read(&text(&twigs));
        let sheets = drawn(&site);
        let mut found = 0;
        for sheet in &sheets {
            tidy(&sheet.name, &sheet.drawing);
            let boxes = sheet.drawing.text_boxes();
            let left = |name: &str| {
                let text = boxes.iter().find(|text| text.words == name);
                text.map(|text| (text.center.x - text.width / 2.0).get::<quantity::units::length::millimeter>())
            };
            let column = left("load").unwrap();
            for (at, twig) in twigs.iter().enumerate() {
                let name = format!("{}-{at}", twig.name);
                let short: String = name.chars().take(21).collect();
                let name = if name.chars().count() > 22 { format!("{short}…") } else { name };
                if let Some(begin) = left(&name) {
                    found += 1;
                    prop_assert!((begin - column - 1.5).abs() < 0.2, "{name} has been moved: {begin} {column}");
                }
            }
        }
        // Shortened names may be alike; each that is whole is there.
        let whole = twigs.iter().enumerate().filter(|(at, twig)| format!("{}-{at}", twig.name).chars().count() <= 22);
        prop_assert!(found >= whole.count(), "{found} of {} loads", twigs.len());
    }
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        let sheets = drawn(&example(name));
        assert!(!sheets.is_empty(), "{name}");
        for sheet in sheets {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn every_load_of_the_good_sites_is_on_a_sheet_and_the_mains_have_their_caution() {
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let site = example(name);
        let said: String = drawn(&site)
            .iter()
            .map(|sheet| words(&sheet.drawing))
            .collect();
        for load in &design::power::shown(&site).loads {
            let short: String = load.id.chars().take(21).collect();
            assert!(said.contains(&short), "{name}: {}", load.id);
        }
        if name != "vineyard" {
            assert!(said.contains("licensed electrician"), "{name}");
        }
    }
}

#[test]
fn a_missing_current_is_not_known_on_the_sheet_and_in_the_tables() {
    let twig = |known| Twig {
        from: 0,
        fuse: Some(0),
        joint: false,
        known,
        name: if known { "known" } else { "open" }.to_owned(),
    };
    let site = read(&text(&[twig(true), twig(false)]));
    let voltages = table(&site, "Load table, voltages");
    let open = rows(&voltages, 1, "open-1");
    assert!(open[0].iter().any(|cell| matches!(cell, Cell::Unknown(_))));
    assert!(open[0].last().unwrap().printed().contains("current"));
    let known = rows(&voltages, 1, "known-0");
    assert!(matches!(known[0][3], Cell::Number { .. }), "{:?}", known[0]);
    // What the battery leaves at its end rests on the current of every load.
    assert!(matches!(known[0][8], Cell::Unknown(_)), "{:?}", known[0]);
    assert!(matches!(known[0][11], Cell::Unknown(_)), "{:?}", known[0]);
    let said: String = drawn(&site)
        .iter()
        .map(|sheet| words(&sheet.drawing))
        .collect();
    assert!(
        said.contains("A question mark: facts are missing"),
        "{said}"
    );
    assert!(said.contains('?'), "{said}");
}

#[test]
fn fuses_are_listed_with_what_they_feed_and_cables_without_one_too() {
    let site = changed("boatyard", |text| text.replace("fuse = \"f2\"\n", ""));
    let fuses = table(&site, "Fuses and disconnects");
    let f5 = rows(&fuses, 0, "f5");
    assert_eq!(f5[0][3].printed(), "2.000");
    assert!(f5[0][8].printed().contains("beam-far-in by w-19"));
    let mains = rows(&fuses, 0, "mains");
    assert_eq!(mains[0][2].printed(), "source panel; off-mains cuts it off");
    assert_eq!(
        rows(&fuses, 0, "off-mains")[0][1].printed(),
        "disconnect, lockable"
    );
    let without = table(&site, "Cables without a fuse");
    assert_eq!(rows(&without, 0, "w-07").len(), 1);
    assert!(rows(&without, 0, "w-19").is_empty());
}

#[test]
fn the_workbook_has_the_tables() {
    let view = "Load table, currents";
    let site = example("clinic");
    let currents = table(&site, view);
    let sums = rows(&currents, 1, "all together");
    assert!(sums.len() >= 2, "one for each supply that feeds something");
    assert!(rows(&currents, 1, "drive").len() == 1);
    assert_eq!(currents.columns.len(), currents.rows[0].len());
}
