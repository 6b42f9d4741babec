//! The day sheet: lifts with their recommended weight, and the steps of hanging a leaf with their holds.

use crate::view::{DaySheetView, HangingRow, HangingView, LiftRow};
use design::{Figure, Finding};
use quantity::{Measured, Quantity, UnitSystem, print_measured};
use site::{Hanging, Hold, Lift, Origin, Site};
use std::sync::Arc;

/// Blank to be filled in on the day.
const TO_DECIDE: &str = "not decided: split it, use gear, or get a second person";

/// The day sheet; nothing where the site lists neither lifts nor hangings.
pub(super) fn view(site: &Site, findings: &[Arc<Finding>]) -> Option<DaySheetView> {
    let units = site.site.unit_system();
    let lifts: Vec<LiftRow> = site
        .lift
        .iter()
        .map(|lift| {
            row(
                lift,
                found(findings, "lifting-each-task", &lift.origin),
                units,
            )
        })
        .collect();
    let hangings: Vec<HangingView> = site
        .hanging
        .iter()
        .map(|hanging| of_leaf(site, hanging, findings))
        .collect();
    (!lifts.is_empty() || !hangings.is_empty()).then_some(DaySheetView { lifts, hangings })
}

/// The first finding of a question about a record or what lies below it.
fn found<'a>(findings: &'a [Arc<Finding>], question: &str, origin: &Origin) -> Option<&'a Finding> {
    let mut findings = findings.iter().map(AsRef::as_ref);
    findings.find(|finding| {
        finding.question == question && finding.subject.path.starts_with(&origin.path)
    })
}

fn row(lift: &Lift, finding: Option<&Finding>, units: UnitSystem) -> LiftRow {
    let limit = finding.and_then(|finding| extreme(finding, "limit", f64::lt));
    let index = finding.and_then(|finding| extreme(finding, "index", f64::gt));
    let index = index.and_then(|index| index.value);
    let gear = lift.with.as_ref().map(|with| {
        let rated = said("rated for", lift.gear_rating.as_ref(), units);
        let rated = rated.map_or(String::new(), |rated| format!(", {rated}"));
        format!("with {with}{rated}")
    });
    let how = match (index, gear) {
        (Some(index), None) if index <= 1.0 => "alone".to_owned(),
        (Some(index), Some(gear)) if index <= 1.0 => format!("alone, or {gear}"),
        (_, Some(gear)) => gear,
        (Some(_), None) => TO_DECIDE.to_owned(),
        (None, None) => "not known yet; see the findings".to_owned(),
    };
    LiftRow {
        what: lift.what.to_string(),
        mass: lift
            .mass
            .as_ref()
            .map_or_else(|| "weigh it".to_owned(), |mass| print_measured(mass, units)),
        limit: limit.map_or(String::new(), |limit| limit.text.clone()),
        index: index.map_or(String::new(), |index| format!("{index:.1}")),
        how,
    }
}

/// The result of this name that is the worst of all steps: at the start of the lift or at its end.
fn extreme<'a>(
    finding: &'a Finding,
    label: &str,
    is_worse: fn(&f64, &f64) -> bool,
) -> Option<&'a Figure> {
    let results = finding.working.iter().flat_map(|step| &step.gives);
    let named = results
        .map(|line| &line.value)
        .filter(|value| value.label == label);
    named.reduce(|worst, value| match (worst.value, value.value) {
        (Some(known), Some(new)) if is_worse(&new, &known) => value,
        _ => worst,
    })
}

fn of_leaf(site: &Site, hanging: &Hanging, findings: &[Arc<Finding>]) -> HangingView {
    let units = site.site.unit_system();
    let leaves = || site.gate.iter().flat_map(|gate| &gate.leaf);
    let leaf = hanging
        .leaf
        .as_ref()
        .and_then(|id| leaves().find(|leaf| leaf.id == *id));
    let mass = leaf.and_then(|leaf| leaf.mass.as_ref());
    let title = match (&hanging.leaf, mass) {
        (Some(leaf), Some(mass)) => {
            format!(
                "{}: leaf {leaf}, {}",
                hanging.id,
                print_measured(mass, units)
            )
        }
        (Some(leaf), None) => format!("{}: leaf {leaf}, mass not given", hanging.id),
        (None, _) => hanging.id.to_string(),
    };
    let wind = hanging.stops_at_wind.as_ref().map_or_else(
        || "The wind in which the work stops is not given.".to_owned(),
        |wind| {
            format!(
                "Above a wind of {} the work stops.",
                print_measured(wind, units)
            )
        },
    );
    let about = findings.iter().filter(|finding| {
        finding.question == "lifting-propped"
            && finding.subject.path.starts_with(&hanging.origin.path)
    });
    HangingView {
        title,
        wind,
        steps: hanging
            .step
            .iter()
            .map(|step| HangingRow {
                what: step.what.to_string(),
                holds: step.hold.iter().map(|hold| of_hold(hold, units)).collect(),
            })
            .collect(),
        found: about.map(|finding| finding.sentence.clone()).collect(),
    }
}

/// `strap to the post: carries 800 lbf, 200 lbf sideways at 4 ft`.
fn of_hold(hold: &Hold, units: UnitSystem) -> String {
    let sideways = hold.side_load.as_ref().map(|load| {
        let at = said("at", hold.height.as_ref(), units);
        let at = at.map_or(String::new(), |at| format!(" {at}"));
        format!("{} sideways{at}", print_measured(load, units))
    });
    let facts = [said("carries", hold.rated_load.as_ref(), units), sideways];
    let facts: Vec<String> = facts.into_iter().flatten().collect();
    if facts.is_empty() {
        hold.what.to_string()
    } else {
        format!("{}: {}", hold.what, facts.join(", "))
    }
}

fn said<Q: Quantity>(
    words: &str,
    value: Option<&Measured<Q>>,
    units: UnitSystem,
) -> Option<String> {
    value.map(|value| format!("{words} {}", print_measured(value, units)))
}
