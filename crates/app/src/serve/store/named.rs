//! What is taken out is named by nothing that stays.

use crate::serve::items::path;
use crate::serve::refusal::Refusal;
use site::{Code, Problem, Problems};

/// Refuses changes after which something names what was there before.
pub(super) fn names_only_what_is_there(before: &Problems, after: &Problems) -> Result<(), Refusal> {
    let is_new = |problem: &&Problem| {
        let same = |one: &Problem| (one.code, &one.what) == (problem.code, &problem.what);
        problem.code == Code::UnknownId && !before.iter().any(same)
    };
    let naming = after.iter().filter(is_new);
    let naming: Vec<String> = naming.map(|problem| path(&problem.path)).collect();
    let Some(first) = naming.first() else {
        return Ok(());
    };
    let what = format!(
        "It cannot go alone: {} would name what is not there.",
        naming.join(", ")
    );
    let act = "Ask for its removal, which tells as changes what goes with it and what lets go of it, and send all of them.";
    Err(Refusal::unusable(what, act)
        .at(first)
        .expected("changes that leave no name behind"))
}
