//! Every published table says what it holds, in which units, and how it is known.
#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use formula::Evidence;
use quantity::Word as _;
use serde::Deserialize;
use std::path::{Path, PathBuf};

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct TableFile {
    title: String,
    columns: Vec<String>,
    units: Vec<String>,
    rows: Vec<Vec<toml::Value>>,
    source: Source,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Source {
    work: String,
    evidence: String,
    seen: String,
    checked: String,
}

fn tables() -> Vec<PathBuf> {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let folders = std::fs::read_dir(source)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    let files = folders.filter(|path| path.is_dir()).flat_map(|folder| {
        std::fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().path())
    });
    let is_table = |path: &PathBuf| {
        let name = path.file_stem().unwrap().to_string_lossy().into_owned();
        path.extension().is_some_and(|end| end == "toml") && !name.contains(".cases")
    };
    files.filter(is_table).collect()
}

#[test]
fn every_table_is_whole_and_has_its_source() {
    let mut faults = Vec::new();
    for path in tables() {
        let text = std::fs::read_to_string(&path).unwrap();
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let table: TableFile = match toml::from_str(&text) {
            Ok(table) => table,
            Err(error) => {
                faults.push(format!("{name}: {error}"));
                continue;
            }
        };
        let width = table.columns.len();
        let even = table.units.len() == width && table.rows.iter().all(|row| row.len() == width);
        let source = [
            &table.title,
            &table.source.work,
            &table.source.seen,
            &table.source.checked,
        ];
        let told = source.iter().all(|text| !text.is_empty());
        if !even || !told || Evidence::from_word(&table.source.evidence).is_none() {
            faults.push(format!("{name}: a part is missing"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(tables().len() > 3);
}
