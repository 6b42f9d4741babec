//! The house rules that no compiler checks: directions of dependencies, the architecture page, what each file says it is for.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    reason = "a test may stop at the first surprise"
)]

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// What each crate may use; `architecture.md` prints the same.
const MAY_USE: &[(&str, &[&str])] = &[
    ("quantity", &[]),
    ("draw", &["quantity"]),
    ("site", &["quantity"]),
    ("formula", &["quantity"]),
    ("sim", &["formula", "quantity"]),
    ("design", &["sim", "formula", "site", "quantity"]),
    ("papers", &["draw", "design", "sim", "site", "quantity"]),
    (
        "app",
        &["papers", "draw", "design", "formula", "site", "quantity"],
    ),
];

/// Crates that touch nothing outside themselves.
const PURE: &[&str] = &[
    "quantity", "draw", "site", "formula", "sim", "design", "papers",
];

/// Files past 400 lines, each with the reason why it is still one thing.
const LONG: &[(&str, &str)] = &[
    (
        "crates/papers/tests/invented/findings.rs",
        "invented findings for one test document, as data",
    ),
    (
        "crates/quantity/tests/reading.rs",
        "every form in which a quantity is written, as one table",
    ),
];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .canonicalize()
        .unwrap()
}

/// Every file of the project with one of these endings, build products left out.
fn files(endings: &[&str]) -> Vec<PathBuf> {
    let skip = [
        "target",
        ".git",
        ".venv",
        "out",
        "node_modules",
        "__pycache__",
        ".pytest_cache",
    ];
    let mut found = Vec::new();
    let mut folders = vec![root()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).unwrap() {
            let path = entry.unwrap().path();
            let name = path.file_name().unwrap().to_string_lossy().into_owned();
            if path.is_dir() {
                if !skip.contains(&name.as_str()) {
                    folders.push(path);
                }
            } else if endings.iter().any(|ending| name.ends_with(ending)) {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

fn shown(path: &Path) -> String {
    path.strip_prefix(root())
        .unwrap()
        .to_string_lossy()
        .into_owned()
}

/// Our own crates named in the `[dependencies]` of a manifest.
fn dependencies(manifest: &str, names: &BTreeSet<&str>) -> BTreeSet<String> {
    let table: toml_edit::DocumentMut = manifest.parse().unwrap();
    table["dependencies"]
        .as_table()
        .map(|table| {
            table
                .iter()
                .map(|(name, _)| name.to_owned())
                .filter(|name| names.contains(name.as_str()))
                .collect()
        })
        .unwrap_or_default()
}

#[test]
fn dependencies_point_downwards() {
    let names: BTreeSet<&str> = MAY_USE.iter().map(|(name, _)| *name).collect();
    let on_disk: BTreeSet<String> = fs::read_dir(root().join("crates"))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    assert_eq!(
        on_disk,
        names.iter().map(ToString::to_string).collect(),
        "crates on disk and in this test"
    );
    for (name, may_use) in MAY_USE {
        let manifest =
            fs::read_to_string(root().join(format!("crates/{name}/Cargo.toml"))).unwrap();
        for used in dependencies(&manifest, &names) {
            assert!(
                may_use.contains(&used.as_str()),
                "{name} must not use {used}"
            );
        }
    }
}

#[test]
fn pure_crates_touch_no_file_clock_or_environment() {
    for name in PURE {
        for path in files(&[".rs"]) {
            let place = shown(&path);
            if !place.starts_with(&format!("crates/{name}/src/")) {
                continue;
            }
            let text = fs::read_to_string(&path).unwrap();
            let code = text.split("#[cfg(test)]").next().unwrap();
            for word in [
                "std::fs",
                "std::env",
                "std::net",
                "SystemTime",
                "Instant::now",
                "HashMap",
                "HashSet",
            ] {
                assert!(!code.contains(word), "{place} uses {word}");
            }
        }
    }
}

#[test]
fn no_answer_rests_on_the_bytes_or_the_column_of_a_value() {
    // A finding is taken over where only measured values are others, and another value moves what stands behind it.
    for path in files(&[".rs"]) {
        let place = shown(&path);
        if !place.starts_with("crates/design/src/") {
            continue;
        }
        let text = fs::read_to_string(&path).unwrap();
        for word in [
            "origin.span",
            "place.span",
            ".span.start",
            ".span.end",
            ".span.clone",
            ".column",
        ] {
            assert!(!text.contains(word), "{place} looks at {word}");
        }
    }
}

#[test]
fn the_architecture_page_names_what_exists() {
    let page = fs::read_to_string(root().join("docs/architecture.md")).unwrap();
    for (name, _) in MAY_USE {
        assert!(
            page.contains(&format!("`crates/{name}`")),
            "architecture.md does not name crates/{name}"
        );
    }
    for quoted in page.split('`').skip(1).step_by(2) {
        let is_path = quoted.contains('/') && !quoted.contains([' ', '*', ':', '<']);
        if is_path {
            assert!(
                root().join(quoted).exists(),
                "architecture.md names {quoted}, which does not exist"
            );
        }
    }
    let mut rows = BTreeMap::new();
    for line in page.lines().filter(|line| line.starts_with("| `crates/")) {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        rows.insert(
            cells[1]
                .trim_matches('`')
                .trim_start_matches("crates/")
                .to_owned(),
            cells[3].to_owned(),
        );
    }
    for (name, may_use) in MAY_USE.iter().filter(|(name, _)| *name != "app") {
        let row = &rows[*name];
        for used in *may_use {
            assert!(
                row.contains(&format!("`{used}`")),
                "architecture.md: {name} may use {used}"
            );
        }
        assert_eq!(
            row.matches('`').count() / 2,
            may_use.len(),
            "architecture.md lists more for {name} than the test allows"
        );
    }
}

#[test]
fn every_source_file_says_first_what_it_is_for() {
    for path in files(&[".rs"]) {
        let text = fs::read_to_string(&path).unwrap();
        assert!(
            text.starts_with("//! "),
            "{} does not begin with what it is for",
            shown(&path)
        );
    }
}

#[test]
fn no_file_is_too_long_without_a_reason() {
    for path in files(&[".rs", ".py"]) {
        let lines = fs::read_to_string(&path).unwrap().lines().count();
        let place = shown(&path);
        let excused = LONG.iter().any(|(long, _)| *long == place);
        assert!(
            lines <= 400 || excused,
            "{place} has {lines} lines: is it still one thing?"
        );
    }
}

#[test]
fn nothing_is_left_open_and_no_machine_is_named() {
    let open = ["TO", "DO"].concat();
    let fix = ["FIX", "ME"].concat();
    for path in files(&[".rs", ".toml", ".md", ".py", ".typ", ".yml", "run", "test"]) {
        let Ok(text) = fs::read_to_string(&path) else {
            continue;
        };
        let place = shown(&path);
        for word in [&open, &fix] {
            assert!(
                !text.contains(word.as_str()),
                "{place} is left open: {word}"
            );
        }
        for folder in ["work", "root", "home"] {
            let machine = format!("/{folder}/");
            let named = text.match_indices(&machine).any(|(at, _)| {
                let before = text[..at].chars().next_back();
                before.is_none_or(|c| c.is_whitespace() || "\"'`(".contains(c))
            });
            assert!(!named, "{place} names a folder of one machine: {machine}");
        }
    }
}

/// Names in one table of a manifest, as code writes them.
fn named(manifest: &toml_edit::DocumentMut, table: &str) -> Vec<String> {
    manifest
        .get(table)
        .and_then(toml_edit::Item::as_table)
        .map(|table| {
            table
                .iter()
                .map(|(name, _)| name.replace('-', "_"))
                .collect()
        })
        .unwrap_or_default()
}

#[test]
fn every_dependency_is_used() {
    let sources: Vec<(String, String)> = files(&[".rs"])
        .iter()
        .map(|path| (shown(path), fs::read_to_string(path).unwrap()))
        .collect();
    let used = |folder: &str, name: &str| {
        let ways = [format!("{name}::"), format!("use {name};")];
        sources
            .iter()
            .filter(|(place, _)| place.starts_with(folder))
            .any(|(_, text)| ways.iter().any(|way| text.contains(way)))
    };
    for (name, _) in MAY_USE {
        let text = fs::read_to_string(root().join(format!("crates/{name}/Cargo.toml"))).unwrap();
        let manifest: toml_edit::DocumentMut = text.parse().unwrap();
        for dependency in named(&manifest, "dependencies") {
            let folder = format!("crates/{name}/src/");
            assert!(
                used(&folder, &dependency),
                "{name} does not use {dependency}"
            );
        }
        for dependency in named(&manifest, "dev-dependencies") {
            let folder = format!("crates/{name}/");
            assert!(
                used(&folder, &dependency),
                "the tests of {name} do not use {dependency}"
            );
        }
    }
}

#[test]
fn every_file_of_tests_is_part_of_its_program() {
    for (name, _) in MAY_USE {
        let folder = format!("crates/{name}/tests/");
        let program = fs::read_to_string(root().join(&folder).join("main.rs")).unwrap();
        let named: Vec<&str> = program
            .lines()
            .filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';'))
            .collect();
        for path in files(&[".rs"]) {
            let place = shown(&path);
            let Some(file) = place
                .strip_prefix(&folder)
                .filter(|file| !file.contains('/'))
            else {
                continue;
            };
            let module = file.trim_end_matches(".rs");
            assert!(
                module == "main" || named.contains(&module),
                "{place} is never run: {folder}main.rs does not name it"
            );
        }
    }
}
