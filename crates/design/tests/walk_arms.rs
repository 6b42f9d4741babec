//! Arms through the leaves of the sliding examples: held against strips on the guide posts, and none harder than it may be.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::walk::{FamilyStanding, FamilyTold, GateWalk};
use site::{Site, SourceFile, load};
use std::path::Path;

fn site(name: &str, change: &dyn Fn(String) -> String) -> Site {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let folder = folder.join(name);
    let read = |name: &str| SourceFile {
        name: name.to_owned(),
        text: std::fs::read_to_string(folder.join(name)).unwrap(),
    };
    let mut file = read("site.toml");
    file.text = change(file.text);
    load(file, vec![read("parts.toml"), read("price-book.toml")])
        .site
        .unwrap()
}

fn arms(site: &Site) -> Vec<FamilyTold> {
    let walk = GateWalk::of(site, &site.gate[0]).unwrap();
    walk.prove_arms(10_000)
}

#[test]
fn the_strips_on_the_guide_posts_hold_every_arm_within_the_limits() {
    for name in ["boatyard", "quarry"] {
        let arms = arms(&site(name, &|text| text));
        assert!(arms.len() >= 2, "{name}: {arms:#?}");
        for arm in &arms {
            assert_eq!(arm.standing, FamilyStanding::Proved, "{name}: {arm:#?}");
        }
    }
}

#[test]
fn without_a_strip_an_arm_is_trapped() {
    let bare = site("boatyard", &|text| {
        text.replace("id = \"edge-guide-out\"\npart = \"edge-deep-8k2\"\nkind = \"contact edge\"", "id = \"edge-guide-out\"\npart = \"edge-deep-8k2\"\nkind = \"contact edge\"\ncarried_by = \"leaf\"")
    });
    let arms = arms(&bare);
    let refuted = |arm: &&FamilyTold| arm.standing == FamilyStanding::Refuted;
    let refuted: Vec<_> = arms.iter().filter(refuted).collect();
    assert_eq!(refuted.len(), 1, "{arms:#?}");
    assert!(refuted[0].family.contains("post-guide-out"));
}
