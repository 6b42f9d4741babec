//! What was found, in words and figures for people and programs.

use super::cost;
use super::plan::{Plan, Reached, voltages};
use super::settle::Settled;
use super::written::{ConductorLine, lines};
use crate::Finding;
use crate::circuit::PowerCase;
use crate::figure::Print;
use formula::power::metal_area;
use quantity::{Quantity as _, Ratio};
use serde::Serialize;
use site::{Cable, SourceFile};

quantity::words! {
    /// What becomes of a conductor.
    pub enum Change {
        /// It becomes thicker.
        Thicker = "thicker",
        /// It becomes thinner.
        Thinner = "thinner",
        /// It stays as it is, or is bought as another entry of the same size.
        Same = "same size",
    }
}

/// The conductors of a site.
#[derive(Debug, Clone, Serialize)]
pub struct ConductorChoice {
    /// Each cable of the low-voltage circuits, in the order of the site.
    pub cables: Vec<ConductorRun>,
    /// Costs are prices; otherwise they are the metal in the cables.
    pub by_price: bool,
    /// What all cables cost as they are.
    pub today: String,
    /// What they cost as chosen.
    pub chosen: String,
    /// Every voltage that conductors can mend is kept, the whole site worked with what was chosen.
    pub kept: bool,
    /// No set of these conductors is cheaper.
    pub proved: bool,
    /// How far the cost may be above the least, where that is not proved: share of the cost.
    pub gap: Option<f64>,
    /// The proof, or the gap, in a sentence.
    pub proof: String,
    /// Sets, and beginnings of sets, that were looked at.
    pub looked_at: usize,
    /// What no conductor mends, and what else does.
    pub unmended: Vec<String>,
    /// What hangs on cables and fails with what was chosen, and did not before.
    pub failing: Vec<Finding>,
    /// Entries that were left out because a cable would fail something else with them.
    pub left_out: Vec<String>,
    /// Lines that the site or a parts file lacks, or why a circuit cannot be worked.
    pub missing: Vec<String>,
    /// Values to write into the site file.
    pub write: Vec<ConductorLine>,
}

/// One cable.
#[derive(Debug, Clone, Serialize)]
pub struct ConductorRun {
    /// The cable.
    pub cable: String,
    /// What it leads to.
    pub to: String,
    /// Its conductor today.
    pub today: String,
    /// The conductor chosen.
    pub chosen: String,
    /// The entry that it is bought as then.
    pub part: Option<String>,
    /// What becomes of it.
    #[serde(serialize_with = "as_word")]
    pub change: Change,
    /// What it costs today.
    pub cost_today: String,
    /// What it costs as chosen.
    pub cost_chosen: String,
    /// The voltage at its end, where something is fed there.
    pub voltage: Option<ConductorVoltage>,
}

/// The lowest voltage at the end of a cable, every value at its bad end.
#[derive(Debug, Clone, Serialize)]
pub struct ConductorVoltage {
    /// With the conductors of today.
    pub today: String,
    /// With those chosen.
    pub chosen: String,
    /// What is needed there.
    pub least: String,
    /// When it is lowest.
    pub when: &'static str,
    /// Volts in hand, in volts.
    pub in_hand: f64,
}

#[allow(
    clippy::trivially_copy_pass_by_ref,
    reason = "serde hands out references"
)]
fn as_word<S: serde::Serializer>(change: &Change, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(change)
}

pub(super) fn shown(
    plan: &Plan<'_>,
    found: &Settled,
    parts: &[SourceFile],
    left_out: Vec<String>,
    failing: Vec<Finding>,
) -> ConductorChoice {
    let print = Print::new(plan.site.site.unit_system());
    let (before, mut missing) = voltages(plan.site);
    if !plan.costs.is_by_price() {
        missing.extend(cost::missing(&plan.spots));
    }
    let each = || plan.spots.iter().zip(&found.decided.chosen).enumerate();
    let sum = |offer: fn(usize) -> usize| -> u64 {
        each()
            .map(|(at, (_, chosen))| plan.costs.each[at][offer(*chosen)])
            .sum()
    };
    let write = each()
        .flat_map(|(_, (spot, chosen))| {
            let today = &plan.site.cable[spot.cable];
            match &spot.offers[*chosen] {
                other if other.part != today.part => lines(today, other, parts),
                _ => Vec::new(),
            }
        })
        .collect();
    ConductorChoice {
        cables: each()
            .map(|(at, _)| run(plan, found, &before, at, print))
            .collect(),
        by_price: plan.costs.is_by_price(),
        today: plan.costs.shown(sum(|_| 0), print),
        chosen: plan.costs.shown(sum(|chosen| chosen), print),
        kept: found.is_kept,
        proved: found.is_proved(),
        gap: gap(found),
        proof: proof(plan, found, print),
        looked_at: found.decided.looked_at,
        unmended: unmended(plan, found, print),
        failing,
        left_out,
        missing,
        write,
    }
}

