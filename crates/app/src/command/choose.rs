//! `gatewright choose`: the entries of the parts files in the order in which they suit a site.

use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{nearest_name, ranked};
use design::{Choice, Choosable};
use quantity::Word as _;
use std::path::Path;

/// Ranks the parts for every thing of that kind on the site.
pub(crate) fn run(what: &str, site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let what = Choosable::from_word(what).ok_or_else(|| no_such(what))?;
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choices) = design::choose(main, parts, what) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choices)));
        return Ok(outcome(&choices));
    }
    if choices.is_empty() {
        return Err(Complaint(format!(
            "There is no {what} on this site to choose a part for."
        )));
    }
    if choices.iter().any(|choice| choice.candidates.is_empty()) {
        return Err(Complaint(format!(
            "The parts files of this site hold no {what}. Add a table [[{what}]] with its data sheet to one of them."
        )));
    }
    for choice in &choices {
        say(&ranked(choice));
    }
    Ok(outcome(&choices))
}

fn outcome(choices: &[Choice]) -> Outcome {
    let holds = |choice: &Choice| {
        choice
            .candidates
            .first()
            .is_some_and(|best| best.failing.is_empty() && best.open.is_empty())
    };
    if choices.iter().all(holds) {
        Outcome::Holds
    } else {
        Outcome::Open
    }
}

fn no_such(what: &str) -> Complaint {
    let names: Vec<String> = Choosable::ALL.iter().map(ToString::to_string).collect();
    let offer = nearest_name(what, &names)
        .map(|near| format!(" Nearest: {near}."))
        .unwrap_or_default();
    Complaint(format!(
        "Nothing called {what} can be chosen.{offer} What can: {}.",
        names.join(", ")
    ))
}
