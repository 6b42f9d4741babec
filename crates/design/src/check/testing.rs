//! Sites from a few lines of text, for the tests of checks.

#![allow(
    clippy::panic,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use super::{Check, round};
use crate::Finding;
use site::{Site, SourceFile};

/// The site of a text that must be without problems that cannot be so.
pub(crate) fn site(text: &str) -> Site {
    bought(text, None)
}

/// The site of a text whose parts file is another text.
fn bought(text: &str, parts: Option<&str>) -> Site {
    let file = |name: &str, text: &str| SourceFile {
        name: name.to_owned(),
        text: text.to_owned(),
    };
    let parts = parts.map(|text| file("parts.toml", text));
    let loaded = site::load(file("site.toml", text), parts.into_iter().collect());
    let problems: Vec<String> = loaded
        .problems
        .iter()
        .map(|problem| format!("{} {}", problem.path, problem.what))
        .collect();
    assert!(problems.is_empty(), "{problems:#?}");
    loaded.site.expect("the site has a name and a code basis")
}

/// The findings of one check on the site of a text.
pub(crate) fn all(check: &Check, text: &str) -> Vec<Finding> {
    round::findings(&site(text), std::slice::from_ref(check))
}

/// The only finding of one check on a site with parts; the site says `parts = ["parts.toml"]`.
pub(crate) fn only_bought(check: &Check, text: &str, parts: &str) -> Finding {
    let mut findings = round::findings(&bought(text, Some(parts)), std::slice::from_ref(check));
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}

/// The only finding of one check on the site of a text.
pub(crate) fn only(check: &Check, text: &str) -> Finding {
    let mut findings = all(check, text);
    assert_eq!(findings.len(), 1, "{findings:#?}");
    findings.remove(0)
}
