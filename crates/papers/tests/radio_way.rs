//! The way of a radio bridge from the side: drawn where it is described, with nothing over another, wherever the antenna is.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::sheet::{changed, drawn as sheets, example, tidy, words};

#[test]
fn it_is_drawn_where_a_bridge_is_described() {
    let drawn = sheets(&example("vineyard"), |name| name.starts_with("radio-"));
    assert_eq!(drawn.len(), 1);
    tidy(&drawn[0].name, &drawn[0].drawing);
    let said = words(&drawn[0].drawing);
    assert!(said.contains("first Fresnel zone"), "{said}");
    assert!(sheets(&example("clinic"), |name| name.starts_with("radio-")).is_empty());
}

#[test]
fn it_is_tidy_behind_the_leaf_and_far_above_it() {
    for at in [
        "[\"2.10 m\", \"-1.20 m\", \"1.00 m\"]",
        "[\"0.00 m\", \"-6.00 m\", \"9.00 m\"]",
    ] {
        let site = changed("vineyard", |text| {
            let (before, after) = text
                .split_once("[radio_link.near]")
                .map_or((text.as_str(), ""), |parts| parts);
            let after = after.replacen("[\"-2.00 m\", \"1.40 m\", \"3.20 m\"]", at, 1);
            if after.is_empty() {
                text.clone()
            } else {
                format!("{before}[radio_link.near]{after}")
            }
        });
        let drawn = sheets(&site, |name| name.starts_with("radio-"));
        assert_eq!(drawn.len(), 1, "{at}");
        tidy(at, &drawn[0].drawing);
    }
}
