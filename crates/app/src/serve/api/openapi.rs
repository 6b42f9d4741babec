//! The interface described for programs: every address, what it takes and gives.

use axum::Json;
use serde_json::{Map, Value, json};

/// One thing that can be asked: method, address, what it does, what is sent, what is answered.
type Route = (
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    &'static str,
);

/// Everything that can be asked. A test asks for each of them.
const ROUTES: &[Route] = &[
    (
        "get",
        "/api/jobs",
        "The jobs of the folder, the one that was touched last first.",
        "",
        "Jobs",
    ),
    (
        "post",
        "/api/jobs",
        "Makes a job from a survey, another job, or a text.",
        "NewJob",
        "State",
    ),
    (
        "post",
        "/api/files",
        "The files beside it that the text of a site file asks for, each with what it is for.",
        "SiteText",
        "Any",
    ),
    (
        "get",
        "/api/survey",
        "The questions of the survey.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}",
        "What the files of a job say now.",
        "",
        "State",
    ),
    ("get", "/api/jobs/{job}/site.toml", "The site file.", "", ""),
    (
        "post",
        "/api/jobs/{job}/edits",
        "Makes changes to the revision that is expected, and keeps all or none. What others name is not taken out alone: that is refused with 422, which names them; `removal` tells the changes that take it out with them.",
        "Edits",
        "State",
    ),
    (
        "post",
        "/api/jobs/{job}/undo",
        "Takes the last change back.",
        "Step",
        "State",
    ),
    (
        "post",
        "/api/jobs/{job}/redo",
        "Makes the change again that was taken back.",
        "Step",
        "State",
    ),
    (
        "post",
        "/api/jobs/{job}/read",
        "How a value would be understood; nothing is written.",
        "Reading",
        "Understood",
    ),
    (
        "post",
        "/api/jobs/{job}/trial",
        "Which findings would turn with these changes; nothing is kept.",
        "Edits",
        "Trial",
    ),
    (
        "get",
        "/api/jobs/{job}/answers",
        "Every answer, by the questions of the trade and worst first; waits until the newest are there.",
        "",
        "Answers",
    ),
    (
        "get",
        "/api/jobs/{job}/answers/{finding}",
        "One answer in full, with its working and its sources.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/form",
        "The records of a site; with `path`, one record with its keys.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/parts",
        "The entries of the parts files that the record at `path` could be bought as, with what each brings.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/ways",
        "Points, ways, conduits and cables, for whoever draws one more way.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/removal",
        "What goes with the thing at `path` when it is taken out, what lets go of its name, in words and as the changes that do it; nothing is changed.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/plan",
        "A gate from above or, with view=elevation, from the road, at any opening.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/papers",
        "The papers that were made last.",
        "",
        "Any",
    ),
    (
        "post",
        "/api/jobs/{job}/papers",
        "Begins to make the papers.",
        "Papers",
        "Begun",
    ),
    ("get", "/api/jobs/{job}/papers/{file}", "One paper.", "", ""),
    (
        "get",
        "/api/jobs/{job}/pictures",
        "The pictures of a site, group by group, and what cannot be drawn, with the lines to write.",
        "",
        "Pictures",
    ),
    (
        "get",
        "/api/jobs/{job}/pictures/{name}",
        "One picture: its axes with their units, its curves or rows, its marks, and the drawing.",
        "",
        "Picture",
    ),
    (
        "get",
        "/api/jobs/{job}/walks",
        "The walk test of each gate: what was kept, when, and whether something that it rests on has changed since.",
        "",
        "Walks",
    ),
    (
        "post",
        "/api/jobs/{job}/walks",
        "Begins to walk people past the gates.",
        "Walking",
        "Begun",
    ),
    (
        "get",
        "/api/jobs/{job}/walks/{gate}",
        "The walk test of one gate, with where on the plan somebody is touched.",
        "",
        "Any",
    ),
    (
        "get",
        "/api/jobs/{job}/walks/{gate}/{number}",
        "One walk by its number: where leaf and body are each hundredth of a second, and what the devices and the controller do.",
        "",
        "Walk",
    ),
    (
        "get",
        "/api/jobs/{job}/events",
        "What happens to a job, as server-sent events: changed, answered, progress.",
        "",
        "",
    ),
    (
        "get",
        "/api/events",
        "What happens to any job, as server-sent events.",
        "",
        "",
    ),
    (
        "get",
        "/api/tasks/{id}",
        "How far a task is.",
        "",
        "Progress",
    ),
    (
        "delete",
        "/api/tasks/{id}",
        "Has a task stop: walking at once, making papers after the paper that is being made.",
        "",
        "Progress",
    ),
    ("get", "/api/calculations", "Every calculation.", "", "Any"),
    (
        "get",
        "/api/calculations/{name}",
        "What a calculation takes and gives; with inputs, what comes out, forward or, with one input written as ?, backward.",
        "",
        "Any",
    ),
    (
        "post",
        "/api/calculations/{name}",
        "The same, with the inputs as a body.",
        "Inputs",
        "Any",
    ),
    ("get", "/api/openapi.json", "This description.", "", "Any"),
];

