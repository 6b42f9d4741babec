//! How long the answers take: reading a site, verdicts, findings, and the whole program from start to end.
//!
//! Run with `cargo bench --workspace --bench findings`.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::Bencher;
use site::{Site, SourceFile};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

fn main() {
    divan::main();
}

fn folder(example: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../examples")
        .join(example)
}

fn boatyard_folder() -> PathBuf {
    folder("boatyard")
}

fn source_of(example: &str, name: &str) -> SourceFile {
    SourceFile {
        name: name.to_owned(),
        text: std::fs::read_to_string(folder(example).join(name)).unwrap(),
    }
}

fn source(name: &str) -> SourceFile {
    source_of("boatyard", name)
}

fn example(name: &str) -> Site {
    example_with(name, ("", ""))
}

/// An example in which one text stands in the place of another.
fn example_with(name: &str, (was, is): (&str, &str)) -> Site {
    let parts = vec![
        source_of(name, "parts.toml"),
        source_of(name, "price-book.toml"),
    ];
    let mut main = source_of(name, "site.toml");
    main.text = main.text.replacen(was, is, 1);
    site::load(main, parts).site.unwrap()
}

fn boatyard() -> Site {
    example("boatyard")
}

/// From the text of the files to the model.
#[divan::bench]
fn read(bencher: Bencher) {
    bencher
        .with_inputs(|| {
            (
                source("site.toml"),
                vec![source("parts.toml"), source("price-book.toml")],
            )
        })
        .bench_values(|(main, parts)| site::load(main, parts));
}

/// Verdicts at the values as written, without working: what an editor asks for at every keystroke.
#[divan::bench]
fn verdicts(bencher: Bencher) {
    let site = boatyard();
    bencher.bench(|| design::verdicts(divan::black_box(&site)).len());
}

/// The topics of a gate in motion.
const MECHANICS: &[&str] = &["leaf", "wind", "force", "motion", "stop", "keep"];

/// Every mechanical verdict of each example's gate, without working.
#[divan::bench(args = ["boatyard", "vineyard", "quarry", "clinic"])]
fn mechanical_verdicts(bencher: Bencher, name: &str) {
    let site = example(name);
    bencher.bench(|| design::verdicts_about(divan::black_box(&site), MECHANICS).len());
}

/// Findings with working, worst corners and coverage.
#[divan::bench]
fn answers(bencher: Bencher) {
    let site = boatyard();
    bencher.bench(|| design::answers(divan::black_box(&site)));
}

/// Findings as the program works them: on every processor.
#[divan::bench(args = ["boatyard", "vineyard", "quarry", "clinic"])]
fn answers_on_all_processors(bencher: Bencher, name: &str) {
    let site = example(name);
    let threads = std::thread::available_parallelism().unwrap();
    bencher.bench(|| design::answers_on(divan::black_box(&site), threads));
}

/// Findings after the mass of a leaf was changed a little, back and forth: every question is asked that looks at it, and no other.
#[divan::bench(args = [
    ("boatyard", "722 lb", "724 lb"),
    ("vineyard", "84 kg", "85 kg"),
    ("quarry", "1690 lb", "1692 lb"),
    ("clinic", "9.3 kg", "9.4 kg"),
])]
fn answers_after_a_changed_mass(bencher: Bencher, (name, was, is): (&str, &str, &str)) {
    let mut sites = [example(name), example_with(name, (was, is))];
    assert!(sites[0].changed(&sites[1]).is_some());
    let threads = std::thread::available_parallelism().unwrap();
    let mut remembered = design::Remembered::new();
    design::answers_remembering(&sites[0], threads, &mut remembered);
    bencher.bench_local(|| {
        sites.swap(0, 1);
        design::answers_remembering(divan::black_box(&sites[0]), threads, &mut remembered)
    });
}

/// The program from start to end: one check.
#[divan::bench(args = ["boatyard", "vineyard", "quarry", "clinic"])]
fn whole_check(bencher: Bencher, name: &str) {
    let folder = folder(name);
    bencher.bench(|| program(&["check"], &[&folder]));
}

/// The program from start to end: every walk and every proof.
#[divan::bench(sample_count = 1, args = ["boatyard", "vineyard", "quarry", "clinic"])]
fn whole_walk(bencher: Bencher, name: &str) {
    let folder = folder(name);
    bencher.bench(|| program(&["walk"], &[&folder]));
}

/// The program from start to end: every paper.
#[divan::bench(sample_count = 10)]
fn whole_pack(bencher: Bencher) {
    let folder = tempfile::tempdir().unwrap();
    bencher.bench(|| {
        program(
            &["pack", "--date", "2026-11-25"],
            &[&boatyard_folder(), Path::new("--output"), folder.path()],
        );
    });
}

/// Runs the program; the boatyard leaves one figure open, which is status 1.
fn program(words: &[&str], paths: &[&Path]) {
    let status = Command::new(env!("CARGO_BIN_EXE_gatewright"))
        .args(words)
        .args(paths)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .unwrap();
    assert_eq!(status.code(), Some(1), "{words:?}");
}
