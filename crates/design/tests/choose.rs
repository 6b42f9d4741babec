//! What can be chosen for a site: each candidate stands in the whole site, and what holds for least comes first.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::{Choice, Choosable, choose};
use site::SourceFile;

fn file(name: &str, text: &str) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    }
}

const SITE: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    parts = ["parts.toml"]
    [climate]
    corrosivity = "C3"
    [[gate]]
    id = "main"
    kind = "single-swing"
    [[gate.post]]
    id = "hinges"
    role = "hinge"
    part = "thin-zinc"
    [[gate.post]]
    id = "old"
    role = "catch"
    [gate.post.pillar]
    core = "unknown"
"#;

const POSTS: &str = r#"
    [[post]]
    id = "thin-zinc"
    price = "90.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "20 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "dear"
    price = "260.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "100 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "thick-zinc"
    price = "140.00 USD"
    finish = { coating = "hot-dip zinc", zinc = "85 µm", wanted_life = "25 years", edges_coated = true }
    [[post]]
    id = "painted"
    price = "60.00 USD"
    finish = { coating = "paint", wanted_life = "25 years" }
"#;

fn posts() -> Vec<Choice> {
    let parts = [file("parts.toml", POSTS)];
    choose(&file("site.toml", SITE), &parts, Choosable::Post).unwrap()
}

#[test]
fn the_cheapest_post_that_holds_comes_first_and_each_that_fails_says_why() {
    let choice = posts().remove(0);
    assert_eq!(choice.thing, "gate \"main\" · post \"hinges\"");
    assert_eq!(choice.now.as_deref(), Some("thin-zinc"));
    let order: Vec<&str> = choice
        .candidates
        .iter()
        .map(|one| one.part.as_str())
        .collect();
    assert_eq!(order, ["thick-zinc", "dear", "painted", "thin-zinc"]);
    assert_eq!(choice.candidates[0].price.as_deref(), Some("140.00 USD"));
    assert_eq!(choice.candidates[3].failing[0].question, "keep-corrosion");
}

#[test]
fn an_old_pillar_is_no_post_to_buy() {
    assert_eq!(posts().len(), 1);
}
