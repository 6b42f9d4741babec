//! `gatewright plan`: the tasks of a site in the order in which one pair of hands ends soonest.

use super::pack::{issue_day, put};
use crate::arguments::PlanArguments;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{planned, unread};
use design::plan::{Wish, WorkPlan};
use papers::compose::Issue;
use serde_json::json;
use site::{Date, Loaded, Site};
use std::path::Path;

/// Plans the job, prints the plan, and writes its papers where a folder was given.
pub(crate) fn run(arguments: &PlanArguments) -> Result<Outcome, Complaint> {
    let wish = Wish {
        from: arguments.from.as_deref().map(day).transpose()?,
        lost: arguments
            .lost
            .iter()
            .map(|text| day(text))
            .collect::<Result<_, _>>()?,
    };
    let folder = Folder::read(&arguments.site)?;
    let fingerprint = folder.fingerprint();
    let Loaded { site, problems } = folder.load();
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    let Some(site) = &site else {
        return Ok(Outcome::BadInput);
    };
    let plan = match WorkPlan::of(site, &wish) {
        Ok(plan) => plan,
        Err(finding) => {
            if arguments.json {
                say(&format_args!("{:#}", json!({ "finding": finding })));
            } else {
                say(&unread(site.site.name.as_str(), "work plan", &finding));
            }
            return Ok(if problems.any_wrong() {
                Outcome::BadInput
            } else {
                Outcome::Open
            });
        }
    };
    let shown = plan.shown();
    if arguments.json {
        say(&format_args!("{:#}", json!({ "plan": shown })));
    } else {
        say(&planned(site.site.name.as_str(), &shown));
    }
    if let Some(output) = &arguments.output {
        let issue = Issue {
            day: issue_day(arguments.date.as_deref())?,
            maker: format!("gatewright {}", env!("CARGO_PKG_VERSION")),
            fingerprint,
            attachments: Vec::new(),
            walks: Vec::new(),
            since: None,
        };
        write(site, &plan, &issue, output)?;
    }
    Ok(if problems.any_wrong() {
        Outcome::BadInput
    } else {
        Outcome::Holds
    })
}

/// Writes the document and the bar chart.
fn write(site: &Site, plan: &WorkPlan<'_>, issue: &Issue, output: &Path) -> Result<(), Complaint> {
    let made = papers::job::papers(site, plan, issue)
        .map_err(|error| Complaint(format!("The bar chart cannot be made: {error}")))?;
    let pdf = papers::job::pdf(&made)
        .map_err(|error| Complaint(format!("The pages cannot be set: {error}")))?;
    std::fs::create_dir_all(output)
        .map_err(|error| Complaint::about(output, format_args!("cannot be made ({error})")))?;
    let unit = match site.site.unit_system() {
        quantity::UnitSystem::UsCustomary => draw::DxfUnit::Inches,
        quantity::UnitSystem::Si => draw::DxfUnit::Millimeters,
    };
    put(output, "plan.pdf", &pdf)?;
    let chart = &made.chart;
    put(
        output,
        &format!("{}.svg", chart.name),
        chart.drawing.svg().as_bytes(),
    )?;
    put(
        output,
        &format!("{}.dxf", chart.name),
        chart.drawing.dxf(unit).as_bytes(),
    )
}

/// A day as it was written.
fn day(text: &str) -> Result<Date, Complaint> {
    Date::read(text)
        .ok_or_else(|| Complaint(format!("`{text}` is not a date; write it like 2026-05-04.")))
}
