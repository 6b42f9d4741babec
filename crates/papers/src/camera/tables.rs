//! The tables of a camera's sheet: detail over distance, and the sun in its picture.

use super::page::{HEADING, Page, Spot, WORDS};
use design::eye::{ShownCamera, purposes, seasons};
use draw::Anchor;
use quantity::{Quantity as _, Word as _};

/// Width of a table (mm).
pub(super) const WIDTH: f64 = 114.0;
/// Height of a row (mm).
const ROW: f64 = 5.0;
/// Where the columns of the table of detail begin (mm).
const COLUMNS: [f64; 4] = [0.0, 40.0, 66.0, 92.0];
/// Rows of the sun's table.
const SEASONS: usize = 9;

fn rows(
    page: &mut Page<'_>,
    (left, top): Spot,
    title: &str,
    rows: &[Vec<String>],
    columns: &[f64],
) {
    page.words(title, HEADING, (left, top + 2.0), Anchor::Start);
    let layer = page.layers.frames;
    page.line(layer, (left, top), (left + WIDTH, top));
    for (at, row) in (0_u32..).zip(rows) {
        let base = top - ROW * f64::from(at) - ROW + 1.5;
        for (word, column) in row.iter().zip(columns) {
            page.words(word, WORDS, (left + column, base), Anchor::Start);
        }
        let under = top - ROW * f64::from(at + 1);
        page.line(layer, (left, under), (left + WIDTH, under));
    }
}

/// How far off each purpose is reached, and what the place that matters gets.
pub(super) fn detail(page: &mut Page<'_>, camera: &ShownCamera, spot: Spot) {
    let lens = camera.camera;
    let pixels = f64::from(lens.pixels.0);
    let width = |distance: f64| lens.sensor_width.base() * distance / lens.focal_length.base();
    let words = |words: &[&str]| words.iter().map(|word| (*word).to_owned()).collect();
    let mut all: Vec<Vec<String>> = vec![words(&["good to", "up to", "detail", "picture"])];
    for (purpose, pixel) in purposes() {
        let distance = pixel.base() * pixels * lens.focal_length.base() / lens.sensor_width.base();
        all.push(vec![
            purpose.to_owned(),
            page.length(distance),
            page.density(pixel.base()),
            page.length(width(distance)),
        ]);
    }
    if let Some(target) = &camera.target {
        all.extend(at_target(page, camera, target));
    }
    rows(
        page,
        spot,
        "Detail over distance along the axis",
        &all,
        &COLUMNS,
    );
}

/// The rows of the place that matters: what it gets, and what its level and its plates need.
fn at_target(
    page: &Page<'_>,
    camera: &ShownCamera,
    target: &design::eye::ShownTarget,
) -> Vec<Vec<String>> {
    let lens = camera.camera;
    let Some(pixel) = lens.project(target.at).filter(|_| lens.frames(target.at)) else {
        return vec![vec!["place that matters".to_owned(), "outside".to_owned()]];
    };
    let across = lens.sensor_width.base() * pixel.depth.base() / lens.focal_length.base();
    let one = across / f64::from(lens.pixels.0);
    let mut all = vec![vec![
        "place that matters".to_owned(),
        page.length(pixel.depth.base()),
        page.density(one),
        page.length(across),
    ]];
    if let Some((level, needed)) = &target.level {
        let met = if one <= needed.base() * (1.0 + 1e-9) {
            "reached"
        } else {
            "× not reached"
        };
        all.push(vec![
            format!("wanted: {}", level.word()),
            met.to_owned(),
            page.density(needed.base()),
        ]);
    }
    if let Some((width, wanted)) = target.plate {
        let turned = target.facing.map_or(1.0, |facing| {
            let x = (lens.at[0] - target.at[0]).base();
            let y = (lens.at[1] - target.at[1]).base();
            (facing.base() - y.atan2(x)).cos().max(0.0)
        });
        all.push(vec![
            "pixels across a plate".to_owned(),
            format!("{:.0}", width.base() * turned / one),
            wanted.map_or_else(String::new, |wanted| format!("needs {wanted}")),
        ]);
    }
    all
}

/// Dates and hours of the sun in the picture.
pub(super) fn sun(page: &mut Page<'_>, camera: &ShownCamera, spot: Spot) {
    let Some((year, zone)) = &camera.low_sun else {
        let row = vec!["latitude, longitude and north are not all known".to_owned()];
        rows(page, spot, "Sun in the picture", &[row], &COLUMNS);
        return;
    };
    let hours = (year.total.base() / 3600.0).ceil();
    let title = format!("Sun in the picture: {hours:.0} h a year, clear skies");
    let mut all: Vec<Vec<String>> = Vec::new();
    let seasons = seasons(year);
    for season in seasons.iter().take(SEASONS) {
        all.push(vec![season.clone()]);
    }
    if seasons.len() > SEASONS {
        all.push(vec![format!(
            "and {} more stretches",
            seasons.len() - SEASONS
        )]);
    }
    if seasons.is_empty() {
        all.push(vec!["never".to_owned()]);
    }
    all.push(vec![format!(
        "standard time, {zone:+} h from universal time"
    )]);
    rows(page, spot, &title, &all, &COLUMNS);
}
