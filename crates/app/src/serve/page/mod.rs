//! Pages: functions from values to markup, and what fetches the values.
//!
//! Every page works without script; modules take over parts of it by asking for the same markup again.

mod answers;
mod calculation;
mod calculations;
mod finding;
mod form;
mod jobs;
mod marks;
mod papers;
mod plan;
mod shell;
mod trouble;
mod workbench;

use super::answering::Answered;
use super::refusal::Refusal;
use super::store::Seen;
use super::workbench::Workbench;
use axum::Router;
use axum::extract::{Path, Query, State};
use axum::routing::get;
use maud::{Markup, html};
use plan::Shown;
use serde::Deserialize;
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
        .route("/jobs/{job}/plan", get(drawing))
        .route("/jobs/{job}/answers", get(all_answers))
        .route("/jobs/{job}/answers/{*finding}", get(one_answer))
        .route("/jobs/{job}/edit", get(edit))
        .route("/jobs/{job}/papers", get(all_papers))
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
        .blocking(move |_| {
            let (main, beside) = (&seen.files.main, &seen.files.beside);
            let form = which
                .of
                .and_then(|path| site::form(main, beside, &path, seen.units()));
            Bench {
                job: &job,
                seen: &seen,
                answered: answered.as_deref(),
                shown: &shown,
                records: &site::records(main, beside),
                form: form.as_ref(),
                panel: &panel,
            }
            .page()
        })
        .await?;
    Ok(page)
}

/// The drawing alone, for the module.
async fn drawing(
    State(house): House,
    Path(name): Path<String>,
    Query(shown): Query<Shown>,
) -> Page {
    let (seen, _) = job(&house, &name).await?;
    Ok(house
        .blocking(move |_| plan::drawn(&name, seen.site.as_ref(), &shown))
        .await?)
}

/// The answers alone, once they are there.
async fn all_answers(State(house): House, Path(name): Path<String>) -> Page {
    let (seen, answered) = house.answered(&name).await?;
    let title = workbench::title(&name, seen.site.as_ref());
    let shell = Shell {
        title: &format!("Answers for {title}"),
        place: Place::Job(&name, &title),
        styles: &["answers.css"],
        ..Shell::default()
    };
    Ok(shell.around(&html! {
        div class="leaf-of-paper" { h1 { (title) } h2 { "Answers" } (answers::list(&name, Some(&answered))) }
    }))
}

async fn one_answer(State(house): House, Path((name, wanted)): Path<(String, String)>) -> Page {
    let (seen, answered) = house.answered(&name).await?;
    let title = workbench::title(&name, seen.site.as_ref());
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
        &workbench::title(&name, seen.site.as_ref()),
    ))
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
