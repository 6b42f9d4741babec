//! The drawing of a gate: from above or from the road, at any opening, with the things on it and their places.

use super::{Answer, gate, of_job};
use crate::serve::body::Given;
use crate::serve::drawn::readable;
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use draw::Point;
use papers::live::{self, Live};
use quantity::{Quantity as _, Ratio};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

/// What is to be seen.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Wanted {
    /// The gate; the first one when missing.
    gate: Option<String>,
    /// How far it is open: 0 is closed, 1 open.
    #[serde(default)]
    open: f64,
    /// From where.
    #[serde(default)]
    view: View,
}

/// From where a gate is seen.
#[derive(Debug, Clone, Copy, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum View {
    /// From above.
    #[default]
    Plan,
    /// From the road.
    Elevation,
}

/// A gate as a screen shows it.
pub(super) async fn plan(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
    Given(wanted): Given<Wanted>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let site = readable(seen)?;
        let gate = gate(site, wanted.gate.as_deref())?;
        if !(0.0..=1.0).contains(&wanted.open) {
            return Err(Refusal::unusable(
                "A gate cannot be open so far.",
                "Write how far it is open, such as open=0.35.",
            )
            .at("open")
            .expected("0 for closed to 1 for open"));
        }
        let open = Ratio::from_base(wanted.open);
        let live = match wanted.view {
            View::Plan => live::plan(site, gate, open),
            View::Elevation => live::elevation(site, gate, open),
        };
        let mut told = told(&live);
        told["revision"] = json!(seen.revision);
        told["gate"] = json!(gate.id.as_str());
        Ok(Json(told))
    })
    .await
}

fn told(live: &Live) -> Value {
    let items = live.items.iter().map(|item| {
        json!({
            "path": item.path, "name": item.name, "kind": item.kind, "key": item.key, "at": meters(item.at),
            "place": item.place, "movable": item.movable, "carried_by": item.carried_by,
        })
    });
    let layers = live
        .layers
        .iter()
        .map(|layer| json!({ "class": layer.class, "name": layer.name, "shown": layer.shown }));
    let zones = live.zones.iter().map(
        |zone| json!({ "number": zone.number, "standing": zone.standing, "words": zone.words }),
    );
    json!({
        "title": live.title,
        "svg": live.svg,
        "box": { "low": meters(live.low), "high": meters(live.high) },
        "items": items.collect::<Vec<_>>(),
        "layers": layers.collect::<Vec<_>>(),
        "zones": zones.collect::<Vec<_>>(),
        "without_place": live.without_place,
    })
}

fn meters(point: Point) -> [f64; 2] {
    [point.x.base(), point.y.base()]
}
