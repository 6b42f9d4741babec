//! Figures of foundations, and templates at full size: nothing overlaps, what matters is measured, one to one is true.

#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test may stop at the first surprise"
)]

use crate::sheet::{drawn, example, imprint, tidy, words};
use draw::Drawing;
use papers::sheets::{NamedDrawing, Template, templates};
use site::{Site, SourceFile, load};
use std::fs;
use std::path::Path;

fn read(text: &str) -> Site {
    let file = SourceFile {
        name: "site.toml".to_owned(),
        text: text.to_owned(),
    };
    let loaded = load(file, Vec::new());
    let problems: Vec<String> = loaded.problems.iter().map(ToString::to_string).collect();
    assert!(problems.is_empty(), "{problems:?}");
    loaded.site.unwrap()
}

fn text() -> String {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/sites");
    fs::read_to_string(folder.join("standing.toml")).unwrap()
}

/// The same site under the other code basis.
fn both() -> [Site; 2] {
    let us = text();
    let eu = us.replace("code_basis = \"us\"", "code_basis = \"eu\"");
    [read(&us), read(&eu)]
}

fn figures(site: &Site) -> Vec<NamedDrawing> {
    drawn(site, |name| name.starts_with("foundation-"))
}

fn figure(site: &Site, name: &str) -> NamedDrawing {
    let mut all = figures(site);
    all.retain(|sheet| sheet.name == name);
    all.remove(0)
}

fn made(site: &Site) -> Vec<Template> {
    templates(site, &imprint()).unwrap()
}

/// Where files go that a person wants to look at.
fn keep(name: &str, drawing: &Drawing) {
    if let Ok(folder) = std::env::var("KEEP_PAPERS") {
        fs::write(Path::new(&folder).join(name), drawing.svg()).unwrap();
    }
}

#[test]
fn no_words_overlap_and_none_is_left_out() {
    for (index, site) in both().iter().enumerate() {
        for sheet in drawn(site, |_| true) {
            keep(&format!("{index}-{}.svg", sheet.name), &sheet.drawing);
            tidy(&sheet.name, &sheet.drawing);
        }
        for template in made(site) {
            for (page, drawing) in template.pages.iter().enumerate() {
                keep(&format!("{index}-{}-{page}.svg", template.name), drawing);
                tidy(&template.name, drawing);
            }
            tidy(&template.name, &template.whole);
        }
    }
}

#[test]
fn the_templates_of_the_examples_are_tidy() {
    for name in ["boatyard", "vineyard", "quarry", "clinic"] {
        for template in made(&example(name)) {
            for page in &template.pages {
                tidy(&format!("{name}, {}", template.name), page);
            }
        }
    }
}

#[test]
fn foundations_that_are_alike_share_a_figure() {
    for site in both() {
        let names: Vec<String> = figures(&site).into_iter().map(|one| one.name).collect();
        let wanted = [
            "foundation-beam-trolleys",
            "foundation-pad-drive",
            "foundation-footing-a",
            "foundation-footing-catch",
            "foundation-beam-track",
            "foundation-footing-bollard",
        ];
        assert_eq!(names, wanted);
        let shared = figure(&site, "foundation-footing-a");
        assert_eq!(shared.drawing.title(), "Foundations footing-a, footing-b");
    }
}

#[test]
fn the_anchors_are_measured_from_the_edges() {
    let figure = figure(&both()[0], "foundation-pad-drive");
    let words = words(&figure.drawing);
    for said in [
        "2'-6\"",
        "2'-0\"",
        "8 1/2\"",
        "7\"",
        "10\"",
        "1'-1\"",
        "depth 3'-4\"",
        "frost 3'-0\"",
        "embedment 4\"",
        "c-power",
        "4 × 1/2 in",
        "bars: No. 4 at 10 in both ways",
        "water runs off",
        "top 2\" above the ground",
        "latching side",
        "licensed engineer",
    ] {
        assert!(words.contains(said), "{said} in {words}");
    }
}

#[test]
fn what_is_missing_is_told() {
    let bare = "[site]\nname = \"Bare\"\ncode_basis = \"eu\"\n[[foundation]]\nid = \"pad\"\nlength = \"700 mm\"\nwidth = \"600 mm\"\n[[foundation.anchor]]\nholds = \"pedestal\"\ncount = 4\n";
    let site = read(bare);
    let figure = figure(&site, "foundation-pad");
    tidy("bare", &figure.drawing);
    let words = words(&figure.drawing);
    for said in [
        "Its depth is not given",
        "The anchors for pedestal are not drawn",
        "depth of frost is not given",
        "Bars are not given",
    ] {
        assert!(words.contains(said), "{said} in {words}");
    }
    assert!(made(&site).is_empty());
}

