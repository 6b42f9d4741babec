//! Reads any text as a site file, and as its parts file: it must come back with a site or with problems, placed in the text.
#![no_main]

use libfuzzer_sys::fuzz_target;
use site::{SourceFile, load};

fuzz_target!(|text: &str| {
    let file = |name: &str| SourceFile { name: name.to_owned(), text: text.to_owned() };
    let loaded = load(file("site.toml"), vec![file("parts.toml")]);
    assert!(loaded.site.is_some() || loaded.problems.any_wrong());
    for problem in &loaded.problems {
        assert!(text.get(problem.span.clone()).is_some());
    }
    let _ = loaded.problems.to_string();
    let _ = site::set_value(text, "site.name", "another name");
});
