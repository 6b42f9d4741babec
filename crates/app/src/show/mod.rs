//! How findings look in the terminal: a list of answers, worst first, and one answer with its working.

mod anchored;
mod columns;
mod cut;
mod explained;
mod guarded;
mod listed;
mod planned;
mod poured;
mod priced;
mod queued;
mod ranked;
mod routed;
mod sized;
mod walked;
mod wrapped;

pub(crate) use anchored::anchored;
pub(crate) use columns::columns;
pub(crate) use cut::cut_plan;
pub(crate) use explained::explained;
pub(crate) use guarded::guarded;
pub(crate) use listed::{listed, questions_listed};
pub(crate) use planned::planned;
pub(crate) use poured::poured;
pub(crate) use priced::priced;
pub(crate) use queued::queued;
pub(crate) use ranked::{pinned, ranked};
pub(crate) use routed::routed;
pub(crate) use sized::sized;
pub(crate) use walked::{replayed, unread, walked};
pub(crate) use wrapped::{width, wrapped};

use crate::tint::{fails, paint, quiet, strong};
use design::Standing;

/// The mark and the words of a standing; no verdict is told by color alone.
pub(crate) fn mark(standing: Standing) -> String {
    let (mark, words) = mark_and_words(standing);
    let text = format!("{mark} {words}");
    match standing {
        Standing::Fails | Standing::TurnsWithinTolerance => paint(text, fails()),
        Standing::Unknown | Standing::Outside => paint(text, strong()),
        Standing::Holds | Standing::Figure => paint(text, quiet()),
    }
}

fn mark_and_words(standing: Standing) -> (&'static str, &'static str) {
    match standing {
        Standing::Fails => ("✗", "fails"),
        Standing::TurnsWithinTolerance => ("✗", "fails at the bad end of its tolerances"),
        Standing::Unknown => ("▒", "unknown"),
        Standing::Outside => ("□", "outside this tool"),
        Standing::Holds => ("✓", "holds"),
        Standing::Figure => ("=", "figures"),
    }
}

/// The name most like the one that was written, if any is near.
pub(crate) fn nearest_name<'a>(written: &str, names: &'a [String]) -> Option<&'a String> {
    names
        .iter()
        .map(|name| (strsim::jaro_winkler(written, name), name))
        .filter(|(likeness, _)| *likeness > 0.7)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name)
}
