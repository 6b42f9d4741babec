//! The marks of terminals, one by one.

use site::Terminals;

/// Most terminals that a strip is taken to have.
const MOST: u32 = 999;

/// The mark of each terminal: those that are written, with `1 to 24` taken as twenty-four of them; else numbers from 1.
pub fn marks(strip: &Terminals) -> Vec<String> {
    if strip.marks.is_empty() {
        return numbers(1, strip.count.unwrap_or(0));
    }
    let marks = strip.marks.iter();
    marks.flat_map(|mark| run(mark.as_str())).collect()
}

/// The marks that one text stands for.
fn run(text: &str) -> Vec<String> {
    let ends = text
        .split_once(" to ")
        .and_then(|(first, last)| Some((first.trim().parse().ok()?, last.trim().parse().ok()?)));
    match ends {
        Some((first, last)) if first <= last => numbers(first, last),
        _ => vec![text.trim().to_owned()],
    }
}

fn numbers(first: u32, last: u32) -> Vec<String> {
    let last = last.min(first.saturating_add(MOST - 1));
    (first..=last).map(|number| number.to_string()).collect()
}
