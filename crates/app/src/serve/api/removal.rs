//! What goes with a thing that is taken out, in words and as the changes that do it.

use super::{Answer, of_job};
use crate::serve::body::Given;
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use serde::Deserialize;
use serde_json::{Value, json};
use site::Removal;
use std::sync::Arc;

/// What is to be taken out.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Which {
    /// Its path.
    path: String,
}

/// What goes with it, and what names it no longer; nothing is changed.
pub(super) async fn removal(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Given(which): Given<Which>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let files = &seen.files;
        let removal = site::removal(&files.main, &files.beside, &which.path).ok_or_else(|| {
            Refusal::absent(
                "There is no such thing in this site any more.",
                "Look at the plan again.",
            )
            .at(which.path)
        })?;
        Ok(Json(json!({
            "revision": seen.revision,
            "goes": removal.goes,
            "let_go": removal.let_go,
            "words": words(&removal),
            "edits": edits(&removal),
        })))
    })
    .await
}

/// What depends on it, a sentence each.
fn words(removal: &Removal) -> Vec<String> {
    let with_it = removal.goes.iter().skip(1);
    let with_it = with_it.map(|path| format!("{} goes with it.", said(path)));
    let named = removal.let_go.iter().map(|one| {
        let record = said(&one.record);
        format!("{record} no longer names it under “{}”.", one.label)
    });
    with_it.chain(named).collect()
}

/// A path in words: `cable w-06`, `bus rs-485, node 2`.
fn said(path: &str) -> String {
    let steps: Vec<&str> = path.split('.').collect();
    let pairs = steps.chunks(2).map(|pair| match pair {
        [kind, name] => match name.parse::<usize>() {
            Ok(number) => format!("{} {}", kind.replace('_', " "), number + 1),
            Err(_) => format!("{} {name}", kind.replace('_', " ")),
        },
        _ => pair.concat().replace('_', " "),
    });
    crate::serve::page::capital(&pairs.collect::<Vec<_>>().join(", "))
}

/// The changes: first what stays lets go, then what goes, the last of a list before those before it.
fn edits(removal: &Removal) -> Vec<Value> {
    let let_go = removal.let_go.iter().map(|one| match &one.left {
        Some(left) => json!({ "do": "set", "path": one.path, "value": left }),
        None => json!({ "do": "remove", "path": one.path }),
    });
    let mut goes: Vec<&String> = removal.goes.iter().collect();
    let number = |path: &str| {
        let last = path.rsplit('.').next().unwrap_or_default();
        last.parse::<usize>().unwrap_or(0)
    };
    goes.sort_by_key(|path| std::cmp::Reverse((path.matches('.').count(), number(path))));
    let goes = goes
        .into_iter()
        .map(|path| json!({ "do": "remove", "path": path }));
    let_go.chain(goes).collect()
}