/// The circles of a kind on a page, as the SVG has them: center and radius in millimeters of paper, y upward.
fn circles(page: &Drawing, title: &str) -> Vec<[f64; 3]> {
    let svg = page.svg();
    let high = page
        .paper_size()
        .1
        .get::<quantity::units::length::millimeter>();
    let head = svg.lines().next().unwrap().to_owned();
    assert!(head.contains(&format!("height=\"{high}mm\"")), "{head}");
    let number = |line: &str, name: &str| -> f64 {
        let rest = line.split_once(&format!(" {name}=\"")).unwrap().1;
        rest.split_once('"').unwrap().0.parse().unwrap()
    };
    let lines: Vec<&str> = svg.lines().collect();
    let titled = lines.windows(2).filter(|two| two[0].contains(title));
    titled
        .filter(|two| two[1].contains("<circle"))
        .map(|two| {
            let [x, y, radius] = ["cx", "cy", "r"].map(|name| number(two[1], name));
            [x, high - y, radius]
        })
        .collect()
}

#[test]
fn the_templates_are_one_to_one() {
    let site = read(&text());
    let all = made(&site);
    let pad = all
        .iter()
        .find(|one| one.name == "template-pad-drive")
        .unwrap();
    let mut seen = 0;
    for page in &pad.pages {
        let holes = circles(page, "<title>hole ");
        seen += holes.len();
        for hole in &holes {
            assert!((hole[2] * 2.0 - 14.2875).abs() < 0.1, "{hole:?}");
        }
        for one in &holes {
            for other in &holes {
                let apart = (one[0] - other[0]).hypot(one[1] - other[1]);
                let known = [0.0, 254.0, 177.8, 254.0_f64.hypot(177.8)];
                let near = known.iter().any(|length| (length - apart).abs() < 0.1);
                assert!(near, "{apart} between {one:?} and {other:?}");
            }
        }
    }
    assert!(seen >= 4);
}

#[test]
fn neighboring_pages_fit_on_their_marks() {
    let site = read(&text());
    for template in made(&site) {
        let mut places: Vec<(String, Vec<[f64; 2]>)> = Vec::new();
        for page in &template.pages {
            let [width, height] = [page.paper_size().0, page.paper_size().1]
                .map(|side| side.get::<quantity::units::length::millimeter>());
            let letter = [(215.9, 279.4), (279.4, 215.9)];
            assert!(
                letter
                    .iter()
                    .any(|size| (size.0 - width).abs() < 0.01 && (size.1 - height).abs() < 0.01)
            );
            for text in page.text_boxes() {
                let is_mark =
                    text.words.len() == 1 && text.words.as_bytes()[0].is_ascii_uppercase();
                if is_mark {
                    let at = [text.center.x, text.center.y]
                        .map(|it| it.get::<quantity::units::length::millimeter>());
                    match places.iter_mut().find(|(name, _)| *name == text.words) {
                        Some((_, list)) => list.push(at),
                        None => places.push((text.words.clone(), vec![at])),
                    }
                }
            }
        }
        if template.pages.len() > 1 {
            assert!(places.iter().all(|(_, list)| list.len() >= 2), "{places:?}");
        }
    }
}

#[test]
fn every_page_says_how_to_print_it_and_has_its_ruler() {
    for site in both() {
        for template in made(&site) {
            for page in &template.pages {
                let words = words(page);
                for said in [
                    "Print at 100 %; measure the ruler before you drill",
                    "100 mm",
                    "4 in",
                    "toward the property",
                    "toward the latching",
                    "Ferry landing",
                ] {
                    assert!(words.contains(said), "{}: {said} in {words}", template.name);
                }
                let ruler = page.svg();
                assert!(ruler.contains("class=\"ruler\""));
            }
        }
    }
}

#[test]
fn the_patterns_are_in_the_cad_file_at_full_size() {
    let site = read(&text());
    let pad = &made(&site)[0];
    let dxf = pad.whole.dxf(draw::DxfUnit::Millimeters);
    assert!(dxf.lines().any(|line| line.trim() == "CIRCLE"));
    let radius = dxf.lines().any(|line| {
        line.trim()
            .parse::<f64>()
            .is_ok_and(|it| (it - 7.14375).abs() < 1e-3)
    });
    assert!(radius, "a hole of 9/16 in has a radius of 7.14 mm");
}

#[test]
fn bollards_and_covers_are_on_the_plan() {
    let site = read(&text());
    let all = drawn(&site, |_| true);
    let plan = all.iter().find(|sheet| sheet.name == "gate-plan").unwrap();
    let said = words(&plan.drawing);
    assert!(said.contains("guards drive"), "{said}");
    assert!(said.contains("handhole"), "{said}");
    assert!(plan.drawing.svg().contains("there before"));
    let far = all.iter().find(|sheet| sheet.name == "site-plan").unwrap();
    assert!(words(&far.drawing).contains("bollard-reader"));
}

#[test]
fn the_same_site_gives_the_same_bytes() {
    let site = read(&text());
    for (one, other) in made(&site).iter().zip(&made(&site)) {
        for (page, again) in one.pages.iter().zip(&other.pages) {
            assert_eq!(page.svg(), again.svg());
        }
    }
}
