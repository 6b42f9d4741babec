//! Pictures of a site as data: what stands over what in which units, and the drawing.

use super::{Answer, of_job};
use crate::serve::refusal::Refusal;
use crate::serve::workbench::Workbench;
use axum::Json;
use axum::extract::{Path, State};
use draw::{Axis, Chart, Levels};
use papers::pictures::{Group, Picture, Shape};
use serde_json::{Value, json};
use std::sync::Arc;

/// What can be looked at, group by group, and what cannot, with the lines to write.
pub(super) async fn list(
    State(workbench): State<Arc<Workbench>>,
    Path(name): Path<String>,
) -> Answer {
    of_job(workbench, name, move |bench, seen| {
        let groups = bench.pictured(seen)?;
        Ok(Json(json!({
            "revision": seen.revision,
            "groups": groups.iter().map(told).collect::<Vec<_>>(),
        })))
    })
    .await
}

fn told(group: &Group) -> Value {
    let pictures = group.pictures.iter();
    let pictures =
        pictures.map(|picture| json!({ "name": picture.name, "title": picture.shape.title() }));
    let untold = group.untold.iter();
    let untold =
        untold.map(|one| json!({ "title": one.title, "why": one.why, "write": one.write }));
    json!({
        "name": group.name,
        "title": group.title,
        "pictures": pictures.collect::<Vec<_>>(),
        "untold": untold.collect::<Vec<_>>(),
    })
}

/// One picture.
pub(super) async fn one(
    State(workbench): State<Arc<Workbench>>,
    Path((name, wanted)): Path<(String, String)>,
) -> Answer {
    of_job(workbench, name, move |bench, seen| {
        let groups = bench.pictured(seen)?;
        let mut pictures = groups.iter().flat_map(|group| &group.pictures);
        let picture = pictures.find(|picture| picture.name == wanted);
        let picture = picture.ok_or_else(|| {
            Refusal::absent(
                "There is no such picture of this site.",
                "Take a name from the list of pictures.",
            )
            .at(wanted)
        })?;
        let mut told = drawn(picture);
        told["revision"] = json!(seen.revision);
        Ok(Json(told))
    })
    .await
}

fn drawn(picture: &Picture) -> Value {
    let shape = &picture.shape;
    let mut told = match shape {
        Shape::Curves(chart) => curves(chart),
        Shape::Levels(levels) => rows(levels),
    };
    told["name"] = json!(picture.name);
    told["title"] = json!(shape.title());
    told["description"] = json!(shape.description());
    told["remarks"] = json!(shape.remarks());
    told
}

fn curves(chart: &Chart) -> Value {
    let series = chart.curves.iter().map(
        |curve| json!({ "name": curve.name, "part": curve.part.word(), "points": curve.points }),
    );
    let marks = chart.marks.iter();
    let marks = marks.map(|mark| json!({ "at": mark.at, "words": mark.words }));
    let spans = chart.spans.iter();
    let spans = spans.map(|span| json!({ "from": span.from, "to": span.to, "name": span.name }));
    json!({
        "kind": "curves",
        "axes": { "across": axis(&chart.across), "up": axis(&chart.up) },
        "series": series.collect::<Vec<_>>(),
        "marks": marks.collect::<Vec<_>>(),
        "stretches": spans.collect::<Vec<_>>(),
        "svg": chart.svg(),
    })
}

fn rows(levels: &Levels) -> Value {
    let rows = levels.rows.iter().map(|row| {
        json!({
            "name": row.name, "words": row.words, "values": row.values, "least": row.least, "fails": row.fails,
            "svg": levels.svg(row),
        })
    });
    json!({
        "kind": "levels",
        "axes": { "across": axis(&levels.axis) },
        "cases": levels.cases,
        "rows": rows.collect::<Vec<_>>(),
    })
}

fn axis(axis: &Axis) -> Value {
    json!({
        "what": axis.what(), "unit": axis.unit(), "from": axis.ends().0, "to": axis.ends().1,
        "digits": axis.digits(), "year": axis.is_year(),
    })
}
