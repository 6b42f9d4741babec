//! The sheets of enclosures: nothing over another however much is in a box, everything that has a size and a place drawn to
//! scale, and what is missing said.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{SITES, drawn as sheets, example, read, tidy, words};
use papers::compose::schedules;
use papers::sheets::NamedDrawing;
use papers::view::Table;
use proptest::prelude::*;
use site::Site;
use std::fmt::Write as _;

fn drawn(site: &Site) -> Vec<NamedDrawing> {
    sheets(site, |name| name.starts_with("enclosure"))
}

fn table(site: &Site, title: &str) -> Option<Table> {
    schedules(site)
        .into_iter()
        .find(|table| table.title == title)
}

const HEAD: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "eu"
    [[enclosure]]
    id = "box"
    at = ["0 m", "1 m", "1 m"]
    width = "600 mm"
    height = "800 mm"
    depth = "250 mm"
"#;

/// A box with so many rails, and on each things of these widths; a missing one is not written.
fn text(rails: &[Vec<Option<u32>>], holes: &[u32]) -> String {
    let mut text = HEAD.to_owned();
    let name = |rail: usize, at: usize| format!("thing {rail}-{at}");
    text += "mounted = [\n";
    for (rail, things) in rails.iter().enumerate() {
        for (at, width) in things.iter().enumerate() {
            let width = width.map_or_else(String::new, |width| format!(", width = \"{width} mm\""));
            writeln!(
                text,
                "{{ what = \"{}\", heat = \"1 W\", height = \"90 mm\"{width} }},",
                name(rail, at)
            )
            .unwrap();
        }
    }
    text += "]\n[enclosure.panel]\nwidth = \"550 mm\"\nheight = \"750 mm\"\nfrom_left = \"25 mm\"\nfrom_bottom = \"25 mm\"\n";
    for (rail, things) in rails.iter().enumerate() {
        let holds: Vec<String> = (0..things.len())
            .map(|at| format!("\"{}\"", name(rail, at)))
            .collect();
        write!(text, "[[enclosure.panel.rails]]\nfrom_left = \"20 mm\"\nfrom_bottom = \"{} mm\"\nlength = \"500 mm\"\nholds = [{}]\n", 650 - 130 * rail, holds.join(", ")).unwrap();
    }
    let conduits: Vec<String> = (0..holes.len()).map(|at| format!("\"d-{at}\"")).collect();
    let left: Vec<String> = holes.iter().map(|hole| format!("\"{hole} mm\"")).collect();
    write!(text, "[[enclosure.entry]]\nwhat = \"ducts\"\nside = \"bottom\"\nconduits = [{}]\nholes = {{ drill = [\"32 mm\"], from_left = [{}], from_back = \"100 mm\" }}\n", conduits.join(", "), left.join(", ")).unwrap();
    for at in 0..holes.len() {
        write!(text, "[[conduit]]\nid = \"d-{at}\"\n").unwrap();
    }
    text
}

fn width() -> impl Strategy<Value = Option<u32>> {
    prop_oneof![9 => (12_u32..120).prop_map(Some), 1 => Just(None)]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    #[test]
    fn a_random_box_is_drawn_whole_and_nothing_over_another(
        rails in proptest::collection::vec(proptest::collection::vec(width(), 0..8), 0..5),
        holes in proptest::collection::vec(1_u32..11, 0..6)
    ) {
        let mut holes: Vec<u32> = holes.into_iter().map(|hole| hole * 50).collect();
        holes.sort_unstable();
        holes.dedup();
        let site = read(&text(&rails, &holes));
        let sheets = drawn(&site);
        prop_assert_eq!(sheets.len(), 1);
        for sheet in &sheets {
            tidy(&sheet.name, &sheet.drawing);
            let said = words(&sheet.drawing);
            for (rail, things) in rails.iter().enumerate() {
                for (at, width) in things.iter().enumerate() {
                    let listed = format!("thing {rail}-{at}: ");
                    prop_assert!(said.contains(&listed), "{listed} {said}");
                    if width.is_none() {
                        prop_assert!(said.contains("width is not written"));
                    }
                }
                let taken: Option<u32> = things.iter().copied().sum();
                if taken.is_some_and(|taken| taken > 500) {
                    let short = format!("Rail {} from above is too short", rail + 1);
                    prop_assert!(said.contains(&short), "{said}");
                }
            }
        }
    }
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for name in SITES {
        for sheet in drawn(&example(name)) {
            tidy(&format!("{name}, {}", sheet.name), &sheet.drawing);
        }
    }
}

#[test]
fn the_good_sites_have_every_box_whole() {
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        let site = example(name);
        let sheets = drawn(&site);
        let said: String = sheets.iter().map(|sheet| words(&sheet.drawing)).collect();
        assert!(!said.contains("not written"), "{name}: {said}");
        assert!(!said.contains("too short"), "{name}: {said}");
        let layout = table(&site, "Enclosure layout").unwrap();
        let open = layout.rows.iter().flatten();
        assert_eq!(
            open.filter(|cell| cell.printed() == "measure").count(),
            0,
            "{name}"
        );
        let heat = table(&site, "Enclosure heat").unwrap();
        assert!(heat.rows.len() >= 2, "{name}");
        assert!(table(&site, "Limits in enclosures").is_some());
    }
}

#[test]
fn a_missing_size_is_said_in_its_row_and_hides_only_what_follows() {
    let site = read(&text(&[vec![Some(50), None, Some(40)]], &[100]));
    let sheets = drawn(&site);
    let said = words(&sheets[0].drawing);
    assert!(said.contains("thing 0-1: width is not written"), "{said}");
    assert!(
        said.contains("not drawn: a width before it is not written"),
        "{said}"
    );
    let said = words(&drawn(&read(HEAD))[0].drawing);
    assert!(said.contains("Panel, rails and places"), "{said}");
}

#[test]
fn lengths_on_the_sheet_are_to_scale() {
    let site = read(&text(&[vec![Some(100)]], &[150]));
    let drawing = &drawn(&site)[0].drawing;
    let said = words(drawing);
    let scale = [5.0, 10.0]
        .into_iter()
        .find(|scale| said.contains(&format!("1:{scale}")))
        .unwrap();
    let svg = drawing.svg();
    let radii = svg.split(" r=\"").skip(1);
    let radii: Vec<f64> = radii
        .filter_map(|rest| rest.split('"').next()?.parse().ok())
        .collect();
    let wanted = 16.0 / scale;
    assert!(
        radii.iter().any(|radius| (radius - wanted).abs() < 0.01),
        "no hole with a radius of {wanted} mm: {radii:?}"
    );
}

#[test]
fn the_order_of_loss_begins_with_the_highest_voltage() {
    for name in ["boatyard", "quarry", "clinic", "vineyard"] {
        let table = table(&example(name), "Order of loss on the battery").unwrap();
        let volts = table
            .rows
            .iter()
            .filter_map(|row| row[3].printed().parse::<f64>().ok());
        let volts: Vec<f64> = volts.collect();
        assert!(!volts.is_empty(), "{name}");
        assert!(
            volts.windows(2).all(|pair| pair[0] >= pair[1]),
            "{name}: {volts:?}"
        );
    }
}
