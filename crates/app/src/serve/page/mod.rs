//! Pages: functions from values to markup, and what fetches the values.
//!
//! Every page works without script; modules take over parts of it by asking for the same markup again.

mod after;
mod answers;
mod calculation;
mod calculations;
mod finding;
mod form;
mod jobs;
mod marks;
mod papers;
mod parts;
mod pictures;
mod plan;
mod player;
mod problems;
mod replay;
mod shell;
mod trouble;
mod workbench;

pub(super) use answers::Listed;
pub(super) use calculations::capital;
pub(super) use plan::Plans;

use super::answering::Answered;
use super::refusal::Refusal;
use super::store::Seen;
use super::walked;
use super::workbench::Workbench;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse as _, Response};
use axum::routing::{get, post};
use axum::{Json, Router};
use maud::{Markup, html};
use plan::Shown;
use serde::Deserialize;
use serde_json::json;
use sha2::{Digest as _, Sha256};
use shell::{Place, Shell};
use std::sync::Arc;
use trouble::Trouble;
use workbench::Bench;

/// A page, or why there is none.
type Page = Result<Markup, Trouble>;
/// What every handler works with.
type House = State<Arc<Workbench>>;

/// Every page.
pub(super) fn routes() -> Router<Arc<Workbench>> {
    Router::new()
        .route("/", get(all_jobs))
        .route("/jobs/{job}", get(bench))
        .route("/jobs/{job}/edits", post(after::edits))
        .route("/jobs/{job}/undo", post(after::undo))
        .route("/jobs/{job}/redo", post(after::redo))
        .route("/jobs/{job}/plan", get(drawing))
        .route("/jobs/{job}/answers", get(all_answers))
        .route("/jobs/{job}/changes", get(changes))
        .route("/jobs/{job}/answers/{*finding}", get(one_answer))
        .route("/jobs/{job}/edit", get(edit))
        .route("/jobs/{job}/form", get(form_alone))
        .route("/jobs/{job}/parts", get(parts))
        .route("/jobs/{job}/papers", get(all_papers))
        .route("/jobs/{job}/pictures", get(all_pictures))
        .route("/jobs/{job}/walk", get(walk_test))
        .route("/calculations", get(all_calculations))
        .route("/calculations/{name}", get(one_calculation))
}

async fn all_jobs(State(house): House) -> Page {
    let jobs = house.blocking(Workbench::jobs).await?;
    Ok(jobs::page(&jobs))
}

/// What a job says, and its answers where they are at hand.
type Job = (Arc<Seen>, Option<Arc<Answered>>);

async fn job(house: &Arc<Workbench>, name: &str) -> Result<Job, Refusal> {
    let name = name.to_owned();
    house
        .blocking(move |bench| {
            let job = bench.job(&name)?;
            let seen = bench.look(&job)?;
            let known = job.answered().borrow().clone();
            let known = known.filter(|known| known.revision == seen.revision);
            Ok((seen, known))
        })
        .await?
}

async fn bench(State(house): House, Path(name): Path<String>, Query(shown): Query<Shown>) -> Page {
    whole(&house, &name, &shown, &Which::default(), "plan").await
}

/// Which record is to be changed.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
struct Which {
    of: Option<String>,
}

async fn edit(State(house): House, Path(name): Path<String>, Query(which): Query<Which>) -> Page {
    whole(&house, &name, &Shown::default(), &which, "edit").await
}

async fn whole(
    house: &Arc<Workbench>,
    name: &str,
    shown: &Shown,
    which: &Which,
    panel: &str,
) -> Page {
    let (seen, answered) = job(house, name).await?;
    let (job, shown, which, panel) = (
        name.to_owned(),
        shown.clone(),
        which.clone(),
        panel.to_owned(),
    );
    let page = house
        .blocking(move |bench| {
            let plan = bench.plans().looked_at(&job, &seen, &shown);
            Bench {
                job: &job,
                seen: &seen,
                answered: answered.as_deref(),
                plan: &plan.1,
                of: which.of.as_deref(),
                panel: &panel,
            }
            .page()
        })
        .await?;
    Ok(page)
}

/// A part of a page, for the module that has one already.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
struct Held {
    /// Digits of the part that it has.
    have: String,
}

impl Held {
    /// The part, where the module has another.
    fn lacks<'p>(&self, (digits, part): &'p (String, Markup)) -> Option<&'p Markup> {
        (self.have != *digits).then_some(part)
    }
}

/// A part of a page under its name, with the digits that tell it from every other.
fn marked(id: &str, inside: &Markup) -> (String, Markup) {
    let digits = crate::folder::in_digits(&Sha256::digest(&inside.0)[..8]);
    let part = html! { div id=(id) data-digits=(digits) { (inside) } };
    (digits, part)
}

/// A part of a page as it is now; nothing where the module has the same.
fn part(held: &Held, part: &(String, Markup)) -> Response {
    let lacked = held.lacks(part).cloned();
    lacked.map_or_else(
        || StatusCode::NO_CONTENT.into_response(),
        Markup::into_response,
    )
}

/// The drawing alone, for the module.
async fn drawing(
    State(house): House,
    Path(name): Path<String>,
    Query(shown): Query<Shown>,
    Query(held): Query<Held>,
) -> Result<Response, Trouble> {
    let (seen, _) = job(&house, &name).await?;
    Ok(house
        .blocking(move |bench| part(&held, &bench.plans().looked_at(&name, &seen, &shown)))
        .await?)
}