fn run(
    plan: &Plan<'_>,
    found: &Settled,
    before: &[Reached],
    at: usize,
    print: Print,
) -> ConductorRun {
    let spot = &plan.spots[at];
    let today = &plan.site.cable[spot.cable];
    let offer = found.decided.chosen[at];
    let chosen = &spot.offers[offer];
    let size = |cable: &Cable| cable.size.map_or("?".to_owned(), |size| size.to_string());
    ConductorRun {
        cable: today.id.to_string(),
        to: today.to.to_string(),
        today: size(today),
        chosen: size(chosen),
        part: chosen.part.as_ref().map(ToString::to_string),
        change: change(today, chosen),
        cost_today: plan.costs.shown(plan.costs.each[at][0], print),
        cost_chosen: plan.costs.shown(plan.costs.each[at][offer], print),
        voltage: voltage(today, before, &found.after, print),
    }
}

fn change(today: &Cable, chosen: &Cable) -> Change {
    let area = |cable: &Cable| cable.size.map_or(0.0, |size| metal_area(size).base());
    let (today, chosen) = (area(today), area(chosen));
    if chosen > today * 1.001 {
        Change::Thicker
    } else if chosen < today * 0.999 {
        Change::Thinner
    } else {
        Change::Same
    }
}

fn voltage(
    cable: &Cable,
    before: &[Reached],
    after: &[Reached],
    print: Print,
) -> Option<ConductorVoltage> {
    let ends = |reached: &&Reached| reached.cable.as_ref() == Some(&cable.id);
    let (before, after) = (before.iter().find(ends), after.iter().find(ends)?);
    Some(ConductorVoltage {
        today: before.map_or("unknown".to_owned(), |before| volts(before, print)),
        chosen: volts(after, print),
        least: print.q(after.least),
        when: after.case.when(),
        in_hand: (after.volts - after.least).base(),
    })
}

fn volts(reached: &Reached, print: Print) -> String {
    if reached.volts.base() > 0.0 {
        print.q(reached.volts)
    } else {
        "collapses".to_owned()
    }
}

fn gap(found: &Settled) -> Option<f64> {
    let (cost, bound) = (found.decided.cost, found.bound);
    (bound < cost).then(|| 1.0 - super::bound::whole(bound) / super::bound::whole(cost))
}

fn proof(plan: &Plan<'_>, found: &Settled, print: Print) -> String {
    let what = if plan.costs.is_by_price() {
        "price"
    } else {
        "metal"
    };
    if !found.is_kept {
        return "No set was found that stands in the whole site: what the battery leaves falls with it.".to_owned();
    }
    let spots = plan.spots.len();
    let left = found.decided.unworked.len() + found.decided.stuck.len();
    if left == spots {
        return "Nothing is chosen and nothing proved: no cable can be worked or mended yet, so all stay as they are."
            .to_owned();
    }
    let some = match left {
        0 => String::new(),
        1 => " One cable that cannot be worked or mended yet stays as it is and is not counted in this.".to_owned(),
        left => format!(
            " {left} cables that cannot be worked or mended yet stay as they are and are not counted in this."
        ),
    };
    match gap(found) {
        None => format!(
            "Proved least in {what}: every cheaper set of these conductors leaves something below its least voltage.{some}"
        ),
        Some(gap) => {
            let why = if found.decided.uneven {
                "loads that are resistances, or rings, let a thicker conductor lower a voltage elsewhere"
            } else {
                "the search stopped at its limit, or what the battery leaves hangs on the choice"
            };
            format!(
                "The best found, not proved least: at most {} may be saved, for no set is below {}; {why}.{some}",
                print.percent(Ratio::from_base(gap)),
                plan.costs.shown(found.bound, print)
            )
        }
    }
}

/// What stays below its least voltage with the thickest conductor everywhere.
fn unmended(plan: &Plan<'_>, found: &Settled, print: Print) -> Vec<String> {
    if found.after.iter().all(Reached::is_kept) {
        return Vec::new();
    }
    let (best, _) = voltages(&plan.thickest());
    best.iter()
        .filter(|reached| !reached.is_kept())
        .map(|reached| {
            let battery = match reached.case {
                PowerCase::BatteryEnd => " a battery of less inner resistance or a higher end voltage,",
                _ => "",
            };
            format!(
                "{}: {} {} at most, with the thickest conductor everywhere; it needs {}. What mends it:{battery} a higher supply voltage, a converter beside it, a shorter run, or less load on this run.",
                reached.id,
                volts(reached, print),
                reached.case.when(),
                print.q(reached.least)
            )
        })
        .collect()
}
