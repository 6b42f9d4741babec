//! What the site has of ways in the ground, for whoever draws one more.

use super::{Answer, of_job};
use crate::serve::drawn::readable;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use quantity::{Quantity as _, Word as _};
use serde_json::{Value, json};
use site::{Id, MadeBy, Site};
use std::sync::Arc;

/// Points, names and cables.
pub(super) async fn ways(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    of_job(workbench, name, move |_, seen| {
        let site = readable(seen)?;
        Ok(Json(told(site)))
    })
    .await
}

fn told(site: &Site) -> Value {
    let points = site.way_point.iter().map(|point| {
        let at = point
            .at
            .map(|at| [at.x.nominal().base(), at.y.nominal().base()]);
        json!({ "id": point.id.as_str(), "at": at, "serves": names(&point.serves) })
    });
    let cables = site.cable.iter().map(|cable| {
        let (from, to) = (cable.from.as_str(), cable.to.as_str());
        json!({ "id": cable.id.as_str(), "from": from, "to": to, "route": names(&cable.route) })
    });
    let devices = site.device.iter().map(|it| &it.id);
    let ends = devices
        .chain(site.operator.iter().map(|it| &it.id))
        .chain(site.enclosure.iter().map(|it| &it.id))
        .chain(site.supply.iter().map(|it| &it.id))
        .chain(site.battery.iter().map(|it| &it.id))
        .chain(site.solar_panel.iter().map(|it| &it.id));
    json!({
        "points": points.collect::<Vec<_>>(),
        "ways": names(site.way.iter().map(|way| &way.id)),
        "conduits": names(site.conduit.iter().map(|conduit| &conduit.id)),
        "cables": cables.collect::<Vec<_>>(),
        "ends": names(ends),
        "made_by": MadeBy::ALL.iter().map(|one| one.word()).collect::<Vec<_>>(),
    })
}

fn names<'s>(ids: impl IntoIterator<Item = &'s Id>) -> Vec<&'s str> {
    ids.into_iter().map(Id::as_str).collect()
}