/// The description.
pub(super) async fn description() -> Json<Value> {
    let mut paths = Map::new();
    for route in ROUTES {
        let (method, path, ..) = *route;
        let at = paths.entry(path).or_insert_with(|| json!({}));
        at[method] = operation(route);
    }
    Json(json!({
        "openapi": "3.1.0",
        "info": {
            "title": "Gatewright workbench",
            "version": env!("CARGO_PKG_VERSION"),
            "description": "Speaks to this computer alone. What is sent is JSON and marked as such. Results support a competent person; local codes and the authority having jurisdiction prevail.",
        },
        "paths": paths,
        "components": { "schemas": schemas() },
    }))
}

fn operation(&(_, path, does, takes, gives): &Route) -> Value {
    let named = path.split('/').filter_map(|step| {
        let name = step.strip_prefix('{')?.strip_suffix('}')?;
        Some(
            json!({ "name": name, "in": "path", "required": true, "schema": { "type": "string" } }),
        )
    });
    let mut parameters: Vec<Value> = named.collect();
    for key in ["gate", "open", "view"] {
        if path.ends_with("/plan") {
            parameters.push(json!({ "name": key, "in": "query", "schema": { "type": "string" } }));
        }
    }
    if ["/form", "/parts", "/removal"]
        .iter()
        .any(|end| path.ends_with(end))
    {
        parameters.push(json!({ "name": "path", "in": "query", "schema": { "type": "string" } }));
    }
    let given = if gives.is_empty() {
        json!({ "description": "As a file or a stream." })
    } else {
        json!({ "description": "As said.", "content": content(gives) })
    };
    let mut operation = json!({
        "summary": does,
        "parameters": parameters,
        "responses": {
            "2XX": given,
            "4XX": { "description": "Refused.", "content": content("Refusal") },
            "5XX": { "description": "Not done.", "content": content("Refusal") },
        },
    });
    if !takes.is_empty() {
        operation["requestBody"] = json!({ "required": true, "content": content(takes) });
    }
    operation
}

fn content(schema: &str) -> Value {
    json!({ "application/json": { "schema": { "$ref": format!("#/components/schemas/{schema}") } } })
}