/// The form alone, for the module.
async fn form_alone(
    State(house): House,
    Path(name): Path<String>,
    Query(which): Query<Which>,
    Query(held): Query<Held>,
) -> Result<Response, Trouble> {
    let (seen, _) = job(&house, &name).await?;
    Ok(house
        .blocking(move |_| part(&held, &form::drawer(&name, &seen, which.of.as_deref())))
        .await?)
}

/// The entries of the parts files that a record could be bought as.
async fn parts(State(house): House, Path(name): Path<String>, Query(which): Query<Which>) -> Page {
    let (seen, _) = job(&house, &name).await?;
    let path = which.of.unwrap_or_default();
    Ok(house.blocking(move |_| parts::list(&seen, &path)).await?)
}

/// The state that a list of answers is of.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(default)]
struct Since {
    since: String,
}

/// What is different in the list of answers since a state, once the newest are there.
async fn changes(
    State(house): House,
    Path(name): Path<String>,
    Query(since): Query<Since>,
) -> Result<Response, Refusal> {
    let told = changes_since(&house, &name, since).await?;
    Ok(Json(told).into_response())
}

async fn changes_since(
    house: &Arc<Workbench>,
    name: &str,
    Since { since }: Since,
) -> Result<serde_json::Value, Refusal> {
    let (_, answered) = house.answered(name).await?;
    let job = name.to_owned();
    let told = house.blocking(move |bench| {
        let before = bench.job(&job)?.shown(&since);
        let both_are_lists =
            |before: &Arc<Answered>| before.refused.is_none() && answered.refused.is_none();
        Ok::<_, Refusal>(match before.filter(both_are_lists) {
            Some(before) => answers::changes(&before, &answered),
            None if since == answered.revision => {
                json!({ "revision": answered.revision, "same": true })
            }
            None => json!({ "revision": answered.revision, "whole": true }),
        })
    });
    told.await?
}

/// The answers alone, once they are there.
async fn all_answers(State(house): House, Path(name): Path<String>) -> Page {
    let (seen, answered) = house.answered(&name).await?;
    let title = workbench::title(&name, seen.site.as_deref());
    let shell = Shell {
        title: &format!("Answers for {title}"),
        place: Place::Job(&name, &title),
        styles: &["answers.css"],
        ..Shell::default()
    };
    Ok(shell.around(&html! {
        div class="leaf-of-paper" { h1 { (title) } h2 { "Answers" } (answers::list(Some(&answered))) }
    }))
}

async fn one_answer(State(house): House, Path((name, wanted)): Path<(String, String)>) -> Page {
    let (seen, answered) = house.answered(&name).await?;
    let title = workbench::title(&name, seen.site.as_deref());
    let found = answered
        .answers
        .findings
        .iter()
        .find(|it| it.name() == wanted);
    let finding = found.ok_or_else(|| {
        Refusal::absent(
            "There is no such answer any more.",
            "Look at the list of answers again.",
        )
    })?;
    let shell = Shell {
        title: &finding.ask,
        place: Place::Job(&name, &title),
        styles: &["answers.css"],
        ..Shell::default()
    };
    Ok(shell.around(&html! {
        div class="leaf-of-paper" {
            p { a href={ "/jobs/" (name) } { "Back to the workbench" } }
            h1 { (finding.subject.name) }
            (finding::said(finding))
            h2 class="unseen" { "The answer" }
            h3 class="unseen" { "Working and source" }
            (finding::in_full(&name, finding))
        }
    }))
}

async fn all_papers(State(house): House, Path(name): Path<String>) -> Page {
    let (seen, _) = job(&house, &name).await?;
    Ok(papers::page(
        &name,
        &workbench::title(&name, seen.site.as_deref()),
        seen.files.walks_unread().as_deref(),
    ))
}

async fn all_pictures(State(house): House, Path(name): Path<String>) -> Page {
    let (seen, _) = job(&house, &name).await?;
    let drawn = house
        .blocking(move |bench| {
            let groups = bench.pictured(&seen)?;
            let title = workbench::title(&name, seen.site.as_deref());
            Ok::<_, Refusal>(pictures::page(&name, &title, &seen.revision, &groups))
        })
        .await??;
    Ok(drawn)
}

async fn walk_test(
    State(house): House,
    Path(name): Path<String>,
    Query(which): Query<replay::Which>,
) -> Page {
    let (seen, _) = job(&house, &name).await?;
    let drawn = house
        .blocking(move |bench| {
            let tests = walked::tests(bench, &name, &seen)?;
            let title = workbench::title(&name, seen.site.as_deref());
            Ok::<_, Refusal>(replay::page(
                (&name, &title),
                &seen.revision,
                &tests,
                &which,
            ))
        })
        .await??;
    Ok(drawn)
}

async fn all_calculations() -> Markup {
    calculations::page()
}

async fn one_calculation(
    State(house): House,
    Path(name): Path<String>,
    Query(pairs): Query<Vec<(String, String)>>,
) -> Page {
    let calculation = formula::find(&name).ok_or_else(|| {
        Refusal::absent(
            format!("There is no calculation named {name}."),
            "Choose one from the list of calculations.",
        )
    })?;
    let question = calculation::Question::of(calculation, pairs);
    Ok(house
        .blocking(move |_| calculation::page(calculation, &question))
        .await?)
}
