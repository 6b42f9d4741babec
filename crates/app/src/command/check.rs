//! `gatewright check`: every question of the trade, answered for a site, worst first.

use super::kept::{answer_by_walks, kept};
use super::threads;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{explained, listed, nearest_name, questions_listed};
use design::{Answers, Finding, LookedUpInVain};
use serde_json::json;
use site::{Loaded, Problems, Site};
use std::path::Path;

/// Checks a site and prints what was asked for.
pub(crate) fn run(
    site: &Path,
    explain: Option<&str>,
    questions: bool,
    as_json: bool,
) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let site_file = folder.site_file.clone();
    let Loaded { site, problems } = folder.load();
    let answers = site.as_ref().map(|site| answered(site, &site_file));
    if as_json {
        say(&to_json(site.as_ref(), answers.as_ref(), &problems));
        return Ok(outcome(answers.as_ref(), &problems));
    }
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    for entry in answers
        .iter()
        .flat_map(|answers| &answers.looked_up_in_vain)
    {
        complain(&format_args!("{}\n", in_vain(entry)));
    }
    let (Some(site), Some(answers)) = (&site, &answers) else {
        return Ok(Outcome::BadInput);
    };
    match explain {
        Some("all") => answers
            .findings
            .iter()
            .for_each(|finding| say(&explained(finding))),
        Some(name) => say(&explained(named(answers, name)?)),
        None => say(&listed(site, answers)),
    }
    if questions {
        say(&questions_listed(&answers.coverage));
    }
    Ok(outcome(Some(answers), &problems))
}

/// What is asked of a site, with the answers of walks that were kept beside it.
fn answered(site: &Site, site_file: &Path) -> Answers {
    let mut answers = design::answers_on(site, threads());
    let walks = kept(site, site_file).unwrap_or_else(|complaint| {
        complain(&format_args!("{complaint}\n"));
        Vec::new()
    });
    answer_by_walks(&mut answers, site, &walks);
    answers
}

fn in_vain(entry: &LookedUpInVain) -> String {
    let LookedUpInVain { source, file, line } = entry;
    format!(
        "looked up in vain: {source} ({file}:{line}): no answer here rests on a work of that name from memory. Write the name as the finding does: --explain shows it."
    )
}

fn outcome(answers: Option<&Answers>, problems: &Problems) -> Outcome {
    match answers {
        _ if problems.any_wrong() => Outcome::BadInput,
        None => Outcome::BadInput,
        Some(answers) if answers.all_hold() => Outcome::Holds,
        Some(_) => Outcome::Open,
    }
}

/// The finding of that name, or else a complaint that offers the nearest one.
fn named<'a>(answers: &'a Answers, name: &str) -> Result<&'a Finding, Complaint> {
    answers
        .findings()
        .find(|finding| finding.name() == name)
        .ok_or_else(|| {
            let names: Vec<String> = answers.findings().map(Finding::name).collect();
            let offer = nearest_name(name, &names)
                .map(|near| format!(" Nearest: {near}"))
                .unwrap_or_default();
            Complaint(format!("There is no finding named {name}.{offer}"))
        })
}

fn to_json(site: Option<&site::Site>, answers: Option<&Answers>, problems: &Problems) -> String {
    let all = json!({
        "site": site.map(|site| site.site.name.to_string()),
        "problems": problems,
        "findings": answers.map(|answers| answers.findings().collect::<Vec<_>>()),
        "coverage": answers.map(|answers| &answers.coverage),
        "looked_up_in_vain": answers.map(|answers| &answers.looked_up_in_vain),
    });
    format!("{all:#}")
}