fn schemas() -> Value {
    let text = json!({ "type": "string" });
    let count = json!({ "type": "integer", "minimum": 0 });
    let list = |of: &Value| json!({ "type": "array", "items": of });
    let any = json!({});
    let edit = object(
        &[
            ("do", json!({ "enum": ["set", "add", "remove"] })),
            ("path", text.clone()),
            ("value", text.clone()),
        ],
        &["do", "path"],
    );
    json!({
        "Any": {},
        "Refusal": object(
            &[("what", text.clone()), ("where", text.clone()), ("expected", text.clone()), ("do", text.clone()), ("now", any.clone())],
            &["what", "where", "expected", "do"],
        ),
        "Jobs": list(&object(
            &[
                ("name", text.clone()), ("title", text.clone()), ("touched", text.clone()), ("problems", count.clone()),
                ("ready", json!({ "type": "boolean" })), ("holds", count.clone()), ("fails", count.clone()), ("unknown", count.clone()),
                ("worst", json!({ "type": ["string", "null"] })), ("refused", any.clone()),
            ],
            &["name", "title", "touched", "problems", "ready", "holds", "fails", "unknown"],
        )),
        "State": object(
            &[
                ("revision", text.clone()), ("title", json!({ "type": ["string", "null"] })), ("problems", list(&any)), ("unread", json!({ "type": ["string", "null"] })),
                ("undo", count.clone()), ("redo", count.clone()), ("text", text.clone()), ("understood", list(&any)), ("name", text.clone()),
            ],
            &["revision", "problems", "undo", "redo"],
        ),
        "Edits": object(&[("expects", text.clone()), ("edits", list(&edit))], &["expects", "edits"]),
        "Step": object(&[("expects", text.clone())], &[]),
        "Reading": object(&[("path", text.clone()), ("value", text.clone())], &["path", "value"]),
        "Understood": object(&[("written", text.clone()), ("text", text.clone()), ("known", text.clone())], &["written", "text", "known"]),
        "Trial": object(&[("revision", text.clone()), ("problems", list(&any)), ("turned", list(&any)), ("gone", list(&text))], &["revision", "turned"]),
        "Answers": object(
            &[("revision", text.clone()), ("refused", json!({ "type": ["string", "null"] })), ("groups", list(&any)), ("findings", list(&any))],
            &["revision", "groups", "findings"],
        ),
        "Papers": object(&[("date", text.clone())], &[]),
        "Pictures": object(&[("revision", text.clone()), ("groups", list(&any))], &["revision", "groups"]),
        "Picture": object(
            &[
                ("name", text.clone()), ("title", text.clone()), ("description", text.clone()),
                ("kind", json!({ "enum": ["curves", "levels"] })), ("axes", any.clone()), ("series", list(&any)),
                ("rows", list(&any)), ("cases", list(&text)), ("marks", list(&any)), ("stretches", list(&any)),
                ("remarks", list(&text)), ("svg", text.clone()),
            ],
            &["name", "title", "kind", "axes", "remarks"],
        ),
        "Walks": object(
            &[("revision", text.clone()), ("task", json!({ "type": ["integer", "null"] })), ("unread", json!({ "type": ["string", "null"] })), ("gates", list(&any))],
            &["revision", "gates"],
        ),
        "Walking": object(
            &[("walks", count.clone()), ("gate", text.clone()), ("keep", json!({ "type": "boolean" }))],
            &[],
        ),
        "Walk": object(&[("trace", any.clone()), ("stage", any.clone())], &["trace", "stage"]),
        "Begun": object(&[("task", count.clone())], &["task"]),
        "Progress": object(
            &[
                ("task", count.clone()), ("job", text.clone()), ("what", text.clone()),
                ("state", json!({ "enum": ["running", "done", "stopped", "failed"] })),
                ("done", count.clone()), ("of", count), ("says", text.clone()), ("gives", any.clone()),
            ],
            &["task", "job", "what", "state", "done", "of", "says"],
        ),
        "SiteText": object(&[("text", text.clone())], &["text"]),
        "Inputs": { "type": "object", "additionalProperties": text },
        "NewJob": object(
            &[
                ("name", text.clone()),
                ("from", json!({ "oneOf": [
                    object(&[("survey", any)], &["survey"]),
                    object(&[("job", text.clone())], &["job"]),
                    object(&[("text", text.clone())], &["text"]),
                ]})),
                ("files", json!({ "type": "object", "additionalProperties": text })),
            ],
            &["name", "from"],
        ),
    })
}

fn object(properties: &[(&str, Value)], required: &[&str]) -> Value {
    let properties: Map<String, Value> = properties
        .iter()
        .map(|(name, schema)| ((*name).to_owned(), schema.clone()))
        .collect();
    json!({ "type": "object", "properties": properties, "required": required })
}
