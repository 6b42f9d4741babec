//! A change that a page makes, answered with what the page shows of it: one way there and back.

use super::plan::Shown;
use super::{Held, House, Since, changes_since, job};
use crate::serve::api::edits::{self, Edits, Step};
use crate::serve::body::Sent;
use crate::serve::refusal::Refusal;
use axum::Json;
use axum::extract::{Path, Query};
use serde_json::{Value, json};
use std::time::Duration;

/// How long answers may take to come along; a page asks for those that take longer.
const SOON: Duration = Duration::from_millis(60);

type Answer = Result<Json<Value>, Refusal>;
/// What the page shows: its drawing, the digits of it that it has, and of which state its answers are.
type Beside = (Query<Shown>, Query<Held>, Query<Since>);

/// Makes changes and keeps them.
pub(super) async fn edits(
    house: House,
    Path(name): Path<String>,
    beside: Beside,
    sent: Sent<Edits>,
) -> Answer {
    let told = edits::make(house.clone(), Path(name.clone()), sent).await?;
    shown(house, name, beside, told).await
}

/// Takes the last change back.
pub(super) async fn undo(
    house: House,
    Path(name): Path<String>,
    beside: Beside,
    sent: Sent<Step>,
) -> Answer {
    let told = edits::undo(house.clone(), Path(name.clone()), sent).await?;
    shown(house, name, beside, told).await
}

/// Makes the change again that was taken back.
pub(super) async fn redo(
    house: House,
    Path(name): Path<String>,
    beside: Beside,
    sent: Sent<Step>,
) -> Answer {
    let told = edits::redo(house.clone(), Path(name.clone()), sent).await?;
    shown(house, name, beside, told).await
}

/// Puts the drawing beside what was told, nothing where the page has it, and what is different in the list of answers, where
/// that is known soon.
async fn shown(
    house: House,
    name: String,
    (Query(shown), Query(held), Query(since)): Beside,
    Json(mut told): Json<Value>,
) -> Answer {
    // What is kept is told as kept, whatever becomes of the rest.
    let Ok((seen, _)) = job(&house, &name).await else {
        return Ok(Json(told));
    };
    let drawn_of = name.clone();
    let drawing = house.blocking(move |bench| {
        let drawn = bench.plans().looked_at(&drawn_of, &seen, &shown);
        held.lacks(&drawn).map(|drawing| drawing.0.clone())
    });
    let changes = tokio::time::timeout(SOON, changes_since(&house, &name, since));
    let (drawing, changes) = tokio::join!(drawing, changes);
    if let Ok(drawing) = drawing {
        told["drawing"] = json!(drawing);
    }
    if let Ok(Ok(changes)) = changes {
        told["changes"] = changes;
    }
    Ok(Json(told))
}
